//! The order of a walk: which hive comes next, what is usual today, which hives are left.

use crate::almanac::refill::Timing;
use crate::almanac::text::small;
use crate::book::entry::Did;
use crate::book::id::ThingId;
use crate::book::round::{HiveDue, Row};
use std::cmp::Ordering;

/// The hive after `after` that has no entry on the day of `rows`; behind the last one the list begins anew.
pub fn next_hive(rows: &[Row], after: Option<&ThingId>) -> Option<ThingId> {
    let at = after.and_then(|id| rows.iter().position(|row| row.hive == *id));
    let (before, behind) = rows.split_at(at.map_or(0, |at| at + 1));
    let open = |row: &&Row| row.today.is_none() && Some(&row.hive) != after;
    behind.iter().chain(before).find(open).map(|row| row.hive.clone())
}

/// What was done most often today, of the three things that are done to a hive in order; topped up before anybody
/// has done anything, and in a draw.
pub fn usual(rows: &[Row]) -> Did {
    let times = |did: Did| rows.iter().filter(|row| row.today == Some(Some(did))).count();
    let mut usual = Did::ToppedUp;
    for did in [Did::AsFound, Did::Replaced] {
        if times(did) > times(usual) {
            usual = did;
        }
    }
    usual
}

/// The hives that "the rest as usual" stands for: no entry today, and not waiting since a skip. What was skipped wants
/// somebody to stand at it.
pub fn rest(rows: &[Row]) -> Vec<ThingId> {
    let left = rows.iter().filter(|row| row.today.is_none() && row.skipped.is_none());
    left.map(|row| row.hive.clone()).collect()
}

/// A word for how a hive lies to today, for the style sheet.
pub fn due_word(due: &HiveDue) -> &'static str {
    match due {
        HiveDue::Resting { .. } => "resting",
        HiveDue::NoTraps { .. } => "none",
        HiveDue::Due { timing: Timing::In { .. }, .. } => "later",
        HiveDue::Due { timing: Timing::Today, .. } => "today",
        HiveDue::Due { timing: Timing::Overdue { .. }, .. } => "overdue",
    }
}

/// How many hives lie how to today.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Past their day.
    pub overdue: u32,
    /// Due today.
    pub today: u32,
    /// Due later.
    pub later: u32,
    /// Without a trap.
    pub bare: u32,
    /// Skipped, and not worked on since.
    pub skipped: u32,
}

/// Counts the rows of a yard.
pub fn counts(rows: &[Row]) -> Counts {
    let mut counts = Counts::default();
    for row in rows {
        match &row.due {
            HiveDue::Due { timing: Timing::Overdue { .. }, .. } => counts.overdue += 1,
            HiveDue::Due { timing: Timing::Today, .. } => counts.today += 1,
            HiveDue::Due { timing: Timing::In { .. }, .. } => counts.later += 1,
            HiveDue::NoTraps { .. } => counts.bare += 1,
            HiveDue::Resting { .. } => {}
        }
        counts.skipped += u32::from(row.skipped.is_some());
    }
    counts
}

/// The order in which people count: runs of digits by their number, everything else letter by letter without regard
/// to case.
pub fn by_tag(a: &str, b: &str) -> Ordering {
    let (mut a, mut b) = (parts(a).into_iter(), parts(b).into_iter());
    loop {
        match (a.next(), b.next()) {
            (None, None) => return Ordering::Equal,
            (None, Some(_)) => return Ordering::Less,
            (Some(_), None) => return Ordering::Greater,
            (Some(a), Some(b)) => match a.cmp(&b) {
                Ordering::Equal => {}
                order => return order,
            },
        }
    }
}

/// A stretch of a tag: a number by its length without leading zeros and its digits, or letters.
#[derive(PartialEq, Eq, PartialOrd, Ord)]
enum Part {
    Number(usize, String),
    Letters(String),
}

fn parts(tag: &str) -> Vec<Part> {
    let mut parts: Vec<Part> = Vec::new();
    for c in tag.chars().map(small) {
        match (c.is_ascii_digit(), parts.last_mut()) {
            (true, Some(Part::Number(_, run))) | (false, Some(Part::Letters(run))) => run.push(c),
            (true, _) => parts.push(Part::Number(0, c.to_string())),
            (false, _) => parts.push(Part::Letters(c.to_string())),
        }
    }
    for part in &mut parts {
        if let Part::Number(length, run) = part {
            *run = run.trim_start_matches('0').to_owned();
            *length = run.len();
        }
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::day::Day;
    use crate::book::entry::SkipReason;
    use crate::book::id::{EntryId, Writer};

    fn hive(n: u32) -> ThingId {
        EntryId::new(Writer::new("test").unwrap(), n).unwrap().thing(0)
    }

    #[allow(clippy::option_option)] // an entry of the day, and what was done in it
    fn row(n: u32, today: Option<Option<Did>>) -> Row {
        let due = HiveDue::NoTraps { wanting: 0 };
        Row { hive: hive(n), due, days_since: None, skipped: None, today }
    }

    #[test]
    fn the_next_hive_is_the_next_without_an_entry_and_the_list_begins_anew() {
        let done = Some(Some(Did::ToppedUp));
        let rows = [row(1, None), row(2, done), row(3, done), row(4, None)];
        assert_eq!(next_hive(&rows, None), Some(hive(1)));
        assert_eq!(next_hive(&rows, Some(&hive(2))), Some(hive(4)));
        assert_eq!(next_hive(&rows, Some(&hive(4))), Some(hive(1)));
        assert_eq!(next_hive(&[row(1, None)], Some(&hive(1))), None);
        assert_eq!(next_hive(&[], Some(&hive(1))), None);
        // A skip is an entry; a hive that is gone starts the list over.
        assert_eq!(next_hive(&[row(1, Some(None)), row(2, None)], Some(&hive(9))), Some(hive(2)));
    }

    #[test]
    fn usual_is_what_was_done_most_and_topped_up_in_a_draw() {
        let did = |did| row(1, Some(Some(did)));
        assert_eq!(usual(&[]), Did::ToppedUp);
        assert_eq!(usual(&[did(Did::AsFound)]), Did::AsFound);
        assert_eq!(usual(&[did(Did::AsFound), did(Did::ToppedUp)]), Did::ToppedUp);
        assert_eq!(usual(&[did(Did::Spilled), did(Did::Spilled), did(Did::Replaced)]), Did::Replaced);
    }

    #[test]
    fn the_rest_leaves_out_what_has_an_entry_and_what_waits_since_a_skip() {
        let day = Day::parse("2026-07-14").unwrap();
        let mut waiting = row(3, None);
        waiting.skipped = Some((day, SkipReason::Temper));
        let rows = [row(1, Some(Some(Did::AsFound))), row(2, Some(None)), waiting, row(4, None)];
        assert_eq!(rest(&rows), [hive(4)]);
    }

    #[test]
    fn tags_are_ordered_as_people_count() {
        let mut tags = ["10", "2", "b 10", "B 9", "1", "2b", "007", "nuc"];
        tags.sort_by(|a, b| by_tag(a, b));
        assert_eq!(tags, ["1", "2", "2b", "007", "10", "B 9", "b 10", "nuc"]);
    }
}
