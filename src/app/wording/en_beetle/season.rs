//! English: the Beetle. The season of a climate.

use super::super::en;
use super::{Edge, near};
use crate::almanac::day::Day;
use crate::almanac::generations::Open;

/// Chooses the climate.
pub const CLIMATE: &str = "Climate";
/// Chooses how much warmer it is.
pub const SHIFT: &str = "What if it is";
/// The choices, with the degrees Celsius of each.
pub const SHIFTS: [(&str, &str); 5] = [
    ("-3", "3 °C (5.4 °F) cooler"),
    ("-1.5", "1.5 °C (2.7 °F) cooler"),
    ("0", "as it is"),
    ("1.5", "1.5 °C (2.7 °F) warmer"),
    ("3", "3 °C (5.4 °F) warmer"),
];
/// Chooses how much sun the ground gets.
pub const SHADE: &str = "The ground lies in";
/// The first choice, where a yard's records say how much.
pub const AS_WRITTEN: &str = "as written down";
/// The choices.
pub const SHADES: [&str; 3] = ["full sun", "part shade", "shade"];
/// Under them.
pub const SHADE_HINT: &str = "Reckoned as 1 °C warmer than the air in full sun, 2 °C cooler in shade: chosen here, from no source. A probe in your ground puts it right.";
/// Field: the ground is dry until then.
pub const DRY: &str = "Dry until (may stay empty)";
/// Label of the answer.
pub const ANSWER: &str = "Generations there is room for";
/// Heading over the generations.
pub const EACH: &str = "When their young beetles may come out";
/// Folds away the months.
pub const MONTHS: &str = "The ground month by month";
/// None.
pub const NONE: &str =
    "No generation is possible with these numbers: the ground stays too cold or too hot for the stage in it.";
/// What the count is and is not.
pub const WHY: &str = "The first larvae go into the ground on the first day on which it lets them go on; each next generation follows as soon as it can, in strong colonies. Beetles that wait, starve or are caught are left out: it is the room there is. Common practice in warm, humid places speaks of 4–5 generations (no source); published 1–6 by region.";

/// "likely 4, from 2 to 5".
pub fn count([most, likely, fewest]: [usize; 3]) -> String {
    if most == fewest {
        return most.to_string();
    }
    [&fewest.to_string(), "–", &most.to_string(), ", likely ", &likely.to_string()].concat()
}

/// When the ground lets larvae go on.
pub fn open(edge: Edge, open: Open, today: Day) -> String {
    let word = match edge {
        Edge::Earliest => "The ground is warm enough at the most",
        Edge::Likely => "Likely",
        Edge::Latest => "At the least",
    };
    match open {
        Open::Never => [word, ": on no day"].concat(),
        Open::AllYear => [word, ": the year round"].concat(),
        Open::From(first, last) => [word, ": ", &near(first, today), " to ", &near(last, today)].concat(),
    }
}

/// Under the answer.
pub fn left([most, _, fewest]: [usize; 3]) -> String {
    let mut said = "Eggs laid today: ".to_owned();
    en::put(
        &mut said,
        &if most == fewest {
            most.to_string()
        } else {
            [&fewest.to_string(), "–", &most.to_string()].concat()
        },
    );
    en::put(
        &mut said,
        if most == 1 && fewest == 1 { " more generation comes" } else { " more generations come" },
    );
    en::put(&mut said, " out by the coldest time of the year.");
    said
}

/// "Generation 2".
pub fn generation(number: usize) -> String {
    ["Generation ", &number.to_string()].concat()
}

/// Days of one generation at the three edges; where one has none it does not come in the season.
pub fn days(three: [Option<Day>; 3], today: Day) -> String {
    let near = |day: Day| near(day, today);
    match three {
        [Some(first), Some(likely), Some(last)] => {
            ["from ", &near(first), ", likely ", &near(likely), ", at the latest ", &near(last)].concat()
        }
        [Some(first), Some(likely), None] => {
            ["from ", &near(first), ", likely ", &near(likely), "; in cool ground not this season"].concat()
        }
        [Some(first), ..] => ["at the earliest from ", &near(first), "; likely not this season"].concat(),
        _ => "not this season".to_owned(),
    }
}

/// Where there is room for more than anybody has published.
pub const MANY: &str =
    "More than any published count, which is 1–6 by region: read it as the most there is room for.";

/// From which generation on several come out at once.
pub fn overlap(number: usize) -> String {
    ["From generation ", &number.to_string(), " on the spans run into each other: beetles of several generations come out at once, and no date tells them apart."].concat()
}

/// "May: air 13.4 to 24.7 °C, ground 19.1 °C at 5 cm, 18.9 °C at 10 cm".
pub fn month(month: &str, [low, high]: &[String; 2], [shallow, deep]: &[String; 2], unit: &str) -> String {
    let parts = [
        month,
        ": air ",
        low,
        " to ",
        high,
        " ",
        unit,
        ", ground ",
        shallow,
        " ",
        unit,
        " at 5 cm, ",
        deep,
        " ",
        unit,
        " at 10 cm",
    ];
    parts.concat()
}

/// Where a known climate is from.
pub fn source(source: &str) -> String {
    ["Public domain: ", source, "; monthly means of its daily highs and lows."].concat()
}
