//! What a count says of the rate behind it: exact limits and exact tests for beetles counted over trap-days, and for so many
//! out of so many.
//!
//! Limits are those from which what was seen, or something further off, has a chance of exactly half of what is left out on
//! each side (Garwood 1936 for counts, Clopper & Pearson 1934 for shares). Chances are summed from their largest term on, so
//! nothing overflows and nothing is lost at either end.

/// Half the width of 95 % of a normal distribution.
pub const NORMAL: f64 = 1.959_963_984_540_054;
/// Student's t with 1 to 10 degrees of freedom at 97.5 %.
const STUDENT: [f64; 10] = [
    12.706_205, 4.302_653, 3.182_446, 2.776_445, 2.570_582, 2.446_912, 2.364_624, 2.306_004, 2.262_157,
    2.228_139,
];
/// Share of cases in which limits of 95 % leave out the truth, on one side.
pub const TAIL: f64 = 0.025;

/// Halvings after which two limits are one.
const HALVINGS: u32 = 200;

/// Steps to a limit at most: up to a count of 100,000 it takes four.
const MOST_NEWTON: u32 = 30;
/// Share of itself by which the last step moves it: the next one would move it by about the square of that, which is
/// nothing.
const CLOSE: f64 = 1e-8;

/// A chance is told to about so many parts.
const NOISE: f64 = 1e-12;

/// Natural logarithm of `n!`, by Stirling's series from 16 on (its error is below 10⁻¹² there).
pub fn ln_factorial(n: u32) -> f64 {
    if n < 16 {
        return (2..=n).map(f64::from).product::<f64>().ln();
    }
    let x = f64::from(n) + 1.0;
    let square = x * x;
    let series =
        (1.0 / 12.0 - (1.0 / 360.0 - (1.0 / 1260.0 - 1.0 / (1680.0 * square)) / square) / square) / x;
    (x - 0.5) * x.ln() - x + 0.5 * std::f64::consts::TAU.ln() + series
}

/// Chance of exactly `count` where `mean` are expected.
pub fn poisson(count: u32, mean: f64) -> f64 {
    if mean <= 0.0 {
        return if count == 0 { 1.0 } else { 0.0 };
    }
    (f64::from(count) * mean.ln() - mean - ln_factorial(count)).exp()
}

/// Chance of at most `count` where `mean` are expected.
pub fn poisson_at_most(count: u32, mean: f64) -> f64 {
    let (mut term, mut sum) = (poisson(count, mean), 0.0);
    if f64::from(count) > mean {
        // The tail above is the shorter one.
        return 1.0 - tail(term * mean / (f64::from(count) + 1.0), count, mean);
    }
    for n in (0..=count).rev() {
        sum += term;
        if term <= sum * NOISE {
            break;
        }
        term *= f64::from(n) / mean;
    }
    sum.min(1.0)
}

/// Chance of `count` or more where `mean` are expected.
pub fn poisson_at_least(count: u32, mean: f64) -> f64 {
    let Some(below) = count.checked_sub(1) else { return 1.0 };
    if f64::from(count) <= mean {
        return 1.0 - poisson_at_most(below, mean);
    }
    tail(poisson(count, mean), count - 1, mean).min(1.0)
}

/// The sum of the chances above `count`, of which `term` is the first.
fn tail(mut term: f64, count: u32, mean: f64) -> f64 {
    // A count as large as can be has something above it all the same.
    let (mut n, mut sum) = (f64::from(count) + 1.0, 0.0);
    loop {
        sum += term;
        if term <= sum * NOISE {
            return sum;
        }
        n += 1.0;
        term *= mean / n;
    }
}

/// Limits of 95 % for the number expected, where `count` were counted.
pub fn poisson_limits(count: u32) -> (f64, f64) {
    // Chances of a count or more grow with the mean as the chance of one less is, those of at most a count fall as its own.
    let low = count.checked_sub(1).map_or(0.0, |less| {
        step_to(near(count, -NORMAL), &|mean| (TAIL - poisson_at_least(count, mean)) / poisson(less, mean))
    });
    let high = step_to(near(count.saturating_add(1), NORMAL), &|mean| {
        (poisson_at_most(count, mean) - TAIL) / poisson(count, mean)
    });
    (low, high)
}

/// About the mean that lies `wide` standard errors from `count` (Wilson & Hilferty 1931).
fn near(count: u32, wide: f64) -> f64 {
    let count = f64::from(count);
    count * (1.0 - 1.0 / (9.0 * count) + wide / (3.0 * count.sqrt())).powi(3)
}

/// From `near` on by `step` until it moves no further (Newton), which from so near is a matter of a few steps.
fn step_to(near: f64, step: &dyn Fn(f64) -> f64) -> f64 {
    let mut at = near;
    for _ in 0..MOST_NEWTON {
        let next = at + step(at);
        if (next - at).abs() <= at * CLOSE {
            return next;
        }
        at = next;
    }
    at
}

/// Chance of exactly `some` of `all` where each has the chance `share`.
pub fn binomial(some: u32, all: u32, share: f64) -> f64 {
    if some > all {
        return 0.0;
    }
    if share <= 0.0 || share >= 1.0 {
        let sure = if share <= 0.0 { some == 0 } else { some == all };
        return f64::from(u8::from(sure));
    }
    let ways = ln_factorial(all) - ln_factorial(some) - ln_factorial(all - some);
    (ways + f64::from(some) * share.ln() + f64::from(all - some) * (-share).ln_1p()).exp()
}

/// Chance of at most `some` of `all`.
pub fn binomial_at_most(some: u32, all: u32, share: f64) -> f64 {
    if some >= all {
        return 1.0;
    }
    if f64::from(some) > f64::from(all) * share {
        return 1.0 - binomial_at_most(all - some - 1, all, 1.0 - share);
    }
    let (mut sum, mut at) = (0.0, some);
    loop {
        let term = binomial(at, all, share);
        sum += term;
        if at == 0 || term <= sum * NOISE {
            return sum.min(1.0);
        }
        at -= 1;
    }
}

/// Limits of 95 % for the share behind `some` of `all`; everything between 0 and 1 where there are none.
pub fn binomial_limits(some: u32, all: u32) -> (f64, f64) {
    let (some, none) = (some.min(all), all.saturating_sub(some));
    let low = |some| halve(0.0, 1.0, &|share| binomial_at_most(all - some, all, 1.0 - share) < TAIL);
    (
        if some == 0 { 0.0 } else { low(some) },
        if none == 0 { 1.0 } else { halve(0.0, 1.0, &|share| binomial_at_most(some, all, share) > TAIL) },
    )
}

/// Chance of `some` of `all` or of anything that is no likelier.
pub fn as_unlikely(some: u32, all: u32, share: f64) -> f64 {
    let seen = binomial(some, all, share) * (1.0 + 1e-7);
    let mut sum = 0.0;
    for at in 0..=all {
        let chance = binomial(at, all, share);
        if chance <= seen {
            sum += chance;
        }
    }
    sum.min(1.0)
}

/// Counts that clump are told one by one below so many; from there on each step is this share of its first count wide.
const STEP: u32 = 2048;
/// Most steps: with 1,000 beetles and a clumping of 10⁻⁶ there are 35,000. What lies beyond has a smaller chance than the
/// clumping itself.
const MOST_STEPS: usize = 50_000;
/// Share of all cases that the counts left out of a sum come to.
const REST: f64 = 1e-12;

/// Chances of 0, 1, 2 … where `mean` are expected and counts clump: variance `mean + mean² ÷ clumping` (the negative binomial;
/// the smaller `clumping`, the more they do). With each the number of counts it is the chance of: 1 below 2,048, and from
/// there on as many as keep a step to 1 ÷ 2,048 of its counts, so that however long the tail there are 50,000 steps at the
/// most. Such a step is as many times the chance of its middle, off by less than 10⁻⁶ of itself. Steps are the same for every
/// mean. None where the first chance is too small for a number, which it is not up to a mean of 1,000 with a `clumping` of
/// 100.
pub fn clumped(mean: f64, clumping: f64) -> Option<Vec<(f64, f64)>> {
    let mut chance = (-clumping * (mean / clumping).ln_1p()).exp();
    if chance <= 0.0 || !chance.is_finite() {
        return None;
    }
    let step = mean / (clumping + mean);
    let log_step = -(clumping / mean).ln_1p();
    let mut all = vec![(1.0, chance)];
    // Γ(count + k) ÷ Γ(count + 1) grows as (count + k ÷ 2)^(k − 1) (Tricomi & Erdélyi 1951).
    let end = f64::from(STEP) - 1.0;
    let (mut count, mut each) = (0.0, chance);
    while all.len() < MOST_STEPS {
        // No chance is a larger share of the one before than this from here on.
        let most = step.max((clumping + count) / (count + 1.0) * step);
        if most < 1.0 && each * most / (1.0 - most) < REST {
            break;
        }
        let width = ((count + 1.0) / f64::from(STEP)).floor().max(1.0);
        count += 1.0;
        if count <= end {
            chance *= (clumping + count - 1.0) / count * step;
            each = chance;
        } else {
            let middle = count + (width - 1.0) / 2.0;
            let further = ((middle + clumping / 2.0) / (end + clumping / 2.0)).ln() * (clumping - 1.0);
            each = chance * (further + (middle - end) * log_step).exp();
        }
        all.push((width, width * each));
        count += width - 1.0;
    }
    Some(all)
}

/// Where `below` stops being true between `low` and `high`.
fn halve(mut low: f64, mut high: f64, below: &dyn Fn(f64) -> bool) -> f64 {
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(low, high);
        if middle <= low || middle >= high {
            break;
        }
        if below(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    f64::midpoint(low, high)
}

/// Student's t at 97.5 %: a table to 10 degrees of freedom, then the expansion of Abramowitz & Stegun 26.7.5, good to 10⁻⁵
/// there.
pub fn student(freedom: u32) -> f64 {
    let at = usize::try_from(freedom).unwrap_or(usize::MAX).saturating_sub(1);
    if let Some(known) = STUDENT.get(at) {
        return *known;
    }
    let (z, n) = (NORMAL, f64::from(freedom));
    let square = z * z;
    let odd = |factors: &[f64]| z * factors.iter().fold(0.0, |sum, factor| sum * square + factor);
    z + odd(&[1.0, 1.0]) / (4.0 * n)
        + odd(&[5.0, 16.0, 3.0]) / (96.0 * n.powi(2))
        + odd(&[3.0, 19.0, 17.0, -15.0]) / (384.0 * n.powi(3))
        + odd(&[79.0, 776.0, 1482.0, -1920.0, -945.0]) / (92_160.0 * n.powi(4))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn alike(one: f64, other: f64) -> bool {
        (one - other).abs() <= 1e-9 * other.abs().max(1.0)
    }

    #[test]
    fn logarithms_of_factorials_are_sums_of_logarithms() {
        let mut sum = 0.0;
        for n in 1..2000_u32 {
            sum += f64::from(n).ln();
            assert!(alike(ln_factorial(n), sum), "{n}");
        }
        assert!(alike(ln_factorial(0), 0.0));
    }

    #[test]
    fn chances_add_up_to_one() {
        for mean in [0.001, 0.7, 3.0, 47.0, 800.0] {
            for count in [0, 1, 3, 40, 900] {
                let both = poisson_at_most(count, mean) + poisson_at_least(count + 1, mean);
                assert!((both - 1.0).abs() < 1e-9, "{count} of {mean}: {both}");
            }
        }
    }

    #[test]
    fn limits_lie_where_halving_ends() {
        for count in (0..3000).chain([20_000, 100_000, 1_000_000]) {
            let (low, high) = poisson_limits(count);
            let most = f64::from(count) * 2.0 + 40.0;
            let until = halve(0.0, most, &|mean| poisson_at_most(count, mean) > TAIL);
            assert!((high / until - 1.0).abs() < 1e-12, "{count}: {high}, {until}");
            if count == 0 {
                assert!(low == 0.0);
                continue;
            }
            let from = halve(0.0, most, &|mean| poisson_at_least(count, mean) < TAIL);
            assert!((low / from - 1.0).abs() < 1e-12, "{count}: {low}, {from}");
        }
    }

    /// However many: about two roots of it either way.
    #[test]
    fn the_largest_count_has_limits() {
        let (low, high) = poisson_limits(u32::MAX);
        let (count, wide) = (f64::from(u32::MAX), NORMAL * f64::from(u32::MAX).sqrt());
        assert!((count - low - wide).abs() < 10.0 && (high - count - wide).abs() < 10.0, "{low} {high}");
    }

    #[test]
    fn nothing_counted_and_nothing_seen_have_limits() {
        assert!(alike(poisson_limits(0).0, 0.0));
        assert!(alike(poisson_limits(0).1, -TAIL.ln()));
        assert_eq!(binomial_limits(0, 0), (0.0, 1.0));
        assert!(alike(binomial_limits(5, 5).0, TAIL.powf(0.2)));
        assert!(alike(as_unlikely(0, 0, 0.5), 1.0));
    }
}
