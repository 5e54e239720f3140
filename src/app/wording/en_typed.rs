//! English: what is wrong with a typed text, and what to type instead.

use crate::almanac::quantity::Decimal;
use crate::almanac::text::LabelError;
use crate::almanac::typed::{DayTypedError, TagsError, TypedError};
use crate::app::ledger::words::isolated;
use crate::app::wording::en;

/// A sentence for a number, volume, length or price.
pub fn number(error: TypedError) -> String {
    match error {
        TypedError::Empty => "Type a number.".to_owned(),
        TypedError::NotANumber => "One number here, such as 12, 1.5 or ½.".to_owned(),
        TypedError::Negative => "0 or more.".to_owned(),
        TypedError::TooMany { most } => ["At most ", &most.to_string(), "."].concat(),
        TypedError::TooFew { least: Decimal::ZERO } => "More than 0.".to_owned(),
        TypedError::TooFew { least } => ["At least ", &least.to_string(), "."].concat(),
        TypedError::NotWhole => "Whole numbers only.".to_owned(),
        TypedError::Ambiguous { small, large } => which(small, large),
        TypedError::Weight => "That is a weight. Type how much it holds, such as 20 mL.".to_owned(),
        TypedError::WhichOunce => "US or imperial? Choose the unit beside it.".to_owned(),
        TypedError::UnknownUnit => "Type the number alone and choose the unit beside it.".to_owned(),
        TypedError::OverFull => "100 % at most.".to_owned(),
        TypedError::TooWarm { typed, fahrenheit } => too_warm(typed, fahrenheit),
        TypedError::Fraction => "Whole numbers only: no halves here.".to_owned(),
    }
}

/// A sentence for a whole number.
pub fn count(error: TypedError) -> String {
    match error {
        TypedError::Ambiguous { large, .. } => {
            ["If you mean ", &large.to_string(), ", type it without a mark between the digits."].concat()
        }
        TypedError::NotANumber => "One whole number here, such as 12.".to_owned(),
        error => number(error),
    }
}

/// A sentence for a temperature.
pub fn warmth(error: TypedError) -> String {
    match error {
        TypedError::TooFew { least } => {
            ["No soil, comb or room of bees is as cold. At least ", &least.to_string(), " °."].concat()
        }
        error => number(error),
    }
}

/// A sentence for a share, such as a level.
pub fn share(error: TypedError) -> String {
    match error {
        TypedError::Empty | TypedError::NotANumber | TypedError::UnknownUnit => {
            "Type a share, such as ½ or 50 %.".to_owned()
        }
        TypedError::Ambiguous { small, .. } if small == Decimal::whole(1) => {
            "1 % or all of it? Type 1 % or 100 %.".to_owned()
        }
        TypedError::Ambiguous { small, .. } => {
            ["Which part of 100 %? If you mean ", &small.to_string(), " %, type it with the sign."].concat()
        }
        error => number(error),
    }
}

/// "95 °C? Did you mean 95 °F (35 °C)? Choose the unit beside it."
fn too_warm(typed: Decimal, fahrenheit: bool) -> String {
    let meant = whole_degrees((typed.as_f64() - 32.0) / 1.8);
    let typed = typed.to_string();
    if fahrenheit {
        return [&typed, " °F? No soil, comb or room of bees is as warm."].concat();
    }
    [&typed, " °C? Did you mean ", &typed, " °F (", &meant, " °C)? Choose °F beside it."].concat()
}

#[allow(clippy::cast_possible_truncation)] // no typed number is as large; a cast saturates
fn whole_degrees(celsius: f64) -> String {
    (celsius.round() as i32).to_string()
}

fn which(small: Decimal, large: Decimal) -> String {
    let (small, large) = (small.to_string(), large.to_string());
    [&small, " or ", &large, "? Type ", &small, " or ", &large, "."].concat()
}

/// A sentence for a day.
pub fn day(error: DayTypedError) -> String {
    match error {
        DayTypedError::Empty | DayTypedError::NotADate => "Choose a day.".to_owned(),
        DayTypedError::Before2000 => "Not before the year 2000.".to_owned(),
        DayTypedError::Past => "That day is over. Choose today or a later day.".to_owned(),
        DayTypedError::TooFar { latest } => ["Not after ", &en::date(latest), "."].concat(),
        DayTypedError::Future => "That day has not come yet. Is the phone’s date right?".to_owned(),
    }
}

/// A sentence for a line of hive tags.
pub fn tags(error: &TagsError) -> String {
    match error {
        TagsError::Empty => "Type tags, such as 1–24 or A1, A2, B7.".to_owned(),
        TagsError::TooMany { most, asked } => {
            ["At most ", &most.to_string(), " hives; this line names ", &asked.to_string(), "."].concat()
        }
        TagsError::Backwards => "Smaller number first, such as 1–24.".to_owned(),
        TagsError::Repeated { tag } => ["“", tag, "” is there twice."].concat(),
    }
}

/// What a line of hive tags was understood as: "= 6 hives". A single tag that is more than a number or a word is shown
/// as it was taken, because it may have been meant otherwise.
pub fn hives_named(tags: &[String]) -> String {
    let count = u32::try_from(tags.len()).unwrap_or(u32::MAX);
    let hives = ["= ", &en::counted(count, "hive", "hives")].concat();
    match tags {
        [only] if !only.chars().all(|c| c.is_alphabetic() || c.is_ascii_digit() || c == ' ') => {
            [&hives, ": “", &isolated(only), "”"].concat()
        }
        _ => hives,
    }
}

/// The same, and the number of hives that was typed where that is another one.
pub fn hives_named_of(tags: &[String], typed: Option<u32>) -> String {
    let named = hives_named(tags);
    match typed {
        Some(typed) if usize::try_from(typed) != Ok(tags.len()) => {
            [&named, "; the sum above is for ", &en::whole(typed), "."].concat()
        }
        _ => named,
    }
}

/// A sentence for a tag.
pub fn tag(error: LabelError) -> String {
    if error == LabelError::Empty { "Type a tag.".to_owned() } else { label(error) }
}

/// A sentence for a name.
pub fn label(error: LabelError) -> String {
    match error {
        LabelError::Empty => "Type a name.".to_owned(),
        LabelError::TooLong { most } => ["At most ", &most.to_string(), " letters."].concat(),
        LabelError::TooManySigns => "Too long: some letters here are made of many signs.".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::typed;

    #[test]
    fn tags_that_are_more_or_fewer_than_the_hives_above_say_so() {
        let tags = ["1", "2"].map(str::to_owned);
        assert_eq!(hives_named_of(&tags, Some(2)), "= 2\u{a0}hives");
        assert_eq!(hives_named_of(&tags, None), "= 2\u{a0}hives");
        assert_eq!(hives_named_of(&tags, Some(10)), "= 2\u{a0}hives; the sum above is for 10.");
    }

    #[test]
    fn where_only_whole_numbers_are_read_the_example_is_whole() {
        let said = |text| typed::count(text, 0, 99).map_err(count);
        assert_eq!(said("abc"), Err("One whole number here, such as 12.".to_owned()));
        assert_eq!(said("1,5"), Err("Whole numbers only.".to_owned()));
        assert_eq!(said("12"), Ok(12));
        let ranged = typed::count_or_range("abc", 99).map_err(count);
        assert_eq!(ranged, Err("One whole number here, such as 12.".to_owned()));
    }
}
