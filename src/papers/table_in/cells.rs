//! A cell as a value.

use super::columns::plain;
use crate::almanac::day::Day;
use crate::almanac::quantity::Share;
use crate::almanac::stack::HiveSize;
use crate::almanac::typed::{self, TypedError};
use crate::book::entry::Did;

/// Whether the day or the month stands first in `03/04/2026`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Order {
    /// 3 April.
    DayFirst,
    /// 4 March.
    MonthFirst,
}

/// What a cell says of a day.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Written {
    /// A day, whoever reads it.
    Day(Day),
    /// Two numbers of which either may be the month, and the year.
    Numbers(u32, u32, i32),
    /// No day.
    No,
}

/// Longest cell that can be a day: a day, its time and its zone.
const DAY_MOST: usize = 40;

/// Reads `2026-07-14`, `2026/7/14`, `14/07/2026`, `14.7.2026`, `14 July 2026`, `July 14, 2026` or `14-Jul-26`; a time
/// of day behind it is left alone. Of two-figure years only those beside a month's name are read, and only where nothing
/// stands behind them: in `14 July 09:30` and `14 July 09.30` the hour is no year.
pub fn written(cell: &str) -> Written {
    if cell.len() > DAY_MOST {
        return Written::No;
    }
    let cell = typed_digits(cell);
    let mut numbers: Vec<(u32, usize)> = Vec::new();
    let mut month = None;
    let mut first_word = false;
    // Of "2026-07 14:30" neither the minutes nor the hour is of the day.
    let clock = cell.split_once(':');
    let mut more = clock.is_some();
    let day = clock
        .map_or(cell.as_str(), |(hour, _)| hour.trim_end().trim_end_matches(|c: char| c.is_ascii_digit()));
    for part in day.split(|c: char| !c.is_ascii_alphanumeric()).filter(|part| !part.is_empty()) {
        if numbers.len() + usize::from(month.is_some()) == 3 {
            more = true;
            break;
        }
        let part =
            part.split_once('T').map_or(part, |(day, _)| if number(day).is_some() { day } else { part });
        match (number(part), month_named(part)) {
            (Some(value), _) => numbers.push((value, part.len())),
            (None, Some(named)) if month.is_none() => {
                first_word = numbers.is_empty();
                month = Some(named);
            }
            _ => return Written::No,
        }
    }
    let whole = |year: (u32, usize)| match year {
        (year, 4) => i32::try_from(year).ok(),
        (year, 2) if !more => i32::try_from(2000 + year).ok(),
        _ => None,
    };
    let day = |year: Option<i32>, month, day: (u32, usize)| {
        let day = (day.1 <= 2).then_some(day.0);
        match year.zip(day).and_then(|(year, day)| Day::from_ymd(year, month, day).ok()) {
            Some(day) => Written::Day(day),
            None => Written::No,
        }
    };
    match (numbers.as_slice(), month) {
        // "2026 July 14"
        ([year @ (_, 4), date], Some(named)) if !first_word => day(whole(*year), named, *date),
        ([date, year], Some(named)) => day(whole(*year), named, *date),
        ([(year, 4), (month, 1..=2), date], None) => day(i32::try_from(*year).ok(), *month, *date),
        ([(one, 1..=2), (two, 1..=2), (year, 4)], None) => match i32::try_from(*year) {
            Ok(year) if one == two => day(Some(year), *one, (*two, 2)),
            Ok(year) => Written::Numbers(*one, *two, year),
            Err(_) => Written::No,
        },
        _ => Written::No,
    }
}

impl Written {
    /// The day, where the order of the column is known.
    pub fn day(self, order: Option<Order>) -> Option<Day> {
        let (day, month, year) = match (self, order?) {
            (Written::Numbers(one, two, year), Order::DayFirst) => (one, two, year),
            (Written::Numbers(one, two, year), Order::MonthFirst) => (two, one, year),
            _ => return self.sure(),
        };
        Day::from_ymd(year, month, day).ok()
    }

    /// The day, whoever reads it.
    fn sure(self) -> Option<Day> {
        match self {
            Written::Day(day) => Some(day),
            _ => None,
        }
    }
}

/// The order in which a column writes its days, where its own cells say it: one of them has a number above 12 in one of
/// the two places, and none in the other. The second answer: a cell needs the order.
pub fn order<'a>(cells: impl Iterator<Item = &'a str>) -> (Option<Order>, bool) {
    let (mut day_first, mut month_first, mut needed) = (false, false, false);
    for cell in cells {
        if let Written::Numbers(one, two, _) = written(cell) {
            needed = true;
            day_first |= one > 12 && two <= 12;
            month_first |= two > 12 && one <= 12;
        }
    }
    let order = match (day_first, month_first) {
        (true, false) => Some(Order::DayFirst),
        (false, true) => Some(Order::MonthFirst),
        _ => None,
    };
    (order, needed)
}

/// Digits of other scripts as ours.
fn typed_digits(cell: &str) -> String {
    let mut plain = String::new();
    for c in cell.chars() {
        let figure = |zero: u32| char::from_digit(u32::from(c).wrapping_sub(zero), 10);
        plain.push(figure(0x660).or(figure(0x6f0)).unwrap_or(c));
    }
    plain
}

fn number(part: &str) -> Option<u32> {
    if part.len() <= 4 && part.bytes().all(|b| b.is_ascii_digit()) { part.parse().ok() } else { None }
}

/// Months go by their first three letters; what follows must be of the name.
fn month_named(part: &str) -> Option<u32> {
    const MONTHS: [&str; 12] = [
        "january",
        "february",
        "march",
        "april",
        "may",
        "june",
        "july",
        "august",
        "september",
        "october",
        "november",
        "december",
    ];
    let part = part.to_ascii_lowercase();
    let fits = |name: &&str| {
        part == "sept" && name.starts_with("sept")
            || part.len() >= 3 && (part == **name || part.len() == 3 && name.starts_with(&part))
    };
    (1..).zip(MONTHS).find(|(_, name)| fits(name)).map(|(number, _)| number)
}

/// Words for what was done: this book's own, and those that say the same of a trap.
const DIDS: [(Did, &[&str]); 6] = [
    (
        Did::AsFound,
        &[
            "as found",
            "looked",
            "look",
            "checked",
            "check",
            "inspected",
            "inspection",
            "ok",
            "fine",
            "nothing",
        ],
    ),
    (
        Did::ToppedUp,
        &["topped up", "top up", "topped", "refilled", "refill", "filled", "oil added", "added oil"],
    ),
    (
        Did::Replaced,
        &[
            "replaced",
            "replace",
            "changed",
            "change",
            "new",
            "new trap",
            "swapped",
            "emptied",
            "emptied and filled",
        ],
    ),
    (Did::Spilled, &["spilled", "spilt", "spill", "oil spilled"]),
    (Did::Missing, &["missing", "lost", "gone", "not there"]),
    (Did::GluedShut, &["glued shut", "glued", "propolised", "propolis", "closed with propolis"]),
];

/// What a word says was done; an empty cell beside a day is a look. None for a word that is not known.
pub fn did(cell: &str) -> Option<Did> {
    let word = plain(cell);
    if word.is_empty() {
        return cell.trim().is_empty().then_some(Did::AsFound);
    }
    DIDS.iter().find(|(_, words)| words.contains(&word.as_str())).map(|(did, _)| *did)
}

/// Full hive or nuc. None for a word that is not known.
pub fn size(cell: &str) -> Option<HiveSize> {
    match plain(cell).as_str() {
        "full" | "full hive" | "hive" | "colony" => Some(HiveSize::Full),
        "nuc" | "nucleus" | "nuc hive" => Some(HiveSize::Nuc),
        _ => None,
    }
}

/// A level; none when the cell is empty. `per_cent`: the column is in per cent, though its cells do not say so.
///
/// # Errors
/// [`TypedError`].
pub fn level(cell: &str, per_cent: bool) -> Result<Option<Share>, TypedError> {
    let cell = cell.trim();
    let read = if per_cent && cell.ends_with(|c: char| c.is_ascii_digit()) {
        typed::share(&[cell, "%"].concat())
    } else {
        typed::share(cell)
    };
    match read {
        Ok(share) => Ok(Some(share)),
        Err(TypedError::Empty) => Ok(None),
        Err(error) => Err(error),
    }
}

/// A cell without the `'` that guards a text against being reckoned with.
pub fn unguarded(cell: &str) -> &str {
    match cell.strip_prefix('\'') {
        Some(rest) if rest.starts_with(['=', '+', '-', '@', '\t', '\r']) => rest,
        _ => cell,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Day {
        Day::parse(text).unwrap()
    }

    #[test]
    fn a_day_that_says_itself_needs_no_order() {
        for cell in [
            "2026-07-04",
            "2026/7/4",
            "2026-07-04T09:30:00Z",
            "2026-07-04 09:30",
            "4 July 2026",
            "July 4, 2026",
            "04-Jul-26",
            "Jul 4 2026",
            "2026 July 4",
            " ٢٠٢٦-٠٧-٠٤ ",
        ] {
            assert_eq!(written(cell), Written::Day(day("2026-07-04")), "{cell}");
        }
        assert_eq!(written("05/05/2026"), Written::Day(day("2026-05-05")));
        assert_eq!(written("1 Sept 2026"), Written::Day(day("2026-09-01")));
    }

    #[test]
    fn a_day_that_two_people_read_as_two_is_asked_about() {
        assert_eq!(written("03/04/2026"), Written::Numbers(3, 4, 2026));
        let read = |order| written("3.4.2026").day(Some(order));
        assert_eq!(read(Order::DayFirst), Some(day("2026-04-03")));
        assert_eq!(read(Order::MonthFirst), Some(day("2026-03-04")));
        assert_eq!(written("3.4.2026").day(None), None);
    }

    #[test]
    fn what_is_no_day_is_none() {
        for cell in [
            "",
            "31/02/26",
            "2026-02-30",
            "26-07-14",
            "14/07",
            "tomorrow",
            "14 Juli 2026",
            "1 2 3",
            "1899-12-31",
            "45852",
        ] {
            assert_eq!(written(cell), Written::No, "{cell}");
        }
        assert_eq!(written("31/02/2026").day(Some(Order::DayFirst)), None);
    }

    #[test]
    fn the_hour_of_a_visit_does_not_become_its_year() {
        for cell in [
            "14 July 09:30",
            "July 14 10:15",
            "26 Jul 14:00",
            "14-Jul 16:45",
            "14-Jul 16 : 45",
            "14 July 09.30",
            "2026 July 14:30",
            "2026-07 14:30",
        ] {
            assert_eq!(written(cell), Written::No, "{cell}");
        }
        for cell in ["14 July 2026 09:30", "2026-07-14 9:30:00 PM", "14.07.2026 09:30", "14-Jul-2026T16:45"] {
            let read = written(cell).day(Some(Order::DayFirst));
            assert_eq!(read, Some(day("2026-07-14")), "{cell}");
        }
    }

    #[test]
    fn a_column_tells_its_order_by_a_number_above_twelve() {
        let of = |cells: &[&'static str]| order(cells.iter().copied());
        assert_eq!(of(&["03/04/2026", "14/04/2026"]), (Some(Order::DayFirst), true));
        assert_eq!(of(&["03/04/2026", "04/14/2026"]), (Some(Order::MonthFirst), true));
        assert_eq!(of(&["03/04/2026", "4/5/2026"]), (None, true));
        assert_eq!(of(&["13/04/2026", "04/14/2026"]), (None, true));
        assert_eq!(of(&["2026-04-03", ""]), (None, false));
    }

    #[test]
    fn words_for_work_levels_and_sizes() {
        for (cell, wanted) in [
            ("topped_up", Did::ToppedUp),
            ("Topped up", Did::ToppedUp),
            ("", Did::AsFound),
            ("Glued-shut", Did::GluedShut),
        ] {
            assert_eq!(did(cell), Some(wanted), "{cell}");
        }
        assert_eq!((did("painted"), did("?")), (None, None));
        assert_eq!((size("Nuc"), size("barrel")), (Some(HiveSize::Nuc), None));
        assert_eq!(level("1", true).unwrap().map(Share::fraction), Some(0.01));
        assert_eq!((level("", true), level(" ½ ", true)), (Ok(None), Ok(Some(Share::HALF))));
        assert!(level("1", false).is_err());
        assert_eq!((unguarded("'=1"), unguarded("'tis")), ("=1", "'tis"));
    }
}
