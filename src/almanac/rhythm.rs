//! How many broods a keeper's looks could have seen.
//!
//! A brood of larvae is in the hive for some days and then leaves for the soil. Of the broods that hatch between two looks,
//! hatching on any day alike, the later look sees those that are still there. A second look at the same brood adds nothing
//! here, so a chance to notice below 1 is reckoned rather too low.

use super::day::Day;

/// Share of broods that at least one look could have seen: the mean over the gaps, weighted by their length, of the share
/// that was still there at the end of each. `gaps` are days from look to look, `days` those that larvae are in the hive.
/// None without a gap.
pub fn share(gaps: &[u32], days: f64) -> Option<f64> {
    let (mut seen, mut all) = (0.0, 0.0);
    for gap in gaps {
        let gap = f64::from(*gap);
        // gap × min(1, days ÷ gap)
        seen += gap.min(days.max(0.0));
        all += gap;
    }
    (all > 0.0).then_some(seen / all)
}

/// The longest whole number of days between looks of which `wanted` of the broods are seen, with the chance `notice` that a
/// look finds what is there. None when no rhythm reaches it.
pub fn longest(wanted: f64, days: f64, notice: f64) -> Option<u32> {
    // The guard keeps 14.000 000 1 − noise from becoming 13.
    let least = wanted / notice;
    if !(least > 0.0 && least <= 1.0 + 1e-9) {
        return None;
    }
    let gap = (days / least + 1e-9).floor();
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held to a season and more
    (gap >= 1.0).then_some(gap.min(9999.0) as u32)
}

/// Days from each look to the next; `looks` in order, a day twice is one look.
pub fn gaps(looks: &[Day]) -> Vec<u32> {
    let mut gaps = Vec::new();
    for pair in looks.windows(2) {
        if let [from, to] = pair
            && let Ok(days @ 1..) = u32::try_from(to.days_since(*from))
        {
            gaps.push(days);
        }
    }
    gaps
}
