//! The quick reader of pages beside the general one: where it finds something, both find the same.

use super::support::Unicode;
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::json;
use beetle_almanac::book::demo;
use beetle_almanac::book::page::Page;
use beetle_almanac::book::plain;

const PLAIN: &str = r#"{"entries":[{"id":"k7f3qa-12","day":"2026-07-14","at":"2026-07-14T08:05:31+02:00","what":{"check":{"hive":"k7f3qa-3","did":"topped_up","before":31,"after":50,"count":0,"note":"Königin ✓"}},"by":"Ann","yard":"k7f3qa-1","bulk":"k7f3qa-11"},{"id":"k7f3qa-13","day":"2026-07-14","at":"2026-07-14T08:06:31-11:30","what":{"skip":{"hive":"k7f3qa-4.2","why":"no_time"}},"yard":"k7f3qa-1"}]}"#;

fn same(text: &str) -> bool {
    let quick = plain::page(text);
    if quick.is_some() {
        assert_eq!(quick, json::from_text::<Page>(text), "{text}");
    }
    quick.is_some()
}

#[test]
fn plain_work_is_read_quickly_and_the_same() {
    assert!(same(PLAIN));
    assert_eq!(json::to_text(&plain::page(PLAIN).unwrap()), PLAIN);
}

/// Every letter taken out, doubled, and put in place of another: whatever still reads quickly, reads the same.
#[test]
fn a_page_with_one_letter_changed_never_means_two_things() {
    let places: Vec<(usize, char)> = PLAIN.char_indices().collect();
    for (at, letter) in places {
        let (before, after) = (&PLAIN[..at], &PLAIN[at + letter.len_utf8()..]);
        same(before);
        for put in [
            "", "0", "1", "9", ".", "-", "e", "\"", "\\", "\\u0041", " ", ",", "{", "}", "]", "null", "\t",
            "a", "é",
        ] {
            same(&[before, put, after].concat());
            same(&[before, put, &letter.to_string(), after].concat());
        }
    }
}

/// Numbers as people and other programs write them.
#[test]
fn numbers_mean_the_same_or_are_left_to_the_other() {
    for number in [
        "0",
        "00",
        "01",
        "7",
        "100",
        "101",
        "1e2",
        "5.5",
        "-1",
        "4294967295",
        "4294967296",
        "{}",
        "\"7\"",
        "",
    ] {
        for field in ["\"before\":31", "\"after\":50", "\"count\":0"] {
            let name = &field[..field.find(':').unwrap()];
            same(&PLAIN.replace(field, &format!("{name}:{number}")));
        }
    }
}

#[test]
fn fields_in_another_order_twice_or_unknown_are_left_to_the_other() {
    for (from, to) in [
        (r#""by":"Ann","yard":"k7f3qa-1""#, r#""yard":"k7f3qa-1","by":"Ann""#),
        (r#""by":"Ann","#, r#""by":"Ann","by":"Ann","#),
        (r#""by":"Ann","#, r#""replaces":"k7f3qa-2","#),
        (r#""by":"Ann","#, r#""who":"Ann","#),
        (r#""did":"topped_up""#, r#""did":"topped_up","traps":["k7f3qa-3.1"]"#),
        (r#""did":"topped_up""#, r#""did":"drank_it""#),
        ("]}", "]} "),
        ("[", "[ "),
    ] {
        assert!(!same(&PLAIN.replacen(from, to, 1)), "{to}");
    }
}

/// A whole season with every kind of line in it.
#[test]
fn the_demonstration_reads_the_same_line_by_line() {
    let day = Day::parse("2026-07-14").unwrap();
    let lines = demo::demo(day, "Europe/Berlin", 120, &Unicode).unwrap();
    let mut quick = 0;
    for line in lines {
        let text = json::to_text(&Page { entries: vec![line.clone()] });
        if same(&text) {
            quick += 1;
            assert_eq!(plain::page(&text).unwrap().entries, [line]);
        }
    }
    assert!(quick > 50, "{quick}");
}
