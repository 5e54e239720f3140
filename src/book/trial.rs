//! Trials of the keeper's own, as they are written down: two records of hives in the order of their pairs, one of each side.

use super::Book;
use super::caught::{Caught, Days};
use super::entry::{Ending, Entry, What};
use super::id::{EntryId, ThingId};
use super::record::{Answer, Blank, Record};
use super::standing::{RecordNow, Standing};
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

/// A list without its other side: nobody knows which of its hives are pairs.
#[derive(Clone, Debug, PartialEq)]
pub struct Apart {
    /// The line of the list, and that of what may be its other side: of the same yard and of the same name or day.
    pub lines: Vec<EntryId>,
    /// In what the two differ that should be alike.
    pub differs: Differs,
}

/// In what two lists differ that should be of one trial: what is tried, the day they were written down for, the side (which
/// should differ), the day they are opened, how many hives they name.
pub type Differs = [bool; 5];

/// Whether the hives of a list get what is tried.
pub fn with_it(list: &RecordNow) -> bool {
    list.record.answers.get(SIDE) == Some(&Some(Answer::Word(0)))
}

fn differs(one: &RecordNow, other: &RecordNow) -> Differs {
    let of = |at: usize| one.record.answers.get(at) != other.record.answers.get(at);
    let hives = one.record.hives.len() != other.record.hives.len();
    [of(NAMED), one.day != other.day, !of(SIDE), of(UNTIL), hives]
}

/// Every trial that has both sides, and the lists that have none or one that says something else; newest first. Sides
/// belong together by yard, day, name, the day they are opened and the number of their hives.
pub fn sorted(book: &Book) -> (Vec<Trial>, Vec<Apart>) {
    let standing = book.standing();
    let (mut trials, mut apart) = (Vec::new(), Vec::new());
    // Those that agree in all things find each other before any that do not.
    let mut left: Vec<(&EntryId, &RecordNow)> = Vec::new();
    for (line, list) in standing.records_of(Blank::Trial) {
        let same = |other: &RecordNow| other.yard == list.yard && differs(other, list) == [false; 5];
        let Some(at) = left.iter().position(|(_, other)| same(other)) else {
            left.push((line, list));
            continue;
        };
        let (_, other) = left.remove(at);
        let (with, without) = if with_it(list) { (list, other) } else { (other, list) };
        let mut pairs = Vec::new();
        for (one, other) in with.record.hives.iter().zip(&without.record.hives) {
            pairs.push((standing.kept(one).clone(), standing.kept(other).clone()));
        }
        let named = with.record.text("named").unwrap_or_default().to_owned();
        let (yard, until) = (with.yard.clone(), with.record.day("until"));
        trials.push(Trial { named, yard, from: with.day, until, pairs });
    }
    while let Some((line, list)) = left.pop() {
        let mut found = Apart { lines: vec![line.clone()], differs: [false; 5] };
        let (mut nearest, mut fewest) = (None, usize::MAX);
        for (at, (_, other)) in left.iter().enumerate() {
            let differs = differs(list, other);
            let many = differs.iter().filter(|differs| **differs).count();
            if other.yard == list.yard && !(differs[0] && differs[1]) && many < fewest {
                (nearest, fewest, found.differs) = (Some(at), many, differs);
            }
        }
        if let Some(at) = nearest {
            found.lines.insert(0, left.remove(at).0.clone());
        }
        apart.push(found);
    }
    trials.reverse();
    (trials, apart)
}

/// Of the hives of trials that go on those with a catch in `days` that began with the trial: whoever sees it sees which side
/// does better, and stops when it looks good. What was caught before is no secret.
pub fn shut(book: &Book, caught: &[Caught], days: Days, today: Day) -> Vec<ThingId> {
    let mut hives = Vec::new();
    for (hive, from) in going_on(book, today) {
        let tells = |one: &&Caught| {
            one.hive == hive
                && one.trap_days > 0
                && one.day > from
                && one.day > days.from
                && one.since() < days.to
        };
        if caught.iter().any(|one| tells(&one)) && !hives.contains(&hive) {
            hives.push(hive);
        }
    }
    hives
}

/// The hives of trials that go on, and since when. Two lists that do not match go on until the later of their days.
pub fn going_on(book: &Book, today: Day) -> Vec<(ThingId, Day)> {
    let standing = book.standing();
    let goes_on = |from: Day, until: Option<Day>| from <= today && until.is_some_and(|until| today < until);
    let mut hives = Vec::new();
    let (trials, apart) = sorted(book);
    for trial in trials {
        if goes_on(trial.from, trial.until) {
            for (with, without) in trial.pairs {
                hives.extend([(with, trial.from), (without, trial.from)]);
            }
        }
    }
    for Apart { lines, .. } in apart {
        let lists = || lines.iter().filter_map(|line| standing.records.get(line));
        let until = lists().filter_map(|list| list.record.day("until")).max();
        if lists().any(|list| goes_on(list.day, until)) {
            for list in lists() {
                for hive in &list.record.hives {
                    hives.push((standing.kept(hive).clone(), list.day));
                }
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

    /// What it came to; none before its day. `lines` are those of the book that count. Counts that began before it, went on after its day or are of another yard are left
    /// out.
    ///
    /// A pair of which a hive died or left before the last count stays open. Its days are fewer than those of its partner and of
    /// another part of the season, and a colony that goes down catches as no other does. Left out with its pair it
    /// misleads nobody: which of the two got it was a coin's choice, so if it does nothing, the pairs that are left still fall
    /// either way alike.
    pub fn outcome(
        &self,
        standing: &Standing,
        lines: &[(&EntryId, &Entry)],
        caught: &[Caught],
        today: Day,
    ) -> Option<Outcome> {
        let to = self.until.filter(|_| self.is_open(today))?;
        let days = Days { from: self.from, to };
        let here =
            |one: &&Caught| one.lies_in(days) && self.yard.as_ref().is_none_or(|yard| *yard == one.yard);
        let of = |hive: &ThingId| {
            let own = caught.iter().filter(here).filter(|one| one.hive == *hive);
            own.fold(Stretch::NONE, |sum, one| sum.plus(one.stretch()))
        };
        let takes_part =
            |hive: &ThingId| self.pairs.iter().any(|(with, without)| with == hive || without == hive);
        let last = caught.iter().rev().filter(here).find(|one| takes_part(&one.hive));
        let left = last.map(|last| self.left(standing, lines, last.day)).unwrap_or_default();
        let mut both = Vec::new();
        for (with, without) in &self.pairs {
            let gone = left.contains(with) || left.contains(without);
            both.push(if gone { (Stretch::NONE, Stretch::NONE) } else { (of(with), of(without)) });
        }
        Some(outcome(&both))
    }

    /// Hives whose care ended, or that were found dead or carried out of the yard of the trial, since it began and before its
    /// count of the day `last`. What is found dead on that day died before it, and what ends on the day of the draw ended
    /// after it: only hives in care are drawn. One that was taken back since is here too: nobody knows whose bees these are.
    fn left(&self, standing: &Standing, lines: &[(&EntryId, &Entry)], last: Day) -> Vec<ThingId> {
        let mut left = Vec::new();
        for (_, entry) in lines {
            let Some(hive) = entry.hive().filter(|_| entry.day >= self.from) else { continue };
            let kept = standing.kept(&hive);
            let until = match &entry.what {
                What::HiveEnded { how: Ending::Dead | Ending::Gone, .. } => last,
                // One that was written down twice and joined with itself is where it was.
                What::HiveEnded { how: Ending::Joined { into: Some(into) }, .. }
                    if standing.kept(into) == kept =>
                {
                    continue;
                }
                What::HiveEnded { .. } => last.plus(-1),
                What::HiveMoved { to, .. } if self.yard.as_ref().is_some_and(|yard| yard != to) => {
                    last.plus(-1)
                }
                What::Record(record) if record.blank == Blank::DeadOut => last,
                // Only hives in care are drawn: who was back on the day of the draw was back before it.
                What::HiveBack { .. } | What::HiveMoved { .. } if entry.day == self.from => {
                    left.retain(|gone| gone != kept);
                    continue;
                }
                _ => continue,
            };
            if entry.day <= until {
                left.push(kept.clone());
            }
        }
        left
    }
}

/// Hives in care in `yard` that may take part, in walking order: all but those of [`left_out`].
pub fn hives(book: &Book, yard: &ThingId, today: Day) -> Vec<ThingId> {
    let out = left_out(book, yard, today);
    let here = book.standing().hives_of(yard, true).map(|(id, _)| id);
    here.filter(|id| out.iter().all(|(of, _)| of != *id)).cloned().collect()
}

/// Hives in care in `yard` that are not drawn, and why, in walking order: nobody is to open one for a trial in which brood disease
/// is suspected, slime has to be dealt with and changes the catch, and in a dead one no bees are.
pub fn left_out(book: &Book, yard: &ThingId, today: Day) -> Vec<(ThingId, Because)> {
    let standing = book.standing();
    let (urgent, dead) = (urgent::of_yard(standing, yard, today), urgent::dead(standing, yard, today));
    let mut out = Vec::new();
    for (id, _) in standing.hives_of(yard, true) {
        let because = urgent.iter().find(|(of, _)| of == id).map(|(_, urgent)| urgent.because);
        // Its combs may all be accounted for.
        let because = because.or(dead.contains(id).then_some(Because::Dead));
        out.extend(because.map(|because| (id.clone(), because)));
    }
    out
}

/// `hives` in pairs of a last catch alike, which of each gets it drawn by `seed`.
pub fn plan(hives: &[ThingId], caught: &[Caught], seed: &str) -> Pairs {
    let mut last = Vec::new();
    for hive in hives {
        let mut rates = caught.iter().rev().filter(|one| one.hive == *hive).map(|one| one.stretch().rate());
        last.push(rates.find_map(|rate| rate).map(|rate| rate.seen.0));
    }
    pairs(&last, seed)
}

/// The hives of a draw, pair by pair, those that were left over last: so it is kept until it is written down.
pub fn in_pairs(hives: &[ThingId], pairs: &Pairs) -> Vec<ThingId> {
    let mut all = Vec::new();
    let mut put = |place: usize| all.extend(hives.get(place).cloned());
    for (with, without) in &pairs.each {
        put(*with);
        put(*without);
    }
    if let Some(left) = pairs.left {
        put(left);
    }
    all
}

/// The pairs of a kept draw of which both hives are still among `here`, as [`plan`] has them, and the places of hives left
/// without a partner. Nothing is drawn anew.
pub fn kept_pairs(drawn: &[ThingId], here: &[ThingId]) -> (Pairs, Vec<usize>) {
    let (mut each, mut left) = (Vec::new(), Vec::new());
    let stays = |place: usize| drawn.get(place).is_some_and(|hive| here.contains(hive));
    let mut place = 0;
    while place < drawn.len() {
        match (stays(place), stays(place + 1)) {
            (true, true) => each.push((place, place + 1)),
            (true, false) => left.push(place),
            (false, true) => left.push(place + 1),
            (false, false) => {}
        }
        place += 2;
    }
    (Pairs { each, left: None }, left)
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
