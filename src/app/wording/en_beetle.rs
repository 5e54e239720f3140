//! English: the Beetle, and the days on which beetles may come.

pub mod find;
pub mod season;
pub mod worked;

use super::en::{self, counted};
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

/// "Full-grown larvae, Fri 10 July; by the records over in the comb since Sun 12 July": a look found none, what held them
/// was taken out, or the hive was sold.
pub fn found(what: Seen, on: Day, ended: Option<Day>, today: Day) -> String {
    let mut said = [seen(what), ", ", &near(on, today)].concat();
    if let Some(ended) = ended {
        en::put(&mut said, "; by the records over in the comb since ");
        en::put(&mut said, &near(ended, today));
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
                en::put(&mut said, &near(when.day, today));
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
        return ["young beetles from ", &near(from, today), " (estimate)"].concat();
    }
    match (until, laying) {
        (Some(until), Some(laying)) if until < today => {
            ["young beetles are out, first eggs until ", &near(laying, today), " (estimate)"].concat()
        }
        (Some(until), _) => {
            ["young beetles come out now, until ", &near(until, today), " (estimate)"].concat()
        }
        _ => "young beetles come out now (estimate)".to_owned(),
    }
}

/// "look again before Thu 9 July: …"; from that day on it says that nobody has.
pub fn look_before(leaving: Day, today: Day) -> String {
    let (said, then) = if leaving <= today {
        ("nobody has looked again, it was due before ", ": larvae could leave since then, if eggs were laid")
    } else {
        ("look again before ", ": larvae could leave from then on, if eggs were laid")
    };
    [said, &near(leaving, today), then].concat()
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
