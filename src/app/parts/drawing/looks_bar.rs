//! Looks over weeks: each a tick, before it the stretch in which a brood must have hatched for that look to see it.

use super::{at, path, rect};
use crate::app::el::{El, svg};

const LEFT: f64 = 8.0;
const WIDTH: f64 = 304.0;

/// `looks` in days after the first day of the drawing, which spans `days`; each sees broods of the last `stay` days. `planned`
/// are looks to come. The words beside it say the same: to those who do not see it the drawing says nothing.
pub fn looks_bar(days: i32, looks: &[i32], stay: f64, planned: &[i32]) -> El {
    let days = days.max(1);
    let x = |day: f64| at(LEFT + WIDTH * (day / f64::from(days)).clamp(0.0, 1.0));
    let mut shapes = vec![path("d-thin", &[(x(0.0), 26), (x(f64::from(days)), 26)], false)];
    let mut week = 0;
    while week <= days {
        let tick = x(f64::from(week));
        shapes.push(path("d-thin", &[(tick, 26), (tick, 30)], false));
        week += 7;
    }
    // Before the first look nobody knows what there was to see.
    for pair in looks.windows(2) {
        if let [before, look] = pair {
            let from = x((f64::from(*look) - stay).max(f64::from(*before)));
            shapes.push(rect("d-span", from, 10, (x(f64::from(*look)) - from).max(2), 12));
        }
    }
    for (looks, class) in [(looks, "d-heavy"), (planned, "d-today")] {
        for look in looks {
            let look = x(f64::from(*look));
            shapes.push(path(class, &[(look, 2), (look, 30)], false));
        }
    }
    svg("svg")
        .class("drawing stage-bar")
        .attr("viewBox", "0 0 320 32")
        .attr("aria-hidden", "true")
        .kids(shapes)
}
