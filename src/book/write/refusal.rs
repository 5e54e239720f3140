//! Why something cannot be written.

use crate::almanac::day::Day;
use crate::book::entry::Ending;

/// Why something cannot be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// The day lies after today.
    Future {
        /// Today in the yard.
        today: Day,
    },
    /// The day lies before the hive came into the book.
    BeforeHive {
        /// The hive's first day.
        since: Day,
    },
    /// Another living hive of the yard carries this tag.
    TagTaken {
        /// A tag that is free.
        free: String,
    },
    /// The hive is dead, sold, joined or gone: revive it, or it is the wrong hive.
    Ended {
        /// How.
        how: Ending,
        /// When.
        on: Day,
    },
    /// The hive stands in that yard already.
    SameYard,
    /// The box, trap, hive or yard was not there on that day.
    NotThereYet,
    /// Demonstration and own records do not mix.
    Demonstration,
    /// More hives than a yard holds in this book.
    TooManyHives {
        /// The cap.
        most: usize,
    },
    /// No trap was in the hive on that day: there is nothing the work could have been done to.
    NoTraps {
        /// Traps its boxes are meant to carry.
        wanting: u32,
    },
    /// Every trap it is about is missing or glued shut: there is nothing to top up.
    NoneFishes,
    /// Two hives in two yards are not one.
    OtherYard,
    /// To be moved, but not where to.
    NoYard,
    /// A colony cannot be divided into itself, nor into one that it came from.
    SplitOfItself,
    /// A day or an hour lies before one that comes earlier, a month's mean low above its mean high, or a goal
    /// behind the limit.
    Backwards {
        /// The field of the blank.
        field: usize,
    },
    /// A field that must be there is empty.
    Lacks {
        /// The field of the blank.
        field: usize,
    },
    /// Nothing to do: no hive, no trap, no change.
    Nothing,
    /// Not in the book.
    Unknown,
}
