//! The seasons of a yard: over leap years, at the ends of the calendar, in the south, and where generations overlap.

use super::stages::{constant, day, swing, weather_of};
use beetle_almanac::almanac::climate::{Climate, KNOWN, place};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::generations::{Open, open, season};
use beetle_almanac::almanac::stage::{Edge, Strength, Walk, Weather};
use beetle_almanac::almanac::warmth::{Span, Warmth};

/// The same climate in the southern half of the world: its months turned by half a year.
fn south(climate: &Climate) -> Climate {
    let turn = |months: &[Warmth; 12]| std::array::from_fn(|month| months[(month + 6) % 12]);
    Climate::new(turn(climate.highs()), turn(climate.lows())).expect("a climate")
}

/// Greensboro and its opposite.
fn both_halves() -> [Weather; 2] {
    let north = KNOWN[0].climate();
    [weather_of(&north), weather_of(&south(&north))]
}

fn goes(weather: &Weather, edge: Edge, day: Day) -> bool {
    edge.of(weather.soil_rates(place(day))) > 0.0
}

/// On each day of four years, so on both sides of a 29 February: on the first day of the season the soil stage goes on and
/// on the day before it does not, and so at its end. It is the one that runs on that day, or the next.
#[test]
fn a_season_opens_on_the_first_day_that_lets_the_soil_stage_go_on() {
    for weather in both_halves() {
        for edge in Edge::ALL {
            for at in 0..1461 {
                let on = day("2024-01-01").plus(at);
                let Open::From(first, last) = open(&weather, edge, on.number()) else {
                    panic!("no season on {on}")
                };
                assert!(
                    goes(&weather, edge, first) && !goes(&weather, edge, first.plus(-1)),
                    "{on}: {first}"
                );
                assert!(goes(&weather, edge, last) && !goes(&weather, edge, last.plus(1)), "{on}: {last}");
                let long = last.days_since(first);
                assert!(last >= on && first.days_since(on) < 366 - long, "{on}: {first} to {last}");
                assert!((0..=long).all(|at| goes(&weather, edge, first.plus(at))), "{first} to {last}");
            }
        }
    }
}

/// On each day of four years: it is another only from one coldest day of the soil to the next, which have the same place
/// in their years.
#[test]
fn a_year_of_beetles_has_one_season() {
    for weather in both_halves() {
        let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
        let mut before = season(&walk, day("2023-12-31"));
        let mut begun = Vec::new();
        for at in 0..1461 {
            let on = day("2024-01-01").plus(at);
            let here = season(&walk, on);
            if here != before {
                begun.push(on);
            }
            before = here;
        }
        assert_eq!(begun.len(), 4, "{begun:?}");
        assert!(begun.iter().all(|on| place(*on) == place(begun[0])), "{begun:?}");
    }
}

/// The calendar here begins with the year 2000, in the midst of a southern season. 1,461 days later all of it comes again,
/// and then its beginning is there too.
#[test]
fn a_season_that_began_before_the_calendar_ends_when_it_should() {
    let [_, weather] = both_halves();
    let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
    let held = |on: Day| on.plus(-1461);
    for at in 0..200 {
        let on = Day::FIRST.plus(at);
        let (early, later) = (season(&walk, on), season(&walk, on.plus(1461)));
        assert_eq!(early.count, later.count, "{on}");
        for (early, later) in early.open.into_iter().zip(later.open) {
            let (Open::From(first, last), Open::From(later, end)) = (early, later) else {
                panic!("no season on {on}")
            };
            assert_eq!((first, last), (held(later), held(end)), "{on}");
        }
        for (early, later) in early.generations.iter().zip(&later.generations) {
            assert_eq!(early.adults, later.adults.map(|day| day.map(held)), "{on}");
        }
    }
}

/// In the same soil the year round. Where the first of the next come on the last day of those before, both are there.
#[test]
fn generations_overlap_from_the_day_they_share() {
    let mut shared = 0;
    for tenths in 140..340 {
        let warm = swing(f64::from(tenths) / 10.0, 0.0);
        let weather = constant(Span::around(warm, 2.0), Span::around(warm, 0.5));
        let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
        let season = season(&walk, day("2026-07-01"));
        let meet = |at: usize| {
            let (last, next) = (season.generations[at].adults[2], season.generations[at + 1].adults[0]);
            next.is_some_and(|next| last.is_none_or(|last| last.days_since(next) >= 0))
        };
        let first = (1..season.generations.len()).map(|next| next - 1).find(|at| meet(*at));
        assert_eq!(season.overlap, first, "{tenths}");
        if let Some(at) = first {
            shared += i32::from(season.generations[at].adults[2] == season.generations[at + 1].adults[0]);
        }
    }
    println!("{shared} seasons overlap from a day that both share");
    assert!(shared > 0);
}
