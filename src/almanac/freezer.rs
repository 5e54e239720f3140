//! Comb through the freezer, batch by batch.

/// Hours at −12 °C or below, from when the core of the comb is that cold, after which nothing of the beetle lives (Iowa
/// State University Extension; the same for by-products of bee-keeping in Commission Regulation (EU) No 142/2011).
pub const KILLS_HOURS: u32 = 24;

/// That temperature, °C.
pub const KILLS_CELSIUS: f64 = -12.0;

/// Batches, and how long they take one after the other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Batches {
    /// How often the freezer is filled; 0 for no frames.
    pub batches: u32,
    /// Hours of all of them, one after the other.
    pub hours: u32,
    /// The same in days of 24 hours, rounded up.
    pub days: u32,
    /// Frames in the last one, from 1 to what fits; 0 for no frames.
    pub last: u32,
}

/// Batches for `frames` when `fit` go in at a time, each taking `chill` hours until its core is cold and `hold` hours from
/// there. None when nothing fits; a number nobody lives to see stops at the largest there is.
pub fn batches(frames: u32, fit: u32, chill: u32, hold: u32) -> Option<Batches> {
    if fit == 0 {
        return None;
    }
    let batches = frames.div_ceil(fit);
    let hours = batches.saturating_mul(chill.saturating_add(hold));
    let last = if frames == 0 { 0 } else { frames - (batches - 1) * fit };
    Some(Batches { batches, hours, days: hours.div_ceil(24), last })
}
