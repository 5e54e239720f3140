//! How much of a stage a day may have done: the quick, the likely and the slow rate.

use super::set::Line;
use super::sine::day_mean;
use super::{Edge, Stage};
use crate::almanac::warmth::{Span, Swing, Warmth};

/// Share of a stage that a day does, in the order of [`Edge::ALL`].
pub type Rates = [f64; 3];

/// How far a whole-life date may be off at a day's mean of this many °C or less: the share, and the temperature.
///
/// Both shares describe by how much the sets miss whole lives that did not build them; they were set after those misses
/// had been seen and are no rate of error.
pub const WIDE: (f64, f64) = (0.35, 20.0);
/// The same at this many °C or more. Between both it falls straight.
pub const NARROW: (f64, f64) = (0.20, 24.0);

/// What a day in `span` does of `stage`.
///
/// The likely rate is the middle of the sets: their mean for egg and larva, their median for the soil. The quick one is
/// that of the fastest set at the most favourable end of the span, or the likely one over 1 − b, whichever is more; the
/// slow one that of the slowest set at either end, or the likely one over 1 + b, whichever is less.
pub fn rates(stage: Stage, span: &Span) -> Rates {
    Edge::ALL.map(|edge| rate(stage, span, edge))
}

/// One of [`rates`], and no more than it takes.
pub(super) fn rate(stage: Stage, span: &Span, edge: Edge) -> f64 {
    if let Some(days) = stage.fixed_days() {
        return Line { sum: edge.of(days), floor: 0.0 }.rate(1.0);
    }
    let sets = |day: Swing| day_mean(day, |celsius| stage.sets(celsius));
    let here = sets(span.likely);
    let likely = middle(stage, here);
    if edge == Edge::Likely {
        return likely;
    }
    let b = off(span.likely.mean());
    let quickest = stage.heat().0;
    // A degree below: there the curve of the soil turns.
    let hot = span.warm.high.celsius() > quickest - 1.0;
    let spread = span.cool != span.warm;
    if edge == Edge::Latest {
        let mut slow = slowest(stage, here).min(likely / (1.0 + b));
        if spread {
            slow = slow.min(slowest(stage, sets(span.cool)));
            if hot {
                slow = slow.min(slowest(stage, sets(span.warm)));
            }
        }
        return slow;
    }
    let mut quick = fastest(stage, here).max(likely / (1.0 - b));
    if spread {
        quick = quick.max(fastest(stage, sets(span.warm)));
        // Where the span reaches beyond the heat in which the stage is quickest, that is its most favourable day.
        let past = span.warm.mean().celsius() - quickest;
        let wide = span.warm.mean().celsius() - span.cool.mean().celsius();
        if hot {
            quick = quick.max(fastest(stage, sets(span.cool)));
        }
        if past > 0.0 && past < wide {
            quick = quick.max(fastest(stage, sets(span.cool.towards(span.warm, 1.0 - past / wide))));
        }
    }
    quick
}

/// Days that `stage` takes at `warmth` from beginning to end, give or take nothing: the sets and the bands alone.
/// `None` where nothing develops.
pub fn days(stage: Stage, warmth: Warmth, edge: Edge) -> Option<f64> {
    let day = Swing::flat(warmth);
    let rate = rate(stage, &Span { cool: day, likely: day, warm: day }, edge);
    (rate > 0.0).then(|| 1.0 / rate)
}

/// b: how far a date may be off at a day's mean of `warmth`, as a share.
pub(super) fn off(warmth: Warmth) -> f64 {
    let fall = (warmth.celsius() - WIDE.1) / (NARROW.1 - WIDE.1);
    WIDE.0 - (WIDE.0 - NARROW.0) * fall.clamp(0.0, 1.0)
}

fn middle(stage: Stage, [a, b, third]: [f64; 3]) -> f64 {
    if stage == Stage::Soil { a.min(b).max(a.max(b).min(third)) } else { f64::midpoint(a, b) }
}

fn fastest(stage: Stage, [a, b, third]: [f64; 3]) -> f64 {
    if stage == Stage::Soil { a.max(b).max(third) } else { a.max(b) }
}

fn slowest(stage: Stage, [a, b, third]: [f64; 3]) -> f64 {
    if stage == Stage::Larva { a.min(b) } else { a.min(b).min(third) }
}
