//! Hours as a bar: those that are gone filled, the goal and the limit as marks, a first hatch as a point.

use super::{at, path, rect};
use crate::app::el::{El, svg};

const LEFT: f64 = 10.0;
const WIDTH: f64 = 300.0;

/// Minutes after the bees were off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hours {
    /// So many are gone.
    pub gone: i32,
    /// The goal.
    pub goal: i32,
    /// The limit: the bar ends here.
    pub limit: i32,
    /// An egg may hatch; left out where that is behind the limit.
    pub hatch: Option<i32>,
}

/// The bar. The words beside it say the same: to those who do not see it the drawing says nothing.
pub fn race_bar(hours: Hours) -> El {
    let x = |minutes: i32| {
        let share = f64::from(minutes) / f64::from(hours.limit.max(1));
        at(LEFT + WIDTH * share.clamp(0.0, 1.0))
    };
    let (from, gone) = (x(0), x(hours.gone));
    let mut shapes = vec![rect("d-span", from, 8, (gone - from).max(1), 16)];
    shapes.push(path("d-thin", &[(from, 8), (x(hours.limit), 8), (x(hours.limit), 24), (from, 24)], true));
    for mark in [hours.goal, hours.limit] {
        shapes.push(path("d-heavy", &[(x(mark), 2), (x(mark), 30)], false));
    }
    if let Some(hatch) = hours.hatch.filter(|hatch| *hatch <= hours.limit) {
        let hatch = x(hatch);
        shapes.push(path("d-likely", &[(hatch, 4), (hatch + 7, 16), (hatch, 28), (hatch - 7, 16)], true));
    }
    svg("svg")
        .class("drawing stage-bar")
        .attr("viewBox", "0 0 320 32")
        .attr("aria-hidden", "true")
        .kids(shapes)
}
