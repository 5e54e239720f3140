//! What the log says is so: yards, hives, boxes, traps, and what was last done to each.

pub use super::keeper::Keeper;

use super::entry::{Check, Did, Ending, Entry, NewBox, NewTrap, SkipReason, What};
use super::id::{EntryId, ThingId, Writer};
use super::record::{Blank, Record};
use super::twins::{self, Twins};
use crate::almanac::day::Day;
use crate::almanac::order::sort_by;
use crate::almanac::quantity::Share;
use crate::almanac::refill::LossInterval;
use crate::almanac::stack::{BoxDepth, HiveSize, Spot};
use crate::almanac::table::Table;
use crate::almanac::tally::CountRange;
use crate::almanac::trap::TrapKind;

/// Everything the log says about now.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Standing {
    /// The keeper's settings.
    pub keeper: Keeper,
    /// Kinds of trap.
    pub kinds: Table<ThingId, KindNow>,
    /// Yards, oldest first.
    pub yards: Table<ThingId, YardNow>,
    /// Hives, oldest first, ended ones included.
    pub hives: Table<ThingId, HiveNow>,
    /// The kind of trap that was chosen for hives whose traps were not in yet, by the first line of their act.
    pub meant: Table<EntryId, ThingId>,
    /// What was written down beside the traps, by the name of the line.
    pub records: Table<EntryId, RecordNow>,
    /// Hives that are another one.
    pub twins: Twins,
    /// Entries that speak of things this book does not hold.
    pub orphans: u32,
}

/// A record that counts.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordNow {
    /// The day it is for.
    pub day: Day,
    /// The yard whose page it stands on.
    pub yard: Option<ThingId>,
    /// What it says.
    pub record: Record,
}

/// A kind of trap.
#[derive(Clone, Debug, PartialEq)]
pub struct KindNow {
    /// As last described.
    pub kind: TrapKind,
    /// No longer offered.
    pub retired: bool,
    /// Traps of this kind in store, as far as the log knows: taken out of hives and not put into one since.
    pub stock: u32,
}

/// A yard.
#[derive(Clone, Debug, PartialEq)]
pub struct YardNow {
    /// The keeper's word for it.
    pub name: String,
    /// Time zone, IANA name.
    pub zone: String,
    /// Day it was opened.
    pub since: Day,
    /// Trap work rests since this day.
    pub paused: Option<Day>,
    /// Given up on this day.
    pub closed: Option<Day>,
    /// Hives in walking order, ended ones included.
    pub order: Vec<ThingId>,
    /// The kind of trap that was described when the yard was kept.
    pub kind: Option<ThingId>,
}

/// A hive.
#[derive(Clone, Debug, PartialEq)]
pub struct HiveNow {
    /// The yard it stands in.
    pub yard: ThingId,
    /// The yard it came into the book with: until a trap is in, it wants that yard's kind, where no other was chosen.
    pub from: ThingId,
    /// The first line of the act it came into the book with.
    pub act: Option<EntryId>,
    /// What is written on it.
    pub tag: String,
    /// Earlier tags, oldest first.
    pub was: Vec<String>,
    /// Full hive or nuc.
    pub size: HiveSize,
    /// First day in the book.
    pub since: Day,
    /// How and when its care ended.
    pub ended: Option<(Ending, Day)>,
    /// The day on which it was last taken back into care.
    pub back: Option<Day>,
    /// Boxes from the floor up.
    pub boxes: Vec<BoxNow>,
    /// Boxes that were taken off: the day each was put on, and the day it came off.
    pub off: Vec<(Day, Day)>,
    /// The last work or skip, whichever came later.
    pub last: Option<Seen>,
    /// A skip that no work has followed yet.
    pub skipped: Option<(Day, SkipReason)>,
    /// Oil lost over the last intervals in which it could be read, at most [`HiveNow::REMEMBERED`], oldest first.
    pub losses: Vec<LossInterval>,
    /// Beetles counted over the last counts, with the trap-days they were caught in; about [`HiveNow::REMEMBERED`] with
    /// such days, and at most as many more of traps that did not fish.
    pub catches: Vec<Catch>,
    /// The level stood higher at the last reading than it was left, though nobody logged a service.
    pub rose: Option<Day>,
    /// Oil spilled in it on this day, and nobody has looked again on a later one.
    pub spilled: Option<Day>,
    /// The line of the last look into it that looked for larvae or told of slime.
    pub look: Option<EntryId>,
    /// Trap work of the last day on which there was any, in the order in which it counts, each with the name of its line,
    /// or of the first line of a piece of work in several.
    pub checked: Vec<(EntryId, Checked)>,
    /// Pairs of lines that may tell of one and the same work, oldest first.
    pub doubles: Vec<Double>,
}

/// Trap work of one day, as far as it tells whether other work of that day is the same.
#[derive(Clone, Debug, PartialEq)]
pub struct Checked {
    /// The day it is for.
    pub day: Day,
    /// Who wrote what stands of the line, or of the first line of its piece of work.
    pub writer: Writer,
    /// What was done.
    pub did: Did,
    /// The traps it names; none means all.
    pub traps: Option<Vec<ThingId>>,
    /// A level found is given.
    pub read: bool,
    /// A count is given.
    pub counted: bool,
    /// The bulk it was written with.
    pub bulk: Option<EntryId>,
}

impl Checked {
    /// `work` of a line whose standing version `writer` wrote, in `bulk`.
    pub fn new(day: Day, writer: Writer, work: &Check, bulk: Option<EntryId>) -> Checked {
        let (read, counted) = (work.before.is_some(), work.count.is_some());
        Checked { day, writer, did: work.did, traps: work.traps.clone(), read, counted, bulk }
    }

    /// Whether both may tell of one piece of work: the same day, a trap in common, two writers. Work that mends what
    /// the other found is the next piece of work.
    pub fn doubles(&self, other: &Checked) -> bool {
        let idle = |did| matches!(did, Did::Spilled | Did::Missing | Did::GluedShut);
        let alike = self.did == other.did || (!idle(self.did) && !idle(other.did));
        let shared = match (&self.traps, &other.traps) {
            (Some(own), Some(others)) => own.iter().any(|trap| others.contains(trap)),
            _ => true,
        };
        self.day == other.day && self.writer != other.writer && alike && shared
    }
}

/// Two lines of one day that may tell of one and the same work: two people logged it, each on a phone of their own.
/// Until somebody has decided, oil loss and catch are reckoned from the first of them alone.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Double {
    /// The day both are for.
    pub day: Day,
    /// The names of the lines; of work in several lines the first.
    pub lines: [EntryId; 2],
}

/// The last time somebody stood at a hive.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// When.
    pub day: Day,
    /// What was done; none for a skip.
    pub did: Option<Did>,
    /// The entry that says so.
    pub entry: EntryId,
}

/// Beetles counted at one check.
#[derive(Clone, Debug, PartialEq)]
pub struct Catch {
    /// How many.
    pub count: CountRange,
    /// Traps times days they were fishing.
    pub trap_days: u32,
    /// The entry that says so.
    pub entry: EntryId,
}

/// A box on a hive.
#[derive(Clone, Debug, PartialEq)]
pub struct BoxNow {
    /// Its name.
    pub id: ThingId,
    /// Its depth.
    pub depth: BoxDepth,
    /// Traps it is meant to carry.
    pub wants: u8,
    /// Day it was put on.
    pub since: Day,
    /// Traps in it.
    pub traps: Vec<TrapNow>,
}

/// A trap in a box.
#[derive(Clone, Debug, PartialEq)]
pub struct TrapNow {
    /// Its name.
    pub id: ThingId,
    /// Its kind.
    pub kind: ThingId,
    /// Where in the box.
    pub spot: Spot,
    /// Day it was placed.
    pub placed: Day,
    /// Last day it was filled, topped up or replaced. The day it was placed, until then.
    pub service: Day,
    /// Last day it was put in, replaced, or filled anew after a spill: oil that was only topped up is older.
    pub fresh: Day,
    /// The last known level and the day it was read or made.
    pub level: Option<(Day, Share)>,
    /// First day of the count that is running: the day it was last emptied or counted. Beetles counted that day and left
    /// in the oil are not of it.
    pub counting: Day,
    /// What stops it from fishing.
    pub trouble: Option<Trouble>,
    /// The day that was first found so.
    pub trouble_since: Option<Day>,
    /// The last level that was known before, while that lasts: it says when the trap was due.
    pub level_before: Option<(Day, Share)>,
}

/// Why a trap does not fish.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// Oil is out.
    Spilled,
    /// Not there.
    Missing,
    /// Closed with propolis.
    GluedShut,
}

impl TrapNow {
    /// Whether `did` leaves this trap as it is: one that is missing can only be replaced, and one that is glued shut
    /// takes part in work on the whole hive only when it is replaced. `named`: the keeper spoke of this trap.
    pub fn passed_over(&self, did: Did, named: bool) -> bool {
        match self.trouble {
            Some(Trouble::Missing) => did != Did::Replaced,
            Some(Trouble::GluedShut) => !named && matches!(did, Did::AsFound | Did::ToppedUp | Did::Spilled),
            _ => false,
        }
    }
}

impl HiveNow {
    /// Intervals and counts a hive remembers: enough for a median that follows the season.
    pub const REMEMBERED: usize = 5;
    /// Pairs of lines that are asked about. Two phones that log every walk of ten seasons come to a tenth of it; a file of
    /// thousands of writers on one day has millions, and each is looked for among those before it.
    pub const DOUBLES: usize = 2000;

    /// In care: neither dead, sold, joined nor gone.
    pub fn alive(&self) -> bool {
        self.ended.is_none()
    }

    /// Every trap, from the floor up. In a list of its own: a chain over the boxes would be compiled anew for every question
    /// that is asked of it.
    pub fn traps(&self) -> std::vec::IntoIter<&TrapNow> {
        let mut all = Vec::new();
        for part in &self.boxes {
            for trap in &part.traps {
                all.push(trap);
            }
        }
        all.into_iter()
    }

    /// Boxes that were on it when somebody looked on `day`: one that was put on or taken off that day was so after the look.
    /// Those taken off since count where `gone` says so.
    pub fn boxes_at(&self, day: Day, gone: bool) -> u32 {
        let mut boxes = 0;
        for part in &self.boxes {
            boxes += u32::from(part.since < day || part.since == self.since);
        }
        for (since, off) in &self.off {
            boxes += u32::from(gone && *off >= day && (*since < day || *since == self.since));
        }
        boxes
    }

    /// Whether a box that was on it at a look of `day` came on after a look of the day `from`.
    pub fn box_between(&self, from: Day, day: Day) -> bool {
        let came = |since: Day| since != self.since && (from..day).contains(&since);
        self.boxes.iter().any(|part| came(part.since))
            || self.off.iter().any(|(since, off)| *off >= day && came(*since))
    }

    /// What stops the first trap that does not fish, and how many traps it stops.
    pub fn trouble(&self) -> Option<(Trouble, u32)> {
        let first = self.traps().find_map(|trap| trap.trouble)?;
        let alike = self.traps().filter(|trap| trap.trouble == Some(first)).count();
        Some((first, u32::try_from(alike).unwrap_or(u32::MAX)))
    }

    /// Traps are in it, and none of them can be topped up with the others.
    pub fn stuck(&self) -> bool {
        let mut traps = self.traps().peekable();
        traps.peek().is_some() && traps.all(|trap| trap.passed_over(Did::ToppedUp, false))
    }

    /// What is remembered of `check`, which stands in `entry`. A piece of work in several lines goes by the name and the
    /// writer of its first line, which stands beside it where there is one.
    pub fn work(&self, entry: &Entry, check: &Check) -> (Option<EntryId>, Checked) {
        let mut new = Checked::new(entry.day, entry.id.writer().clone(), check, entry.bulk.clone());
        let first = entry.goes_on().and_then(|bulk| {
            self.checked.iter().find(|(_, known)| known.day == new.day && known.bulk.as_ref() == Some(bulk))
        });
        if let Some((_, first)) = first {
            new.writer = first.writer.clone();
        }
        (first.map(|(name, _)| name.clone()), new)
    }

    /// The traps that `check` fills with oil, as the hive stood when it was done.
    fn filled<'a>(&'a self, check: &'a Check) -> impl Iterator<Item = &'a TrapNow> {
        let fills = match check.did {
            Did::ToppedUp | Did::Replaced => true,
            Did::Spilled => check.after.is_some(),
            _ => false,
        };
        let named = check.traps.as_ref();
        self.traps().filter(move |trap| {
            fills
                && named.is_none_or(|named| named.contains(&trap.id))
                && !trap.passed_over(check.did, named.is_some())
        })
    }

    /// Traps the boxes are meant to carry and do not.
    pub fn wanting(&self) -> u32 {
        self.boxes
            .iter()
            .map(|part| {
                u32::from(part.wants).saturating_sub(u32::try_from(part.traps.len()).unwrap_or(u32::MAX))
            })
            .sum()
    }
}

impl Standing {
    /// The hive of `check`, which stands in `entry`, and the traps it fills with oil, while all stands as it did before it.
    /// No trap where another phone wrote the same work down already.
    pub fn fills<'a>(&'a self, entry: &Entry, check: &'a Check) -> Option<(&'a HiveNow, Vec<&'a TrapNow>)> {
        let hive = self.hives.get(self.kept(&check.hive))?;
        let (_, new) = hive.work(entry, check);
        let told = hive.checked.iter().any(|(_, known)| known.doubles(&new));
        Some((hive, hive.filled(check).filter(|_| !told).collect()))
    }

    /// The new traps that go into a hive with `what`, a line whose things go by `root`, while all stands as it did before it. A
    /// hive that is another one brings none, what is told of it moves none, since it does not stand among the hives, and none
    /// goes into a box that is not there.
    pub fn new_traps<'a>(&self, root: &EntryId, what: &'a What) -> Vec<&'a NewTrap> {
        let of = |boxes: &'a [NewBox]| boxes.iter().flat_map(|part| &part.traps).collect();
        match what {
            What::Hive { boxes, .. } if !self.twins.contains_key(&root.thing(0)) => of(boxes),
            What::BoxesOn { hive, boxes, .. } if self.hives.contains_key(hive) => of(boxes),
            What::TrapsOn { hive, traps } => {
                let Some(hive) = self.hives.get(hive) else { return Vec::new() };
                let there = |part: &ThingId| hive.boxes.iter().any(|now| now.id == *part);
                traps.iter().filter(|placed| there(&placed.part)).map(|placed| &placed.trap).collect()
            }
            _ => Vec::new(),
        }
    }

    /// The hive that `hive` is: itself, unless it was written down twice.
    pub fn kept<'a>(&'a self, hive: &'a ThingId) -> &'a ThingId {
        twins::kept(&self.twins, hive)
    }

    /// The hives that `hives` are, each once.
    pub fn kept_of<'a>(&'a self, hives: &'a [ThingId]) -> Vec<&'a ThingId> {
        let mut each: Vec<&ThingId> = Vec::new();
        for hive in hives {
            let hive = self.kept(hive);
            if !each.contains(&hive) {
                each.push(hive);
            }
        }
        each
    }

    /// Hives of a yard in walking order; `alive` leaves the ended ones out.
    pub fn hives_of<'a>(
        &'a self,
        yard: &'a ThingId,
        alive: bool,
    ) -> std::vec::IntoIter<(&'a ThingId, &'a HiveNow)> {
        // A list, like that of the traps.
        let mut all = Vec::new();
        for id in self.yards.get(yard).map(|now| now.order.as_slice()).unwrap_or_default() {
            if let Some((id, hive)) = self.hives.get_key_value(id)
                && (!alive || hive.alive())
            {
                all.push((id, hive));
            }
        }
        all.into_iter()
    }

    /// Records of one kind, oldest day first and in the order of their names within a day.
    pub fn records_of(&self, blank: Blank) -> Vec<(&EntryId, &RecordNow)> {
        let mut found: Vec<_> = self.records.iter().filter(|(_, now)| now.record.blank == blank).collect();
        sort_by(&mut found, |(a_id, a), (b_id, b)| (a.day, *a_id).cmp(&(b.day, *b_id)));
        found
    }

    /// The newest record of a kind about a hive.
    pub fn newest_record(&self, blank: Blank, hive: &ThingId) -> Option<&RecordNow> {
        let mut newest: Option<&RecordNow> = None;
        for now in self.records.values() {
            let here = now.record.blank == blank && now.record.hives.contains(hive);
            if here && newest.is_none_or(|known| known.day <= now.day) {
                newest = Some(now);
            }
        }
        newest
    }

    /// What is known of a hive, a yard or the keeper by their records of `blank`: the newest stands whole. The form shows
    /// what is known and is saved as a whole, so what was emptied in it is gone.
    pub fn facts(&self, blank: Blank, yard: Option<&ThingId>, hive: Option<&ThingId>) -> Record {
        let mut known = Record::empty(blank, hive.into_iter().cloned().collect());
        for (_, now) in self.records_of(blank) {
            let here = match hive {
                Some(hive) => now.record.hives.contains(hive),
                None => now.yard.as_ref() == yard,
            };
            if here {
                known.answers.clone_from(&now.record.answers);
            }
        }
        known
    }

    /// Yards in use, oldest first.
    pub fn open_yards(&self) -> std::vec::IntoIter<(&ThingId, &YardNow)> {
        let mut open = Vec::new();
        for (id, yard) in &self.yards {
            if yard.closed.is_none() {
                open.push((id, yard));
            }
        }
        open.into_iter()
    }
}
