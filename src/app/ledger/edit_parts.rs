//! The fields of a line that says how something is called or how it is.

use super::edit::Fields;
use super::edit_facts::{self, ENDINGS, SIZES, Texts};
use super::words;
use crate::almanac::text::{LABEL_MOST, label, label_if_any};
use crate::app::bench::read;
use crate::app::edge::clock;
use crate::app::edge::letters::BrowserLetters;
use crate::app::el::{Bit, El, each, el, live};
use crate::app::graph::{RwSignal, untrack};
use crate::app::hive::tag_says;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::records::Records;
use crate::app::round::bits;
use crate::app::round::form::{level_says, select};
use crate::app::round::walk::moved;
use crate::app::wording::en_book::history as w;
use crate::app::wording::{en, en_hive, en_load, en_records, en_round, en_typed};
use crate::app::yard::name_says;
use crate::book::entry::{Ending, Entry, What};
use crate::book::id::ThingId;

/// The fields; all of them are handles.
#[derive(Clone, Copy)]
pub(super) struct Facts {
    records: Records,
    first: RwSignal<String>,
    second: RwSignal<String>,
    unit: RwSignal<String>,
    hives: RwSignal<Vec<ThingId>>,
}

impl Facts {
    pub(super) fn new(records: Records) -> Facts {
        let text = || RwSignal::new(String::new());
        Facts { records, first: text(), second: text(), unit: text(), hives: RwSignal::new(Vec::new()) }
    }

    pub(super) fn set(self, texts: Texts) {
        self.first.set(texts.first);
        self.second.set(texts.second);
        self.unit.set(texts.unit);
        self.hives.set(texts.hives);
    }

    /// What stands in them. Tracked.
    pub(super) fn texts(self) -> Texts {
        Texts {
            first: self.first.get(),
            second: self.second.get(),
            unit: self.unit.get(),
            hives: self.hives.get(),
        }
    }

    /// What `line` says with them; none when one of them is wrong. Tracked.
    pub(super) fn what(self, line: &What) -> Option<What> {
        let texts = self.texts();
        let yard = matches!(line, What::Yard { .. } | What::YardChanged { .. });
        let wrong = yard
            && texts.second != edit_facts::texts(line).second
            && matches!(zone_says(&texts.second), Says::Wrong(_));
        edit_facts::what(line, &texts, &BrowserLetters).filter(|_| !wrong)
    }
}

/// The fields that a line with these has.
pub(super) fn view(facts: Facts, entry: &Entry, fields: Fields) -> Bit {
    let Facts { records, first, second, unit, hives } = facts;
    match fields {
        Fields::Yard => {
            let yard = records.book.with_untracked(|book| match &entry.what {
                What::YardChanged { yard, .. } => yard.clone(),
                _ => book.log().chains().root(entry).thing(0),
            });
            // A line that says only the zone has no name in it.
            let without = matches!(&entry.what, What::YardChanged { zone: Some(_), .. });
            let name = move || {
                let empty = without && first.with(|text| text.trim().is_empty());
                if empty {
                    Says::Nothing
                } else {
                    records.book.with(|book| first.with(|text| name_says(book, &yard, text)))
                }
            };
            let named = matches!(&entry.what, What::YardChanged { name: Some(_), .. });
            let zone = move || {
                let empty = named && second.with(|text| text.trim().is_empty());
                if empty { Says::Nothing } else { second.with(|text| zone_says(text)) }
            };
            bits![
                Field::new("edit-first", en_hive::NAME, first).wide().says(name).view(),
                Field::new("edit-second", w::ZONE, second).wide().hint(w::ZONE_HINT).says(zone).view(),
            ]
        }
        Fields::Tag => {
            let with_size = matches!(&entry.what, What::HiveChanged { size: Some(_), .. });
            let (hive, tag) =
                (entry.hive().unwrap_or_else(|| entry.id.thing(0)), edit_facts::texts(&entry.what).first);
            let says = move || {
                first.with(|text| {
                    if *text == tag || with_size && text.trim().is_empty() {
                        return Says::Nothing;
                    }
                    records.book.with(|book| match book.standing().hives.get(&hive) {
                        Some(now) => tag_says(book, &now.yard, Some(&hive), text).0,
                        None => label(text, LABEL_MOST, &BrowserLetters)
                            .map_or_else(|error| Says::Wrong(en_typed::tag(error)), |_| Says::Nothing),
                    })
                })
            };
            let mut sizes = vec![(String::new(), w::SIZE_LEFT.to_owned())];
            for ((code, _), name) in SIZES.iter().zip([en_hive::FULL, en_hive::NUC]) {
                sizes.push(((*code).to_owned(), name.to_owned()));
            }
            bits![
                Field::new("edit-first", en_hive::TAG_IS, first).wide().says(says).view(),
                select("edit-second", en_hive::SIZE, second, &sizes),
            ]
        }
        Fields::Permit => {
            let says = move || match first.with(|text| label_if_any(text, LABEL_MOST, &BrowserLetters)) {
                Ok(_) => Says::Nothing,
                Err(error) => Says::Wrong(en_typed::label(error)),
            };
            let field = Field::new("edit-first", en_hive::PERMIT, first).wide().hint(en_hive::MAY_BE_EMPTY);
            field.says(says).view().into()
        }
        Fields::Ended => ended(facts, entry),
        Fields::Walk => bits![el("p").text(en_hive::ORDER), walk(records, hives)],
        Fields::Settings => {
            let empty = |text: RwSignal<String>| text.with(|text| text.trim().is_empty());
            let bottle = move || {
                let read = || second.with(|text| unit.with(|unit| read::holds(text, unit)));
                match (empty(second), read()) {
                    (false, Err(error)) => Says::Wrong(en_typed::number(error)),
                    _ => Says::Nothing,
                }
            };
            bits![
                Field::new("edit-first", en::in_percent(en_load::RESERVE), first)
                    .says(move || level_says(first))
                    .view(),
                Field::new("edit-second", en_load::BOTTLE, second).decimal().bottle(unit).says(bottle).view(),
            ]
        }
        _ => Bit::Nothing,
    }
}

fn ended(facts: Facts, entry: &Entry) -> Bit {
    let mut ways = Vec::new();
    for (at, how) in ENDINGS.iter().enumerate() {
        ways.push((at.to_string(), en_hive::end_key(how).to_owned()));
    }
    let mut others = vec![(String::new(), en_hive::JOINED_NOWHERE.to_owned())];
    facts.records.book.with_untracked(|book| {
        let standing = book.standing();
        let own = entry.hive();
        let yard = own.as_ref().and_then(|hive| standing.hives.get(hive)).map(|now| &now.yard);
        for (id, _) in yard.into_iter().flat_map(|yard| standing.hives_of(yard, false)) {
            if own.as_ref() != Some(id) {
                others.push((id.to_string(), words::hive_name(book, id)));
            }
        }
    });
    // One that stands elsewhere by now is still the one.
    let into = edit_facts::texts(&entry.what).second;
    if others.iter().all(|(id, _)| *id != into)
        && let Ok(hive) = ThingId::parse(&into)
    {
        others.push((into, facts.records.book.with_untracked(|book| words::hive_name(book, &hive))));
    }
    let joined = live(move || {
        let how = facts.first.with(|at| at.parse().ok().and_then(|at: usize| ENDINGS.get(at)));
        let joined = matches!(how, Some(Ending::Joined { .. }));
        joined.then(|| untrack(|| select("edit-second", en_hive::JOINED_INTO, facts.second, &others)))
    });
    bits![select("edit-first", en_hive::END_HOW, facts.first, &ways), joined]
}

/// The hives as they are walked, each with keys to move it. Only those of the line: what came into the yard later has its
/// place behind them.
fn walk(records: Records, hives: RwSignal<Vec<ThingId>>) -> El {
    let ids = move || hives.with(|hives| hives.iter().map(ToString::to_string).collect());
    let row = move |id: &str| {
        let Ok(hive) = ThingId::parse(id) else { return el("li") };
        let tag = records.book.with_untracked(|book| match book.standing().hives.get(&hive) {
            Some(now) => now.tag.clone(),
            None => words::hive_name(book, &hive),
        });
        let key = |sign: &str, name: String, by: isize| {
            let hive = hive.clone();
            let press = move || {
                if let Some(order) = moved(hives.get_untracked(), &hive, by) {
                    hives.set(order);
                }
            };
            Key::new(sign, press).view().attr("aria-label", &name)
        };
        el("li")
            .class("order-keys")
            .kid(el("span").kid(el("bdi").text(&tag)))
            .kid(key("↑", en_hive::earlier(&tag), -1))
            .kid(key("↓", en_hive::later(&tag), 1))
    };
    el("ol").class("rows order-list").test_id("edit-walk").kid(each(ids, row))
}

/// Which day it is there, or that this phone does not know such a zone.
fn zone_says(text: &str) -> Says {
    let text = text.trim();
    if text.is_empty() {
        return Says::Wrong(en_records::LACKS.to_owned());
    }
    match clock::civil_day(clock::now_ms(), text) {
        Some(day) => Says::Echo(en::echo(&en_round::near(day, day))),
        None => Says::Wrong(w::no_zone(text, &clock::own_zone())),
    }
}
