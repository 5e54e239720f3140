//! The day of the next refill.

use super::says;
use crate::almanac::refill::{Limit, Timing};
use crate::app::bench::read::MOST_BODIES;
use crate::app::bench::refill::{RefillSum, last_service, reckon};
use crate::app::edge::locale;
use crate::app::parts::answer::Answer;
use crate::app::parts::card::more;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::notice::Notice;
use crate::app::parts::stepper::Stepper;
use crate::app::state::Ui;
use crate::app::wording::en_sums::refill as w;
use crate::app::wording::{en, en_typed};
use leptos::prelude::*;

/// The card's body.
pub(super) fn view(ui: Ui) -> AnyView {
    let t = ui.bench;
    let sum = Memo::new(move |_| ui.draft.with(|draft| reckon(draft, ui.today.get())));
    let last = move || match t.refill_last.with(|text| last_service(text, ui.today.get())) {
        Ok(day) => {
            let ago = en::relative(day.days_since(ui.today.get()));
            Says::Echo(en::echo(&[&en::date(day), ", ", &ago].concat()))
        }
        Err(error) => Says::Wrong(en_typed::day(error)),
    };
    let loses = move || sum.with(|sum| sum.as_ref().is_some_and(|sum| sum.rose));
    view! {
        <div class="fields">
            {Field::new("refill-last", w::LAST, t.refill_last).day().says(last).view()}
            {Stepper::new("refill-max", w::MAX, t.refill_max, 1, 120)
                .says(move || says::count(t.refill_max, 1, 120))
                .view()}
        </div>
        {Answer::new(
                w::DUE,
                move || sum.with(|sum| sum.as_ref().map_or_else(|| en::NO_ANSWER.to_owned(), due)),
            )
            .sum(move || sum.with(|sum| sum.as_ref().map(lines).unwrap_or_default()))
            .why(w::WHY)
            .view()}
        {move || loses().then(|| Notice::caution(w::ROSE).view())}
        {more(w::REST, rest(ui))}
    }
    .into_any()
}

fn rest(ui: Ui) -> AnyView {
    let t = ui.bench;
    let share = |id: &'static str, label: &'static str, text: RwSignal<String>| {
        Field::new(id, label, text).says(move || text.with(|typed| says::optional(says::share(text), typed)))
    };
    let number = |id: &'static str, label: &'static str, text: RwSignal<String>, least: u32, most: u32| {
        Field::new(id, label, text)
            .whole()
            .says(move || text.with(|typed| says::optional(says::count(text, least, most), typed)))
    };
    view! {
        <div class="fields">
            {share("refill-level", w::LEVEL, t.refill_level).view()}
            {share("refill-floor", w::FLOOR, t.refill_floor).hint(w::FLOOR_HINT).view()}
            {share("refill-found", w::FOUND, t.refill_found).view()}
            {number("refill-stretch", w::STRETCH, t.refill_stretch, 1, 999).view()}
            {number("refill-room", w::ROOM, t.refill_room, 0, MOST_BODIES).view()}
            {Field::new("refill-catch", w::CATCH, t.refill_catch)
                .decimal()
                .says(move || {
                    t.refill_catch.with(|typed| says::optional(says::positive(t.refill_catch), typed))
                })
                .view()}
        </div>
    }
    .into_any()
}

/// The day; one that has passed is "now", because nobody can go there.
fn due(sum: &RefillSum) -> String {
    match sum.timing {
        Timing::Overdue { .. } => w::NOW.to_owned(),
        Timing::Today | Timing::In { .. } => en::date(sum.refill.due),
    }
}

fn lines(sum: &RefillSum) -> Vec<String> {
    let refill = &sum.refill;
    let away = match sum.timing {
        Timing::In { days } => i32::from(days),
        Timing::Today => 0,
        Timing::Overdue { days } => -i32::from(days),
    };
    let mut lines = match sum.timing {
        Timing::Overdue { .. } => vec![[&en::date(refill.due), ", ", &en::relative(away)].concat()],
        _ => vec![en::relative(away)],
    };
    lines.push(w::decided(&limit(refill.decided_by)));
    for other in &refill.also {
        let day = sum.last.plus(i32::from(other.days()));
        lines.push(w::also(&limit(*other), &en::date(day)));
    }
    if let (Some(stretch), Some(per_day)) = (sum.stretch, sum.per_day) {
        let (from, to) = (stretch.from.fraction(), stretch.to.fraction());
        lines.push(w::loss(&locale::percent(from, 1), &locale::percent(to, 1), stretch.days, &rate(per_day)));
    }
    lines
}

/// Percentage points a day.
fn rate(per_day: f64) -> String {
    locale::percent(per_day / 100.0, 2)
}

fn limit(limit: Limit) -> String {
    match limit {
        Limit::YourMaximum { days } => w::maximum(days),
        Limit::OilLow { days: 0, floor, .. } => w::oil_out(&locale::percent(floor.fraction(), 1)),
        Limit::OilLow { days, from, floor, per_day } => {
            let (from, floor) = (locale::percent(from.fraction(), 1), locale::percent(floor.fraction(), 1));
            w::oil_low(&from, &floor, &rate(per_day), days)
        }
        Limit::Bodies { days, room, per_day } => {
            w::bodies(&locale::whole(room), &locale::number(per_day, 2), days)
        }
    }
}
