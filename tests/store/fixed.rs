//! Version 1 is read for ever. The texts below were made by another program (Python's `json` and `zlib.crc32`) and
//! are never edited: if one of these tests fails, the code is wrong, or phones out there lose their records.

use super::{FORMAT, entries, open, page};
use crate::phone::Memory;
use beetle_almanac::almanac::day::Day;
use beetle_almanac::store::envelope::{self, Envelope};
use beetle_almanac::store::{Desk, Format, Found, PageName, Slot};

const PAGE: &str = r#"{"v":1,"g":7,"c":"0c00367b","d":["Łąka 🐝","½ full"]}"#;
const OLD: &str = r#"{"v":1,"g":1,"c":"6e4a94ea","d":["looked"]}"#;
const NEW: &str = r#"{"v":1,"g":2,"c":"65405575","d":["looked","topped up"]}"#;
const JOURNAL: &str = r#"{"v":1,"g":1,"c":"9cfcdf95","d":{"pages":[{"k":"beetle-almanac:page:river:2026-07-14","o":"{\"v\":1,\"g\":1,\"c\":\"6e4a94ea\",\"d\":[\"looked\"]}","n":"{\"v\":1,\"g\":2,\"c\":\"65405575\",\"d\":[\"looked\",\"topped up\"]}"},{"k":"beetle-almanac:page:keeper:2026-07-14","o":null,"n":"{\"v\":1,\"g\":1,\"c\":\"6e4a94ea\",\"d\":[\"looked\"]}"}]}}"#;
const PREFS: &str = r#"{"v":1,"g":3,"c":"c12679fd","d":"de"}"#;

#[test]
fn a_page_of_version_1_is_read_as_it_was_written() {
    let inside = Envelope { version: 1, generation: 7, payload: r#"["Łąka 🐝","½ full"]"# };
    assert_eq!(envelope::open(PAGE), Ok(inside));
    assert_eq!(envelope::wrap(1, 7, inside.payload), PAGE);

    let phone = Memory::new();
    phone.lay("beetle-almanac:page:river-2:2026-07-14", PAGE);
    let (mut book, _) = open(&phone);
    let shelves = book.read_all().unwrap();
    assert_eq!(shelves.pages[0].name, page("river-2"));
    assert_eq!(shelves.pages[0].generation, Some(7));
    assert_eq!(shelves.pages[0].found, Found::Loaded(entries(&["Łąka 🐝", "½ full"])));
    assert_eq!(FORMAT.version(), 1);
}

#[test]
fn a_journal_of_version_1_is_finished() {
    let phone = Memory::new();
    phone.lay("beetle-almanac:page:river:2026-07-14", OLD);
    phone.lay("beetle-almanac:journal", JOURNAL);
    let (_, recovery) = open(&phone);
    assert_eq!(recovery.finished, 2);
    let texts = phone.texts();
    assert_eq!(texts.get("beetle-almanac:page:river:2026-07-14").map(String::as_str), Some(NEW));
    assert_eq!(texts.get("beetle-almanac:page:keeper:2026-07-14").map(String::as_str), Some(OLD));
    assert_eq!(texts.len(), 2);
}

#[test]
fn a_journal_is_written_as_in_version_1() {
    let phone = Memory::new();
    phone.lay("beetle-almanac:page:river:2026-07-14", OLD);
    let (mut book, _) = open(&phone);
    book.read_all().unwrap();
    phone.set_faults(crate::phone::Faults { cut: Some(2), ..Default::default() });
    let keeper = PageName::keeper(page("river").day());
    book.write_many(&[(page("river"), entries(&["looked", "topped up"])), (keeper, entries(&["looked"]))])
        .unwrap_err();
    assert_eq!(phone.texts().get("beetle-almanac:journal").map(String::as_str), Some(JOURNAL));
}

#[test]
fn the_desk_of_version_1_is_read_from_either_side() {
    let format: Format<String> = Format::new(&[], |_| true);
    for key in ["beetle-almanac:desk:prefs:a", "beetle-almanac:desk:prefs:b"] {
        let phone = Memory::new();
        phone.lay(key, PREFS);
        assert_eq!(Desk::new(&phone).read(Slot::Prefs, &format), Ok(Found::Loaded("de".to_owned())));
    }
    assert_eq!(Slot::Draft.keys(), ["beetle-almanac:desk:draft:a", "beetle-almanac:desk:draft:b"]);
    assert_eq!(Slot::Meta.keys(), ["beetle-almanac:desk:meta:a", "beetle-almanac:desk:meta:b"]);
}

#[test]
fn keys_are_those_of_version_1() {
    let day = Day::from_ymd(2026, 2, 3).unwrap();
    let river = PageName::yard_on("river-2", day).unwrap();
    assert_eq!(river.key(1), "beetle-almanac:page:river-2:2026-02-03");
    assert_eq!(river.key(2), "beetle-almanac:page:river-2:2026-02-03:2");
    assert_eq!(PageName::keeper(day).key(1), "beetle-almanac:page:keeper:2026-02-03");
    assert_eq!(PageName::from_key("beetle-almanac:page:river-2:2026-02-03:2"), Some((river, 2)));
}

#[test]
fn a_key_that_no_page_has_is_no_page() {
    for key in [
        "",
        "beetle-almanac:page:",
        "beetle-almanac:page:river",
        "beetle-almanac:page:river:",
        "beetle-almanac:page:river:2026-02-30",
        "beetle-almanac:page:river:2026-2-3",
        "beetle-almanac:page::2026-02-03",
        "beetle-almanac:page:River:2026-02-03",
        "beetle-almanac:page:river:2026-02-03:",
        "beetle-almanac:page:river:2026-02-03:0",
        "beetle-almanac:page:river:2026-02-03:1",
        "beetle-almanac:page:river:2026-02-03:02",
        "beetle-almanac:page:river:2026-02-03:+2",
        "beetle-almanac:page:river:2026-02-03:1000",
        "beetle-almanac:page:river:2026-02-03:2:2",
        "other:page:river:2026-02-03",
    ] {
        assert_eq!(PageName::from_key(key), None, "{key}");
    }
}

#[test]
fn a_yard_that_would_be_taken_for_the_keeper_or_break_a_key_is_refused() {
    let day = Day::from_ymd(2026, 2, 3).unwrap();
    for id in ["", "keeper", "a:b", "Ä", "river 2", "RIVER", &"x".repeat(41)] {
        assert!(PageName::new(Some(id), day).is_err(), "{id}");
    }
    assert!(PageName::new(Some(&"x".repeat(40)), day).is_ok());
    assert_eq!(PageName::new(None, day), Ok(PageName::keeper(day)));
}

#[test]
fn nothing_opens_that_the_app_did_not_write() {
    let whole = envelope::wrap(1, 1, "[]");
    assert!(envelope::open(&whole).is_ok());
    let crc = &whole[15..23];
    for text in [
        format!(" {whole}"),
        format!("{whole} "),
        format!("{whole}x"),
        format!("{whole}{whole}"),
        whole.replace(",\"d\"", ", \"d\""),
        whole.replace(crc, &crc.to_uppercase()),
        whole.replace(crc, &format!("+{}", &crc[1..])),
        whole.replace("{\"v\":1,", "{\"v\":1,\"v\":1,"),
        whole.replace('}', ",\"e\":1}"),
        whole.replace("\"v\":1,\"g\":1", "\"g\":1,\"v\":1"),
        whole.replace("\"v\":1", "\"v\":1.0"),
        whole.replace("\"v\":1", "\"v\":\"1\""),
        whole.replace("\"g\":1", "\"g\":-1"),
        envelope::wrap(0, 1, "[]"),
        envelope::wrap(1, 0, "[]"),
        envelope::wrap(1, envelope::MAX_GENERATION + 1, "[]"),
        envelope::wrap(1, u64::MAX, "[]"),
        envelope::wrap(1, 1, ""),
        envelope::wrap(1, 1, "[] []"),
        envelope::wrap(1, 1, "[1,]"),
        envelope::wrap(1, 1, "1},\"x\":{\"d\":1"),
        "null".to_owned(),
        "[1,1,\"00000000\",[]]".to_owned(),
        format!("[1,1,\"{crc}\",[]]"),
    ] {
        assert!(envelope::open(&text).is_err(), "{text}");
    }
    assert!(envelope::open(&envelope::wrap(1, envelope::MAX_GENERATION, " [] \n")).is_ok());
}
