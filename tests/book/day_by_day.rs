//! Where a day, a number or an owner decides: the day before, the day itself and the day after, each side of a limit, the
//! keeper's own beside the demonstration's.

use crate::support::{day, pen};
use crate::yard_decides::{Hundredths, On, Text, Word, Words, filled, three, whole};
use crate::{Yard, plan, trap, work_on};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::app::kinds::names;
use beetle_almanac::book::Book;
use beetle_almanac::book::caught::{Days, Part, all, parts};
use beetle_almanac::book::chilled::chilled;
use beetle_almanac::book::entry::{Did, Ending};
use beetle_almanac::book::record::{Answer, Blank, Record};
use beetle_almanac::book::shell::{Board, Known, Notch};
use beetle_almanac::book::spent::Spent;
use beetle_almanac::book::stands::placed;
use beetle_almanac::book::store_room::StoreRoom;
use beetle_almanac::book::urgent::urgent;
use beetle_almanac::book::write::{KindChoice, Refusal};

/// A look is of the day it was made; how a hive was built was written down then, and stands from the next day on. Cleaned
/// was a board after it was looked at.
#[test]
fn what_was_built_counts_from_the_day_after_a_look_and_what_was_cleaned_from_the_day_itself() {
    for after in -2..=3 {
        let mut yard = three();
        let (seen, told) = (day("2026-06-10"), day("2026-06-10").plus(after));
        let both = [("notch", Word("open")), ("slick_board", Word("dirty"))];
        yard.tells(&seen.to_string(), "1", Blank::Shell, &both);
        let built = [("notch_screen", Word("yes")), ("slick_board", Word("no"))];
        yard.tells(&told.to_string(), "1", Blank::HiveFacts, &built);
        let shell = yard.shell("1", "2026-06-20");
        let (notch, board) = if after >= 1 {
            (Known::Seen(Notch::Screened, told), Known::Seen(Board::Without, told))
        } else {
            (Known::Seen(Notch::Open, seen), Known::Seen(Board::Dirty, seen))
        };
        assert_eq!((shell.notch, shell.board), (notch, board), "{after} days after the look");
        // The same with cleaning.
        let mut yard = three();
        yard.tells(&seen.to_string(), "1", Blank::Shell, &[("slick_board", Word("dirty"))]);
        yard.tells(&told.to_string(), "1", Blank::Cleaned, &[("what", Words(&["slick_board"]))]);
        let board =
            if after >= 0 { Known::Seen(Board::Clean, told) } else { Known::Seen(Board::Dirty, seen) };
        assert_eq!(yard.shell("1", "2026-06-20").board, board, "{after} days after the look");
    }
}

#[test]
fn fewer_than_five_frames_of_bees_are_few_where_nobody_counted_the_combs() {
    for hundredths in (0..=1000).step_by(25) {
        let mut yard = three();
        let look = [("larvae", Word("none")), ("frames_of_bees", Hundredths(hundredths, 0))];
        yard.tells("2026-06-01", "1", Blank::Look, &look);
        let combs = yard.combs("1", "2026-06-01");
        assert!(combs.guard().is_none());
        assert_eq!(combs.weak(), hundredths < 500, "{hundredths}");
    }
}

#[test]
fn ground_that_was_treated_on_the_day_of_the_slime_or_later_is_treated_and_no_other_yards() {
    for after in -2..=2 {
        let mut yard = three();
        yard.tells("2026-06-10", "1", Blank::Look, &[("larvae", Word("many"))]);
        let on = day("2026-06-10").plus(after).to_string();
        yard.tells(&on, "", Blank::Ground, &[("material", Text("nematodes"))]);
        let card = |yard: &Yard| urgent(yard.book.standing(), &yard.hive("1"), day("2026-06-20")).unwrap();
        assert_eq!(card(&yard).ground, after >= 0, "{on}");
        let (mill, start) = (other_yard(&mut yard, "aa", day("2026-06-09")), day("2026-06-11"));
        let work = filled(Blank::Ground, Vec::new(), &[("material", Text("nematodes"))]);
        let written = yard.book.record(&pen("aa", start), start, start, Some(&mill), work).unwrap();
        yard.book.add(written);
        assert_eq!(card(&yard).ground, after >= 0, "{on}, another yard");
    }
}

/// One more yard of one hive, in the book of `writer`.
fn other_yard(yard: &mut Yard, writer: &str, start: Day) -> beetle_almanac::book::id::ThingId {
    let known: Vec<_> = yard.book.standing().yards.keys().cloned().collect();
    let plan = plan(&["77"], &[(BoxDepth::Deep, 2)], start);
    let kind = KindChoice::New(trap());
    let entries = yard.book.keep_yard(&pen(writer, start), "Mill", "Europe/Berlin", &kind, &plan).unwrap();
    yard.book.add(entries);
    yard.book.standing().yards.keys().find(|id| !known.contains(id)).unwrap().clone()
}

fn stock(millilitres: i64, until: &str) -> Record {
    let answers = [
        ("item", Text("oil")),
        ("change", Hundredths(millilitres * 100, 1)),
        ("sort", Word("oil")),
        ("good_until", On(until)),
    ];
    let given = if until.is_empty() { &answers[..3] } else { &answers[..] };
    filled(Blank::Stock, Vec::new(), given)
}

/// The oil in store, bought on 2 January, of which some was used on `used` and is asked for on 1 August.
#[test]
fn oil_is_good_on_its_last_day_and_used_first_until_then() {
    for after in -2..=2 {
        let mut yard = Yard::new(&["1"], day("2026-01-01"));
        let used = day("2026-06-30").plus(after);
        for (on, record) in [
            (day("2026-01-02"), stock(1000, "2026-06-30")),
            (day("2026-01-02"), stock(1000, "2027-06-30")),
            (used, stock(-400, "")),
        ] {
            let written = yard.book.record(&pen("aa", on), on, on, None, record).unwrap();
            yard.book.add(written);
        }
        let held = StoreRoom::of(yard.book.standing(), day("2026-08-01"), false, &[]).oil();
        let held = held.map(|held| (held.good, held.past));
        let there = if after <= 0 { (1000.0, 600.0) } else { (600.0, 1000.0) };
        assert_eq!(held, Some(there), "used {after} days after its last");
    }
}

#[test]
fn more_traps_or_oil_home_than_were_taken_is_asked_about_and_as_many_is_not() {
    let yard = Yard::new(&["1"], day("2026-07-01"));
    let on = day("2026-07-10");
    let at = |name: &str| Blank::Trip.fields().iter().position(|field| field.name == name).unwrap();
    for (taken, back) in [("traps_taken", "traps_back"), ("oil_taken", "oil_back")] {
        for (out, home) in (0..=3).flat_map(|out| (0..=3).map(move |home| (out, home))) {
            let record = filled(Blank::Trip, Vec::new(), &[(taken, whole(out)), (back, whole(home))]);
            let written = yard.book.record(&pen("aa", on), on, on, None, record).map(|_| ());
            let wanted = if home > out { Err(Refusal::Backwards { field: at(back) }) } else { Ok(()) };
            assert_eq!(written, wanted, "{back}: {home} of {out}");
        }
    }
    // One of the two alone is no contradiction, and the oil is named before the traps.
    let alone = filled(Blank::Trip, Vec::new(), &[("traps_back", whole(3))]);
    assert!(yard.book.record(&pen("aa", on), on, on, None, alone).is_ok());
    let both = ["traps_taken", "traps_back", "oil_taken", "oil_back"];
    let wrong = filled(
        Blank::Trip,
        Vec::new(),
        &[(both[0], whole(1)), (both[1], whole(2)), (both[2], whole(1)), (both[3], whole(2))],
    );
    let written = yard.book.record(&pen("aa", on), on, on, None, wrong);
    assert_eq!(written, Err(Refusal::Backwards { field: at("oil_back") }));
}

/// The units in the order of the field. Millilitres of a US fluid ounce: a 128th of 231 cubic inches of 25.4 mm (NIST
/// Handbook 44, appendix C); of an imperial one: a 160th of 4.54609 litres (Units of Measurement Regulations 1995).
#[test]
fn oil_is_read_in_the_unit_in_which_it_was_typed() {
    let us = 231.0 * 2.54 * 2.54 * 2.54 / 128.0;
    for (unit, millilitres) in [(0, 1.0), (1, 1000.0), (2, us), (3, 4546.09 / 160.0)] {
        let record = filled(Blank::Trip, Vec::new(), &[("oil_taken", Hundredths(250, unit))]);
        let found = record.volume("oil_taken").unwrap().millilitres();
        assert!((found - 2.5 * millilitres).abs() < 1e-6, "{unit}: {found}");
        assert_eq!(record.volume("oil_back"), None);
    }
    // More home than taken goes by the volumes and not by the numbers.
    let yard = Yard::new(&["1"], day("2026-07-01"));
    let on = day("2026-07-10");
    let trip = |taken, back| {
        let record = filled(Blank::Trip, Vec::new(), &[("oil_taken", taken), ("oil_back", back)]);
        yard.book.record(&pen("aa", on), on, on, None, record)
    };
    assert!(trip(Hundredths(100, 1), Hundredths(50_000, 0)).is_ok(), "500 mL of a litre");
    assert!(trip(Hundredths(50_000, 0), Hundredths(100, 1)).is_err(), "a litre of 500 mL");
    assert!(trip(Hundredths(100, 2), Hundredths(100, 3)).is_ok(), "an imperial ounce is the smaller");
    assert!(trip(Hundredths(100, 3), Hundredths(100, 2)).is_err());
}

#[test]
fn a_box_that_came_on_the_day_of_a_count_has_no_part_in_it() {
    let start = day("2026-05-01");
    let mut yard = three();
    // One box of two traps, so that a count of the whole hive is of that box.
    yard.id = other_yard(&mut yard, "aa", start);
    let (hive, kind, on) = (yard.hive("77"), yard.kind(), day("2026-05-11"));
    let on_it = [(BoxDepth::Medium, 2)];
    let entries = yard.book.boxes_on(&pen("aa", on), on, on, &hive, 1, &on_it, &kind, true).unwrap();
    yard.book.add(entries);
    yard.count("77", "2026-05-11", 6, None);
    let caught = all(&yard.book);
    assert_eq!((caught.len(), caught[0].each.len(), caught[0].trap_days), (1, 2, 20));
    assert_eq!(caught[0].since(), day("2026-05-01"));
    let [boxes, ..] = parts(&caught, &yard.id, Days { from: start, to: on });
    assert_eq!(boxes.each.iter().map(|(part, _)| part.clone()).collect::<Vec<_>>(), [Part::Box(1)]);
}

#[test]
fn beetles_out_of_traps_that_did_not_fish_are_no_catch() {
    let mut yard = three();
    // On the day the traps were filled, and twice on one day.
    yard.count("1", "2026-05-01", 4, None);
    let fished = |yard: &Yard| all(&yard.book).iter().map(|one| one.trap_days).collect::<Vec<_>>();
    assert_eq!(fished(&yard), [0]);
    yard.count("1", "2026-05-02", 4, None);
    assert_eq!(fished(&yard), [0, 4]);
    // Missing traps catch nothing, whatever is counted when they are back.
    yard.log("2", day("2026-05-01"), Did::Missing, (None, None));
    yard.count("2", "2026-05-20", 9, None);
    assert_eq!(fished(&yard), [0, 4, 0]);
}

#[test]
fn larvae_of_a_hive_that_has_ended_are_in_the_ground_where_it_stood() {
    for (larvae, on, stays) in [
        ("few", "2026-05-20", true),
        ("none", "2026-05-20", false),
        ("few", "2026-04-02", true),
        ("few", "2026-04-01", false),
    ] {
        let mut yard = Yard::new(&["1", "2"], day("2026-03-01"));
        yard.tells(on, "2", Blank::Look, &[("larvae", Word(larvae))]);
        let (hive, end) = (yard.hive("2"), day("2026-05-21"));
        let ended = yard.book.end_hive(&pen("aa", end), end, end, &hive, Ending::Gone, None).unwrap();
        yard.book.add(ended);
        let found = placed(yard.book.standing(), &yard.id, day("2026-06-01"));
        let hives: Vec<_> = found.iter().map(|placed| placed.hive.clone()).collect();
        let wanted = if stays { vec![yard.hive("1"), hive] } else { vec![yard.hive("1")] };
        assert_eq!(hives, wanted, "{larvae} on {on}");
    }
}

/// A yard of the demonstration beside a keeper's own: of each, one hive since 1 June.
fn own_and_demonstration() -> (Yard, Yard) {
    let own = Yard::new(&["1"], day("2026-06-01"));
    let mut both = Yard { book: own.book.clone(), id: own.id.clone(), start: own.start };
    let mill = other_yard(&mut both, "demo", day("2026-06-01"));
    assert!(mill.is_demo() && !own.id.is_demo());
    let invented = Yard { book: both.book, id: mill, start: own.start };
    (own, invented)
}

#[test]
fn combs_and_batches_of_the_demonstration_are_none_of_the_keepers_own() {
    let (own, invented) = own_and_demonstration();
    let (mut book, on): (Book, Day) = (invented.book.clone(), day("2026-06-05"));
    let comb =
        |hive, frames| filled(Blank::Comb, vec![hive], &[("frames", whole(frames)), ("to", Word("freezer"))]);
    let batch = |frames| filled(Blank::Freezer, Vec::new(), &[("frames", whole(frames))]);
    for (writer, yard, hive, frames, frozen) in
        [("aa", &own, own.hive("1"), 4, 3), ("demo", &invented, invented.hive("77"), 30, 10)]
    {
        for (home, record) in [(Some(&yard.id), comb(hive, frames)), (None, batch(frozen))] {
            let written = book.record(&pen(writer, on), on, on, home, record).unwrap();
            book.add(written);
        }
    }
    for (demo, hive, taken, frozen) in [(false, own.hive("1"), 4, 3), (true, invented.hive("77"), 30, 10)] {
        let found = chilled(book.standing(), 48, on, demo);
        assert_eq!((found.taken, found.waiting(), found.within.len()), (taken, taken - frozen, 1));
        assert_eq!(found.from, [(hive, on, taken - frozen)]);
    }
}

#[test]
fn what_the_demonstration_cost_is_nothing_of_the_keepers_own() {
    let (own, invented) = own_and_demonstration();
    let mut book = invented.book.clone();
    let on = day("2026-07-05");
    let bought = |euros| {
        let answers =
            [("item", Text("bait")), ("change", whole(1)), ("sort", Word("bait")), ("price", whole(euros))];
        filled(Blank::Stock, Vec::new(), &answers)
    };
    let harvest = |kilograms| {
        let mut record = filled(Blank::Harvest, Vec::new(), &[("honey", whole(kilograms))]);
        for (field, answer) in Blank::Harvest.fields().iter().zip(&mut record.answers) {
            if field.must && answer.is_none() {
                let at = beetle_almanac::book::record::ClockTime { day: on, minute: 480 };
                *answer = Some(if field.name.ends_with("off") || field.name.starts_with("taken") {
                    Answer::Time(at)
                } else {
                    Answer::Text("A".to_owned())
                });
            }
        }
        record
    };
    for (writer, yard, euros, honey) in [("aa", &own, 7, 20), ("demo", &invented, 500, 900)] {
        for (home, record) in [(None, bought(euros)), (Some(&yard.id), harvest(honey))] {
            let written = book.record(&pen(writer, on), on, on, home, record).unwrap();
            book.add(written);
        }
        let tag = if writer == "aa" { "1" } else { "77" };
        let mut of = Yard { book: book.clone(), id: yard.id.clone(), start: yard.start };
        let hive = of.hive(tag);
        let work = work_on(hive, Did::Replaced);
        let written = of.book.check(&pen(writer, on), on, on, work).unwrap();
        of.book.add(written);
        book = of.book;
    }
    for (yard, used_up, honey) in
        [(None, 7.0, 20.0), (Some(&own.id), 7.0, 20.0), (Some(&invented.id), 500.0, 900.0)]
    {
        let found = Spent::of(&book, yard, day("2026-07-01"), day("2026-07-10"), &names);
        assert_eq!(found.hive_days, 10, "{yard:?}");
        assert!((found.trips - 1.0).abs() < 1e-9 && (found.used_up - used_up).abs() < 1e-9, "{found:?}");
        assert_eq!(found.honey, Some(honey));
    }
}
