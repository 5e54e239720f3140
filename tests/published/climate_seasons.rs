//! Seasons and dates from twelve monthly means, worked out by arrays in numpy (`tests/figures/climate_seasons.py`): soil,
//! rates of all three edges, marches, sightings and generations together.

use super::{day, rows};
use beetle_almanac::almanac::climate::KNOWN;
use beetle_almanac::almanac::generations::season;
use beetle_almanac::almanac::sighting::{Seen, Sighting};
use beetle_almanac::almanac::soil::{Shade, Soil, SoilKind};
use beetle_almanac::almanac::stage::{Strength, Walk, Weather};
use serde_json::Value;

/// Sightings in the order of the figures.
const SEEN: [Seen; 5] = [Seen::AdultsOnly, Seen::TinyLarvae, Seen::FullGrown, Seen::Leaving, Seen::InSoil];

#[test]
fn seasons_and_dates_are_those_of_numpy() {
    let rows: Vec<Value> = rows(include_str!("../figures/climate_seasons.json"));
    // From 2025 on two years have 365 days each.
    let new_year = day("2025-01-01");
    let (mut seasons, mut dates) = (0, [0; 2]);
    for row in &rows {
        let known = KNOWN.iter().find(|known| row[0] == known.name).expect("a known climate");
        if row[1] == "season" {
            let climate = known.climate().warmer(row[2].as_f64().expect("kelvin"));
            let kelvin = row[3].as_f64().expect("kelvin");
            let shade =
                Shade::ALL.into_iter().find(|shade| (shade.kelvin() - kelvin).abs() < 1e-9).expect("a shade");
            let weather = Weather::of(&climate, &Soil::of(&climate, SoilKind::Unknown, shade));
            let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
            let count: [usize; 3] = serde_json::from_value(row[4].clone()).expect("three numbers");
            assert_eq!(season(&walk, day("2025-07-31")).count, count, "{row}");
            seasons += 1;
            continue;
        }
        let climate = known.climate();
        let weather = Weather::of(&climate, &Soil::of(&climate, SoilKind::Unknown, Shade::Part));
        let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
        let number = |at: usize| row[at].as_u64().expect("a number");
        let seen = SEEN[usize::try_from(number(2)).expect("a kind")];
        let start = new_year.plus(i32::try_from(number(3)).expect("a day"));
        let adults = Sighting { seen, day: start, ended: None }.dates(&walk).adults;
        for (found, end) in adults.iter().zip(row[4].as_array().expect("three days")) {
            let Some(end) = end.as_f64() else {
                assert!(found.is_err(), "{row}: {found:?}");
                dates[1] += 1;
                continue;
            };
            let found = found.unwrap_or_else(|why| panic!("{row}: {why:?}"));
            let off = found.time - f64::from(new_year.number()) - end;
            assert!(off.abs() < 0.01, "{row}: {off}");
            dates[0] += 1;
        }
    }
    println!("{seasons} seasons and {dates:?} dates and reasons are those of numpy");
    assert!(seasons == 63 && dates[0] > 1000 && dates[1] > 50);
}
