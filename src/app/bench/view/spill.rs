//! The tilt at which an open trap spills.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::spill::LEAST_DEPTH_MM;
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::spill::{SpillSum, reckon};
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::parts::drawing::cutaway;
use crate::app::state::Ui;
use crate::app::wording::en_bench::yard::HALF_FULL;
use crate::app::wording::en_sums::spill as w;

const FIELDS: &[Typed] = &[
    Typed::new("spill-length", w::LENGTH, Slot::spill_length, Reads::Side).unit(Slot::spill_length_unit),
    Typed::new("spill-depth", w::DEPTH, Slot::spill_depth, Reads::Side).unit(Slot::spill_depth_unit),
    Typed::new("spill-fill", w::FILL, Slot::spill_fill, Reads::Fill),
];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    shown::body()
        .kid(shown::fields(ui, FIELDS))
        .kid(answer(w::GOES_OVER, shown, 0).why(w::WHY).view())
        .kid(live(move || figure(ui)))
        .kid(shown::cautions(shown))
        .kid(shown::h3(w::OTHERS))
        .kid(shown::list(shown))
        .kid(shown::small(w::LIDDED))
}

fn figure(ui: Ui) -> Bit {
    let Some(sum) = ui.draft.with(reckon) else { return Bit::Nothing };
    let fill = sum.fill.fraction();
    let (length, depth) = (sum.length.millimetres(), sum.depth.millimetres());
    let drawing = cutaway(length, depth, fill, &locale::percent(fill, 1), &degrees(&sum));
    el("div").class("figure-wide").kid(drawing).into()
}

fn angle(degrees: f64) -> String {
    w::degrees(&locale::number(degrees, 1))
}

fn degrees(sum: &SpillSum) -> String {
    if sum.fill.fraction() > 0.0 { angle(sum.spill.degrees) } else { w::EMPTY.to_owned() }
}

/// Rise over run at the moment it spills.
fn slope(sum: &SpillSum) -> f64 {
    let (fill, sides) = (sum.fill.fraction(), sum.depth.millimetres() / sum.length.millimetres());
    if fill >= 0.5 { 2.0 * (1.0 - fill) * sides } else { sides / (2.0 * fill) }
}

/// Two decimals, and four where two would show next to nothing.
fn slope_shown(slope: f64) -> String {
    locale::number(slope, if slope < 0.1 { 4 } else { 2 })
}

fn show(ui: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    shown.answer(degrees(&sum));
    let (fill, spill) = (sum.fill.fraction(), &sum.spill);
    if fill > 0.0 {
        shown.line(w::braking(spill.braking).to_owned());
        let (length, depth) = (ui.length(sum.length), ui.length(sum.depth));
        let (slope, tilt) = (slope_shown(slope(&sum)), angle(spill.degrees));
        shown.line(if fill >= 0.5 {
            w::upper_sum(&locale::percent(1.0 - fill, 1), &depth, &length, &slope, &tilt)
        } else {
            w::lower_sum(&depth, &locale::percent(fill, 1), &length, &slope, &tilt)
        });
    }
    if spill.degrees < 5.0 {
        shown.caution(w::ANY_BUMP);
    } else if fill > 0.6 {
        shown.caution(HALF_FULL);
    }
    if spill.oil_depth.millimetres() < LEAST_DEPTH_MM && fill > 0.0 {
        shown.caution(&w::shallow(&ui.length(spill.oil_depth)));
    }
    for (percent, degrees) in &sum.others {
        let fill = locale::percent(f64::from(*percent) / 100.0, 0);
        shown.list.push(w::other(&fill, &angle(*degrees)));
    }
    Some(())
}
