//! English: the page of a hive, and the keys of a yard.

use super::en::{date, drawing, relative};
use super::en_round::hive;
use crate::almanac::day::Day;
use crate::almanac::stack::Spot;

/// "Tue 14 July 2026, 3 days ago".
pub fn day_and_how_far(day: Day, today: Day) -> String {
    [&date(day), ", ", &relative(day.days_since(today))].concat()
}

/// "Box 1, front left".
pub fn place(number: u32, spot: Spot) -> String {
    ["Box ", &number.to_string(), ", ", &drawing::spot(spot)].concat()
}

/// A hive taken back into care.
pub fn revived(tag: &str) -> String {
    [&hive(tag), " is back in care"].concat()
}
