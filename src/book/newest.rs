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
        let here = |hive: &ThingId, _: &RecordNow| stands(standing, hive, yard);
        Newest::among(standing, &here, blanks, today)
    }

    /// The same, and those that were written in `yard` about hives that stand elsewhere by now.
    pub fn with_moved(standing: &'a Standing, yard: &ThingId, blanks: &[Blank], today: Day) -> Newest<'a> {
        let here =
            |hive: &ThingId, now: &RecordNow| now.yard.as_ref() == Some(yard) || stands(standing, hive, yard);
        Newest::among(standing, &here, blanks, today)
    }

    /// Those of `blanks` about `hive` alone, written for `today` or before.
    pub fn of_one(standing: &'a Standing, hive: &ThingId, blanks: &[Blank], today: Day) -> Newest<'a> {
        Newest::among(standing, &|other, _| other == hive, blanks, today)
    }

    fn among(
        standing: &'a Standing,
        wanted: &dyn Fn(&ThingId, &RecordNow) -> bool,
        blanks: &[Blank],
        today: Day,
    ) -> Newest<'a> {
        let mut of: Table<ThingId, Vec<(Day, &EntryId, &RecordNow)>> = Table::new();
        for (id, now) in &standing.records {
            if now.day > today || !blanks.contains(&now.record.blank) {
                continue;
            }
            // The fold tells them of the hives that are kept. A file may name one twice all the same.
            for hive in now.record.hives.iter().filter(|hive| wanted(hive, now)) {
                let own = of.or_insert(hive.clone(), Vec::new());
                if own.last().is_none_or(|(_, last, _)| *last != id) {
                    own.push((now.day, id, now));
                }
            }
        }
        for (_, own) in of.iter_mut() {
            sort_by(own, |one, two| (two.0, two.1).cmp(&(one.0, one.1)));
        }
        Newest { of }
    }

    /// Those of one kind about `hive`, from the newest back.
    pub fn each(&self, hive: &ThingId, blank: Blank) -> std::vec::IntoIter<(Day, &'a RecordNow)> {
        let mut all = Vec::new();
        for (day, _, now) in self.of.get(hive).map(Vec::as_slice).unwrap_or_default() {
            if now.record.blank == blank {
                all.push((*day, *now));
            }
        }
        all.into_iter()
    }

    /// The newest of one kind about `hive`.
    pub fn first(&self, hive: &ThingId, blank: Blank) -> Option<(Day, &'a Record)> {
        self.each(hive, blank).next().map(|(day, now)| (day, &now.record))
    }
}

fn stands(standing: &Standing, hive: &ThingId, yard: &ThingId) -> bool {
    standing.hives.get(hive).is_some_and(|hive| hive.yard == *yard)
}
