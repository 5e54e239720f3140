//! A kind of trap as it stands in the fields, and what can be read from them.

use crate::almanac::quantity::{Decimal, LengthUnit, Share, TypedLength, TypedVolume, Volume, VolumeUnit};
use crate::almanac::text::{LABEL_MOST, LabelError, Letters, label};
use crate::almanac::trap::{Pack, TrapForm, TrapKind, TrapSize};
use crate::almanac::typed::{self, TypedError};
use crate::app::bench::read::{self, MOST_PIECES};
use crate::app::prefs;

/// A typed number and the code of its unit.
pub type Measure = (String, String);

/// Capacities that raise no question, in millilitres.
const USUAL_ML: std::ops::RangeInclusive<f64> = 1.0..=500.0;
/// Most rows of packs that an entry holds.
pub const MOST_PACKS: usize = 20;
/// Most rows of measured points: more than anyone pours.
pub const MOST_POINTS: usize = 20;

/// Every field of the form, exactly as typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KindDraft {
    /// The keeper's word for it.
    pub name: String,
    /// `between`, `one_well`, `two_wells`, `floor`.
    pub form: String,
    /// A bait well is in use.
    pub bait: bool,
    /// Used again after emptying.
    pub reusable: bool,
    /// Inside length, width, depth.
    pub inner: [Measure; 3],
    /// Outside length, width, depth.
    pub outer: [Measure; 3],
    /// What it holds.
    pub holds: Measure,
    /// An unusual capacity was confirmed.
    pub sure: bool,
    /// How full.
    pub fill: String,
    /// Longest days between services.
    pub days: String,
    /// Pieces and price.
    pub packs: Vec<(String, String)>,
    /// Level, and the oil in the trap at that level in the unit of the capacity.
    pub points: Vec<(String, String)>,
}

/// What is wrong with a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wrong {
    /// Not read.
    Typed(TypedError),
    /// Nothing of it.
    Zero,
    /// An unusual capacity that was not confirmed.
    Unsure,
    /// Measured points without a capacity.
    NoCapacity,
    /// Measured points that do not rise.
    NotRising,
    /// A measured point at the bottom, at the rim or beyond.
    AtTheEnd,
}

impl From<TypedError> for Wrong {
    fn from(error: TypedError) -> Wrong {
        Wrong::Typed(error)
    }
}

impl KindDraft {
    /// An empty form in the keeper's units.
    pub fn empty(volume: VolumeUnit, length: LengthUnit) -> KindDraft {
        let side = || (String::new(), prefs::length_code(length).to_owned());
        KindDraft {
            name: String::new(),
            form: "between".to_owned(),
            bait: false,
            reusable: false,
            inner: [side(), side(), side()],
            outer: [side(), side(), side()],
            holds: (String::new(), prefs::volume_code(volume).to_owned()),
            sure: false,
            fill: "½".to_owned(),
            days: "14".to_owned(),
            packs: Vec::new(),
            points: Vec::new(),
        }
    }

    /// The form filled with a kind.
    pub fn of(kind: &TrapKind, volume: VolumeUnit, length: LengthUnit) -> KindDraft {
        let mut draft = KindDraft::empty(volume, length);
        let sizes = |size: &TrapSize, draft: &mut [Measure; 3]| {
            for (known, field) in [size.length, size.width, size.depth].into_iter().zip(draft) {
                if let Some(known) = known {
                    *field = (known.number().to_string(), prefs::length_code(known.unit()).to_owned());
                }
            }
        };
        draft.name.clone_from(&kind.name);
        let (form, bait) = match kind.form {
            TrapForm::BetweenFrame => ("between", false),
            TrapForm::Lidded { wells, bait } => (if wells == 1 { "one_well" } else { "two_wells" }, bait),
            TrapForm::FloorLure => ("floor", false),
        };
        form.clone_into(&mut draft.form);
        (draft.bait, draft.reusable, draft.sure) = (bait, kind.reusable, true);
        sizes(&kind.inner, &mut draft.inner);
        sizes(&kind.outer, &mut draft.outer);
        if let Some(holds) = kind.capacity {
            draft.holds = (holds.number().to_string(), prefs::volume_code(holds.unit()).to_owned());
            let amount = |share: &Share| {
                // Back from a share with six decimals to what was poured.
                let poured = share.fraction() * holds.number().as_f64();
                Decimal::from_f64((poured * 1e4).round() / 1e4).unwrap_or_default().to_string()
            };
            draft.points = kind
                .profile
                .iter()
                .map(|(level, filled)| ([&level.percent().to_string(), " %"].concat(), amount(filled)))
                .collect();
        }
        draft.fill = [&kind.fill.percent().to_string(), " %"].concat();
        draft.days = kind.max_days.to_string();
        let price = |pack: &Pack| pack.price.map(|price| price.to_string()).unwrap_or_default();
        draft.packs = kind.packs.iter().map(|pack| (pack.pieces.to_string(), price(pack))).collect();
        draft
    }

    /// How it is built.
    pub fn built(&self) -> TrapForm {
        match self.form.as_str() {
            "one_well" => TrapForm::Lidded { wells: 1, bait: self.bait },
            "two_wells" => TrapForm::Lidded { wells: 2, bait: self.bait },
            "floor" => TrapForm::FloorLure,
            _ => TrapForm::BetweenFrame,
        }
    }

    /// Its name.
    ///
    /// # Errors
    /// [`LabelError`].
    pub fn named(&self, letters: &impl Letters) -> Result<String, LabelError> {
        label(&self.name, LABEL_MOST, letters)
    }

    /// What it holds; none while nobody has measured it, and for a trap without oil.
    ///
    /// # Errors
    /// [`Wrong::Zero`], [`Wrong::Unsure`], or a text that cannot be read.
    pub fn capacity(&self) -> Result<Option<TypedVolume>, Wrong> {
        if !self.built().takes_oil() {
            return Ok(None);
        }
        let Some(holds) = read::maybe(read::volume(&self.holds.0, &self.holds.1))? else { return Ok(None) };
        if holds.number() == Decimal::ZERO {
            return Err(Wrong::Zero);
        }
        if self.sure || usual(holds) { Ok(Some(holds)) } else { Err(Wrong::Unsure) }
    }

    /// Whether the capacity is one to ask about.
    pub fn unusual(&self) -> Option<TypedVolume> {
        let holds = read::volume(&self.holds.0, &self.holds.1).ok()?;
        (holds.number() != Decimal::ZERO && !usual(holds) && self.built().takes_oil()).then_some(holds)
    }

    /// How full it is filled.
    ///
    /// # Errors
    /// [`Wrong::Zero`], or a text that cannot be read.
    pub fn filled_to(&self) -> Result<Share, Wrong> {
        match typed::share(&self.fill)? {
            Share::NONE => Err(Wrong::Zero),
            fill => Ok(fill),
        }
    }

    /// Longest days between services.
    ///
    /// # Errors
    /// A text that is no number from 1 to 120.
    pub fn longest(&self) -> Result<u16, Wrong> {
        let (least, most) = TrapKind::MAX_DAYS.into_inner();
        let days = typed::count(&self.days, u32::from(least), u32::from(most))?;
        Ok(u16::try_from(days).unwrap_or(most))
    }

    /// How it is sold; rows without anything in them are left out.
    ///
    /// # Errors
    /// The first row that cannot be read.
    pub fn sold(&self) -> Result<Vec<Pack>, Wrong> {
        let filled = self.packs.iter().filter(|(pieces, price)| !blank(pieces) || !blank(price));
        filled
            .map(|(pieces, price)| {
                let pieces = typed::count(pieces, 1, MOST_PIECES)?;
                Ok(Pack { pieces, price: read::maybe(typed::price(price))? })
            })
            .collect()
    }

    /// Measured pairs of level and share of the capacity; rows without anything in them are left out.
    ///
    /// # Errors
    /// The first row, by its place, that cannot be read or does not rise.
    pub fn measured(&self) -> Result<Vec<(Share, Share)>, (usize, Wrong)> {
        let mut points: Vec<(Share, Share)> = Vec::new();
        if !self.built().takes_oil() {
            return Ok(points);
        }
        for (place, (level, oil)) in self.points.iter().enumerate() {
            if blank(level) && blank(oil) {
                continue;
            }
            let point = self.point(level, oil, points.last()).map_err(|wrong| (place, wrong))?;
            points.push(point);
        }
        Ok(points)
    }

    fn point(
        &self,
        level: &str,
        oil: &str,
        before: Option<&(Share, Share)>,
    ) -> Result<(Share, Share), Wrong> {
        let level = typed::share(level)?;
        let oil = read::volume(oil, &self.holds.1)?;
        let capacity = self.capacity().ok().flatten().ok_or(Wrong::NoCapacity)?;
        let percent = oil.volume().millilitres() / capacity.volume().millilitres() * 100.0;
        let share = Decimal::from_f64(percent).ok().and_then(|percent| Share::from_percent(percent).ok());
        let filled = share.ok_or(Wrong::AtTheEnd)?;
        let inside = |share: Share| share > Share::NONE && share < Share::FULL;
        if !inside(level) || !inside(filled) {
            return Err(Wrong::AtTheEnd);
        }
        match before {
            Some(before) if level <= before.0 || filled <= before.1 => Err(Wrong::NotRising),
            _ => Ok((level, filled)),
        }
    }

    /// What the trap holds, and the share of that in one fill. Rows that are still being typed do not take the answer
    /// away.
    pub fn one_fill(&self) -> Option<(Volume, f64)> {
        let capacity = self.capacity().ok()??.volume();
        let fill = self.filled_to().ok()?;
        let walls = TrapKind {
            name: String::new(),
            form: self.built(),
            reusable: self.reusable,
            capacity: None,
            inner: TrapSize::default(),
            outer: TrapSize::default(),
            fill,
            max_days: *TrapKind::MAX_DAYS.start(),
            profile: self.measured().unwrap_or_default(),
            packs: Vec::new(),
        };
        Some((capacity, walls.filled(fill)))
    }

    /// Whether the outside is smaller than the inside, by the place of the side.
    pub fn turned(&self, place: usize) -> bool {
        let length = |sides: &[Measure; 3]| Some(side(sides.get(place)?).ok()??.length().millimetres());
        matches!((length(&self.inner), length(&self.outer)), (Some(inner), Some(outer)) if outer < inner)
    }

    /// The kind; none while a field cannot be read.
    pub fn read(&self, letters: &impl Letters) -> Option<TrapKind> {
        if (0..3).any(|place| self.turned(place)) {
            return None;
        }
        Some(TrapKind {
            name: self.named(letters).ok()?,
            form: self.built(),
            reusable: self.reusable,
            capacity: self.capacity().ok()?,
            inner: trap_size(&self.inner)?,
            outer: trap_size(&self.outer)?,
            fill: self.filled_to().ok()?,
            max_days: self.longest().ok()?,
            profile: self.measured().ok()?,
            packs: self.sold().ok()?,
        })
    }
}

/// One side; may be empty.
///
/// # Errors
/// [`Wrong::Zero`], or a text that cannot be read.
pub fn side(typed: &Measure) -> Result<Option<TypedLength>, Wrong> {
    match read::maybe(read::length(&typed.0, &typed.1))? {
        Some(side) if side.number() == Decimal::ZERO => Err(Wrong::Zero),
        side => Ok(side),
    }
}

fn trap_size([length, width, depth]: &[Measure; 3]) -> Option<TrapSize> {
    Some(TrapSize { length: side(length).ok()?, width: side(width).ok()?, depth: side(depth).ok()? })
}

fn usual(holds: TypedVolume) -> bool {
    USUAL_ML.contains(&holds.volume().millilitres())
}

fn blank(text: &str) -> bool {
    text.trim().is_empty()
}

#[cfg(test)]
#[path = "draft_tests.rs"]
mod tests;
