//! The calendar file against RFC 5545: the examples it gives, and what its sections demand.

use super::day;
use super::papers::{calendars, files};
use beetle_almanac::almanac::day::{Day, Stamp};
use beetle_almanac::almanac::moment::Moment;
use beetle_almanac::papers::calendar::{Calendar, Event, Given, give_out};
use beetle_almanac::papers::content_line::{put, put_text};

fn text(name: &str, value: &str) -> String {
    let mut out = String::new();
    put_text(&mut out, name, value);
    out
}

/// Section 3.1: a line is unfolded by taking out each CRLF that a space or tab follows, and that character with it.
fn unfolded(text: &str) -> String {
    text.replace("\r\n ", "").replace("\r\n\t", "")
}

fn event(uid: &str, on: &str, summary: &str) -> Event {
    let (uid, summary) = (uid.to_owned(), summary.to_owned());
    Event { uid, day: day(on), hours: None, summary, description: String::new() }
}

fn out(events: &[Event], before: &[Given], today: &str) -> Calendar {
    give_out(events, before, day(today), Stamp::midnight(day(today)), "gone").expect("a file")
}

fn sequences(calendar: &Calendar) -> Vec<(u32, bool)> {
    calendar.given.iter().map(|given| (given.sequence, given.withdrawn)).collect()
}

/// Section 3.1, the example of a long line: wherever it is cut, it unfolds to the same.
#[test]
fn a_long_line_folds_and_unfolds_to_itself() {
    let long = "This is a long description that exists on a long line.";
    let published = "DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.\r\n";
    assert_eq!(text("DESCRIPTION", long), unfolded(published));
    let twice = [long, long].concat();
    let folded = text("DESCRIPTION", &twice);
    assert_eq!(folded.split("\r\n").next().map(str::len), Some(75));
    assert_eq!(unfolded(&folded), format!("DESCRIPTION:{twice}\r\n"));
}

/// Section 3.1: lines of 75 octets at most, the line break left out, cut between characters of any length.
#[test]
fn no_line_is_longer_than_75_octets_and_no_character_is_cut() {
    for letter in ["a", "é", "小", "🐝", "\\", ",", "a🐝é"] {
        for count in 0..200 {
            let value = letter.repeat(count);
            let folded = text("SUMMARY", &value);
            assert!(folded.ends_with("\r\n"));
            for line in folded.trim_end_matches("\r\n").split("\r\n") {
                assert!(line.len() <= 75, "{} octets: {line}", line.len());
            }
            let escaped = value.replace('\\', "\\\\").replace(',', "\\,");
            assert_eq!(unfolded(&folded), format!("SUMMARY:{escaped}\r\n"));
        }
    }
}

/// Section 3.3.11: the example of a text over three lines, and the marks that take a backslash.
#[test]
fn text_is_escaped_as_the_standard_shows() {
    let published = "Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared.";
    let typed = ["Project XYZ Final Review\n", "Conference Room - 3B\n", "Come Prepared."];
    for end in ["\n", "\r\n", "\r"] {
        let typed = typed.concat().replace('\n', end);
        assert_eq!(unfolded(&text("DESCRIPTION", &typed)), format!("DESCRIPTION:{published}\r\n"));
    }
    assert_eq!(text("SUMMARY", "a;b,c\\d:\"e\""), "SUMMARY:a\\;b\\,c\\\\d:\"e\"\r\n");
    // Section 3.1: control characters other than the tab have no place in a value.
    assert_eq!(text("SUMMARY", "a\u{0}\u{7}b\tc\u{7f}"), "SUMMARY:ab\tc\r\n");
}

/// Section 3.6.1: the example of an event of several days, whose end is the day after its last; sections 3.3.4 and
/// 3.3.5: dates and moments in UTC.
#[test]
fn a_day_and_a_moment_are_written_as_the_standard_shows() {
    let published =
        "DTSTAMP:20070423T123432Z\r\nDTSTART;VALUE=DATE:20070628\r\nDTEND;VALUE=DATE:20070709\r\n";
    let made = Stamp::parse("2007-04-23T08:34:32-04:00").unwrap();
    let festival =
        event("20070423T123432Z-541111", "2007-06-28", "Festival International de Jazz de Montreal");
    let file = give_out(&[festival], &[], day("2007-04-23"), made, "gone").unwrap().text;
    let mut lines = published.lines();
    assert!(file.contains(&format!("\r\n{}\r\n", lines.next().unwrap())), "{file}");
    assert!(file.contains(&format!("\r\n{}\r\n", lines.next().unwrap())), "{file}");
    // Ours is one day: its end is the next one.
    assert!(file.contains("\r\nDTEND;VALUE=DATE:20070629\r\n"), "{file}");
    assert!(file.contains("\r\nSUMMARY:Festival International de Jazz de Montreal\r\n"));
    assert!(file.contains("\r\nTRANSP:TRANSPARENT\r\n"));
}

/// Section 3.6.1: an event of some hours, its beginning and end in UTC (section 3.3.5, form 2). It keeps its name and gets
/// the next number when its hours move, and is withdrawn with its hours when it is over before its time.
#[test]
fn supers_to_be_spun_are_an_event_with_hours() {
    let at = |on: &str, hour: u16| Moment::new(day(on), hour * 60);
    let hours = Some((at("2026-07-15", 14), at("2026-07-16", 14)));
    let lot = |hours| Event { hours, ..event("k7f3qa-12.lot", "2026-07-16", "spin") };
    let first = out(&[lot(hours)], &[], "2026-07-14");
    assert!(first.text.contains("\r\nDTSTART:20260715T140000Z\r\nDTEND:20260716T140000Z\r\n"));
    // Section 3.8.6.3: before its beginning, or at a moment where that is over: ten minutes after the file is made.
    assert!(first.text.contains("\r\nTRIGGER:-PT6H\r\n") && !first.text.contains("VALUE=DATE"));
    let made = Stamp::parse("2026-07-15T09:00:00+00:00").unwrap();
    let late = give_out(&[lot(hours)], &[], day("2026-07-15"), made, "gone").unwrap();
    assert!(late.text.contains("\r\nTRIGGER;VALUE=DATE-TIME:20260715T091000Z\r\n"), "{}", late.text);
    assert_eq!(late.given, first.given);
    assert_eq!(out(&[lot(hours)], &first.given, "2026-07-15").given, first.given);
    let moved = Some((at("2026-07-15", 13), at("2026-07-16", 13)));
    let moved = out(&[lot(moved)], &first.given, "2026-07-15");
    assert_eq!(sequences(&moved), [(1, false)]);
    let spun = out(&[], &moved.given, "2026-07-16");
    assert_eq!(sequences(&spun), [(2, true)]);
    assert!(spun.text.contains("\r\nDTSTART:20260715T130000Z\r\nDTEND:20260716T130000Z\r\n"));
    assert!(spun.text.contains("STATUS:CANCELLED\r\n") && !spun.text.contains("VALARM"));
    assert_eq!(give_out(&[], &spun.given, day("2026-07-17"), Stamp::midnight(day("2026-07-17")), ""), None);
}

/// Moments around midnight and the turn of the year, on both sides of Greenwich.
#[test]
fn the_stamp_is_in_utc() {
    for (local, utc) in [
        ("1998-01-19T02:00:00-05:00", "19980119T070000Z"),
        ("2026-01-01T00:30:00+02:00", "20251231T223000Z"),
        ("2025-12-31T20:00:01-05:00", "20260101T010001Z"),
        ("2026-03-01T05:44:59+05:45", "20260228T235959Z"),
        ("2026-03-01T05:45:00+05:45", "20260301T000000Z"),
    ] {
        // The first is the standard's own, section 3.3.5, from before the days this almanac knows.
        let made = Stamp::parse(&local.replace("1998", "2026")).unwrap();
        let file = give_out(&[event("a", "2026-07-14", "")], &[], day("2026-01-01"), made, "").unwrap().text;
        assert!(file.contains(&format!("\r\nDTSTAMP:{}\r\n", utc.replace("1998", "2026"))), "{local}");
    }
}

/// The last day of all has no day after it: section 3.6.1 makes an event without an end one day long.
#[test]
fn the_last_day_needs_no_end() {
    let file = out(&[event("a", "2199-12-31", "")], &[], "2199-12-31").text;
    assert!(file.contains("DTSTART;VALUE=DATE:21991231\r\n") && !file.contains("DTEND"));
    assert_eq!(day("2199-12-31"), Day::LAST);
}

/// Section 3.8.7.4: a number that is 0 at first and grows with every change that matters.
#[test]
fn a_second_file_updates_what_the_first_one_made() {
    let first = out(&[event("a", "2026-07-20", "x"), event("b", "2026-07-21", "y")], &[], "2026-07-14");
    assert_eq!(sequences(&first), [(0, false), (0, false)]);

    // Nothing has changed: the same numbers, however often.
    let same =
        out(&[event("a", "2026-07-20", "x"), event("b", "2026-07-21", "y")], &first.given, "2026-07-15");
    assert_eq!(same.given, first.given);

    // One has moved, the other's words have changed.
    let moved =
        out(&[event("a", "2026-07-19", "x"), event("b", "2026-07-21", "z")], &same.given, "2026-07-16");
    assert_eq!(sequences(&moved), [(1, false), (1, false)]);

    // One is gone: withdrawn under its own name, and withdrawn in every file until its day is over.
    let gone = out(&[event("b", "2026-07-21", "z")], &moved.given, "2026-07-17");
    assert_eq!(sequences(&gone), [(1, false), (2, true)]);
    assert!(gone.text.contains("UID:a\r\n") && gone.text.contains("STATUS:CANCELLED\r\n"));
    let still = out(&[event("b", "2026-07-21", "z")], &gone.given, "2026-07-19");
    assert_eq!(still.given, gone.given);
    assert!(still.text.contains("STATUS:CANCELLED\r\n"));

    // It comes back, also after its day: never with a lower number.
    for today in ["2026-07-18", "2026-07-25"] {
        let later = out(&[event("b", "2026-07-30", "z")], &still.given, today);
        let back = out(&[event("a", "2026-07-31", "x")], &later.given, today);
        let a = back.given.iter().find(|given| given.uid == "a").unwrap();
        assert_eq!((a.sequence, a.withdrawn), (3, false), "{today}");
    }
}

/// What is past is history: it stays in the keeper's calendar, and is forgotten here in the end.
#[test]
fn a_past_event_is_left_alone() {
    let first = out(&[event("a", "2026-07-14", "x")], &[], "2026-07-14");
    let next = out(&[event("b", "2026-08-01", "x")], &first.given, "2026-07-15");
    assert!(!next.text.contains("UID:a\r\n") && !next.text.contains("CANCELLED"));
    assert_eq!(next.given.len(), 2);
    let later = out(&[event("b", "2026-10-01", "x")], &next.given, "2026-09-13");
    assert_eq!(later.given.len(), 1);
    assert_eq!(give_out(&[], &first.given, day("2026-07-15"), Stamp::midnight(day("2026-07-15")), ""), None);
}

/// Sections 3.4, 3.6 and 3.7: what a file and an event must have once, may have once, and must not have.
#[test]
fn every_file_has_the_parts_that_the_standard_demands() {
    for calendar in calendars() {
        let text = unfolded(&calendar.text);
        assert!(text.starts_with("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:"));
        assert!(text.ends_with("END:VEVENT\r\nEND:VCALENDAR\r\n"));
        assert!(!text.contains("\r\n\r\n") && !text.replace("\r\n", "").contains(['\r', '\n']));
        let mut names = Vec::new();
        for event in text.split("BEGIN:VEVENT").skip(1) {
            let own = event.split("BEGIN:VALARM").next().unwrap();
            let lot = own.contains(".lot\r\n");
            let day = |name| if lot { format!("{name}:") } else { format!("{name};VALUE=DATE:") };
            for once in ["UID:", "DTSTAMP:", "SEQUENCE:", &day("DTSTART"), &day("DTEND"), "STATUS:"] {
                assert_eq!(own.matches(&format!("\r\n{once}")).count(), 1, "{once} in {event}");
            }
            let cancelled = own.contains("STATUS:CANCELLED");
            // Section 3.6.6: an alarm that shows words has these three.
            let trigger = match event.contains("\r\nTRIGGER;VALUE=DATE-TIME:") {
                true if lot => "\r\nTRIGGER;VALUE=DATE-TIME:",
                _ if lot => "\r\nTRIGGER:-PT6H",
                _ => "\r\nTRIGGER:PT7H",
            };
            for once in ["\r\nACTION:DISPLAY", trigger, "\r\nEND:VALARM"] {
                assert_eq!(event.matches(once).count(), usize::from(!cancelled), "{once} in {event}");
            }
            assert!(!event.contains("LOCATION") && !event.contains("GEO"));
            names.push(own.lines().find_map(|line| line.strip_prefix("UID:")).unwrap().to_owned());
        }
        let count = names.len();
        names.sort();
        names.dedup();
        assert_eq!(names.len(), count, "two events of one name");
    }
}

/// What the outside readers were given is what the program writes today.
#[test]
fn the_files_that_other_programs_read_are_not_stale() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/figures/papers");
    let made = files();
    for (name, text) in &made {
        let kept = std::fs::read_to_string(folder.join(name)).unwrap_or_default();
        assert!(kept == *text, "{name} is stale: cargo run --example papers, then make figures");
    }
    assert_eq!(std::fs::read_dir(folder).unwrap().count(), made.len());
}

/// A value that needs no escape is written as it is.
#[test]
fn a_plain_value_is_not_escaped() {
    let mut out = String::new();
    put(&mut out, "PRODID", "-//a,b;c//EN");
    assert_eq!(out, "PRODID:-//a,b;c//EN\r\n");
}
