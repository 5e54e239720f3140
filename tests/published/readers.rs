//! The calendars as programs outside this project read them, beside the book they were made of: by the Python libraries
//! icalendar and vobject (`tests/figures/calendar_files.py`).

use super::papers::{TAG, Tale, calendars};
use super::{day, rows};
use beetle_almanac::book::finds;
use beetle_almanac::book::record::Blank;
use beetle_almanac::book::round::{self, HiveDue};
use beetle_almanac::papers::calendar::Given;
use std::collections::BTreeMap;

const CALENDARS: &str = include_str!("../figures/calendar_files.json");

#[derive(Clone, Debug, PartialEq, serde::Deserialize)]
struct Read {
    file: String,
    reader: String,
    uid: String,
    stamp: String,
    sequence: u32,
    start: String,
    end: String,
    summary: String,
    description: String,
    status: String,
    transparency: String,
    place: bool,
    alarms: Vec<i32>,
}

fn read(file: &str, reader: &str) -> Vec<Read> {
    let all = rows::<Read>(CALENDARS);
    all.into_iter().filter(|row| row.file == file && row.reader == reader).collect()
}

/// An event of supers to be spun.
fn is_lot(row: &Read) -> bool {
    row.uid.split_once('.').is_some_and(|(_, kind)| kind == "lot")
}

#[test]
fn both_libraries_read_the_same() {
    for file in ["calendar-1.ics", "calendar-2.ics"] {
        let mut other = read(file, "by_vobject");
        for row in &mut other {
            row.reader = "by_icalendar".to_owned();
        }
        assert_eq!(read(file, "by_icalendar"), other);
        assert!(other.len() > 3, "{file}");
    }
}

const YOUNG: &str = "Young beetles may come out of the ground (estimate)";
const LARVAE: &str = "Adult beetles were seen, larvae could leave from tomorrow if eggs were laid (estimate)";

/// Every due hive of the book is in one event, on its day; nothing else is.
#[test]
fn the_calendar_says_what_the_book_says() {
    let tale = Tale::first();
    let standing = tale.book.standing();
    let mut wanted: BTreeMap<(String, String), Vec<String>> = BTreeMap::new();
    for (yard, now) in standing.open_yards() {
        let ways = finds::of_yard(standing, yard, tale.today).unwrap_or_default();
        for row in round::rows(standing, yard, tale.today) {
            let tag = standing.hives[&row.hive].tag.clone();
            let mut add = |on: beetle_almanac::almanac::day::Day, what: &str| {
                let list = if on < tale.today && what == "Traps due" { "Overdue" } else { what };
                let key = (format!("{} {}", on.max(tale.today), now.name), list.to_owned());
                wanted.entry(key).or_default().push(tag.clone());
            };
            if let HiveDue::Due { on, .. } = row.due {
                add(on, "Traps due");
            }
            if let Some(by) = row.recheck {
                add(by, "Look again after a spill");
            }
            let patty = standing.newest_record(Blank::Patty, &row.hive);
            if let Some(patty) = patty.filter(|patty| patty.record.word("did") == Some("put_in")) {
                add(patty.day.plus(5), "Take the patty out");
            }
            for way in ways.iter().filter(|way| way.hive == row.hive) {
                let (due, what) = if way.adults_only() {
                    (way.leaving().map(|day| day.plus(-1)), LARVAE)
                } else {
                    (way.young(), YOUNG)
                };
                if let Some(due) = due {
                    add(due, what);
                }
            }
        }
    }
    assert!(wanted.len() >= 5 && wanted.values().flatten().any(|tag| tag == TAG));

    let mut found = BTreeMap::new();
    for row in read("calendar-1.ics", "by_icalendar") {
        let (yard, _) = row.summary.split_once(": ").unwrap();
        if is_lot(&row) {
            continue;
        }
        assert_eq!(row.end, day(&row.start).plus(1).to_string());
        let young =
            row.description.lines().find_map(|line| line.split_once(": ").filter(|(list, _)| *list == YOUNG));
        for line in row.description.lines() {
            let (list, hives) = line.split_once(": ").unwrap();
            // The dates of a hive in that list.
            if let Some(tag) = list.strip_prefix("Hive ") {
                assert!(young.is_some_and(|(_, tags)| tags.contains(tag)), "{line}");
                continue;
            }
            let hives = hives.trim_start_matches("hives ").trim_start_matches("hive ");
            // A tag may hold a comma itself, so the lists are compared whole.
            assert_eq!(
                found.insert((format!("{} {yard}", row.start), list.to_owned()), hives.to_owned()),
                None
            );
        }
        assert_eq!((row.sequence, row.status.as_str(), row.place), (0, "CONFIRMED", false));
        assert_eq!((row.transparency.as_str(), row.alarms.as_slice()), ("TRANSPARENT", &[7 * 3600][..]));
        // Half past midnight in summer in Berlin.
        assert_eq!(row.stamp, "2026-07-13T22:30:05+00:00");
    }
    let wanted: BTreeMap<_, _> = wanted.into_iter().map(|(key, tags)| (key, tags.join(", "))).collect();
    assert_eq!(found, wanted);
}

/// Supers that were pulled at 15:00 and 16:30 in Berlin in summer: and the keeper aims at 20 hours and waits 44 at the most.
#[test]
fn supers_to_be_spun_have_their_hours_in_utc_and_are_taken_back_once_spun() {
    let lots = |file| {
        let rows = read(file, "by_icalendar").into_iter().filter(is_lot);
        rows.map(|row| (row.start, row.end, row.summary, row.sequence, row.status, row.alarms))
            .collect::<Vec<_>>()
    };
    let yard = "Ferry Field";
    let lot = |from: &str, to: &str, what: &str, sequence, status: &str, alarms: &[i32]| {
        let utc = |at| format!("{at}:00+00:00");
        (utc(from), utc(to), what.to_owned(), sequence, status.to_owned(), alarms.to_vec())
    };
    let [first, second] = ["calendar-1.ics", "calendar-2.ics"].map(lots);
    let (a, b) = (format!("{yard}: spin 4 supers"), format!("{yard}: spin 6 supers"));
    assert_eq!(
        first,
        [
            // Those of the demonstration.
            lot("2026-07-14T12:00", "2026-07-15T12:00", &a, 0, "CONFIRMED", &[-6 * 3600]),
            lot("2026-07-14T09:00", "2026-07-15T09:00", &a, 0, "CONFIRMED", &[-6 * 3600]),
            lot("2026-07-15T10:30", "2026-07-16T10:30", &b, 0, "CONFIRMED", &[-6 * 3600]),
        ]
    );
    assert_eq!(
        second,
        [
            // Six hours before it to spin is over: at 22:40, ten minutes after the file is made.
            lot("2026-07-14T09:00", "2026-07-15T09:00", &a, 0, "CONFIRMED", &[13 * 3600 + 40 * 60]),
            lot("2026-07-15T10:30", "2026-07-16T10:30", &b, 0, "CONFIRMED", &[-6 * 3600]),
            // The first one that waited is spun: that of the demonstration.
            lot("2026-07-14T12:00", "2026-07-15T12:00", "No longer due", 1, "CANCELLED", &[]),
        ]
    );
}

/// What the page remembers of a file is what a reader finds in it, the second file's changes included.
#[test]
fn a_reader_finds_the_names_days_and_numbers_that_are_remembered() {
    for (number, calendar) in (1..).zip(calendars()) {
        let found = read(&format!("calendar-{number}.ics"), "by_vobject");
        let same = |given: &Given, row: &Read| {
            let status = if given.withdrawn { "CANCELLED" } else { "CONFIRMED" };
            let utc = |at: &str| at.replace("+00:00", "Z").replace(['-', ':'], "");
            let on = match &given.hours {
                Some(hours) => *hours == format!("{}/{}", utc(&row.start), utc(&row.end)),
                None => row.start == given.day.to_string(),
            };
            row.uid == given.uid
                && on
                && row.sequence == given.sequence
                && row.status == status
                && row.alarms.is_empty() == given.withdrawn
        };
        assert_eq!(found.len(), calendar.given.len());
        for (given, row) in calendar.given.iter().zip(&found) {
            assert!(same(given, row), "{given:?} is read as {row:?}");
        }
    }
    let [one, two] = calendars();
    let first = |uid: &str| one.given.iter().find(|given| given.uid == uid);
    let changed =
        two.given.iter().filter(|given| first(&given.uid).is_some_and(|old| old.sequence < given.sequence));
    assert!(changed.count() >= 3);
    assert!(two.given.iter().any(|given| given.withdrawn));
    assert!(two.given.iter().any(|given| first(&given.uid).is_none() && given.sequence == 0));
}
