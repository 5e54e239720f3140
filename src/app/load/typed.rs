//! What is typed on the Load and differs from what stands in its fields by itself: a line for each field, with the day of the
//! last keystroke in it, its name and its text, tabs between them. Only what differs lies there, so a field goes on following
//! the book until somebody types over it.

use crate::almanac::day::Day;

/// Days after the last keystroke in a field for which its text stands: over the night in which the phone shuts the page, and
/// no longer, since a number of an earlier trip would pass for what the book knows (judgement, no source).
const STANDS: i32 = 1;

/// A field: the day of the last keystroke, its name and its text.
type Field<'a> = (&'a str, &'a str, &'a str);

fn fields(all: &str) -> impl Iterator<Item = Field<'_>> {
    all.split('\n').filter_map(|line| {
        let (day, field) = line.split_once('\t')?;
        let (name, text) = field.split_once('\t')?;
        Some((day, name, text))
    })
}

/// What still stands of `all` when the page is opened, or the Load is drawn, on `today`.
pub fn standing(all: &str, today: Day) -> String {
    let stands = |day: &str| Day::parse(day).is_ok_and(|day| (0..=STANDS).contains(&today.days_since(day)));
    let mut now = String::new();
    for field in fields(all).filter(|(day, ..)| stands(day)) {
        put(&mut now, field);
    }
    now
}

/// What is typed into the field of this name; none where nobody typed over it.
pub fn of<'a>(all: &'a str, name: &str) -> Option<&'a str> {
    fields(all).find(|(_, of, _)| *of == name).map(|(.., text)| text)
}

/// The same with `text` in the field of this name, typed on `today`; none lets go of it.
pub fn with(all: &str, today: &str, name: &str, text: Option<&str>) -> String {
    let mut now = String::new();
    let others = fields(all).filter(|(_, of, _)| *of != name);
    for field in others.chain(text.map(|text| (today, name, text))) {
        put(&mut now, field);
    }
    now
}

fn put(all: &mut String, (day, name, text): Field<'_>) {
    for part in [day, "\t", name, "\t", text, "\n"] {
        all.push_str(part);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Day {
        Day::parse(text).unwrap()
    }

    #[test]
    fn each_field_has_its_text_bad_or_emptied_and_lets_go_of_it() {
        let one = with("", "2026-07-15", "load-each", Some("about 7\tmin"));
        let two = with(&one, "2026-07-15", "next-fee", Some(""));
        assert_eq!(of(&two, "load-each"), Some("about 7\tmin"));
        assert_eq!((of(&two, "next-fee"), of(&two, "next"), of("", "next-fee")), (Some(""), None, None));
        let changed = with(&two, "2026-07-15", "load-each", Some("7"));
        assert_eq!((of(&changed, "load-each"), of(&changed, "next-fee")), (Some("7"), Some("")));
        let gone = with(&changed, "2026-07-15", "load-each", None);
        assert_eq!((of(&gone, "load-each"), of(&gone, "next-fee")), (None, Some("")));
    }

    #[test]
    fn each_stands_over_the_night_after_its_own_last_keystroke_and_no_longer() {
        let one = with("", "2026-07-14", "load-store", Some("7"));
        let two = with(&one, "2026-07-15", "load-leave", Some("07:30"));
        assert_eq!(standing(&two, day("2026-07-15")), two);
        // On a page that never closes somebody types every day: the older field lets go all the same.
        let next = standing(&two, day("2026-07-16"));
        assert_eq!((of(&next, "load-store"), of(&next, "load-leave")), (None, Some("07:30")));
        // A phone whose date was set back has texts from days to come.
        for today in ["2026-07-13", "2026-07-17", "2027-07-15"] {
            assert_eq!(standing(&two, day(today)), "");
        }
        for strange in ["", "\n", "{}", "load-each\t7", "2026-07-15\nload-each\t7"] {
            assert_eq!(standing(strange, day("2026-07-15")), "");
        }
    }
}
