//! What fields say about their text, and the fields themselves by what is read from them.

use crate::almanac::quantity::{Decimal, Length, Share, TypedLength, TypedVolume, VolumeUnit};
use crate::almanac::typed::{self, TypedError};
use crate::app::bench::read;
use crate::app::edge::locale;
use crate::app::el::El;
use crate::app::graph::RwSignal;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::stepper::Stepper;
use crate::app::state::Ui;
use crate::app::wording::en_bench::yard::too_full;
use crate::app::wording::en_sums::{packs::FREE_PACK, spill::SIDE_ODD};
use crate::app::wording::{en, en_typed};

/// Sides longer than this are asked about: no hive in common use is longer inside along its frames (common practice, no
/// source).
const LONGEST_SIDE_MM: f64 = 500.0;

/// Filled higher than this share, a trap is cautioned about (our judgement).
pub const A_LOT: f64 = 0.6;

/// What stands in a field.
pub type Text = RwSignal<String>;

/// What the text of a field is read as.
#[derive(Clone, Copy)]
pub enum Reads {
    /// A whole number from the first to the second.
    Count(u32, u32),
    /// The same, with keys to step it.
    Steps(u32, u32),
    /// A whole number or a range of them, up to this.
    Counted(u32),
    /// A share.
    Share,
    /// A share, or a span of two.
    Shares,
    /// How full a trap is filled: a share, and a caution above three fifths.
    Fill,
    /// A volume in the unit beside it.
    Volume,
    /// A volume of more than 0.
    Holds,
    /// The same of a bottle, by the quart or gallon too.
    Bottle,
    /// A length of more than 0 in the unit beside it.
    Side,
    /// A temperature in the unit beside it.
    Warmth,
    /// A price.
    Price,
    /// The price of a pack: nothing is not free.
    Pack,
    /// A number of 0 or more.
    Positive,
    /// A number of more than 0.
    More,
    /// The same, up to this.
    Within(u32),
    /// A way in a yard, or a side of a hive, in one of these units.
    Way(&'static [&'static str]),
    /// The same of more than 0.
    Far(&'static [&'static str]),
    /// Frames, in parts too, up to so many.
    Frames(u32),
    /// Ground of more than 0.
    Area,
}

/// What is said about `text`, read with the unit in `unit` where it has one.
#[inline(never)]
pub fn said(ui: Ui, (text, unit): (Text, Text), reads: Reads) -> Says {
    match reads {
        Reads::Count(least, most) | Reads::Steps(least, most) => count(text, least, most),
        Reads::Counted(most) => counted(text, most),
        Reads::Share => share(text),
        Reads::Shares => shares(text),
        Reads::Fill => fill(text),
        Reads::Volume => volume(ui, (text, unit), read::volume),
        Reads::Holds | Reads::Bottle => volume(ui, (text, unit), read::holds),
        Reads::Side => side(ui, text, unit),
        Reads::Warmth => warmth(text, unit),
        Reads::Price => price(text),
        Reads::Pack => pack(text),
        Reads::Positive => positive(text, read::positive),
        Reads::More | Reads::Area => positive(text, read::more),
        Reads::Way(_) => way(text, unit, read::way),
        Reads::Far(_) => way(text, unit, read::far),
        Reads::Frames(most) => match text.with(|text| read::frames(text, most)) {
            Ok(_) => Says::Nothing,
            Err(error) => wrong(error),
        },
        Reads::Within(most) => within(text, most),
    }
}

/// A field, its unit chosen in `unit` where it has one. One that may stay empty says nothing about that.
#[inline(never)]
pub fn field(ui: Ui, id: &str, label: &str, at: (Text, Text), reads: Reads, may_be_empty: bool) -> Field {
    let in_percent;
    let label = match reads {
        Reads::Share | Reads::Shares | Reads::Fill => {
            in_percent = en::in_percent(label);
            &in_percent
        }
        _ => label,
    };
    let field = Field::new(id, label, at.0);
    let field = match reads {
        Reads::Share | Reads::Shares | Reads::Fill | Reads::Counted(_) => field,
        Reads::Count(..) | Reads::Steps(..) => field.whole(),
        Reads::Volume | Reads::Holds => field.decimal().volume(at.1),
        Reads::Bottle => field.decimal().bottle(at.1),
        Reads::Side => field.decimal().length(at.1),
        Reads::Warmth => field.units(&["C", "F"], at.1),
        Reads::Price | Reads::Pack | Reads::Positive | Reads::More | Reads::Within(_) | Reads::Frames(_) => {
            field.decimal()
        }
        Reads::Way(units) | Reads::Far(units) => field.decimal().units(units, at.1),
        Reads::Area => field.decimal().units(&["m2", "sq_ft"], at.1),
    };
    field.says(move || {
        let empty = may_be_empty && at.0.with(|text| text.trim().is_empty());
        if empty { Says::Nothing } else { said(ui, at, reads) }
    })
}

/// A whole number with keys to step it.
#[inline(never)]
pub fn stepper(id: &str, label: &str, text: Text, least: u32, most: u32) -> El {
    Stepper::new(id, label, text, least, most).says(move || count(text, least, most)).view()
}

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

/// A whole number, or a range.
fn counted(text: RwSignal<String>, most: u32) -> Says {
    text.with(|text| match typed::count_or_range(text, most) {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::count(error)),
    })
}

/// A share.
#[inline(never)]
pub fn share(text: RwSignal<String>) -> Says {
    text.with(|text| match typed::share(text) {
        Ok(_) if text.trim().ends_with('%') => Says::Nothing,
        Ok(share) => {
            let said = |share: Share| locale::percent(share.fraction(), 1);
            // 0.5 is half of it; who meant half a hundredth is told how to say so.
            match typed::share(&[text, "%"].concat()) {
                Ok(other) if other != share => Says::Echo(en::not_percent(&said(share), &said(other))),
                _ => Says::Echo(en::echo(&said(share))),
            }
        }
        Err(error) => Says::Wrong(en_typed::share(error)),
    })
}

/// A share, or a span of two.
fn shares(text: Text) -> Says {
    match text.with(|text| read::shares(text)) {
        Ok(_) if text.with(|text| typed::share(text)).is_ok() => share(text),
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::share(error)),
    }
}

/// How full a trap is filled, with a caution where it is a lot.
pub fn fill(text: Text) -> Says {
    let fill = text.with(|text| typed::share(text)).map(Share::fraction).unwrap_or_default();
    if fill > A_LOT { Says::Echo(too_full(&locale::percent(fill, 1))) } else { share(text) }
}

/// A volume; answered in the keeper's unit when it was typed in another.
pub fn volume(
    ui: Ui,
    (text, unit): (Text, Text),
    read: fn(&str, &str) -> Result<TypedVolume, TypedError>,
) -> Says {
    text.with(|text| match unit.with(|unit| read(text, unit)) {
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

/// A temperature.
fn warmth(text: Text, unit: Text) -> Says {
    match text.with(|text| unit.with(|unit| read::warmth(text, unit))) {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::warmth(error)),
    }
}

/// A length; answered in the keeper's unit when it was typed in another.
fn side(ui: Ui, text: Text, unit: Text) -> Says {
    text.with(|text| match unit.with(|unit| read::side(text, unit)) {
        Ok(side) if side.length().millimetres() > LONGEST_SIDE_MM => Says::Echo(SIDE_ODD.to_owned()),
        Ok(side) => length_echo(ui, text, side),
        Err(error) => wrong(error),
    })
}

fn length_echo(ui: Ui, text: &str, length: TypedLength) -> Says {
    let said = || ui.length(length.length());
    if length.unit() == ui.prefs.get().length { echo(text, said) } else { Says::Echo(en::echo(&said())) }
}

/// An amount of money, in whatever currency.
pub fn money(value: Decimal) -> String {
    locale::fixed(value.as_f64(), 2)
}

/// Money that may be as much as this: up to the next hundredth.
pub fn money_at_most(value: Decimal) -> String {
    locale::fixed((value.as_f64() * 100.0 - 1e-6).ceil() / 100.0, 2)
}

/// A price.
pub fn price(text: RwSignal<String>) -> Says {
    text.with(|text| match typed::price(text) {
        Ok(price) => echo(text, || locale::fixed(price.as_f64(), 2)),
        Err(error) => wrong(error),
    })
}

fn pack(text: RwSignal<String>) -> Says {
    if text.with(|text| typed::price(text)) == Ok(Decimal::ZERO) {
        return Says::Echo(FREE_PACK.to_owned());
    }
    price(text)
}

/// A number that `read` takes.
pub fn positive(text: RwSignal<String>, read: fn(&str) -> Result<Decimal, TypedError>) -> Says {
    text.with(|text| match read(text) {
        Ok(number) => echo(text, || locale::number(number.as_f64(), 3)),
        Err(error) => wrong(error),
    })
}

/// A number of more than 0, up to `most`.
fn within(text: RwSignal<String>, most: u32) -> Says {
    let over = text.with(|text| read::more(text)).is_ok_and(|number| number.as_f64() > f64::from(most));
    if over { wrong(TypedError::TooMany { most: Decimal::whole(most) }) } else { positive(text, read::more) }
}

/// A way; nothing is answered, since its unit stands beside it.
fn way(text: Text, unit: Text, read: fn(&str, &str) -> Result<Length, TypedError>) -> Says {
    match text.with(|text| unit.with(|unit| read(text, unit))) {
        Ok(_) => Says::Nothing,
        Err(error) => wrong(error),
    }
}
