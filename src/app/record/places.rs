//! What a record is about, and its day.

use super::Of;
use super::fields;
use super::form::Form;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::untrack;
use crate::app::ledger::papers::events::yards;
use crate::app::ledger::words;
use crate::app::load::page::tick;
use crate::app::parts::field::{Field as Typing, Says, says_view};
use crate::app::parts::key::Key;
use crate::app::place::Place;
use crate::app::round::form::{day_says, select};
use crate::app::wording::en_book::history;
use crate::app::wording::en_records as w;
use crate::book::record::{About, Blank};

/// The place to go back to, and its name.
pub(super) fn back(form: Form, named: &Of) -> (Place, String) {
    form.records.book.with_untracked(|book| match named {
        Of::Hive(hive) => (Place::Hive(hive.to_string()), words::hive_name(book, hive)),
        Of::Yard(yard) => (Place::Yard(yard.to_string()), words::yard_name(book, yard)),
        Of::Line(_) => (Place::History(None), history::TITLE.to_owned()),
        Of::Open => (Place::Records, w::TITLE.to_owned()),
    })
}

pub(super) fn about(form: Form, named: &Of) -> El {
    let said = form.records.book.with_untracked(|book| match named {
        Of::Hive(hive) => words::hive_name(book, hive),
        Of::Yard(yard) => words::yard_name(book, yard),
        Of::Line(id) => book.log().get(id).map(|line| words::entry(book, line)).unwrap_or_default(),
        Of::Open => String::new(),
    });
    el("p").class("lead").text(&said)
}

/// Which yard and which hives, where that is still open.
pub(super) fn view(form: Form, named: &Of) -> Bit {
    let about = form.blank.about();
    let mut bits = Vec::new();
    if *named == Of::Open && about != About::Keeper {
        let all: Vec<(String, String)> = form.records.book.with_untracked(|book| {
            yards(book).iter().map(|id| (id.to_string(), words::yard_name(book, id))).collect()
        });
        bits.push(select("write-yard", w::YARD, form.yard, &all).into());
    }
    if matches!(about, About::Hives | About::Place) {
        bits.push(live(move || {
            let yard = form.yard_id()?;
            let all = form.records.book.with(|book| fields::hives_of(book, &yard, form.blank));
            Some(untrack(|| hives(form, all)))
        }));
    }
    Bit::Many(bits)
}

fn hives(form: Form, all: Vec<(String, String)>) -> El {
    let ids: Vec<String> = all.iter().map(|(id, _)| id.clone()).collect();
    let every = move || form.hives.set(ids.clone());
    let mut ticks = el("div").class("tick-rows");
    for (id, name) in all {
        let own = id.clone();
        let on = move || form.hives.with(|hives| hives.contains(&own));
        let set = move |on: bool| {
            form.hives.update(|hives| {
                hives.retain(|known| *known != id);
                if on {
                    hives.push(id.clone());
                }
            });
        };
        ticks = ticks.kid(tick(&name, on, set));
    }
    let must = form.blank.about() == About::Hives;
    let says = move || {
        let none = must && form.tried.get() && form.hives.with(Vec::is_empty);
        if none { Says::Wrong(w::CHOOSE_HIVE.to_owned()) } else { Says::Nothing }
    };
    let ticks = fields::ticked(w::WHICH_HIVES, ticks);
    let first = fields::input(&ticks);
    let _ = first.set_attribute("aria-describedby", "write-hives-says");
    let line = says_view(Some(Box::new(says)), "write-hives-says", &first);
    let keys = el("p")
        .class("keys")
        .kid(Key::new(w::ALL_HIVES, every).mark("write-all").view())
        .kid(Key::new(w::NO_HIVES, move || form.hives.set(Vec::new())).view());
    ticks.kid(line).kid(keys)
}

/// The day of the record.
pub(super) fn day(form: Form) -> El {
    let label = if form.blank == Blank::Product { w::FIRST_DAY } else { w::DAY };
    let says = move || match day_says(form.day, form.today()) {
        Says::Nothing => Says::Wrong(w::LACKS.to_owned()),
        says => says,
    };
    Typing::new("write-day", label, form.day).day().says(says).view()
}
