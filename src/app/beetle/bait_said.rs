//! Bait and patties in a hive, in words.

use crate::almanac::day::Day;
use crate::app::wording::en_beetle_honey as w;
use crate::book::aims::Aims;
use crate::book::baited::baited;
use crate::book::id::ThingId;
use crate::book::standing::Standing;

/// What is in `hive` and when it is to be out, a line each.
pub fn baited_said(standing: &Standing, hive: &ThingId, aims: &Aims, today: Day) -> Vec<String> {
    baited(standing, hive, aims).iter().map(|of| w::bait_in(of, today)).collect()
}
