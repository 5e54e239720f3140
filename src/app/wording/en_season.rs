//! English: the season report.

use super::en::{NO_ANSWER, counted, date, put, put_counted, whole};
use super::en_ledger;
use crate::almanac::day::Day;
use crate::almanac::trend::Word;
use crate::book::entry::Ending;
use crate::book::review::{LEAST_COUNTS, LEAST_TRAP_DAYS};
use crate::book::season::{DIDS, Figures, Season};

/// Heading.
pub const TITLE: &str = "Season report";
/// Name of the file.
pub const FILE: &str = "season-report-";
/// Headings.
pub const PARTS: [&str; 7] =
    ["Catch", "Hives", "Hives lost or given away", "Work", "Hive by hive", "What it cost", "For next year"];
/// Columns of the hives.
pub const COLUMNS: [&str; 8] = [
    "Hive",
    "Visits",
    "Days between visits, median and longest",
    "On time",
    "Counted",
    "Beetles, 100 trap-days (95\u{a0}% limits)",
    "A year earlier",
    "Beside it",
];
/// The catch.
pub const NOW: &str = "Beetles for 100 trap-days, every hive counted";
/// The catch before.
pub const EARLIER: &str = "A year earlier, every hive counted then";
/// Behind both.
pub const LIMITS: &str = "In brackets: 95\u{a0}% limits, by the counting alone.";
/// No year earlier.
pub const TOO_LONG: &str = "Longer than a year: no year earlier is set beside it. Choose a year or less.";
/// What a hive alone says.
pub const ONE_HIVE: &str = "“Beside it” is each hive beside itself. How far a hive strays with nothing changed its own counts cannot show, the other hives do. ";
/// Behind the spread of the yard.
pub const ONE_HIVE_TOLD: &str = " A greater change at that hive would tell, or hives that change more alike; more counts seldom do. With nothing changed at most about one hive in twenty says more or fewer by chance. ";
/// All of them none in one of the two times, or a count without an upper end.
pub const NO_LIMITS: &str =
    "With none at all in one of the two times, or a count of “50 and more”, they do not. ";
/// Under the table.
pub const WALK: &str = "The hives stand in walking order, not by their catch.";
/// "It takes 4 hives with beetles".
pub fn too_few_hives(least: u32) -> String {
    ["It takes ", &least.to_string(), " hives with beetles, counted in both times. Here are fewer. "].concat()
}

/// No cause.
pub const NO_CAUSE: &str = "no cause written down";
/// A dead-out without an end.
pub const STILL_HERE: &str = "dead-out written down, but the book has it in care";
/// Nobody was lost.
pub const NO_LOSS: &str = "None written down.";
/// What a cause is.
pub const CAUSES: &str = "Causes are as they were written down: none is guessed.";
/// What the year costs.
pub const COST: &str = "For one hive and the time above";
/// How oil comes to a yard.
pub const COST_HOW: &str = "What belongs to no yard, such as oil, is spread over all yards by the days of their hives. Whether the work saved a colony, this sum does not say.";
/// No verdict.
pub const NO_VERDICT: &str = "Nothing written down for next year in these days.";
/// Key to write one.
pub const VERDICT: &str = "Write down what to do next year";

/// In the place of a catch that says nothing.
pub const TOO_LITTLE: &str = "not enough data";
/// In the place of the catch of a hive in a trial that goes on.
pub const IN_TRIAL: &str = "in a trial, not open yet";
/// Before the reason.
const CANT_TELL: &str = "can’t tell yet: ";
/// No word of one hive, because too few of the others, or none, tell how far one strays.
pub const FEW_HIVES: &str = "can’t tell yet: the others do not show how far one strays";
/// No visit.
pub const NO_VISIT: &str = "No trap work is written down for these days.";

/// What is not said and what is too little.
pub fn how() -> String {
    let mut said =
        "On time: traps filled or mended by the day on which the Round said that the hive was due; a look ends no such day unless it finds that the oil lasts. What is overdue on the last day, or when trap work is paused, the traps come off or the hive ends, counts as late. Catch is said from "
            .to_owned();
    put(&mut said, &LEAST_COUNTS.to_string());
    put(&mut said, " counts and ");
    put(&mut said, &LEAST_TRAP_DAYS.to_string());
    put(
        &mut said,
        " trap-days on; a range where counts are ranges. No places are on this sheet, and notes only where they were asked for.",
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
    all
}

/// Sentences on the work in the yard; `oil` is the oil filled in, in words, from least to most.
pub fn work(season: &Season, oil: &str) -> Vec<String> {
    let yard = &season.yard;
    let mut visits = String::new();
    put_counted(&mut visits, yard.visits, "visit", "visits");
    put(&mut visits, " to ");
    let visited = season.hives.iter().filter(|(_, of)| of.visits > 0).count();
    put_counted(&mut visits, visited, "hive", "hives");
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
        all.push(said);
    }
    // Where every hive was visited once, or none was, no days lie from visit to visit, and due days there were all the same.
    if yard.judged > 0 {
        all.push(["On time: ", &on_time(yard, true)].concat());
    }
    let mut did = String::new();
    for (count, did_it) in yard.did.into_iter().zip(DIDS) {
        put_count(&mut did, count, en_ledger::did(did_it));
    }
    all.push(["Visits with trap work: ", &did].concat());
    for (traps, said) in [
        (season.placed, "Traps first put in: "),
        (season.renewed, "Traps replaced by new ones: "),
        (season.lost, "Traps found missing or taken off as lost: "),
    ] {
        if traps > 0 {
            all.push([said, &traps.to_string()].concat());
        }
    }
    let mut filled = ["Oil filled in: ", oil].concat();
    if yard.oil_unknown > 0 {
        put(&mut filled, "; not known for ");
        put_counted(&mut filled, yard.oil_unknown, "filling", "fillings");
        put(&mut filled, " of a trap");
    }
    all.push(filled);
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

/// "38 of 40 (95 %)", the share only with `share`; of one hive "3 of 4; still due since Mon 3 August 2026".
pub fn on_time(figures: &Figures, share: bool) -> String {
    let mut said = String::new();
    put_of(&mut said, figures.on_time, figures.judged);
    if let Some(percent) = percent(figures.on_time, figures.judged).filter(|_| share) {
        put(&mut said, " (");
        put(&mut said, &percent.to_string());
        put(&mut said, "\u{a0}%)");
    }
    if let Some(since) = figures.still_due {
        put(&mut said, "; still due since ");
        put(&mut said, &date(since));
    }
    said
}

/// So many of all in per cent, to the nearest; never all of them where one is not among them, never none where one is.
fn percent(of: usize, all: usize) -> Option<usize> {
    let nearest = (of * 200 + all).checked_div(all * 2)?;
    Some(if of < all { nearest.min(99).max(usize::from(of > 0)) } else { nearest })
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

/// "Not enough data: 2 counts in 40 trap-days".
pub fn too_little(counts: usize, trap_days: u32) -> String {
    let mut said = [TOO_LITTLE, ": "].concat();
    put_counted(&mut said, counts, "count", "counts");
    put(&mut said, " in ");
    put(&mut said, &counted(trap_days, "trap-day", "trap-days"));
    said
}

/// "10 (8.8 to 12)".
pub fn with_limits(seen: &str, limits: &str) -> String {
    [seen, " (", limits, ")"].concat()
}

/// What the word means.
pub fn means(word: Word) -> &'static str {
    match word {
        Word::Up => {
            "More than chance and the differences between hives explain. It does not say why: weather and flow differ from year to year too."
        }
        Word::Down => {
            "Fewer than chance and the differences between hives explain. It does not say why: a dry summer does the same as a good method."
        }
        Word::CantTell => {
            "The counts do not settle it: neither that a way of doing it worked, nor that it did not."
        }
        Word::NoData => {
            "Nothing is set beside it: no hive has counts that lie whole in these days of both years."
        }
    }
}

/// The word of one hive, and why there is none. `limits` are what is still possible, where that is both more and fewer;
/// `uneven` where the hives of the yard widen them.
pub fn beside(word: Word, limits: Option<&str>, uneven: bool) -> String {
    let may = match (word, limits) {
        (Word::Up, _) => return "more".to_owned(),
        (Word::Down, _) => return "fewer".to_owned(),
        // The catch beside it says why.
        (Word::NoData, _) => return NO_ANSWER.to_owned(),
        (Word::CantTell, None) => return [CANT_TELL, "too few beetles"].concat(),
        (Word::CantTell, Some(limits)) => limits,
    };
    let why = if uneven { "hives here stray so far that it may be " } else { "it may be " };
    [CANT_TELL, why, may, " times as many"].concat()
}

/// "Hive 7, Sun 12 July 2026: colony dead; robbed, starved; back in care since Mon 3 August 2026". `into` is the hive it was
/// joined with.
pub fn loss(
    hive: &str,
    day: Day,
    how: Option<&Ending>,
    into: &str,
    showed: &[String],
    back: Option<Day>,
) -> String {
    let mut said = [hive, ", ", &date(day), ": ", how.map_or(STILL_HERE, en_ledger::ended), into].concat();
    for one in showed {
        put(&mut said, "; ");
        put(&mut said, one);
    }
    if showed.is_empty() && matches!(how, Some(Ending::Dead | Ending::Gone)) {
        put(&mut said, "; ");
        put(&mut said, NO_CAUSE);
    }
    if let Some(back) = back {
        put(&mut said, "; back in care since ");
        put(&mut said, &date(back));
    }
    said
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

    #[test]
    fn a_loss_has_the_cause_that_was_written_down_or_says_that_there_is_none() {
        let on = Day::parse("2026-07-12").unwrap();
        let said = |how: Option<&Ending>, showed: &[String]| loss("Hive 7", on, how, "", showed, None);
        let dead = Some(&Ending::Dead);
        assert_eq!(
            said(dead, &["robbed, starved".to_owned()]),
            "Hive 7, Sun 12 July 2026: colony dead; robbed, starved"
        );
        assert_eq!(said(dead, &[]), "Hive 7, Sun 12 July 2026: colony dead; no cause written down");
        assert_eq!(said(Some(&Ending::Sold), &[]), "Hive 7, Sun 12 July 2026: sold or given away");
        assert!(said(None, &["mites".to_owned()]).ends_with("in care; mites"));
        assert!(
            loss("Hive 7", on, dead, "", &[], Some(on)).ends_with("; back in care since Sun 12 July 2026")
        );
    }

    #[test]
    fn too_little_is_said_with_what_there_is() {
        assert_eq!(too_little(2, 40), "not enough data: 2\u{a0}counts in 40\u{a0}trap-days");
    }

    #[test]
    fn a_hive_that_cannot_be_told_says_what_stands_in_the_way() {
        assert_eq!(
            beside(Word::CantTell, Some("0.04 to 1.2"), true),
            "can’t tell yet: hives here stray so far that it may be 0.04 to 1.2 times as many"
        );
        assert_eq!(
            beside(Word::CantTell, Some("0.4 to 1.2"), false),
            "can’t tell yet: it may be 0.4 to 1.2 times as many"
        );
        assert_eq!(beside(Word::CantTell, None, true), "can’t tell yet: too few beetles");
        assert_eq!(
            (&*beside(Word::Down, None, true), &*beside(Word::NoData, None, true)),
            ("fewer", NO_ANSWER)
        );
    }

    #[test]
    fn a_share_is_rounded_to_the_nearest_and_is_all_or_nothing_only_where_it_is() {
        assert_eq!(
            (percent(0, 0), percent(47, 48), percent(1, 1000), percent(999, 1000)),
            (None, Some(98), Some(1), Some(99))
        );
        for all in 1..=400 {
            for of in 0..=all {
                let told = percent(of, all).unwrap();
                assert_eq!((told == 100, told == 0), (of == all, of == 0), "{of} of {all}");
                let off = (told * all).abs_diff(of * 100);
                assert!(off * 2 <= all || told == 1 || told == 99, "{of} of {all}: {told}");
            }
        }
    }

    #[test]
    fn due_days_are_told_where_no_hive_was_visited_twice() {
        let said = |judged, gaps| {
            let yard = Figures { gaps, judged, ..Figures::default() };
            work(&Season { yard, ..Season::default() }, "nothing").join(". ")
        };
        assert!(said(24, vec![]).contains(". On time: 0 of 24 (0\u{a0}%). "), "{}", said(24, vec![]));
        assert!(said(24, vec![14]).contains("longest 14\u{a0}days. On time: 0 of 24 (0\u{a0}%). "));
        assert!(!said(0, vec![14]).contains("On time"));
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
        let still_due = Day::parse("2026-08-03").ok();
        let one = Figures { judged: 4, on_time: 3, still_due, ..Figures::default() };
        assert_eq!(on_time(&one, false), "3 of 4; still due since Mon 3 August 2026");
    }
}
