//! The fields of a blank, each by what it asks for.

use super::draft::{self, Wrong};
use super::form::Form;
use crate::almanac::day::Day;
use crate::app::el::{Bit, El, el};
use crate::app::graph::RwSignal;
use crate::app::ledger::words::{hive_name, put_answer};
use crate::app::load::page::tick;
use crate::app::parts::choice::Choice;
use crate::app::parts::field::{Field as Typing, Says};
use crate::app::round::form::{note, select};
use crate::app::wording::en_records as w;
use crate::app::wording::{en, en_typed};
use crate::book::Book;
use crate::book::id::ThingId;
use crate::book::record::{Ask, Blank, Field};

/// A field: its text and its unit.
#[derive(Clone, Copy)]
pub(super) struct Signals {
    pub(super) text: RwSignal<String>,
    pub(super) unit: RwSignal<String>,
}

/// A sentence for what is wrong.
pub(super) fn wrong(wrong: &Wrong) -> String {
    match wrong {
        Wrong::Lacks => w::LACKS.to_owned(),
        Wrong::Number(error) => en_typed::number(*error),
        Wrong::Count(error) => en_typed::count(*error),
        Wrong::Ends(least, most) => w::between(*least, *most),
        Wrong::TooLong(over) => w::too_long(*over),
        Wrong::Day(error) => en_typed::day(*error),
        Wrong::Time => w::NO_TIME.to_owned(),
    }
}

/// Every field of `blank`, the long ones of few people under a fold of their own.
pub(super) fn view(form: Form, blank: Blank, hives: &[(String, String)]) -> Bit {
    let words = w::blank(blank);
    let mut all = Vec::new();
    for (at, (field, (label, hint, names))) in blank.fields().iter().zip(words.fields).enumerate() {
        let Some(signals) = form.signals.with_value(|all| all.get(at).copied()) else { continue };
        all.push(one(form, at, field, signals, (label, hint, names), hives));
    }
    Bit::Many(all)
}

type Words = (&'static str, &'static str, &'static [&'static str]);

fn one(
    form: Form,
    at: usize,
    field: &'static Field,
    signals: Signals,
    (label, hint, names): Words,
    hives: &[(String, String)],
) -> Bit {
    let id = ["write-", field.name].concat();
    let text = signals.text;
    match &field.ask {
        Ask::Word(codes) => {
            let mut choice = Choice::new(&id, label);
            for (code, name) in codes.iter().zip(names) {
                choice = choice.option(code, name);
            }
            if !field.must {
                choice = choice.option("", w::BLANK);
            }
            with_line(form, at, hinted(hint), choice.text(text).view())
        }
        Ask::Words(codes) => {
            let mut ticks = el("fieldset").class("choice").test_id(&id).kid(el("legend").text(label));
            for (&code, name) in codes.iter().zip(names) {
                let on = move || text.with(|text| text.split(' ').any(|known| known == code));
                let set = move |on: bool| text.update(|text| put_word(text, code, on));
                ticks = ticks.kid(tick(name, on, set));
            }
            with_line(form, at, hinted(hint), ticks)
        }
        Ask::Hive => {
            let mut all = vec![(String::new(), w::BLANK.to_owned())];
            all.extend_from_slice(hives);
            with_line(form, at, hinted(hint), select("write-hive", label, text, &all))
        }
        Ask::Text(500) => note("write-note", text).into(),
        ask => {
            let typing = Typing::new(&id, label, text);
            let typing = match ask {
                Ask::Count => typing.whole(),
                Ask::Number { units, least, .. } => {
                    // The keys for digits have no minus on some phones.
                    let typing = if *least < 0 { typing } else { typing.decimal() };
                    if units.is_empty() { typing } else { typing.units(units, signals.unit) }
                }
                Ask::Day => typing.day(),
                Ask::Time => typing.time(),
                _ => typing.wide(),
            };
            let typing = if hint.is_empty() { typing } else { typing.hint(hint) };
            typing.says(move || form.says(at, field, signals)).view().into()
        }
    }
}

fn hinted(hint: &'static str) -> Option<&'static str> {
    (!hint.is_empty()).then_some(hint)
}

/// A chooser with the line that says what is wrong with it.
fn with_line(form: Form, at: usize, hint: Option<&'static str>, chooser: El) -> Bit {
    let says = move || form.lacks(at);
    el("div")
        .class("field-wide")
        .kid(chooser)
        .kid(hint.map(|hint| el("p").class("field-hint").text(hint)))
        .kid(
            el("p")
                .live_class(move || if says().is_some() { "field-says field-wrong" } else { "field-says" })
                .live_text(move || says().unwrap_or_default()),
        )
        .into()
}

/// Puts a code among those of a text, or takes it out.
fn put_word(text: &mut String, code: &str, on: bool) {
    let mut left = String::new();
    for known in text.split(' ').filter(|known| !known.is_empty() && *known != code).chain(on.then_some(code))
    {
        left.push_str(if left.is_empty() { "" } else { " " });
        left.push_str(known);
    }
    *text = left;
}

/// What a typed field says of itself: the day with its weekday, the number with its unit as it will be read.
pub(super) fn echo(field: &'static Field, signals: Signals, today: Day, tried: bool) -> Says {
    let typed = (signals.text.get(), signals.unit.get());
    match draft::read(field, &typed, today) {
        // A form that was just opened has nothing wrong with it yet.
        Err(Wrong::Lacks) if !tried => Says::Nothing,
        Err(error) => Says::Wrong(wrong(&error)),
        Ok(Some(answer)) if matches!(field.ask, Ask::Day | Ask::Time) => {
            let mut said = String::new();
            put_answer(&mut said, &Book::default(), &field.ask, &answer, &[]);
            Says::Echo(en::echo(&said))
        }
        Ok(_) => Says::Nothing,
    }
}

/// The hives of a yard by name, in walking order; ended ones too where the blank can be about them.
pub(super) fn hives_of(book: &Book, yard: &ThingId, blank: Blank) -> Vec<(String, String)> {
    let mut all = Vec::new();
    for (id, _) in book.standing().hives_of(yard, !blank.after_end()) {
        all.push((id.to_string(), hive_name(book, id)));
    }
    all
}
