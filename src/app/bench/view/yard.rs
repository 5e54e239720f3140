//! Traps and oil for a yard.

use super::{keep, says};
use crate::almanac::quantity::Share;
use crate::almanac::stack::{HiveSize, Spot};
use crate::app::bench::draft::BenchDraft;
use crate::app::bench::fits::depth;
use crate::app::bench::keep::depth_codes;
use crate::app::bench::read::{MOST_BOXES, MOST_HIVES, MOST_TRAPS_A_BOX};
use crate::app::bench::yard::{YardSum, reckon};
use crate::app::edge::locale;
use crate::app::parts::answer::Answer;
use crate::app::parts::card::more;
use crate::app::parts::drawing::{BoxSide, box_plan, hive_side};
use crate::app::parts::field::{Field, Says};
use crate::app::parts::notice::Notice;
use crate::app::parts::stepper::Stepper;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_bench::yard as w;
use leptos::prelude::*;

/// The card's body.
pub(super) fn view(ui: Ui) -> AnyView {
    let t = ui.bench;
    let sum = Memo::new(move |_| ui.draft.with(reckon));
    let holds_says = move || match says::volume(ui, t.holds, t.holds_unit) {
        Says::Nothing if sum.with(|sum| sum.as_ref().is_some_and(odd)) => Says::Echo(w::SIZE_ODD.to_owned()),
        says => says,
    };
    view! {
        <div class="fields">
            {Stepper::new("hives", w::HIVES, t.hives, 0, MOST_HIVES)
                .says(move || says::count(t.hives, 0, MOST_HIVES))
                .view()}
            {Stepper::new("boxes", w::BOXES, t.boxes, 0, MOST_BOXES)
                .says(move || says::count(t.boxes, 0, MOST_BOXES))
                .view()}
            {Field::new("holds", w::HOLDS, t.holds).decimal().volume(t.holds_unit).says(holds_says).view()}
        </div>
        {Answer::new(w::TRAPS, move || sum.with(|sum| sum.as_ref().map_or_else(none, traps)))
            .sum(move || sum.with(|sum| sum.as_ref().map(traps_sum).unwrap_or_default()))
            .why(w::TRAPS_WHY)
            .view()}
        {Answer::new(
                w::OIL,
                move || sum.with(|sum| sum.as_ref().map_or_else(none, |sum| ui.volume_up(sum.oil.carry))),
            )
            .sum(move || sum.with(|sum| sum.as_ref().map(|sum| oil_sum(ui, sum)).unwrap_or_default()))
            .why(w::RESERVE_WHY)
            .view()}
        {Notice::caution(w::HALF_FULL)
            .text(move || sum.with(|sum| sum.as_ref().map_or_else(|| w::HALF_FULL.to_owned(), fill_caution)))
            .why(w::HALF_FULL_WHY)
            .view()}
        {Notice::caution(w::FOOD_GRADE).view()}
        {more(w::REST, rest(ui))}
        {move || ui.draft.with(|draft| sum.with(|sum| sum.as_ref().map(|sum| figure(sum, draft))))}
        {keep::view(ui)}
    }
    .into_any()
}

fn rest(ui: Ui) -> AnyView {
    let t = ui.bench;
    view! {
        <div class="fields">
            {Stepper::new("a-box", w::A_BOX, t.a_box, 0, MOST_TRAPS_A_BOX)
                .says(move || says::count(t.a_box, 0, MOST_TRAPS_A_BOX))
                .view()}
            {Field::new("fill", w::FILL, t.fill).says(move || says::share(t.fill)).view()}
            {Field::new("reserve", w::RESERVE, t.reserve).says(move || says::share(t.reserve)).view()}
            {Field::new("bottle", w::BOTTLE, t.bottle)
                .decimal()
                .volume(t.bottle_unit)
                .hint(w::MAY_BE_EMPTY)
                .says(move || {
                    t.bottle.with(|text| says::optional(says::volume(ui, t.bottle, t.bottle_unit), text))
                })
                .view()}
        </div>
    }
    .into_any()
}

fn none() -> String {
    en::NO_ANSWER.to_owned()
}

fn odd(sum: &YardSum) -> bool {
    !(1.0..=500.0).contains(&sum.holds.volume().millilitres())
}

fn traps(sum: &YardSum) -> String {
    w::traps(sum.total.traps, &locale::whole(sum.total.traps))
}

fn traps_sum(sum: &YardSum) -> Vec<String> {
    vec![w::traps_sum(sum.total.hives, sum.total.boxes, sum.total.a_box, &traps(sum))]
}

/// "½" where it is one half: shorter than 50 % and what keepers say.
fn part(share: Share) -> String {
    if share == Share::HALF { "½".to_owned() } else { locale::percent(share.fraction(), 1) }
}

fn oil_sum(ui: Ui, sum: &YardSum) -> Vec<String> {
    let oil = &sum.oil;
    let total = ui.volume(oil.sum);
    let holds = ui.volume(sum.holds.volume());
    let fill = part(sum.fill);
    let mut lines = vec![
        w::fills(&total, sum.fill == Share::HALF, &fill),
        w::oil_sum(&locale::whole(sum.total.traps), &holds, &fill, &total),
    ];
    if oil.reserve > Share::NONE {
        let reserve = locale::percent(oil.reserve.fraction(), 1);
        lines.push(w::reserve_sum(&reserve, &ui.volume(oil.with_reserve)));
    }
    lines.push(w::step_sum(&ui.volume_up(oil.carry)));
    if let (Some(bottles), Some(bottle)) = (oil.bottles, sum.bottle) {
        lines.push(w::bottles_sum(bottles, &ui.volume(bottle)));
    }
    lines
}

fn fill_caution(sum: &YardSum) -> String {
    if sum.fill.fraction() > 0.6 {
        w::too_full(&locale::percent(sum.fill.fraction(), 1))
    } else {
        w::HALF_FULL.to_owned()
    }
}

/// One hive from the side, and each different box from above.
fn figure(sum: &YardSum, draft: &BenchDraft) -> AnyView {
    if sum.spots.iter().all(Vec::is_empty) {
        return ().into_any();
    }
    let depths = depth_codes(&draft.keep_depths, sum.spots.len());
    let sides: Vec<BoxSide> = depths
        .into_iter()
        .zip(&sum.spots)
        .map(|(code, spots)| BoxSide { depth: depth(code).unwrap_or_default().depth(), spots: spots.clone() })
        .collect();
    let plans = plans(&sum.spots).into_iter().rev().map(|(numbers, spots)| {
        view! {
            <figure>
                {box_plan(&spots, HiveSize::Full)}
                <figcaption>{w::boxes(&numbers)}</figcaption>
            </figure>
        }
    });
    view! {
        <div class="figure">
            <figure>
                {hive_side(&sides)}
                <figcaption>{w::SIDE}</figcaption>
            </figure>
            {plans.collect_view()}
        </div>
    }
    .into_any()
}

/// Boxes with the same places share a drawing: their numbers from the floor up, and the places.
fn plans(boxes: &[Vec<Spot>]) -> Vec<(Vec<usize>, Vec<Spot>)> {
    let mut plans: Vec<(Vec<usize>, Vec<Spot>)> = Vec::new();
    for (index, spots) in boxes.iter().enumerate() {
        match plans.iter_mut().find(|(_, known)| known == spots) {
            Some((numbers, _)) => numbers.push(index + 1),
            None => plans.push((vec![index + 1], spots.clone())),
        }
    }
    plans
}
