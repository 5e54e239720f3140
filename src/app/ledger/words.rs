//! A line of the book in words, for the history and for the page of a hive.
//!
//! A sentence is written from front to back into one text: most of its pieces stand in the book or in the program
//! already, and a text made for each would be let go of at once.

mod order;
mod records;

pub use records::{put_answer, record_alone, record_of_all};

use crate::app::wording::en::{length_name, put, volume_name, with_unit};
use crate::app::wording::en_hive::place as place_words;
use crate::app::wording::en_ledger as w;
use crate::book::Book;
use crate::book::entry::{Check, Did, Ending, Entry, KeeperChange, NewBox, What};
use crate::book::id::{EntryId, ThingId};
use crate::book::standing::{HiveNow, Standing};

/// What `entry` says, as a sentence without a full stop: "Hive 7: topped up, found 40 %, left 50 %, 12 beetles".
///
/// Names are the ones things carry now; those of things that are struck out are read from the line that brought them.
pub fn entry(book: &Book, entry: &Entry) -> String {
    let mut said = String::new();
    say(&mut said, book, entry);
    said
}

fn say(said: &mut String, book: &Book, entry: &Entry) {
    what(said, book, entry);
    if entry.replaces.is_some() {
        put(said, w::CORRECTED);
    }
}

fn what(said: &mut String, book: &Book, entry: &Entry) {
    let about = |said: &mut String, hive: &ThingId| {
        put_hive(said, book, hive);
        put(said, w::SAYS);
    };
    match &entry.what {
        What::Keeper(change) => keeper(said, change),
        What::Kind(kind) => w::kind_new(said, &kind.name),
        What::KindChanged { kind, .. } if entry.bulk.is_some() => w::kind_meant(said, kind_now(book, kind)),
        What::KindChanged { now, .. } => w::kind_changed(said, &now.name),
        What::KindRetired { kind } => w::kind_retired(said, kind_now(book, kind)),
        What::Yard { name, .. } => w::yard_new(said, name),
        What::YardChanged { yard, name, zone } => match (name, zone) {
            (Some(name), _) => w::yard_renamed(said, name),
            (None, Some(zone)) => w::yard_zone(said, yard_now(book, yard), zone),
            (None, None) => put_yard(said, book, yard),
        },
        What::YardClosed { yard } => w::yard_closed(said, yard_now(book, yard)),
        What::Season { yard, running } => w::season(said, yard_now(book, yard), *running),
        What::Order { yard, hives } => order::put_order(said, book, entry, yard, hives),
        What::Hive { tag, size, boxes, .. } => {
            w::hive_new(said, tag, *size);
            if boxes.is_empty() {
                put(said, w::NO_BOX);
            }
            put_boxes(said, boxes);
            w::and_traps(said, traps_in(boxes));
        }
        What::HiveChanged { hive, tag, size } => match (tag, size) {
            (Some(tag), _) => w::hive_renamed(said, tag_before(book, entry, hive), tag),
            (None, Some(size)) => {
                about(said, hive);
                put(said, w::size_now(*size));
            }
            (None, None) => put_hive(said, book, hive),
        },
        What::HiveMoved { hive, to, permit } => {
            about(said, hive);
            w::moved(said, yard_now(book, to), permit.as_deref());
        }
        What::HiveEnded { hive, how } => {
            about(said, hive);
            put(said, w::ended(how));
            if let Ending::Joined { into: Some(into) } = how {
                put_hive(said, book, into);
            }
        }
        What::HiveBack { hive } => {
            about(said, hive);
            put(said, w::BACK);
        }
        What::HiveSame { hive, is } => {
            about(said, hive);
            put(said, w::SAME);
            put_hive(said, book, is);
        }
        What::BoxesOn { hive, boxes, .. } => {
            about(said, hive);
            put_boxes(said, boxes);
            put(said, w::PUT_ON);
            w::and_traps(said, traps_in(boxes));
        }
        What::BoxOff { hive, part, traps } => {
            about(said, hive);
            w::box_off(said, box_of(book, part).map(|part| part.depth), *traps);
        }
        What::BoxWants { hive, part, traps } => {
            about(said, hive);
            w::box_wants(said, box_of(book, part).map(|part| part.depth), *traps);
        }
        What::TrapsOn { hive, traps } => {
            about(said, hive);
            w::traps_on(said, traps.len());
            if let Some(first) = traps.first().map(|placed| &placed.trap.kind)
                && traps.iter().all(|placed| placed.trap.kind == *first)
            {
                w::of_kind(said, kind_now(book, first));
            }
        }
        What::TrapsOff { hive, traps, went } => {
            about(said, hive);
            w::traps_off(said, traps.len(), *went);
        }
        What::Check(check) => put_check(said, book, check, goes_with_placing(book, entry, check)),
        What::Skip { hive, why, note } => {
            about(said, hive);
            put(said, w::skipped(*why));
            w::and_note(said, note.as_deref());
        }
        What::Record(record) => records::put_record(said, book, entry.yard.as_ref(), record),
        What::Note { hive, text } => {
            match (hive, &entry.yard) {
                (Some(hive), _) => put_hive(said, book, hive),
                (None, Some(yard)) => put_yard(said, book, yard),
                (None, None) => put(said, w::NOTE),
            }
            put(said, w::SAYS);
            w::put_quoted(said, text);
        }
        What::Struck { entries } => struck(said, book, entries),
    }
}

/// A strike names what it struck when that is one line, and counts otherwise. Strikes look back, so this ends.
fn struck(said: &mut String, book: &Book, entries: &[EntryId]) {
    let only = |entries: &[EntryId]| match entries {
        [id] => book.log().get(id),
        _ => None,
    };
    let mut count = entries.len();
    let mut line = only(entries);
    if let Some(What::Struck { entries: again }) = line.map(|line| &line.what) {
        put(said, w::BROUGHT_BACK);
        count = again.len();
        line = only(again);
    } else {
        put(said, w::STRUCK);
    }
    match line {
        Some(line) => {
            put(said, w::QUOTE);
            say(said, book, line);
            put(said, w::UNQUOTE);
        }
        None => put(said, &w::lines(count)),
    }
}

/// The tag a hive carried before `entry` gave it another one.
fn tag_before<'a>(book: &'a Book, entry: &Entry, hive: &ThingId) -> Option<&'a str> {
    let struck = book.log().struck();
    let mut before = None;
    for line in book.log().entries() {
        let tag = match &line.what {
            What::Hive { tag, .. } if line.id == *hive.entry() => Some(tag),
            What::HiveChanged { hive: of, tag, .. } if of == hive => tag.as_ref(),
            _ => None,
        };
        if line.id < entry.id && !struck.contains_key(&line.id) {
            before = tag.map(String::as_str).or(before);
        }
    }
    before
}

/// A look that was written together with the traps that went in, just before it.
fn goes_with_placing(book: &Book, entry: &Entry, check: &Check) -> bool {
    let before = entry.id.n().checked_sub(1).and_then(|n| EntryId::new(entry.id.writer().clone(), n).ok());
    let before = before.filter(|_| check.did == Did::AsFound && entry.bulk.is_some());
    before.and_then(|id| book.log().get(&id)).is_some_and(|line| {
        line.bulk == entry.bulk && matches!(&line.what, What::TrapsOn { hive, .. } if *hive == check.hive)
    })
}

fn put_check(said: &mut String, book: &Book, check: &Check, placing: bool) {
    put_hive(said, book, &check.hive);
    match check.traps.as_deref() {
        Some([trap]) => {
            put(said, w::NEXT);
            match place(book, check, trap) {
                Some(place) => put(said, &place),
                None => w::traps(said, 1),
            }
        }
        Some(traps) => w::and_traps(said, traps.len()),
        None => {}
    }
    put(said, w::SAYS);
    put(said, if placing { w::PLACED } else { w::did(check.did) });
    if let Some(level) = check.before {
        w::found(said, level);
    }
    if let Some(level) = check.after {
        w::left(said, level);
    }
    if let Some(count) = check.count {
        w::beetles(said, count);
    }
    w::and_note(said, check.note.as_deref());
}

/// Where a trap hangs, while it does.
fn place(book: &Book, check: &Check, trap: &ThingId) -> Option<String> {
    let now = book.standing().hives.get(&check.hive)?;
    let mut parts = (1..).zip(&now.boxes);
    parts.find_map(|(number, part)| {
        part.traps.iter().find(|known| known.id == *trap).map(|known| place_words(number, known.spot))
    })
}

/// What of the settings a line changes, one after the other.
fn keeper(said: &mut String, change: &KeeperChange) {
    put(said, w::KEEPER);
    let start = said.len();
    let next = |said: &mut String, words: &str| {
        put(said, if said.len() > start { w::NEXT } else { "" });
        put(said, words);
    };
    if let Some(name) = &change.name {
        next(said, w::KEEPER_NAME);
        put_isolated(said, name);
    }
    if let Some(unit) = change.volume {
        next(said, w::KEEPER_VOLUME);
        put(said, volume_name(unit));
    }
    if let Some(unit) = change.length {
        next(said, w::KEEPER_LENGTH);
        put(said, length_name(unit));
    }
    if let Some(reserve) = change.reserve {
        next(said, w::KEEPER_RESERVE);
        w::percent(said, reserve);
    }
    if let Some(bottle) = change.bottle {
        next(said, w::KEEPER_BOTTLE);
        put(said, &with_unit(&bottle.number().to_string(), volume_name(bottle.unit())));
    }
    if let Some(code) = &change.currency {
        next(said, w::KEEPER_CURRENCY);
        put_isolated(said, code);
    }
    if let Some(start) = change.season_start {
        next(said, w::KEEPER_SEASON);
        w::month_and_day(said, start);
    }
    if let Some(value) = change.colony_value {
        next(said, w::KEEPER_COLONY);
        put(said, &value.to_string());
    }
    if said.len() == start {
        put(said, w::KEEPER_NOTHING);
    }
}

/// Boxes in their order from the floor, alike neighbours together.
fn put_boxes(said: &mut String, boxes: &[NewBox]) {
    let mut between = "";
    for run in boxes.chunk_by(|one, next| one.depth == next.depth) {
        put(said, between);
        between = w::NEXT;
        if let Some(first) = run.first() {
            w::boxes(said, first.depth, run.len());
        }
    }
}

/// How many traps came in boxes.
fn traps_in(boxes: &[NewBox]) -> usize {
    boxes.iter().map(|part| part.traps.len()).sum()
}

/// "Hive 7", by the name it carries now.
pub fn hive_name(book: &Book, hive: &ThingId) -> String {
    let mut said = String::new();
    put_hive(&mut said, book, hive);
    said
}

fn put_hive(said: &mut String, book: &Book, hive: &ThingId) {
    let now = book.standing().hives.get(hive).map(|hive| hive.tag.as_str());
    w::hive(
        said,
        now.or_else(|| match brought(book, hive) {
            Some(What::Hive { tag, .. }) => Some(tag.as_str()),
            _ => None,
        }),
    );
}

/// The tag of a hive, with its yard behind it where a hive in care of another yard has the same: "7, Ferry Field".
pub fn tag_told(standing: &Standing, now: &HiveNow) -> String {
    let same = |other: &HiveNow| other.tag == now.tag && other.yard != now.yard && other.alive();
    let twice = standing.hives.values().any(same);
    match standing.yards.get(&now.yard).filter(|_| twice) {
        Some(yard) => [&*isolated(&now.tag), ", ", &*isolated(&yard.name)].concat(),
        None => now.tag.clone(),
    }
}

/// The name of a yard.
pub fn yard_name(book: &Book, yard: &ThingId) -> String {
    let mut said = String::new();
    put_yard(&mut said, book, yard);
    said
}

fn put_yard(said: &mut String, book: &Book, yard: &ThingId) {
    w::yard(said, yard_now(book, yard));
}

fn yard_now<'a>(book: &'a Book, yard: &ThingId) -> Option<&'a str> {
    let now = book.standing().yards.get(yard).map(|yard| yard.name.as_str());
    now.or_else(|| match brought(book, yard) {
        Some(What::Yard { name, .. }) => Some(name.as_str()),
        _ => None,
    })
}

/// The keeper's word for a kind of trap.
fn kind_now<'a>(book: &'a Book, kind: &ThingId) -> Option<&'a str> {
    let now = book.standing().kinds.get(kind).map(|now| now.kind.name.as_str());
    now.or_else(|| match brought(book, kind) {
        Some(What::Kind(kind)) => Some(kind.name.as_str()),
        _ => None,
    })
}

fn brought<'a>(book: &'a Book, thing: &ThingId) -> Option<&'a What> {
    book.log().get(thing.entry()).map(|entry| &entry.what)
}

/// The box of that name, from the line that brought it: also when it is off the hive by now.
fn box_of<'a>(book: &'a Book, part: &ThingId) -> Option<&'a NewBox> {
    let (boxes, mut next) = match brought(book, part)? {
        What::Hive { boxes, .. } => (boxes, 1),
        What::BoxesOn { boxes, .. } => (boxes, 0),
        _ => return None,
    };
    // A box is numbered before its traps, as the book numbers them.
    for new in boxes {
        if next == usize::from(part.nth()) {
            return Some(new);
        }
        next += 1 + new.traps.len();
    }
    None
}

/// A text that came from outside, kept from turning the sentence around it when it is written from right to left.
pub fn isolated(text: &str) -> String {
    let mut said = String::new();
    put_isolated(&mut said, text);
    said
}

/// The same at the end of a sentence.
pub fn put_isolated(said: &mut String, text: &str) {
    let turns = |c: char| matches!(c, '\u{590}'..='\u{8ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{fefc}' | '\u{10800}'..='\u{10fff}' | '\u{1e800}'..='\u{1efff}');
    let turns = text.chars().any(turns);
    put(said, if turns { "\u{2068}" } else { "" });
    put(said, text);
    put(said, if turns { "\u{2069}" } else { "" });
}

#[cfg(test)]
#[path = "words_tests.rs"]
pub(in crate::app) mod tests;
