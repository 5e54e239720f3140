//! Kinds of trap, in the keeper's own words and sizes.

use super::json::{json_choice, json_object};
use super::quantity::{Decimal, Share, TypedLength, TypedVolume, Volume};

/// What a trap is built like. None stands for a product; the keeper describes the ones in use.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TrapForm {
    /// Hangs between two frames, open slots, thrown away when full.
    BetweenFrame,
    /// Reusable, with a lid; `wells` (1 or 2) hold oil, `bait` says whether a bait well is in use.
    Lidded {
        /// Oil wells, 1 or 2.
        wells: u8,
        /// A bait well is in use. Off unless the keeper turns it on: over a screened floor bait may draw beetles in
        /// (common practice, no source).
        bait: bool,
    },
    /// Stands on the floor with a solid lure; no oil.
    FloorLure,
}

impl TrapForm {
    /// Takes oil.
    pub fn takes_oil(self) -> bool {
        !matches!(self, TrapForm::FloorLure)
    }

    /// Has a lid, so that it does not spill at the angle of an open trap.
    pub fn lidded(self) -> bool {
        matches!(self, TrapForm::Lidded { .. })
    }
}

/// Three measures of a rectangular trap; each may be unknown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct TrapSize {
    /// Along the frames.
    pub length: Option<TypedLength>,
    /// Across the frames.
    pub width: Option<TypedLength>,
    /// From the rim down.
    pub depth: Option<TypedLength>,
}

/// A price in the keeper's currency.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Pack {
    /// Pieces in the pack, 1 or more.
    pub pieces: u32,
    /// Price of the pack; unknown is not free.
    pub price: Option<Decimal>,
}

/// A kind of trap as the keeper describes it.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct TrapKind {
    /// The keeper's own word for it.
    pub name: String,
    /// How it is built.
    pub form: TrapForm,
    /// Used again after emptying.
    pub reusable: bool,
    /// Volume of all oil wells together when brim-full. Needed for oil sums.
    pub capacity: Option<TypedVolume>,
    /// Inside measures of the oil well, for spill angle and the depth of oil.
    pub inner: TrapSize,
    /// Outside measures, for "does it fit".
    pub outer: TrapSize,
    /// Level after a fill, as a share of the depth; one half unless the keeper says otherwise.
    pub fill: Share,
    /// Longest time between services, 1–120 days: the keeper's own limit.
    pub max_days: u16,
    /// Measured pairs of level (share of depth) and volume (share of capacity), strictly rising, without the ends 0
    /// and 100 %. Empty means straight walls.
    pub profile: Vec<(Share, Share)>,
    /// How it is sold.
    pub packs: Vec<Pack>,
}

json_choice!(TrapForm
    words { BetweenFrame = "between_frame", FloorLure = "floor_lure" }
    one {}
    many { Lidded = "lidded" { wells, bait } });
json_object!(TrapSize {} maybe { length, width, depth });
json_object!(Pack { pieces } maybe { price });
json_object!(TrapKind { name, form, reusable, inner, outer, fill, max_days } maybe { capacity, profile, packs });

impl TrapKind {
    /// Longest interval between services that can be set, in days.
    pub const MAX_DAYS: std::ops::RangeInclusive<u16> = 1..=120;

    /// Whether the parts go together: days within [`TrapKind::MAX_DAYS`], one or two wells, packs with something in
    /// them, and a profile that rises strictly between empty and full. Checked where a kind comes from a file; a form
    /// that makes kinds says which part is wrong.
    pub fn sound(&self) -> bool {
        let wells = !matches!(self.form, TrapForm::Lidded { wells, .. } if !(1..=2).contains(&wells));
        let packs = self.packs.len() <= 20 && self.packs.iter().all(|pack| pack.pieces > 0);
        let mut below = (Share::NONE, Share::NONE);
        let rises = self.profile.len() <= 50
            && self.profile.iter().chain([&(Share::FULL, Share::FULL)]).all(|point| {
                let rises = point.0 > below.0 && point.1 > below.1;
                below = *point;
                rises
            });
        TrapKind::MAX_DAYS.contains(&self.max_days) && wells && packs && rises
    }

    /// Share of the capacity that fills the trap to `level`: the walls are straight unless the keeper measured
    /// points, between which the line is straight.
    pub fn filled(&self, level: Share) -> f64 {
        let at = level.fraction();
        let ends = [(0.0, 0.0), (1.0, 1.0)];
        let measured = self.profile.iter().map(|(depth, volume)| (depth.fraction(), volume.fraction()));
        let mut below = ends[0];
        for point in measured.chain([ends[1]]) {
            if at <= point.0 {
                let run = point.0 - below.0;
                let along = if run > 0.0 { (at - below.0) / run } else { 1.0 };
                return below.1 + along * (point.1 - below.1);
            }
            below = point;
        }
        1.0
    }

    /// Oil that brings the trap from `from` to `to`; none when it is already there, unknown without a capacity.
    /// A kind without oil takes none.
    pub fn oil(&self, from: Share, to: Share) -> Option<Volume> {
        if !self.form.takes_oil() {
            return Some(Volume::ZERO);
        }
        let capacity = self.capacity?.volume();
        Some(capacity.times((self.filled(to) - self.filled(from)).max(0.0)))
    }
}
