//! Many hive labels in one line.

use super::number::is_dash;
use crate::almanac::table::Table;

/// Why a list of labels was refused.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum TagsError {
    /// Nothing there.
    Empty,
    /// Too many labels.
    TooMany {
        /// The most that is taken.
        most: usize,
        /// How many were asked for.
        asked: usize,
    },
    /// A range whose end comes before its start.
    Backwards,
    /// A label that occurs twice.
    Repeated {
        /// That label.
        tag: String,
    },
}

/// The labels in a line such as `1–24`, `A1-A12`, `1, 2, 5–7` or `Blue, Red 2`, in the order typed.
///
/// A range, with a dash or "to" between, runs over numbers with the same letters in front; the letters may be left out behind the dash. Leading
/// zeros and the script of the digits are kept: `01–12` gives `01` to `12`. Numbers with nothing but spaces between them,
/// such as `1 2 5–7`, are labels of their own. What else is no range is one label as typed.
///
/// # Errors
/// [`TagsError`].
pub fn tags(text: &str, most: usize) -> Result<Vec<String>, TagsError> {
    let parts = text.split([',', ';', '\n', '\u{60c}']).map(str::trim).filter(|part| !part.is_empty());
    let mut spans: Vec<Span<'_>> = Vec::new();
    for part in parts {
        if part.split_whitespace().all(|word| numbers(word).is_some()) {
            spans.extend(part.split_whitespace().filter_map(numbers));
        } else {
            spans.push(range(part).unwrap_or(Span::One(part)));
        }
    }
    // Counted before anything is written out: 1–4000000000 is six keystrokes.
    let mut asked: u64 = 0;
    for span in &spans {
        asked = asked.saturating_add(match span {
            Span::One(_) => 1,
            Span::Numbers { first, last, .. } if last < first => return Err(TagsError::Backwards),
            Span::Numbers { first, last, .. } => (last - first).saturating_add(1),
        });
    }
    let asked = usize::try_from(asked).unwrap_or(usize::MAX);
    if asked == 0 {
        return Err(TagsError::Empty);
    }
    if asked > most {
        return Err(TagsError::TooMany { most, asked });
    }
    let mut tags = Vec::with_capacity(asked);
    for span in spans {
        match span {
            Span::One(tag) => tags.push(tag.to_owned()),
            Span::Numbers { letters, zero, width, first, last } => {
                tags.extend((first..=last).map(|number| written(letters, zero, width, number)));
            }
        }
    }
    let mut seen = Table::new();
    match tags.iter().find(|tag| seen.insert(tag.as_str(), ()).is_some()) {
        Some(tag) => Err(TagsError::Repeated { tag: tag.clone() }),
        None => Ok(tags),
    }
}

enum Span<'a> {
    One(&'a str),
    Numbers { letters: &'a str, zero: char, width: usize, first: u64, last: u64 },
}

/// A number, or a range of numbers, without letters.
fn numbers(word: &str) -> Option<Span<'_>> {
    match range(word) {
        Some(Span::Numbers { letters: "", zero, width, first, last }) => {
            Some(Span::Numbers { letters: "", zero, width, first, last })
        }
        Some(_) => None,
        None => value(word).map(|_| Span::One(word)),
    }
}

fn range(part: &str) -> Option<Span<'_>> {
    let (from, to) = match part.char_indices().find(|(_, c)| is_dash(*c)) {
        Some((at, dash)) => (part.get(..at)?, part.get(at + dash.len_utf8()..)?),
        None => worded(part)?,
    };
    let (from, to) = (from.trim_end(), to.trim_start());
    let (letters, digits) = split(from);
    let (again, end) = split(to);
    if !again.is_empty() && again != letters {
        return None;
    }
    let (zero, first) = value(digits)?;
    // The end may be beyond all counting: then it is far too many.
    let (end_zero, last) = value(end)?;
    (zero == end_zero).then_some(Span::Numbers { letters, zero, width: digits.chars().count(), first, last })
}

/// What stands before and behind the word "to". Looked for by its spaces: the library's search for a word in a text is a
/// kilobyte of the page.
fn worded(part: &str) -> Option<(&str, &str)> {
    let mut rest = part;
    while let Some((_, behind)) = rest.split_once(' ') {
        if let Some((word, to)) = behind.split_once(' ')
            && word.eq_ignore_ascii_case("to")
        {
            let before = part.len() - to.len() - word.len() - 1;
            return Some((part.get(..before)?, to));
        }
        rest = behind;
    }
    None
}

/// The letters in front of the digits at the end.
fn split(label: &str) -> (&str, &str) {
    label.split_at_checked(label.trim_end_matches(|c| script(c).is_some()).len()).unwrap_or((label, ""))
}

/// The zero of the script a digit belongs to.
fn script(c: char) -> Option<char> {
    ['0', '\u{660}', '\u{6f0}'].into_iter().find(|zero| (*zero..).take(10).any(|digit| digit == c))
}

/// The zero of the script and the value, held at the end of `u64`; none without digits or in mixed scripts.
fn value(digits: &str) -> Option<(char, u64)> {
    let zero = script(digits.chars().next()?)?;
    let mut value: u64 = 0;
    for c in digits.chars() {
        let figure = u32::from(c).checked_sub(u32::from(zero)).filter(|figure| *figure < 10)?;
        value = value.saturating_mul(10).saturating_add(u64::from(figure));
    }
    Some((zero, value))
}

fn written(letters: &str, zero: char, width: usize, number: u64) -> String {
    let digits = number.to_string();
    let zeros = std::iter::repeat_n('0', width.saturating_sub(digits.len()));
    let in_script = zeros.chain(digits.chars()).filter_map(|c| {
        let figure = c.to_digit(10)?;
        char::from_u32(u32::from(zero) + figure)
    });
    letters.chars().chain(in_script).collect()
}

#[cfg(test)]
mod tests {
    use super::{TagsError, tags};

    #[test]
    fn keeper_types_a_row_of_hives() {
        for (text, labels) in [
            ("1–3", "1|2|3"),
            ("1-3", "1|2|3"),
            ("8 - 11", "8|9|10|11"),
            ("08-11", "08|09|10|11"),
            ("A1-A3", "A1|A2|A3"),
            ("A1–3", "A1|A2|A3"),
            ("Blue 1–Blue 2", "Blue 1|Blue 2"),
            ("1,2,5–7", "1|2|5|6|7"),
            ("1;2\n3،4,", "1|2|3|4"),
            ("٨–١١", "٨|٩|١٠|١١"),
            ("1 2 3", "1|2|3"),
            ("1 2 5–7, 9", "1|2|5|6|7|9"),
            ("Blue 2 3", "Blue 2 3"),
            ("12 a", "12 a"),
            ("1 to 3", "1|2|3"),
            ("A1 to A3, 7", "A1|A2|A3|7"),
            ("A9  to 11", "A9|A10|A11"),
            ("Red hive 1 TO 3", "Red hive 1|Red hive 2|Red hive 3"),
            ("Road to 3", "Road to 3"),
            ("To 3", "To 3"),
            ("Blue, Red-2", "Blue|Red-2"),
            ("A1-B3", "A1-B3"),
            ("7-7", "7"),
            ("-", "-"),
            ("–3", "–3"),
            ("3-", "3-"),
        ] {
            assert_eq!(tags(text, 500).map(|tags| tags.join("|")).as_deref(), Ok(labels), "{text}");
        }
    }

    #[test]
    fn keeper_pastes_1000_hives_or_a_range_without_end_and_the_cap_is_said() {
        assert_eq!(tags("1-500", 500).map(|tags| tags.len()), Ok(500));
        assert_eq!(tags("1-500, A", 500), Err(TagsError::TooMany { most: 500, asked: 501 }));
        assert_eq!(tags("1-1000", 500), Err(TagsError::TooMany { most: 500, asked: 1000 }));
        for text in ["1-99999999999", "0-99999999999999999999999999"] {
            assert!(matches!(tags(text, 500), Err(TagsError::TooMany { most: 500, .. })), "{text}");
        }
    }

    #[test]
    fn keeper_types_nothing_a_backward_row_or_a_hive_twice() {
        for text in ["", " , ;\n"] {
            assert_eq!(tags(text, 500), Err(TagsError::Empty), "{text}");
        }
        assert_eq!(tags("7-5", 500), Err(TagsError::Backwards));
        assert_eq!(tags("1-5, 3", 500), Err(TagsError::Repeated { tag: "3".into() }));
    }
}
