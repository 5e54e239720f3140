//! English: the Beetle.

use super::en::date;
use crate::almanac::day::Day;
use crate::almanac::sighting::Seen;
use crate::app::place::Clock;

/// Name of the list of clocks for screen readers.
pub const INDEX: &str = "What the Beetle works out";
/// Said once on each screen with a date or a share that was worked out.
pub const ESTIMATE: &str = "Estimate. Soil and weather move these dates.";
/// Heading over what is on the way in the yards.
pub const UNDER_WAY: &str = "On the way in your yards";
/// Nothing is.
pub const NOTHING: &str =
    "No find of the last year is still under way. Write down what a hive showed, and the dates stand here.";
/// Without records.
pub const EMPTY: &str = "Say what you found, and when: the page works out when larvae leave, when young beetles come back and when those lay.";
/// Heading over the ways to the forms that the dates go by.
pub const GO_BY: &str = "What these dates go by";
/// A yard without temperatures.
pub const NO_CLIMATE: &str =
    "To work out dates this yard needs its temperatures: twelve highs and lows, once.";

/// A clock: its heading and the way to it.
pub fn clock(clock: Clock) -> &'static str {
    match clock {
        Clock::Dates => "From a find to dates",
        Clock::Season => "The season in this climate",
        Clock::Rhythm => "Did my looks see them?",
        Clock::Honey => "Honey supers against the clock",
    }
}

/// What was found.
pub fn seen(seen: Seen) -> &'static str {
    match seen {
        Seen::AdultsOnly => "adult beetles, no larvae",
        Seen::TinyLarvae => "tiny larvae",
        Seen::FullGrown => "full-grown larvae",
        Seen::Leaving => "slime, or larvae leaving",
        Seen::InSoil => "larvae in the ground",
    }
}

/// "full-grown larvae, Fri 10 July 2026".
pub fn found(what: Seen, on: Day) -> String {
    [seen(what), ", ", &date(on)].concat()
}
