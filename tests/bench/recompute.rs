//! How long it takes to read the whole book anew: 1,000 hives in two yards, a season of walks.
//!
//! Machines are noisy, so the time stands beside that of writing the same log as JSON, measured in the same run; what
//! can be compared between machines is the ratio.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

use beetle_almanac::almanac::day::{Day, Stamp};
use beetle_almanac::almanac::quantity::{Decimal, LengthUnit, Share, TypedLength, TypedVolume, VolumeUnit};
use beetle_almanac::almanac::stack::{BoxDepth, HiveSize};
use beetle_almanac::almanac::trap::{TrapForm, TrapKind, TrapSize};
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did};
use beetle_almanac::book::id::Writer;
use beetle_almanac::book::round;
use beetle_almanac::book::write::{HivePlan, KindChoice, Pen};
use std::hint::black_box;
use std::time::{Duration, Instant};

const YARDS: u32 = 2;
const HIVES: u32 = 500;
const WALKS: i32 = 15;

fn main() {
    let start = Day::from_ymd(2026, 4, 1).unwrap();
    let book = season(start);
    let today = start.plus(WALKS * 14 + 3);
    let log = book.log();
    println!("{} hives, {} entries, {WALKS} walks", YARDS * HIVES, log.len());

    let fold = median(|| {
        black_box(Book::from_log(black_box(log.clone())));
    });
    let clone = median(|| {
        black_box(black_box(log).clone());
    });
    let due = median(|| {
        for yard in book.standing().yards.keys() {
            black_box(round::rows(book.standing(), yard, today));
            black_box(round::yard_need(book.standing(), yard, today, Share::QUARTER));
        }
    });
    let json = median(|| {
        for entry in log.entries() {
            black_box(serde_json::to_string(entry).unwrap());
        }
    });
    let fold = fold.saturating_sub(clone);
    let ratio = |time: Duration| time.as_secs_f64() / json.as_secs_f64();
    println!("read the whole log anew    {:>8.2} ms   {:.2} × writing it as JSON", ms(fold), ratio(fold));
    println!("every due date and the oil {:>8.2} ms   {:.2} ×", ms(due), ratio(due));
    println!("full recompute             {:>8.2} ms   {:.2} ×", ms(fold + due), ratio(fold + due));
    println!("writing the log as JSON    {:>8.2} ms   1", ms(json));
}

fn ms(time: Duration) -> f64 {
    time.as_secs_f64() * 1000.0
}

fn median(mut work: impl FnMut()) -> Duration {
    let mut times: Vec<Duration> = (0..21)
        .map(|_| {
            let begun = Instant::now();
            work();
            begun.elapsed()
        })
        .collect();
    times.sort();
    times[times.len() / 2]
}

fn season(start: Day) -> Book {
    let mut book = Book::default();
    let pen = |day: Day| Pen {
        writer: Writer::new("bench").unwrap(),
        by: None,
        at: Stamp::new(day, 36_000, 0).unwrap(),
    };
    for yard in 0..YARDS {
        let plan = HivePlan {
            tags: (1..=HIVES).map(|n| n.to_string()).collect(),
            size: HiveSize::Full,
            boxes: vec![(BoxDepth::Deep, 2), (BoxDepth::Deep, 2), (BoxDepth::Medium, 2)],
            since: start,
            filled: Some(Share::HALF),
        };
        let name = format!("Yard {yard}");
        let entries = book.keep_yard(&pen(start), &name, "UTC", &KindChoice::New(kind()), &plan).unwrap();
        book.add(entries);
    }
    let hives: Vec<_> = book.standing().hives.keys().cloned().collect();
    for walk in 1..=WALKS {
        let day = start.plus(walk * 14);
        for (n, hive) in (0_u32..).zip(&hives) {
            let work = Check {
                hive: hive.clone(),
                traps: None,
                did: Did::ToppedUp,
                before: Share::from_percent(Decimal::whole(30 + (n * 7 + walk.unsigned_abs()) % 15)).ok(),
                after: Some(Share::HALF),
                count: None,
                note: None,
            };
            let entries = book.check(&pen(day), day, day, work).unwrap();
            book.add(entries);
        }
    }
    book
}

fn kind() -> TrapKind {
    TrapKind {
        name: "Slim".to_owned(),
        form: TrapForm::BetweenFrame,
        reusable: true,
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
