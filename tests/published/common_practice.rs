//! Values that are common practice, or judgement, with no source. They stand here so that a change of one is a decision
//! and not a slip.

use beetle_almanac::almanac::fit::Place;
use beetle_almanac::almanac::oil::USUAL_RESERVE;
use beetle_almanac::almanac::quantity::Share;
use beetle_almanac::almanac::refill::working_floor;
use beetle_almanac::almanac::spill::LEAST_DEPTH_MM;
use beetle_almanac::almanac::stack::{BoxDepth, Corner, HiveSize, Spot, stack_spots};
use beetle_almanac::almanac::trap::TrapKind;

use super::{close, mm, percent};

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
