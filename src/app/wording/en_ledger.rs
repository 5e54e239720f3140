//! English: the Book, the Load, the kinds of trap and what is said above every place.

use super::en::{counted, length_name, month, volume_name, with_unit};
use crate::almanac::quantity::{Decimal, LengthUnit, Share, TypedVolume, VolumeUnit};
use crate::almanac::stack::{BoxDepth, HiveSize};
use crate::almanac::tally::CountRange;
use crate::book::entry::{Did, Ending, SkipReason, TrapsWent};

/// The depth of a box.
pub type Depth = BoxDepth;

/// A hive nobody knows.
pub const UNKNOWN_HIVE: &str = "A hive not in this book";
/// A yard nobody knows.
pub const UNKNOWN_YARD: &str = "a yard not in this book";
/// A kind of trap nobody knows.
pub const UNKNOWN_KIND: &str = "a trap not in this book";
/// A note on nothing in particular.
pub const NOTE: &str = "Note";
/// A hive taken back.
pub const BACK: &str = "back in care";

/// A hive by its tag.
pub fn hive(tag: &str) -> String {
    ["Hive ", tag].concat()
}

/// What is said about something with a name.
pub fn about(name: &str, said: &str) -> String {
    [name, ": ", said].concat()
}

/// The same with a capital letter in front.
pub fn upper(said: &str) -> String {
    let mut letters = said.chars();
    letters.next().map(|first| first.to_ascii_uppercase()).into_iter().chain(letters).collect()
}

/// A line that corrects an earlier one.
pub fn corrected(said: &str) -> String {
    [said, " (corrected)"].concat()
}

/// The keeper's or somebody else's own words.
pub fn quoted(words: &str) -> String {
    ["“", words, "”"].concat()
}

/// A share with at most one decimal.
pub fn percent(share: Share) -> String {
    let tenths = (share.percent().millionths() + 50_000) / 100_000;
    let number = match tenths % 10 {
        0 => (tenths / 10).to_string(),
        rest => [(tenths / 10).to_string().as_str(), ".", &rest.to_string()].concat(),
    };
    with_unit(&number, "%")
}

fn traps(count: usize) -> String {
    counted(u32::try_from(count).unwrap_or(u32::MAX), "trap", "traps")
}

/// How many lines.
pub fn lines(count: usize) -> String {
    counted(u32::try_from(count).unwrap_or(u32::MAX), "line", "lines")
}

/// The keeper's settings.
pub fn keeper(said: &str) -> String {
    about("Settings", if said.is_empty() { "nothing changed" } else { said })
}

/// Name on papers.
pub fn keeper_name(name: &str) -> String {
    ["name on papers ", name].concat()
}

/// Unit of volume.
pub fn keeper_volume(unit: VolumeUnit) -> String {
    ["volumes in ", volume_name(unit)].concat()
}

/// Unit of length.
pub fn keeper_length(unit: LengthUnit) -> String {
    ["lengths in ", length_name(unit)].concat()
}

/// Oil reserve.
pub fn keeper_reserve(reserve: Share) -> String {
    ["oil reserve ", &percent(reserve)].concat()
}

/// Bottle size, as typed.
pub fn keeper_bottle(bottle: TypedVolume) -> String {
    ["bottles of ", &with_unit(&bottle.number().to_string(), volume_name(bottle.unit()))].concat()
}

/// Currency.
pub fn keeper_currency(code: &str) -> String {
    ["prices in ", code].concat()
}

/// First day of the season as month and day: 301 is 1 March.
pub fn keeper_season(start: u16) -> String {
    ["season starts ", &(start % 100).to_string(), " ", month(u32::from(start / 100))].concat()
}

/// Value of a colony.
pub fn keeper_colony(value: Decimal) -> String {
    ["a colony is worth ", &value.to_string()].concat()
}

/// A new kind of trap.
pub fn kind_new(name: &str) -> String {
    ["New kind of trap: ", name].concat()
}

/// A kind described anew.
pub fn kind_changed(name: &str) -> String {
    ["Kind of trap described anew: ", name].concat()
}

/// A kind no longer offered.
pub fn kind_retired(name: &str) -> String {
    ["Kind of trap no longer offered: ", name].concat()
}

/// A new yard.
pub fn yard_new(name: &str) -> String {
    ["New yard: ", name].concat()
}

/// A yard with another name.
pub fn yard_renamed(name: &str) -> String {
    ["Yard renamed to ", name].concat()
}

/// A yard with another time zone.
pub fn yard_zone(name: &str, zone: &str) -> String {
    about(name, &["time zone ", zone].concat())
}

/// A yard given up.
pub fn yard_closed(name: &str) -> String {
    about(name, "yard given up")
}

/// Trap work rests or goes on.
pub fn season(name: &str, running: bool) -> String {
    about(name, if running { "trap work goes on" } else { "trap work rests" })
}

/// A new walking order.
pub fn order(name: &str, hives: usize) -> String {
    let hives = counted(u32::try_from(hives).unwrap_or(u32::MAX), "hive", "hives");
    about(name, &["walking order of ", &hives, " changed"].concat())
}

/// A new hive with its boxes.
pub fn hive_new(name: &str, size: HiveSize, boxes: &str, count: usize) -> String {
    let size = match size {
        HiveSize::Full => "new",
        HiveSize::Nuc => "new nuc",
    };
    let boxes = if boxes.is_empty() { "no box" } else { boxes };
    about(name, &[size, ", ", boxes, ", ", &traps(count)].concat())
}

/// A hive with another tag.
pub fn hive_renamed(name: &str) -> String {
    ["A hive renamed: now ", name].concat()
}

/// A hive of another size.
pub fn size_now(size: HiveSize) -> &'static str {
    match size {
        HiveSize::Full => "now a full hive",
        HiveSize::Nuc => "now a nuc",
    }
}

/// Boxes of one depth.
pub fn boxes(depth: BoxDepth, count: usize) -> String {
    let count = u32::try_from(count).unwrap_or(u32::MAX);
    match depth {
        BoxDepth::Deep => counted(count, "deep", "deeps"),
        BoxDepth::Medium => counted(count, "medium", "mediums"),
        BoxDepth::Shallow => counted(count, "shallow", "shallows"),
        BoxDepth::Own(typed) => {
            let depth = with_unit(&typed.number().to_string(), length_name(typed.unit()));
            [&counted(count, "box", "boxes"), " of ", &depth].concat()
        }
    }
}

fn one_box(depth: Option<BoxDepth>) -> String {
    match depth {
        None => "box".to_owned(),
        Some(BoxDepth::Deep) => "deep".to_owned(),
        Some(BoxDepth::Medium) => "medium".to_owned(),
        Some(BoxDepth::Shallow) => "shallow".to_owned(),
        Some(BoxDepth::Own(typed)) => {
            ["box of ", &with_unit(&typed.number().to_string(), length_name(typed.unit()))].concat()
        }
    }
}

/// A hive carried to another yard.
pub fn moved(to: &str, permit: Option<&str>) -> String {
    match permit {
        Some(permit) => ["moved to ", to, ", permit ", permit].concat(),
        None => ["moved to ", to].concat(),
    }
}

/// How the care for a hive ended.
pub fn ended(how: &Ending, into: Option<&str>) -> String {
    match (how, into) {
        (Ending::Dead, _) => "colony dead".to_owned(),
        (Ending::Sold, _) => "sold or given away".to_owned(),
        (Ending::Gone, _) => "bees gone".to_owned(),
        (Ending::Joined { .. }, Some(into)) => ["joined into ", into].concat(),
        (Ending::Joined { .. }, None) => "joined with another colony".to_owned(),
    }
}

/// Boxes put on.
pub fn boxes_on(boxes: &str, count: usize) -> String {
    [boxes, " put on, ", &traps(count)].concat()
}

/// A box taken off.
pub fn box_off(depth: Option<BoxDepth>, went: TrapsWent) -> String {
    [&one_box(depth), " taken off, its traps ", traps_went(went)].concat()
}

/// Traps a box is meant to carry.
pub fn box_wants(depth: Option<BoxDepth>, count: u8) -> String {
    ["a ", &one_box(depth), " is to carry ", &traps(usize::from(count))].concat()
}

/// Traps put in.
pub fn traps_on(count: usize, kind: Option<&str>) -> String {
    match kind {
        Some(kind) => [&traps(count), " put in (", kind, ")"].concat(),
        None => [&traps(count), " put in"].concat(),
    }
}

/// Traps taken out.
pub fn traps_off(count: usize, went: TrapsWent) -> String {
    [&traps(count), " taken out, ", traps_went(went)].concat()
}

/// What became of traps.
pub fn traps_went(went: TrapsWent) -> &'static str {
    match went {
        TrapsWent::Stock => "back in stock",
        TrapsWent::Bin => "thrown away",
        TrapsWent::Lost => "lost",
    }
}

/// A hive, and how many of its traps are meant.
pub fn some_traps(hive: &str, count: usize) -> String {
    [hive, ", ", &traps(count)].concat()
}

/// What was done to traps.
pub fn did(did: Did) -> &'static str {
    match did {
        Did::AsFound => "looked at and left",
        Did::ToppedUp => "topped up",
        Did::Replaced => "replaced",
        Did::Spilled => "spilled",
        Did::Missing => "missing",
        Did::GluedShut => "glued shut",
    }
}

/// The level found.
pub fn found(level: Share) -> String {
    ["found ", &percent(level)].concat()
}

/// The level left.
pub fn left(level: Share) -> String {
    ["left ", &percent(level)].concat()
}

/// Beetles counted, exactly or as a range.
pub fn beetles(count: CountRange) -> String {
    match count.high() {
        Some(high) if count.is_exact() => counted(high, "beetle", "beetles"),
        Some(high) => [&count.low().to_string(), "–", &counted(high, "beetle", "beetles")].concat(),
        None => [&count.low().to_string(), "+\u{a0}beetles"].concat(),
    }
}

/// A hive that was left.
pub fn skipped(why: SkipReason, note: Option<&str>) -> String {
    let why = match why {
        SkipReason::Temper => "skipped, hot bees",
        SkipReason::Robbing => "skipped, robbing",
        SkipReason::Weather => "skipped, weather",
        SkipReason::NoTime => "skipped, no time or material",
        SkipReason::Other => "skipped",
    };
    match note {
        Some(note) => [why, ", ", &quoted(note)].concat(),
        None => why.to_owned(),
    }
}

/// Lines struck out.
pub fn struck(count: usize, line: Option<&str>) -> String {
    ["Struck out: ", &line.map_or_else(|| lines(count), quoted)].concat()
}

/// Lines that count again.
pub fn brought_back(count: usize, line: Option<&str>) -> String {
    ["Brought back: ", &line.map_or_else(|| lines(count), quoted)].concat()
}
