//! Records: what was seen and done beside the traps.

use super::{Draft, Pen, Refusal};
use crate::almanac::day::Day;
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::id::ThingId;
use crate::book::record::{Blank, Record};

impl Book {
    /// A blank filled in for `day`, on the page of `yard`; none for what is about the keeper.
    ///
    /// # Errors
    /// [`Refusal::Future`]; [`Refusal::Lacks`] and [`Refusal::Backwards`] name the field; [`Refusal::BeforeHive`],
    /// [`Refusal::Ended`] unless the blank can be about a hive whose care has ended; [`Refusal::SplitOfItself`];
    /// [`Refusal::Nothing`] when nothing is filled in or no hive is named where one must be; [`Refusal::Unknown`].
    pub fn record(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        yard: Option<&ThingId>,
        record: Record,
    ) -> Result<Vec<Entry>, Refusal> {
        if yard.is_some_and(|yard| !self.standing().yards.contains_key(yard)) {
            return Err(Refusal::Unknown);
        }
        self.record_holds(&record, day, today)?;
        let mut draft = Draft::new(self, pen);
        draft.push(day, yard, What::Record(record))?;
        self.holding(draft.done())
    }

    /// Several blanks filled in for `day` as one act: undone together.
    ///
    /// # Errors
    /// As [`Book::record`], of the first that is refused.
    pub fn records_together(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        yard: Option<&ThingId>,
        records: Vec<Record>,
    ) -> Result<Vec<Entry>, Refusal> {
        if yard.is_some_and(|yard| !self.standing().yards.contains_key(yard)) {
            return Err(Refusal::Unknown);
        }
        let mut draft = Draft::new(self, pen);
        draft.bulk();
        for record in records {
            self.record_holds(&record, day, today)?;
            draft.push(day, yard, What::Record(record))?;
        }
        self.holding(draft.done())
    }

    /// Whether the book has anything against `record` on `day`.
    ///
    /// # Errors
    /// As [`Book::record`].
    pub(super) fn record_holds(&self, record: &Record, day: Day, today: Day) -> Result<(), Refusal> {
        if day > today {
            return Err(Refusal::Future { today });
        }
        if let Some(field) = record.lacks() {
            return Err(Refusal::Lacks { field });
        }
        if let Some(field) = record.backwards(day).or_else(|| record.upside_down()) {
            return Err(Refusal::Backwards { field });
        }
        // Rain is told by its day alone, and facts may be emptied; of whatever else asks for nothing in particular
        // something must be told.
        let alone = matches!(
            record.blank,
            Blank::Rain
                | Blank::HiveFacts
                | Blank::YardFacts
                | Blank::KeeperFacts
                | Blank::Aims
                | Blank::Costs
        );
        let nothing = record.answers.iter().all(Option::is_none) && !alone;
        if nothing || record.check().is_err() {
            return Err(Refusal::Nothing);
        }
        let kept = |hive| self.standing().kept(hive);
        for hive in record.hives.iter().map(kept) {
            let now = self.standing().hives.get(hive).ok_or(Refusal::Unknown)?;
            if !record.blank.after_end() {
                self.in_care(hive, day, today)?;
            } else if day < now.since {
                return Err(Refusal::BeforeHive { since: now.since });
            }
        }
        if let (Blank::Split, [from], Some(into)) = (record.blank, &*record.hives, record.named_hive()) {
            if !self.standing().hives.contains_key(kept(into)) {
                return Err(Refusal::Unknown);
            }
            if self.descends(kept(from), kept(into)) {
                return Err(Refusal::SplitOfItself);
            }
        }
        Ok(())
    }

    /// Whether `hive` is `from` or came from it, by however many splits.
    fn descends(&self, hive: &ThingId, from: &ThingId) -> bool {
        let splits = self.standing().records_of(Blank::Split);
        let mut known = vec![hive];
        let mut at = 0;
        while let Some(child) = known.get(at).copied() {
            if child == from {
                return true;
            }
            for (_, split) in &splits {
                let parent = split.record.hives.first().filter(|parent| !known.contains(parent));
                if split.record.named_hive() == Some(child)
                    && let Some(parent) = parent
                {
                    known.push(parent);
                }
            }
            at += 1;
        }
        false
    }
}
