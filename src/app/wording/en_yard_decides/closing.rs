//! English: closing up.

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
    "None is built in: strength, heat and flow decide. Bearding or a heavy flow? Open it wider.";
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
/// What stands where no sealant, no screen and no coat is wanted, in hives of which so many nobody saw the cracks, the notch
/// and the board of: "No board to coat. Not known: slick board of 3 hives".
pub fn none(unknown: [usize; 3], hives: usize) -> [String; 3] {
    let [cracks, _, notch, board, ..] = PARTS;
    let mut said = [(NO_CRACKS, cracks), (NO_SCREENS, notch), (NO_BOARDS, board)].into_iter();
    unknown.map(|count| {
        let (none, part) = said.next().unwrap_or_default();
        if count == 0 {
            return none.to_owned();
        }
        let of = counted(u32::try_from(count).unwrap_or(u32::MAX), "hive", "hives");
        let lead = if count < hives { [none, " "].concat() } else { String::new() };
        [&lead, "Not known: ", part, " of ", &of, "."].concat()
    })
}

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
    [&along, " × ", &across, " =\u{a0}", &counted(pieces, "screen", "screens"), " from a sheet", how].concat()
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
    seen(&["No crack wider than ", wide, ": no beetle gets through"].concat(), day)
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
pub const PARTS: [&str; 6] = ["cracks", "entrance", "notch", "slick board", "uncovered room", "burr comb"];

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
pub const UNTOLD: &str = "Cracks, notch and slick board not known, and not in this sum";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_nobody_saw_is_not_known_and_no_hive_without_it() {
        assert_eq!(none([0; 3], 8), [NO_CRACKS, NO_SCREENS, NO_BOARDS]);
        let [cracks, screens, boards] = none([8, 1, 0], 8);
        assert_eq!(cracks, "Not known: cracks of 8\u{a0}hives.");
        assert_eq!(screens, "No screen wanted: no open notch. Not known: notch of 1\u{a0}hive.");
        assert_eq!(boards, NO_BOARDS);
        // A yard without hives wants nothing.
        assert_eq!(none([0; 3], 0), [NO_CRACKS, NO_SCREENS, NO_BOARDS]);
    }
}
