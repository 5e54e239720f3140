//! When supers may be on again after a product, and how long its record is kept; the number of a lot.

use super::{Answer, Record};
use crate::almanac::day::Day;
use crate::book::id::EntryId;

/// When the label's interval after a product is over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clear {
    /// The product is still in: no end has been written down.
    StillIn,
    /// From this day on, the day of the end plus the interval of the label.
    From(Day),
}

impl Clear {
    /// The one that keeps supers off longer.
    #[must_use]
    pub fn later(self, other: Clear) -> Clear {
        match (self, other) {
            (Clear::From(one), Clear::From(two)) => Clear::From(one.max(two)),
            _ => Clear::StillIn,
        }
    }
}

/// When supers may be on after `product`, first given on `start`: the day it ended plus the interval that its label names,
/// both as the keeper typed them. None for any other record.
///
/// Without an end it is still in, whatever the interval.
pub fn clear_of_product(product: &Record) -> Option<Clear> {
    let Some(Answer::Number(days, _)) = product.get("interval_days") else { return None };
    // A part of a day counts as a whole one: a wait is never rounded down.
    let days = i32::try_from(days.millionths().max(0).saturating_add(999_999) / 1_000_000).ok()?;
    Some(product.day("end").map_or(Clear::StillIn, |end| Clear::From(end.plus(days))))
}

/// The last day on which the record of `product`, first given on `start`, must still be there: so many years after the
/// later of its start and its end.
///
/// Five years: Regulation (EU) 2019/6, Article 108(4), and the United Kingdom's Veterinary Medicines Regulations 2013. Two
/// years: 7 U.S.C. 136i-1(a). Three years: the Australian code of practice. Which holds is the keeper's choice.
pub fn keep_until(product: &Record, start: Day, years: u16) -> Day {
    let last = product.day("end").map_or(start, |end| end.max(start));
    let year = last.year() + i32::from(years);
    // 29 February has no twin in a common year: then the day after counts, since a record may be kept too long.
    let twin = |month, day| Day::from_ymd(year, month, day);
    twin(last.month(), last.day_of_month()).or_else(|_| twin(3, 1)).unwrap_or(Day::LAST)
}

/// The number of a harvest lot of `day`, whose line is `id`: its day and the name of its line, so that two phones never
/// give one number to two lots.
pub fn lot(day: Day, id: &EntryId) -> String {
    let mut number = day.to_string();
    number.retain(|c| c != '-');
    [&number, "-", &id.to_string()].concat()
}
