//! What each hive needs on a given day, in the order the keeper walks.

mod need;

pub use need::{YardNeed, likely_kind, made_fresh, wants_oil_with, yard_need, yard_need_with};

use super::entry::{Did, SkipReason};
use super::id::ThingId;
use super::standing::{Catch, HiveNow, Standing, TrapNow, Trouble};
use crate::almanac::day::Day;
use crate::almanac::oil;
use crate::almanac::quantity::{Decimal, Share};
use crate::almanac::refill::{self, Loss, Refill, RefillFacts, Timing};
use crate::almanac::trap::TrapKind;

/// A share of the depth above which a jolt wets bees: the upper mark that bodies may raise the oil to (judgement).
const UPPER_MARK_PERCENT: u32 = 75;

/// The working floor of a trap whose depth nobody measured, or that is too shallow to cover a beetle at all: what 6 mm
/// are of a trap 20 mm deep (judgement).
pub const CAUTIOUS_FLOOR: Share = Share::THREE_TENTHS;

/// Days after a spill by which somebody should look again (judgement).
pub const RECHECK_DAYS: i32 = 3;

/// Why a trap, and with it its hive, is due on its day.
#[derive(Clone, Debug, PartialEq)]
pub enum Because {
    /// It does not fish: due at once.
    Trouble(Trouble),
    /// One of the limits of [`refill::refill`], with the others behind it.
    Limit(Refill),
}

/// When one trap is due.
#[derive(Clone, Debug, PartialEq)]
pub struct TrapDue {
    /// Which.
    pub trap: ThingId,
    /// When. For a trap that does not fish, the day asked about.
    pub on: Day,
    /// Why.
    pub because: Because,
}

/// When a hive is due.
#[derive(Clone, Debug, PartialEq)]
pub enum HiveDue {
    /// Trap work rests in its yard: nothing is due.
    Resting {
        /// Since when.
        since: Day,
    },
    /// No trap is in it.
    NoTraps {
        /// Traps its boxes are meant to carry.
        wanting: u32,
    },
    /// The earliest of its traps decides.
    Due {
        /// When.
        on: Day,
        /// Seen from today.
        timing: Timing,
        /// Why then.
        because: Because,
        /// Traps due today or earlier.
        traps_due: u32,
        /// Traps in the hive.
        traps: u32,
    },
}

impl HiveDue {
    /// Due today or overdue.
    pub fn now(&self) -> bool {
        matches!(self, HiveDue::Due { timing: Timing::Today | Timing::Overdue { .. }, .. })
    }
}

/// One hive in the list.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// Which.
    pub hive: ThingId,
    /// When it is due, and why.
    pub due: HiveDue,
    /// Days since the longest-waiting trap was serviced; none without traps.
    pub days_since: Option<i32>,
    /// Skipped, and not worked on since.
    pub skipped: Option<(Day, SkipReason)>,
    /// What was logged today; `Some(None)` is a skip.
    pub today: Option<Option<Did>>,
    /// What stops one of its traps from fishing.
    pub trouble: Option<Trouble>,
    /// Every trap in it is missing or glued shut.
    pub stuck: bool,
    /// Oil spilled: look again by this day. None once somebody has looked, and in a pause.
    pub recheck: Option<Day>,
}

impl Row {
    /// Somebody was here today, and still a trap is due, does not fish, or none is in: the hive is not done.
    pub fn still_due(&self) -> bool {
        let bare = matches!(self.due, HiveDue::NoTraps { wanting: 1.. });
        let resting = matches!(self.due, HiveDue::Resting { .. });
        let due = bare || self.due.now() || self.trouble.is_some();
        matches!(self.today, Some(Some(_))) && !resting && due
    }

    /// The day by which somebody has to look at it again has come, though no trap in it may be due.
    pub fn look_due(&self, today: Day) -> bool {
        self.recheck.is_some_and(|by| by <= today)
    }
}

/// How far the walk through a yard has come on a day.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Visit {
    /// Hives worked on.
    pub worked: u32,
    /// Hives skipped.
    pub skipped: u32,
    /// Hives without an entry.
    pub left: u32,
    /// Of the hives without an entry, those that are due, or bare and waiting for traps.
    pub due: u32,
    /// Of the hives worked on, those that stay due: a trap does not fish, or none is in.
    pub still_due: u32,
}

impl Visit {
    /// Every hive has an entry, none was skipped, and none of them stays due.
    pub fn complete(self) -> bool {
        self.left == 0 && self.skipped == 0 && self.still_due == 0
    }

    /// Somebody has begun.
    pub fn begun(self) -> bool {
        self.worked + self.skipped > 0
    }
}

/// The hives of `yard` as they are walked on `today`: those skipped on an earlier day lead, the rest follow in
/// walking order. A hive skipped today keeps its place, so that the list does not jump under the thumb.
pub fn rows(standing: &Standing, yard: &ThingId, today: Day) -> Vec<Row> {
    let yard_loss = yard_loss(standing, yard);
    let paused = standing.yards.get(yard).is_some_and(|yard| yard.paused.is_some());
    let row = |(id, hive): (&ThingId, &HiveNow)| Row {
        hive: id.clone(),
        due: hive_due(standing, hive, yard_loss, today),
        days_since: hive.traps().map(|trap| today.days_since(trap.service)).max(),
        skipped: hive.skipped,
        today: hive.last.as_ref().filter(|seen| seen.day == today).map(|seen| seen.did),
        trouble: hive.trouble().map(|(trouble, _)| trouble),
        stuck: hive.stuck(),
        recheck: look_by(hive).filter(|_| !paused),
    };
    let (mut rows, rest): (Vec<Row>, Vec<Row>) = standing
        .hives_of(yard, true)
        .map(row)
        .partition(|row| row.skipped.is_some_and(|(day, _)| day < today));
    rows.extend(rest);
    rows
}

/// The day by which somebody has to look at `hive` again, because oil spilled in it.
pub fn look_by(hive: &HiveNow) -> Option<Day> {
    hive.spilled.map(|day| day.plus(RECHECK_DAYS))
}

/// How far today's walk has come.
pub fn visit(rows: &[Row]) -> Visit {
    let mut visit = Visit::default();
    for row in rows {
        match row.today {
            Some(Some(_)) => visit.worked += 1,
            Some(None) => visit.skipped += 1,
            None => {
                visit.left += 1;
                visit.due += u32::from(row.due.now() || matches!(row.due, HiveDue::NoTraps { wanting: 1.. }));
            }
        }
        visit.still_due += u32::from(row.still_due());
    }
    visit
}

/// When `hive` is due. `yard_loss` stands in where the hive itself has no reading yet.
pub fn hive_due(standing: &Standing, hive: &HiveNow, yard_loss: Option<(f64, u8)>, today: Day) -> HiveDue {
    if let Some(since) = standing.yards.get(&hive.yard).and_then(|yard| yard.paused) {
        return HiveDue::Resting { since };
    }
    let dues = trap_dues(standing, hive, yard_loss, today);
    let traps_due = count(dues.iter().filter(|due| due.on <= today));
    let traps = count(dues.iter());
    let Some(first) =
        dues.into_iter().min_by_key(|due| (due.on, !matches!(due.because, Because::Trouble(_))))
    else {
        return HiveDue::NoTraps { wanting: hive.wanting() };
    };
    HiveDue::Due {
        on: first.on,
        timing: refill::timing(first.on, today),
        because: first.because,
        traps_due,
        traps,
    }
}

/// When each trap of `hive` is due, from the floor up.
pub fn trap_dues(
    standing: &Standing,
    hive: &HiveNow,
    yard_loss: Option<(f64, u8)>,
    today: Day,
) -> Vec<TrapDue> {
    let loss = hive_loss(hive, yard_loss);
    let catch = catch_per_trap_day(&hive.catches);
    hive.traps()
        .map(|trap| {
            let kind = standing.kinds.get(&trap.kind).map(|now| &now.kind);
            let refill = refill::refill(&facts(trap, kind, loss, catch));
            let (on, because) = if let Some(trouble) = trap.trouble {
                // Due since it was found so, and earlier where it had been due before: a spill makes no overdue trap younger.
                let since = trap.trouble_since.unwrap_or(today).min(today);
                (since.min(refill.due), Because::Trouble(trouble))
            } else {
                (refill.due, Because::Limit(refill))
            };
            TrapDue { trap: trap.id.clone(), on, because }
        })
        .collect()
}

/// Oil a trap of `hive` loses: by its own readings, else by its yard's.
fn hive_loss(hive: &HiveNow, yard_loss: Option<(f64, u8)>) -> Loss {
    let own = refill::median_loss(&hive.losses).map(|(per_day, intervals)| Loss::Hive { per_day, intervals });
    let yard = yard_loss.map(|(per_day, intervals)| Loss::Yard { per_day, intervals });
    own.or(yard).unwrap_or(Loss::Unknown)
}

/// The level `trap` will have sunk to on `day`, rounded down; none when its level or its loss is not known.
fn expected_level(trap: &TrapNow, loss: Loss, day: Day) -> Option<Share> {
    let (read, level) = trap.level?;
    let per_day = match loss {
        Loss::Hive { per_day, .. } | Loss::Yard { per_day, .. } => per_day,
        Loss::Unknown => return None,
    };
    let left = level.percent().as_f64() - per_day * f64::from(day.days_since(read).max(0));
    Share::from_percent(Decimal::from_f64(left.floor().max(0.0)).ok()?).ok()
}

/// The same of a trap of `hive` that is used again and fishes; none of any other, which is filled anew.
pub fn sunk_to(standing: &Standing, hive: &HiveNow, trap: &TrapNow, day: Day) -> Option<Share> {
    let reusable = standing.kinds.get(&trap.kind).is_some_and(|now| now.kind.reusable);
    if !reusable || trap.trouble.is_some() {
        return None;
    }
    let own = hive_loss(hive, None);
    let loss = if own == Loss::Unknown { hive_loss(hive, yard_loss(standing, &hive.yard)) } else { own };
    expected_level(trap, loss, day)
}

fn facts(trap: &TrapNow, kind: Option<&TrapKind>, loss: Loss, catch_per_day: Option<f64>) -> RefillFacts {
    let Some(kind) = kind else {
        // Its kind was struck out, perhaps on another phone: nobody knows how long it may wait, so somebody looks.
        return RefillFacts {
            last_service: trap.service,
            max_days: *TrapKind::MAX_DAYS.start(),
            level: None,
            read_on: None,
            floor: None,
            loss: Loss::Unknown,
            room: None,
            catch_per_day: None,
        };
    };
    let oil = kind.form.takes_oil();
    let level = trap.level_before.or(trap.level).filter(|_| oil);
    let floor =
        kind.inner.depth.and_then(|depth| refill::working_floor(depth.length())).unwrap_or(CAUTIOUS_FLOOR);
    RefillFacts {
        last_service: trap.service,
        max_days: kind.max_days,
        level: level.map(|(_, share)| share),
        read_on: level.map(|(day, _)| day),
        floor: Some(floor),
        loss: if oil { loss } else { Loss::Unknown },
        room: level.and_then(|(_, share)| room(kind, share)),
        catch_per_day,
    }
}

/// Bodies until the oil stands at the upper mark, each counted at its largest.
fn room(kind: &TrapKind, level: Share) -> Option<u32> {
    let upper = Share::from_percent(Decimal::whole(UPPER_MARK_PERCENT)).ok()?;
    let free = kind.oil(level, upper)?;
    Some(oil::bodies_that_fit(free))
}

/// Bodies one trap takes in a day, from the last [`HiveNow::REMEMBERED`] counts that tell of days; ranges count at their upper end, because a date
/// that comes early costs less than one that comes late ("50 and more" has none and counts as 50). Beetles out of traps
/// that did not fish tell of no day, as in [`caught`](super::caught::both). None without a count that has trap-days.
fn catch_per_trap_day(catches: &[Catch]) -> Option<f64> {
    let (mut bodies, mut days) = (0.0, 0.0);
    let telling = catches.iter().rev().filter(|catch| catch.trap_days > 0);
    for catch in telling.take(HiveNow::REMEMBERED) {
        bodies += f64::from(catch.count.high().unwrap_or(catch.count.low()));
        days += f64::from(catch.trap_days);
    }
    (days > 0.0).then(|| bodies / days)
}

/// Hives that a yard's loss is the median of at least, or all others of a smaller yard: one reading does not speak for
/// many, and of two it is either (judgement, no source).
pub const LEAST_LOSSES: usize = 3;

/// The median of the hives' own oil losses, for hives without a reading of their own; none of fewer than
/// [`LEAST_LOSSES`] hives, or of fewer than all others.
pub fn yard_loss(standing: &Standing, yard: &ThingId) -> Option<(f64, u8)> {
    let mut losses: Vec<f64> = Vec::new();
    let mut intervals: u8 = 0;
    let mut others = 0;
    for (nth, (_, hive)) in standing.hives_of(yard, true).enumerate() {
        others = nth;
        if let Some((per_day, from)) = refill::median_loss(&hive.losses) {
            losses.push(per_day);
            intervals = intervals.saturating_add(from);
        }
    }
    let enough = losses.len() >= LEAST_LOSSES.min(others);
    refill::median(&mut losses).filter(|_| enough).map(|per_day| (per_day, intervals))
}

/// Whether a trap of `hive` gets oil on `day`: it is due, or its hive was skipped and is seen in any case.
pub fn wants_oil(hive: &HiveNow, due: &TrapDue, day: Day) -> bool {
    due.on <= day || hive.skipped.is_some()
}

fn count<T>(items: impl Iterator<Item = T>) -> u32 {
    u32::try_from(items.count()).unwrap_or(u32::MAX)
}
