//! The exact conditional test of two stretches, hive by hive.

use super::Of;
use crate::almanac::chance::{binomial, binomial_at_most};

/// Twice the chance that the second stretches of all hives together have so many or more, or so few or fewer, whichever
/// is the smaller, given how many each hive had in both: the exact conditional test, central as the limits of a count
/// are. One beetle more in a second stretch, or one fewer in a first, never makes "so many or more" likelier.
pub(super) fn exact(hives: &[Of]) -> f64 {
    let share = |hive: &Of| hive.second_days / (hive.first_days + hive.second_days);
    if let [hive] = hives {
        let all = hive.first.saturating_add(hive.second);
        let few = binomial_at_most(hive.second, all, share(hive));
        let many = binomial_at_most(hive.first, all, 1.0 - share(hive));
        return (2.0 * few.min(many)).min(1.0);
    }
    let (mut first, mut second) = (0_usize, 0_usize);
    for hive in hives {
        first += hive.first as usize;
        second += hive.second as usize;
    }
    // Chance of `second` or more, or of that or fewer, from the chances of what leads there: few, where a count is small.
    let tail = |many: bool| {
        // From the chance of `from` on.
        let (mut chances, mut from, mut most) = (vec![1.0_f64], 0_usize, 0_usize);
        for hive in hives {
            let all = hive.first + hive.second;
            most += all as usize;
            let (low, high) = if many { (most.saturating_sub(first), most) } else { (0, most.min(second)) };
            let mut next = vec![0.0; high + 1 - low];
            for some in 0..=all {
                let at = from + some as usize;
                if at > high || at + chances.len() <= low {
                    continue;
                }
                let chance = binomial(some, all, share(hive));
                for (before, at) in chances.iter().zip(at..) {
                    if let Some(sum) = at.checked_sub(low).and_then(|at| next.get_mut(at)) {
                        *sum += before * chance;
                    }
                }
            }
            (chances, from) = (next, low);
        }
        chances.iter().sum::<f64>()
    };
    let quick = tail(first < second);
    // Both tails hold the counts themselves, so one below a half is the smaller.
    let less = if quick < 0.49 { quick } else { quick.min(tail(first >= second)) };
    (2.0 * less).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::dice::dice;

    /// Chance of each number of beetles in the second stretches, by every way that each hive's may fall.
    fn every_way(hives: &[Of]) -> Vec<f64> {
        let Some((hive, others)) = hives.split_first() else { return vec![1.0] };
        let (all, share) =
            (hive.first + hive.second, hive.second_days / (hive.first_days + hive.second_days));
        let rest = every_way(others);
        let mut sums = vec![0.0; rest.len() + all as usize];
        for way in 0..1_u32 << all {
            let some = way.count_ones();
            let chance = share.powi(some.cast_signed()) * (1.0 - share).powi((all - some).cast_signed());
            for (at, other) in rest.iter().enumerate() {
                sums[at + some as usize] += chance * other;
            }
        }
        sums
    }

    #[test]
    fn the_exact_test_is_twice_the_smaller_tail_of_every_way_the_beetles_may_fall() {
        let mut any = dice(3);
        let mut draw = |most: u32| any(0, most);
        for case in 0..600 {
            let (before, after) = [(1, 6), (6, 1), (4, 4)][case % 3];
            let mut hives = Vec::new();
            for _ in 0..2 + draw(5) {
                let (first, second) = (draw(before + 1), draw(after + 1));
                let (first_days, second_days) = (f64::from(1 + draw(90)), f64::from(1 + draw(90)));
                hives.push(Of { first, second, first_days, second_days });
            }
            let seen = hives.iter().map(|hive| hive.second as usize).sum::<usize>();
            let ways = every_way(&hives);
            let (few, many): (f64, f64) = (ways[..=seen].iter().sum(), ways[seen..].iter().sum());
            let all = (2.0 * few.min(many)).min(1.0);
            assert!((exact(&hives) - all).abs() < 1e-9 * all, "{} {all}", exact(&hives));
        }
    }
}
