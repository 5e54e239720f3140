//! Finds: beetles and larvae as the looks into hives told of them, and what ended them.
//!
//! A find is the ground of a date. What comes of it is worked out anew each time (`almanac/sighting`) and never stored.

use super::entry::Ending;
use super::ground::Ground;
use super::id::ThingId;
use super::record::{Answer, Blank, Record};
use super::standing::{HiveNow, Standing};
use crate::almanac::day::Day;
use crate::almanac::order::sort_by;
use crate::almanac::sighting::{Dates, Seen, Sighting};
use crate::almanac::stack::HiveSize;
use crate::almanac::stage::{Edge, Strength, Walk, Weather, Why};

/// What was found in or at a hive.
#[derive(Clone, Debug, PartialEq)]
pub struct Find {
    /// Where.
    pub hive: ThingId,
    /// What, when, and the day after which no beetle goes on in the comb: it was looked at and held no larvae, comb with
    /// larvae was taken care of, or the hive was sold.
    pub sighting: Sighting,
    /// The day since which it is in that hive: it came with comb of another one, or was seen there.
    pub since: Day,
}

/// Finds in a hive whose beetles belong together, and what may come of them.
#[derive(Clone, Debug, PartialEq)]
pub struct UnderWay {
    /// Which hive.
    pub hive: ThingId,
    /// By day.
    pub finds: Vec<Sighting>,
    /// From the first of the earlier to the last of the later.
    pub dates: Dates,
}

impl UnderWay {
    /// Nobody saw larvae: whether anything comes of it, the bees decide.
    pub fn adults_only(&self) -> bool {
        self.finds.iter().all(|find| find.seen == Seen::AdultsOnly)
    }

    /// The day of the first find, by which what follows from it is known.
    pub fn since(&self) -> Option<Day> {
        self.finds.first().map(|find| find.day)
    }

    /// The first day on which larvae may leave the hive: look again before it.
    pub fn leaving(&self) -> Option<Day> {
        Edge::Earliest.of(self.dates.leaving?).ok().map(|when| when.day)
    }

    /// The first day on which young adults may come out of the ground.
    pub fn young(&self) -> Option<Day> {
        Edge::Earliest.of(self.dates.adults).ok().map(|when| when.day)
    }

    /// Larvae that were seen may still be in the comb.
    pub fn in_comb(&self) -> bool {
        let in_comb = |find: &Sighting| !matches!(find.seen, Seen::AdultsOnly | Seen::InSoil);
        self.finds.iter().any(|find| find.ended.is_none() && in_comb(find))
    }

    /// Whether the last young adult may still be to come on `today`, or to lay its first eggs.
    fn open(&self, today: Day) -> bool {
        match Edge::Latest.of(self.dates.eggs) {
            Ok(when) => when.day >= today,
            Err(Why::HiveEnded) => false,
            Err(_) => true,
        }
    }
}

/// Frames of a box nobody counted (common practice, no source).
const USUAL_FRAMES: f64 = 10.0;

/// Days after which a find tells nothing any more: the coolest soil that lets a beetle through at all takes three months,
/// and a winter may lie between.
const REMEMBERED_DAYS: i32 = 400;

/// Days for which a count of the bees on the combs tells how warm these are. Chosen here, no source.
const STRENGTH_LASTS: i32 = 60;

/// Days for which larvae may lie in comb that is given to another hive: they are full grown before. Chosen here; egg and
/// larva of a warm nest take twelve at the slowest.
const GIVEN_DAYS: i32 = 30;

/// What the records of the last year tell of the hives.
#[derive(Default)]
struct Told {
    finds: Vec<Find>,
    /// From a day on nothing goes on in the comb of a hive of what came into it up to another.
    ends: Vec<(ThingId, Day, Day)>,
    /// Hives that were looked into.
    looks: Vec<(ThingId, Day)>,
    /// From which hive comb went to which.
    splits: Vec<(ThingId, ThingId, Day)>,
}

impl Told {
    /// Of the hives that stand in `yard`, or stood there when something was found.
    ///
    /// A hive that was moved since left larvae in the ground where it stood, and took along what was in the comb: its finds
    /// count in both yards, those of larvae on the way out only where they were seen.
    fn of(standing: &Standing, yard: &ThingId, today: Day) -> Told {
        let mut all = Told::default();
        for now in standing.records.values() {
            let known = matches!(now.record.blank, Blank::Look | Blank::DeadOut | Blank::Comb | Blank::Split);
            if !known || now.day > today || now.day.plus(REMEMBERED_DAYS) < today {
                continue;
            }
            let [named] = &*now.record.hives else { continue };
            let hive = standing.kept(named);
            let here = standing.hives.get(hive).is_some_and(|hive| hive.yard == *yard);
            let there = now.yard.as_ref() == Some(yard);
            if !here && !there {
                continue;
            }
            for seen in told(&now.record) {
                let carried = !matches!(seen, Seen::Leaving | Seen::InSoil);
                if there || carried {
                    let sighting = Sighting { seen, day: now.day, ended: None };
                    all.finds.push(Find { hive: hive.clone(), sighting, since: now.day });
                }
            }
            if ends(&now.record) {
                // What a look of the same day saw is in the comb that was taken care of after it; another look saw its own.
                let up_to = if now.record.blank == Blank::Comb { now.day } else { now.day.plus(-1) };
                all.ends.push((hive.clone(), now.day, up_to));
            }
            match (now.record.blank, now.record.named_hive()) {
                (Blank::Look, _) => all.looks.push((hive.clone(), now.day)),
                (Blank::Split, Some(into)) => {
                    all.splits.push((hive.clone(), standing.kept(into).clone(), now.day));
                }
                _ => {}
            }
        }
        for (id, hive) in &standing.hives {
            // A hive that was sold is looked after by somebody else. In one that died, or was left by its bees, larvae go on.
            if let Some((Ending::Sold, on)) = hive.ended.as_ref().filter(|_| hive.yard == *yard) {
                all.ends.push((id.clone(), *on, on.plus(-1)));
            }
        }
        all
    }

    /// The first day on which nothing goes on any more of what is in `hive` since a day.
    fn ended(&self, hive: &ThingId, since: Day) -> Option<Day> {
        let own = self.ends.iter().filter(|(of, _, up_to)| of == hive && since <= *up_to);
        own.map(|(_, on, _)| *on).min()
    }

    /// Larvae that may have gone along with comb that was given to another hive, and on from there. What had ended before
    /// went nowhere.
    fn carry(&mut self) {
        for (from, into, on) in std::mem::take(&mut self.splits) {
            for at in 0..self.finds.len() {
                let Find { hive, sighting, since } = &self.finds[at];
                let young = (0..=GIVEN_DAYS).contains(&on.days_since(sighting.day));
                let larvae = matches!(sighting.seen, Seen::TinyLarvae | Seen::FullGrown);
                let there = *since <= on && self.ended(hive, *since).is_none_or(|ended| ended >= on);
                if *hive == from && larvae && young && there {
                    self.finds.push(Find { hive: into.clone(), sighting: *sighting, since: on });
                }
            }
        }
    }
}

/// Finds in the hives of `yard` that may still matter on `today`, by day.
///
/// A look that tells of larvae and of adults is a find of the larvae. Adults alone are a find as long as nobody has looked
/// again.
pub fn finds(standing: &Standing, yard: &ThingId, today: Day) -> Vec<Find> {
    let mut all = Told::of(standing, yard, today);
    all.carry();
    let mut finds = std::mem::take(&mut all.finds);
    for Find { hive, sighting, since } in &mut finds {
        sighting.ended = all.ended(hive, *since);
    }
    let looks = all.looks;
    // A later look stands in the place of adults that were seen before it.
    let later = |find: &Find| looks.iter().any(|(hive, on)| *hive == find.hive && *on > find.sighting.day);
    finds.retain(|find| {
        find.sighting.seen != Seen::AdultsOnly || find.sighting.ended.is_none() && !later(find)
    });
    sort_by(&mut finds, |one, two| one.sighting.day.cmp(&two.sighting.day));
    finds
}

/// Dates that were worked out: finds of one day in hives alike have the same.
type Known = Vec<(Sighting, Strength, Dates)>;

/// What is under way in the hives of `yard` on `today`, of those that stand there in the order in which they are walked,
/// then of those that stood there; of one alone where `only` names it.
///
/// Finds of a hive whose young adults may come at the same time belong together; a later brood stands by itself.
pub fn under_way(
    standing: &Standing,
    yard: &ThingId,
    today: Day,
    ground: &Ground,
    weather: &Weather,
    only: Option<&ThingId>,
) -> Vec<UnderWay> {
    let finds = finds(standing, yard, today);
    let mut ids: Vec<&ThingId> = standing.hives_of(yard, false).map(|(id, _)| id).collect();
    for find in &finds {
        if !ids.contains(&&find.hive) {
            ids.push(&find.hive);
        }
    }
    let (mut all, mut known) = (Vec::new(), Known::new());
    for id in ids.into_iter().filter(|id| only.is_none_or(|only| only == *id)) {
        let mut own = finds.iter().filter(|find| find.hive == *id).peekable();
        let (Some(_), Some(hive)) = (own.peek(), standing.hives.get(id)) else { continue };
        let walk = Walk { weather, strength: strength(standing, id, hive, today), dry: &ground.dry };
        let mut groups: Vec<UnderWay> = Vec::new();
        for Find { sighting, .. } in own {
            let dates = dates(sighting, &walk, &mut known);
            // Larvae in the ground are another brood than those in the comb.
            let in_soil = sighting.seen == Seen::InSoil;
            let alike =
                |group: &UnderWay| group.finds.iter().all(|find| (find.seen == Seen::InSoil) == in_soil);
            match groups.iter_mut().rev().find(|group| alike(group) && together(&group.dates, &dates)) {
                Some(last) => {
                    last.dates = last.dates.or(&dates);
                    last.finds.push(*sighting);
                }
                None => groups.push(UnderWay { hive: id.clone(), finds: vec![*sighting], dates }),
            }
        }
        groups.retain(|group| group.open(today));
        all.append(&mut groups);
    }
    all
}

fn dates(sighting: &Sighting, walk: &Walk, known: &mut Known) -> Dates {
    let same =
        |(of, strength, _): &&(Sighting, Strength, Dates)| of == sighting && *strength == walk.strength;
    if let Some((_, _, dates)) = known.iter().find(same) {
        return *dates;
    }
    let dates = sighting.dates(walk);
    known.push((*sighting, walk.strength, dates));
    dates
}

/// The same in the year that the records of the yard tell of; none as long as nobody wrote down its temperatures.
pub fn of_yard(standing: &Standing, yard: &ThingId, today: Day) -> Option<Vec<UnderWay>> {
    let ground = Ground::of(standing, yard, today)?;
    Some(under_way(standing, yard, today, &ground, &ground.weather(today), None))
}

/// Whether young adults of both may come on one day.
fn together(one: &Dates, two: &Dates) -> bool {
    match (Edge::Latest.of(one.adults), Edge::Earliest.of(two.adults)) {
        (Ok(last), Ok(first)) => first.day <= last.day,
        _ => true,
    }
}

/// How many bees keep the comb of a hive warm on `today`, by the last look that counted them; none in one whose care has
/// ended.
pub fn strength(standing: &Standing, id: &ThingId, hive: &HiveNow, today: Day) -> Strength {
    if hive.ended.is_some() {
        return Strength::Empty;
    }
    let frames = |record: &Record, name: &str| record.number(name).map(|(frames, _)| frames);
    let mut bees: Option<(Day, f64)> = None;
    for now in standing.records.values() {
        let age = today.days_since(now.day);
        let named = || now.record.hives.iter().any(|named| standing.kept(named) == id);
        let newer = bees.is_none_or(|(day, _)| day <= now.day);
        let fits = now.record.blank == Blank::Look && (0..=STRENGTH_LASTS).contains(&age) && newer;
        if fits && named() {
            bees = frames(&now.record, "frames_of_bees").map(|frames| (now.day, frames)).or(bees);
        }
    }
    let Some((_, bees)) = bees else { return Strength::Unknown };
    let facts = standing.facts(Blank::HiveFacts, None, Some(id));
    let comb = frames(&facts, "frames").unwrap_or(match hive.size {
        HiveSize::Nuc => USUAL_FRAMES / 2.0,
        HiveSize::Full => USUAL_FRAMES,
    });
    let boxes = u32::try_from(hive.boxes.len()).unwrap_or(u32::MAX);
    Strength::of_frames(bees, comb * f64::from(boxes))
}

/// What a record tells of beetles in the comb, on the way out, and in the ground.
pub fn told(record: &Record) -> Vec<Seen> {
    let mut seen = Vec::new();
    let slime = record.word("slime") == Some("yes");
    if slime || record.chosen("entrance", "larvae_leaving") || record.chosen("entrance", "slime") {
        seen.push(Seen::Leaving);
    }
    if record.word("soil") == Some("larvae") {
        seen.push(Seen::InSoil);
    }
    if matches!(record.word("larvae"), Some("few" | "many")) {
        let size = record.word("larvae_size");
        // Of what size nobody wrote down, they may be of any.
        if size != Some("full_grown") {
            seen.push(Seen::TinyLarvae);
        }
        if size != Some("tiny") {
            seen.push(Seen::FullGrown);
        }
    }
    let adults = matches!(record.get("adults"), Some(Answer::Count(count)) if count.low() > 0);
    if seen.is_empty() && adults {
        seen.push(Seen::AdultsOnly);
    }
    seen
}

/// Whether nothing goes on in the comb after this record: a look that finds none, or comb with larvae that was frozen,
/// melted or burned. A split ends nothing, since the larvae stay or go along; a dead colony leaves its comb to them.
fn ends(record: &Record) -> bool {
    let (to, why) = (record.word("to"), record.word("why"));
    match record.blank {
        Blank::Look => {
            record.word("larvae") == Some("none") && told(record).iter().all(|seen| *seen == Seen::AdultsOnly)
        }
        Blank::Comb => {
            matches!(to, Some("freezer" | "melted" | "burned")) && matches!(why, Some("larvae" | "slime"))
        }
        _ => false,
    }
}
