//! Harvest lots on their way: what is not spun yet, and what is spun and not back yet. Worked out from the hours that were
//! written down and from this minute, each time anew.

use crate::almanac::day::Day;
use crate::almanac::honey::{BACK_HOURS, Hatch, Race, hatch};
use crate::almanac::moment::Moment;
use crate::almanac::warmth::Swing;
use crate::app::ledger::papers::events::yards;
use crate::book::Book;
use crate::book::aims::{Aims, whole};
use crate::book::id::{EntryId, ThingId};
use crate::book::record::{Blank, ClockTime, Record};

/// Days for which a lot whose extraction nobody wrote down is shown as one on its way.
pub const SHOWN_DAYS: i32 = 14;

/// What the clock of a yard shows at a moment, and the moment of an hour that it showed; lent by the browser.
#[derive(Clone, Copy)]
pub struct YardClock {
    /// The moment at which the clock of a zone showed an hour.
    pub moment: fn(ClockTime, &str) -> Option<Moment>,
    /// What it shows at a moment.
    pub shown: fn(Moment, &str) -> Option<ClockTime>,
}

/// A harvest lot on its way.
#[derive(Clone, Debug, PartialEq)]
pub struct Stack {
    /// Its line.
    pub line: EntryId,
    /// Where it is from.
    pub yard: Option<ThingId>,
    /// The zone of that yard.
    pub zone: String,
    /// How many supers.
    pub supers: Option<u32>,
    /// The room it stands in.
    pub room: Option<Swing>,
    /// Relative humidity there, in per cent.
    pub humidity: Option<f64>,
    /// When somebody began to spin it.
    pub began: Option<Moment>,
    /// What is to be done with it.
    pub step: Step,
}

/// What is to be done with a lot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// It is to be spun.
    Spin(Race, Option<Hatch>),
    /// Its wet supers and cappings are to be back on hives or in the freezer by then.
    Back {
        /// When the extraction ended.
        ended: Moment,
        /// By then.
        by: Moment,
    },
}

/// The lots on their way, the oldest first.
pub fn stacks(book: &Book, clock: &YardClock) -> Vec<Stack> {
    let standing = book.standing();
    let aims = Aims::of(standing);
    let own = yards(book);
    let mut found = Vec::new();
    for (line, now) in standing.records_of(Blank::Harvest) {
        let here = now.yard.as_ref().is_none_or(|yard| own.contains(yard) || !yard.is_demo());
        if let (true, Some(zone)) = (here, now.yard.as_ref().and_then(|yard| standing.yards.get(yard)))
            && let Some(step) = step(&now.record, &zone.zone, &aims, clock)
        {
            found.push(Stack {
                line: line.clone(),
                yard: now.yard.clone(),
                zone: zone.zone.clone(),
                supers: now.record.number("supers").and_then(|(supers, _)| whole(supers)),
                room: room(&now.record),
                humidity: now.record.number("humidity").map(|(percent, _)| percent),
                began: moment(&now.record, "extraction_began", &zone.zone, clock),
                step,
            });
        }
    }
    found
}

fn moment(record: &Record, name: &str, zone: &str, clock: &YardClock) -> Option<Moment> {
    record.time(name).and_then(|time| (clock.moment)(time, zone))
}

fn step(record: &Record, zone: &str, aims: &Aims, clock: &YardClock) -> Option<Step> {
    let moment = |name| moment(record, name, zone, clock);
    if let Some(ended) = moment("extraction_ended") {
        let open = record.time("supers_back").is_none();
        return open.then(|| Step::Back { ended, by: ended.plus_hours(BACK_HOURS) });
    }
    let hatch = room(record).map(hatch);
    let race =
        Race::new(moment("bees_off")?, aims.goal_hours, aims.limit_hours, hatch.unwrap_or(Hatch::TooCold));
    Some(Step::Spin(race, hatch))
}

/// Between which temperatures the room goes, where one was written down.
fn room(record: &Record) -> Option<Swing> {
    let high = record.warmth("room")?;
    let low = record.warmth("room_low").unwrap_or(high);
    Some(if low > high { Swing { low: high, high: low } } else { Swing { low, high } })
}

impl Stack {
    /// Since when it is on its way.
    pub fn since(&self) -> Moment {
        match self.step {
            Step::Spin(race, _) => race.off,
            Step::Back { ended, .. } => ended,
        }
    }

    /// So old that nobody will have waited so long: the hour was not written down.
    pub fn is_old(&self, now: Moment) -> bool {
        now.since(self.since()) > SHOWN_DAYS * 24 * 60
    }

    /// The limit is over and nobody spins, or what was spun is not back in time.
    pub fn is_over(&self, now: Moment) -> bool {
        match self.step {
            Step::Spin(race, _) => self.began.is_none() && now > race.limit,
            Step::Back { by, .. } => now > by,
        }
    }

    /// The day in its yard.
    pub fn day(&self, at: Moment, clock: &YardClock) -> Option<Day> {
        (clock.shown)(at, &self.zone).map(|time| time.day)
    }
}
