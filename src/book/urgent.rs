//! What a hive wants on the same day: signs of brood disease, slime or many larvae in the newest look, or a dead-out whose comb is still there.

use super::combs::whole;
use super::entry::Ending;
use super::finds::told;
use super::id::ThingId;
use super::newest::Newest;
use super::record::{Blank, Record};
use super::standing::Standing;
use crate::almanac::day::Day;

/// Where combs went since.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Fates {
    /// Frames to the freezer.
    pub frozen: u32,
    /// Frames melted.
    pub melted: u32,
    /// Frames burned.
    pub burned: u32,
    /// Frames put into store as they were.
    pub stored: u32,
    /// Frames given to another hive.
    pub given: u32,
}

impl Fates {
    /// Frames that are accounted for.
    pub fn all(&self) -> u32 {
        [self.frozen, self.melted, self.burned, self.stored, self.given]
            .into_iter()
            .fold(0, u32::saturating_add)
    }
}

/// Why today.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Because {
    /// Slime, larvae on the way out, or many of them, in the newest look.
    Slime,
    /// A dead colony.
    Dead,
    /// Signs of brood disease in the newest record that looked for them: before anything else.
    Disease,
}

/// What is known of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Urgent {
    /// Why.
    pub because: Because,
    /// Since when.
    pub since: Day,
    /// Combs to account for: all of a dead hive, or those its bees do not cover. None when nobody counted them.
    pub combs: Option<u32>,
    /// Where combs went since.
    pub fates: Fates,
    /// The ground of its yard was worked on since.
    pub ground: bool,
    /// The hive is still in care: nobody wrote its end down.
    pub in_care: bool,
}

impl Urgent {
    /// Combs that nobody has accounted for.
    pub fn open(&self) -> Option<u32> {
        self.combs.map(|combs| combs.saturating_sub(self.fates.all()))
    }
}

const BLANKS: [Blank; 5] = [Blank::Look, Blank::DeadOut, Blank::Comb, Blank::HiveFacts, Blank::Test];

/// Days after which a dead-out whose combs nobody counted is no more on its card: by then what lived in them has left
/// (judgement, no source).
const UNCOUNTED_DAYS: i32 = 60;

/// Every hive of `yard` that wants it on `today`, in the order of the walk, ended ones included; one pass over the records.
pub fn of_yard(standing: &Standing, yard: &ThingId, today: Day) -> Vec<(ThingId, Urgent)> {
    let newest = Newest::of(standing, yard, &BLANKS, today);
    let hives = standing.hives_of(yard, false);
    hives.filter_map(|(id, _)| Some((id.clone(), of_hive(standing, &newest, id, today)?))).collect()
}

/// Hives of `yard` of which a dead-out was written down and no end of their care, in the order of the walk, whatever became of
/// their combs: no bees are in them until a later look says so.
pub fn dead(standing: &Standing, yard: &ThingId, today: Day) -> Vec<ThingId> {
    let newest = Newest::of(standing, yard, &[Blank::Look, Blank::DeadOut], today);
    let hives = standing.hives_of(yard, true).map(|(id, _)| id);
    hives.filter(|hive| died(&newest, hive, last_look(&newest, hive)).is_some()).cloned().collect()
}

/// Whether `hive` wants it on `today`. A dead hive wants nothing more once all its combs are accounted for, or after
/// sixty days where nobody counted them; one that was sold or joined wants nothing.
pub fn urgent(standing: &Standing, hive: &ThingId, today: Day) -> Option<Urgent> {
    of_hive(standing, &Newest::of_one(standing, hive, &BLANKS, today), hive, today)
}

fn of_hive(standing: &Standing, newest: &Newest, hive: &ThingId, today: Day) -> Option<Urgent> {
    let now = standing.hives.get(hive)?;
    if matches!(now.ended, Some((Ending::Sold | Ending::Joined { .. }, _))) {
        return None;
    }
    let look = last_look(newest, hive);
    let boxes = u32::try_from(now.boxes.len()).unwrap_or(u32::MAX);
    let facts = newest.first(hive, Blank::HiveFacts).and_then(|(_, record)| whole(record, "frames", true));
    let by_boxes = facts.filter(|_| boxes > 0).map(|each| each.saturating_mul(boxes));
    let comb = look.and_then(|(_, record)| whole(record, "frames_of_comb", true)).or(by_boxes);
    let (because, since, combs) = match look {
        _ if let Some(day) = suspected(newest, hive) => (Because::Disease, day, None),
        look if let Some(day) = died(newest, hive, look) => (Because::Dead, day, comb),
        Some((day, record)) if now.alive() && slimed(record) => {
            let bees = whole(record, "frames_of_bees", false);
            (Because::Slime, day, comb.zip(bees).map(|(comb, bees)| comb.saturating_sub(bees)))
        }
        _ => return None,
    };
    let mut fates = Fates::default();
    for (_, now) in newest.each(hive, Blank::Comb).take_while(|(day, _)| *day >= since) {
        let frames = whole(&now.record, "frames", true).unwrap_or_default();
        let fate = match now.record.word("to") {
            Some("freezer") => &mut fates.frozen,
            Some("melted") => &mut fates.melted,
            Some("burned") => &mut fates.burned,
            Some("another_hive") => &mut fates.given,
            _ => &mut fates.stored,
        };
        *fate = fate.saturating_add(frames);
    }
    let ground = standing.records.values().any(|work| {
        work.record.blank == Blank::Ground && work.yard.as_ref() == Some(&now.yard) && work.day >= since
    });
    let urgent = Urgent { because, since, combs, fates, ground, in_care: now.alive() };
    let old = combs.is_none() && today.days_since(since) > UNCOUNTED_DAYS;
    let done = because == Because::Dead && (old || urgent.open() == Some(0));
    (!done).then_some(urgent)
}

/// The newest look into `hive`. One in which nobody looked for larvae ends nothing.
fn last_look<'a>(newest: &Newest<'a>, hive: &ThingId) -> Option<(Day, &'a Record)> {
    let mut looks = newest.each(hive, Blank::Look).map(|(day, now)| (day, &now.record));
    looks.find(|(_, record)| record.looked_for_larvae() || slimed(record))
}

/// The day of its dead-out, if it was not looked into since.
fn died(newest: &Newest, hive: &ThingId, look: Option<(Day, &Record)>) -> Option<Day> {
    let (day, _) = newest.first(hive, Blank::DeadOut)?;
    look.is_none_or(|(on, _)| on <= day).then_some(day)
}

/// The day on which brood disease was suspected, if no record that looked for it and no test that names the hive came
/// after it.
fn suspected(newest: &Newest, hive: &ThingId) -> Option<Day> {
    let looked = |(day, record): (Day, &Record)| {
        let word = record.word("brood_disease").filter(|word| *word != "not_looked")?;
        Some((day, word == "suspected"))
    };
    let last = |blank| newest.each(hive, blank).find_map(|(day, now)| looked((day, &now.record)));
    let (day, found) = last(Blank::DeadOut).into_iter().chain(last(Blank::Look)).max()?;
    let tested = newest.first(hive, Blank::Test).is_some_and(|(on, _)| on > day);
    (found && !tested).then_some(day)
}

/// Slime, larvae outside, or many of them.
fn slimed(record: &Record) -> bool {
    record.word("larvae") == Some("many") || told(record).iter().any(|seen| seen.outside())
}
