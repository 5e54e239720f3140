//! A line of the book in words, for the history and for the page of a hive.

use crate::app::wording::en_ledger as w;
use crate::book::Book;
use crate::book::entry::{Check, Ending, Entry, KeeperChange, NewBox, What};
use crate::book::id::{EntryId, ThingId};

/// What `entry` says, as a sentence without a full stop: "Hive 7: topped up, found 40 %, left 50 %, 12 beetles".
///
/// Names are the ones things carry now; those of things that are struck out are read from the line that brought them.
pub fn entry(book: &Book, entry: &Entry) -> String {
    let said = what(book, entry);
    if entry.replaces.is_some() { w::corrected(&said) } else { said }
}

/// As [`entry`], without naming the hive in front: for a page that is about that hive alone.
pub fn on_hive(book: &Book, line: &Entry) -> String {
    let all = entry(book, line);
    let head = line.hive().map(|hive| w::about(&hive_name(book, &hive), ""));
    head.and_then(|head| all.strip_prefix(head.trim_end()).map(|rest| w::upper(rest.trim_start())))
        .unwrap_or(all)
}

fn what(book: &Book, entry: &Entry) -> String {
    let about = |hive: &ThingId, said: &str| w::about(&hive_name(book, hive), said);
    match &entry.what {
        What::Keeper(change) => keeper(change),
        What::Kind(kind) => w::kind_new(&isolated(&kind.name)),
        What::KindChanged { now, .. } => w::kind_changed(&isolated(&now.name)),
        What::KindRetired { kind } => w::kind_retired(&kind_name(book, kind)),
        What::Yard { name, .. } => w::yard_new(&isolated(name)),
        What::YardChanged { yard, name, zone } => match (name, zone) {
            (Some(name), _) => w::yard_renamed(&isolated(name)),
            (None, Some(zone)) => w::yard_zone(&yard_name(book, yard), zone),
            (None, None) => yard_name(book, yard),
        },
        What::YardClosed { yard } => w::yard_closed(&yard_name(book, yard)),
        What::Season { yard, running } => w::season(&yard_name(book, yard), *running),
        What::Order { yard, hives } => w::order(&yard_name(book, yard), hives.len()),
        What::Hive { tag, size, boxes, .. } => {
            let (parts, traps) = boxes_in_words(boxes);
            w::hive_new(&w::hive(&isolated(tag)), *size, &parts, traps)
        }
        What::HiveChanged { hive, tag, size } => match (tag, size) {
            (Some(tag), _) => w::hive_renamed(&w::hive(&isolated(tag))),
            (None, Some(size)) => about(hive, w::size_now(*size)),
            (None, None) => hive_name(book, hive),
        },
        What::HiveMoved { hive, to, permit } => {
            about(hive, &w::moved(&yard_name(book, to), permit.as_deref().map(isolated).as_deref()))
        }
        What::HiveEnded { hive, how } => {
            let into = match how {
                Ending::Joined { into: Some(into) } => Some(hive_name(book, into)),
                _ => None,
            };
            about(hive, &w::ended(how, into.as_deref()))
        }
        What::HiveBack { hive } => about(hive, w::BACK),
        What::BoxesOn { hive, boxes, .. } => {
            let (parts, traps) = boxes_in_words(boxes);
            about(hive, &w::boxes_on(&parts, traps))
        }
        What::BoxOff { hive, part, traps } => {
            let depth = box_of(book, part).map(|part| part.depth);
            about(hive, &w::box_off(depth, *traps))
        }
        What::BoxWants { hive, part, traps } => {
            let depth = box_of(book, part).map(|part| part.depth);
            about(hive, &w::box_wants(depth, *traps))
        }
        What::TrapsOn { hive, traps } => {
            let kinds: Vec<&ThingId> = traps.iter().map(|placed| &placed.trap.kind).collect();
            let one = kinds.first().filter(|first| kinds.iter().all(|kind| kind == *first));
            about(hive, &w::traps_on(traps.len(), one.map(|kind| kind_name(book, kind)).as_deref()))
        }
        What::TrapsOff { hive, traps, went } => about(hive, &w::traps_off(traps.len(), *went)),
        What::Check(check) => check_in_words(book, check),
        What::Skip { hive, why, note } => {
            about(hive, &w::skipped(*why, note.as_deref().map(isolated).as_deref()))
        }
        What::Note { hive, text } => {
            let name = match (hive, &entry.yard) {
                (Some(hive), _) => hive_name(book, hive),
                (None, Some(yard)) => yard_name(book, yard),
                (None, None) => w::NOTE.to_owned(),
            };
            w::about(&name, &w::quoted(&isolated(text)))
        }
        What::Struck { entries } => struck(book, entries),
    }
}

/// A strike names what it struck when that is one line, and counts otherwise. Strikes look back, so this ends.
fn struck(book: &Book, entries: &[EntryId]) -> String {
    let first = entries.first().and_then(|id| book.log().get(id));
    match first.map(|first| (&first.what, first)) {
        Some((What::Struck { entries: again }, _)) if entries.len() == 1 => {
            let line = match again.as_slice() {
                [id] => book.log().get(id).map(|line| entry(book, line)),
                _ => None,
            };
            w::brought_back(again.len(), line.as_deref())
        }
        Some((_, line)) if entries.len() == 1 => w::struck(1, Some(&entry(book, line))),
        _ => w::struck(entries.len(), None),
    }
}

fn check_in_words(book: &Book, check: &Check) -> String {
    let mut said = vec![w::did(check.did).to_owned()];
    said.extend(check.before.map(w::found));
    said.extend(check.after.map(w::left));
    said.extend(check.count.map(w::beetles));
    said.extend(check.note.as_deref().map(|note| w::quoted(&isolated(note))));
    let hive = hive_name(book, &check.hive);
    let name = match &check.traps {
        Some(traps) => w::some_traps(&hive, traps.len()),
        None => hive,
    };
    w::about(&name, &said.join(", "))
}

fn keeper(change: &KeeperChange) -> String {
    let mut said = Vec::new();
    said.extend(change.name.as_deref().map(|name| w::keeper_name(&isolated(name))));
    said.extend(change.volume.map(w::keeper_volume));
    said.extend(change.length.map(w::keeper_length));
    said.extend(change.reserve.map(w::keeper_reserve));
    said.extend(change.bottle.map(w::keeper_bottle));
    said.extend(change.currency.as_deref().map(|code| w::keeper_currency(&isolated(code))));
    said.extend(change.season_start.map(w::keeper_season));
    said.extend(change.colony_value.map(w::keeper_colony));
    w::keeper(&said.join(", "))
}

/// Boxes in their order from the floor, alike neighbours together, and how many traps came in them.
fn boxes_in_words(boxes: &[NewBox]) -> (String, usize) {
    let mut runs: Vec<(w::Depth, usize)> = Vec::new();
    for part in boxes {
        match runs.last_mut() {
            Some((depth, count)) if *depth == part.depth => *count += 1,
            _ => runs.push((part.depth, 1)),
        }
    }
    let said: Vec<String> = runs.into_iter().map(|(depth, count)| w::boxes(depth, count)).collect();
    (said.join(", "), boxes.iter().map(|part| part.traps.len()).sum())
}

/// "Hive 7", by the name it carries now.
pub fn hive_name(book: &Book, hive: &ThingId) -> String {
    let now = book.standing().hives.get(hive).map(|hive| hive.tag.as_str());
    let tag = now.or_else(|| match brought(book, hive) {
        Some(What::Hive { tag, .. }) => Some(tag.as_str()),
        _ => None,
    });
    tag.map_or_else(|| w::UNKNOWN_HIVE.to_owned(), |tag| w::hive(&isolated(tag)))
}

/// The name of a yard.
pub fn yard_name(book: &Book, yard: &ThingId) -> String {
    let now = book.standing().yards.get(yard).map(|yard| yard.name.as_str());
    let name = now.or_else(|| match brought(book, yard) {
        Some(What::Yard { name, .. }) => Some(name.as_str()),
        _ => None,
    });
    name.map_or_else(|| w::UNKNOWN_YARD.to_owned(), isolated)
}

/// The keeper's word for a kind of trap.
pub fn kind_name(book: &Book, kind: &ThingId) -> String {
    let now = book.standing().kinds.get(kind).map(|now| now.kind.name.as_str());
    let name = now.or_else(|| match brought(book, kind) {
        Some(What::Kind(kind)) => Some(kind.name.as_str()),
        _ => None,
    });
    name.map_or_else(|| w::UNKNOWN_KIND.to_owned(), isolated)
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
    let turns = |c: char| matches!(c, '\u{590}'..='\u{8ff}' | '\u{fb1d}'..='\u{fdff}' | '\u{fe70}'..='\u{fefc}' | '\u{10800}'..='\u{10fff}' | '\u{1e800}'..='\u{1efff}');
    if text.chars().any(turns) { ["\u{2068}", text, "\u{2069}"].concat() } else { text.to_owned() }
}

#[cfg(test)]
#[path = "words_tests.rs"]
pub(in crate::app) mod tests;
