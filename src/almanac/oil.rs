//! Oil for a visit, and what bodies in the oil hide.
//!
//! Things to carry round up.

use super::level::level_of;
use super::quantity::{Share, Volume, VolumeUnit};
use super::tally::CountRange;
use super::trap::TrapKind;

/// Reserve for spills and for one hive more when the keeper has not said otherwise: a quarter (judgement, no source).
pub const USUAL_RESERVE: Share = Share::QUARTER;

/// What is carried is a multiple of this where the keeper reads metric units, in millilitres; else of so many fluid
/// ounces, which are nearly as much.
const CARRY_STEP_ML: f64 = 50.0;
const CARRY_STEP_OUNCES: f64 = 2.0;

/// Volume of one body in millilitres: 12.5 mg at density 1, and the ellipsoid around it. Derived, not measured in oil.
const BODY_ML: (f64, f64) = (0.013, 0.026);

/// Above this many bodies the level reading flatters the oil.
const MANY_BODIES: u32 = 50;

/// What is done to a trap.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Service {
    /// Filled while empty: new, or emptied first.
    Fill,
    /// The first fill of a trap that is still to be put in.
    First,
    /// Topped up.
    TopUp {
        /// The level found.
        from: Share,
    },
}

impl Service {
    fn from(self) -> Share {
        match self {
            Service::Fill | Service::First => Share::NONE,
            Service::TopUp { from } => from,
        }
    }
}

/// Traps of one kind that get the same service.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OilNeed<'a> {
    /// The kind of trap.
    pub kind: &'a TrapKind,
    /// How many.
    pub traps: u32,
    /// What is done to them.
    pub service: Service,
    /// The level to leave, as a share of the depth.
    pub target: Share,
}

/// One line of the sum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OilLine {
    /// Traps.
    pub traps: u32,
    /// Oil for each: `capacity` × (`filled_to` − `filled_from`), not below 0.
    pub each: Volume,
    /// Oil for all of them.
    pub sum: Volume,
    /// What is done to them.
    pub service: Service,
    /// Such a trap is used again; otherwise it is thrown away when it is full.
    pub reusable: bool,
    /// What one trap holds when brim-full; none for a kind without oil.
    pub capacity: Volume,
    /// Share of the capacity that is in the trap already, 0–1.
    pub filled_from: f64,
    /// Share of the capacity that will be in it, 0–1.
    pub filled_to: f64,
}

/// Oil to carry, with the sum it came from.
#[derive(Clone, Debug, PartialEq)]
pub struct OilForVisit {
    /// One line for each need whose capacity is known.
    pub lines: Vec<OilLine>,
    /// Sum of the lines.
    pub sum: Volume,
    /// Reserve on top.
    pub reserve: Share,
    /// Sum and reserve, not rounded.
    pub with_reserve: Volume,
    /// Traps left out because nobody has measured their capacity.
    pub unknown: u32,
}

/// Oil for the services in `needs`, with `reserve` on top.
pub fn oil_for_visit(needs: &[OilNeed<'_>], reserve: Share) -> OilForVisit {
    let mut lines = Vec::with_capacity(needs.len());
    let mut unknown: u32 = 0;
    for need in needs {
        let from = need.service.from();
        let Some(each) = need.kind.oil(from, need.target) else {
            unknown = unknown.saturating_add(need.traps);
            continue;
        };
        lines.push(OilLine {
            traps: need.traps,
            each,
            sum: each.times(f64::from(need.traps)),
            service: need.service,
            reusable: need.kind.reusable,
            capacity: oil_capacity(need.kind).unwrap_or_default(),
            filled_from: need.kind.filled(from),
            filled_to: need.kind.filled(need.target),
        });
    }
    let sum = lines.iter().fold(Volume::ZERO, |sum, line| sum.plus(line.sum));
    let with_reserve = sum.times(1.0 + reserve.fraction());
    OilForVisit { lines, sum, reserve, with_reserve, unknown }
}

/// The step in which a volume to carry is rounded up for a keeper who reads `unit`: 50 mL, or 2 fluid ounces, US or
/// imperial, which are a quarter of a US cup and 4 US tablespoons.
pub fn carry_step(unit: VolumeUnit) -> Volume {
    let ml = match unit {
        VolumeUnit::Millilitre | VolumeUnit::Litre => CARRY_STEP_ML,
        VolumeUnit::ImperialFluidOunce => unit.millilitres() * CARRY_STEP_OUNCES,
        _ => VolumeUnit::UsFluidOunce.millilitres() * CARRY_STEP_OUNCES,
    };
    Volume::from_millilitres(ml).unwrap_or_default()
}

/// What is carried of `oil`: up to the next step of the unit the keeper reads.
pub fn carried(oil: Volume, unit: VolumeUnit) -> Volume {
    round_up(oil, carry_step(unit).millilitres())
}

/// Bottles of `bottle` that hold `carried`; none for a bottle of nothing.
pub fn bottles(carried: Volume, bottle: Volume) -> Option<u32> {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    // a float cast stops at the ends of u32
    let count = steps_up(carried.millilitres() / bottle.millilitres()) as u32;
    (bottle > Volume::ZERO).then_some(count)
}

/// `volume` up to the next multiple of `step_ml` millilitres; unchanged when the step is not above 0.
pub fn round_up(volume: Volume, step_ml: f64) -> Volume {
    if step_ml > 0.0 {
        Volume::from_millilitres(steps_up(volume.millilitres() / step_ml) * step_ml).unwrap_or(volume)
    } else {
        volume
    }
}

/// The next whole number, except that a sum which is whole but for the noise of its additions stays where it is.
fn steps_up(steps: f64) -> f64 {
    let nearest = steps.round();
    if (steps - nearest).abs() <= 1e-9 * nearest.max(1.0) { nearest } else { steps.ceil() }
}

/// What a kind of trap holds, when it takes oil and somebody has measured it.
fn oil_capacity(kind: &TrapKind) -> Option<Volume> {
    if kind.form.takes_oil() { Some(kind.capacity?.volume()) } else { None }
}

/// Volume of a number of bodies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BodyVolume {
    /// The fewest bodies, at 0.013 mL each.
    pub low: Volume,
    /// The most bodies, at 0.026 mL each; none when nobody knows how many there are at most.
    pub high: Option<Volume>,
}

/// Volume that `bodies` take up in the oil: 0.013–0.026 mL each (derived from a body of 12.5 mg, not measured in oil).
pub fn bodies_volume(bodies: CountRange) -> BodyVolume {
    let volume =
        |each: f64, count: u32| Volume::from_millilitres(each * f64::from(count)).unwrap_or_default();
    BodyVolume {
        low: volume(BODY_ML.0, bodies.low()),
        high: bodies.high().map(|high| volume(BODY_ML.1, high)),
    }
}

/// Bodies that go into `free` when each is as large as a body can be: the cautious count.
pub fn bodies_that_fit(free: Volume) -> u32 {
    let bodies = free.millilitres() / BODY_ML.1;
    // 0.39 ÷ 0.026 is 15 and a rounding short of it.
    let nearest = bodies.round();
    let whole = if (bodies - nearest).abs() <= 1e-9 * nearest.max(1.0) { nearest } else { bodies.floor() };
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    // a float cast stops at the ends of u32
    let count = whole as u32;
    count
}

/// So many bodies that a level reading flatters the oil: more than 50, or "50 and more".
pub fn level_flatters(bodies: CountRange) -> bool {
    bodies.low() > MANY_BODIES || bodies.low() == MANY_BODIES && !bodies.is_exact()
}

/// The level that would remain without the bodies, as a share of the depth 0–1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TrueLevel {
    /// With the most bodies; 0 when nobody knows how many there are at most.
    pub low: f64,
    /// With the fewest bodies.
    pub high: f64,
}

/// The level that `level` would be without `bodies`, over the kind's own walls. None without a measured capacity, or
/// for a kind without oil.
pub fn level_without_bodies(level: Share, bodies: CountRange, kind: &TrapKind) -> Option<TrueLevel> {
    let capacity = oil_capacity(kind).filter(|capacity| *capacity > Volume::ZERO)?.millilitres();
    let volume = bodies_volume(bodies);
    let without = |hidden: Volume| level_of(kind, kind.filled(level) - hidden.millilitres() / capacity);
    Some(TrueLevel { low: volume.high.map_or(0.0, without), high: without(volume.low) })
}

#[cfg(test)]
mod tests {
    use super::{
        OilNeed, Service, USUAL_RESERVE, bodies_volume, bottles, carried, carry_step, level_flatters,
        level_without_bodies, oil_for_visit, round_up,
    };
    use crate::almanac::quantity::{Decimal, Share, TypedVolume, Volume, VolumeUnit};
    use crate::almanac::tally::CountRange;
    use crate::almanac::trap::{TrapForm, TrapKind, TrapSize};

    fn percent(value: u32) -> Share {
        Share::from_percent(Decimal::whole(value)).unwrap_or_default()
    }

    fn kind(millilitres: Option<u32>) -> TrapKind {
        TrapKind {
            name: "slot trap".into(),
            form: TrapForm::BetweenFrame,
            reusable: false,
            capacity: millilitres
                .and_then(|ml| TypedVolume::new(Decimal::whole(ml), VolumeUnit::Millilitre).ok()),
            inner: TrapSize::default(),
            outer: TrapSize::default(),
            fill: Share::HALF,
            max_days: 14,
            profile: Vec::new(),
            packs: Vec::new(),
        }
    }

    fn ml(value: f64) -> Volume {
        Volume::from_millilitres(value).unwrap_or_default()
    }

    #[test]
    fn twenty_four_hives_of_three_boxes_take_1800_ml_and_not_1850() {
        let kind = kind(Some(20));
        let need = OilNeed { kind: &kind, traps: 24 * 3 * 2, service: Service::Fill, target: Share::HALF };
        let oil = oil_for_visit(&[need], USUAL_RESERVE);
        let carry = carried(oil.with_reserve, VolumeUnit::Millilitre);
        assert_eq!((oil.sum, carry, oil.unknown), (ml(1440.0), ml(1800.0), 0));
        assert_eq!(bottles(carry, ml(500.0)), Some(4));
    }

    #[test]
    fn a_top_up_of_44_traps_takes_150_ml() {
        let kind = kind(Some(18));
        let need = OilNeed {
            kind: &kind,
            traps: 44,
            service: Service::TopUp { from: percent(35) },
            target: Share::HALF,
        };
        let oil = oil_for_visit(&[need], USUAL_RESERVE);
        assert!((oil.sum.millilitres() - 118.8).abs() < 1e-9);
        assert_eq!(carried(oil.with_reserve, VolumeUnit::Litre), ml(150.0));
    }

    /// 148.5 mL are 5.02 US fluid ounces (of 29.573 529 562 5 mL, NIST Handbook 44), 5.23 imperial ones (of
    /// 28.413 062 5 mL), 0.63 US cups of 8 ounces, 10.04 US tablespoons of half an ounce.
    #[test]
    fn what_is_carried_is_round_in_the_unit_the_keeper_reads() {
        use VolumeUnit::{ImperialFluidOunce, Litre, Millilitre, UsCup, UsFluidOunce, UsTablespoon};
        let round = [
            (Millilitre, 150.0, 50.0),
            (Litre, 0.15, 0.05),
            (UsFluidOunce, 6.0, 2.0),
            (ImperialFluidOunce, 6.0, 2.0),
            (UsCup, 0.75, 0.25),
            (UsTablespoon, 12.0, 4.0),
        ];
        for (unit, amount, step) in round {
            let shown = carried(ml(148.5), unit).in_unit(unit);
            assert!((shown - amount).abs() < 1e-9, "{unit:?}: {shown}");
            assert!((carry_step(unit).in_unit(unit) - step).abs() < 1e-9);
            assert_eq!(carried(carried(ml(148.5), unit), unit), carried(ml(148.5), unit));
        }
    }

    #[test]
    fn bottles_hold_what_is_carried_and_noise_fills_none() {
        assert_eq!(bottles(ml(1800.0), ml(600.0)), Some(3));
        assert_eq!(bottles(ml(1_800.000_000_000_1), ml(600.0)), Some(3));
        assert_eq!(bottles(ml(1850.0), ml(600.0)), Some(4));
        assert_eq!(bottles(ml(1850.0), Volume::ZERO), None);
    }

    #[test]
    fn noise_in_the_sum_does_not_cost_a_bottle_and_a_drop_too_much_does() {
        assert_eq!(round_up(ml(1_800.000_000_000_2), 50.0), ml(1800.0));
        assert_eq!(round_up(ml(1800.001), 50.0), ml(1850.0));
        assert_eq!(round_up(Volume::ZERO, 50.0), Volume::ZERO);
        assert_eq!(round_up(ml(3.0), 0.0), ml(3.0));
        let tenths = (0..1000).fold(Volume::ZERO, |sum, _| sum.plus(ml(0.1)));
        assert_eq!(round_up(tenths, 50.0), ml(100.0));
    }

    #[test]
    fn unmeasured_traps_are_counted_apart_and_lures_take_no_oil() {
        let (unmeasured, mut lure) = (kind(None), kind(None));
        lure.form = TrapForm::FloorLure;
        let fill = |kind, traps| OilNeed { kind, traps, service: Service::Fill, target: Share::HALF };
        let oil = oil_for_visit(&[fill(&unmeasured, 7), fill(&lure, 3)], USUAL_RESERVE);
        assert_eq!((oil.unknown, oil.lines.len(), oil.with_reserve), (7, 1, Volume::ZERO));
        assert_eq!(carried(Volume::ZERO, VolumeUnit::Millilitre), Volume::ZERO);
    }

    #[test]
    fn a_level_above_the_target_takes_nothing_out() {
        let kind = kind(Some(20));
        let need = OilNeed {
            kind: &kind,
            traps: 2,
            service: Service::TopUp { from: percent(60) },
            target: Share::HALF,
        };
        assert_eq!(oil_for_visit(&[need], USUAL_RESERVE).sum, Volume::ZERO);
    }

    #[test]
    fn a_hundred_bodies_hide_between_1_3_and_2_6_ml() {
        let hidden = bodies_volume(CountRange::exact(100));
        assert_eq!((hidden.low, hidden.high), (ml(1.3), Some(ml(2.6))));
        let left = level_without_bodies(Share::HALF, CountRange::exact(100), &kind(Some(20)));
        assert!(
            left.is_some_and(|left| (left.high - 0.435).abs() < 1e-12 && (left.low - 0.37).abs() < 1e-12)
        );
        let open = CountRange::new(50, None).unwrap_or(CountRange::exact(0));
        assert_eq!(bodies_volume(open).high, None);
        let left = level_without_bodies(Share::HALF, open, &kind(Some(20)));
        assert!(left.is_some_and(|left| (left.high - 0.4675).abs() < 1e-12 && left.low.abs() < 1e-12));
        assert_eq!(level_without_bodies(Share::HALF, open, &kind(None)), None);
    }

    #[test]
    fn more_than_fifty_bodies_flatter_the_level() {
        let range = |low, high| CountRange::new(low, high).unwrap_or(CountRange::exact(0));
        assert!(!level_flatters(CountRange::exact(50)));
        assert!(level_flatters(CountRange::exact(51)));
        assert!(level_flatters(range(50, None)));
        assert!(!level_flatters(range(20, Some(49))));
    }
}
