//! Lines that come after what speaks of them, and lines that speak of what never comes.

use crate::laws::{acts, phones, union};
use crate::support::chance::Chance;
use crate::support::{Unicode, day, pen};
use crate::{Yard, plan};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Did, Entry, SkipReason};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::write::KindChoice;
use proptest::prelude::*;
use std::time::{Duration, Instant};

/// The same entries in an order of `seed`'s choice (Fisher and Yates, 1938).
fn shuffled(mut entries: Vec<Entry>, seed: u64) -> Vec<Entry> {
    let mut chance = Chance::of(seed);
    for at in (1..entries.len()).rev() {
        entries.swap(at, chance.below(at + 1));
    }
    entries
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// One by one, so that yards, kinds and hives come when lines already wait for them.
    #[test]
    fn lines_that_come_in_any_order_make_the_same_book(acts in acts(), seed in any::<u64>()) {
        let phones = phones(&acts);
        let all = union(&phones.iter().collect::<Vec<_>>());
        let mut late = Book::default();
        for entry in shuffled(all.log().entries().cloned().collect(), seed) {
            late.add([entry]);
        }
        prop_assert_eq!(late, all);
    }

    /// The book goes on after a line was taken out from under others.
    #[test]
    fn lines_written_over_orphans_make_the_same_book(acts in acts(), more in acts(), pick in any::<u32>()) {
        let mut book = phones(&acts).swap_remove(0);
        let on = day("2026-06-20");
        let target = book.log().entries().nth(pick as usize % book.log().len()).unwrap().id.clone();
        let strike = book.strike(&pen("aa", on), on, &[target], &Unicode).unwrap();
        book.add(strike);
        for entry in phones(&more).swap_remove(1).log().entries() {
            book.add([entry.clone()]);
        }
        prop_assert_eq!(Book::from_log(book.log().clone()), book);
    }
}

/// Hives that stood there a week before their yard was kept: the yard's line is the last by day and comes last.
#[test]
fn a_yard_that_comes_after_its_hives_finds_them() {
    let yard = Yard::new(&["1"], day("2026-07-14"));
    let on = yard.start;
    let more = plan(&["2", "3"], &[(BoxDepth::Deep, 2)], day("2026-07-07"));
    let kind = KindChoice::Known(yard.kind());
    let hives = yard.book.add_hives(&pen("aa", on), &yard.id, &kind, &more, &Unicode).unwrap();
    let mut late = Book::default();
    for entry in hives.iter().chain(yard.book.log().entries()) {
        late.add([entry.clone()]);
    }
    assert_eq!((late.standing().orphans, late.standing().hives_of(&yard.id, true).count()), (0, 3));
    assert_eq!(Book::from_log(late.log().clone()), late);
}

/// A yard of a hundred hives that were skipped on fifty days, and the last of these.
fn seasons() -> (Yard, Day) {
    let tags: Vec<String> = (1..=100).map(|tag| tag.to_string()).collect();
    let tags: Vec<&str> = tags.iter().map(String::as_str).collect();
    let mut yard = Yard::new(&tags, day("2026-05-01"));
    let mut on = day("2026-05-01");
    for _ in 0..50 {
        on = on.plus(1);
        for tag in &tags {
            let hive = yard.hive(tag);
            let skip = yard.book.skip(&pen("aa", on), on, on, &hive, SkipReason::Temper, None).unwrap();
            yard.book.add(skip);
        }
    }
    (yard, on)
}

/// "The rest as usual" once more on the same day, by another start of the page: what is there is taken over.
#[test]
fn a_hundred_hives_logged_again_on_one_day_are_looked_up_together() {
    let (mut yard, on) = seasons();
    let on = on.plus(1);
    let hives: Vec<ThingId> = yard.book.standing().hives.keys().cloned().collect();
    let first = yard.book.same_for_all(&pen("bb", on), on, on, &hives, Did::AsFound).unwrap();
    yard.book.add(first);
    let fold = Instant::now();
    let whole = Book::from_log(yard.book.log().clone());
    let fold = fold.elapsed();
    assert_eq!(whole, yard.book);
    let again = Instant::now();
    let entries = yard.book.same_for_all(&pen("cc", on), on, on, &hives, Did::AsFound).unwrap();
    let again = again.elapsed();
    assert_eq!(entries.iter().filter(|entry| entry.replaces.is_some()).count(), 100);
    // One pass over the log and one fold on trial; a pass for each hive is some forty times a fold.
    assert!(again < fold * 10, "again {again:?}, one fold {fold:?}");
    yard.book.add(entries);
    assert!(yard.book.standing().hives.values().all(|hive| hive.doubles.is_empty()));
}

/// As long as one look at every line takes, a save may not take: ten thousand lines are a book of some seasons.
#[test]
fn a_hive_that_was_struck_out_makes_no_later_save_fold_the_whole_book() {
    let (mut yard, mut on) = seasons();
    let start = yard.hive("1").entry().clone();
    let strike = yard.book.strike(&pen("aa", on), on, &[start], &Unicode).unwrap();
    yard.book.add(strike);
    assert_eq!(yard.book.standing().orphans, 50);
    let fold = Instant::now();
    let whole = Book::from_log(yard.book.log().clone());
    let fold = fold.elapsed();
    assert_eq!(whole, yard.book);
    let mut saves = Duration::ZERO;
    for _ in 0..10 {
        on = on.plus(1);
        let hive = yard.hive("2");
        let skip = yard.book.skip(&pen("aa", on), on, on, &hive, SkipReason::Temper, None).unwrap();
        let save = Instant::now();
        yard.book.add(skip);
        saves += save.elapsed();
    }
    // Ten saves take a hundredth of one fold; a machine busy with other work makes both slower.
    assert!(saves < fold, "ten saves {saves:?}, one fold {fold:?}");
    assert_eq!(Book::from_log(yard.book.log().clone()), yard.book);
}
