//! Trials that a keeper draws, writes down and opens on their day.

use crate::Yard;
use crate::support::{Unicode, day, pen};
use beetle_almanac::book::caught;
use beetle_almanac::book::record::Record;
use beetle_almanac::book::trial::{self, hives, plan, records};
use beetle_almanac::book::write::Refusal;

const TAGS: [&str; 13] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12", "13"];

/// A yard of which every hive was counted once, hive 1 the least.
fn counted() -> Yard {
    let mut yard = Yard::new(&TAGS, day("2026-05-01"));
    for (count, tag) in (3..).zip(TAGS) {
        yard.count(tag, "2026-05-15", count, None);
    }
    yard
}

fn drawn(yard: &Yard) -> [Record; 2] {
    let all = hives(&yard.book, &yard.id, day("2026-05-15"));
    let pairs = plan(&all, &caught::all(&yard.book), "k7");
    assert_eq!((pairs.each.len(), pairs.left.map(|left| all[left].clone())), (6, Some(yard.hive("13"))));
    records("Notch screened", day("2026-06-15"), &all, &pairs)
}

#[test]
fn a_trial_is_not_opened_before_its_day_and_then_the_pairs_decide() {
    let mut yard = counted();
    let lists = drawn(&yard);
    let on = day("2026-05-15");
    let entries = yard.book.records_together(&pen("aa", on), on, on, Some(&yard.id), lists.into()).unwrap();
    assert_eq!(entries.len(), 2);
    yard.book.add(entries.clone());
    let all = trial::all(&yard.book);
    assert_eq!((all.len(), all[0].named.as_str(), all[0].pairs.len()), (1, "Notch screened", 6));
    let pairs = all[0].pairs.clone();
    for (with, without) in &pairs {
        for (hive, count) in [(with, 2), (without, 9)] {
            let tag = yard.book.standing().hives.get(hive).unwrap().tag.clone();
            yard.count(&tag, "2026-06-12", count, None);
        }
    }
    let caught = caught::all(&yard.book);
    assert_eq!(all[0].outcome(&caught, day("2026-06-14")), None, "the day before");
    let shut = |on: &str| trial::shut(&yard.book, day(on));
    assert!(shut("2026-06-14").len() == 12 && !shut("2026-06-14").contains(&yard.hive("13")));
    assert!(shut("2026-06-15").is_empty() && shut("2026-05-14").is_empty());
    let outcome = all[0].outcome(&caught, day("2026-06-15")).unwrap();
    assert_eq!((outcome.less, outcome.more, outcome.even, outcome.open), (6, 0, 0, 0));
    assert!(outcome.told() && (outcome.sign - 2.0 / 64.0).abs() < 1e-12);
    // What comes after its day changes nothing.
    for (with, _) in &pairs {
        let tag = yard.book.standing().hives.get(with).unwrap().tag.clone();
        yard.count(&tag, "2026-07-12", 90, None);
    }
    assert_eq!(all[0].outcome(&caught::all(&yard.book), day("2026-08-01")), Some(outcome));
    // Both lists are one act.
    let last = entries.iter().map(|entry| entry.id.clone()).collect::<Vec<_>>();
    assert!(entries.iter().all(|entry| entry.bulk.as_ref() == Some(&last[0])));
    let strike = yard.book.strike(&pen("aa", on), on, &last, &Unicode).unwrap();
    yard.book.add(strike);
    assert!(trial::all(&yard.book).is_empty());
}

#[test]
fn a_trial_with_one_side_alone_or_in_the_future_is_none() {
    let mut yard = counted();
    let [with, without] = drawn(&yard);
    let on = day("2026-05-15");
    let tomorrow = on.plus(1);
    let refused =
        yard.book.records_together(&pen("aa", on), tomorrow, on, Some(&yard.id), vec![with.clone()]);
    assert_eq!(refused, Err(Refusal::Future { today: on }));
    let entries = yard.book.record(&pen("aa", on), on, on, Some(&yard.id), with).unwrap();
    yard.book.add(entries);
    assert!(trial::all(&yard.book).is_empty());
    let entries = yard.book.record(&pen("aa", on), on, on, Some(&yard.id), without).unwrap();
    yard.book.add(entries);
    assert_eq!(trial::all(&yard.book).len(), 1);
}
