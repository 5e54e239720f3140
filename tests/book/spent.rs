//! What a season cost, from what was bought, the walks, and the days that hives and traps stood.

use crate::support::{Unicode, day, pen};
use crate::{Yard, trap, work_on};
use beetle_almanac::almanac::quantity::{Decimal, TypedVolume, VolumeUnit};
use beetle_almanac::almanac::trap::TrapKind;
use beetle_almanac::app::kinds::{kind_name, names};
use beetle_almanac::app::load::store::{in_store, room};
use beetle_almanac::book::entry::{Did, Ending, What};
use beetle_almanac::book::keeper::Keeper;
use beetle_almanac::book::record::{Answer, Ask, Blank, Record};
use beetle_almanac::book::spent::{Missing, Spent};

/// Fills in the fields of `blank` that are named, numbers with the first unit.
fn write(yard: &mut Yard, blank: Blank, on: &str, fields: &[(&str, &str)]) {
    let mut record = Record::empty(blank, Vec::new());
    for (field, answer) in blank.fields().iter().zip(&mut record.answers) {
        let Some((_, text)) = fields.iter().find(|(name, _)| *name == field.name) else { continue };
        *answer = Some(match field.ask {
            Ask::Word(words) => {
                Answer::Word(u8::try_from(words.iter().position(|word| word == text).unwrap()).unwrap())
            }
            Ask::Number { .. } => Answer::Number(Decimal::whole(text.parse().unwrap()), 0),
            Ask::Time => Answer::Time(beetle_almanac::book::record::ClockTime { day: day(on), minute: 480 }),
            _ => Answer::Text((*text).to_owned()),
        });
    }
    let of = matches!(blank, Blank::Harvest | Blank::YardFacts).then(|| yard.id.clone());
    let entries = yard.book.record(&pen("aa", day(on)), day(on), day(on), of.as_ref(), record).unwrap();
    yard.book.add(entries);
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() < 1e-9
}

/// Ten days from 1 to 10 July.
fn spent(yard: &Yard) -> Spent {
    Spent::of(&yard.book, None, day("2026-07-01"), day("2026-07-10"), &names)
}

#[test]
fn hives_count_the_days_they_lived_and_traps_those_they_fished() {
    let mut yard = Yard::new(&["1", "2"], day("2026-06-20"));
    let found = spent(&yard);
    assert_eq!((found.days, found.hive_days, found.trap_days), (10, 20, 80));
    // Four days of the second hive, six of its traps at work in neither.
    let on = day("2026-07-05");
    let hive = yard.hive("2");
    let entries = yard.book.end_hive(&pen("aa", on), on, on, &hive, Ending::Dead, None).unwrap();
    yard.book.add(entries);
    assert_eq!((spent(&yard).hive_days, spent(&yard).trap_days), (14, 56));
    // All traps of the first missing from the 8th: seven of ten days.
    yard.log("1", day("2026-07-08"), Did::Missing, (None, None));
    assert_eq!((spent(&yard).hive_days, spent(&yard).trap_days), (14, 44));
    let later = Spent::of(&yard.book, Some(&yard.id), day("2026-07-06"), day("2026-07-10"), &names);
    assert_eq!((later.hive_days, later.trap_days), (5, 8));
}

#[test]
fn what_was_bought_on_the_first_day_or_the_last_is_spent_within_the_days() {
    let mut yard = Yard::new(&["1"], day("2026-06-20"));
    for (on, price) in
        [("2026-06-30", "1"), ("2026-07-01", "20"), ("2026-07-10", "300"), ("2026-07-11", "4000")]
    {
        let oil = [("item", "oil"), ("change", "1"), ("sort", "oil"), ("price", price)];
        write(&mut yard, Blank::Stock, on, &oil);
    }
    assert!(near(spent(&yard).used_up, 320.0));
}

/// Worked by hand: 60 on two hives over all their ten days is 30 for each, however long the days asked about; with a third
/// that came five days later, 60 ÷ 2.5 = 24.
#[test]
fn her_first_year_is_shared_over_the_days_since_her_first_hive_was_in_care() {
    let mut yard = Yard::new(&["1", "2"], day("2026-07-01"));
    let oil = [("item", "oil"), ("change", "2"), ("sort", "oil"), ("price", "60")];
    write(&mut yard, Blank::Stock, "2026-07-02", &oil);
    let of = |yard: &Yard, from| Spent::of(&yard.book, None, day(from), day("2026-07-10"), &names);
    let year = of(&yard, "2025-07-11");
    assert_eq!((year.since, year.days, year.hive_days), (Some(day("2026-07-01")), 10, 20));
    assert!(near(year.cost().hive_seasons, 2.0) && near(year.cost().each_hive.unwrap(), 30.0));
    // Never before the first day asked about.
    let late = of(&yard, "2026-07-06");
    assert_eq!((late.since, late.days, late.hive_days), (None, 5, 10));
    // A later hive counts its days alone, and where no hive was in care all days stand.
    let on = day("2026-07-06");
    let kind = beetle_almanac::book::write::KindChoice::Known(yard.kind());
    let plan = crate::plan(&["3"], &[(beetle_almanac::almanac::stack::BoxDepth::Deep, 2)], on);
    let more = yard.book.add_hives(&pen("aa", on), &yard.id, &kind, &plan, &Unicode).unwrap();
    yard.book.add(more);
    let year = of(&yard, "2025-07-11");
    assert_eq!((year.days, year.hive_days), (10, 25));
    assert!(near(year.cost().each_hive.unwrap(), 24.0));
    let before = Spent::of(&yard.book, None, day("2026-06-01"), day("2026-06-30"), &names);
    assert_eq!((before.since, before.days, before.hive_days), (None, 30, 0));
}

#[test]
fn what_was_bought_is_spent_and_what_lasts_is_spent_over_its_seasons() {
    let mut yard = Yard::with(&["1"], day("2026-06-20"), &TrapKind { reusable: true, ..trap() });
    let stock = |yard: &mut Yard, on, fields: &[(&str, &str)]| write(yard, Blank::Stock, on, fields);
    stock(&mut yard, "2026-07-02", &[("item", "oil"), ("change", "2"), ("sort", "oil"), ("price", "12")]);
    stock(&mut yard, "2026-07-02", &[("item", "Slim"), ("change", "12"), ("sort", "trap"), ("price", "60")]);
    stock(&mut yard, "2025-09-02", &[("item", "Slim"), ("change", "12"), ("sort", "trap"), ("price", "30")]);
    stock(&mut yard, "2026-07-03", &[("item", "bait"), ("change", "1"), ("sort", "bait")]);
    stock(&mut yard, "2026-05-03", &[("item", "oil"), ("change", "1"), ("sort", "oil"), ("price", "99")]);
    let found = spent(&yard);
    assert!(near(found.used_up, 12.0) && near(found.durable, 0.0));
    assert_eq!(found.missing, [Missing::Prices(1), Missing::TrapSeasons, Missing::Colony]);
    write(&mut yard, Blank::Costs, "2026-07-01", &[("trap_seasons", "3")]);
    let found = spent(&yard);
    // Nine and ten days of three years' wear.
    let worn = 60.0 * 9.0 / 1095.0 + 30.0 * 10.0 / 1095.0;
    assert!(near(found.durable, worn), "{found:?}");
    // Sheets that follow each other add up to one over all of it: what is left of the older traps, and all of the newer.
    let part =
        |from: &str, to: &str| Spent::of(&yard.book, Some(&yard.id), day(from), day(to), &names).durable;
    let parts = [("2026-06-20", "2026-08-31"), ("2026-09-01", "2026-12-31"), ("2027-01-01", "2029-12-31")];
    let sum: f64 = parts.iter().map(|(from, to)| part(from, to)).sum();
    let left = f64::from(1095 - day("2026-06-20").days_since(day("2025-09-02")));
    assert!(near(sum, 60.0 + 30.0 * left / 1095.0) && near(part("2026-06-20", "2029-12-31"), sum), "{sum}");
    assert_eq!(found.missing, [Missing::Prices(1), Missing::Colony]);
    assert!(near(found.cost().total, 12.0 + worn));
    // A trap that is thrown away is used up.
    let mut yard = Yard::new(&["1"], day("2026-06-20"));
    stock(&mut yard, "2026-07-02", &[("item", " slim"), ("change", "12"), ("sort", "trap"), ("price", "60")]);
    assert!(near(spent(&yard).used_up, 60.0));
}

/// The letters of the page, as in the store: an umlaut and its capital are one.
#[test]
fn a_trap_is_thrown_away_whatever_the_capitals_of_its_name() {
    let mut yard =
        Yard::with(&["1"], day("2026-06-20"), &TrapKind { name: "K\u{e4}ferfalle".to_owned(), ..trap() });
    let bought = [("item", " K\u{c4}FERFALLE"), ("change", "12"), ("sort", "trap"), ("price", "60")];
    write(&mut yard, Blank::Stock, "2026-07-02", &bought);
    assert!(near(spent(&yard).used_up, 60.0));
}

/// Two kinds of one word, the second thrown away too or used again: what lies in store as one of them costs what that one does.
#[test]
fn what_lies_in_store_as_a_kind_costs_what_that_kind_does() {
    for (name, retired, in_store_of, used_up) in [
        // The word and what it holds, as the store names them.
        ("Slim, 20\u{a0}mL", false, Some(0), 60.0),
        (" slim, 35\u{a0}ML", false, Some(1), 0.0),
        // The word alone is that of the first, or of the one that is still offered.
        ("Slim", false, Some(0), 60.0),
        ("Slim", true, Some(1), 0.0),
        ("Slim, 50\u{a0}mL", false, None, 0.0),
    ] {
        let on = day("2026-06-20");
        let mut yard = Yard::new(&["1"], on);
        let capacity = TypedVolume::new(Decimal::whole(35), VolumeUnit::Millilitre).ok();
        let second = What::Kind(TrapKind { reusable: true, capacity, ..trap() });
        let gone = What::KindRetired { kind: yard.kind() };
        for what in [Some(second), retired.then_some(gone)].into_iter().flatten() {
            let entries = yard.book.about_keeper(&pen("aa", on), on, what).unwrap();
            yard.book.add(entries);
        }
        let bought = [("item", name), ("change", "12"), ("sort", "trap"), ("price", "60")];
        write(&mut yard, Blank::Stock, "2026-07-02", &bought);
        let found = spent(&yard);
        assert!(near(found.used_up, used_up), "{name} {found:?}");
        assert_eq!(found.missing.contains(&Missing::TrapSeasons), near(used_up, 0.0), "{name}");
        let standing = yard.book.standing();
        let store = room(standing, std::slice::from_ref(&yard.id), day("2026-07-10"), &[]);
        for (at, kind) in standing.kinds.keys().enumerate() {
            let held = in_store(standing, &store, kind).traps();
            assert_eq!(
                held,
                if in_store_of == Some(at) { 12 } else { 0 },
                "{name} {}",
                kind_name(standing, kind)
            );
        }
    }
}

/// A screen of one season bought on 1 July of the year before is worn out on 30 June; of one bought a day later a day is left.
#[test]
fn what_is_worn_out_when_the_days_begin_is_in_none_of_them() {
    let mut yard = Yard::new(&["1"], day("2026-06-20"));
    write(&mut yard, Blank::Costs, "2025-07-01", &[("trap_seasons", "1")]);
    let screen = [("item", "mesh"), ("change", "1"), ("sort", "screen")];
    write(&mut yard, Blank::Stock, "2025-07-01", &screen);
    assert_eq!(spent(&yard).missing, [Missing::Colony]);
    write(&mut yard, Blank::Stock, "2025-07-02", &screen);
    assert_eq!(spent(&yard).missing, [Missing::Prices(1), Missing::Colony]);
}

#[test]
fn a_gift_costs_nothing_and_is_told_apart_from_a_price_that_nobody_wrote_down() {
    let mut yard = Yard::with(&["1"], day("2026-06-20"), &TrapKind { reusable: true, ..trap() });
    let bought = |yard: &mut Yard, item, sort, price: Option<&str>| {
        let mut fields = vec![("item", item), ("change", "1"), ("sort", sort)];
        fields.extend(price.map(|price| ("price", price)));
        write(yard, Blank::Stock, "2026-07-02", &fields);
    };
    for (item, sort) in [("oil", "oil"), ("Slim", "trap")] {
        bought(&mut yard, item, sort, Some("0"));
    }
    let found = spent(&yard);
    assert!(near(found.used_up, 0.0) && near(found.durable, 0.0));
    // Nor need anybody say how many seasons a trap lasts that cost nothing.
    assert_eq!(found.missing, [Missing::Colony]);
    bought(&mut yard, "oil", "oil", None);
    bought(&mut yard, "oil", "oil", Some("12"));
    let found = spent(&yard);
    assert!(near(found.used_up, 12.0));
    assert_eq!(found.missing, [Missing::Prices(1), Missing::Colony]);
}

#[test]
fn two_walks_cost_two_trips_and_honey_and_a_colony_say_what_that_means() {
    let mut yard = Yard::new(&["1", "2"], day("2026-06-20"));
    for on in ["2026-07-03", "2026-07-09", "2026-07-11"] {
        for tag in ["1", "2"] {
            yard.log(tag, day(on), Did::Replaced, (None, Some(50)));
        }
    }
    let found = spent(&yard);
    assert!(near(found.trips, 2.0));
    assert_eq!(found.missing, [Missing::Trip, Missing::Hour, Missing::Colony]);
    write(&mut yard, Blank::Costs, "2026-07-01", &[("trip", "25"), ("hour", "30")]);
    write(&mut yard, Blank::YardFacts, "2026-07-01", &[("travel", "40"), ("set_up", "20")]);
    write(&mut yard, Blank::Harvest, "2026-07-06", &[("bees_off", ""), ("honey", "20")]);
    write(&mut yard, Blank::Harvest, "2026-07-07", &[("bees_off", "")]);
    let on = day("2026-07-01");
    let worth = Keeper { colony_value: Some(Decimal::whole(110)), ..Keeper::default() };
    let entries = yard.book.about_keeper(&pen("aa", on), on, What::Keeper(worth)).unwrap();
    yard.book.add(entries);
    let found = spent(&yard);
    // Nobody knows how long a hive takes; two ways and settings up are two hours.
    assert_eq!(found.missing, [Missing::Minutes, Missing::Honey(1)]);
    assert!(near(found.travel, 50.0) && near(found.hours, 2.0) && near(found.work, 60.0));
    let cost = found.cost();
    assert!(near(cost.total, 110.0) && near(cost.hive_seasons, 2.0) && near(cost.each_hive.unwrap(), 55.0));
    assert!(near(cost.each_trap_day.unwrap(), 110.0 / 80.0) && near(cost.each_kg.unwrap(), 5.5));
    assert!(near(cost.break_even.unwrap(), 1.0));
}

#[test]
fn a_day_in_two_yards_is_half_a_trip_of_each_and_oil_goes_by_their_hives() {
    let mut yard = Yard::new(&["1"], day("2026-06-20"));
    let on = day("2026-06-20");
    let plan = crate::plan(&["11", "12", "13"], &[(beetle_almanac::almanac::stack::BoxDepth::Deep, 2)], on);
    let kind = beetle_almanac::book::write::KindChoice::Known(yard.kind());
    let entries = yard.book.keep_yard(&pen("aa", on), "Mill", "Europe/Berlin", &kind, &plan).unwrap();
    yard.book.add(entries);
    let mill = yard.book.standing().yards.keys().find(|id| **id != yard.id).unwrap().clone();
    yard.log("1", day("2026-07-03"), Did::Replaced, (None, Some(50)));
    let other = yard.book.standing().hives_of(&mill, true).next().unwrap().0.clone();
    let work = work_on(other, Did::Replaced);
    let then = day("2026-07-03");
    let entries = yard.book.check(&pen("aa", then), then, then, work).unwrap();
    yard.book.add(entries);
    write(
        &mut yard,
        Blank::Stock,
        "2026-07-02",
        &[("item", "oil"), ("change", "2"), ("sort", "oil"), ("price", "12")],
    );
    let of = |yard_id| Spent::of(&yard.book, Some(yard_id), day("2026-07-01"), day("2026-07-10"), &names);
    let (home, away) = (of(&yard.id), of(&mill));
    assert!(home.shared && away.shared && !spent(&yard).shared);
    assert!(near(home.trips, 0.5) && near(away.trips, 0.5) && near(spent(&yard).trips, 1.0));
    assert!(near(home.used_up, 3.0) && near(away.used_up, 9.0) && near(spent(&yard).used_up, 12.0));
    // A day on which nobody went to the other yard is shared with none.
    yard.log("1", day("2026-07-06"), Did::Replaced, (None, Some(50)));
    let alone = Spent::of(&yard.book, Some(&yard.id), day("2026-07-04"), day("2026-07-10"), &names);
    assert!(near(alone.trips, 1.0) && !alone.shared);
}

#[test]
fn she_bought_oil_before_her_first_hive_stood_and_it_was_spent_all_the_same() {
    let mut yard = Yard::with(&["1"], day("2026-07-20"), &TrapKind { reusable: true, ..trap() });
    let stock = |yard: &mut Yard, fields: &[(&str, &str)]| write(yard, Blank::Stock, "2026-07-02", fields);
    stock(&mut yard, &[("item", "oil"), ("change", "2"), ("sort", "oil"), ("price", "30")]);
    let found = spent(&yard);
    assert!(near(found.used_up, 30.0), "{found:?}");
    assert_eq!((found.hive_days, &found.missing[..]), (0, &[Missing::Colony][..]));
    let of =
        |yard: &Yard| Spent::of(&yard.book, Some(&yard.id), day("2026-07-01"), day("2026-07-10"), &names);
    let own = of(&yard);
    assert!(near(own.used_up, 0.0));
    assert_eq!(own.missing, [Missing::Share, Missing::Colony], "which part is that yard's nobody knows");
    // So are traps that last, whose seasons come first.
    let mut yard = Yard::with(&["1"], day("2026-07-20"), &TrapKind { reusable: true, ..trap() });
    stock(&mut yard, &[("item", "Slim"), ("change", "12"), ("sort", "trap"), ("price", "73")]);
    assert_eq!(of(&yard).missing, [Missing::TrapSeasons, Missing::Colony]);
    write(&mut yard, Blank::Costs, "2026-07-01", &[("trap_seasons", "1")]);
    assert_eq!(of(&yard).missing, [Missing::Share, Missing::Colony]);
    assert!(near(of(&yard).durable, 0.0) && near(spent(&yard).durable, 73.0 * 9.0 / 365.0));
    // A yard with hives in those days bears its part.
    let later = Spent::of(&yard.book, Some(&yard.id), day("2026-07-02"), day("2026-07-20"), &names);
    assert_eq!((later.hive_days, &later.missing[..]), (1, &[Missing::Colony][..]));
    assert!(near(later.durable, 73.0 * 19.0 / 365.0));
}

#[test]
fn a_hive_she_worked_on_three_times_a_day_costs_its_minutes_once_and_again_the_next_day() {
    let tags = ["1", "2", "3", "4", "5", "6"];
    let mut yard = Yard::new(&tags, day("2026-06-20"));
    let at = |yard: &mut Yard, tag: &str, on: &str, minutes: u32| {
        let on = day(on);
        let at = beetle_almanac::almanac::day::Stamp::new(on, 9 * 3600 + minutes * 60, 120).unwrap();
        let pen = beetle_almanac::book::write::Pen { at, ..pen("aa", on) };
        let work = work_on(yard.hive(tag), Did::ToppedUp);
        let entries = yard.book.check(&pen, on, on, work).unwrap();
        yard.book.add(entries);
    };
    for (nth, tag) in (0..).zip(tags) {
        at(&mut yard, tag, "2026-07-03", nth * 4);
    }
    // Six hives of four minutes each.
    assert!(near(spent(&yard).hours, 0.4));
    // The way there is known and setting up is not: the hours are too few until both are.
    let mut known = Yard { book: yard.book.clone(), id: yard.id.clone(), start: yard.start };
    write(&mut known, Blank::Costs, "2026-07-01", &[("hour", "30"), ("trip", "1")]);
    write(&mut known, Blank::YardFacts, "2026-07-01", &[("travel", "40")]);
    assert_eq!(spent(&known).missing, [Missing::Minutes, Missing::Colony]);
    write(&mut known, Blank::YardFacts, "2026-07-02", &[("travel", "40"), ("set_up", "20")]);
    assert_eq!(spent(&known).missing, [Missing::Colony]);
    for (tag, minutes) in [("1", 120), ("2", 180), ("1", 240)] {
        at(&mut yard, tag, "2026-07-03", minutes);
    }
    assert!(near(spent(&yard).hours, 0.4), "{}", spent(&yard).hours);
    at(&mut yard, "1", "2026-07-04", 0);
    assert!(near(spent(&yard).hours, 7.0 * 4.0 / 60.0));
}
