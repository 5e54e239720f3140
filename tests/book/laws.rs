//! Laws of the log, on random work by three phones.

use crate::record_of_each::filled;
use crate::support::{Unicode, day, pen};
use crate::{Yard, plan};
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, Ending, Entry, SkipReason, TrapsWent, What};
use beetle_almanac::book::log::Log;
use beetle_almanac::book::page;
use beetle_almanac::book::record::Blank;
use beetle_almanac::book::season::Season;
use beetle_almanac::book::write::KindChoice;
use beetle_almanac::papers::backup;
use proptest::prelude::*;

const DIDS: [Did; 6] =
    [Did::AsFound, Did::ToppedUp, Did::Replaced, Did::Spilled, Did::Missing, Did::GluedShut];

/// One thing a keeper does: which phone, which kind of work, and numbers to pick targets and values with.
pub(crate) type Act = (usize, u8, u32, u32, i32);

/// Two phones that share a yard, each going its own way from there.
pub(crate) fn phones(acts: &[Act]) -> Vec<Book> {
    let start = day("2026-05-01");
    let yard = Yard::new(&["1", "2", "3"], start);
    let mut phones = vec![yard.book.clone(), yard.book.clone(), yard.book.clone()];
    for (phone, act, a, b, shift) in acts {
        let names = ["aa", "bb", "cc"];
        let on = start.plus(*shift);
        let pen = pen(names[*phone], on);
        let book = &mut phones[*phone];
        let hives: Vec<_> = book.standing().hives.keys().cloned().collect();
        // Everything may have been struck out by now.
        let Some(hive) = hives.get(*a as usize % hives.len().max(1)).cloned() else { continue };
        let share = Share::from_percent(Decimal::whole(b % 101)).unwrap();
        let entries = match act % 11 {
            0 => book.skip(&pen, on, on, &hive, SkipReason::Robbing, None),
            1 => {
                let newest = book.log().entries().nth(*b as usize % book.log().len()).unwrap().id.clone();
                let together = book.together(&newest);
                book.strike(&pen, on, &together, &Unicode)
            }
            2 => {
                let plan = plan(&[&format!("n{b}")], &[(BoxDepth::Medium, 2)], on);
                let kind = KindChoice::Known(yard.kind());
                book.add_hives(&pen, &yard.id, &kind, &plan, &Unicode)
            }
            3 => book.boxes_on(
                &pen,
                on,
                on,
                &hive,
                *b as usize % 3,
                &[(BoxDepth::Medium, 2)],
                &yard.kind(),
                true,
            ),
            4 => {
                let part = book.standing().hives[&hive].boxes.first().map(|part| part.id.clone());
                part.map_or(Ok(Vec::new()), |part| book.box_off(&pen, on, on, &hive, &part, TrapsWent::Stock))
            }
            5 => book.end_hive(&pen, on, on, &hive, Ending::Sold, None),
            6 => {
                // A correction of something this phone has seen: the same words on another day.
                let target = book.log().entries().nth(*b as usize % book.log().len()).unwrap().clone();
                let mut draft = beetle_almanac::book::write::Draft::new(book, &pen);
                let id = draft.push(on, target.yard.as_ref(), target.what.clone()).unwrap();
                let mut new: Vec<Entry> = draft.done();
                assert_eq!(new[0].id, id);
                new[0].replaces = Some(target.id);
                Ok(new)
            }
            7 => {
                let other = &hives[*b as usize % hives.len()];
                book.same_hive(&pen, on, &hive, other)
            }
            8 => {
                let blank = Blank::ALL[*b as usize % Blank::ALL.len()];
                let other = &hives[*b as usize % hives.len()];
                book.record(&pen, on, on, Some(&yard.id), filled(blank, &hive, other))
            }
            _ => {
                let work = Check {
                    hive,
                    traps: None,
                    did: DIDS[*b as usize % 6],
                    before: (b % 3 != 0).then_some(share),
                    after: (b % 4 != 0).then_some(share),
                    count: (b % 2 == 0).then(|| CountRange::exact(b % 60)),
                    note: None,
                };
                book.check(&pen, on, on, work)
            }
        };
        if let Ok(entries) = entries {
            assert!(entries.iter().all(|entry| entry.check().is_ok()));
            book.add(entries);
        }
    }
    phones
}

pub(crate) fn acts() -> impl Strategy<Value = Vec<Act>> {
    prop::collection::vec((0..3_usize, any::<u8>(), any::<u32>(), 0..10_000_u32, 0..40_i32), 0..30)
}

pub(crate) fn union(books: &[&Book]) -> Book {
    let mut all = Book::default();
    for book in books {
        all.add(book.log().entries().cloned());
    }
    all
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn adding_entries_one_by_one_ends_where_folding_them_all_ends(acts in acts()) {
        for phone in phones(&acts) {
            prop_assert_eq!(Book::from_log(phone.log().clone()), phone);
        }
    }

    #[test]
    fn putting_phones_together_is_the_same_in_any_order_and_twice_changes_nothing(acts in acts()) {
        let phones = phones(&acts);
        let [a, b, c] = &phones[..] else { unreachable!() };
        let all = union(&[a, b, c]);
        prop_assert_eq!(&union(&[c, a, b]), &all);
        prop_assert_eq!(&union(&[&union(&[a, b]), c]), &union(&[a, &union(&[b, c])]));
        let mut again = all.clone();
        prop_assert_eq!(again.add(all.log().entries().cloned()), 0);
        prop_assert_eq!(again, all);
    }

    #[test]
    fn single_entries_that_come_in_any_order_end_where_folding_them_all_ends(
        acts in acts(), keys in prop::collection::vec(any::<u32>(), 64),
    ) {
        // Two hives that begin late, and a word for an earlier day that they are one.
        let late = [(0, 2, 0, 7, 40), (0, 2, 0, 8, 41), (0, 7, 3, 4, 1)];
        let phones = phones(&[&late[..], &acts].concat());
        let all = union(&phones.iter().collect::<Vec<_>>());
        let mut entries: Vec<Entry> = all.log().entries().cloned().collect();
        entries.sort_by_key(|entry| (keys[entry.id.n() as usize % keys.len()], entry.id.clone()));
        let mut book = Book::default();
        for entry in entries {
            book.add([entry]);
            prop_assert_eq!(&Book::from_log(book.log().clone()), &book);
        }
        prop_assert_eq!(book, all);
    }

    #[test]
    fn what_is_written_is_what_is_read(acts in acts()) {
        for phone in phones(&acts) {
            for entry in phone.log().entries() {
                let text = serde_json::to_string(entry).unwrap();
                prop_assert_eq!(&serde_json::from_str::<Entry>(&text).unwrap(), entry);
            }
            let text = backup::write(phone.log(), pen("aa", day("2026-07-01")).at, Some("phone"));
            let back = backup::open(&text).unwrap();
            let log: Log = back.entries.into_iter().collect();
            prop_assert_eq!(&log, phone.log());
        }
    }

    #[test]
    fn a_page_holds_every_line_of_its_yard_and_day_whatever_was_written_in_between(acts in acts()) {
        let all = union(&phones(&acts).iter().collect::<Vec<_>>());
        for at in all.log().entries().map(page::place) {
            let there: Vec<Entry> = all.log().entries().filter(|entry| page::lies_on(entry, &at)).cloned().collect();
            prop_assert_eq!(all.log().page(&at, []).entries, there);
        }
    }

    #[test]
    fn what_came_and_went_leads_from_the_hives_of_one_day_to_those_of_another(
        acts in acts(), from in -2..40_i32, days in 0..40_i32,
    ) {
        let all = union(&phones(&acts).iter().collect::<Vec<_>>());
        let from = day("2026-05-01").plus(from);
        for yard in all.standing().yards.keys() {
            let season = Season::of(&all, yard, from, from.plus(days));
            let came = season.start + season.new + season.moved_in + season.back;
            let went = season.moved_out + season.ended.iter().sum::<usize>();
            prop_assert_eq!(came, season.end + went);
        }
    }

    #[test]
    fn undo_and_redo_of_anything_end_where_they_began(acts in acts(), pick in any::<u32>()) {
        let mut book = phones(&acts).swap_remove(0);
        let on = day("2026-09-01");
        let before = book.standing().clone();
        let target = book.log().entries().nth(pick as usize % book.log().len()).unwrap().id.clone();
        prop_assume!(!book.log().struck().contains_key(&target));
        let strike = book.strike(&pen("aa", on), on, &[target], &Unicode).unwrap();
        let undo = strike[0].id.clone();
        book.add(strike);
        let redo = book.strike(&pen("aa", on), on, &[undo], &Unicode).unwrap();
        book.add(redo);
        prop_assert_eq!(book.standing(), &before);
    }

    #[test]
    fn any_text_given_to_restore_is_answered(text in ".{0,400}") {
        prop_assert!(backup::open(&text).is_err());
    }
}

#[test]
fn a_backup_with_any_byte_changed_is_not_taken_in_as_something_else() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let text = backup::write(yard.book.log(), pen("aa", yard.start).at, None);
    let whole = backup::open(&text).unwrap();
    for at in 0..text.len() {
        for change in [b'0', b'9', b'"', b' ', b'x', b'}'] {
            let mut bytes = text.clone().into_bytes();
            if bytes[at] == change {
                continue;
            }
            bytes[at] = change;
            let Ok(changed) = String::from_utf8(bytes) else { continue };
            // What stands outside the entries is not under the checksum; the entries are.
            if let Ok(opened) = backup::open(&changed) {
                assert_eq!(opened.entries, whole.entries);
            }
        }
        assert!(backup::open(&text[..at]).is_err(), "cut off at {at}");
    }
}

#[test]
fn the_wrong_file_is_named_for_what_it_is() {
    use backup::{BackupError, Looks};
    let looks = |text: &str| match backup::open(text) {
        Err(BackupError::NotABackup(looks)) => looks,
        other => panic!("{other:?}"),
    };
    assert_eq!(looks(""), Looks::Empty);
    assert_eq!(looks("\u{fffd}PNG\r\n\u{1a}"), Looks::Picture);
    assert_eq!(looks("%PDF-1.7"), Looks::Document);
    assert_eq!(looks("hive,date\n1,2026-05-01\n"), Looks::Table);
    assert_eq!(looks("{\"a\":1}"), Looks::OtherJson);
    assert_eq!(looks("Dear sir"), Looks::Unknown);
    assert_eq!(
        backup::open("{\"format\":\"beetle-almanac backup\",\"version\":5}"),
        Err(BackupError::Newer { found: 5 })
    );
    assert_eq!(backup::open(&"[".repeat(100_000)), Err(BackupError::NotABackup(Looks::Unknown)));
}

#[test]
fn an_entry_that_strikes_or_corrects_the_future_is_not_sound() {
    let yard = Yard::new(&["1"], day("2026-05-01"));
    let mut entry = yard.book.log().entries().next().unwrap().clone();
    entry.replaces = Some(entry.id.clone());
    assert!(entry.check().is_err());
    entry.replaces = None;
    entry.what = What::Struck { entries: vec![entry.id.clone()] };
    assert!(entry.check().is_err());
}
