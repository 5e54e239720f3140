//! The ground round hives into which larvae go, and what a product's label wants for it.
//!
//! Most larvae dig in within about 90 cm of their hive (Pettis & Shimanuki 2000). Rings of that reach round hives that stand
//! close overlap, and ground is treated once: what counts is the area of the union.

use super::order::sort_by;
use super::quantity::Length;

/// 90 cm, in millimetres.
pub const USUAL_REACH_MM: f64 = 900.0;

/// Footprint of a ten-frame hive across its entrance and from front to back: 16 1/4 by 19 7/8 in (common practice, no
/// source).
pub const USUAL_FOOTPRINT_MM: (f64, f64) = (412.75, 504.825);

/// Strips for a way as long as a hive's reach and half its length together.
const FINE: f64 = 20.0;

/// Strips between two turns that lie close, and so many more between any.
const LEAST_STRIPS: f64 = 4.0;

/// Where the middle of a hive stands, in millimetres: across the entrances, and along the hives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stand {
    /// Across.
    pub across: f64,
    /// Along.
    pub along: f64,
}

/// Stands in rows of `in_row`, the hives of a row `apart` from middle to middle, the rows `rows_apart`. The last row may be
/// shorter; a row of none holds one.
pub fn rows(hives: u32, in_row: u32, apart: Length, rows_apart: Length) -> Vec<Stand> {
    let in_row = in_row.max(1);
    let stand = |hive: u32| Stand {
        across: f64::from(hive % in_row) * apart.millimetres(),
        along: f64::from(hive / in_row) * rows_apart.millimetres(),
    };
    (0..hives).map(stand).collect()
}

/// A hive with the ground within a reach of it: a rectangle with round corners.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Footprint across the entrance.
    pub width: Length,
    /// Footprint from front to back.
    pub length: Length,
    /// How far from the walls of the hive.
    pub reach: Length,
}

impl Ring {
    /// Square metres of one ring with the footprint in it: `wl + 2r(w + l) + πr²`.
    pub fn area(&self) -> f64 {
        let (w, l, r) = (self.width.millimetres(), self.length.millimetres(), self.reach.millimetres());
        (w * l + 2.0 * r * (w + l) + std::f64::consts::PI * r * r) / 1e6
    }

    /// Half the breadth of a ring at so many millimetres from its middle, seen along the hive.
    fn half(&self, from_middle: f64) -> f64 {
        let r = self.reach.millimetres();
        let beyond = (from_middle.abs() - self.length.millimetres() / 2.0).max(0.0);
        self.width.millimetres() / 2.0 + (r * r - beyond * beyond).max(0.0).sqrt()
    }
}

/// Square metres of ground within reach of any of the hives, their footprints in it.
///
/// Cut into strips across; in the middle of each the pieces of the rings are joined exactly. Where an outline turns a
/// new strip begins, so a straight edge costs no accuracy.
pub fn area(stands: &[Stand], ring: &Ring) -> f64 {
    let (straight, r) = (ring.length.millimetres() / 2.0, ring.reach.millimetres());
    let mut turns = Vec::new();
    for stand in stands {
        for turn in [-straight - r, -straight, straight, straight + r] {
            turns.push(stand.along + turn);
        }
    }
    sort_by(&mut turns, f64::total_cmp);
    let mut stands = stands.to_vec();
    sort_by(&mut stands, |a, b| a.across.total_cmp(&b.across));
    let (mut sum, mut near, mut pieces) = (0.0, Vec::new(), Vec::new());
    for turn in turns.windows(2) {
        let [from, to] = turn else { continue };
        let high = to - from;
        near.clear();
        for stand in &stands {
            if ((from + to) / 2.0 - stand.along).abs() < straight + r {
                near.push(*stand);
            }
        }
        if high <= 0.0 || near.is_empty() {
            continue;
        }
        let strips = (high / (straight + r) * FINE).ceil() + LEAST_STRIPS;
        // A ring begins like a root: strips that are finer near the turns, as 3t² − 2t³ goes, leave no trace of that. The
        // weights of so many add up to 1 + 1 ÷ 2n².
        let whole = strips + 0.5 / strips;
        let mut strip = 0.5;
        while strip < strips {
            let t = strip / strips;
            let weight = 6.0 * t * (1.0 - t) / whole;
            sum += high * weight * joined(&near, ring, from + high * t * t * (3.0 - 2.0 * t), &mut pieces);
            strip += 1.0;
        }
    }
    sum / 1e6
}

/// Millimetres that the rings cover of a line across; all of `stands` are in reach of it.
fn joined(stands: &[Stand], ring: &Ring, at: f64, pieces: &mut Vec<(f64, f64)>) -> f64 {
    pieces.clear();
    for stand in stands {
        let half = ring.half(at - stand.along);
        pieces.push((stand.across - half, stand.across + half));
    }
    sort_by(pieces, |a, b| a.0.total_cmp(&b.0));
    let (mut covered, mut end) = (0.0, f64::NEG_INFINITY);
    for (from, to) in &*pieces {
        covered += (to - from.max(end)).max(0.0);
        end = end.max(*to);
    }
    covered
}
