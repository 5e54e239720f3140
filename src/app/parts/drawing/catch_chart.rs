//! The catch of a hive over time: a point for each count with its limits, and a stroke where its traps changed.

use super::{at, drawing, path, rect, shape};
use crate::app::el::El;

const LEFT: f64 = 8.0;
const WIDTH: f64 = 304.0;
const TOP: f64 = 4.0;
const FLOOR: f64 = 84.0;

/// A count.
#[derive(Clone, Copy)]
pub struct Point {
    /// Its day, as a share of the time drawn.
    pub x: f64,
    /// The rate at the fewest and at the most; without an upper end it goes on.
    pub seen: (f64, Option<f64>),
    /// Its limits.
    pub limits: (f64, Option<f64>),
    /// The traps changed before it.
    pub changed: bool,
}

/// `points` in their order, on a scale that ends at `top`; `parted` is where the two times meet, as a share of the time drawn,
/// below 0 where that is before it.
pub fn catch_chart(text: &str, points: &[Point], top: f64, parted: f64) -> El {
    let x = |share: f64| at(LEFT + WIDTH * share.clamp(0.0, 1.0));
    let y =
        |rate: Option<f64>| at(rate.map_or(TOP, |rate| FLOOR - (FLOOR - TOP) * (rate / top).clamp(0.0, 1.0)));
    let floor = y(Some(0.0));
    // A point of the last day does not stick out.
    let mut shapes = vec![path("d-thin", &[(x(0.0), floor), (x(1.0) + 6, floor)], false)];
    if parted >= 0.0 {
        shapes.push(path("d-thin", &[(x(parted), y(None)), (x(parted), floor + 6)], false));
    }
    let mut before = 0.0;
    for point in points {
        if point.changed {
            let between = x(f64::midpoint(before, point.x));
            shapes.push(path("d-today", &[(between, y(None)), (between, floor)], false));
        }
        before = point.x;
        let (at, low, high) = (x(point.x), y(Some(point.seen.0)), y(point.seen.1));
        shapes.push(path("d-limit", &[(at, y(Some(point.limits.0))), (at, y(point.limits.1))], false));
        if high < low {
            shapes.push(rect("d-drop", at - 4, high, 8, low - high));
        } else {
            shapes.push(shape("circle", "d-drop", &[("cx", at), ("cy", low), ("r", 5)]));
        }
    }
    drawing("drawing", 320, 92, text, shapes)
}
