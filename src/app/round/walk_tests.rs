use super::*;
use crate::app::ledger::words::tests::Plain;
use crate::book::demo::demo;
use crate::book::entry::SkipReason;
use crate::book::id::{EntryId, Writer};
use crate::book::round::{Because, rows, yard_loss};
use crate::book::standing::{Checked, Trouble};

fn hive(n: u32) -> ThingId {
    EntryId::new(Writer::new("test").unwrap(), n).unwrap().thing(0)
}

fn row(n: u32) -> Row {
    let due = HiveDue::Resting { since: Day::parse("2026-07-14").unwrap() };
    Row {
        hive: hive(n),
        due,
        days_since: None,
        skipped: None,
        today: None,
        trouble: None,
        stuck: false,
        recheck: None,
    }
}

fn did(n: u32, did: Did) -> Row {
    Row { today: Some(Some(did)), ..row(n) }
}

fn left(n: u32) -> Row {
    Row { today: Some(None), ..row(n) }
}

#[test]
fn a_hive_is_put_behind_another_or_at_the_gate() {
    let order: Vec<ThingId> = [1, 2, 3, 4].map(hive).to_vec();
    let put = |which: u32, after: Option<u32>| {
        let after = after.map(hive);
        put_after(order.clone(), &hive(which), after.as_ref())
    };
    let four = |tags: [u32; 4]| Some(tags.map(hive).to_vec());
    assert_eq!(put(4, Some(1)), four([1, 4, 2, 3]));
    assert_eq!(put(1, Some(4)), four([2, 3, 4, 1]));
    assert_eq!(put(3, None), four([3, 1, 2, 4]));
    // It stands there already, behind itself, or behind one of another yard.
    assert_eq!((put(2, Some(1)), put(1, None), put(2, Some(2)), put(2, Some(9))), (None, None, None, None));
}

#[test]
fn the_next_hive_is_the_next_without_an_entry_and_behind_the_last_the_nearest_left_out() {
    let hives = [1, 2, 3, 4, 9].map(hive);
    let [one, two, three, four, gone] = &hives;
    let done = Some(Some(Did::ToppedUp));
    let stops = [(one, None), (two, done), (three, done), (four, None)];
    let next = |stops: &[Stop<'_>], after| next_hive(stops, after, &|_| true);
    assert_eq!(next(&stops, None).as_ref(), Some(one));
    assert_eq!(next(&stops, Some(two)).as_ref(), Some(four));
    assert_eq!(next(&stops, Some(four)).as_ref(), Some(one));
    let two_left = [(one, None), (two, None), (three, done), (four, None)];
    assert_eq!(next(&two_left, Some(four)).as_ref(), Some(two));
    assert_eq!(next(&[(one, None)], Some(one)), None);
    assert_eq!(next(&[], Some(one)), None);
    // A skip is an entry; a hive that is gone starts the list over.
    assert_eq!(next(&[(one, Some(None)), (two, None)], Some(gone)).as_ref(), Some(two));
    // Only of those that are meant.
    assert_eq!(next_hive(&two_left, Some(two), &|hive| hive == one).as_ref(), Some(one));
    assert_eq!(next_hive(&two_left, Some(one), &|hive| hive == three), None);
}

#[test]
fn usual_is_what_was_done_most_and_topped_up_in_a_draw() {
    assert_eq!(usual(&[]), Did::ToppedUp);
    assert_eq!(usual(&[Did::AsFound]), Did::AsFound);
    assert_eq!(usual(&[Did::AsFound, Did::ToppedUp]), Did::ToppedUp);
    assert_eq!(usual(&[Did::Spilled, Did::Spilled, Did::Replaced]), Did::Replaced);
}

#[test]
fn stops_are_the_rows_without_their_dues() {
    let today = Day::parse("2026-07-14").unwrap();
    let mut book = Book::default();
    book.add(demo(today, "UTC", 0, &Plain).unwrap());
    for yard in book.standing().yards.keys() {
        for day in [today, today.plus(-14)] {
            let rows = rows(book.standing(), yard, day);
            let rows: Vec<Stop<'_>> = rows.iter().map(|row| (&row.hive, row.today)).collect();
            assert_eq!(stops(book.standing(), yard, day), rows);
        }
    }
}

#[test]
fn a_hive_calls_when_it_is_due_waits_or_wants_a_look_and_not_before_its_day_or_in_a_pause() {
    let today = Day::parse("2026-07-14").unwrap();
    let mut book = Book::default();
    book.add(demo(today, "UTC", 0, &Plain).unwrap());
    let mut standing = book.standing().clone();
    let (mut some, mut none) = (0, 0);
    for (day, (id, hive)) in [today, today.plus(-10)]
        .into_iter()
        .flat_map(|day| book.standing().hives.iter().map(move |at| (day, at)))
    {
        let loss = yard_loss(&standing, &hive.yard);
        let rows = rows(&standing, &hive.yard, day);
        let Some(row) = rows.iter().find(|row| row.hive == *id) else { continue };
        let bare = matches!(row.due, HiveDue::NoTraps { wanting: 1.. });
        let waits = row.due.now() || bare || row.skipped.is_some() || row.recheck.is_some();
        assert_eq!(calls(&standing, hive, &|| loss, day), waits, "{}", hive.tag);
        *(if waits { &mut some } else { &mut none }) += 1;
        let skipped = HiveNow { skipped: Some((day, SkipReason::Temper)), ..hive.clone() };
        let spilled = HiveNow { spilled: Some(day), ..hive.clone() };
        assert!(calls(&standing, &skipped, &|| loss, day) && calls(&standing, &spilled, &|| loss, day));
    }
    assert!(some > 0 && none > 0);
    let hive = book.standing().hives.values().next().unwrap();
    let yards: Vec<ThingId> = standing.yards.keys().cloned().collect();
    for yard in &yards {
        standing.yards.get_mut(yard).unwrap().paused = Some(today);
    }
    assert!(!calls(&standing, hive, &|| None, today.plus(400)));
}

#[test]
fn work_on_some_traps_is_told_apart_from_work_on_the_hive_and_adds_up() {
    let today = Day::parse("2026-07-14").unwrap();
    let mut book = Book::default();
    book.add(demo(today, "UTC", 0, &Plain).unwrap());
    let (_, hive) = book.standing().hives.iter().find(|(_, hive)| hive.traps().count() == 4).unwrap();
    let traps: Vec<ThingId> = hive.traps().map(|trap| trap.id.clone()).collect();
    let work = |did, traps: Option<&[ThingId]>| {
        let line = EntryId::new(Writer::new("test").unwrap(), 1).unwrap();
        let traps = traps.map(<[ThingId]>::to_vec);
        let (day, writer) = (today, Writer::new("test").unwrap());
        (line, Checked { day, writer, did, traps, read: false, counted: false, bulk: None })
    };
    let told = |checked: Vec<(EntryId, Checked)>, did, day| {
        part_done(&HiveNow { checked, ..hive.clone() }, did, day)
    };
    let one = work(Did::ToppedUp, Some(&traps[..1]));
    let others = work(Did::ToppedUp, Some(&traps[1..]));
    let replaced = work(Did::Replaced, Some(&traps[1..3]));
    assert_eq!(told(vec![one.clone()], Did::ToppedUp, today), Some((1, 4)));
    assert_eq!(told(vec![one.clone(), replaced.clone()], Did::Replaced, today), Some((2, 4)));
    assert_eq!(told(vec![one.clone(), others], Did::ToppedUp, today), None);
    assert_eq!(told(vec![one.clone(), work(Did::ToppedUp, None)], Did::ToppedUp, today), None);
    assert_eq!(told(vec![one], Did::ToppedUp, today.plus(1)), None);
}

#[test]
fn the_rest_leaves_out_what_has_an_entry_and_hives_in_which_nothing_can_be_topped_up_or_something_is_begun() {
    let day = Day::parse("2026-07-14").unwrap();
    let waiting = Row { skipped: Some((day, SkipReason::Temper)), ..row(3) };
    let bare = Row { due: HiveDue::NoTraps { wanting: 4 }, ..row(5) };
    let stuck = Row { stuck: true, ..row(6) };
    let rows = [did(1, Did::AsFound), left(2), waiting, row(4), bare, stuck];
    assert_eq!(rest(&rows, &|_| false), [hive(3), hive(4)]);
    assert_eq!(rest(&rows, &|begun| *begun == hive(3)), [hive(4)]);
}

#[test]
fn the_first_day_that_anything_is_due_names_its_first_hive_and_counts_all() {
    let day = |n| Day::parse("2026-12-01").unwrap().plus(n);
    let due = |n, on| {
        let because = Because::Trouble(Trouble::Missing);
        let due = HiveDue::Due { on, timing: Timing::Today, because, traps_due: 0, traps: 1 };
        Row { due, ..row(n) }
    };
    let rows = [row(1), due(2, day(9)), due(3, day(8)), due(4, day(9)), due(5, day(8))];
    assert_eq!(first_due(&rows), Some((day(8), &hive(3), 2)));
    assert_eq!(first_due(&rows[..2]), Some((day(9), &hive(2), 1)));
    assert_eq!(first_due(&rows[..1]), None);
}

#[test]
fn tags_are_ordered_as_people_count() {
    let mut tags = ["10", "2", "b 10", "B 9", "1", "2b", "007", "nuc"];
    tags.sort_by(|a, b| by_tag(a, b));
    assert_eq!(tags, ["1", "2", "2b", "007", "10", "B 9", "b 10", "nuc"]);
}
