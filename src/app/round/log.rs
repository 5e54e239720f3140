//! Writing a hive down: two taps, or as many questions as it takes.

use super::draft::{self, Wrong};
use super::state::{Ask, Card, Walk};
use super::walk;
use crate::almanac::day::Day;
use crate::almanac::oil;
use crate::app::edge::letters::BrowserLetters;
use crate::app::frame::focus_heading;
use crate::app::graph::untrack;
use crate::app::records::Stop;
use crate::app::wording::en_round as w;
use crate::book::entry::{Check, Did, SkipReason};
use crate::book::id::ThingId;
use crate::book::standing::HiveNow;
use crate::book::write::{Doubt, Refusal};

/// What stands at the open hive: its name, itself, and the day entries are for.
fn at(walk: Walk) -> Result<(ThingId, HiveNow, Day), Ask> {
    let hive = walk.open.get_untracked().ok_or(Ask::Nothing)?;
    let now = walk
        .records
        .book
        .with_untracked(|book| book.standing().hives.get(&hive).cloned())
        .ok_or(Ask::Stopped(Stop::Refused(Refusal::Unknown)))?;
    let today = walk.today.get_untracked();
    if let Ok(day) = walk.day.with_untracked(|text| draft::day(text, today)) {
        Ok((hive, now, day))
    } else {
        walk.more.set(true);
        Err(Ask::Nothing)
    }
}

/// Saves work on the open hive. `sure` passes over doubts the keeper has been asked about.
pub(super) fn work(walk: Walk, did: Did, sure: bool) {
    let (hive, now, day) = match at(walk) {
        Ok(at) => at,
        Err(ask) => return walk.ask.set(ask),
    };
    let typed = untrack(|| walk.typed());
    let usual = walk.records.book.with_untracked(|book| book.usual_level(&now, did));
    let check = match typed.check(&hive, did, usual) {
        Ok(check) => check,
        Err(Wrong::Count(_)) => return walk.ask.set(Ask::Nothing),
        Err(_) => {
            walk.more.set(true);
            return walk.ask.set(Ask::Nothing);
        }
    };
    let today = walk.today.get_untracked();
    let pen = walk.records.pen();
    let (doubts, written) = walk
        .records
        .book
        .with_untracked(|book| (book.doubts(day, &check), book.check(&pen, day, today, check.clone())));
    // What cannot be written needs no other question.
    if let Err(refusal) = written {
        return walk.ask.set(Ask::Stopped(Stop::Refused(refusal)));
    }
    // A level that rose is kept and flagged: the keeper cannot know better than what was read.
    let asked: Vec<Doubt> =
        doubts.iter().copied().filter(|doubt| !matches!(doubt, Doubt::Rose { .. })).collect();
    if !sure && !asked.is_empty() {
        return walk.ask.set(Ask::Doubts(did, asked));
    }
    let rose = doubts.iter().any(|doubt| matches!(doubt, Doubt::Rose { .. }));
    let cards = cards(&check, day, rose);
    let next = next(walk, &now.yard, &hive, day);
    let some = check.traps.as_ref().map(Vec::len);
    let said = w::logged(&now.tag, did, some, (day != today).then_some(day));
    match walk.records.put(written, said) {
        Ok(_) => {
            walk.cards.set((Some(hive), cards));
            go_on(walk, next);
        }
        Err(stop) => walk.ask.set(Ask::Stopped(stop)),
    }
}

/// Saves that the traps the open hive wants were put in, all of one kind.
pub(super) fn placed(walk: Walk, kind: &ThingId) {
    let (hive, now, day) = match at(walk) {
        Ok(at) => at,
        Err(ask) => return walk.ask.set(ask),
    };
    let Ok(look) = untrack(|| walk.typed()).check(&hive, Did::AsFound, None) else {
        walk.more.set(true);
        return walk.ask.set(Ask::Nothing);
    };
    let today = walk.today.get_untracked();
    let next = next(walk, &now.yard, &hive, day);
    let pen = walk.records.pen();
    let written = walk.records.book.with_untracked(|book| book.traps_placed(&pen, day, today, kind, look));
    match walk.records.put(written, w::logged_placed(&now.tag, now.wanting())) {
        Ok(_) => {
            walk.cards.set((None, Vec::new()));
            go_on(walk, next);
        }
        Err(stop) => walk.ask.set(Ask::Stopped(stop)),
    }
}

/// Saves that the open hive was left.
pub(super) fn skip(walk: Walk, why: SkipReason) {
    let (hive, now, day) = match at(walk) {
        Ok(at) => at,
        Err(ask) => return walk.ask.set(ask),
    };
    let note = walk.note.with_untracked(|text| text.trim().to_owned());
    if note.chars().count() > crate::book::entry::Entry::NOTE_MOST {
        walk.more.set(true);
        return walk.ask.set(Ask::Nothing);
    }
    let today = walk.today.get_untracked();
    let next = next(walk, &now.yard, &hive, day);
    let pen = walk.records.pen();
    let note = (!note.is_empty()).then_some(note);
    let written = walk.records.book.with_untracked(|book| book.skip(&pen, day, today, &hive, why, note));
    match walk.records.put(written, w::logged_skip(&now.tag, why)) {
        Ok(_) => {
            walk.cards.set((None, Vec::new()));
            go_on(walk, next);
        }
        Err(stop) => walk.ask.set(Ask::Stopped(stop)),
    }
}

/// Traps that did not fish were replaced and filled on the spot.
pub(super) fn filled_again(walk: Walk, hive: &ThingId) {
    let today = walk.today.get_untracked();
    let found = walk.records.book.with_untracked(|book| {
        let now = book.standing().hives.get(hive)?;
        let idle = now.traps().filter(|trap| trap.trouble.is_some()).map(|trap| trap.id.clone());
        let check = Check {
            hive: hive.clone(),
            traps: Some(idle.collect()),
            did: Did::Replaced,
            before: None,
            after: book.usual_level(now, Did::Replaced),
            count: None,
            note: None,
        };
        // On the day of the entry that said so: a walk of last week is finished last week.
        let day = now.last.as_ref().map_or(today, |seen| seen.day);
        Some((now.tag.clone(), day, check))
    });
    let Some((tag, day, check)) = found else { return };
    let said = w::logged(&tag, Did::Replaced, check.traps.as_ref().map(Vec::len), None);
    let pen = walk.records.pen();
    let written = walk.records.book.with_untracked(|book| book.check(&pen, day, today, check));
    match walk.records.put(written, said) {
        Ok(_) => walk.cards.set((None, Vec::new())),
        Err(stop) => walk.ask.set(Ask::Stopped(stop)),
    }
}

/// Takes the open hive back into care.
pub(super) fn revive(walk: Walk) {
    let Ok((hive, now, day)) = at(walk) else { return };
    let today = walk.today.get_untracked();
    let pen = walk.records.pen();
    let written =
        walk.records.book.with_untracked(|book| book.hive_back(&pen, day, today, &hive, &BrowserLetters));
    match walk.records.put(written, crate::app::wording::en_hive::revived(&now.tag)) {
        Ok(_) => walk.ask.set(Ask::Nothing),
        Err(stop) => walk.ask.set(Ask::Stopped(stop)),
    }
}

/// Moves the start of the open hive back to the day that work is being written for.
pub(super) fn stood_there(walk: Walk) {
    let Ok((hive, now, day)) = at(walk) else { return };
    let today = walk.today.get_untracked();
    let pen = walk.records.pen();
    let written = walk.records.book.with_untracked(|book| book.hive_since(&pen, day, today, &hive));
    match walk.records.put(written, w::stood_there(&now.tag, day)) {
        Ok(_) => walk.ask.set(Ask::Nothing),
        Err(stop) => walk.ask.set(Ask::Stopped(stop)),
    }
}

/// The next hive without an entry on `day`, as the list stands before the save: what was skipped earlier leads it and
/// moves back to its place once it is worked on.
fn next(walk: Walk, yard: &ThingId, hive: &ThingId, day: Day) -> Option<ThingId> {
    walk.records
        .book
        .with_untracked(|book| walk::next_hive(&walk::stops(book.standing(), yard, day), Some(hive)))
}

fn go_on(walk: Walk, next: Option<ThingId>) {
    walk.empty_fields();
    if let Some(next) = next {
        walk.open_hive(&next);
    } else {
        walk.shut();
        focus_heading();
    }
}

/// What to say after a save.
fn cards(check: &Check, day: Day, rose: bool) -> Vec<Card> {
    let mut cards = Vec::new();
    if matches!(check.did, Did::Missing | Did::GluedShut | Did::Spilled) {
        cards.push(Card::Trouble(check.did, day));
    }
    if rose {
        cards.push(Card::Rose);
    }
    if check.before.is_some() && check.count.is_some_and(oil::level_flatters) {
        cards.push(Card::Flatters);
    }
    cards
}
