//! The temperatures of a yard for each day of a year, and what they make of the soil stage.

use super::Stage;
use super::rate::{Rates, rates};
use crate::almanac::climate::{Climate, DAYS};
use crate::almanac::soil::Soil;
use crate::almanac::warmth::Span;

/// How far the air of a day may be off what twelve monthly means make of it, in kelvin. Chosen here, no source; as much as
/// for soil without a probe.
pub const AIR: f64 = 2.0;

/// A year of a yard. What depends on the yard alone is worked out once: then a march through the soil is additions.
#[derive(Clone, Debug, PartialEq)]
pub struct Weather {
    air: Vec<Span>,
    soil: Vec<Span>,
    rates: Vec<Rates>,
}

impl Weather {
    /// The mean year of `climate` over this soil.
    pub fn of(climate: &Climate, soil: &Soil) -> Weather {
        let mut air = Vec::with_capacity(DAYS);
        let mut beds = Vec::with_capacity(DAYS);
        for place in 0..DAYS {
            air.push(Span::around(climate.air(place), AIR));
            beds.push(soil.span(place));
        }
        Weather::of_days(air, beds)
    }

    /// A year whose days are known: as many of the air as of the soil, 1 January first.
    pub fn of_days(air: Vec<Span>, soil: Vec<Span>) -> Weather {
        let mut sums = Vec::with_capacity(soil.len());
        for span in &soil {
            sums.push(rates(Stage::Soil, span));
        }
        Weather { air, soil, rates: sums }
    }

    /// The air at `place` of the year.
    pub fn air(&self, place: usize) -> Span {
        self.air.get(place).copied().unwrap_or_default()
    }

    /// The soil where larvae lie at `place` of the year.
    pub fn soil(&self, place: usize) -> Span {
        self.soil.get(place).copied().unwrap_or_default()
    }

    /// What that day does of the soil stage.
    pub fn soil_rates(&self, place: usize) -> Rates {
        self.rates.get(place).copied().unwrap_or_default()
    }
}
