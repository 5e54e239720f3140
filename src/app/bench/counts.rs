//! Two counts beside each other.

use super::draft::BenchDraft;
use super::read::{self, MOST_BODIES};
use crate::almanac::quantity::Decimal;
use crate::almanac::trend::{Stretch, Trend, compare_sums};
use crate::almanac::typed;

/// Most trap-days of a count: a hundred traps a year and more.
pub const MOST_DAYS: u32 = 100_000;

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<Trend> {
    let stretch = |count: &str, days: &str| {
        let count = typed::count_or_range(count, MOST_BODIES).ok()?;
        Some(Stretch { count, trap_days: typed::count(days, 0, MOST_DAYS).ok()? })
    };
    let spread = read::maybe(read::more(draft.counts_spread())).ok()?;
    Some(compare_sums(
        stretch(draft.counts_first(), draft.counts_first_days())?,
        stretch(draft.counts_second(), draft.counts_second_days())?,
        spread.map_or(1.0, Decimal::as_f64),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::trend::Word;

    #[test]
    fn sixty_then_ninety_six_are_more_only_where_hives_hardly_differ() {
        let draft = BenchDraft::default();
        assert_eq!(reckon(&draft).unwrap().word, Word::CantTell);
        assert_eq!(reckon(&draft.clone().with("counts_spread", "")).unwrap().word, Word::Up);
        assert_eq!(reckon(&draft.clone().with("counts_spread", "1")).unwrap().word, Word::Up);
        assert_eq!(reckon(&draft.with("counts_second_days", "0")).unwrap().word, Word::NoData);
    }

    #[test]
    fn a_range_stays_one_and_what_cannot_be_read_is_no_answer() {
        let draft = BenchDraft::default().with("counts_spread", "1").with("counts_second", "60-96");
        let trend = reckon(&draft).unwrap();
        assert_eq!((trend.word, trend.ratio.0, trend.ratio.1), (Word::CantTell, Some(1.0), Some(1.6)));
        assert_eq!(reckon(&draft.clone().with("counts_first", "many")), None);
        assert_eq!(reckon(&draft.with("counts_spread", "-1")), None);
    }
}
