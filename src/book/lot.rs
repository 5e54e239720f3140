//! What is told of a harvest lot: the hours of its supers, and which products were in its hives before.
//!
//! It says what was written down. Whether honey is fit for food it does not say, and nothing here can be read as that.

use super::Book;
use super::entry::{Entry, What};
use super::fold::fold_until;
use super::id::ThingId;
use super::record::{Blank, Clear, ClockTime, Record, clear_of_product};
use super::standing::{RecordNow, Standing};
use crate::almanac::day::Day;

/// The hours of a lot, in their order.
pub const STEPS: [&str; 4] = ["bees_off", "into_room", "extraction_began", "extraction_ended"];

/// A harvest lot, as far as products are concerned.
#[derive(Clone, Debug, PartialEq)]
pub struct Lot {
    /// The hives it is from: those named, or without any those that stood in its yard when the bees were off.
    pub hives: Vec<ThingId>,
    /// The yard, where no hive is named: whatever was given there was given to the lot's hives, as far as anybody knows.
    yard: Option<ThingId>,
    /// The day on which the bees were off.
    pub off: Day,
}

/// Whether the time to wait after a product was over when the bees were off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wait {
    /// No last day is written down.
    StillIn,
    /// Over on a day before.
    Over(Day),
    /// Over on that very day. Products are written down by days, so which came first nobody can say.
    SameDay(Day),
    /// Not over before this day.
    Until(Day),
}

impl Lot {
    /// What `now` says; none of a record that is no lot.
    pub fn of(book: &Book, now: &RecordNow) -> Option<Lot> {
        let off = now.record.time("bees_off").filter(|_| now.record.blank == Blank::Harvest)?.day;
        let (mut hives, mut yard) = (now.record.hives.clone(), None);
        if hives.is_empty()
            && let Some(of) = &now.yard
        {
            let then = fold_until(book.log(), Some(off));
            hives = then.hives_of(of, true).map(|(id, _)| id.clone()).collect();
            yard = Some(of.clone());
        }
        Some(Lot { hives, yard, off })
    }

    /// The product that `entry` applied to the lot's hives before the bees were off, or on the same day.
    pub fn product<'a>(&self, standing: &Standing, entry: &'a Entry) -> Option<&'a Record> {
        let What::Record(record) = &entry.what else { return None };
        // The line names the hive by the name it was written under.
        let here = self.yard.is_some() && entry.yard == self.yard
            || record.hives.iter().any(|hive| self.hives.contains(standing.kept(hive)));
        (record.blank == Blank::Product && entry.day <= self.off && here).then_some(record)
    }

    /// How the wait after `product` stood; none where no days to wait are written down.
    pub fn wait(&self, product: &Record) -> Option<Wait> {
        Some(match clear_of_product(product)? {
            Clear::StillIn => Wait::StillIn,
            Clear::From(day) if day < self.off => Wait::Over(day),
            Clear::From(day) if day == self.off => Wait::SameDay(day),
            Clear::From(day) => Wait::Until(day),
        })
    }
}

/// Minutes from one hour to another by the clock of the yard; none where they run backwards.
///
/// Only what was written is reckoned with: in a night in which the clock is changed an hour more or less goes by than it
/// shows, and a text without its zone cannot tell which of two like hours was meant. The sheet says so.
pub fn minutes(from: ClockTime, to: ClockTime) -> Option<u32> {
    let minutes =
        i64::from(to.day.days_since(from.day)) * 24 * 60 + i64::from(to.minute) - i64::from(from.minute);
    u32::try_from(minutes).ok()
}
