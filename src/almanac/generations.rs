//! How many generations a season has room for.

use super::climate::{DAYS, place_of};
use super::day::Day;
use super::stage::{Edge, Held, Stage, Walk, Weather};

/// When the soil lets the soil stage go on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Open {
    /// On no day of the year.
    Never,
    /// From the first of these days to the second, both included.
    From(Day, Day),
    /// The year round.
    AllYear,
}

/// One generation, each of its days in the order of [`Edge::ALL`]. `None` where it does not come within the season.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Generation {
    /// Larvae go into the soil.
    pub into_soil: [Option<Day>; 3],
    /// Young adults come out of it.
    pub adults: [Option<Day>; 3],
}

/// A season, or what is left of it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Season {
    /// When the soil stage goes on, at each edge: warm end of the soil's span, likely, cool end.
    pub open: [Open; 3],
    /// The generations whose adults come within the season at the quick edge, so all that there may be.
    pub generations: Vec<Generation>,
    /// How many come at each edge: the most, the likely number, the fewest.
    pub count: [usize; 3],
    /// From this generation on (0 is the first) the next may begin to come out while the last of it still do: from
    /// then on adults of several come at once.
    pub overlap: Option<usize>,
}

/// More than any year has room for: an egg alone takes a day, the soil stage two weeks.
const MOST: usize = 24;

/// The season of the year that runs on `day`: a year of beetles begins on the coldest day of the soil, so that a summer
/// lies in one whole wherever it falls. It begins with larvae that go into the soil on the first day on which the soil
/// stage goes on, and counts what comes out within that year.
///
/// Only strong colonies keep a brood nest warm from the first day on: for a yard's season the strength of `walk` is
/// theirs. Beetles that wait for longer, starve or are caught are not reckoned with: it is the room there is, no
/// forecast.
pub fn season(walk: &Walk, day: Day) -> Season {
    let begin = year_of(walk.weather, day);
    run(walk, begin, begin, true)
}

/// What is left of it when eggs are laid on `day`: the generations whose adults come out before that year ends.
pub fn left(walk: &Walk, day: Day) -> Season {
    run(walk, year_of(walk.weather, day), day.number(), false)
}

/// The coldest day of the soil, the last on or before `day`. In days after 2000-01-01, as all days here: the year that
/// runs on that day began before it.
fn year_of(weather: &Weather, day: Day) -> i32 {
    let mut coldest = 0;
    for at in 1..DAYS {
        if weather.soil(at).likely.mean() < weather.soil(coldest).likely.mean() {
            coldest = at;
        }
    }
    at_place(coldest, day.number(), -1)
}

/// The day `place` of the year from `day` on, in steps of a day or of a day back. 28 and 29 February share their place:
/// the first of them counts.
fn at_place(place: usize, day: i32, step: i32) -> i32 {
    let mut day = day;
    while place_of(day) != place || place_of(day - 1) == place {
        day += step;
    }
    day
}

fn run(walk: &Walk, begin: i32, from: i32, in_soil: bool) -> Season {
    let mut season = Season {
        open: Edge::ALL.map(|edge| open(walk.weather, edge, begin)),
        generations: Vec::new(),
        count: [0; 3],
        overlap: None,
    };
    let last = f64::from(at_place(place_of(begin), begin + 1, 1));
    for edge in Edge::ALL {
        let Some(mut time) = first_time(walk, edge, begin, from, in_soil) else { continue };
        for at in 0..MOST {
            let Some(out) = walk
                .end_of(Stage::Soil, edge, time, Held::default(), None)
                .ok()
                .filter(|out| out.time < last)
            else {
                break;
            };
            if season.generations.len() <= at {
                season.generations.push(Generation { into_soil: [None; 3], adults: [None; 3] });
            }
            if let Some(generation) = season.generations.get_mut(at) {
                put(&mut generation.into_soil, edge, Day::FIRST.plus(edge.whole_days(time)));
                put(&mut generation.adults, edge, out.day);
            }
            if let Some(count) = season.count.get_mut(edge.place()) {
                *count = at + 1;
            }
            let Some(next) = through_hive(walk, edge, &[Stage::BeforeLaying], out.time)
                .and_then(|laid| through_hive(walk, edge, &HIVE, laid))
            else {
                break;
            };
            time = next;
        }
    }
    season.overlap = season.generations.windows(2).position(|pair| match pair {
        [one, next] => match (one.adults, next.adults) {
            ([_, _, latest], [Some(next), ..]) => latest.is_none_or(|latest| next <= latest),
            _ => false,
        },
        _ => false,
    });
    season
}

const HIVE: [Stage; 3] = [Stage::Egg, Stage::Larva, Stage::Wandering];

/// When larvae of the first generation are in the soil.
fn first_time(walk: &Walk, edge: Edge, begin: i32, from: i32, in_soil: bool) -> Option<f64> {
    if !in_soil {
        return through_hive(walk, edge, &HIVE, f64::from(from));
    }
    match stretch(walk.weather, edge, begin) {
        Ok((first, _)) => Some(f64::from(first.max(from))),
        Err(Open::AllYear) => Some(f64::from(from)),
        Err(_) => None,
    }
}

fn through_hive(walk: &Walk, edge: Edge, stages: &[Stage], time: f64) -> Option<f64> {
    let mut time = time;
    for stage in stages {
        time = walk.end_of(*stage, edge, time, Held::default(), None).ok()?.time;
    }
    Some(time)
}

fn put(three: &mut [Option<Day>; 3], edge: Edge, day: Day) {
    if let Some(slot) = three.get_mut(edge.place()) {
        *slot = Some(day);
    }
}

/// When the soil stage goes on at `edge`: the longest stretch of days, that which runs on `day` (days after 2000-01-01),
/// or the next.
pub fn open(weather: &Weather, edge: Edge, day: i32) -> Open {
    match stretch(weather, edge, day) {
        Ok((first, last)) => Open::From(Day::FIRST.plus(first), Day::FIRST.plus(last)),
        Err(none) => none,
    }
}

/// The first and the last day of that stretch, or why there is none.
fn stretch(weather: &Weather, edge: Edge, day: i32) -> Result<(i32, i32), Open> {
    let goes = |at: usize| edge.of(weather.soil_rates(at % DAYS)) > 0.0;
    let Some(shut) = (0..DAYS).find(|at| !goes(*at)) else { return Err(Open::AllYear) };
    // Once around from a shut day on, so that no stretch is cut in two.
    let (mut best, mut length, mut run) = (0, 0, 0);
    for at in shut..=shut + DAYS {
        if goes(at) {
            run += 1;
            if run > length {
                (best, length) = (at + 1 - run, run);
            }
        } else {
            run = 0;
        }
    }
    if length == 0 {
        return Err(Open::Never);
    }
    // It lasts until the day before the first that is shut.
    let last = |first: i32| at_place((best + length) % DAYS, first, 1) - 1;
    let mut first = at_place(best % DAYS, day, -1);
    if last(first) < day {
        first = at_place(best % DAYS, day, 1);
    }
    Ok((first, last(first)))
}
