//! Boxes and traps as they come onto a hive and leave it.

use crate::almanac::json::{json_choice, json_object};
use crate::almanac::quantity::Share;
use crate::almanac::stack::{BoxDepth, Spot};
use crate::book::id::ThingId;

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

json_object!(NewBox { depth, wants } maybe { traps });
json_object!(NewTrap { spot, kind } maybe { level });
json_object!(PlacedTrap { part as "box", trap });
json_choice!(TrapsWent words { Stock = "stock", Bin = "bin", Lost = "lost" } one {} many {});
