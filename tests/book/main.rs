//! The keeper's book: what is written, what follows, what is refused.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, missing_docs)]

mod alarms;
mod any_time;
mod cabinet;
mod calendar;
mod caught;
mod chosen;
mod clash;
mod corrections;
mod day_by_day;
mod decided;
mod demo;
mod doubles;
mod drawn;
mod finds;
mod fixtures;
mod foreign;
mod half_made;
mod kept_back;
mod late;
mod laws;
mod loaded;
mod lost;
mod lots;
mod mended;
mod mended_traps;
mod mixed;
mod names;
mod oil_used;
mod other_hands;
mod owed;
mod pace;
mod packs;
#[path = "../support/phone.rs"]
mod phone;
mod plain;
mod pulled;
#[path = "../support/records.rs"]
mod record_of_each;
mod record_versions;
mod records;
mod refused;
mod review;
mod round;
mod round_traps;
mod said_anew;
mod same_day;
mod season;
mod second;
#[path = "../support/second.rs"]
mod second_copy;
mod second_faults;
mod spent;
mod spoiled;
mod starts;
mod stock;
mod store_room;
#[path = "../support/mod.rs"]
mod support;
mod table_in;
mod trials;
mod trouble;
mod twins;
mod twins_on_paper;
mod undone;
mod unsaved;
mod yard;
mod yard_decides;

use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::{Decimal, LengthUnit, Share, TypedLength, TypedVolume, VolumeUnit};
use beetle_almanac::almanac::stack::{BoxDepth, HiveSize};
use beetle_almanac::almanac::trap::{TrapForm, TrapKind, TrapSize};
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::write::{HivePlan, KindChoice};
use support::pen;

/// A trap of 20 mL and 20 mm, half filled, at most 14 days between services.
fn trap() -> TrapKind {
    TrapKind {
        name: "Slim".to_owned(),
        form: TrapForm::BetweenFrame,
        reusable: false,
        capacity: TypedVolume::new(Decimal::whole(20), VolumeUnit::Millilitre).ok(),
        inner: TrapSize {
            length: None,
            width: None,
            depth: TypedLength::new(Decimal::whole(20), LengthUnit::Millimetre).ok(),
        },
        outer: TrapSize::default(),
        fill: Share::HALF,
        max_days: 14,
        profile: Vec::new(),
        packs: Vec::new(),
    }
}

/// Work on `hive` of which nothing but `did` is known.
fn work_on(hive: ThingId, did: Did) -> Check {
    Check { hive, traps: None, did, before: None, after: None, count: None, note: None }
}

fn plan(tags: &[&str], boxes: &[(BoxDepth, u8)], since: Day) -> HivePlan {
    HivePlan {
        tags: tags.iter().map(|tag| (*tag).to_owned()).collect(),
        size: HiveSize::Full,
        boxes: boxes.to_vec(),
        since,
        filled: Some(Share::HALF),
    }
}

/// A yard of hives with two deeps and two traps in each.
struct Yard {
    book: Book,
    id: ThingId,
    start: Day,
}

impl Yard {
    fn new(tags: &[&str], start: Day) -> Yard {
        Yard::with(tags, start, &trap())
    }

    fn with(tags: &[&str], start: Day, kind: &TrapKind) -> Yard {
        let mut book = Book::default();
        let plan = plan(tags, &[(BoxDepth::Deep, 2), (BoxDepth::Deep, 2)], start);
        let kind = KindChoice::New(kind.clone());
        let entries =
            book.keep_yard(&pen("aa", start), "Ferry Field", "Europe/Berlin", &kind, &plan).unwrap();
        book.add(entries);
        let id = book.standing().yards.keys().next().unwrap().clone();
        Yard { book, id, start }
    }

    fn hive(&self, tag: &str) -> ThingId {
        self.book.standing().hives_of(&self.id, false).find(|(_, hive)| hive.tag == tag).unwrap().0.clone()
    }

    fn kind(&self) -> ThingId {
        self.book.standing().kinds.keys().next().unwrap().clone()
    }

    /// Logs work on a whole hive on `day`, written that day.
    fn log(&mut self, tag: &str, day: Day, did: Did, levels: (Option<u32>, Option<u32>)) {
        let level = |percent: u32| Share::from_percent(Decimal::whole(percent)).unwrap();
        let work = Check {
            hive: self.hive(tag),
            traps: None,
            did,
            before: levels.0.map(level),
            after: levels.1.map(level),
            count: None,
            note: None,
        };
        let entries = self.book.check(&pen("aa", day), day, day, work).unwrap();
        self.book.add(entries);
    }
}
