//! What fields say about their text.

use crate::almanac::quantity::{TypedLength, TypedVolume, VolumeUnit};
use crate::almanac::typed::{self, TypedError};
use crate::app::bench::read;
use crate::app::edge::locale;
use crate::app::graph::RwSignal;
use crate::app::parts::field::Says;
use crate::app::state::Ui;
use crate::app::wording::{en, en_typed};

/// Digits and a point say themselves; anything else is answered with what was understood.
fn echo(text: &str, value: impl FnOnce() -> String) -> Says {
    let plain = text.trim().bytes().all(|b| b.is_ascii_digit() || b == b'.');
    if plain { Says::Nothing } else { Says::Echo(en::echo(&value())) }
}

/// A field that may not be empty.
fn wrong(error: TypedError) -> Says {
    Says::Wrong(en_typed::number(error))
}

/// A field that may be empty.
pub fn optional(says: Says, text: &str) -> Says {
    if text.trim().is_empty() { Says::Nothing } else { says }
}

/// A whole number.
pub fn count(text: RwSignal<String>, least: u32, most: u32) -> Says {
    text.with(|text| match typed::count(text, least, most) {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::count(error)),
    })
}

/// A share.
pub fn share(text: RwSignal<String>) -> Says {
    text.with(|text| match typed::share(text) {
        Ok(share) => {
            let said = text.trim().ends_with('%');
            if said { Says::Nothing } else { Says::Echo(en::echo(&locale::percent(share.fraction(), 1))) }
        }
        Err(error) => Says::Wrong(en_typed::share(error)),
    })
}

/// A volume; answered in the keeper's unit when it was typed in another.
pub fn volume(ui: Ui, text: RwSignal<String>, unit: RwSignal<String>) -> Says {
    text.with(|text| match unit.with(|unit| read::volume(text, unit)) {
        Ok(volume) => volume_echo(ui, text, volume),
        Err(error) => wrong(error),
    })
}

fn volume_echo(ui: Ui, text: &str, volume: TypedVolume) -> Says {
    let said = || ui.volume(volume.volume());
    let metric = |unit| matches!(unit, VolumeUnit::Millilitre | VolumeUnit::Litre);
    let shown = ui.prefs.get().volume;
    // Between millilitres and litres everyone converts without help.
    let same = volume.unit() == shown || metric(volume.unit()) && metric(shown);
    if same { echo(text, said) } else { Says::Echo(en::echo(&said())) }
}

/// A length; answered in the keeper's unit when it was typed in another.
pub fn length(ui: Ui, text: RwSignal<String>, unit: RwSignal<String>) -> Says {
    text.with(|text| match unit.with(|unit| read::length(text, unit)) {
        Ok(length) => length_echo(ui, text, length),
        Err(error) => wrong(error),
    })
}

fn length_echo(ui: Ui, text: &str, length: TypedLength) -> Says {
    let said = || ui.length(length.length());
    if length.unit() == ui.prefs.get().length { echo(text, said) } else { Says::Echo(en::echo(&said())) }
}

/// A price.
pub fn price(text: RwSignal<String>) -> Says {
    text.with(|text| match typed::price(text) {
        Ok(price) => echo(text, || locale::fixed(price.as_f64(), 2)),
        Err(error) => wrong(error),
    })
}

/// A number of 0 or more.
pub fn positive(text: RwSignal<String>) -> Says {
    text.with(|text| match read::positive(text) {
        Ok(number) => echo(text, || locale::number(number.as_f64(), 3)),
        Err(error) => wrong(error),
    })
}
