//! What is told of a day before its hives came into the book.

use super::{Draft, Pen, Refusal};
use crate::almanac::day::Day;
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::id::ThingId;
use crate::book::record::Record;

impl Book {
    /// As [`Book::record`], the first day of hives that came into the book later moved to `day`: they stood there already.
    ///
    /// # Errors
    /// As [`Book::record`], but for [`Refusal::BeforeHive`]; [`Refusal::NotThereYet`] when something else in the book would
    /// miss what it speaks of.
    pub fn record_from_start(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        yard: Option<&ThingId>,
        record: &Record,
    ) -> Result<Vec<Entry>, Refusal> {
        let mut draft = Draft::new(self, pen);
        let in_effect = self.log().in_effect();
        for hive in record.hives.iter().chain(record.named_hive()) {
            let hive = self.standing().kept(hive);
            if self.standing().hives.get(hive).is_some_and(|now| now.since > day) {
                let start = in_effect.iter().find(|(root, _)| *root == hive.entry());
                let (_, line) = start.ok_or(Refusal::Unknown)?;
                draft.correct(line, day, line.what.clone())?;
            }
        }
        draft.push(day, yard, What::Record(record.clone()))?;
        let entries = draft.done();
        self.trial(&entries)?.record_holds(record, day, today)?;
        Ok(entries)
    }
}
