//! English: hives handed over to another phone, and taken in there.

use super::en::counted;
use super::en_hive::SAME;
use super::en_ledger::{lines, quoted};
use crate::papers::codes::CodeError;

fn number(count: usize) -> u32 {
    u32::try_from(count).unwrap_or(u32::MAX)
}

/// Way to the one page, and its heading.
pub const HAND_OVER: &str = "Hand over";
/// Way to the other, and its heading.
pub const TAKE_IN: &str = "Take in";

/// The page that gives.
pub mod give {
    use super::{counted, lines, number};

    /// What it is for.
    pub const ABOUT: &str = "Gives hives and what was logged on them to another phone, by a file or by codes on the screen. No signal is needed, and nothing here changes.";
    /// No yard of the keeper's own.
    pub const NO_YARD: &str = "There is no yard of your own to hand over yet.";
    /// Chooser.
    pub const YARD: &str = "Yard";
    /// Choice of how far back.
    pub const SINCE: &str = "What was logged";
    /// Written today.
    pub const TODAY: &str = "Today";
    /// Since a day.
    pub const DAY: &str = "Since a day";
    /// All of it.
    pub const ALL: &str = "Everything";
    /// Field.
    pub const FROM: &str = "First day";
    /// Under the choice.
    pub const NEW_PHONE: &str = "A phone that has never had these hives needs everything.";
    /// Tick.
    pub const NOTES: &str = "Notes and places go along";
    /// Nothing chosen.
    pub const NO_HIVE: &str = "Choose a hive first.";
    /// Heading.
    pub const AS_FILE: &str = "As a file";
    /// Heading.
    pub const AS_CODES: &str = "As codes on this screen";
    /// How codes work.
    pub const CODES_HOW: &str =
        "The other phone opens Book, Take in, and reads them one after the other with its camera.";
    /// Key.
    pub const SHOW: &str = "Show the codes";
    /// Key.
    pub const HIDE: &str = "Put the codes away";
    /// Key.
    pub const BEFORE: &str = "Previous";
    /// Key.
    pub const NEXT: &str = "Next";
    /// Tick.
    pub const TURN: &str = "Turn by itself";
    /// Too much.
    pub const TOO_MUCH: &str = "That is more than codes hold. Hand it over as a file, or choose a later day.";
    /// Starts the name of the file.
    pub const FILE: &str = "hand-over-";

    /// "12 of 25 hives".
    pub fn hives(chosen: usize, all: usize) -> String {
        ["Hives: ", &chosen.to_string(), " of ", &all.to_string()].concat()
    }

    /// "31 entries of 12 hives (1 no longer in care), without notes and places."
    pub fn holds(count: usize, hives: usize, ended: usize, notes: bool) -> String {
        let out = if ended > 0 {
            [" (", &ended.to_string(), " no longer in care)"].concat()
        } else {
            String::new()
        };
        let notes = if notes { ", notes and places with them." } else { ", without notes and places." };
        [&lines(count), " of ", &counted(number(hives), "hive", "hives"), &out, notes].concat()
    }

    /// "Code 2 of 3".
    pub fn code(at: usize, all: usize) -> String {
        ["Code ", &at.to_string(), " of ", &all.to_string()].concat()
    }
}

/// The page that takes.
pub mod take {
    use super::{CodeError, SAME, quoted};

    /// What it is for.
    pub const ABOUT: &str =
        "Takes in hives that another phone hands over. You see what comes before anything changes.";
    /// Heading.
    pub const CODES: &str = "From codes";
    /// Key.
    pub const CAMERA: &str = "Open the camera";
    /// Key.
    pub const STOP: &str = "Stop the camera";
    /// On the picture.
    pub const PICTURE: &str = "What the camera sees";
    /// The browser reads no codes.
    pub const NO_READER: &str = "This browser cannot read codes with the camera. Let another app on this phone read them and paste their text below, or let the other phone give you a file.";
    /// Refused.
    pub const NOT_ALLOWED: &str = "The camera is not allowed for this page. Allow it in the browser's settings of this page, or paste the text of the codes below, or take a file.";
    /// None.
    pub const NOT_THERE: &str =
        "No camera answers: another app may be using it. Paste the text of the codes below, or take a file.";
    /// Label.
    pub const PASTE: &str = "Text of the codes, one a line, in any order";
    /// Key.
    pub const READ: &str = "Read these";
    /// Nothing pasted.
    pub const NOTHING: &str = "Nothing is pasted yet.";
    /// Heading.
    pub const FILE: &str = "From a file";
    /// Key.
    pub const ANEW: &str = "Forget these codes";
    /// A code of another run.
    pub const OTHER_RUN: &str =
        "A code of another hand-over was read and left out. To take that one, forget these codes first.";
    /// All there and yet not whole.
    pub const NOT_WHOLE: &str =
        "These codes do not fit together. Forget them and read them once more. Nothing was changed.";
    /// A bomb.
    pub const TOO_LARGE: &str =
        "These codes unpack to far more than any hand-over. They were not opened, and nothing was changed.";
    /// The browser lacks what unpacks.
    pub const NO_WAY: &str =
        "This browser is too old to unpack these codes. Let the other phone give you a file.";

    /// "2 of 3 read, 3 is missing."
    pub fn progress(read: usize, all: usize, missing: &[usize]) -> String {
        let mut said = [&read.to_string(), " of ", &all.to_string(), " read"].concat();
        for (at, number) in missing.iter().enumerate() {
            said.push_str(match at {
                0 => ", ",
                _ if at + 1 == missing.len() => " and ",
                _ => ", ",
            });
            said.push_str(&number.to_string());
        }
        match missing.len() {
            0 => {}
            1 => said.push_str(" is missing"),
            _ => said.push_str(" are missing"),
        }
        said.push('.');
        said
    }

    /// A text that is no code, with its line where there are several.
    pub fn wrong(error: CodeError, line: Option<usize>) -> String {
        let said = match error {
            CodeError::NotOurs => "is no code of this page.",
            CodeError::Newer => {
                "was made by a newer version of this page: open this page where there is a signal to update it."
            }
            CodeError::Damaged => "was changed or cut off on the way: read that code again.",
        };
        match line {
            Some(line) => ["Line ", &line.to_string(), " ", said].concat(),
            None => ["That ", said].concat(),
        }
    }

    /// Notes did not come along.
    pub const WITHHELD: &str = "The other phone left notes and places out.";

    /// "2 entries get what they lacked".
    pub fn fuller(count: usize) -> String {
        match count {
            1 => "1 entry gets what it lacked".to_owned(),
            _ => [&count.to_string(), " entries get what they lacked"].concat(),
        }
    }

    /// Two phones logged the same.
    pub fn doubles(count: usize) -> String {
        [
            "Possible doubles: ",
            &count.to_string(),
            ". The history shows both entries and asks which is right.",
        ]
        .concat()
    }

    /// A tag that two hives have.
    pub fn twin(tag: &str, yard: &str) -> String {
        [
            "Hive ",
            &quoted(tag),
            " in ",
            &quoted(yard),
            ": another hive here has that tag. Both stay. If they are one hive, say so on its page under “",
            SAME,
            "”; if they are two, give one another tag.",
        ]
        .concat()
    }

    /// A name that two yards have.
    pub fn yard(name: &str) -> String {
        [
            "Yard ",
            &quoted(name),
            ": another yard here has that name. Both stay. If they are one, move the hives into one of them first; then say on the page of each hive that is there twice that they are one. If not, rename one.",
        ]
        .concat()
    }

    /// After it.
    pub fn done(union: &str) -> String {
        ["Taken in: ", union, "."].concat()
    }
}
