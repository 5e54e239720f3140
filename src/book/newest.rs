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
        let here = |hive: &ThingId| standing.hives.get(hive).is_some_and(|hive| hive.yard == *yard);
        Newest::among(standing, &here, blanks, today)
    }

    /// Those of `blanks` about `hive` alone, written for `today` or before.
    pub fn of_one(standing: &'a Standing, hive: &ThingId, blanks: &[Blank], today: Day) -> Newest<'a> {
        Newest::among(standing, &|other| other == hive, blanks, today)
    }

    fn among(
        standing: &'a Standing,
        wanted: &dyn Fn(&ThingId) -> bool,
        blanks: &[Blank],
        today: Day,
    ) -> Newest<'a> {
        let mut of: Table<ThingId, Vec<(Day, &EntryId, &RecordNow)>> = Table::new();
        for (id, now) in &standing.records {
            if now.day > today || !blanks.contains(&now.record.blank) {
                continue;
            }
            let hives = &now.record.hives;
            for (nth, hive) in hives.iter().enumerate() {
                let hive = standing.kept(hive);
                // Two that turned out to be one are asked about once.
                let before = || hives.iter().take(nth).any(|other| standing.kept(other) == hive);
                if wanted(hive) && !before() {
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
