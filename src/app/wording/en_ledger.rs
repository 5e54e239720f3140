//! English: the Book, the Load, the kinds of trap and what is said above every place.

use super::en::{counted, length_name, month, put, with_unit};
use crate::almanac::quantity::Share;
use crate::almanac::stack::{BoxDepth, HiveSize};
use crate::almanac::tally::CountRange;
use crate::app::ledger::words::put_isolated;
use crate::book::entry::{Did, Ending, SkipReason, TrapsWent};

/// A hive nobody knows.
const UNKNOWN_HIVE: &str = "A hive not in this book";
/// A yard nobody knows.
const UNKNOWN_YARD: &str = "a yard not in this book";
/// A kind of trap nobody knows.
const UNKNOWN_KIND: &str = "a trap not in this book";
/// A note on nothing in particular.
pub const NOTE: &str = "Note";
/// A hive taken back.
pub const BACK: &str = "back in care";
/// Between a name and what is said about it.
pub const SAYS: &str = ": ";
/// Between two things that are said.
pub const NEXT: &str = ", ";
/// After a line that corrects an earlier one.
pub const CORRECTED: &str = " (corrected)";
/// Before lines struck out.
pub const STRUCK: &str = "Struck out: ";
/// Before lines that count again.
pub const BROUGHT_BACK: &str = "Brought back: ";
/// Before a line or words that are quoted.
pub const QUOTE: &str = "“";
/// After them.
pub const UNQUOTE: &str = "”";
/// A look that goes with traps put in.
pub const PLACED: &str = "traps placed";
/// A new hive without boxes.
pub const NO_BOX: &str = "no box";
/// After boxes put on.
pub const PUT_ON: &str = " put on";
/// Before the keeper's settings.
pub const KEEPER: &str = "Settings: ";
/// None of them.
pub const KEEPER_NOTHING: &str = "nothing changed";
/// Before the name on papers.
pub const KEEPER_NAME: &str = "name on papers ";
/// Before the unit of volume.
pub const KEEPER_VOLUME: &str = "volumes in ";
/// Before the unit of length.
pub const KEEPER_LENGTH: &str = "lengths in ";
/// Before the oil reserve.
pub const KEEPER_RESERVE: &str = "oil reserve ";
/// Before the bottle size, as typed.
pub const KEEPER_BOTTLE: &str = "bottles of ";
/// Before the currency.
pub const KEEPER_CURRENCY: &str = "prices in ";
/// Before the first day of the season.
pub const KEEPER_SEASON: &str = "season starts ";
/// Before the value of a colony.
pub const KEEPER_COLONY: &str = "a colony is worth ";

/// Two hives that are one, before the one that is kept.
pub const SAME: &str = "the same hive as ";

/// A hive by its tag.
pub fn hive(said: &mut String, tag: Option<&str>) {
    put(said, if tag.is_some() { "Hive " } else { UNKNOWN_HIVE });
    put_isolated(said, tag.unwrap_or_default());
}

/// A yard by its name.
pub fn yard(said: &mut String, name: Option<&str>) {
    put_isolated(said, name.unwrap_or(UNKNOWN_YARD));
}

/// The keeper's or somebody else's own words.
pub fn quoted(words: &str) -> String {
    [QUOTE, words, UNQUOTE].concat()
}

/// The same at the end of a sentence, whichever way they are written.
pub fn put_quoted(said: &mut String, words: &str) {
    put(said, QUOTE);
    put_isolated(said, words);
    put(said, UNQUOTE);
}

/// A note after what was done.
pub fn and_note(said: &mut String, note: Option<&str>) {
    if let Some(note) = note {
        put(said, NEXT);
        put_quoted(said, note);
    }
}

/// A share with at most one decimal.
pub fn percent(said: &mut String, share: Share) {
    let tenths = (share.percent().millionths() + 50_000) / 100_000;
    put(said, &(tenths / 10).to_string());
    if tenths % 10 > 0 {
        put(said, ".");
        put(said, &(tenths % 10).to_string());
    }
    put(said, &with_unit("", "%"));
}

fn put_count(said: &mut String, count: usize, one: &str, many: &str) {
    put(said, &counted(u32::try_from(count).unwrap_or(u32::MAX), one, many));
}

/// How many traps.
pub fn traps(said: &mut String, count: usize) {
    put_count(said, count, "trap", "traps");
}

/// How many traps, after what they stand in.
pub fn and_traps(said: &mut String, count: usize) {
    put(said, NEXT);
    traps(said, count);
}

/// How many entries.
pub fn lines(count: usize) -> String {
    counted(u32::try_from(count).unwrap_or(u32::MAX), "entry", "entries")
}

/// A day of the year as month and day: 301 is 1 March.
pub fn month_and_day(said: &mut String, number: u16) {
    put(said, &(number % 100).to_string());
    put(said, " ");
    put(said, month(u32::from(number / 100)));
}

/// A new kind of trap.
pub fn kind_new(said: &mut String, name: &str) {
    put(said, "New kind of trap: ");
    put_isolated(said, name);
}

/// A kind described anew.
pub fn kind_changed(said: &mut String, name: &str) {
    put(said, "Kind of trap described anew: ");
    put_isolated(said, name);
}

/// The kind chosen for hives whose traps were not in yet.
pub fn kind_meant(said: &mut String, name: Option<&str>) {
    put(said, "Kind of trap chosen for the hives added: ");
    put_isolated(said, name.unwrap_or(UNKNOWN_KIND));
}

/// A kind no longer offered.
pub fn kind_retired(said: &mut String, name: Option<&str>) {
    put(said, "Kind of trap no longer used: ");
    put_isolated(said, name.unwrap_or(UNKNOWN_KIND));
}

/// A new yard.
pub fn yard_new(said: &mut String, name: &str) {
    put(said, "New yard: ");
    put_isolated(said, name);
}

/// A yard with another name.
pub fn yard_renamed(said: &mut String, name: &str) {
    put(said, "Yard renamed to ");
    put_isolated(said, name);
}

/// A yard with another time zone.
pub fn yard_zone(said: &mut String, name: Option<&str>, zone: &str) {
    yard(said, name);
    put(said, ": days by the clock of ");
    put(said, &zone.replace('_', " "));
}

/// A yard given up.
pub fn yard_closed(said: &mut String, name: Option<&str>) {
    yard(said, name);
    put(said, ": yard given up");
}

/// Trap work is paused or goes on.
pub fn season(said: &mut String, name: Option<&str>, running: bool) {
    yard(said, name);
    put(said, if running { ": trap work goes on" } else { ": trap work paused" });
}

/// A new walking order.
pub fn order(said: &mut String, name: Option<&str>) {
    yard(said, name);
    put(said, ": walking order changed");
}

/// Before the hives of the new order that stand elsewhere.
pub const ORDER_NOW: &str = ": ";
/// Before the same of the order that was.
pub const ORDER_BEFORE: &str = " instead of ";
/// After the first of many.
pub const ORDER_MORE: &str = ", …";

/// A new hive, before its boxes.
pub fn hive_new(said: &mut String, tag: &str, size: HiveSize) {
    hive(said, Some(tag));
    put(
        said,
        match size {
            HiveSize::Full => ": new, ",
            HiveSize::Nuc => ": new nuc, ",
        },
    );
}

/// A hive with another tag.
pub fn hive_renamed(said: &mut String, before: Option<&str>, tag: &str) {
    hive(said, before);
    put(said, ": renamed ");
    put_isolated(said, tag);
}

/// A hive of another size.
pub fn size_now(size: HiveSize) -> &'static str {
    match size {
        HiveSize::Full => "now a full hive",
        HiveSize::Nuc => "now a nuc",
    }
}

/// Boxes of one depth.
pub fn boxes(said: &mut String, depth: BoxDepth, count: usize) {
    let (one, many) = match depth {
        BoxDepth::Deep => ("deep", "deeps"),
        BoxDepth::Medium => ("medium", "mediums"),
        BoxDepth::Shallow => ("shallow", "shallows"),
        BoxDepth::Own(_) => ("box", "boxes"),
    };
    put_count(said, count, one, many);
    own_depth(said, depth);
}

fn own_depth(said: &mut String, depth: BoxDepth) {
    if let BoxDepth::Own(typed) = depth {
        put(said, " of ");
        put(said, &with_unit(&typed.number().to_string(), length_name(typed.unit())));
    }
}

fn one_box(said: &mut String, depth: Option<BoxDepth>) {
    put(
        said,
        match depth {
            None | Some(BoxDepth::Own(_)) => "box",
            Some(BoxDepth::Deep) => "deep",
            Some(BoxDepth::Medium) => "medium",
            Some(BoxDepth::Shallow) => "shallow",
        },
    );
    if let Some(depth) = depth {
        own_depth(said, depth);
    }
}

/// A hive carried to another yard.
pub fn moved(said: &mut String, to: Option<&str>, permit: Option<&str>) {
    put(said, "moved to ");
    yard(said, to);
    if let Some(permit) = permit {
        put(said, ", permit ");
        put_isolated(said, permit);
    }
}

/// How the care for a hive ended, before the name of the hive it was joined into.
pub fn ended(how: &Ending) -> &'static str {
    match how {
        Ending::Dead => "colony dead",
        Ending::Sold => "sold or given away",
        Ending::Gone => "bees gone",
        Ending::Joined { into: Some(_) } => "joined into ",
        Ending::Joined { into: None } => "joined with another colony",
    }
}

/// A box taken off.
pub fn box_off(said: &mut String, depth: Option<BoxDepth>, went: TrapsWent) {
    one_box(said, depth);
    put(said, " taken off, its traps ");
    put(said, traps_went(went));
}

/// Traps a box is meant to carry.
pub fn box_wants(said: &mut String, depth: Option<BoxDepth>, count: u8) {
    put(said, "a ");
    one_box(said, depth);
    put(said, " is to carry ");
    traps(said, usize::from(count));
}

/// Traps put in.
pub fn traps_on(said: &mut String, count: usize) {
    traps(said, count);
    put(said, " put in");
}

/// The kind of all of them.
pub fn of_kind(said: &mut String, name: Option<&str>) {
    put(said, " (");
    put_isolated(said, name.unwrap_or(UNKNOWN_KIND));
    put(said, ")");
}

/// Traps taken out.
pub fn traps_off(said: &mut String, count: usize, went: TrapsWent) {
    traps(said, count);
    put(said, " taken out, ");
    put(said, traps_went(went));
}

/// What became of traps.
pub fn traps_went(went: TrapsWent) -> &'static str {
    match went {
        TrapsWent::Stock => "back in stock",
        TrapsWent::Bin => "thrown away",
        TrapsWent::Lost => "lost",
    }
}

/// What was done to traps.
pub fn did(did: Did) -> &'static str {
    match did {
        Did::AsFound => "as found",
        Did::ToppedUp => "topped up",
        Did::Replaced => "replaced",
        Did::Spilled => "spilled",
        Did::Missing => "missing",
        Did::GluedShut => "glued shut",
    }
}

/// The level found, after what was done.
pub fn found(said: &mut String, level: Share) {
    put(said, ", found ");
    percent(said, level);
}

/// The level left, after what was done.
pub fn left(said: &mut String, level: Share) {
    put(said, ", left ");
    percent(said, level);
}

/// Beetles counted, exactly or as a range, after what was done.
pub fn beetles(said: &mut String, count: CountRange) {
    put(said, NEXT);
    if !count.is_exact() {
        put(said, &count.low().to_string());
    }
    match count.high() {
        Some(high) => {
            put(said, if count.is_exact() { "" } else { "–" });
            put(said, &counted(high, "beetle", "beetles"));
        }
        None => put(said, "+\u{a0}beetles"),
    }
}

/// A hive that was left.
pub fn skipped(why: SkipReason) -> &'static str {
    match why {
        SkipReason::Temper => "skipped, hot bees",
        SkipReason::Robbing => "skipped, robbing",
        SkipReason::Weather => "skipped, weather",
        SkipReason::NoTime => "skipped, no time or material",
        SkipReason::Other => "skipped",
    }
}
