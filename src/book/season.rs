//! What a stretch of days came to in a yard: hives, those lost and what their keeper made of it, visits and their rhythm, trap
//! work, oil; and what nobody looked at. What was caught is told in [`super::review`]. Reckoned from the lines that count, each
//! day as the book stood in its evening.

mod figures;

pub use figures::{DIDS, Figures};

use super::Book;
use super::entry::{Did, Ending, Entry, TrapsWent, What};
use super::fold::fold_days;
use super::id::{EntryId, ThingId};
use super::lost::{goes, once};
use super::record::{Blank, Record};
use super::round::{self, HiveDue};
use super::standing::{Standing, Trouble};
use crate::almanac::day::Day;
use crate::almanac::order::sort_by;
use crate::almanac::table::Table;
use figures::Visit;
use std::cell::RefCell;

/// A yard over some days, both ends included.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Season {
    /// Hives in care on the evening before.
    pub start: usize,
    /// Hives in care on the last evening.
    pub end: usize,
    /// Hives that came into the book here.
    pub new: usize,
    /// Hives that were carried in.
    pub moved_in: usize,
    /// Hives that were carried away.
    pub moved_out: usize,
    /// Hives taken back into care.
    pub back: usize,
    /// Hives whose care ended: dead, sold, joined, gone.
    pub ended: [usize; 4],
    /// The hives of [`Season::ended`] one by one, and those of which a dead-out was written down and no end; by their days.
    pub losses: Vec<Loss>,
    /// Traps that were put in where none had been, those that hives came into the book with included.
    pub placed: usize,
    /// Traps in whose place new ones went in: of kinds that are thrown away, or gone. Each once on a day, in however many
    /// lines and on however many phones it was written.
    pub renewed: usize,
    /// Traps found missing, or taken off as lost.
    pub lost: usize,
    /// The whole yard.
    pub yard: Figures,
    /// Each hive that anybody stood at or that was overdue when it left the Round, or is on the last evening, in walking
    /// order; those that stand elsewhere now come last.
    pub hives: Vec<(ThingId, Figures)>,
}

/// A hive whose care ended, or that was found dead.
#[derive(Clone, Debug, PartialEq)]
pub struct Loss {
    /// Which.
    pub hive: ThingId,
    /// The day its care ended; that of the dead-out where it did not.
    pub day: Day,
    /// How; none where the book has it in care still.
    pub how: Option<Ending>,
    /// What a dead colony showed, in the keeper's words.
    pub showed: Vec<Record>,
    /// The day it was taken back into care.
    pub back: Option<Day>,
}

/// The yard in which each hive is, and whether it is in care.
type Places<'a> = Table<ThingId, (&'a ThingId, bool)>;

impl Season {
    /// What the days from `from` to `to` came to in `yard`.
    pub fn of(book: &Book, yard: &ThingId, from: Day, to: Day) -> Season {
        let mut season = Season::default();
        let kept = |hive| book.standing().kept(hive);
        let in_effect = book.log().in_effect();
        let mut visits: Vec<Visit<'_>> = Vec::new();
        let mut skips: Vec<(Day, &ThingId)> = Vec::new();
        let mut places = Places::new();
        let mut found = Vec::new();
        for (root, entry) in in_effect.iter().copied() {
            let within = (from..=to).contains(&entry.day);
            season.died(&places, &mut found, book.standing(), entry, within.then_some(yard));
            season.comes_or_goes(&mut places, book.standing(), root, entry, within.then_some(yard));
            if !within || entry.yard.as_ref() != Some(yard) {
                continue;
            }
            match &entry.what {
                What::Skip { hive, .. } if !skips.contains(&(entry.day, kept(hive))) => {
                    skips.push((entry.day, kept(hive)));
                }
                What::Check(check) => {
                    let same =
                        |visit: &&mut Visit<'_>| visit.day == entry.day && visit.hive == kept(&check.hive);
                    match visits.iter_mut().rev().take_while(|visit| visit.day == entry.day).find(same) {
                        Some(visit) => visit.checks.push((root, entry, check)),
                        None => visits.push(Visit {
                            day: entry.day,
                            hive: kept(&check.hive),
                            checks: vec![(root, entry, check)],
                        }),
                    }
                }
                _ => {}
            }
        }
        let mut by_day = visits.chunk_by(|one, next| one.day == next.day).peekable();
        let mut last: Vec<(&ThingId, Day)> = Vec::new();
        let mut due: Vec<(&ThingId, Day)> = Vec::new();
        let mut late: Vec<(ThingId, Day)> = Vec::new();
        let traps = RefCell::new(Traps::default());
        let mut watch = |standing: &Standing, root: &EntryId, entry: &Entry| {
            if !(from..=to).contains(&entry.day) || entry.yard.as_ref() != Some(yard) {
                return;
            }
            traps.borrow_mut().follow(standing, root, entry);
        };
        fold_days(book.log(), None, &mut watch, &mut |day, next, then| {
            let alive = || then.hives_of(yard, true).count();
            if day < from && next.is_none_or(|next| next >= from) {
                season.start = alive();
            }
            let filled = std::mem::take(&mut traps.borrow_mut().filled);
            if let Some(of_day) =
                by_day.next_if(|of_day| of_day.first().is_some_and(|first| first.day == day))
            {
                season.visits(of_day, then, &filled, &due, &due_by(of_day, then, yard), &mut last);
            }
            for (hive, on) in std::mem::take(&mut late) {
                if due_on(then, &hive, None, day).is_none() {
                    season.figures(&hive).judge(on, day);
                }
            }
            if day <= to && next.is_none_or(|next| next > to) {
                season.end = alive();
                for (hive, on) in overdue(then, yard, to) {
                    let figures = season.figures(&hive);
                    figures.judge(on, to);
                    figures.still_due = Some(on);
                }
            }
            if let Some(next) = next.filter(|next| (from..=to).contains(next)) {
                late = overdue(then, yard, next);
            }
            let of_next = by_day.peek().filter(|of_next| of_next.first().map(|first| first.day) == next);
            if let Some(of_next) = of_next {
                due = due_by(of_next, then, yard);
            }
        });
        let traps = traps.into_inner();
        (season.placed, season.lost, season.renewed) = (traps.placed, traps.lost, traps.renewed);
        for (_, figures) in &mut season.hives {
            sort_by(&mut figures.gaps, Ord::cmp);
        }
        for (_, hive) in skips {
            season.figures(hive).skips += 1;
        }
        for (_, figures) in &season.hives {
            season.yard.add(figures);
        }
        season.yard.add(&traps.first);
        sort_by(&mut season.yard.gaps, Ord::cmp);
        season.losses.extend(found.into_iter().filter(|(_, here)| *here).map(|(loss, _)| loss));
        sort_by(&mut season.losses, |one, other| one.day.cmp(&other.day));
        season.walk(book, yard);
        season
    }

    /// Follows where each hive is, and counts what changes that in `here`, the yard while its days are told of. What two
    /// phones wrote down, each for itself, changes it once.
    fn comes_or_goes<'a>(
        &mut self,
        places: &mut Places<'a>,
        standing: &Standing,
        root: &EntryId,
        entry: &'a Entry,
        here: Option<&ThingId>,
    ) {
        let one = |yard: &ThingId| usize::from(here == Some(yard));
        if let What::Hive { yard, .. } = &entry.what {
            let hive = root.thing(0);
            if !standing.twins.contains_key(&hive) {
                self.new += one(yard);
                places.insert(hive, (yard, true));
            }
            return;
        }
        let (What::HiveMoved { hive, .. } | What::HiveEnded { hive, .. } | What::HiveBack { hive }) =
            &entry.what
        else {
            return;
        };
        let hive = standing.kept(hive);
        let Some((yard, alive)) = places.get_mut(hive) else { return };
        match &entry.what {
            What::HiveMoved { to, .. } if standing.yards.contains_key(to) => {
                if *alive && *yard != to {
                    self.moved_out += one(yard);
                    self.moved_in += one(to);
                }
                *yard = to;
            }
            What::HiveEnded { how: Ending::Joined { into: Some(into) }, .. }
                if standing.kept(into) == hive => {}
            What::HiveEnded { how, .. } if *alive => {
                self.ended[end(how)] += one(yard);
                *alive = false;
            }
            What::HiveBack { .. } if !*alive => {
                self.back += one(yard);
                *alive = true;
            }
            _ => {}
        }
    }

    /// Follows which hives are lost and what was written down of dead colonies, before their care ended or after it, on
    /// whichever day. `found` holds the dead of which no end is written down yet, and whether they lay in the yard in its
    /// days.
    fn died(
        &mut self,
        places: &Places<'_>,
        found: &mut Vec<(Loss, bool)>,
        standing: &Standing,
        entry: &Entry,
        here: Option<&ThingId>,
    ) {
        let Some(hive) = entry.hive() else { return };
        let hive = standing.kept(&hive);
        let Some((yard, alive)) = places.get(hive) else { return };
        let here = here == Some(*yard);
        let open = self.losses.iter_mut().rev().find(|known| known.hive == *hive && known.back.is_none());
        let told = |how: Option<&Ending>| Loss {
            hive: hive.clone(),
            day: entry.day,
            how: how.cloned(),
            showed: Vec::new(),
            back: None,
        };
        match (&entry.what, open) {
            (What::HiveBack { .. }, Some(loss)) if !*alive => loss.back = Some(entry.day),
            (What::HiveEnded { how: Ending::Joined { into: Some(into) }, .. }, _)
                if standing.kept(into) == hive => {}
            (What::HiveEnded { how, .. }, _) if *alive => {
                let mut lost = told(Some(how));
                let mut dead_here = false;
                if let Some(at) = found.iter().position(|(known, _)| known.hive == *hive) {
                    let (known, there) = found.remove(at);
                    dead_here = there;
                    lost.showed = known.showed;
                    // Found dead within these days, though the end was written down later.
                    if there && !here {
                        lost.day = known.day;
                    }
                }
                if here || dead_here {
                    self.losses.push(lost);
                }
            }
            (What::Record(record), open) if record.blank == Blank::DeadOut => {
                if let Some(loss) = open.filter(|_| !*alive) {
                    loss.showed.push(record.clone());
                } else if let Some((known, _)) = found.iter_mut().find(|(known, _)| known.hive == *hive) {
                    known.showed.push(record.clone());
                } else if *alive {
                    let mut dead = told(None);
                    dead.showed.push(record.clone());
                    found.push((dead, here));
                }
            }
            _ => {}
        }
    }

    /// Puts the hives into the order of the walk, in which none stands above another for what it caught.
    fn walk(&mut self, book: &Book, yard: &ThingId) {
        let walk = book.standing().yards.get(yard).map(|now| now.order.as_slice()).unwrap_or_default();
        let place = |hive: &ThingId| walk.iter().position(|known| known == hive).unwrap_or(walk.len());
        sort_by(&mut self.hives, |(one, _), (other, _)| place(one).cmp(&place(other)));
    }

    fn figures(&mut self, hive: &ThingId) -> &mut Figures {
        let at = self.hives.iter().position(|(known, _)| known == hive).unwrap_or_else(|| {
            self.hives.push((hive.clone(), Figures::default()));
            self.hives.len() - 1
        });
        &mut self.hives[at].1
    }

    /// The visits of a day in whose evening the book stood as `then`. `filled` holds what each line filled, `morning` and
    /// `evening` the day on which each hive was due, `last` that of the visit before.
    fn visits<'a>(
        &mut self,
        of_day: &[Visit<'a>],
        then: &Standing,
        filled: &[Filled],
        morning: &[(&ThingId, Day)],
        evening: &[(&ThingId, Day)],
        last: &mut Vec<(&'a ThingId, Day)>,
    ) {
        for visit in of_day {
            if !then.hives.contains_key(visit.hive) {
                continue;
            }
            let figures = self.figures(visit.hive);
            let fills = figures.visit(visit, filled, then);
            let of = |all: &[(&ThingId, Day)]| {
                all.iter().find(|(known, _)| *known == visit.hive).map(|(_, on)| *on)
            };
            // Whoever only looks ends no day that is still to come, and none that has come while a trap stays due. Nor does
            // whoever fills some of the traps while another is due on that day still.
            let after = of(evening);
            let done = after.map_or(fills, |on| on > visit.day);
            let ends = |on: &Day| done && after != Some(*on) && (fills || *on <= visit.day);
            if let Some(on) = of(morning).filter(ends) {
                figures.judge(on, visit.day);
            }
            let gap = last.iter_mut().find(|(known, _)| *known == visit.hive);
            if let Some((_, before)) = gap {
                figures.gaps.push(visit.day.days_since(*before));
                *before = visit.day;
            } else {
                last.push((visit.hive, visit.day));
            }
        }
    }
}

/// The day on which each hive that is visited on a day is due, as the Round tells it while the book stands as `then`.
fn due_by<'a>(of_day: &[Visit<'a>], then: &Standing, yard: &ThingId) -> Vec<(&'a ThingId, Day)> {
    // Asked once: every hive of a yard is looked at for it.
    let own = round::yard_loss(then, yard);
    let mut all = Vec::new();
    for visit in of_day {
        let Some(hive) = then.hives.get(visit.hive) else { continue };
        let loss = if hive.yard == *yard { own } else { round::yard_loss(then, &hive.yard) };
        if let Some(on) = due_on(then, visit.hive, loss, visit.day) {
            all.push((visit.hive, on));
        }
    }
    all
}

/// The day on which `hive` is due on the Round. Nothing is on it that rests, is bare, or is in care no more, and no yard that
/// was given up.
fn due_on(then: &Standing, hive: &ThingId, loss: Option<(f64, u8)>, day: Day) -> Option<Day> {
    let hive = then.hives.get(hive).filter(|hive| hive.alive())?;
    then.yards.get(&hive.yard).filter(|yard| yard.closed.is_none())?;
    match round::hive_due(then, hive, loss, day) {
        HiveDue::Due { on, .. } => Some(on),
        _ => None,
    }
}

/// What is overdue in `yard` on `day`; what is due on that very day is late for nobody yet.
fn overdue(then: &Standing, yard: &ThingId, day: Day) -> Vec<(ThingId, Day)> {
    let loss = round::yard_loss(then, yard);
    let mut all = Vec::new();
    for (id, _) in then.hives_of(yard, true) {
        if let Some(on) = due_on(then, id, loss, day).filter(|on| *on < day) {
            all.push((id.clone(), on));
        }
    }
    all
}

/// Traps that went and came, counted in passing.
#[derive(Default)]
struct Traps {
    placed: usize,
    lost: usize,
    renewed: usize,
    /// Oil of those that were placed.
    first: Figures,
    /// Those of the day that is being told: what two phones wrote of one trap counts once.
    missing: Vec<(Day, ThingId)>,
    anew: Vec<(Day, ThingId)>,
    filled: Vec<Filled>,
}

/// A line of the day, and the kind of each trap that it filled, as the hive stood when it was done: one that was missing is
/// filled once, and one that was taken off later on the same day was filled all the same.
type Filled = (EntryId, Vec<ThingId>);

impl Traps {
    /// Counts the traps that go with `entry` and those in whose place it puts new ones, as they stood before it.
    fn follow(&mut self, standing: &Standing, root: &EntryId, entry: &Entry) {
        self.placed += self.first.fill_first(root, &entry.what, standing);
        if let (TrapsWent::Lost, traps) = goes(standing, &entry.what) {
            for trap in traps {
                self.lost += usize::from(once(&mut self.missing, entry.day, &trap.id));
            }
        }
        let What::Check(check) = &entry.what else { return };
        let Some((_, traps)) = standing.fills(entry, check) else { return };
        self.filled.push((entry.id.clone(), traps.iter().map(|trap| trap.kind.clone()).collect()));
        for trap in traps.into_iter().filter(|_| check.did == Did::Replaced) {
            let kind = standing.kinds.get(&trap.kind);
            let thrown_away =
                kind.is_some_and(|now| !now.kind.reusable) || trap.trouble == Some(Trouble::Missing);
            if thrown_away {
                self.renewed += usize::from(once(&mut self.anew, entry.day, &trap.id));
            }
        }
    }
}

fn end(how: &Ending) -> usize {
    match how {
        Ending::Dead => 0,
        Ending::Sold => 1,
        Ending::Joined { .. } => 2,
        Ending::Gone => 3,
    }
}
