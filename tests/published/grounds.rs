//! Ground round hives against shapely's union of buffers (`tests/figures/grounds.py`).

use super::{close, mm, rows};
use beetle_almanac::almanac::ground::{Ring, Stand, area};

/// Width, length, reach, stands, area.
type Layout = (f64, f64, f64, Vec<(f64, f64)>, f64);

#[test]
fn the_ground_round_510_layouts_is_that_of_the_united_buffers() {
    let layouts: Vec<Layout> = rows(include_str!("../figures/grounds.json"));
    assert_eq!(layouts.len(), 510);
    let mut overlapping = 0;
    for (width, length, reach, stands, united) in layouts {
        let ring = Ring { width: mm(width), length: mm(length), reach: mm(reach) };
        let stands: Vec<Stand> = stands.into_iter().map(|(across, along)| Stand { across, along }).collect();
        let found = area(&stands, &ring);
        // 0.5 % is promised, a fifth of it is kept.
        close(found, united, 0.001 * united);
        let count = f64::from(u32::try_from(stands.len()).unwrap());
        overlapping += u32::from(united < 0.9 * count * ring.area());
    }
    assert!(overlapping > 200, "{overlapping}");
}
