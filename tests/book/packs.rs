//! Hives handed over to another phone: any part of a book, with or without its notes, and what a union makes of it.

use crate::laws::{acts, phones, union};
use crate::record_of_each::filled;
use crate::support::{Unicode, day, pen};
use crate::{Yard, plan, work_on};
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, Entry, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::record::{About, Blank};
use beetle_almanac::book::write::Draft;
use beetle_almanac::papers::backup::{self, BackupError};
use beetle_almanac::papers::pack::{self, Choice, pick};
use proptest::prelude::*;

/// The same book with a note on two of three pieces of work and skips, and records of which some hold everything, some
/// only what is private, some only the rest and some next to nothing: the same on every phone.
fn noted(book: &Book) -> Book {
    let mut all = Book::default();
    all.add(book.log().entries().cloned().map(|mut entry| {
        let text = (entry.id.n() % 3 > 0).then(|| format!("note {}", entry.id));
        match &mut entry.what {
            What::Check(work) => work.note = text,
            What::Skip { note, .. } => *note = text,
            What::Record(record) => {
                for (field, answer) in record.blank.fields().iter().zip(&mut record.answers) {
                    let keeps = [true, field.private, !field.private, false][entry.id.n() as usize % 4];
                    if !keeps && !field.must {
                        *answer = None;
                    }
                }
            }
            _ => {}
        }
        entry
    }));
    all
}

fn hives(book: &Book, which: u32) -> Vec<ThingId> {
    let all = book.standing().hives.keys().enumerate();
    all.filter(|(at, _)| which >> (at % 32) & 1 == 1).map(|(_, hive)| hive.clone()).collect()
}

/// The yard as a whole, for every third choice.
fn place(book: &Book, which: u32) -> Option<ThingId> {
    let place = book.log().entries().find(|entry| matches!(entry.what, What::Yard { .. }));
    place.filter(|_| which.is_multiple_of(3)).map(|entry| entry.id.thing(0))
}

fn whole(book: &Book, notes: bool) -> Choice {
    // Hives that were struck out have no standing, and their lines are lines all the same.
    let hives = book.log().entries().filter(|entry| matches!(entry.what, What::Hive { .. }));
    let hives = hives.map(|entry| entry.id.thing(0)).collect();
    let yards = book.log().entries().find(|entry| matches!(entry.what, What::Yard { .. }));
    Choice { hives, yard: yards.map(|entry| entry.id.thing(0)), since: None, notes }
}

fn of(entries: &[Entry]) -> Book {
    let mut book = Book::default();
    book.add(entries.iter().cloned());
    book
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(300))]

    #[test]
    fn packs_and_books_come_together_in_any_order_and_twice_changes_nothing(
        acts in acts(), which in any::<[u32; 3]>(), notes in any::<[bool; 3]>(), since in 0..40_i32,
    ) {
        let phones: Vec<Book> = phones(&acts).iter().map(noted).collect();
        let mut parts = vec![phones[0].clone()];
        for (at, phone) in phones.iter().enumerate() {
            let since = (which[at] % 2 == 0).then(|| day("2026-05-01").plus(since));
            let choice = Choice { hives: hives(phone, which[at]), yard: place(phone, which[at]), since, notes: notes[at] };
            parts.push(of(&pick(phone.log(), &choice)));
        }
        let [a, b, c, d] = &parts[..] else { unreachable!() };
        let all = union(&[a, b, c, d]);
        prop_assert_eq!(&union(&[d, c, b, a]), &all);
        prop_assert_eq!(&union(&[b, a, d, c]), &all);
        prop_assert_eq!(&union(&[&union(&[b, c]), &union(&[d, a])]), &all);
        let mut again = all.clone();
        for part in &parts {
            let entries: Vec<Entry> = part.log().entries().cloned().collect();
            let said = all.log().compare(&entries);
            prop_assert!(said.new == 0 && said.fuller == 0 && said.clashes.is_empty());
            prop_assert_eq!(again.add(entries), 0);
        }
        prop_assert_eq!(again, all);
    }

    #[test]
    fn whatever_is_picked_is_a_part_of_the_book(
        acts in acts(), which in any::<u32>(), notes in any::<bool>(), since in 0..40_i32,
    ) {
        let phone = noted(&phones(&acts)[1]);
        let since = (since > 5).then(|| day("2026-05-01").plus(since));
        let picked = pick(phone.log(), &Choice { hives: hives(&phone, which), yard: place(&phone, which), since, notes });
        prop_assert!(picked.windows(2).all(|two| two[0].id < two[1].id));
        for entry in &picked {
            let own = phone.log().get(&entry.id).unwrap();
            let own = if notes { own.clone() } else { own.clone().without_private() };
            prop_assert_eq!(entry, &own);
        }
        let text = pack::write(&picked, notes, pen("aa", day("2026-07-01")).at, Some("phone"));
        let back = pack::open(&text).unwrap();
        prop_assert_eq!(&back.backup.entries, &picked);
        prop_assert_eq!(back.pack, Some(notes));
    }

    #[test]
    fn a_new_phone_that_is_given_everything_shows_the_same_hives(
        acts in acts(), which in any::<u32>(), notes in any::<bool>(),
    ) {
        let phone = noted(&phones(&acts)[2]);
        let chosen = hives(&phone, which);
        let choice = Choice { hives: chosen.clone(), yard: place(&phone, which), since: None, notes };
        let new = of(&pick(phone.log(), &choice));
        for hive in &chosen {
            prop_assert_eq!(new.standing().hives.get(hive), phone.standing().hives.get(hive));
        }
        prop_assert_eq!(new.standing().hives.len(), chosen.len());
    }

    #[test]
    fn a_phone_that_has_what_is_older_shows_the_same_hives(
        acts in acts(), which in any::<u32>(), notes in any::<bool>(), since in 0..40_i32,
    ) {
        let phone = noted(&phones(&acts)[0]);
        let since = day("2026-05-01").plus(since);
        let chosen = hives(&phone, which);
        let choice = Choice { hives: chosen.clone(), yard: place(&phone, which), since: Some(since), notes };
        let mut other = Book::default();
        let old = |entry: &&Entry| entry.at.day() < since && entry.day < since;
        other.add(phone.log().entries().filter(old).cloned());
        other.add(pick(phone.log(), &choice));
        for hive in &chosen {
            prop_assert_eq!(other.standing().hives.get(hive), phone.standing().hives.get(hive));
        }
    }

    #[test]
    fn without_notes_every_record_says_the_same_but_for_what_is_private(acts in acts()) {
        let phone = noted(&phones(&acts)[0]);
        let there = of(&pick(phone.log(), &whole(&phone, false)));
        let there = &there.standing().records;
        prop_assert!(there.keys().all(|id| phone.standing().records.contains_key(id)));
        for (id, now) in &phone.standing().records {
            let mut bare = now.clone();
            bare.record.leave_out_private();
            let words = now.record.filled().count() > 0 && bare.record.filled().count() == 0;
            match there.get(id) {
                Some(there) => prop_assert_eq!(there, &bare),
                None => prop_assert!(words && now.record.blank != Blank::Rain),
            }
        }
    }

    #[test]
    fn everything_with_its_notes_is_as_good_as_a_backup(acts in acts()) {
        let phones: Vec<Book> = phones(&acts).iter().map(noted).collect();
        let everything = of(&pick(phones[0].log(), &whole(&phones[0], true)));
        prop_assert_eq!(&everything, &phones[0]);
        let text = backup::write(phones[0].log(), pen("aa", day("2026-07-01")).at, None);
        let backup = of(&backup::open(&text).unwrap().entries);
        prop_assert_eq!(union(&[&everything, &phones[1]]), union(&[&phones[1], &backup]));
        // Without its notes it is the same hives, and a backup that comes later brings the notes.
        let bare = of(&pick(phones[0].log(), &whole(&phones[0], false)));
        prop_assert_eq!(&bare.standing().hives, &phones[0].standing().hives);
        prop_assert_eq!(&bare.standing().yards, &phones[0].standing().yards);
        prop_assert_eq!(union(&[&bare, &backup]), phones[0].clone());
    }
}

/// A yard with a note on its work and one line that is nothing but a note.
fn yard() -> Yard {
    let start = day("2026-05-01");
    let mut yard = Yard::new(&["1", "2"], start);
    for (tag, text) in [("1", "queen seen"), ("2", "gate code 4711")] {
        let work = Check {
            hive: yard.hive(tag),
            traps: None,
            did: Did::ToppedUp,
            before: None,
            after: None,
            count: None,
            note: Some(text.to_owned()),
        };
        let entries = yard.book.check(&pen("aa", start.plus(9)), start.plus(9), start.plus(9), work).unwrap();
        yard.book.add(entries);
    }
    let on = start.plus(9);
    for hive in [Some(yard.hive("1")), None] {
        let note = What::Note { hive, text: "sold soon".to_owned() };
        let entries = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, note).unwrap();
        yard.book.add(entries);
    }
    yard
}

#[test]
fn no_word_of_a_withheld_note_is_in_the_pack() {
    let yard = yard();
    let at = pen("aa", yard.start).at;
    let text = |notes| pack::write(&pick(yard.book.log(), &whole(&yard.book, notes)), notes, at, None);
    for word in ["queen seen", "4711", "sold soon"] {
        assert!(!text(false).contains(word) && text(true).contains(word), "{word}");
    }
    assert_eq!(pack::open(&text(false)).unwrap().pack, Some(false));
}

#[test]
fn the_other_hives_and_the_keepers_own_settings_stay_at_home() {
    let mut yard = yard();
    let on = yard.start.plus(10);
    let keeper =
        beetle_almanac::book::entry::KeeperChange { name: Some("A Keeper".to_owned()), ..Default::default() };
    let entries = yard.book.about_keeper(&pen("aa", on), on, What::Keeper(keeper)).unwrap();
    yard.book.add(entries);
    let choice = Choice { hives: vec![yard.hive("1")], yard: None, since: None, notes: true };
    let picked = pick(yard.book.log(), &choice);
    let other = yard.hive("2");
    assert!(picked.iter().all(|entry| entry.hive().is_none_or(|hive| hive != other)));
    assert!(!picked.iter().any(|entry| matches!(entry.what, What::Keeper(_))));
    // What was said of the yard goes along with the yard alone.
    assert!(!picked.iter().any(|entry| matches!(entry.what, What::Note { hive: None, .. })));
    let today = Choice { since: Some(on), ..choice };
    assert!(!pick(yard.book.log(), &today).iter().any(|entry| matches!(entry.what, What::Check(_))));
}

#[test]
fn a_note_that_was_withheld_comes_with_a_backup_and_is_no_clash() {
    let yard = yard();
    let mut other = of(&pick(yard.book.log(), &whole(&yard.book, false)));
    let backup = backup::open(&backup::write(yard.book.log(), pen("aa", yard.start).at, None)).unwrap();
    let said = backup.preview(&other);
    assert_eq!((said.new, said.fuller, said.clashes.len()), (2, 2, 0), "two notes, and two on work");
    other.add(backup.entries.clone());
    assert_eq!(other, yard.book);
    // The other way round the pack says nothing new.
    let pack = pick(yard.book.log(), &whole(&yard.book, false));
    let said = yard.book.log().compare(&pack);
    assert_eq!((said.new, said.fuller, said.same, said.clashes.len()), (0, 0, pack.len(), 0));
    // Two notes that differ are two notes.
    let mut foreign = backup.entries;
    let work = foreign.iter_mut().find_map(|entry| match &mut entry.what {
        What::Check(work) => Some(work),
        _ => None,
    });
    work.unwrap().note = Some("another".to_owned());
    assert_eq!(yard.book.log().compare(&foreign).clashes.len(), 1);
}

#[test]
fn a_pack_with_any_byte_changed_or_cut_off_is_not_taken_in_as_something_else() {
    let yard = yard();
    let picked = pick(yard.book.log(), &whole(&yard.book, false));
    let text = pack::write(&picked, false, pen("aa", yard.start).at, Some("Ann"));
    let whole = pack::open(&text).unwrap();
    for at in 0..text.len() {
        for change in [b'0', b'9', b'"', b' ', b'x', b'}'] {
            let mut bytes = text.clone().into_bytes();
            if bytes[at] == change {
                continue;
            }
            bytes[at] = change;
            let Ok(changed) = String::from_utf8(bytes) else { continue };
            // A blank for a line end between two fields changes nothing.
            if let Ok(opened) = pack::open(&changed) {
                assert_eq!(opened, whole, "{at}");
            }
        }
        assert!(pack::open(&text[..at]).is_err(), "cut off at {at}");
    }
    assert!(pack::open(&text[..text.len() / 2]) == Err(BackupError::Damaged), "it is named for what it is");
    // As the field for backups is the field for packs, so the other way round.
    let backup = backup::write(yard.book.log(), pen("aa", yard.start).at, None);
    assert_eq!(pack::open(&backup).unwrap().backup, backup::open(&backup).unwrap());
    assert_eq!(pack::open(&backup).unwrap().pack, None);
    assert!(matches!(backup::open(&text), Err(BackupError::NotABackup(_))));
}

#[test]
fn hives_and_yards_that_two_phones_made_of_the_same_name_are_named_before_anything_changes() {
    let start = day("2026-05-01");
    let yard = Yard::new(&["1", "12"], start);
    // The other phone took in the yard when it had no hive 12, and made one itself.
    let mut other = of(&pick(
        yard.book.log(),
        &Choice { hives: vec![yard.hive("1")], yard: Some(yard.id.clone()), since: None, notes: true },
    ));
    let kind = beetle_almanac::book::write::KindChoice::Known(yard.kind());
    let twelve = plan(&["12"], &[(BoxDepth::Deep, 2)], start);
    let entries = other.add_hives(&pen("bb", start.plus(1)), &yard.id, &kind, &twelve, &Unicode).unwrap();
    other.add(entries);
    let file =
        |entries: &[Entry]| pack::open(&pack::write(entries, true, pen("aa", start).at, None)).unwrap();
    let all = file(&pick(yard.book.log(), &whole(&yard.book, true)));
    let said = all.preview(&other, &Unicode);
    assert_eq!(said.twins, [("12".to_owned(), "Ferry Field".to_owned())]);
    assert!(said.yards.is_empty() && said.doubles == 0);
    // A yard of the same name that was made on a phone of its own.
    let mut alone = Book::default();
    let new = beetle_almanac::book::write::KindChoice::New(crate::trap());
    let entries = alone
        .keep_yard(
            &pen("cc", start),
            " ferry field",
            "Europe/Berlin",
            &new,
            &plan(&["1"], &[(BoxDepth::Deep, 1)], start),
        )
        .unwrap();
    alone.add(entries);
    let said = all.preview(&alone, &Unicode);
    assert_eq!(said.yards, ["Ferry Field"]);
    assert_eq!(said.twins, [("1".to_owned(), "Ferry Field".to_owned())]);
    // What is here already is no twin of itself.
    assert_eq!(all.preview(&yard.book, &Unicode).twins, []);
}

#[test]
fn work_that_both_phones_logged_is_told_as_possible_doubles() {
    let start = day("2026-05-01");
    let mut yard = Yard::new(&["1", "2"], start);
    let other = yard.book.clone();
    yard.log("1", start.plus(3), Did::ToppedUp, (None, None));
    let on = start.plus(3);
    let work = work_on(yard.hive("1"), Did::ToppedUp);
    let entries = other.check(&pen("bb", on), on, on, work).unwrap();
    let mut theirs = other.clone();
    theirs.add(entries);
    let picked = pick(yard.book.log(), &Choice { since: Some(on), ..whole(&yard.book, true) });
    let file = pack::open(&pack::write(&picked, true, pen("aa", on).at, None)).unwrap();
    let said = file.preview(&theirs, &Unicode);
    assert_eq!((said.doubles, said.union.new), (1, 1));
    assert_eq!(file.preview(&other, &Unicode).doubles, 0);
}

/// A record of each kind, every field filled in: what its blank marks as private stays at home unless it is asked for.
#[test]
fn what_a_record_keeps_to_itself_is_withheld_like_a_note() {
    let start = day("2026-05-01");
    let mut yard = Yard::new(&["1", "2"], start);
    let (one, two) = (yard.hive("1"), yard.hive("2"));
    let on = day("2026-07-14");
    for blank in Blank::ALL {
        let record = filled(blank, &one, &two);
        let place = (blank.about() != About::Keeper).then(|| yard.id.clone());
        let pen = pen("aa", on);
        let mut draft = Draft::new(&yard.book, &pen);
        draft.push(on, place.as_ref(), What::Record(record)).unwrap();
        let entries = draft.done();
        yard.book.add(entries);
    }
    let at = pen("aa", on).at;
    let bare = pick(yard.book.log(), &whole(&yard.book, false));
    let full = pick(yard.book.log(), &whole(&yard.book, true));
    assert!(bare.iter().all(|entry| !entry.has_private()) && full.iter().any(Entry::has_private));
    let records =
        |picked: &[Entry]| picked.iter().filter(|entry| matches!(entry.what, What::Record(_))).count();
    let keepers = Blank::ALL.iter().filter(|blank| blank.about() == About::Keeper).count();
    assert_eq!(records(&full), Blank::ALL.len() - keepers);
    let text = pack::write(&bare, false, at, None);
    assert_eq!(pack::open(&text).unwrap().backup.entries, bare);
    // A phone that had nothing gets the rest with the full pack, and then it is all the same.
    let mut other = of(&bare);
    assert_eq!(other.log().compare(&full).clashes, []);
    other.add(full.clone());
    assert_eq!(other, of(&full));
    assert_eq!(union(&[&of(&full), &of(&bare)]), of(&full));
}

/// Found by the law above: the hive that was said to be the chosen one is itself not chosen any more, and the strike of
/// that line is of no chosen hive either.
#[test]
fn what_was_said_of_two_hives_and_struck_out_since_is_struck_out_on_the_other_phone_too() {
    let mut yard = Yard::new(&["1", "2"], day("2026-05-01"));
    yard.log("2", day("2026-05-03"), Did::AsFound, (None, None));
    let (on, first, second) = (day("2026-05-04"), yard.hive("1"), yard.hive("2"));
    let same = yard.book.same_hive(&pen("aa", on), on, &second, &first).unwrap();
    yard.book.add(same.clone());
    let mut other = of(&yard.book.log().entries().cloned().collect::<Vec<_>>());
    let on = day("2026-05-10");
    let struck = yard.book.strike(&pen("aa", on), on, &[same[0].id.clone()], &Unicode).unwrap();
    yard.book.add(struck);
    let choice = Choice { hives: vec![first.clone()], yard: None, since: Some(on), notes: true };
    other.add(pick(yard.book.log(), &choice));
    let now = |book: &Book| book.standing().hives.get(&first).cloned();
    assert_eq!(now(&other), now(&yard.book));
    assert!(now(&other).unwrap().last.is_none(), "the work was on the other hive");
}
