//! How much oil trips took, beside the sum of what was done on them: what is learned of the reserve.

use super::Book;
use super::entry::{Check, Did, Entry, What};
use super::fold::fold_watched;
use super::id::{EntryId, ThingId};
use super::record::Blank;
use super::round;
use super::standing::{RecordNow, Standing};
use crate::almanac::day::Day;
use crate::almanac::quantity::{Decimal, Share, Volume};
use crate::almanac::trap::TrapKind;

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
    /// What the fillings of that day come to by kinds and levels, the first ones of new traps among them. A level nobody read
    /// is the one the trap will have sunk to; where that is not known either it counts as a whole fill, as it does in the
    /// load.
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
    fold_watched(book.log(), Some(until), &mut |standing, root, entry| {
        let of_day = days.iter_mut().find(|day| day.known.day == entry.day);
        let Some(of_day) = of_day.filter(|_| !entry.is_demo()) else { return };
        match &entry.what {
            What::Check(check) => of_day.fill(standing, entry, check),
            _ => of_day.fill_first(standing, root, entry),
        }
    });
    days.iter_mut().for_each(OfDay::add_up);
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
        // A hive that was only skipped since was worked on all the same.
        let days = hive.checked.iter().map(|(_, work)| work.day);
        worked = worked.max(days.filter(|day| *day <= today && !id.is_demo()).max());
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
    fills: Vec<Fills>,
}

/// What one line of work filled.
struct Fills {
    /// The hive and the bulk it belongs to.
    work: Option<(ThingId, EntryId)>,
    /// A level found, and whether one was left behind.
    before: Option<Share>,
    after: bool,
    /// Oil; none where it is not known of all.
    oil: Option<Volume>,
    /// Fillings.
    services: u32,
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
            days.push(OfDay { known, whole: true, fills: Vec::new() });
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
        let mut fills = Fills {
            work: entry.bulk.clone().map(|bulk| (standing.kept(&check.hive).clone(), bulk)),
            before: check.before,
            after: check.after.is_some(),
            oil: Some(Volume::ZERO),
            services: 0,
        };
        let first = self.fills.iter().find(|known| fills.goes_on(known));
        let before = check.before.or(first.and_then(|first| first.before));
        for trap in traps {
            let kind = standing.kinds.get(&trap.kind).map(|now| &now.kind);
            let from = match check.did {
                Did::ToppedUp => before.or_else(|| round::sunk_to(standing, hive, trap, entry.day)),
                _ => None,
            };
            fills.pour(kind, from, check.after);
        }
        self.fills.push(fills);
    }

    /// Adds the first filling of traps that go in with `entry`.
    fn fill_first(&mut self, standing: &Standing, root: &EntryId, entry: &Entry) {
        let oil = Some(Volume::ZERO);
        let mut fills = Fills { work: None, before: None, after: true, oil, services: 0 };
        for trap in standing.new_traps(root, &entry.what).into_iter().filter(|trap| trap.level.is_some()) {
            fills.pour(standing.kinds.get(&trap.kind).map(|now| &now.kind), None, trap.level);
        }
        self.fills.push(fills);
    }

    /// The sum of the day. Of a piece of work in several lines the first may say what was found alone, and the others what
    /// was left where.
    fn add_up(&mut self) {
        for fills in &self.fills {
            if fills.after || !self.fills.iter().any(|other| other.after && other.goes_on(fills)) {
                self.whole &= fills.oil.is_some();
                self.known.sum = self.known.sum.plus(fills.oil.unwrap_or_default());
                self.known.services += fills.services;
            }
        }
    }
}

impl Fills {
    /// Both are lines of one piece of work.
    fn goes_on(&self, other: &Fills) -> bool {
        self.work.is_some() && self.work == other.work
    }

    /// A trap of `kind`; one whose level nobody knows counts as empty, and is filled as its kind says.
    fn pour(&mut self, kind: Option<&TrapKind>, from: Option<Share>, to: Option<Share>) {
        if kind.is_some_and(|kind| !kind.form.takes_oil()) {
            return;
        }
        let oil = kind.and_then(|kind| kind.oil(from.unwrap_or(Share::NONE), to.unwrap_or(kind.fill)));
        self.oil = self.oil.zip(oil).map(|(sum, oil)| sum.plus(oil));
        self.services += 1;
    }
}
