//! The tilt at which an open trap spills.

use super::says;
use super::shown::{self, Shown, answer};
use crate::almanac::spill::LEAST_DEPTH_MM;
use crate::app::bench::spill::{SpillSum, reckon};
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::RwSignal;
use crate::app::parts::drawing::cutaway;
use crate::app::parts::field::{Field, Says};
use crate::app::state::Ui;
use crate::app::wording::en_bench::yard::HALF_FULL;
use crate::app::wording::en_sums::spill as w;

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let t = ui.bench();
    let shown = shown::follow(move || {
        ui.draft.with(|draft| {
            reckon(draft).map(|sum| Shown {
                answers: vec![(degrees(&sum), lines(ui, &sum))],
                cautions: cautions(ui, &sum),
                list: others(&sum),
            })
        })
    });
    let side =
        move |id: &'static str, label: &'static str, text: RwSignal<String>, unit: RwSignal<String>| {
            let says = move || match says::length(ui, text, unit) {
                Says::Wrong(wrong) => Says::Wrong(wrong),
                _ if text.with(|text| nothing(text)) => Says::Wrong(w::NO_SIDE.to_owned()),
                says => says,
            };
            Field::new(id, label, text).decimal().length(unit).says(says).view()
        };
    shown::body()
        .kid(shown::fields([
            side("spill-length", w::LENGTH, t.spill_length(), t.spill_length_unit()),
            side("spill-depth", w::DEPTH, t.spill_depth(), t.spill_depth_unit()),
            Field::new("spill-fill", w::FILL, t.spill_fill())
                .says(move || says::share(t.spill_fill()))
                .view(),
        ]))
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

/// A side of nothing is readable as a number and useless as a side.
fn nothing(text: &str) -> bool {
    text.bytes().any(|b| b == b'0') && !text.bytes().any(|b| (b'1'..=b'9').contains(&b)) && text.is_ascii()
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

fn lines(ui: Ui, sum: &SpillSum) -> Vec<String> {
    let (fill, spill) = (sum.fill.fraction(), &sum.spill);
    if fill <= 0.0 {
        return Vec::new();
    }
    let (length, depth) = (ui.length(sum.length), ui.length(sum.depth));
    let slope = locale::number(slope(sum), 2);
    let working = if fill >= 0.5 {
        w::upper_sum(&locale::percent(1.0 - fill, 1), &depth, &length, &slope, &angle(spill.degrees))
    } else {
        w::lower_sum(&depth, &locale::percent(fill, 1), &length, &slope, &angle(spill.degrees))
    };
    vec![w::braking(&locale::number(spill.braking, 1)), working]
}

fn others(sum: &SpillSum) -> Vec<String> {
    let line = |(percent, degrees): &(u32, f64)| {
        w::other(&locale::percent(f64::from(*percent) / 100.0, 0), &angle(*degrees))
    };
    sum.others.iter().map(line).collect()
}

fn cautions(ui: Ui, sum: &SpillSum) -> Vec<String> {
    let spill = &sum.spill;
    let mut said = Vec::new();
    if spill.degrees < 5.0 {
        said.push(w::ANY_BUMP.to_owned());
    } else if sum.fill.fraction() > 0.6 {
        said.push(HALF_FULL.to_owned());
    }
    let deep = spill.oil_depth;
    if deep.millimetres() < LEAST_DEPTH_MM && sum.fill.fraction() > 0.0 {
        said.push(w::shallow(&ui.length(deep)));
    }
    said
}
