//! English: a trial of the keeper's own.

use super::en::{counted, date, put, whole};
use crate::almanac::day::Day;
use crate::book::urgent::Because;

/// Heading, and the key that leads there.
pub const TITLE: &str = "Trials of your own";
/// Field.
pub const PAIRS: &str = "Pairs of hives";
/// Its hint.
pub const PAIRS_HINT: &str = "Two hives with catches alike: one gets it, one does not, by lot.";
/// Field.
pub const MEAN: &str = "Beetles that a hive without it catches over the trial";
/// Field.
pub const CLUMP: &str = "How evenly hives of a pair catch (k)";
/// Its hint.
pub const CLUMP_HINT: &str =
    "2 is an example, not measured. The smaller, the more they differ; 100: no more than by chance.";
/// Field.
pub const LEFT: &str = "It leaves so much of the catch";
/// Its hint.
pub const LEFT_HINT: &str = "½: it would have to halve the catch to be seen.";
/// Answer.
pub const POWER: &str = "Chance that it will tell";
/// Why.
pub const WHY: &str = "If it works so well, in so many cases enough pairs go the same way: in fewer than 1 of 20 cases would as many do by chance. Counts clump; traps fish as long on both sides. A trial that says nothing does not prove that it does nothing.";

/// "With 4 pairs it can never be told". Of one pair there is no "all of them".
pub fn never(pairs: u32) -> String {
    let mut said = "With ".to_owned();
    put(&mut said, &counted(pairs, "pair", "pairs"));
    put(&mut said, " it can never be told: ");
    if pairs < 2 {
        put(&mut said, "so few can show nothing");
    } else {
        put(&mut said, "even all of them going one way comes by chance in 1 of ");
        put(&mut said, &whole(2_u32.saturating_pow(pairs - 1)));
        put(&mut said, " cases");
    }
    put(&mut said, ". Take 6 pairs at the least.");
    said
}

/// "20 beetles without, 10 with it".
pub fn caught(without: &str, with: &str) -> String {
    [without, " beetles a hive without it, ", with, " with it."].concat()
}

/// "With 10 pairs the sign test says so in 31 % of such trials".
pub fn told(pairs: u32, percent: &str) -> String {
    ["With ", &counted(pairs, "pair", "pairs"), " the sign test says so in ", percent, " of such trials."]
        .concat()
}

/// Why more pairs may tell less often.
pub const STEPS: &str =
    "Why 8 may tell less often than 6: all of either must go the same way. Of 9 one may go the other.";

/// "24 pairs: 78 %".
pub fn other(pairs: u32, percent: &str) -> String {
    [&counted(pairs, "pair", "pairs"), ": ", percent].concat()
}

/// What the page is for.
pub const WHAT: &str = "One change at a time, on one hive of each pair, drawn by lot. The day on which you look is fixed beforehand; until then nothing is shown here, because who looks early and stops when it looks good is told what chance did.";
/// Part: those written down.
pub const SO_FAR: &str = "Written down";
/// None.
pub const NONE: &str = "No trial is written down yet.";
/// Part: a new one.
pub const NEW: &str = "Draw a trial";
/// Field.
pub const NAMED: &str = "What is tried";
/// Its hint.
pub const NAMED_HINT: &str = "In your words: oil with vinegar, notch screened, one trap more.";
/// Field.
pub const UNTIL: &str = "The day on which it is opened";
/// Chooser.
pub const YARD: &str = "Yard";
/// Key.
pub const DRAW: &str = "Draw them by lot";
/// Key: the lists stand until somebody says so.
pub const AGAIN: &str = "Drop these lists and draw again";
/// Key.
pub const WRITE: &str = "Write these two lists down";
/// Written.
pub const WRITTEN: &str = "Trial written down";
/// Not enough hives.
pub const TOO_FEW: &str = "A trial needs two hives in care in one yard.";
/// The day must come.
pub const NOT_TODAY: &str = "Take a day that is still to come.";
/// How pairs are made.
pub fn paired(day: Day) -> String {
    let by = ": hives with a last catch alike stood together then; the largest catch first, those without a count last.";
    ["Drawn on ", &date(day), by].concat()
}
/// Caution before it is written down.
pub const EMPTY_FIRST: &str =
    "Count and empty the traps of all these hives today: what was caught before today is left out.";
/// Headings of the lists.
pub const SIDES: [&str; 2] = ["With it", "Without it"];

/// The hive that is left.
pub fn left(hive: &str) -> String {
    [hive, " is left over without a partner and takes no part."].concat()
}

/// "Hive 3 takes no part: slime or many larvae."
pub fn out(hive: &str, because: Because) -> String {
    let why = match because {
        Because::Slime => "slime or many larvae",
        Because::Dead => "a dead-out",
        Because::Disease => "brood disease is suspected",
    };
    [hive, " takes no part: ", why, "."].concat()
}

/// Before "3 – 7; 5 – 2".
pub const PAIRED: &str = "Pairs (with it – without it): ";

/// "Opened on Tue 1 September 2026".
pub fn opened(on: Day) -> String {
    ["Not opened before ", &date(on), ". Until then nothing is shown."].concat()
}

/// A list without its other side.
pub const ONE_SIDE: &str = "The list of the other side is missing: nothing is shown.";
/// Two lists that say different things.
pub const APART: &str = "These two lists do not match: nothing is shown.";
/// In what they differ.
pub const DIFFERS: [&str; 5] = [NAMED, "Written down for", "Side", UNTIL, "Hives"];
/// A list without a day.
pub const NO_UNTIL: &str = "no day";

/// "Correct the list: With it".
pub fn mend(side: &str) -> String {
    ["Correct the list: ", side].concat()
}

/// From the day it began to the day it was opened.
pub fn span(from: Day, until: Day) -> String {
    ["Counts from ", &date(from), " to ", &date(until)].concat()
}

/// No day was fixed.
pub const NO_DAY: &str = "No day was fixed on which to open it, so nothing is shown: any day chosen now would be chosen with the counts in sight.";

/// The outcome in large type.
pub fn big(told: bool, less: u32, more: u32) -> String {
    match (told, less > more) {
        (true, true) => "Fewer where it was tried".to_owned(),
        (true, false) => "More where it was tried".to_owned(),
        (false, _) => "It does not tell".to_owned(),
    }
}

/// "Of 12 pairs 10 caught less with it, 2 more, 0 alike".
pub fn signs(less: u32, more: u32, even: u32) -> String {
    let all = counted(less + more + even, "pair", "pairs");
    let mut said = ["Of ", &all].concat();
    for (count, words) in [(less, " caught less with it, "), (more, " more, "), (even, " alike.")] {
        put(&mut said, if words.starts_with(" caught") { ": " } else { "" });
        put(&mut said, &whole(count));
        put(&mut said, words);
    }
    said
}

/// Pairs without a count, or of which a hive is gone.
pub fn open(pairs: u32) -> String {
    [
        &counted(pairs, "pair", "pairs"),
        " without counts on both sides that lie whole in these days, or with a hive that died or left before the last count: left out.",
    ]
    .concat()
}

/// The sign test.
pub fn sign(percent: &str) -> String {
    [
        "Sign test: if it does nothing, as uneven in ",
        percent,
        " of trials. Below 5\u{a0}% it is told; this test decides.",
    ]
    .concat()
}

/// The permutation test.
pub fn permuted(percent: &str) -> String {
    ["Beside it, by the differences themselves (all ways to swap hives within pairs): ", percent, "."]
        .concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn four_pairs_are_told_why_they_never_tell() {
        assert!(never(4).contains("never be told") && never(4).contains("1 of 8 cases"), "{}", never(4));
        assert_eq!(
            never(1),
            "With 1\u{a0}pair it can never be told: so few can show nothing. Take 6 pairs at the least."
        );
        assert!(!never(0).contains("chance") && never(2).contains("1 of 2 cases"));
        assert_eq!(signs(10, 2, 0), "Of 12\u{a0}pairs: 10 caught less with it, 2 more, 0 alike.");
        assert_eq!(big(false, 4, 1), "It does not tell");
    }
}
