//! What lies in store by the records of what was bought, used up and given away: traps by their names, and oil.
//!
//! What was put into hives since is no such record: the number is a guess for the keeper to mend, as that of
//! [`KindNow::stock`](super::standing::KindNow::stock) is.

use super::record::{Blank, Record};
use super::standing::Standing;
use crate::almanac::day::Day;
use crate::almanac::quantity::Volume;

/// Places of the units of a stock record among its field's.
const PIECES: u8 = 0;
const MILLILITRES: u8 = 1;
const LITRES: u8 = 2;

/// So much of one thing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Held {
    /// Good on the day, in pieces or millilitres.
    pub good: f64,
    /// Left over past its day, and not counted.
    pub past: f64,
}

impl Held {
    /// Whole good pieces.
    pub fn pieces(self) -> u32 {
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        // a float cast stops at the ends of u32
        let pieces = self.good as u32;
        pieces
    }

    /// The good oil.
    pub fn oil(self) -> Volume {
        Volume::from_millilitres(self.good).unwrap_or_default()
    }
}

/// What came in together: until when it is good, none for as long as anybody knows, and what is left of it.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Lot {
    until: Option<Day>,
    left: f64,
}

/// One thing in store.
#[derive(Clone, Debug, PartialEq)]
struct Shelf {
    oil: bool,
    /// In the keeper's words.
    item: String,
    lots: Vec<Lot>,
    /// Taken out on a day beyond what was written down as there.
    owed: (Day, f64),
}

/// The store on a day.
#[derive(Clone, Debug, PartialEq)]
pub struct StoreRoom {
    day: Day,
    shelves: Vec<Shelf>,
}

impl StoreRoom {
    /// The store on the evening of `day`, by the records up to it; those of the demonstration when `demo` says so, else the
    /// keeper's own. Traps count in pieces, oil in millilitres or litres; what is of another sort, has none, or is
    /// counted in another unit stays out.
    pub fn of(standing: &Standing, day: Day, demo: bool) -> StoreRoom {
        let mut room = StoreRoom { day, shelves: Vec::new() };
        for (id, now) in standing.records_of(Blank::Stock) {
            if now.day <= day && id.is_demo() == demo {
                room.put(&now.record, now.day);
            }
        }
        room
    }

    fn put(&mut self, record: &Record, on: Day) {
        let (Some(sort), Some(item), Some((change, unit))) =
            (record.word("sort"), record.text("item"), record.number("change"))
        else {
            return;
        };
        let change = match (sort, unit) {
            ("trap", PIECES) | ("oil", MILLILITRES) => change,
            ("oil", LITRES) => change * 1000.0,
            _ => return,
        };
        let oil = sort == "oil";
        let at = self.shelves.iter().position(|shelf| shelf.oil == oil && shelf.item == item);
        let at = at.unwrap_or_else(|| {
            self.shelves.push(Shelf { oil, item: item.to_owned(), lots: Vec::new(), owed: (on, 0.0) });
            self.shelves.len() - 1
        });
        let until = record.day("good_until");
        if let Some(shelf) = self.shelves.get_mut(at) {
            if change >= 0.0 {
                // What was used on the day it was bought came out of it, whichever was written down first.
                let owed = if shelf.owed.0 == on { shelf.owed.1.min(change) } else { 0.0 };
                shelf.owed.1 -= owed;
                shelf.lots.push(Lot { until, left: change - owed });
            } else {
                shelf.take(-change, until, on);
            }
        }
    }

    /// Traps whose item `same` takes for the name of the kind.
    pub fn traps(&self, same: &dyn Fn(&str) -> bool) -> Held {
        self.held(&|shelf| !shelf.oil && same(&shelf.item))
    }

    /// Oil of any name; none where no oil was ever written down.
    pub fn oil(&self) -> Option<Held> {
        self.shelves.iter().any(|shelf| shelf.oil).then(|| self.held(&|shelf| shelf.oil))
    }

    fn held(&self, of: &dyn Fn(&Shelf) -> bool) -> Held {
        let mut held = Held::default();
        for lot in self.shelves.iter().filter(|shelf| of(shelf)).flat_map(|shelf| &shelf.lots) {
            // The day until which it is good is still good.
            if lot.until.is_some_and(|until| until < self.day) {
                held.past += lot.left;
            } else {
                held.good += lot.left;
            }
        }
        held
    }
}

impl Shelf {
    /// Takes `out` away on a day: of the lot with the day it names, else of what was still good then and spoils first, and
    /// what had spoiled by then last (judgement, no source: so the store is rather too small). Nobody has to write off
    /// what is past its day.
    fn take(&mut self, mut out: f64, named: Option<Day>, on: Day) {
        while out > 0.0 {
            let rank = |lot: &Lot| {
                let past = lot.until.is_some_and(|until| until < on);
                (named.is_none() || lot.until != named, past, lot.until.is_none(), lot.until)
            };
            let lots = self.lots.iter_mut().filter(|lot| lot.left > 0.0);
            let Some(first) = lots.min_by_key(|lot| rank(lot)) else {
                self.owed = (on, if self.owed.0 == on { self.owed.1 } else { 0.0 } + out);
                return;
            };
            let taken = first.left.min(out);
            first.left -= taken;
            out -= taken;
        }
    }
}
