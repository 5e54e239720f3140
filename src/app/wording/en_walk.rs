//! English: how far a walk has come, and what a yard asks for.

use super::en::{counted, date};
use super::en_load;
use super::en_round::{hive, near, near_and_how_far};
use crate::almanac::day::Day;
use crate::app::round::walk::Counts;
use crate::book::round::{Visit, YardNeed};

/// How far a walk has come: complete when every hive has an entry and none was skipped. Of the hives without an entry it
/// says how many are due, or "to go" would send the keeper to those that are not.
pub fn progress(visit: Visit) -> String {
    let hives = visit.worked + visit.skipped + visit.left;
    if hives == 0 {
        return "No hives here.".to_owned();
    }
    if !visit.begun() {
        return [&counted(hives, "hive", "hives"), ", none logged today"].concat();
    }
    if visit.complete() {
        return [&counted(hives, "hive", "hives"), " logged – the walk is complete"].concat();
    }
    let mut said = [&visit.worked.to_string(), " logged today"].concat();
    for (count, what) in [
        (visit.still_due, " of them still due"),
        (visit.skipped, " skipped"),
        (visit.left, " without an entry"),
    ] {
        if count > 0 {
            said = [&said, ", ", &count.to_string(), what].concat();
        }
    }
    match (visit.left, visit.due) {
        (0, _) => said,
        (_, 0) => [&said, " and not due"].concat(),
        (left, due) if left == due => [&said, " and due"].concat(),
        (_, due) => [&said, ", of these ", &due.to_string(), " due"].concat(),
    }
}

/// "12 traps to place; 1 hive to see, 3 traps to fill, 1 missing; carry 200 mL": what is still to be put in, then the
/// hives that are due or were skipped.
pub fn total(need: &YardNeed, carry: &str) -> String {
    let (missing, mut said) = (need.missing.saturating_sub(need.wanting), String::new());
    if need.wanting > 0 {
        said = [&counted(need.wanting, "trap", "traps"), " to place; "].concat();
    }
    if need.hives > 0 {
        let fill = counted(need.traps.saturating_sub(missing), "trap", "traps");
        said = [&said, &counted(need.hives, "hive", "hives"), " to see, ", &fill, " to fill"].concat();
        if missing > 0 {
            said = [&said, ", ", &missing.to_string(), " missing"].concat();
        }
        said.push_str("; ");
    }
    if need.looks > 0 {
        said = [&said, &looks(need.looks), "; "].concat();
    }
    [&said, "carry ", carry].concat()
}

/// "look again at 2 hives": oil spilled there.
pub fn looks(hives: u32) -> String {
    ["look again at ", &counted(hives, "hive", "hives")].concat()
}

/// Ahead of "Nothing due today", which is said of traps.
pub fn looks_first(hives: u32, rest: &str) -> String {
    ["Today: ", &looks(hives), ", oil spilled there. ", rest].concat()
}

/// "look again today: oil spilled", "look again: was to be by Fri 17 July".
pub fn look_now(by: Day, today: Day) -> String {
    if by < today {
        ["look again: was to be by ", &near(by, today)].concat()
    } else {
        "look again today: oil spilled".to_owned()
    }
}

/// Nothing is due, and when something will be: the day, the first hive of that day and how many they are.
pub fn nothing_due(next: Option<(Day, &str, u32)>, today: Day) -> String {
    let Some((on, tag, hives)) = next else { return "Nothing due today.".to_owned() };
    let many = match hives {
        1 => String::new(),
        hives => [&counted(hives, "hive", "hives"), ", first "].concat(),
    };
    ["Nothing due today. Next: ", &near_and_how_far(on, today), ", ", &many, &hive(tag), "."].concat()
}

/// "Paused since Sun 1 November. Nothing is due."
pub fn resting(since: Day) -> String {
    ["Paused since ", &date(since), ". Nothing is due."].concat()
}

/// One line of the sum: "36 traps × 10 mL = 360 mL, from 20 % to 50 %".
pub fn oil_line(traps: u32, each: &str, sum: &str, from: &str, to: &str) -> String {
    let traps = counted(traps, "trap", "traps");
    [&traps, " × ", each, " =\u{a0}", sum, ", each from ", from, " to ", to].concat()
}

/// Traps whose capacity nobody typed.
pub fn unknown_capacity(traps: u32) -> String {
    ["Left out: ", &counted(traps, "trap", "traps"), " whose size is not written down"].concat()
}

/// "Bring 6 new traps: 2 missing or not put in yet + 4 new for hives with slime", as Load says it.
pub fn new_traps(place: u32, anew: u32) -> String {
    let traps = counted(place.saturating_add(anew), "new trap", "new traps");
    let more = if anew > 0 { [" ", &en_load::anew(anew)].concat() } else { String::new() };
    ["Bring ", &traps, ": ", &en_load::place(place), &more].concat()
}

/// How the hives of a yard lie to today.
pub fn counts(counts: Counts) -> String {
    let mut all = String::new();
    for (count, word) in [
        (counts.overdue, " overdue"),
        (counts.today, " due today"),
        (counts.later, " due later"),
        (counts.bare, " without traps"),
        (counts.looks, " to look at again"),
    ] {
        if count > 0 {
            let between = if all.is_empty() { "" } else { ", " };
            all = [all.as_str(), between, &count.to_string(), word].concat();
        }
    }
    if all.is_empty() {
        all.push_str("no hives");
    }
    // A skipped hive is one of those before: told apart, the numbers would not add up.
    if counts.skipped > 0 {
        return [&all, "; of these ", &counts.skipped.to_string(), " skipped"].concat();
    }
    all
}

/// "last walked Sun 12 July, 2 days ago".
pub fn walked(day: Option<Day>, today: Day) -> String {
    match day {
        Some(day) => ["last walked ", &near_and_how_far(day, today)].concat(),
        None => "not walked yet".to_owned(),
    }
}

/// "Kept: 10 hives".
pub fn kept(hives: usize) -> String {
    ["Kept: ", &counted(u32::try_from(hives).unwrap_or(u32::MAX), "hive", "hives")].concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_walk_is_complete_when_every_hive_has_an_entry_and_none_was_skipped() {
        let visit = |worked, skipped, left, due| progress(Visit { worked, skipped, left, due, still_due: 0 });
        let told = |worked, skipped, left| visit(worked, skipped, left, 0);
        assert_eq!(told(18, 1, 5), "18 logged today, 1 skipped, 5 without an entry and not due");
        assert_eq!(visit(18, 1, 5, 5), "18 logged today, 1 skipped, 5 without an entry and due");
        assert_eq!(visit(18, 0, 5, 2), "18 logged today, 5 without an entry, of these 2 due");
        assert_eq!(told(23, 1, 0), "23 logged today, 1 skipped");
        assert_eq!(told(24, 0, 0), "24\u{a0}hives logged – the walk is complete");
        assert_eq!(told(0, 0, 24), "24\u{a0}hives, none logged today");
        assert_eq!(told(0, 0, 0), "No hives here.");
        let spilled = Visit { worked: 24, skipped: 0, left: 0, due: 0, still_due: 1 };
        assert_eq!(progress(spilled), "24 logged today, 1 of them still due");
    }

    #[test]
    fn traps_to_place_and_traps_to_top_up_are_told_apart() {
        use crate::almanac::oil::oil_for_visit;
        use crate::almanac::quantity::Share;
        let with = |hives, looks, traps, missing, wanting| {
            let oil = oil_for_visit(&[], Share::QUARTER);
            let (disposable, anew) = (0, Vec::new());
            let need = YardNeed { hives, looks, traps, missing, wanting, disposable, anew, oil };
            total(&need, "200 mL").replace('\u{a0}', " ")
        };
        let told = |hives, traps, missing, wanting| with(hives, 0, traps, missing, wanting);
        assert_eq!(told(1, 4, 12, 12), "12 traps to place; 1 hive to see, 4 traps to fill; carry 200 mL");
        assert_eq!(told(2, 8, 1, 0), "2 hives to see, 7 traps to fill, 1 missing; carry 200 mL");
        assert_eq!(told(0, 0, 12, 12), "12 traps to place; carry 200 mL");
        assert_eq!(
            with(1, 2, 4, 0, 0),
            "1 hive to see, 4 traps to fill; look again at 2 hives; carry 200 mL"
        );
        let new = |place, anew| new_traps(place, anew).replace('\u{a0}', " ");
        assert_eq!(new(1, 0), "Bring 1 new trap: 1 missing or not put in yet");
        assert_eq!(new(0, 4), "Bring 4 new traps: none missing + 4 new for hives with slime");
    }

    #[test]
    fn the_next_day_says_how_many_hives_it_brings() {
        let day = |text| Day::parse(text).unwrap();
        let told = |hives| nothing_due(Some((day("2026-12-09"), "1", hives)), day("2026-11-25"));
        let start = "Nothing due today. Next: Wed 9 December, in 14\u{a0}days, ";
        assert_eq!(told(24), [start, "24\u{a0}hives, first Hive \u{2068}1\u{2069}."].concat());
        assert_eq!(told(1), [start, "Hive \u{2068}1\u{2069}."].concat());
        assert_eq!(nothing_due(None, day("2026-11-25")), "Nothing due today.");
    }

    #[test]
    fn a_yard_lists_only_what_there_is() {
        let some = Counts { overdue: 3, today: 0, later: 15, bare: 0, looks: 2, skipped: 1 };
        assert_eq!(counts(some), "3 overdue, 15 due later, 2 to look at again; of these 1 skipped");
        assert_eq!(counts(Counts::default()), "no hives");
    }
}
