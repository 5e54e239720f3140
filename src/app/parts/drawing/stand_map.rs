//! Where hives stand, with the ground within reach of each, to one scale.

use super::{at, drawing, path, rect, shape, words};
use crate::almanac::ground::{Ring, Stand};
use crate::almanac::labels::{Patch, written};
use crate::app::el::El;
use crate::app::wording::en_yard_decides::ground as w;

/// Width of the drawing; its height goes along with the yard.
const WIDTH: f64 = 320.0;

/// Room at each edge, and below for the scale.
const EDGE: f64 = 6.0;
const BELOW: f64 = 36.0;

/// A drawing is no higher than this; a long yard is drawn smaller.
const HIGHEST: f64 = 480.0;

/// A yard of one hive is not drawn larger than this many units to the millimetre.
const LARGEST: f64 = 0.08;

/// Height of the letters, as in the style sheet: 18 px where the map is as wide as the smallest phone lets it be.
const LETTERS: f64 = 20.0;

/// Width of a letter as a share of its height, rather too much (judgement, no source).
const WIDE: f64 = 0.65;

/// A hive on the map.
pub struct MapStand<'a> {
    /// Where its middle stands.
    pub stand: Stand,
    /// What is written on it.
    pub tag: &'a str,
}

/// The map, and the tags that have no room on it; none without a hive. The scale is in units of `unit` millimetres, and
/// `far` writes a way out.
pub fn stand_map(
    stands: &[MapStand<'_>],
    ring: &Ring,
    unit: f64,
    far: &dyn Fn(f64) -> String,
) -> Option<(El, Vec<String>)> {
    let first = stands.first()?.stand;
    let (mut low, mut high) = (first, first);
    for MapStand { stand, .. } in stands {
        low = Stand { across: low.across.min(stand.across), along: low.along.min(stand.along) };
        high = Stand { across: high.across.max(stand.across), along: high.along.max(stand.along) };
    }
    let (wide, long, reach) = (ring.width.millimetres(), ring.length.millimetres(), ring.reach.millimetres());
    let (half_wide, half_long) = (wide / 2.0 + reach, long / 2.0 + reach);
    let (across, along) =
        (high.across - low.across + 2.0 * half_wide, high.along - low.along + 2.0 * half_long);
    let scale = ((WIDTH - 2.0 * EDGE) / across).min((HIGHEST - 2.0 * EDGE - BELOW) / along).min(LARGEST);
    let left = (WIDTH - across * scale) / 2.0;
    // Along runs away from the keeper: up.
    let x = |of: f64| left + (of - low.across + half_wide) * scale;
    let y = |of: f64| EDGE + (high.along - of + half_long) * scale;
    let mut shapes = Vec::new();
    let place = |class: &'static str, stand: &Stand, half: (f64, f64), round: f64| {
        let (x, y) = (x(stand.across), y(stand.along));
        let (w, h) = (half.0 * scale, half.1 * scale);
        rect(class, at(x - w), at(y - h), at(2.0 * w).max(1), at(2.0 * h).max(1))
            .attr("rx", &at(round * scale).to_string())
    };
    for MapStand { stand, .. } in stands {
        shapes.push(place("d-ring", stand, (half_wide, half_long), reach));
    }
    for MapStand { stand, .. } in stands {
        shapes.push(place("d-wall", stand, (wide / 2.0, long / 2.0), 0.0));
    }
    let bottom = EDGE + along * scale;
    let half = (wide / 2.0 * scale, long / 2.0 * scale);
    let (mut labels, mut hives) = (Vec::new(), Vec::new());
    for MapStand { stand, tag } in stands {
        let (x, y) = (x(stand.across), y(stand.along));
        hives.push(Patch { left: x - half.0, top: y - half.1, right: x + half.0, bottom: y + half.1 });
        // Beside the hive, in its ring: on it, it would hide it. Half a letter is left between two tags.
        let letters = u32::try_from(tag.chars().count()).unwrap_or(u32::MAX);
        let aside = (f64::from(letters) + 0.5) * LETTERS * WIDE / 2.0;
        let top = y + half.1 + 1.0;
        labels.push(Patch { left: x - aside, top, right: x + aside, bottom: top + LETTERS });
    }
    let page = Patch { left: 0.0, top: 0.0, right: WIDTH, bottom: bottom + EDGE };
    let mut left_out = Vec::new();
    for ((MapStand { stand, tag }, label), written) in
        stands.iter().zip(&labels).zip(written(&labels, &hives, &page))
    {
        if written {
            // The foot of the letters; what hangs below it is a fifth of their height.
            shapes.push(words(at(x(stand.across)), at(label.top + 0.8 * LETTERS), tag));
        } else {
            left_out.push((*tag).to_owned());
        }
    }
    let step = step(across / unit) * unit;
    let (from, to, line) = (at(EDGE), at(EDGE + step * scale), at(bottom + 26.0));
    shapes.push(path("d-thin", &[(from, line - 6), (from, line), (to, line), (to, line - 6)], false));
    let length = far(step);
    shapes.push(shape("text", "d-words d-scale", &[("x", to + 8), ("y", line)]).text(&length));
    let tags: Vec<String> = stands.iter().map(|stand| stand.tag.to_owned()).collect();
    let said = w::map(&tags, &far(across), &far(along));
    Some((drawing("drawing stand-map", at(WIDTH), at(bottom + BELOW), &said, shapes), left_out))
}

/// The length of the scale: 1, 2 or 5 and noughts, at most a third of the width.
fn step(width: f64) -> f64 {
    let mut step = 0.1;
    // Ten to the sixth is further than any yard reaches.
    for next in [2.0, 2.5, 2.0].into_iter().cycle().take(21) {
        if step * next * 3.0 > width {
            break;
        }
        step *= next;
    }
    step
}
