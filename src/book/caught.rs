//! Beetles counted, with the traps that caught them and the days these fished: by hive, box, corner, kind and yard, and two
//! stretches of days beside each other.
//!
//! Which traps a count is of and how long they fished, the fold says as it goes ([`fold_days`]); there is no second set of
//! rules. A count that is of several boxes, corners or kinds belongs to none of them: nobody told them apart, and it is never
//! split.

use super::Book;
use super::fold::fold_days;
use super::id::{EntryId, ThingId};
use super::standing::HiveNow;
use crate::almanac::day::Day;
use crate::almanac::stack::{Corner, Spot};
use crate::almanac::tally::CountRange;
use crate::almanac::trend::{Stretch, Trend, compare};

/// A count of beetles.
#[derive(Clone, Debug, PartialEq)]
pub struct Caught {
    /// Its line.
    pub entry: EntryId,
    /// The hive.
    pub hive: ThingId,
    /// The yard in which it stood that day.
    pub yard: ThingId,
    /// The day they were counted.
    pub day: Day,
    /// How many.
    pub count: CountRange,
    /// Traps times days they fished, as the fold reckons them.
    pub trap_days: u32,
    /// The traps that fished, for at least a day.
    pub each: Vec<Fished>,
    /// The kinds of all traps that hung in the hive, and how many of each.
    pub hung: Vec<(ThingId, u32)>,
}

/// A trap that fished.
#[derive(Clone, Debug, PartialEq)]
pub struct Fished {
    /// Its kind.
    pub kind: ThingId,
    /// Its box, from 1 at the floor.
    pub level: u8,
    /// Its place there.
    pub spot: Spot,
    /// The day from which its beetles were not counted yet.
    pub since: Day,
}

impl Caught {
    /// The kinds of the traps in a hive, and how many of each hang there; in the order of their names.
    pub(super) fn hung(hive: &HiveNow) -> Vec<(ThingId, u32)> {
        let mut kinds: Vec<(ThingId, u32)> = Vec::new();
        for trap in hive.traps() {
            if let Some((_, known)) = kinds.iter_mut().find(|(kind, _)| *kind == trap.kind) {
                *known += 1;
            } else {
                let at = kinds.iter().take_while(|(kind, _)| *kind < trap.kind).count();
                kinds.insert(at, (trap.kind.clone(), 1));
            }
        }
        kinds
    }

    /// The first day on which one of them can have been caught.
    pub fn since(&self) -> Day {
        self.each.iter().map(|trap| trap.since).min().unwrap_or(self.day)
    }

    /// Whether every day on which they can have been caught lies in `days`. The day of a count belongs to what comes before
    /// it: a trap counted on the first day of `days` starts there. A count of traps that did not fish is of no day.
    pub fn lies_in(&self, days: Days) -> bool {
        self.trap_days > 0 && self.since() >= days.from && self.day <= days.to
    }

    /// Whether some of the days on which they can have been caught lie in `days`, and others do not.
    pub fn straddles(&self, days: Days) -> bool {
        !self.lies_in(days) && self.since() < days.to && self.day > days.from
    }

    /// Count and effort.
    pub fn stretch(&self) -> Stretch {
        Stretch { count: self.count, trap_days: self.trap_days }
    }

    /// What all its traps have in common; none where they have not.
    fn common<T: PartialEq>(&self, of: impl Fn(&Fished) -> T) -> Option<T> {
        let mut all = self.each.iter().map(of);
        let first = all.next()?;
        all.all(|other| other == first).then_some(first)
    }
}

/// Some days in a row, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Days {
    /// The first.
    pub from: Day,
    /// The last.
    pub to: Day,
}

/// Every count in the book, in the order of its days: one pass over the log. Beetles out of traps that did not fish tell of no
/// day: such a count has no trap-days.
pub fn all(book: &Book) -> Vec<Caught> {
    let mut caught = Vec::new();
    fold_days(book.log(), Some(&mut caught), &mut |_, _, _| (), &mut |_, _, _| ());
    caught
}

/// Days of a year, so that two of them have the same seasons.
pub const YEAR: i32 = 365;

/// A hive in two stretches of days.
#[derive(Clone, Debug, PartialEq)]
pub struct OfHive {
    /// Which.
    pub hive: ThingId,
    /// Before.
    pub first: Stretch,
    /// After.
    pub second: Stretch,
    /// Counts in either.
    pub counts: (usize, usize),
    /// Other kinds of trap, or another number of them, hung there at a count of the second than at one of the first.
    pub changed: bool,
}

/// A yard in two stretches of days.
#[derive(Clone, Debug, PartialEq)]
pub struct Both {
    /// Each hive with a count in one of them, in the order of its first count.
    pub hives: Vec<OfHive>,
    /// What all of it says. Hives that fished in one of the two alone are left out.
    pub trend: Trend,
    /// Everything counted in the first, and in the second.
    pub sums: (Stretch, Stretch),
    /// Counts that are left out because they began before a stretch or went on after it.
    pub straddling: usize,
    /// Counts in either that are left out because none of the traps had fished for a day.
    pub idle: usize,
}

/// What was counted in `yard` in `first` and in `second`, hive by hive.
pub fn both(caught: &[Caught], yard: &ThingId, first: Days, second: Days) -> Both {
    let mut hives: Vec<(OfHive, [Option<&Caught>; 2])> = Vec::new();
    let (mut sums, mut straddling, mut idle) = ((Stretch::NONE, Stretch::NONE), 0, 0);
    for one in caught.iter().filter(|one| one.yard == *yard) {
        if one.trap_days == 0 {
            // The first of the days belongs to what comes before, as in all counts.
            let within = |days: Days| one.day > days.from && one.day <= days.to;
            idle += usize::from(within(first) || within(second));
            continue;
        }
        let (before, after) = (one.lies_in(first), one.lies_in(second));
        if !before && !after {
            straddling += usize::from(one.straddles(first) || one.straddles(second));
            continue;
        }
        let at = hives.iter().position(|(known, _)| known.hive == one.hive).unwrap_or_else(|| {
            let hive = one.hive.clone();
            hives.push((
                OfHive { hive, first: Stretch::NONE, second: Stretch::NONE, counts: (0, 0), changed: false },
                [None, None],
            ));
            hives.len() - 1
        });
        let Some((of, last)) = hives.get_mut(at) else { continue };
        let [of_first, of_second] = last;
        if before {
            of.first = of.first.plus(one.stretch());
            of.counts.0 += 1;
            sums.0 = sums.0.plus(one.stretch());
            of.changed |= of_first.is_some_and(|known| known.hung != one.hung);
            *of_first = Some(one);
        }
        if after {
            of.second = of.second.plus(one.stretch());
            of.counts.1 += 1;
            sums.1 = sums.1.plus(one.stretch());
            of.changed |= of_first.or(*of_second).is_some_and(|known| known.hung != one.hung);
            *of_second = Some(one);
        }
    }
    let mut pairs = Vec::new();
    for (of, _) in &hives {
        pairs.push((of.first, of.second));
    }
    let hives = hives.into_iter().map(|(of, _)| of).collect();
    Both { hives, trend: compare(&pairs), sums, straddling, idle }
}

/// What a count may be told apart by.
#[derive(Clone, Debug, PartialEq)]
pub enum Part {
    /// A box, from 1 at the floor.
    Box(u8),
    /// A corner of a box.
    Corner(Corner),
    /// Elsewhere in a box than in a corner.
    Elsewhere,
    /// A kind of trap.
    Kind(ThingId),
}

/// Beetles by what they can be told apart by.
#[derive(Clone, Debug, PartialEq)]
pub struct Parts {
    /// Each part that has counts of its own.
    pub each: Vec<(Part, Stretch)>,
    /// Counts of several at once.
    pub together: Stretch,
}

/// The counts of a yard in some days by box, by corner and by kind of trap.
pub fn parts(caught: &[Caught], yard: &ThingId, days: Days) -> [Parts; 3] {
    let mut all: [Parts; 3] = [(); 3].map(|()| Parts { each: Vec::new(), together: Stretch::NONE });
    for one in caught.iter().filter(|one| one.yard == *yard && one.lies_in(days)) {
        let spot = one.common(|trap| match trap.spot {
            Spot::Corner(corner) => Part::Corner(corner),
            Spot::Between(_) | Spot::Floor => Part::Elsewhere,
        });
        let own = [
            one.common(|trap| Part::Box(trap.level)),
            spot,
            one.common(|trap| Part::Kind(trap.kind.clone())),
        ];
        for (parts, part) in all.iter_mut().zip(own) {
            let Some(part) = part else {
                parts.together = parts.together.plus(one.stretch());
                continue;
            };
            match parts.each.iter_mut().find(|(known, _)| *known == part) {
                Some((_, known)) => *known = known.plus(one.stretch()),
                None => parts.each.push((part, one.stretch())),
            }
        }
    }
    all
}

/// A point in the chart of a hive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Visit {
    /// The day of the count.
    pub day: Day,
    /// The first day on which one of its beetles can have been caught.
    pub since: Day,
    /// Count and effort.
    pub stretch: Stretch,
    /// Kind or number of the traps in the hive had changed since the count before.
    pub changed: bool,
}

/// The part of `days` that a chart of `visits` shows: none of the time before the first day on which one of their beetles can
/// have been caught.
pub fn shown<'a>(days: Days, visits: impl Iterator<Item = &'a Visit>) -> Days {
    let first = visits.map(|visit| visit.since).min().unwrap_or(days.from);
    Days { from: first.max(days.from), ..days }
}

/// The counts of a hive on the days between `from` and `to`, in order.
pub fn visits(caught: &[Caught], hive: &ThingId, days: Days) -> Vec<Visit> {
    let mut all: Vec<Visit> = Vec::new();
    let mut hung: Option<&[(ThingId, u32)]> = None;
    for one in caught.iter().filter(|one| one.hive == *hive && one.trap_days > 0) {
        let changed = hung.is_some_and(|hung| hung != one.hung);
        hung = Some(&one.hung);
        if (days.from..=days.to).contains(&one.day) {
            all.push(Visit { day: one.day, since: one.since(), stretch: one.stretch(), changed });
        }
    }
    all
}
