//! Is it getting better? Beetles for 100 trap-days with their limits, and two stretches of days beside each other.
//!
//! Beetles clump among hives (Spiewok et al. 2007, 2008), so a yard of ten hives tells less than ten times one hive, and a
//! comparison that takes every beetle for a coin of its own cries wolf: with clumping `k` = 1 and three hives in a fifth of
//! all cases in which nothing has changed (`tests/figures/false_alarms.py`). Each hive is therefore set beside itself:
//!
//! - the ratio of the rates is that of Mantel & Haenszel over the hives that fished in both stretches. Where effort is alike
//!   at all hives it is `(c2 ÷ t2) ÷ (c1 ÷ t1)` of the sums, and its variance `1 ÷ c1 + 1 ÷ c2` (Greenland & Robins 1985);
//! - the variance is multiplied by the spread `φ`: the larger of 1, of Pearson's χ² of the hives ÷ (hives − 1)
//!   (quasi-likelihood: `McCullagh` & Nelder 1989, 9.2), and of what the hives one by one would have moved the answer by (the
//!   jackknife form of the sandwich: `MacKinnon` & White 1985, HC3). Pearson's alone is too small where a few hives bring most
//!   of the beetles: with 1.96 it leaves 11 to 17 % false alarms with 24 hives at `k` = 0.5 (`tests/figures/false_alarms.json`);
//! - the limits are as wide as Student's t of hives − 1 makes them, since `φ` is itself an estimate from so many hives.
//!
//! Where one of the counts is below [`SMALL`] the exact test must agree, which counts no clumping; of one hive, or of sums
//! without hives, it is all there is, and whoever reads that is told. With no change at all the word was then "up" or "down" in
//! at most 6.5 % of 4,000 cases each for `k` from 0.2 up, 2 to 60 hives, 2 to 60 beetles a hive. Where counts are ranges a word is
//! said only if it is proved for every mixture of counts within them (`mixtures`).

mod exact;
mod mixtures;

use super::chance::{NORMAL, TAIL, as_unlikely, poisson_limits, student};
use super::tally::CountRange;
use exact::exact;
use mixtures::all_rise;

/// Below so many beetles in one of two counts the limits of a ratio are no longer good and the exact test decides.
pub const SMALL: u32 = 30;
/// Beetles in both counts of several hives from which the exact test is not summed any more: two counts of which one is small
/// are then told apart by their limits alone.
const MOST: u32 = 5000;
/// A hive may bring all but this share of what is known; else its own error would be divided by nothing.
const LEAST_OTHERS: f64 = 0.02;

/// Beetles counted while traps fished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stretch {
    /// How many.
    pub count: CountRange,
    /// Traps times days.
    pub trap_days: u32,
}

/// Beetles for 100 trap-days.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Rate {
    /// What was counted, at the fewest and at the most; the most is not known of "fifty and more".
    pub seen: (f64, Option<f64>),
    /// Exact limits of 95 %: the lower one of the fewest, the upper one of the most (Garwood 1936).
    pub limits: (f64, Option<f64>),
}

/// What two stretches say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Word {
    /// More in the second one.
    Up,
    /// Less.
    Down,
    /// They do not say.
    CantTell,
    /// No trap fished in one of them.
    NoData,
}

/// Two stretches beside each other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Trend {
    /// What they say.
    pub word: Word,
    /// The first stretch, of the hives that are compared.
    pub first: Stretch,
    /// The second.
    pub second: Stretch,
    /// How many times the first rate the second is, at the least and at the most that the counts allow; none where nothing is
    /// divided by.
    pub ratio: (Option<f64>, Option<f64>),
    /// Limits of 95 % of that.
    pub limits: (Option<f64>, Option<f64>),
    /// `φ`: how many times as much as by chance alone the hives spread, never below 1.
    pub spread: f64,
    /// How many standard errors the limits lie away.
    pub quantile: f64,
    /// Chance of counts as far apart or further, either way, if nothing has changed and beetles did not clump: twice that of
    /// the one side, as the limits are; where one of the counts is small.
    pub chance: Option<f64>,
    /// All counts at either end of their ranges would say more or fewer, but not every mixture of them is known to.
    pub mixed: bool,
    /// Hives that are compared; 1 where no hives are known.
    pub hives: u32,
    /// Of these, hives with beetles for certain: those that tell of the spread.
    pub used: u32,
    /// Of these, hives whose rate rose for certain, and hives whose rate fell.
    pub rose: u32,
    /// See `rose`.
    pub fell: u32,
}

impl Stretch {
    /// Nothing fished and nothing was counted.
    pub const NONE: Stretch = Stretch { count: CountRange::NONE, trap_days: 0 };

    /// Both together.
    #[must_use]
    pub fn plus(self, other: Stretch) -> Stretch {
        Stretch {
            count: self.count.plus(other.count),
            trap_days: self.trap_days.saturating_add(other.trap_days),
        }
    }

    /// Beetles for 100 trap-days; none where no trap fished, which is no data and not a rate of 0.
    pub fn rate(self) -> Option<Rate> {
        if self.trap_days == 0 {
            return None;
        }
        let each = |beetles: f64| beetles * 100.0 / f64::from(self.trap_days);
        let (low, high) = (self.count.low(), self.count.high());
        Some(Rate {
            seen: (each(f64::from(low)), high.map(|high| each(f64::from(high)))),
            limits: (each(poisson_limits(low).0), high.map(|high| each(poisson_limits(high).1))),
        })
    }
}

impl Trend {
    /// Chance that so many of the hives that rose or fell did the same, or anything no likelier, if each rises as often as it
    /// falls: the sign test, which no clumping misleads.
    pub fn sign(&self) -> f64 {
        as_unlikely(self.rose, self.rose + self.fell, 0.5)
    }
}

/// Two stretches of the same hives, hive by hive. Hives that did not fish in both are left out.
pub fn compare(hives: &[(Stretch, Stretch)]) -> Trend {
    let mut both = Vec::new();
    for pair in hives {
        if pair.0.trap_days > 0 && pair.1.trap_days > 0 {
            both.push(*pair);
        }
    }
    judge(&both, None)
}

/// Two sums of which no hives are known, with a spread that somebody takes for right, at least 1.
pub fn compare_sums(first: Stretch, second: Stretch, spread: f64) -> Trend {
    let pair = (first, second);
    let fished = first.trap_days > 0 && second.trap_days > 0;
    judge(if fished { std::slice::from_ref(&pair) } else { &[] }, Some(spread.max(1.0)))
}

/// Fewest hives with beetles by whose spread one of them is judged: with three up to 6.7 % of hives with no change would be
/// said to have one, with four at most 4 % (`tests/figures/hive_alarms.py`).
pub const LEAST_HIVES: u32 = 4;

/// One hive of those that `all` compares, each of which is set beside itself: their spread stands for its own. The counts of
/// one hive cannot tell how far it strays from year to year: a hive that has many has them all year, and by the spread of its
/// own counts up to nine of ten hives with no change would be said to have one. None where fewer than [`LEAST_HIVES`] have
/// beetles, or all of them none in one of the two times: then nothing tells of their spread.
pub fn compare_one(first: Stretch, second: Stretch, all: &Trend) -> Option<Trend> {
    let known = all.used >= LEAST_HIVES && all.limits.0.is_some() && all.limits.1.is_some();
    known.then(|| compare_sums(first, second, all.spread))
}

/// A hive, counted to the last beetle.
struct Of {
    first: u32,
    second: u32,
    first_days: f64,
    second_days: f64,
}

/// What counts of one size each come to.
struct Judged {
    word: Word,
    ratio: Option<f64>,
    limits: (Option<f64>, Option<f64>),
    spread: f64,
    quantile: f64,
    chance: Option<f64>,
}

fn judge(hives: &[(Stretch, Stretch)], spread: Option<f64>) -> Trend {
    let (mut first, mut second) = (Stretch::NONE, Stretch::NONE);
    let (mut rose, mut fell, mut used) = (0, 0, 0);
    for (before, after) in hives {
        used += u32::from(before.count.low() > 0 || after.count.low() > 0);
        first = first.plus(*before);
        second = second.plus(*after);
        rose += u32::from(above(after, before));
        fell += u32::from(above(before, after));
    }
    // Ranges are put at both of their ends, all hives alike, each time against the change that would be told.
    let least = corner(hives, first.count.high().is_some(), spread, (rose, fell), &|(before, after)| {
        (before.high().unwrap_or(before.low()), after.low())
    });
    let most = corner(hives, second.count.high().is_some(), spread, (rose, fell), &|(before, after)| {
        (before.low(), after.high().unwrap_or(after.low()))
    });
    let ends = match (&least, &most) {
        _ if hives.is_empty() => Word::NoData,
        // Without an upper end the ratio may be as small, or as large, as it likes.
        (None, Some(most)) if most.word == Word::Down => Word::Down,
        (Some(least), None) if least.word == Word::Up => Word::Up,
        (Some(least), Some(most)) if least.word == most.word => least.word,
        _ => Word::CantTell,
    };
    let holds = || match (hives, ends) {
        // Of one hive the limits are widest at the fewest beetles: with them in both they are nearest to 1 at one end of the
        // count that the word goes against.
        ([_], _) => {
            let few =
                corner(hives, true, spread, (rose, fell), &|(before, after)| (before.low(), after.low()));
            few.is_some_and(|few| few.word == ends)
        }
        (_, Word::Up) => all_rise(hives),
        _ => {
            let mut turned = Vec::new();
            for (before, after) in hives {
                turned.push((*after, *before));
            }
            all_rise(&turned)
        }
    };
    let exact = hives.iter().all(|(before, after)| before.count.is_exact() && after.count.is_exact());
    let mixed = matches!(ends, Word::Up | Word::Down) && !exact && !holds();
    let word = if mixed { Word::CantTell } else { ends };
    let of = |judged: &Option<Judged>, what: fn(&Judged) -> f64| judged.as_ref().map_or(1.0, what);
    let wider = if of(&most, |one| one.spread) > of(&least, |one| one.spread) { &most } else { &least };
    let chance = |judged: &Option<Judged>| judged.as_ref().and_then(|one| one.chance);
    Trend {
        word,
        first,
        second,
        ratio: (least.as_ref().map_or(Some(0.0), |one| one.ratio), most.as_ref().and_then(|one| one.ratio)),
        limits: (
            least.as_ref().map_or(Some(0.0), |one| one.limits.0),
            most.as_ref().and_then(|one| one.limits.1),
        ),
        spread: of(wider, |one| one.spread),
        quantile: of(wider, |one| one.quantile),
        // The less striking of the two.
        chance: match (chance(&least), chance(&most)) {
            (Some(least), Some(most)) => Some(least.max(most)),
            (one, other) => one.or(other),
        },
        mixed,
        hives: u32::try_from(hives.len()).unwrap_or(u32::MAX),
        used,
        rose,
        fell,
    }
}

/// Whether the rate of `one` lies above that of `other` wherever in their ranges both are.
pub(super) fn above(one: &Stretch, other: &Stretch) -> bool {
    let each = |beetles: u32, days: u32| u64::from(beetles) * u64::from(days);
    other.count.high().is_some_and(|high| each(one.count.low(), other.trap_days) > each(high, one.trap_days))
}

fn corner(
    hives: &[(Stretch, Stretch)],
    closed: bool,
    spread: Option<f64>,
    signs: (u32, u32),
    counts: &dyn Fn((CountRange, CountRange)) -> (u32, u32),
) -> Option<Judged> {
    if !closed {
        return None;
    }
    Some(judge_exact(&of(hives, counts), spread, signs))
}

/// The hives with these counts out of their ranges.
fn of(hives: &[(Stretch, Stretch)], counts: &dyn Fn((CountRange, CountRange)) -> (u32, u32)) -> Vec<Of> {
    let mut all = Vec::new();
    for (before, after) in hives {
        let (first, second) = counts((before.count, after.count));
        let days = |stretch: &Stretch| f64::from(stretch.trap_days);
        all.push(Of { first, second, first_days: days(before), second_days: days(after) });
    }
    all
}

fn judge_exact(hives: &[Of], known: Option<f64>, (rose, fell): (u32, u32)) -> Judged {
    // Sums of Mantel & Haenszel: what each stretch caught, in the days of the other.
    let (mut down, mut up, mut told) = (0.0, 0.0, 0.0);
    let (mut first, mut second, mut used) = (0_u32, 0_u32, 0_u32);
    for hive in hives {
        let days = hive.first_days + hive.second_days;
        down += f64::from(hive.first) * hive.second_days / days;
        up += f64::from(hive.second) * hive.first_days / days;
        told += hive.information();
        first = first.saturating_add(hive.first);
        second = second.saturating_add(hive.second);
        used += u32::from(hive.first > 0 || hive.second > 0);
    }
    let alone = hives.len() < 2;
    let small = first.min(second) < SMALL;
    let chance = (small && (alone || first.saturating_add(second) <= MOST)).then(|| exact(hives));
    let mut judged = Judged {
        word: Word::CantTell,
        ratio: (down > 0.0).then(|| up / down),
        limits: (None, None),
        spread: known.unwrap_or(1.0),
        quantile: NORMAL,
        chance,
    };
    let striking = chance.is_none_or(|chance| chance < 2.0 * TAIL);
    // With beetles in one hive of several nothing tells how much the others would have differed.
    if !alone && used < 2 {
        return judged;
    }
    let (Some(ratio), true) = (judged.ratio, up > 0.0) else {
        // None in one of the two: no ratio has limits. The hives must agree among themselves.
        let agree = alone || as_unlikely(rose, rose + fell, 0.5) < 2.0 * TAIL;
        // Counts that vary `spread` times as much as beetles that come one by one are told apart like counts so many times
        // smaller. Of negative binomial counts of that variance this asks for more than they need: their chance of none is
        // spread^(−mean ÷ (spread − 1)), and never above e^(−mean ÷ spread).
        let striking = match (known, hives) {
            (Some(spread), [hive]) if spread > 1.0 => {
                let chance = exact(&[hive.divided(spread)]);
                judged.chance = Some(chance);
                chance < 2.0 * TAIL
            }
            _ => striking,
        };
        if striking && agree {
            judged.word = if up > 0.0 { Word::Up } else { Word::Down };
        }
        return judged;
    };
    if known.is_none() && !alone {
        judged.spread = spread(hives, ratio, told, used);
        judged.quantile = student(used - 1);
    }
    let width = judged.quantile * (judged.spread * told / (up * down)).sqrt();
    let (low, high) = (ratio * (-width).exp(), ratio * width.exp());
    judged.limits = (Some(low), Some(high));
    // Of one hive without a spread the exact test says as much as can be said.
    let clear = low > 1.0 || high < 1.0 || alone && chance.is_some() && judged.spread <= 1.0;
    if striking && clear {
        judged.word = if up > down { Word::Up } else { Word::Down };
    }
    judged
}

impl Of {
    /// Both counts in whole spreads, rounded down.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a count divided by 1 or more
    fn divided(&self, spread: f64) -> Of {
        let fewer = |count: u32| (f64::from(count) / spread) as u32;
        Of { first: fewer(self.first), second: fewer(self.second), ..*self }
    }

    /// Variance of what the hive adds to either sum of Mantel & Haenszel, if beetles came one by one.
    fn information(&self) -> f64 {
        let days = self.first_days + self.second_days;
        (f64::from(self.first) + f64::from(self.second)) * self.first_days * self.second_days / (days * days)
    }
}

fn spread(hives: &[Of], ratio: f64, told: f64, used: u32) -> f64 {
    let (mut pearson, mut moved) = (0.0, 0.0);
    for hive in hives {
        let all = f64::from(hive.first) + f64::from(hive.second);
        if all <= 0.0 {
            continue;
        }
        let days = hive.first_days + hive.second_days;
        let part = hive.second_days * ratio / (hive.first_days + hive.second_days * ratio);
        let off = f64::from(hive.second) - all * part;
        pearson += off * off / (all * part * (1.0 - part));
        let own = (f64::from(hive.second) * hive.first_days
            - ratio * f64::from(hive.first) * hive.second_days)
            / days;
        let others = (1.0 - hive.information() / told).max(LEAST_OTHERS);
        moved += (own / others).powi(2);
    }
    // Both variances divided by that of beetles that come one by one: `told ÷ (up · down)`.
    (pearson / f64::from(used - 1)).max(moved / (ratio * told)).max(1.0)
}
