//! How large a split is to be.

use super::cover::MOST_FRAMES;
use super::draft::BenchDraft;
use super::read;
use crate::almanac::divide::{Divide, Divided, divide};
use crate::almanac::typed::{self, TypedError};

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct DivideSum {
    /// What is to be divided.
    pub of: Divide,
    /// The answer; none when all bees fly back.
    pub divided: Option<Divided>,
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<DivideSum> {
    read_all(draft).ok()
}

fn read_all(draft: &BenchDraft) -> Result<DivideSum, TypedError> {
    let bees = read::frames(draft.split_bees(), MOST_FRAMES)?;
    let of = Divide {
        bees,
        stays: typed::count(draft.split_stays(), 1, MOST_FRAMES)?,
        goes: typed::count(draft.split_goes(), 1, MOST_FRAMES)?,
        back: typed::share(draft.split_back())?,
    };
    Ok(DivideSum { of, divided: divide(&of) })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(bees: &str, stays: &str) -> BenchDraft {
        BenchDraft::default().with("split_bees", bees).with("split_stays", stays)
    }

    /// A verdict of example bees would be read as one of the keeper's own hive.
    #[test]
    fn there_is_no_answer_before_the_bees_and_the_comb_of_a_hive_are_there() {
        for (bees, stays) in [("", ""), ("16", ""), ("", "10")] {
            assert_eq!(reckon(&of(bees, stays)), None);
        }
    }

    /// Worked by hand: whole frames are carried over, so 8 × 0.7 = 5.6 stay there and not 5: 13 × 0.9 + 5.6 = 17.3, so 18.
    /// And 1 × 0.9 + 10 × 0.5 = 5.9, but 10 have to be there to be carried over.
    #[test]
    fn what_is_wanted_is_nine_tenths_of_what_stays_and_what_stays_over_there() {
        let wants = |draft: &BenchDraft| reckon(draft).unwrap().divided.unwrap().wants;
        assert_eq!(wants(&of("16", "13")), 18);
        assert_eq!(wants(&of("16", "1").with("split_back", "50 %")), 10);
        let sum = crate::app::wording::en_yard_decides::split::wanted(10, "90 %", "8", "70 %", 15);
        let said = "Wanted: 10 × 90 % + 8 × 70 %, rounded up, at least 8 =\u{a0}15";
        assert_eq!(sum, said);
    }

    /// Worked by hand: 5 ÷ 0.7 = 7.14, so 8 frames; 8 × 0.7 = 5.6 stay over there, 16 − 5.6 = 10.4 are left on 10.
    #[test]
    fn eight_frames_of_sixteen_leave_both_hives_guarded() {
        let divided = reckon(&of("16", "10")).unwrap().divided.unwrap();
        assert_eq!((divided.take, divided.wants, divided.enough), (8, 15, true));
        assert!((divided.new - 1.12).abs() < 1e-9 && (divided.old - 1.04).abs() < 1e-9);
        let few = reckon(&of("12", "10")).unwrap().divided.unwrap();
        assert!(!few.enough && (few.old - 0.64).abs() < 1e-9);
        assert_eq!(reckon(&of("121", "10")), None);
        assert_eq!(reckon(&of("16", "10").with("split_back", "100 %")).unwrap().divided, None);
    }
}
