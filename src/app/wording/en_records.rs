//! English: records of what was seen and done beside the traps.

use super::en::{date, with_unit};
use super::en_round::near_and_how_far;
use crate::almanac::day::Day;
use crate::book::record::Blank;

/// The words of a blank.
pub struct Words {
    /// The key that opens it, and its heading.
    pub title: &'static str,
    /// What it is for, under the heading.
    pub hint: &'static str,
    /// Each field: what it asks, a hint, and the names of its words.
    pub fields: &'static [(&'static str, &'static str, &'static [&'static str])],
}

const NOTE: (&str, &str, &[&str]) = ("Note", "", &[]);
const NO_YES: &[&str] = &["no", "yes"];
const REGISTRATION: (&str, &str, &[&str]) = (
    "Registration number on the label",
    "Without a number it cannot be recorded as an approved product: check the label or ask the agency. It is kept as not verified.",
    &[],
);

/// The words of `blank`.
#[allow(clippy::too_many_lines)] // one of each, and there are many
pub fn blank(blank: Blank) -> &'static Words {
    match blank {
        Blank::Look => &Words {
            title: "What the hive showed",
            hint: "Larvae and slime decide what to do; the rest may stay empty.",
            fields: &[
                (
                    "Beetle larvae",
                    "Larvae or slime: bag those combs now, and move no comb to other hives. Only saw the entrance? Choose “not looked”.",
                    &["not looked", "none", "few", "many"],
                ),
                (
                    "How big the larvae are",
                    "Tiny: a few millimetres. Full-grown: about a centimetre, ready to leave.",
                    &["tiny", "full-grown", "both"],
                ),
                ("Larvae in the soil in front", "", &["not looked", "none", "larvae"]),
                ("Slime", "", &["not looked", "no", "yes"]),
                ("Adult beetles seen", "A number or a range, such as 5–19.", &[]),
                ("Frames of bees", "", &[]),
                ("Queen", "", &["not looked", "no sign", "eggs", "seen"]),
                ("Brood", "", &["not looked", "none", "patchy", "solid"]),
                ("Stores", "", &["not looked", "low", "enough", "heavy"]),
                (
                    "At the entrance",
                    "",
                    &["quiet", "busy", "fighting", "larvae leaving", "slime", "dead bees"],
                ),
                NOTE,
            ],
        },
        Blank::Split => &Words {
            title: "Split",
            hint: "Add the new hive to the yard first, then say here that it came from this one.",
            fields: &[
                ("Into which hive", "", &[]),
                ("The queen", "", &["stayed", "went along", "not known"]),
                ("Frames given", "", &[]),
                NOTE,
            ],
        },
        Blank::DeadOut => &Words {
            title: "What the dead hive showed",
            hint: "Close it to bees and beetles today; comb with larvae goes into the freezer or is burned. Brood scale or ropy cells? Stop, use no comb again and call the inspector.",
            fields: &[
                (
                    "What it died of, as far as you can tell",
                    "",
                    &[
                        "beetles",
                        "robbed out",
                        "no queen",
                        "starved",
                        "cold or damp",
                        "mites",
                        "poison",
                        "not known",
                    ],
                ),
                ("Slime", "", NO_YES),
                ("Frames spoilt", "", &[]),
                NOTE,
            ],
        },
        Blank::Patty => &Words {
            title: "Patty",
            hint: "Beetles breed in what the bees leave: take the rest out within days.",
            fields: &[("Patty", "", &["put in", "taken out"]), ("How much", "", &[]), NOTE],
        },
        Blank::Bait => &Words {
            title: "Bait",
            hint: "Beetles breed in bait that is left: take it out or renew it before eggs laid in it can become full-grown larvae.",
            fields: &[("Bait", "", &["put in", "renewed", "taken out"]), ("How much", "", &[]), NOTE],
        },
        Blank::Comb => &Words {
            title: "Comb taken out",
            hint: "Comb with larvae: bag it now and move none to other hives. Brood scale or ropy cells? Stop and call the inspector.",
            fields: &[
                ("Frames", "", &[]),
                ("Where to", "", &["freezer", "another hive", "melted", "burned", "store"]),
                (
                    "Why",
                    "",
                    &["larvae", "slime", "more than the bees can guard", "harvest", "something else"],
                ),
                NOTE,
            ],
        },
        Blank::Entrance => &Words {
            title: "Entrance width",
            hint: "Bees bearding in the heat, or a heavy flow? Open it a notch.",
            fields: &[("Width", "", &[]), NOTE],
        },
        Blank::Cleaned => &Words {
            title: "Barriers cleaned",
            hint: "A screen of 8 meshes to the inch lets beetles in.",
            fields: &[("What", "", &["slick board", "notch screen", "vent screen", "floor"]), NOTE],
        },
        Blank::HiveFacts => &Words {
            title: "Origin and build",
            hint: "",
            fields: &[
                ("It came from", "", &["a split", "bought", "a swarm", "something else"]),
                ("From whom or where", "", &[]),
                ("Frames it takes", "", &[]),
                ("Slick board", "", NO_YES),
                ("Notch screen", "", NO_YES),
            ],
        },
        Blank::Product => &Words {
            title: "Product with a label applied",
            hint: "The label is the law: what it allows on bees, how much, how long. Copy from it; this page advises no product and no dose. No roach, ant or garden poison in or near hives: it is illegal, kills bees and taints honey.",
            fields: &[
                ("Product, as on the label", "", &[]),
                REGISTRATION,
                ("Batch", "", &[]),
                ("Bought where", "Keep the receipt.", &[]),
                ("Amount used, with its unit", "For example 2 strips each.", &[]),
                ("Last day of treatment", "Empty: it is still in the hives.", &[]),
                (
                    "Days the label makes you wait before supers or harvest",
                    "Type 0 where the label says none. Supers on or off meanwhile: as the label says.",
                    &[],
                ),
                ("Label followed", "", NO_YES),
                ("Who applied it", "", &[]),
                ("Certificate number", "Where the product asks for one.", &[]),
                ("Site", "Where the product asks for it.", &[]),
                NOTE,
            ],
        },
        Blank::Ground => &Words {
            title: "Ground work",
            hint: "The label is the law: only what it allows on this ground, at its own rate. Powders: wear a dust mask, and none loose in a hive.",
            fields: &[
                ("Material", "", &[]),
                REGISTRATION,
                ("Rate, copied from the label", "", &[]),
                ("Area", "", &[]),
                ("Amount used, with its unit", "", &[]),
                ("Who did it", "", &[]),
                NOTE,
            ],
        },
        Blank::Rain => &Words {
            title: "Rain after a dry spell",
            hint: "From this day on the ground counts as moist. Moist ground lets larvae finish: look again around the dates that follow.",
            fields: &[("Dry days before", "", &[]), ("Rain", "", &[]), NOTE],
        },
        Blank::Test => &Words {
            title: "Test or inspection",
            hint: "",
            fields: &[
                ("Tested for", "", &[]),
                ("Method", "", &[]),
                ("Result", "", &[]),
                ("By whom", "", &[]),
                NOTE,
            ],
        },
        Blank::BroughtIn => &Words {
            title: "Bees or equipment brought in",
            hint: "",
            fields: &[
                ("What", "", &["bees", "queens", "comb", "used equipment"]),
                ("From whom", "", &[]),
                ("Their registration number", "", &[]),
                ("How much", "", &[]),
                NOTE,
            ],
        },
        Blank::YardFacts => &Words {
            title: "About this yard",
            hint: "Owner, phone and place stay out of every paper unless you choose otherwise.",
            fields: &[
                ("Soil", "", &["sand", "loam", "clay", "not known"]),
                ("Shade", "", &["full sun", "part shade", "shade"]),
                ("Surface", "", &["grass", "bare earth", "gravel", "paved", "mulch"]),
                ("Registration of the yard", "", &[]),
                ("Landowner", "", &[]),
                ("Phone", "", &[]),
                ("Where it is", "", &[]),
            ],
        },
        Blank::Climate => &Words {
            title: "Climate of this yard",
            hint: "The mean of the daily highs and of the daily lows of each month, from a weather office near you. Stage dates and seasons are worked out from them.",
            fields: &[("Where the figures are from", "", &[])],
        },
        Blank::Soil => &Words {
            title: "Soil looked at or measured",
            hint: "In front of the hives, where larvae would go down.",
            fields: &[
                ("Moisture", "", &["not looked", "dry", "moist", "wet"]),
                ("Warmth of the soil", "", &[]),
                ("At this depth", "", &[]),
                NOTE,
            ],
        },
        Blank::Harvest => &Words {
            title: "Harvest lot",
            hint: "Supers with few bees left are open to beetles: spin within 24 hours, 48 at the most. Slimed honey is not for people or bees.",
            fields: &[
                ("Supers", "", &[]),
                ("Bees off at", "", &[]),
                ("Into the room at", "", &[]),
                ("Extraction began", "", &[]),
                ("Extraction ended", "", &[]),
                ("Wet supers back on hives or in the freezer at", "", &[]),
                ("Warmth of the room", "", &[]),
                ("The room at its coolest", "", &[]),
                ("Humidity of the room", "", &[]),
                ("Honey", "", &[]),
                NOTE,
            ],
        },
        Blank::Freezer => &Words {
            title: "Comb in the freezer",
            hint: "The day of this entry is the day it went in.",
            fields: &[
                ("Frames", "", &[]),
                ("The freezer shows", "", &[]),
                (
                    "Frozen through since",
                    "Honey frames chill slowly: count from cold, not from the lid.",
                    &[],
                ),
                ("Out on", "", &[]),
                NOTE,
            ],
        },
        Blank::Stock => &Words {
            title: "Stock bought or used",
            hint: "What went out is written with a minus.",
            fields: &[("Item", "", &[]), ("Change", "", &[]), ("Price of all of it", "", &[]), NOTE],
        },
        Blank::KeeperFacts => &Words {
            title: "About you, for papers",
            hint: "",
            fields: &[
                ("Your name on papers", "", &[]),
                ("Registration or firm number", "", &[]),
                ("Applicator’s certificate", "", &[]),
                (
                    "Product records are kept for",
                    "5 years: European Union and United Kingdom. 3 years: the Australian code. 2 years: restricted-use products in the United States. Where your place asks for longer, keep them longer.",
                    &["5 years", "3 years", "2 years"],
                ),
            ],
        },
        Blank::Aims => &Words {
            title: "What you aim at",
            hint: "The clocks of the beetle go by these. Left empty, they say which common figure they use.",
            fields: &[
                ("Hours from bees off to spinning: goal", "", &[]),
                ("Hours from bees off to spinning: limit", "", &[]),
                ("Broods you notice when you look", "Of a hundred with larvae in sight.", &[]),
                ("Days between looks", "", &[]),
                ("Days bait may stay in", "", &[]),
            ],
        },
    }
}

/// A unit as people write it.
pub fn unit(code: &'static str) -> &'static str {
    match code {
        "C" => "°C",
        "F" => "°F",
        "m2" => "m²",
        "sq_ft" => "sq ft",
        code => code,
    }
}

/// Between the name of a field and what stands in it.
pub const IS: &str = ": ";
/// Between two fields.
pub const AND: &str = "; ";
/// Between what a line is about and what it says.
pub const SAYS: &str = ": ";
/// Before the twelve mean highs of a climate, and before its lows.
pub const MEANS: [&str; 2] = ["mean highs, January to December: ", "mean lows: "];
/// In the two fields of a month.
pub const HIGH_LOW: [&str; 2] = ["High", "Low"];
/// Heading of the months.
pub const MONTHS: &str = "Mean of the daily highs and lows";
/// Chooses figures that anybody may use.
pub const KNOWN: &str = "Begin with a known place";
/// None of them.
pub const OWN_FIGURES: &str = "Own figures";
/// The unit of all of them.
pub const MONTHS_UNIT: &str = "Unit of all figures";
/// Several hives, before their tags.
pub const HIVES: &str = "Hives ";
/// The keeper.
pub const KEEPER: &str = "Keeper";
/// After a product without a registration number.
pub const UNVERIFIED: &str = "; not verified, no registration number";
/// The way to the records of a hive or a yard.
pub const MORE: &str = "Write down more";
/// Under it, on a hive.
pub const MORE_HIVE: &str = "What you saw, split, comb, patties, cleaning, products.";
/// The day of a record.
pub const DAY: &str = "Day";
/// The day of a product.
pub const FIRST_DAY: &str = "First day";
/// Which hives.
pub const WHICH_HIVES: &str = "Which hives";
/// Ticks every hive.
pub const ALL_HIVES: &str = "All of them";
/// Unticks every hive.
pub const NO_HIVES: &str = "None of them";
/// Refused: no hive.
pub const CHOOSE_HIVE: &str = "Choose at least one hive.";
/// Which yard.
pub const YARD: &str = "Yard";
/// Saves the record.
pub const SAVE: &str = "Save this entry";
/// No answer to a question that may stay open.
pub const BLANK: &str = "left empty";
/// No hive chosen yet.
pub const CHOOSE: &str = "Choose a hive";
/// The fields of a long form that few people need every time.
pub const FOLD: &str = "More fields";
/// Must be filled in.
pub const LACKS: &str = "This is needed.";
/// A day or an hour before an earlier one.
pub const BACKWARDS: &str = "This lies before the day or the hour above it.";
/// A month's mean low above its mean high.
pub const UPSIDE_DOWN: &str = "This low is above the high of the month.";
/// An hour after the one that the clock of the yard shows.
pub const NOT_YET: &str = "This hour has not come yet. Is the phone’s clock right?";
/// The room was cooler than at its coolest.
pub const COOLEST_ABOVE: &str = "This is above the warmth of the room.";
/// A size of larvae that were not there.
pub const NO_LARVAE: &str = "You wrote that there are none. Leave this empty, or say how many.";
/// A size of larvae that nobody looked for.
pub const NOT_LOOKED: &str = "You wrote that you did not look. Leave this empty, or say how many.";
/// Rain of nothing.
pub const NO_RAIN: &str = "No rain: nothing to write down.";
/// Beside comb with larvae or slime that went to another hive.
pub const COMB_WITH_LARVAE: &str = "Larvae go along with that comb. Freeze or melt it; give it to no hive.";
/// Not a day and an hour.
pub const NO_TIME: &str = "Choose a day and an hour.";
/// A colony split into itself.
pub const SPLIT_OF_ITSELF: &str = "A colony cannot be split into itself or into one that it came from.";
/// Something to mend above.
pub const MEND: &str = "See the marked fields above.";
/// Records on the first page of the Book.
pub const TITLE: &str = "Records";
/// What they are.
pub const WHAT: &str =
    "Products, harvest, freezer, stock and whatever else was written down beside the traps.";
/// Writes one more.
pub const WRITE: &str = "Write one down";
/// Heading of the list.
pub const SO_FAR: &str = "Written down so far";
/// The address names nothing that the blank can be about.
pub const NOT_HERE: &str = "This is not in the book any more. Go back to the list.";
/// None so far.
pub const NONE: &str = "None recorded.";
/// The way back to the list.
pub const BACK: &str = "Records";

/// At most `most` characters, and `over` more were typed.
pub fn too_long(over: usize, most: u16) -> String {
    ["At most ", &most.to_string(), " characters: ", &over.to_string(), " too many."].concat()
}

/// Key behind the refusal of a day before the hives came into the book.
pub const EARLIER: &str = "They stood there already: begin them on that day, and save";

/// A number outside its ends.
pub fn between(least: i64, most: i64, code: &'static str) -> String {
    let most = most.to_string();
    let most = if code.is_empty() { most } else { with_unit(&most, unit(code)) };
    ["From ", &least.to_string(), " to ", &most, "."].concat()
}

/// Supers may be on from that day.
pub fn clear_from(day: &str) -> String {
    ["Supers may be on from ", day, ", by the days you typed from the label"].concat()
}

/// A product without an end.
pub const STILL_IN: &str = "Still in the hives: no last day written down, so no supers on";

/// The record must be kept.
pub fn keep_until(day: &str) -> String {
    ["Keep this record until ", day].concat()
}

/// A lot's number.
pub fn lot(number: &str) -> String {
    ["Lot ", number].concat()
}

/// What was seen, and when.
pub fn on(said: &str, day: Day) -> String {
    [&date(day), SAYS, said].concat()
}

/// Behind the name of a known climate whose figures the keeper has changed.
pub const FIGURES_CHANGED: &str = "; figures changed";
/// In the row of a hive.
pub const LARVAE_FEW: &str = "! larvae few, ";
/// In the row of a hive.
pub const LARVAE_MANY: &str = "! larvae many, ";
/// In the row of a hive.
pub const LEAVING: &str = "! larvae outside, ";
/// In the row of a hive.
pub const SLIME: &str = "! slime, ";

/// What the last look found, and when.
pub fn seen(what: &str, day: Day, today: Day) -> String {
    [what, &near_and_how_far(day, today)].concat()
}

/// What was written, for the undo bar.
pub fn saved(title: &str) -> String {
    [title, ": written down"].concat()
}
