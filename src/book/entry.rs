//! One line of the book: what happened, on which day, who wrote it down.
//!
//! This is format version 1. It is never changed: a new kind of entry means a new version and a migration.

use super::id::{EntryId, ThingId};
use crate::almanac::day::{Day, Stamp};
use crate::almanac::json::{json_choice, json_object};
use crate::almanac::quantity::{Decimal, LengthUnit, Share, TypedVolume, VolumeUnit};
use crate::almanac::stack::{BoxDepth, HiveSize, Spot};
use crate::almanac::tally::CountRange;
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
    /// Entries struck out. Striking out a strike brings its entries back.
    Struck {
        /// Which.
        entries: Vec<EntryId>,
    },
}

/// A box as it comes onto a hive.
#[derive(Clone, Debug, PartialEq)]
pub struct NewBox {
    /// Its depth.
    pub depth: BoxDepth,
    /// Traps it is meant to carry; 0 for a super left without.
    pub wants: u8,
    /// Traps that are in it from the start.
    pub traps: Vec<NewTrap>,
}

/// A trap as it comes into a box.
#[derive(Clone, Debug, PartialEq)]
pub struct NewTrap {
    /// Where in the box.
    pub spot: Spot,
    /// Which kind.
    pub kind: ThingId,
    /// Oil level it was filled to; none for a kind without oil.
    pub level: Option<Share>,
}

/// A trap put into a box that is already there.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedTrap {
    /// Which box.
    pub part: ThingId,
    /// The trap.
    pub trap: NewTrap,
}

/// What became of traps that left a hive.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TrapsWent {
    /// Back on the shelf at home.
    Stock,
    /// Thrown away.
    Bin,
    /// Nobody knows.
    Lost,
}

/// How the care for a hive ended.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Ending {
    /// The colony is dead.
    Dead,
    /// Sold or given away.
    Sold,
    /// Joined with another colony.
    Joined {
        /// The hive that took it in.
        into: Option<ThingId>,
    },
    /// The bees left.
    Gone,
}

/// Why a hive was skipped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SkipReason {
    /// Hot bees.
    Temper,
    /// Robbing.
    Robbing,
    /// Rain, storm, cold or dark.
    Weather,
    /// No time or no material left.
    NoTime,
    /// Something else; see the note.
    Other,
}

/// Trap work on a whole hive or on some of its traps.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// Which hive.
    pub hive: ThingId,
    /// Which traps; none means every trap in the hive on that day.
    pub traps: Option<Vec<ThingId>>,
    /// What was done.
    pub did: Did,
    /// Oil level found, as a share of the trap's depth.
    pub before: Option<Share>,
    /// Oil level left.
    pub after: Option<Share>,
    /// Dead beetles in all these traps together.
    pub count: Option<CountRange>,
    /// In the keeper's words, at most 500 characters.
    pub note: Option<String>,
}

/// What was done to traps.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Did {
    /// Looked at and left.
    AsFound,
    /// Oil added.
    ToppedUp,
    /// Emptied and filled anew, or a new trap in its place.
    Replaced,
    /// Found spilled. Filled again on the spot when a level after is given.
    Spilled,
    /// Not there any more.
    Missing,
    /// Closed by the bees with propolis.
    GluedShut,
}

/// The keeper's settings, all optional: an entry changes only what it names.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct KeeperChange {
    /// Name on papers.
    pub name: Option<String>,
    /// Unit volumes are shown in.
    pub volume: Option<VolumeUnit>,
    /// Unit lengths are shown in.
    pub length: Option<LengthUnit>,
    /// Share of oil carried on top of the sum.
    pub reserve: Option<Share>,
    /// Size of the bottles oil is carried in.
    pub bottle: Option<TypedVolume>,
    /// Currency of every price, ISO 4217.
    pub currency: Option<String>,
    /// First day of the keeper's season as month and day: 301 is 1 March.
    pub season_start: Option<u16>,
    /// Value of a colony, in the currency.
    pub colony_value: Option<Decimal>,
}

json_object!(Entry { id, day, at, what } maybe { by, yard, replaces, bulk });
json_object!(NewBox { depth, wants } maybe { traps });
json_object!(NewTrap { spot, kind } maybe { level });
json_object!(PlacedTrap { part as "box", trap });
json_object!(Check { hive, did } maybe { traps, before, after, count, note });
json_object!(KeeperChange {} maybe {
    name, volume, length, reserve, bottle, currency, season_start, colony_value
});
json_choice!(TrapsWent words { Stock = "stock", Bin = "bin", Lost = "lost" } one {} many {});
json_choice!(Ending
    words { Dead = "dead", Sold = "sold", Gone = "gone" }
    one {}
    many { Joined = "joined" {} maybe { into } });
json_choice!(SkipReason
    words { Temper = "temper", Robbing = "robbing", Weather = "weather", NoTime = "no_time", Other = "other" }
    one {} many {});
json_choice!(Did
    words {
        AsFound = "as_found", ToppedUp = "topped_up", Replaced = "replaced", Spilled = "spilled",
        Missing = "missing", GluedShut = "glued_shut",
    }
    one {} many {});
json_choice!(What
words {}
one { Keeper = "keeper", Kind = "kind", Check = "check" }
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
    BoxesOn = "boxes_on" { hive, above, boxes },
    BoxOff = "box_off" { hive, part as "box", traps },
    BoxWants = "box_wants" { hive, part as "box", traps },
    TrapsOn = "traps_on" { hive, traps },
    TrapsOff = "traps_off" { hive, traps, went },
    Skip = "skip" { hive, why } maybe { note },
    Note = "note" { text } maybe { hive },
    Struck = "struck" { entries },
});

/// Why an entry that could be read cannot be taken in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EntryError {
    /// A text longer than its field allows.
    TextTooLong,
    /// More parts than one entry may carry.
    TooManyParts,
    /// Corrects or strikes an entry that its writer cannot have seen.
    LooksAhead,
    /// A number outside what its field allows.
    OutOfRange,
}

impl Entry {
    /// Most beetles in one count.
    pub const COUNT_MOST: u32 = 1_000_000;
    /// Highest counter that is taken in from a file: half of what there is, so that this phone keeps numbers to write
    /// with.
    pub const COUNTER_MOST: u32 = EntryId::MOST / 2;
    /// Most characters of a note.
    pub const NOTE_MOST: usize = 500;
    /// Most characters of a tag or name. Visible characters are counted where text is typed; this is the bound on
    /// what a file may bring.
    pub const NAME_MOST: usize = 300;

    /// Checks what the types cannot: lengths, counts, and that corrections look back.
    ///
    /// # Errors
    /// [`EntryError`]: the entry is not taken in.
    pub fn check(&self) -> Result<(), EntryError> {
        let name = |text: &str| fits(text, Entry::NAME_MOST);
        let note =
            |text: &Option<String>| text.as_deref().map_or(Ok(()), |text| fits(text, Entry::NOTE_MOST));
        let earlier = |id: &EntryId| if *id < self.id { Ok(()) } else { Err(EntryError::LooksAhead) };
        if self.id.n() > Entry::COUNTER_MOST {
            return Err(EntryError::OutOfRange);
        }
        self.by.as_deref().map_or(Ok(()), |by| fits(by, 60))?;
        self.replaces.as_ref().map_or(Ok(()), earlier)?;
        match &self.what {
            What::Kind(kind) | What::KindChanged { now: kind, .. } => {
                name(&kind.name)?;
                if kind.sound() { Ok(()) } else { Err(EntryError::OutOfRange) }
            }
            What::Yard { name: text, zone } => name(text).and(name(zone)),
            What::YardChanged { name: text, zone, .. } => {
                text.as_deref().map_or(Ok(()), name).and(zone.as_deref().map_or(Ok(()), name))
            }
            What::Hive { tag, boxes, .. } => name(tag).and(parts(boxes)),
            What::HiveChanged { tag, .. } => tag.as_deref().map_or(Ok(()), name),
            What::HiveMoved { permit, .. } => permit.as_deref().map_or(Ok(()), name),
            What::BoxesOn { boxes, .. } => parts(boxes),
            What::TrapsOn { traps, .. } if traps.len() > 200 => Err(EntryError::TooManyParts),
            What::Check(check) => {
                let most = check.count.map_or(0, |count| count.high().unwrap_or(count.low()));
                note(&check.note)?;
                if most > Entry::COUNT_MOST { Err(EntryError::OutOfRange) } else { Ok(()) }
            }
            What::Skip { note: text, .. } => note(text),
            What::Note { text, .. } => fits(text, Entry::NOTE_MOST),
            What::Struck { entries } => entries.iter().try_for_each(earlier),
            What::Keeper(change) => change.name.as_deref().map_or(Ok(()), name),
            _ => Ok(()),
        }
    }

    /// Part of the demonstration: made by it, or written by the keeper into one of its yards.
    pub fn is_demo(&self) -> bool {
        self.id.is_demo() || self.yard.as_ref().is_some_and(ThingId::is_demo)
    }

    /// The hive an entry is about, if it is about one. An entry that brings a hive is about the hive it brings.
    pub fn hive(&self) -> Option<ThingId> {
        match &self.what {
            What::Hive { .. } => Some(self.id.thing(0)),
            What::HiveChanged { hive, .. }
            | What::HiveMoved { hive, .. }
            | What::HiveEnded { hive, .. }
            | What::HiveBack { hive }
            | What::BoxesOn { hive, .. }
            | What::BoxOff { hive, .. }
            | What::BoxWants { hive, .. }
            | What::TrapsOn { hive, .. }
            | What::TrapsOff { hive, .. }
            | What::Skip { hive, .. }
            | What::Note { hive: Some(hive), .. } => Some(hive.clone()),
            What::Check(check) => Some(check.hive.clone()),
            _ => None,
        }
    }
}

fn fits(text: &str, most: usize) -> Result<(), EntryError> {
    if text.chars().count() > most { Err(EntryError::TextTooLong) } else { Ok(()) }
}

fn parts(boxes: &[NewBox]) -> Result<(), EntryError> {
    let things = boxes.len() + boxes.iter().map(|part| part.traps.len()).sum::<usize>();
    if things > 200 { Err(EntryError::TooManyParts) } else { Ok(()) }
}
