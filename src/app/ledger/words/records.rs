//! A record of what was seen and done beside the traps, in words.

use super::{put_hive, put_isolated, put_yard};
use crate::app::ledger::edit;
use crate::app::wording::en::{date, put, with_unit};
use crate::app::wording::en_ledger as w;
use crate::app::wording::en_records as wr;
use crate::book::Book;
use crate::book::id::ThingId;
use crate::book::record::{Answer, Ask, Blank, Record};

/// A record as a sentence that does not say what it is about.
pub fn record_alone(book: &Book, record: &Record) -> String {
    let mut said = String::new();
    put_fields(&mut said, book, record);
    said
}

/// A record in a list of all yards: where there are `several`, one about hives names theirs first, since a tag may stand
/// in more than one.
pub fn record_of_all(book: &Book, several: bool, yard: Option<&ThingId>, record: &Record) -> String {
    let mut said = String::new();
    let first = record.hives.first().and_then(|hive| book.standing().hives.get(hive));
    let of = yard.or(first.map(|hive| &hive.yard));
    if let Some(of) = of.filter(|_| several && !record.hives.is_empty()) {
        put_yard(&mut said, book, of);
        put(&mut said, w::NEXT);
    }
    put_record(&mut said, book, yard, record);
    said
}

/// "Hive 7: what the hive showed: beetle larvae few; slime no".
pub(super) fn put_record(said: &mut String, book: &Book, yard: Option<&ThingId>, record: &Record) {
    match (&*record.hives, yard) {
        ([], None) => put(said, wr::KEEPER),
        ([], Some(yard)) => put_yard(said, book, yard),
        ([hive], _) => put_hive(said, book, hive),
        (hives, _) => {
            put(said, wr::HIVES);
            for (at, hive) in hives.iter().enumerate() {
                put(said, if at > 0 { w::NEXT } else { "" });
                put_isolated(said, book.standing().hives.get(hive).map_or("?", |now| &now.tag));
            }
        }
    }
    put(said, wr::SAYS);
    put_fields(said, book, record);
}

fn put_fields(said: &mut String, book: &Book, record: &Record) {
    let words = wr::blank(record.blank);
    put(said, words.title);
    let mut between = wr::SAYS;
    for ((field, answer), (label, _, names)) in record.fields().zip(words.fields) {
        let Some(answer) = answer else { continue };
        put(said, between);
        between = wr::AND;
        // "Patty: put in": what a blank and its field are both called is said once.
        if *label != words.title {
            put(said, label);
            put(said, wr::IS);
        }
        put_answer(said, book, &field.ask, answer, names);
    }
    if record.blank == Blank::Climate {
        put_months(said, record);
    }
    if record.blank == Blank::Product && record.text("registration").is_none() {
        put(said, wr::UNVERIFIED);
    }
}

/// The months of a climate: "; mean highs, January to December: 3, 5, … °C; mean lows: -2, -1, … °C".
fn put_months(said: &mut String, record: &Record) {
    let (first, months) = Blank::months();
    let Some(Ask::Number { units, .. }) = record.blank.fields().get(first).map(|field| field.ask) else {
        return;
    };
    for (half, heading) in wr::MEANS.iter().enumerate() {
        let (mut between, mut unit) = (*heading, &0);
        put(said, wr::AND);
        for answer in record.answers.iter().skip(first + half * months).take(months) {
            let Some(Answer::Number(figure, at)) = answer else { continue };
            put(said, between);
            put(said, &figure.to_string());
            between = w::NEXT;
            unit = at;
        }
        put(said, &with_unit("", wr::unit(units.get(usize::from(*unit)).copied().unwrap_or_default())));
    }
}

/// What stands in a field; `names` are those of its words.
pub fn put_answer(said: &mut String, book: &Book, ask: &Ask, answer: &Answer, names: &[&str]) {
    match answer {
        Answer::Word(at) => put(said, names.get(usize::from(*at)).copied().unwrap_or_default()),
        Answer::Words(bits) => {
            let mut between = "";
            for (at, name) in names.iter().enumerate() {
                if bits >> at & 1 == 1 {
                    put(said, between);
                    put(said, name);
                    between = w::NEXT;
                }
            }
        }
        Answer::Count(count) => put(said, &edit::count(*count)),
        Answer::Number(number, at) => {
            let unit = if let Ask::Number { units, .. } = ask { units.get(usize::from(*at)) } else { None };
            let number = number.to_string();
            put(said, &unit.map_or_else(|| number.clone(), |unit| with_unit(&number, wr::unit(unit))));
        }
        Answer::Text(text) => put_isolated(said, text),
        Answer::Day(day) => put(said, &date(*day)),
        Answer::Time(time) => {
            put(said, &date(time.day));
            put(said, w::NEXT);
            time.put_clock(said);
        }
        Answer::Hive(hive) => put_hive(said, book, hive),
    }
}
