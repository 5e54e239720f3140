//! What it takes to close up.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::quantity::Length;
use crate::app::bench::closing::{ClosingSum, reckon};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::read::{self, MOST_HIVES, MOST_PIECES};
use crate::app::edge::locale;
use crate::app::el::El;
use crate::app::state::Ui;
use crate::app::wording::en::with_unit;
use crate::app::wording::en_yard_decides::closing as w;

const NEAR: &[&str] = &["cm", "in"];
const FAR: &[&str] = &["m", "ft"];

const COUNTS: &[Typed] = &[
    Typed::new("closing-screens", w::SCREENS, Slot::closing_screens, Reads::Count(0, MOST_HIVES)),
    Typed::new("closing-cracks", w::CRACKS, Slot::closing_cracks, Reads::Way(FAR))
        .unit(Slot::closing_cracks_unit)
        .may_be_empty(),
    Typed::new("closing-boards", w::BOARDS, Slot::closing_boards, Reads::Count(0, MOST_HIVES)).may_be_empty(),
];

/// Sizes and coverage.
pub(in crate::app) const SIZES: &[Typed] = &[
    Typed::new("closing-cut", w::CUT, Slot::closing_cut, Reads::Far(NEAR)).unit(Slot::closing_cut_unit),
    Typed::new("closing-cut-to", w::CUT_TO, Slot::closing_cut_to, Reads::Far(NEAR))
        .unit(Slot::closing_cut_unit),
    Typed::new("closing-sheet", w::SHEET, Slot::closing_sheet, Reads::Far(NEAR))
        .unit(Slot::closing_sheet_unit),
    Typed::new("closing-sheet-to", w::SHEET_TO, Slot::closing_sheet_to, Reads::Far(NEAR))
        .unit(Slot::closing_sheet_unit),
    Typed::new("closing-reserve", w::RESERVE, Slot::closing_reserve, Reads::Share),
    Typed::new("closing-tube", w::TUBE, Slot::closing_tube, Reads::Far(FAR))
        .unit(Slot::closing_tube_unit)
        .may_be_empty()
        .hint(w::TUBE_HINT),
    Typed::new("closing-coats", w::COATS, Slot::closing_coats, Reads::Count(1, MOST_PIECES)).may_be_empty(),
];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    shown::body()
        .kid(shown::fields(ui, COUNTS))
        .kid(shown::fields(ui, SIZES))
        .kid(answer(w::SHEETS, shown, 0).why(w::WHY).view())
        .kid(answer(w::SEALANT, shown, 1).why(w::SEALANT_WHY).view())
        .kid(answer(w::TINS, shown, 2).view())
}

fn show(_: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let none = [w::NO_CRACKS, w::NO_SCREENS, w::NO_BOARDS];
    reckon(draft).map(|sum| say(draft, &sum, &none, shown))
}

/// Sheets, sealant and coats; where none are wanted, what `none` says of cracks, screens and boards.
pub(in crate::app) fn say(draft: &BenchDraft, sum: &ClosingSum, none: &[&str; 3], shown: &mut Shown) {
    let [no_cracks, no_screens, no_boards] = none;
    let wanted = &sum.wanted;
    match (wanted.screens, &sum.cut, sum.sheets) {
        (0, ..) => shown.waits(no_screens),
        (screens, Some(cut), Some(sheets)) => {
            let answer = w::sheets(sheets);
            shown.answer(answer.clone());
            shown.line(w::cut(cut.along, cut.across, cut.pieces(), cut.turned));
            shown.line(w::over(screens, &cut.pieces().to_string(), &answer));
        }
        _ => shown.waits(w::NOT_ONE),
    }
    let unit = if draft.closing_cracks_unit() == "ft" { "ft" } else { "m" };
    let far = |millimetres: f64| {
        // To buy: up, and float noise is nothing to buy.
        let hundredths = (millimetres / read::way_unit(unit) * 100.0 - 1e-6).ceil().max(0.0);
        with_unit(&locale::number(hundredths / 100.0, 2), unit)
    };
    if wanted.cracks > 0.0 {
        let with_reserve = far(sum.sealant.with_reserve);
        let percent = locale::percent(sum.reserve.fraction(), 1);
        let worked = w::reserve(&far(wanted.cracks), &percent, &with_reserve);
        if let (Some(tubes), Some(tube)) = (sum.sealant.tubes, sum.a_tube.map(Length::millimetres)) {
            let answer = w::tube_count(tubes);
            shown.answer(answer.clone());
            shown.line(worked);
            shown.line(w::tubes(&with_reserve, &far(tube), &answer));
        } else {
            shown.answer(with_reserve);
            shown.line(worked);
            shown.line(w::NO_TUBE.to_owned());
        }
    } else {
        shown.waits(no_cracks);
    }
    match (wanted.boards, sum.coats, sum.tins) {
        (0, ..) => shown.waits(no_boards),
        (boards, Some(coats), Some(tins)) => {
            let answer = w::tins(tins);
            shown.answer(answer.clone());
            shown.line(w::over(boards, &coats.to_string(), &answer));
        }
        _ => shown.waits(w::NO_COATS),
    }
}
