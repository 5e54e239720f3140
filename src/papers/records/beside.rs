//! Records beside the traps, field by field.

use super::{Filling, NOT_LOOKED};
use crate::almanac::tally::CountRange;
use crate::book::entry::Entry;
use crate::book::record::{Answer, Ask, Record};

impl Filling<'_> {
    /// A row.
    pub(super) fn record(&mut self, entry: &Entry, record: &Record) {
        let standing = self.standing;
        self.begin(entry);
        let (mut ids, mut tags) = (Vec::new(), Vec::new());
        for hive in standing.kept_of(&record.hives) {
            ids.push(hive.to_string());
            tags.push(standing.hives.get(hive).map_or("", |now| &now.tag));
        }
        self.put(&ids.join(" "));
        self.put(&tags.join("; "));
        for (field, answer) in record.fields() {
            match (&field.ask, answer) {
                (Ask::Count, count) => {
                    let count = if let Some(Answer::Count(count)) = count { Some(*count) } else { None };
                    self.count(count.map(CountRange::low));
                    self.count(count.and_then(CountRange::high));
                    self.put(if count.is_some() { "counted" } else { NOT_LOOKED });
                }
                (Ask::Number { units, .. }, number) => {
                    let number = if let Some(Answer::Number(number, unit)) = number {
                        Some((number, unit))
                    } else {
                        None
                    };
                    self.put(&number.map(|(number, _)| number.to_string()).unwrap_or_default());
                    if !units.is_empty() {
                        let unit = number.and_then(|(_, unit)| units.get(usize::from(*unit)).copied());
                        self.put(unit.unwrap_or_default());
                    }
                }
                (_, None) => self.put(""),
                (_, Some(Answer::Hive(hive))) => self.put(&standing.kept(hive).to_string()),
                (ask, Some(answer)) => self.put(&plain(ask, answer)),
            }
        }
    }
}

/// What stands in a field, as one text: several words with a blank between them.
fn plain(ask: &Ask, answer: &Answer) -> String {
    match (ask, answer) {
        (Ask::Word(words), Answer::Word(at)) => {
            words.get(usize::from(*at)).copied().unwrap_or_default().to_owned()
        }
        (Ask::Words(words), Answer::Words(bits)) => {
            let chosen = words.iter().enumerate().filter(|(at, _)| bits >> at & 1 == 1);
            chosen.map(|(_, word)| *word).collect::<Vec<_>>().join(" ")
        }
        (_, Answer::Text(text)) => text.clone(),
        (_, Answer::Day(day)) => day.to_string(),
        (_, Answer::Time(time)) => time.to_string(),
        _ => String::new(),
    }
}
