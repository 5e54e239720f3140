//! An invented operation of 100 hives over ten seasons: what the times of the page are measured with.
//! `cargo run --example operation -- 2026-11-25 FOLDER` writes the book as it stands on the morning of that day into
//! the backup file FOLDER/operation.json.
//!
//! The same day gives the same files, letter for letter: all chance comes from one counter.
//!
//! What was fitted: a line of trap work is about 170 characters, and a page plans with 2,500,000 characters of storage
//! (`store::headroom`), so ten seasons of 100 hives have room for some 14,000 lines of traps: a walk every fortnight for
//! half a year. In the last three seasons the hive is looked into on every second stop as well, 2,100 looks more: as much
//! as a keeper writes who began with looks when the page could. What the decisions go by is there once a hive, a walk or a
//! season: stands, what lets beetles in, trips, what was bought. One yard holds all hives: the longest list, the fullest page of a
//! day and the most finds in one ground there are.
#![allow(clippy::unwrap_used, clippy::expect_used)]

use beetle_almanac::almanac::climate::KNOWN;
use beetle_almanac::almanac::day::{Day, Stamp};
use beetle_almanac::almanac::quantity::{Decimal, LengthUnit, Share, TypedLength, TypedVolume, VolumeUnit};
use beetle_almanac::almanac::stack::{BoxDepth, HiveSize};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trap::{TrapForm, TrapKind, TrapSize};
use beetle_almanac::almanac::typed::decimal;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, SkipReason};
use beetle_almanac::book::id::{ThingId, Writer};
use beetle_almanac::book::record::{Answer, Ask, Blank, Record};
use beetle_almanac::book::write::{HivePlan, KindChoice, Pen, Refusal};
use beetle_almanac::papers::backup;
use std::fs;
use std::path::PathBuf;

const HIVES: u32 = 100;
const SEASONS: i32 = 10;
const WALKS: i32 = 14;
/// Seasons, of the last ones, in which hives were looked into.
const LOOKED: i32 = 3;
/// Days from walk to walk, and from the last walk to the day asked about: then most hives are due.
const EVERY: i32 = 14;

fn main() {
    let mut arguments = std::env::args().skip(1);
    let today = arguments.next().and_then(|day| Day::parse(&day).ok()).expect("the day, as YYYY-MM-DD");
    let folder = PathBuf::from(arguments.next().expect("the folder to write to"));
    let book = operation(today);
    let file = backup::write(book.log(), Stamp::midnight(today), Some("invented"));
    fs::write(folder.join("operation.json"), file).expect("a file written");
}

fn operation(today: Day) -> Book {
    let mut chance = Chance(20_260_401);
    // Looks have a chance of their own, so that the work with traps is the same with them and without.
    let mut seen = Chance(20_260_402);
    let mut book = Book::default();
    let start = today.plus(-365 * (SEASONS - 1) - EVERY * (WALKS + 1));
    let plan = HivePlan {
        tags: (1..=HIVES).map(|n| n.to_string()).collect(),
        size: HiveSize::Full,
        boxes: vec![(BoxDepth::Deep, 2), (BoxDepth::Medium, 1)],
        since: start,
        filled: Some(Share::HALF),
    };
    let pen = pen(start, &mut chance);
    let kept = book.keep_yard(&pen, "River bend", "America/New_York", &KindChoice::New(kind()), &plan);
    book.add(kept.expect("a yard"));
    let yard = book.standing().yards.keys().next().expect("a yard").clone();
    write(&mut book, &pen, start, &yard, climate());
    let hives: Vec<ThingId> = book.standing().hives.keys().cloned().collect();
    // Whatever is beside the traps has writers and a chance of its own.
    let mut beside = Chance(20_260_403);
    place(&mut book, &pen, start, &yard, &hives);
    for season in (0..SEASONS).rev() {
        let spring = today.plus(-365 * season - EVERY * WALKS);
        bought(&mut book, &self::pen(spring, &mut beside), spring);
        for walk in (1..=WALKS).rev() {
            let day = today.plus(-365 * season - EVERY * walk);
            trip(&mut book, &self::pen(day, &mut beside), day, &mut beside);
            let mut pen = self::pen(day, &mut chance);
            for (minute, hive) in (0_i32..).zip(&hives) {
                pen.at = Stamp::new(day, 28_800 + minute.unsigned_abs() * 97, -240).expect("a time of day");
                stop(&mut book, &pen, day, hive, &mut chance);
                if season < LOOKED && (walk + minute) % 2 == 0 {
                    write(&mut book, &pen, day, &yard, look(hive, &mut seen));
                }
            }
        }
    }
    let autumn = today.plus(-EVERY);
    closed_up(&mut book, &self::pen(autumn, &mut beside), autumn, &yard, &hives, &mut beside);
    book
}

/// Ten rows of ten, and what the ground and the way to it are like.
fn place(book: &mut Book, pen: &Pen, day: Day, yard: &ThingId, hives: &[ThingId]) {
    let facts: &[(&str, &str)] =
        &[("soil", "loam"), ("surface", "grass"), ("paved", "12"), ("travel", "35"), ("set_up", "10")];
    write(book, pen, day, yard, told(Blank::YardFacts, Vec::new(), facts));
    for (n, hive) in (0_u32..).zip(hives) {
        let (across, along) = (f64::from(n % 10) * 1.1, f64::from(n / 10) * 3.0);
        let stand = [("across", across.to_string()), ("along", along.to_string())];
        let stand = stand.each_ref().map(|(name, value)| (*name, value.as_str()));
        write(book, pen, day, yard, told(Blank::Stand, vec![hive.clone()], &stand));
    }
    let costs: &[(&str, &str)] = &[("trip", "14"), ("hour", "15"), ("trap_seasons", "4")];
    keep(book, pen, day, told(Blank::Costs, Vec::new(), costs));
}

/// What a season begins with.
fn bought(book: &mut Book, pen: &Pen, day: Day) {
    for (item, change, sort, price) in [("Slim", "24", "trap", "48"), ("Oil", "20000", "oil", "40")] {
        let mut record =
            told(Blank::Stock, Vec::new(), &[("change", change), ("sort", sort), ("price", price)]);
        let unit = u8::from(sort == "oil");
        put(&mut record, "item", Answer::Text(item.to_owned()));
        put(&mut record, "change", Answer::Number(decimal(change).expect("a number"), unit));
        keep(book, pen, day, record);
    }
}

/// What came home of a litre.
fn trip(book: &mut Book, pen: &Pen, day: Day, chance: &mut Chance) {
    let back = (250 + chance.below(200)).to_string();
    let said: &[(&str, &str)] = &[
        ("oil_taken", "1000"),
        ("oil_back", &back),
        ("traps_taken", "12"),
        ("traps_back", "8"),
        ("travel", "70"),
    ];
    keep(book, pen, day, told(Blank::Trip, Vec::new(), said));
}

/// Before winter each hive is looked over from outside.
fn closed_up(book: &mut Book, pen: &Pen, day: Day, yard: &ThingId, hives: &[ThingId], chance: &mut Chance) {
    for hive in hives {
        let crack = ["0", "0", "3", "5"][chance.below(4) as usize];
        let board = ["none", "clean", "dirty"][chance.below(3) as usize];
        let said: &[(&str, &str)] = &[
            ("crack", crack),
            ("crack_length", "20"),
            ("notch", "open"),
            ("slick_board", board),
            ("burr_comb", "no"),
        ];
        write(book, pen, day, yard, told(Blank::Shell, vec![hive.clone()], said));
    }
}

fn told(blank: Blank, hives: Vec<ThingId>, said: &[(&str, &str)]) -> Record {
    let mut record = Record::empty(blank, hives);
    for (name, value) in said {
        fill(&mut record, name, value);
    }
    record
}

/// One stop at one hive. The shares of what is done are invented, but every kind of line is there.
fn stop(book: &mut Book, pen: &Pen, day: Day, hive: &ThingId, chance: &mut Chance) {
    let die = chance.below(100);
    let written = if die < 3 {
        book.skip(pen, day, day, hive, SkipReason::Temper, None)
    } else {
        let did = match die {
            3..=12 => Did::AsFound,
            13..=16 => Did::Replaced,
            17 => Did::Spilled,
            18 => Did::Missing,
            _ => Did::ToppedUp,
        };
        let read = chance.below(3) == 0 && die > 18;
        // One trap of a hive goes missing, hardly ever all.
        let one = (did == Did::Missing).then(|| {
            let now = &book.standing().hives[hive];
            now.traps().find(|trap| trap.trouble.is_none()).map(|trap| vec![trap.id.clone()])
        });
        let work = Check {
            hive: hive.clone(),
            traps: one.flatten(),
            did,
            before: read
                .then(|| Share::from_percent(Decimal::whole(30 + chance.below(20))).expect("a share")),
            after: matches!(did, Did::ToppedUp | Did::Replaced).then_some(Share::HALF),
            count: (chance.below(4) == 0).then(|| CountRange::exact(chance.below(40))),
            note: (chance.below(50) == 0).then(|| "queen seen, two frames of brood".to_owned()),
        };
        match book.check(pen, day, day, work.clone()) {
            // Traps that are gone or shut cannot be topped up.
            Err(Refusal::NoneFishes) => book.check(pen, day, day, Check { did: Did::Replaced, ..work }),
            written => written,
        }
    };
    book.add(written.expect("a line"));
}

/// What was seen in the open hive: mostly no larvae, and of every seven hives one with some.
fn look(hive: &ThingId, chance: &mut Chance) -> Record {
    let mut record = Record::empty(Blank::Look, vec![hive.clone()]);
    let told: &[(&str, &str)] = match chance.below(100) {
        0..=2 => &[("larvae", "not_looked")],
        3..=8 => &[("larvae", "few"), ("larvae_size", "tiny")],
        9..=13 => &[("larvae", "few"), ("larvae_size", "full_grown")],
        14 => &[("larvae", "many"), ("larvae_size", "both"), ("slime", "yes")],
        15 => &[("larvae", "many"), ("entrance", "larvae_leaving")],
        16 => &[("larvae", "none"), ("soil", "larvae")],
        _ => &[("larvae", "none")],
    };
    for (name, word) in told {
        fill(&mut record, name, word);
    }
    fill(&mut record, "adults", &chance.below(12).to_string());
    let bees = 5 + chance.below(14);
    fill(&mut record, "frames_of_bees", &bees.to_string());
    fill(&mut record, "frames_of_comb", &(bees + bees % 4).to_string());
    record
}

/// That of a place that anybody may use, in °C.
fn climate() -> Record {
    let mut record = Record::empty(Blank::Climate, Vec::new());
    for (name, months) in [("high_", KNOWN[0].highs), ("low_", KNOWN[0].lows)] {
        for (month, mean) in (1..).zip(months) {
            fill(&mut record, &format!("{name}{month}"), &mean.to_string());
        }
    }
    record
}

fn fill(record: &mut Record, name: &str, told: &str) {
    let place = |word: &&str| *word == told;
    let field = record.blank.fields().iter().find(|field| field.name == name).expect("a field");
    let answer = match field.ask {
        Ask::Word(words) => {
            let at = words.iter().position(place).expect("a word");
            Answer::Word(u8::try_from(at).expect("few words"))
        }
        Ask::Words(words) => Answer::Words(1 << words.iter().position(place).expect("a word")),
        Ask::Count => Answer::Count(CountRange::exact(told.parse().expect("a count"))),
        _ => Answer::Number(decimal(told).expect("a number"), 0),
    };
    put(record, name, answer);
}

fn put(record: &mut Record, name: &str, answer: Answer) {
    let field = record.blank.fields().iter().position(|field| field.name == name).expect("a field");
    record.answers[field] = Some(answer);
}

fn write(book: &mut Book, pen: &Pen, day: Day, yard: &ThingId, record: Record) {
    let written = book.record(pen, day, day, Some(yard), record).expect("a record");
    book.add(written);
}

fn keep(book: &mut Book, pen: &Pen, day: Day, record: Record) {
    let written = book.record(pen, day, day, None, record).expect("a record");
    book.add(written);
}

/// Every walk is another start of the page, as it is on a phone.
fn pen(day: Day, chance: &mut Chance) -> Pen {
    let letters =
        (0..8).map(|_| char::from_digit(chance.below(36), 36).expect("a digit")).collect::<String>();
    Pen {
        writer: Writer::new(&letters).expect("a writer"),
        by: None,
        at: Stamp::new(day, 28_800, -240).expect("a time of day"),
    }
}

fn kind() -> TrapKind {
    let millimetres = |number| TypedLength::new(Decimal::whole(number), LengthUnit::Millimetre).ok();
    TrapKind {
        name: "Slim".to_owned(),
        form: TrapForm::BetweenFrame,
        reusable: true,
        capacity: TypedVolume::new(Decimal::whole(20), VolumeUnit::Millilitre).ok(),
        inner: TrapSize { length: None, width: None, depth: millimetres(20) },
        outer: TrapSize::default(),
        fill: Share::HALF,
        max_days: 14,
        profile: Vec::new(),
        packs: Vec::new(),
    }
}

/// Numbers that look like chance: a linear congruential generator, of which only the high bits are used
/// (multiplier and increment: Knuth, The Art of Computer Programming 2, 3.3.4).
struct Chance(u64);

impl Chance {
    fn below(&mut self, most: u32) -> u32 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        u32::try_from((self.0 >> 33) % u64::from(most)).expect("below `most`")
    }
}
