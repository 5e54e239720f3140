//! The worked examples of this project's own map of the job (sections C1–C9 and 4.1), computed there by a script.

use super::{celsius, close, day, decimal, ml, mm, percent, swing, trap};
use beetle_almanac::almanac::oil::{
    OilNeed, Service, USUAL_RESERVE, bodies_volume, carried, level_flatters, oil_for_visit,
};
use beetle_almanac::almanac::quantity::{Share, TypedVolume, VolumeUnit};
use beetle_almanac::almanac::refill::{
    Limit, Loss, LossInterval, RefillFacts, Timing, median_loss, refill, timing,
};
use beetle_almanac::almanac::sighting::{Seen, Sighting};
use beetle_almanac::almanac::spill::spill;
use beetle_almanac::almanac::stack::trap_total;
use beetle_almanac::almanac::stage::{Edge, Line, Stage, Strength, Walk, Weather, days};
use beetle_almanac::almanac::supply::cheapest;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trap::{Pack, TrapKind};
use beetle_almanac::almanac::warmth::{Span, Swing};

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

/// The two sets of the map of the job for the soil stage; the page's own second set is finer.
const SOIL: [Line; 2] = [Line { sum: 365.0, floor: 10.0 }, Line { sum: 306.0, floor: 11.9 }];

/// Full-grown larvae at the entrance on 10 July 2026, soil at 24–28 °C: faster set at the warm end, the mean of both in
/// the middle, slower set at the cool end, rounded outward.
#[test]
fn c12_c13_three_dates_from_two_sets_without_a_band() {
    let seen = day("2026-07-10");
    let dates = Edge::ALL.map(|edge| {
        let [one, two] = SOIL.map(|set| set.days(edge.of([28.0, 26.0, 24.0])).expect("it develops"));
        seen.plus(edge.whole_days(edge.of([one.min(two), f64::midpoint(one, two), one.max(two)])))
    });
    assert_eq!(dates, [day("2026-07-29"), day("2026-08-01"), day("2026-08-06")]);
    // What the screen says of the same: larvae may have left up to three days before and go on for two, and the likely
    // 21.2 days at 26 °C are taken a fifth short: 7 July + 16.9, 10 July + 21.2, 12 July + 365 / (24 − 10) = 26.1.
    let soil = Span { cool: swing(24.0, 24.0), likely: swing(26.0, 26.0), warm: swing(28.0, 28.0) };
    let weather = Weather::of_days(vec![Span::around(Swing::flat(celsius(25.0)), 2.0); 365], vec![soil; 365]);
    let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
    let wide = Sighting { seen: Seen::Leaving, day: seen, ended: None }.dates(&walk);
    let wide = wide.adults.map(|adults| adults.expect("a date").day);
    assert_eq!(wide, [day("2026-07-23"), day("2026-07-31"), day("2026-08-08")]);
}

#[test]
fn c12_soil_stage_of_both_sets() {
    for (warmth, first, second) in
        [(16.0, 60.8, 74.6), (20.0, 36.5, 37.8), (28.0, 20.3, 19.0), (35.0, 14.6, 13.2)]
    {
        for (set, published) in SOIL.iter().zip([first, second]) {
            close(set.days(warmth).expect("it develops"), published, 0.06);
        }
    }
    assert_eq!(SOIL.map(|set| set.days(10.0)), [None, None]);
}

/// Hive at 34 °C, soil at 26 °C: egg 0.9, larva 8, adult in 32 days; at 30 and 22 °C 41 days. There larvae do not wander,
/// and the soil stage is that of two sets.
#[test]
fn c12_a_whole_life_in_two_temperatures() {
    for (hive, soil, whole) in [(34.0, 26.0, 32.0), (30.0, 22.0, 41.0)] {
        let [a, b] = SOIL.map(|set| set.days(soil).expect("it develops"));
        let hive = [Stage::Egg, Stage::Larva].map(|stage| days(stage, celsius(hive), Edge::Likely));
        let found = hive.iter().flatten().sum::<f64>() + f64::midpoint(a, b);
        close(found, whole, 1.0);
    }
}

/// The honey house: 24 · 19.4 / (T − 13.5) hours.
#[test]
fn c22_first_hatch_by_the_first_set_of_eggs() {
    for (warmth, hours) in [(20.0, 72.0), (24.0, 44.0), (28.0, 32.0), (35.0, 22.0)] {
        close(Stage::Egg.first().days(warmth).expect("it develops") * 24.0, hours, 0.7);
    }
    assert_eq!(Stage::Egg.first().days(13.5), None);
}
