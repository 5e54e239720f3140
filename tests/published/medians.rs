//! Median losses against Python's `statistics.median` over exact fractions (`tests/figures/medians.py`).

use super::{close, percent, rows};
use beetle_almanac::almanac::refill::{LossInterval, median_loss};

#[test]
fn median_losses_agree_with_python() {
    type Row = (Vec<(u16, f64, f64)>, Option<f64>, u8);
    let rows: Vec<Row> = rows(include_str!("../figures/medians.json"));
    let mut used = [0; 6];
    for (intervals, median, count) in rows {
        let intervals: Vec<LossInterval> = intervals
            .into_iter()
            .map(|(days, from, to)| LossInterval { days, from: percent(from), to: percent(to) })
            .collect();
        let found = median_loss(&intervals);
        assert_eq!(found.map(|(_, count)| count), median.map(|_| count), "{intervals:?}");
        if let (Some((found, _)), Some(median)) = (found, median) {
            close(found, median, 1e-11);
        }
        used[usize::from(count)] += 1;
    }
    assert!(used.iter().all(|rows| *rows >= 10), "every number of intervals occurs: {used:?}");
}
