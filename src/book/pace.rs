//! How long a hive takes, and which hives a trip leads to.

use super::Book;
use super::entry::{Entry, What};
use super::finds::finds;
use super::id::ThingId;
use super::record::Blank;
use super::round::{HiveDue, rows};
use super::standing::Standing;
use crate::almanac::day::Day;
use crate::almanac::order::sort_by;
use crate::almanac::refill::{Timing, median};
use crate::almanac::route::{Pressing, Stop};
use crate::almanac::sighting::Seen;

/// Fewest stretches between two hives that are learned from (judgement, no source).
pub const LEAST_GAPS: usize = 5;
/// Newest days of work that are.
const DAYS: usize = 5;
/// In less nobody gets from one hive to the next and opens it: what was done was written down afterwards, one after another
/// (judgement, no source).
const LEAST_SECONDS: i64 = 20;
/// A longer stretch is a rest, a drive or a talk over the fence (judgement, no source).
const MOST_SECONDS: i64 = 30 * 60;

/// Minutes from one hive to the next, and how many stretches they are learned from: the median over the last five days
/// of work. None of fewer than five.
///
/// A stretch lies between two lines that one writer wrote one after another on the day they are for, in one yard, about
/// different hives, at least twenty seconds and at most half an hour apart. What was written for many hives at once,
/// corrects something, was taken back or belongs to the demonstration tells nothing. This is the one place where the
/// moment of writing is reckoned with: it is an estimate in minutes, and no day hangs on it.
pub fn pace(book: &Book) -> Option<(f64, usize)> {
    let mut lines: Vec<&Entry> = Vec::new();
    let struck = &book.log().chains().struck;
    for entry in book.log().entries() {
        // A slip that was taken back was no hive.
        let plain = !struck.contains_key(&entry.id)
            && entry.replaces.is_none()
            && entry.bulk.is_none()
            && !entry.is_demo();
        if plain
            && entry.at.day() == entry.day
            && matches!(entry.what, What::Check(_) | What::Skip { .. })
            && entry.hive().is_some()
        {
            lines.push(entry);
        }
    }
    // Writer by writer, each in the order of writing.
    sort_by(&mut lines, |one, other| one.id.writer().cmp(other.id.writer()));
    let mut gaps: Vec<(Day, f64)> = Vec::new();
    for (known, entry) in lines.iter().zip(lines.iter().skip(1)) {
        let seconds = seconds(entry) - seconds(known);
        let walked = known.id.writer() == entry.id.writer()
            && known.yard == entry.yard
            && known.day == entry.day
            && known.hive() != entry.hive();
        if walked && (LEAST_SECONDS..=MOST_SECONDS).contains(&seconds) {
            #[allow(clippy::cast_precision_loss)] // half an hour at most
            gaps.push((entry.day, seconds as f64 / 60.0));
        }
    }
    let mut days: Vec<Day> = Vec::new();
    let mut newest = || {
        let next = gaps.iter().map(|(day, _)| *day).filter(|day| !days.contains(day)).max();
        days.extend(next);
    };
    for _ in 0..DAYS {
        newest();
    }
    let mut minutes: Vec<f64> =
        gaps.iter().filter(|(day, _)| days.contains(day)).map(|(_, minutes)| *minutes).collect();
    let many = minutes.len();
    median(&mut minutes).filter(|_| many >= LEAST_GAPS).map(|minutes| (minutes, many))
}

fn seconds(entry: &Entry) -> i64 {
    let (day, second) = entry.at.utc();
    i64::from(day.number()) * 86_400 + i64::from(second)
}

/// The hives to see in `yards` on `day`, in the order in which they are walked: those due, skipped, with a trap that does
/// not fish, to be looked at again, or with larvae in the comb.
pub fn stops(standing: &Standing, yards: &[ThingId], day: Day) -> Vec<(ThingId, Stop)> {
    let mut stops = Vec::new();
    for (yard, id) in yards.iter().enumerate() {
        let finds = finds(standing, id, day);
        let larvae = |hive: &ThingId| {
            let here = finds.iter().filter(|find| find.hive == *hive && find.sighting.ended.is_none());
            here.map(|find| find.sighting.seen).any(|seen| !matches!(seen, Seen::AdultsOnly | Seen::InSoil))
        };
        for row in rows(standing, id, day) {
            let late = matches!(row.due, HiveDue::Due { timing: Timing::Overdue { .. }, .. });
            let bare = matches!(row.due, HiveDue::NoTraps { wanting: 1.. });
            let resting = matches!(row.due, HiveDue::Resting { .. });
            let pressing = if larvae(&row.hive) {
                Pressing::Larvae
            } else if !resting && (late || row.trouble.is_some()) {
                Pressing::Overdue
            } else if row.due.now() {
                Pressing::Due
            } else if row.look_due(day) || bare || row.skipped.is_some() && !resting {
                Pressing::Rest
            } else {
                continue;
            };
            stops.push((row.hive, Stop { yard, pressing }));
        }
    }
    stops
}

/// Minutes of the way to `yard` and of setting up there, each as written down under its facts.
pub fn ways(standing: &Standing, yard: &ThingId) -> (Option<f64>, Option<f64>) {
    let facts = standing.facts(Blank::YardFacts, Some(yard), None);
    let minutes = |name| facts.number(name).map(|(minutes, _)| minutes);
    (minutes("travel"), minutes("set_up"))
}

/// Day and minutes of the way, there and back, of the newest trip up to `day` that led to `yards` and no others, as far as
/// trap work of its day tells; a trip on whose day nobody wrote down any may have. Several records of one day are one trip.
/// Nothing of the demonstration. One pass over the log, and none where no trip with its way was written down.
pub fn way_there(book: &Book, yards: &[ThingId], day: Day) -> Option<(Day, f64)> {
    let mut trips: Vec<(Day, f64, Vec<&ThingId>)> = Vec::new();
    for (id, now) in book.standing().records_of(Blank::Trip) {
        let Some((minutes, _)) = now.record.number("travel").filter(|_| !id.is_demo() && now.day <= day)
        else {
            continue;
        };
        match trips.last_mut() {
            Some((on, sum, _)) if *on == now.day => *sum += minutes,
            _ => trips.push((now.day, minutes, Vec::new())),
        }
    }
    if trips.is_empty() {
        return None;
    }
    for (_, entry) in book.log().in_effect() {
        let (What::Check(_), Some(yard), false) = (&entry.what, &entry.yard, entry.is_demo()) else {
            continue;
        };
        // Trips stand in the order of their days.
        let at = trips.binary_search_by_key(&entry.day, |(on, ..)| *on).ok();
        if let Some((.., led)) = at.and_then(|at| trips.get_mut(at))
            && !led.contains(&yard)
        {
            led.push(yard);
        }
    }
    let same = |led: &[&ThingId]| {
        led.is_empty() || led.len() == yards.len() && yards.iter().all(|yard| led.contains(&yard))
    };
    let trip = trips.iter().rev().find(|(_, minutes, led)| *minutes > 0.0 && same(led));
    trip.map(|(on, minutes, _)| (*on, *minutes))
}
