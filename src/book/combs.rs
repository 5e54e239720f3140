//! How well the bees of each hive cover its comb, by the last looks that counted them.

use super::finds::told;
use super::id::ThingId;
use super::newest::Newest;
use super::record::{Blank, Record};
use super::standing::{HiveNow, RecordNow, Standing};
use super::urgent::Because;
use crate::almanac::cover::{Cover, Guard, cover};
use crate::almanac::day::Day;
use crate::almanac::quantity::Decimal;
use crate::almanac::sighting::Seen;
use crate::almanac::stack::HiveSize;

/// Where the number of combs comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counted {
    /// The look says how many are drawn.
    Look,
    /// So many boxes as the hive had at the look, of so many frames by its facts: all of them taken as drawn. Of the last look
    /// those that were taken off since are left out, as comb is that was taken out of what a look counted.
    Boxes(u32, u32),
}

/// Cover by one look.
#[derive(Clone, Debug, PartialEq)]
pub struct Look {
    /// The day.
    pub day: Day,
    /// Frames of bees.
    pub bees: Decimal,
    /// Sides of comb covered, rounded down.
    pub sides: u32,
    /// Frames of comb, rounded up, less those that were taken out since; none when nobody wrote down how many.
    pub frames: Option<u32>,
    /// Frames of those the look counted that were taken out since.
    pub taken: u32,
    /// Where that comes from.
    pub counted: Counted,
    /// The answer; none without the frames.
    pub cover: Option<Cover>,
}

/// A hive and its comb.
#[derive(Clone, Debug, PartialEq)]
pub struct Combs {
    /// Which hive.
    pub hive: ThingId,
    /// Full hive or nuc.
    pub size: HiveSize,
    /// The last look that counted bees.
    pub last: Option<Look>,
    /// Frames of one box by the facts of the hive: without them nobody knows what comes off with a box.
    pub a_box: Option<u32>,
    /// Two looks in a row with less than seven tenths covered.
    pub little_twice: bool,
    /// The last look that looked for the queen found neither her nor eggs, on that day.
    pub queenless: Option<Day>,
    /// The last look for larvae found some in the comb, few or many, on that day.
    pub larvae: Option<Day>,
    /// A test by somebody else that names the hive: for what, with what result, on which day.
    pub test: Option<(String, String, Day)>,
}

/// Fewer frames of bees than this are few where nobody counted the combs: what a nuc holds (judgement, no source).
const FEW_BEES: u32 = 5;

impl Combs {
    /// How it is guarded.
    pub fn guard(&self) -> Option<Guard> {
        Some(self.last.as_ref()?.cover?.guard)
    }

    /// To be opened whatever the draw says: a nuc, less than seven tenths covered, or few bees.
    pub fn weak(&self) -> bool {
        let few = |look: &Look| look.cover.is_none() && look.bees < Decimal::whole(FEW_BEES);
        self.size == HiveSize::Nuc
            || self.guard() == Some(Guard::Little)
            || self.last.as_ref().is_some_and(few)
    }

    /// Its comb and its bees stay where they are: larvae are in it, or something else is wanted of it the same day.
    pub fn stays(&self, because: Option<Because>) -> bool {
        because.is_some() || self.larvae.is_some()
    }

    /// Too weak twice, or without a queen; never while it stays as it is.
    pub fn to_join(&self, because: Option<Because>) -> bool {
        !self.stays(because) && (self.little_twice || self.queenless.is_some())
    }
}

/// Of the hives of `yard` in care, in the order in which they are walked; not of one of which a dead-out was written down.
pub fn combs(standing: &Standing, yard: &ThingId, today: Day) -> Vec<Combs> {
    let newest =
        Newest::of(standing, yard, &[Blank::Look, Blank::HiveFacts, Blank::Test, Blank::Comb], today);
    let dead = super::urgent::dead(standing, yard, today);
    let alive = standing.hives_of(yard, true).filter(|(id, _)| !dead.contains(id));
    alive.map(|(id, hive)| of_hive(&newest, id, hive)).collect()
}

fn of_hive(newest: &Newest, id: &ThingId, hive: &HiveNow) -> Combs {
    let facts = newest.first(id, Blank::HiveFacts);
    let a_box = facts.and_then(|(_, record)| whole(record, "frames", true)).filter(|frames| *frames > 0);
    let mut looks =
        newest.each(id, Blank::Look).filter(|(_, now)| now.record.number("frames_of_bees").is_some());
    let last = looks.next().and_then(|(day, now)| {
        look(&now.record, day, hive.boxes_at(day, false), a_box, taken_out(newest, id, day, None))
    });
    // Two people may have looked on one day.
    let earlier = |(day, _): &(Day, &RecordNow)| last.as_ref().is_none_or(|last| *day < last.day);
    let before =
        looks.find(earlier).and_then(|(day, now)| look(&now.record, day, hive.boxes_at(day, true), a_box, 0));
    let little = |look: &Option<Look>| {
        look.as_ref().and_then(|look| look.cover).is_some_and(|cover| cover.guard == Guard::Little)
    };
    let little_twice = little(&last) && little(&before);
    let mut queen = newest.each(id, Blank::Look).filter_map(|(day, now)| {
        let word = now.record.word("queen").filter(|word| *word != "not_looked")?;
        Some((word, day))
    });
    let queenless = queen.next().filter(|(word, _)| *word == "none").map(|(_, day)| day);
    let mut larvae = newest.each(id, Blank::Look).filter_map(|(day, now)| {
        let in_comb = |seen: &Seen| !matches!(seen, Seen::AdultsOnly | Seen::InSoil);
        let larvae = told(&now.record).iter().any(in_comb);
        (larvae || now.record.looked_for_larvae()).then_some((larvae, day))
    });
    let larvae = larvae.next().filter(|(larvae, _)| *larvae).map(|(_, day)| day);
    let test = newest.first(id, Blank::Test).map(|(day, record)| {
        let text = |name| record.text(name).unwrap_or_default().to_owned();
        (text("for"), text("result"), day)
    });
    Combs { hive: id.clone(), size: hive.size, last, a_box, little_twice, queenless, larvae, test }
}

/// Frames that were taken out of `hive` from the day of a look on: comb of that day counts as taken out after it, and comb
/// of the day `before` which is asked for as taken out after that.
pub(super) fn taken_out(newest: &Newest, hive: &ThingId, since: Day, before: Option<Day>) -> u32 {
    let mut frames: u32 = 0;
    for (day, now) in newest.each(hive, Blank::Comb) {
        if day >= since && before.is_none_or(|before| day < before) {
            frames = frames.saturating_add(whole(&now.record, "frames", true).unwrap_or_default());
        }
    }
    frames
}

fn look(record: &Record, day: Day, boxes: u32, a_box: Option<u32>, taken: u32) -> Option<Look> {
    let (bees, _) = record.number("frames_of_bees")?;
    let by_boxes = a_box.filter(|_| boxes > 0).map(|each| (boxes.saturating_mul(each), each));
    let (frames, taken, counted) = match (whole(record, "frames_of_comb", true), by_boxes) {
        (Some(frames), _) => {
            let taken = taken.min(frames);
            (Some(frames - taken), taken, Counted::Look)
        }
        (None, Some((frames, each))) => (Some(frames), 0, Counted::Boxes(boxes, each)),
        (None, None) => (None, 0, Counted::Look),
    };
    let bees = Decimal::from_f64(bees).ok()?;
    let sides = up_or_down(2.0 * bees.as_f64(), false);
    // Without the frames of a box none can be taken off.
    let cover = frames.and_then(|frames| cover(sides, frames, a_box.unwrap_or(frames.max(1))));
    Some(Look { day, bees, sides, frames, taken, counted, cover })
}

/// A number of a record in whole ones.
pub fn whole(record: &Record, name: &str, up: bool) -> Option<u32> {
    record.number(name).map(|(number, _)| up_or_down(number, up))
}

#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a float cast stops at the ends of u32
fn up_or_down(number: f64, up: bool) -> u32 {
    (if up { number.ceil() } else { number.floor() }) as u32
}
