//! What stands in the fields of the Beetle, as values to work with.

use crate::almanac::climate::{Climate, DAYS, KNOWN};
use crate::almanac::day::Day;
use crate::almanac::generations::{self, Season};
use crate::almanac::sighting::{Seen, Sighting};
use crate::almanac::soil::{Shade, Soil, SoilKind};
use crate::almanac::stage::{COMB, Dry, Strength, Walk, Weather};
use crate::almanac::typed::{self, DayTypedError, TypedError};
use crate::almanac::warmth::{Span, Swing, Warmth};
use crate::app::bench::draft::BenchDraft;
use crate::app::bench::read;
use crate::book::ground::Ground;

/// What may be found, with the code of its key.
pub const SEEN: [(&str, Seen); 5] = [
    ("adults", Seen::AdultsOnly),
    ("tiny", Seen::TinyLarvae),
    ("full_grown", Seen::FullGrown),
    ("leaving", Seen::Leaving),
    ("in_soil", Seen::InSoil),
];

/// How much sun the ground gets, with the code of its key.
pub const SHADES: [(&str, Shade); 3] =
    [("full_sun", Shade::Sun), ("part_shade", Shade::Part), ("shade", Shade::Shade)];

/// Most degrees by which a climate is made warmer or cooler.
pub const MOST_SHIFT: i64 = 10;

/// A day that has come or is planned.
///
/// # Errors
/// As [`typed::day_planned`].
pub fn any_day(text: &str, today: Day) -> Result<Day, DayTypedError> {
    typed::day_done(text, today).or_else(|_| typed::day_planned(text, today))
}

/// A find and all that its dates go by.
#[derive(Clone, Debug, PartialEq)]
pub struct Find {
    /// What and when.
    pub sighting: Sighting,
    /// The year it runs off in.
    pub weather: Weather,
    /// Of the hive.
    pub strength: Strength,
    /// When the ground is dry.
    pub dry: Vec<Dry>,
    /// So warm that few live through it.
    pub hot: bool,
    /// The soil of the yard it is in.
    pub soil: Option<Soil>,
}

impl Find {
    /// Where its stages run off.
    pub fn walk(&self) -> Walk<'_> {
        Walk { weather: &self.weather, strength: self.strength, dry: &self.dry }
    }
}

/// Above this, in °C, most eggs die (Meikle & Patt 2011); in soil of 35 °C most died too.
const HOT_COMB: f64 = 37.0;
const HOT_SOIL: f64 = 35.0;

/// The find in the fields; `ground` is that of the yard that is chosen there, if one is.
///
/// # Errors
/// The first field that cannot be read. A warmest below the coolest is [`TypedError::TooFew`].
pub fn find(draft: &BenchDraft, ground: Option<&Ground>, today: Day) -> Result<Find, TypedError> {
    let seen = SEEN.iter().find(|(code, _)| *code == draft.dates_seen());
    let seen = seen.map_or(Seen::FullGrown, |(_, seen)| *seen);
    let text = draft.dates_on();
    let day = if text.trim().is_empty() { Ok(today) } else { typed::day_done(text, today) };
    let day = day.map_err(|_| TypedError::Empty)?;
    let (weather, strength, mut dry) = if let Some(ground) = ground {
        let strength = match draft.dates_bees() {
            "none" => Strength::Empty,
            "weak" => Strength::Cover(COMB),
            _ => Strength::Strong,
        };
        (ground.weather(today), strength, ground.dry.clone())
    } else {
        let low = (draft.dates_soil_low(), draft.dates_soil_low_unit());
        let soil = span(low, (draft.dates_soil_high(), draft.dates_soil_high_unit()))?;
        let low = (draft.dates_hive_low(), draft.dates_hive_low_unit());
        let comb = span(low, (draft.dates_hive_high(), draft.dates_hive_high_unit()))?;
        let weather = Weather::of_days(vec![comb; DAYS], vec![soil; DAYS]);
        (weather, Strength::Known(comb), Vec::new())
    };
    // What is chosen here stands in the place of what the records say; "moist" of a yard is as they say.
    match draft.dates_ground() {
        "dry" => dry = vec![Dry { from: Day::FIRST, until: None }],
        "rain" => {
            let rain = any_day(draft.dates_rain(), today).map_err(|_| TypedError::Empty)?;
            dry = vec![Dry { from: Day::FIRST, until: Some(rain) }];
        }
        _ => {}
    }
    let place = crate::almanac::climate::place(day);
    let comb = strength.span(weather.air(place)).likely.mean().celsius();
    let hot = comb > HOT_COMB || weather.soil(place).likely.mean().celsius() >= HOT_SOIL;
    let soil = ground.map(|ground| ground.soil(today));
    Ok(Find { sighting: Sighting { seen, day, ended: None }, weather, strength, dry, hot, soil })
}

/// Two temperatures that stay so day and night, and the middle of them.
fn span(low: (&str, &str), high: (&str, &str)) -> Result<Span, TypedError> {
    let low = read::warmth(low.0, low.1)?;
    let high = read::warmth(high.0, high.1)?;
    if high < low {
        return Err(TypedError::TooFew { least: crate::almanac::quantity::Decimal::ZERO });
    }
    let even =
        |celsius: f64| Warmth::from_celsius(celsius).map(Swing::flat).map_err(|_| TypedError::NotANumber);
    Ok(Span { cool: even(low)?, likely: even(f64::midpoint(low, high))?, warm: even(high)? })
}

/// A year in a climate.
#[derive(Clone, Debug, PartialEq)]
pub struct Year {
    /// The climate as it is reckoned with.
    pub climate: Climate,
    /// The soil in it.
    pub soil: Soil,
    /// What comes of it.
    pub season: Season,
    /// Eggs that are laid today: the generations that still come out this year.
    pub left: Season,
}

/// The year in the fields; `ground` is that of the yard that is chosen there, if one is.
///
/// # Errors
/// The first field that cannot be read.
pub fn year(draft: &BenchDraft, ground: Option<&Ground>, today: Day) -> Result<Year, TypedError> {
    let shift = typed::decimal(draft.season_shift())?;
    if shift.millionths().abs() > MOST_SHIFT * 1_000_000 {
        return Err(TypedError::TooMany { most: crate::almanac::quantity::Decimal::whole(10) });
    }
    let known = || draft.season_climate().parse::<usize>().ok().and_then(|at| KNOWN.get(at));
    let climate = match ground {
        Some(ground) => ground.climate,
        None => known().unwrap_or(&KNOWN[0]).climate(),
    };
    let climate = climate.warmer(shift.as_f64());
    let shade = SHADES.iter().find(|(code, _)| *code == draft.season_shade()).map(|(_, shade)| *shade);
    let shade = shade.or(ground.map(|ground| ground.shade)).unwrap_or_default();
    let kind = ground.map_or(SoilKind::Unknown, |ground| ground.kind);
    let mut soil = Soil::of(&climate, kind, shade);
    if let Some(ground) = ground {
        // What a probe adds was measured under the yard's own shade and in its own climate.
        soil = soil.with_offset_of(&ground.soil(today));
    }
    let mut dry = ground.map(|ground| ground.dry.clone()).unwrap_or_default();
    let text = draft.season_dry();
    if !text.trim().is_empty() {
        let until = any_day(text, today).map_err(|_| TypedError::Empty)?;
        dry = vec![Dry { from: Day::FIRST, until: Some(until) }];
    }
    let weather = Weather::of(&climate, &soil);
    let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &dry };
    let season = generations::season(&walk, today);
    let left = generations::left(&walk, today);
    Ok(Year { climate, soil, season, left })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::stage::Why;

    fn day(text: &str) -> Day {
        Day::parse(text).unwrap()
    }

    fn adults(draft: &BenchDraft) -> [Result<Day, Why>; 3] {
        let find = find(draft, None, day("2026-07-10")).unwrap();
        find.sighting.dates(&find.walk()).adults.map(|outcome| outcome.map(|when| when.day))
    }

    /// The keeper's own example: full-grown larvae on 10 July, soil 24–28 °C.
    #[test]
    fn larvae_on_10_july_in_soil_of_24_to_28_degrees() {
        let [earliest, likely, latest] = adults(&BenchDraft::default());
        assert_eq!(earliest, Ok(day("2026-07-26")));
        assert_eq!(likely, Ok(day("2026-08-01")));
        assert_eq!(latest, Ok(day("2026-08-08")));
    }

    #[test]
    fn the_ground_is_changed_to_dry_and_back_after_rain() {
        let moist = BenchDraft::default();
        assert_eq!(adults(&moist.clone().with("dates_ground", "dry")), [Err(Why::DrySoil); 3]);
        let rain = moist.clone().with("dates_ground", "rain").with("dates_rain", "2026-08-01");
        let [after, ..] = adults(&rain);
        let [before, ..] = adults(&moist);
        assert!(after.unwrap() > before.unwrap());
        let none = moist.with("dates_ground", "rain");
        assert!(find(&none, None, day("2026-07-10")).is_err(), "a rain without a day is not read");
    }

    #[test]
    fn fahrenheit_beside_the_field_is_the_same_find() {
        let draft = BenchDraft::default()
            .with("dates_soil_low", "75.2")
            .with("dates_soil_low_unit", "F")
            .with("dates_soil_high", "82.4 °F");
        assert_eq!(adults(&draft), adults(&BenchDraft::default()));
    }

    #[test]
    fn a_warmest_below_the_coolest_is_said() {
        let draft = BenchDraft::default().with("dates_soil_high", "20");
        assert!(find(&draft, None, day("2026-07-10")).is_err());
    }

    #[test]
    fn ground_too_cold_has_a_reason_and_no_date() {
        let draft = BenchDraft::default().with("dates_soil_low", "4").with("dates_soil_high", "6");
        assert_eq!(adults(&draft), [Err(Why::TooCold); 3]);
    }

    #[test]
    fn a_cold_coast_has_no_generation_and_a_warm_one_has_many() {
        let year = |climate: &str| {
            year(&BenchDraft::default().with("season_climate", climate), None, day("2026-06-01"))
        };
        assert_eq!(year("2").unwrap().season.count, [0; 3], "Sand Point");
        assert!(year("1").unwrap().season.count[0] > year("0").unwrap().season.count[0], "Miami");
        assert!(
            super::year(&BenchDraft::default().with("season_shift", "40"), None, day("2026-06-01")).is_err()
        );
    }
}
