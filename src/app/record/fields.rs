//! The fields of a blank, each by what it asks for.

use super::draft::{self, Wrong};
use super::form::Form;
use crate::almanac::day::Day;
use crate::almanac::quantity::Decimal;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::RwSignal;
use crate::app::ledger::words::{hive_name, put_answer};
use crate::app::load::page::tick;
use crate::app::parts::card::more;
use crate::app::parts::choice::Choice;
use crate::app::parts::field::{Field as Typing, Says, says_view};
use crate::app::parts::notice::Notice;
use crate::app::round::form::{note, select};
use crate::app::wording::en_records as w;
use crate::app::wording::{en, en_typed};
use crate::book::Book;
use crate::book::id::ThingId;
use crate::book::record::{Answer, Ask, Blank, Field};
use web_sys::Element;

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
        Wrong::Ends(least, most, unit) => w::between(*least, *most, unit),
        Wrong::TooLong(over, most) => w::too_long(*over, *most),
        Wrong::Day(error) => en_typed::day(*error),
        Wrong::Time => w::NO_TIME.to_owned(),
    }
}

/// Fields in sight at first; the others of a longer blank are folded.
const IN_SIGHT: usize = 5;

/// The fields that are in sight at first in the form of `blank`, where they are not just the first ones: what was seen
/// at the entrance belongs to the larvae, and the warmth of the room decides when the supers must be spun.
fn in_sight(blank: Blank) -> &'static [&'static str] {
    match blank {
        Blank::Look => &["larvae", "larvae_size", "soil", "slime", "entrance", "adults"],
        Blank::Harvest => {
            &["bees_off", "supers", "into_room", "extraction_began", "extraction_ended", "room"]
        }
        _ => &[],
    }
}

/// Every field of `blank`. Of a long blank what must be there comes first and the rest is folded, unless something
/// stands in it already, lacks or is wrong; a line that is corrected is seen whole.
pub(super) fn view(form: Form, blank: Blank, hives: &[(String, String)]) -> Bit {
    let words = w::blank(blank);
    let fields = blank.fields();
    let long = fields.len() > IN_SIGHT && !form.corrects();
    let (mut all, mut folded, mut places) = (Vec::new(), Vec::new(), Vec::new());
    let named = in_sight(blank);
    let shown = if named.is_empty() { IN_SIGHT } else { named.len() };
    for at in order(blank, long) {
        let Some(signals) = form.signals.with_value(|all| all.get(at).copied()) else { continue };
        let (Some(field), Some(words)) = (fields.get(at), words.fields.get(at)) else { continue };
        let bit = one(form, at, field, signals, *words, hives);
        if long && all.len() >= shown {
            folded.push(bit);
            places.push(at);
        } else {
            all.push(bit);
        }
        if blank == Blank::Comb && field.name == "why" {
            all.push(live(move || {
                let spreads = said(form, "to") == "another_hive";
                let spreads = spreads && ["larvae", "slime"].contains(&&*said(form, "why"));
                let caution = || Notice::caution(w::COMB_WITH_LARVAE).view();
                spreads.then(|| el("div").test_id("comb-caution").kid(caution()))
            }));
        }
    }
    if !folded.is_empty() {
        let fold = more(w::FOLD, Bit::Many(folded)).test_id("write-fold");
        let part = fold.element().clone();
        let open = move |begin: bool| {
            let filled = |at: usize| {
                form.signals.with_value(|all| {
                    all.get(at).is_some_and(|own| own.text.with_untracked(|text| !text.is_empty()))
                })
            };
            if places.iter().any(|at| form.wrong(*at) || (begin && filled(*at))) {
                let _ = part.set_attribute("open", "");
            }
        };
        open(true);
        all.push(fold.live_prop(move || open(false)).into());
    }
    Bit::Many(all)
}

/// The order in which the fields are asked for.
fn order(blank: Blank, long: bool) -> Vec<usize> {
    let fields = blank.fields();
    let named = in_sight(blank);
    let mut order = Vec::new();
    for name in named {
        order.extend(fields.iter().position(|field| field.name == *name));
    }
    for first in [true, false] {
        for (at, field) in fields.iter().enumerate() {
            if first == (field.must || !long) && !order.contains(&at) {
                order.push(at);
            }
        }
    }
    order
}

/// What stands in the field of that name. Tracked.
fn said(form: Form, name: &str) -> String {
    let at = form.blank.fields().iter().position(|field| field.name == name);
    let own = at.and_then(|at| form.signals.with_value(|all| all.get(at).copied()));
    own.map(|own| own.text.get()).unwrap_or_default()
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
            let keys = choice.text(text).view().attr("role", "radiogroup");
            let group = keys.element().clone();
            with_line(form, at, &id, hint, keys, &group)
        }
        Ask::Words(codes) => {
            let mut ticks = el("div").class("tick-rows");
            for (&code, name) in codes.iter().zip(names) {
                let on = move || text.with(|text| text.split(' ').any(|known| known == code));
                let set = move |on: bool| text.update(|text| put_word(text, code, on));
                ticks = ticks.kid(tick(name, on, set));
            }
            let ticks = ticked(label, ticks).test_id(&id);
            let first = input(&ticks);
            with_line(form, at, &id, hint, ticks, &first)
        }
        Ask::Hive => {
            let mut all = vec![(String::new(), w::CHOOSE.to_owned())];
            all.extend_from_slice(hives);
            let chooser = select("write-hive", label, text, &all);
            let first = input(&chooser);
            with_line(form, at, &id, hint, chooser, &first)
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
                Ask::Time => typing.time().wide(),
                _ => typing.wide(),
            };
            let typing = if hint.is_empty() { typing } else { typing.hint(hint) };
            typing.says(move || form.says(at, field, signals)).view().into()
        }
    }
}

/// Boxes to tick under a heading.
pub(super) fn ticked(label: &str, ticks: El) -> El {
    el("fieldset").class("choice").kid(el("legend").text(label)).kid(ticks)
}

/// The first input of a chooser, or the chooser.
pub(super) fn input(chooser: &El) -> Element {
    let first = chooser.element().query_selector("input, select");
    first.ok().flatten().unwrap_or_else(|| chooser.element().clone())
}

/// A chooser with its hint and the line that says what is wrong with it; both are read out at its first input. `marked`
/// is what has the error: of radio keys it is their group, since one of them alone cannot be wrong.
fn with_line(form: Form, at: usize, id: &str, hint: &str, chooser: El, marked: &Element) -> Bit {
    let says = move || form.lacks(at).map_or(Says::Nothing, Says::Wrong);
    let (says_id, hint_id) = ([id, "-says"].concat(), [id, "-hint"].concat());
    let told = if hint.is_empty() { says_id.clone() } else { [&hint_id, " ", &says_id].concat() };
    let _ = input(&chooser).set_attribute("aria-describedby", &told);
    let line = says_view(Some(Box::new(says)), &says_id, marked);
    let hint = (!hint.is_empty()).then(|| el("p").class("field-hint").attr("id", &hint_id).text(hint));
    el("div").class("field-wide").kid(chooser).kid(hint).kid(line).into()
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
            let mut said = en::echo(&said);
            if field.name == "good_until" && matches!(answer, Answer::Day(day) if day < today) {
                said.push_str(w::PAST_ITS_DAY);
            }
            Says::Echo(said)
        }
        Ok(Some(Answer::Number(Decimal::ZERO, _))) if field.name == "price" => Says::Echo(w::FREE.to_owned()),
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
