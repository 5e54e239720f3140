//! English: the lines of a packet told together.

use super::en::{counted, put, with_unit};
use super::en_ledger;
use crate::almanac::quantity::Share;
use crate::almanac::tally::CountRange;
use crate::book::entry::Did;

/// Box to tick.
pub const EVERY: &str = "Every line by itself";
/// Before the levels found.
pub const FOUND: &str = "; level found ";
/// Before the levels left.
pub const LEFT: &str = "; left ";

/// "24 hives: ".
pub fn count(hives: usize) -> String {
    [&number(hives, "hive", "hives"), ": "].concat()
}

/// "Hives 1–23", before what is said of them.
pub fn hives(count: usize, tags: &str) -> String {
    [if count == 1 { "Hive " } else { "Hives " }, tags].concat()
}

/// "topped up 22 (1–3, 5–23)".
pub fn done(said: &mut String, next: bool, did: Did, count: usize, tags: &str) {
    put(said, if next { "; " } else { "" });
    put(said, en_ledger::did(did));
    put(said, &with_unit("", &count.to_string()));
    put(said, " (");
    put(said, tags);
    put(said, ")");
}

/// "; level found 34–45 % in 15".
pub fn levels(said: &mut String, what: &str, levels: &[Share]) {
    let (Some(low), Some(high)) = (levels.iter().min(), levels.iter().max()) else { return };
    put(said, what);
    if low != high {
        let mut from = String::new();
        en_ledger::percent(&mut from, *low);
        put(said, from.trim_end_matches(['\u{a0}', '%']));
        put(said, "–");
    }
    en_ledger::percent(said, *high);
    put(said, " in ");
    put(said, &levels.len().to_string());
}

/// "; beetles 0–5 in 20, more in 4 (4: 12, 11: 8)".
pub fn beetles(said: &mut String, few: &[CountRange], many: &[(String, CountRange)]) {
    let mut next = "; beetles ";
    let low = few.iter().map(|count| count.low()).min();
    let high = few.iter().filter_map(|count| count.high()).max();
    if let Some((low, high)) = low.zip(high) {
        put(said, next);
        put(said, &low.to_string());
        if high > low {
            put(said, "–");
            put(said, &high.to_string());
        }
        put(said, " in ");
        put(said, &few.len().to_string());
        next = ", more in ";
    }
    if many.is_empty() {
        return;
    }
    put(said, next);
    put(said, if few.is_empty() { "in " } else { "" });
    put(said, &many.len().to_string());
    for (at, (tag, count)) in many.iter().enumerate() {
        put(said, if at == 0 { " (hive " } else { ", hive " });
        put(said, tag);
        put(said, ": ");
        put(said, &count.low().to_string());
        match count.high() {
            Some(high) if high > count.low() => {
                put(said, "–");
                put(said, &high.to_string());
            }
            Some(_) => {}
            None => put(said, "+"),
        }
    }
    put(said, ")");
}

/// What stands under the last part: nothing was left out.
pub fn all(lines: usize, struck: usize) -> String {
    let mut said =
        ["All ", &number(lines, "line", "lines"), " written for this period are told above"].concat();
    if struck > 0 {
        put(&mut said, ", ");
        put(&mut said, &struck.to_string());
        put(&mut said, " of them struck out or corrected");
    }
    put(
        &mut said,
        ". Levels and small counts of a day are told as ranges; each line by itself is in the long form.",
    );
    said
}

/// The same for the long form.
pub fn all_alone(lines: usize) -> String {
    ["All ", &number(lines, "line", "lines"), " written for this period are told above."].concat()
}

fn number(count: usize, one: &str, many: &str) -> String {
    counted(u32::try_from(count).unwrap_or(u32::MAX), one, many)
}
