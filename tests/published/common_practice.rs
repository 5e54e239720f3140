//! Values that are common practice, or judgement, with no source. They stand here so that a change of one is a decision
//! and not a slip.

use beetle_almanac::almanac::climate::{Climate, KNOWN};
use beetle_almanac::almanac::fit::Place;
use beetle_almanac::almanac::generations::season;
use beetle_almanac::almanac::oil::USUAL_RESERVE;
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::refill::working_floor;
use beetle_almanac::almanac::soil::{Shade, Soil, SoilKind};
use beetle_almanac::almanac::spill::LEAST_DEPTH_MM;
use beetle_almanac::almanac::stack::{BoxDepth, Corner, HiveSize, Spot, stack_spots};
use beetle_almanac::almanac::stage::{Edge, Stage, Strength, Walk, Weather, days};
use beetle_almanac::almanac::trap::TrapKind;

use super::{celsius, close, day, mm, percent};

/// Common practice, no source: two traps a box, in a nucleus one.
#[test]
fn traps_a_box() {
    assert_eq!((HiveSize::Full.usual_traps(), HiveSize::Nuc.usual_traps()), (2, 1));
    assert_eq!((HiveSize::Full.usual_frames(), HiveSize::Nuc.usual_frames()), (10, 5));
}

/// Common practice, no source: opposite corners, the diagonal changing from box to box.
#[test]
fn corners() {
    use Corner::{BackLeft, BackRight, FrontLeft, FrontRight};
    let corners = |pair: [Corner; 2]| pair.map(Spot::Corner).to_vec();
    let (odd, even) = (corners([FrontLeft, BackRight]), corners([FrontRight, BackLeft]));
    assert_eq!(stack_spots(&[2, 2, 2], HiveSize::Full), [odd.clone(), even, odd]);
}

/// Common practice, no source: nominal woodenware in inches.
#[test]
fn woodenware() {
    for (depth, boxed, side) in
        [(BoxDepth::Deep, 9.625, 9.125), (BoxDepth::Medium, 6.625, 6.25), (BoxDepth::Shallow, 5.6875, 5.375)]
    {
        close(depth.depth().millimetres(), boxed * 25.4, 1e-9);
        close(depth.frame_side().millimetres(), side * 25.4, 1e-9);
        let place = Place::usual(depth);
        assert_eq!(place.frame_side, depth.frame_side());
        close(place.gap.millimetres(), (1.375 - 1.0625) * 25.4, 1e-9);
        close(place.inside.millimetres(), 18.375 * 25.4, 1e-9);
        // A top bar of 19 in is longer than the box inside, because its lugs lie on rebates of 3/8 in: a trap between
        // frames hangs lower, from wall to wall, and what is as long as a top bar does not go in.
        let top_bar = 19.0 * 25.4;
        assert!(place.inside.millimetres() < top_bar);
        assert!(top_bar < place.inside.millimetres() + 2.0 * 0.375 * 25.4);
        close(place.clearance.millimetres(), 5.0, 1e-9);
    }
}

/// Judgement: a quarter in reserve.
#[test]
fn reserve() {
    assert_eq!(USUAL_RESERVE, percent(25.0));
}

/// Judgement: 6 mm of oil cover a beetle (bodies of 5.3–6.3 mm by about 3.5 mm are published).
#[test]
fn working_depth() {
    close(LEAST_DEPTH_MM, 6.0, 0.0);
    assert_eq!(working_floor(mm(20.0)), Some(percent(30.0)));
}

/// Judgement: an interval of 1 to 120 days; common practice, no source: half full.
#[test]
fn service() {
    assert_eq!(TrapKind::MAX_DAYS, 1..=120);
    assert_eq!(Share::HALF, percent(50.0));
}

/// Common practice, no source: 4–5 generations a season in the warm, humid south-east of the United States. Greensboro is
/// its cool end; the second climate is typed as a keeper on the Gulf coast might, in round figures, from no station.
#[test]
fn a_warm_humid_south_east_has_room_for_four_to_five_generations() {
    let highs = [16.0, 18.0, 21.5, 25.0, 29.0, 31.5, 32.5, 32.5, 30.5, 26.0, 21.0, 17.0];
    let lows = [5.0, 7.0, 10.0, 14.0, 18.5, 22.0, 23.0, 23.0, 20.5, 14.5, 9.0, 6.0];
    let gulf = Climate::new(highs.map(celsius), lows.map(celsius)).expect("a climate");
    for (name, climate) in [("Greensboro", KNOWN[0].climate()), ("Gulf coast", gulf)] {
        for shade in Shade::ALL {
            let weather = Weather::of(&climate, &Soil::of(&climate, SoilKind::Unknown, shade));
            let walk = Walk { weather: &weather, strength: Strength::Strong, dry: &[] };
            let [most, likely, fewest] = season(&walk, day("2026-07-01")).count;
            println!("{name}, {shade:?}: {fewest}–{most} generations, likely {likely}");
            assert!(fewest <= 4 && 4 <= most, "{name} {shade:?}");
            assert!(5 <= most || (name, shade) == ("Greensboro", Shade::Shade), "{name} {shade:?}");
        }
    }
}

/// Common practice, no source: eggs 2–3 days, soil stage 3–4 weeks, laying about a week after the beetles come out.
#[test]
fn rules_of_thumb_of_the_stages_lie_in_their_spans() {
    let span =
        |stage, warmth: f64| Edge::ALL.map(|edge| days(stage, celsius(warmth), edge).expect("it develops"));
    // In the nest the latest edge comes to two days; a cooler comb has the three.
    let [_, _, nest] = span(Stage::Egg, 34.5);
    let [first, _, comb] = span(Stage::Egg, 26.0);
    assert!(nest > 1.9 && first < 2.0 && comb >= 3.0 - 1e-9, "{nest} {first} {comb}");
    let [earliest, _, latest] = span(Stage::Soil, 24.0);
    assert!(earliest <= 21.0 && 28.0 <= latest, "{earliest}–{latest}");
    assert_eq!(Stage::BeforeLaying.fixed_days(), Some([7.0, 7.0, 14.0]));
}

/// Judgement, no source: how far soil and air may be off, what a thermometer's reading is worth, the colony nobody noted.
#[test]
fn choices_of_the_stage_model() {
    use beetle_almanac::almanac::soil::{CLOSEST, READING, READING_LASTS, UNPROBED};
    use beetle_almanac::almanac::stage::{AIR, COMB, NARROW, NEST, WIDE};
    assert_eq!((UNPROBED, READING, CLOSEST, READING_LASTS), (2.0, 1.5, 0.5, 400));
    assert_eq!((AIR, COMB, NEST), (2.0, 0.5, (34.5, 0.5)));
    assert_eq!((WIDE, NARROW), ((0.35, 20.0), (0.20, 24.0)));
    for (shade, kelvin) in Shade::ALL.iter().zip([1.0, 0.0, -2.0]) {
        close(shade.kelvin(), kelvin, 1e-12);
    }
    assert_eq!(Stage::Wandering.fixed_days(), Some([0.0, 1.0, 2.0]));
}
