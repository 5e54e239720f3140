//! What a hive lets in and where beetles hide in it, by what was written down: field by field the newest record counts.

use super::aims::Aims;
use super::baited::{Baited, within};
use super::id::ThingId;
use super::newest::Newest;
use super::record::{Blank, Record};
use super::standing::Standing;
use crate::almanac::day::Day;
use crate::almanac::mesh::stops;
use crate::almanac::quantity::Length;

/// The records it goes by.
const BLANKS: [Blank; 6] =
    [Blank::Shell, Blank::Entrance, Blank::Cleaned, Blank::HiveFacts, Blank::Bait, Blank::Patty];

/// What is known of one part of a hive.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known<T> {
    /// As somebody saw it on that day.
    Seen(T, Day),
    /// Somebody was there on that day, wrote that he did not look, and nobody looked before.
    NotLooked(Day),
    /// Nobody wrote anything about it.
    NoData,
}

impl<T> Known<T> {
    /// What was seen, and when.
    pub fn seen(self) -> Option<(T, Day)> {
        if let Known::Seen(what, day) = self { Some((what, day)) } else { None }
    }
}

/// The ventilation notch of the inner cover.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Notch {
    /// There is none.
    Without,
    /// A screen is over it.
    Screened,
    /// Open to whatever walks in.
    Open,
}

/// The slick board above the floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Board {
    /// There is none.
    Without,
    /// Clean.
    Clean,
    /// Wax or propolis on it.
    Dirty,
}

/// How a hive is closed.
#[derive(Clone, Debug, PartialEq)]
pub struct Shell {
    /// Which hive.
    pub hive: ThingId,
    /// Width of its entrance.
    pub entrance: Option<(Length, Day)>,
    /// Its widest crack; of no width when there is none.
    pub crack: Option<(Length, Day)>,
    /// How long the cracks are altogether, millimetres; none where that was told of cracks that were closed since.
    pub crack_length: Option<f64>,
    /// Its notch.
    pub notch: Known<Notch>,
    /// Its slick board.
    pub board: Known<Board>,
    /// The day from which a clean board is to be cleaned again, by the keeper's own days.
    pub clean_by: Option<Day>,
    /// Empty space within it.
    pub empty_space: Known<bool>,
    /// Burr comb in it.
    pub burr_comb: Known<bool>,
    /// Bait and patties that are to be out.
    pub bait: Vec<Baited>,
}

impl Shell {
    /// A crack that beetles pass.
    pub fn gaps(&self) -> bool {
        self.crack.is_some_and(|(wide, _)| !stops(wide))
    }

    /// The notch is open.
    pub fn open_notch(&self) -> bool {
        matches!(self.notch, Known::Seen(Notch::Open, _))
    }

    /// The board is dirty, or was cleaned longer ago than the keeper wants.
    pub fn board_due(&self, today: Day) -> bool {
        matches!(self.board, Known::Seen(Board::Dirty, _)) || self.clean_by.is_some_and(|by| by <= today)
    }

    /// Whether somebody saw its cracks, its notch and its slick board.
    pub fn looked_at(&self) -> [bool; 3] {
        [self.crack.is_some(), self.notch.seen().is_some(), self.board.seen().is_some()]
    }

    /// Whether anybody ever wrote down how it is closed.
    pub fn told(&self) -> bool {
        self.entrance.is_some()
            || self.crack.is_some()
            || !matches!(
                (self.notch, self.board, self.empty_space, self.burr_comb),
                (Known::NoData, Known::NoData, Known::NoData, Known::NoData)
            )
    }
}

/// Of the hives of `yard` in care, in the order in which they are walked.
pub fn shells(standing: &Standing, yard: &ThingId, today: Day) -> Vec<Shell> {
    let aims = Aims::of(standing);
    let clean_every = clean_every(standing);
    let newest = Newest::of(standing, yard, &BLANKS, today);
    standing.hives_of(yard, true).map(|(id, _)| shell(&newest, id, &aims, clean_every, today)).collect()
}

/// Days after which the keeper wants slick boards cleaned; none as long as nothing is written down.
pub fn clean_every(standing: &Standing) -> Option<i32> {
    let (days, _) = standing.facts(Blank::Aims, None, None).number("clean_every")?;
    #[allow(clippy::cast_possible_truncation)] // from 1 to 366
    Some(days as i32)
}

fn shell(newest: &Newest, hive: &ThingId, aims: &Aims, clean_every: Option<i32>, today: Day) -> Shell {
    let field = |read: &dyn Fn(&Record) -> Option<f64>| {
        let mut told = newest.each(hive, Blank::Shell);
        told.find_map(|(day, now)| Some((read(&now.record)?, day)))
    };
    let long = |(mm, day)| Some((Length::from_millimetres(mm).ok()?, day));
    let entrance = newest
        .each(hive, Blank::Entrance)
        .find_map(|(day, now)| Some((millimetres(&now.record, "width", 1.0)?, day)));
    let (notch, board) = (word(newest, hive, "notch", notch), word(newest, hive, "slick_board", board));
    // How it is built stands where nobody looked since; board and cleaning of one day: it was cleaned after the look.
    let facts = newest.first(hive, Blank::HiveFacts);
    let built = |name: &str, word: &str| {
        facts.filter(|(_, record)| record.word(name) == Some(word)).map(|(day, _)| day)
    };
    let notch = later(notch, built("notch_screen", "yes"), Notch::Screened, 1);
    let board = later(board, built("slick_board", "no"), Board::Without, 1);
    // A board that was put in since somebody missed it is a new one.
    let board = match (board, built("slick_board", "yes")) {
        (Known::Seen(Board::Without, since), Some(put_in)) if put_in > since => {
            Known::Seen(Board::Clean, put_in)
        }
        _ => board,
    };
    let mut cleaned = newest.each(hive, Blank::Cleaned);
    let cleaned = cleaned.find(|(_, now)| now.record.chosen("what", "slick_board"));
    let board = later(board, cleaned.map(|(day, _)| day), Board::Clean, 0);
    let clean_by = match (board, clean_every) {
        (Known::Seen(Board::Clean, since), Some(every)) => Some(since.plus(every)),
        _ => None,
    };
    let mut bait = within(aims, &|blank| newest.first(hive, blank));
    bait.retain(|bait| bait.off.on <= today);
    Shell {
        hive: hive.clone(),
        entrance: entrance.and_then(long),
        crack: field(&|record| millimetres(record, "crack", 1.0)).and_then(long),
        crack_length: crack_length(newest, hive),
        notch,
        board,
        clean_by,
        empty_space: word(newest, hive, "empty_space", no_yes),
        burr_comb: word(newest, hive, "burr_comb", no_yes),
        bait,
    }
}

/// How long the cracks of a hive are: by the newest record that says so, unless one since found none that beetles pass.
/// Those were closed, and what opened later nobody measured.
fn crack_length(newest: &Newest, hive: &ThingId) -> Option<f64> {
    for (_, now) in newest.each(hive, Blank::Shell) {
        let wide = millimetres(&now.record, "crack", 1.0).and_then(|mm| Length::from_millimetres(mm).ok());
        let long = millimetres(&now.record, "crack_length", 10.0);
        if long.is_some() || wide.is_some_and(stops) {
            return long;
        }
    }
    None
}

/// The number in a field that is metric or in inches; `metric` is its first unit in millimetres.
pub fn millimetres(record: &Record, name: &str, metric: f64) -> Option<f64> {
    let (number, unit) = record.number(name)?;
    Some(number * if unit == 0 { metric } else { 25.4 })
}

/// What the newest look that looked tells of a part.
fn word<T>(newest: &Newest, hive: &ThingId, name: &str, read: fn(&str) -> Option<T>) -> Known<T> {
    let mut shut = Known::NoData;
    for (day, now) in newest.each(hive, Blank::Shell) {
        let Some(word) = now.record.word(name) else { continue };
        match read(word) {
            Some(what) => return Known::Seen(what, day),
            None if matches!(shut, Known::NoData) => shut = Known::NotLooked(day),
            None => {}
        }
    }
    shut
}

/// `known`, or `what` where that is told of a day that comes at least so many days later, or nothing was seen.
fn later<T>(known: Known<T>, on: Option<Day>, what: T, days: i32) -> Known<T> {
    match (known, on) {
        (Known::Seen(seen, day), Some(on)) if on.days_since(day) < days => Known::Seen(seen, day),
        (_, Some(on)) => Known::Seen(what, on),
        (known, None) => known,
    }
}

fn notch(word: &str) -> Option<Notch> {
    match word {
        "none" => Some(Notch::Without),
        "screened" => Some(Notch::Screened),
        "open" => Some(Notch::Open),
        _ => None,
    }
}

fn board(word: &str) -> Option<Board> {
    match word {
        "none" => Some(Board::Without),
        "clean" => Some(Board::Clean),
        "dirty" => Some(Board::Dirty),
        _ => None,
    }
}

fn no_yes(word: &str) -> Option<bool> {
    match word {
        "no" => Some(false),
        "yes" => Some(true),
        _ => None,
    }
}
