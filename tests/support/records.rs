//! One record of each kind, every field filled in.

use super::support::day;
use beetle_almanac::almanac::quantity::Decimal;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::record::{About, Answer, Ask, Blank, ClockTime, Record};

/// `blank` for `hive`, every field filled in; days and hours rise from 14 July 2026.
pub(crate) fn filled(blank: Blank, hive: &ThingId, other: &ThingId) -> Record {
    filled_since(4, blank, hive, other)
}

/// The same with the fields that `version` of the format knows, whatever came between them since.
pub(crate) fn filled_since(version: u32, blank: Blank, hive: &ThingId, other: &ThingId) -> Record {
    let hives = match blank.about() {
        About::Hive => vec![hive.clone()],
        About::Hives => vec![hive.clone(), other.clone()],
        About::Place | About::Yard | About::Keeper => Vec::new(),
    };
    let mut record = Record::empty(blank, hives);
    let fields = blank.fields().iter().zip(&mut record.answers);
    for (at, (field, answer)) in fields.filter(|(field, _)| field.since <= version).enumerate() {
        let at = u32::try_from(at).unwrap();
        *answer = Some(match field.ask {
            Ask::Word(words) => Answer::Word(u8::try_from(words.len() - 1).unwrap()),
            Ask::Words(words) => Answer::Words(1 | 1 << (words.len() - 1)),
            Ask::Count => Answer::Count(CountRange::new(5, Some(19)).unwrap()),
            Ask::Number { units, .. } => {
                // A climate's lows come after its highs and lie below them.
                let at = if field.name.starts_with("low_") { -i64::from(at) } else { i64::from(at) };
                // No more comes home than was taken along.
                let least = if field.name.ends_with("_back") { 500_000 - at * 1_000_000 } else { 2_500_000 };
                let number = Decimal::from_millionths(at * 1_000_000 + least).unwrap();
                Answer::Number(number, u8::try_from(units.len().saturating_sub(1)).unwrap())
            }
            Ask::Text(_) => Answer::Text(format!("{} \u{201c}7\u{201d}, =2+2", field.name)),
            Ask::Day => Answer::Day(day("2026-07-14").plus(i32::try_from(at).unwrap())),
            Ask::Time => {
                let minute = u16::try_from(8 * 60 + 5 + 61 * at).unwrap();
                Answer::Time(ClockTime { day: day("2026-07-14"), minute })
            }
            Ask::Hive => Answer::Hive(other.clone()),
        });
    }
    record
}
