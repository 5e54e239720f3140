//! How full the shelf is.

use crate::phone::Memory;
use beetle_almanac::store::headroom::{PLAN, Used, units, used};

#[test]
fn room_is_counted_as_browsers_count_it() {
    assert_eq!((units(""), units("abc"), units("½€"), units("🐝")), (0, 3, 2, 2));
    let phone = Memory::new();
    assert_eq!(used(&phone), Ok(Used { own: 0, all: 0 }));
    phone.lay("beetle-almanac:x", "🐝");
    phone.lay("other", "12345");
    assert_eq!(used(&phone), Ok(Used { own: 18, all: 28 }));
}

#[test]
fn a_share_is_rounded_up_and_counts_the_neighbours() {
    assert_eq!(Used { own: 0, all: 0 }.per_cent(), 0);
    assert_eq!(Used { own: 0, all: 1 }.per_cent(), 1);
    assert_eq!(Used { own: 1, all: PLAN / 2 }.per_cent(), 50);
    assert_eq!(Used { own: 1, all: PLAN / 2 + 1 }.per_cent(), 51);
    assert_eq!(Used { own: 1, all: PLAN * 2 }.per_cent(), 200);
}
