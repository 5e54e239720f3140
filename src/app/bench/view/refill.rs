//! The day of the next refill.

use super::says;
use super::shown::{self, Shown, answer};
use crate::almanac::refill::{Limit, Timing};
use crate::app::bench::read::MOST_BODIES;
use crate::app::bench::refill::{RefillSum, last_service, reckon};
use crate::app::edge::locale;
use crate::app::el::El;
use crate::app::graph::RwSignal;
use crate::app::parts::card::more;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::stepper::Stepper;
use crate::app::state::Ui;
use crate::app::wording::en_sums::refill as w;
use crate::app::wording::{en, en_typed};

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let t = ui.bench();
    let shown = shown::follow(move || {
        ui.draft.with(|draft| {
            reckon(draft, ui.today.get()).map(|sum| Shown {
                answers: vec![(due(&sum), lines(&sum))],
                cautions: if sum.rose { vec![w::ROSE.to_owned()] } else { Vec::new() },
                list: Vec::new(),
            })
        })
    });
    let last = move || match t.refill_last().with(|text| last_service(text, ui.today.get())) {
        Ok(day) => {
            let ago = en::relative(day.days_since(ui.today.get()));
            Says::Echo(en::echo(&[&en::date(day), ", ", &ago].concat()))
        }
        Err(error) => Says::Wrong(en_typed::day(error)),
    };
    shown::body()
        .kid(shown::fields([
            Field::new("refill-last", w::LAST, t.refill_last()).day().says(last).view(),
            Stepper::new("refill-max", w::MAX, t.refill_max(), 1, 120)
                .says(move || says::count(t.refill_max(), 1, 120))
                .view(),
        ]))
        .kid(answer(w::DUE, shown, 0).why(w::WHY).view())
        .kid(shown::cautions(shown))
        .kid(more(w::REST, rest(ui)))
}

fn rest(ui: Ui) -> El {
    let t = ui.bench();
    let share = |id: &'static str, label: &'static str, text: RwSignal<String>| {
        Field::new(id, label, text).says(move || text.with(|typed| says::optional(says::share(text), typed)))
    };
    let number = |id: &'static str, label: &'static str, text: RwSignal<String>, least: u32, most: u32| {
        Field::new(id, label, text)
            .whole()
            .says(move || text.with(|typed| says::optional(says::count(text, least, most), typed)))
    };
    let catch = t.refill_catch();
    shown::fields([
        share("refill-level", w::LEVEL, t.refill_level()).view(),
        share("refill-floor", w::FLOOR, t.refill_floor()).hint(w::FLOOR_HINT).view(),
        share("refill-found", w::FOUND, t.refill_found()).view(),
        number("refill-stretch", w::STRETCH, t.refill_stretch(), 1, 999).view(),
        number("refill-room", w::ROOM, t.refill_room(), 0, MOST_BODIES).view(),
        Field::new("refill-catch", w::CATCH, catch)
            .decimal()
            .says(move || catch.with(|typed| says::optional(says::positive(catch), typed)))
            .view(),
    ])
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
