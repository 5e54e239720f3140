//! Traps and oil for a yard: three numbers, and four more behind them.

use super::draft::BenchDraft;
use super::read::{self, MOST_BOXES, MOST_HIVES, MOST_TRAPS_A_BOX};
use crate::almanac::oil::{OilForVisit, OilNeed, Service, oil_for_visit};
use crate::almanac::quantity::{Share, TypedVolume, Volume};
use crate::almanac::stack::{HiveSize, Spot, TrapTotal, stack_spots, trap_total};
use crate::almanac::trap::{TrapForm, TrapKind, TrapSize};
use crate::almanac::typed::{self, TypedError};

/// The answer, with all that is needed to print its sum.
#[derive(Clone, Debug, PartialEq)]
pub struct YardSum {
    /// Traps.
    pub total: TrapTotal,
    /// One trap, brim-full.
    pub holds: TypedVolume,
    /// How full.
    pub fill: Share,
    /// Oil.
    pub oil: OilForVisit,
    /// One bottle, when typed.
    pub bottle: Option<Volume>,
    /// Places of the traps in one hive, from the floor up.
    pub spots: Vec<Vec<Spot>>,
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<YardSum> {
    read_all(draft).ok()
}

fn read_all(draft: &BenchDraft) -> Result<YardSum, TypedError> {
    let hives = typed::count(draft.hives(), 0, MOST_HIVES)?;
    let boxes = typed::count(draft.boxes(), 0, MOST_BOXES)?;
    let a_box = typed::count(draft.a_box(), 0, MOST_TRAPS_A_BOX)?;
    let holds = read::holds(draft.holds(), draft.holds_unit())?;
    let fill = typed::share(draft.fill())?;
    let reserve = typed::share(draft.reserve())?;
    let bottle = read::maybe(read::holds(draft.bottle(), draft.bottle_unit()))?.map(TypedVolume::volume);
    let total = trap_total(hives, boxes, a_box);
    let kind = plain_trap(holds, fill);
    let need = OilNeed { kind: &kind, traps: total.traps, service: Service::Fill, target: fill };
    let oil = oil_for_visit(&[need], reserve);
    let counts = vec![u8::try_from(a_box).unwrap_or(u8::MAX); boxes as usize];
    Ok(YardSum { total, holds, fill, oil, bottle, spots: stack_spots(&counts, HiveSize::Full) })
}

/// An open trap with straight walls of which nothing is known but what it holds.
pub fn plain_trap(holds: TypedVolume, fill: Share) -> TrapKind {
    TrapKind {
        name: String::new(),
        form: TrapForm::BetweenFrame,
        reusable: false,
        capacity: Some(holds),
        inner: TrapSize::default(),
        outer: TrapSize::default(),
        fill,
        max_days: 14,
        profile: Vec::new(),
        packs: Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn draft(hives: &str, boxes: &str, fill: &str) -> BenchDraft {
        BenchDraft::default().with("hives", hives).with("boxes", boxes).with("fill", fill)
    }

    #[test]
    fn the_example_on_the_first_screen_is_forty_traps_and_half_a_litre() {
        let sum = reckon(&BenchDraft::default()).unwrap();
        assert_eq!(sum.total.traps, 40);
        assert_eq!((sum.oil.sum.millilitres(), sum.oil.with_reserve.millilitres()), (400.0, 500.0));
        assert_eq!(sum.spots.len(), 2);
    }

    /// Worked by hand: 24 hives × 3 boxes × 2 × 20 mL × ½ = 1,440 mL, 1,800 mL with reserve.
    #[test]
    fn twenty_four_hives_of_three_boxes_need_1440_and_carry_1800() {
        let sum = reckon(&draft("24", "3", "50 %")).unwrap();
        assert_eq!((sum.oil.sum.millilitres(), sum.oil.with_reserve.millilitres()), (1440.0, 1800.0));
    }

    #[test]
    fn no_hives_need_nothing_and_a_wrong_field_gives_no_answer() {
        let none = reckon(&draft("0", "3", "half")).unwrap();
        assert_eq!((none.total.traps, none.oil.with_reserve.millilitres()), (0, 0.0));
        for wrong in
            [draft("-1", "2", "½"), draft("501", "2", "½"), draft("10", "1/2", "½"), draft("10", "2", "120")]
        {
            assert_eq!(reckon(&wrong), None);
        }
        let holding = |holds: &str| reckon(&draft("10", "2", "½").with("holds", holds));
        assert_eq!(holding("0"), None);
        assert_eq!(holding("0.0"), None);
        assert!(holding("0.5").is_some());
        let bottled = |bottle: &str| reckon(&draft("10", "2", "½").with("bottle", bottle));
        assert_eq!(bottled("0"), None);
        assert!(bottled("").is_some() && bottled("0.5").is_some());
    }
}
