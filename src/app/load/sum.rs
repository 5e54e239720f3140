//! The load for several yards on one day.

use crate::almanac::day::Day;
use crate::almanac::oil::{bottles, carried};
use crate::almanac::quantity::{Share, Volume, VolumeUnit};
use crate::book::id::ThingId;
use crate::book::round::{self, YardNeed};
use crate::book::standing::{Standing, Trouble};
use crate::book::urgent::{self, Because, Urgent};

/// Spare traps, in per cent of the traps that are due.
pub const SPARE_PERCENT: u32 = 5;
/// Most walks in a season: one a day.
pub const MOST_WALKS: u32 = 366;
/// Fewest spare traps anyone drives out with.
pub const SPARE_LEAST: u32 = 2;

/// What one yard needs.
#[derive(Clone, Debug, PartialEq)]
pub struct YardLoad {
    /// Which.
    pub yard: ThingId,
    /// Its name.
    pub name: String,
    /// Hives in care.
    pub hives: u32,
    /// Trap work rests since this day: nothing is due.
    pub resting: Option<Day>,
    /// Hives, traps, oil.
    pub need: YardNeed,
    /// What hives want on the same day, whatever is due, in the order of the walk.
    pub urgent: Vec<(ThingId, Urgent)>,
}

impl YardLoad {
    /// Whether fresh traps for `hive` are in the sum because of what its card says.
    pub fn fresh(&self, hive: &ThingId) -> bool {
        self.resting.is_none() && slimed(&self.urgent).iter().any(|(of, _)| of == hive)
    }
}

/// Traps of one kind that are missing from hives.
#[derive(Clone, Debug, PartialEq)]
pub struct KindNeed {
    /// Which.
    pub kind: ThingId,
    /// Missing traps, and empty places in hives that carry this kind.
    pub traps: u32,
}

/// The load for a trip.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// Each yard on the way.
    pub yards: Vec<YardLoad>,
    /// Traps due on all of them.
    pub due: u32,
    /// Traps missing, and places without one.
    pub place: u32,
    /// New ones that take the place of traps of hives with slime.
    pub anew: u32,
    /// Due traps besides that are thrown away when they are full.
    pub disposable: u32,
    /// Spare traps where the keeper says nothing else: see [`spare`].
    pub spare: u32,
    /// Oil for all of them.
    pub oil: Volume,
    /// Oil and reserve.
    pub with_reserve: Volume,
    /// Oil and reserve, up to the next step of the keeper's unit.
    pub carry: Volume,
    /// Bottles that hold it; none without a size.
    pub bottles: Option<u32>,
    /// Traps nobody has measured.
    pub unknown: u32,
}

impl Load {
    /// Traps to bring that are not spare.
    pub fn to_place(&self) -> u32 {
        self.place.saturating_add(self.anew)
    }

    /// The part of `anew` that is of `kind`.
    pub fn anew_of(&self, kind: &ThingId) -> u32 {
        self.yards.iter().flat_map(|yard| &yard.need.anew).map(|of| u32::from(of == kind)).sum()
    }
}

/// The load for these yards on `day`, in steps of the unit the keeper reads.
pub fn load(
    standing: &Standing,
    yards: &[ThingId],
    day: Day,
    reserve: Share,
    bottle: Option<Volume>,
    unit: VolumeUnit,
) -> Load {
    let urgent = |yard| urgent::of_yard(standing, yard, day);
    let yards: Vec<YardLoad> =
        yards.iter().filter_map(|yard| yard_load(standing, yard, day, reserve, urgent(yard))).collect();
    let total = |count: fn(&YardLoad) -> u32| yards.iter().map(count).fold(0, u32::saturating_add);
    let due = total(|yard| yard.need.traps);
    let place = total(|yard| yard.need.missing);
    let oil = yards.iter().fold(Volume::ZERO, |sum, yard| sum.plus(yard.need.oil.sum));
    let with_reserve = oil.times(1.0 + reserve.fraction());
    let carry = carried(with_reserve, unit);
    Load {
        due,
        place,
        anew: total(|yard| u32::try_from(yard.need.anew.len()).unwrap_or(u32::MAX)),
        disposable: total(|yard| yard.need.disposable),
        spare: spare(due.saturating_add(total(|yard| yard.need.wanting))),
        oil,
        with_reserve,
        carry,
        bottles: bottle.and_then(|bottle| bottles(carry, bottle)),
        unknown: total(|yard| yard.need.oil.unknown),
        yards,
    }
}

/// What `yard` needs on `day`, on which its hives want what `urgent` says.
pub fn yard_load(
    standing: &Standing,
    yard: &ThingId,
    day: Day,
    reserve: Share,
    urgent: Vec<(ThingId, Urgent)>,
) -> Option<YardLoad> {
    let now = standing.yards.get(yard)?;
    Some(YardLoad {
        yard: yard.clone(),
        name: now.name.clone(),
        hives: u32::try_from(standing.hives_of(yard, true).count()).unwrap_or(u32::MAX),
        resting: now.paused,
        need: round::yard_need_with(standing, yard, day, reserve, &slimed(&urgent)),
        urgent,
    })
}

/// Hives of `urgent` with slime or many larvae, and since when: their traps are made fresh, due or not.
pub fn slimed(urgent: &[(ThingId, Urgent)]) -> Vec<(ThingId, Day)> {
    let slimed = urgent.iter().filter(|(_, urgent)| urgent.because == Because::Slime);
    slimed.map(|(hive, urgent)| (hive.clone(), urgent.since)).collect()
}

/// Spare traps for `due` traps: 5 %, at least 2, none where nothing is due.
pub fn spare(due: u32) -> u32 {
    if due == 0 { 0 } else { due.saturating_mul(SPARE_PERCENT).div_ceil(100).max(SPARE_LEAST) }
}

/// Traps to buy, kind by kind: those missing from the hives of `yards`, and empty places under the kind that
/// [`round::likely_kind`] names. Where trap work rests nothing is.
pub fn missing(standing: &Standing, yards: &[ThingId]) -> Vec<KindNeed> {
    let hangs = |kind: &ThingId| {
        let mut hives = yards.iter().flat_map(|yard| standing.hives_of(yard, true));
        hives.any(|(_, hive)| hive.traps().any(|trap| trap.kind == *kind))
    };
    // A kind that is no longer offered is still bought for as long as it hangs in a hive.
    let offered = || standing.kinds.iter().filter(|(id, now)| !now.retired || hangs(id)).map(|(id, _)| id);
    let mut needs: Vec<KindNeed> = offered().map(|kind| KindNeed { kind: kind.clone(), traps: 0 }).collect();
    let mut add = |kind: &ThingId, traps: u32| {
        if let Some(need) = needs.iter_mut().find(|need| need.kind == *kind) {
            need.traps += traps;
        }
    };
    for yard in yards.iter().filter(|yard| !rests(standing, yard)) {
        for (_, hive) in standing.hives_of(yard, true) {
            for trap in hive.traps().filter(|trap| trap.trouble == Some(Trouble::Missing)) {
                add(&trap.kind, 1);
            }
            if let Some(kind) = round::likely_kind(standing, yard, Some(hive)) {
                add(kind, hive.wanting());
            }
        }
    }
    needs
}

/// Nobody walks there, so nothing is used up: the season is of the other yards.
fn rests(standing: &Standing, yard: &ThingId) -> bool {
    standing.yards.get(yard).is_some_and(|now| now.paused.is_some())
}

/// `spare` traps shared out among the kinds of `needs`: each in turn to the kind that has fewest of them for what is used
/// of it in those of `yards` where work does not rest, its empty places counted (the divisors 1, 3, 5 … of Sainte-Laguë).
pub fn spares_of(standing: &Standing, yards: &[ThingId], needs: &[KindNeed], spare: u32) -> Vec<u32> {
    let mut uses = Vec::new();
    for need in needs {
        uses.push(u64::from(traps_of(standing, yards, &need.kind)));
    }
    let mut given = vec![0; uses.len()];
    for _ in 0..spare {
        let mut most = 0;
        for at in 1..uses.len() {
            let divisor = |at: usize| u64::from(2 * given[at] + 1);
            if uses[at] * divisor(most) > uses[most] * divisor(at) {
                most = at;
            }
        }
        if let Some(given) = given.get_mut(most) {
            *given += 1;
        }
    }
    given
}

/// Traps of `kind` in those of these yards where work does not rest, and places for one of it.
pub fn traps_of(standing: &Standing, yards: &[ThingId], kind: &ThingId) -> u32 {
    let mut count = 0;
    for yard in yards.iter().filter(|yard| !rests(standing, yard)) {
        for (_, hive) in standing.hives_of(yard, true) {
            count += hive.traps().map(|trap| u32::from(trap.kind == *kind)).sum::<u32>();
            if round::likely_kind(standing, yard, Some(hive)) == Some(kind) {
                count += hive.wanting();
            }
        }
    }
    count
}

/// Fewest days between two visits that a kind of trap in these yards asks for; none without traps, or where work rests.
pub fn shortest(standing: &Standing, yards: &[ThingId]) -> Option<u16> {
    let used = standing.kinds.iter().filter(|(id, _)| traps_of(standing, yards, id) > 0);
    used.map(|(_, now)| now.kind.max_days).min()
}

/// Walks from `first` to `last`, `every` so many days, the first one included.
pub fn walks(first: Day, last: Day, every: u16) -> u32 {
    let days = u32::try_from(last.days_since(first)).map_or(0, |days| days / u32::from(every.max(1)) + 1);
    days.min(MOST_WALKS)
}

/// What one walk takes at most.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct EveryTrap {
    /// Traps, those still to be put in included.
    pub traps: u32,
    /// Oil that fills all of them anew, as far as they are measured.
    pub oil: Volume,
    /// Traps nobody has measured, which that oil leaves out.
    pub unknown: u32,
}

/// Every trap of those of these yards where work does not rest, filled anew.
pub fn every_trap(standing: &Standing, yards: &[ThingId]) -> EveryTrap {
    let mut all = EveryTrap::default();
    let mut add = |kind: Option<&ThingId>, count: u32| {
        all.traps += count;
        let known = kind.and_then(|kind| standing.kinds.get(kind));
        match known.map(|now| now.kind.oil(Share::NONE, now.kind.fill)) {
            Some(Some(each)) => all.oil = all.oil.plus(each.times(f64::from(count))),
            _ => all.unknown += count,
        }
    };
    for yard in yards.iter().filter(|yard| !rests(standing, yard)) {
        for (_, hive) in standing.hives_of(yard, true) {
            hive.traps().for_each(|trap| add(Some(&trap.kind), 1));
            add(round::likely_kind(standing, yard, Some(hive)), hive.wanting());
        }
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::ledger::words::tests::{book, today};

    fn yards(standing: &Standing) -> Vec<ThingId> {
        standing.yards.keys().cloned().collect()
    }

    #[test]
    fn the_load_is_what_its_yards_need_with_one_reserve_over_all() {
        let book = book();
        let standing = book.standing();
        let both = yards(standing);
        let bottle = Volume::from_millilitres(500.0).ok();
        let metric = VolumeUnit::Millilitre;
        let all = load(standing, &both, today(), Share::QUARTER, bottle, metric);
        let alone = |at: usize| load(standing, &both[at..=at], today(), Share::QUARTER, bottle, metric);
        assert_eq!(all.due, alone(0).due + alone(1).due);
        assert!(
            (all.oil.millilitres() - alone(0).oil.millilitres() - alone(1).oil.millilitres()).abs() < 1e-6
        );
        // One trip is rounded up once.
        assert!(all.carry.millilitres() <= alone(0).carry.millilitres() + alone(1).carry.millilitres());
        assert!(all.carry >= all.with_reserve);
        assert!(f64::from(all.bottles.unwrap()) * 500.0 >= all.carry.millilitres());
        assert_eq!(load(standing, &[], today(), Share::QUARTER, bottle, metric).bottles, Some(0));
    }

    #[test]
    fn spares_are_a_twentieth_and_at_least_two() {
        let spares: Vec<u32> = [0, 1, 40, 41, 92, 1000].map(spare).to_vec();
        assert_eq!(spares, [0, 2, 2, 3, 5, 50]);
    }

    #[test]
    fn every_trap_filled_anew_is_the_most_a_walk_takes() {
        let book = book();
        let standing = book.standing();
        let all = every_trap(standing, &yards(standing));
        let now = load(standing, &yards(standing), today(), Share::NONE, None, VolumeUnit::Millilitre);
        assert!(all.traps >= now.due && all.oil >= now.oil);
        assert_eq!(all.unknown, 0);
    }

    /// The carry answer and the one for the season leave out the same traps.
    #[test]
    fn traps_nobody_has_measured_are_told_and_not_counted_as_without_oil() {
        let book = book();
        let mut standing = book.standing().clone();
        let all = yards(&standing);
        // Only what hangs in the second yard stays measured.
        let measured = standing.hives_of(&all[1], true).flat_map(|(_, hive)| hive.traps()).count();
        let kind = standing.hives_of(&all[0], true).flat_map(|(_, hive)| hive.traps()).next().unwrap();
        let kind = kind.kind.clone();
        let before = every_trap(&standing, &all);
        standing.kinds.get_mut(&kind).unwrap().kind.capacity = None;
        let after = every_trap(&standing, &all);
        assert_eq!((after.traps, after.unknown as usize), (before.traps, before.traps as usize - measured));
        assert!(after.oil < before.oil && after.oil > Volume::ZERO);
        let far = today().plus(365);
        let carried = load(&standing, &all, far, Share::NONE, None, VolumeUnit::Millilitre);
        assert_eq!(carried.unknown, after.unknown);
    }

    #[test]
    fn a_season_has_a_walk_on_its_first_day_and_one_after_every_stretch_of_days() {
        let first = today();
        let count = |last: i32, every| walks(first, first.plus(last), every);
        assert_eq!((count(0, 14), count(13, 14), count(14, 14), count(130, 14)), (1, 1, 2, 10));
        assert_eq!((count(-1, 14), count(900, 1), count(3, 0)), (0, MOST_WALKS, 4));
    }

    #[test]
    fn the_traps_of_every_kind_are_all_traps_and_the_shortest_stretch_is_that_of_a_kind_in_use() {
        let book = book();
        let mut standing = book.standing().clone();
        let all = yards(&standing);
        standing.hives.values_mut().next().unwrap().boxes[0].wants = 5;
        let kinds: Vec<ThingId> = standing.kinds.keys().cloned().collect();
        let each: u32 = kinds.iter().map(|kind| traps_of(&standing, &all, kind)).sum();
        assert_eq!(each, every_trap(&standing, &all).traps);
        let most = kinds.iter().map(|kind| standing.kinds[kind].kind.max_days).min();
        assert_eq!(shortest(&standing, &all), most);
        assert_eq!(shortest(&standing, &[]), None);
    }

    #[test]
    fn where_work_rests_nothing_is_bought_for_the_season() {
        let book = book();
        let mut standing = book.standing().clone();
        let all = yards(&standing);
        // Every yard has an empty place, and a kind of its own.
        for hive in standing.hives.values_mut().filter(|hive| hive.alive()) {
            hive.boxes[0].wants = 3;
        }
        let kinds: Vec<ThingId> = standing.kinds.keys().cloned().collect();
        standing.kinds.get_mut(&kinds[0]).unwrap().kind.max_days = 3;
        let season = |standing: &Standing, yards: &[ThingId]| {
            let traps: Vec<u32> = kinds.iter().map(|kind| traps_of(standing, yards, kind)).collect();
            let needs = missing(standing, &all);
            (
                every_trap(standing, yards),
                traps,
                shortest(standing, yards),
                spares_of(standing, yards, &needs, 7),
            )
        };
        let mut resting = standing.clone();
        resting.yards.get_mut(&all[0]).unwrap().paused = Some(today());
        assert_ne!(season(&standing, &all), season(&standing, &all[1..]));
        assert_eq!(season(&resting, &all), season(&resting, &all[1..]));
        resting.yards.get_mut(&all[1]).unwrap().paused = Some(today());
        let (traps, of_kinds, every, _) = season(&resting, &all);
        assert_eq!((traps, of_kinds, every), (EveryTrap::default(), vec![0, 0], None));
        let bought = |standing: &Standing| missing(standing, &all).iter().map(|need| need.traps).sum::<u32>();
        assert_eq!((bought(&standing) > 0, bought(&resting)), (true, 0));
    }

    #[test]
    fn nothing_is_missing_where_every_place_has_its_trap() {
        let book = book();
        let needs = missing(book.standing(), &yards(book.standing()));
        assert_eq!(needs.iter().map(|need| need.traps).collect::<Vec<_>>(), [0, 0]);
    }

    #[test]
    fn what_is_bought_is_what_is_brought_and_the_spares_are_of_the_kinds_that_are_used() {
        let book = book();
        let mut standing = book.standing().clone();
        for hive in standing.hives.values_mut().filter(|hive| hive.alive()).take(3) {
            hive.boxes[0].wants = 4;
        }
        let all = yards(&standing);
        let needs = missing(&standing, &all);
        let brought = load(&standing, &all, today(), Share::NONE, None, VolumeUnit::Millilitre).place;
        assert_eq!((brought, needs.iter().map(|need| need.traps).sum::<u32>()), (6, 6));
        // The first yard has 24 hives of the one kind, the second 9 of the other. Worked by hand: 101, 36, 33.7, 20.2, 14.4, 12, 11.2, 9.2, 7.8.
        let uses = needs.iter().map(|need| traps_of(&standing, &all, &need.kind)).collect::<Vec<_>>();
        assert_eq!(uses, [101, 36]);
        let spares = |yards: &[ThingId], spare| spares_of(&standing, yards, &needs, spare);
        assert_eq!(
            [1, 2, 3, 7, 9].map(|spare| spares(&all, spare)),
            [[1, 0], [1, 1], [2, 1], [5, 2], [7, 2]]
        );
        assert_eq!(spares(&all[1..], 7), [0, 7]);
        assert_eq!(spares_of(&standing, &all, &[], 7), [0; 0]);
        for spare in 0..300 {
            assert_eq!(spares(&all, spare).iter().sum::<u32>(), spare);
        }
    }
}
