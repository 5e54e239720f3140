//! Numbers and dates as the phone's owner writes them. Sentences are in `wording`.

use super::{function, intl, options};
use crate::almanac::day::Day;
use crate::almanac::figure;
use crate::almanac::quantity::{Length, LengthUnit, Volume, VolumeUnit};
use crate::app::prefs::WarmthUnit;
use crate::app::wording::en;
use js_sys::{Array, Function};
use std::cell::RefCell;
use wasm_bindgen::prelude::*;

thread_local! {
    /// One `format` function for each pair of fewest and most decimals: making one costs more than using it.
    static FORMATS: RefCell<Vec<((u8, u8), Function)>> = const { RefCell::new(Vec::new()) };
}

fn format(least: u8, most: u8) -> Option<Function> {
    FORMATS.with_borrow_mut(|formats| {
        if let Some((_, format)) = formats.iter().find(|(decimals, _)| *decimals == (least, most)) {
            return Some(format.clone());
        }
        let wanted =
            options(&[("minimumFractionDigits", least.into()), ("maximumFractionDigits", most.into())]);
        let made = intl("NumberFormat", &Array::of2(&JsValue::UNDEFINED, &wanted))?;
        let format = function(&made, "format")?;
        formats.push(((least, most), format.clone()));
        Some(format)
    })
}

fn written(value: f64, least: u8, most: u8) -> String {
    // What rounds to nothing has no sign: "-0" is no number anyone has seen.
    let value = if value.abs() * 10f64.powi(i32::from(most)) < 0.5 { 0.0 } else { value };
    format(least, most)
        .and_then(|format| format.call1(&JsValue::UNDEFINED, &value.into()).ok())
        .and_then(|text| text.as_string())
        .or_else(|| js_sys::Number::from(value).to_fixed(most).ok().map(String::from))
        .unwrap_or_default()
}

/// A day with its weekday, in the order the phone's owner writes dates: "Tue 14 July 2026", "Tue, July 14, 2026".
///
/// The words stay English, like the page: of the owner's languages the first English one decides, else British order.
pub fn date(day: Day) -> Option<String> {
    thread_local! {
        static FORMAT: RefCell<Option<Function>> = const { RefCell::new(None) };
    }
    FORMAT.with_borrow_mut(|kept| dated(day, kept, &[("month", "long".into()), ("year", "numeric".into())]))
}

/// As [`date`], without the year and with a short month: "Tue 14 Jul", "Tue, Jul 14". For days near today; never torn
/// apart at the end of a line.
pub fn near(day: Day) -> Option<String> {
    thread_local! {
        static FORMAT: RefCell<Option<Function>> = const { RefCell::new(None) };
        /// The days told last: the hives of a yard share a few due days, and a list tells them all at every save.
        static TOLD: RefCell<Vec<(Day, String)>> = const { RefCell::new(Vec::new()) };
    }
    const MOST: usize = 16;
    let known =
        TOLD.with_borrow(|told| told.iter().find(|(known, _)| *known == day).map(|told| told.1.clone()));
    known.or_else(|| {
        let near = FORMAT.with_borrow_mut(|kept| dated(day, kept, &[("month", "short".into())]))?;
        let near = near.replace(' ', "\u{a0}");
        TOLD.with_borrow_mut(|told| {
            told.truncate(MOST - 1);
            told.insert(0, (day, near.clone()));
        });
        Some(near)
    })
}

fn dated(day: Day, kept: &mut Option<Function>, more: &[(&str, JsValue)]) -> Option<String> {
    if kept.is_none() {
        let mut wanted =
            vec![("weekday", "short".into()), ("day", "numeric".into()), ("timeZone", "UTC".into())];
        wanted.extend_from_slice(more);
        let made = intl("DateTimeFormat", &Array::of2(&english().into(), &options(&wanted)))?;
        *kept = function(&made, "format");
    }
    // Noon in UTC, written in UTC: no zone or clock change comes near the day.
    let noon = f64::from(day.days_since(Day::FIRST)).mul_add(86_400_000.0, 946_728_000_000.0);
    kept.as_ref()?.call1(&JsValue::UNDEFINED, &noon.into()).ok()?.as_string()
}

fn english() -> String {
    let languages = super::window().map(|window| window.navigator().languages()).unwrap_or_default();
    let own = languages.iter().filter_map(|tag| tag.as_string()).find(|tag| tag.starts_with("en-"));
    own.unwrap_or_else(|| "en-GB".to_owned())
}

/// `value` with at most `decimals` decimals; zeros at the end are left out.
pub fn number(value: f64, decimals: u8) -> String {
    written(value, 0, decimals)
}

/// `value` with exactly `decimals` decimals, as prices are written.
pub fn fixed(value: f64, decimals: u8) -> String {
    written(value, decimals, decimals)
}

/// A whole number.
pub fn whole(value: u32) -> String {
    written(f64::from(value), 0, 0)
}

/// The unit and decimals that tell something: a millilitre is the finest step anyone pours, and from three litres
/// on nobody counts in millilitres.
fn shown(volume: Volume, unit: VolumeUnit) -> (VolumeUnit, u8) {
    match unit {
        VolumeUnit::Millilitre if volume.millilitres() >= 3000.0 => (VolumeUnit::Litre, 2),
        VolumeUnit::Millilitre if volume.millilitres() >= 100.0 => (unit, 0),
        VolumeUnit::Litre => (unit, 3),
        VolumeUnit::UsCup => (unit, 2),
        VolumeUnit::UsFluidOunce | VolumeUnit::ImperialFluidOunce | VolumeUnit::UsTablespoon
            if volume.in_unit(unit) < 10.0 =>
        {
            (unit, 2)
        }
        _ => (unit, 1),
    }
}

/// A volume in the unit the keeper reads, with its name.
pub fn volume(volume: Volume, unit: VolumeUnit) -> String {
    let (unit, decimals) = shown(volume, unit);
    en::with_unit(&number(volume.in_unit(unit), decimals), en::volume_name(unit))
}

/// A volume that a sum multiplies by `times` to `sum`: as [`volume`], with the decimals that the shown sum takes to hold
/// by hand; `up` when that is written by [`volume_up`].
pub fn volume_in_sum(each: Volume, times: f64, sum: Volume, unit: VolumeUnit, up: bool) -> String {
    let ((unit, least), (of, of_sum)) = (shown(each, unit), shown(sum, unit));
    let ratio = unit.millilitres() / of.millilitres();
    let decimals = figure::decimals(each.in_unit(unit), times * ratio, least, sum.in_unit(of), of_sum, up);
    en::with_unit(&number(each.in_unit(unit), decimals), en::volume_name(unit))
}

/// A volume to carry or buy: as [`volume`], but rounded up.
pub fn volume_up(carried: Volume, unit: VolumeUnit) -> String {
    let (unit, decimals) = shown(carried, unit);
    let steps = 10f64.powi(i32::from(decimals));
    // The guard keeps 500.000 000 1 from becoming 501: float noise is nothing to carry.
    let up = (carried.in_unit(unit) * steps - 1e-6).ceil().max(0.0) / steps;
    en::with_unit(&number(up, decimals), en::volume_name(unit))
}

/// A length in the unit the keeper reads, with its name.
pub fn length(length: Length, unit: LengthUnit) -> String {
    let decimals = match unit {
        LengthUnit::Millimetre => 1,
        LengthUnit::Inch => 2,
    };
    en::with_unit(&number(length.in_unit(unit), decimals), en::length_name(unit))
}

/// A temperature of so many °C as a number in the unit the keeper reads.
pub fn warmth_bare(celsius: f64, unit: WarmthUnit) -> String {
    number(degrees(celsius, unit), 1)
}

fn degrees(celsius: f64, unit: WarmthUnit) -> f64 {
    match unit {
        WarmthUnit::Celsius => celsius,
        WarmthUnit::Fahrenheit => celsius * 9.0 / 5.0 + 32.0,
    }
}

/// A temperature of so many °C in the unit the keeper reads, with its name.
pub fn warmth(celsius: f64, unit: WarmthUnit) -> String {
    en::with_unit(&warmth_bare(celsius, unit), en::warmth_name(unit))
}

/// So many kelvin between two temperatures in the unit the keeper reads, with its name.
pub fn warmer_by(kelvin: f64, unit: WarmthUnit) -> String {
    let shown = degrees(kelvin, unit) - degrees(0.0, unit);
    en::with_unit(&number(shown, 1), en::warmth_name(unit))
}

/// A share of 0–1 as a percentage.
pub fn percent(fraction: f64, decimals: u8) -> String {
    en::with_unit(&number(fraction * 100.0, decimals), "%")
}
