//! A trial of the keeper's own: hives in pairs that are alike, one of each drawn by lot for what is tried, and an exact
//! test over the pairs on a day that was fixed beforehand.
//!
//! The sign test decides (Arbuthnot 1710; exact binomial): it asks of each pair alone which hive caught less, so
//! neither clumping nor one hive full of beetles misleads it. The paired permutation test (Fisher 1935) stands beside
//! it and decides nothing, since of two tests one is too easily taken for the one that was meant.

use super::chance::{as_unlikely, binomial, clumped};
use super::draw::coins;
use super::order::sort_by;
use super::trend::{Stretch, above};

/// What counts as told: rarer than one case in twenty.
const RARE: f64 = 0.05;
/// Pairs below which not even all of them together can tell anything: five that all go one way come by chance in 1 of 16
/// cases.
pub const LEAST_PAIRS: u32 = 6;
/// Most pairs for which every way to swap hives within them is gone through.
const PERMUTED: usize = 12;

/// Places of hives in pairs.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pairs {
    /// The hive that gets it and the one that does not.
    pub each: Vec<(usize, usize)>,
    /// The one that is left over of an odd number.
    pub left: Option<usize>,
}

/// Puts hives with catches alike together, from the largest catch down and those without one last, and draws by `seed`
/// which of each pair gets it, each pair by a coin of its own. One hive in each pair gets it, so the sides are always
/// even. Of an odd number the last is left over: the one that tells least.
pub fn pairs(catches: &[Option<f64>], seed: &str) -> Pairs {
    let mut order: Vec<usize> = (0..catches.len()).collect();
    // Those of one catch stay in the order of the walk.
    let of = |place: usize| catches.get(place).copied().flatten();
    sort_by(&mut order, |one, other| {
        let (a, b) = (of(*one), of(*other));
        let unknown = a.is_none().cmp(&b.is_none());
        unknown.then(b.unwrap_or(0.0).total_cmp(&a.unwrap_or(0.0))).then(one.cmp(other))
    });
    let tossed = coins(order.len() / 2, seed);
    let mut each = Vec::new();
    for (pair, first) in order.chunks_exact(2).zip(tossed) {
        if let [one, other] = pair {
            each.push(if first { (*one, *other) } else { (*other, *one) });
        }
    }
    Pairs { each, left: order.chunks_exact(2).remainder().first().copied() }
}

/// What a trial came to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Outcome {
    /// Pairs in which the hive that got it caught less a trap-day.
    pub less: u32,
    /// Pairs in which it caught more.
    pub more: u32,
    /// Pairs in which they caught alike, or ranges do not say which caught more.
    pub even: u32,
    /// Pairs of which one hive has no count.
    pub open: u32,
    /// Chance of this, or anything as uneven, if it does nothing: the sign test.
    pub sign: f64,
    /// The same by the differences themselves; none with ranges or more than 12 pairs.
    pub permuted: Option<f64>,
}

impl Outcome {
    /// Whether the sign test tells anything.
    pub fn told(&self) -> bool {
        self.sign < RARE
    }
}

/// What pairs of stretches say, each that of the hive that got it and that of the other.
pub fn outcome(pairs: &[(Stretch, Stretch)]) -> Outcome {
    let (mut less, mut more, mut even, mut open) = (0, 0, 0, 0);
    let mut differences = Some(Vec::new());
    for (with, without) in pairs {
        let (Some(one), Some(other)) = (with.rate(), without.rate()) else {
            open += 1;
            continue;
        };
        if above(without, with) {
            less += 1;
        } else if above(with, without) {
            more += 1;
        } else {
            even += 1;
        }
        let exact = with.count.is_exact() && without.count.is_exact();
        differences = differences.filter(|_| exact).map(|mut all: Vec<f64>| {
            all.push(one.seen.0 - other.seen.0);
            all
        });
    }
    let permuted = differences.filter(|all| (1..=PERMUTED).contains(&all.len())).map(|all| swapped(&all));
    Outcome { less, more, even, open, sign: as_unlikely(less, less + more, 0.5), permuted }
}

/// Share of all ways to swap hives within their pairs in which the differences come to as much, either way.
fn swapped(differences: &[f64]) -> f64 {
    let seen: f64 = differences.iter().sum::<f64>().abs();
    // Sums of the same numbers in another order are the same.
    let noise = differences.iter().map(|one| one.abs()).sum::<f64>() * 1e-12;
    let ways = 1_u32 << differences.len();
    let mut as_far = 0;
    for way in 0..ways {
        let mut sum = 0.0;
        for (at, one) in differences.iter().enumerate() {
            sum += if way >> at & 1 == 1 { -one } else { *one };
        }
        as_far += u32::from(sum.abs() >= seen - noise);
    }
    f64::from(as_far) / f64::from(ways)
}

/// What chance a pair has to be told apart, and which way.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Odds {
    /// Chance that the hive with it catches less.
    pub less: f64,
    /// Chance that both catch alike.
    pub even: f64,
}

/// The odds of a pair where a hive without it catches `mean` beetles over the trial, one with it the share `left` of
/// that, and hives clump by `clumping` (variance mean + mean² ÷ clumping); at equal effort. None where they cannot be
/// worked out ([`clumped`]).
pub fn odds(mean: f64, clumping: f64, left: f64) -> Option<Odds> {
    let (without, with) = (clumped(mean, clumping)?, clumped(mean * left, clumping)?);
    let (mut less, mut even, mut below) = (0.0, 0.0, 0.0);
    for (at, (wide, chance)) in without.iter().enumerate() {
        let here = with.get(at).map_or(0.0, |(_, chance)| *chance);
        // Two that fall into one step are alike in one case of its width; the others go either way.
        less += chance * (below + here * (1.0 - 1.0 / wide) / 2.0);
        even += chance * here / wide;
        below += here;
    }
    Some(Odds { less, even })
}

impl Odds {
    /// Chance that the sign test over `pairs` pairs will say that it helps. 0 with fewer than [`LEAST_PAIRS`].
    pub fn power(self, pairs: u32) -> f64 {
        let uneven = (1.0 - self.even).max(0.0);
        if uneven <= 0.0 {
            return 0.0;
        }
        let mut told = 0.0;
        for some in LEAST_PAIRS..=pairs {
            let wanted = (some / 2 + 1..=some).find(|wins| as_unlikely(*wins, some, 0.5) < RARE);
            let Some(wanted) = wanted else { continue };
            let wins: f64 = (wanted..=some).map(|wins| binomial(wins, some, self.less / uneven)).sum();
            told += binomial(some, pairs, uneven) * wins;
        }
        told.min(1.0)
    }
}
