//! Which hives the load is for.

use crate::almanac::day::Day;
use crate::book::id::ThingId;
use crate::book::round;
use crate::book::standing::Standing;

/// Tags of the hives of `yard` that oil or traps are brought for on `day`, in the order in which they are walked: those
/// with a trap due, those that were skipped, and those with a place for a trap. None where trap work rests.
pub fn tags<'a>(standing: &'a Standing, yard: &'a ThingId, day: Day) -> Vec<&'a str> {
    let mut tags = Vec::new();
    if standing.yards.get(yard).is_some_and(|now| now.paused.is_some()) {
        return tags;
    }
    let loss = round::yard_loss(standing, yard);
    for (_, hive) in standing.hives_of(yard, true) {
        let due = || {
            let dues = round::trap_dues(standing, hive, loss, day);
            dues.iter().any(|due| round::wants_oil(hive, due, day))
        };
        if hive.wanting() > 0 || hive.skipped.is_some() || due() {
            tags.push(hive.tag.as_str());
        }
    }
    tags
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::quantity::Share;
    use crate::app::ledger::words::tests::{book, today};

    #[test]
    fn as_many_hives_are_named_as_are_counted_and_none_where_work_rests() {
        let book = book();
        let mut standing = book.standing().clone();
        let yards: Vec<ThingId> = standing.yards.keys().cloned().collect();
        let mut named = 0;
        for day in [today(), today().plus(5), today().plus(30)] {
            for yard in &yards {
                let need = round::yard_need(&standing, yard, day, Share::NONE);
                let tags = tags(&standing, yard, day);
                assert_eq!((tags.len(), need.wanting), (need.hives as usize, 0));
                named += tags.len();
            }
        }
        assert!(named > 0);
        // A place that is empty brings its hive in, and a pause leaves all out.
        let first = &yards[0];
        let far = today().plus(-400);
        let hive = standing.yards[first].order[0].clone();
        standing.hives.get_mut(&hive).unwrap().boxes[0].wants += 1;
        let tag = standing.hives[&hive].tag.clone();
        assert!(tags(&standing, first, far).contains(&tag.as_str()));
        standing.yards.get_mut(first).unwrap().paused = Some(today());
        assert!(tags(&standing, first, today()).is_empty());
    }
}
