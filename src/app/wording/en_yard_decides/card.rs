//! English: the card of the same day.

use crate::almanac::day::Day;
use crate::app::wording::en::{counted, date};
use crate::book::urgent::{Because, Fates};

/// Heading.
pub fn title(because: Because) -> &'static str {
    match because {
        Because::Slime => "Today: slime or many larvae",
        Because::Dead => "Today: a dead-out",
        Because::Disease => "Today: brood disease is suspected",
    }
}

/// "Since Wed, 28 October 2026. …".
pub fn since(day: Day) -> String {
    ["Since ", &date(day), ". The card stays until it is done with."].concat()
}

/// A dead hive that nobody ended.
pub const STILL_IN_CARE: &str = "This hive still counts as in care, with traps to fill: under “Dead, sold, joined or gone”, further down this page, say that it is dead.";

/// What a hive wants, in a list.
pub fn wants(because: Because) -> &'static str {
    match because {
        Because::Slime => "slime or many larvae, see its card",
        Because::Dead => "a dead-out, comb not accounted for",
        Because::Disease => "brood disease suspected, see its card",
    }
}

/// Stop.
pub const STOP: &str =
    "Brood scale or ropy cells? Stop. Call the inspector; no comb of this hive is used again.";
/// Why.
pub const STOP_WHY: &str = "Foulbrood outlives freezing. If it may be that, no comb, box or tool goes anywhere before the inspector has seen it.";
/// Close it, of a living colony.
pub const NARROW: &str = "Close it, and make the entrance as small as it goes, so that no bee robs it.";
/// Hands.
pub const HANDS: &str = "Wash hands and tools before the next hive, or open no other one today.";
/// Neighbours of it.
pub const NO_SALE: &str = "Move, sell, join and split no hive of this yard until you know.";
/// The same behind the names of such hives.
pub const NO_SALE_EITHER: &str =
    ". Move, sell, join and split no other hive of that yard either until you know.";
/// Before what was tested for.
pub const TESTED: &str = "Test for ";
/// What ends the card.
pub const UNTIL: &str = "A test alone does not end this card. Once the laboratory or the inspector says that it is none, look again: a later look with “no” for signs of brood disease ends it.";
/// What ends that of slime.
pub const UNTIL_NONE: &str = "This card goes once a later look finds neither slime nor many larvae.";
/// Key.
pub const TO_TEST: &str = "Write down the test";
/// Close.
pub const SHUT: &str = "Close it now, so that no bee robs it: robbing carries everything home.";
/// Take combs out.
pub const BAG: &str =
    "Take out every comb with larvae or slime now. Bag it and freeze it, or melt or burn it.";
/// Fate of comb of a dead hive.
pub const FATE: &str = "Give every comb a fate: freeze, melt or burn. Larvae in it go on without bees.";
/// Shrink.
pub const SHRINK: &str = "Take off what the bees do not cover.";
/// Traps.
pub const TRAPS: &str = "Fresh traps in every box that stays: replace, and log it here.";
/// Traps of a dead hive.
pub const TRAPS_BACK: &str = "Take the traps out and back into stock.";
/// No comb.
pub const NO_MOVE: &str = "Move no comb to other hives.";
/// Dates.
pub const DATES: &str =
    "When larvae leave and young beetles come stands further down this page, once the yard has a climate.";
/// Ground.
pub const GROUND: &str = "Treat the ground round it, if the label allows it.";
/// Ground done.
pub const GROUND_DONE: &str = "Ground work has been written down since.";
/// Neighbours.
pub const NEIGHBOURS: &str = "Open the hives beside it, and as many more as the draw says.";
/// Key.
pub const TO_COMB: &str = "Write down comb taken out";
/// Key.
pub const TO_FREEZER: &str = "Freezer";
/// Key.
pub const TO_SHRINK: &str = "Bees on comb";
/// Key.
pub const TO_GROUND: &str = "Ground";
/// Key.
pub const TO_OPEN: &str = "Hives to open";
/// Nobody counted.
pub const NO_COUNT: &str = "How many combs it has is not written down: with the frames of comb in a look, or the frames of a box, what is open can be counted.";
/// All done.
pub const ALL_DONE: &str = "Every comb is accounted for.";
/// Given to another hive.
pub const GIVEN: &str = "Comb went to another hive: look into that one too.";

/// "5 of 9 frames not accounted for".
pub fn open(open: u32, combs: u32) -> String {
    [&open.to_string(), " of ", &counted(combs, "frame", "frames"), " not accounted for"].concat()
}

/// Which combs are meant.
pub fn meant(because: Because) -> &'static str {
    match because {
        Because::Slime => "Counted: combs that the bees did not cover at that look.",
        Because::Dead => "Counted: every comb of the hive.",
        Because::Disease => "",
    }
}

/// "So far: 4 frozen, 1 melted".
pub fn fates(fates: &Fates) -> String {
    let parts = [
        (fates.frozen, " to the freezer"),
        (fates.melted, " melted"),
        (fates.burned, " burned"),
        (fates.stored, " in store"),
        (fates.given, " to another hive"),
    ];
    let mut said = "So far: ".to_owned();
    let before = said.len();
    for (count, what) in parts.into_iter().filter(|(count, _)| *count > 0) {
        if said.len() > before {
            said.push_str(", ");
        }
        said.push_str(&count.to_string());
        said.push_str(what);
    }
    if said.len() == before {
        said.push_str("none taken out");
    }
    said
}
