//! Writing a hive down: two taps, or as many questions as it takes.

use super::draft::{self, Wrong};
use super::form::Make;
use super::state::{Ask, Card, Walk, Wish};
use super::step::{Step, go_on, step};
use crate::almanac::day::Day;
use crate::almanac::oil;
use crate::app::edge::{self, letters::BrowserLetters};
use crate::app::graph::untrack;
use crate::app::ledger::words::tag_told;
use crate::app::place::Place;
use crate::app::records::Stop;
use crate::app::state::Ui;
use crate::app::wording::{en_hive, en_ledger, en_round as w};
use crate::book::entry::{Check, Did, Entry, SkipReason};
use crate::book::id::ThingId;
use crate::book::standing::{HiveNow, Trouble};
use crate::book::write::{Doubt, Refusal};

/// What stands at the open hive: its name, itself, its tag as it is told, and the day entries are for.
struct At {
    hive: ThingId,
    now: HiveNow,
    tag: String,
    day: Day,
}

fn at(walk: Walk) -> Result<At, Ask> {
    let hive = walk.open.get_untracked().ok_or(Ask::Nothing)?;
    let (now, tag) = walk
        .records
        .book
        .with_untracked(|book| {
            let now = book.standing().hives.get(&hive)?;
            Some((now.clone(), tag_told(book.standing(), now)))
        })
        .ok_or(Ask::Stopped(Stop::Refused(Refusal::Unknown)))?;
    let today = walk.today.get_untracked();
    match walk.day.with_untracked(|text| draft::day(text, today)) {
        Ok(day) => Ok(At { hive, now, tag, day }),
        Err(wrong) => {
            mend(walk, wrong);
            Err(Ask::Nothing)
        }
    }
}

/// The same, and the panel asks or says what is missing.
fn asked(walk: Walk) -> Option<At> {
    at(walk).map_err(|ask| walk.ask.set(ask)).ok()
}

/// Shows the field that has to be mended before anything is written, and puts the focus on it: what is wrong is said
/// beside it.
fn mend(walk: Walk, wrong: Wrong) {
    walk.more.set(true);
    walk.ask.set(Ask::Nothing);
    let field = match wrong {
        Wrong::Before(_) => "log-before",
        Wrong::After(_) => "log-after",
        Wrong::Count(_) => "log-count",
        Wrong::Note(_) => "log-note",
        Wrong::Day(_) => "log-day",
    };
    // Later than the panel, which turns to the name of the hive after a question.
    edge::after_paint(move || edge::after_paint(move || edge::focus(field)));
}

/// What is pressed before the keys have been there for a moment was not meant.
pub(super) fn meant(walk: Walk) -> bool {
    walk.ready.get_untracked()
}

/// A key of a question was meant, and answers it: until the panel is drawn anew its keys are still there, and answer
/// nothing.
fn answers(walk: Walk, question: fn(&Ask) -> bool) -> bool {
    let asked = meant(walk) && walk.ask.with_untracked(question);
    if asked {
        walk.ask.set(Ask::Nothing);
    }
    asked
}

/// Keeps what was written under the words `said`, or the panel says why not.
fn kept(walk: Walk, written: Result<Vec<Entry>, Refusal>, said: String) -> bool {
    let kept = walk.records.put(written, said);
    kept.map_err(|stop| walk.ask.set(Ask::Stopped(stop))).is_ok()
}

/// Keeps what was written and goes on to the next hive, or the panel says why not.
fn kept_on(walk: Walk, written: Result<Vec<Entry>, Refusal>, said: String, cards: Vec<Card>, go: Step) {
    let entry = written.as_ref().ok().and_then(|entries| entries.last()).map(|entry| entry.id.clone());
    let called = go.called;
    let go = Step { entry, ..go };
    match walk.records.put_and(written, said, move || go_on(walk, go)) {
        Ok(()) => {
            walk.cards.set(cards);
            walk.remember_logged(called);
            walk.empty_fields();
            // Until the next hive is there the keys are still those of this one.
            walk.rest_a_moment();
        }
        Err(stop) => {
            if stop == Stop::NotSaved {
                walk.remember_held();
            }
            walk.ask.set(Ask::Stopped(stop));
        }
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

/// The key of `did` was pressed. What is seldom so of every trap asks for which, where there are several and the keeper
/// has named none.
pub(super) fn work(walk: Walk, did: Did) {
    if !meant(walk) {
        return;
    }
    let asks = matches!(did, Did::Spilled | Did::Missing | Did::GluedShut)
        && walk.traps.with_untracked(Vec::is_empty);
    if asks && found(walk, did).len() > 1 {
        walk.ask.set(Ask::Which(did));
        return walk.rest_a_moment();
    }
    save(walk, did, Vec::new(), false);
}

/// The traps of the open hive that can be found so, with their places: what is missing cannot be lost again.
pub(super) fn found(walk: Walk, did: Did) -> Vec<(ThingId, String)> {
    walk.records.book.with_untracked(|book| {
        let now = walk.open.get_untracked().and_then(|hive| book.standing().hives.get(&hive));
        let Some(now) = now else { return Vec::new() };
        let mut found = places(now);
        found.retain(|(id, _)| {
            let trouble = now.traps().find(|trap| trap.id == *id).and_then(|trap| trap.trouble);
            trouble.is_none_or(|trouble| {
                trouble == Trouble::Spilled || did == Did::Missing && trouble != Trouble::Missing
            })
        });
        found
    })
}

/// The traps of a hive, each with its place in words.
pub(super) fn places(now: &HiveNow) -> Vec<(ThingId, String)> {
    let mut places = Vec::new();
    for (number, part) in (1..).zip(&now.boxes) {
        for trap in &part.traps {
            places.push((trap.id.clone(), en_hive::place(number, trap.spot)));
        }
    }
    places
}

/// Saves work on the traps that the panel asked for.
pub(super) fn work_on(walk: Walk, did: Did, named: Vec<ThingId>) {
    if answers(walk, |ask| matches!(ask, Ask::Which(_))) {
        save(walk, did, named, false);
    }
}

/// Saves work in spite of the doubts that the panel asks about.
pub(super) fn as_is(walk: Walk) {
    if answers(walk, |ask| matches!(ask, Ask::Doubts(..))) {
        again(walk, true);
    }
}

/// Saves work on the open hive: on `named`, or where that is empty on the traps the fields name. `sure` passes over
/// doubts the keeper has been asked about.
fn save(walk: Walk, did: Did, named: Vec<ThingId>, sure: bool) {
    walk.wish.set_value(Some(Wish::Work(did, named.clone())));
    let Some(At { hive, now, tag, day }) = asked(walk) else { return };
    let mut typed = untrack(|| walk.typed());
    let inside = now.traps().count();
    if !named.is_empty() {
        // Every trap of the hive is the hive.
        typed.traps = if named.len() < inside { named } else { Vec::new() };
    }
    let traps = (!typed.traps.is_empty()).then_some(typed.traps.as_slice());
    let usual = walk.records.book.with_untracked(|book| book.usual_level(&now, did, traps));
    let check = match typed.check(&hive, did, usual) {
        Ok(check) => check,
        Err(wrong) => return mend(walk, wrong),
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
        return walk.ask.set(Ask::Doubts(doubts, shifts));
    }
    let cards = cards(&check, rose);
    let number = |traps: usize| u32::try_from(traps).unwrap_or(u32::MAX);
    let over = now.traps().filter(|trap| trap.passed_over(did, false)).count();
    let left = now.trouble().filter(|_| over > 0 && did == Did::ToppedUp && check.traps.is_none());
    let which = match (&check.traps, left) {
        (Some(traps), _) => w::some(number(traps.len())),
        (None, Some(_)) => w::some(number(inside - over)),
        (None, None) => w::whole(number(inside - over), did),
    };
    let mut said = w::logged(&tag, did, &which, day, today);
    if let Some(left) = left {
        said = [&said, ", ", &w::idle_traps(left)].concat();
    }
    // Told back, or a slip on the keys in the sun is seen by nobody.
    if let Some(count) = check.count {
        en_ledger::beetles(&mut said, count);
    }
    kept_on(walk, written, said, cards, step(walk, &now.yard, hive, day, None));
}

/// Saves that the traps the open hive wants were put in, all of one kind.
pub(super) fn placed(walk: Walk, kind: &ThingId) {
    if !meant(walk) {
        return;
    }
    walk.wish.set_value(Some(Wish::Placed(kind.clone())));
    let Some(At { hive, now, tag, day }) = asked(walk) else { return };
    let look = match untrack(|| walk.typed()).check(&hive, Did::AsFound, None) {
        Ok(look) => look,
        Err(wrong) => return mend(walk, wrong),
    };
    let mut said = w::logged_placed(&tag, now.wanting());
    if let Some(count) = look.count {
        en_ledger::beetles(&mut said, count);
    }
    let written =
        made(walk, day, &|book, pen, day, today| book.traps_placed(pen, day, today, kind, look.clone()));
    kept_on(walk, written, said, Vec::new(), step(walk, &now.yard, hive, day, None));
}

/// Saves that the open hive was left, for the reason that the panel asks for.
pub(super) fn skip(walk: Walk, why: SkipReason) {
    if answers(walk, |ask| *ask == Ask::Skip) {
        skipped(walk, why);
    }
}

fn skipped(walk: Walk, why: SkipReason) {
    walk.wish.set_value(Some(Wish::Skip(why)));
    let Some(At { hive, now, tag, day }) = asked(walk) else { return };
    let note = walk.note.with_untracked(|text| text.trim().to_owned());
    let over = note.chars().count().saturating_sub(Entry::NOTE_MOST);
    if over > 0 {
        return mend(walk, Wrong::Note(over));
    }
    let note = (!note.is_empty()).then_some(note);
    let said = w::logged_skip(&tag, why);
    let written =
        made(walk, day, &|book, pen, day, today| book.skip(pen, day, today, &hive, why, note.clone()));
    kept_on(walk, written, said, Vec::new(), step(walk, &now.yard, hive, day, None));
}

/// Traps that did not fish were replaced and filled on the spot.
pub(super) fn filled_again(walk: Walk, hive: &ThingId) {
    let found = walk.records.book.with_untracked(|book| {
        let now = book.standing().hives.get(hive)?;
        let idle: Vec<ThingId> =
            now.traps().filter(|trap| trap.trouble.is_some()).map(|trap| trap.id.clone()).collect();
        // The key was tapped twice.
        if idle.is_empty() {
            return None;
        }
        let check = Check {
            hive: hive.clone(),
            after: book.usual_level(now, Did::Replaced, Some(&idle)),
            traps: Some(idle),
            did: Did::Replaced,
            before: None,
            count: None,
            note: None,
        };
        // On the day of the entry that said so: a walk of last week is finished last week.
        let day = now.last.as_ref().map_or_else(|| walk.today.get_untracked(), |seen| seen.day);
        Some((tag_told(book.standing(), now), day, check))
    });
    let Some((tag, day, check)) = found else { return };
    let traps = check.traps.as_ref().map_or(0, |traps| u32::try_from(traps.len()).unwrap_or(u32::MAX));
    let said = w::logged(&tag, Did::Replaced, &w::some(traps), day, walk.today.get_untracked());
    put(walk, day, said, &|book, pen, day, today| book.check(pen, day, today, check.clone()));
}

/// Takes the open hive back into care.
pub(super) fn revive(walk: Walk) {
    if !answers(walk, |ask| matches!(ask, Ask::Stopped(Stop::Refused(Refusal::Ended { .. })))) {
        return;
    }
    let Ok(At { hive, tag, day, .. }) = at(walk) else { return };
    let said = en_hive::revived(&tag);
    let revive: Make<'_> = &|book, pen, day, today| book.hive_back(pen, day, today, &hive, &BrowserLetters);
    put(walk, day, said, revive);
}

/// Moves the start of the open hive back to the day that work is being written for, and saves that work.
pub(super) fn stood_there(walk: Walk) {
    if !answers(walk, |ask| matches!(ask, Ask::Stopped(Stop::Refused(Refusal::BeforeHive { .. })))) {
        return;
    }
    let Ok(At { hive, tag, day, .. }) = at(walk) else { return };
    let said = w::stood_there(&tag, day);
    if !put(walk, day, said, &|book, pen, day, today| book.hive_since(pen, day, today, &hive)) {
        return;
    }
    let moved = walk.records.act.get_untracked();
    again(walk, false);
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

/// Does what was asked for before the panel said why not.
fn again(walk: Walk, sure: bool) {
    match walk.wish.get_value() {
        Some(Wish::Work(did, named)) => save(walk, did, named, sure),
        Some(Wish::Placed(kind)) => placed(walk, &kind),
        Some(Wish::Skip(why)) => skipped(walk, why),
        None => {}
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
        let go = step(walk, &yard, hive, day, Some(logged.called));
        walk.remember_logged(go.called);
        walk.empty_fields();
        walk.cards.set(Vec::new());
        go_on(walk, go);
    } else {
        walk.take_again(&logged);
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
