//! Sound texts to begin with, one list a door, and the book that must not change.

use crate::phone::Memory;
use crate::support::day;
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::json;
use beetle_almanac::app::bench::draft::BenchDraft;
use beetle_almanac::app::cabinet::{Cabinet, Opened};
use beetle_almanac::app::meta::Meta;
use beetle_almanac::app::prefs::Prefs;
use beetle_almanac::app::round::draft::{Drafts, Typed};
use beetle_almanac::app::unsaved::Held;
use beetle_almanac::book::entry::Entry;
use beetle_almanac::book::log::Log;
use beetle_almanac::papers::calendar::Given;
use beetle_almanac::papers::{backup, pack};
use beetle_almanac::store::envelope;
use std::rc::Rc;

const FIXTURE: &str = include_str!("../fixtures/v1/yard-backup-2026-07-14.json");
const RECORDS: &str = include_str!("../fixtures/v2/yard-backup-2026-07-14.json");
const NEWEST: &str = include_str!("../fixtures/v3/yard-backup-2026-07-14.json");
const PAGE: &str = include_str!("../fixtures/v1/page.json");
const DEMONSTRATION: &str = include_str!("../figures/papers/backup.json");

/// The key of a page that lies on the keeper's shelf.
pub(crate) const KEY: &str = "beetle-almanac:page:k7f3qa9x-2:2026-07-14";
pub(crate) const JOURNAL: &str = "beetle-almanac:journal";

pub(crate) fn today() -> Day {
    day("2026-07-20")
}

/// The shelf of a keeper with the book of the fixture.
pub(crate) fn shelf() -> Memory {
    let shelf = Rc::new(Memory::new());
    let Opened { mut cabinet, mut book, .. } = Cabinet::open(shelf.clone()).unwrap();
    cabinet.take_in(&mut book, entries(FIXTURE)).unwrap();
    shelf.restarted()
}

fn entries(file: &str) -> Vec<Entry> {
    backup::open(file).unwrap().entries
}

/// A backup of these entries.
pub(crate) fn file(entries: &[Entry]) -> String {
    let log: Log = entries.iter().cloned().collect();
    backup::write(&log, entries[0].at, Some("Truck phone"))
}

pub(crate) fn backups() -> Vec<String> {
    let (few, many) = (entries(FIXTURE), entries(DEMONSTRATION));
    let mut files = vec![FIXTURE.to_owned(), RECORDS.to_owned(), NEWEST.to_owned(), DEMONSTRATION.to_owned()];
    for length in [1, 3, 12] {
        files.push(file(&few[..length]));
        files.push(file(&many[..length]));
    }
    files.push(file(&many[many.len() - 20..]));
    files
}

/// Packs of a few hives, with their notes and without.
pub(crate) fn packs() -> Vec<String> {
    let mut packs = Vec::new();
    for (text, length) in [(FIXTURE, 5), (RECORDS, 24), (NEWEST, 28), (DEMONSTRATION, 30)] {
        let entries = entries(text);
        for notes in [true, false] {
            let few = entries[..length.min(entries.len())].iter().cloned();
            let few: Vec<Entry> =
                few.map(|entry| if notes { entry } else { entry.without_private() }).collect();
            packs.push(pack::write(&few, notes, few[0].at, Some("Truck phone")));
        }
    }
    packs
}

/// Pages in their envelopes.
pub(crate) fn pages() -> Vec<String> {
    let mut pages = vec![PAGE.trim_end().to_owned()];
    let many = entries(DEMONSTRATION);
    for lines in [&many[many.len() - 12..], &many[40..60]] {
        pages.push(["{\"entries\":", &json::list_to_text(lines), "}"].concat());
    }
    pages.iter().map(|page| envelope::wrap(1, 3, page)).collect()
}

/// Saves cut short, as the journal keeps them.
pub(crate) fn journals() -> Vec<String> {
    let texts = shelf().texts();
    let old = &texts[KEY];
    let quoted = |text: &str| json::to_text(&text.to_owned());
    let new = quoted(&envelope::wrap(1, 9, envelope::open(old).unwrap().payload));
    let other = quoted("beetle-almanac:page:keeper:2026-07-15");
    let (key, old) = (quoted(KEY), quoted(old));
    [
        format!("{{\"pages\":[{{\"k\":{key},\"o\":{old},\"n\":{new}}}]}}"),
        format!(
            "{{\"pages\":[{{\"k\":{other},\"o\":null,\"n\":{new}}},{{\"k\":{key},\"o\":{old},\"n\":{new}}}]}}"
        ),
    ]
    .iter()
    .map(|intent| envelope::wrap(1, 1, intent))
    .collect()
}

fn drafts() -> Drafts {
    let mut drafts = Drafts { day: "14.7.".to_owned(), ..Drafts::default() };
    for (n, entry) in entries(FIXTURE).iter().enumerate().take(3) {
        let typed = Typed {
            before: "¼".to_owned(),
            count: "5–19".to_owned(),
            note: "wet \"lid\"".to_owned(),
            traps: vec![entry.id.thing(u16::try_from(n).unwrap())],
            begun: Some(today()),
            ..Typed::default()
        };
        drafts.put(&entry.id.thing(1), typed);
    }
    drafts.open = Some(entries(FIXTURE)[0].id.thing(1));
    drafts
}

fn meta() -> Meta {
    let uid = "k7f3qa9x-2.traps.k7f3qa9x-5.20260714".to_owned();
    let given =
        Given { uid, day: today(), sequence: 2, words: "0a1b2c3d".to_owned(), withdrawn: false, hours: None };
    let label = Some("Truck phone".to_owned());
    Meta { label, since: today(), written: true, backup: Some((today(), 33)), calendar: vec![given] }
}

/// What lies on the desk, in its envelope: the entry in the making, what the app remembers.
pub(crate) fn desk() -> Vec<String> {
    let drafts = json::to_text(&json::to_text(&drafts()));
    [drafts, json::to_text(&meta())].iter().map(|payload| envelope::wrap(1, 4, payload)).collect()
}

/// What lies there without one: how the page looks, the fields, a tab's own.
pub(crate) fn slots() -> Vec<String> {
    let bench = BenchDraft::default().with("hives", "12").with("boxes", "three \u{202e}");
    let acts = [Held { said: "Hive 7: topped up".to_owned(), entries: entries(FIXTURE)[16..19].to_vec() }];
    vec![
        json::to_text(&Prefs::default()),
        json::to_text(&bench),
        json::to_text(&drafts()),
        json::to_text(&meta()),
        json::list_to_text(&acts),
        json::to_text(&entries(FIXTURE)[3]),
        "null".to_owned(),
    ]
}

/// What people type into a field.
pub(crate) fn typed() -> Vec<String> {
    let typed = [
        "1 1/2 fl oz",
        "¼",
        "half",
        "5–19",
        "50+",
        "1.234,5",
        "14.7.2026",
        "2026-07-14",
        "3, 4, 7-12 and blue",
        "12 %",
        "٣٫٥",
        "１２",
        "−3",
        "1e3",
        "€ 4,50",
        "20 mm",
        "7 5/8 in",
        "2/0",
        "yesterday",
        "1'234.50",
        "0x10",
    ];
    typed.iter().map(|text| (*text).to_owned()).collect()
}
