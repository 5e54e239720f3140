//! English: the Beetle.

use crate::app::place::Clock;

/// Name of the list of clocks for screen readers.
pub const INDEX: &str = "What the Beetle works out";

/// A clock: its heading and the way to it.
pub fn clock(clock: Clock) -> &'static str {
    match clock {
        Clock::Dates => "From a find to dates",
        Clock::Season => "The season in this climate",
        Clock::Rhythm => "Did my looks see them?",
        Clock::Honey => "Honey supers against the clock",
    }
}
