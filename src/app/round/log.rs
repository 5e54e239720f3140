//! Writing a hive down: two taps, or as many questions as it takes.

use super::draft::{self, Wrong};
use super::form::Make;
use super::state::{Ask, Card, Walk, Wish};
use super::walk;
use crate::almanac::day::Day;
use crate::almanac::oil;
use crate::app::edge::letters::BrowserLetters;
use crate::app::frame::focus_heading;
use crate::app::graph::untrack;
use crate::app::place::Place;
use crate::app::records::Stop;
use crate::app::state::Ui;
use crate::app::wording::en_round as w;
use crate::book::entry::{Check, Did, Entry, SkipReason};
use crate::book::id::ThingId;
use crate::book::standing::HiveNow;
use crate::book::write::{Doubt, Refusal};

/// What stands at the open hive: its name, itself, and the day entries are for.
struct At {
    hive: ThingId,
    now: HiveNow,
    day: Day,
}

fn at(walk: Walk) -> Result<At, Ask> {
    let hive = walk.open.get_untracked().ok_or(Ask::Nothing)?;
    let now = walk
        .records
        .book
        .with_untracked(|book| book.standing().hives.get(&hive).cloned())
        .ok_or(Ask::Stopped(Stop::Refused(Refusal::Unknown)))?;
    let today = walk.today.get_untracked();
    if let Ok(day) = walk.day.with_untracked(|text| draft::day(text, today)) {
        Ok(At { hive, now, day })
    } else {
        walk.more.set(true);
        Err(Ask::Nothing)
    }
}

/// The same, and the panel asks or says what is missing.
fn asked(walk: Walk) -> Option<At> {
    at(walk).map_err(|ask| walk.ask.set(ask)).ok()
}

/// Shows the field that has to be mended before anything is written.
fn mend(walk: Walk) {
    walk.more.set(true);
    walk.ask.set(Ask::Nothing);
}

/// Keeps what was written under the words `said`, or the panel says why not.
fn kept(walk: Walk, written: Result<Vec<Entry>, Refusal>, said: String) -> bool {
    let kept = walk.records.put(written, said);
    kept.map_err(|stop| walk.ask.set(Ask::Stopped(stop))).is_ok()
}

/// Keeps what was written and goes on to the next hive, or the panel says why not.
fn kept_on(walk: Walk, written: Result<Vec<Entry>, Refusal>, said: String, cards: Vec<Card>, go: Step) {
    match walk.records.put_and(written, said, move || go_on(walk, go)) {
        Ok(()) => {
            walk.cards.set(cards);
            walk.remember_logged();
            walk.empty_fields();
            // Until the next hive is there the keys are still those of this one.
            walk.rest_a_moment();
        }
        Err(stop) => walk.ask.set(Ask::Stopped(stop)),
    }
}

/// What `make` makes of the book, the pen, `day` and today.
fn made(walk: Walk, day: Day, make: Make<'_>) -> Result<Vec<Entry>, Refusal> {
    let today = walk.today.get_untracked();
    let pen = walk.records.pen();
    walk.records.book.with_untracked(|book| make(book, &pen, day, today))
}

/// Writes it.
fn put(walk: Walk, day: Day, said: String, make: Make<'_>) -> bool {
    kept(walk, made(walk, day, make), said)
}

/// Saves work on the open hive. `sure` passes over doubts the keeper has been asked about.
pub(super) fn work(walk: Walk, did: Did, sure: bool) {
    walk.wish.set_value(Some(Wish::Work(did)));
    let Some(At { hive, now, day }) = asked(walk) else { return };
    let typed = untrack(|| walk.typed());
    let usual = walk.records.book.with_untracked(|book| book.usual_level(&now, did));
    let check = match typed.check(&hive, did, usual) {
        Ok(check) => check,
        Err(Wrong::Count(_)) => return walk.ask.set(Ask::Nothing),
        Err(_) => return mend(walk),
    };
    let today = walk.today.get_untracked();
    let pen = walk.records.pen();
    let (mut doubts, written) = walk
        .records
        .book
        .with_untracked(|book| (book.doubts(day, &check), book.check(&pen, day, today, check.clone())));
    // What cannot be written needs no other question.
    let entries = match &written {
        Ok(entries) => entries,
        Err(refusal) => return walk.ask.set(Ask::Stopped(Stop::Refused(refusal.clone()))),
    };
    // A level that rose is kept and flagged: the keeper cannot know better than what was read.
    let all = doubts.len();
    doubts.retain(|doubt| !matches!(doubt, Doubt::Rose { .. }));
    let rose = doubts.len() < all;
    if !sure && !doubts.is_empty() {
        let shifts = doubts
            .contains(&Doubt::Backdated)
            .then(|| walk.records.book.with_untracked(|book| book.shifts(entries, today)));
        return walk.ask.set(Ask::Doubts(did, doubts, shifts));
    }
    let cards = cards(&check, rose);
    let next = next(walk, &now.yard, &hive, day);
    let some = check.traps.as_ref().map(Vec::len);
    let said = w::logged(&now.tag, did, some, (day != today).then_some(day));
    kept_on(walk, written, said, cards, Step { from: hive, next });
}

/// Saves that the traps the open hive wants were put in, all of one kind.
pub(super) fn placed(walk: Walk, kind: &ThingId) {
    walk.wish.set_value(Some(Wish::Placed(kind.clone())));
    let Some(At { hive, now, day }) = asked(walk) else { return };
    let Ok(look) = untrack(|| walk.typed()).check(&hive, Did::AsFound, None) else { return mend(walk) };
    let said = w::logged_placed(&now.tag, now.wanting());
    let next = next(walk, &now.yard, &hive, day);
    let written =
        made(walk, day, &|book, pen, day, today| book.traps_placed(pen, day, today, kind, look.clone()));
    kept_on(walk, written, said, Vec::new(), Step { from: hive, next });
}

/// Saves that the open hive was left.
pub(super) fn skip(walk: Walk, why: SkipReason) {
    walk.wish.set_value(Some(Wish::Skip(why)));
    let Some(At { hive, now, day }) = asked(walk) else { return };
    let note = walk.note.with_untracked(|text| text.trim().to_owned());
    if note.chars().count() > Entry::NOTE_MOST {
        return mend(walk);
    }
    let next = next(walk, &now.yard, &hive, day);
    let note = (!note.is_empty()).then_some(note);
    let said = w::logged_skip(&now.tag, why);
    let written =
        made(walk, day, &|book, pen, day, today| book.skip(pen, day, today, &hive, why, note.clone()));
    kept_on(walk, written, said, Vec::new(), Step { from: hive, next });
}

/// Traps that did not fish were replaced and filled on the spot.
pub(super) fn filled_again(walk: Walk, hive: &ThingId) {
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
        let day = now.last.as_ref().map_or_else(|| walk.today.get_untracked(), |seen| seen.day);
        Some((now.tag.clone(), day, check))
    });
    let Some((tag, day, check)) = found else { return };
    let said = w::logged(&tag, Did::Replaced, check.traps.as_ref().map(Vec::len), None);
    put(walk, day, said, &|book, pen, day, today| book.check(pen, day, today, check.clone()));
}

/// Takes the open hive back into care.
pub(super) fn revive(walk: Walk) {
    let Ok(At { hive, now, day }) = at(walk) else { return };
    let said = crate::app::wording::en_hive::revived(&now.tag);
    let revive: Make<'_> = &|book, pen, day, today| book.hive_back(pen, day, today, &hive, &BrowserLetters);
    if put(walk, day, said, revive) {
        walk.ask.set(Ask::Nothing);
    }
}

/// Moves the start of the open hive back to the day that work is being written for, and saves that work.
pub(super) fn stood_there(walk: Walk) {
    let Ok(At { hive, now, day }) = at(walk) else { return };
    let said = w::stood_there(&now.tag, day);
    if !put(walk, day, said, &|book, pen, day, today| book.hive_since(pen, day, today, &hive)) {
        return;
    }
    let moved = walk.records.act.get_untracked();
    walk.ask.set(Ask::Nothing);
    match walk.wish.get_value() {
        Some(Wish::Work(did)) => work(walk, did, false),
        Some(Wish::Placed(kind)) => placed(walk, &kind),
        Some(Wish::Skip(why)) => skip(walk, why),
        None => {}
    }
    let done = walk.records.act.get_untracked();
    if let Some((mut both, done)) = moved.zip(done)
        && both.entries != done.entries
    {
        // One tap did both, so one tap takes both back.
        both.entries.extend(done.entries);
        both.said = [&both.said, "; ", &done.said].concat();
        walk.records.act.set(Some(both));
    }
}

/// After the bar took the logging of a hive back, its panel is open again with all that was typed; after it was done
/// again the walk goes on.
pub(super) fn follow_undo(ui: Ui, walk: Walk) {
    let act = walk.records.act.get_untracked();
    let Some((act, logged)) = act.zip(walk.logged.get_value()) else { return };
    if act.entries.last() != Some(&logged.entry) {
        return;
    }
    let hive = logged.hive.clone();
    let at_hive = walk.open.get_untracked().as_ref() == Some(&hive);
    let Some(yard) = walk.records.book.with_untracked(|book| {
        let standing = book.standing();
        let now = standing.hives.get(&hive)?;
        let only = standing.open_yards().nth(1).is_none();
        Some((now.yard.clone(), only))
    }) else {
        return;
    };
    let (yard, only) = yard;
    if act.undone.is_some() {
        let here = at_hive
            || ui.place.with_untracked(|place| match place {
                Place::Round => only,
                Place::Yard(id) => *id == yard.to_string(),
                Place::Hive(id) => *id == hive.to_string(),
                // A panel that was left open waits in the Round.
                _ => walk.open.with_untracked(Option::is_some),
            });
        walk.bring_back(logged, here);
    } else if at_hive {
        let today = walk.today.get_untracked();
        let day = walk.day.with_untracked(|text| draft::day(text, today)).unwrap_or(today);
        let next = next(walk, &yard, &hive, day);
        walk.remember_logged();
        walk.empty_fields();
        walk.cards.set(Vec::new());
        go_on(walk, Step { from: hive, next });
    } else {
        walk.take_again(&logged);
    }
}

/// The next hive without an entry on `day`, as the list stands before the save: what was skipped earlier leads it and
/// moves back to its place once it is worked on.
fn next(walk: Walk, yard: &ThingId, hive: &ThingId, day: Day) -> Option<ThingId> {
    walk.records
        .book
        .with_untracked(|book| walk::next_hive(&walk::stops(book.standing(), yard, day), Some(hive)))
}

/// From a hive that was logged to the next.
struct Step {
    from: ThingId,
    next: Option<ThingId>,
}

/// Shows the next hive, unless the keeper has turned to another one by now.
fn go_on(walk: Walk, Step { from, next }: Step) {
    if walk.open.with_untracked(|open| open.as_ref() != Some(&from)) {
        return;
    }
    if let Some(next) = next {
        walk.open_hive(&next);
    } else {
        walk.shut();
        focus_heading();
    }
}

/// What to say after a save.
fn cards(check: &Check, rose: bool) -> Vec<Card> {
    let mut cards = Vec::new();
    if matches!(check.did, Did::Missing | Did::GluedShut | Did::Spilled) {
        cards.push(Card::Trouble(check.did));
    }
    if rose {
        cards.push(Card::Rose);
    }
    if check.before.is_some() && check.count.is_some_and(oil::level_flatters) {
        cards.push(Card::Flatters);
    }
    cards
}
