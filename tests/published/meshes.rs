//! Openings of wire cloth as American wire weavers list them (market grade, in inches), rounded there to the last digit shown;
//! from memory.

use super::{close, decimal, mm};
use beetle_almanac::almanac::mesh::{opening, stops};

#[test]
fn openings_of_market_grade_wire_cloth() {
    for (count, wire, open) in [
        (2.0, 0.063, 0.437),
        (4.0, 0.047, 0.203),
        (8.0, 0.028, 0.097),
        (10.0, 0.025, 0.075),
        (12.0, 0.023, 0.060),
        (14.0, 0.020, 0.051),
        (16.0, 0.018, 0.0445),
        (18.0, 0.017, 0.0386),
        (20.0, 0.016, 0.0340),
    ] {
        let found = opening(decimal(count), mm(wire * 25.4)).unwrap();
        close(found.millimetres() / 25.4, open, 0.0005);
        // 2 mm: 0.0787 in.
        assert_eq!(stops(found), open < 0.0787, "{count}");
    }
}
