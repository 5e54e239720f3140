//! The keeper's settings.

use crate::almanac::json::json_object;
use crate::almanac::quantity::{Decimal, LengthUnit, Share, TypedVolume, VolumeUnit};

/// The keeper's settings, all optional: as they stand, or, in an entry, those that change.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Keeper {
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

json_object!(Keeper {} maybe {
    name, volume, length, reserve, bottle, currency, season_start, colony_value
});

impl Keeper {
    /// Takes over whatever `change` names.
    pub fn change(&mut self, change: &Keeper) {
        let Keeper { name, volume, length, reserve, bottle, currency, season_start, colony_value } = change;
        set(&mut self.name, name.as_ref());
        set(&mut self.volume, volume.as_ref());
        set(&mut self.length, length.as_ref());
        set(&mut self.reserve, reserve.as_ref());
        set(&mut self.bottle, bottle.as_ref());
        set(&mut self.currency, currency.as_ref());
        set(&mut self.season_start, season_start.as_ref());
        set(&mut self.colony_value, colony_value.as_ref());
    }
}

fn set<T: Clone>(place: &mut Option<T>, new: Option<&T>) {
    if new.is_some() {
        *place = new.cloned();
    }
}
