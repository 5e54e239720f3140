//! The tables as Python's csv module and pandas read them (`tests/figures/table_files.py`), beside the book they were made of.

use super::papers::{FORMULA, TAG, Tale};
use super::rows;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::app::ledger::words;
use beetle_almanac::book::entry::{Check, Entry, What};
use beetle_almanac::papers::records::Records;
use serde_json::Value;
use std::collections::BTreeMap;

const TABLES: &str = include_str!("../figures/table_files.json");

fn table(file: &str, reader: &str) -> Value {
    let all = rows::<Value>(TABLES);
    all.into_iter().find(|row| row["file"] == file && row["reader"] == reader).unwrap()
}

/// A table as csv reads it: each row by its column's name.
fn by_name(file: &str) -> Vec<BTreeMap<String, String>> {
    let rows: Vec<Vec<String>> = serde_json::from_value(table(file, "by_csv")["rows"].clone()).unwrap();
    let (head, rows) = rows.split_first().unwrap();
    let named = |row: &Vec<String>| {
        assert_eq!(row.len(), head.len(), "{file}");
        head.iter().cloned().zip(row.iter().cloned()).collect()
    };
    rows.iter().map(named).collect()
}

#[test]
fn every_table_has_its_columns() {
    for records in Records::all(&Tale::first().book) {
        let rows: Vec<Vec<String>> =
            serde_json::from_value(table(&format!("{}.csv", records.name()), "by_csv")["rows"].clone())
                .unwrap();
        assert_eq!(rows[0], records.columns());
    }
}

#[test]
fn yards_hives_boxes_and_traps_are_those_of_the_book() {
    let tale = Tale::first();
    let standing = tale.book.standing();
    let yards = by_name("yards.csv");
    assert_eq!(yards.len(), standing.yards.len());
    for (row, (id, yard)) in yards.iter().zip(&standing.yards) {
        assert_eq!((&row["yard_id"], &row["name"]), (&id.to_string(), &yard.name));
        assert_eq!((&row["time_zone"], &row["since"]), (&yard.zone, &yard.since.to_string()));
        assert_eq!(row["hives_in_care"], standing.hives_of(id, true).count().to_string());
    }
    let hives = by_name("hives.csv");
    assert_eq!(hives.len(), standing.hives.len());
    assert!(hives.iter().any(|row| row["tag"] == TAG && row["earlier_tags"] == "3"));
    assert!(hives.iter().any(|row| row["how_ended"] == "dead" && row["ended"] == "2026-07-14"));
    let (mut boxes, mut traps) = (by_name("boxes.csv").into_iter(), by_name("traps.csv").into_iter());
    for row in &hives {
        let (id, hive) = standing.hives.iter().find(|(id, _)| id.to_string() == row["hive_id"]).unwrap();
        assert_eq!((&row["tag"], &row["yard_id"]), (&hive.tag, &hive.yard.to_string()));
        assert_eq!(row["ended"].is_empty(), hive.alive());
        assert_eq!(row["traps"], hive.traps().count().to_string());
        for (level, part) in hive.boxes.iter().enumerate() {
            let row = boxes.next().unwrap();
            assert_eq!((&row["box_id"], &row["hive_id"]), (&part.id.to_string(), &id.to_string()));
            assert_eq!(row["level_from_floor"], (level + 1).to_string());
            assert_eq!(
                (&row["traps_wanted"], &row["traps"]),
                (&part.wants.to_string(), &part.traps.len().to_string())
            );
        }
    }
    for hive in hives {
        let (_, now) = standing.hives.iter().find(|(id, _)| id.to_string() == hive["hive_id"]).unwrap();
        for trap in now.traps() {
            let row = traps.next().unwrap();
            assert_eq!((&row["trap_id"], &row["kind_id"]), (&trap.id.to_string(), &trap.kind.to_string()));
            assert_eq!(
                (&row["placed"], &row["serviced"]),
                (&trap.placed.to_string(), &trap.service.to_string())
            );
            let level = trap.level.map(|(_, level)| level.percent().to_string()).unwrap_or_default();
            assert_eq!((&row["level"], row["level_unit"].as_str()), (&level, "% of depth"));
            assert_eq!(row["level_read"] == "not looked", trap.level.is_none());
        }
    }
    assert!(boxes.next().is_none() && traps.next().is_none());
}

#[test]
fn kinds_of_trap_keep_their_units_beside_their_numbers() {
    let tale = Tale::first();
    let kinds = by_name("trap-kinds.csv");
    assert_eq!(kinds.len(), tale.book.standing().kinds.len());
    for (row, (id, now)) in kinds.iter().zip(&tale.book.standing().kinds) {
        let holds = now.kind.capacity.unwrap();
        assert_eq!((&row["kind_id"], &row["name"]), (&id.to_string(), &now.kind.name));
        assert_eq!((&row["holds"], row["holds_unit"].as_str()), (&holds.number().to_string(), "mL"));
        let depth = now.kind.inner.depth.unwrap();
        assert_eq!(
            (&row["inside_depth"], row["inside_depth_unit"].as_str()),
            (&depth.number().to_string(), "mm")
        );
        assert_eq!(row["longest_days"], now.kind.max_days.to_string());
    }
}

/// The lines that count, in their order.
fn standing_lines(tale: &Tale, wanted: impl Fn(&What) -> bool) -> Vec<&Entry> {
    let lines = tale.book.log().in_effect().into_iter().map(|(_, entry)| entry);
    lines.filter(|entry| wanted(&entry.what)).collect()
}

#[test]
fn trap_work_is_read_back_line_by_line() {
    let tale = Tale::first();
    let lines = standing_lines(&tale, |what| matches!(what, What::Check(_)));
    let rows = by_name("trap-work.csv");
    assert_eq!(rows.len(), lines.len());
    for (row, entry) in rows.iter().zip(&lines) {
        let What::Check(Check { hive, before, count, note, .. }) = &entry.what else { unreachable!() };
        assert_eq!((&row["entry_id"], &row["day"]), (&entry.id.to_string(), &entry.day.to_string()));
        assert_eq!((&row["hive_id"], &row["written_at"]), (&hive.to_string(), &entry.at.to_string()));
        let low = count.map(|count| count.low().to_string()).unwrap_or_default();
        let high = count.and_then(CountRange::high).map(|high| high.to_string()).unwrap_or_default();
        assert_eq!((&row["beetles_low"], &row["beetles_high"]), (&low, &high));
        assert_eq!(row["beetles_state"], if count.is_some() { "counted" } else { "not looked" });
        assert_eq!(row["level_found"], before.map(|level| level.percent().to_string()).unwrap_or_default());
        assert_eq!(row["level_found_state"], if before.is_some() { "read" } else { "not looked" });
        assert_eq!(row["note"], note.clone().unwrap_or_default());
    }
    // None seen, nobody looked, fifty and more: three different things.
    let has = |low: &str, high: &str, state: &str| {
        rows.iter().any(|row| {
            row["beetles_low"] == low && row["beetles_high"] == high && row["beetles_state"] == state
        })
    };
    assert!(has("0", "0", "counted") && has("", "", "not looked") && has("50", "", "counted"));
    assert!(rows.iter().any(|row| row["note"] == FORMULA));
    // The line that was struck out is in no table.
    assert!(rows.iter().all(|row| row["note"] != "the wrong hive"));
}

#[test]
fn the_guard_changes_nothing_but_what_a_spreadsheet_reckons_with() {
    let (plain, guarded) = (by_name("trap-work.csv"), by_name("trap-work-guarded.csv"));
    let mut changed = Vec::new();
    for (plain, guarded) in plain.iter().zip(&guarded) {
        for (name, text) in plain {
            if *text != guarded[name] {
                assert_eq!(format!("'{text}"), guarded[name]);
                changed.push(text.as_str());
            }
        }
    }
    assert_eq!((plain.len(), changed.as_slice()), (guarded.len(), &[FORMULA, "@home"][..]));
}

#[test]
fn everything_else_that_happened_is_read_back() {
    let tale = Tale::first();
    let lines = standing_lines(&tale, |what| !matches!(what, What::Check(_) | What::Keeper(_)));
    let rows = by_name("events.csv");
    assert_eq!(rows.len(), lines.len());
    for (row, entry) in rows.iter().zip(&lines) {
        assert_eq!(row["entry_id"], entry.id.to_string());
        assert_eq!(row["in_words"], words::entry(&tale.book, entry));
        assert_eq!(serde_json::from_str::<What>(&row["record"]).unwrap(), entry.what);
        let record: Value = serde_json::from_str(&row["record"]).unwrap();
        assert!(record.get(&row["what"]).is_some(), "{} in {record}", row["what"]);
    }
    for what in ["yard", "hive", "skip", "note", "hive_moved", "hive_ended", "boxes_on"] {
        assert!(rows.iter().any(|row| row["what"] == what), "{what}");
    }
}

/// pandas takes these columns for numbers without being told, an empty cell for none.
#[test]
fn a_statistics_program_reads_numbers_and_days() {
    let tale = Tale::first();
    let read = table("trap-work.csv", "by_pandas");
    let lines = standing_lines(&tale, |what| matches!(what, What::Check(_)));
    assert_eq!(read["count"], lines.len());
    let column = |name: &str| -> Vec<Option<f64>> {
        serde_json::from_value(read["numbers"][name].clone())
            .unwrap_or_else(|_| panic!("{name} is no number"))
    };
    let (low, high, found) = (column("beetles_low"), column("beetles_high"), column("level_found"));
    let days: Vec<String> = serde_json::from_value(read["days"]["day"].clone()).unwrap();
    for (at, entry) in lines.iter().enumerate() {
        let What::Check(check) = &entry.what else { unreachable!() };
        assert_eq!(low[at], check.count.map(|count| f64::from(count.low())));
        assert_eq!(high[at], check.count.and_then(CountRange::high).map(f64::from));
        assert_eq!(found[at], check.before.map(|level| level.percent().as_f64()));
        assert_eq!(days[at], entry.day.to_string());
    }
    assert!(table("traps.csv", "by_pandas")["numbers"]["level"].is_array());
    assert!(table("hives.csv", "by_pandas")["days"]["since"].is_array());
}

/// Empty, zero and "not looked" are three things to a spreadsheet too; a range has two ends and a number its unit.
#[test]
fn records_beside_the_traps_are_read_field_by_field() {
    let by_name = |file| {
        let mut rows = by_name(file);
        rows.retain(|row| !row["entry_id"].starts_with("demo-"));
        rows
    };
    let looks = by_name("look.csv");
    let [full, bare] = &looks[..] else { panic!("two looks") };
    assert_eq!((full["larvae"].as_str(), full["adults_low"].as_str()), ("many", "5"));
    assert_eq!((full["adults_high"].as_str(), full["adults_state"].as_str()), ("19", "counted"));
    assert_eq!((full["frames_of_bees"].as_str(), full["entrance"].as_str()), ("7.5", "quiet dead_bees"));
    assert_eq!((bare["larvae"].as_str(), bare["slime"].as_str()), ("not_looked", ""));
    assert_eq!((bare["adults_low"].as_str(), bare["adults_state"].as_str()), ("0", "counted"));
    let [product] = &by_name("product.csv")[..] else { panic!("one product") };
    assert_eq!(product["hives"], "1; 2");
    assert_eq!((product["interval_days"].as_str(), product["end"].as_str()), ("8.5", "2026-07-19"));
    assert_eq!(product["product"], "product \u{201c}7\u{201d}, =2+2");
    let [lot, _, pulled] = &by_name("harvest.csv")[..] else { panic!("three lots") };
    assert_eq!((pulled["bees_off"].as_str(), pulled["extraction_ended"].as_str()), ("2026-07-14T16:30", ""));
    assert_eq!((lot["bees_off"].as_str(), lot["room"].as_str()), ("2026-07-14T09:06", "8.5"));
    assert_eq!((full["larvae_size"].as_str(), full["soil"].as_str()), ("both", "larvae"));
    assert_eq!((bare["larvae_size"].as_str(), bare["soil"].as_str()), ("", ""));
    assert_eq!((lot["supers_back"].as_str(), lot["room_low"].as_str()), ("2026-07-14T13:10", "9.5"));
    let [climate] = &by_name("climate.csv")[..] else { panic!("one climate") };
    assert_eq!((climate["high_1"].as_str(), climate["low_12"].as_str()), ("3.5", "-21.5"));
    assert_eq!((climate["high_1_unit"].as_str(), climate["low_12_unit"].as_str()), ("F", "F"));
    let [soil] = &by_name("soil.csv")[..] else { panic!("one look at the soil") };
    assert_eq!((soil["moisture"].as_str(), soil["depth_unit"].as_str()), ("wet", "in"));
    assert_eq!((lot["room_unit"].as_str(), lot["honey_unit"].as_str()), ("F", "lb"));
}
