use super::*;
use crate::app::ledger::papers::packet::{Part, lines};
use crate::app::ledger::words::tests::{Plain, book, pen, today};
use crate::book::entry::Ending;

const PARTS: [Part; 3] = [Part::Work, Part::Moves, Part::Ends];

/// A season in which everything happened that a packet tells of.
fn season() -> Book {
    let mut book = book();
    let standing = book.standing().clone();
    let ids: Vec<ThingId> = standing.hives.keys().cloned().collect();
    let (ferry, kiln) = (standing.hives[&ids[0]].yard.clone(), standing.yards.keys().nth(1).unwrap().clone());
    let add = |book: &mut Book, written: Result<Vec<Entry>, crate::book::write::Refusal>| {
        let entries = written.unwrap();
        let first = entries[0].id.clone();
        book.add(entries);
        (first, book.clone())
    };
    let note = What::Note { hive: None, text: "gate code 4711".to_owned() };
    let written = book.about_yard(&pen(), today(), today(), &ferry, note);
    let (_, now) = add(&mut book, written);
    let (_, now) = add(
        &mut book,
        now.move_hive(&pen(), today(), today(), &ids[2], &kiln, Some("P-7".to_owned()), &Plain),
    );
    let (_, now) = add(&mut book, now.end_hive(&pen(), today(), today(), &ids[3], Ending::Dead, None));
    let (dead, now) = add(&mut book, now.end_hive(&pen(), today(), today(), &ids[4], Ending::Sold, None));
    let (_, now) = add(&mut book, now.strike(&pen(), today(), &[dead], &Plain));
    let all: Vec<ThingId> = ids[5..12].to_vec();
    let (_, now) = add(&mut book, now.same_for_all(&pen(), today(), today(), &all, Did::ToppedUp));
    let looked =
        now.log().in_effect().into_iter().find(|(_, e)| matches!(e.what, What::Check(_))).unwrap().1.clone();
    let What::Check(check) = looked.what.clone() else { unreachable!() };
    let other = What::Check(Check { did: Did::Missing, ..check });
    add(&mut book, now.correct(&pen(), looked.day, today(), &looked.id, other, &Plain));
    book
}

/// Whatever the span, every line of it is told once and nothing else is.
#[test]
fn every_line_of_a_span_is_told_exactly_once() {
    let book = season();
    let mut rows_seen = 0;
    for (from, to) in [(0, 0), (-70, 0), (-56, -28), (-400, 0), (-29, -29)] {
        for (part, notes, every) in PARTS
            .into_iter()
            .flat_map(|part| [(part, false, false), (part, true, false), (part, false, true)])
        {
            let of = || lines(&book, part, today().plus(from), today().plus(to), notes);
            let mut wanted: Vec<&EntryId> = of().iter().map(|line| &line.entry.id).collect();
            let rows = rows(&book, of(), notes, every);
            let told = rows.iter().flat_map(|row| &row.told);
            let mut found: Vec<&EntryId> = told.flat_map(|told| told.lines.clone()).collect();
            wanted.sort();
            found.sort();
            assert_eq!(found, wanted);
            assert!(rows.is_sorted_by_key(|row| row.day));
            for (at, row) in rows.iter().enumerate() {
                assert!(
                    !row.told.is_empty()
                        && rows[..at].iter().all(|other| (other.day, other.yard) != (row.day, row.yard))
                );
                for told in &row.told {
                    assert!(!told.said.is_empty() && (!every || told.lines.len() == 1));
                    // What does not count is told by itself.
                    assert!(told.counts == Counts::Yes || told.lines.len() == 1);
                }
            }
            rows_seen += rows.len();
        }
    }
    assert!(rows_seen > 40);
}

#[test]
fn a_walk_is_one_sentence_and_names_its_hives() {
    let book = book();
    let all = lines(&book, Part::Work, Day::FIRST, Day::LAST, false);
    let rows = rows(&book, all, false, false);
    let walk = rows.iter().find(|row| row.told[0].said.starts_with("23")).unwrap();
    let said = walk.told[0].said.replace('\u{a0}', " ");
    assert!(said.starts_with("23 hives: topped up "), "{said}");
    assert!(
        said.contains("; replaced ") && said.contains("; level found ") && said.contains("; left 50 %"),
        "{said}"
    );
    assert!(said.contains("; beetles "), "{said}");
    let hives: usize =
        rows.iter().filter(|row| row.told.iter().any(|told| told.said.contains("1–23: new, "))).count();
    assert_eq!(hives, 1);
    assert!(rows.len() < 16, "{}", rows.len());
}

#[test]
fn struck_and_corrected_lines_stay_in_sight_under_their_day() {
    let book = season();
    let told = |part, wanted: &dyn Fn(&Counts) -> bool| {
        let rows = rows(&book, lines(&book, part, Day::FIRST, Day::LAST, false), false, false);
        let told: Vec<String> = rows
            .into_iter()
            .flat_map(|row| row.told)
            .filter(|told| wanted(&told.counts))
            .map(|told| told.said)
            .collect();
        told
    };
    assert_eq!(told(Part::Ends, &|counts| matches!(counts, Counts::Struck { .. })).len(), 1);
    assert_eq!(told(Part::Work, &|counts| *counts == Counts::Corrected).len(), 1);
    assert!(told(Part::Work, &|counts| *counts == Counts::Yes).iter().any(|said| said.contains("missing")));
    assert!(told(Part::Moves, &|_| true)[0].contains("P-7"));
}

#[test]
fn tags_that_follow_each_other_are_a_range() {
    let of = |tags: &[&str]| joined(tags.iter().map(|tag| (*tag).to_owned()).collect());
    assert_eq!(of(&["3", "1", "2", "5", "24 nuc", "07", "8", "9"]), "1–3, 5, 8, 9, 24 nuc, 07");
    assert_eq!(of(&["7", "7"]), "7, 7");
    assert_eq!(of(&["4294967295", "4294967294"]), "4294967294, 4294967295");
    assert_eq!(of(&[]), "");
}
