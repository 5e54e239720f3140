use super::{entry, isolated, tag_told};
use crate::almanac::day::{Day, Stamp};
use crate::almanac::text::Letters;
use crate::book::Book;
use crate::book::demo::demo;
use crate::book::entry::{Check, Did, Ending, Entry, What};
use crate::book::id::{EntryId, ThingId, Writer};
use crate::book::standing::Standing;
use crate::book::write::Pen;

/// Plain letters are enough for the demonstration's names.
pub(crate) struct Plain;

impl Letters for Plain {
    fn normal(&self, text: &str) -> String {
        text.to_owned()
    }

    fn visible(&self, text: &str) -> usize {
        text.chars().count()
    }
}

pub(in crate::app) fn today() -> Day {
    Day::parse("2026-07-14").unwrap()
}

pub(in crate::app) fn pen() -> Pen {
    Pen { writer: Writer::new("aa").unwrap(), by: None, at: Stamp::midnight(today()) }
}

pub(in crate::app) fn book() -> Book {
    let mut book = Book::default();
    book.add(demo(today(), "Europe/Berlin", 120, &Plain).unwrap());
    book
}

fn said(book: &Book, json: &str) -> String {
    let what: What = serde_json::from_str(json).unwrap();
    let id = serde_json::from_str("\"zz-9000\"").unwrap();
    let (day, at) = (today(), Stamp::midnight(today()));
    entry(book, &Entry { id, day, at, by: None, yard: None, replaces: None, bulk: None, what })
        .replace('\u{a0}', " ")
}

#[test]
fn a_tag_that_stands_in_two_yards_is_told_with_its_yard_and_one_of_a_hive_that_is_gone_is_not() {
    let mut standing = book().standing().clone();
    let said = |standing: &Standing, hive: &ThingId| tag_told(standing, &standing.hives[hive]);
    let [one, other] = [0, 1].map(|at| standing.yards.values().nth(at).unwrap().order[0].clone());
    let tag = standing.hives[&one].tag.clone();
    assert_eq!(said(&standing, &one), tag);
    standing.hives.get_mut(&other).unwrap().tag.clone_from(&tag);
    let names = [&one, &other].map(|hive| standing.yards[&standing.hives[hive].yard].name.clone());
    assert_eq!(
        [&one, &other].map(|hive| said(&standing, hive)),
        names.map(|name| [&*tag, ", ", &*name].concat())
    );
    standing.hives.get_mut(&other).unwrap().ended = Some((Ending::Sold, today()));
    assert_eq!(said(&standing, &one), tag);
}

#[test]
fn every_line_of_the_demonstration_has_words() {
    let book = book();
    for line in book.log().entries() {
        let said = entry(&book, line);
        assert!(said.len() > 8 && !said.contains("not in this book"), "{said}");
    }
}

#[test]
fn a_check_says_what_was_done_and_found() {
    let book = book();
    let hive =
        book.log().entries().find(|e| matches!(&e.what, What::Hive { tag, .. } if tag == "7")).unwrap();
    let json = format!(
        r#"{{"check":{{"hive":"{}","did":"topped_up","before":40,"after":50,"count":12}}}}"#,
        hive.id
    );
    assert_eq!(said(&book, &json), "Hive 7: topped up, found 40 %, left 50 %, 12 beetles");
    let json = format!(
        r#"{{"check":{{"hive":"{}","traps":["{}.2"],"did":"as_found","before":33.333333,"count":{{"low":50}},"note":"wax"}}}}"#,
        hive.id, hive.id
    );
    assert_eq!(said(&book, &json), "Hive 7, Box 1, front left: as found, found 33.3 %, 50+ beetles, “wax”");
    let json = format!(r#"{{"box_off":{{"hive":"{}","box":"{}.4","traps":"stock"}}}}"#, hive.id, hive.id);
    assert_eq!(said(&book, &json), "Hive 7: deep taken off, its traps back in stock");
    assert_eq!(entry(&book, hive).replace('\u{a0}', " "), "Hive 7: new, 2 deeps, 4 traps");
}

#[test]
fn a_new_tag_is_told_beside_the_old_one() {
    let mut book = book();
    let of = |book: &Book, tag: &str| {
        let hives = book.standing().hives.iter().find(|(_, hive)| hive.tag == tag).unwrap();
        hives.0.clone()
    };
    let hive = of(&book, "4");
    let mut told = Vec::new();
    for tag in ["Old Faithful", "4b"] {
        let lines = book.rename_hive(&pen(), today(), &hive, tag, &Plain).unwrap();
        let line = lines[0].clone();
        book.add(lines);
        told.push(line);
    }
    let told = told.iter().map(|line| entry(&book, line)).collect::<Vec<_>>();
    assert_eq!(told, ["Hive 4: renamed Old Faithful", "Hive Old Faithful: renamed 4b"]);
}

#[test]
fn the_look_that_goes_with_placing_says_so() {
    let mut book = book();
    let hive = book.standing().hives.iter().find(|(_, hive)| hive.tag == "7").unwrap().0.clone();
    let (traps, before, after, count, note) = (None, None, None, None, None);
    let look = Check { hive: hive.clone(), traps, did: Did::AsFound, before, after, count, note };
    let placing = [What::TrapsOn { hive, traps: Vec::new() }, What::Check(look)];
    let bulk = EntryId::new(pen().writer, 9000).ok();
    let mut lines = Vec::new();
    for (n, what) in (9000..).zip(placing) {
        let id = EntryId::new(pen().writer, n).unwrap();
        let (day, at, bulk) = (today(), Stamp::midnight(today()), bulk.clone());
        lines.push(Entry { id, day, at, by: None, yard: None, replaces: None, bulk, what });
    }
    book.add(lines.clone());
    assert_eq!(entry(&book, &lines[1]), "Hive 7: traps placed");
    let alone = Entry { bulk: None, ..lines[1].clone() };
    assert_eq!(entry(&book, &alone), "Hive 7: as found");
}

#[test]
fn things_this_book_does_not_hold_are_called_so() {
    assert_eq!(said(&book(), r#"{"hive_back":{"hive":"zz-1"}}"#), "A hive not in this book: back in care");
}

#[test]
fn a_strike_names_its_line_and_a_strike_of_a_strike_brings_it_back() {
    let mut book = book();
    let yard = book.log().entries().next().unwrap().id.clone();
    let strike = book.strike(&pen(), today(), std::slice::from_ref(&yard), &Plain).unwrap();
    let id = strike[0].id.clone();
    assert_eq!(entry(&book, &strike[0]), "Struck out: “New yard: Ferry Field”");
    book.add(strike);
    let again = book.strike(&pen(), today(), &[id], &Plain).unwrap();
    assert_eq!(entry(&book, &again[0]), "Brought back: “New yard: Ferry Field”");
    let all: Vec<_> = book.log().entries().take(3).map(|e| e.id.clone()).collect();
    let many = book.strike(&pen(), today(), &all, &Plain).unwrap();
    assert_eq!(entry(&book, &many[0]).replace('\u{a0}', " "), "Struck out: 3 entries");
}

#[test]
fn settings_are_spelled_out() {
    let json = r#"{"keeper":{"reserve":25,"bottle":{"n":1.5,"unit":"L"},"season_start":301}}"#;
    let wanted = "Settings: oil reserve 25 %, bottles of 1.5 L, season starts 1 March";
    assert_eq!(said(&Book::default(), json), wanted);
}

#[test]
fn only_names_written_from_right_to_left_are_set_apart() {
    assert_eq!(isolated("Blue 7"), "Blue 7");
    assert_eq!(isolated("כוורת 7"), "\u{2068}כוורת 7\u{2069}");
}

#[test]
fn another_order_of_the_walk_names_what_stands_elsewhere_and_how_it_stood() {
    let mut book = book();
    let yard: ThingId = serde_json::from_str("\"demo-1\"").unwrap();
    let hives = book.standing().yards[&yard].order.clone();
    let moved = |from: usize, to: usize| {
        let mut hives = hives.clone();
        let hive = hives.remove(from);
        hives.insert(to, hive);
        hives
    };
    let json = |hives: &[ThingId]| {
        serde_json::to_string(&What::Order { yard: yard.clone(), hives: hives.to_vec() }).unwrap()
    };
    let plain = |text: String| text.replace(['\u{2068}', '\u{2069}'], "");
    let line = plain(said(&book, &json(&moved(3, 1))));
    assert_eq!(line, "Ferry Field: walking order changed: 4, 2, 3 instead of 2, 3, 4");
    let line = plain(said(&book, &json(&moved(10, 0))));
    assert_eq!(line, "Ferry Field: walking order changed: 11, 1, 2, 3, 4, … instead of 1, 2, 3, 4, 5, …");
    // The next line goes by the order that the one before it left.
    let what = What::Order { yard: yard.clone(), hives: moved(1, 0) };
    let written = book.about_yard(&pen(), today(), today(), &yard, what).unwrap();
    book.add(written);
    let line = plain(said(&book, &json(&hives)));
    assert_eq!(line, "Ferry Field: walking order changed: 1, 2 instead of 2, 1");
}

#[test]
fn what_a_blank_and_its_field_are_both_called_is_said_once() {
    let book = book();
    let patty = r#"{"record":{"blank":"patty","hives":["demo-3"],"answers":{"did":"put_in","amount":{"n":200,"unit":"g"}}}}"#;
    assert_eq!(
        said(&book, patty).replace(['\u{2068}', '\u{2069}'], ""),
        "Hive 1: Patty: put in; How much: 200 g"
    );
}

#[test]
fn a_record_in_a_list_of_several_yards_names_the_yard_of_its_hive() {
    use super::record_of_all;
    use crate::book::record::{Blank, Record};
    let book = book();
    let (hive, now) = book.standing().hives.iter().find(|(_, now)| now.tag == "2").unwrap();
    let yard = &now.yard;
    let name = &book.standing().yards[yard].name;
    let told = |several, yard, record: &Record| {
        record_of_all(&book, several, yard, record).replace(['\u{2068}', '\u{2069}'], "")
    };
    let look = Record::empty(Blank::Look, vec![hive.clone()]);
    assert!(told(false, Some(yard), &look).starts_with("Hive 2: "));
    assert!(told(true, Some(yard), &look).starts_with(&format!("{name}, Hive 2: ")));
    // A line that names no yard: where its hive stands.
    assert_eq!(told(true, None, &look), told(true, Some(yard), &look));
    // A record about the yard names it as it is, and one about the keeper none.
    let facts = Record::empty(Blank::YardFacts, Vec::new());
    assert!(told(true, Some(yard), &facts).starts_with(&format!("{name}: ")));
    let keeper = Record::empty(Blank::KeeperFacts, Vec::new());
    assert_eq!(told(true, None, &keeper), told(false, None, &keeper));
}
