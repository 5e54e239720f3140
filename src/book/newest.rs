//! The newest records of each hive, found in one pass over the book.

use super::id::{EntryId, ThingId};
use super::record::{Blank, Record};
use super::standing::{RecordNow, Standing};
use crate::almanac::day::Day;
use crate::almanac::order::sort_by;
use crate::almanac::table::Table;

/// Records of some kinds about the hives of a yard, each hive's from the newest back; up to a day.
pub struct Newest<'a> {
    of: Table<ThingId, Vec<(Day, &'a EntryId, &'a RecordNow)>>,
}

impl<'a> Newest<'a> {
    /// Those of `blanks` about hives that stand in `yard`, written for `today` or before.
    pub fn of(standing: &'a Standing, yard: &ThingId, blanks: &[Blank], today: Day) -> Newest<'a> {
        let mut of: Table<ThingId, Vec<(Day, &EntryId, &RecordNow)>> = Table::new();
        for (id, now) in &standing.records {
            if now.day > today || !blanks.contains(&now.record.blank) {
                continue;
            }
            for hive in standing.kept_of(&now.record.hives) {
                if standing.hives.get(hive).is_some_and(|hive| hive.yard == *yard) {
                    of.or_insert(hive.clone(), Vec::new()).push((now.day, id, now));
                }
            }
        }
        for (_, own) in of.iter_mut() {
            sort_by(own, |one, two| (two.0, two.1).cmp(&(one.0, one.1)));
        }
        Newest { of }
    }

    /// Those of one kind about `hive`, from the newest back.
    pub fn each<'b>(
        &'b self,
        hive: &ThingId,
        blank: Blank,
    ) -> impl Iterator<Item = (Day, &'a RecordNow)> + 'b {
        let own = self.of.get(hive).map(Vec::as_slice).unwrap_or_default();
        own.iter().filter(move |(.., now)| now.record.blank == blank).map(|(day, _, now)| (*day, *now))
    }

    /// The newest of one kind about `hive`.
    pub fn first(&self, hive: &ThingId, blank: Blank) -> Option<(Day, &'a Record)> {
        self.each(hive, blank).next().map(|(day, now)| (day, &now.record))
    }
}
