//! The quick reader of pages beside the general one: where it finds something, both find the same.

use super::support::Unicode;
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::json;
use beetle_almanac::book::demo;
use beetle_almanac::book::entry::Entry;
use beetle_almanac::book::page::Page;
use beetle_almanac::book::plain;

const LINES: [&str; 4] = [
    r#"{"id":"k7f3qa-12","day":"2026-07-14","at":"2026-07-14T08:05:31+02:00","what":{"check":{"hive":"k7f3qa-3","did":"topped_up","before":31,"after":50,"count":0,"note":"Königin ✓"}},"by":"Ann","yard":"k7f3qa-1","bulk":"k7f3qa-11"}"#,
    r#"{"id":"k7f3qa-13","day":"2026-07-14","at":"2026-07-14T08:06:31-11:30","what":{"skip":{"hive":"k7f3qa-4.2","why":"no_time"}},"yard":"k7f3qa-1"}"#,
    r#"{"id":"k7f3qa-14","day":"2026-07-14","at":"2026-07-14T08:07:31-11:30","what":{"record":{"blank":"look","hives":["k7f3qa-4","k7f3qa-5"],"answers":{"larvae":"few","adults":11,"frames_of_bees":7.25}}},"by":"Ann","yard":"k7f3qa-1"}"#,
    r#"{"id":"k7f3qa-15","day":"2026-07-14","at":"2026-07-14T08:08:31-11:30","what":{"record":{"blank":"trip","answers":{"oil_taken":{"n":-2.5,"unit":"L"},"traps_taken":12}}}}"#,
];

fn page_of(lines: &[&str]) -> String {
    ["{\"entries\":[", &lines.join(","), "]}"].concat()
}

/// Whether the line alone is read quickly; if so, it says what the general reader finds.
fn quick(line: &str) -> bool {
    let quick = plain::line(line);
    if quick.is_some() {
        assert_eq!(quick, json::from_text::<Entry>(line), "{line}");
    }
    same(&page_of(&[LINES[0], line, LINES[2]]));
    quick.is_some()
}

/// Whether the page is read; if so, it says what the general reader finds.
fn same(text: &str) -> bool {
    let quick = plain::page(text);
    if quick.is_some() {
        assert_eq!(quick, json::from_text::<Page>(text), "{text}");
    }
    quick.is_some()
}

#[test]
fn plain_work_and_plain_records_are_read_quickly_and_the_same() {
    for line in LINES {
        assert!(quick(line), "{line}");
    }
    let page = page_of(&LINES);
    assert_eq!(json::to_text(&plain::page(&page).unwrap()), page);
}

/// Every letter taken out, doubled, and put in place of another: whatever still reads quickly, reads the same.
#[test]
fn a_page_with_one_letter_changed_never_means_two_things() {
    for line in LINES {
        for (at, letter) in line.char_indices() {
            let (before, after) = (&line[..at], &line[at + letter.len_utf8()..]);
            quick(before);
            same(&page_of(&[before]).replace("]}", ""));
            for put in [
                "", "0", "1", "9", ".", "-", "e", "\"", "\\", "\\u0041", " ", ",", "{", "}", "]", "null",
                "\t", "a", "é",
            ] {
                quick(&[before, put, after].concat());
                quick(&[before, put, &letter.to_string(), after].concat());
            }
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
        "-0",
        "-0.000001",
        "0.1234567",
        "999999999.999999",
        "1000000000.000001",
        "1.",
        ".5",
        "-",
        "4294967295",
        "4294967296",
        "{}",
        "\"7\"",
        "",
    ] {
        for (line, field) in LINES.iter().zip(["\"before\":31", "", "\"adults\":11", "\"n\":-2.5"]) {
            let name = field.split(':').next().unwrap();
            quick(&line.replace(field, &format!("{name}:{number}")));
        }
        quick(&LINES[0].replace("\"after\":50", &format!("\"after\":{number}")));
        quick(&LINES[0].replace("\"count\":0", &format!("\"count\":{number}")));
        quick(&LINES[2].replace("7.25", number));
        quick(&LINES[3].replace("12}", &format!("{number}}}")));
    }
}

#[test]
fn fields_in_another_order_twice_or_unknown_are_left_to_the_other() {
    for (line, from, to) in [
        (0, r#""by":"Ann","yard":"k7f3qa-1""#, r#""yard":"k7f3qa-1","by":"Ann""#),
        (0, r#""by":"Ann","#, r#""by":"Ann","by":"Ann","#),
        (0, r#""by":"Ann","#, r#""replaces":"k7f3qa-2","#),
        (0, r#""by":"Ann","#, r#""who":"Ann","#),
        (0, r#""did":"topped_up""#, r#""did":"topped_up","traps":["k7f3qa-3.1"]"#),
        (0, r#""did":"topped_up""#, r#""did":"drank_it""#),
        (2, r#""larvae":"few","adults":11"#, r#""adults":11,"larvae":"few""#),
        (2, r#""adults":11"#, r#""adults":11,"adults":12"#),
        (2, r#""adults":11"#, r#""elders":11"#),
        (2, r#""larvae":"few""#, r#""larvae":"some""#),
        (2, r#""hives":["k7f3qa-4","k7f3qa-5"]"#, r#""hives":[]"#),
        (2, "look", "glance"),
        (3, r#""unit":"L""#, r#""unit":"barrel""#),
        (3, r#""n":-2.5,"unit":"L""#, r#""unit":"L","n":-2.5"#),
    ] {
        let changed = LINES[line].replacen(from, to, 1);
        assert_ne!(changed, LINES[line], "{from}");
        assert!(!quick(&changed), "{to}");
        // The page goes on behind it, where the general reader does.
        let page = page_of(&[LINES[1], &changed, LINES[3]]);
        assert_eq!(same(&page), json::from_text::<Page>(&page).is_some(), "{to}");
    }
}

#[test]
fn a_page_with_anything_round_its_lines_is_left_to_the_other() {
    let page = page_of(&LINES);
    for (from, to) in [
        ("]}", "]} "),
        ("]}", "],\"more\":1}"),
        ("{\"entries\"", "{ \"entries\""),
        ("},{", "} ,{"),
        ("},{", "},,{"),
    ] {
        let changed = page.replacen(from, to, 1);
        assert_ne!(changed, page);
        assert!(!same(&changed), "{to}");
    }
    // A blank before a line is the general reader's, and it goes on behind it.
    assert!(same(&page.replacen("},{", "}, {", 1)));
}

/// A whole season with every kind of line in it.
#[test]
fn the_demonstration_reads_the_same_line_by_line() {
    let day = Day::parse("2026-07-14").unwrap();
    let lines = demo::demo(day, "Europe/Berlin", 120, &Unicode).unwrap();
    let quickly = lines.iter().filter(|line| quick(&json::to_text(*line))).count();
    assert!(quickly * 10 > lines.len() * 7, "{quickly} of {}", lines.len());
    let page = Page { entries: lines };
    assert_eq!(plain::page(&json::to_text(&page)), Some(page));
}
