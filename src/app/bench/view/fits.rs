//! Does the trap fit the box?

use super::says;
use super::shown::{self, Shown, answer};
use crate::almanac::fit::{Fit, Side};
use crate::almanac::quantity::{Length, TypedLength};
use crate::app::bench::fits::{FitSum, reckon};
use crate::app::el::{El, live};
use crate::app::graph::RwSignal;
use crate::app::parts::card::more;
use crate::app::parts::choice::Choice;
use crate::app::parts::field::Field;
use crate::app::parts::notice::Notice;
use crate::app::state::Ui;
use crate::app::wording::en_bench::{DEEP, MEDIUM, OTHER, SHALLOW};
use crate::app::wording::en_sums::fit as w;
use crate::app::wording::{en, en_bench};

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let t = ui.bench();
    let shown = shown::follow(move || {
        ui.draft.with(|draft| {
            reckon(draft).map(|sum| Shown {
                answers: vec![(verdict(&sum.fit).to_owned(), lines(ui, &sum))],
                ..Shown::default()
            })
        })
    });
    let side =
        move |id: &'static str, label: &'static str, text: RwSignal<String>, unit: RwSignal<String>| {
            Field::new(id, label, text)
                .decimal()
                .length(unit)
                .says(move || text.with(|typed| says::optional(says::length(ui, text, unit), typed)))
        };
    let own = move || {
        t.fit_box().with(|code| code == "own").then(|| {
            Field::new("fit-side", w::SIDE, t.fit_side())
                .decimal()
                .length(t.fit_side_unit())
                .says(move || says::length(ui, t.fit_side(), t.fit_side_unit()))
                .view()
        })
    };
    let rest = shown::fields([
        side("fit-gap", w::GAP, t.fit_gap(), t.fit_gap_unit()).hint(en_bench::yard::MAY_BE_EMPTY).view(),
        side("fit-bar", w::BAR, t.fit_bar(), t.fit_bar_unit()).hint(en_bench::yard::MAY_BE_EMPTY).view(),
    ]);
    let sides = shown::fields([
        side("fit-depth", w::DEPTH, t.fit_depth(), t.fit_depth_unit()).view(),
        side("fit-width", w::WIDTH, t.fit_width(), t.fit_width_unit()).view(),
        side("fit-length", w::LENGTH, t.fit_length(), t.fit_length_unit()).view(),
    ]);
    let boxes = Choice::new("fit-box", w::BOX)
        .option("deep", DEEP)
        .option("medium", MEDIUM)
        .option("shallow", SHALLOW)
        .option("own", OTHER)
        .text(t.fit_box());
    shown::body()
        .kid(boxes.view())
        .kid(live(own))
        .kid(sides)
        .kid(answer(w::LABEL, shown, 0).why(w::WHY).view())
        .kid(Notice::caution(w::SLOWLY).view())
        .kid(more(w::REST, rest))
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

fn lines(ui: Ui, sum: &FitSum) -> Vec<String> {
    let mut lines = match sum.fit {
        Fit::Fits { tightest, spare } => vec![w::to_spare(tightest, &ui.length(spare))],
        Fit::TooBig { side, over, .. } => vec![w::over(side, &ui.length(over))],
        Fit::Unknown { missing } => vec![w::missing(missing)],
    };
    let place = &sum.place;
    let room = Length::from_millimetres(place.frame_side.millimetres() - place.clearance.millimetres());
    for (side, trap, room) in [
        (Side::Depth, sum.outer.depth, room.unwrap_or_default()),
        (Side::Width, sum.outer.width, place.gap),
        (Side::Length, sum.outer.length, place.top_bar),
    ] {
        let trap =
            trap.map_or_else(|| en::NO_ANSWER.to_owned(), |trap: TypedLength| ui.length(trap.length()));
        lines.push(w::line(side, &trap, &ui.length(room)));
    }
    lines
}
