//! English: would the looks have seen a brood?

use super::en::{counted, date, days, put};
use super::en_round::near_and_how_far;
use crate::almanac::day::Day;

/// Said once.
pub const ESTIMATE: &str =
    "Estimate. How long larvae stay in the comb is known to a fifth or so, and less where it is cool.";
/// Why.
pub const HOW: &str = "Larvae are in the comb for some days and then leave for the soil. A look sees those that are there: of the broods since the look before, days in the comb ÷ days between looks, and never more than all. Uneven gaps count by their length. The days come from the warmth of the comb, as under dates. A second look at one brood is not reckoned in, so a chance to notice below 100 % makes the share rather too low.";
/// The part with typed figures.
pub const PLAN: &str = "A plan";
/// Field.
pub const COMB: &str = "How warm the comb is";
/// Its hint.
pub const COMB_HINT: &str = "A brood nest has 34 to 35 °C; comb without bees is as warm as the air.";
/// Field.
pub const EVERY: &str = "Days from look to look";
/// Field.
pub const NOTICE: &str = "You notice larvae that are there";
/// Field.
pub const WANTED: &str = "Share of broods you want to see";
/// Answer.
pub const SEEN: &str = "Broods that a look could have seen";
/// Answer.
pub const LONGEST: &str = "Look at least every";
/// No rhythm does it.
pub const NEVER: &str = "No rhythm reaches that: a look misses more than this share by itself.";
/// The part from the book.
pub const OWN: &str = "Your own looks";
/// Chooser.
pub const YARD: &str = "Yard";
/// Choice.
pub const BY: &str = "What counts";
/// Looks, or trap work too.
pub const COUNTS: [&str; 2] = ["Looks for larvae", "Every visit, as if it had been a look"];
/// Chooser.
pub const HIVE: &str = "Hive in the drawing";
/// No hive has two looks.
pub const NO_GAPS: &str = "No hive here has two looks for larvae within half a year. Trap work can be counted as if it had been a look.";
/// No yard.
pub const NO_YARD: &str = "No yard is kept yet. The plan above works without one.";
/// Under the drawing.
pub const AXIS: &str = "A line for each look, dashed for the next one. Filled: whatever hatched then was still there for the look behind it. Empty: it had left before. A tick for each week since the first look.";
/// The list.
pub const EACH: &str = "Each hive";

/// "59 % (47 % to 70 %)".
pub fn seen([low, likely, high]: &[String; 3]) -> String {
    if low == high { likely.clone() } else { [likely, " (", low, " to ", high, ")"].concat() }
}

/// "Larvae are in the comb for about 8.2 days at 34 °C (6.6 to 9.9)".
pub fn stay([short, likely, long]: &[String; 3], warmth: &str) -> String {
    ["Larvae are in the comb for about ", likely, " days at ", warmth, " (", short, " to ", long, ")"]
        .concat()
}

/// "8.2 days ÷ 14 days = 59 %".
pub fn sum(stay: &str, every: u32, share: &str, all: bool) -> String {
    let rest = if all { ": all of them" } else { "" };
    [stay, " days ÷ ", &days(every), " = ", share, rest].concat()
}

/// "× 80 % that you notice".
pub fn noticed(notice: &str) -> String {
    ["× ", notice, " that you notice"].concat()
}

/// No larva grows up.
pub const TOO_COLD: &str = "At this temperature no larvae grow up, so there is nothing to reckon.";

/// The keeper's own days, where others are typed.
pub fn aims_say(every: u32) -> String {
    ["The days typed here count for this plan. Your next look goes by ", &days(every), ", as under aims."]
        .concat()
}

/// "3 hives were not looked into twice."
pub fn never_twice(hives: u32) -> String {
    [&counted(hives, "hive was", "hives were"), " not looked into twice within half a year."].concat()
}

/// "8 days, were larvae to leave as early as they can; 12 as late".
pub fn reach(short: Option<u32>, long: Option<u32>) -> String {
    let told = |reached: Option<u32>| reached.map_or_else(|| "never".to_owned(), days);
    ["If larvae leave as early as they can: ", &told(short), "; as late as they can: ", &told(long)].concat()
}

/// "Hive 12: 66 % (54 % to 77 %), 5 gaps, the longest 21 days".
pub fn hive(tag: &str, seen: &str, gaps: u32, longest: u32) -> String {
    [tag, ": ", seen, ", ", &counted(gaps, "gap", "gaps"), ", the longest ", &days(longest)].concat()
}

/// A hive with one look or none.
pub fn too_few(tag: &str, looks: u32) -> String {
    [tag, ": ", &counted(looks, "look", "looks"), ", no gap"].concat()
}

/// "Looks on Tue 14 July 2026, …": the drawing in words.
pub fn drawn(tag: &str, looks: &[Day]) -> String {
    let mut said = [tag, ", looks on "].concat();
    for (at, look) in looks.iter().enumerate() {
        put(&mut said, if at == 0 { "" } else { "; " });
        put(&mut said, &date(*look));
    }
    said
}

/// "Next look on Sat 18 July 2026: it sees 57 % of the broods since the last one."
pub fn next(day: Day, seen: &str) -> String {
    ["Next look on ", &date(day), ": it sees ", seen, " of the broods since the look before."].concat()
}

/// "Look for larvae by Tue 28 July, in 14 days: your own rhythm".
pub fn next_look(on: Day, today: Day) -> String {
    ["Look for larvae by ", &near_and_how_far(on, today), ": your own rhythm"].concat()
}

/// "Skip it, and on Sat 1 August 2026 it is 29 %, 28 days without a look."
pub fn skipped(day: Day, seen: &str, gap: u32) -> String {
    ["If you skip it: ", seen, " on ", &date(day), ", after ", &days(gap), " without a look."].concat()
}
