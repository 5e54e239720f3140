//! Which hives the load is for.

use super::sum::{YardLoad, slimed};
use crate::almanac::day::Day;
use crate::book::round;
use crate::book::standing::Standing;

/// Tags of the hives that oil or traps are brought for by the load `of` a yard on its `day`, in the order in which they are
/// walked: those with a trap due, those that were skipped, those whose traps are made fresh after slime, and those with a
/// place for a trap. None where trap work rests.
pub fn tags<'a>(standing: &'a Standing, of: &'a YardLoad, day: Day) -> Vec<&'a str> {
    let mut tags = Vec::new();
    if of.resting.is_some() {
        return tags;
    }
    let loss = round::yard_loss(standing, &of.yard);
    let fresh = slimed(&of.urgent);
    for (id, hive) in standing.hives_of(&of.yard, true) {
        let due = || {
            let dues = round::trap_dues(standing, hive, loss, day);
            dues.iter().any(|due| round::wants_oil_with(id, hive, due, day, &fresh))
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
    use crate::almanac::quantity::{Share, VolumeUnit};
    use crate::app::ledger::words::tests::{book, today};
    use crate::app::load::sum;
    use crate::book::entry::SkipReason;
    use crate::book::id::{EntryId, ThingId};
    use crate::book::record::{Answer, Ask, Blank, Record};
    use crate::book::standing::RecordNow;

    fn load(standing: &Standing, yard: &ThingId, day: Day) -> sum::Load {
        sum::load(standing, std::slice::from_ref(yard), day, Share::NONE, None, VolumeUnit::Millilitre)
    }

    fn tags(standing: &Standing, yard: &ThingId, day: Day) -> Vec<String> {
        let load = load(standing, yard, day);
        super::tags(standing, &load.yards[0], day).into_iter().map(str::to_owned).collect()
    }

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
        // A hive that was skipped is seen, though nothing hangs in it.
        let bare = standing.yards[&yards[0]].order.last().unwrap().clone();
        let known = standing.hives[&bare].clone();
        let hive = standing.hives.get_mut(&bare).unwrap();
        hive.skipped = Some((today(), SkipReason::Weather));
        for part in &mut hive.boxes {
            (part.wants, part.traps) = (0, Vec::new());
        }
        let named = tags(&standing, &yards[0], today().plus(-400));
        let need = round::yard_need(&standing, &yards[0], today().plus(-400), Share::NONE);
        assert!(named.contains(&known.tag) && named.len() == need.hives as usize);
        *standing.hives.get_mut(&bare).unwrap() = known;
        // A place that is empty brings its hive in, and a pause leaves all out.
        let first = &yards[0];
        let far = today().plus(-400);
        let hive = standing.yards[first].order[0].clone();
        standing.hives.get_mut(&hive).unwrap().boxes[0].wants += 1;
        let tag = standing.hives[&hive].tag.clone();
        assert!(tags(&standing, first, far).contains(&tag));
        standing.yards.get_mut(first).unwrap().paused = Some(today());
        assert!(tags(&standing, first, today()).is_empty());
    }

    #[test]
    fn a_hive_with_slime_is_named_as_it_is_counted_though_none_of_its_traps_is_due() {
        let book = book();
        let mut standing = book.standing().clone();
        let yard = standing.yards.keys().next().unwrap().clone();
        let far = today().plus(-400);
        let before = tags(&standing, &yard, far);
        let named = |hive: &&ThingId| before.contains(&standing.hives[*hive].tag);
        let hive = standing.yards[&yard].order.iter().find(|hive| !named(hive)).unwrap().clone();
        let due = load(&standing, &yard, far).due;
        let mut record = Record::empty(Blank::Look, vec![hive.clone()]);
        let at = Blank::Look.fields().iter().position(|field| field.name == "larvae").unwrap();
        let Ask::Word(words) = Blank::Look.fields()[at].ask else { panic!("a word") };
        let many = words.iter().position(|word| *word == "many").unwrap();
        record.answers[at] = Some(Answer::Word(many.try_into().unwrap()));
        for part in &mut standing.hives.get_mut(&hive).unwrap().boxes {
            part.traps.iter_mut().for_each(|trap| (trap.service, trap.fresh) = (far.plus(-1), far.plus(-1)));
        }
        let look: EntryId = serde_json::from_str("\"zz-9000\"").unwrap();
        standing.records.insert(look, RecordNow { day: far, yard: Some(yard.clone()), record });
        let counted = load(&standing, &yard, far);
        assert!(counted.due > due && counted.yards[0].fresh(&hive));
        let tags = tags(&standing, &yard, far);
        assert_eq!((counted.yards[0].need.hives as usize, tags.len()), (before.len() + 1, before.len() + 1));
        assert!(tags.contains(&standing.hives[&hive].tag));
    }
}
