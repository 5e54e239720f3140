//! English: the ground of a yard.

use crate::almanac::day::Day;
use crate::app::wording::en::{counted, date};

/// Which hives.
pub const WHICH: &str = "Round which hives";
/// Its words.
pub const CHOICES: [(&str, &str); 3] =
    [("larvae", "larvae in the last 60 days"), ("all", "all"), ("tags", "chosen by tag")];
/// Field: tags.
pub const TAGS: &str = "Their tags";
/// Its hint.
pub const TAGS_HINT: &str = "Such as 1–4, 7";
/// Without a stand.
pub const NO_STAND: &str = "Not in this sum, nobody wrote down where they stand: ";
/// Tags that are not on the map.
pub const NO_ROOM: &str = "Drawn, but without room for their numbers, in the order of the walk: ";
/// No stand at all.
pub const NO_STANDS: &str = "Nobody wrote down where these hives stand, so there is no ground to reckon yet. Write down where they stand, and the map is drawn.";
/// Key.
pub const EXAMPLE_KEY: &str = "Show an example: hives in rows";
/// Above it.
pub const EXAMPLE: &str = "An example of hives in rows, and not this yard. Type your own numbers to see about how much ground it is.";
/// None chosen.
pub const NONE: &str = "Choose the hives.";
/// None with larvae.
pub const NO_LARVAE: &str = "No larvae or slime was written down in the last 60 days. Choose the hives.";
/// Opens the other fields.
pub const REST: &str = "Change how far out, and the hive";
/// Field: pack.
pub const PACK: &str = "A pack holds, in the label’s measure";
/// Answer.
pub const PACKS: &str = "Packs to buy";
/// No pack.
pub const NO_PACK: &str = "Type the label’s rate and what a pack holds.";
/// The paving as written down.
pub const PAVED_TOLD: &str = "What is paved is taken from the facts of this yard, all of it within reach.";
/// The yard is paved.
pub const SURFACE: &str =
    "This yard is written down as paved: larvae walk on to soil, so a ring on paving does nothing.";
/// Heading of the window.
pub const WINDOW: &str = "When";
/// Nothing to date.
pub const NO_WINDOW: &str = "No find of larvae is under way here: there are no days to tell.";
/// How to use the days.
pub const WINDOW_HOW: &str = "Ground work meets larvae and pupae between the first day on which they leave the hive and the last on which young beetles come out.";
/// Hive by hive, on a tap.
pub const WINDOW_EACH: &str = "Dates, hive by hive";

/// "From Wed, 7 October 2026 to Sun, 13 June 2027 at the latest larvae or pupae of 3 hives may be in the ground".
pub fn window(from: Day, until: Option<Day>, hives: u32) -> String {
    let until = match until {
        Some(day) => [" to ", &date(day), " at the latest"].concat(),
        None => ", nobody can say until when,".to_owned(),
    };
    let hives = counted(hives, "hive", "hives");
    ["From ", &date(from), &until, " larvae or pupae of ", &hives, " may be in the ground (estimate)."]
        .concat()
}

/// Nematodes.
pub const CARD: &str = "If it is nematodes";
/// What is to be kept to.
pub const CARD_LINES: [&str; 5] = [
    "At dusk or on a dull day: light dries and kills them.",
    "On moist ground; water before, and keep it moist after.",
    "No water straight from a chlorinated tap: let it stand, or use rain.",
    "In the fridge, never in the freezer; by their use-by day.",
    "Only while the soil is within the supplier’s span of temperatures.",
];
/// Where the card comes from.
pub const CARD_WHY: &str = "Common practice with living nematodes; rate, water and temperatures are the supplier’s and none is built in.";
/// The way to the form.
pub const WRITE: &str = "Write down ground work";
/// Key to the stands.
pub const STANDS: &str = "Write down where it stands";

/// What the map shows, for those who do not see it.
pub fn map(tags: &[String], wide: &str, long: &str) -> String {
    let count = u32::try_from(tags.len()).unwrap_or(u32::MAX);
    let hives = counted(count, "hive", "hives");
    [
        "Map of ",
        &hives,
        " with the ground within reach: ",
        &tags.join(", "),
        ". ",
        wide,
        " wide, ",
        long,
        " long.",
    ]
    .concat()
}

/// "11.5 ÷ 5, rounded up = 3".
pub fn packs(amount: &str, pack: &str, packs: &str) -> String {
    [amount, " ÷ ", pack, ", rounded up =\u{a0}", packs].concat()
}
