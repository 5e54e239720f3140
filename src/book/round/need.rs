//! What has to be carried into a yard on a day, and of which kind new traps will be.

use super::{TrapDue, expected_level, hive_loss, look_by, trap_dues, wants_oil, yard_loss};
use crate::almanac::day::Day;
use crate::almanac::oil::{self, OilForVisit, OilNeed, Service};
use crate::almanac::quantity::Share;
use crate::book::id::ThingId;
use crate::book::standing::{HiveNow, KindNow, Standing, TrapNow, Trouble};

/// What a yard needs on a day.
#[derive(Clone, Debug, PartialEq)]
pub struct YardNeed {
    /// Hives to see: due, skipped, or with traps to be made fresh.
    pub hives: u32,
    /// Hives that are not among those, but have to be looked at again by that day: oil spilled there.
    pub looks: u32,
    /// Traps in them that are due or to be made fresh, or whose hive was skipped.
    pub traps: u32,
    /// New traps to bring: for due traps that are missing, and for the places in `wanting`.
    pub missing: u32,
    /// Places meant to carry a trap that has never been put in.
    pub wanting: u32,
    /// Traps to work on that are thrown away when they are full, but for those in `anew`.
    pub disposable: u32,
    /// The kind of each trap that is thrown away because its hive has slime: a new one takes its place.
    pub anew: Vec<ThingId>,
    /// Oil to bring every due trap to its fill, and for the first fill of those still to be put in.
    pub oil: OilForVisit,
}

/// What has to be carried into `yard` on `day`: the traps due by then and those of skipped hives, brought from their known
/// level to their fill, and a first fill for every trap still to be put in, of the kind [`likely_kind`] names.
///
/// A reusable trap is topped up from the level it will have sunk to; a disposable one is replaced and filled anew, and
/// so is a trap whose level or loss is not known, so that the bottle is never too small.
pub fn yard_need(standing: &Standing, yard: &ThingId, day: Day, reserve: Share) -> YardNeed {
    yard_need_with(standing, yard, day, reserve, &[])
}

/// The same where the traps of the hives in `fresh` are emptied and filled anew, due or not, unless somebody did it on or
/// after the day that stands beside the hive.
pub fn yard_need_with(
    standing: &Standing,
    yard: &ThingId,
    day: Day,
    reserve: Share,
    fresh: &[(ThingId, Day)],
) -> YardNeed {
    let yard_loss = yard_loss(standing, yard);
    let (mut hives, mut looks, mut traps, mut missing, mut wanting, mut unnamed) = (0, 0, 0, 0, 0, 0);
    let (mut disposable, mut anew) = (0, Vec::new());
    let mut needs: Vec<OilNeed<'_>> = Vec::new();
    let mut first: Vec<OilNeed<'_>> = Vec::new();
    let resting = standing.yards.get(yard).is_some_and(|yard| yard.paused.is_some());
    for (id, hive) in standing.hives_of(yard, true).filter(|_| !resting) {
        let places = hive.wanting();
        if places > 0 {
            wanting += places;
            let kind = likely_kind(standing, yard, Some(hive)).and_then(|kind| standing.kinds.get(kind));
            match kind.map(|now| &now.kind) {
                Some(kind) => add_need(
                    &mut first,
                    OilNeed { kind, traps: places, service: Service::First, target: kind.fill },
                ),
                None => unnamed += places,
            }
        }
        let mut due = trap_dues(standing, hive, yard_loss, day);
        due.retain(|due| wants_oil_with(id, hive, due, day, fresh));
        if due.is_empty() && hive.skipped.is_none() {
            looks += u32::from(look_by(hive).is_some_and(|by| by <= day));
            continue;
        }
        hives += 1;
        let loss = hive_loss(hive, yard_loss);
        for due in due {
            let Some(trap) = hive.traps().find(|trap| trap.id == due.trap) else { continue };
            traps += 1;
            missing += u32::from(trap.trouble == Some(Trouble::Missing));
            let Some(now) = standing.kinds.get(&trap.kind) else {
                unnamed += 1;
                continue;
            };
            let made_fresh = made_fresh(id, trap, fresh);
            if !now.kind.reusable && trap.trouble != Some(Trouble::Missing) {
                if made_fresh {
                    anew.push(trap.kind.clone());
                } else {
                    disposable += 1;
                }
            }
            let kept = now.kind.reusable && trap.trouble.is_none() && !made_fresh;
            let sunk = expected_level(trap, loss, day).filter(|_| kept);
            let service = sunk.map_or(Service::Fill, |from| Service::TopUp { from });
            add_need(&mut needs, OilNeed { kind: &now.kind, traps: 1, service, target: now.kind.fill });
        }
    }
    needs.append(&mut first);
    let mut oil = oil::oil_for_visit(&needs, reserve);
    // Where no kind is described at all, nobody knows what a trap takes.
    oil.unknown += unnamed;
    YardNeed { hives, looks, traps, missing: missing + wanting, wanting, disposable, anew, oil }
}

/// Whether a trap of `hive`, which is named `id`, gets oil on `day`: as [`wants_oil`] says, or because its hive is in
/// `fresh` and nobody worked on it since the day there.
pub fn wants_oil_with(
    id: &ThingId,
    hive: &HiveNow,
    due: &TrapDue,
    day: Day,
    fresh: &[(ThingId, Day)],
) -> bool {
    wants_oil(hive, due, day) || hive.traps().any(|trap| trap.id == due.trap && made_fresh(id, trap, fresh))
}

/// Whether `trap` of the hive that is named `id` is emptied and filled anew because its hive is in `fresh`. Who only topped
/// it up left in it what it had caught.
pub fn made_fresh(id: &ThingId, trap: &TrapNow, fresh: &[(ThingId, Day)]) -> bool {
    fresh.iter().any(|(of, since)| of == id && trap.fresh < *since)
}

/// The kind a new trap will most likely be of: the one most used in that hive, else the one that was chosen when the hive
/// came into the book, else the one that was described when its yard was kept, else the one most used in its yard, else
/// the only one that is offered (in a yard of the demonstration, of the demonstration's).
pub fn likely_kind<'a>(
    standing: &'a Standing,
    yard: &'a ThingId,
    hive: Option<&'a HiveNow>,
) -> Option<&'a ThingId> {
    let offered = |(id, now): &(&ThingId, &KindNow)| !now.retired && id.is_demo() == yard.is_demo();
    let known = |kind: &ThingId| standing.kinds.get_key_value(kind).filter(offered).map(|(id, _)| id);
    let kept = |yard: &ThingId| known(standing.yards.get(yard)?.kind.as_ref()?);
    let chosen = || known(standing.meant.get(hive?.act.as_ref()?)?);
    let own = most_used(hive.into_iter()).or_else(chosen).or_else(|| kept(&hive?.from));
    let near = || most_used(standing.hives_of(yard, true).map(|(_, hive)| hive)).or_else(|| kept(yard));
    let only = || {
        let mut kinds = standing.kinds.iter().filter(offered).map(|(id, _)| id);
        kinds.next().filter(|_| kinds.next().is_none())
    };
    own.or_else(near).or_else(only)
}

/// The kind most traps of `hives` are of; of two that are even, the one met first.
fn most_used<'a>(hives: impl Iterator<Item = &'a HiveNow>) -> Option<&'a ThingId> {
    let mut uses: Vec<(&ThingId, u32)> = Vec::new();
    for kind in hives.flat_map(HiveNow::traps).map(|trap| &trap.kind) {
        match uses.iter_mut().find(|(known, _)| *known == kind) {
            Some((_, count)) => *count += 1,
            None => uses.push((kind, 1)),
        }
    }
    let most = uses.iter().map(|(_, count)| *count).max()?;
    uses.into_iter().find(|(_, count)| *count == most).map(|(kind, _)| kind)
}

/// Traps of one kind at one level make one line of the sum.
fn add_need<'a>(needs: &mut Vec<OilNeed<'a>>, need: OilNeed<'a>) {
    let same = |known: &&mut OilNeed<'a>| {
        std::ptr::eq(known.kind, need.kind) && known.service == need.service && known.target == need.target
    };
    match needs.iter_mut().find(same) {
        Some(known) => known.traps += need.traps,
        None => needs.push(need),
    }
}
