//! English: what trap work cost.

use super::en::{counted, date, whole};
use crate::book::spent::{Missing, Spent};

/// Heading.
pub const TITLE: &str = "What it cost";
/// The question.
pub const ASKS: &str = "What did trap work cost for each hive, and when does it pay?";
/// Field.
pub const HIVES: &str = "Hives over the season";
/// Field.
pub const USED: &str = "Bought to be used up: oil, bait, traps thrown away";
/// Field.
pub const DURABLE: &str = "Paid for traps used again";
/// Field.
pub const SEASONS: &str = "Seasons they last";
/// Field.
pub const TRIPS: &str = "Trips";
/// Field.
pub const TRIP: &str = "One trip costs";
/// Opens the other fields.
pub const REST: &str = "Change the rest: hours, traps, days, honey, a colony’s value";
/// Field.
pub const HOURS: &str = "Hours of work";
/// Field.
pub const HOUR: &str = "One hour is worth";
/// Field.
pub const TRAPS: &str = "Traps in service";
/// Field.
pub const DAYS: &str = "Days of the season";
/// Field.
pub const HONEY: &str = "Honey, in kg";
/// Field.
pub const COLONY: &str = "A colony is worth";
/// Answer.
pub const EACH_HIVE: &str = "For one hive and season";
/// Reason.
pub const WHY: &str = "What was bought to be used up, the share of one season in what lasts, trips, and hours if you count them, divided by the hives. A hive that died counts its days alone. It pays when it saves as many colonies as the cost holds values of a colony: whether it did, this sum does not say.";
/// Nothing is known.
pub const NOTHING: &str = "No cost is written down yet.";
/// Prices.
pub const CURRENCY: &str = "Example numbers until you type your own, all in one currency.";
/// Before the parts of which a price or a number is not typed.
pub const WITHOUT: &str = "Left out, not typed or 0: ";
/// Names of the parts.
pub const PARTS: [&str; 4] =
    ["Bought to be used up", "Traps and screens that last, their share", "Trips", "Hours"];

/// Field.
pub const FROM: &str = "From";
/// Field.
pub const TO: &str = "To";
/// The wrong way round.
pub const BACKWARDS: &str = "That is before the first day.";
/// Key.
pub const COSTS_KEY: &str = "What you reckon with";
/// Key.
pub const STOCK_KEY: &str = "Something bought";

/// "Bought to be used up: 60.00".
pub fn part(name: &str, sum: &str) -> String {
    [name, ": ", sum].concat()
}

/// "= 220.00 ÷ 10 hive-seasons = 22.00".
pub fn total(total: &str, hives: &str, each: &str) -> String {
    ["=\u{a0}", total, " ÷ ", hives, " hives over the season =\u{a0}", each].concat()
}

/// "220.00 in all, and no hive to share it".
pub fn no_hives(total: &str) -> String {
    ["=\u{a0}", total, ", and no hive to share it: with 0 hives there is no cost of one"].concat()
}

/// "0.0306 for one trap and day".
pub fn trap_day(each: &str) -> String {
    [each, " for one trap and day"].concat()
}

/// "5.00 for 1 kg of honey".
pub fn kilogram(each: &str) -> String {
    [each, " for 1\u{a0}kg of honey"].concat()
}

/// "It pays when it saves 1.5 colonies".
pub fn break_even(losses: &str) -> String {
    ["It pays when it saves ", losses, " colonies"].concat()
}

/// "57 days, from Wed 1 October 2026, the first with a hive in care: 2 trips, 1.5 hours (an estimate), 342 days of hives in
/// care"; "2 trips (shared with other yards)" where only a share of some is in it.
pub fn counted_on(spent: &Spent, trips: &str, hours: &str) -> String {
    let days = counted(spent.days, "day", "days");
    let since = spent.since.map(|day| [", from ", &date(day), ", the first with a hive in care"].concat());
    [
        &*days,
        since.as_deref().unwrap_or_default(),
        ": ",
        trips,
        if spent.shared { " trips (shared with other yards), " } else { " trips, " },
        // Nobody timed a hive or a way: that is no work of no time.
        if spent.hours > 0.0 { hours } else { "no" },
        if spent.hours > 0.0 { " hours (an estimate), " } else { " hours known, " },
        &whole(spent.hive_days),
        " days of hives in care",
    ]
    .concat()
}

/// What is left out.
pub fn missing(of: Missing) -> String {
    match of {
        Missing::Prices(count) => {
            ["Left out, no price written down: ", &counted(count, "purchase", "purchases")].concat()
        }
        Missing::TrapSeasons => {
            "Left out, traps and screens: nobody wrote down for how many seasons they last.".to_owned()
        }
        Missing::Share => {
            "Left out, what was bought: no hive was in care on these days, so this yard’s share is not known."
                .to_owned()
        }
        Missing::Trip => "Left out, trips: nobody wrote down what one costs.".to_owned(),
        Missing::Hour => "Left out, hours: nobody wrote down what one is worth.".to_owned(),
        Missing::Minutes => {
            "Hours are too few: the pace at a hive or the way to a yard is not known.".to_owned()
        }
        Missing::Colony => "When it pays: write down what a colony is worth.".to_owned(),
        Missing::Honey(count) => {
            ["Left out, no weight written down: ", &counted(count, "honey lot", "honey lots")].concat()
        }
    }
}
