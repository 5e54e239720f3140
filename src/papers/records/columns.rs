//! The columns of each table. A unit stands in a column of its own.

use super::Records;
use crate::book::record::Ask;

/// The columns of a line of the book: where it stands and who wrote it, and what else there is to say.
macro_rules! line {
    [$($more:literal),* $(,)?] => {
        &["entry_id", "day", "written_at", "written_by", "yard_id", "yard", "hive_id", "hive", $($more),*]
    };
}

const YARDS: &[&str] = &["yard_id", "name", "time_zone", "since", "resting_since", "closed", "hives_in_care"];
const HIVES: &[&str] = &[
    "hive_id",
    "yard_id",
    "yard",
    "place",
    "tag",
    "earlier_tags",
    "size",
    "since",
    "ended",
    "how_ended",
    "boxes",
    "traps",
];
const BOXES: &[&str] = &[
    "box_id",
    "hive_id",
    "hive",
    "level_from_floor",
    "depth",
    "depth_unit",
    "since",
    "traps_wanted",
    "traps",
];
const TRAPS: &[&str] = &[
    "trap_id",
    "box_id",
    "hive_id",
    "hive",
    "kind_id",
    "kind",
    "spot",
    "placed",
    "serviced",
    "level_read",
    "level",
    "level_unit",
    "trouble",
    "trouble_since",
];
const KINDS: &[&str] = &[
    "kind_id",
    "name",
    "form",
    "used_again",
    "offered",
    "longest_days",
    "fill",
    "fill_unit",
    "holds",
    "holds_unit",
    "inside_length",
    "inside_length_unit",
    "inside_width",
    "inside_width_unit",
    "inside_depth",
    "inside_depth_unit",
    "outside_length",
    "outside_length_unit",
    "outside_width",
    "outside_width_unit",
    "outside_depth",
    "outside_depth_unit",
];
const CHECKS: &[&str] = line![
    "traps",
    "did",
    "level_found",
    "level_found_state",
    "level_left",
    "level_unit",
    "beetles_low",
    "beetles_high",
    "beetles_state",
    "note",
];
/// Those of each record; its fields follow.
const RECORD: &[&str] =
    &["entry_id", "day", "written_at", "written_by", "yard_id", "yard", "hive_ids", "hives"];
const EVENTS: &[&str] = line!["what", "in_words", "record",];

impl Records {
    /// Its columns.
    pub fn columns(self) -> Vec<String> {
        let fixed = match self {
            Records::Yards => YARDS,
            Records::Hives => HIVES,
            Records::Boxes => BOXES,
            Records::Traps => TRAPS,
            Records::Kinds => KINDS,
            Records::Checks => CHECKS,
            Records::Events => EVENTS,
            Records::Of(_) => RECORD,
        };
        let mut columns: Vec<String> = fixed.iter().map(|&name| name.to_owned()).collect();
        if let Records::Of(blank) = self {
            for field in blank.fields() {
                for after in after(&field.ask) {
                    columns.push([field.name, after].concat());
                }
            }
        }
        columns
    }
}

/// The columns of a field, by what stands behind its name: a range has two ends, a number its unit.
fn after(ask: &Ask) -> &'static [&'static str] {
    match ask {
        Ask::Count => &["_low", "_high", "_state"],
        Ask::Number { units: [_, ..], .. } => &["", "_unit"],
        _ => &[""],
    }
}
