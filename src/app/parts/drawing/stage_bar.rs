//! A stretch of days as a bar: earliest, likely, latest, a tick for each week, today.

use super::{at, path, rect};
use crate::app::el::{El, svg};

const LEFT: f64 = 8.0;
const WIDTH: f64 = 304.0;
const HEIGHT: i32 = 30;

/// Three days, counted from the first day of the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    /// Earliest.
    pub from: i32,
    /// Likely, as far as it comes.
    pub likely: Option<i32>,
    /// Latest.
    pub to: i32,
}

/// The bar in a drawing of `days` days, `today` marked where it lies in it. The words beside it say the same: to those who
/// do not see it the drawing says nothing.
pub fn stage_bar(days: i32, today: i32, stretch: Stretch) -> El {
    let days = days.max(1);
    let x = |day: i32| at(LEFT + WIDTH * f64::from(day.clamp(0, days)) / f64::from(days));
    let mut shapes = vec![path("d-thin", &[(x(0), HEIGHT - 4), (x(days), HEIGHT - 4)], false)];
    let mut week = 0;
    // On a long line a tick for each week would be a grey stripe.
    let step = if days > 200 { 28 } else { 7 };
    while week <= days {
        shapes.push(path("d-thin", &[(x(week), HEIGHT - 8), (x(week), HEIGHT)], false));
        week += step;
    }
    let (from, to) = (x(stretch.from), x(stretch.to));
    shapes.push(rect("d-span", from, 6, (to - from).max(3), 14));
    if let Some(likely) = stretch.likely.map(x) {
        let diamond = [(likely, 1), (likely + 7, 13), (likely, 25), (likely - 7, 13)];
        shapes.push(path("d-likely", &diamond, true));
    }
    if (0..=days).contains(&today) {
        shapes.push(path("d-today", &[(x(today), 0), (x(today), HEIGHT)], false));
    }
    svg("svg")
        .class("drawing stage-bar")
        .attr("viewBox", ["0 0 320 ", &HEIGHT.to_string()].concat().as_str())
        .attr("aria-hidden", "true")
        .kids(shapes)
}
