//! The order of a walk: which hive comes next, what is usual today, which hives are left.

use crate::almanac::day::Day;
use crate::almanac::refill::Timing;
use crate::almanac::text::small;
use crate::book::Book;
use crate::book::entry::Did;
use crate::book::id::ThingId;
use crate::book::round::{HiveDue, Row, hive_due};
use crate::book::standing::{HiveNow, Standing, TrapNow};
use std::cmp::Ordering;

/// The hive after `after` that has no entry and that is `meant`; behind the last one it goes back to the nearest that was left out, so that
/// somebody who walks from the far end is not sent to the gate.
///
/// `meant` is asked only of hives without an entry, from the nearest on.
pub fn next_hive(
    stops: &[Stop<'_>],
    after: Option<&ThingId>,
    meant: &dyn Fn(&ThingId) -> bool,
) -> Option<ThingId> {
    let at = after.and_then(|id| stops.iter().position(|(hive, _)| *hive == id));
    let (before, behind) = stops.split_at(at.map_or(0, |at| at + 1));
    let open = |(hive, seen): &&Stop<'_>| seen.is_none() && Some(*hive) != after && meant(hive);
    let next = behind.iter().find(open).or_else(|| before.iter().rfind(open));
    next.map(|(hive, _)| (*hive).clone())
}

/// Whether somebody has to stand at a hive on `day`: it is due, traps wait to be put in, it was skipped, or oil spilled
/// in it and nobody has looked again. `yard_loss` as [`hive_due`] takes it.
///
/// Nothing makes a trap due later than the longest wait of its kind: mostly that is the answer, and the oil loss of the
/// yard, for which every hive of it is looked at, is not asked for.
pub fn calls(
    standing: &Standing,
    hive: &HiveNow,
    yard_loss: &dyn Fn() -> Option<(f64, u8)>,
    day: Day,
) -> bool {
    if standing.yards.get(&hive.yard).is_some_and(|yard| yard.paused.is_some()) {
        return false;
    }
    let waited = |trap: &TrapNow| {
        let most = standing.kinds.get(&trap.kind).map(|now| i32::from(now.kind.max_days));
        trap.trouble.is_some() || most.is_some_and(|most| trap.service.plus(most) <= day)
    };
    if hive.skipped.is_some() || hive.spilled.is_some() || hive.traps().any(waited) {
        return true;
    }
    match hive_due(standing, hive, yard_loss(), day) {
        HiveDue::NoTraps { wanting: 1.. } => true,
        due => due.now(),
    }
}

/// `order` with `hive` one place further on or back; none at the ends.
pub fn moved(mut order: Vec<ThingId>, hive: &ThingId, by: isize) -> Option<Vec<ThingId>> {
    let at = order.iter().position(|id| id == hive)?;
    let to = at.checked_add_signed(by).filter(|to| *to < order.len())?;
    order.swap(at, to);
    Some(order)
}

/// `order` with `hive` behind `after`, at the gate without one; none where it stands there already.
pub fn put_after(mut order: Vec<ThingId>, hive: &ThingId, after: Option<&ThingId>) -> Option<Vec<ThingId>> {
    let from = order.iter().position(|id| id == hive)?;
    let moved = order.remove(from);
    let to = after.map_or(Some(0), |after| order.iter().position(|id| id == after).map(|at| at + 1))?;
    order.insert(to, moved);
    (to != from).then_some(order)
}

/// What was done most often, of the three things that are done to a hive in order; topped up before anybody has done
/// anything, and in a draw.
pub fn usual(did: &[Did]) -> Did {
    let mut times = [(Did::ToppedUp, 0_u32), (Did::AsFound, 0), (Did::Replaced, 0)];
    for did in did {
        for (known, count) in &mut times {
            *count += u32::from(known == did);
        }
    }
    let [mut usual, others @ ..] = times;
    for other in others {
        if other.1 > usual.1 {
            usual = other;
        }
    }
    usual.0
}

/// The last day on which somebody stood at a hive of `yard` in this yard: what was done to a hive before it was moved
/// here was no walk of this yard.
pub fn last_walked(book: &Book, yard: &ThingId) -> Option<Day> {
    let mut last = None;
    for (_, hive) in book.standing().hives_of(yard, false) {
        let Some(seen) = &hive.last else { continue };
        let here = book.log().get(&seen.entry).is_some_and(|entry| entry.yard.as_ref() == Some(yard));
        last = last.max(here.then_some(seen.day));
    }
    last
}

/// A stop on a walk: a hive, and what was logged there on the day; `Some(None)` is a skip.
pub type Stop<'a> = (&'a ThingId, Option<Option<Did>>);

/// The walk through `yard` on `day` without what anything is due: as [`crate::book::round::rows`] orders it, and quick
/// enough to be asked at every tap.
pub fn stops<'a>(standing: &'a Standing, yard: &'a ThingId, day: Day) -> Vec<Stop<'a>> {
    let (mut waiting, mut others) = (Vec::new(), Vec::new());
    for (id, hive) in standing.hives_of(yard, true) {
        let seen = hive.last.as_ref().filter(|seen| seen.day == day).map(|seen| seen.did);
        let waits = hive.skipped.is_some_and(|(skipped, _)| skipped < day);
        let hives = if waits { &mut waiting } else { &mut others };
        hives.push((id, seen));
    }
    waiting.extend(others);
    waiting
}

/// Of how many traps `did` was said on `day`, and how many there are; none where it was said of the whole hive.
pub fn part_done(hive: &HiveNow, did: Did, day: Day) -> Option<(u32, u32)> {
    let mut named: Vec<&ThingId> = Vec::new();
    for (_, work) in &hive.checked {
        if work.day == day && work.did == did {
            named.extend(work.traps.as_ref()?);
        }
    }
    let (mut some, mut all) = (0, 0);
    for trap in hive.traps() {
        all += 1;
        some += u32::from(named.contains(&&trap.id));
    }
    (some > 0 && some < all).then_some((some, all))
}

/// The hives that "the rest as usual" stands for: no entry today, none `begun`, and a trap in that can be topped up.
pub fn rest(rows: &[Row], begun: &dyn Fn(&ThingId) -> bool) -> Vec<ThingId> {
    let left = rows.iter().filter(|row| row.today.is_none() && !left_out(row, begun));
    left.map(|row| row.hive.clone()).collect()
}

/// No entry today, and still not among the rest: no trap in it can be topped up, or its own entry is begun, and what was
/// typed there would be missing from the usual one.
pub fn left_out(row: &Row, begun: &dyn Fn(&ThingId) -> bool) -> bool {
    row.today.is_none() && (row.stuck || matches!(row.due, HiveDue::NoTraps { .. }) || begun(&row.hive))
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

/// The first day on which anything is due, the first hive of that day, and how many they are.
pub fn first_due(rows: &[Row]) -> Option<(Day, &ThingId, u32)> {
    let mut first: Option<(Day, &ThingId, u32)> = None;
    for row in rows {
        let HiveDue::Due { on, .. } = row.due else { continue };
        match &mut first {
            Some((day, _, hives)) if on == *day => *hives += 1,
            Some((day, ..)) if on > *day => {}
            _ => first = Some((on, &row.hive, 1)),
        }
    }
    first
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
    /// Not due yet, but to be looked at again by now.
    pub looks: u32,
    /// Skipped, and not worked on since.
    pub skipped: u32,
}

/// Counts the rows of a yard.
pub fn counts(rows: &[Row], today: Day) -> Counts {
    let mut counts = Counts::default();
    for row in rows {
        match &row.due {
            HiveDue::Due { timing: Timing::Overdue { .. }, .. } => counts.overdue += 1,
            HiveDue::Due { timing: Timing::Today, .. } => counts.today += 1,
            HiveDue::Due { timing: Timing::In { .. }, .. } if row.look_due(today) => counts.looks += 1,
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
    use crate::almanac::text::Letters;
    use crate::book::demo::demo;
    use crate::book::entry::SkipReason;
    use crate::book::id::{EntryId, Writer};
    use crate::book::round::{Because, rows, yard_loss};
    use crate::book::standing::{Checked, Trouble};

    fn hive(n: u32) -> ThingId {
        EntryId::new(Writer::new("test").unwrap(), n).unwrap().thing(0)
    }

    fn row(n: u32) -> Row {
        let due = HiveDue::Resting { since: Day::parse("2026-07-14").unwrap() };
        Row {
            hive: hive(n),
            due,
            days_since: None,
            skipped: None,
            today: None,
            trouble: None,
            stuck: false,
            recheck: None,
        }
    }

    fn did(n: u32, did: Did) -> Row {
        Row { today: Some(Some(did)), ..row(n) }
    }

    fn left(n: u32) -> Row {
        Row { today: Some(None), ..row(n) }
    }

    #[test]
    fn a_hive_is_put_behind_another_or_at_the_gate() {
        let order: Vec<ThingId> = [1, 2, 3, 4].map(hive).to_vec();
        let put = |which: u32, after: Option<u32>| {
            let after = after.map(hive);
            put_after(order.clone(), &hive(which), after.as_ref())
        };
        let four = |tags: [u32; 4]| Some(tags.map(hive).to_vec());
        assert_eq!(put(4, Some(1)), four([1, 4, 2, 3]));
        assert_eq!(put(1, Some(4)), four([2, 3, 4, 1]));
        assert_eq!(put(3, None), four([3, 1, 2, 4]));
        // It stands there already, behind itself, or behind one of another yard.
        assert_eq!(
            (put(2, Some(1)), put(1, None), put(2, Some(2)), put(2, Some(9))),
            (None, None, None, None)
        );
    }

    #[test]
    fn the_next_hive_is_the_next_without_an_entry_and_behind_the_last_the_nearest_left_out() {
        let hives = [1, 2, 3, 4, 9].map(hive);
        let [one, two, three, four, gone] = &hives;
        let done = Some(Some(Did::ToppedUp));
        let stops = [(one, None), (two, done), (three, done), (four, None)];
        let next = |stops: &[Stop<'_>], after| next_hive(stops, after, &|_| true);
        assert_eq!(next(&stops, None).as_ref(), Some(one));
        assert_eq!(next(&stops, Some(two)).as_ref(), Some(four));
        assert_eq!(next(&stops, Some(four)).as_ref(), Some(one));
        let two_left = [(one, None), (two, None), (three, done), (four, None)];
        assert_eq!(next(&two_left, Some(four)).as_ref(), Some(two));
        assert_eq!(next(&[(one, None)], Some(one)), None);
        assert_eq!(next(&[], Some(one)), None);
        // A skip is an entry; a hive that is gone starts the list over.
        assert_eq!(next(&[(one, Some(None)), (two, None)], Some(gone)).as_ref(), Some(two));
        // Only of those that are meant.
        assert_eq!(next_hive(&two_left, Some(two), &|hive| hive == one).as_ref(), Some(one));
        assert_eq!(next_hive(&two_left, Some(one), &|hive| hive == three), None);
    }

    #[test]
    fn usual_is_what_was_done_most_and_topped_up_in_a_draw() {
        assert_eq!(usual(&[]), Did::ToppedUp);
        assert_eq!(usual(&[Did::AsFound]), Did::AsFound);
        assert_eq!(usual(&[Did::AsFound, Did::ToppedUp]), Did::ToppedUp);
        assert_eq!(usual(&[Did::Spilled, Did::Spilled, Did::Replaced]), Did::Replaced);
    }

    struct Plain;

    impl Letters for Plain {
        fn normal(&self, text: &str) -> String {
            text.to_owned()
        }

        fn visible(&self, text: &str) -> usize {
            text.chars().count()
        }
    }

    #[test]
    fn stops_are_the_rows_without_their_dues() {
        let today = Day::parse("2026-07-14").unwrap();
        let mut book = Book::default();
        book.add(demo(today, "UTC", 0, &Plain).unwrap());
        for yard in book.standing().yards.keys() {
            for day in [today, today.plus(-14)] {
                let rows = rows(book.standing(), yard, day);
                let rows: Vec<Stop<'_>> = rows.iter().map(|row| (&row.hive, row.today)).collect();
                assert_eq!(stops(book.standing(), yard, day), rows);
            }
        }
    }

    #[test]
    fn a_hive_calls_when_it_is_due_waits_or_wants_a_look_and_not_before_its_day_or_in_a_pause() {
        let today = Day::parse("2026-07-14").unwrap();
        let mut book = Book::default();
        book.add(demo(today, "UTC", 0, &Plain).unwrap());
        let mut standing = book.standing().clone();
        let (mut some, mut none) = (0, 0);
        for (day, (id, hive)) in [today, today.plus(-10)]
            .into_iter()
            .flat_map(|day| book.standing().hives.iter().map(move |at| (day, at)))
        {
            let loss = yard_loss(&standing, &hive.yard);
            let rows = rows(&standing, &hive.yard, day);
            let Some(row) = rows.iter().find(|row| row.hive == *id) else { continue };
            let bare = matches!(row.due, HiveDue::NoTraps { wanting: 1.. });
            let waits = row.due.now() || bare || row.skipped.is_some() || row.recheck.is_some();
            assert_eq!(calls(&standing, hive, &|| loss, day), waits, "{}", hive.tag);
            *(if waits { &mut some } else { &mut none }) += 1;
            let skipped = HiveNow { skipped: Some((day, SkipReason::Temper)), ..hive.clone() };
            let spilled = HiveNow { spilled: Some(day), ..hive.clone() };
            assert!(calls(&standing, &skipped, &|| loss, day) && calls(&standing, &spilled, &|| loss, day));
        }
        assert!(some > 0 && none > 0);
        let hive = book.standing().hives.values().next().unwrap();
        let yards: Vec<ThingId> = standing.yards.keys().cloned().collect();
        for yard in &yards {
            standing.yards.get_mut(yard).unwrap().paused = Some(today);
        }
        assert!(!calls(&standing, hive, &|| None, today.plus(400)));
    }

    #[test]
    fn work_on_some_traps_is_told_apart_from_work_on_the_hive_and_adds_up() {
        let today = Day::parse("2026-07-14").unwrap();
        let mut book = Book::default();
        book.add(demo(today, "UTC", 0, &Plain).unwrap());
        let (_, hive) = book.standing().hives.iter().find(|(_, hive)| hive.traps().count() == 4).unwrap();
        let traps: Vec<ThingId> = hive.traps().map(|trap| trap.id.clone()).collect();
        let work = |did, traps: Option<&[ThingId]>| {
            let line = EntryId::new(Writer::new("test").unwrap(), 1).unwrap();
            let traps = traps.map(<[ThingId]>::to_vec);
            let (day, writer) = (today, Writer::new("test").unwrap());
            (line, Checked { day, writer, did, traps, read: false, counted: false, bulk: None })
        };
        let told = |checked: Vec<(EntryId, Checked)>, did, day| {
            part_done(&HiveNow { checked, ..hive.clone() }, did, day)
        };
        let one = work(Did::ToppedUp, Some(&traps[..1]));
        let others = work(Did::ToppedUp, Some(&traps[1..]));
        let replaced = work(Did::Replaced, Some(&traps[1..3]));
        assert_eq!(told(vec![one.clone()], Did::ToppedUp, today), Some((1, 4)));
        assert_eq!(told(vec![one.clone(), replaced.clone()], Did::Replaced, today), Some((2, 4)));
        assert_eq!(told(vec![one.clone(), others], Did::ToppedUp, today), None);
        assert_eq!(told(vec![one.clone(), work(Did::ToppedUp, None)], Did::ToppedUp, today), None);
        assert_eq!(told(vec![one], Did::ToppedUp, today.plus(1)), None);
    }

    #[test]
    fn the_rest_leaves_out_what_has_an_entry_and_hives_in_which_nothing_can_be_topped_up_or_something_is_begun()
     {
        let day = Day::parse("2026-07-14").unwrap();
        let waiting = Row { skipped: Some((day, SkipReason::Temper)), ..row(3) };
        let bare = Row { due: HiveDue::NoTraps { wanting: 4 }, ..row(5) };
        let stuck = Row { stuck: true, ..row(6) };
        let rows = [did(1, Did::AsFound), left(2), waiting, row(4), bare, stuck];
        assert_eq!(rest(&rows, &|_| false), [hive(3), hive(4)]);
        assert_eq!(rest(&rows, &|begun| *begun == hive(3)), [hive(4)]);
    }

    #[test]
    fn the_first_day_that_anything_is_due_names_its_first_hive_and_counts_all() {
        let day = |n| Day::parse("2026-12-01").unwrap().plus(n);
        let due = |n, on| {
            let because = Because::Trouble(Trouble::Missing);
            let due = HiveDue::Due { on, timing: Timing::Today, because, traps_due: 0, traps: 1 };
            Row { due, ..row(n) }
        };
        let rows = [row(1), due(2, day(9)), due(3, day(8)), due(4, day(9)), due(5, day(8))];
        assert_eq!(first_due(&rows), Some((day(8), &hive(3), 2)));
        assert_eq!(first_due(&rows[..2]), Some((day(9), &hive(2), 1)));
        assert_eq!(first_due(&rows[..1]), None);
    }

    #[test]
    fn tags_are_ordered_as_people_count() {
        let mut tags = ["10", "2", "b 10", "B 9", "1", "2b", "007", "nuc"];
        tags.sort_by(|a, b| by_tag(a, b));
        assert_eq!(tags, ["1", "2", "2b", "007", "10", "B 9", "b 10", "nuc"]);
    }
}
