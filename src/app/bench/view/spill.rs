//! The tilt at which an open trap spills.

use super::says;
use crate::almanac::spill::LEAST_DEPTH_MM;
use crate::app::bench::spill::{SpillSum, reckon};
use crate::app::edge::locale;
use crate::app::parts::answer::Answer;
use crate::app::parts::drawing::cutaway;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::notice::Notice;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_bench::yard::HALF_FULL;
use crate::app::wording::en_sums::spill as w;
use leptos::prelude::*;

/// The card's body.
pub(super) fn view(ui: Ui) -> AnyView {
    let t = ui.bench;
    let sum = Memo::new(move |_| ui.draft.with(reckon));
    let side = move |id: &'static str,
                     label: &'static str,
                     text: RwSignal<String>,
                     unit: RwSignal<String>| {
        Field::new(id, label, text).decimal().length(unit).says(move || match says::length(ui, text, unit) {
            Says::Wrong(wrong) => Says::Wrong(wrong),
            _ if text.with(|text| nothing(text)) => Says::Wrong(w::NO_SIDE.to_owned()),
            says => says,
        })
    };
    let drawn = move || {
        sum.with(|sum| {
            sum.as_ref().map(|sum| {
                let (length, depth) = (sum.length.millimetres(), sum.depth.millimetres());
                view! { <div class="figure-wide">{cutaway(length, depth, sum.fill.fraction(), &degrees(sum))}</div> }
            })
        })
    };
    view! {
        <div class="fields">
            {side("spill-length", w::LENGTH, t.spill_length, t.spill_length_unit).view()}
            {side("spill-depth", w::DEPTH, t.spill_depth, t.spill_depth_unit).view()}
            {Field::new("spill-fill", w::FILL, t.spill_fill).says(move || says::share(t.spill_fill)).view()}
        </div>
        {Answer::new(
                w::GOES_OVER,
                move || sum.with(|sum| sum.as_ref().map_or_else(|| en::NO_ANSWER.to_owned(), degrees)),
            )
            .sum(move || sum.with(|sum| sum.as_ref().map(|sum| lines(ui, sum)).unwrap_or_default()))
            .why(w::WHY)
            .view()}
        {drawn}
        {move || sum.with(|sum| sum.as_ref().map(|sum| cautions(ui, sum)))}
        <h3>{w::OTHERS}</h3>
        <ul class="tabular">
            {move || {
                sum.with(|sum| sum.as_ref().map(others).unwrap_or_default())
                    .into_iter()
                    .map(|line| view! { <li>{line}</li> })
                    .collect_view()
            }}
        </ul>
        <p class="small">{w::LIDDED}</p>
    }
    .into_any()
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

fn lines(ui: Ui, sum: &SpillSum) -> Vec<String> {
    let (fill, spill) = (sum.fill.fraction(), &sum.spill);
    if fill <= 0.0 {
        return Vec::new();
    }
    let (length, depth) = (ui.length(sum.length), ui.length(sum.depth));
    let slope = locale::number(spill.degrees.to_radians().tan(), 2);
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

fn cautions(ui: Ui, sum: &SpillSum) -> AnyView {
    let spill = &sum.spill;
    let mut said = Vec::new();
    if spill.degrees < 5.0 {
        said.push(Notice::caution(w::ANY_BUMP).view());
    } else if sum.fill.fraction() > 0.6 {
        said.push(Notice::caution(HALF_FULL).view());
    }
    let deep = spill.oil_depth;
    if deep.millimetres() < LEAST_DEPTH_MM && sum.fill.fraction() > 0.0 {
        said.push(Notice::caution(w::shallow(&ui.length(deep))).view());
    }
    said.collect_view().into_any()
}
