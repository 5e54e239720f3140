//! One hive that two phones wrote down, in packs, tables, sheets and the sums of a season.

use crate::plan;
use crate::record_of_each::filled;
use crate::support::{Unicode, day, pen};
use crate::twins::{met, on, put, work};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::app::ledger::papers::days;
use beetle_almanac::app::ledger::papers::packet::{self, Part};
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, Ending, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::lot::Lot;
use beetle_almanac::book::record::{Answer, Blank, ClockTime, Record};
use beetle_almanac::book::season::Season;
use beetle_almanac::book::write::{Draft, KindChoice, TableLine, TableTerms, TableWork};
use beetle_almanac::papers::pack::{Choice, pick};
use beetle_almanac::papers::records::Records;
use beetle_almanac::papers::table::Style;

#[test]
fn a_hive_that_was_said_to_be_the_same_by_mistake_is_not_handed_over_with_it() {
    let mut met = met();
    let one = met.one();
    met.book.add(one.clone());
    let strike = met.book.strike(&pen("bb", on()), on(), &[one[0].id.clone()], &Unicode).unwrap();
    met.book.add(strike);
    let choice = Choice { hives: vec![met.first.clone()], yard: None, since: None, notes: true };
    let mut there = Book::default();
    there.add(pick(met.book.log(), &choice));
    assert_eq!(there.standing().hives.keys().collect::<Vec<_>>(), [&met.first]);
}

#[test]
fn a_pack_of_the_hive_brings_both_names_of_it() {
    let mut met = met();
    let one = met.one();
    met.book.add(one);
    let choice = Choice { hives: vec![met.first.clone()], yard: None, since: None, notes: true };
    let pack = pick(met.book.log(), &choice);
    let mut there = Book::default();
    there.add(pack);
    assert_eq!(there.standing().orphans, 0);
    assert_eq!(there.standing().hives[&met.first], met.book.standing().hives[&met.first]);
}

#[test]
fn a_product_given_under_the_other_name_is_on_the_sheet_of_its_honey() {
    let mut met = met();
    let mut given = filled(Blank::Product, &met.second, &met.second);
    given.hives = vec![met.second.clone()];
    let end = given.blank.fields().iter().position(|field| field.name == "end").unwrap();
    given.answers[end] = None;
    let written = met.book.record(&pen("cc", on()), on(), on(), Some(&met.yard.id), given).unwrap();
    let given = written[0].id.clone();
    met.book.add(written);
    let one = met.one();
    met.book.add(one);
    let off = day("2026-07-14");
    for hives in [vec![met.first.clone()], Vec::new()] {
        let mut lot = Record::empty(Blank::Harvest, hives);
        put(&mut lot, "bees_off", Answer::Time(ClockTime::parse("2026-07-14T09:00").unwrap()));
        let written = met.book.record(&pen("bb", off), off, off, Some(&met.yard.id), lot).unwrap();
        let id = written[0].id.clone();
        met.book.add(written);
        let standing = met.book.standing();
        let lot = Lot::of(&met.book, &standing.records[&id]).unwrap();
        let lines = packet::lines(&met.book, Part::Products, Day::FIRST, off, false);
        let told = lines.iter().filter(|line| lot.product(standing, line.entry).is_some());
        assert_eq!(told.map(|line| &line.entry.id).collect::<Vec<_>>(), [&given]);
    }
}

#[test]
fn the_table_that_was_taken_in_under_the_other_name_brings_no_visit_twice() {
    let mut met = met();
    let one = met.one();
    met.book.add(one);
    let Check { did, before, after, count, note, .. } = work(&met.second, 40);
    let visit = TableWork { day: day("2026-05-10"), did, before, after, count, note };
    let line = |work| TableLine {
        row: 1,
        yard: "Ferry Field".to_owned(),
        tag: "12".to_owned(),
        size: None,
        boxes: None,
        since: None,
        work: Some(work),
    };
    let lines = [line(visit.clone()), line(TableWork { did: Did::Replaced, ..visit })];
    let terms = TableTerms {
        kind: KindChoice::Known(met.yard.kind()),
        boxes: vec![2],
        earlier: false,
        zone: "Europe/Berlin".to_owned(),
        today: on(),
    };
    let taken = met.book.take_in_table(&pen("bb", on()), &lines, &terms, &Unicode).unwrap();
    assert_eq!((taken.same, taken.visits, taken.refused), (1, 1, Vec::new()));
}

#[test]
fn tables_and_the_packet_tell_both_names_as_the_hive_that_is_kept() {
    let mut met = met();
    for record in [
        filled(Blank::Look, &met.second, &met.second),
        filled(Blank::Split, &met.yard.hive("1"), &met.second),
    ] {
        let written = met.book.record(&pen("cc", on()), on(), on(), Some(&met.yard.id), record).unwrap();
        met.book.add(written);
    }
    // Both were topped up on one day more.
    for hive in [&met.first, &met.second] {
        let written = met.book.check(&pen("cc", on()), on(), on(), work(hive, 30)).unwrap();
        met.book.add(written);
    }
    let one = met.one();
    met.book.add(one);
    for blank in [Blank::Look, Blank::Split] {
        let table = Records::Of(blank).table(&met.book, Style::default(), &|_| String::new());
        let row = table.lines().nth(1).unwrap();
        assert!(row.contains(&met.first.to_string()) && !row.contains(&met.second.to_string()), "{row}");
    }
    let lines = packet::lines(&met.book, Part::Work, on(), on(), false);
    let rows = days::rows(&met.book, lines, false, false);
    let said: Vec<&str> = rows.iter().flat_map(|row| &row.told).map(|told| told.said.as_str()).collect();
    assert!(said.iter().any(|said| said.starts_with("1\u{a0}hive: topped up\u{a0}1 (12);")), "{said:?}");
}

/// What the yard came to in May and June, and that what came and went leads from the one number of hives to the other.
fn season(book: &Book, yard: &ThingId) -> Season {
    let season = Season::of(book, yard, day("2026-05-01"), day("2026-06-30"));
    let came = season.start + season.new + season.moved_in + season.back;
    let went = season.moved_out + season.ended.iter().sum::<usize>();
    assert_eq!(came, season.end + went, "{season:?}");
    season
}

#[test]
fn one_death_that_two_phones_wrote_down_is_one() {
    let mut met = met();
    let one = met.one();
    met.book.add(one);
    let mut phones = [met.book.clone(), met.book.clone()];
    for (book, (name, how)) in phones.iter_mut().zip([("bb", Ending::Dead), ("cc", Ending::Gone)]) {
        let third = met.yard.hive("1");
        let written = book.end_hive(&pen(name, on()), on(), on(), &met.first, Ending::Dead, None).unwrap();
        book.add(written);
        // Of the other hive each thinks something else.
        let written = book.end_hive(&pen(name, on()), on(), on(), &third, how, None).unwrap();
        book.add(written);
    }
    let mut book = phones[0].clone();
    book.add(phones[1].log().entries().cloned());
    // One of the two wrote it once more, a day later, under the other name.
    let later = pen("cc", on().plus(1));
    let mut draft = Draft::new(&book, &later);
    let ended = What::HiveEnded { hive: met.second.clone(), how: Ending::Dead };
    draft.push(on().plus(1), Some(&met.yard.id), ended).unwrap();
    let again = draft.done();
    book.add(again);
    let said = season(&book, &met.yard.id);
    assert_eq!((said.ended, said.end), ([2, 0, 0, 0], 0));
}

#[test]
fn one_load_of_hives_that_two_phones_wrote_down_came_and_went_once() {
    let mut met = met();
    let kind = KindChoice::Known(met.yard.kind());
    let mill = plan(&["7"], &[(BoxDepth::Deep, 2)], day("2026-05-01"));
    let start = day("2026-05-01");
    let written = met.book.keep_yard(&pen("bb", start), "Mill", "Europe/Berlin", &kind, &mill).unwrap();
    met.book.add(written);
    let mill = met.book.standing().yards.keys().last().unwrap().clone();
    let one = met.one();
    met.book.add(one);
    let mut phones = [met.book.clone(), met.book.clone()];
    for (book, name) in phones.iter_mut().zip(["bb", "cc"]) {
        let pen = pen(name, on());
        let moved = book.move_hive(&pen, on(), on(), &met.first, &mill, None, &Unicode).unwrap();
        book.add(moved);
    }
    let mut book = phones[0].clone();
    book.add(phones[1].log().entries().cloned());
    let (from, to) = (season(&book, &met.yard.id), season(&book, &mill));
    assert_eq!((from.moved_out, from.moved_in, to.moved_out, to.moved_in), (1, 0, 0, 1));
}
