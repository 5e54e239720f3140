//! The worked examples of this project's own map of the job (sections C1–C9 and 4.1), computed there by a script.

use super::{close, day, decimal, ml, mm, percent, trap};
use beetle_almanac::almanac::oil::{
    OilNeed, Service, USUAL_RESERVE, bodies_volume, carried, level_flatters, oil_for_visit,
};
use beetle_almanac::almanac::quantity::{Share, TypedVolume, VolumeUnit};
use beetle_almanac::almanac::refill::{
    Limit, Loss, LossInterval, RefillFacts, Timing, median_loss, refill, timing,
};
use beetle_almanac::almanac::spill::spill;
use beetle_almanac::almanac::stack::trap_total;
use beetle_almanac::almanac::supply::cheapest;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trap::{Pack, TrapKind};

fn holding(millilitres: f64) -> TrapKind {
    let capacity = TypedVolume::new(decimal(millilitres), VolumeUnit::Millilitre).ok();
    TrapKind { capacity, ..trap(Vec::new()) }
}

#[test]
fn c1_c3_twenty_four_hives() {
    let total = trap_total(24, 3, 2);
    assert_eq!(total.traps, 144);
    let kind = holding(20.0);
    let need = OilNeed { kind: &kind, traps: total.traps, service: Service::Fill, target: Share::HALF };
    let oil = oil_for_visit(&[need], USUAL_RESERVE);
    let carry = carried(oil.with_reserve, VolumeUnit::Millilitre);
    assert_eq!((oil.sum, oil.with_reserve, carry), (ml(1440.0), ml(1800.0), ml(1800.0)));
    close(carry.in_unit(VolumeUnit::UsFluidOunce), 60.9, 0.05);
    // In steps of 2 fl oz.
    let ounces = carried(oil.with_reserve, VolumeUnit::UsFluidOunce);
    close(ounces.in_unit(VolumeUnit::UsFluidOunce), 62.0, 1e-9);
}

#[test]
fn c3_a_top_up() {
    let kind = holding(18.0);
    let need = OilNeed {
        kind: &kind,
        traps: 44,
        service: Service::TopUp { from: percent(35.0) },
        target: Share::HALF,
    };
    let oil = oil_for_visit(&[need], USUAL_RESERVE);
    close(oil.sum.millilitres(), 118.8, 1e-9);
    close(oil.with_reserve.millilitres(), 148.5, 1e-9);
    assert_eq!(carried(oil.with_reserve, VolumeUnit::Millilitre), ml(150.0));
}

/// 300 mL short is five hives of three boxes: 60 mL each.
#[test]
fn c3_the_night_before() {
    let kind = holding(20.0);
    let hive = OilNeed { kind: &kind, traps: 6, service: Service::Fill, target: Share::HALF };
    assert_eq!(oil_for_visit(&[hive], Share::NONE).sum, ml(60.0));
}

#[test]
fn c4_packs_or_singles() {
    let shelf = [(1, 2.20), (5, 9.50), (12, 18.00)]
        .map(|(pieces, price)| Pack { pieces, price: Some(decimal(price)) });
    for (need, total, pieces) in
        [(1, 2.20, 1), (4, 8.80, 4), (7, 13.90, 7), (23, 36.00, 24), (35, 54.00, 36), (37, 56.20, 37)]
    {
        let basket = cheapest(need, &shelf, None).unwrap();
        assert_eq!((basket.total, basket.pieces), (decimal(total), pieces), "{need}");
    }
    assert_eq!(cheapest(7, &shelf, None).unwrap().packs, [(0, 2), (1, 1)]);
    assert_eq!(cheapest(23, &shelf, None).unwrap().packs, [(2, 2)]);
    assert_eq!(cheapest(37, &shelf, None).unwrap().packs, [(0, 1), (2, 3)]);
}

#[test]
fn c6_due_dates() {
    let interval = LossInterval { days: 21, from: percent(50.0), to: percent(35.0) };
    let (learned, intervals) = median_loss(&[interval]).unwrap();
    close(learned, 0.714, 0.0005);
    for per_day in [0.714, 0.714_286, learned] {
        let mut facts = RefillFacts {
            last_service: day("2026-05-01"),
            max_days: 14,
            level: Some(Share::HALF),
            read_on: None,
            floor: Some(percent(20.0)),
            loss: Loss::Hive { per_day, intervals },
            room: None,
            catch_per_day: None,
        };
        let due = refill(&facts);
        assert_eq!((due.due, due.decided_by), (day("2026-05-15"), Limit::YourMaximum { days: 14 }));
        facts.max_days = 60;
        let due = refill(&facts);
        assert_eq!((due.due, due.decided_by.days()), (day("2026-06-12"), 42), "{per_day}");
        assert!(matches!(due.decided_by, Limit::OilLow { .. }));
    }
}

#[test]
fn c7_days_since() {
    for (from, to) in [("2026-03-07", "2026-03-09"), ("2028-02-28", "2028-03-01")] {
        assert_eq!(day(to).days_since(day(from)), 2);
        assert_eq!(timing(day(from), day(to)), Timing::Overdue { days: 2 });
    }
    assert_eq!(day("2026-03-07").days_since(day("2026-03-07")), 0);
}

#[test]
fn c8_bodies_in_the_oil() {
    let hidden = bodies_volume(CountRange::exact(100));
    assert_eq!((hidden.low, hidden.high), (ml(1.3), Some(ml(2.6))));
    assert!(level_flatters(CountRange::exact(51)) && !level_flatters(CountRange::exact(50)));
}

#[test]
fn c9_spill_angles() {
    for (fill, degrees) in [(30.0, 27.1), (50.0, 17.1), (70.0, 10.5), (90.0, 3.5)] {
        close(spill(mm(65.0), mm(20.0), percent(fill)).unwrap().degrees, degrees, 0.05);
    }
    for (fill, braking) in [(40.0, 3.8), (50.0, 3.0), (70.0, 1.8), (90.0, 0.6)] {
        close(spill(mm(65.0), mm(20.0), percent(fill)).unwrap().braking, braking, 0.05);
    }
}
