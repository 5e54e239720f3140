//! Finds: beetles and larvae as the looks into hives told of them, and what ended them.
//!
//! A find is the ground of a date. What comes of it is worked out anew each time (`almanac/sighting`) and never stored.

use super::ground::Ground;
use super::id::ThingId;
use super::record::{Answer, Ask, Blank, Record};
use super::standing::{HiveNow, Standing};
use crate::almanac::day::Day;
use crate::almanac::sighting::{Dates, Seen, Sighting};
use crate::almanac::stack::HiveSize;
use crate::almanac::stage::{Edge, Strength, Walk, Weather, Why};

/// What was found in or at a hive.
#[derive(Clone, Debug, PartialEq)]
pub struct Find {
    /// Where.
    pub hive: ThingId,
    /// What, when, and the day after which no beetle goes on in the comb: it was looked at and held no larvae, the colony
    /// was divided, or it was dead and its comb taken care of.
    pub sighting: Sighting,
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

    /// Whether the last young adult may still be to come on `today`.
    fn open(&self, today: Day) -> bool {
        match Edge::Latest.of(self.dates.adults) {
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

/// Finds in the hives of `yard` that may still matter on `today`, by day.
///
/// A look that tells of larvae and of adults is a find of the larvae. Adults alone are a find as long as nobody has looked
/// again.
pub fn finds(standing: &Standing, yard: &ThingId, today: Day) -> Vec<Find> {
    let mut found: Vec<Find> = Vec::new();
    let mut ended: Vec<(ThingId, Day)> = Vec::new();
    for blank in [Blank::Look, Blank::DeadOut, Blank::Split] {
        for (_, now) in standing.records_of(blank) {
            let [hive] = &*now.record.hives else { continue };
            let hive = standing.kept(hive);
            let here = standing.hives.get(hive).is_some_and(|hive| hive.yard == *yard);
            if !here || now.day > today || now.day.plus(REMEMBERED_DAYS) < today {
                continue;
            }
            for seen in told(&now.record) {
                let sighting = Sighting { seen, day: now.day, ended: None };
                found.push(Find { hive: hive.clone(), sighting });
            }
            if ends(&now.record) {
                ended.push((hive.clone(), now.day));
            }
        }
    }
    for (id, hive) in &standing.hives {
        if let Some((_, on)) = hive.ended.as_ref().filter(|_| hive.yard == *yard) {
            ended.push((id.clone(), *on));
        }
    }
    for find in &mut found {
        for (hive, on) in &ended {
            if *hive == find.hive && *on > find.sighting.day {
                let until = find.sighting.ended.map_or(*on, |until| until.min(*on));
                find.sighting.ended = Some(until);
            }
        }
    }
    // A later look stands in the place of adults that were seen before it.
    let looked: Vec<(ThingId, Day)> =
        found.iter().map(|find| (find.hive.clone(), find.sighting.day)).collect();
    let later = |find: &Find| looked.iter().any(|(hive, day)| *hive == find.hive && *day > find.sighting.day);
    found.retain(|find| {
        find.sighting.seen != Seen::AdultsOnly || find.sighting.ended.is_none() && !later(find)
    });
    let mut by_day: Vec<Find> = Vec::with_capacity(found.len());
    for find in found {
        let at = by_day.iter().take_while(|other| other.sighting.day <= find.sighting.day).count();
        by_day.insert(at, find);
    }
    by_day
}

/// What is under way in the hives of `yard` on `today`, hive by hive in the order in which they are walked.
///
/// Finds of a hive whose young adults may come at the same time belong together; a later brood stands by itself.
pub fn under_way(
    standing: &Standing,
    yard: &ThingId,
    today: Day,
    ground: &Ground,
    weather: &Weather,
) -> Vec<UnderWay> {
    let finds = finds(standing, yard, today);
    let mut all = Vec::new();
    for (id, hive) in standing.hives_of(yard, false) {
        let mut own = finds.iter().filter(|find| find.hive == *id).peekable();
        if own.peek().is_none() {
            continue;
        }
        let walk = Walk { weather, strength: strength(standing, id, hive), dry: &ground.dry };
        let mut groups: Vec<UnderWay> = Vec::new();
        for Find { sighting, .. } in own {
            let dates = sighting.dates(&walk);
            match groups.last_mut().filter(|last| together(&last.dates, &dates)) {
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

/// The same in the year that the records of the yard tell of; none as long as nobody wrote down its temperatures.
pub fn of_yard(standing: &Standing, yard: &ThingId, today: Day) -> Option<Vec<UnderWay>> {
    let ground = Ground::of(standing, yard, today)?;
    Some(under_way(standing, yard, today, &ground, &ground.weather(today)))
}

/// Whether young adults of both may come on one day.
fn together(one: &Dates, two: &Dates) -> bool {
    match (Edge::Latest.of(one.adults), Edge::Earliest.of(two.adults)) {
        (Ok(last), Ok(first)) => first.day <= last.day,
        _ => true,
    }
}

/// How many bees keep the comb of a hive warm, by the last look that counted them.
pub fn strength(standing: &Standing, id: &ThingId, hive: &HiveNow) -> Strength {
    let frames = |record: &Record, name: &str| match record.get(name) {
        Some(Answer::Number(number, _)) => Some(number.as_f64()),
        _ => None,
    };
    let mut bees = None;
    for (_, now) in standing.records_of(Blank::Look) {
        if now.record.hives.iter().any(|named| standing.kept(named) == id) {
            bees = frames(&now.record, "frames_of_bees").or(bees);
        }
    }
    let facts = standing.facts(Blank::HiveFacts, None, Some(id));
    let comb = frames(&facts, "frames").unwrap_or(match hive.size {
        HiveSize::Nuc => USUAL_FRAMES / 2.0,
        HiveSize::Full => USUAL_FRAMES,
    });
    let boxes = u32::try_from(hive.boxes.len()).unwrap_or(u32::MAX);
    bees.map_or(Strength::Unknown, |bees| Strength::of_frames(bees, comb * f64::from(boxes)))
}

/// What a record tells of beetles in the comb, on the way out, and in the ground.
fn told(record: &Record) -> Vec<Seen> {
    let mut seen = Vec::new();
    let slime = record.word("slime") == Some("yes");
    if slime || chosen(record, "entrance", "larvae_leaving") || chosen(record, "entrance", "slime") {
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

/// Whether nothing goes on in the comb after this record.
fn ends(record: &Record) -> bool {
    match record.blank {
        Blank::Look => {
            record.word("larvae") == Some("none") && told(record).iter().all(|seen| *seen == Seen::AdultsOnly)
        }
        Blank::Split | Blank::DeadOut => true,
        _ => false,
    }
}

/// Whether `word` is among those chosen in the field `name`.
fn chosen(record: &Record, name: &str, word: &str) -> bool {
    let Some((field, Answer::Words(bits))) = record.filled().find(|(field, _)| field.name == name) else {
        return false;
    };
    let Ask::Words(words) = field.ask else { return false };
    words.iter().position(|known| *known == word).is_some_and(|at| bits >> at & 1 == 1)
}
