//! What is typed on the Load and differs from what stands in its fields by itself: the day of the last keystroke, then a
//! line for each field, its name and its text with a tab between them. Only what differs lies there, so a field goes on
//! following the book until somebody types over it.

use crate::almanac::day::Day;

/// Days after the last keystroke for which typed numbers stand: over the night in which the phone shuts the page, and no
/// longer, since a number of an earlier trip would pass for what the book knows (judgement, no source).
const STANDS: i32 = 1;

/// What still stands of `all` at a start of the page on `today`.
pub fn standing(all: String, today: Day) -> String {
    let day = all.split('\n').next().map(Day::parse);
    let stands = matches!(day, Some(Ok(day)) if (0..=STANDS).contains(&today.days_since(day)));
    if stands { all } else { String::new() }
}

/// What is typed into the field of this name; none where nobody typed over it.
pub fn of<'a>(all: &'a str, name: &str) -> Option<&'a str> {
    all.split('\n').filter_map(|line| line.split_once('\t')).find(|(of, _)| *of == name).map(|(_, text)| text)
}

/// The same with `text` in the field of this name, typed on `today`; none lets go of it.
pub fn with(all: &str, today: &str, name: &str, text: Option<&str>) -> String {
    let mut now = today.to_owned();
    let others = all.split('\n').filter_map(|line| line.split_once('\t')).filter(|(of, _)| *of != name);
    for (of, text) in others.chain(text.map(|text| (name, text))) {
        for part in ["\n", of, "\t", text] {
            now.push_str(part);
        }
    }
    now
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
    fn it_stands_over_the_night_after_the_last_keystroke_and_no_longer() {
        let one = with("", "2026-07-14", "load-each", Some("7"));
        let two = with(&one, "2026-07-15", "load-leave", Some("07:30"));
        for today in ["2026-07-15", "2026-07-16"] {
            assert_eq!(standing(two.clone(), day(today)), two);
        }
        // A phone whose date was set back has texts from days to come.
        for today in ["2026-07-14", "2026-07-17", "2027-07-15"] {
            assert_eq!(standing(two.clone(), day(today)), "");
        }
        for strange in ["", "\n", "{}", "load-each\t7"] {
            assert_eq!(standing(strange.to_owned(), day("2026-07-15")), "");
        }
    }
}
