//! A backup that was cut off or changed on its way: what can still be read in it.

use crate::Yard;
use crate::support::{day, pen};
use beetle_almanac::almanac::day::Stamp;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Did, Entry};
use beetle_almanac::papers::backup::{self, BackupError};
use beetle_almanac::papers::recover::{BY, Recovered, recover};

/// A yard with two days of work, and its file.
fn saved() -> (Yard, String) {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    for tag in ["1", "2"] {
        yard.log(tag, day("2026-05-15"), Did::ToppedUp, (Some(30), Some(50)));
    }
    let text = backup::write(yard.book.log(), pen("aa", day("2026-05-15")).at, Some("Ann"));
    (yard, text)
}

fn now() -> Stamp {
    Stamp::midnight(day("2026-06-01"))
}

fn read(text: &str) -> Vec<Entry> {
    recover(text, now()).map(|rest| rest.copy.entries).unwrap_or_default()
}

#[test]
fn the_mail_cut_her_backup_off_and_every_line_before_the_cut_is_offered() {
    let (yard, text) = saved();
    let all: Vec<Entry> = yard.book.log().entries().cloned().collect();
    let mut seen = 0;
    for at in (0..text.len()).filter(|at| text.is_char_boundary(*at)) {
        let cut = &text[..at];
        assert!(backup::open(cut).is_err());
        let rest = read(cut);
        assert_eq!(rest, all[..rest.len()], "cut off at {at}");
        assert!(rest.len() >= seen, "cut off at {at}");
        seen = rest.len();
    }
    assert_eq!(seen, all.len());
    let half = recover(&text[..text.len() / 2], now()).unwrap();
    assert_eq!(half.held, Some(all.len()), "the head says how many there were");
    assert_eq!(half.unread, 1, "the line that was cut in two");
}

#[test]
fn one_letter_of_her_backup_was_changed_and_the_other_lines_are_offered() {
    let (yard, text) = saved();
    let all: Vec<Entry> = yard.book.log().entries().cloned().collect();
    for at in text.find("\"entries\": [").unwrap() + 12..text.len() {
        let mut bytes = text.clone().into_bytes();
        bytes[at] = if bytes[at] == b'\\' { b'/' } else { b'\\' };
        let Ok(changed) = String::from_utf8(bytes) else { continue };
        if backup::open(&changed).is_ok() {
            continue;
        }
        let rest = read(&changed);
        let strange = rest.iter().filter(|entry| !all.contains(entry)).count();
        // An end of line that is gone makes one of two.
        let touched = 1 + usize::from(text.as_bytes()[at] == b'\n');
        assert!(rest.len() + touched >= all.len() && strange <= 1, "changed at {at}: {} lines", rest.len());
    }
}

#[test]
fn what_was_recovered_is_a_file_that_says_so_and_comes_in_once() {
    let (yard, text) = saved();
    let Recovered { text: copy, copy: opened, .. } = recover(&text[..text.len() - 400], now()).unwrap();
    assert_eq!(backup::open(&copy), Ok(opened.clone()));
    assert_eq!((opened.by.as_deref(), opened.made), (Some(BY), now()));
    assert!(opened.entries.len() < yard.book.log().len());
    let mut book = Book::default();
    let union = opened.preview(&book);
    assert_eq!((union.new, union.same), (opened.entries.len(), 0));
    book.add(opened.entries.clone());
    let again = opened.preview(&book);
    assert_eq!((again.new, again.same), (0, opened.entries.len()));
    // The sound copy that turns up later brings the rest.
    let whole = backup::open(&text).unwrap();
    book.add(whole.entries);
    assert_eq!(book, yard.book);
}

#[test]
fn of_two_texts_under_one_name_a_damaged_file_gives_neither() {
    let (yard, text) = saved();
    let line = text.lines().find(|line| line.contains("topped_up")).unwrap();
    let other = line.trim_end_matches(',').replace("\"2026-05-15\"", "\"2026-05-14\"");
    assert_ne!(line.trim_end_matches(','), other);
    let twice = text.replace(line, &format!("{},\n{line}", other.trim_end_matches(',')));
    assert_eq!(backup::open(&twice), Err(BackupError::Damaged));
    let rest = recover(&twice, now()).unwrap();
    assert_eq!((rest.copy.entries.len(), rest.unread), (yard.book.log().len() - 1, 2));
    // The same line twice is that line.
    let again = text.replace(line, &format!("{line}\n{line}"));
    assert_eq!(read(&again).len(), yard.book.log().len());
}

#[test]
fn nothing_is_recovered_from_a_file_of_a_newer_version_or_of_another_program() {
    let (_, text) = saved();
    let newer = text.replace("\"version\": 1,", "\"version\": 99,");
    assert_ne!(newer, text);
    for text in ["", "{}", "{\"songs\":[1]}", "hive,date\n1,2026-05-01\n", &newer[..newer.len() - 9]] {
        assert_eq!(recover(text, now()), None, "{text}");
    }
}

#[test]
fn a_file_whose_lines_lie_in_any_order_is_read_in_a_moment() {
    let (_, text) = saved();
    let line = text.lines().find(|line| line.contains("topped_up")).unwrap().trim_end_matches(',');
    let id = line.split('"').nth(3).unwrap();
    let many: Vec<String> = (0..20_000).map(|n| line.replace(id, &format!("aa-{}", 100 + n))).collect();
    let (in_order, turned) = (many.join("\n"), many.into_iter().rev().collect::<Vec<_>>().join("\n"));
    // A table that moved all lines for each would take a hundred times as long.
    let time = |text: &str| {
        let since = std::time::Instant::now();
        assert_eq!(read(text).len(), 20_000);
        since.elapsed()
    };
    let (plain, turned) = (time(&in_order), time(&turned));
    assert!(turned < plain * 10, "{turned:?} against {plain:?}");
}

#[test]
fn a_digit_slipped_into_one_number_and_the_other_lines_are_offered() {
    let (yard, text) = saved();
    let cut = &text[..text.len() - 3];
    let all = yard.book.log().len();
    assert_eq!(read(cut).len(), all);
    let last = yard.book.log().entries().last().unwrap().id.clone();
    let id = |n: &str| ["\"id\":\"", last.writer().as_str(), "-", n, "\""].concat();
    for n in ["3000003", "1006001", "999999999"] {
        let changed = cut.replace(&id(&last.n().to_string()), &id(n));
        assert_ne!(changed, cut);
        let rest = recover(&changed, now()).unwrap();
        assert_eq!((rest.copy.entries.len(), rest.unread), (all - 1, 1), "{n}");
    }
}
