//! English: the decisions of a yard from its records, and the sums of the Bench that go with them.

use crate::app::place::Question;

/// The key of a yard that leads to its decisions, and their heading.
pub const TITLE: &str = "Decide";
/// Name of the ways to the questions.
pub const INDEX: &str = "Questions of this yard";
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

/// Closing up.
pub mod closing {
    use crate::almanac::day::Day;
    use crate::app::wording::en::{counted, date};
    use crate::book::shell::{Board, Known, Notch};

    /// Field: screens.
    pub const SCREENS: &str = "Notch screens to cut";
    /// Field: side of a screen.
    pub const CUT: &str = "A screen, one side";
    /// Field: its other side.
    pub const CUT_TO: &str = "The screen, other side";
    /// Field: side of a sheet.
    pub const SHEET: &str = "A sheet of mesh, one side";
    /// Field: its other side.
    pub const SHEET_TO: &str = "The sheet, other side";
    /// Field: cracks.
    pub const CRACKS: &str = "All cracks together";
    /// Field: reserve.
    pub const RESERVE: &str = "Sealant on top";
    /// Field: tube.
    pub const TUBE: &str = "One tube goes so far";
    /// Its hint.
    pub const TUBE_HINT: &str = "By its label, for a bead as wide as your cracks.";
    /// Field: boards.
    pub const BOARDS: &str = "Boards to wax or paint";
    /// Field: coats.
    pub const COATS: &str = "One tin or block is enough for so many boards";
    /// Field: entrance.
    pub const ENTRANCE: &str = "Widest entrance you want now";
    /// Its hint.
    pub const ENTRANCE_HINT: &str =
        "None is built in: strength, heat and flow decide. Bearding or a heavy flow? Open it a notch.";
    /// Opens the rest.
    pub const SIZES: &str = "Change sizes and coverage";
    /// About the sizes in the fields.
    pub const EXAMPLES: &str =
        "Sizes of screen and sheet stand in the fields as examples until you type your own.";
    /// Answer.
    pub const SHEETS: &str = "Sheets of mesh";
    /// Answer.
    pub const SEALANT: &str = "Sealant";
    /// Answer.
    pub const TINS: &str = "Wax or paint for the boards";
    /// Reason.
    pub const WHY: &str = "Pieces are cut in whole rows and columns, all the same way round: whichever of the two ways gives more. Mesh that opens more than 2\u{a0}mm lets beetles in.";
    /// Reason.
    pub const SEALANT_WHY: &str =
        "A tenth on top for what is squeezed out beside the crack: judgement, no source.";
    /// None wanted.
    pub const NO_SCREENS: &str = "No screen wanted: no open notch.";
    /// None wanted.
    pub const NO_CRACKS: &str = "No length of cracks.";
    /// None wanted.
    pub const NO_BOARDS: &str = "No board to coat.";
    /// A screen too large.
    pub const NOT_ONE: &str = "Not one screen of this size comes out of this sheet.";
    /// No tube typed.
    pub const NO_TUBE: &str = "Type how far one tube goes, and it says how many.";
    /// No coverage typed.
    pub const NO_COATS: &str = "Type for how many boards one tin is enough.";
    /// Materials for the yard.
    pub const BUY: &str = "To buy and cut for this yard";
    /// The way to the form.
    pub const WRITE: &str = "Write down how it is closed";
    /// Everything is as it should be.
    pub const FINE: &str = "Nothing to close.";
    /// Nothing is written down.
    pub const NO_DATA: &str = "Nothing is written down about how it is closed.";
    /// No interval of cleaning.
    pub const NO_EVERY: &str =
        "How often slick boards are to be cleaned is not set: a clean board is never due. Set it under aims.";
    /// No widest entrance typed.
    pub const NO_ENTRANCE: &str = "Reducers: type the widest entrance you want now.";
    /// Fill the room.
    pub const SPACE: &str = "Room that no bees cover: take it out or fill it";
    /// Scrape it off.
    pub const BURR: &str = "Burr comb: scrape it off, beetles hide behind it";

    /// "8 × 6 = 48 screens from a sheet, laid as typed".
    pub fn cut(along: u32, across: u32, pieces: u32, turned: bool) -> String {
        let how = if turned { ", a quarter turned" } else { ", laid as typed" };
        let (along, across) = (along.to_string(), across.to_string());
        [&along, " × ", &across, " =\u{a0}", &counted(pieces, "screen", "screens"), " from a sheet", how]
            .concat()
    }

    /// "10 ÷ 48, rounded up = 1 sheet".
    pub fn over(need: u32, each: &str, answer: &str) -> String {
        [&need.to_string(), " ÷ ", each, ", rounded up =\u{a0}", answer].concat()
    }

    /// "8 m + 10 % = 8.8 m".
    pub fn reserve(cracks: &str, percent: &str, sum: &str) -> String {
        [cracks, " + ", percent, " =\u{a0}", sum].concat()
    }

    /// "8.8 m ÷ 2.2 m, rounded up = 4 tubes".
    pub fn tubes(sum: &str, tube: &str, answer: &str) -> String {
        [sum, " ÷ ", tube, ", rounded up =\u{a0}", answer].concat()
    }

    /// "2 sheets".
    pub fn sheets(count: u32) -> String {
        counted(count, "sheet", "sheets")
    }

    /// "4 tubes".
    pub fn tube_count(count: u32) -> String {
        counted(count, "tube", "tubes")
    }

    /// "3 tins or blocks".
    pub fn tins(count: u32) -> String {
        counted(count, "tin or block", "tins or blocks")
    }

    /// "Crack of 4 mm, 30 cm of cracks: seal".
    pub fn crack(wide: &str, long: Option<&str>, day: Day) -> String {
        let long = match long {
            Some(long) => [", ", long, " in all"].concat(),
            None => ", how long is not written down".to_owned(),
        };
        seen(&["Crack of ", wide, &long, ": seal it"].concat(), day)
    }

    /// Cracks that are too narrow, or none.
    pub fn narrow(wide: &str, day: Day) -> String {
        seen(&["Widest crack ", wide, ": too narrow for a beetle"].concat(), day)
    }

    /// "Entrance 20 mm since 3 June".
    pub fn entrance(wide: &str, since: Day, narrower: bool) -> String {
        let then = if narrower { ": put a reducer in" } else { "" };
        ["Entrance ", wide, " since ", &date(since), then].concat()
    }

    /// The notch as it was seen.
    pub fn notch(notch: Notch, day: Day) -> String {
        seen(
            match notch {
                Notch::Without => "No notch",
                Notch::Screened => "Notch screened",
                Notch::Open => "Notch open: put a screen over it",
            },
            day,
        )
    }

    /// The slick board as it was seen, and by when it is to be cleaned.
    pub fn board(board: Board, day: Day, by: Option<Day>, due: bool) -> String {
        let mut said = match board {
            Board::Without => "No slick board: put one in".to_owned(),
            Board::Dirty => "Slick board dirty: clean it".to_owned(),
            Board::Clean if due => "Slick board to be cleaned again".to_owned(),
            Board::Clean => "Slick board clean".to_owned(),
        };
        said = seen(&said, day);
        if let Some(by) = by {
            said.push_str(", due ");
            said.push_str(&date(by));
        }
        said
    }

    /// "…, seen 3 June".
    pub fn seen(what: &str, day: Day) -> String {
        [what, ", seen ", &date(day)].concat()
    }

    /// "Not looked: notch, burr comb." and "No data: slick board."
    pub fn not_known(parts: &[&str], looked: bool) -> String {
        [if looked { "No data: " } else { "Not looked: " }, &parts.join(", "), "."].concat()
    }

    /// Names of the parts: crack, entrance, notch, board, space, burr comb.
    pub const PARTS: [&str; 6] =
        ["cracks", "entrance", "notch", "slick board", "uncovered room", "burr comb"];

    /// Whether a part was not looked at or never told of; none when it was seen.
    pub fn missing<T>(known: &Known<T>) -> Option<bool> {
        match known {
            Known::Seen(..) => None,
            Known::NotLooked(_) => Some(false),
            Known::NoData => Some(true),
        }
    }

    /// "Entrance reducers: 2 (hives 1, 4)".
    pub fn count_of(what: &str, tags: &[String]) -> String {
        let count = tags.len().to_string();
        let hives = if tags.len() == 1 { " (hive " } else { " (hives " };
        [what, ": ", &count, hives, &tags.join(", "), ")"].concat()
    }

    /// Reducers.
    pub const REDUCERS: &str = "Entrance reducers";
    /// Boards.
    pub const NEW_BOARDS: &str = "Slick boards";
    /// Missing lengths.
    pub const NO_LENGTH: &str = "Length of the cracks not written down, and not in this sum";
    /// Hives nobody looked at.
    pub const UNTOLD: &str = "Nothing written down, and not in this sum";
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

    /// The days of the looks.
    pub fn looks(third: crate::almanac::day::Day, seventh: crate::almanac::day::Day) -> String {
        ["Made today, look on ", &date(third), " and on ", &date(seventh), " (3 and 7 days)."].concat()
    }
}

/// Hives to open.
pub mod open {
    use crate::almanac::day::Day;
    use crate::app::wording::en::{counted, date};

    /// Key.
    pub const DRAW: &str = "Draw them by lot";
    /// Key.
    pub const AGAIN: &str = "Draw anew";
    /// Heading.
    pub const DRAWN: &str = "Drawn by lot, in the order of the walk";
    /// Heading.
    pub const WEAK: &str = "Weak hives, on top of these";
    /// None of them.
    pub const NO_WEAK: &str =
        "None that the records tell of: no nuc, none with less than seven tenths of its comb covered.";
    /// What is weak.
    pub const WEAK_WHY: &str = "Nucs, hives with less than seven tenths of their comb covered at the last look, and those with fewer than 5 frames of bees where nobody counted the comb: judgement. They do not count for what a clean look proves, since no lot chose them.";
    /// Answer.
    pub const PROVES: &str = "After the looks since the draw";
    /// Nobody looked yet.
    pub const NO_LOOK: &str = "None of the drawn hives was looked into for larvae since the draw.";
    /// Not drawn yet.
    pub const NOT_DRAWN: &str = "Draw first.";
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

    /// Caution.
    pub const NEVER_JOIN: &str = "Brood scale or ropy cells in either hive? Never join. Call the inspector.";
    /// Its reason.
    pub const NEVER_WHY: &str = "These records have no field for a brood disease that is suspected: a test that somebody wrote down is shown here, and what you saw counts more.";
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

/// Ground.
pub mod ground {
    use crate::app::wording::en::counted;

    /// Which hives.
    pub const WHICH: &str = "Round which hives";
    /// Its words.
    pub const CHOICES: [(&str, &str); 3] =
        [("larvae", "larvae in the last 60 days"), ("all", "all"), ("tags", "chosen by tag")];
    /// Field: tags.
    pub const TAGS: &str = "Their tags";
    /// Its hint.
    pub const TAGS_HINT: &str = "Such as 1–4, 7";
    /// Without a stand.
    pub const NO_STAND: &str = "Not in this sum, nobody wrote down where they stand: ";
    /// No stand at all.
    pub const BY_ROWS: &str = "Nobody wrote down where these hives stand, so it is reckoned by rows. Write down where they stand, and the map is drawn.";
    /// None chosen.
    pub const NONE: &str = "No hive chosen.";
    /// None with larvae.
    pub const NO_LARVAE: &str = "No larvae or slime was written down in the last 60 days.";
    /// Opens the other fields.
    pub const REST: &str = "Change how far out, and the hive";
    /// Field: pack.
    pub const PACK: &str = "A pack holds, in the label’s measure";
    /// Answer.
    pub const PACKS: &str = "Packs to buy";
    /// No pack.
    pub const NO_PACK: &str = "Type the label’s rate and what a pack holds.";
    /// The paving as written down.
    pub const PAVED_TOLD: &str =
        "What is paved is taken from the facts of this yard, all of it within reach.";
    /// The yard is paved.
    pub const SURFACE: &str =
        "This yard is written down as paved: larvae walk on to soil, so a ring on paving does nothing.";
    /// Heading of the window.
    pub const WINDOW: &str = "When";
    /// Nothing dated.
    pub const NO_WINDOW: &str =
        "No find is under way here, or no climate is written down: no days can be told.";
    /// How to use the days.
    pub const WINDOW_HOW: &str = "Ground work meets larvae and pupae between the first day on which they leave the hive and the last on which young beetles come out.";
    /// Nematodes.
    pub const CARD: &str = "If it is nematodes";
    /// What is to be kept to.
    pub const CARD_LINES: [&str; 5] = [
        "At dusk or on a dull day: light dries and kills them.",
        "On moist ground; water before, and keep it moist after.",
        "No water straight from a chlorinated tap: let it stand, or use rain.",
        "In the fridge, never in the freezer; by their use-by day.",
        "Only while the soil is within the supplier’s span of temperatures.",
    ];
    /// Where the card comes from.
    pub const CARD_WHY: &str = "Common practice with living nematodes; rate, water and temperatures are the supplier’s and none is built in.";
    /// The way to the form.
    pub const WRITE: &str = "Write down ground work";
    /// Key to the stands.
    pub const STANDS: &str = "Write down where it stands";

    /// What the map shows, for those who do not see it.
    pub fn map(tags: &[String], wide: &str, long: &str) -> String {
        let count = u32::try_from(tags.len()).unwrap_or(u32::MAX);
        let hives = counted(count, "hive", "hives");
        [
            "Map of ",
            &hives,
            " with the ground within reach: ",
            &tags.join(", "),
            ". ",
            wide,
            " wide, ",
            long,
            " long.",
        ]
        .concat()
    }

    /// "11.5 ÷ 5, rounded up = 3".
    pub fn packs(amount: &str, pack: &str, packs: &str) -> String {
        [amount, " ÷ ", pack, ", rounded up =\u{a0}", packs].concat()
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
    pub const WITHIN: &str = "In the freezer";
    /// None.
    pub const NONE_WITHIN: &str = "No batch is in.";
    /// Nothing waits.
    pub const NOTHING: &str = "Nothing waits.";
    /// Whole book.
    pub const ALL_YARDS: &str = "Of all yards: there is one freezer.";
    /// The way to the form.
    pub const WRITE: &str = "Write down a batch";
    /// A very warm freezer.
    pub const HARDLY: &str = "Warmer than −7\u{a0}°C (19\u{a0}°F): not even wax moth is known to die.";
    /// Not known to be cold.
    pub const NOT_COLD: &str = "not yet written down as cold inside: the hours have not begun";

    /// "12 taken out − 5 in batches = 7".
    pub fn sum(taken: u32, frozen: u32, waiting: u32) -> String {
        let taken = counted(taken, "frame", "frames");
        [&taken, " taken out for it − ", &frozen.to_string(), " in batches =\u{a0}", &waiting.to_string()]
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

    /// "16 frames of 3 June: cold since 4 June, out on 6 June, tomorrow".
    pub fn batch(frames: u32, day: Day, cold: Option<(Day, Day)>, today: Day) -> String {
        let frames = counted(frames, "frame", "frames");
        match cold {
            Some((since, out)) => [
                &frames,
                " of ",
                &date(day),
                ": cold since ",
                &date(since),
                ", out on ",
                &date(out),
                ", ",
                &relative(out.days_since(today)),
            ]
            .concat(),
            None => [&frames, " of ", &date(day), ": ", NOT_COLD].concat(),
        }
    }

    /// "7 wait, 48 fit".
    pub fn next(waiting: u32, fit: &str, next: &str) -> String {
        ["The smaller of ", &waiting.to_string(), " waiting and ", fit, " that fit =\u{a0}", next].concat()
    }

    /// "48 hours cold, rounded up to days".
    pub fn hold(hours: u32) -> String {
        ["Out on the first day that is ", &hours.to_string(), "\u{a0}h after the day on which it was cold."]
            .concat()
    }
}

/// The card of the same day.
pub mod card {
    use crate::app::wording::en::counted;
    use crate::book::urgent::{Because, Fates};

    /// Heading.
    pub fn title(because: Because) -> &'static str {
        match because {
            Because::Slime => "Today: slime or many larvae",
            Because::Dead => "Today: a dead-out",
        }
    }

    /// Stop.
    pub const STOP: &str =
        "Brood scale or ropy cells? Stop. Call the inspector; no comb of this hive is used again.";
    /// Why.
    pub const STOP_WHY: &str = "Foulbrood outlives freezing. If it may be that, no comb, box or tool goes anywhere before the inspector has seen it.";
    /// Close.
    pub const SHUT: &str = "Close it now, so that no bee robs it: robbing carries everything home.";
    /// Take combs out.
    pub const BAG: &str =
        "Take out every comb with larvae or slime now. Bag it and freeze it, or melt or burn it.";
    /// Fate of comb of a dead hive.
    pub const FATE: &str = "Give every comb a fate: freeze, melt or burn. Larvae in it go on without bees.";
    /// Shrink.
    pub const SHRINK: &str = "Take off what the bees do not cover.";
    /// Traps.
    pub const TRAPS: &str = "Fresh traps in every box that stays: replace, and log it here.";
    /// Traps of a dead hive.
    pub const TRAPS_BACK: &str = "Take the traps out and back into stock.";
    /// No comb.
    pub const NO_MOVE: &str = "Move no comb to other hives.";
    /// Dates.
    pub const DATES: &str = "When larvae leave and young beetles come stands further down this page, once the yard has a climate.";
    /// Ground.
    pub const GROUND: &str = "Treat the ground round it, if the label allows it.";
    /// Ground done.
    pub const GROUND_DONE: &str = "Ground work has been written down since.";
    /// Neighbours.
    pub const NEIGHBOURS: &str = "Open the hives beside it, and as many more as the draw says.";
    /// Key.
    pub const TO_COMB: &str = "Write down comb taken out";
    /// Key.
    pub const TO_FREEZER: &str = "Freezer";
    /// Key.
    pub const TO_SHRINK: &str = "Bees on comb";
    /// Key.
    pub const TO_GROUND: &str = "Ground";
    /// Key.
    pub const TO_OPEN: &str = "Hives to open";
    /// Nobody counted.
    pub const NO_COUNT: &str = "How many combs it has is not written down: with the frames of comb in a look, or the frames of a box, what is open can be counted.";
    /// All done.
    pub const ALL_DONE: &str = "Every comb is accounted for.";
    /// Given to another hive.
    pub const GIVEN: &str = "Comb went to another hive: look into that one too.";

    /// "5 of 9 frames not accounted for".
    pub fn open(open: u32, combs: u32) -> String {
        [&open.to_string(), " of ", &counted(combs, "frame", "frames"), " not accounted for"].concat()
    }

    /// Which combs are meant.
    pub fn meant(because: Because) -> &'static str {
        match because {
            Because::Slime => "Counted: combs that the bees did not cover at that look.",
            Because::Dead => "Counted: every comb of the hive.",
        }
    }

    /// "So far: 4 frozen, 1 melted".
    pub fn fates(fates: &Fates) -> String {
        let parts = [
            (fates.frozen, " to the freezer"),
            (fates.melted, " melted"),
            (fates.burned, " burned"),
            (fates.stored, " in store"),
            (fates.given, " to another hive"),
        ];
        let mut said = "So far: ".to_owned();
        let before = said.len();
        for (count, what) in parts.into_iter().filter(|(count, _)| *count > 0) {
            if said.len() > before {
                said.push_str(", ");
            }
            said.push_str(&count.to_string());
            said.push_str(what);
        }
        if said.len() == before {
            said.push_str("none taken out");
        }
        said
    }
}
