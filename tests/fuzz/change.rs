//! Ways to spoil a text.

use crate::support::chance::Chance;
use beetle_almanac::almanac::checksum;
use beetle_almanac::almanac::json::{self, fields_as_written};
use beetle_almanac::book::entry::{Entry, What};
use beetle_almanac::store::envelope;
use std::collections::BTreeSet;
use std::ops::Range;

/// Most bytes of a changed text: time is bounded for a text of this size.
pub(crate) const MOST: usize = 1_000_000;

/// Numbers at which one or the other type ends, and how a number can be written.
const NUMBERS: [&str; 30] = [
    "0",
    "-0",
    "1",
    "-1",
    "2.5",
    "100",
    "100.000001",
    "0.0000004",
    "0.0000005",
    "255",
    "256",
    "65535",
    "65536",
    "999999999",
    "1000000000",
    "1000000000.000001",
    "1000000001",
    "4294967295",
    "4294967296",
    "9007199254740993",
    "18446744073709551616",
    "1e308",
    "1e-400",
    "1e9223372036854775806",
    "1e-9223372036854775808",
    "00",
    "1.",
    "+1",
    "0.1e1",
    "NaN",
];
/// Signs that mean something to a reader, or nothing to anybody.
const SIGNS: [&str; 24] = [
    "\"",
    "\\",
    "{",
    "}",
    "[",
    "]",
    ":",
    ",",
    "\0",
    "\n",
    "\r",
    "\u{feff}",
    "\u{202e}",
    "\u{2028}",
    "\u{301}\u{301}\u{301}",
    "\u{1f468}\u{200d}\u{1f469}",
    "\u{10ffff}",
    "\\ud800",
    "\\udc00\\ud800",
    "\\u0000",
    "<script>",
    "\u{fffd}",
    "null",
    "\\x",
];
/// Words of the format, so that one kind of entry can become another.
const WORDS: [&str; 24] = [
    "check",
    "hive",
    "yard",
    "struck",
    "note",
    "skip",
    "order",
    "traps_on",
    "traps_off",
    "boxes_on",
    "box_off",
    "replaces",
    "bulk",
    "hive_moved",
    "hive_ended",
    "season",
    "kind",
    "kind_changed",
    "2000-01-01",
    "2199-12-31",
    "2026-02-29",
    "k7f3qa9x-1000000000",
    "k7f3qa9x-5.65535",
    "demo-1",
];

/// `text`, changed in one to four ways.
pub(crate) fn changed(text: &str, others: &[String], chance: &mut Chance) -> String {
    let mut bytes = text.as_bytes().to_vec();
    for _ in 0..=chance.below(4) {
        change(&mut bytes, others, chance);
        bytes.truncate(MOST);
    }
    // As the page does with the bytes of a file.
    String::from_utf8_lossy(&bytes).into_owned()
}

fn change(bytes: &mut Vec<u8>, others: &[String], chance: &mut Chance) {
    let at = chance.below(bytes.len() + 1);
    match chance.below(16) {
        0 => {
            if let Some(byte) = bytes.get_mut(at) {
                *byte ^= 1 << chance.below(8);
            }
        }
        1 => bytes.truncate(at),
        2 => drop(bytes.drain(stretch(bytes, at, chance))),
        3 => {
            let piece = bytes[stretch(bytes, at, chance)].to_vec();
            insert(bytes, at, &piece);
        }
        4 => {
            let other = chance.pick(others).as_bytes();
            let from = chance.below(other.len() + 1);
            let piece = other[stretch(other, from, chance)].to_vec();
            insert(bytes, at, &piece);
        }
        5 | 6 => swap(bytes, chance, numbers, &mut |chance| {
            if chance.once_in(20) {
                "9".repeat(1 + chance.below(3000))
            } else {
                (*chance.pick(&NUMBERS)).to_owned()
            }
        }),
        7 => {
            let sign = *chance.pick(&SIGNS);
            insert(bytes, at, sign.repeat(1 + chance.below(3)).as_bytes());
        }
        8 => {
            // Round a value, round everything, or nowhere in particular; now and then very deep.
            let deep = if chance.once_in(10) { 1 + chance.below(200_000) } else { 1 + chance.below(140) };
            let (open, close) = *chance.pick(&[("[", "]"), ("{\"a\":", "}")]);
            let spans = texts(bytes);
            let span = if spans.is_empty() || chance.once_in(4) {
                0..bytes.len()
            } else {
                chance.pick(&spans).clone()
            };
            insert(bytes, span.end, close.repeat(deep).as_bytes());
            insert(bytes, span.start, open.repeat(deep).as_bytes());
        }
        9 => {
            // A field twice.
            let spans = texts(bytes);
            let Some(span) = spans.get(chance.below(spans.len())).cloned() else { return };
            let twin = [&bytes[span.clone()], b":0,"].concat();
            let times = if chance.once_in(10) { 1 + chance.below(20_000) } else { 1 };
            insert(bytes, span.start, &twin.repeat(times));
        }
        10 | 11 => {
            // A text in the place of another one, so that names mean something else.
            let spans = texts(bytes);
            if let Some(from) = spans.get(chance.below(spans.len())) {
                let text = bytes[from.clone()].to_vec();
                let to = chance.pick(&spans).clone();
                bytes.splice(to, text);
            }
        }
        12 => swap(bytes, chance, texts, &mut |chance| format!("\"{}\"", chance.pick(&WORDS))),
        13 => {
            let spans = texts(bytes);
            if let Some(span) = spans.get(chance.below(spans.len())) {
                let long = chance.pick(&["x", "\u{e4}", "\u{301}", "\\u0041"]).repeat(1 + chance.below(700));
                insert(bytes, span.start + 1, long.as_bytes());
            }
        }
        14 => lines(bytes, chance),
        _ => {
            // Values of other types.
            swap(bytes, chance, texts, &mut |chance| {
                (*chance.pick(&[
                    "null",
                    "true",
                    "0",
                    "[]",
                    "{}",
                    "\"\"",
                    "[[],[]]",
                    "{\"low\":1,\"high\":0}",
                ]))
                .to_owned()
            });
        }
    }
}

fn insert(bytes: &mut Vec<u8>, at: usize, piece: &[u8]) {
    if bytes.len() + piece.len() <= MOST {
        bytes.splice(at..at, piece.iter().copied());
    }
}

/// From `at` on, mostly short.
fn stretch(bytes: &[u8], at: usize, chance: &mut Chance) -> Range<usize> {
    let most = if chance.once_in(4) { bytes.len() } else { 40 };
    at..(at + chance.below(most + 1)).min(bytes.len())
}

fn swap(
    bytes: &mut Vec<u8>,
    chance: &mut Chance,
    find: fn(&[u8]) -> Vec<Range<usize>>,
    new: &mut dyn FnMut(&mut Chance) -> String,
) {
    let spans = find(bytes);
    if let Some(span) = spans.get(chance.below(spans.len())).cloned() {
        let new = new(chance);
        bytes.splice(span, new.into_bytes());
    }
}

/// Lines, each an entry in a backup: one away, one twice, two in the place of each other, or all backwards.
fn lines(bytes: &mut Vec<u8>, chance: &mut Chance) {
    let mut lines: Vec<&[u8]> = bytes.split(|byte| *byte == b'\n').collect();
    let (one, other) = (chance.below(lines.len()), chance.below(lines.len()));
    match chance.below(4) {
        0 => drop(lines.remove(one)),
        1 => lines.insert(other, lines[one]),
        2 => lines.swap(one, other),
        _ => lines.reverse(),
    }
    *bytes = lines.join(&b'\n');
}

/// Where texts stand, with their marks.
fn texts(bytes: &[u8]) -> Vec<Range<usize>> {
    let (mut spans, mut open, mut at) = (Vec::new(), None, 0);
    while at < bytes.len() {
        match (bytes[at], open) {
            (b'\\', Some(_)) => at += 1,
            (b'"', Some(start)) => {
                spans.push(start..at + 1);
                open = None;
            }
            (b'"', None) => open = Some(at),
            _ => {}
        }
        at += 1;
    }
    spans
}

/// Where digits stand, inside texts too: a day and a name are made of them.
fn numbers(bytes: &[u8]) -> Vec<Range<usize>> {
    let (mut spans, mut start) = (Vec::new(), None);
    for at in 0..=bytes.len() {
        match (bytes.get(at).is_some_and(u8::is_ascii_digit), start) {
            (true, None) => start = Some(at),
            (false, Some(from)) => {
                spans.push(from..at);
                start = None;
            }
            _ => {}
        }
    }
    spans
}

/// A changed backup with the counts and the checksum that belong to it, so that what is wrong with it has to be found by
/// looking at the entries.
pub(crate) fn mended_backup(text: &str) -> Option<String> {
    mended(text, &|_, raw| checksum::of(&[raw]))
}

/// The same of a pack, whose checksum is of its head too.
pub(crate) fn mended_pack(text: &str) -> Option<String> {
    mended(text, &|fields, raw| {
        let said = |name: &str| {
            let raw = fields.iter().find(|(field, _)| field == name).map(|(_, raw)| *raw);
            raw.and_then(json::from_text::<String>).unwrap_or_default()
        };
        let made = json::to_text(&said("made"));
        checksum::of(&[&made, &said("by"), &said("notes"), raw])
    })
}

type Sum<'a> = &'a dyn Fn(&[(String, &str)], &str) -> String;

fn mended(text: &str, sum: Sum<'_>) -> Option<String> {
    let fields = fields_as_written(text)?;
    let (_, raw) = fields.iter().find(|(name, _)| name == "entries")?;
    let counts = json::list_from_text::<Entry>(raw).map(|entries| {
        let brings = |pick: fn(&What) -> bool| entries.iter().filter(|entry| pick(&entry.what)).count();
        let yards = brings(|what| matches!(what, What::Yard { .. }));
        let hives = brings(|what| matches!(what, What::Hive { .. }));
        let days = entries.iter().map(|entry| entry.day).collect::<BTreeSet<_>>().len();
        format!("{{\"entries\":{},\"yards\":{yards},\"hives\":{hives},\"days\":{days}}}", entries.len())
    });
    let mut out = "{".to_owned();
    for (index, (name, value)) in fields.iter().enumerate() {
        out.push_str(if index == 0 { "" } else { "," });
        json::write_text(name, &mut out);
        out.push(':');
        match (name.as_str(), &counts) {
            ("counts", Some(counts)) => out.push_str(counts),
            ("checksum", _) => json::write_text(&sum(&fields, raw), &mut out),
            _ => out.push_str(value),
        }
    }
    Some(out + "}")
}

/// A changed envelope with the checksum that belongs to it.
pub(crate) fn mended_envelope(text: &str) -> String {
    let payload = text.split_once("\"d\":").and_then(|(_, rest)| rest.strip_suffix('}')).unwrap_or(text);
    let generation = text.split_once("\"g\":").and_then(|(_, rest)| rest.split_once(',')?.0.parse().ok());
    envelope::wrap(1, generation.unwrap_or(3), payload)
}
