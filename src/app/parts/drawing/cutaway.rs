//! A trap cut open lengthways: level, and tilted until it spills.

use super::{at, drawing, path, words};
use crate::app::el::{El, svg};
use crate::app::wording::en::drawing as w;

/// Longest side of the trap in the drawing.
const LONG: f64 = 300.0;

/// A trap `length` long and `depth` deep (same unit), filled to `fill` (0–1), beside the same trap tilted until its
/// oil reaches the rim. `caption` and `tilt` are the words under the two.
pub fn cutaway(length: f64, depth: f64, fill: f64, caption: &str, tilt: &str) -> Option<El> {
    if !(length > 0.0 && depth > 0.0) {
        return None;
    }
    let scale = LONG / length.max(depth);
    // Very flat or very narrow traps are drawn thicker than they are, or there would be nothing to see.
    let (long, deep) = ((length * scale).max(48.0), (depth * scale).max(48.0));
    // From the sides as drawn, so that the surface is level on the screen.
    let (rise, run) = if fill >= 0.5 { (2.0 * (1.0 - fill) * deep, long) } else { (deep, 2.0 * fill * long) };
    // Sine and cosine from the sides: the functions themselves would cost 9 KB.
    let slope = (rise * rise + run * run).sqrt();
    let (sin, cos) = (rise / slope, run / slope);
    let (level_x, tilted_x) = (20.0, 20.0 + long + 60.0);
    let high = long * sin + deep * cos;
    let floor = high.max(deep) + 30.0;
    let width = at(tilted_x + long * cos + deep * sin + 40.0);

    let level = |x: f64, y: f64| (at(level_x + x), at(floor - y));
    // The tilted trap stands on its right lower corner, which is the lowest point of the turn.
    let pivot = tilted_x + long * cos;
    let tilted = |x: f64, y: f64| {
        let (from_right, up) = (long - x, y);
        (at(pivot - from_right * cos + up * sin), at(floor - from_right * sin - up * cos))
    };
    let oil = [level(0.0, 0.0), level(long, 0.0), level(long, deep * fill), level(0.0, deep * fill)];
    let surface = spilling(long, deep, fill);
    let spilled: Vec<(i32, i32)> = surface.iter().map(|(x, y)| tilted(*x, *y)).collect();
    let mut shapes = vec![path("d-oil", &oil, true), path("d-oil", &spilled, true)];
    for place in [&level as &dyn Fn(f64, f64) -> (i32, i32), &tilted] {
        let walls = [place(0.0, deep), place(0.0, 0.0), place(long, 0.0), place(long, deep)];
        shapes.push(path("d-heavy", &walls, false));
    }
    let ground = at(floor) + 6;
    shapes.push(path("d-thin", &[(8, ground), (width - 8, ground)], false));
    let (lip_x, lip_y) = tilted(long, deep);
    shapes.push(drop(lip_x + 14, lip_y + 6));
    shapes.push(words(at(level_x + long / 2.0), ground + 44, caption));
    shapes.push(words(at(pivot - long * cos / 2.0), ground + 44, tilt));
    Some(drawing("drawing cutaway", width, ground + 60, &w::cutaway(caption, tilt), shapes))
}

/// The drop that goes over the rim, hanging from a point.
fn drop(x: i32, y: i32) -> El {
    let d = ["M", &x.to_string(), " ", &y.to_string(), "c4 12 12 18 12 28a12 12 0 0 1-24 0c0-10 8-16 12-28z"];
    svg("path").class("d-drop").attr("d", &d.concat())
}

/// Outline of the oil, in the trap's own axes, at the moment it reaches the right rim. The area is that of the
/// level fill.
fn spilling(long: f64, deep: f64, fill: f64) -> Vec<(f64, f64)> {
    if fill >= 0.5 {
        let left = deep * (2.0 * fill - 1.0);
        vec![(0.0, 0.0), (long, 0.0), (long, deep), (0.0, left)]
    } else {
        let wet = 2.0 * fill * long;
        vec![(long - wet, 0.0), (long, 0.0), (long, deep)]
    }
}
