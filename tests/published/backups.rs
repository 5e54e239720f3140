//! The backup file by its schema (`backup.schema.json` in `tests/fixtures`; JSON Schema, draft 2020-12) and by a general
//! library that knows nothing else of it (Python's jsonschema, `tests/figures/backup_files.py`), beside the page's own
//! reader and beside the source.

use super::papers::files;
use super::rows;
use beetle_almanac::almanac::checksum;
use beetle_almanac::book::record::{Ask, Blank};
use beetle_almanac::papers::backup;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

const VERDICTS: &str = include_str!("../figures/backup_files.json");
/// The newest schema.
const SCHEMA: &str = include_str!("../fixtures/v4/backup.schema.json");
const FIXTURE: &str = "yard-backup-2026-07-14.json";
const FIXTURES: [(u32, &str); 4] = [
    (1, include_str!("../fixtures/v1/yard-backup-2026-07-14.json")),
    (2, include_str!("../fixtures/v2/yard-backup-2026-07-14.json")),
    (3, include_str!("../fixtures/v3/yard-backup-2026-07-14.json")),
    (4, include_str!("../fixtures/v4/yard-backup-2026-07-14.json")),
];
/// Every file in which a record says how it lies in a backup.
const SOURCES: [&str; 8] = [
    include_str!("../../src/almanac/quantity/unit.rs"),
    include_str!("../../src/almanac/stack.rs"),
    include_str!("../../src/almanac/trap.rs"),
    include_str!("../../src/book/entry.rs"),
    include_str!("../../src/book/entry/parts.rs"),
    include_str!("../../src/book/entry/work.rs"),
    include_str!("../../src/book/keeper.rs"),
    include_str!("../../src/papers/backup.rs"),
];

#[test]
fn the_library_finds_no_fault_in_a_file_of_ours() {
    let verdicts = rows::<Value>(VERDICTS);
    let verdict = |name: &str, version: u32| {
        let row = verdicts.iter().find(|row| row["file"] == name && row["version"] == version);
        row.unwrap_or_else(|| panic!("{name}")).clone()
    };
    let (_, demonstration) = files().into_iter().find(|(name, _)| name == "backup.json").unwrap();
    let fixtures = FIXTURES.map(|(version, text)| (FIXTURE, version, text));
    for (name, version, text) in fixtures.into_iter().chain([("backup.json", 4, demonstration.as_str())]) {
        let entries = backup::open(text).unwrap().entries.len();
        let sound = json!({ "file": name, "version": version, "entries": entries, "errors": 0 });
        assert_eq!(verdict(name, version), sound);
    }
    let operation = verdict("operation.json", 4);
    assert_eq!(operation["errors"], 0);
    assert!(operation["entries"].as_u64().unwrap() > 16_000);
}

/// A field gone, a field too many, another type, another unit, a day that is none: schema and page say the same.
#[test]
fn the_page_takes_what_the_schema_takes_and_nothing_else() {
    let verdicts = rows::<Value>(VERDICTS);
    let list = |row: &Value, name: &str| serde_json::from_value::<Vec<String>>(row[name].clone()).unwrap();
    for (version, fixture) in FIXTURES {
        let of = |row: &&Value| row["version"] == version;
        let places = verdicts.iter().filter(of).find(|row| row.get("places").is_some()).unwrap();
        let places = list(places, "places");
        let changes: Vec<&Value> =
            verdicts.iter().filter(of).filter(|row| row.get("change").is_some()).collect();
        assert!(places.len() > 150 && changes.len() > 12);
        let (mut taken, mut refused) = (0, 0);
        for row in changes {
            let accepted: BTreeSet<String> = list(row, "accepted").into_iter().collect();
            for place in &places {
                // Whether a count or a checksum is the right one is no question of form.
                if place.starts_with("/counts/") && accepted.contains(place) {
                    continue;
                }
                let text = changed(fixture, place, &row["change"]);
                let whole = backup::open(&text).is_ok();
                assert_eq!(whole, accepted.contains(place), "{version} {place} changed to {}", row["change"]);
                if whole { taken += 1 } else { refused += 1 }
            }
        }
        assert!(taken > 100 && refused > 2000, "{version}: {taken} taken, {refused} refused");
    }
}

/// The fixture, changed at one place; counts and checksum are those of the changed file unless they are that place.
fn changed(fixture: &str, place: &str, change: &Value) -> String {
    let mut file: Value = serde_json::from_str(fixture).unwrap();
    let (holder, last) = place.rsplit_once('/').unwrap();
    if *change == json!({ "missing": true }) {
        match file.pointer_mut(holder).unwrap() {
            Value::Object(fields) => _ = fields.remove(last).unwrap(),
            Value::Array(items) => _ = items.remove(last.parse().unwrap()),
            other => panic!("{other} holds nothing"),
        }
    } else if let Some(fields) = file.pointer_mut(place).and_then(Value::as_object_mut)
        && *change == json!({ "unknown field": true })
    {
        fields.insert("colour".to_owned(), 1.into());
    } else {
        *file.pointer_mut(place).unwrap() = change.clone();
    }
    if place.starts_with("/entries")
        && let Some(entries) = file.get("entries").and_then(Value::as_array).cloned()
    {
        let brings = |kind: &str| entries.iter().filter(|entry| entry["what"].get(kind).is_some()).count();
        let days: BTreeSet<_> = entries.iter().map(|entry| entry["day"].to_string()).collect();
        file["counts"] = json!({
            "entries": entries.len(), "yards": brings("yard"), "hives": brings("hive"), "days": days.len(),
        });
    }
    if place != "/checksum"
        && let Some(entries) = file.get("entries").map(Value::to_string)
    {
        file["checksum"] = checksum::of(&[&entries]).into();
    }
    file.to_string()
}

/// Every word, every kind of entry and every field that the source names is in the schema, and nothing else is: a new
/// one is a new format and needs a schema of its own.
#[test]
fn the_schema_names_what_the_source_names() {
    let schema: Value = serde_json::from_str(SCHEMA).unwrap();
    let mut known = BTreeSet::new();
    for record in SOURCES.iter().flat_map(|source| records(source)) {
        let name = record.name.as_str();
        let def = &schema["$defs"][name];
        assert!(def.is_object(), "{name} is in no definition");
        let branch = |key: &str| match &def["anyOf"] {
            Value::Array(both) => both.iter().find(|one| one.get(key).is_some()).unwrap_or(&Value::Null),
            _ => def,
        };
        assert_eq!(strings(&branch("enum")["enum"]), record.words, "words of {name}");
        if let Some(fields) = &record.fields {
            fields.stand_in(def, name);
        } else {
            let kinds = branch("properties");
            let named: BTreeSet<String> = record.kinds.keys().cloned().collect();
            assert_eq!(keys(&kinds["properties"]), named, "kinds of {name}");
            for (kind, fields) in &record.kinds {
                if let Some(fields) = fields {
                    fields.stand_in(&kinds["properties"][kind], kind);
                }
            }
        }
        known.insert(record.name);
    }
    let what = records(SOURCES[3]).into_iter().find(|record| record.name == "What").unwrap();
    assert!(what.kinds.len() > 20 && known.len() > 20);
}

/// Every blank, every field of it and every word of a field is in the schema, and nothing else is.
#[test]
fn the_schema_names_every_blank_with_its_fields_and_words() {
    let schema: Value = serde_json::from_str(SCHEMA).unwrap();
    let blanks = schema["$defs"]["Record"]["oneOf"].as_array().unwrap();
    assert_eq!(blanks.len(), Blank::ALL.len());
    for (def, blank) in blanks.iter().zip(Blank::ALL) {
        assert_eq!(def["properties"]["blank"]["const"], blank.name());
        let answers = &def["properties"]["answers"];
        let named = |must: bool| -> BTreeSet<String> {
            let fields = blank.fields().iter().filter(|field| field.must || !must);
            fields.map(|field| field.name.to_owned()).collect()
        };
        assert_eq!(keys(&answers["properties"]), named(false), "{}", blank.name());
        assert_eq!(strings(&answers["required"]), named(true), "{}", blank.name());
        for field in blank.fields() {
            let said = &answers["properties"][field.name];
            let words = |words: &[&str]| words.iter().map(|&word| word.to_owned()).collect::<BTreeSet<_>>();
            match field.ask {
                Ask::Word(all) => assert_eq!(strings(&said["enum"]), words(all)),
                Ask::Words(all) => assert_eq!(strings(&said["items"]["enum"]), words(all)),
                Ask::Number { units, .. } if !units.is_empty() => {
                    assert_eq!(strings(&said["properties"]["unit"]["enum"]), words(units));
                }
                Ask::Text(most) => assert_eq!(said["maxLength"], most),
                _ => {}
            }
        }
    }
}

/// What a macro of `almanac::json` says of a record.
struct Record {
    name: String,
    words: BTreeSet<String>,
    /// Each kind with its fields; none where it wraps a record of its own.
    kinds: BTreeMap<String, Option<FieldsOf>>,
    /// The fields of what has no kinds.
    fields: Option<FieldsOf>,
}

#[derive(Default)]
struct FieldsOf {
    must: BTreeSet<String>,
    may: BTreeSet<String>,
}

impl FieldsOf {
    #[track_caller]
    fn stand_in(&self, def: &Value, name: &str) {
        assert_eq!(strings(&def["required"]), self.must, "fields of {name} that must be there");
        assert_eq!(keys(&def["properties"]), &self.must | &self.may, "fields of {name}");
        assert_eq!(def["additionalProperties"], false, "{name}");
    }
}

fn strings(list: &Value) -> BTreeSet<String> {
    list.as_array().into_iter().flatten().map(|word| word.as_str().unwrap().to_owned()).collect()
}

fn keys(object: &Value) -> BTreeSet<String> {
    object.as_object().into_iter().flat_map(|fields| fields.keys().cloned()).collect()
}

fn records(source: &str) -> Vec<Record> {
    let mut records = Vec::new();
    for call in source.split("\njson_").skip(1) {
        let (of, inside) = call.split_once("!(").unwrap();
        let (inside, _) = inside.split_once(");").unwrap();
        let apart = inside.replace([',', '='], " ").replace('{', " { ").replace('}', " } ");
        let mut signs = apart.split_whitespace().peekable();
        let name = signs.next().unwrap().to_owned();
        let mut record = Record { name, words: BTreeSet::new(), kinds: BTreeMap::new(), fields: None };
        match of {
            "object" => record.fields = Some(fields(&mut signs)),
            "choice" => {
                while let Some(part) = signs.next() {
                    assert_eq!(signs.next(), Some("{"));
                    while signs.next().is_some_and(|variant| variant != "}") {
                        let word = signs.next().unwrap().trim_matches('"').to_owned();
                        match part {
                            "words" => _ = record.words.insert(word),
                            "one" => _ = record.kinds.insert(word, None),
                            _ => _ = record.kinds.insert(word, Some(fields(&mut signs))),
                        }
                    }
                }
            }
            other => panic!("json_{other} is new here"),
        }
        records.push(record);
    }
    records
}

/// `{ must, must as "name" } maybe { may }`
fn fields<'a>(signs: &mut std::iter::Peekable<impl Iterator<Item = &'a str>>) -> FieldsOf {
    let mut found = FieldsOf::default();
    let mut part = |names: &mut BTreeSet<String>| {
        assert_eq!(signs.next(), Some("{"));
        while let Some(field) = signs.next().filter(|sign| *sign != "}") {
            let renamed = signs.next_if_eq(&"as").and_then(|_| signs.next());
            names.insert(renamed.map_or(field, |name| name.trim_matches('"')).to_owned());
        }
        signs.next_if_eq(&"maybe").is_some()
    };
    if part(&mut found.must) {
        part(&mut found.may);
    }
    found
}
