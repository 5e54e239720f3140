//! English: the decisions of a yard from its records, and the sums of the Bench that go with them.

pub mod card;
pub mod closing;
pub mod ground;

use crate::app::place::Question;

/// The key of a yard that leads to its decisions, and their heading.
pub const TITLE: &str = "Decide";
/// Name of the ways to the questions.
pub const INDEX: &str = "Questions of this yard";
/// Before the names of hives.
pub const SUSPECTED: &str =
    "Brood disease is suspected: open, split, join and move none of these before the inspector knows: ";
/// Before the hives.
pub const HIVES: &str = "Hive by hive";
/// No hive in care.
pub const EMPTY: &str = "No hive is in care in this yard.";

/// A question.
pub fn question(question: Question) -> &'static str {
    match question {
        Question::Close => "What closes the hives up?",
        Question::Open => "How many hives to open?",
        Question::Comb => "Enough bees for the comb?",
        Question::Ground => "Which ground to treat?",
        Question::Freezer => "What waits for the freezer?",
    }
}

/// A split.
pub mod split {
    use crate::app::wording::en::{counted, date};

    /// Field: bees.
    pub const BEES: &str = "Frames of bees in the hive";
    /// Field: comb that stays.
    pub const STAYS: &str = "Frames of comb that stay";
    /// Field: comb that goes.
    pub const GOES: &str = "Frames of comb for the new hive";
    /// Field: share that flies back.
    pub const BACK: &str = "Share that flies back";
    /// Its hint.
    pub const BACK_HINT: &str = "30\u{a0}% is judgement, not measured, for a split that stays in the yard. In another yard: 0\u{a0}%.";
    /// Answer.
    pub const TAKE: &str = "Frames of bees to carry over";
    /// Answer.
    pub const GO: &str = "Go or wait";
    /// Reason.
    pub const WHY: &str = "Once the foragers are home the new hive is to cover all of its comb and the old one nine tenths: judgement, no trial has settled it. Of 24 small colonies beside strong ones 5 collapsed and 7 more had larvae.";
    /// All fly back.
    pub const ALL_BACK: &str = "If all bees fly back, no split is large enough.";
    /// About the season.
    pub const SEASON: &str = "Whether the season leaves time for it is not reckoned here: the Beetle’s season tells what is still to come.";
    /// Traps.
    pub const TRAPS: &str = "Traps for a nuc: one in its box, of a kind that fits between its frames.";

    /// No hive to reckon with.
    pub const NO_HIVE: &str = "Type the bees and the comb of a hive, or take one from the hives of a yard.";
    /// The comb of the new hive is an example.
    pub const EXAMPLE: &str = "Example number until you type your own: Frames of comb for the new hive.";

    /// "5 ÷ (100 % − 30 %), rounded up = 8".
    pub fn take(goes: u32, back: &str, take: &str) -> String {
        [&goes.to_string(), " ÷ (100\u{a0}% − ", back, "), rounded up =\u{a0}", take].concat()
    }

    /// "New hive: 8 × 70 % ÷ 5 = 112 %".
    pub fn new(take: &str, keeps: &str, goes: u32, share: &str) -> String {
        ["New hive: ", take, " × ", keeps, " ÷ ", &goes.to_string(), " =\u{a0}", share].concat()
    }

    /// "Old hive: (16 − 8 × 70 %) ÷ 10 = 104 %".
    pub fn old(bees: &str, take: &str, keeps: &str, stays: u32, share: &str) -> String {
        ["Old hive: (", bees, " − ", take, " × ", keeps, ") ÷ ", &stays.to_string(), " =\u{a0}", share]
            .concat()
    }

    /// The verdict.
    pub fn go(enough: bool) -> &'static str {
        if enough { "Go" } else { "Wait" }
    }

    /// "Both guard their comb: 15 frames of bees are wanted, 16 are there".
    pub fn wants(enough: bool, wants: u32, bees: &str) -> String {
        let both = if enough { "Both guard their comb" } else { "Not both would guard their comb" };
        let wants = counted(wants, "frame of bees is", "frames of bees are");
        [both, ": ", &wants, " wanted, ", bees, " there"].concat()
    }

    /// "Wanted: 10 × 90 % + 8 × 70 %, rounded up, at least 8 = 15".
    pub fn wanted(stays: u32, enough: &str, take: &str, keeps: &str, wants: u32) -> String {
        let stays = stays.to_string();
        let sum = ["Wanted: ", &stays, " × ", enough, " + ", take, " × ", keeps].concat();
        let wants = wants.to_string();
        [&sum, ", rounded up, at least ", take, " =\u{a0}", &wants].concat()
    }

    /// The days of the looks.
    pub fn looks(third: crate::almanac::day::Day, seventh: crate::almanac::day::Day) -> String {
        ["Made today, look on ", &date(third), " and on ", &date(seventh), " (3 and 7 days)."].concat()
    }
}

/// Hives to open.
pub mod open {
    use crate::almanac::day::Day;
    use crate::app::wording::en::{counted, date};

    /// "Left out, brood disease suspected: 1 hive".
    pub fn left_out(hives: u32) -> String {
        ["Left out, brood disease suspected: ", &counted(hives, "hive", "hives")].concat()
    }

    /// "Left out, dead-out written down, but the book has it in care: 4, 7".
    pub fn no_bees(tags: &str) -> String {
        ["Left out, ", crate::app::wording::en_season::STILL_HERE, ":", tags].concat()
    }

    /// Key.
    pub const DRAW: &str = "Draw them by lot";
    /// Key.
    pub const AGAIN: &str = "Draw anew";
    /// Heading.
    pub const DRAWN: &str = "Drawn by lot, in the order of the walk";
    /// Heading.
    pub const WEAK: &str = "Weak hives: open these, drawn or not";
    /// None of them.
    pub const NO_WEAK: &str =
        "None that the records tell of: no nuc, none with less than seven tenths of its comb covered.";
    /// What is weak.
    pub const WEAK_WHY: &str = "Nucs, hives with less than seven tenths of their comb covered at the last look, and those with fewer than 5 frames of bees where nobody counted the comb: judgement. One that was not drawn does not count for what a clean look proves.";
    /// Answer.
    pub const PROVES: &str = "After the looks since the draw";
    /// Nobody looked yet.
    pub const NO_LOOK: &str = "None of the drawn hives was looked into for larvae since the draw.";
    /// Not drawn yet.
    pub const NOT_DRAWN: &str = "Draw first.";
    /// Not all of those drawn were opened.
    pub const SO_FAR: &str = "So far, and only if nothing but the way chose which of them came first.";
    /// What counts.
    pub const COUNTS: &str = "Looks for larvae written down on the day of the draw or later count. A find is larvae, slime or larvae in the ground; adult beetles alone are none here.";
    /// Behind a hive that was looked into.
    pub const CLEAN: &str = "looked, none seen";
    /// Behind a hive with a find.
    pub const FOUND: &str = "larvae or slime found";
    /// Behind a hive nobody looked into.
    pub const TO_OPEN: &str = "to be opened";
    /// A find.
    pub const IS_THERE: &str = "It is there. See the card of that hive; open its neighbours too.";

    /// "Drawn on 3 June: 12 of 20 hives".
    pub fn drawn(day: Day, count: u32, hives: u32) -> String {
        ["Drawn on ", &date(day), ": ", &count.to_string(), " of ", &counted(hives, "hive", "hives")].concat()
    }

    /// The yard or the fields have changed since.
    pub fn now(count: u32) -> String {
        [
            "By the fields and hives of now it would be ",
            &count.to_string(),
            ": draw anew, or go on with these.",
        ]
        .concat()
    }

    /// Some came later; others were under suspicion or without bees at the draw.
    pub fn later(from: u32) -> String {
        ["Hives that were not in the lot do not count: it is about the ", &from.to_string(), " drawn from."]
            .concat()
    }

    /// "found in 1 of 5".
    pub fn found(found: u32, looked: u32) -> String {
        ["found in ", &found.to_string(), " of ", &looked.to_string()].concat()
    }

    /// "5 of 12 drawn hives were looked into".
    pub fn looked(looked: u32, drawn: u32) -> String {
        [
            &looked.to_string(),
            " of ",
            &counted(drawn, "drawn hive", "drawn hives"),
            " looked into, no larvae seen",
        ]
        .concat()
    }
}

/// Bees on comb.
pub mod comb {
    use crate::almanac::day::Day;
    use crate::app::wording::en::{counted, date};

    /// A hive with a card of the same day.
    pub const CARD_FIRST: &str = "! Its card comes first: do not split it, and move no comb of it.";
    /// Caution.
    pub const NEVER_JOIN: &str = "Brood scale or ropy cells in either hive? Never join. Call the inspector.";
    /// Its reason.
    pub const NEVER_WHY: &str = "A hive with brood disease suspected or with larvae is no candidate here, and a test that names a hive is shown. What you see in front of you counts more than either.";
    /// In a heading.
    pub const LITTLE: &str = "Less than seven tenths covered";
    /// In a heading.
    pub const WATCH: &str = "Seven to nine tenths covered";
    /// In a heading.
    pub const WELL: &str = "Nine tenths or more covered";
    /// In a heading.
    pub const NOT_KNOWN: &str = "Not known";
    /// No look counted bees.
    pub const NO_LOOK: &str = "No look has counted frames of bees.";
    /// No comb counted.
    pub const NO_COMB: &str = "Frames of comb: not in the look, and frames of a box not written down.";
    /// Twice too little.
    pub const TWICE: &str = "Less than seven tenths at two looks in a row";
    /// Join candidate.
    pub const JOIN: &str = "Candidate to join with another hive";
    /// Not before the test was read.
    pub const TEST_FIRST: &str = "Read this test before you join it:";
    /// The way to the form.
    pub const LOOK: &str = "Write down a look";
    /// No split from records.
    pub const SPLIT: &str = "A split";
    /// What is said beside it.
    pub const SPLIT_OF: &str = "Reckon a split of this hive";
    /// No box size.
    pub const NO_BOX: &str = "Frames of a box are not written down, so how many boxes come off is not known.";

    /// "Queen not found, no eggs, 3 June".
    pub fn queenless(day: Day) -> String {
        ["Neither queen nor eggs found on ", &date(day)].concat()
    }

    /// "Brood disease suspected on 3 June".
    pub fn suspected(day: Day) -> String {
        ["Brood disease suspected on ", &date(day), ": join it with none, move no comb, call the inspector"]
            .concat()
    }

    /// Larvae in the comb and no card.
    pub fn larvae(day: Day) -> String {
        ["! Larvae found on ", &date(day), ": bag those combs, and move no comb to other hives"].concat()
    }

    /// "6 frames taken out since".
    pub fn taken(frames: u32) -> String {
        [&counted(frames, "frame", "frames"), " taken out since that look, counted off"].concat()
    }

    /// "8 frames of bees × 2 = 16 sides; 20 frames × 2".
    pub fn sum(sides: u32, frames: u32, share: &str, day: Day) -> String {
        let (sides, frames) = (sides.to_string(), frames.to_string());
        [&sides, " sides ÷ (2 × ", &frames, " frames) =\u{a0}", share, ", ", &date(day)].concat()
    }

    /// Where the comb comes from.
    pub fn by_boxes(boxes: u32, each: u32) -> String {
        let boxes = counted(boxes, "box", "boxes");
        [&boxes, " × ", &each.to_string(), " frames, all taken as drawn"].concat()
    }

    /// "Take 1 box off".
    pub fn off(boxes: u32, then: &str) -> String {
        ["Take ", &counted(boxes, "box", "boxes"), " off: then ", then].concat()
    }

    /// A test that names the hive.
    pub fn test(what: &str, result: &str, day: Day) -> String {
        [what, ": ", result, ", ", &date(day)].concat()
    }
}

/// Freezer.
pub mod freezer {
    use crate::almanac::day::Day;
    use crate::app::wording::en::{counted, date, relative};

    /// Answer.
    pub const WAITING: &str = "Frames that wait";
    /// Answer.
    pub const NEXT: &str = "Next batch";
    /// Heading.
    pub const WITHIN: &str = "Batches";
    /// None.
    pub const NONE_WITHIN: &str = "No batch is in.";
    /// The number that fits in is an example.
    pub const EXAMPLE: &str = "Example number until you type your own: Frames that fit in at a time.";
    /// Nothing waits.
    pub const NOTHING: &str = "Nothing waits.";
    /// Whole book.
    pub const ALL_YARDS: &str = "Of all yards: there is one freezer.";
    /// The way to the form.
    pub const WRITE: &str = "Write down a batch";
    /// A very warm freezer.
    pub const HARDLY: &str =
        "Warmer than −7\u{a0}°C (19\u{a0}°F), far too warm: nothing shows that this kills every stage.";
    /// Not known to be cold.
    pub const NOT_COLD: &str = "not yet written down as cold inside: the hours have not begun";

    /// "12 taken out − 5 of them in batches = 7".
    pub fn sum(taken: u32, waiting: u32) -> String {
        let (in_batches, taken) = ((taken - waiting).to_string(), counted(taken, "frame", "frames"));
        [&taken, " taken out for it − ", &in_batches, " of them in batches =\u{a0}", &waiting.to_string()]
            .concat()
    }

    /// More in batches than was taken out.
    pub fn elsewhere(more: u32) -> String {
        [&counted(more, "frame", "frames"), " in batches came from elsewhere than hives in this book"]
            .concat()
    }

    /// "Hive 3: 5 frames, 3 June".
    pub fn from(hive: &str, frames: u32, day: Day) -> String {
        [hive, ": ", &counted(frames, "frame", "frames"), ", ", &date(day)].concat()
    }

    /// "16 frames of 3 June: cold since 4 June, out on 7 June, tomorrow".
    pub fn batch(frames: u32, day: Day, cold: Option<(Day, Day)>, today: Day) -> String {
        let frames = counted(frames, "frame", "frames");
        match cold {
            Some((since, out)) => [
                frames.as_str(),
                " of ",
                &*date(day),
                if since > today { ": cold from " } else { ": cold since " },
                &*date(since),
                if out < today { ", to come out since " } else { ", out on " },
                &*date(out),
                ", ",
                &*relative(out.days_since(today)),
            ]
            .concat(),
            None => [&frames, " of ", &date(day), ": ", NOT_COLD].concat(),
        }
    }

    /// Behind a batch that is to come out before its hours are over, or did.
    pub fn early(out: Day, today: Day) -> String {
        let then = if out <= today {
            ": its hours were not over, larvae may live in it"
        } else {
            ": its hours are not over then"
        };
        ["; you wrote that it is out on ", &date(out), then].concat()
    }

    /// "7 wait, 48 fit".
    pub fn next(waiting: u32, fit: &str, next: &str) -> String {
        ["The smaller of ", &waiting.to_string(), " waiting and ", fit, " that fit =\u{a0}", next].concat()
    }

    /// "48 hours cold, from the end of that day on".
    pub fn hold(hours: u32) -> String {
        [
            "Out on the first day that begins ",
            &hours.to_string(),
            "\u{a0}h or more after the day it is cold since.",
        ]
        .concat()
    }
}
