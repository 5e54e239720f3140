//! Which lines of the book an inspector is shown, and where.

use crate::almanac::day::Day;
use crate::app::ledger::history::{self, Line};
use crate::app::ledger::words;
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::record::Blank;

/// The parts of the packet that are made of lines.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Looks, trap work, boxes, hives that came into the book.
    Work,
    /// Hives carried to another yard.
    Moves,
    /// Hives that died, left or were given away, and those taken back.
    Ends,
    /// Products with a label, on hives and on the ground.
    Products,
}

/// The lines of `part` from `from` to `to`, both included, oldest first; struck and corrected ones with them, since
/// nothing that was written down is hidden. The keeper's notes only with `notes`; settings, prices and the walking
/// order never. The demonstration is left out as soon as there is a yard of the keeper's own.
pub fn lines(book: &Book, part: Part, from: Day, to: Day, notes: bool) -> Vec<Line<'_>> {
    let own = book.standing().yards.keys().any(|yard| !yard.is_demo());
    let mut lines = history::versions(book);
    lines.retain(|line| {
        let entry = line.entry;
        (from..=to).contains(&entry.day)
            && !(own && entry.is_demo())
            && part_of(&entry.what, notes) == Some(part)
    });
    lines.reverse();
    lines
}

fn part_of(what: &What, notes: bool) -> Option<Part> {
    match what {
        What::Keeper(_)
        | What::Kind(_)
        | What::KindChanged { .. }
        | What::KindRetired { .. }
        | What::Order { .. }
        | What::Struck { .. } => None,
        What::Record(record) => part_of_record(record.blank),
        What::Note { .. } => notes.then_some(Part::Work),
        What::HiveMoved { .. } => Some(Part::Moves),
        What::HiveEnded { .. } | What::HiveBack { .. } | What::HiveSame { .. } => Some(Part::Ends),
        _ => Some(Part::Work),
    }
}

/// Facts about yards, hives and the keeper, climates and aims, trips, trials, costs and verdicts, stock, the freezer
/// and honey are not an inspector's.
fn part_of_record(blank: Blank) -> Option<Part> {
    match blank {
        Blank::Product | Blank::Ground => Some(Part::Products),
        Blank::BroughtIn => Some(Part::Moves),
        Blank::DeadOut => Some(Part::Ends),
        Blank::HiveFacts
        | Blank::YardFacts
        | Blank::KeeperFacts
        | Blank::Climate
        | Blank::Aims
        | Blank::Costs
        | Blank::Trip
        | Blank::Stand
        | Blank::Trial
        | Blank::Verdict
        | Blank::Stock
        | Blank::Freezer
        | Blank::Harvest => None,
        _ => Some(Part::Work),
    }
}

/// A line in words, the keeper's note left out unless `notes`.
pub fn said(book: &Book, entry: &Entry, notes: bool) -> String {
    let mut entry = entry.clone();
    match &mut entry.what {
        What::Check(check) if !notes => check.note = None,
        What::Skip { note, .. } if !notes => *note = None,
        What::Record(record) if !notes => record.leave_out_private(),
        _ => {}
    }
    words::entry(book, &entry)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::ledger::history::Counts;
    use crate::app::ledger::words::tests::{Plain, book, pen, today};
    use crate::book::entry::Ending;

    fn whole(book: &Book, part: Part, notes: bool) -> Vec<Line<'_>> {
        lines(book, part, Day::FIRST, Day::LAST, notes)
    }

    #[test]
    fn every_line_stands_in_one_part_and_the_period_cuts_at_its_days() {
        let book = book();
        let all = whole(&book, Part::Work, true);
        assert!(all.len() > 100 && all.is_sorted_by_key(|line| line.entry.day));
        let (from, to) = (all[40].entry.day, all[90].entry.day);
        let cut = lines(&book, Part::Work, from, to, true);
        let within = all.iter().filter(|line| line.entry.day >= from && line.entry.day <= to).count();
        assert_eq!(cut.len(), within);
        assert!(cut.len() < all.len());
        assert!(whole(&book, Part::Moves, true).is_empty() && whole(&book, Part::Ends, true).is_empty());
    }

    #[test]
    fn the_keepers_notes_are_shown_only_when_they_are_asked_for() {
        let mut book = book();
        let hive = book.standing().hives.keys().next().unwrap().clone();
        let yard = book.standing().hives[&hive].yard.clone();
        let note = What::Note { hive: Some(hive), text: "gate code 4711".to_owned() };
        let written = book.about_yard(&pen(), today(), today(), &yard, note).unwrap();
        book.add(written);
        let all = |notes: bool| {
            let lines = whole(&book, Part::Work, notes);
            lines.iter().map(|line| said(&book, line.entry, notes)).collect::<String>()
        };
        assert!(all(true).contains("4711") && all(true).contains("barrow"));
        assert!(!all(false).contains("4711") && !all(false).contains("barrow"));
    }

    #[test]
    fn words_that_were_corrected_are_still_shown_beside_those_that_count() {
        let mut book = book();
        let looks = whole(&book, Part::Work, false);
        let look = looks.iter().find(|line| matches!(line.entry.what, What::Check(_))).unwrap().entry.clone();
        let lines = looks.len();
        let edit =
            book.correct(&pen(), look.day.plus(1), today(), &look.id, look.what.clone(), &Plain).unwrap();
        let id = edit[0].id.clone();
        book.add(edit);
        let looks = whole(&book, Part::Work, false);
        assert!(looks.is_sorted_by_key(|line| line.entry.day));
        let counts = |id| looks.iter().find(|line| line.entry.id == id).map(|line| &line.counts);
        assert_eq!((counts(look.id), counts(id)), (Some(&Counts::Corrected), Some(&Counts::Yes)));
        assert_eq!(looks.len(), lines + 1);
    }

    #[test]
    fn a_struck_death_is_still_shown_as_struck() {
        let mut book = book();
        let hive = book.standing().hives.keys().next().unwrap().clone();
        let yard = book.standing().hives[&hive].yard.clone();
        let dead = What::HiveEnded { hive, how: Ending::Dead };
        let written = book.about_yard(&pen(), today(), today(), &yard, dead).unwrap();
        let id = written[0].id.clone();
        book.add(written);
        let strike = book.strike(&pen(), today(), &[id], &Plain).unwrap();
        book.add(strike);
        let ends = whole(&book, Part::Ends, false);
        assert_eq!(ends.len(), 1);
        assert!(matches!(ends[0].counts, Counts::Struck { .. }));
    }
}
