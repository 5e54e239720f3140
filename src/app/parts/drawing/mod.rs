//! Hive, box and trap as drawings: lines in the colour of the text, so that night, full sun and grey print all
//! work, and every drawing says in words what it shows.
//!
//! Coordinates are whole numbers in a drawing's own units; the style sheet gives lines and grounds by class.

mod box_plan;
mod catch_chart;
mod cutaway;
mod hive_side;
mod looks_bar;
mod race_bar;
mod stage_bar;
mod stand_map;

pub use box_plan::box_plan;
pub use catch_chart::{Point, catch_chart};
pub use cutaway::cutaway;
pub use hive_side::{BoxSide, hive_side};
pub use looks_bar::looks_bar;
pub use race_bar::{Hours, race_bar};
pub use stage_bar::{Stretch, stage_bar};
pub use stand_map::{MapStand, stand_map};

use crate::app::el::{El, svg};

/// A drawing `width` by `height` that says `text` to those who do not see it.
fn drawing(class: &'static str, width: i32, height: i32, text: &str, shapes: Vec<El>) -> El {
    let view_box = ["0 0 ", &width.to_string(), " ", &height.to_string()].concat();
    svg("svg")
        .class(class)
        .attr("viewBox", &view_box)
        .attr("role", "img")
        .attr("aria-label", text)
        .kids(shapes)
}

/// A shape with numbers for attributes.
fn shape(tag: &str, class: &str, numbers: &[(&str, i32)]) -> El {
    numbers.iter().fold(svg(tag).class(class), |shape, (name, number)| shape.attr(name, &number.to_string()))
}

/// A rectangle.
fn rect(class: &'static str, x: i32, y: i32, width: i32, height: i32) -> El {
    shape("rect", class, &[("x", x), ("y", y), ("width", width), ("height", height)])
}

/// A line through points; closed when the class fills it.
fn path(class: &'static str, points: &[(i32, i32)], closed: bool) -> El {
    let mut d = String::new();
    for (index, (x, y)) in points.iter().enumerate() {
        d.push_str(if index == 0 { "M" } else { "L" });
        d.push_str(&x.to_string());
        d.push(' ');
        d.push_str(&y.to_string());
    }
    if closed {
        d.push('Z');
    }
    svg("path").class(class).attr("d", &d)
}

/// Words in a drawing, centred on a point.
fn words(x: i32, y: i32, text: &str) -> El {
    shape("text", "d-words", &[("x", x), ("y", y)]).text(text)
}

/// The nearest whole number, for drawing only.
#[allow(clippy::cast_possible_truncation)] // drawings are a few hundred units wide; a cast saturates
fn at(value: f64) -> i32 {
    value.round() as i32
}
