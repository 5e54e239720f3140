//! The ground of a yard, as the records tell of it: its climate, its soil, what a probe in it showed, and when it was dry.

use super::id::ThingId;
use super::record::{Answer, Ask, Blank, Record};
use super::standing::Standing;
use crate::almanac::climate::Climate;
use crate::almanac::day::Day;
use crate::almanac::quantity::Length;
use crate::almanac::soil::{Probe, Shade, Soil, SoilKind};
use crate::almanac::stage::{Dry, Weather};
use crate::almanac::warmth::Warmth;

/// What a yard's dates go by.
#[derive(Clone, Debug, PartialEq)]
pub struct Ground {
    /// Monthly highs and lows.
    pub climate: Climate,
    /// What the soil is.
    pub kind: SoilKind,
    /// How much sun it gets.
    pub shade: Shade,
    /// Readings of the keeper's probe, oldest first.
    pub probes: Vec<Probe>,
    /// When it was dry, oldest first.
    pub dry: Vec<Dry>,
}

/// Days for which ground that somebody found dry is taken as dry, unless somebody writes down otherwise. Chosen here, no
/// source: who does not look again for so long cannot say that it is dry.
const DRY_LASTS: i32 = 60;

/// Depth of a probe nobody noted, in millimetres: where most pupae lie (Pettis & Shimanuki 2000, second-hand).
const USUAL_DEPTH_MM: f64 = 100.0;

impl Ground {
    /// Of `yard`, from what was written down, of soil and rain up to `today`; none as long as nobody wrote down its
    /// temperatures.
    pub fn of(standing: &Standing, yard: &ThingId, today: Day) -> Option<Ground> {
        let climate = climate(&standing.facts(Blank::Climate, Some(yard), None))?;
        let mut ground = Ground {
            climate,
            kind: SoilKind::Unknown,
            shade: Shade::Part,
            probes: Vec::new(),
            dry: Vec::new(),
        };
        let mut told: Vec<(Day, bool)> = Vec::new();
        for blank in [Blank::Soil, Blank::Rain] {
            for (_, now) in standing.records_of(blank) {
                if now.yard.as_ref() != Some(yard) || now.day > today {
                    continue;
                }
                ground.probes.extend(probe(&now.record, now.day));
                let dry = match (blank, now.record.word("moisture")) {
                    (Blank::Rain, _) | (_, Some("moist" | "wet")) => false,
                    (_, Some("dry")) => true,
                    _ => continue,
                };
                let at = told.iter().take_while(|(since, _)| *since <= now.day).count();
                told.insert(at, (now.day, dry));
            }
        }
        for (at, (since, dry)) in told.iter().enumerate() {
            if !dry {
                continue;
            }
            let next = told.get(at + 1).map(|(next, _)| *next);
            let until = since.plus(DRY_LASTS);
            let until = next.filter(|next| *next < until).unwrap_or(until);
            match ground.dry.last_mut().filter(|last| last.until == Some(*since)) {
                Some(last) => last.until = Some(until),
                None => ground.dry.push(Dry { from: *since, until: Some(until) }),
            }
        }
        // Until then nobody can know of rain.
        if let Some(last) = ground.dry.last_mut().filter(|last| last.until > Some(today)) {
            last.until = None;
        }
        let facts = standing.facts(Blank::YardFacts, Some(yard), None);
        let dry = ground.dry.last().is_some_and(|last| last.until.is_none());
        ground.kind = match (facts.word("soil"), dry) {
            (Some("sand"), true) => SoilKind::DrySand,
            (Some("sand"), false) => SoilKind::WetSand,
            (Some("loam"), _) => SoilKind::MoistLoam,
            (Some("clay"), true) => SoilKind::DryClay,
            (Some("clay"), false) => SoilKind::MoistClay,
            _ => SoilKind::Unknown,
        };
        ground.shade = match facts.word("shade") {
            Some("full_sun") => Shade::Sun,
            Some("shade") => Shade::Shade,
            _ => Shade::Part,
        };
        Some(ground)
    }

    /// How warm the soil is, by the readings that count on `today`.
    pub fn soil(&self, today: Day) -> Soil {
        Soil::of(&self.climate, self.kind, self.shade).probed(&self.probes, today)
    }

    /// The yard's year.
    pub fn weather(&self, today: Day) -> Weather {
        Weather::of(&self.climate, &self.soil(today))
    }

    /// It is dry, and nobody wrote down rain since.
    pub fn dry_since(&self) -> Option<Day> {
        self.dry.last().filter(|last| last.until.is_none()).map(|last| last.from)
    }
}

/// The temperatures of a climate record; none while one is missing or a high lies below its low.
pub fn climate(record: &Record) -> Option<Climate> {
    let mut months = [[Warmth::default(); 12]; 2];
    for (list, head) in months.iter_mut().zip(["high_", "low_"]) {
        for (month, warmth) in (1_u32..).zip(list) {
            *warmth = record.warmth(&[head, &month.to_string()].concat())?;
        }
    }
    let [highs, lows] = months;
    Climate::new(highs, lows).ok()
}

fn probe(record: &Record, day: Day) -> Option<Probe> {
    let warmth = record.warmth("temperature")?;
    let millimetres = match record.filled().find(|(field, _)| field.name == "depth") {
        Some((field, Answer::Number(number, unit))) => {
            let Ask::Number { units, .. } = field.ask else { return None };
            let inch = units.get(usize::from(*unit)) == Some(&"in");
            number.as_f64() * if inch { 25.4 } else { 10.0 }
        }
        _ => USUAL_DEPTH_MM,
    };
    Some(Probe { day, depth: Length::from_millimetres(millimetres).ok()?, warmth })
}
