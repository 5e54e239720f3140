//! What a season came to beside the one before, who was lost and what the keeper made of it.

use crate::support::{day, pen};
use crate::{Yard, trap, work_on};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trap::TrapKind;
use beetle_almanac::almanac::trend::{Stretch, Word};
use beetle_almanac::book::caught::{Days, all, both};
use beetle_almanac::book::entry::{Did, Ending, What};
use beetle_almanac::book::record::{Answer, Blank, Record};
use beetle_almanac::book::review::{LEAST_TRAP_DAYS, Review, earlier, said, verdicts, year_to};
use beetle_almanac::book::season::Season;

fn review(yard: &Yard, from: &str, to: &str) -> Review {
    Review::of(&all(&yard.book), &yard.id, day(from), day(to))
}

/// Three counts, a fortnight apart, in May and June.
fn count_spring(yard: &mut Yard, tag: &str, year: i32, beetles: [u32; 3]) {
    for (on, count) in ["05-15", "05-29", "06-12"].into_iter().zip(beetles) {
        yard.count(tag, &format!("{year}-{on}"), count, None);
    }
}

/// In which the hives were written down, and the walk goes by it.
const TAGS: [&str; 5] = ["1", "2", "3", "4", "5"];

/// Five hives, visited last one first, counted in two springs and emptied in between.
fn two_springs(first: [u32; 3], second: [u32; 3]) -> Yard {
    let mut yard = Yard::new(&TAGS, day("2025-05-01"));
    for tag in TAGS.into_iter().rev() {
        count_spring(&mut yard, tag, 2025, first);
    }
    for tag in TAGS.into_iter().rev() {
        yard.count(tag, "2026-05-01", 0, None);
        count_spring(&mut yard, tag, 2026, second);
    }
    yard
}

fn dead_out(yard: &mut Yard, tag: &str, on: &str, causes: u16) {
    let mut record = Record::empty(Blank::DeadOut, vec![yard.hive(tag)]);
    record.answers[0] = Some(Answer::Words(causes));
    let entries = yard.book.record(&pen("aa", day(on)), day(on), day(on), None, record).unwrap();
    yard.book.add(entries);
}

fn end(yard: &mut Yard, tag: &str, on: &str, how: Ending) {
    let hive = yard.hive(tag);
    let entries = yard.book.end_hive(&pen("aa", day(on)), day(on), day(on), &hive, how, None).unwrap();
    yard.book.add(entries);
}

fn season(yard: &Yard) -> Season {
    Season::of(&yard.book, &yard.id, day("2026-05-01"), day("2026-07-31"))
}

/// From 1 May to 31 July: what is done on either is in it, and what is done on the days beside them is not.
#[test]
fn the_first_day_and_the_last_belong_to_the_season_and_the_evening_before_is_its_start() {
    let mut yard = Yard::new(&TAGS, day("2026-04-01"));
    for (tag, on) in [("1", "2026-04-30"), ("2", "2026-05-01"), ("3", "2026-07-31"), ("4", "2026-08-01")] {
        yard.log(tag, day(on), Did::Replaced, (None, Some(50)));
        end(&mut yard, tag, on, Ending::Dead);
    }
    let season = season(&yard);
    assert_eq!((season.start, season.end, season.ended[0], season.yard.visits), (4, 2, 2, 2));
    let lost: Vec<_> = season.losses.iter().map(|loss| (loss.hive.clone(), loss.day)).collect();
    assert_eq!(lost, [(yard.hive("2"), day("2026-05-01")), (yard.hive("3"), day("2026-07-31"))]);
}

#[test]
fn she_sets_a_spring_beside_the_one_before_and_both_pages_tell_the_same() {
    let yard = two_springs([40, 38, 42], [12, 9, 11]);
    let review = review(&yard, "2026-05-01", "2026-06-30");
    let earlier = review.earlier.unwrap();
    assert_eq!((earlier.from, earlier.to), (day("2025-05-01"), day("2025-06-30")));
    assert_eq!(review.both, both(&all(&yard.book), &yard.id, earlier, review.days));
    // Five hives with four traps for 42 days.
    let stretch = |count| Stretch { count: CountRange::exact(count), trap_days: 840 };
    assert_eq!(review.both.sums, (stretch(600), stretch(160)));
    assert_eq!(review.counts(), (15, 15));
    assert_eq!(review.both.trend.word, Word::Down);
    let (first, second) = review.rates();
    assert_eq!((first, second), (stretch(600).rate(), stretch(160).rate()));
    assert_eq!(review.of_hive(&yard.hive("1")).2.unwrap().word, Word::Down);
}

#[test]
fn the_same_counts_in_two_springs_tell_neither_more_nor_fewer() {
    let yard = two_springs([12, 9, 11], [12, 9, 11]);
    let review = review(&yard, "2026-05-01", "2026-06-30");
    assert_eq!(review.both.trend.word, Word::CantTell);
    assert_eq!(review.of_hive(&yard.hive("2")).2.unwrap().word, Word::CantTell);
}

/// The yard of a keeper who asked why a fall to a fifth is not told: his other hives strayed as far, up and down.
#[test]
fn a_hive_fell_to_a_fifth_and_hives_that_stray_as_far_leave_it_open_and_hives_alike_do_not() {
    let told = |others: [[u32; 2]; 4]| {
        let mut yard = Yard::new(&TAGS, day("2025-05-01"));
        let all = [[57, 11], others[0], others[1], others[2], others[3]];
        for (tag, [first, _]) in TAGS.into_iter().zip(all) {
            count_spring(&mut yard, tag, 2025, [0, 0, first]);
        }
        for (tag, [_, second]) in TAGS.into_iter().zip(all) {
            yard.count(tag, "2026-05-01", 0, None);
            count_spring(&mut yard, tag, 2026, [0, 0, second]);
        }
        let review = review(&yard, "2026-05-01", "2026-06-30");
        let (first, second, trend) = review.of_hive(&yard.hive("1"));
        (first.unwrap().seen.0, second.unwrap().seen.0, trend.unwrap())
    };
    let (first, second, trend) = told([[60, 12], [10, 66], [70, 20], [12, 50]]);
    assert!((first - 33.9).abs() < 0.1 && (second - 6.5).abs() < 0.1, "{first} {second}");
    assert!(trend.word == Word::CantTell && trend.spread > 10.0, "{trend:?}");
    assert!(trend.limits.0 < Some(0.1) && trend.limits.1 > Some(1.0), "{trend:?}");
    let (.., trend) = told([[60, 12], [70, 15], [50, 9], [44, 10]]);
    assert!(trend.word == Word::Down && trend.spread < 2.0, "{trend:?}");
}

#[test]
fn two_counts_or_ninety_nine_trap_days_are_not_made_into_a_catch() {
    let stretch = |trap_days| Stretch { count: CountRange::exact(30), trap_days };
    assert_eq!(said(2, stretch(500)), None);
    assert_eq!(said(3, stretch(LEAST_TRAP_DAYS - 1)), None);
    assert_eq!(said(3, stretch(LEAST_TRAP_DAYS)), stretch(LEAST_TRAP_DAYS).rate());
    let mut yard = Yard::new(&["1"], day("2026-05-01"));
    yard.count("1", "2026-05-15", 7, None);
    yard.count("1", "2026-05-29", 7, None);
    let review = review(&yard, "2026-05-01", "2026-06-30");
    assert_eq!((review.rates(), review.counts()), ((None, None), (0, 2)));
    assert_eq!(review.of_hive(&yard.hive("1")), (None, None, None));
    assert_eq!(review.both.trend.word, Word::NoData);
}

#[test]
fn ranges_stay_ranges_in_what_was_seen_and_in_its_limits() {
    let range = |low, high| Stretch { count: CountRange::new(low, high).unwrap(), trap_days: 200 };
    let rate = said(3, range(10, Some(20))).unwrap();
    assert_eq!(rate.seen, (5.0, Some(10.0)));
    assert_eq!(Some(rate.limits.0), range(10, Some(10)).rate().map(|exact| exact.limits.0));
    assert_eq!(rate.limits.1, range(20, Some(20)).rate().and_then(|exact| exact.limits.1));
    assert_eq!(said(3, range(50, None)).unwrap().limits.1, None);
}

/// By hand: a trap of 20 mL filled to the half takes 10 mL.
#[test]
fn the_first_filling_of_a_trap_is_oil_too_at_least_and_at_most() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    let millilitres = |yard: &Yard| {
        let season = season(yard);
        let (least, most) = season.yard.oil;
        (season.placed, least.millilitres(), most.millilitres(), season.yard.oil_unknown)
    };
    assert_eq!(millilitres(&yard), (8, 80.0, 80.0, 0));
    let (on, hive, kind) = (day("2026-05-20"), yard.hive("1"), yard.kind());
    let part = yard.book.standing().hives[&hive].boxes[0].id.clone();
    let more = What::BoxWants { hive: hive.clone(), part, traps: 4 };
    let more = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, more).unwrap();
    yard.book.add(more);
    let look = work_on(hive, Did::AsFound);
    let placed = yard.book.traps_placed(&pen("aa", on), on, on, &kind, look).unwrap();
    yard.book.add(placed);
    assert_eq!(millilitres(&yard), (10, 100.0, 100.0, 0));
    let found = season(&yard);
    let visited: Vec<_> = found.hives.iter().map(|(_, of)| of.visits).collect();
    assert_eq!((found.yard.visits, visited), (1, vec![1, 0]), "the other is overdue on the last day");
}

/// By hand: four traps in each of two hives, and those of one replaced once; what is used again is emptied and stays, until it is gone.
#[test]
fn new_traps_in_the_place_of_thrown_away_ones_are_counted_beside_those_first_put_in() {
    for (reusable, renewed) in [(false, 4), (true, 0)] {
        let mut yard = Yard::with(&["1", "2"], day("2026-05-01"), &TrapKind { reusable, ..trap() });
        yard.log("1", day("2026-05-15"), Did::Replaced, (None, Some(50)));
        yard.log("2", day("2026-05-15"), Did::ToppedUp, (Some(40), Some(50)));
        let found = season(&yard);
        assert_eq!((found.placed, found.renewed), (8, renewed));
        // What is not there is in nobody's hand to be emptied.
        yard.log("1", day("2026-05-20"), Did::Missing, (None, None));
        yard.log("1", day("2026-05-20"), Did::Replaced, (None, Some(50)));
        assert_eq!(season(&yard).renewed, renewed + 4, "{reusable}");
    }
}

#[test]
fn days_longer_than_a_year_are_set_beside_nothing_and_tell_their_catch_all_the_same() {
    let yard = two_springs([40, 38, 42], [12, 9, 11]);
    let year = review(&yard, "2025-06-30", "2026-06-30");
    assert!(year.earlier.is_some());
    let longer = review(&yard, "2025-05-01", "2026-06-30");
    assert_eq!((longer.earlier, longer.both.trend.word), (None, Word::NoData));
    assert_eq!((longer.counts(), longer.rates().0), ((0, 35), None));
    assert_eq!(longer.both.sums.1.count, CountRange::exact(760));
}

#[test]
fn hives_stand_in_the_order_of_the_walk_whoever_was_visited_first() {
    let yard = two_springs([1, 1, 1], [90, 90, 90]);
    let order: Vec<_> = season(&yard).hives.into_iter().map(|(hive, _)| hive).collect();
    assert_eq!(order, TAGS.map(|tag| yard.hive(tag)));
}

#[test]
fn a_colony_died_and_the_cause_is_the_one_that_was_written_down_before_or_after_or_none() {
    let mut yard = Yard::new(&["1", "2", "3", "4", "5"], day("2026-04-01"));
    dead_out(&mut yard, "1", "2026-04-28", 0b1000);
    end(&mut yard, "1", "2026-05-10", Ending::Dead);
    end(&mut yard, "2", "2026-05-12", Ending::Dead);
    dead_out(&mut yard, "2", "2026-08-20", 0b10);
    end(&mut yard, "3", "2026-06-01", Ending::Dead);
    dead_out(&mut yard, "4", "2026-06-05", 1);
    end(&mut yard, "5", "2026-08-02", Ending::Dead);
    let found = season(&yard);
    assert_eq!(found.ended, [3, 0, 0, 0]);
    let told: Vec<_> = found
        .losses
        .iter()
        .map(|loss| {
            let causes: Vec<_> = loss.showed.iter().map(|record| record.answers[0].clone()).collect();
            (loss.hive.clone(), loss.how.clone(), causes)
        })
        .collect();
    let words = |bits: u16| vec![Some(Answer::Words(bits))];
    assert_eq!(
        told,
        [
            (yard.hive("1"), Some(Ending::Dead), words(0b1000)),
            (yard.hive("2"), Some(Ending::Dead), words(0b10)),
            (yard.hive("3"), Some(Ending::Dead), vec![]),
            (yard.hive("4"), None, words(1)),
        ]
    );
}

#[test]
fn a_hive_taken_back_and_lost_again_is_lost_twice_and_each_cause_stays_with_its_own_death() {
    let mut yard = Yard::new(&["1"], day("2026-04-01"));
    end(&mut yard, "1", "2026-05-10", Ending::Dead);
    dead_out(&mut yard, "1", "2026-05-11", 1);
    let hive = yard.hive("1");
    let on = day("2026-06-01");
    let back = What::HiveBack { hive };
    let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, back).unwrap();
    yard.book.add(entries);
    end(&mut yard, "1", "2026-07-01", Ending::Gone);
    let losses = season(&yard).losses;
    assert_eq!(losses.len(), 2);
    assert_eq!((losses[0].back, losses[0].showed.len()), (Some(on), 1));
    assert_eq!((losses[1].back, losses[1].showed.len()), (None, 0));
}

#[test]
fn what_to_do_next_year_is_listed_for_its_yard_and_its_days() {
    let mut yard = Yard::new(&["1"], day("2026-04-01"));
    for (on, about) in [("2026-04-02", "before"), ("2026-06-01", "oil"), ("2026-07-31", "more shade")] {
        let mut record = Record::empty(Blank::Verdict, Vec::new());
        record.answers[0] = Some(Answer::Text(about.to_owned()));
        record.answers[1] = Some(Answer::Word(1));
        let of = yard.id.clone();
        let entries = yard.book.record(&pen("aa", day(on)), day(on), day(on), Some(&of), record).unwrap();
        yard.book.add(entries);
    }
    let days = review(&yard, "2026-05-01", "2026-07-31").days;
    let about: Vec<_> =
        verdicts(yard.book.standing(), &yard.id, days).iter().map(|now| now.record.text("about")).collect();
    assert_eq!(about, [Some("oil"), Some("more shade")]);
}

/// Every day from 2003 to 2100, which is no leap year.
#[test]
fn a_year_and_the_year_before_follow_each_other_without_a_gap_and_share_no_day() {
    for day in
        (0..=day("2100-12-31").days_since(day("2003-01-01"))).map(|after| day("2003-01-01").plus(after))
    {
        let year = year_to(day);
        let before = earlier(year).unwrap();
        assert_eq!((year.to, before.to.plus(1)), (day, year.from), "{day}");
        assert_eq!(before, year_to(year.from.plus(-1)), "{day}: the year that ends there");
        for days in [year, before] {
            let long = days.to.days_since(days.from) + 1;
            assert!((365..=366).contains(&long), "{day}: {long}");
        }
        assert_eq!(earlier(Days { from: day.plus(-366), to: day }), None);
        for length in [0, 29, 363, 364, 365] {
            let days = Days { from: day.plus(-length), to: day };
            let before = earlier(days).unwrap();
            assert!(before.to < days.from && before.from <= before.to, "{day} {length}: no day in both");
        }
    }
    let november = year_to(day("2026-11-26"));
    assert_eq!(november, Days { from: day("2025-11-27"), to: day("2026-11-26") });
    assert_eq!(earlier(november), Some(Days { from: day("2024-11-27"), to: day("2025-11-26") }));
}

#[test]
fn she_looked_back_on_the_last_day_of_a_february_after_a_leap_day() {
    let days = |from, to| Days { from: day(from), to: day(to) };
    assert_eq!(year_to(day("2005-02-28")), days("2004-02-29", "2005-02-28"));
    assert_eq!(earlier(days("2004-02-29", "2005-02-28")), Some(days("2003-03-01", "2004-02-28")));
    assert_eq!(earlier(days("2005-03-01", "2006-02-28")), Some(days("2004-02-29", "2005-02-28")));
    // Of days that are no whole year the same days, and the 30th of June in one of the two.
    assert_eq!(earlier(days("2005-03-01", "2005-06-30")), Some(days("2004-03-01", "2004-06-30")));
    assert_eq!(earlier(days("2025-06-30", "2026-06-30")), Some(days("2024-06-30", "2025-06-29")));
}
