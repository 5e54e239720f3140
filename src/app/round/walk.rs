//! The order of a walk: which hive comes next, what is usual today, which hives are left.

use crate::almanac::day::Day;
use crate::almanac::refill::Timing;
use crate::almanac::text::small;
use crate::book::Book;
use crate::book::entry::Did;
use crate::book::id::ThingId;
use crate::book::round::{HiveDue, Row, hive_due};
use crate::book::standing::{HiveNow, Standing, TrapNow};
use std::cmp::Ordering;

/// The hive after `after` that has no entry and that is `meant`; behind the last one it goes back to the nearest that was left out, so that
/// somebody who walks from the far end is not sent to the gate.
///
/// `meant` is asked only of hives without an entry, from the nearest on.
pub fn next_hive(
    stops: &[Stop<'_>],
    after: Option<&ThingId>,
    meant: &dyn Fn(&ThingId) -> bool,
) -> Option<ThingId> {
    let at = after.and_then(|id| stops.iter().position(|(hive, _)| *hive == id));
    let (before, behind) = stops.split_at(at.map_or(0, |at| at + 1));
    let open = |(hive, seen): &&Stop<'_>| seen.is_none() && Some(*hive) != after && meant(hive);
    let next = behind.iter().find(open).or_else(|| before.iter().rfind(open));
    next.map(|(hive, _)| (*hive).clone())
}

/// Whether somebody has to stand at a hive on `day`: it is due, traps wait to be put in, it was skipped, or oil spilled
/// in it and nobody has looked again. `yard_loss` as [`hive_due`] takes it.
///
/// Nothing makes a trap due later than the longest wait of its kind: mostly that is the answer, and the oil loss of the
/// yard, for which every hive of it is looked at, is not asked for.
pub fn calls(
    standing: &Standing,
    hive: &HiveNow,
    yard_loss: &dyn Fn() -> Option<(f64, u8)>,
    day: Day,
) -> bool {
    if standing.yards.get(&hive.yard).is_some_and(|yard| yard.paused.is_some()) {
        return false;
    }
    let waited = |trap: &TrapNow| {
        let most = standing.kinds.get(&trap.kind).map(|now| i32::from(now.kind.max_days));
        trap.trouble.is_some() || most.is_some_and(|most| trap.service.plus(most) <= day)
    };
    if hive.skipped.is_some() || hive.spilled.is_some() || hive.traps().any(waited) {
        return true;
    }
    match hive_due(standing, hive, yard_loss(), day) {
        HiveDue::NoTraps { wanting: 1.. } => true,
        due => due.now(),
    }
}

/// `order` with `hive` one place further on or back; none at the ends.
pub fn moved(mut order: Vec<ThingId>, hive: &ThingId, by: isize) -> Option<Vec<ThingId>> {
    let at = order.iter().position(|id| id == hive)?;
    let to = at.checked_add_signed(by).filter(|to| *to < order.len())?;
    order.swap(at, to);
    Some(order)
}

/// `order` with `hive` behind `after`, at the gate without one; none where it stands there already.
pub fn put_after(mut order: Vec<ThingId>, hive: &ThingId, after: Option<&ThingId>) -> Option<Vec<ThingId>> {
    let from = order.iter().position(|id| id == hive)?;
    let moved = order.remove(from);
    let to = after.map_or(Some(0), |after| order.iter().position(|id| id == after).map(|at| at + 1))?;
    order.insert(to, moved);
    (to != from).then_some(order)
}

/// What was done most often, of the three things that are done to a hive in order; topped up before anybody has done
/// anything, and in a draw.
pub fn usual(did: &[Did]) -> Did {
    let mut times = [(Did::ToppedUp, 0_u32), (Did::AsFound, 0), (Did::Replaced, 0)];
    for did in did {
        for (known, count) in &mut times {
            *count += u32::from(known == did);
        }
    }
    let [mut usual, others @ ..] = times;
    for other in others {
        if other.1 > usual.1 {
            usual = other;
        }
    }
    usual.0
}

/// The last day on which somebody stood at a hive of `yard` in this yard: what was done to a hive before it was moved
/// here was no walk of this yard.
pub fn last_walked(book: &Book, yard: &ThingId) -> Option<Day> {
    let mut last = None;
    for (_, hive) in book.standing().hives_of(yard, false) {
        let Some(seen) = &hive.last else { continue };
        let here = book.log().get(&seen.entry).is_some_and(|entry| entry.yard.as_ref() == Some(yard));
        last = last.max(here.then_some(seen.day));
    }
    last
}

/// A stop on a walk: a hive, and what was logged there on the day; `Some(None)` is a skip.
pub type Stop<'a> = (&'a ThingId, Option<Option<Did>>);

/// The walk through `yard` on `day` without what anything is due: as [`crate::book::round::rows`] orders it, and quick
/// enough to be asked at every tap.
pub fn stops<'a>(standing: &'a Standing, yard: &'a ThingId, day: Day) -> Vec<Stop<'a>> {
    let (mut waiting, mut others) = (Vec::new(), Vec::new());
    for (id, hive) in standing.hives_of(yard, true) {
        let seen = hive.last.as_ref().filter(|seen| seen.day == day).map(|seen| seen.did);
        let waits = hive.skipped.is_some_and(|(skipped, _)| skipped < day);
        let hives = if waits { &mut waiting } else { &mut others };
        hives.push((id, seen));
    }
    waiting.extend(others);
    waiting
}

/// Of how many traps `did` was said on `day`, and how many there are; none where it was said of the whole hive.
pub fn part_done(hive: &HiveNow, did: Did, day: Day) -> Option<(u32, u32)> {
    let mut named: Vec<&ThingId> = Vec::new();
    for (_, work) in &hive.checked {
        if work.day == day && work.did == did {
            named.extend(work.traps.as_ref()?);
        }
    }
    let (mut some, mut all) = (0, 0);
    for trap in hive.traps() {
        all += 1;
        some += u32::from(named.contains(&&trap.id));
    }
    (some > 0 && some < all).then_some((some, all))
}

/// The hives that "the rest as usual" stands for: no entry today, none `begun`, and a trap in that can be topped up.
pub fn rest(rows: &[Row], begun: &dyn Fn(&ThingId) -> bool) -> Vec<ThingId> {
    let left = rows.iter().filter(|row| row.today.is_none() && !left_out(row, begun));
    left.map(|row| row.hive.clone()).collect()
}

/// No entry today, and still not among the rest: no trap in it can be topped up, or its own entry is begun, and what was
/// typed there would be missing from the usual one.
pub fn left_out(row: &Row, begun: &dyn Fn(&ThingId) -> bool) -> bool {
    row.today.is_none() && (row.stuck || matches!(row.due, HiveDue::NoTraps { .. }) || begun(&row.hive))
}

/// A word for how a hive lies to today, for the style sheet.
pub fn due_word(due: &HiveDue) -> &'static str {
    match due {
        HiveDue::Resting { .. } => "resting",
        HiveDue::NoTraps { .. } => "none",
        HiveDue::Due { timing: Timing::In { .. }, .. } => "later",
        HiveDue::Due { timing: Timing::Today, .. } => "today",
        HiveDue::Due { timing: Timing::Overdue { .. }, .. } => "overdue",
    }
}

/// The first day on which anything is due, the first hive of that day, and how many they are.
pub fn first_due(rows: &[Row]) -> Option<(Day, &ThingId, u32)> {
    let mut first: Option<(Day, &ThingId, u32)> = None;
    for row in rows {
        let HiveDue::Due { on, .. } = row.due else { continue };
        match &mut first {
            Some((day, _, hives)) if on == *day => *hives += 1,
            Some((day, ..)) if on > *day => {}
            _ => first = Some((on, &row.hive, 1)),
        }
    }
    first
}

/// How many hives lie how to today.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Past their day.
    pub overdue: u32,
    /// Due today.
    pub today: u32,
    /// Due later.
    pub later: u32,
    /// Without a trap.
    pub bare: u32,
    /// Not due yet, but to be looked at again by now.
    pub looks: u32,
    /// Skipped, and not worked on since.
    pub skipped: u32,
}

/// Counts the rows of a yard.
pub fn counts(rows: &[Row], today: Day) -> Counts {
    let mut counts = Counts::default();
    for row in rows {
        match &row.due {
            HiveDue::Due { timing: Timing::Overdue { .. }, .. } => counts.overdue += 1,
            HiveDue::Due { timing: Timing::Today, .. } => counts.today += 1,
            HiveDue::Due { timing: Timing::In { .. }, .. } if row.look_due(today) => counts.looks += 1,
            HiveDue::Due { timing: Timing::In { .. }, .. } => counts.later += 1,
            HiveDue::NoTraps { .. } => counts.bare += 1,
            HiveDue::Resting { .. } => {}
        }
        counts.skipped += u32::from(row.skipped.is_some());
    }
    counts
}

/// The order in which people count: runs of digits by their number, everything else letter by letter without regard
/// to case.
pub fn by_tag(a: &str, b: &str) -> Ordering {
    let (mut a, mut b) = (parts(a).into_iter(), parts(b).into_iter());
    loop {
        match (a.next(), b.next()) {
            (None, None) => return Ordering::Equal,
            (None, Some(_)) => return Ordering::Less,
            (Some(_), None) => return Ordering::Greater,
            (Some(a), Some(b)) => match a.cmp(&b) {
                Ordering::Equal => {}
                order => return order,
            },
        }
    }
}

/// A stretch of a tag: a number by its length without leading zeros and its digits, or letters.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
enum Part {
    Number(usize, String),
    Letters(String),
}

fn parts(tag: &str) -> Vec<Part> {
    let mut parts: Vec<Part> = Vec::new();
    for c in tag.chars().map(small) {
        match (c.is_ascii_digit(), parts.last_mut()) {
            (true, Some(Part::Number(_, run))) | (false, Some(Part::Letters(run))) => run.push(c),
            (true, _) => parts.push(Part::Number(0, c.to_string())),
            (false, _) => parts.push(Part::Letters(c.to_string())),
        }
    }
    for part in &mut parts {
        if let Part::Number(length, run) = part {
            *run = run.trim_start_matches('0').to_owned();
            *length = run.len();
        }
    }
    parts
}

#[cfg(test)]
#[path = "walk_tests.rs"]
mod tests;
