//! English: records of what was seen and done beside the traps.

mod blanks;

pub use blanks::{Words, blank};

use super::en::{counted, date, with_unit};
use super::en_round::near_and_how_far;
use crate::almanac::day::Day;

/// A unit as people write it.
pub fn unit(code: &'static str) -> &'static str {
    match code {
        "C" => "°C",
        "F" => "°F",
        "m2" => "m²",
        "sq_ft" => "sq ft",
        "us_fl_oz" => "US fl oz",
        "imp_fl_oz" => "imp. fl oz",
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
/// Behind a day that is over.
pub const PAST_ITS_DAY: &str = ". It is past its day: it is written down, and not counted as in store.";
/// A price of nothing.
pub const FREE: &str =
    "Free of charge: it counts as 0 in the cost. Leave this empty if you do not know the price.";
/// A month's mean low above its mean high.
pub const UPSIDE_DOWN: &str = "This low is above the high of the month.";
/// Beside traps in stock that are called like no kind.
pub const NO_SUCH_KIND: &str = "No kind of trap in the book has this name, so Load counts none of these. Write it as under Book, Kinds of trap.";
/// Beside something in stock that is called like a kind and not said to be traps.
pub const IS_A_KIND: &str =
    "A kind of trap in the book has this name. Say below that these are traps, or Load counts none.";
/// Nobody wrote down what was taken along, and what came home stands there.
pub const NO_TAKEN: &str = "What was taken along is missing: without it, what came home tells nothing.";
/// Key under what was left in a form.
pub const CLEAR_LEFT: &str = "Clear what was typed";
/// More of it came home than was taken along.
pub const MORE_BACK: &str = "More came home than was taken along.";
/// More comb is taken out than the hive has.
pub fn comb_left(frames: u32) -> String {
    [
        "The hive has only ",
        &counted(frames, "frame", "frames"),
        " of comb written down. It can be saved all the same.",
    ]
    .concat()
}
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
pub const DISEASE: &str = "! STOP, brood disease suspected, ";
/// In the row of a hive.
pub const LARVAE_FEW: &str = "! larvae few, ";
/// In the row of a hive.
pub const LARVAE_MANY: &str = "! larvae many, ";
/// In the row of a hive.
pub const LEAVING: &str = "! larvae outside, ";
/// In the row of a hive.
pub const SLIME: &str = "! slime, ";
/// Behind the larvae of the same look.
pub const AND_SLIME: &str = "slime, ";

/// What the last look found, and when.
pub fn seen(what: &str, day: Day, today: Day) -> String {
    [what, &near_and_how_far(day, today)].concat()
}

/// What stands in a form was typed earlier, for that day where one can be read, and left.
pub fn left(day: Option<Day>, today: Day) -> String {
    let day = day.map(|day| [" for ", &near_and_how_far(day, today)].concat());
    ["Typed earlier", &day.unwrap_or_default(), ", and not saved."].concat()
}

/// What was written, for the undo bar.
pub fn saved(title: &str) -> String {
    [title, ": written down"].concat()
}
