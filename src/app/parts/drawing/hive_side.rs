//! A hive from its left side.

use super::{at, drawing, path, rect, words};
use crate::almanac::quantity::Length;
use crate::almanac::stack::{Corner, Spot};
use crate::app::el::El;
use crate::app::wording::en::drawing as w;

/// One box of the stack.
#[derive(Clone, Debug, PartialEq)]
pub struct BoxSide {
    /// Depth of the box.
    pub depth: Length,
    /// Its traps.
    pub spots: Vec<Spot>,
}

const LEFT: i32 = 40;
const WIDTH: i32 = 220;

/// A hive from its left side, entrance to the left, boxes from the floor up. Traps on the near side are solid, those
/// on the far side hollow.
pub fn hive_side(boxes: &[BoxSide]) -> El {
    // A deep is 90 units high; a box without a depth is still drawn.
    let heights: Vec<i32> =
        boxes.iter().map(|side| at(side.depth.millimetres() * 90.0 / 244.475).clamp(24, 140)).collect();
    let height = heights.iter().sum::<i32>() + 64;
    let mut y = height - 42;
    let mut shapes = vec![
        // Floor with the landing board in front, and two rails under it.
        path(
            "d-wall",
            &[(LEFT - 30, y), (LEFT + WIDTH, y), (LEFT + WIDTH, y + 14), (LEFT - 30, y + 14)],
            true,
        ),
        rect("d-heavy-box", LEFT - 4, y - 8, 8, 8),
        rect("d-wall", LEFT + 20, y + 14, 26, 24),
        rect("d-wall", LEFT + WIDTH - 46, y + 14, 26, 24),
    ];
    for (index, (side, height)) in boxes.iter().zip(&heights).enumerate() {
        y -= height;
        shapes.push(rect("d-wall", LEFT, y, WIDTH, *height));
        shapes.push(words(LEFT + WIDTH / 2, y + height / 2 + 8, &(index + 1).to_string()));
        for spot in &side.spots {
            let (class, x) = match spot {
                Spot::Corner(Corner::FrontLeft) => ("d-trap", LEFT + 14),
                Spot::Corner(Corner::FrontRight) => ("d-trap-far", LEFT + 14),
                Spot::Corner(Corner::BackLeft) => ("d-trap", LEFT + WIDTH - 74),
                Spot::Corner(Corner::BackRight) => ("d-trap-far", LEFT + WIDTH - 74),
                Spot::Between(_) | Spot::Floor => continue,
            };
            shapes.push(rect(class, x, y + 7, 60, 15));
        }
    }
    shapes.push(path(
        "d-wall",
        &[(LEFT - 8, y - 18), (LEFT + WIDTH + 8, y - 18), (LEFT + WIDTH + 8, y + 2), (LEFT - 8, y + 2)],
        true,
    ));
    shapes.push(words(LEFT - 14, height - 64, "→"));
    let counts: Vec<usize> = boxes.iter().map(|side| side.spots.len()).collect();
    drawing("drawing side", LEFT + WIDTH + 16, height, &w::side(&counts), shapes)
}
