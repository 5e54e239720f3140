//! English: the Beetle, and the days on which beetles may come.

use super::en::{self, counted, date};
use super::en_round::near;
use crate::almanac::day::Day;
use crate::almanac::sighting::Seen;
use crate::almanac::stage::{Edge, Held, Outcome, Stage, Why};
use crate::app::place::Clock;

/// Name of the list of clocks for screen readers.
pub const INDEX: &str = "What the Beetle works out";
/// Said once on each screen with a date or a share that was worked out.
pub const ESTIMATE: &str = "Estimate. Soil and weather move these dates.";
/// Heading over what is on the way in the yards.
pub const UNDER_WAY: &str = "On the way in your yards";
/// Nothing is.
pub const NOTHING: &str = "Nothing is on the way, as far as the looks into these hives say.";
/// What the place does, where there is no yard.
pub const EMPTY: &str = "Say what you found, and when: larvae on their way out, young beetles coming back, the next eggs, each with its dates.";
/// Folds away the forms that the dates go by.
pub const GO_BY: &str = "What these dates go by";
/// A yard without temperatures.
pub const NO_CLIMATE: &str =
    "For dates this page needs the yard’s temperatures: twelve highs and twelve lows, once.";
/// Key under what is on the way in a hive.
pub const TO_HIVE: &str = "The hive’s page";
/// Key that leads to them.
pub const TO_CLIMATE: &str = "Write down the temperatures";
/// Heading on the page of a hive.
pub const HERE: &str = "Beetles on the way here";
/// Heading over hives in which adults alone were seen.
pub const ADULTS: &str = "Adult beetles and no larvae";
/// Larvae leave the hive.
pub const LEAVING: &str = "Larvae leave the hive";
/// Young adults come out of the ground.
pub const YOUNG: &str = "Young beetles come out of the ground";
/// They lay.
pub const EGGS: &str = "These lay their first eggs";
/// The rule of thumb beside the dates.
pub const RULE: &str = "Rule of thumb (common practice, no source): eggs 2–3 days, the ground 3–4 weeks, laying about a week after that.";
/// Caution where larvae were found.
pub const LARVAE: &str = "Bag combs with larvae now. Don’t move comb to other hives.";
/// So warm that few live through it.
pub const HOT: &str = "So warm that few live through it: above 37 °C eggs die, at 39 °C larvae on the way and pupae died in the laboratory.";
/// Larvae that find no soft ground.
pub const NO_GROUND: &str = "Larvae that find no loose, moist ground wait for weeks and may crawl far to find some: paving delays them and stops none.";
/// Key that shows the day-by-day table.
pub const WORKED: &str = "How this was worked out";
/// All dates of a find lie behind.
pub const PAST: &str = "All of this lies in the past.";
/// Under the bars.
pub const AXIS: &str =
    "A tick each week, on a long line each fourth; the diamond is the likely day, the dashed line today.";

/// A clock: its heading and the way to it.
pub fn clock(clock: Clock) -> &'static str {
    match clock {
        Clock::Dates => "From a find to dates",
        Clock::Season => "The season in this climate",
        Clock::Rhythm => "Did my looks see them?",
        Clock::Honey => "Honey supers against the clock",
    }
}

/// What was found.
pub fn seen(seen: Seen) -> &'static str {
    match seen {
        Seen::AdultsOnly => "Adult beetles, no larvae",
        Seen::TinyLarvae => "Tiny larvae",
        Seen::FullGrown => "Full-grown larvae",
        Seen::Leaving => "Slime, or larvae leaving",
        Seen::InSoil => "Larvae in the ground",
    }
}

/// "Full-grown larvae, Fri 10 July; the comb was clear on Sun 12 July".
pub fn found(what: Seen, on: Day, ended: Option<Day>) -> String {
    let mut said = [seen(what), ", ", &near(on)].concat();
    if let Some(ended) = ended {
        en::put(&mut said, "; no larvae in the comb since ");
        en::put(&mut said, &near(ended));
    }
    said
}

/// "from Wed 29 July, likely Sat 1 August, at the latest Thu 6 August", or why there is no date.
pub fn dates(three: &[Outcome; 3], today: Day) -> String {
    let mut said = String::new();
    let mut held = Held::default();
    let mut any = false;
    for (edge, word) in Edge::ALL.into_iter().zip(["from ", ", likely ", ", at the latest "]) {
        match edge.of(*three) {
            Ok(when) => {
                en::put(&mut said, word);
                en::put(&mut said, &far(when.day, today));
                held = when.held;
                any = true;
            }
            Err(why) if any => {
                en::put(
                    &mut said,
                    if edge == Edge::Likely { "; not likely: " } else { "; the last nobody can date: " },
                );
                en::put(&mut said, late(why));
                break;
            }
            Err(why) => return reason(why).to_owned(),
        }
    }
    for (days, why) in [(held.cold, "too cold"), (held.hot, "too hot"), (held.dry, "in dry ground")] {
        if days > 0 {
            let days = counted(days.into(), "day", "days");
            en::put(&mut said, &[" (", &days, " of it ", why, " for them)"].concat());
        }
    }
    said
}

/// A day, with its year where nobody would guess it.
pub fn far(day: Day, today: Day) -> String {
    if day.year() == today.year() { near(day) } else { date(day) }
}

/// Why the last of them have no date.
fn late(why: Why) -> &'static str {
    match why {
        Why::TooCold => "it may stay too cold for them",
        Why::TooHot => "it may stay too hot for them",
        Why::DrySoil => "dry ground may hold them until it rains",
        Why::NotInTwoYears => "it may take them more than two years",
        Why::HiveEnded => "the comb was dealt with",
    }
}

fn reason(why: Why) -> &'static str {
    match why {
        Why::TooCold => "none at these temperatures: it never gets warm enough for them",
        Why::TooHot => "none at these temperatures: it never gets cool enough for them",
        Why::DrySoil => "held in dry ground until it rains; write down the rain and the dates stand here",
        Why::NotInTwoYears => "none within two years at these temperatures",
        Why::HiveEnded => "none: the comb was dealt with before any could leave it",
    }
}

/// In a row of the Round: "young beetles from Wed 29 Jul (estimate)". `until` the last comes out, `laying` the last lays.
pub fn young(from: Day, until: Option<Day>, laying: Option<Day>, today: Day) -> String {
    if from > today {
        return ["young beetles from ", &near(from), " (estimate)"].concat();
    }
    match (until, laying) {
        (Some(until), Some(laying)) if until < today => {
            ["young beetles are out, first eggs until ", &near(laying), " (estimate)"].concat()
        }
        (Some(until), _) => ["young beetles come out now, until ", &near(until), " (estimate)"].concat(),
        _ => "young beetles come out now (estimate)".to_owned(),
    }
}

/// "look again before Thu 9 July: …".
pub fn look_before(leaving: Day) -> String {
    ["look again before ", &near(leaving), ": larvae could leave from then on, if eggs were laid"].concat()
}

/// A day on which the ground was dry, in the table.
pub const DRY: &str = "dry";

/// A stage, in the table.
pub fn stage(stage: Stage) -> &'static str {
    match stage {
        Stage::Egg => "egg",
        Stage::Larva => "larva",
        Stage::Wandering => "leaving",
        Stage::Soil => "ground",
        Stage::BeforeLaying => "young",
    }
}

/// An edge, as it is chosen.
pub fn edge(edge: Edge) -> &'static str {
    match edge {
        Edge::Earliest => "earliest",
        Edge::Likely => "likely",
        Edge::Latest => "latest",
    }
}

/// The day-by-day table and what stands around it.
pub mod worked {
    /// Chooses the edge.
    pub const WHICH: &str = "Which of the three dates";
    /// Headings of the table: day, stage, temperature, share of the stage that day, share so far.
    pub const HEADINGS: [&str; 5] = ["Day", "Stage", "°C", "That day", "So far"];
    /// Nothing to show.
    pub const NONE: &str = "There is no date to work out here.";
    /// What the table does.
    pub const TABLE: &str = "Each day does its share of a stage; when the shares come to 1, the next stage begins. A day on which a stage begins or ends counts as far as it belongs to it.";
    /// How a share follows from the temperature.
    pub const SHARES: [&str; 4] = [
        "Share of a day at an even temperature T: (T − floor) ÷ sum. Set A: egg 19.4 above 13.5 °C, larva 195 above 10, ground 365 above 10. Set B: egg 20.07 above 13.10, larva 211.6 above 8.56, ground 295.7 above 12.05. For the ground a curve too: 0.0000298952 × T × (T − 10.4291) × √(41.9097 − T). Where a day swings between a low and a high, the mean of the shares along a sine.",
        "Likely: the middle of the sets (ground: the middle one of three; egg and larva: the mean of both) at the likely temperature.",
        "Earliest: the quickest set at the warm end of the temperatures, or the likely share ÷ (1 − b) if that is more. Latest: the slowest set at the cool end, or the likely share ÷ (1 + b) if that is less; for eggs also 48 above 10 °C, from a laboratory where they took twice as long.",
        "b is 0.35 up to 20 °C and falls straight to 0.20 at 24 °C: by so much the sets miss whole lives that were measured elsewhere. It describes those misses and is no rate of error.",
    ];
    /// What does not go by temperature.
    pub const FIXED: &str = "Not by temperature: leaving 0, 1 or 2 days; young, until they lay, 7, 7 or 14 days (published pages say one week or two).";
    /// Where the figures are from.
    pub const SOURCES: &str = "Sources: Meikle & Patt 2011 (stages at 21 and 35 °C, floors); Bernier et al. 2014 (ground at 16, 18, 20 °C); de Guzman & Frake 2007 (eggs at 26 and 34 °C); a study of thermal limits in Korea (optimum and upper limit); Ellis et al. 2004 (dry ground); Kusuda & Achenbach 1965 (the year’s wave in the ground). The lines and the curve were fitted for this page to the published days.";
}

/// From a find to dates.
pub mod find {
    /// Chooses what was found.
    pub const SEEN: &str = "What you found";
    /// When.
    pub const ON: &str = "Found on";
    /// Chooses whose temperatures count.
    pub const WHERE: &str = "Temperatures";
    /// Those in the fields.
    pub const TYPED: &str = "as typed here";
    /// Field.
    pub const SOIL_LOW: &str = "Ground, 5–10 cm deep: coolest";
    /// Field.
    pub const SOIL_HIGH: &str = "Ground: warmest";
    /// Field.
    pub const HIVE_LOW: &str = "Among the combs: coolest";
    /// Field.
    pub const HIVE_HIGH: &str = "Among the combs: warmest";
    /// Under the field for the combs.
    pub const HIVE_HINT: &str = "A brood nest full of bees is 34–35 °C.";
    /// The warmest lies below the coolest.
    pub const UPSIDE_DOWN: &str = "This is below the coolest.";
    /// Chooses how many bees keep the combs warm.
    pub const BEES: &str = "Bees on the combs";
    /// The choices.
    pub const BEES_ARE: [&str; 3] = ["full of bees", "half covered", "no bees, or supers pulled"];
    /// Chooses how the ground is.
    pub const GROUND: &str = "The ground";
    /// The choices, without the records.
    pub const GROUND_IS: [&str; 3] = ["moist", "dry", "dry until rain on"];
    /// The first choice, where a yard's records say how its ground is.
    pub const AS_WRITTEN: &str = "as written down";
    /// The day of the rain.
    pub const RAIN: &str = "Rain on";
    /// Heading over the answer.
    pub const DATES: &str = "What comes of it";
    /// While a field cannot be read.
    pub const WAITS: &str = "The dates stand here once every field above can be read.";
}

/// The season of a climate.
pub mod season {
    use super::super::en;
    use super::{Edge, far};
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
    pub const NONE: &str = "No generation is possible with these numbers: the ground stays too cold or too hot for the stage in it.";
    /// What the count is and is not.
    pub const WHY: &str = "The first larvae go into the ground on the first day on which it lets them go on; each next generation follows as soon as it can, in strong colonies with a warm brood nest. Beetles that wait, starve or are caught are left out: it is the room there is. Common practice in warm, humid places speaks of 4–5 generations (no source); published 1–6 by region.";

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
            Open::From(first, last) => [word, ": ", &far(first, today), " to ", &far(last, today)].concat(),
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
        let near = |day: Day| far(day, today);
        match three {
            [Some(first), Some(likely), Some(last)] => {
                ["from ", &near(first), ", likely ", &near(likely), ", at the latest ", &near(last)].concat()
            }
            [Some(first), Some(likely), None] => {
                ["from ", &near(first), ", likely ", &near(likely), "; in cool ground not this season"]
                    .concat()
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
    pub fn month(
        month: &str,
        [low, high]: &[String; 2],
        [shallow, deep]: &[String; 2],
        unit: &str,
    ) -> String {
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
}

/// What the keeper's probe adds: "By 3 readings of your probe the ground is 1.2 °C cooler than the air alone says, give or
/// take 0.9 °C.".
pub fn probed(readings: usize, apart: &str, cooler: bool, give: &str) -> String {
    let readings = counted(u32::try_from(readings).unwrap_or(u32::MAX), "reading", "readings");
    let than = if cooler { " cooler" } else { " warmer" };
    let parts = [
        "By ",
        &readings,
        " of your probe the ground is ",
        apart,
        than,
        " than the air alone says, give or take ",
        give,
        ".",
    ];
    parts.concat()
}
