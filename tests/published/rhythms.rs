//! Looks and the broods they see, against a count of every brood by itself (`tests/figures/rhythms.py`).

use super::{close, rows};
use beetle_almanac::almanac::rhythm::share;

#[test]
fn looks_see_the_share_of_broods_that_a_count_of_every_brood_finds() {
    let rows: Vec<(Vec<u32>, f64, f64)> = rows(include_str!("../figures/rhythms.json"));
    assert!(rows.len() > 1000);
    assert!(rows.iter().filter(|row| row.2 < 0.8).count() > 300 && rows.iter().any(|row| row.2 >= 1.0));
    for (gaps, days, seen) in rows {
        close(share(&gaps, days).unwrap(), seen, 1e-8);
    }
}
