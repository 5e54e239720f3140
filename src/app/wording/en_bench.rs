//! English: the Bench.

use crate::app::bench::Sum;

/// Name of the index of keys.
pub const INDEX: &str = "Sums on this page";

/// Heading of a sum.
pub fn title(sum: Sum) -> &'static str {
    match sum {
        Sum::Yard => "Traps and oil for my yard",
        Sum::Refill => "Next refill",
        Sum::Spill => "When does it spill?",
        Sum::Fit => "Does the trap fit?",
        Sum::Packs => "Packs or singles",
        Sum::Oil => "Oil to buy",
        Sum::Bodies => "Oil or beetles?",
    }
}

/// Key of the index.
pub fn short(sum: Sum) -> &'static str {
    match sum {
        Sum::Yard => "Traps, oil",
        Sum::Refill => "Refill day",
        Sum::Spill => "Spill",
        Sum::Fit => "Fit",
        Sum::Packs => "Packs",
        Sum::Oil => "Buy oil",
        Sum::Bodies => "Bodies",
    }
}

/// The question a sum answers.
pub fn asks(sum: Sum) -> &'static str {
    match sum {
        Sum::Yard => "How many traps, and how much oil do I carry?",
        Sum::Refill => "By which day must someone be back, and what decides it?",
        Sum::Spill => "How far may an open trap tilt?",
        Sum::Fit => "Will this trap go into this box?",
        Sum::Packs => "Which packs cover what I need for least money?",
        Sum::Oil => "How much oil for a season, in which containers?",
        Sum::Bodies => "The level looks fine. How much of it is beetles?",
    }
}
