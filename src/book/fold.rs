//! From the log to what stands: every entry in effect, applied in order.

mod work;

use super::caught::Caught;
use super::entry::{Did, Entry, NewBox, NewTrap, What};
use super::id::{EntryId, ThingId};
use super::log::Log;
use super::record::Record;
use super::standing::{BoxNow, HiveNow, KindNow, RecordNow, Seen, Standing, TrapNow, YardNow};
use super::stock;
use super::twins::{Told, told, twins};
use super::urgent::tells;
use crate::almanac::day::Day;

/// What the whole log says.
pub fn fold(log: &Log) -> Standing {
    fold_until(log, None)
}

/// What the log says of everything up to the evening of `until`, or of every day.
pub fn fold_until(log: &Log, until: Option<Day>) -> Standing {
    fold_watched(log, until, &mut |_, _, _| ())
}

/// The same, and `watch` sees each line just before it takes effect, with the name under which its things are known and
/// what stands by then: one pass tells of many days.
pub fn fold_watched(
    log: &Log,
    until: Option<Day>,
    watch: &mut dyn FnMut(&Standing, &EntryId, &Entry),
) -> Standing {
    let lines = log.in_effect();
    // Whatever the day on which somebody said so: it was one hive all along.
    let mut standing = Standing { twins: twins(&lines), ..Standing::default() };
    for (root, entry) in lines {
        if entry.is_ground() || until.is_none_or(|until| entry.day <= until) {
            let first = log.get(root).map_or(entry.day, |first| first.day);
            watch(&standing, root, entry);
            apply_as(&mut standing, root, entry, first, None);
        }
    }
    standing
}

/// Goes through the whole log once. `evening` is shown the end of each day on which something was written, with the day
/// that comes next, just as [`fold_until`] would fold that day; `watch` sees each line as in [`fold_watched`]; `caught`
/// takes every count of beetles that the fold takes.
pub fn fold_days(
    log: &Log,
    mut caught: Option<&mut Vec<Caught>>,
    watch: &mut dyn FnMut(&Standing, &EntryId, &Entry),
    evening: &mut dyn FnMut(Day, Option<Day>, &Standing),
) {
    let lines = log.in_effect();
    let mut standing = Standing { twins: twins(&lines), ..Standing::default() };
    for (at, (root, entry)) in lines.iter().enumerate() {
        let first = log.get(root).map_or(entry.day, |first| first.day);
        watch(&standing, root, entry);
        apply_as(&mut standing, root, entry, first, caught.as_deref_mut());
        let next = lines.get(at + 1).map(|(_, next)| next.day);
        if !entry.is_ground() && next != Some(entry.day) {
            evening(entry.day, next, &standing);
        }
    }
}

/// Puts one more entry on top of what stands. Only right for an entry that takes effect after all others
/// ([`Log::would_be_last`]).
pub fn apply(standing: &mut Standing, entry: &Entry) {
    apply_as(standing, &entry.id, entry, entry.day, None);
}

/// `root` is the name under which the things of the entry are known, `first` the day its first line was for.
fn apply_as(
    standing: &mut Standing,
    root: &EntryId,
    entry: &Entry,
    first: Day,
    caught: Option<&mut Vec<Caught>>,
) {
    let other = match told(&standing.twins, root, entry) {
        Told::AsItIs => None,
        Told::Of(other) => Some(other),
        Told::NotAtAll => return,
    };
    let entry = other.as_deref().unwrap_or(entry);
    let known = kinds_known(standing, &entry.what);
    if apply_known(standing, root, entry, first, caught).is_none() || !known {
        standing.orphans += 1;
    }
}

/// Whether the kinds of all traps that `what` brings are here. The traps are put in all the same: somebody hung them.
fn kinds_known(standing: &Standing, what: &What) -> bool {
    let known = |trap: &NewTrap| standing.kinds.contains_key(&trap.kind);
    match what {
        What::Hive { boxes, .. } | What::BoxesOn { boxes, .. } => {
            boxes.iter().all(|part| part.traps.iter().all(known))
        }
        What::TrapsOn { traps, .. } => traps.iter().all(|placed| known(&placed.trap)),
        _ => true,
    }
}

/// None when the entry speaks of something this book does not hold.
fn apply_known(
    standing: &mut Standing,
    root: &EntryId,
    entry: &Entry,
    first: Day,
    caught: Option<&mut Vec<Caught>>,
) -> Option<()> {
    let day = entry.day;
    match &entry.what {
        What::Keeper(change) => standing.keeper.change(change),
        What::Kind(kind) => {
            if let Some(yard) = entry.yard.as_ref().and_then(|yard| standing.yards.get_mut(yard)) {
                yard.kind.get_or_insert_with(|| root.thing(0));
            }
            standing.kinds.insert(root.thing(0), KindNow { kind: kind.clone(), retired: false, stock: 0 });
        }
        What::KindChanged { kind, now } => {
            let known = standing.kinds.get_mut(kind)?;
            match &entry.bulk {
                // Written beside hives it says which kind they want. The kind itself may have been described anew since.
                Some(act) => _ = standing.meant.insert(act.clone(), kind.clone()),
                None => known.kind = now.clone(),
            }
        }
        What::KindRetired { kind } => standing.kinds.get_mut(kind)?.retired = true,
        What::Yard { name, zone } => {
            let yard = YardNow {
                name: name.clone(),
                zone: zone.clone(),
                since: day,
                paused: None,
                closed: None,
                order: Vec::new(),
                kind: None,
            };
            standing.yards.insert(root.thing(0), yard);
        }
        What::YardChanged { yard, name, zone } => {
            let now = standing.yards.get_mut(yard)?;
            set(&mut now.name, name.as_ref());
            set(&mut now.zone, zone.as_ref());
        }
        What::YardClosed { yard } => standing.yards.get_mut(yard)?.closed = Some(day),
        What::Season { yard, running } => {
            standing.yards.get_mut(yard)?.paused = if *running { None } else { Some(day) };
        }
        What::Order { yard, hives } => reorder(standing.yards.get_mut(yard)?, hives),
        What::Hive { yard, tag, size, boxes } => {
            let id = root.thing(0);
            // As they were written down, whatever their days: a start that is moved does not move the hive in the walk.
            let order = &mut standing.yards.get_mut(yard)?.order;
            let at = order.iter().position(|other| *other > id).unwrap_or(order.len());
            order.insert(at, id.clone());
            let hive = HiveNow {
                yard: yard.clone(),
                from: yard.clone(),
                act: entry.bulk.clone(),
                tag: tag.clone(),
                was: Vec::new(),
                size: *size,
                since: day,
                ended: None,
                back: None,
                // A hive that stood there earlier than was thought: its oil is of the day that was written first.
                boxes: new_boxes(root, 1, boxes, day, first.max(day)),
                off: Vec::new(),
                last: None,
                skipped: None,
                losses: Vec::new(),
                catches: Vec::new(),
                rose: None,
                spilled: None,
                look: None,
                checked: Vec::new(),
                doubles: Vec::new(),
            };
            stock::follow(&mut standing.kinds, &[], &hive, &entry.what);
            standing.hives.insert(id, hive);
        }
        What::HiveMoved { hive, to, .. } => {
            standing.yards.get(to)?;
            let now = standing.hives.get_mut(hive)?;
            let from = std::mem::replace(&mut now.yard, to.clone());
            if let Some(yard) = standing.yards.get_mut(&from) {
                yard.order.retain(|id| id != hive);
            }
            standing.yards.get_mut(to)?.order.push(hive.clone());
        }
        What::HiveSame { hive, is } => {
            let here = |hive: &ThingId| standing.hives.contains_key(standing.kept(hive));
            if !here(hive) || !here(is) {
                return None;
            }
        }
        What::Note { hive: None, .. } | What::Struck { .. } => {}
        What::Record(record) => return keep_record(standing, root, entry, record),
        what => {
            let hive = standing.hives.get_mut(&entry.hive()?)?;
            let before = stock::moves(what).then(|| stock::hanging(hive));
            let held = on_hive(hive, root, entry, caught);
            if let Some(before) = before {
                stock::follow(&mut standing.kinds, &before, hive, what);
            }
            held?;
        }
    }
    Some(())
}

fn keep_record(standing: &mut Standing, root: &EntryId, entry: &Entry, record: &Record) -> Option<()> {
    let now = RecordNow { day: entry.day, yard: entry.yard.clone(), record: record.clone() };
    standing.records.insert(root.clone(), now);
    // One that did not look for larvae wipes out nothing that was seen before.
    if tells(record) {
        for hive in &record.hives {
            if let Some(hive) = standing.hives.get_mut(hive) {
                hive.look = Some(root.clone());
            }
        }
    }
    let here = |hive: &ThingId| standing.hives.contains_key(hive);
    record.hives.iter().chain(record.named_hive()).all(here).then_some(())
}

fn on_hive(
    hive: &mut HiveNow,
    root: &EntryId,
    entry: &Entry,
    caught: Option<&mut Vec<Caught>>,
) -> Option<()> {
    let day = entry.day;
    match &entry.what {
        What::HiveChanged { tag, size, .. } => {
            if let Some(tag) = tag
                && *tag != hive.tag
            {
                let old = std::mem::replace(&mut hive.tag, tag.clone());
                hive.was.push(old);
            }
            set(&mut hive.size, size.as_ref());
        }
        What::HiveEnded { how, .. } => hive.ended = Some((how.clone(), day)),
        What::HiveBack { .. } => (hive.ended, hive.back) = (None, Some(day)),
        What::BoxesOn { above, boxes, .. } => {
            let at = usize::from(*above).min(hive.boxes.len());
            for (nth, part) in new_boxes(root, 0, boxes, day, day).into_iter().enumerate() {
                hive.boxes.insert(at + nth, part);
            }
        }
        What::BoxOff { part, .. } => {
            let at = hive.boxes.iter().position(|now| now.id == *part)?;
            hive.off.push((hive.boxes.remove(at).since, day));
        }
        What::BoxWants { part, traps, .. } => box_mut(hive, part)?.wants = *traps,
        What::TrapsOn { traps, .. } => {
            // A box may have been taken off on another phone: the traps for the others hang all the same.
            let mut held = Some(());
            for (nth, placed) in (0..).zip(traps) {
                match box_mut(hive, &placed.part) {
                    Some(part) => part.traps.push(new_trap(root.thing(nth), &placed.trap, day, day)),
                    None => held = None,
                }
            }
            return held;
        }
        What::TrapsOff { traps, .. } => {
            known(hive, traps)?;
            for part in &mut hive.boxes {
                part.traps.retain(|trap| !traps.contains(&trap.id));
            }
        }
        What::Check(work) => {
            known(hive, work.traps.as_deref().unwrap_or_default())?;
            hive.last = Some(Seen { day, did: Some(work.did), entry: root.clone() });
            hive.skipped = None;
            // Work on a later day is the second look.
            hive.spilled =
                if work.did == Did::Spilled { Some(day) } else { hive.spilled.filter(|on| *on == day) };
            let told = work::already(hive, root, entry, work);
            work::check(hive, work, root, day, &told, caught);
        }
        What::Skip { why, .. } => {
            hive.last = Some(Seen { day, did: None, entry: root.clone() });
            hive.skipped = Some((day, *why));
        }
        // A note changes nothing that stands; whatever is not about a hive never comes here.
        _ => {}
    }
    Some(())
}

fn new_boxes(root: &EntryId, first: u16, boxes: &[NewBox], day: Day, filled: Day) -> Vec<BoxNow> {
    let mut next = first;
    let mut name = || {
        let id = root.thing(next);
        next += 1;
        id
    };
    boxes
        .iter()
        .map(|part| {
            let id = name();
            let traps = part.traps.iter().map(|trap| new_trap(name(), trap, day, filled)).collect();
            BoxNow { id, depth: part.depth, wants: part.wants, since: day, traps }
        })
        .collect()
}

fn new_trap(id: ThingId, trap: &NewTrap, day: Day, filled: Day) -> TrapNow {
    TrapNow {
        id,
        kind: trap.kind.clone(),
        spot: trap.spot,
        placed: day,
        service: filled,
        fresh: filled,
        level: trap.level.map(|level| (filled, level)),
        counting: filled,
        trouble: None,
        trouble_since: None,
        level_before: None,
    }
}

/// None when one of `traps` does not hang in `hive`.
fn known(hive: &HiveNow, traps: &[ThingId]) -> Option<()> {
    traps.iter().all(|id| hive.traps().any(|trap| trap.id == *id)).then_some(())
}

fn box_mut<'a>(hive: &'a mut HiveNow, id: &ThingId) -> Option<&'a mut BoxNow> {
    hive.boxes.iter_mut().find(|part| part.id == *id)
}

fn reorder(yard: &mut YardNow, named: &[ThingId]) {
    let old = std::mem::take(&mut yard.order);
    for id in named.iter().chain(&old) {
        if old.contains(id) && !yard.order.contains(id) {
            yard.order.push(id.clone());
        }
    }
}

fn set<T: Clone>(place: &mut T, new: Option<&T>) {
    if let Some(new) = new {
        place.clone_from(new);
    }
}
