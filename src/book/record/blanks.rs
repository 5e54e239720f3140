//! The blanks: one table for each kind of record.
//!
//! Names and words stand so in files of format version 2, 3 and 4 and are never changed: what is missing means one more
//! version.
//! The fields for products follow what registers of treatments ask for: first day, name, quantity, supplier, hives,
//! withdrawal period even where it is zero, and its duration (Regulation (EU) 2019/6, Article 108; the United Kingdom's
//! lists are alike), and who applied it, with certificate and site (7 U.S.C. 136i-1; 7 CFR part 110 on restricted-use
//! pesticides). Which places ask for what, the keeper knows; no product, dose or interval is supplied here.

use crate::almanac::quantity::Decimal;

/// What a record is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum About {
    /// One hive.
    Hive,
    /// One hive or more of one yard.
    Hives,
    /// A yard, and those of its hives that are named.
    Place,
    /// A yard.
    Yard,
    /// The keeper.
    Keeper,
}

/// What a field asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ask {
    /// One of these words.
    Word(&'static [&'static str]),
    /// One or more of these words.
    Words(&'static [&'static str]),
    /// A count, exact or as a range, at most a million.
    Count,
    /// A number between two ends, both included, in one of these units; without units a plain number.
    Number {
        /// Codes of the units.
        units: &'static [&'static str],
        /// The least it can be.
        least: i64,
        /// The most it can be.
        most: i64,
    },
    /// A text of at most so many characters.
    Text(u16),
    /// A day.
    Day,
    /// A day and the hour by the clock of the yard.
    Time,
    /// Another hive.
    Hive,
}

impl Ask {
    /// Whether `number` lies between the ends of a number field.
    pub fn holds(&self, number: Decimal) -> bool {
        let Ask::Number { least, most, .. } = self else { return false };
        (least * 1_000_000..=most * 1_000_000).contains(&number.millionths())
    }
}

/// A field of a blank.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Field {
    /// Its name in files and tables.
    pub name: &'static str,
    /// What it asks for.
    pub ask: Ask,
    /// Whether the record is nothing without it.
    pub must: bool,
    /// Left out of papers that leave the phone unless it is asked for.
    pub private: bool,
    /// The version of the format that knows it first.
    pub since: u32,
}

const fn field(name: &'static str, ask: Ask) -> Field {
    Field { name, ask, must: false, private: false, since: 2 }
}

const fn must(name: &'static str, ask: Ask) -> Field {
    Field { name, ask, must: true, private: false, since: 2 }
}

const fn private(name: &'static str, ask: Ask) -> Field {
    Field { name, ask, must: false, private: true, since: 2 }
}

const fn third(field: Field) -> Field {
    Field { since: 3, ..field }
}

const fn fourth(field: Field) -> Field {
    Field { since: 4, ..field }
}

const fn number(units: &'static [&'static str], most: i64) -> Ask {
    Ask::Number { units, least: 0, most }
}

const fn from_one(units: &'static [&'static str], most: i64) -> Ask {
    Ask::Number { units, least: 1, most }
}

const NOTE: Field = private("note", Ask::Text(500));
const NO_YES: Ask = Ask::Word(&["no", "yes"]);
const SEEN: Ask = Ask::Word(&["not_looked", "no", "yes"]);
const SUSPECTED: Ask = Ask::Word(&["not_looked", "no", "suspected"]);
const PLACE: Ask = Ask::Number { units: &["m", "ft"], least: -10_000, most: 10_000 };
/// In the order of [`VolumeUnit::ALL`](crate::almanac::quantity::VolumeUnit::ALL).
const OIL: Ask = number(&["mL", "L", "us_fl_oz", "imp_fl_oz"], 1_000_000);
const MINUTES: Ask = number(&["min"], 1440);
const FRAMES: Ask = number(&[], 1000);
const WARMTH: Ask = Ask::Number { units: &["C", "F"], least: -60, most: 212 };
const NAME: Ask = Ask::Text(60);
const NUMBER_TEXT: Ask = Ask::Text(40);

macro_rules! blanks {
    ($($blank:ident = $name:literal, $about:ident, $ended:literal, $fields:ident $doc:literal [$($field:expr),* $(,)?];)*) => {
        /// A kind of record.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Blank { $(#[doc = $doc] $blank,)* }

        $(const $fields: &[Field] = &[$($field),*];)*

        impl Blank {
            /// Every one, in the order in which they are offered.
            pub const ALL: [Blank; [$($name),*].len()] = [$(Blank::$blank),*];

            /// Its name in files.
            pub fn name(self) -> &'static str {
                match self { $(Blank::$blank => $name,)* }
            }

            /// What it is about.
            pub fn about(self) -> About {
                match self { $(Blank::$blank => About::$about,)* }
            }

            /// Whether it can be about a hive whose care has ended.
            pub fn after_end(self) -> bool {
                match self { $(Blank::$blank => $ended,)* }
            }

            /// The version of the format that knows it first.
            pub fn since(self) -> u32 {
                match self {
                    Blank::Bait | Blank::Climate | Blank::Soil | Blank::Aims => 3,
                    Blank::Shell | Blank::Stand | Blank::Trial | Blank::Trip | Blank::Costs | Blank::Verdict => 4,
                    _ => 2,
                }
            }

            /// Where the twelve highs of a climate begin among its fields, and how many fields on the low of each stands.
            pub const fn months() -> (usize, usize) {
                (1, 12)
            }

            /// Its fields.
            pub fn fields(self) -> &'static [Field] {
                match self { $(Blank::$blank => $fields,)* }
            }
        }
    };
}

blanks! {
    Look = "look", Hive, false, LOOK "What was seen in an open hive." [
        must("larvae", Ask::Word(&["not_looked", "none", "few", "many"])),
        third(field("larvae_size", Ask::Word(&["tiny", "full_grown", "both"]))),
        third(field("soil", Ask::Word(&["not_looked", "none", "larvae"]))),
        field("slime", Ask::Word(&["not_looked", "no", "yes"])),
        field("adults", Ask::Count),
        field("frames_of_bees", FRAMES),
        fourth(field("frames_of_comb", FRAMES)),
        field("queen", Ask::Word(&["not_looked", "none", "eggs", "queen"])),
        field("brood", Ask::Word(&["not_looked", "none", "patchy", "solid"])),
        fourth(field("brood_disease", SUSPECTED)),
        field("stores", Ask::Word(&["not_looked", "low", "enough", "heavy"])),
        field("entrance", Ask::Words(&["quiet", "busy", "fighting", "larvae_leaving", "slime", "dead_bees"])),
        NOTE,
    ];
    Split = "split", Hive, false, SPLIT "A colony divided: this hive gave bees to another." [
        must("into", Ask::Hive),
        field("queen", Ask::Word(&["stayed", "went", "not_known"])),
        field("frames", FRAMES),
        NOTE,
    ];
    DeadOut = "dead_out", Hive, true, DEAD_OUT "What a dead colony showed." [
        must("causes", Ask::Words(&[
            "beetles", "robbed", "no_queen", "starved", "cold_or_damp", "mites", "poison", "not_known",
        ])),
        field("slime", NO_YES),
        fourth(field("brood_disease", SUSPECTED)),
        field("frames_spoilt", FRAMES),
        NOTE,
    ];
    Patty = "patty", Hive, false, PATTY "A pollen or protein patty put in or taken out." [
        must("did", Ask::Word(&["put_in", "taken_out"])),
        field("amount", number(&["g", "oz"], 100_000)),
        NOTE,
    ];
    Bait = "bait", Hives, false, BAIT "Bait put where beetles are to be caught, or taken away." [
        must("did", Ask::Word(&["put_in", "renewed", "taken_out"])),
        field("amount", number(&["g", "oz"], 100_000)),
        NOTE,
    ];
    Comb = "comb", Hive, true, COMB "Comb taken out of a hive." [
        must("frames", FRAMES),
        must("to", Ask::Word(&["freezer", "another_hive", "melted", "burned", "store"])),
        field("why", Ask::Word(&["larvae", "slime", "unguarded", "harvest", "other"])),
        NOTE,
    ];
    Entrance = "entrance", Hive, false, ENTRANCE "The width of the entrance." [
        must("width", number(&["mm", "in"], 1000)),
        NOTE,
    ];
    Cleaned = "cleaned", Hive, true, CLEANED "Barriers and floors cleaned." [
        must("what", Ask::Words(&["slick_board", "notch_screen", "vent_screen", "floor"])),
        NOTE,
    ];
    Shell = "shell", Hive, false, SHELL "What a hive lets in, and where beetles hide in it." [
        field("crack", number(&["mm", "in"], 1000)),
        field("crack_length", number(&["cm", "in"], 10_000)),
        field("notch", Ask::Word(&["not_looked", "none", "screened", "open"])),
        field("slick_board", Ask::Word(&["not_looked", "none", "clean", "dirty"])),
        field("empty_space", SEEN),
        field("burr_comb", SEEN),
        NOTE,
    ];
    Stand = "stand", Hive, true, STAND "Where a hive stands in its yard, from a corner the keeper chose." [
        must("across", PLACE),
        must("along", PLACE),
    ];
    Trial = "trial", Hives, true, TRIAL "Hives of a trial that are done with, or without, what is tried. Those of both sides are pairs in their order." [
        must("named", NAME),
        must("side", Ask::Word(&["with", "without"])),
        field("until", Ask::Day),
        NOTE,
    ];
    HiveFacts = "hive_facts", Hive, true, HIVE_FACTS "Where a hive comes from and how it is built." [
        field("source", Ask::Word(&["split", "bought", "swarm", "other"])),
        field("source_of", NAME),
        field("frames", FRAMES),
        field("slick_board", NO_YES),
        field("notch_screen", NO_YES),
    ];
    Product = "product", Hives, false, PRODUCT "A product with a label, applied to hives." [
        must("product", Ask::Text(60)),
        field("registration", NUMBER_TEXT),
        field("batch", NUMBER_TEXT),
        field("bought", Ask::Text(100)),
        must("amount", NUMBER_TEXT),
        field("end", Ask::Day),
        must("interval_days", number(&[], 999)),
        field("label_followed", NO_YES),
        must("who", NAME),
        field("certificate", NUMBER_TEXT),
        field("site", Ask::Text(100)),
        NOTE,
    ];
    Ground = "ground", Place, false, GROUND "Work on the ground of a yard." [
        must("material", NAME),
        field("registration", NUMBER_TEXT),
        field("rate", Ask::Text(200)),
        field("area", number(&["m2", "sq_ft"], 1_000_000)),
        field("amount", NUMBER_TEXT),
        field("who", NAME),
        NOTE,
    ];
    Rain = "rain", Yard, false, RAIN "Rain after a dry spell." [
        field("dry_days", number(&[], 1000)),
        field("rain", number(&["mm", "in"], 5000)),
        NOTE,
    ];
    Test = "test", Place, true, TEST "A test or an inspection by somebody else." [
        must("for", NAME),
        field("method", Ask::Text(100)),
        must("result", Ask::Text(200)),
        field("by", NAME),
        NOTE,
    ];
    BroughtIn = "brought_in", Place, false, BROUGHT_IN "Bees or used equipment that came from elsewhere." [
        must("what", Ask::Words(&["bees", "queens", "comb", "used_equipment"])),
        must("from", NAME),
        field("registration", NUMBER_TEXT),
        field("amount", NUMBER_TEXT),
        NOTE,
    ];
    YardFacts = "yard_facts", Yard, true, YARD_FACTS "What a yard is like." [
        field("soil", Ask::Word(&["sand", "loam", "clay", "not_known"])),
        field("shade", Ask::Word(&["full_sun", "part_shade", "shade"])),
        field("surface", Ask::Word(&["grass", "bare", "gravel", "paved", "mulch"])),
        field("registration", NUMBER_TEXT),
        fourth(field("paved", number(&["m2", "sq_ft"], 1_000_000))),
        fourth(field("travel", MINUTES)),
        fourth(field("set_up", MINUTES)),
        private("owner", NAME),
        private("phone", NUMBER_TEXT),
        private("where", Ask::Text(100)),
    ];
    Climate = "climate", Yard, true, CLIMATE "What the months are like in a yard: mean highs and lows of the air." [
        private("named", Ask::Text(100)),
        must("high_1", WARMTH),
        must("high_2", WARMTH),
        must("high_3", WARMTH),
        must("high_4", WARMTH),
        must("high_5", WARMTH),
        must("high_6", WARMTH),
        must("high_7", WARMTH),
        must("high_8", WARMTH),
        must("high_9", WARMTH),
        must("high_10", WARMTH),
        must("high_11", WARMTH),
        must("high_12", WARMTH),
        must("low_1", WARMTH),
        must("low_2", WARMTH),
        must("low_3", WARMTH),
        must("low_4", WARMTH),
        must("low_5", WARMTH),
        must("low_6", WARMTH),
        must("low_7", WARMTH),
        must("low_8", WARMTH),
        must("low_9", WARMTH),
        must("low_10", WARMTH),
        must("low_11", WARMTH),
        must("low_12", WARMTH),
    ];
    Soil = "soil", Yard, false, SOIL "The ground of a yard, looked at or measured." [
        must("moisture", Ask::Word(&["not_looked", "dry", "moist", "wet"])),
        field("temperature", WARMTH),
        field("depth", number(&["cm", "in"], 200)),
        NOTE,
    ];
    Harvest = "harvest", Place, true, HARVEST "A harvest lot." [
        field("supers", FRAMES),
        must("bees_off", Ask::Time),
        field("into_room", Ask::Time),
        field("extraction_began", Ask::Time),
        field("extraction_ended", Ask::Time),
        third(field("supers_back", Ask::Time)),
        field("room", WARMTH),
        third(field("room_low", WARMTH)),
        field("humidity", number(&["%"], 100)),
        field("honey", number(&["kg", "lb"], 1_000_000)),
        NOTE,
    ];
    Freezer = "freezer", Keeper, true, FREEZER "A batch of comb in the freezer." [
        must("frames", FRAMES),
        field("freezer", WARMTH),
        field("cold_since", Ask::Day),
        field("out", Ask::Day),
        NOTE,
    ];
    Stock = "stock", Keeper, true, STOCK "Something bought, used up or given away." [
        must("item", NAME),
        must("change", Ask::Number { units: &["pieces", "mL", "L", "g", "kg"], least: -1_000_000, most: 1_000_000 }),
        fourth(field("sort", Ask::Word(&["trap", "oil", "bait", "screen", "sealant", "other"]))),
        field("price", number(&[], 1_000_000)),
        fourth(field("good_until", Ask::Day)),
        NOTE,
    ];
    Trip = "trip", Keeper, true, TRIP "What was taken along on a trip, and what came home." [
        field("oil_taken", OIL),
        field("oil_back", OIL),
        field("traps_taken", number(&[], 10_000)),
        field("traps_back", number(&[], 10_000)),
        field("travel", MINUTES),
        NOTE,
    ];
    Costs = "costs", Keeper, true, COSTS "What the keeper reckons work with." [
        field("trip", number(&[], 1_000_000)),
        field("hour", number(&[], 1_000_000)),
        field("trap_seasons", from_one(&[], 50)),
        NOTE,
    ];
    Verdict = "verdict", Yard, true, VERDICT "What the keeper made of a way of doing it, and will do next year." [
        must("about", NAME),
        must("next", Ask::Word(&["keep", "change", "drop", "not_known"])),
        NOTE,
    ];
    KeeperFacts = "keeper_facts", Keeper, true, KEEPER_FACTS "What papers ask about the keeper." [
        field("name", NAME),
        field("registration", NUMBER_TEXT),
        field("certificate", NUMBER_TEXT),
        field("keep_years", Ask::Word(&["5", "3", "2"])),
    ];
    Aims = "aims", Keeper, true, AIMS "What the keeper aims at: hours of a honey lot, days between looks." [
        field("goal_hours", from_one(&[], 240)),
        field("limit_hours", from_one(&[], 240)),
        field("notice", from_one(&["%"], 100)),
        field("look_every", from_one(&[], 90)),
        field("bait_days", from_one(&[], 60)),
        fourth(field("clean_every", from_one(&[], 366))),
    ];
}
