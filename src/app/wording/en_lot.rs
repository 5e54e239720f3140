//! English: the honey lot sheet.

use super::en::{date, put};
use crate::book::lot::Wait;

/// Heading.
pub const TITLE: &str = "Honey lot sheet";
/// Name of the file.
pub const FILE: &str = "honey-lot-";
/// Chooser.
pub const WHICH: &str = "Lot";
/// The way to it beside a lot.
pub const OPEN: &str = "Sheet for the buyer";
/// No lot.
pub const NO_LOT: &str = "No harvest lot is written down yet. Write one down under Records.";
/// What nobody wrote down: empty is not zero.
pub const NOT_WRITTEN: &str = "not written down";
/// No hive of the yard is named.
pub const NO_HIVES: &str = "hives not named";
/// Before the yard and its hives.
pub const FROM: &str = "From: ";
/// Headings: hours, products.
pub const PARTS: [&str; 2] = ["Hours", "Products applied to these hives"];
/// Columns of the hours.
pub const HOURS: [&str; 4] = ["Step", "When", "Since the step before", "Since the bees were off"];
/// Columns of the products.
pub const PRODUCTS: [&str; 7] = [
    "Product",
    "Registration number",
    "Hives",
    "First day",
    "Last day",
    "Days to wait, typed from the label",
    "Wait when the bees were off",
];
/// None before the bees were off.
pub const NONE: &str = "None recorded.";
/// Without a registration number.
pub const NOT_VERIFIED: &str = "not verified";
/// How hours and days are reckoned.
pub const HOW: &str = "Hours are by the clock of the yard; where it was put forward or back in between, the hour is not reckoned in. Days to wait count from the last day of the product. A wait that ends on the day the bees were off is marked, since products are written down without an hour.";
/// The last line of the sheet.
pub const FOOT: &str = "As written down by the keeper; this page judges neither product nor honey.";

/// "2 h 05 min".
pub fn hours(minutes: u32) -> String {
    let (hours, rest) = (minutes / 60, minutes % 60);
    let between = if rest < 10 { "\u{a0}h\u{a0}0" } else { "\u{a0}h\u{a0}" };
    [&hours.to_string(), between, &rest.to_string(), "\u{a0}min"].concat()
}

/// How a wait stood.
pub fn wait(wait: Wait) -> String {
    let (before, day, after) = match wait {
        Wait::StillIn => return "still in the hives: no last day written down".to_owned(),
        Wait::Over(day) => ("over on ", day, ""),
        Wait::SameDay(day) => ("over on ", day, ", the day the bees were off"),
        Wait::Until(day) => ("NOT over: until ", day, ""),
    };
    let mut said = before.to_owned();
    put(&mut said, &date(day));
    put(&mut said, after);
    said
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::day::Day;

    #[test]
    fn hours_and_waits_are_told_without_a_judgement() {
        assert_eq!(hours(125).replace('\u{a0}', " "), "2 h 05 min");
        assert_eq!(hours(49 * 60 + 40).replace('\u{a0}', " "), "49 h 40 min");
        let day = Day::parse("2026-07-14").unwrap();
        assert!(wait(Wait::Until(day)).starts_with("NOT over: until "));
        assert!(wait(Wait::SameDay(day)).contains("the day the bees were off"));
    }
}
