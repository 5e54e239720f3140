//! Trap work on a hive: what it leaves of the traps, and what it tells of oil and beetles.

use crate::almanac::day::Day;
use crate::almanac::quantity::Share;
use crate::almanac::refill::LossInterval;
use crate::book::caught::{Caught, Fished};
use crate::book::entry::{Check, Did, Entry};
use crate::book::id::EntryId;
use crate::book::standing::{Catch, Double, HiveNow, TrapNow, Trouble};

/// What other lines of its day tell of a line of trap work.
#[derive(Default)]
pub(super) struct OfDay {
    /// The first line of the piece of work that it goes on with.
    goes_on: Option<EntryId>,
    /// Work that may be the same has told the level found.
    read: bool,
    /// And the count.
    counted: bool,
}

/// Remembers the work of a day, and what of it is told already. A piece of work in several lines is one: it goes by the
/// name and the writer of its first line, so that somebody is asked about it once.
pub(super) fn already(hive: &mut HiveNow, line: &EntryId, entry: &Entry, work: &Check) -> OfDay {
    let (goes_on, new) = hive.work(entry, work);
    hive.checked.retain(|(_, known)| known.day == new.day);
    let mut told = OfDay { goes_on, ..OfDay::default() };
    let name = told.goes_on.as_ref().unwrap_or(line);
    for (other, known) in hive.checked.iter().filter(|(_, known)| known.doubles(&new)) {
        told.read |= known.read;
        told.counted |= known.counted;
        let pair =
            |double: &Double| double.lines.contains(other) && double.lines.iter().any(|line| line == name);
        if hive.doubles.len() < HiveNow::DOUBLES && !hive.doubles.iter().any(pair) {
            hive.doubles.push(Double { day: new.day, lines: [other.clone(), name.clone()] });
        }
    }
    hive.checked.push((name.clone(), new));
    told
}

/// Applies trap work to the traps it names. `told`: what is known of it already.
///
/// The level found closes an interval of oil loss that began at the last known level; a spilled, missing or closed
/// trap closes none, and neither does a level that rose. Traps of one hive that were left at the same level on the
/// same day give one interval together: reading one number for six traps is one observation, not six.
///
/// Where kinds of trap were left at different levels, books of the first weeks hold one count as several lines of one
/// bulk, each for its traps and the count on the first. Such a line goes on where the first one stopped.
///
/// `caught` takes the count with each of its traps, where somebody wants to know.
pub(super) fn check(
    hive: &mut HiveNow,
    work: &Check,
    root: &EntryId,
    day: Day,
    told: &OfDay,
    caught: Option<&mut Vec<Caught>>,
) {
    // A count that is told already is as if it had not been written, for the days of the next one too.
    let count = work.count.filter(|_| !told.counted);
    let hung = caught.is_some().then(|| Caught::hung(hive));
    let mut each: Vec<Fished> = Vec::new();
    // Not the last one: what two phones wrote lies line by line between each other.
    let same_count = hive.catches.iter_mut().find(|catch| Some(&catch.entry) == told.goes_on.as_ref());
    let counted = count.is_some() || same_count.is_some();
    let mut intervals: Vec<(Day, Share)> = Vec::new();
    let mut rose = false;
    let mut trap_days: i32 = 0;
    let boxes = hive.boxes.iter_mut().zip(1..);
    for (trap, level) in boxes.flat_map(|(part, level)| part.traps.iter_mut().map(move |trap| (trap, level)))
    {
        if work.traps.as_ref().is_some_and(|named| !named.contains(&trap.id)) {
            continue;
        }
        if trap.passed_over(work.did, work.traps.is_some()) {
            continue;
        }
        // Before the fill that the hive came into the book with: whatever this left, that fill came after it.
        if day < trap.service {
            continue;
        }
        let fished =
            trap.trouble.is_none() && !matches!(work.did, Did::Spilled | Did::Missing | Did::GluedShut);
        if fished {
            let days = day.days_since(trap.counting);
            trap_days += days;
            if hung.is_some() && days > 0 {
                each.push(Fished { kind: trap.kind.clone(), level, spot: trap.spot, since: trap.counting });
            }
            if let (Some((since, from)), Some(found)) = (trap.level, work.before) {
                if found > from {
                    rose = true;
                } else if !intervals.contains(&(since, from)) {
                    intervals.push((since, from));
                }
            }
        }
        attend(trap, work, day, counted);
    }
    if let Some(to) = work.before.filter(|_| !told.read) {
        for (since, from) in intervals {
            let Ok(days) = u16::try_from(day.days_since(since)) else { continue };
            let interval = LossInterval { days, from, to };
            // Two readings of one day would push out what does tell of the oil.
            if interval.per_day().is_some() {
                remember(&mut hive.losses, interval, |_| true);
            }
        }
        let rose = rose || told.goes_on.is_some() && hive.rose == Some(day);
        hive.rose = if rose { Some(day) } else { None };
    }
    let Ok(trap_days) = u32::try_from(trap_days) else { return };
    match (count, same_count) {
        (Some(count), _) => {
            if let (Some(caught), Some(hung)) = (caught, hung) {
                let (hive, yard, entry) = (work.hive.clone(), hive.yard.clone(), root.clone());
                caught.push(Caught { entry, hive, yard, day, count, trap_days, each, hung });
            }
            // A count that tells of no day yet, since lines that go on may give it some, takes the place of none that does.
            let tells = |catch: &Catch| (catch.trap_days > 0) == (trap_days > 0);
            remember(&mut hive.catches, Catch { count, trap_days, entry: root.clone() }, tells);
        }
        (None, Some(catch)) => {
            catch.trap_days = catch.trap_days.saturating_add(trap_days);
            let name = Some(&catch.entry);
            let same = caught.and_then(|all| all.iter_mut().rev().find(|one| Some(&one.entry) == name));
            if let Some(same) = same {
                same.trap_days = same.trap_days.saturating_add(trap_days);
                same.each.append(&mut each);
            }
        }
        (None, None) => {}
    }
}

/// What the work leaves of one trap. `counted`: its beetles are in a count of that day.
fn attend(trap: &mut TrapNow, work: &Check, day: Day, counted: bool) {
    let (was, level) = (trap.trouble, trap.level);
    match work.did {
        Did::AsFound => {
            if let Some(found) = work.after.or(work.before) {
                trap.level = Some((day, found));
            }
        }
        Did::ToppedUp => {
            trap.service = day;
            trap.level = work.after.map(|level| (day, level));
            trap.trouble = None;
        }
        Did::Replaced => {
            trap.service = day;
            trap.level = work.after.map(|level| (day, level));
            trap.trouble = None;
            trap.counting = day;
            trap.fresh = day;
        }
        Did::Spilled => {
            trap.counting = day;
            trap.level = work.after.map(|level| (day, level));
            trap.trouble = if work.after.is_some() { None } else { Some(Trouble::Spilled) };
            if work.after.is_some() {
                trap.service = day;
                trap.fresh = day;
            }
        }
        Did::Missing => {
            trap.trouble = Some(Trouble::Missing);
            trap.level = None;
        }
        Did::GluedShut => trap.trouble = Some(Trouble::GluedShut),
    }
    // A count is of the beetles since the last one, whether or not the oil they lie in is changed.
    // Days without fishing are no trap-days: a trap that fishes again counts from today.
    let mended = was.is_some() && trap.trouble.is_none();
    if counted || mended {
        trap.counting = day;
    }
    trap.trouble_since = trap.trouble.and(trap.trouble_since.or(Some(day)));
    trap.level_before = trap.trouble.and(trap.level_before.or(level));
}

/// Puts `item` last; the first of those `alike` goes where there are enough.
fn remember<T>(list: &mut Vec<T>, item: T, alike: impl Fn(&T) -> bool) {
    if list.iter().filter(|known| alike(known)).count() >= HiveNow::REMEMBERED
        && let Some(first) = list.iter().position(alike)
    {
        list.remove(first);
    }
    list.push(item);
}
