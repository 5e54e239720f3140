//! The air through a year, from twelve monthly mean highs and lows.

use super::day::Day;
use super::warmth::{Swing, Warmth};

/// Days in the year of a climate: 29 February has the temperatures of the day before it.
pub const DAYS: usize = 365;

/// Days of the months.
pub(super) const LENGTHS: [f64; 12] =
    [31.0, 28.0, 31.0, 30.0, 31.0, 30.0, 31.0, 31.0, 30.0, 31.0, 30.0, 31.0];

/// Middles of the months, in days after the year began.
pub(super) const MIDDLES: [f64; 12] =
    [15.5, 45.0, 74.5, 105.0, 135.5, 166.0, 196.5, 227.5, 258.0, 288.5, 319.0, 349.5];

/// Twelve monthly means of the day's highs and lows, January first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Climate {
    highs: [Warmth; 12],
    lows: [Warmth; 12],
}

impl Climate {
    /// # Errors
    /// The first month (1–12) whose mean high lies below its mean low.
    pub fn new(highs: [Warmth; 12], lows: [Warmth; 12]) -> Result<Climate, u32> {
        for (month, (high, low)) in (1..).zip(highs.iter().zip(&lows)) {
            if high < low {
                return Err(month);
            }
        }
        Ok(Climate { highs, lows })
    }

    /// Mean highs by month.
    pub fn highs(&self) -> &[Warmth; 12] {
        &self.highs
    }

    /// Mean lows by month.
    pub fn lows(&self) -> &[Warmth; 12] {
        &self.lows
    }

    /// The same climate, `kelvin` warmer the whole year.
    #[must_use]
    pub fn warmer(&self, kelvin: f64) -> Climate {
        let warmer = |months: &[Warmth; 12]| months.map(|month| month.warmer(kelvin));
        Climate { highs: warmer(&self.highs), lows: warmer(&self.lows) }
    }

    /// The mean day at `place` of the year (0 is 1 January): straight lines from the middle of a month to the middle of
    /// the next, the year round.
    ///
    /// A line cuts the corner, so a month would come out flatter than its mean by an eighth of how far it stands out
    /// from both neighbours together. That is added in its middle beforehand; what is left is 0.3 of a degree at
    /// the most in the climates that are known here.
    pub fn air(&self, place: usize) -> Swing {
        // A day lasts until the next begins: its own middle counts.
        let at = real(place % DAYS) + 0.5;
        let after = MIDDLES.iter().position(|middle| at < *middle).unwrap_or(0);
        let before = (after + 11) % 12;
        let year = real(DAYS);
        let gap = (at_of(&MIDDLES, after) - at_of(&MIDDLES, before) + year) % year;
        let gone = (at - at_of(&MIDDLES, before) + year) % year;
        self.corner(before).towards(self.corner(after), gone / gap)
    }

    fn corner(&self, month: usize) -> Swing {
        let neighbours = self.month((month + 11) % 12).towards(self.month((month + 1) % 12), 0.5);
        neighbours.towards(self.month(month), 1.25)
    }

    fn month(&self, month: usize) -> Swing {
        let at = |months: &[Warmth; 12]| months.get(month).copied().unwrap_or_default();
        Swing { low: at(&self.lows), high: at(&self.highs) }
    }

    /// Means of the months: the middle of high and low.
    pub fn means(&self) -> [Warmth; 12] {
        std::array::from_fn(|month| self.month(month).mean())
    }
}

fn at_of(numbers: &[f64; 12], at: usize) -> f64 {
    numbers.get(at).copied().unwrap_or_default()
}

/// A place in the year as a number. All of them are below 2³².
pub(crate) fn real(place: usize) -> f64 {
    f64::from(u32::try_from(place).unwrap_or(u32::MAX))
}

/// Where `day` (days after 2000-01-01, as [`Day::number`]) lies in the year of a climate, 0–364.
///
/// Every fourth year is taken as a leap year; from March 2100 on that is the day beside it.
pub fn place_of(day: i32) -> usize {
    let cycle = day.rem_euclid(1461);
    let place = if cycle > 58 && cycle < 366 {
        cycle - 1
    } else if cycle < 366 {
        cycle
    } else {
        (cycle - 366) % 365
    };
    usize::try_from(place).unwrap_or_default()
}

/// Where `day` lies in the year of a climate, 0–364.
pub fn place(day: Day) -> usize {
    place_of(day.number())
}

/// Monthly means of a place that anybody may use.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct KnownClimate {
    /// Where.
    pub name: &'static str,
    /// Whose figures these are, and of what.
    pub source: &'static str,
    /// Mean of the day's highs by month, °C.
    pub highs: [f64; 12],
    /// Mean of the day's lows by month, °C.
    pub lows: [f64; 12],
}

impl KnownClimate {
    /// As a climate.
    pub fn climate(&self) -> Climate {
        Climate { highs: self.highs.map(Warmth::held), lows: self.lows.map(Warmth::held) }
    }
}

/// Public-domain weather years: each month is that of a real year that was typical for the place.
pub const KNOWN: [KnownClimate; 3] = [
    KnownClimate {
        name: "Greensboro, North Carolina",
        source: "National Renewable Energy Laboratory, TMY3 year of station 723170",
        highs: [5.27, 9.85, 16.96, 20.98, 24.70, 28.99, 30.75, 29.63, 24.92, 18.71, 17.09, 10.17],
        lows: [-4.27, -0.08, 5.79, 7.82, 13.39, 18.97, 20.75, 20.11, 15.70, 7.80, 4.94, -1.35],
    },
    KnownClimate {
        name: "Miami, Florida",
        source: "National Renewable Energy Laboratory, TMY2 year of station 12839",
        highs: [24.28, 24.35, 25.15, 27.86, 29.24, 30.65, 31.03, 30.72, 30.44, 28.11, 26.43, 24.43],
        lows: [15.76, 17.11, 17.88, 21.10, 22.81, 24.59, 25.15, 25.35, 23.97, 22.30, 19.98, 16.55],
    },
    KnownClimate {
        name: "Sand Point, Alaska",
        source: "National Renewable Energy Laboratory, TMY3 year of station 703165",
        highs: [2.36, 2.75, 3.49, 4.44, 4.97, 10.32, 14.03, 13.59, 9.71, 6.06, 1.94, 0.84],
        lows: [-1.12, -0.58, 0.12, -0.05, 1.45, 5.88, 9.53, 10.26, 6.06, 2.81, -1.06, -2.29],
    },
];
