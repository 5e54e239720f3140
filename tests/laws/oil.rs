//! Oil to carry, and bodies in it.

use super::quantities::ranges;
use super::{kinds, ml, oil_kinds, percent, shares};
use beetle_almanac::almanac::oil::{
    OilNeed, Service, bodies_that_fit, bodies_volume, bottles, carried, carry_step, level_flatters,
    level_without_bodies, oil_for_visit, round_up,
};
use beetle_almanac::almanac::quantity::{Share, Volume, VolumeUnit};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trap::TrapKind;
use proptest::prelude::*;

fn top_up(kind: &TrapKind, traps: u32, from: u32, target: u32) -> OilNeed<'_> {
    OilNeed { kind, traps, service: Service::TopUp { from: percent(from) }, target: percent(target) }
}

fn sum(need: OilNeed<'_>) -> f64 {
    oil_for_visit(&[need], Share::NONE).sum.millilitres()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]

    /// All 101 × 101 levels of each kind.
    #[test]
    fn a_higher_level_never_takes_more_oil_and_a_higher_target_never_less(kind in oil_kinds(), traps in 1..200_u32) {
        for level in 0..=100_u32 {
            for target in 0..=100_u32 {
                let here = sum(top_up(&kind, traps, level, target));
                prop_assert!(level == 0 || here <= sum(top_up(&kind, traps, level - 1, target)));
                prop_assert!(target == 0 || here >= sum(top_up(&kind, traps, level, target - 1)));
                prop_assert_eq!(here > 0.0, target > level);
            }
        }
    }
}

proptest! {
    #[test]
    fn a_fill_is_a_top_up_from_nothing(kind in oil_kinds(), traps in 0..200_u32, target in 0..=100_u32) {
        let fill = OilNeed { kind: &kind, traps, service: Service::Fill, target: percent(target) };
        let full = oil_for_visit(&[fill], Share::NONE);
        prop_assert_eq!(full.sum, oil_for_visit(&[top_up(&kind, traps, 0, target)], Share::NONE).sum);
        let line = &full.lines[0];
        let each = line.capacity.millilitres() * (line.filled_to - line.filled_from);
        prop_assert!((line.each.millilitres() - each).abs() < 1e-9, "the line shows the sum it came from");
        prop_assert!((line.sum.millilitres() - each * f64::from(traps)).abs() < 1e-6);
    }

    #[test]
    fn what_is_carried_covers_the_sum_and_the_reserve_by_less_than_a_step(
        kind in oil_kinds(),
        traps in proptest::collection::vec((0..300_u32, 0..=100_u32, 0..=100_u32), 0..6),
        reserve in shares(),
        bottle in 1..2000_u32,
        unit in proptest::sample::select(&VolumeUnit::ALL[..]),
    ) {
        let needs: Vec<OilNeed<'_>> = traps.iter().map(|(n, from, to)| top_up(&kind, *n, *from, *to)).collect();
        let bottle_ml = f64::from(bottle);
        let oil = oil_for_visit(&needs, reserve);
        let carry = carried(oil.with_reserve, unit);
        let full = bottles(carry, ml(bottle_ml)).unwrap();
        let step = carry_step(unit).millilitres();
        let (sum, with) = (oil.sum.millilitres(), oil.with_reserve.millilitres());
        prop_assert!((with - sum * (1.0 + reserve.fraction())).abs() <= 1e-9 * with);
        let (held, ml_carried) = (f64::from(full) * bottle_ml, carry.millilitres());
        prop_assert!(ml_carried >= with - 1e-6 && ml_carried - with < step);
        let steps = ml_carried / step;
        prop_assert!((steps - steps.round()).abs() < 1e-9 * steps.max(1.0));
        // A bottle that is short by the noise of a sum holds it.
        prop_assert!(held >= ml_carried - 1e-6 && held - bottle_ml < ml_carried);
        // One hive more never needs less.
        let mut more = needs.clone();
        more.push(top_up(&kind, 2, 0, 50));
        let more = oil_for_visit(&more, reserve);
        let more = carried(more.with_reserve, unit);
        prop_assert!(more >= carry && bottles(more, ml(bottle_ml)).unwrap() >= full);
    }

    /// Sums worked out in whole millilitres first: rounding up may not be tipped over by the order of additions.
    #[test]
    fn whole_sums_stay_whole(steps in 0..10_000_u32, parts in 1..300_u32) {
        let whole = f64::from(steps) * 50.0;
        let part = ml(whole / f64::from(parts));
        let sum = (0..parts).fold(Volume::ZERO, |sum, _| sum.plus(part));
        prop_assert_eq!(round_up(sum, 50.0), ml(whole));
        if steps > 0 {
            prop_assert_eq!(round_up(ml(whole + 0.01), 50.0), ml(whole + 50.0));
        }
    }

    #[test]
    fn traps_nobody_measured_are_counted_and_not_guessed(kind in kinds(), traps in 0..1000_u32) {
        let need = OilNeed { kind: &kind, traps, service: Service::Fill, target: Share::HALF };
        let oil = oil_for_visit(&[need, need], Share::QUARTER);
        let unknown = kind.form.takes_oil() && kind.capacity.is_none();
        prop_assert_eq!(oil.unknown, if unknown { 2 * traps } else { 0 });
        prop_assert_eq!(oil.lines.len(), if unknown { 0 } else { 2 });
    }

    #[test]
    fn bodies_only_ever_lower_the_level(kind in oil_kinds(), level in 0..=100_u32, bodies in ranges(), more in ranges()) {
        let level = percent(level);
        let found = level_without_bodies(level, bodies, &kind).unwrap();
        prop_assert!(0.0 <= found.low && found.low <= found.high && found.high <= level.fraction() + 1e-12);
        let with_more = level_without_bodies(level, bodies.plus(more), &kind).unwrap();
        prop_assert!(with_more.low <= found.low + 1e-12 && with_more.high <= found.high + 1e-12);
        let none = level_without_bodies(level, CountRange::exact(0), &kind).unwrap();
        prop_assert!((none.low - level.fraction()).abs() < 1e-12 && (none.high - level.fraction()).abs() < 1e-12);
    }

    #[test]
    fn volumes_of_bodies_add_up(a in ranges(), b in ranges()) {
        let (sum, a, b) = (bodies_volume(a.plus(b)), bodies_volume(a), bodies_volume(b));
        prop_assert!((sum.low.millilitres() - a.low.plus(b.low).millilitres()).abs() < 1e-9);
        prop_assert_eq!(sum.high.is_some(), a.high.is_some() && b.high.is_some());
        prop_assert!(sum.high.is_none_or(|high| high >= sum.low));
    }
}

/// Every number of bodies, and a hair less room than it takes.
#[test]
fn as_many_bodies_fit_as_their_volume_says() {
    for count in 0..=5000 {
        let volume = bodies_volume(CountRange::exact(count)).high.expect("an exact count has an end");
        assert_eq!(bodies_that_fit(volume), count);
        if count > 0 {
            assert_eq!(bodies_that_fit(volume.times(0.999_999)), count - 1);
        }
    }
}

/// Every exact count a keeper would type.
#[test]
fn the_warning_comes_once_and_stays() {
    for count in 0..=5000 {
        assert_eq!(level_flatters(CountRange::exact(count)), count > 50);
    }
}
