//! English: is the catch getting better?

use super::en::{counted, date, put, whole};
use crate::almanac::day::Day;
use crate::almanac::trend::Word;

/// Heading, and the key that leads there.
pub const TITLE: &str = "Catch: is it getting better?";
/// Caution.
pub const NOT_ALL: &str = "Traps count trapped beetles, not all beetles.";
/// Why.
pub const NOT_ALL_WHY: &str = "How many of the beetles in a hive end in a trap depends on the trap, its place and the day: in one test top-of-frame cards caught 1 in 100, floor strips 30 in 100. So a catch is set beside the catch of the same traps at another time, and is never turned into beetles in a hive. No catch is known above which a colony is harmed.";
/// Chooser.
pub const YARD: &str = "Yard";
/// Choice.
pub const BY: &str = "What is set side by side";
/// A year and the one before, or before and after a day.
pub const SIDES: [&str; 2] = ["The last 12 months and the 12 before", "Before and after a day"];
/// Field.
pub const DAY: &str = "The day on which something was changed";
/// Caution where a day parts them.
pub const SEASON: &str = "The time of year changes the catch too. Beside a yard where nothing was changed, or a year later, you see more.";
/// No yard is kept.
pub const NO_YARD: &str = "No yard is kept yet. Two counts can be set side by side on the Bench without one.";
/// No counts.
pub const NO_COUNTS: &str = "No beetles were counted here in these days. A count beside the trap work, on the Round, is all it takes.";
/// Heading of the charts.
pub const EACH: &str = "Hive by hive";
/// Under the heading.
pub const AXIS: &str = "Each point: beetles for 100 trap-days at one count. The line through it: 95\u{a0}% limits by the counting alone; one that reaches the top goes on. Tall stroke: where the second time begins. Dashed: kind or number of traps changed. The same for all hives: scale up to ";
/// Heading of the tables.
pub const PARTS: &str = "By box, corner and kind of trap";
/// Under it.
pub const PARTS_HOW: &str = "All of the time above. A count of a whole hive with several boxes, corners or kinds belongs to none of them; it is never split. To tell them apart, count trap by trap.";
/// Headings of the three tables.
pub const PART: [&str; 3] = ["Box", "Corner", "Kind of trap"];
/// Row of counts of several at once.
pub const TOGETHER: &str = "not told apart";
/// Row of traps elsewhere than in a corner.
pub const ELSEWHERE: &str = "elsewhere";
/// Answer.
pub const ANSWER: &str = "Second beside first";
/// Why the answer is reckoned as it is.
pub const WHY: &str = "Each hive is set beside itself; only hives that fished in both times count, weighted by their trap-days. Beetles clump among hives, so the limits are as wide as the hives differ, and wider where they are few. Where one count is below 30 an exact test must agree. With nothing changed, that says more or fewer in about one case in twenty.";
/// Trend of one hive, or of sums.
pub const ALONE: &str =
    "No second hive tells how much beetles clump: this holds only as far as they come one by one.";
/// Too little.
const TOO_LITTLE: &str = "Nothing to compare yet";

/// The Bench's sum.
pub mod bench {
    /// Field.
    pub const FIRST: &str = "First: beetles";
    /// Field.
    pub const FIRST_DAYS: &str = "First: trap-days";
    /// Its hint.
    pub const DAYS_HINT: &str = "Traps times days they fished: 10 traps for 14 days are 140.";
    /// Its hint.
    pub const COUNT_HINT: &str = "A range such as 5-19 or 50+ stays one.";
    /// Field.
    pub const SECOND: &str = "Second: beetles";
    /// Field.
    pub const SECOND_DAYS: &str = "Second: trap-days";
    /// Field.
    pub const SPREAD: &str = "Hives differ so many times as much as by chance";
    /// Its hint.
    pub const SPREAD_HINT: &str =
        "3 is an example, not measured. 1: beetles come one by one. The Catch page in the Book tells yours.";
    /// Why.
    pub const WHY: &str = "Second rate divided by first; 95\u{a0}% limits from 1 ÷ first count + 1 ÷ second count, times how much the hives differ; below 30 beetles an exact test must agree.";
}

/// The answer in large type. `times` is the ratio.
pub fn big(word: Word, times: Option<&str>) -> String {
    let (said, none) = match word {
        Word::Up => ("More: ", "More"),
        Word::Down => ("Fewer: ", "Fewer: none left in the traps"),
        Word::CantTell => return "Can’t tell yet".to_owned(),
        Word::NoData => return TOO_LITTLE.to_owned(),
    };
    match times {
        Some(times) => [said, times, " times as many"].concat(),
        None => none.to_owned(),
    }
}

/// "First: 60 beetles in 500 trap-days = 12 for 100 (9.2 to 15.5)".
pub fn side(which: &str, beetles: &str, trap_days: u32, rate: &str) -> String {
    if trap_days == 0 {
        return [which, ": no count"].concat();
    }
    [which, ": ", beetles, " in ", &counted(trap_days, "trap-day", "trap-days"), rate].concat()
}

/// " = 12 for 100 (9.2 to 15.5)".
pub fn rate(seen: &str, limits: &str) -> String {
    [" =\u{a0}", seen, " for 100 (", limits, ")"].concat()
}

/// "60", "5 to 19", "50 or more"; the words differ from those of the history in nothing.
pub fn range(low: &str, high: Option<&str>) -> String {
    match high {
        Some(high) if high == low => low.to_owned(),
        Some(high) => [low, " to ", high].concat(),
        None => [low, " or more"].concat(),
    }
}

/// "Wed 1 July 2026 to Tue 14 July 2026".
pub fn span(from: Day, to: Day) -> String {
    [&date(from), " to ", &date(to)].concat()
}

/// A visit ends one time and begins the other.
pub fn belongs(day: Day) -> String {
    ["What was counted on ", &date(day), " belongs to the first."].concat()
}

/// The names of the two times.
pub const WHICH: [&str; 2] = ["First", "Second"];

/// Before the two figures that are compared: those above them, in a report, count all hives.
pub fn only_both(hives: u32) -> String {
    ["Only hives that fished in both times (", &counted(hives, "hive", "hives"), "):"].concat()
}

/// "Second ÷ first = 1.6, 95 % limits 0.92 to 2.8". Of several hives it is not the plain division that it looks like.
pub fn ratio(ratio: &str, limits: &str, weighted: bool) -> String {
    let how = if weighted { " (weighted hive by hive, not the two sums divided)" } else { "" };
    ["Second ÷ first =\u{a0}", ratio, how, ", 95\u{a0}% limits ", limits].concat()
}

/// What the limits have to do with the word.
pub fn reads(word: Word) -> &'static str {
    match word {
        Word::Up => "All of these limits say more.",
        Word::Down => "All of these limits say fewer.",
        Word::CantTell => "More and fewer are both still possible.",
        Word::NoData => "In one of the two times no trap was counted that had fished.",
    }
}

/// Counts that are ranges leave it open although both ends say it.
pub const MIXED: &str = "The counts are ranges. With all of them low, or all high, this would be told; with some low and some high it is not sure. Counts to the last beetle tell more.";

/// "Hives differ 3 times as much as chance alone makes them".
pub fn spread(times: &str) -> String {
    ["Hives differ ", times, " times as much as by chance alone (φ), so the limits are wider."].concat()
}

/// None in one of the two, and a spread that was typed.
pub fn divided(times: &str) -> String {
    [
        "With none in one of the two no limits can be told: both counts are divided by the spread of ",
        times,
        " first.",
    ]
    .concat()
}

/// They do not differ more than by chance.
pub const NO_SPREAD: &str = "Hives differ no more than by chance (φ\u{a0}=\u{a0}1).";

/// "Exact test, if beetles came one by one: such counts in 22 of 100 cases with nothing changed".
pub fn exact(percent: &str) -> String {
    [
        "Exact test: with nothing changed, counts as far apart in ",
        percent,
        " of cases, if beetles came one by one.",
    ]
    .concat()
}

/// "under 0.1 %".
pub fn under(share: &str) -> String {
    ["under ", share].concat()
}

/// "9 hives rose, 3 fell: as uneven by chance in 15 % of cases".
pub fn sign(rose: u32, fell: u32, percent: &str) -> String {
    let [rose, fell] = [rose, fell].map(|hives| counted(hives, "hive", "hives"));
    [&rose, " rose, ", fell.as_str(), " fell; with nothing changed, as uneven in ", percent, " of cases."]
        .concat()
}

/// What is left out.
pub fn alone_in_one(hives: u32) -> String {
    let said = if hives == 1 {
        " was counted in one of the two alone and is left out."
    } else {
        " were counted in one of the two alone and are left out."
    };
    [&counted(hives, "hive", "hives"), said].concat()
}

/// What is left out.
pub fn straddling(counts: u32) -> String {
    let said = if counts == 1 {
        " reaches from one time into another and is left out."
    } else {
        " reach from one time into another and are left out."
    };
    [&counted(counts, "count", "counts"), said].concat()
}

/// What is left out.
pub fn idle(counts: u32) -> String {
    let said = if counts == 1 { " is left out" } else { " are left out" };
    [
        &counted(counts, "count", "counts"),
        said,
        ": no trap had fished for a day (missing, spilled, closed, new or counted before on that day).",
    ]
    .concat()
}

/// Changed traps.
pub fn changed(tags: &str) -> String {
    [
        "Kind or number of traps changed in ",
        tags,
        ". There, what changed may be the traps and not the beetles.",
    ]
    .concat()
}

/// Hives of a yard where that is too long a list.
pub fn hives(count: u32) -> String {
    counted(count, "hive", "hives")
}

/// Key.
pub fn show_all(hives: u32) -> String {
    ["Show all ", &counted(hives, "hive", "hives")].concat()
}

/// Hives of a trial that goes on.
pub fn shut(hives: u32) -> String {
    [&counted(hives, "hive", "hives"), " in a trial that is not open yet: no chart before its day."].concat()
}

/// The chart of a hive in words.
pub fn chart(counts: u32, range: &str, changes: u32) -> String {
    let mut said = [&counted(counts, "count", "counts"), ": ", range].concat();
    put(&mut said, " beetles for 100 trap-days");
    if changes > 0 {
        put(&mut said, "; traps changed ");
        put(&mut said, &if changes == 1 { "once".to_owned() } else { [&whole(changes), " times"].concat() });
    }
    said
}

/// "Box 2".
pub fn level(level: u8) -> String {
    ["Box ", &whole(level.into()), " from the floor"].concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_say_what_was_found_and_what_was_not() {
        assert_eq!(big(Word::Up, Some("1.6")), "More: 1.6 times as many");
        assert_eq!(big(Word::Down, None), "Fewer: none left in the traps");
        assert_eq!(big(Word::CantTell, Some("1.6")), "Can’t tell yet");
        assert_eq!(big(Word::NoData, None), "Nothing to compare yet");
        assert_eq!(range("5", Some("19")), "5 to 19");
        assert_eq!(range("50", None), "50 or more");
        assert_eq!(chart(1, "3", 0), "1\u{a0}count: 3 beetles for 100 trap-days");
        assert_eq!(
            chart(4, "3 to 12", 2),
            "4\u{a0}counts: 3 to 12 beetles for 100 trap-days; traps changed 2 times"
        );
    }
}
