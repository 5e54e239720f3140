//! English: words shared by all places.

use crate::almanac::day::{Day, Weekday};
use crate::almanac::quantity::{LengthUnit, VolumeUnit};
use crate::app::place::Section;
use crate::app::prefs::WarmthUnit;

/// Name of the page.
pub const NAME: &str = "Beetle Almanac";
/// Said when the program stopped on an unforeseen fault.
pub const STOPPED: &str = "This page has stopped. What you saved is still in the phone. Reload.";
/// Name of the bottom bar for screen readers.
pub const PLACES: &str = "Places";
/// A newer version waits.
pub const NEW_VERSION: &str = "New version ready.";
/// Said when it was agreed to and a form is half filled in.
pub const NEW_VERSION_WAITS: &str = "It starts once the form you are filling in is saved or left.";
/// Key that lets it take over.
pub const USE_IT_NOW: &str = "Use it now";
/// Said once after the first visit.
pub const READY_OFFLINE: &str = "Ready to work offline.";
/// Key that puts a message away.
pub const GOT_IT: &str = "Got it";
/// Key that closes a sheet.
pub const CLOSE: &str = "Close";
/// Key that opens the reason behind a line.
pub const WHY: &str = "Why";
/// Heads the sum under an answer.
pub const SUM: &str = "The sum";
/// Stands where an answer waits for a field.
pub const NO_ANSWER: &str = "–";

/// Name of a unit of temperature.
pub fn warmth_name(unit: WarmthUnit) -> &'static str {
    match unit {
        WarmthUnit::Celsius => "°C",
        WarmthUnit::Fahrenheit => "°F",
    }
}

/// The word on a key of the bottom bar.
pub fn section(section: Section) -> &'static str {
    match section {
        Section::Round => "Round",
        Section::Load => "Load",
        Section::Beetle => "Beetle",
        Section::Bench => "Bench",
        Section::Book => "Book",
    }
}

/// Key that brings up the bar on a low screen: "Places: Load".
pub fn places(now: Section) -> String {
    [PLACES, ": ", section(now)].concat()
}

/// Title of the window.
pub fn title(place: &str) -> String {
    [place, " – ", NAME].concat()
}

/// "Tue 14 July 2026", in the order the phone's owner writes dates. The weekday catches a slip that a bare number hides.
pub fn date(day: Day) -> String {
    #[cfg(target_arch = "wasm32")]
    if let Some(date) = crate::app::edge::locale::date(day) {
        return date;
    }
    [weekday(day.weekday()), " ", &short_date(day), " ", &day.year().to_string()].concat()
}

/// "14 July".
pub fn short_date(day: Day) -> String {
    [&day.day_of_month().to_string(), " ", month(day.month())].concat()
}

/// "Tue".
pub fn weekday(day: Weekday) -> &'static str {
    match day {
        Weekday::Mon => "Mon",
        Weekday::Tue => "Tue",
        Weekday::Wed => "Wed",
        Weekday::Thu => "Thu",
        Weekday::Fri => "Fri",
        Weekday::Sat => "Sat",
        Weekday::Sun => "Sun",
    }
}

/// Name of the month, 1–12.
pub fn month(number: u32) -> &'static str {
    const MONTHS: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    (number as usize).checked_sub(1).and_then(|index| MONTHS.get(index)).copied().unwrap_or_default()
}

/// How far a day lies from today: "in 3 days", "tomorrow", "today", "yesterday", "3 days ago". `days` counts from
/// today, later days are positive.
pub fn relative(days: i32) -> String {
    match days {
        0 => "today".to_owned(),
        1 => "tomorrow".to_owned(),
        -1 => "yesterday".to_owned(),
        d if d > 0 => ["in ", &self::days(d.unsigned_abs())].concat(),
        d => [&self::days(d.unsigned_abs()), " ago"].concat(),
    }
}

/// "1 day", "14 days".
pub fn days(count: u32) -> String {
    counted(count, "day", "days")
}

/// Words at the end of a sentence.
#[inline(never)]
pub fn put(said: &mut String, words: &str) {
    said.push_str(words);
}

/// A whole number as the phone's owner writes it. Below a thousand there is nothing to set apart.
pub fn whole(count: u32) -> String {
    #[cfg(target_arch = "wasm32")]
    if count >= 1000 {
        return crate::app::edge::locale::whole(count);
    }
    count.to_string()
}

/// A count with its noun.
pub fn counted(count: u32, one: &str, many: &str) -> String {
    [whole(count).as_str(), "\u{a0}", if count == 1 { one } else { many }].concat()
}

/// A count with its noun, behind what is said already.
pub fn put_counted(said: &mut String, count: usize, one: &str, many: &str) {
    put(said, &counted(u32::try_from(count).unwrap_or(u32::MAX), one, many));
}

/// A number and its unit, never torn apart at the end of a line.
pub fn with_unit(number: &str, unit: &str) -> String {
    [number, "\u{a0}", unit].concat()
}

/// Short name of a unit of volume. Two ounces share a name in the shops and not here.
pub fn volume_name(unit: VolumeUnit) -> &'static str {
    match unit {
        VolumeUnit::Millilitre => "mL",
        VolumeUnit::Litre => "L",
        VolumeUnit::UsFluidOunce => "US\u{a0}fl\u{a0}oz",
        VolumeUnit::ImperialFluidOunce => "imp\u{a0}fl\u{a0}oz",
        VolumeUnit::UsTablespoon => "US\u{a0}tbsp",
        VolumeUnit::UsCup => "US\u{a0}cup",
    }
}

/// Bottles that are sold by a larger measure, in the order of `prefs::BOTTLES`.
pub const BOTTLES: [&str; 4] = ["US\u{a0}qt", "US\u{a0}gal", "imp\u{a0}qt", "imp\u{a0}gal"];

/// Short name of a unit of length.
pub fn length_name(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Millimetre => "mm",
        LengthUnit::Inch => "in",
    }
}

/// Name of the chooser beside a number.
pub fn unit_of(label: &str) -> String {
    ["Unit of ", label].concat()
}

/// Name of the key that takes one off.
pub fn less(label: &str) -> String {
    [label, ": one less"].concat()
}

/// Name of the key that adds one.
pub fn more(label: &str) -> String {
    [label, ": one more"].concat()
}

/// The label of a field for a share: a bare 2 is 2 %.
pub fn in_percent(label: &str) -> String {
    [label, " (%)"].concat()
}

/// What a field understood of 0.5 where the same with the sign is another share.
pub fn not_percent(share: &str, other: &str) -> String {
    ["= ", share, ". If you mean ", other, ", type the sign."].concat()
}

/// What a field understood.
pub fn echo(value: &str) -> String {
    ["= ", value].concat()
}

/// Screens without a yard, and the settings of the page.
pub mod page {
    /// Heading of the settings, and the key that opens them.
    pub const SETTINGS: &str = "Look and units";
    /// Light.
    pub const SCHEME: &str = "Light";
    /// As the phone is set.
    pub const SCHEME_SYSTEM: &str = "As the phone";
    /// Sun.
    pub const SCHEME_SUN: &str = "Full sun";
    /// Night.
    pub const SCHEME_NIGHT: &str = "Night";
    /// Size of letters.
    pub const TEXT: &str = "Letters";
    /// Usual letters.
    pub const TEXT_USUAL: &str = "Usual";
    /// Larger letters.
    pub const TEXT_LARGE: &str = "Large";
    /// Largest letters.
    pub const TEXT_LARGEST: &str = "Largest";
    /// The hand that holds the phone.
    pub const HAND: &str = "Phone is in my";
    /// Left.
    pub const HAND_LEFT: &str = "left hand";
    /// Right.
    pub const HAND_RIGHT: &str = "right hand";
    /// Unit of volume.
    pub const VOLUME: &str = "Show volumes in";
    /// Unit of length.
    pub const LENGTH: &str = "Show lengths in";
    /// Unit of temperature.
    pub const WARMTH: &str = "Show temperatures in";
    /// Under the units.
    pub const UNITS_NOTE: &str = "Numbers you typed keep the unit you typed them in.";
    /// Heading over the home screen.
    pub const INSTALL: &str = "On the home screen";
    /// Key that asks the browser.
    pub const INSTALL_KEY: &str = "Put it on the home screen";
    /// For phones whose browser does not ask.
    pub const INSTALL_SHARE: &str = "On an iPhone or iPad: open the Share menu, then “Add to Home Screen”.";
    /// For the others.
    pub const INSTALL_MENU: &str =
        "On other phones: open the browser’s ⋮ menu, then “Add to Home screen” or “Install”.";
    /// Storage differs.
    pub const INSTALL_NOTE: &str =
        "Do this before you keep records: on some phones the home screen copy starts with an empty book.";
    /// Load without hives.
    pub const LOAD_EMPTY: &str = "No yard to load for yet.";
    /// What the place does.
    pub const LOAD_HOW: &str =
        "Load adds up what your yards need on the day of a trip: oil to carry, traps to bring, what to buy.";
    /// What to do first.
    pub const LOAD_FIRST: &str = "Add a yard first: type hives and boxes on the Bench, then “Keep this yard”. For a sum without a yard the Bench is enough.";
    /// Key to the Bench.
    pub const TO_BENCH: &str = "To the Bench";
}

/// What the drawings show, in words.
pub mod drawing {
    use super::put;
    use crate::almanac::stack::{Corner, Spot};

    /// The entrance side of a box.
    pub const FRONT: &str = "entrance";

    /// Name of a corner.
    pub fn corner(corner: Corner) -> &'static str {
        match corner {
            Corner::FrontLeft => "front left",
            Corner::FrontRight => "front right",
            Corner::BackLeft => "back left",
            Corner::BackRight => "back right",
        }
    }

    /// Name of a place for a trap.
    pub fn spot(spot: Spot) -> String {
        match spot {
            Spot::Corner(at) => corner(at).to_owned(),
            Spot::Between(number) => ["between frames, place ", &number.to_string()].concat(),
            Spot::Floor => "on the floor".to_owned(),
        }
    }

    /// A box from above.
    pub fn plan(spots: &[Spot]) -> String {
        if spots.is_empty() {
            return "Box from above, no traps.".to_owned();
        }
        let mut said = "Box from above, traps ".to_owned();
        for (nth, at) in spots.iter().enumerate() {
            put(&mut said, if nth > 0 { ", " } else { "" });
            put(&mut said, &spot(*at));
        }
        put(&mut said, ".");
        said
    }

    /// A hive from the side; traps in each box from the floor up.
    pub fn side(traps: &[usize]) -> String {
        let mut said = "Hive from the side, traps in ".to_owned();
        for (index, traps) in traps.iter().enumerate() {
            put(&mut said, if index > 0 { ", box " } else { "box " });
            put(&mut said, &(index + 1).to_string());
            put(&mut said, ": ");
            put(&mut said, &traps.to_string());
        }
        put(&mut said, ".");
        said
    }

    /// A trap cut open.
    pub fn cutaway(full: &str, tilt: &str) -> String {
        ["Trap cut open: level and ", full, " full, then tilted until the oil reaches the rim, ", tilt, "."]
            .concat()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn dates_carry_their_weekday() {
        assert_eq!(date(Day::parse("2026-07-14").unwrap()), "Tue 14 July 2026");
        assert_eq!(date(Day::parse("2028-02-29").unwrap()), "Tue 29 February 2028");
    }

    #[test]
    fn near_days_have_their_own_words() {
        let said: Vec<String> = (-2..=2).map(relative).collect();
        assert_eq!(said, ["2\u{a0}days ago", "yesterday", "today", "tomorrow", "in 2\u{a0}days"]);
    }

    #[test]
    fn one_day_is_no_days() {
        assert_eq!(days(1), "1\u{a0}day");
        assert_eq!(days(14), "14\u{a0}days");
    }
}
