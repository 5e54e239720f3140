//! How much oil trips took, beside the sum of what was done on them: what is learned of the reserve.

use super::Book;
use super::entry::{Check, Did, Entry, What};
use super::fold::fold_watched;
use super::id::EntryId;
use super::record::Blank;
use super::round;
use super::standing::{RecordNow, Standing};
use crate::almanac::day::Day;
use crate::almanac::quantity::{Decimal, Share, Volume};

/// Newest trips that are learned from: about a season (judgement, no source).
pub const TRIPS_MOST: usize = 12;
/// Fewest trips that are (judgement, no source: of fewer, one spilled bottle decides).
pub const TRIPS_LEAST: usize = 3;
/// A learned reserve goes up to the next of these steps, in per cent.
const STEP_PERCENT: f64 = 5.0;

/// A day from which oil came home.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TripUse {
    /// Which.
    pub day: Day,
    /// Oil taken less oil that came home, over all records of that day.
    pub used: Volume,
    /// What the fillings of that day come to by kinds and levels. A level nobody read is the one the trap will have sunk
    /// to; where that is not known either it counts as a whole fill, as it does in the load.
    pub sum: Volume,
    /// Fillings of single traps in that sum.
    pub services: u32,
}

/// What the trips tell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Learned {
    /// Trips learned from.
    pub trips: usize,
    /// Oil used ÷ sum, the mean over the trips.
    pub mean: f64,
    /// Sample standard deviation of that.
    pub spread: f64,
    /// The least and the most of that on a trip.
    pub ends: (f64, f64),
    /// Oil used for each filling, over all trips.
    pub each: Volume,
    /// The reserve that mean and two standard deviations ask for, up to the next 5 %: an estimate, between none and as much
    /// again as the sum.
    pub reserve: Share,
    /// It asks for more than that.
    pub beyond: bool,
    /// What it asks for, in per cent, however much.
    pub percent: f64,
}

/// The newest trips whose oil is known, oldest first, at most [`TRIPS_MOST`]. Left out are days without trap work, days
/// with a filling that nobody can put a volume to, and days of which one record lacks one of the two volumes. Nothing is
/// learned from the demonstration.
///
/// One pass over the log, and none where no trip was written down.
pub fn trips(book: &Book) -> Vec<TripUse> {
    let mut days = days(book.standing());
    let Some(until) = days.last().map(|newest| newest.known.day) else { return Vec::new() };
    fold_watched(book.log(), Some(until), &mut |standing, _, entry| {
        let What::Check(check) = &entry.what else { return };
        let of_day = days.iter_mut().find(|day| day.known.day == entry.day);
        if let Some(of_day) = of_day.filter(|_| !entry.is_demo()) {
            of_day.fill(standing, entry, check);
        }
    });
    days.retain(|day| day.whole && day.known.services > 0);
    days.into_iter().map(|day| day.known).collect()
}

/// What `trips` tell of the next one; none of too few.
pub fn learned(trips: &[TripUse]) -> Option<Learned> {
    let mut ratios: Vec<f64> = Vec::new();
    let (mut used, mut services) = (Volume::ZERO, 0u32);
    for trip in trips.iter().filter(|trip| trip.sum > Volume::ZERO) {
        ratios.push(trip.used.millilitres() / trip.sum.millilitres());
        used = used.plus(trip.used);
        services = services.saturating_add(trip.services);
    }
    if ratios.len() < TRIPS_LEAST {
        return None;
    }
    #[allow(clippy::cast_precision_loss)] // a dozen
    let many = ratios.len() as f64;
    let mean = ratios.iter().sum::<f64>() / many;
    let squares: f64 = ratios.iter().map(|ratio| (ratio - mean) * (ratio - mean)).sum();
    let spread = (squares / (many - 1.0)).sqrt();
    let wanted = ((mean - 1.0) * 100.0 + 2.0 * spread * 100.0).max(0.0);
    // A sum that is whole but for the noise of its additions stays where it is.
    let steps = ((wanted - 1e-6) / STEP_PERCENT).ceil().max(0.0);
    let percent = steps * STEP_PERCENT;
    let reserve = Decimal::from_f64(percent).ok().and_then(|percent| Share::from_percent(percent).ok());
    Some(Learned {
        trips: ratios.len(),
        mean,
        spread,
        ends: ratios
            .iter()
            .fold((f64::MAX, 0.0_f64), |(least, most), ratio| (least.min(*ratio), most.max(*ratio))),
        each: used.times(1.0 / f64::from(services.max(1))),
        reserve: reserve.unwrap_or(Share::FULL),
        beyond: reserve.is_none(),
        percent,
    })
}

/// Whether somebody worked on traps, and no trip of that day or since says what came home. The demonstration drives nowhere.
pub fn to_tell(standing: &Standing, today: Day) -> bool {
    let mut worked = None;
    for (id, hive) in &standing.hives {
        let work = hive.last.as_ref().filter(|seen| seen.did.is_some() && seen.day <= today && !id.is_demo());
        worked = worked.max(work.map(|seen| seen.day));
    }
    let back = |now: &RecordNow| ["oil_back", "traps_back"].iter().any(|name| now.record.get(name).is_some());
    let told = |(id, now): &(&EntryId, &RecordNow)| !id.is_demo() && Some(now.day) >= worked && back(now);
    worked.is_some() && !standing.records_of(Blank::Trip).iter().any(told)
}

/// A day in the making.
struct OfDay {
    known: TripUse,
    /// Every volume of it is known so far.
    whole: bool,
}

/// The newest days with oil in a record, oldest first.
fn days(standing: &Standing) -> Vec<OfDay> {
    let mut days: Vec<OfDay> = Vec::new();
    for (id, now) in standing.records_of(Blank::Trip) {
        let (taken, back) = (now.record.volume("oil_taken"), now.record.volume("oil_back"));
        // A record of traps or of the way alone says nothing of oil.
        if id.is_demo() || taken.is_none() && back.is_none() {
            continue;
        }
        let used = taken.zip(back).and_then(|(taken, back)| {
            Volume::from_millilitres(taken.millilitres() - back.millilitres()).ok()
        });
        if days.last().is_none_or(|last| last.known.day != now.day) {
            let known = TripUse { day: now.day, used: Volume::ZERO, sum: Volume::ZERO, services: 0 };
            days.push(OfDay { known, whole: true });
        }
        if let Some(of_day) = days.last_mut() {
            of_day.whole &= used.is_some();
            of_day.known.used = of_day.known.used.plus(used.unwrap_or_default());
        }
    }
    days.split_off(days.len().saturating_sub(TRIPS_MOST))
}

impl OfDay {
    /// Adds what `check` filled. Work that another phone wrote down too is reckoned once.
    fn fill(&mut self, standing: &Standing, entry: &Entry, check: &Check) {
        let Some((hive, traps)) = standing.fills(entry, check) else { return };
        for trap in traps {
            let kind = standing.kinds.get(&trap.kind).map(|now| &now.kind);
            if kind.is_some_and(|kind| !kind.form.takes_oil()) {
                continue;
            }
            let from = match check.did {
                Did::ToppedUp => check.before.or_else(|| round::sunk_to(standing, hive, trap, entry.day)),
                _ => None,
            };
            let oil =
                kind.and_then(|kind| kind.oil(from.unwrap_or(Share::NONE), check.after.unwrap_or(kind.fill)));
            self.whole &= oil.is_some();
            self.known.sum = self.known.sum.plus(oil.unwrap_or_default());
            self.known.services += 1;
        }
    }
}
