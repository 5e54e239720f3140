//! Names people give to hives, yards and traps: kept as typed, compared as read.

/// How long a label may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Most {
    /// Visible characters, as people count.
    pub visible: usize,
    /// Code points, as the file counts: one visible character may be made of any number of them.
    pub points: usize,
}

/// A tag, a name, a permit number.
pub const LABEL_MOST: Most = Most { visible: 60, points: 300 };
/// A phone's label.
pub const PHONE_MOST: Most = Most { visible: 20, points: 60 };

/// What this module needs to know about writing systems. The browser has it built in, so no tables travel in the page.
pub trait Letters {
    /// The text in Unicode normalisation form C.
    fn normal(&self, text: &str) -> String;
    /// How many characters a reader sees (extended grapheme clusters, UAX #29).
    fn visible(&self, text: &str) -> usize;
    /// The text in lower case.
    fn lower(&self, text: &str) -> String {
        text.to_lowercase()
    }
}

/// Why a label was refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LabelError {
    /// Nothing in it that can be seen.
    Empty,
    /// Too long.
    TooLong {
        /// Most visible characters.
        most: usize,
    },
    /// Not too long to look at, but made of more code points than the file has room for.
    TooManySigns,
}

/// The label in `text`: ends trimmed, the inside kept as typed; control characters and invisible ones dropped, except
/// the joiners and variation selectors that some scripts and pictures need. Tabs and line breaks become spaces.
///
/// # Errors
/// [`LabelError`] when nothing visible is left, or more than `most`.
pub fn label(text: &str, most: Most, letters: &impl Letters) -> Result<String, LabelError> {
    let kept: String = text.chars().filter_map(keep).collect();
    let kept = kept.trim();
    if kept.chars().all(|c| c.is_whitespace() || shapes_neighbours(c)) {
        return Err(LabelError::Empty);
    }
    if letters.visible(kept) > most.visible {
        return Err(LabelError::TooLong { most: most.visible });
    }
    if kept.chars().count() > most.points {
        return Err(LabelError::TooManySigns);
    }
    Ok(kept.to_owned())
}

/// As [`label`], for a field that may stay empty.
///
/// # Errors
/// [`LabelError`], but never that it is empty.
pub fn label_if_any(text: &str, most: Most, letters: &impl Letters) -> Result<Option<String>, LabelError> {
    match label(text, most, letters) {
        Ok(label) => Ok(Some(label)),
        Err(LabelError::Empty) => Ok(None),
        Err(error) => Err(error),
    }
}

fn keep(c: char) -> Option<char> {
    match c {
        '\u{2028}' | '\u{2029}' => Some(' '),
        c if c.is_control() => c.is_whitespace().then_some(' '),
        // Soft hyphen, grapheme joiner, letter fillers and blanks, zero-width space, direction marks and
        // embeddings, invisible operators, byte-order mark, annotation marks, language tags.
        '\u{ad}'
        | '\u{34f}'
        | '\u{61c}'
        | '\u{115f}'
        | '\u{1160}'
        | '\u{17b4}'
        | '\u{17b5}'
        | '\u{180e}'
        | '\u{200b}'
        | '\u{200e}'
        | '\u{200f}'
        | '\u{202a}'..='\u{202e}'
        | '\u{2060}'..='\u{206f}'
        | '\u{2800}'
        | '\u{3164}'
        | '\u{feff}'
        | '\u{ffa0}'
        | '\u{fff0}'..='\u{fffb}'
        | '\u{e0000}'..='\u{e0fff}' => None,
        c => Some(c),
    }
}

/// Zero-width joiner and non-joiner, and the selectors of a picture's style: invisible, but not idle.
fn shapes_neighbours(c: char) -> bool {
    matches!(c, '\u{200c}' | '\u{200d}' | '\u{fe00}'..='\u{fe0f}')
}

/// What two labels are compared by: normalisation form C, lower case, runs of white space as one space.
pub fn key(text: &str, letters: &impl Letters) -> String {
    let lower = letters.normal(&letters.lower(&letters.normal(text)));
    lower.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Two labels that are not the same but can be taken for one another: 0 and O; 1, l and I; Cyrillic and Greek twins of
/// Latin letters; joiners that cannot be seen.
pub fn look_alike(a: &str, b: &str, letters: &impl Letters) -> bool {
    key(a, letters) != key(b, letters) && shape(a, letters) == shape(b, letters)
}

fn shape(text: &str, letters: &impl Letters) -> String {
    let twins: String =
        letters.normal(text).chars().filter(|c| !shapes_neighbours(*c)).map(latin_twin).collect();
    let fold = |c| match c {
        '0' => 'o',
        '1' | 'i' | '|' | '\u{131}' => 'l',
        c => c,
    };
    key(&twins, letters).chars().map(fold).collect()
}

/// The Latin letter that a Cyrillic or Greek one is drawn like. Capitals and small letters differ: Ν is N, ν is v.
fn latin_twin(c: char) -> char {
    match c {
        'А' | 'а' | 'Α' | 'α' => 'a',
        'В' | 'Β' => 'b',
        'С' | 'с' | 'Ϲ' | 'ϲ' => 'c',
        'ԁ' => 'd',
        'Е' | 'е' | 'Ε' => 'e',
        'Н' | 'Η' | 'һ' => 'h',
        'І' | 'і' | 'Ι' | 'ι' | 'ӏ' | 'Ӏ' => 'i',
        'Ј' | 'ј' => 'j',
        'К' | 'к' | 'Κ' | 'κ' => 'k',
        'М' | 'Μ' => 'm',
        'Ν' | 'η' => 'n',
        'О' | 'о' | 'Ο' | 'ο' => 'o',
        'Р' | 'р' | 'Ρ' | 'ρ' => 'p',
        'ԛ' => 'q',
        'Ѕ' | 'ѕ' => 's',
        'Т' | 'Τ' | 'τ' => 't',
        'υ' => 'u',
        'ν' => 'v',
        'ԝ' => 'w',
        'Х' | 'х' | 'Χ' | 'χ' => 'x',
        'У' | 'у' | 'Υ' => 'y',
        'Ζ' => 'z',
        c => c,
    }
}

/// A digit of the writing systems that keepers number hives in, a small figure or a common fraction.
fn is_figure(c: char) -> bool {
    matches!(
        c,
        '0'..='9'
            | '²' | '³' | '¹' | '¼'..='¾'
            | '٠'..='٩' | '۰'..='۹' | '०'..='९' | '০'..='৯' | '๐'..='๙'
            | '\u{2070}'..='\u{2089}' | '\u{2150}'..='\u{2189}' | '\u{2460}'..='\u{249b}' | '０'..='９'
    )
}

/// The small letter of a Latin, Greek or Cyrillic capital, for putting names in order; any other letter as it is.
pub fn small(c: char) -> char {
    let by = |distance| char::from_u32(u32::from(c) + distance).unwrap_or(c);
    match c {
        'A'..='Z' | 'À'..='Ö' | 'Ø'..='Þ' | 'Α'..='Ρ' | 'Σ'..='Ϋ' | 'А'..='Я' => by(32),
        'Ѐ'..='Џ' => by(80),
        'Ā'..='Į' | 'Ĳ'..='Ķ' | 'Ŋ'..='Ŷ' | 'Ѡ'..='Ҁ' | 'Ҋ'..='Ҿ' | 'Ӑ'..='Ԯ' | 'Ḁ'..='Ẕ' | 'Ạ'..='Ỿ' => {
            by(1 - u32::from(c) % 2)
        }
        'Ĺ'..='Ň' | 'Ź'..='Ž' => by(u32::from(c) % 2),
        'Ÿ' => 'ÿ',
        c => c,
    }
}

/// A free label near `wanted`: 12 gives 12b, 12c… after a digit, and "Blue 2", "Blue 3"… after anything else or when
/// the alphabet is used up. `wanted` itself when it is not taken.
pub fn suggest(taken: impl Fn(&str) -> bool, wanted: &str) -> String {
    let wanted = wanted.trim();
    let tailed = |tail: &str| [wanted, tail].concat();
    let letters = ('b'..='z').filter(|_| wanted.ends_with(is_figure)).map(String::from);
    let numbers = (2..=10_000_u32).map(|number| [" ", &number.to_string()].concat());
    let free = letters.chain(numbers).map(|tail| tailed(&tail)).find(|label| !taken(label));
    if taken(wanted) {
        // The last is a way out for a `taken` that says yes to everything.
        free.unwrap_or_else(|| tailed(" 10001"))
    } else {
        wanted.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::{LABEL_MOST, LabelError, Letters, key, label, look_alike, suggest};
    use unicode_normalization::UnicodeNormalization;
    use unicode_segmentation::UnicodeSegmentation;

    struct Tables;

    impl Letters for Tables {
        fn normal(&self, text: &str) -> String {
            text.nfc().collect()
        }

        fn visible(&self, text: &str) -> usize {
            text.graphemes(true).count()
        }
    }

    fn read(text: &str) -> Result<String, LabelError> {
        label(text, LABEL_MOST, &Tables)
    }

    #[test]
    fn keeper_types_only_spaces_or_invisible_characters_and_is_asked_for_a_label() {
        for text in
            ["", "   ", "\t\n", "\u{200b}\u{2060}", "\u{200d}", "\u{202e} \u{2069}", "\u{a0}", "\u{fe0f}"]
        {
            assert_eq!(read(text), Err(LabelError::Empty), "{text:?}");
        }
    }

    #[test]
    fn ends_are_trimmed_and_the_inside_kept() {
        assert_eq!(read("  Blue  7 ").as_deref(), Ok("Blue  7"));
        assert_eq!(read("Blue\n7\u{0}").as_deref(), Ok("Blue 7"));
        assert_eq!(read("\u{202e}12\u{202c}").as_deref(), Ok("12"));
    }

    #[test]
    fn keeper_types_emoji_accents_and_right_to_left_names_and_they_stay_whole() {
        for text in ["Ruche à l’érable", "👩‍🌾 7", "خلية ٧", "כוורת 12", "Wärme", "می‌خواهم", "❤️"]
        {
            assert_eq!(read(text).as_deref(), Ok(text));
        }
    }

    #[test]
    fn keeper_pastes_200_characters_and_60_visible_ones_pass() {
        // Five code points each, one visible character.
        let family = "👩\u{200d}👩\u{200d}👧";
        assert!(read(&family.repeat(60)).is_ok());
        assert_eq!(read(&family.repeat(61)), Err(LabelError::TooLong { most: 60 }));
        assert_eq!(read(&[&family.repeat(59), "ब्र्क्ष्ट"].concat()), Err(LabelError::TooManySigns));
        assert_eq!(read(&"x".repeat(200)), Err(LabelError::TooLong { most: 60 }));
    }

    #[test]
    fn keeper_types_the_same_name_in_other_letters_cases_or_spaces_and_it_is_the_same() {
        for (a, b) in [("Blue 7", "  bLUE   7"), ("Caf\u{e9}", "cafe\u{301}"), ("ÉRABLE", "érable")] {
            assert_eq!(key(a, &Tables), key(b, &Tables));
            assert!(!look_alike(a, b, &Tables));
        }
    }

    #[test]
    fn keeper_is_warned_of_a_name_that_only_looks_like_another() {
        for (a, b) in [
            ("O7", "07"),
            ("l1", "1I"),
            ("Hive I", "hive 1"),
            ("АВС", "ABC"),
            ("ΝΟΒ", "NOB"),
            ("1\u{200d}2", "12"),
            ("НОТ 0", "HOT O"),
        ] {
            assert!(look_alike(a, b, &Tables), "{a} {b}");
        }
        for (a, b) in [("12", "13"), ("A", "B"), ("12", "12b"), ("Ja", "Ла")] {
            assert!(!look_alike(a, b, &Tables), "{a} {b}");
        }
    }

    #[test]
    fn keeper_types_a_label_twice_and_gets_the_next_free_one() {
        let shelf = |taken: &'static [&'static str]| move |label: &str| taken.contains(&label);
        assert_eq!(suggest(shelf(&["12"]), "12"), "12b");
        assert_eq!(suggest(shelf(&["12", "12b"]), " 12 "), "12c");
        assert_eq!(suggest(shelf(&["Blue"]), "Blue"), "Blue 2");
        assert_eq!(suggest(shelf(&["12"]), "13"), "13");
        assert_eq!(suggest(|label| !label.contains(' '), "12"), "12 2");
        assert_eq!(suggest(|_| true, "12"), "12 10001");
    }
}
