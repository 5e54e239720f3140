//! What the load for a trip is where a hive wants somebody on the same day.

use crate::support::day;
use crate::yard_decides::{Says::Word, three};
use crate::{Yard, trap};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::{Share, Volume};
use beetle_almanac::book::entry::Did;
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::record::Blank;
use beetle_almanac::book::round::yard_need_with;
use beetle_almanac::book::urgent::urgent;

fn millilitres(whole: u32) -> Volume {
    Volume::from_millilitres(f64::from(whole)).unwrap()
}

#[test]
fn the_oil_for_fresh_traps_in_a_slimed_hive_is_carried_though_none_is_due_and_no_more_once_they_are_fresh() {
    let mut yard = three();
    let found = day("2026-05-05");
    yard.tells("2026-05-05", "1", Blank::Look, &[("larvae", Word("many"))]);
    let since = urgent(yard.book.standing(), &yard.hive("1"), found).unwrap().since;
    let fresh = [(yard.hive("1"), since)];
    let oil = |yard: &Yard, on: &str, fresh: &[(ThingId, Day)]| {
        let need = yard_need_with(yard.book.standing(), &yard.id, day(on), Share::QUARTER, fresh);
        (need.hives, need.traps, need.oil.sum)
    };
    assert_eq!(oil(&yard, "2026-05-05", &[]), (0, 0, Volume::ZERO), "none is due");
    // Its four traps of 20 mL each, filled to a half.
    assert_eq!(oil(&yard, "2026-05-05", &fresh), (1, 4, millilitres(40)));
    yard.log("1", found, Did::Replaced, (None, None));
    assert_eq!(
        oil(&yard, "2026-05-06", &fresh),
        (0, 0, Volume::ZERO),
        "they are fresh since the day it was found"
    );
}

#[test]
fn a_trap_that_is_used_again_is_filled_anew_and_not_topped_up_where_the_hive_is_slimed() {
    let mut kind = trap();
    kind.reusable = true;
    let mut yard = Yard::with(&["1"], day("2026-05-01"), &kind);
    yard.log("1", day("2026-05-11"), Did::ToppedUp, (Some(40), Some(50)));
    let oil = |fresh: &[(ThingId, Day)]| {
        let day = day("2026-05-21");
        let need = yard_need_with(yard.book.standing(), &yard.id, day, Share::QUARTER, fresh);
        need.oil.sum
    };
    assert_eq!(oil(&[]), Volume::ZERO, "due in three days");
    assert_eq!(oil(&[(yard.hive("1"), day("2026-05-12"))]), millilitres(40));
    assert_eq!(oil(&[(yard.id.clone(), day("2026-05-12"))]), Volume::ZERO, "not this hive");
}
