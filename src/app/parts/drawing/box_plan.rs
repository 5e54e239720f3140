//! A box from above, with its frames and the traps between them.

use super::{drawing, path, rect, words};
use crate::almanac::stack::{Corner, HiveSize, Spot};
use crate::app::el::El;
use crate::app::wording::en::drawing as w;

const WIDTH: i32 = 240;
const TOP: i32 = 34;
const BOTTOM: i32 = 284;

/// A box from above, as someone standing behind the hive sees it: the entrance side is at the top.
pub fn box_plan(spots: &[Spot], size: HiveSize) -> El {
    let frames = i32::from(size.usual_frames());
    let pitch = (WIDTH - 24) / frames;
    let left = (WIDTH - pitch * frames) / 2;
    let mut shapes = vec![
        words(WIDTH / 2, 26, w::FRONT),
        rect("d-wall", 6, TOP, WIDTH - 12, BOTTOM - TOP),
        path("d-heavy", &[(WIDTH / 2 - 50, TOP), (WIDTH / 2 + 50, TOP)], false),
    ];
    for frame in 0..frames {
        let x = left + pitch * frame + pitch / 2;
        shapes.push(path("d-thin", &[(x, TOP + 12), (x, BOTTOM - 12)], false));
    }
    // A trap hangs in the gap between the outermost frame and its neighbour.
    let gap = |number: i32| left + pitch * number;
    let (near, far) = (gap(1), gap(frames - 1));
    for spot in spots {
        let (x, y) = match spot {
            Spot::Corner(Corner::FrontLeft) => (near, TOP + 16),
            Spot::Corner(Corner::FrontRight) => (far, TOP + 16),
            Spot::Corner(Corner::BackLeft) => (near, BOTTOM - 86),
            Spot::Corner(Corner::BackRight) => (far, BOTTOM - 86),
            Spot::Between(number) => between(*number, frames, &gap),
            Spot::Floor => continue,
        };
        shapes.push(rect("d-trap", x - 9, y, 18, 70));
    }
    drawing("drawing plan", WIDTH, 292, &w::plan(spots), shapes)
}

/// Places beyond the corners fill the inner gaps, the entrance side first.
fn between(number: u8, frames: i32, gap: &impl Fn(i32) -> i32) -> (i32, i32) {
    let index = i32::from(number) - 1;
    let inner = (frames - 3).max(1);
    let y = if index < inner { TOP + 16 } else { BOTTOM - 86 };
    (gap(2 + index % inner), y)
}
