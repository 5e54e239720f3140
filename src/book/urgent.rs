//! What a hive wants on the same day: signs of brood disease, slime or many larvae in the newest look, or a dead-out whose comb is still there.

use super::combs::{taken_out, whole};
use super::entry::Ending;
use super::finds::told;
use super::id::ThingId;
use super::newest::Newest;
use super::record::{Blank, Record};
use super::standing::{HiveNow, RecordNow, Standing};
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
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Urgent {
    /// Why.
    pub because: Because,
    /// Since when.
    pub since: Day,
    /// Combs to account for: all of a dead hive, or those its bees do not cover. None when nobody counted them.
    pub combs: Option<u32>,
    /// Where combs went since.
    pub fates: Fates,
    /// The ground round it was worked on since, or that of the whole yard in which it was seen.
    pub ground: bool,
    /// Tests that name a hive under suspicion, since that day, newest first: for what, with what result. They end nothing:
    /// what a text says only a reader knows.
    pub tests: Vec<(Day, String, String)>,
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
    let hives = standing.hives_of(yard, true);
    let hives = hives.filter(|(id, now)| died(&newest, id, now, last_look(&newest, id)).is_some());
    hives.map(|(id, _)| id.clone()).collect()
}

/// Whether `hive` wants it on `today`. A dead hive wants nothing more once all its combs are accounted for, or after
/// sixty days where nobody counted them; one that was sold or joined wants nothing.
pub fn urgent(standing: &Standing, hive: &ThingId, today: Day) -> Option<Urgent> {
    of_hive(standing, &Newest::of_one(standing, hive, &BLANKS, today), hive, today)
}

/// A record of a hive and the day it is for.
type Told<'a> = Option<(Day, &'a RecordNow)>;

fn of_hive(standing: &Standing, newest: &Newest, hive: &ThingId, today: Day) -> Option<Urgent> {
    let now = standing.hives.get(hive)?;
    if matches!(now.ended, Some((Ending::Sold | Ending::Joined { .. }, _))) {
        return None;
    }
    let look = last_look(newest, hive);
    let (because, (since, told)) = match look {
        _ if let Some(told) = suspected(newest, hive) => (Because::Disease, told),
        look if let Some(told) = died(newest, hive, now, look) => (Because::Dead, told),
        Some(told) if now.alive() && slimed(&told.1.record) => (Because::Slime, told),
        _ => return None,
    };
    let bees = match because {
        Because::Disease => None,
        Because::Dead => Some(0),
        Because::Slime => whole(&told.record, "frames_of_bees", false),
    };
    let combs = bees.and_then(|bees| Some(comb_at(newest, hive, now, since)?.saturating_sub(bees)));
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
    // Where it was seen, wherever the hive stands by now: the larvae went into that ground.
    let there = told.yard.as_ref().unwrap_or(&now.yard);
    let ground = standing.records.values().any(|work| {
        let named = &work.record.hives;
        work.record.blank == Blank::Ground
            && work.yard.as_ref() == Some(there)
            && (since..=today).contains(&work.day)
            && (named.is_empty() || named.contains(hive))
    });
    let mut tests = Vec::new();
    if because == Because::Disease {
        for (day, now) in newest.each(hive, Blank::Test).take_while(|(day, _)| *day >= since) {
            let text = |name| now.record.text(name).unwrap_or_default().to_owned();
            tests.push((day, text("for"), text("result")));
        }
    }
    let urgent = Urgent { because, since, combs, fates, ground, tests, in_care: now.alive() };
    let old = combs.is_none() && today.days_since(since) > UNCOUNTED_DAYS;
    let done = because == Because::Dead && (old || urgent.open() == Some(0));
    (!done).then_some(urgent)
}

/// Frames of comb in `hive` in the evening of `day`, by what was written down; none where nobody counted them.
pub fn comb_left(standing: &Standing, hive: &ThingId, day: Day) -> Option<u32> {
    comb_at(&Newest::of_one(standing, hive, &BLANKS, day), hive, standing.hives.get(hive)?, day.plus(1))
}

/// Combs in `hive` at what was found on `day`: by the newest look until then that counted them, less those that were taken
/// out between, or else by the boxes of that day. A look from before a box was put on saw none of what stands in it: there
/// the boxes say how many, less what was taken out since, though never fewer than were counted.
fn comb_at(newest: &Newest, hive: &ThingId, now: &HiveNow, day: Day) -> Option<u32> {
    let until = newest.each(hive, Blank::Look).filter(|(on, _)| *on <= day);
    let mut looks = until.filter_map(|(on, now)| Some((on, whole(&now.record, "frames_of_comb", true)?)));
    let (mut counted, mut taken) = (None, 0);
    if let Some((on, frames)) = looks.next() {
        taken = taken_out(newest, hive, on, Some(day));
        counted = Some(frames.saturating_sub(taken));
        if !now.box_between(on, day) {
            return counted;
        }
    }
    let boxes = now.boxes_at(day, true);
    let facts = newest.first(hive, Blank::HiveFacts).and_then(|(_, record)| whole(record, "frames", true));
    facts.filter(|_| boxes > 0).map(|each| each.saturating_mul(boxes).saturating_sub(taken)).max(counted)
}

/// The newest look into `hive`. One in which nobody looked for larvae ends nothing.
fn last_look<'a>(newest: &Newest<'a>, hive: &ThingId) -> Told<'a> {
    newest.each(hive, Blank::Look).find(|(_, now)| tells(&now.record))
}

/// Its dead-out, if it was neither looked into since nor taken back into care.
fn died<'a>(newest: &Newest<'a>, hive: &ThingId, now: &HiveNow, look: Told) -> Told<'a> {
    let (day, told) = newest.each(hive, Blank::DeadOut).next()?;
    let stands = look.is_none_or(|(on, _)| on <= day) && now.back.is_none_or(|back| back < day);
    stands.then_some((day, told))
}

/// The record by which brood disease is suspected, if none that looked for it came after it. A test ends nothing: it may
/// be of something else, have found it, or be waited for.
fn suspected<'a>(newest: &Newest<'a>, hive: &ThingId) -> Told<'a> {
    let word = |now: &RecordNow| now.record.word("brood_disease").filter(|word| *word != "not_looked");
    let last = |blank| newest.each(hive, blank).find_map(|(day, now)| Some((day, word(now)?, now)));
    // Of two on one day the suspicion counts.
    let both = last(Blank::DeadOut).into_iter().chain(last(Blank::Look));
    let (day, said, told) = both.max_by_key(|(day, said, _)| (*day, *said == "suspected"))?;
    (said == "suspected").then_some((day, told))
}

/// A look that tells whether larvae are there.
pub(super) fn tells(record: &Record) -> bool {
    record.looked_for_larvae() || record.blank == Blank::Look && slimed(record)
}

/// Slime, larvae outside, or many of them.
fn slimed(record: &Record) -> bool {
    record.word("larvae") == Some("many") || told(record).iter().any(|seen| seen.outside())
}
