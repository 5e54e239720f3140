//! Whole public-domain weather years, marched hour by hour in numpy (`tests/figures/weather_years.py`) and here from each
//! day's lowest and highest.

use super::{rows, swing};
use beetle_almanac::almanac::climate::KNOWN;
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::soil::{Shade, Soil, SoilKind};
use beetle_almanac::almanac::stage::{Edge, Held, Stage, Strength, Walk, Weather, day_mean};
use beetle_almanac::almanac::warmth::{Span, Swing};
use serde_json::Value;

/// First day, and of each edge the day numbers at which its stages end.
type Marches = Vec<(i32, Vec<Vec<Option<f64>>>)>;

struct Year {
    name: String,
    months: [Vec<f64>; 2],
    sums: Vec<f64>,
    air: Vec<Swing>,
    soil: Vec<Swing>,
    /// In air, and in soil.
    marches: [Marches; 2],
}

fn years() -> Vec<Year> {
    let mut years: Vec<Year> = Vec::new();
    for row in rows::<Vec<Value>>(include_str!("../figures/weather_years.json")) {
        let number = |at: usize| row[at].as_f64().expect("a number");
        let numbers = |at: usize| serde_json::from_value::<Vec<f64>>(row[at].clone()).expect("numbers");
        let kind = row[1].as_str().expect("a kind of row");
        if kind == "months" {
            years.push(Year {
                name: row[0].as_str().expect("a name").to_owned(),
                months: [numbers(2), numbers(3)],
                sums: numbers(4),
                air: Vec::new(),
                soil: Vec::new(),
                marches: [Vec::new(), Vec::new()],
            });
            continue;
        }
        let year = years.last_mut().expect("a place");
        if kind == "day" {
            year.air.push(swing(number(2), number(3)));
            year.soil.push(swing(number(4), number(5)));
        } else {
            let first = i32::try_from(row[2].as_i64().expect("a day")).expect("a day of the year");
            let ends = serde_json::from_value(row[3].clone()).expect("three courses");
            year.marches[usize::from(kind == "soil")].push((first, ends));
        }
    }
    assert!(years.len() == 3 && years.iter().all(|year| year.air.len() == 365 && year.marches[1].len() > 60));
    years
}

/// 2001 is no leap year: day numbers of the years after it are those of the figures.
fn new_year() -> f64 {
    f64::from(Day::from_ymd(2001, 1, 1).expect("a day").number())
}

#[test]
fn known_climates_are_the_months_of_their_years() {
    let years = years();
    assert_eq!(years.len(), KNOWN.len());
    for (known, year) in KNOWN.iter().zip(&years) {
        assert_eq!(known.name, year.name);
        assert_eq!([known.highs.to_vec(), known.lows.to_vec()], year.months);
    }
}

#[test]
fn degree_days_of_a_year_are_those_of_its_hours_within_three_in_a_hundred() {
    for year in years() {
        for (base, hourly) in [10.0, 12.0, 13.5].iter().zip(&year.sums) {
            let above = |day: &Swing| day_mean(*day, |celsius| [(celsius - base).max(0.0), 0.0, 0.0])[0];
            let sum: f64 = year.air.iter().map(above).sum();
            let off = sum / hourly - 1.0;
            println!(
                "{}: {sum:.1} °C·d above {base}, by the hour {hourly} ({:+.1} %)",
                year.name,
                off * 100.0
            );
            // In the cold place next to nothing lies above the base: there it is told, not held.
            assert!(off.abs() < 0.03 || year.name == "Sand Point, Alaska", "{} {base}", year.name);
        }
    }
}

/// How far the ends of marches lie from those by the hour, in days: first day, edge, end by the hour, how much later.
type Offs = Vec<(i32, Edge, f64, f64)>;

/// The days on which adults come, of marches that end by the hour.
fn offs(walk: &Walk, stages: &[Stage], marches: &Marches) -> Offs {
    let mut offs = Vec::new();
    for (first, ends) in marches {
        for (edge, course) in Edge::ALL.iter().zip(ends) {
            let mut time = new_year() + f64::from(*first);
            for (stage, hourly) in stages.iter().zip(course) {
                let Some(hourly) = hourly else { break };
                let Ok(end) = walk.end_of(*stage, *edge, time, Held::default(), None) else { break };
                time = end.time;
                if *stage == Stage::Soil {
                    offs.push((*first, *edge, *hourly, time - new_year() - hourly));
                }
            }
        }
    }
    offs
}

/// Prints them and gives the worst.
fn tell(what: &str, offs: &Offs) -> f64 {
    let over = offs.iter().filter(|(.., off)| off.abs() > 1.0).count();
    let worst = offs.iter().max_by(|a, b| a.3.abs().total_cmp(&b.3.abs()));
    println!("{what}: {} ends, {over} off by more than a day, at the most {worst:?}", offs.len());
    worst.map_or(0.0, |worst| worst.3.abs())
}

/// A season of the keeper's: what begins from March to August and ends before the first of November.
fn in_season((first, _, end, _): &(i32, Edge, f64, f64)) -> bool {
    (60..244).contains(first) && *end < 305.0
}

/// In soil: from the lowest and highest of each day of the soil, the days on which adults come are those by the hour.
#[test]
fn adults_come_out_of_soil_on_the_days_of_a_march_hour_by_hour() {
    for year in years() {
        let days = |swings: &[Swing]| swings.iter().map(|day| Span::around(*day, 0.0)).collect();
        let weather = Weather::of_days(days(&year.air), days(&year.soil));
        // An empty box has the temperature of the air.
        let walk = Walk { weather: &weather, strength: Strength::Empty, dry: &[] };
        let all = offs(&walk, &[Stage::Soil], &year.marches[1]);
        let (season, rest): (Offs, Offs) = all.into_iter().partition(in_season);
        let worst = tell(&format!("{}, soil, in season", year.name), &season);
        tell(&format!("{}, soil, the rest", year.name), &rest);
        assert!(worst <= 1.0, "{}", year.name);
        assert_eq!(season.is_empty(), year.name == "Sand Point, Alaska");
    }
}

/// Whole lives in the air itself, as in an empty box: there a sine from the extremes of each day leans warm, as its
/// degree-days do, and nothing evens that out. What comes in season is held to a twentieth of the life.
#[test]
fn adults_of_lives_in_the_air_itself_come_within_a_twentieth_of_a_march_hour_by_hour() {
    for year in years() {
        let days: Vec<Span> = year.air.iter().map(|day| Span::around(*day, 0.0)).collect();
        let weather = Weather::of_days(days.clone(), days);
        let walk = Walk { weather: &weather, strength: Strength::Empty, dry: &[] };
        let all = offs(&walk, &[Stage::Egg, Stage::Larva, Stage::Soil], &year.marches[0]);
        // Before October: then every day is cooler than the one before, and what is left of a stage takes weeks.
        let (season, rest): (Offs, Offs) = all.into_iter().partition(|off| in_season(off) && off.2 < 274.0);
        tell(&format!("{}, air, in season", year.name), &season);
        tell(&format!("{}, air, the rest", year.name), &rest);
        let share = season
            .iter()
            .map(|(first, _, end, off)| off.abs() / (end - f64::from(*first)))
            .fold(0.0, f64::max);
        println!("{}, air, in season: {:.1} % of a life at the most", year.name, share * 100.0);
        assert!(share < 0.05, "{}: {share}", year.name);
    }
}

/// What the keeper gets from twelve monthly means, beside what the hours of that year's soil would have told: likely by
/// the hour must lie between earliest and latest.
#[test]
fn twelve_monthly_means_give_a_span_that_holds_the_year_by_the_hour() {
    for (known, year) in KNOWN.iter().zip(years()) {
        let climate = known.climate();
        let weather = Weather::of(&climate, &Soil::of(&climate, SoilKind::Unknown, Shade::Part));
        let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
        let likely = offs(&walk, &[Stage::Soil], &year.marches[1]);
        let likely: Offs = likely.into_iter().filter(|off| in_season(off) && off.1 == Edge::Likely).collect();
        tell(&format!("{}, likely from monthly means", year.name), &likely);
        for (first, _, hourly, _) in likely {
            let [earliest, latest] = [Edge::Earliest, Edge::Latest].map(|edge| {
                let begun = new_year() + f64::from(first);
                walk.end_of(Stage::Soil, edge, begun, Held::default(), None).map_or(1e9, |end| end.time)
                    - new_year()
            });
            assert!(
                earliest < hourly && hourly < latest,
                "{} {first}: {earliest} {hourly} {latest}",
                year.name
            );
        }
    }
}
