//! One line of the book: what happened, on which day, who wrote it down.
//!
//! This is format version 2: version 1, records ([`What::Record`]) and hives
//! that are one ([`What::HiveSame`]). What is released is never changed: one more kind
//! of entry means a new version and a migration.

mod check;
mod parts;
mod work;

pub use super::keeper::Keeper as KeeperChange;
pub use check::EntryError;
pub use parts::{NewBox, NewTrap, PlacedTrap, TrapsWent};
pub use work::{Check, Did, Ending, SkipReason};

use super::id::{EntryId, ThingId};
use super::record::{About, Record};
use crate::almanac::day::{Day, Stamp};
use crate::almanac::json::{json_choice, json_object};
use crate::almanac::stack::HiveSize;
use crate::almanac::trap::TrapKind;

/// A line of the book.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Unique in every book.
    pub id: EntryId,
    /// The civil day in the yard on which it happened.
    pub day: Day,
    /// When it was written down, by the phone's clock.
    pub at: Stamp,
    /// The phone's label, at most 20 characters.
    pub by: Option<String>,
    /// The yard whose page it stands on; none for what belongs to the keeper. Says where the line lies, not what it
    /// means.
    pub yard: Option<ThingId>,
    /// The earlier entry this one corrects. The corrected entry's things keep their names.
    pub replaces: Option<EntryId>,
    /// The first entry of the bulk this one was written with; undone together.
    pub bulk: Option<EntryId>,
    /// What happened.
    pub what: What,
}

/// What an entry says. Fields left out were left empty: empty, zero and "not looked" are three values.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// The keeper's own settings; only what is given changes.
    Keeper(KeeperChange),
    /// A new kind of trap, thing 0.
    Kind(TrapKind),
    /// A kind described anew.
    KindChanged {
        /// Which.
        kind: ThingId,
        /// All of it.
        now: TrapKind,
    },
    /// A kind no longer offered for new traps.
    KindRetired {
        /// Which.
        kind: ThingId,
    },
    /// A new yard, thing 0.
    Yard {
        /// The keeper's word for it.
        name: String,
        /// Time zone (IANA name): its calendar decides what day it is.
        zone: String,
    },
    /// A yard renamed or put into another zone.
    YardChanged {
        /// Which.
        yard: ThingId,
        /// New name.
        name: Option<String>,
        /// New zone.
        zone: Option<String>,
    },
    /// A yard given up. It stays in the history.
    YardClosed {
        /// Which.
        yard: ThingId,
    },
    /// Trap work rests (`running` false) or starts again.
    Season {
        /// Which yard.
        yard: ThingId,
        /// Whether anything can be due.
        running: bool,
    },
    /// The walking order of a yard. Hives it does not name follow in their old order.
    Order {
        /// Which yard.
        yard: ThingId,
        /// From the gate.
        hives: Vec<ThingId>,
    },
    /// A new hive, thing 0; its boxes and their traps are numbered from 1 as they are read: first box, its traps,
    /// second box, its traps.
    Hive {
        /// Where it stands.
        yard: ThingId,
        /// What is written on it; unique among the living hives of a yard.
        tag: String,
        /// Full hive or nuc.
        size: HiveSize,
        /// From the floor up.
        boxes: Vec<NewBox>,
    },
    /// A hive renamed or re-sized; only what is given changes.
    HiveChanged {
        /// Which.
        hive: ThingId,
        /// New tag.
        tag: Option<String>,
        /// New size.
        size: Option<HiveSize>,
    },
    /// A hive carried to another yard, traps and all.
    HiveMoved {
        /// Which.
        hive: ThingId,
        /// Where to.
        to: ThingId,
        /// Permit or certificate number, as far as one is needed.
        permit: Option<String>,
    },
    /// A hive that is no longer looked after.
    HiveEnded {
        /// Which.
        hive: ThingId,
        /// How.
        how: Ending,
    },
    /// A hive taken back into care after it was ended.
    HiveBack {
        /// Which.
        hive: ThingId,
    },
    /// Boxes put on a hive, numbered from 0 as in [`What::Hive`].
    BoxesOn {
        /// Which hive.
        hive: ThingId,
        /// How many boxes stay below them.
        above: u8,
        /// From the lowest up.
        boxes: Vec<NewBox>,
    },
    /// A box taken off.
    BoxOff {
        /// From which hive.
        hive: ThingId,
        /// Which.
        part: ThingId,
        /// What became of the traps in it.
        traps: TrapsWent,
    },
    /// How many traps a box is meant to carry.
    BoxWants {
        /// On which hive.
        hive: ThingId,
        /// Which.
        part: ThingId,
        /// Traps.
        traps: u8,
    },
    /// Traps put into boxes of one hive, numbered from 0.
    TrapsOn {
        /// Which hive.
        hive: ThingId,
        /// Where.
        traps: Vec<PlacedTrap>,
    },
    /// Traps taken out for good.
    TrapsOff {
        /// Which hive.
        hive: ThingId,
        /// Which.
        traps: Vec<ThingId>,
        /// What became of them.
        went: TrapsWent,
    },
    /// Trap work on a hive.
    Check(Check),
    /// A hive that was due or on the way, and was left.
    Skip {
        /// Which.
        hive: ThingId,
        /// Why.
        why: SkipReason,
        /// In the keeper's words, at most 500 characters.
        note: Option<String>,
    },
    /// Words on a hive or, without one, on the yard; at most 500 characters.
    Note {
        /// Which hive.
        hive: Option<ThingId>,
        /// The words.
        text: String,
    },
    /// Two hives of the book are one in the yard. Since version 2.
    HiveSame {
        /// The one that is not kept.
        hive: ThingId,
        /// The one that it is.
        is: ThingId,
    },
    /// What was seen or done beside the traps. Since version 2.
    Record(Record),
    /// Entries struck out. Striking out a strike brings its entries back.
    Struck {
        /// Which.
        entries: Vec<EntryId>,
    },
}

json_object!(Entry { id, day, at, what } maybe { by, yard, replaces, bulk });
json_choice!(What
words {}
one { Keeper = "keeper", Kind = "kind", Check = "check", Record = "record" }
many {
    KindChanged = "kind_changed" { kind, now },
    KindRetired = "kind_retired" { kind },
    Yard = "yard" { name, zone },
    YardChanged = "yard_changed" { yard } maybe { name, zone },
    YardClosed = "yard_closed" { yard },
    Season = "season" { yard, running },
    Order = "order" { yard, hives },
    Hive = "hive" { yard, tag, size, boxes },
    HiveChanged = "hive_changed" { hive } maybe { tag, size },
    HiveMoved = "hive_moved" { hive, to } maybe { permit },
    HiveEnded = "hive_ended" { hive, how },
    HiveBack = "hive_back" { hive },
    HiveSame = "hive_same" { hive, is },
    BoxesOn = "boxes_on" { hive, above, boxes },
    BoxOff = "box_off" { hive, part as "box", traps },
    BoxWants = "box_wants" { hive, part as "box", traps },
    TrapsOn = "traps_on" { hive, traps },
    TrapsOff = "traps_off" { hive, traps, went },
    Skip = "skip" { hive, why } maybe { note },
    Note = "note" { text } maybe { hive },
    Struck = "struck" { entries },
});

impl Entry {
    /// Part of the demonstration: made by it, or written by the keeper into one of its yards.
    pub fn is_demo(&self) -> bool {
        self.id.is_demo() || self.yard.as_ref().is_some_and(ThingId::is_demo)
    }

    /// Brings a yard or a kind. These come first whatever day they carry: a hive may have stood there before its yard was
    /// written down.
    pub fn is_ground(&self) -> bool {
        matches!(self.what, What::Yard { .. } | What::Kind(_))
    }

    /// The bulk whose first line on this hive and day this line goes on with, if there is one before it: trap work for
    /// some traps. A bulk over many hives holds one piece of work for each.
    pub fn goes_on(&self) -> Option<&EntryId> {
        let part = matches!(&self.what, What::Check(work) if work.traps.is_some());
        self.bulk.as_ref().filter(|_| part)
    }

    /// The version of the format that knows this entry.
    pub fn version(&self) -> u32 {
        match &self.what {
            What::Record(record) => record.version(),
            What::HiveSame { .. } => 2,
            _ => 1,
        }
    }

    /// Whether an entry is about `hive`, alone or among others.
    pub fn concerns(&self, hive: &ThingId) -> bool {
        match &self.what {
            What::Record(record) => record.hives.contains(hive) || record.named_hive() == Some(hive),
            What::HiveSame { is, .. } if is == hive => true,
            _ => self.hive().as_ref() == Some(hive),
        }
    }

    /// The hive an entry is about, if it is about one. An entry that brings a hive is about the hive it brings.
    pub fn hive(&self) -> Option<ThingId> {
        match &self.what {
            What::Hive { .. } => Some(self.id.thing(0)),
            What::HiveChanged { hive, .. }
            | What::HiveMoved { hive, .. }
            | What::HiveEnded { hive, .. }
            | What::HiveBack { hive }
            | What::HiveSame { hive, .. }
            | What::BoxesOn { hive, .. }
            | What::BoxOff { hive, .. }
            | What::BoxWants { hive, .. }
            | What::TrapsOn { hive, .. }
            | What::TrapsOff { hive, .. }
            | What::Skip { hive, .. }
            | What::Note { hive: Some(hive), .. } => Some(hive.clone()),
            What::Check(check) => Some(check.hive.clone()),
            What::Record(record) if record.blank.about() == About::Hive => record.hives.first().cloned(),
            _ => None,
        }
    }
}
