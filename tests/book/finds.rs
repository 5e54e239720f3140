//! Finds: from what looks told to days on which young beetles may come.

use crate::support::{Unicode, day, pen};
use crate::{Yard, plan};
use beetle_almanac::almanac::climate::KNOWN;
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::sighting::Seen;
use beetle_almanac::almanac::soil::{Shade, SoilKind};
use beetle_almanac::almanac::stack::{BoxDepth, HiveSize};
use beetle_almanac::almanac::stage::{Dry, Edge, Strength, Why};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::typed::decimal;
use beetle_almanac::book::entry::Ending;
use beetle_almanac::book::finds::{UnderWay, finds, strength, under_way};
use beetle_almanac::book::ground::Ground;
use beetle_almanac::book::record::{About, Answer, Ask, Blank, Record};
use beetle_almanac::book::write::{HivePlan, KindChoice};
use beetle_almanac::papers::calendar::{Task, yard_days};

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
    under_way(standing, &yard.id, today, &ground, &ground.weather(today), None)
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
    // It stays until the last of them can have laid.
    let laid = Edge::Latest.of(way.dates.eggs).unwrap().day;
    assert!(laid > latest);
    assert_eq!(now(&yard, &laid.to_string()).len(), 1);
    assert!(now(&yard, &laid.plus(1).to_string()).is_empty());
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

fn end(yard: &mut Yard, tag: &str, on: &str, how: Ending) {
    let ended = yard.book.end_hive(&pen("aa", day(on)), day(on), day(on), &yard.hive(tag), how, None);
    yard.book.add(ended.unwrap());
}

#[test]
fn a_dead_hive_leaves_its_comb_to_the_larvae_until_somebody_burns_it() {
    let mut yard = yard();
    write(&mut yard, "2026-07-10", Blank::Look, "7", &[("larvae", "many"), ("larvae_size", "tiny")]);
    let before = adults(&now(&yard, "2026-07-10")[0]);
    end(&mut yard, "7", "2026-07-11", Ending::Dead);
    write(&mut yard, "2026-07-11", Blank::DeadOut, "7", &[("causes", "beetles"), ("frames_spoilt", "8")]);
    let after = now(&yard, "2026-07-11");
    // Without bees the comb is as warm as the air: they take longer, and come all the same.
    assert!(adults(&after[0])[1] > before[1]);
    // They are in the calendar of a hive that is no longer walked to.
    let items = |yard: &Yard, today| {
        let days = yard_days(yard.book.standing(), std::slice::from_ref(&yard.id), day(today));
        days.iter().flat_map(|of| &of.items).filter(|item| item.task == Task::Young).count()
    };
    assert_eq!(items(&yard, "2026-07-11"), 1);
    write(&mut yard, "2026-07-12", Blank::Comb, "7", &[("frames", "8"), ("to", "burned"), ("why", "larvae")]);
    assert!(now(&yard, "2026-07-12").is_empty(), "none had left by then");
    assert_eq!(items(&yard, "2026-07-12"), 0);
}

#[test]
fn a_hive_that_was_sold_is_looked_after_by_somebody_else() {
    let mut yard = yard();
    write(&mut yard, "2026-07-10", Blank::Look, "7", &[("larvae", "few"), ("larvae_size", "tiny")]);
    end(&mut yard, "7", "2026-07-11", Ending::Sold);
    assert!(now(&yard, "2026-07-11").is_empty());
}

#[test]
fn a_split_takes_larvae_along_and_leaves_some() {
    let mut yard = yard();
    write(&mut yard, "2026-07-10", Blank::Look, "7", &[("larvae", "few"), ("larvae_size", "tiny")]);
    let into = yard.hive("8");
    let mut split = Record::empty(Blank::Split, vec![yard.hive("7")]);
    let at = Blank::Split.fields().iter().position(|field| field.name == "into").unwrap();
    split.answers[at] = Some(Answer::Hive(into.clone()));
    let on = day("2026-07-11");
    let written = yard.book.record(&pen("aa", on), on, on, Some(&yard.id), split).unwrap();
    yard.book.add(written);
    let ways = now(&yard, "2026-07-11");
    let hives: Vec<_> = ways.iter().map(|way| way.hive.clone()).collect();
    assert_eq!(hives, [yard.hive("7"), into]);
    // A look that finds none speaks for its own hive alone.
    write(&mut yard, "2026-07-12", Blank::Look, "7", &[("larvae", "none")]);
    let ways = now(&yard, "2026-07-12");
    assert_eq!((ways.len(), ways[0].hive == yard.hive("8")), (1, true));
}

fn split(yard: &mut Yard, from: &str, into: &str, on: &str) {
    let mut split = Record::empty(Blank::Split, vec![yard.hive(from)]);
    let at = Blank::Split.fields().iter().position(|field| field.name == "into").unwrap();
    split.answers[at] = Some(Answer::Hive(yard.hive(into)));
    let written = yard.book.record(&pen("aa", day(on)), day(on), day(on), Some(&yard.id), split).unwrap();
    yard.book.add(written);
}

/// The days on which finds in hive `tag` ended, as it is known at the end of July.
fn ended(yard: &Yard, tag: &str) -> Vec<Option<Day>> {
    let hive = yard.hive(tag);
    let all = finds(yard.book.standing(), &yard.id, day("2026-07-31"));
    all.iter().filter(|find| find.hive == hive).map(|find| find.sighting.ended).collect()
}

#[test]
fn what_had_ended_before_a_split_goes_nowhere_and_what_goes_is_not_ended_by_what_was_before() {
    let tiny = [("larvae", "few"), ("larvae_size", "tiny")];
    let none = [("larvae", "none")];
    let mut clean = yard();
    write(&mut clean, "2026-07-01", Blank::Look, "7", &tiny);
    write(&mut clean, "2026-07-08", Blank::Look, "7", &none);
    split(&mut clean, "7", "8", "2026-07-10");
    assert_eq!((ended(&clean, "7"), ended(&clean, "8")), (vec![Some(day("2026-07-08"))], vec![]));
    // Hive 8 was clean before the comb came.
    let mut given = yard();
    write(&mut given, "2026-07-01", Blank::Look, "7", &tiny);
    write(&mut given, "2026-07-02", Blank::Look, "8", &none);
    split(&mut given, "7", "8", "2026-07-03");
    assert_eq!(ended(&given, "8"), [None]);
    write(&mut given, "2026-07-05", Blank::Look, "8", &none);
    assert_eq!(ended(&given, "8"), [Some(day("2026-07-05"))]);
}

#[test]
fn comb_that_is_frozen_on_the_day_of_the_look_ends_what_the_look_saw() {
    let mut yard = yard();
    write(&mut yard, "2026-07-10", Blank::Look, "7", &[("larvae", "many"), ("larvae_size", "tiny")]);
    write(
        &mut yard,
        "2026-07-10",
        Blank::Comb,
        "7",
        &[("frames", "10"), ("to", "freezer"), ("why", "larvae")],
    );
    assert_eq!(ended(&yard, "7"), [Some(day("2026-07-10"))]);
    write(&mut yard, "2026-07-11", Blank::Look, "7", &[("larvae", "few"), ("larvae_size", "tiny")]);
    assert_eq!(ended(&yard, "7"), [Some(day("2026-07-10")), None]);
}

/// Larvae are full grown within thirty days: comb that is given away later takes none of them along, and comb that went before
/// they were seen took none that anybody knows of.
#[test]
fn comb_takes_larvae_along_for_thirty_days_after_they_were_seen() {
    for (on, along) in
        [("2026-06-09", false), ("2026-06-10", true), ("2026-07-10", true), ("2026-07-11", false)]
    {
        let mut yard = yard();
        write(&mut yard, "2026-06-10", Blank::Look, "7", &[("larvae", "few"), ("larvae_size", "tiny")]);
        let into = yard.hive("8");
        let mut split = Record::empty(Blank::Split, vec![yard.hive("7")]);
        let at = Blank::Split.fields().iter().position(|field| field.name == "into").unwrap();
        split.answers[at] = Some(Answer::Hive(into.clone()));
        let written = yard.book.record(&pen("aa", day(on)), day(on), day(on), Some(&yard.id), split).unwrap();
        yard.book.add(written);
        let all = finds(yard.book.standing(), &yard.id, day("2026-07-12"));
        assert_eq!(all.iter().any(|find| find.hive == into), along, "{on}");
    }
}

#[test]
fn a_hive_that_moves_leaves_its_larvae_in_the_ground() {
    let mut yard = yard();
    let pen = |on: &str| pen("bb", day(on));
    let plan = plan(&["f"], &[(BoxDepth::Deep, 2)], day("2026-07-01"));
    let kind = KindChoice::Known(yard.kind());
    let other = yard.book.keep_yard(&pen("2026-07-01"), "Far", "Europe/Berlin", &kind, &plan).unwrap();
    let far = other[0].id.thing(0);
    yard.book.add(other);
    write(&mut yard, "2026-07-10", Blank::Look, "7", &[("larvae", "none"), ("entrance", "larvae_leaving")]);
    write(&mut yard, "2026-07-10", Blank::Look, "8", &[("larvae", "few"), ("larvae_size", "tiny")]);
    for tag in ["7", "8"] {
        let hive = yard.hive(tag);
        let on = day("2026-07-12");
        let moved = yard.book.move_hive(&pen("2026-07-12"), on, on, &hive, &far, None, &Unicode).unwrap();
        yard.book.add(moved);
    }
    let found = |of| {
        let all = finds(yard.book.standing(), of, day("2026-07-12"));
        all.iter().map(|find| find.sighting.seen).collect::<Vec<_>>()
    };
    assert_eq!(found(&yard.id), [Seen::Leaving, Seen::TinyLarvae], "what left lies here");
    assert_eq!(found(&far), [Seen::TinyLarvae], "what was in the comb went along");
    assert_eq!(now(&yard, "2026-07-12").len(), 2);
}

#[test]
fn what_a_look_told_is_a_find_of_it() {
    let seen = |answers: &[(&str, &str)]| {
        let mut yard = yard();
        write(&mut yard, "2026-07-10", Blank::Look, "7", answers);
        finds(yard.book.standing(), &yard.id, day("2026-07-10"))
            .iter()
            .map(|find| find.sighting.seen)
            .collect::<Vec<_>>()
    };
    assert_eq!(seen(&[("larvae", "few")]), [Seen::TinyLarvae, Seen::FullGrown], "of what size nobody said");
    assert_eq!(seen(&[("larvae", "none"), ("entrance", "slime")]), [Seen::Leaving]);
    assert_eq!(seen(&[("larvae", "none"), ("slime", "yes")]), [Seen::Leaving]);
    assert_eq!(seen(&[("larvae", "not_looked"), ("soil", "larvae")]), [Seen::InSoil]);
    assert_eq!(seen(&[("larvae", "few"), ("larvae_size", "both"), ("adults", "9")]).len(), 2);
    assert_eq!(seen(&[("larvae", "none"), ("adults", "0")]), []);
}

#[test]
fn a_find_is_remembered_over_a_winter_and_none_comes_before_its_day() {
    let mut yard = yard();
    write(&mut yard, "2026-07-10", Blank::Look, "7", &[("larvae", "few"), ("larvae_size", "tiny")]);
    let count = |today: &str| finds(yard.book.standing(), &yard.id, day(today)).len();
    assert_eq!((count("2026-07-09"), count("2026-07-10")), (0, 1));
    assert_eq!((count("2027-08-14"), count("2027-08-15")), (1, 0));
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
    let of = |yard: &Yard, today: &str| {
        strength(yard.book.standing(), &hive, &yard.book.standing().hives[&hive], day(today))
    };
    assert_eq!(of(&yard, "2026-07-01"), Strength::Unknown);
    write(&mut yard, "2026-07-01", Blank::Look, "7", &[("larvae", "none"), ("frames_of_bees", "10")]);
    // Two boxes of ten frames, as far as anybody said.
    assert_eq!(of(&yard, "2026-07-01"), Strength::Cover(0.5));
    write(&mut yard, "2026-07-02", Blank::HiveFacts, "7", &[("frames", "8")]);
    assert_eq!(of(&yard, "2026-07-02"), Strength::Cover(10.0 / 16.0));
    // The newest look counts, one that has not come does not, and after two months nobody knows.
    write(&mut yard, "2026-07-20", Blank::Look, "7", &[("larvae", "none"), ("frames_of_bees", "4")]);
    assert_eq!(of(&yard, "2026-07-20"), Strength::Cover(4.0 / 16.0));
    assert_eq!(of(&yard, "2026-07-19"), Strength::Cover(10.0 / 16.0));
    assert_eq!(of(&yard, "2026-09-18"), Strength::Cover(4.0 / 16.0));
    assert_eq!(of(&yard, "2026-09-19"), Strength::Unknown);
    // In a nucleus nobody counted a box has half as many frames.
    let plan = HivePlan { size: HiveSize::Nuc, ..plan(&["nuc"], &[(BoxDepth::Deep, 1)], day("2026-07-01")) };
    let kind = KindChoice::Known(yard.kind());
    let added = yard.book.add_hives(&pen("aa", day("2026-07-01")), &yard.id, &kind, &plan, &Unicode).unwrap();
    yard.book.add(added);
    write(&mut yard, "2026-07-20", Blank::Look, "nuc", &[("larvae", "none"), ("frames_of_bees", "3")]);
    let nuc = yard.hive("nuc");
    let standing = yard.book.standing();
    assert_eq!(strength(standing, &nuc, &standing.hives[&nuc], day("2026-07-20")), Strength::Cover(0.6));
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

fn ground(yard: &Yard, today: &str) -> Ground {
    Ground::of(yard.book.standing(), &yard.id, day(today)).unwrap()
}

#[test]
fn soil_and_shade_are_taken_as_they_were_written_down() {
    let mut yard = yard();
    assert_eq!(
        (ground(&yard, "2026-07-01").kind, ground(&yard, "2026-07-01").shade),
        (SoilKind::Unknown, Shade::Part)
    );
    for (soil, moist, dry) in [
        ("sand", SoilKind::WetSand, SoilKind::DrySand),
        ("loam", SoilKind::MoistLoam, SoilKind::MoistLoam),
        ("clay", SoilKind::MoistClay, SoilKind::DryClay),
    ] {
        let mut yard = self::yard();
        write(&mut yard, "2026-06-01", Blank::YardFacts, "", &[("soil", soil)]);
        assert_eq!(ground(&yard, "2026-07-01").kind, moist, "{soil}");
        write(&mut yard, "2026-06-02", Blank::Soil, "", &[("moisture", "dry")]);
        assert_eq!(ground(&yard, "2026-07-01").kind, dry, "{soil}");
        assert_eq!(ground(&yard, "2026-06-01").kind, moist, "{soil}: not known yet");
    }
    for (shade, is) in [("full_sun", Shade::Sun), ("part_shade", Shade::Part), ("shade", Shade::Shade)] {
        write(&mut yard, "2026-06-01", Blank::YardFacts, "", &[("shade", shade)]);
        assert_eq!(ground(&yard, "2026-07-01").shade, is);
    }
}

#[test]
fn a_probe_by_the_inch_is_as_deep_as_one_by_the_centimetre() {
    let mut yard = yard();
    let mut record = Record::empty(Blank::Soil, Vec::new());
    say(&mut record, "moisture", "moist");
    say(&mut record, "temperature", "20");
    let at = Blank::Soil.fields().iter().position(|field| field.name == "depth").unwrap();
    record.answers[at] = Some(Answer::Number(decimal("4").unwrap(), 1));
    let on = day("2026-07-01");
    let written = yard.book.record(&pen("aa", on), on, on, Some(&yard.id), record).unwrap();
    yard.book.add(written);
    let [probe] = &*ground(&yard, "2026-07-01").probes else { panic!() };
    assert!((probe.depth.millimetres() - 101.6).abs() < 1e-9, "{}", probe.depth.millimetres());
    assert!(ground(&yard, "2026-06-30").probes.is_empty(), "it was not read yet");
}

#[test]
fn ground_that_nobody_looked_at_for_two_months_is_not_dry_for_ever() {
    let mut yard = yard();
    write(&mut yard, "2026-07-01", Blank::Soil, "", &[("moisture", "dry")]);
    assert_eq!(ground(&yard, "2026-08-29").dry_since(), Some(day("2026-07-01")));
    assert_eq!(ground(&yard, "2026-08-30").dry_since(), None);
    // Said again, it goes on from the first day.
    write(&mut yard, "2026-08-01", Blank::Soil, "", &[("moisture", "dry")]);
    assert_eq!(ground(&yard, "2026-09-29").dry_since(), Some(day("2026-07-01")));
    write(&mut yard, "2026-09-01", Blank::Soil, "", &[("moisture", "wet")]);
    let now = ground(&yard, "2026-09-29");
    assert_eq!(now.dry, [Dry { from: day("2026-07-01"), until: Some(day("2026-09-01")) }]);
}
