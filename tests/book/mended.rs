//! Faults that were found by reading, each held by the case that showed it.

use crate::support::{Unicode, day, pen};
use crate::{Yard, plan, trap};
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::book::Book;
use beetle_almanac::book::demo::demo;
use beetle_almanac::book::entry::{Check, Did, Ending, Entry, SkipReason, TrapsWent, What};
use beetle_almanac::book::id::{EntryId, Writer};
use beetle_almanac::book::round::{self};
use beetle_almanac::book::write::{Draft, KindChoice, Refusal};
use beetle_almanac::papers::backup;

pub(crate) fn work(
    hive: &beetle_almanac::book::id::ThingId,
    did: Did,
    count: Option<u32>,
    after: Option<Share>,
) -> Check {
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

#[test]
fn hives_filled_before_the_yard_was_kept_are_in_the_yard() {
    let mut yard = Yard::new(&["1"], day("2026-07-14"));
    let more = plan(&["2", "3"], &[(BoxDepth::Deep, 2)], day("2026-07-07"));
    let kind = KindChoice::Known(yard.kind());
    let written = yard.book.add_hives(&pen("aa", day("2026-07-14")), &yard.id, &kind, &more, &Unicode);
    let Ok(entries) = written else { return }; // a refusal would be fine
    yard.book.add(entries);
    assert_eq!(yard.book.standing().hives_of(&yard.id, true).count(), 3);
}

#[test]
fn taking_the_demonstration_out_leaves_own_hives_due() {
    let today = day("2026-07-14");
    let mut book = Book::default();
    book.add(demo(today, "Europe/Berlin", 120, &Unicode).unwrap());
    let own = book
        .keep_yard(
            &pen("aa", today),
            "Own",
            "Europe/Berlin",
            &KindChoice::New(trap()),
            &plan(&["1"], &[(BoxDepth::Deep, 2)], today),
        )
        .unwrap();
    let yard = own[0].id.thing(0);
    book.add(own);
    // what kind_choice preselects: the first kind of the book that is not retired
    let first = book.standing().kinds.keys().next().unwrap().clone();
    let more = book.add_hives(
        &pen("aa", today),
        &yard,
        &KindChoice::Known(first),
        &plan(&["2"], &[(BoxDepth::Deep, 2)], today),
        &Unicode,
    );
    let Ok(more) = more else { return };
    book.add(more);
    let book = book.without(Entry::is_demo);
    let rows = round::rows(book.standing(), &yard, day("2026-09-01"));
    for row in &rows {
        println!("{:?}", row.due);
    }
    assert!(rows.iter().all(|row| row.due.now()));
}

#[test]
fn a_hive_moved_before_the_new_yard_was_kept_is_refused_or_moved() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-07-14");
    let second = yard
        .book
        .keep_yard(
            &pen("aa", on),
            "Kiln",
            "Europe/Berlin",
            &KindChoice::Known(yard.kind()),
            &plan(&["7"], &[], on),
        )
        .unwrap();
    let to = second[0].id.thing(0);
    yard.book.add(second);
    let hive = yard.hive("1");
    let Ok(moved) = yard.book.move_hive(&pen("aa", on), day("2026-07-10"), on, &hive, &to, None, &Unicode)
    else {
        return;
    };
    yard.book.add(moved);
    assert_eq!(yard.book.standing().hives[&hive].yard, to);
}

#[test]
fn a_box_taken_off_before_it_was_put_on_is_refused_or_gone() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-07-14");
    let hive = yard.hive("1");
    let add = yard
        .book
        .boxes_on(&pen("aa", on), on, on, &hive, 2, &[(BoxDepth::Medium, 2)], &yard.kind(), true)
        .unwrap();
    yard.book.add(add);
    let part = yard.book.standing().hives[&hive].boxes[2].id.clone();
    let Ok(off) = yard.book.box_off(&pen("aa", on), day("2026-07-10"), on, &hive, &part, TrapsWent::Stock)
    else {
        return;
    };
    yard.book.add(off);
    assert_eq!(yard.book.standing().hives[&hive].boxes.len(), 2);
}

#[test]
fn a_check_of_a_trap_before_it_was_placed_is_refused_or_counts() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let on = day("2026-07-14");
    let hive = yard.hive("1");
    let add = yard
        .book
        .boxes_on(&pen("aa", on), on, on, &hive, 2, &[(BoxDepth::Medium, 2)], &yard.kind(), true)
        .unwrap();
    yard.book.add(add);
    let t = yard.book.standing().hives[&hive].boxes[2].traps[0].id.clone();
    let mut w = work(&hive, Did::Missing, None, None);
    w.traps = Some(vec![t.clone()]);
    let Ok(e) = yard.book.check(&pen("aa", on), day("2026-07-10"), on, w) else { return };
    yard.book.add(e);
    assert!(yard.book.standing().hives[&hive].traps().any(|trap| trap.trouble.is_some()));
}

#[test]
fn a_skipped_hive_in_a_resting_yard_needs_nothing() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let on = day("2026-10-01");
    let skip = yard.book.skip(&pen("aa", on), on, on, &yard.hive("2"), SkipReason::Weather, None).unwrap();
    yard.book.add(skip);
    let on = day("2026-11-01");
    let pause = What::Season { yard: yard.id.clone(), running: false };
    let e = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, pause).unwrap();
    yard.book.add(e);
    let need = round::yard_need(yard.book.standing(), &yard.id, day("2027-01-15"), Share::QUARTER);
    assert_eq!((need.hives, need.traps, need.oil.lines.len()), (0, 0, 0));
}

#[test]
fn a_line_that_comes_after_its_strike_stays_struck() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    let mut a = yard.book.clone();
    // the yard's day is already the 9th, the phone's own calendar still the 8th
    let e = a
        .check(
            &pen("aa", day("2026-05-08")),
            day("2026-05-09"),
            day("2026-05-09"),
            work(&hive, Did::Missing, None, None),
        )
        .unwrap();
    a.add(e.clone());
    let s = a.strike(&pen("aa", day("2026-05-08")), day("2026-05-08"), &[e[0].id.clone()], &Unicode).unwrap();
    a.add(s.clone());
    let mut b = yard.book.clone();
    b.add(s);
    b.add(e);
    assert_eq!(a.log(), b.log());
    assert_eq!(a, b);
}

#[test]
fn no_two_living_hives_of_a_yard_share_a_tag() {
    let on = day("2026-07-14");
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let one = yard.hive("1");
    let e = yard.book.end_hive(&pen("aa", on), on, on, &one, Ending::Dead, None).unwrap();
    let strike_me = e[0].id.clone();
    yard.book.add(e);
    let k = KindChoice::Known(yard.kind());
    let e = yard.book.add_hives(&pen("aa", on), &yard.id, &k, &plan(&["1"], &[], on), &Unicode).unwrap();
    yard.book.add(e);
    let taken = Err(Refusal::TagTaken { free: "1b".to_owned() });
    assert_eq!(yard.book.hive_back(&pen("aa", on), on, on, &one, &Unicode), taken);
    assert_eq!(yard.book.strike(&pen("aa", on), on, &[strike_me], &Unicode), taken);
    let tags: Vec<_> = yard.book.standing().hives_of(&yard.id, true).filter(|(_, h)| h.tag == "1").collect();
    assert_eq!(tags.len(), 1);
}

#[test]
fn lines_written_since_the_file_are_counted_beside_a_damaged_page() {
    use beetle_almanac::app::ledger::safety::unsafe_lines;
    // 20 lines were in the file of 1 July, ten of them can no longer be read; ten were written since.
    let mut book = Book::default();
    for (n, on) in [(10, "2026-06-20"), (10, "2026-07-10")] {
        for _ in 0..n {
            let pen = pen("aa", day(on));
            let mut draft = Draft::new(&book, &pen);
            draft.push(day(on), None, What::Note { hive: None, text: "x".into() }).unwrap();
            let e = draft.done();
            book.add(e);
        }
    }
    let found = unsafe_lines(&book, Some((day("2026-07-01"), 20)), day("2026-07-12")).unwrap();
    assert_eq!(found.lines, 10);
}

#[test]
fn no_entry_that_is_taken_in_leaves_the_phone_without_numbers() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let file = |n: u32| {
        let mut e = yard.book.log().entries().last().unwrap().clone();
        e.id = EntryId::new(Writer::new("zz").unwrap(), n).unwrap();
        e.what = What::Note { hive: None, text: "x".into() };
        backup::write(&[e].into_iter().collect(), pen("zz", day("2026-05-01")).at, None)
    };
    let most = Entry::counter_most(1);
    assert!(backup::open(&file(most + 1)).is_err());
    let mut book = yard.book.clone();
    book.add(backup::open(&file(most)).unwrap().entries);
    for n in 1..=20 {
        let on = day("2026-05-02").plus(n);
        let look = work(&yard.hive("1"), Did::AsFound, None, None);
        let next = book.check(&pen("aa", on), on, on, look).unwrap();
        assert!(next[0].id.n() > most);
        assert_eq!(next[0].check(), Ok(()), "a page that holds it is read again");
        book.add(next);
        // The demonstration comes and goes between two lines and takes its numbers along.
        book.add(demo(on, "Europe/Berlin", 120, &Unicode).unwrap());
        let own = backup::write(book.log(), pen("aa", on).at, None);
        assert!(backup::open(&own).is_ok(), "a file of its own is read again");
        if n % 2 == 0 {
            book = book.without(Entry::is_demo);
        }
    }
}

/// The bound as the file grows: never below the counters of the lines themselves, never all the numbers there are.
#[test]
fn the_highest_counter_of_a_file_grows_with_its_lines_and_ends_at_half_of_what_there_is() {
    assert_eq!(Entry::counter_most(0), 1_000_000);
    for lines in [1, 14_000, 100_000, 400_000] {
        assert_eq!(Entry::counter_most(lines), 1_000_000 + 1000 * u32::try_from(lines).unwrap());
    }
    for lines in [499_001, 5_000_000, usize::MAX] {
        assert_eq!(Entry::counter_most(lines), Entry::COUNTER_MOST);
    }
}

#[test]
fn a_count_of_four_thousand_million_is_not_taken_in_and_sums_of_many_do_not_overflow() {
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    let hive = yard.hive("1");
    for on in ["2026-05-02", "2026-05-03"] {
        let count = Some(u32::MAX);
        let e = yard.book.check(
            &pen("aa", day(on)),
            day(on),
            day(on),
            work(&hive, Did::ToppedUp, count, Some(Share::HALF)),
        );
        let e = e.unwrap();
        assert!(e[0].check().is_err());
        yard.book.add(e);
    }
    round::rows(yard.book.standing(), &yard.id, day("2026-05-04"));
}

#[test]
fn a_backup_whose_line_ends_were_changed_on_the_way_still_opens() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let text = backup::write(yard.book.log(), pen("aa", yard.start).at, None);
    assert!(backup::open(&text.replace('\n', "\r\n")).is_ok());
}
