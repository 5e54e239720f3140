//! Corrections, clashes and doubles, each case named after what the keeper did.

use crate::Yard;
use crate::support::{Unicode, day, pen};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::app::ledger::history::{self, Counts, Line, Step, Strike};
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, Ending, Entry, SkipReason, What};
use beetle_almanac::book::id::{EntryId, ThingId};
use beetle_almanac::book::round::{Because, HiveDue};
use beetle_almanac::book::write::Refusal;

fn level(percent: u32) -> Option<Share> {
    Share::from_percent(Decimal::whole(percent)).ok()
}

pub(crate) fn work(hive: &ThingId, did: Did, after: Option<Share>, count: Option<u32>) -> Check {
    Check {
        hive: hive.clone(),
        traps: None,
        did,
        before: None,
        after,
        count: count.map(CountRange::exact),
        note: None,
    }
}

/// Logs `work` and returns the name of its line.
pub(crate) fn log(book: &mut Book, writer: &str, on: Day, work: Check) -> EntryId {
    let entries = book.check(&pen(writer, on), on, on, work).unwrap();
    let id = entries.last().unwrap().id.clone();
    book.add(entries);
    id
}

fn checked(entry: &Entry) -> Check {
    match &entry.what {
        What::Check(work) => work.clone(),
        other => panic!("{other:?}"),
    }
}

pub(crate) fn line<'a>(lines: &'a [Line<'a>], root: &EntryId) -> &'a Line<'a> {
    lines.iter().find(|line| line.root == root).unwrap()
}

pub(crate) fn union(one: &Book, other: &Book) -> Book {
    let mut both = one.clone();
    both.add(other.log().entries().cloned());
    both
}

/// A hive that loses a tenth of the trap in ten days: 20 % from half full to the working floor last 20 days.
pub(crate) fn losing() -> (Yard, ThingId, EntryId) {
    let mut yard = Yard::with(&["1", "2"], day("2026-05-01"), &{
        let mut kind = crate::trap();
        kind.max_days = 60;
        kind
    });
    let hive = yard.hive("1");
    let work = Check { before: level(40), ..work(&hive, Did::ToppedUp, Some(Share::HALF), None) };
    let line = log(&mut yard.book, "aa", day("2026-05-11"), work);
    (yard, hive, line)
}

#[test]
fn keeper_typed_30_for_50_and_sees_which_due_date_moves_before_it_is_saved() {
    let (mut yard, hive, line) = losing();
    let today = day("2026-06-01");
    let wrong = Check { after: level(35), ..checked(yard.book.log().get(&line).unwrap()) };
    let wrong =
        yard.book.correct(&pen("bb", today), day("2026-05-11"), today, &line, What::Check(wrong), &Unicode);
    let wrong = wrong.unwrap();
    // 1 % a day: from 50 % the floor of 30 % is reached after 20 days, from 35 % after 5. Hive 2 goes by the loss of
    // the yard, which the level left does not touch.
    let shifts = yard.book.shifts(&wrong, today);
    let on = |due: &Option<HiveDue>| match due {
        Some(HiveDue::Due { on, because: Because::Limit(_), .. }) => *on,
        other => panic!("{other:?}"),
    };
    assert_eq!(shifts.len(), 1);
    assert_eq!(shifts[0].hive, hive);
    assert_eq!((on(&shifts[0].before), on(&shifts[0].after)), (day("2026-05-31"), day("2026-05-16")));
    // It is what happens then.
    let before = yard.book.standing().clone();
    let id = wrong[0].id.clone();
    yard.book.add(wrong);
    let lines = history::lines(&yard.book, Some(&hive));
    let now = lines.iter().find(|line| line.entry.id == id).unwrap();
    assert_eq!((now.root, &now.counts), (&line, &Counts::Yes));
    assert!(matches!(&now.trail[..], [Step::Version(was, None)] if was.id == line));
    // And taken back it is as it was.
    let undo = yard.book.strike(&pen("bb", today), today, &yard.book.decision(&id), &Unicode).unwrap();
    yard.book.add(undo);
    assert_eq!(*yard.book.standing(), before);
}

#[test]
fn a_correction_that_moves_no_day_says_so() {
    let (yard, _, line) = losing();
    let today = day("2026-05-12");
    let noted = Check { note: Some("wax".to_owned()), ..checked(yard.book.log().get(&line).unwrap()) };
    let noted =
        yard.book.correct(&pen("aa", today), day("2026-05-11"), today, &line, What::Check(noted), &Unicode);
    assert_eq!(yard.book.shifts(&noted.unwrap(), today), []);
}

#[test]
fn what_cannot_be_corrected_is_refused_with_the_reason() {
    let (yard, hive, line) = losing();
    let today = day("2026-06-01");
    let pen = pen("aa", today);
    let same = yard.book.log().get(&line).unwrap().clone();
    let correct = |on: &str, what: What| yard.book.correct(&pen, day(on), today, &line, what, &Unicode);
    assert_eq!(correct("2026-05-11", same.what.clone()), Err(Refusal::Nothing));
    assert_eq!(correct("2026-06-02", same.what.clone()), Err(Refusal::Future { today }));
    assert_eq!(
        correct("2026-04-30", same.what.clone()),
        Err(Refusal::BeforeHive { since: day("2026-05-01") })
    );
    // The start of a hive moved behind the work on it: that work would find no hive.
    let start = yard.book.log().get(hive.entry()).unwrap().clone();
    let moved = yard.book.correct(&pen, day("2026-05-20"), today, &start.id, start.what.clone(), &Unicode);
    assert_eq!(moved, Err(Refusal::NotThereYet));
    let moved =
        yard.book.correct(&pen, day("2026-05-05"), today, &start.id, start.what.clone(), &Unicode).unwrap();
    let mut book = yard.book.clone();
    book.add(moved);
    assert_eq!(book.standing().hives[&hive].since, day("2026-05-05"));
}

#[test]
fn work_on_the_day_on_which_the_colony_was_found_dead_is_corrected_too() {
    let (mut yard, hive, line) = losing();
    let on = day("2026-05-11");
    let today = day("2026-06-01");
    let dead = What::HiveEnded { hive: hive.clone(), how: Ending::Dead };
    let ended = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, dead).unwrap();
    yard.book.add(ended);
    let what = What::Check(work(&hive, Did::ToppedUp, level(30), None));
    let mended = yard.book.correct(&pen("aa", today), on, today, &line, what.clone(), &Unicode);
    assert_eq!(mended.unwrap().len(), 1);
    // But not moved to a later one.
    let moved = yard.book.correct(&pen("aa", today), day("2026-05-12"), today, &line, what, &Unicode);
    assert_eq!(moved, Err(Refusal::Ended { how: Ending::Dead, on }));
}

#[test]
fn a_look_at_traps_that_were_gone_is_not_corrected_into_a_top_up() {
    let (mut yard, hive, _) = losing();
    let today = day("2026-06-01");
    let lost = log(&mut yard.book, "aa", day("2026-05-15"), work(&hive, Did::Missing, None, None));
    let same_day = log(&mut yard.book, "aa", day("2026-05-15"), work(&hive, Did::AsFound, None, None));
    let later = log(&mut yard.book, "aa", day("2026-05-20"), work(&hive, Did::AsFound, None, None));
    let topped = |line: &EntryId| {
        let on = yard.book.log().get(line).unwrap().day;
        let what = What::Check(work(&hive, Did::ToppedUp, Some(Share::HALF), None));
        yard.book.correct(&pen("aa", today), on, today, line, what, &Unicode)
    };
    assert_eq!(topped(&later), Err(Refusal::NoneFishes));
    assert!(topped(&same_day).is_ok(), "she may have topped up before they were gone");
    // The tap on "missing" was the mistake: then they were there all the time.
    let mut book = yard.book.clone();
    book.add(topped(&lost).unwrap());
    assert!(book.standing().hives[&hive].trouble().is_none());
    // Replaced, they were put back; topped up they would have stayed missing.
    let replaced = log(&mut yard.book, "aa", day("2026-05-25"), work(&hive, Did::Replaced, None, None));
    let what = What::Check(work(&hive, Did::ToppedUp, None, None));
    let wrong = yard.book.correct(&pen("aa", today), day("2026-05-25"), today, &replaced, what, &Unicode);
    assert_eq!(wrong, Err(Refusal::NoneFishes));
}

#[test]
fn a_skip_and_a_note_are_corrected_like_work() {
    let (mut yard, hive, _) = losing();
    let on = day("2026-05-20");
    let skip = yard.book.skip(&pen("aa", on), on, on, &hive, SkipReason::Weather, None).unwrap();
    let id = skip[0].id.clone();
    yard.book.add(skip);
    let why = What::Skip { hive: hive.clone(), why: SkipReason::Robbing, note: None };
    let mended = yard.book.correct(&pen("aa", on), day("2026-05-19"), on, &id, why, &Unicode).unwrap();
    yard.book.add(mended);
    assert_eq!(yard.book.standing().hives[&hive].skipped, Some((day("2026-05-19"), SkipReason::Robbing)));
}

#[test]
fn a_line_that_was_corrected_is_struck_out_whole_and_comes_back_as_corrected() {
    let (mut yard, hive, line) = losing();
    let today = day("2026-06-01");
    let pen = pen("aa", today);
    let what = What::Check(work(&hive, Did::Replaced, level(60), None));
    let mended = yard.book.correct(&pen, day("2026-05-11"), today, &line, what, &Unicode).unwrap();
    let id = mended[0].id.clone();
    yard.book.add(mended);
    let corrected = yard.book.standing().clone();
    let all = yard.book.versions_of(std::slice::from_ref(&id));
    assert_eq!(all, [line.clone(), id.clone()]);
    let strike = yard.book.strike(&pen, today, &all, &Unicode).unwrap();
    let by = strike[0].id.clone();
    yard.book.add(strike);
    let hive_now = &yard.book.standing().hives[&hive];
    assert!(hive_now.last.is_none(), "nothing of it stands: not the words before the correction either");
    let lines = history::lines(&yard.book, None);
    let now = self::line(&lines, &line);
    assert_eq!((&now.entry.id, &now.counts), (&id, &Counts::Struck { by: by.clone(), lines: 1 }));
    assert!(matches!(&now.trail[..], [Step::Version(..), Step::Strike(_, Strike::Out)]));
    let back = yard.book.strike(&pen, today, &[by], &Unicode).unwrap();
    yard.book.add(back);
    assert_eq!(*yard.book.standing(), corrected);
    let lines = history::lines(&yard.book, None);
    let now = self::line(&lines, &line);
    assert!(matches!(&now.trail[..], [_, Step::Strike(_, Strike::Out), Step::Strike(_, Strike::Back)]));
}

#[test]
fn struck_on_one_phone_and_corrected_on_the_other_the_correction_counts_and_says_so() {
    let (yard, hive, line) = losing();
    let (mut one, mut other) = (yard.book.clone(), yard.book.clone());
    let today = day("2026-06-01");
    let strike = one
        .strike(&pen("bb", today), today, &one.versions_of(std::slice::from_ref(&line)), &Unicode)
        .unwrap();
    one.add(strike);
    let what = What::Check(work(&hive, Did::Replaced, level(60), None));
    let mended = other.correct(&pen("cc", today), day("2026-05-11"), today, &line, what, &Unicode).unwrap();
    other.add(mended.clone());
    for both in [union(&one, &other), union(&other, &one)] {
        let lines = history::lines(&both, None);
        let now = self::line(&lines, &line);
        assert_eq!((&now.entry.id, &now.counts, now.revived), (&mended[0].id, &Counts::Yes, true));
        assert_eq!(both.standing(), other.standing());
        // Struck out once more, with both in sight, it stays out.
        let mut both = both.clone();
        let all = both.versions_of(std::slice::from_ref(&line));
        let strike = both.strike(&pen("bb", today), today, &all, &Unicode).unwrap();
        both.add(strike);
        assert_eq!(both.standing(), one.standing());
    }
}

#[test]
fn both_phones_corrected_one_line_the_newest_counts_until_the_keeper_decides() {
    let (yard, hive, line) = losing();
    let (mut one, mut other) = (yard.book.clone(), yard.book.clone());
    let today = day("2026-06-01");
    let on = day("2026-05-11");
    let edit = |book: &mut Book, writer: &str, after: u32| {
        let what = What::Check(work(&hive, Did::ToppedUp, level(after), None));
        let entries = book.correct(&pen(writer, today), on, today, &line, what, &Unicode).unwrap();
        let id = entries[0].id.clone();
        book.add(entries);
        id
    };
    let forty = edit(&mut one, "bb", 40);
    // The other phone corrected twice: a strike of its last word must not bring its first one up.
    let first = edit(&mut other, "cc", 60);
    let what = What::Check(work(&hive, Did::ToppedUp, level(70), None));
    let again = other.correct(&pen("cc", today), on, today, &first, what, &Unicode).unwrap();
    let seventy = again[0].id.clone();
    other.add(again);
    let both = union(&one, &other);
    let lines = history::lines(&both, None);
    let now = self::line(&lines, &line);
    assert_eq!(now.entry.id, seventy, "the higher counter");
    assert_eq!(now.clash.iter().map(|entry| &entry.id).collect::<Vec<_>>(), [&forty]);
    assert!(!now.revived);

    let level_of = |book: &Book| {
        let mut levels = book.standing().hives[&hive].traps().map(|trap| trap.level.map(|(_, level)| level));
        levels.next().flatten()
    };
    assert_eq!(level_of(&both), level(70));
    // She keeps the other one.
    let mut decided = both.clone();
    let decision = decided.decide(&pen("dd", today), today, &forty, &Unicode).unwrap();
    let decided_by = decision[0].id.clone();
    decided.add(decision);
    assert_eq!(level_of(&decided), level(40));
    let lines = history::lines(&decided, None);
    let now = self::line(&lines, &line);
    assert!(now.clash.is_empty());
    assert_eq!(now.trail.len(), 5, "the first words, three versions, the strike");
    assert_eq!(decided.decide(&pen("dd", today), today, &decided_by, &Unicode), Err(Refusal::Nothing));
    // Taken back, it is as undecided as before.
    let mut back = decided.clone();
    let undo = back.strike(&pen("dd", today), today, &back.decision(&decided_by), &Unicode).unwrap();
    back.add(undo);
    assert_eq!(back.standing(), both.standing());
    assert_eq!(self::line(&history::lines(&back, None), &line).clash.len(), 1);

    // A helper decides otherwise: nothing is lost, and it is asked again.
    let mut otherwise = both.clone();
    let decision = otherwise.decide(&pen("ee", today), today, &seventy, &Unicode).unwrap();
    otherwise.add(decision);
    let apart = union(&decided, &otherwise);
    let lines = history::lines(&apart, None);
    let now = self::line(&lines, &line);
    assert_eq!(now.clash.len(), 1);
    let mut said = vec![checked(now.entry).after, checked(now.clash[0]).after];
    said.sort();
    assert_eq!(said, [level(40), level(70)]);
}

#[test]
fn a_correction_of_a_line_that_is_not_here_is_shown_and_counts() {
    let (mut yard, hive, line) = losing();
    let today = day("2026-06-01");
    let what = What::Check(work(&hive, Did::Replaced, level(60), None));
    let mended =
        yard.book.correct(&pen("bb", today), day("2026-05-11"), today, &line, what, &Unicode).unwrap();
    yard.book.add(mended.clone());
    let whole = yard.book.clone();
    let part = yard.book.without(|entry| entry.id == line);
    let lines = history::lines(&part, None);
    let now = self::line(&lines, &line);
    assert!(now.orphan && now.counts == Counts::Yes && now.trail.is_empty());
    // A strike of what is not here is a line of its own.
    let strike = whole.strike(&pen("bb", today), today, std::slice::from_ref(&line), &Unicode).unwrap();
    let mut bare = part.without(|entry| entry.id == mended[0].id);
    bare.add(strike.clone());
    assert!(history::lines(&bare, None).iter().any(|line| line.entry.id == strike[0].id));
}
