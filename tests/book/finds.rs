//! Finds: from what looks told to days on which young beetles may come.

use crate::Yard;
use crate::support::{day, pen};
use beetle_almanac::almanac::climate::KNOWN;
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::sighting::Seen;
use beetle_almanac::almanac::stage::{Edge, Strength, Why};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::typed::decimal;
use beetle_almanac::book::entry::Ending;
use beetle_almanac::book::finds::{UnderWay, finds, strength, under_way};
use beetle_almanac::book::ground::Ground;
use beetle_almanac::book::record::{About, Answer, Ask, Blank, Record};

/// Puts `word` into the field `name`.
fn say(record: &mut Record, name: &str, word: &str) {
    let (at, field) = record.blank.fields().iter().enumerate().find(|(_, field)| field.name == name).unwrap();
    record.answers[at] = Some(match field.ask {
        Ask::Word(words) => {
            Answer::Word(u8::try_from(words.iter().position(|known| *known == word).unwrap()).unwrap())
        }
        Ask::Words(words) => Answer::Words(1 << words.iter().position(|known| *known == word).unwrap()),
        Ask::Count => Answer::Count(CountRange::exact(word.parse().unwrap())),
        _ => Answer::Number(decimal(word).unwrap(), 0),
    });
}

fn write(yard: &mut Yard, on: &str, blank: Blank, tag: &str, answers: &[(&str, &str)]) {
    let hives = if blank.about() == About::Hive { vec![yard.hive(tag)] } else { Vec::new() };
    let mut record = Record::empty(blank, hives);
    for (name, word) in answers {
        say(&mut record, name, word);
    }
    let written = yard.book.record(&pen("aa", day(on)), day(on), day(on), Some(&yard.id), record).unwrap();
    yard.book.add(written);
}

/// A yard in the climate of Greensboro.
fn yard() -> Yard {
    let mut yard = Yard::new(&["7", "8"], day("2026-05-01"));
    let climate = &KNOWN[0];
    let mut answers: Vec<(String, String)> = Vec::new();
    for (head, months) in [("high_", climate.highs), ("low_", climate.lows)] {
        for (month, degrees) in (1..).zip(months) {
            answers.push((format!("{head}{month}"), degrees.to_string()));
        }
    }
    let answers: Vec<(&str, &str)> = answers.iter().map(|(name, text)| (&**name, &**text)).collect();
    write(&mut yard, "2026-05-02", Blank::Climate, "", &answers);
    yard
}

fn now(yard: &Yard, today: &str) -> Vec<UnderWay> {
    let (standing, today) = (yard.book.standing(), day(today));
    let ground = Ground::of(standing, &yard.id, today).unwrap();
    under_way(standing, &yard.id, today, &ground, &ground.weather(today))
}

fn adults(way: &UnderWay) -> [Day; 3] {
    way.dates.adults.map(|outcome| outcome.unwrap().day)
}

#[test]
fn larvae_crawl_out_of_the_entrance_and_three_days_stand_in_the_book() {
    let mut yard = yard();
    write(
        &mut yard,
        "2026-07-10",
        Blank::Look,
        "7",
        &[("larvae", "many"), ("larvae_size", "full_grown"), ("entrance", "larvae_leaving")],
    );
    let ways = now(&yard, "2026-07-10");
    let [way] = &*ways else { panic!("{ways:?}") };
    let [earliest, likely, latest] = adults(way);
    // The soil there is about 26 °C in July: 20.7 to 22.8 days by the sets, some have left three days before.
    assert!(
        earliest > day("2026-07-20") && earliest < likely && likely < latest,
        "{earliest} {likely} {latest}"
    );
    assert!(latest < day("2026-08-15"), "{latest}");
    assert_eq!(way.since(), Some(day("2026-07-10")));
    assert_eq!(way.young(), Some(earliest));
    // Once the last can be out nothing is under way.
    assert!(now(&yard, &latest.plus(1).to_string()).is_empty());
    assert_eq!(now(&yard, &latest.to_string()).len(), 1);
}

#[test]
fn a_yard_without_temperatures_has_no_dates() {
    let yard = Yard::new(&["7"], day("2026-05-01"));
    assert_eq!(Ground::of(yard.book.standing(), &yard.id, day("2026-07-10")), None);
}

#[test]
fn the_ground_is_dry_until_it_rains() {
    let mut yard = yard();
    write(&mut yard, "2026-07-01", Blank::Soil, "", &[("moisture", "dry")]);
    write(&mut yard, "2026-07-10", Blank::Look, "7", &[("larvae", "none"), ("entrance", "larvae_leaving")]);
    let held = now(&yard, "2026-07-12");
    assert_eq!(held[0].dates.adults.map(Result::err), [Some(Why::DrySoil); 3]);
    write(&mut yard, "2026-08-01", Blank::Rain, "", &[]);
    let freed = now(&yard, "2026-08-01");
    let [earliest, _, latest] = adults(&freed[0]);
    assert!(earliest > day("2026-08-12") && latest < day("2026-09-05"), "{earliest} {latest}");
    let ground = Ground::of(yard.book.standing(), &yard.id, day("2026-08-01")).unwrap();
    assert_eq!((ground.dry_since(), ground.dry.len()), (None, 1));
}

#[test]
fn a_look_that_finds_none_ends_what_had_not_left() {
    let mut yard = yard();
    write(&mut yard, "2026-07-10", Blank::Look, "7", &[("larvae", "few"), ("larvae_size", "tiny")]);
    assert_eq!(now(&yard, "2026-07-10").len(), 1);
    write(&mut yard, "2026-07-11", Blank::Look, "7", &[("larvae", "none")]);
    assert!(now(&yard, "2026-07-11").is_empty(), "they were taken out before any could leave");
    // The other hive goes its own way.
    write(&mut yard, "2026-07-11", Blank::Look, "8", &[("larvae", "few")]);
    assert_eq!(now(&yard, "2026-07-11").len(), 1);
}

#[test]
fn a_dead_out_ends_the_comb_and_not_the_ground() {
    let mut yard = yard();
    write(&mut yard, "2026-07-01", Blank::Look, "7", &[("larvae", "many"), ("entrance", "larvae_leaving")]);
    let before = adults(&now(&yard, "2026-07-01")[0]);
    let ended = yard.book.end_hive(
        &pen("aa", day("2026-07-02")),
        day("2026-07-02"),
        day("2026-07-02"),
        &yard.hive("7"),
        Ending::Dead,
        None,
    );
    yard.book.add(ended.unwrap());
    let after = adults(&now(&yard, "2026-07-02")[0]);
    assert_eq!(before[0], after[0], "those in the ground come all the same");
    assert!(after[2] <= before[2]);
}

#[test]
fn finds_of_one_brood_belong_together_and_the_next_brood_stands_by_itself() {
    let mut yard = yard();
    for on in ["2026-06-01", "2026-06-08"] {
        write(&mut yard, on, Blank::Look, "7", &[("larvae", "few"), ("larvae_size", "full_grown")]);
    }
    let ways = now(&yard, "2026-06-09");
    assert_eq!(ways.len(), 1);
    assert_eq!(ways[0].finds.len(), 2);
    write(&mut yard, "2026-08-20", Blank::Look, "7", &[("larvae", "few"), ("larvae_size", "full_grown")]);
    let ways = now(&yard, "2026-08-20");
    assert_eq!(ways.len(), 1, "the first brood is over");
    assert_eq!(ways[0].since(), Some(day("2026-08-20")));
}

#[test]
fn adults_alone_are_a_find_until_somebody_looks_again() {
    let mut yard = yard();
    write(&mut yard, "2026-07-01", Blank::Look, "7", &[("larvae", "none"), ("adults", "12")]);
    let seen = |yard: &Yard, today| {
        let found = finds(yard.book.standing(), &yard.id, day(today));
        found.iter().map(|find| (find.sighting.seen, find.sighting.day)).collect::<Vec<_>>()
    };
    assert_eq!(seen(&yard, "2026-07-01"), [(Seen::AdultsOnly, day("2026-07-01"))]);
    let ways = now(&yard, "2026-07-01");
    assert!(ways[0].adults_only());
    // Egg and larva take nine days in a warm nest: look again before the first can leave.
    let leaving = Edge::Earliest.of(ways[0].dates.leaving.unwrap()).unwrap().day;
    assert!((day("2026-07-05")..=day("2026-07-10")).contains(&leaving), "{leaving}");
    assert_eq!(ways[0].leaving(), Some(leaving));
    write(&mut yard, "2026-07-08", Blank::Look, "7", &[("larvae", "none"), ("adults", "3")]);
    assert_eq!(seen(&yard, "2026-07-08"), [(Seen::AdultsOnly, day("2026-07-08"))]);
    write(&mut yard, "2026-07-15", Blank::Look, "7", &[("larvae", "none")]);
    assert_eq!(seen(&yard, "2026-07-15"), []);
}

#[test]
fn bees_that_cover_half_of_the_comb_keep_half_of_it_warm() {
    let mut yard = yard();
    let hive = yard.hive("7");
    let of = |yard: &Yard| strength(yard.book.standing(), &hive, &yard.book.standing().hives[&hive]);
    assert_eq!(of(&yard), Strength::Unknown);
    write(&mut yard, "2026-07-01", Blank::Look, "7", &[("larvae", "none"), ("frames_of_bees", "10")]);
    // Two boxes of ten frames, as far as anybody said.
    assert_eq!(of(&yard), Strength::Cover(0.5));
    write(&mut yard, "2026-07-02", Blank::HiveFacts, "7", &[("frames", "8")]);
    assert_eq!(of(&yard), Strength::Cover(10.0 / 16.0));
}

#[test]
fn a_probe_moves_the_dates_and_says_by_how_much() {
    let mut yard = yard();
    let today = day("2026-07-10");
    let soil = |yard: &Yard| Ground::of(yard.book.standing(), &yard.id, today).unwrap().soil(today);
    let before = soil(&yard);
    assert_eq!(before.readings(), 0);
    for on in ["2026-07-03", "2026-07-06", "2026-07-09"] {
        write(
            &mut yard,
            on,
            Blank::Soil,
            "",
            &[("moisture", "moist"), ("temperature", "22"), ("depth", "10")],
        );
    }
    let after = soil(&yard);
    assert_eq!(after.readings(), 3);
    assert!(after.offset() < -1.0 && after.give() < before.give(), "{} {}", after.offset(), after.give());
}
