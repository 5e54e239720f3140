//! What was ticked off while the car is loaded: the day of the trip, a blank, and a letter for each thing.

/// Whether the thing at `nth` is ticked for the trip of `day`.
pub fn ticked(text: &str, day: &str, nth: usize) -> bool {
    of_day(text, day).is_some_and(|things| things.contains(letter(nth)))
}

/// The same with the thing at `nth` ticked or not. Ticks of another day are gone with that.
pub fn with(text: &str, day: &str, nth: usize, on: bool) -> String {
    let mut things: String = of_day(text, day).unwrap_or_default().to_owned();
    things.retain(|thing| thing != letter(nth));
    if on {
        things.push(letter(nth));
    }
    [day, " ", &things].concat()
}

/// The day of the trip that something was ticked for.
pub fn day(text: &str) -> &str {
    text.split_once(' ').map_or("", |(day, _)| day)
}

fn of_day<'a>(text: &'a str, day: &str) -> Option<&'a str> {
    text.split_once(' ').filter(|(of, _)| *of == day).map(|(_, things)| things)
}

fn letter(nth: usize) -> char {
    char::from(b'a'.saturating_add(u8::try_from(nth).unwrap_or(u8::MAX)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_of_one_trip_and_another_day_begins_with_none() {
        let one = with("", "2026-07-15", 0, true);
        let two = with(&one, "2026-07-15", 5, true);
        assert_eq!((one.as_str(), two.as_str(), day(&two)), ("2026-07-15 a", "2026-07-15 af", "2026-07-15"));
        assert!(ticked(&two, "2026-07-15", 0) && ticked(&two, "2026-07-15", 5));
        assert!(!ticked(&two, "2026-07-15", 1) && !ticked(&two, "2026-07-16", 0));
        assert_eq!(with(&two, "2026-07-15", 0, false), "2026-07-15 f");
        assert_eq!(with(&two, "2026-07-16", 1, true), "2026-07-16 b");
        assert_eq!((ticked("", "", 0), ticked("a", "a", 0), day("")), (false, false, ""));
    }
}
