//! What must hold for every value, not only for examples. Small domains are run through to the end, large ones drawn.

// The drawing of values wants the system's randomness, which the browser's target has not.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::expect_used, clippy::unwrap_used, clippy::panic)]
#![allow(missing_docs)]

mod baskets;
mod closing;
mod codes;
mod corrections;
mod counts;
mod days;
mod decisions;
mod files;
mod json;
mod levels;
mod names;
mod oil;
mod places;
mod quantities;
mod races;
mod refills;
mod seasons;
mod sightings;
mod stages;
#[path = "../support/mod.rs"]
mod support;
mod tables_in;
mod trials;
mod typing;

use beetle_almanac::almanac::quantity::{
    Decimal, Length, LengthUnit, Share, TypedLength, TypedVolume, Volume, VolumeUnit,
};
use beetle_almanac::almanac::trap::{Pack, TrapForm, TrapKind, TrapSize};
use proptest::collection::{btree_set, vec};
use proptest::prelude::*;
use proptest::sample::select;

fn millionths(value: i64) -> Decimal {
    Decimal::from_millionths(value).expect("within ±10⁹")
}

fn percent(value: u32) -> Share {
    Share::from_percent(Decimal::whole(value)).expect("0–100")
}

fn mm(value: f64) -> Length {
    Length::from_millimetres(value).expect("a length")
}

fn ml(value: f64) -> Volume {
    Volume::from_millilitres(value).expect("a volume")
}

/// Any decimal, long and short ones alike.
fn decimals() -> impl Strategy<Value = Decimal> {
    (-1_000_000_000_000_000..=1_000_000_000_000_000_i64, 0..=9_u32).prop_map(|(value, zeros)| {
        let step = 10_i64.pow(zeros);
        millionths(value / step * step)
    })
}

fn shares() -> impl Strategy<Value = Share> {
    prop_oneof![
        (0..=100_u32).prop_map(percent),
        (0..=100_000_000_i64).prop_map(|value| Share::from_percent(millionths(value)).expect("0–100"))
    ]
}

fn volumes() -> impl Strategy<Value = TypedVolume> {
    (0..=5_000_000_000_i64, select(&VolumeUnit::ALL[..]))
        .prop_map(|(number, unit)| TypedVolume::new(millionths(number), unit).expect("not negative"))
}

fn lengths() -> impl Strategy<Value = TypedLength> {
    (0..=5_000_000_000_i64, select(&LengthUnit::ALL[..]))
        .prop_map(|(number, unit)| TypedLength::new(millionths(number), unit).expect("not negative"))
}

fn sizes() -> impl Strategy<Value = TrapSize> {
    let side = || proptest::option::of(lengths());
    (side(), side(), side()).prop_map(|(length, width, depth)| TrapSize { length, width, depth })
}

/// Up to five measured points, rising strictly.
fn profiles() -> impl Strategy<Value = Vec<(Share, Share)>> {
    (0..=5_usize)
        .prop_flat_map(|points| (btree_set(1..100_u32, points), btree_set(1..100_u32, points)))
        .prop_map(|(levels, volumes)| {
            levels.into_iter().zip(volumes).map(|(l, v)| (percent(l), percent(v))).collect()
        })
}

fn packs() -> impl Strategy<Value = Vec<Pack>> {
    let price = proptest::option::of((0..=1_000_000_000_i64).prop_map(millionths));
    vec((1..=200_u32, price).prop_map(|(pieces, price)| Pack { pieces, price }), 0..4)
}

fn forms() -> impl Strategy<Value = TrapForm> {
    prop_oneof![
        Just(TrapForm::BetweenFrame),
        Just(TrapForm::FloorLure),
        (1..=2_u8, any::<bool>()).prop_map(|(wells, bait)| TrapForm::Lidded { wells, bait })
    ]
}

prop_compose! {
    fn kinds()(
        name in "\\PC{1,20}",
        form in forms(),
        reusable in any::<bool>(),
        capacity in proptest::option::of(volumes()),
        inner in sizes(),
        outer in sizes(),
        fill in shares(),
        max_days in TrapKind::MAX_DAYS,
        profile in profiles(),
        packs in packs(),
    ) -> TrapKind {
        TrapKind { name, form, reusable, capacity, inner, outer, fill, max_days, profile, packs }
    }
}

/// A kind that takes oil, holding `millilitres`.
fn oil_kinds() -> impl Strategy<Value = TrapKind> {
    (kinds(), 1..=100_u32).prop_map(|(kind, millilitres)| TrapKind {
        form: TrapForm::BetweenFrame,
        capacity: TypedVolume::new(Decimal::whole(millilitres), VolumeUnit::Millilitre).ok(),
        ..kind
    })
}
