//! Does the trap fit the box?

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::fit::{Fit, Side};
use crate::almanac::quantity::{Length, TypedLength};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::fits::reckon;
use crate::app::el::{El, live};
use crate::app::graph::Memo;
use crate::app::parts::card::more;
use crate::app::parts::choice::Choice;
use crate::app::parts::notice::Notice;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_bench::yard::MAY_BE_EMPTY;
use crate::app::wording::en_bench::{DEEP, MEDIUM, OTHER, SHALLOW};
use crate::app::wording::en_sums::fit as w;

const OWN: &[Typed] = &[length("fit-side", w::SIDE, Slot::fit_side, Slot::fit_side_unit)];

const TRAP: &[Typed] = &[
    length("fit-depth", w::DEPTH, Slot::fit_depth, Slot::fit_depth_unit).may_be_empty(),
    length("fit-width", w::WIDTH, Slot::fit_width, Slot::fit_width_unit).may_be_empty(),
    length("fit-length", w::LENGTH, Slot::fit_length, Slot::fit_length_unit).may_be_empty(),
];

const REST: &[Typed] = &[
    length("fit-gap", w::GAP, Slot::fit_gap, Slot::fit_gap_unit).may_be_empty().hint(MAY_BE_EMPTY),
    length("fit-inside", w::INSIDE, Slot::fit_inside, Slot::fit_inside_unit)
        .may_be_empty()
        .hint(MAY_BE_EMPTY),
];

const fn length(id: &'static str, label: &'static str, text: Slot, unit: Slot) -> Typed {
    Typed::new(id, label, text, Reads::Side).unit(unit)
}

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    let box_code = ui.bench().fit_box();
    let boxes = Choice::new("fit-box", w::BOX)
        .options(&[("deep", DEEP), ("medium", MEDIUM), ("shallow", SHALLOW), ("own", OTHER)])
        .text(box_code);
    let own = Memo::new(move || box_code.with(|code| code == "own"));
    shown::body()
        .kid(boxes.view())
        .kid(live(move || own.get().then(|| shown::fields(ui, OWN))))
        .kid(shown::fields(ui, TRAP))
        .kid(answer(w::LABEL, shown, 0).why(w::WHY).view())
        .kid(Notice::caution(w::SLOWLY).view())
        .kid(more(w::REST, shown::fields(ui, REST)))
}

/// Below this, in millimetres, nothing is to spare: no ruler shows it.
const LEAST_SPARE_MM: f64 = 0.05;

fn verdict(fit: &Fit) -> &'static str {
    match fit {
        Fit::Fits { spare, .. } if spare.millimetres() < LEAST_SPARE_MM => w::JUST,
        Fit::Fits { .. } => w::FITS,
        Fit::TooBig { .. } => w::DOES_NOT,
        Fit::Unknown { .. } => w::CANT_TELL,
    }
}

fn show(ui: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    shown.answer(verdict(&sum.fit).to_owned());
    shown.line(match sum.fit {
        Fit::Fits { tightest, spare } => w::to_spare(tightest, &ui.length(spare)),
        Fit::TooBig { side, over, .. } => w::over(side, &ui.length(over)),
        Fit::Unknown { missing } => w::missing(missing),
    });
    let place = &sum.place;
    let room = Length::from_millimetres(place.frame_side.millimetres() - place.clearance.millimetres());
    for (side, trap, room) in [
        (Side::Depth, sum.outer.depth, room.unwrap_or_default()),
        (Side::Width, sum.outer.width, place.gap),
        (Side::Length, sum.outer.length, place.inside),
    ] {
        let trap =
            trap.map_or_else(|| en::NO_ANSWER.to_owned(), |trap: TypedLength| ui.length(trap.length()));
        shown.line(w::line(side, &trap, &ui.length(room)));
    }
    Some(())
}
