//! Whether a trial in pairs can tell anything.

use super::draft::BenchDraft;
use super::read;
use crate::almanac::quantity::Decimal;
use crate::almanac::trial::odds;
use crate::almanac::typed;

/// Most pairs: the sum is worked out at every key.
pub const MOST_PAIRS: u32 = 50;
/// Numbers of pairs that are compared.
const COMPARED: [u32; 6] = [6, 8, 12, 16, 24, 40];

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct TrialSum {
    /// Pairs.
    pub pairs: u32,
    /// Beetles that a hive without it catches.
    pub mean: f64,
    /// Clumping `k`.
    pub clumping: f64,
    /// Share of the catch that it leaves.
    pub left: f64,
    /// Chance that the sign test tells.
    pub power: f64,
    /// The same for other numbers of pairs.
    pub others: Vec<(u32, f64)>,
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<TrialSum> {
    let number =
        |text: &str, most: f64| read::more(text).ok().map(Decimal::as_f64).filter(|number| *number <= most);
    let pairs = typed::count(draft.trial_pairs(), 1, MOST_PAIRS).ok()?;
    let (mean, clumping) = (number(draft.trial_mean(), 1000.0)?, number(draft.trial_clump(), 100.0)?);
    let left = typed::share(draft.trial_left()).ok()?.fraction();
    let odds = odds(mean, clumping, left)?;
    let mut others = Vec::new();
    for other in COMPARED {
        if other != pairs {
            others.push((other, odds.power(other)));
        }
    }
    Some(TrialSum { pairs, mean, clumping, left, power: odds.power(pairs), others })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn with_four_pairs_nothing_can_be_told_and_with_forty_nearly_all() {
        let sum = reckon(&BenchDraft::default().with("trial_pairs", "4")).unwrap();
        assert!(sum.power == 0.0);
        let sum = reckon(&BenchDraft::default()).unwrap();
        assert!(sum.power > 0.1 && sum.power < 0.6, "{}", sum.power);
        assert!(sum.others.last().is_some_and(|(pairs, power)| *pairs == 40 && *power > sum.power));
    }

    /// As the list says: all of 6, all of 7 and of 8, and of 9 all but one.
    #[test]
    fn more_pairs_tell_less_often_while_all_of_them_must_go_one_way() {
        let power = |pairs: u32| {
            reckon(&BenchDraft::default().with("trial_pairs", &pairs.to_string())).unwrap().power
        };
        assert!(
            power(6) > power(7) && power(7) > power(8) && power(9) > power(8),
            "{} {}",
            power(6),
            power(8)
        );
    }

    #[test]
    fn numbers_that_no_sum_can_hold_are_no_answer() {
        assert_eq!(reckon(&BenchDraft::default().with("trial_mean", "0")), None);
        assert_eq!(reckon(&BenchDraft::default().with("trial_mean", "5000")), None);
        assert_eq!(reckon(&BenchDraft::default().with("trial_pairs", "60")), None);
        assert!(reckon(&BenchDraft::default().with("trial_left", "100 %")).unwrap().power < 0.05);
    }
}
