//! What stands in a field, and how it lies in a file.

use super::blanks::Ask;
use crate::almanac::day::Day;
use crate::almanac::json::{Fields, Json, Object, Value, json_text, write_text};
use crate::almanac::quantity::Decimal;
use crate::almanac::tally::CountRange;
use crate::book::id::ThingId;

/// What stands in a field. Which of these it is, the field says ([`Ask`]).
#[derive(Clone, Debug, PartialEq)]
pub enum Answer {
    /// One of the field's words, by its place.
    Word(u8),
    /// Some of the field's words: a bit for each, the first word the lowest.
    Words(u16),
    /// Counted, exactly or as a range.
    Count(CountRange),
    /// A number, and which of the field's units it is in.
    Number(Decimal, u8),
    /// In the keeper's words.
    Text(String),
    /// A civil day.
    Day(Day),
    /// A civil day and the hour by the clock of the yard.
    Time(ClockTime),
    /// Another hive.
    Hive(ThingId),
}

/// A day and an hour by the clock of the yard, to the minute.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct ClockTime {
    /// The day.
    pub day: Day,
    /// Minutes since midnight, 0 to [`ClockTime::LAST_MINUTE`].
    pub minute: u16,
}

/// Not a day and an hour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoClockTime;

impl ClockTime {
    /// 23:59.
    pub const LAST_MINUTE: u16 = 24 * 60 - 1;

    /// Reads `2026-07-14T16:30` (ISO 8601; RFC 3339 without seconds and zone).
    ///
    /// # Errors
    /// [`NoClockTime`].
    pub fn parse(text: &str) -> Result<ClockTime, NoClockTime> {
        ClockTime::read(text).ok_or(NoClockTime)
    }

    fn read(text: &str) -> Option<ClockTime> {
        let (day, time) = text.split_once('T')?;
        let (hour, minute) = time.split_once(':')?;
        let two = |digits: &str, most: u16| {
            let plain = digits.len() == 2 && digits.bytes().all(|digit| digit.is_ascii_digit());
            plain.then(|| digits.parse::<u16>().ok()).flatten().filter(|number| *number <= most)
        };
        Some(ClockTime { day: Day::parse(day).ok()?, minute: two(hour, 23)? * 60 + two(minute, 59)? })
    }

    /// Writes it at the end of `text`.
    fn put(self, text: &mut String) {
        text.push_str(&self.day.to_string());
        text.push('T');
        self.put_clock(text);
    }

    /// Writes the hour alone: `16:30`.
    pub fn put_clock(self, text: &mut String) {
        for (number, before) in [(self.minute / 60, ""), (self.minute % 60, ":")] {
            text.push_str(before);
            if number < 10 {
                text.push('0');
            }
            crate::almanac::json::write_whole(number.into(), text);
        }
    }
}

json_text!(ClockTime);

impl Ask {
    /// Writes the answer to this field.
    pub(super) fn write(&self, answer: &Answer, out: &mut String) {
        match (answer, self) {
            (Answer::Word(at), Ask::Word(words)) => {
                write_text(words.get(usize::from(*at)).copied().unwrap_or_default(), out);
            }
            (Answer::Words(bits), Ask::Words(words)) => {
                let mut next = '[';
                for (at, word) in words.iter().enumerate() {
                    if bits >> at & 1 == 1 {
                        out.push(next);
                        write_text(word, out);
                        next = ',';
                    }
                }
                out.push_str(if next == '[' { "[]" } else { "]" });
            }
            (Answer::Number(number, at), Ask::Number { units, .. }) => match units.get(usize::from(*at)) {
                Some(unit) => {
                    let mut object = Object::open(out);
                    object.field("n", number);
                    object.raw("unit", &|out| write_text(unit, out));
                    object.close();
                }
                None => number.write(out),
            },
            (Answer::Count(count), _) => count.write(out),
            (Answer::Text(text), _) => text.write(out),
            (Answer::Day(day), _) => day.write(out),
            (Answer::Time(time), _) => time.write(out),
            (Answer::Hive(hive), _) => hive.write(out),
            // No answer is ever made for a field of another kind; a file that says null is refused when it is read.
            _ => out.push_str("null"),
        }
    }

    /// Reads the answer to this field; none when it is no answer to it.
    pub(super) fn read(&self, value: Value) -> Option<Answer> {
        match self {
            Ask::Word(words) => {
                let word = String::read(value)?;
                place(words, &word).map(Answer::Word)
            }
            Ask::Words(words) => {
                let Value::Array(items) = value else { return None };
                let mut bits = 0u16;
                for item in items {
                    let bit = 1u16.checked_shl(place(words, &String::read(item)?)?.into())?;
                    // In the order of the blank and none twice: one set of words has one text.
                    if bit <= bits {
                        return None;
                    }
                    bits |= bit;
                }
                (bits != 0).then_some(Answer::Words(bits))
            }
            Ask::Count => CountRange::read(value).map(Answer::Count),
            Ask::Number { units: [], .. } => Decimal::read(value).map(|number| Answer::Number(number, 0)),
            Ask::Number { units, .. } => {
                let mut fields = Fields::of(value)?;
                let number = fields.take("n")?;
                let unit: String = fields.take("unit")?;
                fields.end()?;
                Some(Answer::Number(number, place(units, &unit)?))
            }
            Ask::Text(_) => String::read(value).filter(|text| !text.is_empty()).map(Answer::Text),
            Ask::Day => Day::read(value).map(Answer::Day),
            Ask::Time => ClockTime::read_json(value).map(Answer::Time),
            Ask::Hive => ThingId::read(value).map(Answer::Hive),
        }
    }
}

impl ClockTime {
    fn read_json(value: Value) -> Option<ClockTime> {
        <ClockTime as Json>::read(value)
    }
}

/// The place of a word among a field's.
pub(in crate::book) fn place(words: &[&str], word: &str) -> Option<u8> {
    words.iter().position(|known| *known == word)?.try_into().ok()
}
