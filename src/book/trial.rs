//! Trials of the keeper's own, as they are written down: two records of hives in the order of their pairs, one of each side.

use super::Book;
use super::caught::{Caught, Days};
use super::id::{EntryId, ThingId};
use super::record::{Answer, Blank, Record};
use super::standing::RecordNow;
use super::urgent::{self, Because};
use crate::almanac::day::Day;
use crate::almanac::trend::Stretch;
use crate::almanac::trial::{Outcome, Pairs, outcome, pairs};

/// Places of the fields in the blank.
const NAMED: usize = 0;
const SIDE: usize = 1;
const UNTIL: usize = 2;

/// A trial.
#[derive(Clone, Debug, PartialEq)]
pub struct Trial {
    /// What is tried.
    pub named: String,
    /// The yard.
    pub yard: Option<ThingId>,
    /// The day it was written down for.
    pub from: Day,
    /// The day it is opened, fixed beforehand.
    pub until: Option<Day>,
    /// The hive that gets it and the one that does not, pair by pair.
    pub pairs: Vec<(ThingId, ThingId)>,
}

/// Every trial that has both sides, newest first. Sides belong together by day, yard and name.
pub fn all(book: &Book) -> Vec<Trial> {
    let standing = book.standing();
    let records = standing.records_of(Blank::Trial);
    let side = |now: &RecordNow| now.record.answers.get(SIDE).cloned().flatten();
    let mut taken: Vec<&EntryId> = Vec::new();
    let mut trials = Vec::new();
    for (_, with) in records.iter().filter(|(_, now)| side(now) == Some(Answer::Word(0))) {
        let named = with.record.text("named").unwrap_or_default();
        let other = records.iter().find(|(id, now)| {
            !taken.contains(id)
                && side(now) == Some(Answer::Word(1))
                && (now.day, &now.yard, now.record.text("named")) == (with.day, &with.yard, Some(named))
        });
        let Some((id, without)) = other else { continue };
        taken.push(id);
        let mut each = Vec::new();
        for (one, other) in with.record.hives.iter().zip(&without.record.hives) {
            each.push((standing.kept(one).clone(), standing.kept(other).clone()));
        }
        let until = match with.record.answers.get(UNTIL) {
            Some(Some(Answer::Day(day))) => Some(*day),
            _ => None,
        };
        let (yard, named) = (with.yard.clone(), named.to_owned());
        trials.push(Trial { named, yard, from: with.day, until, pairs: each });
    }
    trials.reverse();
    trials
}

/// The hives of trials that go on: whoever sees their catch sees which side does better, and stops when it looks good.
pub fn shut(book: &Book, today: Day) -> Vec<ThingId> {
    let mut hives = Vec::new();
    for trial in all(book) {
        if trial.from <= today && !trial.is_open(today) && trial.until.is_some() {
            for (with, without) in trial.pairs {
                hives.extend([with, without]);
            }
        }
    }
    hives
}

impl Trial {
    /// Whether its day has come.
    pub fn is_open(&self, today: Day) -> bool {
        self.until.is_some_and(|until| today >= until)
    }

    /// What it came to; none before its day. Counts that began before it or went on after its day are left out.
    pub fn outcome(&self, caught: &[Caught], today: Day) -> Option<Outcome> {
        let to = self.until.filter(|_| self.is_open(today))?;
        let days = Days { from: self.from, to };
        let of = |hive: &ThingId| {
            let own = caught.iter().filter(|one| one.hive == *hive && one.lies_in(days));
            own.fold(Stretch::NONE, |sum, one| sum.plus(one.stretch()))
        };
        let mut both = Vec::new();
        for (with, without) in &self.pairs {
            both.push((of(with), of(without)));
        }
        Some(outcome(&both))
    }
}

/// Hives in care in `yard`, in walking order.
/// Those in which brood disease is suspected are left out: nobody is to open them for a trial.
pub fn hives(book: &Book, yard: &ThingId, today: Day) -> Vec<ThingId> {
    let urgent = urgent::of_yard(book.standing(), yard, today);
    let shut =
        |hive: &ThingId| urgent.iter().any(|(of, urgent)| of == hive && urgent.because == Because::Disease);
    book.standing().hives_of(yard, true).map(|(id, _)| id).filter(|id| !shut(id)).cloned().collect()
}

/// `hives` in pairs of a last catch alike, which of each gets it drawn by `seed`.
pub fn plan(hives: &[ThingId], caught: &[Caught], seed: &str) -> Pairs {
    let mut last = Vec::new();
    for hive in hives {
        let newest = caught.iter().rev().find(|one| one.hive == *hive);
        last.push(newest.and_then(|one| one.stretch().rate()).map(|rate| rate.seen.0));
    }
    pairs(&last, seed)
}

/// The two records of a trial: with it and without it.
pub fn records(named: &str, until: Day, hives: &[ThingId], pairs: &Pairs) -> [Record; 2] {
    let of = |side: u8, place: fn(&(usize, usize)) -> usize| {
        let named_hives = pairs.each.iter().filter_map(|pair| hives.get(place(pair)).cloned()).collect();
        let mut record = Record::empty(Blank::Trial, named_hives);
        let answers = [
            (NAMED, Answer::Text(named.to_owned())),
            (SIDE, Answer::Word(side)),
            (UNTIL, Answer::Day(until)),
        ];
        for (at, answer) in answers {
            if let Some(place) = record.answers.get_mut(at) {
                *place = Some(answer);
            }
        }
        record
    };
    [of(0, |pair| pair.0), of(1, |pair| pair.1)]
}
