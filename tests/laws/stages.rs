//! The stage model: temperatures, air and soil of a year, rates.

#![allow(clippy::float_cmp)] // what is compared for being equal went through the same sums

use beetle_almanac::almanac::climate::{Climate, DAYS, KNOWN, place, place_of};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::QuantityError;
use beetle_almanac::almanac::soil::{Shade, Soil, SoilKind};
use beetle_almanac::almanac::stage::{Edge, Outcome, Stage, Strength, Weather, days, rates};
use beetle_almanac::almanac::warmth::{Span, Swing, Warmth};
use proptest::prelude::*;
use proptest::sample::select;

const WARMED: [Stage; 3] = [Stage::Egg, Stage::Larva, Stage::Soil];

pub(super) fn celsius(value: f64) -> Warmth {
    Warmth::from_celsius(value).expect("a temperature")
}

pub(super) fn swing(middle: f64, reach: f64) -> Swing {
    Swing { low: celsius(middle - reach), high: celsius(middle + reach) }
}

pub(super) fn day(text: &str) -> Day {
    Day::parse(text).expect("a day")
}

/// The same weather every day: air and soil.
pub(super) fn constant(air: Span, soil: Span) -> Weather {
    Weather::of_days(vec![air; DAYS], vec![soil; DAYS])
}

pub(super) fn climates() -> impl Strategy<Value = Climate> {
    (-5.0..28.0_f64, 0.0..16.0_f64, 1.0..16.0_f64, 0..12_usize).prop_map(|(mean, wave, swing, coldest)| {
        let month = |number: usize, add: f64| {
            let turn = f64::from(u32::try_from(number + 12 - coldest).expect("a month")) / 12.0;
            celsius(mean - wave * (std::f64::consts::TAU * turn).cos() + add)
        };
        let months = |add: f64| std::array::from_fn(|number| month(number, add));
        Climate::new(months(swing / 2.0), months(-swing / 2.0)).expect("a climate")
    })
}

pub(super) fn strengths() -> impl Strategy<Value = Strength> {
    prop_oneof![
        Just(Strength::Unknown),
        Just(Strength::Strong),
        Just(Strength::Empty),
        (0.0..=1.0_f64).prop_map(Strength::Cover)
    ]
}

pub(super) fn weather_of(climate: &Climate) -> Weather {
    Weather::of(climate, &Soil::of(climate, SoilKind::Unknown, Shade::Part))
}

/// A date, or as late as can be.
pub(super) fn time(outcome: Outcome) -> f64 {
    outcome.map_or(f64::INFINITY, |when| when.time)
}

#[test]
fn degrees_come_back_and_what_is_no_temperature_is_refused() {
    for tenths in -600..=1000 {
        let warmth = celsius(f64::from(tenths) / 10.0);
        let back = Warmth::from_fahrenheit(warmth.fahrenheit()).or(Warmth::from_celsius(warmth.celsius()));
        assert!((back.expect("a temperature").celsius() - warmth.celsius()).abs() < 1e-9);
    }
    // Exact by definition: water freezes at 32 °F and boils at 212 °F.
    assert_eq!([0.0, 100.0].map(|c| celsius(c).fahrenheit()), [32.0, 212.0]);
    assert_eq!(Warmth::from_celsius(f64::NAN), Err(QuantityError::NotANumber));
    assert_eq!(Warmth::from_celsius(-60.1), Err(QuantityError::TooSmall));
    assert_eq!(Warmth::from_fahrenheit(212.1), Err(QuantityError::TooLarge));
}

/// Every day of two centuries.
#[test]
fn a_day_has_the_place_of_its_date_in_the_year() {
    let mut at = Day::FIRST;
    while at < day("2100-03-01") {
        let plain = Day::from_ymd(2001, at.month(), at.day_of_month()).unwrap_or_else(|_| day("2001-02-28"));
        let place_here = usize::try_from(plain.days_since(day("2001-01-01"))).expect("a place");
        assert_eq!((place(at), place_of(at.number())), (place_here, place_here), "{at:?}");
        at = at.plus(1);
    }
    while at < Day::LAST {
        assert!(place(at) < DAYS);
        at = at.plus(1);
    }
}

#[test]
fn a_month_whose_high_is_below_its_low_is_named() {
    let (low, high) = (celsius(3.0), celsius(9.0));
    for month in 0..12_usize {
        let mut highs = [high; 12];
        highs[month] = celsius(2.9);
        assert_eq!(Climate::new(highs, [low; 12]).err(), u32::try_from(month + 1).ok());
    }
    assert!(Climate::new([low; 12], [low; 12]).is_ok());
}

#[test]
fn the_air_keeps_the_means_of_months_within_a_third_of_a_degree_and_of_the_year_within_a_tenth() {
    let lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    for known in &KNOWN {
        let climate = known.climate();
        let (mut begun, mut year, mut wanted, mut worst) = (0, 0.0, 0.0, 0.0_f64);
        for (month, length) in climate.means().iter().zip(lengths) {
            let sum: f64 = (begun..begun + length).map(|place| climate.air(place).mean().celsius()).sum();
            begun += length;
            let days = f64::from(u32::try_from(length).expect("days"));
            worst = worst.max((sum / days - month.celsius()).abs());
            year += sum / 365.0;
            wanted += month.celsius() * days / 365.0;
        }
        println!("{}: months within {worst:.2} °C, the year within {:.3}", known.name, (year - wanted).abs());
        assert!(worst < 0.3, "{}: {worst}", known.name);
        assert!((year - wanted).abs() < 0.1, "{}: {year} and not {wanted}", known.name);
    }
}

/// A month that lies on the line between its neighbours needs no correction: its middle has its own mean. Any other is
/// moved by a quarter of how far it stands out from the middle of both.
#[test]
fn a_month_on_the_line_between_its_neighbours_keeps_its_mean_in_its_middle() {
    let highs = [4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 13.0, 10.0, 7.0, 4.0, 2.0];
    let climate = Climate::new(highs.map(celsius), highs.map(|high| celsius(high - 6.0))).expect("a climate");
    // Months whose middle is that of a day.
    for (month, middle, stands_out) in
        [(0, 15, 0.0), (2, 74, 0.0), (4, 135, 0.0), (6, 196, 2.5), (9, 288, 0.0)]
    {
        let air = climate.air(middle);
        let wanted = highs[month] + stands_out / 4.0;
        assert!((air.high.celsius() - wanted).abs() < 1e-9, "{month}: {air:?}");
        assert!((air.low.celsius() - wanted + 6.0).abs() < 1e-9, "{month}: {air:?}");
    }
}

/// Twelve monthly means do not tell the air of a day any closer.
#[test]
fn the_air_of_a_year_is_that_of_its_climate_give_or_take_two_degrees() {
    for known in &KNOWN {
        let climate = known.climate();
        let weather = weather_of(&climate);
        for place in 0..DAYS {
            assert_eq!(weather.air(place), Span::around(climate.air(place), 2.0));
        }
    }
}

/// Every tenth of a degree up to the heat in which the stage is quickest.
#[test]
fn warmer_is_never_later_up_to_the_heat_in_which_a_stage_is_quickest() {
    // The curve of the soil stage turns at 34.7 °C, a degree below the optimum that the lines are held at.
    for (stage, last) in [(Stage::Egg, 391), (Stage::Larva, 365), (Stage::Soil, 347)] {
        for edge in Edge::ALL {
            let mut before = f64::INFINITY;
            for tenths in -100..=last {
                let here = days(stage, celsius(f64::from(tenths) / 10.0), edge).unwrap_or(f64::INFINITY);
                assert!(here <= before + 1e-9, "{stage:?} {edge:?} at {tenths}: {here} after {before}");
                before = here;
            }
            assert!(before < 30.0);
        }
    }
}

proptest! {
    #[test]
    fn earliest_comes_before_likely_before_latest_whatever_the_day(
        stage in select(&WARMED[..]), middle in -20.0..50.0_f64, reach in 0.0..15.0_f64, give in 0.0..6.0_f64,
    ) {
        let [quick, likely, slow] = rates(stage, &Span::around(swing(middle, reach), give));
        prop_assert!(quick >= likely && likely >= slow && slow >= 0.0, "{quick} {likely} {slow}");
        // The egg at its optimum, by the faster set and the band.
        prop_assert!(quick < 1.32 / 0.8, "{quick}");
    }

    /// To the middle of the likely temperature nothing changes, however wide: the ends only move apart.
    #[test]
    fn a_wider_span_is_never_a_narrower_window(
        stage in select(&WARMED[..]), middle in 0.0..45.0_f64, give in 0.0..6.0_f64, more in 0.0..6.0_f64,
    ) {
        let [quick, likely, slow] = rates(stage, &Span::around(swing(middle, 0.0), give));
        let [quicker, same, slower] = rates(stage, &Span::around(swing(middle, 0.0), give + more));
        prop_assert!(quicker >= quick - 1e-12 && slower <= slow + 1e-12, "{quick} {quicker}, {slow} {slower}");
        prop_assert!((likely - same).abs() < 1e-15);
    }

    /// With a day and a night below the heat.
    #[test]
    fn a_wider_span_of_days_with_a_night_is_never_a_narrower_window(
        stage in select(&WARMED[..]), middle in 0.0..20.0_f64, reach in 0.0..8.0_f64,
        give in 0.0..3.0_f64, more in 0.0..3.0_f64,
    ) {
        let [quick, _, slow] = rates(stage, &Span::around(swing(middle, reach), give));
        let [quicker, _, slower] = rates(stage, &Span::around(swing(middle, reach), give + more));
        prop_assert!(quicker >= quick - 1e-12 && slower <= slow + 1e-12);
    }

}

proptest! {
    #[test]
    fn a_hive_is_between_its_nest_and_the_air(
        strength in strengths(), air in -20.0..45.0_f64, reach in 0.0..12.0_f64,
    ) {
        let outside = Span::around(swing(air, reach), 2.0);
        let span = strength.span(outside);
        let (low, high) = (outside.cool.low.celsius().min(34.0), outside.warm.high.celsius().max(35.0));
        for end in [span.cool, span.likely, span.warm] {
            prop_assert!(end.low.celsius() >= low - 1e-9 && end.high.celsius() <= high + 1e-9, "{end:?}");
        }
        prop_assert!(span.cool.mean() <= span.likely.mean() && span.likely.mean() <= span.warm.mean());
    }
}
