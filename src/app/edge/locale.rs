//! Numbers as the phone's owner writes them. Dates and sentences are in `wording`.

use super::{intl, options};
use crate::almanac::quantity::{Length, LengthUnit, Volume, VolumeUnit};
use crate::app::wording::en;
use js_sys::{Array, Function, Reflect};
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
        let format: Function = Reflect::get(&made, &"format".into()).ok()?.dyn_into().ok()?;
        formats.push(((least, most), format.clone()));
        Some(format)
    })
}

fn written(value: f64, least: u8, most: u8) -> String {
    format(least, most)
        .and_then(|format| format.call1(&JsValue::UNDEFINED, &value.into()).ok())
        .and_then(|text| text.as_string())
        .or_else(|| js_sys::Number::from(value).to_fixed(most).ok().map(String::from))
        .unwrap_or_default()
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

/// Decimals that tell something in this unit: a millilitre is the finest step anyone pours.
fn volume_decimals(volume: Volume, unit: VolumeUnit) -> u8 {
    match unit {
        VolumeUnit::Millilitre if volume.millilitres() >= 100.0 => 0,
        VolumeUnit::Millilitre => 1,
        VolumeUnit::Litre => 3,
        VolumeUnit::UsFluidOunce | VolumeUnit::ImperialFluidOunce | VolumeUnit::UsTablespoon => 1,
        VolumeUnit::UsCup => 2,
    }
}

/// A volume in the unit the keeper reads, with its name.
pub fn volume(volume: Volume, unit: VolumeUnit) -> String {
    en::with_unit(&number(volume.in_unit(unit), volume_decimals(volume, unit)), en::volume_name(unit))
}

/// A volume to carry or buy: as [`volume`], but rounded up.
pub fn volume_up(carried: Volume, unit: VolumeUnit) -> String {
    let steps = 10f64.powi(i32::from(volume_decimals(carried, unit)));
    // The guard keeps 500.000 000 1 from becoming 501: float noise is nothing to carry.
    let up = (carried.in_unit(unit) * steps - 1e-6).ceil().max(0.0) / steps;
    en::with_unit(&number(up, volume_decimals(carried, unit)), en::volume_name(unit))
}

/// A length in the unit the keeper reads, with its name.
pub fn length(length: Length, unit: LengthUnit) -> String {
    let decimals = match unit {
        LengthUnit::Millimetre => 1,
        LengthUnit::Inch => 3,
    };
    en::with_unit(&number(length.in_unit(unit), decimals), en::length_name(unit))
}

/// A share of 0–1 as a percentage.
pub fn percent(fraction: f64, decimals: u8) -> String {
    en::with_unit(&number(fraction * 100.0, decimals), "%")
}
