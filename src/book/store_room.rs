//! What lies in store: what was bought, used up and given away by the records, less what the log shows as used since.
//!
//! The first record was written after the work of its day, so only what was used on a later day is taken off it. What
//! was used on the day of a later purchase is taken off what was there before, and what that does not cover off the
//! purchase. It is an estimate for the keeper to mend, as that of [`KindNow::stock`](super::standing::KindNow::stock)
//! is.

use super::id::ThingId;
use super::put_in::PutIn;
use super::record::{Blank, Record};
use super::standing::Standing;
use crate::almanac::day::Day;
use crate::almanac::quantity::Volume;

/// Places of the units of a stock record among its field's.
const PIECES: u8 = 0;
const MILLILITRES: u8 = 1;
const LITRES: u8 = 2;

/// So much of one thing, in pieces or millilitres: `written` − `gone` = `good` + `past`.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Held {
    /// Good on the day.
    pub good: f64,
    /// Left over past its day, and not counted.
    pub past: f64,
    /// By the stock records alone.
    pub written: f64,
    /// Used since by the log, beyond what the records say was used.
    pub gone: f64,
    /// Used since by the log, though it was not there by the records.
    pub beyond: f64,
    /// The day of the first record.
    pub since: Option<Day>,
    /// Trips since, whose oil nobody can tell.
    pub unknown: u32,
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

/// A stock record of traps or oil.
#[derive(Clone, Debug, PartialEq)]
struct Change {
    day: Day,
    oil: bool,
    /// In the keeper's words.
    item: String,
    /// What went out has a minus.
    by: f64,
    until: Option<Day>,
}

/// One thing in the making, day by day.
#[derive(Default)]
struct Shelf {
    lots: Vec<Lot>,
    /// The day whose records and use come next.
    day: Option<Day>,
    /// Taken out on it by records beyond what was written down as there.
    owed: f64,
    /// Used on it by the log beyond what was there, and not taken out by a record.
    lacking: f64,
    /// Used by the log, and not written down as used yet.
    open: f64,
    held: Held,
}

/// The store on a day.
#[derive(Clone, Debug, PartialEq)]
pub struct StoreRoom {
    day: Day,
    changes: Vec<Change>,
    put_in: Vec<PutIn>,
    /// Oil that trips used; none where one of the two volumes is not known.
    trips: Vec<(Day, Option<f64>)>,
}

impl StoreRoom {
    /// The store on the evening of `day`, by the records up to it; those of the demonstration when `demo` says so, else the
    /// keeper's own. Traps count in pieces, oil in millilitres or litres; what is of another sort, has none, or is
    /// counted in another unit stays out. `put_in` is what went into hives ([`put_in`](super::put_in::put_in)).
    pub fn of(standing: &Standing, day: Day, demo: bool, put_in: &[PutIn]) -> StoreRoom {
        let mut room = StoreRoom { day, changes: Vec::new(), put_in: put_in.to_vec(), trips: Vec::new() };
        room.put_in.retain(|put_in| put_in.day <= day);
        for (id, now) in standing.records_of(Blank::Stock) {
            if now.day <= day && id.is_demo() == demo {
                room.changes.extend(change(&now.record, now.day));
            }
        }
        for (id, now) in standing.records_of(Blank::Trip) {
            let (taken, back) = (now.record.volume("oil_taken"), now.record.volume("oil_back"));
            if now.day <= day && id.is_demo() == demo && (taken.is_some() || back.is_some()) {
                let used = taken.zip(back).map(|(taken, back)| taken.millilitres() - back.millilitres());
                room.trips.push((now.day, used.filter(|used| *used >= 0.0)));
            }
        }
        room
    }

    /// Traps of `kind`, whose item `same` takes for its name. What a trip carried went into hives, and is taken off as that.
    pub fn traps(&self, kind: &ThingId, same: &dyn Fn(&str) -> bool) -> Held {
        let mut gone = Vec::new();
        for put_in in self.put_in.iter().filter(|put_in| put_in.kind == *kind) {
            gone.push((put_in.day, Some(f64::from(put_in.traps))));
        }
        self.held(&|change| !change.oil && same(&change.item), &gone)
    }

    /// Oil of any name; none where no oil was ever written down.
    pub fn oil(&self) -> Option<Held> {
        self.changes.iter().any(|change| change.oil).then(|| self.held(&|change| change.oil, &self.trips))
    }

    /// `gone` in the order of its days.
    fn held(&self, meant: &dyn Fn(&Change) -> bool, gone: &[(Day, Option<f64>)]) -> Held {
        let mut thing = Shelf::default();
        let mut gone = gone.iter().peekable();
        for change in self.changes.iter().filter(|change| meant(change)) {
            while let Some((day, used)) = gone.next_if(|(day, _)| *day <= change.day) {
                thing.went(*day, *used);
            }
            thing.put(change);
        }
        for (day, used) in gone {
            thing.went(*day, *used);
        }
        for lot in &thing.lots {
            // The day until which it is good is still good.
            if lot.until.is_some_and(|until| until < self.day) {
                thing.held.past += lot.left;
            } else {
                thing.held.good += lot.left;
            }
        }
        thing.held
    }
}

fn change(record: &Record, day: Day) -> Option<Change> {
    let (sort, item) = (record.word("sort")?, record.text("item")?);
    let by = match (sort, record.number("change")?) {
        ("trap", (by, PIECES)) | ("oil", (by, MILLILITRES)) => by,
        ("oil", (by, LITRES)) => by * 1000.0,
        _ => return None,
    };
    Some(Change { day, oil: sort == "oil", item: item.to_owned(), by, until: record.day("good_until") })
}

impl Shelf {
    /// What was written down as used is what the log shows as used up to that day, as far as that goes: nothing is taken
    /// off twice, on however many evenings it was written down.
    fn put(&mut self, change: &Change) {
        self.turn(change.day);
        self.held.since.get_or_insert(change.day);
        if change.by >= 0.0 {
            // What was used on the day it was bought came out of it, whichever was written down first.
            let owed = self.owed.min(change.by);
            let left = change.by - owed;
            let used = self.lacking.min(left);
            self.owed -= owed;
            self.lacking -= used;
            self.open += used;
            self.lots.push(Lot { until: change.until, left: left - used });
            self.held.written += left;
            self.held.gone += used;
            self.held.beyond = self.lacking;
            return;
        }
        let out = -change.by;
        let known = self.open.min(out);
        self.open -= known;
        self.lacking -= self.lacking.min(out - known);
        let over = self.take(out - known, change.until, change.day);
        self.held.gone -= known;
        self.held.written -= out - over;
        self.owed += over;
    }

    /// Takes off what the log shows as used on a day, if something was written down before.
    fn went(&mut self, day: Day, used: Option<f64>) {
        if self.held.since.is_none() {
            return;
        }
        self.turn(day);
        let Some(used) = used else {
            self.held.unknown += 1;
            return;
        };
        let over = self.take(used, None, day);
        self.open += used - over;
        self.lacking += over;
        self.held.gone += used - over;
        self.held.beyond += over;
    }

    /// What one day lacked, no purchase of another day makes good.
    fn turn(&mut self, day: Day) {
        if self.day != Some(day) {
            (self.day, self.owed, self.lacking) = (Some(day), 0.0, 0.0);
        }
    }

    /// Takes `out` away on a day: of the lot with the day it names, else of what was still good then and spoils first, and
    /// what had spoiled by then last (judgement, no source: so the store is rather too small). Nobody has to write off
    /// what is past its day. What was not there comes back.
    fn take(&mut self, mut out: f64, named: Option<Day>, on: Day) -> f64 {
        while out > 0.0 {
            let rank = |lot: &Lot| {
                let past = lot.until.is_some_and(|until| until < on);
                (named.is_none() || lot.until != named, past, lot.until.is_none(), lot.until)
            };
            let lots = self.lots.iter_mut().filter(|lot| lot.left > 0.0);
            let Some(first) = lots.min_by_key(|lot| rank(lot)) else { break };
            let taken = first.left.min(out);
            first.left -= taken;
            out -= taken;
        }
        out
    }
}
