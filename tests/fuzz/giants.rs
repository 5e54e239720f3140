//! Texts of a megabyte that are made to be slow or deep. Each is sound as far as it can be.

use crate::change::MOST;
use beetle_almanac::almanac::json;
use beetle_almanac::store::envelope;
use std::fmt::Write as _;

/// Every one with a name, and the doors it is made for.
pub(crate) fn all() -> Vec<(&'static str, String, &'static [&'static str])> {
    const ALL: &[&str] = &["backup", "page", "second", "journal", "desk", "slots", "fields"];
    let plain = vec![
        ("brackets that open", "[".repeat(MOST)),
        ("brackets round brackets", ["[".repeat(MOST / 2), "]".repeat(MOST / 2)].concat()),
        ("fields round fields", ["{\"a\":".repeat(MOST / 6), "0".to_owned(), "}".repeat(MOST / 6)].concat()),
        ("a number without end", "9".repeat(MOST)),
        ("a fraction without end", format!("0.{}", "3".repeat(MOST))),
        ("line ends of another system", "\r".repeat(MOST)),
        ("escapes", format!("\"{}\"", "\\u0041".repeat(MOST / 6))),
        ("words without end", "1 ".repeat(MOST / 2)),
        ("tags without end", (1..).map(|n| format!("{n},")).take(150_000).collect()),
        ("ranges without end", "1-500,".repeat(MOST / 6)),
        ("signs on one letter", format!("a{}", "\u{301}".repeat(MOST / 2))),
    ];
    let mut texts: Vec<_> = plain.into_iter().map(|(name, text)| (name, text, ALL)).collect();
    for (name, entries) in books() {
        let file = format!(
            "{{\"format\":\"beetle-almanac backup\",\"version\":1,\"made\":\"2026-07-14T20:15:00+02:00\",\"counts\":{{\"entries\":0,\"yards\":0,\"hives\":0,\"days\":0}},\"checksum\":\"\",\"about\":\"\",\"entries\":[{entries}]}}"
        );
        texts.push((name, file, &["backup"]));
        let page = format!("{{\"entries\":[{entries}]}}");
        texts.push((name, envelope::wrap(1, 3, &page), &["page", "second"]));
    }
    let wide = ["yard,hive", &",a".repeat(MOST / 4), "\n", &"F,1,2026-07-01\n".repeat(4_000)].concat();
    texts.push(("a table with columns without end", wide, &["table"]));
    texts.push(("a draft of many hives", envelope::wrap(1, 3, &json::to_text(&drafts())), &["desk"]));
    texts.push(("a draft of many hives", drafts(), &["slots"]));
    texts
}

fn drafts() -> String {
    let mut text = "{\"day\":\"\",\"hives\":[".to_owned();
    for n in 1.. {
        let comma = if n > 1 { "," } else { "" };
        let _ = write!(
            text,
            "{comma}[\"aa-{n}\",{{\"before\":\"\",\"after\":\"\",\"count\":\"1\",\"note\":\"\"}}]"
        );
        if text.len() > MOST - 100 {
            break;
        }
    }
    text + "]}"
}

const DAY: &str = "\"day\":\"2026-07-14\",\"at\":\"2026-07-14T08:05:31+02:00\"";

fn entry(n: usize, what: &str, more: &str) -> String {
    format!("{{\"id\":\"aa-{n}\",{DAY},\"what\":{{{what}}},\"yard\":\"k7f3qa9x-2\"{more}}}")
}

/// As many of them as go into a megabyte.
fn lines(first: &[String], line: &dyn Fn(usize) -> String) -> String {
    let mut text = first.join(",");
    for n in first.len() + 1.. {
        if !text.is_empty() {
            text.push(',');
        }
        text.push_str(&line(n));
        if text.len() > MOST - 1000 {
            break;
        }
    }
    text
}

/// A list as long as goes into a megabyte.
fn names(name: &dyn Fn(usize) -> String, most: usize) -> String {
    let mut text = String::new();
    for n in 0..most {
        if n > 0 {
            text.push(',');
        }
        let _ = write!(text, "\"{}\"", name(n));
        if text.len() > MOST - 2000 {
            break;
        }
    }
    text
}

#[allow(clippy::too_many_lines)] // one of each
fn books() -> Vec<(&'static str, String)> {
    let kind = "\"kind\":{\"name\":\"Slim\",\"form\":\"between_frame\",\"reusable\":false,\"inner\":{},\"outer\":{},\"fill\":50,\"max_days\":14}";
    let yard = "\"yard\":{\"name\":\"Y\",\"zone\":\"UTC\"}";
    let hive = |n: usize| {
        entry(
            n,
            "\"hive\":{\"yard\":\"aa-2\",\"tag\":\"1\",\"size\":\"full\",\"boxes\":[{\"depth\":\"deep\",\"wants\":2}]}",
            "",
        )
    };
    let ground = [entry(1, kind, ""), entry(2, yard, ""), hive(3)];
    let note = |n: usize| entry(n, "\"note\":{\"text\":\"n\"}", "");
    let check = |n: usize, more: &str| {
        entry(n, &format!("\"check\":{{\"hive\":\"aa-3\",\"did\":\"topped_up\",\"after\":50{more}}}"), "")
    };
    let with_ground = |line: &dyn Fn(usize) -> String| lines(&ground, line);
    let last = |what: String| {
        let mut all = ground.to_vec();
        all.push(entry(900_000, &what, ""));
        all.join(",")
    };
    let traps_on = |n: usize| {
        let trap = "{\"box\":\"aa-3.1\",\"trap\":{\"spot\":\"floor\",\"kind\":\"aa-1\"}}";
        entry(n, &format!("\"traps_on\":{{\"hive\":\"aa-3\",\"traps\":[{}]}}", vec![trap; 200].join(",")), "")
    };
    let many_traps = with_ground(&traps_on);
    vec![
        ("one field many times", format!("{{{}\"id\":\"aa-1\"}}", "\"id\":0,".repeat(MOST / 7))),
        ("fields nobody knows", format!("{{{}\"id\":\"aa-1\"}}", "\"x\":0,".repeat(MOST / 6))),
        ("notes", lines(&[], &note)),
        ("notes backwards", lines(&[], &|n| note(900_000 - n))),
        ("one note many times", lines(&[], &|_| note(1))),
        ("kinds", lines(&[], &|n| entry(n, kind, ""))),
        ("yards", lines(&[], &|n| entry(n, yard, ""))),
        ("hives", with_ground(&hive)),
        ("hives backwards", lines(&ground, &|n| hive(900_000 - n))),
        ("checks", with_ground(&|n| check(n, ""))),
        (
            "checks by many",
            with_ground(&|n| check(n, "").replace(&format!("aa-{n}\""), &format!("w{n}-{n}\""))),
        ),
        ("traps", many_traps.clone()),
        ("traps and checks", {
            let half: Vec<String> = (4..40).map(traps_on).collect();
            let first: Vec<String> = ground.iter().cloned().chain(half).collect();
            lines(&first, &|n| check(n, ",\"before\":40,\"count\":3"))
        }),
        (
            "boxes",
            with_ground(&|n| {
                entry(
                    n,
                    "\"boxes_on\":{\"hive\":\"aa-3\",\"above\":0,\"boxes\":[{\"depth\":\"deep\",\"wants\":2}]}",
                    "",
                )
            }),
        ),
        (
            "boxes full of boxes",
            with_ground(&|n| {
                let boxes = vec!["{\"depth\":\"deep\",\"wants\":2}"; 200].join(",");
                entry(n, &format!("\"boxes_on\":{{\"hive\":\"aa-3\",\"above\":0,\"boxes\":[{boxes}]}}"), "")
            }),
        ),
        (
            "corrections of corrections",
            with_ground(&|n| {
                entry(
                    n,
                    "\"note\":{\"text\":\"n\"}",
                    &if n > 4 { format!(",\"replaces\":\"aa-{}\"", n - 1) } else { String::new() },
                )
            }),
        ),
        (
            "corrections of one line",
            with_ground(&|n| {
                entry(n, "\"note\":{\"text\":\"n\"}", if n > 4 { ",\"replaces\":\"aa-4\"" } else { "" })
            }),
        ),
        (
            "strikes of strikes",
            with_ground(&|n| entry(n, &format!("\"struck\":{{\"entries\":[\"aa-{}\"]}}", n - 1), "")),
        ),
        (
            "a strike of many",
            last(format!("\"struck\":{{\"entries\":[{}]}}", names(&|n| format!("aa-{}", n + 4), MOST))),
        ),
        (
            "a strike of many backwards",
            last(format!("\"struck\":{{\"entries\":[{}]}}", names(&|n| format!("aa-{}", 899_999 - n), MOST))),
        ),
        (
            "an order of many",
            last(format!(
                "\"order\":{{\"yard\":\"aa-2\",\"hives\":[{}]}}",
                names(&|n| format!("aa-{}", n + 4), MOST)
            )),
        ),
        ("orders of a yard of many", {
            let hives: Vec<String> = ground.iter().cloned().chain((4..2500).map(hive)).collect();
            let order = format!(
                "\"order\":{{\"yard\":\"aa-2\",\"hives\":[{}]}}",
                names(&|n| format!("aa-{}", 2499 - n), 2490)
            );
            lines(&hives, &|n| entry(n, &order, ""))
        }),
        ("moves", with_ground(&|n| entry(n, "\"hive_moved\":{\"hive\":\"aa-3\",\"to\":\"aa-2\"}", ""))),
        (
            "names of a hive",
            with_ground(&|n| {
                entry(n, &format!("\"hive_changed\":{{\"hive\":\"aa-3\",\"tag\":\"{n}\"}}"), "")
            }),
        ),
        ("work on many traps", {
            let half: Vec<String> = (4..40).map(traps_on).collect();
            let mut all: Vec<String> = ground.iter().cloned().chain(half).collect();
            let traps = names(&|n| format!("aa-{}.{}", 4 + n / 200 % 36, n % 200 + 1), 20_000);
            all.push(check(900, &format!(",\"traps\":[{traps}]")));
            all.join(",")
        }),
        ("traps out of many", {
            let half: Vec<String> = (4..40).map(traps_on).collect();
            let mut all: Vec<String> = ground.iter().cloned().chain(half).collect();
            let traps = names(&|n| format!("aa-{}.{}", 4 + n / 199 % 36, n % 199 + 1), 20_000);
            all.push(entry(
                900,
                &format!("\"traps_off\":{{\"hive\":\"aa-3\",\"traps\":[{traps}],\"went\":\"stock\"}}"),
                "",
            ));
            all.join(",")
        }),
        (
            "one bulk",
            with_ground(&|n| {
                check(n, "").replace("\"yard\":\"k7f3qa9x-2\"", "\"yard\":\"k7f3qa9x-2\",\"bulk\":\"aa-4\"")
            }),
        ),
        ("skips", with_ground(&|n| entry(n, "\"skip\":{\"hive\":\"aa-3\",\"why\":\"temper\"}", ""))),
        (
            "hives that end and come back",
            with_ground(&|n| {
                entry(
                    n,
                    if n % 2 == 0 {
                        "\"hive_ended\":{\"hive\":\"aa-3\",\"how\":\"dead\"}"
                    } else {
                        "\"hive_back\":{\"hive\":\"aa-3\"}"
                    },
                    "",
                )
            }),
        ),
        (
            "pages backwards",
            lines(&[], &|n| {
                let day = 9_000 - n.min(8_999);
                let (year, month, day) = (2000 + day / 336, day / 28 % 12 + 1, day % 28 + 1);
                format!(
                    "{{\"id\":\"aa-{n}\",\"day\":\"{year}-{month:02}-{day:02}\",\"at\":\"2026-07-14T08:05:31+02:00\",\"what\":{{\"note\":{{\"text\":\"n\"}}}}}}"
                )
            }),
        ),
    ]
}
