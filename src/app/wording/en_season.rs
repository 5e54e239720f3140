//! English: the season report.

use super::en::{counted, put, put_counted, whole};
use super::en_ledger;
use crate::book::season::{DIDS, Figures, LEAST_COUNTS, LEAST_TRAP_DAYS, Season};

/// Heading.
pub const TITLE: &str = "Season report";
/// Name of the file.
pub const FILE: &str = "season-report-";
/// Headings.
pub const PARTS: [&str; 3] = ["Hives", "Work and catch", "Hive by hive"];
/// Columns of the hives.
pub const COLUMNS: [&str; 6] =
    ["Hive", "Visits", "Days between, median and longest", "On time", "Counted", "Beetles, 100 trap-days"];
/// In the place of a catch that says nothing.
pub const TOO_LITTLE: &str = "not enough data";
/// No visit.
pub const NO_VISIT: &str = "No trap work is written down for these days.";

/// What is not said and what is too little.
pub fn how() -> String {
    let mut said =
        "On time: not longer than the hive’s kind of trap allows, as described in the book. Catch is shown from "
            .to_owned();
    put(&mut said, &LEAST_COUNTS.to_string());
    put(&mut said, " counts and ");
    put(&mut said, &LEAST_TRAP_DAYS.to_string());
    put(
        &mut said,
        " trap-days on; a range where counts are ranges. No notes and no places are on this sheet.",
    );
    said
}

/// Sentences on the hives of the yard.
pub fn hives(season: &Season) -> Vec<String> {
    let mut here = "At the start ".to_owned();
    put_counted(&mut here, season.start, "hive", "hives");
    put(&mut here, ", at the end ");
    put_counted(&mut here, season.end, "hive", "hives");
    put(&mut here, ".");
    let mut all = vec![here];
    let mut came = String::new();
    for (count, word) in [
        (season.new, "new in the book"),
        (season.moved_in, "carried in"),
        (season.moved_out, "carried away"),
        (season.back, "taken back into care"),
    ] {
        put_count(&mut came, count, word);
    }
    if !came.is_empty() {
        all.push(came);
    }
    let mut lost = String::new();
    for (count, word) in
        season.ended.into_iter().zip(["dead", "sold or given away", "joined with another", "gone"])
    {
        put_count(&mut lost, count, word);
    }
    let mut ended = "Hives no longer in care: ".to_owned();
    put(&mut ended, if lost.is_empty() { "none written down" } else { &lost });
    put(&mut ended, ".");
    all.push(ended);
    all
}

/// Sentences on the work in the yard; `oil` is the oil filled in, in words, from least to most.
pub fn work(season: &Season, oil: &str) -> Vec<String> {
    let yard = &season.yard;
    let mut visits = String::new();
    put_counted(&mut visits, yard.visits, "visit", "visits");
    put(&mut visits, " to ");
    put_counted(&mut visits, season.hives.len(), "hive", "hives");
    if yard.skips > 0 {
        put(&mut visits, "; left for now ");
        put(&mut visits, &times(yard.skips));
    }
    let mut all = vec![visits];
    if let Some((median, longest)) = yard.rhythm() {
        let mut said = "From visit to visit of a hive: median ".to_owned();
        put(&mut said, &counted(median.unsigned_abs(), "day", "days"));
        put(&mut said, ", longest ");
        put(&mut said, &counted(longest.unsigned_abs(), "day", "days"));
        put(&mut said, "; on time ");
        put(&mut said, &on_time(yard, true));
        all.push(said);
    }
    let mut did = String::new();
    for (count, did_it) in yard.did.into_iter().zip(DIDS) {
        put_count(&mut did, count, en_ledger::did(did_it));
    }
    all.push(["Visits with trap work: ", &did].concat());
    if season.lost > 0 {
        all.push(["Traps taken off as lost: ", &season.lost.to_string()].concat());
    }
    let mut filled = ["Oil filled in: ", oil].concat();
    if yard.oil_unknown > 0 {
        put(&mut filled, "; not known for ");
        put_counted(&mut filled, yard.oil_unknown, "filling", "fillings");
        put(&mut filled, " of a trap");
    }
    all.push(filled);
    all.push(["Beetles for 100 trap-days: ", &catch(yard)].concat());
    let mut not = "Not counted on ".to_owned();
    put_of(&mut not, yard.not_counted, yard.visits);
    put(&mut not, " visits; level not read on ");
    put_of(&mut not, yard.not_read, yard.visits);
    put(&mut not, ".");
    all.push(not);
    all
}

/// "12 of 40".
fn put_of(said: &mut String, count: usize, all: usize) {
    put(said, &amount(count));
    put(said, " of ");
    put(said, &amount(all));
}

/// "38 of 40 (95 %)", the share only with `share`.
pub fn on_time(figures: &Figures, share: bool) -> String {
    let mut said = String::new();
    put_of(&mut said, figures.on_time, figures.judged);
    // Down: what is not quite on time is not called so.
    if let Some(percent) = (figures.on_time * 100).checked_div(figures.judged).filter(|_| share) {
        put(&mut said, " (");
        put(&mut said, &percent.to_string());
        put(&mut said, "\u{a0}%)");
    }
    said
}

/// "14, 21".
pub fn rhythm(figures: &Figures) -> String {
    match figures.rhythm() {
        Some((median, longest)) => [&median.to_string(), ", ", longest.to_string().as_str()].concat(),
        None => "–".to_owned(),
    }
}

/// "5 of 8".
pub fn counted_on(figures: &Figures) -> String {
    let mut said = String::new();
    put_of(&mut said, figures.visits - figures.not_counted, figures.visits);
    said
}

/// "10.4–12.1", "10.4 or more", "not enough data".
pub fn catch(figures: &Figures) -> String {
    let Some((low, high)) = figures.catch() else { return TOO_LITTLE.to_owned() };
    let mut said = tenths(low);
    match high {
        Some(high) if high > low => {
            put(&mut said, "–");
            put(&mut said, &tenths(high));
        }
        Some(_) => {}
        None => put(&mut said, " or more"),
    }
    said
}

fn tenths(tenths: u32) -> String {
    [&(tenths / 10).to_string(), ".", &(tenths % 10).to_string()].concat()
}

fn put_count(said: &mut String, count: usize, word: &str) {
    if count > 0 {
        put(said, if said.is_empty() { "" } else { ", " });
        put(said, &amount(count));
        put(said, "\u{a0}");
        put(said, word);
    }
}

fn times(count: usize) -> String {
    if count == 1 { "once".to_owned() } else { [&amount(count), " times"].concat() }
}

fn amount(count: usize) -> String {
    whole(u32::try_from(count).unwrap_or(u32::MAX))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::tally::CountRange;

    #[test]
    fn a_catch_is_a_range_outward_and_too_little_says_so() {
        let figures = |counts, beetles, trap_days| Figures {
            counts,
            beetles: Some(beetles),
            trap_days,
            ..Figures::default()
        };
        let range = CountRange::new(10, Some(20)).unwrap();
        assert_eq!(catch(&figures(3, range, 300)), "3.3–6.7");
        assert_eq!(catch(&figures(3, CountRange::exact(30), 300)), "10.0");
        assert_eq!(catch(&figures(24, CountRange::exact(277), 2758)), "10.0");
        assert_eq!(catch(&figures(3, CountRange::new(10, None).unwrap(), 100)), "10.0 or more");
        assert_eq!(catch(&figures(2, range, 300)), TOO_LITTLE);
        assert_eq!(catch(&figures(9, range, 99)), TOO_LITTLE);
        assert_eq!(catch(&Figures::default()), TOO_LITTLE);
    }

    #[test]
    fn what_nobody_looked_at_is_counted() {
        let yard = Figures {
            visits: 40,
            not_counted: 12,
            not_read: 3,
            judged: 39,
            on_time: 38,
            ..Figures::default()
        };
        let season = Season { yard, ..Season::default() };
        let said = work(&season, "nothing").join(" ");
        assert!(said.contains("Not counted on 12 of 40 visits; level not read on 3 of 40."), "{said}");
        assert_eq!(on_time(&season.yard, true), "38 of 39 (97\u{a0}%)");
    }
}
