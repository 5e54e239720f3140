//! An invented keeper with two yards in the middle of a season, to try the page with.
//!
//! Every figure here is made up. The entries carry the phone name `demo` and lie on pages of their own, so that
//! taking them out cannot touch anything else.

use super::Book;
use super::entry::{Check, Did, Entry, SkipReason};
use super::id::{ThingId, Writer};
use super::record::{Answer, Blank, ClockTime, Record};
use super::write::{HivePlan, KindChoice, Pen, Refusal};
use crate::almanac::day::{Day, Stamp};
use crate::almanac::quantity::{Decimal, LengthUnit, Share, TypedLength, TypedVolume, VolumeUnit};
use crate::almanac::stack::{BoxDepth, HiveSize};
use crate::almanac::tally::CountRange;
use crate::almanac::text::Letters;
use crate::almanac::trap::{Pack, TrapForm, TrapKind, TrapSize};

/// Days from one walk to the next.
const RHYTHM: i32 = 14;

/// The demonstration as it would stand on `today`, in the zone and at the offset (minutes east of UTC) of the phone.
///
/// # Errors
/// [`Refusal`] when the scenario contradicts the book's own rules, which the tests rule out.
pub fn demo(today: Day, zone: &str, offset: i32, letters: &impl Letters) -> Result<Vec<Entry>, Refusal> {
    let mut tale = Tale { book: Book::default(), today, offset };
    let start = today.plus(-5 * RHYTHM);

    let ferry =
        tale.yard("Ferry Field", zone, start, &slim_trap(), &numbers(1, 23), &[(BoxDepth::Deep, 2); 2])?;
    let nuc = HivePlan {
        tags: vec!["24 nuc".to_owned()],
        size: HiveSize::Nuc,
        boxes: vec![(BoxDepth::Deep, 1)],
        since: today.plus(-3 * RHYTHM),
        filled: Some(Share::HALF),
    };
    let kind = tale.first_kind().ok_or(Refusal::Unknown)?;
    let pen = tale.pen(nuc.since)?;
    let entries = tale.book.add_hives(&pen, &ferry, &KindChoice::Known(kind.clone()), &nuc, letters)?;
    tale.book.add(entries);

    let kiln_start = start.plus(3);
    let stack = [(BoxDepth::Deep, 2), (BoxDepth::Medium, 2), (BoxDepth::Shallow, 0)];
    let kiln = tale.yard("Kiln Bank", zone, kiln_start, &lidded_trap(), &numbers(31, 39), &stack)?;

    for walk in 1..=4 {
        tale.walk(&ferry, start.plus(walk * RHYTHM), walk)?;
        // The far yard is walked three days later, and the last time it was left out: it is overdue.
        if walk < 4 {
            tale.walk(&kiln, kiln_start.plus(walk * RHYTHM), walk)?;
        }
    }

    // Eight days ago hive 5 got a third box: its new traps run on dates of their own.
    let added = today.plus(-8);
    let five = tale.hive(&ferry, "5").ok_or(Refusal::Unknown)?;
    let pen = tale.pen(added)?;
    let on = tale.book.boxes_on(&pen, added, added, &five, 2, &[(BoxDepth::Medium, 2)], &kind, true)?;
    tale.book.add(on);
    tale.beetles(&ferry)?;
    Ok(tale.book.log().entries().cloned().collect())
}

/// Mean highs and lows of the invented yard, January first, in °C: warm and humid the year round, so that the dates of
/// the demonstration are near on whatever day it is looked at.
const MONTHS: [[u32; 12]; 2] =
    [[26, 27, 28, 30, 31, 32, 32, 32, 31, 30, 28, 27], [17, 18, 19, 21, 23, 24, 24, 24, 24, 22, 20, 18]];

/// The book as the tale goes on.
struct Tale {
    book: Book,
    today: Day,
    offset: i32,
}

impl Tale {
    fn pen(&self, day: Day) -> Result<Pen, Refusal> {
        let writer = Writer::new(Writer::DEMO).map_err(|_| Refusal::Unknown)?;
        let at = Stamp::new(day, 9 * 3600 + 30 * 60, self.offset).map_err(|_| Refusal::Unknown)?;
        Ok(Pen { writer, by: Some("Demonstration".to_owned()), at })
    }

    fn yard(
        &mut self,
        name: &str,
        zone: &str,
        since: Day,
        kind: &TrapKind,
        tags: &[String],
        boxes: &[(BoxDepth, u8)],
    ) -> Result<ThingId, Refusal> {
        let plan = HivePlan {
            tags: tags.to_vec(),
            size: HiveSize::Full,
            boxes: boxes.to_vec(),
            since,
            filled: Some(kind.fill),
        };
        let kind = KindChoice::New(kind.clone());
        let entries = self.book.keep_yard(&self.pen(since)?, name, zone, &kind, &plan)?;
        let yard = entries.first().map(|entry| entry.id.thing(0)).ok_or(Refusal::Nothing)?;
        self.book.add(entries);
        Ok(yard)
    }

    fn first_kind(&self) -> Option<ThingId> {
        self.book.standing().kinds.keys().next().cloned()
    }

    fn hive(&self, yard: &ThingId, tag: &str) -> Option<ThingId> {
        self.book.standing().hives_of(yard, true).find(|(_, hive)| hive.tag == tag).map(|(id, _)| id.clone())
    }

    /// Larvae that left hive 17 twelve days ago, adults in hive 20, a patty that is in for too long, supers pulled
    /// yesterday, and the temperatures that the dates go by.
    fn beetles(&mut self, yard: &ThingId) -> Result<(), Refusal> {
        let mut climate = Record::empty(Blank::Climate, Vec::new());
        for (head, months) in ["high_", "low_"].into_iter().zip(MONTHS) {
            for (month, degrees) in (1_u32..).zip(months) {
                put(&mut climate, &[head, &month.to_string()].concat(), number(degrees));
            }
        }
        let mut soil = Record::empty(Blank::Soil, Vec::new());
        put(&mut soil, "moisture", Answer::Word(2));
        put(&mut soil, "temperature", number(26));
        put(&mut soil, "depth", number(10));
        let mut records = vec![(-30, climate), (-12, soil)];
        if let Some(hive) = self.hive(yard, "17") {
            let mut look = Record::empty(Blank::Look, vec![hive]);
            put(&mut look, "larvae", Answer::Word(2));
            put(&mut look, "larvae_size", Answer::Word(1));
            put(&mut look, "adults", Answer::Count(CountRange::exact(19)));
            put(&mut look, "entrance", Answer::Words(1 << 3));
            records.push((-12, look));
        }
        if let Some(hive) = self.hive(yard, "20") {
            let mut look = Record::empty(Blank::Look, vec![hive]);
            put(&mut look, "larvae", Answer::Word(1));
            put(&mut look, "adults", Answer::Count(CountRange::exact(8)));
            records.push((-3, look));
        }
        if let Some(hive) = self.hive(yard, "12") {
            let mut patty = Record::empty(Blank::Patty, vec![hive]);
            put(&mut patty, "did", Answer::Word(0));
            put(&mut patty, "amount", number(200));
            records.push((-9, patty));
        }
        let mut lot = Record::empty(Blank::Harvest, Vec::new());
        put(&mut lot, "supers", number(4));
        put(&mut lot, "bees_off", Answer::Time(ClockTime { day: self.today.plus(-1), minute: 18 * 60 }));
        put(&mut lot, "room", number(27));
        records.push((-1, lot));
        for (days, record) in records {
            let day = self.today.plus(days);
            let entries = self.book.record(&self.pen(day)?, day, self.today, Some(yard), record)?;
            self.book.add(entries);
        }
        Ok(())
    }

    /// One walk: most hives are topped up, some counted; hive 14 is skipped on the fourth, hive 9 found spilled.
    fn walk(&mut self, yard: &ThingId, day: Day, walk: i32) -> Result<(), Refusal> {
        let hives: Vec<(ThingId, String)> = self
            .book
            .standing()
            .hives_of(yard, true)
            .map(|(id, hive)| (id.clone(), hive.tag.clone()))
            .collect();
        for (place, (hive, tag)) in (0..).zip(hives) {
            if self.book.standing().hives.get(&hive).is_none_or(|now| now.since >= day) {
                continue;
            }
            let pen = self.pen(day)?;
            let entries = if tag == "14" && walk == 4 {
                self.book.skip(&pen, day, self.today, &hive, SkipReason::Temper, None)?
            } else {
                self.book.check(&pen, day, self.today, work(hive, &tag, place, walk))?
            };
            self.book.add(entries);
        }
        Ok(())
    }
}

/// What was done at one hive. The numbers follow a fixed pattern, so that the demonstration is the same every time.
fn work(hive: ThingId, tag: &str, place: u32, walk: i32) -> Check {
    let turn = place * 7 + walk.unsigned_abs() * 5;
    if tag == "9" && walk == 3 {
        return Check {
            hive,
            traps: None,
            did: Did::Spilled,
            before: None,
            after: Some(Share::HALF),
            count: None,
            note: Some("Stack was bumped with the barrow".to_owned()),
        };
    }
    let read = !turn.is_multiple_of(3);
    let counted = turn.is_multiple_of(4);
    let level = Share::from_percent(Decimal::whole(34 + turn % 12)).ok();
    let did = if turn % 9 == 4 { Did::Replaced } else { Did::ToppedUp };
    Check {
        hive,
        traps: None,
        did,
        before: level.filter(|_| read),
        after: Some(Share::HALF),
        count: counted.then(|| CountRange::exact(turn % 23)),
        note: None,
    }
}

/// Puts an answer into the field of this name.
fn put(record: &mut Record, name: &str, answer: Answer) {
    let at = record.blank.fields().iter().position(|field| field.name == name);
    if let Some(place) = at.and_then(|at| record.answers.get_mut(at)) {
        *place = Some(answer);
    }
}

/// In the first of the field's units.
fn number(value: u32) -> Answer {
    Answer::Number(Decimal::whole(value), 0)
}

fn numbers(from: u32, to: u32) -> Vec<String> {
    (from..=to).map(|n| n.to_string()).collect()
}

fn millimetres(value: u32) -> Option<TypedLength> {
    TypedLength::new(Decimal::whole(value), LengthUnit::Millimetre).ok()
}

fn millilitres(value: u32) -> Option<TypedVolume> {
    TypedVolume::new(Decimal::whole(value), VolumeUnit::Millilitre).ok()
}

fn price(hundredths: i64) -> Option<Decimal> {
    Decimal::from_millionths(hundredths * 10_000).ok()
}

fn slim_trap() -> TrapKind {
    TrapKind {
        name: "Slim trap".to_owned(),
        form: TrapForm::BetweenFrame,
        reusable: false,
        capacity: millilitres(20),
        inner: TrapSize { length: millimetres(65), width: millimetres(15), depth: millimetres(20) },
        outer: TrapSize { length: millimetres(80), width: millimetres(7), depth: millimetres(24) },
        fill: Share::HALF,
        max_days: 14,
        profile: Vec::new(),
        packs: vec![
            Pack { pieces: 1, price: price(220) },
            Pack { pieces: 5, price: price(950) },
            Pack { pieces: 12, price: price(1800) },
        ],
    }
}

fn lidded_trap() -> TrapKind {
    TrapKind {
        name: "Lidded trap".to_owned(),
        form: TrapForm::Lidded { wells: 2, bait: false },
        reusable: true,
        capacity: millilitres(36),
        inner: TrapSize { length: millimetres(50), width: millimetres(30), depth: millimetres(24) },
        outer: TrapSize { length: millimetres(120), width: millimetres(7), depth: millimetres(40) },
        fill: Share::HALF,
        max_days: 21,
        profile: Vec::new(),
        packs: vec![Pack { pieces: 1, price: price(650) }],
    }
}
