//! English: the kinds of trap.

use super::en::with_unit;
use super::en_typed;
use crate::almanac::trap::TrapForm;
use crate::app::kinds::draft::Wrong;

/// Heading of the list.
pub const TITLE: &str = "Kinds of trap";
/// Above the list.
pub const WHAT: &str =
    "Your traps, in your words. Every sum of oil and every refill day is reckoned from what stands here.";
/// No kind yet.
pub const NONE: &str = "No kind of trap is described yet.";
/// Key.
pub const ADD: &str = "Describe a kind of trap";
/// Key.
pub const CHANGE: &str = "Change";
/// Key.
pub const RETIRE: &str = "Offer it no longer";
/// Before it is retired.
pub const RETIRE_HOW: &str = "Traps of this kind that are in hives stay there; new ones are no longer offered. Undo it in the history.";
/// Mark of a retired kind.
pub const RETIRED: &str = "No longer offered";
/// Mark of a kind of the demonstration.
pub const DEMO: &str = "Part of the demonstration";
/// What was done, for the undo bar.
pub fn retired_act(name: &str) -> String {
    ["No longer offered: ", name].concat()
}

/// Heading of the form.
pub const NEW: &str = "A kind of trap";
/// Key.
pub const SAVE: &str = "Keep this kind";
/// What was done, for the undo bar.
pub fn act(name: &str) -> String {
    ["Kind of trap kept: ", name].concat()
}

/// A field needs mending.
pub const MEND: &str = "Mend the marked fields first. What you typed stays.";
/// The kind is not in the book.
pub const UNKNOWN: &str = "This kind of trap is not in the book.";
/// The book did not take it.
pub const NOT_KEPT: &str = "Not kept.";

/// Field: name.
pub const NAME: &str = "Your word for it";
/// Another kind has that name.
pub const TWICE: &str = "Another kind has this name. It may stay: what each holds is then shown beside it.";
/// Choice: form.
pub const FORM: &str = "How it is built";
/// Form.
pub const FORM_BETWEEN: &str = "Hangs between frames, open";
/// Form.
pub const FORM_ONE: &str = "Lidded, one oil well";
/// Form.
pub const FORM_TWO: &str = "Lidded, two oil wells";
/// Form.
pub const FORM_FLOOR: &str = "On the floor, solid lure, no oil";
/// Choice: bait.
pub const BAIT: &str = "Bait well";
/// Bait.
pub const BAIT_OFF: &str = "not used";
/// Bait.
pub const BAIT_ON: &str = "in use";
/// Reason.
pub const BAIT_WHY: &str = "Off unless you turn it on: over a screened floor, bait may draw beetles in (common practice, no source).";
/// Choice: reusable.
pub const REUSE: &str = "After it is full";
/// Reusable.
pub const REUSE_NO: &str = "thrown away";
/// Reusable.
pub const REUSE_YES: &str = "emptied and used again";
/// Field: capacity.
pub const HOLDS: &str = "Holds, brim\u{2011}full";
/// Under the field.
pub const HOLDS_HINT: &str = "All oil wells together. Empty while nobody has measured it: its oil is then left out of the sums, and they say so.";
/// Field: fill.
pub const FILL: &str = "Filled to";
/// Field: days.
pub const DAYS: &str = "Longest days between services";
/// Opens the sizes.
pub const SIZES: &str = "Sizes";
/// Heading.
pub const INNER: &str = "Inside, of the oil well";
/// Under the heading.
pub const INNER_HINT: &str = "For the spill angle and the depth of the oil.";
/// Heading.
pub const OUTER: &str = "Outside";
/// Under the heading.
pub const OUTER_HINT: &str = "For “does it fit”.";
/// Sides, in the order length, width, depth.
pub const SIDES: [&str; 3] = ["Length", "Width", "Depth"];
/// Opens the packs.
pub const PACKS: &str = "How it is sold";
/// Under the heading.
pub const PACKS_HINT: &str = "All prices in one currency.";
/// Field: pieces.
pub const PIECES: &str = "Pieces in pack";
/// Field: price.
pub const PRICE: &str = "Price of pack";
/// A pack without a price.
pub const NO_PRICE: &str = "No price is not free: this pack is left out of the sum.";
/// Key.
pub const MORE_PACKS: &str = "One more pack";
/// Opens the points.
pub const POINTS: &str = "Walls not straight?";
/// Under the heading.
pub const POINTS_HINT: &str = "A level read as a share of the depth is not the same share of the volume unless the walls are straight. Pour in measured oil and read the level: lowest first. Between the points a straight line is taken.";
/// Field: level.
pub const LEVEL: &str = "Level";
/// Field: oil.
pub const OIL: &str = "Oil in it";
/// Key.
pub const MORE_POINTS: &str = "One more point";
/// Answer.
pub const TAKES: &str = "One fill takes";
/// Answer.
pub const SPILLS: &str = "Open trap goes over at a tilt of";
/// The usual fill.
pub const HALF: &str = "Half full. Fuller spills on bees.";
/// Sides are missing.
pub const NO_SIDES: &str = "Type the inside length and depth for the spill angle.";
/// A lid changes it.
pub const LID: &str = "Lidded: the lid decides, not the tilt. Lid on before you move it.";

/// Under the sides of two groups one name stands twice for eyes, not for ears.
pub fn inside(side: &str) -> String {
    [side, " inside"].concat()
}

/// As [`inside`].
pub fn outside(side: &str) -> String {
    [side, " outside"].concat()
}

/// How a trap is built.
pub fn built(form: TrapForm) -> &'static str {
    match form {
        TrapForm::BetweenFrame => "between frames",
        TrapForm::Lidded { wells: 1, bait: false } => "lidded, one well",
        TrapForm::Lidded { wells: 1, bait: true } => "lidded, one well, bait in use",
        TrapForm::Lidded { bait: false, .. } => "lidded, two wells",
        TrapForm::Lidded { bait: true, .. } => "lidded, two wells, bait in use",
        TrapForm::FloorLure => "on the floor, no oil",
    }
}

/// "holds 20 mL, filled to 50 %".
pub fn holds(capacity: &str, fill: &str) -> String {
    ["holds ", capacity, ", filled to ", fill].concat()
}

/// Nobody has measured it.
pub const NOT_MEASURED: &str = "not measured yet";

/// "at most 14 days".
pub fn at_most(days: &str) -> String {
    ["at most ", days, " between services"].concat()
}

/// "packs of 1, 5, 12".
pub fn packs(sizes: &str) -> String {
    ["packs of ", sizes].concat()
}

/// "20 mL × 50 % = 10 mL".
pub fn fill_sum(capacity: &str, share: &str, each: &str) -> String {
    [capacity, " × ", share, " of its volume =\u{a0}", each].concat()
}

/// Asks about a capacity.
pub fn sure(capacity: &str) -> String {
    ["Yes, one trap holds ", capacity].concat()
}

/// A full trap and the angle at which it spills.
pub fn too_full(degrees: &str) -> String {
    ["Spills on bees at a tilt of ", degrees, ". Half full is safer."].concat()
}

/// Fuller than half, with the angle.
pub fn full(degrees: &str) -> String {
    ["Over 60\u{a0}% full: spills at a tilt of ", degrees, "."].concat()
}

/// Very full, angle unknown.
pub const TOO_FULL: &str = "Over 75\u{a0}% full: a small tilt spills it on bees. Half full is safer.";

/// A row by its number.
pub fn row(label: &str, number: usize) -> String {
    [label, " ", &number.to_string()].concat()
}

/// What is wrong with a field.
pub fn wrong(wrong: Wrong) -> String {
    match wrong {
        Wrong::Typed(error) => en_typed::number(error),
        Wrong::Zero => "More than 0.".to_owned(),
        Wrong::Unsure => "Unusual for one trap: is that right? Say so below.".to_owned(),
        Wrong::NoCapacity => "Type first what the trap holds, brim-full.".to_owned(),
        Wrong::NotRising => "More than in the row before, in both fields.".to_owned(),
        Wrong::AtTheEnd => "Between empty and brim-full.".to_owned(),
    }
}

/// "spills at 17.1°".
pub fn degrees(number: &str) -> String {
    [number, "°"].concat()
}

/// "= 35 % of what it holds".
pub fn of_volume(percent: &str) -> String {
    ["= ", &with_unit(percent, "of what it holds")].concat()
}
