//! What it takes to close up: screens out of sheets, sealant out of tubes, coats for boards.

use super::draft::BenchDraft;
use super::read::{self, MOST_HIVES, MOST_PIECES};
use crate::almanac::closing::{self, Cut, Sealant, Sides};
use crate::almanac::quantity::{Length, Share};
use crate::almanac::typed::{self, TypedError};

/// What is wanted.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Wanted {
    /// Notch screens.
    pub screens: u32,
    /// Millimetres of cracks.
    pub cracks: f64,
    /// Boards to coat.
    pub boards: u32,
}

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct ClosingSum {
    /// What is wanted.
    pub wanted: Wanted,
    /// A screen.
    pub screen: Sides,
    /// A sheet.
    pub sheet: Sides,
    /// How screens lie on a sheet; none where not one fits.
    pub cut: Option<Cut>,
    /// Sheets for all of them.
    pub sheets: Option<u32>,
    /// Sealant on top.
    pub reserve: Share,
    /// How far a tube goes, when typed.
    pub a_tube: Option<Length>,
    /// Sealant and tubes.
    pub sealant: Sealant,
    /// Boards that one tin is enough for, when typed.
    pub coats: Option<u32>,
    /// Tins for all of them.
    pub tins: Option<u32>,
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<ClosingSum> {
    wanted(draft).and_then(|wanted| read_all(draft, wanted)).ok()
}

/// The same for what a yard wants, by its records.
pub fn reckon_for(draft: &BenchDraft, wanted: Wanted) -> Option<ClosingSum> {
    read_all(draft, wanted).ok()
}

/// The widest entrance that is wanted now; none until it is typed.
pub fn entrance(draft: &BenchDraft) -> Option<Length> {
    let typed = read::side(draft.closing_entrance(), draft.closing_entrance_unit());
    typed.ok().map(crate::almanac::quantity::TypedLength::length)
}

fn wanted(draft: &BenchDraft) -> Result<Wanted, TypedError> {
    let cracks = read::maybe(read::way(draft.closing_cracks(), draft.closing_cracks_unit()))?;
    Ok(Wanted {
        screens: typed::count(draft.closing_screens(), 0, MOST_HIVES)?,
        cracks: cracks.map_or(0.0, Length::millimetres),
        boards: read::maybe(typed::count(draft.closing_boards(), 0, MOST_HIVES))?.unwrap_or(0),
    })
}

fn read_all(draft: &BenchDraft, wanted: Wanted) -> Result<ClosingSum, TypedError> {
    let (unit, sheet_unit) = (draft.closing_cut_unit(), draft.closing_sheet_unit());
    let screen = (read::far(draft.closing_cut(), unit)?, read::far(draft.closing_cut_to(), unit)?);
    let sheet =
        (read::far(draft.closing_sheet(), sheet_unit)?, read::far(draft.closing_sheet_to(), sheet_unit)?);
    let reserve = typed::share(draft.closing_reserve())?;
    let a_tube = read::maybe(read::far(draft.closing_tube(), draft.closing_tube_unit()))?;
    let coats = read::maybe(typed::count(draft.closing_coats(), 1, MOST_PIECES))?;
    let cut = closing::cut(sheet, screen);
    let sheets = cut.and_then(|cut| closing::packs(wanted.screens, cut.pieces()));
    let sealant = closing::sealant(wanted.cracks, reserve, a_tube);
    let tins = coats.and_then(|coats| closing::packs(wanted.boards, coats));
    Ok(ClosingSum { wanted, screen, sheet, cut, sheets, reserve, a_tube, sealant, coats, tins })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_screens_come_out_of_one_sheet_of_fifty() {
        let sum = reckon(&BenchDraft::default()).unwrap();
        // 100 ÷ 12 = 8 by 50 ÷ 8 = 6; turned 100 ÷ 8 = 12 by 50 ÷ 12 = 4: as many, so it stays.
        assert_eq!(sum.cut, Some(Cut { along: 8, across: 6, turned: false }));
        assert_eq!((sum.sheets, sum.tins, sum.sealant.tubes), (Some(1), None, None));
        assert!((sum.sealant.with_reserve - 8800.0).abs() < 1e-9);
        let more = BenchDraft::default().with("closing_screens", "49").with("closing_tube", "2.2");
        let sum = reckon(&more).unwrap();
        assert_eq!((sum.sheets, sum.sealant.tubes), (Some(2), Some(4)));
        let boards = reckon(&more.with("closing_boards", "7").with("closing_coats", "3")).unwrap();
        assert_eq!(boards.tins, Some(3));
    }

    #[test]
    fn a_screen_larger_than_the_sheet_comes_out_of_none_and_nothing_is_no_screen() {
        let large = BenchDraft::default().with("closing_cut", "120").with("closing_cut_to", "60");
        let sum = reckon(&large).unwrap();
        assert_eq!((sum.cut, sum.sheets), (None, None));
        assert_eq!(reckon(&BenchDraft::default().with("closing_cut", "0")), None);
        assert_eq!(reckon(&BenchDraft::default().with("closing_tube", "0")), None);
    }

    #[test]
    fn what_a_yard_wants_does_not_hang_on_the_counts_of_the_bench() {
        let draft = BenchDraft::default().with("closing_screens", "many");
        assert_eq!(reckon(&draft), None);
        let wanted = Wanted { screens: 50, cracks: 0.0, boards: 0 };
        assert_eq!(reckon_for(&draft, wanted).and_then(|sum| sum.sheets), Some(2));
    }
}
