//! Whether a word holds wherever in their ranges the counts of several hives lie.
//!
//! Both ends of all ranges are not the worst case: hives that lie at different ends differ more, and `φ` grows. So the
//! word is proved for all mixtures at once. With the ratio `r` held in a narrow span both forms of `φ` are sums over hives of
//! `own² × weight`, which bends upward in both counts of a hive and in `r`, and so is greatest at the ends of ranges and span.
//! That all mixtures of a span have its ratio, `Σ own = 0`, is put in with a multiplier of Lagrange; any multiplier gives a
//! true bound. What it cannot prove is not said: some tables whose every mixture says "up" are told "can't tell".

use super::{LEAST_OTHERS, MOST, SMALL, Stretch, exact};
use crate::almanac::chance::{TAIL, as_unlikely, student};

/// Most spans of the ratio that are looked at.
const SPANS: usize = 96;
/// Most multipliers that are tried on a span.
const MULTIPLIERS: usize = 14;
/// Sums are good to this share of themselves.
const NOISE: f64 = 1e-9;

/// A hive by the ends of its ranges, fewest and most.
struct Ranged {
    first: (f64, f64),
    second: (f64, f64),
    /// What a beetle of the first stretch adds to its sum of Mantel & Haenszel, and one of the second: the other's share of
    /// the days.
    down: f64,
    up: f64,
    /// See [`LEAST_OTHERS`]: at most so many times its own error a hive moves the ratio by.
    lever: f64,
}

/// What is known of all mixtures.
struct Bounds {
    up: (f64, f64),
    down: (f64, f64),
    /// Standard errors to the limits, squared.
    wide: f64,
    /// Hives with beetles in every mixture, less one.
    freedom: f64,
    /// The largest share of its days that a hive fished in the second stretch, and in the first.
    shares: (f64, f64),
}

/// The largest sum found, what the ratio leaves over there, and the sum of second counts there.
struct Worst {
    value: f64,
    slope: f64,
    up: f64,
}

/// A multiplier, the bound there and its slope.
type Tangent = (f64, f64, f64);

/// Whether the exact counts of `hives`, wherever in their ranges they lie, all say "up": the second stretch has more. Both
/// stretches of each fished.
pub(super) fn all_rise(hives: &[(Stretch, Stretch)]) -> bool {
    let Some((ranged, bounds)) = bounds(hives) else { return false };
    if bounds.down.1 <= 0.0 {
        // No mixture has a ratio.
        return true;
    }
    let mut spans = vec![(bounds.up.0 / bounds.down.1, bounds.up.1 / bounds.down.0)];
    let mut looked = 0;
    while let Some((low, high)) = spans.pop() {
        looked += 1;
        if low <= 1.0 || looked > SPANS {
            return false;
        }
        if !bounds.clear(&ranged, low, high) {
            let middle = (low * high).sqrt();
            // No narrower: ratios this close are one.
            if high <= low * 1.001 {
                return false;
            }
            spans.push((middle, high));
            spans.push((low, middle));
        }
    }
    true
}

/// What all mixtures share; none where some of them does not say "up" for another reason than the limits.
fn bounds(hives: &[(Stretch, Stretch)]) -> Option<(Vec<Ranged>, Bounds)> {
    let mut ranged = Vec::new();
    let (mut used, mut rose, mut least) = (0_u32, 0_u32, f64::MAX);
    let (mut first, mut second) = ((0_u32, 0_u32), 0_u32);
    let mut bounds = Bounds { up: (0.0, 0.0), down: (0.0, 0.0), wide: 0.0, freedom: 0.0, shares: (0.0, 0.0) };
    let mut told = 0.0;
    for (before, after) in hives {
        let (a, b) = (before.count, after.count);
        // "Fifty and more" in one hive may be so many that the others do not count.
        let (a_high, b_high) = (a.high()?, b.high()?);
        let (one, other) = (f64::from(before.trap_days), f64::from(after.trap_days));
        let hive = Ranged {
            first: (f64::from(a.low()), f64::from(a_high)),
            second: (f64::from(b.low()), f64::from(b_high)),
            down: other / (one + other),
            up: one / (one + other),
            lever: 1.0,
        };
        used += u32::from(a.low() > 0 || b.low() > 0);
        rose += u32::from(b.low() > 0);
        first = (first.0.saturating_add(a.low()), first.1.saturating_add(a_high));
        second = second.saturating_add(b.low());
        bounds.up.0 += hive.second.0 * hive.up;
        bounds.up.1 += hive.second.1 * hive.up;
        bounds.down.0 += hive.first.0 * hive.down;
        bounds.down.1 += hive.first.1 * hive.down;
        told += (hive.first.0 + hive.second.0) * hive.up * hive.down;
        if a_high > 0 {
            least = least.min(hive.down);
        }
        if a_high > 0 || b_high > 0 {
            bounds.shares = (bounds.shares.0.max(hive.down), bounds.shares.1.max(hive.up));
        }
        ranged.push(hive);
    }
    if used < 2 || bounds.up.0 <= 0.0 {
        return None;
    }
    if bounds.down.0 <= 0.0 {
        // None at all in the first stretch: the hives must agree among themselves.
        if as_unlikely(rose, rose, 0.5) >= 2.0 * TAIL {
            return None;
        }
        bounds.down.0 = least;
    }
    // The chance of so many in the second or more is greatest with the most in the first and the fewest in the second.
    if first.0.min(second) < SMALL && first.0.saturating_add(second) <= MOST {
        let worst = first.1.saturating_add(second) <= MOST
            && exact(&super::of(hives, &|(a, b)| (a.high().unwrap_or(a.low()), b.low()))) < 2.0 * TAIL;
        if !worst {
            return None;
        }
    }
    for hive in &mut ranged {
        let each = hive.up * hive.down;
        let others = told - (hive.first.0 + hive.second.0) * each;
        let own = (hive.first.1 + hive.second.1) * each;
        hive.lever = if others > 0.0 { 1.0 + own / others } else { f64::MAX }.min(1.0 / LEAST_OTHERS);
    }
    bounds.freedom = f64::from(used - 1);
    bounds.wide = student(used - 1).powi(2);
    Some((ranged, bounds))
}

impl Bounds {
    /// Whether no mixture with a ratio from `low` to `high` has limits that reach down to 1.
    fn clear(&self, hives: &[Ranged], low: f64, high: f64) -> bool {
        let up = self.up.0.max(low * self.down.0);
        let down = self.down.0.max(self.up.0 / high);
        if down > self.down.1.min(self.up.1 / low) * (1.0 + NOISE) {
            // No mixture has such a ratio.
            return true;
        }
        let far = low.ln().powi(2);
        // told ÷ (up · down) is at most this ÷ down.
        let variance = self.shares.0 + self.shares.1 / low;
        if self.wide * variance >= far * down {
            return false;
        }
        // Pearson's φ: wide · χ² ÷ freedom · variance ÷ down < far.
        let weight = self.wide * variance / (self.freedom * far);
        let pearson = |hive: &Ranged, all: f64, own: f64, ratio: f64| {
            let each = all * hive.up * hive.down * ratio;
            if each > 0.0 { weight * own * own / each } else { 0.0 }
        };
        if !below(hives, (low, high), &pearson, &|_, down| down).0 {
            return false;
        }
        // The sandwich: wide · Σ (own ÷ others)² < far · up², and up² lies above its tangent at any one `at`.
        let sandwich = |hive: &Ranged, _: f64, own: f64, _: f64| self.wide / far * (own * hive.lever).powi(2);
        let mut at = up;
        for _ in 0..3 {
            let share = at / count(hives);
            let (proved, next) = below(hives, (low, high), &sandwich, &|up, _| at * (2.0 * up - share));
            if proved {
                return true;
            }
            at = next.max(up);
        }
        false
    }
}

#[allow(clippy::cast_precision_loss)] // hives of an operation
fn count(hives: &[Ranged]) -> f64 {
    hives.len() as f64
}

/// Whether the sum over the hives of `most` less `least` lies below 0 for every mixture with a ratio in `span`, and the
/// second sum of the mixture it was last found worst at. `most` is of the hive, its beetles in both stretches, what it
/// is off by and the ratio; `least` of what it adds to both sums.
fn below(
    hives: &[Ranged],
    span: (f64, f64),
    most: &dyn Fn(&Ranged, f64, f64, f64) -> f64,
    least: &dyn Fn(f64, f64) -> f64,
) -> (bool, f64) {
    let mut multiplier = 0.0;
    // Where the bound falls and where it rises.
    let (mut falls, mut rises): (Option<Tangent>, Option<Tangent>) = (None, None);
    let mut up = 0.0;
    for _ in 0..MULTIPLIERS {
        let low = worst(hives, span.0, multiplier, most, least);
        let high = worst(hives, span.1, multiplier, most, least);
        let here = if low.value >= high.value { low } else { high };
        up = here.up;
        if here.value < 0.0 {
            return (true, up);
        }
        let tangent = Some((multiplier, here.value, here.slope));
        if here.slope > 0.0 {
            rises = tangent;
        } else if here.slope < 0.0 {
            falls = tangent;
        } else {
            break;
        }
        multiplier = match (falls, rises) {
            (Some((a, at_a, slope_a)), Some((b, at_b, slope_b))) => {
                let meet = (at_b - at_a + slope_a * a - slope_b * b) / (slope_a - slope_b);
                // The bound bends upward, so it lies nowhere below where its tangents meet.
                if at_a + slope_a * (meet - a) >= 0.0 {
                    break;
                }
                meet
            }
            _ => multiplier - 2.0 * here.value / here.slope,
        };
    }
    (false, up)
}

fn worst(
    hives: &[Ranged],
    ratio: f64,
    multiplier: f64,
    most: &dyn Fn(&Ranged, f64, f64, f64) -> f64,
    least: &dyn Fn(f64, f64) -> f64,
) -> Worst {
    let mut sum = Worst { value: 0.0, slope: 0.0, up: 0.0 };
    let mut size = 0.0;
    for hive in hives {
        let mut here = Worst { value: f64::MIN, slope: 0.0, up: 0.0 };
        for (first, second) in [
            (hive.first.0, hive.second.0),
            (hive.first.0, hive.second.1),
            (hive.first.1, hive.second.0),
            (hive.first.1, hive.second.1),
        ] {
            let (up, down) = (second * hive.up, first * hive.down);
            let own = up - ratio * down;
            let value = most(hive, first + second, own, ratio) - least(up, down) + multiplier * own;
            if value > here.value {
                here = Worst { value, slope: own, up };
            }
        }
        size += here.value.abs();
        sum.value += here.value;
        sum.slope += here.slope;
        sum.up += here.up;
    }
    sum.value += size * NOISE;
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::dice::dice;
    use crate::almanac::tally::CountRange;
    use crate::almanac::trend::{Word, compare};

    type Pair = (Stretch, Stretch);

    /// Beetles from `low` to `high` in 90 trap-days.
    fn of(low: u32, high: u32) -> Stretch {
        Stretch { count: CountRange::new(low, Some(high)).unwrap(), trap_days: 90 }
    }

    /// Whether every choice of whole numbers out of the ranges says "up", each compared by itself.
    fn every_mixture_rises(hives: &[Pair]) -> bool {
        let mut ranges: Vec<&Stretch> = Vec::new();
        for (before, after) in hives {
            ranges.extend([before, after]);
        }
        let mut counts: Vec<u32> = ranges.iter().map(|stretch| stretch.count.low()).collect();
        loop {
            let exact = |at: usize| Stretch { count: CountRange::exact(counts[at]), ..*ranges[at] };
            let mixture: Vec<Pair> = (0..hives.len()).map(|at| (exact(2 * at), exact(2 * at + 1))).collect();
            if compare(&mixture).word != Word::Up {
                return false;
            }
            let more = |at: &usize| counts[*at] < ranges[*at].count.high().unwrap();
            let Some(at) = (0..counts.len()).find(more) else { return true };
            for before in 0..at {
                counts[before] = ranges[before].count.low();
            }
            counts[at] += 1;
        }
    }

    /// Three kinds of yard of which the limits alone would call some "up": none at all before in few hives, one small
    /// hive that goes against large ones, and change that is only just told.
    #[test]
    fn what_is_proved_holds_for_every_mixture_of_small_ranges() {
        let mut draw = dice(11);
        for kind in ["none before", "one against", "only just"] {
            let (mut proved, mut not) = (0, 0);
            for _ in 0..200 {
                let mut hives = Vec::new();
                // Few of the ranges are wide, so that every mixture can be looked at.
                let mut wide = 4;
                let mut one = |from: u32, to: u32, draw: &mut dyn FnMut(u32, u32) -> u32| {
                    let low = draw(from, to);
                    let more = draw(0, 3).min(wide);
                    wide -= more;
                    of(low, low + more)
                };
                match kind {
                    "none before" => {
                        for _ in 0..draw(4, 8) {
                            let most = draw(30, 40);
                            hives.push((of(0, draw(0, 2)), of(most, most)));
                        }
                    }
                    "one against" => {
                        for _ in 0..3 {
                            hives.push((one(40, 60, &mut draw), one(120, 160, &mut draw)));
                        }
                        hives.push((one(8, 14, &mut draw), one(0, 1, &mut draw)));
                    }
                    _ => {
                        for _ in 0..draw(3, 7) {
                            hives.push((one(5, 15, &mut draw), one(25, 50, &mut draw)));
                        }
                    }
                }
                let holds = every_mixture_rises(&hives);
                assert!(holds || !all_rise(&hives), "{kind}: {hives:?}");
                proved += u32::from(all_rise(&hives));
                not += u32::from(!holds);
            }
            assert!(proved >= 90 && not >= 15, "{kind}: {proved} proved, {not} that do not hold");
        }
    }

    /// All of n hives rise by chance, or all fall, with 2 ÷ 2ⁿ: below 5 % from six on.
    #[test]
    fn where_there_may_have_been_none_before_six_hives_must_rise() {
        for hives in 2..12 {
            assert_eq!(all_rise(&vec![(of(0, 1), of(40, 41)); hives]), hives >= 6, "{hives}");
        }
    }

    /// 47 against 29 beetles are told apart by their limits, but the exact test, 2 · P(47 or more of 76), is 0.0505
    /// (`scipy.stats.binom.sf(46, 76, 0.5)`); 47 against 28 pass both. So the word hangs on one beetle of one hive.
    #[test]
    fn the_exact_test_must_pass_with_the_most_before_and_the_fewest_after() {
        let yard = |one_more: u32| {
            let mut hives = vec![(of(1, 1), of(1, 1)); 28];
            hives.extend(vec![(of(0, 0), of(1, 1)); 18]);
            hives.push((of(0, one_more), of(1, 1)));
            hives
        };
        assert!(all_rise(&yard(0)) && every_mixture_rises(&yard(0)));
        assert!(!all_rise(&yard(1)) && !every_mixture_rises(&yard(1)));
    }

    /// 0.3 − 0.1 − 0.2 is nothing, and in the computer's numbers a little less.
    #[test]
    fn a_sum_that_only_rounding_puts_below_nothing_proves_nothing() {
        let sum = |parts: &[f64]| {
            let hives: Vec<Ranged> = parts
                .iter()
                .map(|part| Ranged {
                    first: (*part, *part),
                    second: (0.0, 0.0),
                    down: 0.5,
                    up: 0.5,
                    lever: 1.0,
                })
                .collect();
            below(&hives, (1.0, 1.0), &|_, all, _, _| all, &|_, _| 0.0).0
        };
        assert!(0.3 - 0.1 - 0.2 < 0.0 && !sum(&[0.3, -0.1, -0.2]));
        assert!(sum(&[0.3, -0.1, -0.2, -1e-6]));
    }
}
