//! Trials that a keeper draws, writes down and opens on their day.

use crate::support::{Unicode, day, pen};
use crate::yard_decides::{Says, Words};
use crate::{Yard, work_on};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trial::Outcome;
use beetle_almanac::book::caught::{self, Days};
use beetle_almanac::book::entry::{Did, Ending, Entry, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::record::{Answer, Blank, Record};
use beetle_almanac::book::trial::{self, Apart, Trial, hives, in_pairs, kept_pairs, plan, records};
use beetle_almanac::book::urgent::Because;
use beetle_almanac::book::write::{KindChoice, Refusal};

/// How `trial` came out by `today`, from all that stands in the book of `yard`.
fn opened(trial: &Trial, yard: &Yard, today: Day) -> Option<Outcome> {
    let book = &yard.book;
    trial.outcome(book.standing(), &book.log().in_effect(), &caught::all(book), today)
}

const TAGS: [&str; 13] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12", "13"];

/// Places in what two lists can differ in.
const NAMED: usize = 0;
const FROM: usize = 1;
const SIDE: usize = 2;
const UNTIL: usize = 3;
const HIVES: usize = 4;

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
    assert_eq!((pairs.each.len(), pairs.left.map(|left| all[left].clone())), (6, Some(yard.hive("1"))));
    records("Notch screened", day("2026-06-15"), &all, &pairs)
}

#[test]
fn a_draw_that_is_kept_stands_whatever_is_counted_and_whoever_goes_takes_its_partner_out() {
    let mut yard = counted();
    let here = hives(&yard.book, &yard.id, day("2026-05-15"));
    let pairs = plan(&here, &caught::all(&yard.book), "k7");
    let kept = in_pairs(&here, &pairs);
    assert_eq!((kept.len(), kept.last()), (13, Some(&yard.hive("1"))));
    let written =
        |pairs, of: &[_]| records("Notch screened", day("2026-06-15"), of, pairs).map(|list| list.hives);
    // Hive 1 has most of all now: drawn anew it would stand elsewhere.
    yard.count("1", "2026-05-16", 900, None);
    assert_ne!(plan(&here, &caught::all(&yard.book), "k7"), pairs);
    let (still, left) = kept_pairs(&kept, &here);
    assert_eq!(written(&still, &kept), written(&pairs, &here));
    assert_eq!(left, [12]);
    let (gone, partner) = (&kept[4], &kept[5]);
    let fewer: Vec<_> = here.into_iter().filter(|hive| hive != gone).collect();
    let (still, left) = kept_pairs(&kept, &fewer);
    assert_eq!((still.each.len(), left), (5, vec![5, 12]));
    assert!(written(&still, &kept).concat().iter().all(|hive| hive != gone && hive != partner));
    // Of a pair of which both went nobody is left over.
    let fewer: Vec<_> = fewer.into_iter().filter(|hive| hive != partner).collect();
    let (still, left) = kept_pairs(&kept, &fewer);
    assert_eq!((still.each.len(), left), (5, vec![12]));
}

#[test]
fn a_hive_with_slime_a_dead_one_and_one_under_suspicion_are_not_drawn_and_are_named_with_the_reason() {
    let mut yard = counted();
    let today = day("2026-05-15");
    assert_eq!(trial::left_out(&yard.book, &yard.id, today), []);
    yard.tells("2026-05-14", "3", Blank::Look, &[("larvae", Says::Word("many"))]);
    let disease = [("larvae", Says::Word("none")), ("brood_disease", Says::Word("suspected"))];
    yard.tells("2026-05-14", "5", Blank::Look, &disease);
    yard.tells("2026-05-14", "8", Blank::DeadOut, &[("causes", Says::Words(&["beetles"]))]);
    let because = [("3", Because::Slime), ("5", Because::Disease), ("8", Because::Dead)];
    let named = because.map(|(tag, because)| (yard.hive(tag), because));
    assert_eq!(trial::left_out(&yard.book, &yard.id, today), named);
    let drawn = hives(&yard.book, &yard.id, today);
    assert_eq!(drawn.len(), TAGS.len() - 3);
    assert!(named.iter().all(|(hive, _)| !drawn.contains(hive)));
    // Whose combs nobody counted leaves its card after two months; no bees are in it all the same.
    let later = day("2026-08-15");
    assert!(trial::left_out(&yard.book, &yard.id, later).contains(&(yard.hive("8"), Because::Dead)));
}

#[test]
fn a_trial_is_not_opened_before_its_day_and_then_the_pairs_decide() {
    let mut yard = counted();
    let lists = drawn(&yard);
    let on = day("2026-05-15");
    let entries = yard.book.records_together(&pen("aa", on), on, on, Some(&yard.id), lists.into()).unwrap();
    assert_eq!(entries.len(), 2);
    yard.book.add(entries.clone());
    let all = trial::sorted(&yard.book).0;
    assert_eq!((all.len(), all[0].named.as_str(), all[0].pairs.len()), (1, "Notch screened", 6));
    let pairs = all[0].pairs.clone();
    let days = |from: &str, to: &str| Days { from: day(from), to: day(to) };
    let hidden =
        |yard: &Yard, days| trial::shut(&yard.book, &caught::all(&yard.book), days, day("2026-06-14")).len();
    assert_eq!(hidden(&yard, days("2026-05-01", "2026-12-31")), 0, "nothing was caught in it yet");
    for (with, without) in &pairs {
        for (hive, count) in [(with, 2), (without, 9)] {
            let tag = yard.book.standing().hives.get(hive).unwrap().tag.clone();
            yard.count(&tag, "2026-06-12", count, None);
        }
    }
    let caught = caught::all(&yard.book);
    assert_eq!(
        all[0].outcome(yard.book.standing(), &yard.book.log().in_effect(), &caught, day("2026-06-14")),
        None,
        "the day before"
    );
    assert_eq!(hidden(&yard, days("2026-05-01", "2026-12-31")), 12);
    assert_eq!(hidden(&yard, days("2026-05-01", "2026-05-15")), 0, "what was caught before is no secret");
    assert_eq!(
        hidden(&yard, days("2026-06-12", "2026-12-31")),
        0,
        "nor is it in days that begin with its last count"
    );
    let shut = |on: &str| trial::going_on(&yard.book, day(on));
    let left = yard.hive("1");
    assert!(shut("2026-06-14").len() == 12 && shut("2026-06-14").iter().all(|(hive, _)| *hive != left));
    assert!(shut("2026-06-15").is_empty() && shut("2026-05-14").is_empty());
    let outcome = all[0]
        .outcome(yard.book.standing(), &yard.book.log().in_effect(), &caught, day("2026-06-15"))
        .unwrap();
    assert_eq!((outcome.less, outcome.more, outcome.even, outcome.open), (6, 0, 0, 0));
    assert!(outcome.told() && (outcome.sign - 2.0 / 64.0).abs() < 1e-12);
    // What comes after its day changes nothing.
    for (with, _) in &pairs {
        let tag = yard.book.standing().hives.get(with).unwrap().tag.clone();
        yard.count(&tag, "2026-07-12", 90, None);
    }
    assert_eq!(opened(&all[0], &yard, day("2026-08-01")), Some(outcome));
    // Both lists are one act.
    let last = entries.iter().map(|entry| entry.id.clone()).collect::<Vec<_>>();
    assert!(entries.iter().all(|entry| entry.bulk.as_ref() == Some(&last[0])));
    let strike = yard.book.strike(&pen("aa", on), on, &last, &Unicode).unwrap();
    yard.book.add(strike);
    assert!(trial::sorted(&yard.book).0.is_empty());
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
    let (all, apart) = trial::sorted(&yard.book);
    assert!(all.is_empty() && apart.len() == 1, "{apart:?}");
    assert_eq!((apart[0].lines.len(), apart[0].differs), (1, [false; 5]));
    assert_eq!(trial::going_on(&yard.book, on).len(), 6, "it goes on, though nobody knows beside what");
    let entries = yard.book.record(&pen("aa", on), on, on, Some(&yard.id), without).unwrap();
    yard.book.add(entries);
    let (all, apart) = trial::sorted(&yard.book);
    assert_eq!((all.len(), apart.len()), (1, 0));
}

/// The two lists of a trial in the book, and their lines.
fn written(yard: &mut Yard) -> [Entry; 2] {
    let on = day("2026-05-15");
    let lists = drawn(yard);
    let entries = yard.book.records_together(&pen("aa", on), on, on, Some(&yard.id), lists.into()).unwrap();
    yard.book.add(entries.clone());
    let [with, without] = &*entries else { panic!() };
    [with.clone(), without.clone()]
}

/// Corrects a list, and hands out the versions that say so.
fn correct(yard: &mut Yard, list: &Entry, on: &str, mend: impl Fn(&mut Record)) -> Vec<Entry> {
    let today = day("2026-06-01");
    let What::Record(mut record) = list.what.clone() else { panic!() };
    mend(&mut record);
    let what = What::Record(record);
    let entries = yard.book.correct(&pen("aa", today), day(on), today, &list.id, what, &Unicode).unwrap();
    yard.book.add(entries.clone());
    entries
}

fn apart(yard: &Yard) -> Apart {
    let (all, mut apart) = trial::sorted(&yard.book);
    assert_eq!((all.len(), apart.len()), (0, 1), "{apart:?}");
    apart.remove(0)
}

#[test]
fn keeper_corrects_one_list_of_a_trial_and_is_told_in_what_the_two_differ() {
    type Mend = fn(&mut Record);
    let name: Mend = |record| record.answers[0] = Some(Answer::Text("Notch shut".into()));
    let side: Mend = |record| {
        let other = record.answers[1] == Some(Answer::Word(0));
        record.answers[1] = Some(Answer::Word(u8::from(other)));
    };
    let until: Mend = |record| record.answers[2] = Some(Answer::Day(day("2026-07-01")));
    let no_until: Mend = |record| record.answers[2] = None;
    let fewer: Mend = |record| record.hives.truncate(5);
    let same: Mend = |_| ();
    for (mend, on, differs, last) in [
        (name, "2026-05-15", NAMED, "2026-06-14"),
        (same, "2026-05-14", FROM, "2026-06-14"),
        (side, "2026-05-15", SIDE, "2026-06-14"),
        (until, "2026-05-15", UNTIL, "2026-06-30"),
        (no_until, "2026-05-15", UNTIL, "2026-06-14"),
        (fewer, "2026-05-15", HIVES, "2026-06-14"),
    ] {
        for at in 0..2 {
            let mut yard = counted();
            let lists = written(&mut yard);
            let mended = correct(&mut yard, &lists[at], on, mend);
            let found = apart(&yard);
            assert_eq!(found.differs, [0, 1, 2, 3, 4].map(|at| at == differs));
            let mut lines = found.lines;
            lines.sort();
            assert_eq!(lines, [lists[0].id.clone(), lists[1].id.clone()]);
            // Nobody sees the catch before the later of the two days.
            let hives = 12 - usize::from(differs == HIVES);
            let next = day(last).plus(1);
            assert_eq!(trial::going_on(&yard.book, day(last)).len(), hives, "{differs}");
            assert!(trial::going_on(&yard.book, next).is_empty(), "{differs}");
            assert_eq!(trial::going_on(&yard.book, day("2026-05-14")).is_empty(), differs != FROM);
            // The other list corrected alike, or the correction struck out: the trial stands again.
            if differs != SIDE && differs != HIVES {
                let one_corrected = yard.book.clone();
                correct(&mut yard, &lists[1 - at], on, mend);
                let (all, apart) = trial::sorted(&yard.book);
                assert_eq!((all.len(), apart.len(), all[0].pairs.len()), (1, 0, 6), "{differs}");
                yard.book = one_corrected;
            }
            let today = day("2026-06-01");
            let newest: Vec<_> = mended.iter().map(|entry| entry.id.clone()).collect();
            let struck = yard.book.strike(&pen("aa", today), today, &newest, &Unicode);
            yard.book.add(struck.unwrap());
            let (all, apart) = trial::sorted(&yard.book);
            assert_eq!((all.len(), apart.len()), (1, 0));
        }
    }
}

#[test]
fn a_list_corrected_in_all_things_and_one_struck_out_are_lists_by_themselves() {
    let mut yard = counted();
    let [with, without] = written(&mut yard);
    correct(&mut yard, &without, "2026-05-14", |record| {
        record.answers[0] = Some(Answer::Text("Notch shut".into()));
    });
    let (all, apart) = trial::sorted(&yard.book);
    assert_eq!((all.len(), apart.len()), (0, 2));
    assert!(apart.iter().all(|apart| apart.lines.len() == 1 && apart.differs == [false; 5]));
    assert_eq!(trial::going_on(&yard.book, day("2026-06-01")).len(), 12);
    let today = day("2026-06-01");
    let struck = yard.book.strike(&pen("aa", today), today, &[with.id], &Unicode).unwrap();
    yard.book.add(struck);
    let (_, apart) = trial::sorted(&yard.book);
    assert!(apart.len() == 1 && apart[0].lines == [without.id], "{apart:?}");
}

#[test]
fn trials_of_one_name_drawn_on_one_day_each_keep_their_own_pairs_and_the_newest_comes_first() {
    let mut yard = counted();
    let [with, without] = drawn(&yard);
    let lists = |at: usize, count: usize| {
        [&with, &without].map(|list| {
            let mut record = list.clone();
            record.hives = list.hives[at..at + count].to_vec();
            record
        })
    };
    // Both of three pairs, and of one name and day: which list is whose, the order in which they were written says.
    for (at, count, on) in [(0, 3, "2026-05-15"), (3, 3, "2026-05-15"), (0, 2, "2026-05-16")] {
        let on = day(on);
        let lists = lists(at, count).into();
        let entries = yard.book.records_together(&pen("aa", on), on, on, Some(&yard.id), lists).unwrap();
        yard.book.add(entries);
    }
    let (all, apart) = trial::sorted(&yard.book);
    assert!(apart.is_empty());
    assert_eq!(
        all.iter().map(|trial| trial.from).collect::<Vec<_>>(),
        [day("2026-05-16"), day("2026-05-15"), day("2026-05-15")]
    );
    let both: Vec<_> = with.hives.iter().cloned().zip(without.hives.iter().cloned()).collect();
    assert_eq!((&*all[2].pairs, &*all[1].pairs, &*all[0].pairs), (&both[..3], &both[3..], &both[..2]));
}

#[test]
fn of_lists_that_all_agree_those_written_first_belong_together() {
    let mut yard = counted();
    let [with, without] = drawn(&yard);
    let on = day("2026-05-15");
    for (list, at) in [(&with, 0), (&with, 3), (&without, 0), (&without, 3)] {
        let mut half = list.clone();
        half.hives = list.hives[at..at + 3].to_vec();
        let entries = yard.book.record(&pen("aa", on), on, on, Some(&yard.id), half).unwrap();
        yard.book.add(entries);
    }
    let (all, _) = trial::sorted(&yard.book);
    let both: Vec<_> = with.hives.iter().cloned().zip(without.hives.iter().cloned()).collect();
    assert_eq!(all.len(), 2);
    assert!(
        all.iter().any(|trial| trial.pairs == both[..3]) && all.iter().any(|trial| trial.pairs == both[3..])
    );
}

/// What a hive catches in another yard is not the trial's.
#[test]
fn a_hive_carried_away_in_a_trial_leaves_its_pair_open() {
    let mut yard = counted();
    written(&mut yard);
    let all = trial::sorted(&yard.book).0;
    let on = day("2026-05-16");
    let mill = yard.book.keep_yard(
        &pen("aa", on),
        "Mill",
        "UTC",
        &KindChoice::Known(yard.kind()),
        &crate::plan(&[], &[], on),
    );
    let mill = mill.unwrap();
    let to = mill[0].id.thing(0);
    yard.book.add(mill);
    let hive = all[0].pairs[0].0.clone();
    let moved = yard.book.move_hive(&pen("aa", on), on, on, &hive, &to, None, &Unicode).unwrap();
    yard.book.add(moved);
    for (with, without) in &all[0].pairs {
        for hive in [with, without] {
            let on = day("2026-06-12");
            let mut work = work_on(hive.clone(), Did::Replaced);
            (work.after, work.count) = (Some(Share::HALF), Some(CountRange::exact(5)));
            let entries = yard.book.check(&pen("aa", on), on, on, work).unwrap();
            yard.book.add(entries);
        }
    }
    let outcome = opened(&all[0], &yard, day("2026-06-15")).unwrap();
    assert_eq!((outcome.open, outcome.even), (1, 5));
    // A trial of no yard goes along with its hives.
    let anywhere = Trial { yard: None, ..all[0].clone() };
    let outcome = opened(&anywhere, &yard, day("2026-06-15")).unwrap();
    assert_eq!((outcome.open, outcome.even), (0, 6));
}

/// Its traps are counted all the same.
#[test]
fn a_hive_that_dies_on_the_day_of_the_draw_leaves_its_pair_open() {
    let mut yard = counted();
    written(&mut yard);
    let trial = trial::sorted(&yard.book).0.remove(0);
    let tag = |yard: &Yard, hive: &ThingId| yard.book.standing().hives[hive].tag.clone();
    let gone = tag(&yard, &trial.pairs[2].1);
    yard.tells("2026-05-15", &gone, Blank::DeadOut, &[("causes", Words(&["starved"]))]);
    for (with, without) in &trial.pairs {
        for hive in [with, without] {
            let tag = tag(&yard, hive);
            yard.count(&tag, "2026-06-12", 5, None);
        }
    }
    let outcome = opened(&trial, &yard, day("2026-06-15")).unwrap();
    assert_eq!((outcome.open, outcome.even), (1, 5));
}

/// A hive that was counted, and then died, was sold or carried away, decides nothing by its early days: on whichever side it
/// was, whatever it caught, and if it was taken back. What ends with the last count or after it is no reason.
#[test]
fn a_pair_of_which_a_hive_died_or_left_before_the_last_count_decides_for_neither_side() {
    type Goes = fn(&mut Yard, &ThingId, Day);
    fn ends(yard: &mut Yard, hive: &ThingId, on: Day, how: Ending) {
        let entries = yard.book.end_hive(&pen("aa", on), on, on, hive, how, None).unwrap();
        yard.book.add(entries);
    }
    let dies: Goes = |yard, hive, on| ends(yard, hive, on, Ending::Dead);
    let absconds: Goes = |yard, hive, on| ends(yard, hive, on, Ending::Gone);
    let sold: Goes = |yard, hive, on| ends(yard, hive, on, Ending::Sold);
    let joined: Goes = |yard, hive, on| ends(yard, hive, on, Ending::Joined { into: Some(yard.hive("1")) });
    let back: Goes = |yard, hive, on| {
        ends(yard, hive, on, Ending::Gone);
        let entries = yard.book.hive_back(&pen("aa", on), on, on, hive, &Unicode).unwrap();
        yard.book.add(entries);
    };
    let found_dead: Goes = |yard, hive, on| {
        let tag = yard.book.standing().hives[hive].tag.clone();
        yard.tells(&on.to_string(), &tag, Blank::DeadOut, &[("causes", Words(&["starved"]))]);
    };
    let carried: Goes = |yard, hive, on| {
        let kind = KindChoice::Known(yard.kind());
        let mill = yard.book.keep_yard(&pen("aa", on), "Mill", "UTC", &kind, &crate::plan(&[], &[], on));
        let mill = mill.unwrap();
        let to = mill[0].id.thing(0);
        yard.book.add(mill);
        let moved = yard.book.move_hive(&pen("aa", on), on, on, hive, &to, None, &Unicode).unwrap();
        yard.book.add(moved);
    };
    // Pairs that are left in the end, by the day on which the hive goes: between the counts, on the day of the last one, after.
    for (goes, on_the_last) in
        [(dies, 5), (absconds, 5), (found_dead, 5), (back, 5), (sold, 6), (joined, 6), (carried, 6)]
    {
        for (on, pairs) in [("2026-05-25", 5), ("2026-06-12", on_the_last), ("2026-06-13", 6)] {
            for of_with in [true, false] {
                let mut yard = counted();
                written(&mut yard);
                let trial = trial::sorted(&yard.book).0.remove(0);
                let (with, without) = trial.pairs[0].clone();
                let gone = if of_with { with } else { without };
                for (on_day, ends_with_it) in [("2026-05-24", false), ("2026-06-12", true)] {
                    for (with, without) in &trial.pairs {
                        for (hive, count) in [(with, 2), (without, 9)] {
                            if *hive == gone && ends_with_it && on == "2026-05-25" {
                                continue;
                            }
                            let tag = yard.book.standing().hives[hive].tag.clone();
                            yard.count(&tag, on_day, count, None);
                        }
                    }
                    if on == "2026-05-25" && !ends_with_it {
                        goes(&mut yard, &gone, day(on));
                    }
                }
                if on != "2026-05-25" {
                    goes(&mut yard, &gone, day(on));
                }
                let outcome = opened(&trial, &yard, day("2026-06-15")).unwrap();
                assert_eq!((outcome.less, outcome.open), (pairs, 6 - pairs), "{on} {of_with}");
                assert_eq!(outcome.told(), pairs == 6);
            }
        }
    }
}

/// What ended by mistake and was taken back on the day of the draw was in care when it was drawn.
#[test]
fn a_hive_taken_back_on_the_day_of_the_draw_stays_in_its_pair() {
    let mut yard = counted();
    written(&mut yard);
    let trial = trial::sorted(&yard.book).0.remove(0);
    let (of, on) = (trial.pairs[0].0.clone(), trial.from);
    let entries = yard.book.end_hive(&pen("aa", on), on, on, &of, Ending::Sold, None).unwrap();
    yard.book.add(entries);
    let entries = yard.book.hive_back(&pen("aa", on), on, on, &of, &Unicode).unwrap();
    yard.book.add(entries);
    for on in ["2026-05-24", "2026-06-12"] {
        for (with, without) in &trial.pairs {
            for (hive, count) in [(with, 2), (without, 9)] {
                let tag = yard.book.standing().hives[hive].tag.clone();
                yard.count(&tag, on, count, None);
            }
        }
    }
    let outcome = opened(&trial, &yard, day("2026-06-15")).unwrap();
    assert_eq!((outcome.less, outcome.open), (6, 0));
}

/// A hive joined with what proved to be itself, written down twice, is where it was.
#[test]
fn a_hive_that_was_joined_with_its_own_double_stays_in_its_pair() {
    let mut yard = counted();
    written(&mut yard);
    let trial = trial::sorted(&yard.book).0.remove(0);
    let (double, hive, on) = (yard.hive("1"), trial.pairs[0].1.clone(), day("2026-05-25"));
    let how = Ending::Joined { into: Some(hive.clone()) };
    let joined = yard.book.end_hive(&pen("aa", on), on, on, &double, how, None).unwrap();
    yard.book.add(joined);
    let same = yard.book.same_hive(&pen("aa", on), on, &double, &hive).unwrap();
    yard.book.add(same);
    let trial = trial::sorted(&yard.book).0.remove(0);
    assert_eq!(trial.pairs[0].1, double, "by the name it came into the book with");
    for (with, without) in &trial.pairs {
        for hive in [with, without] {
            let tag = yard.book.standing().hives[hive].tag.clone();
            yard.count(&tag, "2026-06-12", 5, None);
        }
    }
    let outcome = opened(&trial, &yard, day("2026-06-15")).unwrap();
    assert_eq!((outcome.even, outcome.open), (6, 0));
}
