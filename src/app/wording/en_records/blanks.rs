//! English: the blanks, each with its fields and their words.

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
const DISEASE: (&str, &str, &[&str]) = (
    "Signs of brood disease",
    "Brood scale or ropy cells: stop, close the hive, move no comb, call the inspector.",
    &["not looked", "no", "suspected"],
);
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
                ("Frames of drawn comb", "", &[]),
                ("Queen", "", &["not looked", "no sign", "eggs", "seen"]),
                ("Brood", "", &["not looked", "none", "patchy", "solid"]),
                DISEASE,
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
                DISEASE,
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
            hint: "Bees bearding in the heat, or a heavy flow? Open it wider.",
            fields: &[("Width", "", &[]), NOTE],
        },
        Blank::Cleaned => &Words {
            title: "Barriers cleaned",
            hint: "A screen of 8 meshes to the inch lets beetles in.",
            fields: &[("What", "", &["slick board", "notch screen", "vent screen", "floor"]), NOTE],
        },
        Blank::Shell => &Words {
            title: "Closed up?",
            hint: "What lets beetles in, and where they hide from the bees. What stays empty keeps what was written down last.",
            fields: &[
                ("Widest crack", "0 when all are sealed. Beetles pass above 2 mm.", &[]),
                ("Length of all cracks", "For the sealant.", &[]),
                (
                    "Notch of the inner cover",
                    "Open: beetles pass. Screened: air passes and they do not.",
                    &["not looked", "no notch", "screened", "open"],
                ),
                ("Slick board", "", &["not looked", "no board", "clean", "dirty"]),
                ("Room that the bees do not cover", "", &["not looked", "no", "yes"]),
                ("Burr comb", "", &["not looked", "no", "yes"]),
                NOTE,
            ],
        },
        Blank::Stand => &Words {
            title: "Where it stands",
            hint: "From one corner of the yard, the same for all hives: how far to the side, and how far along. Pacing it out is enough.",
            fields: &[("To the side", "", &[]), ("Along", "", &[])],
        },
        Blank::Trial => &Words {
            title: "Hives of a trial",
            hint: "Let the draw decide which hives get it: whoever chooses, chooses the better ones.",
            fields: &[
                ("What is tried", "", &[]),
                ("These hives", "", &["get it", "go without"]),
                ("Until", "The day on which you will count, decided beforehand.", &[]),
                NOTE,
            ],
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
                ("Paved ground among the hives", "", &[]),
                ("Way there", "", &[]),
                ("Getting ready and packing up", "", &[]),
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
            fields: &[
                ("Item", "A trap: the name of its kind.", &[]),
                ("Change", "", &[]),
                ("What it is", "", &["traps", "oil", "bait", "screen", "sealant", "something else"]),
                ("Price of all of it", "", &[]),
                ("Good until", "Oil turns rancid: copy the day from the bottle.", &[]),
                NOTE,
            ],
        },
        Blank::Trip => &Words {
            title: "Trip: taken and brought home",
            hint: "From the oil that came home Load learns how much your traps really take, and what reserve is enough.",
            fields: &[
                ("Oil taken along", "", &[]),
                ("Oil brought home", "", &[]),
                ("Traps taken along", "", &[]),
                ("Traps brought home", "Those not put in.", &[]),
                ("On the way, there and back", "", &[]),
                NOTE,
            ],
        },
        Blank::Costs => &Words {
            title: "What your work costs",
            hint: "For the cost of a hive and season. What stays empty is left out and said so.",
            fields: &[
                ("A trip", "Fuel and wear, for one drive to the yards and back.", &[]),
                ("An hour of your work", "Empty: work is not counted as a cost.", &[]),
                ("Seasons that a reusable trap lasts", "", &[]),
                NOTE,
            ],
        },
        Blank::Verdict => &Words {
            title: "For next year",
            hint: "What you tried, and what you will do with it.",
            fields: &[
                ("What it is about", "", &[]),
                ("Next year", "", &["keep it", "change it", "drop it", "not known yet"]),
                NOTE,
            ],
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
                ("Days between cleanings of slick boards", "", &[]),
            ],
        },
    }
}
