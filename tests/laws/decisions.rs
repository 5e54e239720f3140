//! Laws of sampling, of the ground round hives, of mesh, freezer and cover.

use super::{mm, percent};
use beetle_almanac::almanac::cover::{Guard, cover};
use beetle_almanac::almanac::draw::draw;
use beetle_almanac::almanac::freezer::batches;
use beetle_almanac::almanac::ground::{Ring, Stand, area, rows};
use beetle_almanac::almanac::mesh::{opening, stops, widest};
use beetle_almanac::almanac::quantity::{Decimal, Length, Share};
use beetle_almanac::almanac::sample::{at_most, miss, to_open};
use proptest::collection::vec;
use proptest::prelude::*;

/// Every yard to 30 hives, every number affected and opened, four chances to notice: a chance is one; more hives opened, more
/// affected and a better eye never miss more; who opens all with a sure eye misses nothing.
#[test]
fn a_miss_never_gets_likelier() {
    let notices = [30, 60, 85, 100].map(percent);
    for hives in 1..=30 {
        for affected in 0..=hives {
            let mut above = [1.0; 4];
            for opened in 0..=hives {
                let mut duller = 1.0;
                for (notice, above) in notices.into_iter().zip(&mut above) {
                    let miss = miss(hives, affected, opened, notice);
                    assert!((-1e-12..=1.0 + 1e-12).contains(&miss));
                    assert!(miss <= *above + 1e-12 && miss <= duller + 1e-12);
                    assert!(affected == 0 || miss <= with_one_fewer(hives, affected, opened, notice) + 1e-12);
                    (*above, duller) = (miss, miss);
                }
                let sure = miss(hives, affected, opened, Share::FULL);
                if affected == 0 || opened == 0 {
                    assert!((sure - 1.0).abs() < 1e-12);
                } else if opened + affected > hives {
                    assert!(sure.abs() < 1e-12);
                }
            }
        }
    }
}

fn with_one_fewer(hives: u32, affected: u32, opened: u32, notice: Share) -> f64 {
    miss(hives, affected - 1, opened, notice)
}

/// Opened and affected change places: of those opened so many are affected, or of those affected so many are opened.
#[test]
fn opened_and_affected_change_places() {
    for hives in 1..=40 {
        for (affected, opened) in (0..=hives).flat_map(|a| (0..=a).map(move |o| (a, o))) {
            let (one, other) =
                (miss(hives, affected, opened, percent(70)), miss(hives, opened, affected, percent(70)));
            assert!((one - other).abs() < 1e-12, "{hives} {affected} {opened}");
        }
    }
}

/// Every yard to 60 hives, shares of 1 to 100 %: the number does and one fewer does not; a larger share, a sharper eye and less
/// certainty never take more hives. Who wants to be sure altogether opens all.
#[test]
fn the_number_to_open_is_the_smallest() {
    for hives in 1..=60 {
        let mut before = u32::MAX;
        for share in 1..=100 {
            let at = |notice, sure| to_open(hives, percent(share), percent(notice), percent(sure)).unwrap();
            let open = at(85, 95);
            assert!(open.affected * 100 >= share * hives && (open.affected - 1) * 100 < share * hives);
            if open.reached {
                assert!(open.chance >= 0.95 - 1e-9 && open.before < 0.95);
            } else {
                assert_eq!(open.opened, hives);
                assert!(open.chance < 0.95 && open.twice >= open.chance);
            }
            assert!(open.opened <= before);
            before = open.opened;
            assert!(at(100, 95).opened <= open.opened && at(85, 90).opened <= open.opened);
            assert_eq!(at(100, 100).opened, hives);
        }
        assert_eq!(to_open(hives, Share::NONE, Share::FULL, percent(95)), None);
    }
    assert_eq!(to_open(0, Share::HALF, Share::FULL, percent(95)), None);
}

/// Every yard to 40 hives: what none seen leaves possible is the largest number; more opened never leaves more; and whoever
/// opened as many as a share wants has that share disproved.
#[test]
fn none_seen_leaves_less_the_more_are_opened() {
    for hives in 1..=40 {
        for notice in [percent(60), percent(100)] {
            let mut before = hives;
            for opened in 0..=hives {
                let most = at_most(hives, opened, notice, percent(95));
                assert!(most <= before);
                assert!(most == 0 || miss(hives, most, opened, notice) >= 0.05 - 1e-9);
                assert!(most == hives || miss(hives, most + 1, opened, notice) < 0.05);
                before = most;
            }
            assert_eq!(at_most(hives, 0, notice, percent(95)), hives);
            let open = to_open(hives, Share::QUARTER, notice, percent(95)).unwrap();
            assert!(!open.reached || at_most(hives, open.opened, notice, percent(95)) < open.affected);
        }
        assert_eq!(at_most(hives, hives, Share::FULL, percent(95)), 0);
        assert_eq!(at_most(hives, hives - 1, Share::FULL, percent(100)), 1);
        assert_eq!(at_most(hives, hives, percent(0), percent(95)), hives);
    }
}

fn stands() -> impl Strategy<Value = Vec<Stand>> {
    let place = -20_000..20_000_i32;
    vec(
        (place.clone(), place)
            .prop_map(|(across, along)| Stand { across: across.into(), along: along.into() }),
        1..30,
    )
}

fn rings() -> impl Strategy<Value = Ring> {
    (200..700_i32, 200..700_i32, 0..3000_i32).prop_map(|(width, length, reach)| Ring {
        width: mm(width.into()),
        length: mm(length.into()),
        reach: mm(reach.into()),
    })
}

/// What the strips may be off by.
const WITHIN: f64 = 0.002;

proptest! {
    /// No more than all rings together, no less than one or than without the last; where they stand does not count, nor in which
    /// order, nor that one place is named twice.
    #[test]
    fn united_ground_is_at_most_the_sum_and_at_least_one(stands in stands(), ring in rings()) {
        let all = area(&stands, &ring);
        let one = ring.area();
        let count = f64::from(u32::try_from(stands.len()).unwrap());
        prop_assert!(all <= one * count * (1.0 + WITHIN) && all >= one * (1.0 - WITHIN));
        let (_, fewer) = stands.split_last().unwrap();
        prop_assert!(area(fewer, &ring) <= all * (1.0 + WITHIN));
        let mut moved: Vec<Stand> =
            stands.iter().rev().map(|s| Stand { across: s.across + 5000.0, along: s.along - 7000.0 }).collect();
        prop_assert!((area(&moved, &ring) / all - 1.0).abs() < WITHIN);
        moved.extend_from_within(..);
        prop_assert!((area(&moved, &ring) / all - 1.0).abs() < WITHIN);
    }

    /// Turned by a quarter, yard and hives together, it is the same ground.
    #[test]
    fn turned_by_a_quarter_it_is_the_same_ground(stands in stands(), ring in rings()) {
        let turned: Vec<Stand> = stands.iter().map(|s| Stand { across: s.along, along: s.across }).collect();
        let ring_turned = Ring { width: ring.length, length: ring.width, ..ring };
        prop_assert!((area(&turned, &ring_turned) / area(&stands, &ring) - 1.0).abs() < WITHIN);
    }
}

#[test]
fn hives_further_apart_never_take_less_ground_until_the_rings_part() {
    let ring = Ring { width: mm(420.0), length: mm(500.0), reach: mm(900.0) };
    for (hives, in_row) in [(2, 2), (10, 10), (11, 4), (24, 1)] {
        let mut before = ring.area() * (1.0 - WITHIN);
        for apart in 0..=60 {
            let apart = mm(f64::from(apart) * 50.0);
            let ground = area(&rows(hives, in_row, apart, apart), &ring);
            assert!(ground >= before * (1.0 - WITHIN), "{hives} {in_row} {apart:?}");
            before = ground;
        }
        let parted = f64::from(hives) * ring.area();
        assert!((before / parted - 1.0).abs() < WITHIN);
    }
    assert!(area(&rows(0, 3, mm(1.0), mm(1.0)), &ring).abs() < 1e-9);
    assert_eq!(rows(7, 3, mm(10.0), mm(20.0)).last(), Some(&Stand { across: 0.0, along: 40.0 }));
    assert_eq!(rows(2, 0, mm(10.0), mm(20.0)).last(), Some(&Stand { across: 0.0, along: 20.0 }));
}

/// Every count of 1 to 60 with wires of 0.1 to 3 mm: wires and openings together make the inch; a finer mesh or a thicker wire
/// never opens wider.
#[test]
fn openings_and_wires_make_the_inch() {
    let open = |count, tenths: u32| {
        opening(Decimal::whole(count), mm(f64::from(tenths) / 10.0)).map_or(0.0, Length::millimetres)
    };
    for count in 1..=60 {
        for tenths in 1..=30 {
            let (here, wire) = (open(count, tenths), f64::from(tenths) / 10.0);
            let inch = f64::from(count) * (here + wire);
            assert!((inch - 25.4).abs() < 1e-9 || (here == 0.0 && inch > 25.4 - 1e-6));
            assert!(open(count + 1, tenths) <= here && open(count, tenths + 1) <= here);
            assert_eq!(here > 0.0 && stops(mm(here)), here > 0.0 && here <= 2.0 + 1e-9);
        }
    }
    assert_eq!(opening(Decimal::ZERO, mm(0.5)), None);
    // Wires that just touch.
    for (count, wire) in [(20, 1.27), (10, 2.54), (25, 1.016)] {
        assert_eq!(opening(Decimal::whole(count), mm(wire)), None);
    }
    assert!(stops(widest()));
}

/// Every frame goes in, no batch is over what fits, and one batch fewer would not do.
#[test]
fn every_frame_freezes() {
    for frames in 0..=200_u32 {
        for fit in 1..=60 {
            let freezer = batches(frames, fit, 24, 48).unwrap();
            assert!(freezer.batches * fit >= frames && (frames == 0 || (freezer.batches - 1) * fit < frames));
            assert!(freezer.last <= fit && (freezer.last > 0) == (frames > 0));
            assert_eq!(freezer.hours, freezer.batches * 72);
            assert!(freezer.days * 24 >= freezer.hours && freezer.days * 24 < freezer.hours + 24);
        }
    }
    assert_eq!(batches(5, 0, 1, 1), None);
    assert_eq!(batches(u32::MAX, 1, u32::MAX, u32::MAX).unwrap().hours, u32::MAX);
}

/// Every hive of up to 60 frames in boxes of 5 to 12: boxes come off only where they help and no more than needed, one stays.
#[test]
fn no_box_comes_off_that_could_stay() {
    let mut words = [0; 3];
    for frames in 1..=60 {
        for sides in 0..=2 * frames {
            for a_box in 5..=12 {
                let found = cover(sides, frames, a_box).unwrap();
                words[found.guard as usize] += 1;
                assert_eq!(found.guard == Guard::Well, sides * 10 >= frames * 18);
                assert_eq!(found.guard == Guard::Little, sides * 10 < frames * 14);
                let Some(off) = found.off else {
                    assert!((found.then - found.share).abs() < 1e-12);
                    continue;
                };
                assert!(found.guard != Guard::Well && off > 0 && off * a_box < frames);
                assert!(found.then >= 0.9 - 1e-12);
                let one_fewer = cover(sides, frames - (off - 1) * a_box, a_box).unwrap();
                assert_ne!(one_fewer.guard, Guard::Well);
            }
        }
    }
    assert!(words.iter().all(|count| *count > 1000), "{words:?}");
    assert_eq!((cover(1, 0, 10), cover(1, 10, 0)), (None, None));
}

/// Every number of every yard to 40: so many, in rising order, and the same again for the same seed.
#[test]
fn a_draw_is_in_the_order_of_the_walk() {
    for hives in 0..=40 {
        for count in 0..=hives + 1 {
            let drawn = draw(hives, count, "k7");
            assert_eq!(drawn.len(), count.min(hives) as usize);
            assert!(drawn.windows(2).all(|pair| pair[0] < pair[1]));
            assert!(drawn.iter().all(|place| (1..=hives).contains(place)));
            assert_eq!(drawn, draw(hives, count, "k7"));
        }
    }
}

/// All 20 sets of 3 out of 6, in 20,000 draws: the sum of squares over what is expected stays below 50, which 19 degrees of
/// freedom pass one time in 8,000 draws of such a table.
#[test]
fn every_set_is_drawn_as_often_as_any_other() {
    let mut sets = std::collections::BTreeMap::new();
    for seed in 0..20_000 {
        *sets.entry(draw(6, 3, &format!("seed {seed}"))).or_insert(0) += 1;
    }
    assert_eq!(sets.len(), 20);
    let off: f64 = sets.values().map(|count| (f64::from(*count) - 1000.0).powi(2) / 1000.0).sum();
    assert!(off < 50.0, "{off}");
}
