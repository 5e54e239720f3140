//! The ground round the hives, and what a label wants for it.

use super::draft::BenchDraft;
use super::read::{self, MOST_HIVES};
use crate::almanac::ground::{Ring, Stand, area, rows};
use crate::almanac::quantity::{Decimal, Length, TypedVolume, Volume};
use crate::almanac::typed::{self, TypedError};

/// Square metres in a square foot of 0.3048 m.
const SQUARE_FOOT: f64 = 0.092_903_04;

/// The answer. Areas are in the unit beside their fields.
#[derive(Clone, Debug, PartialEq)]
pub struct GroundSum {
    /// Hives.
    pub hives: u32,
    /// How far round a hive.
    pub reach: Length,
    /// Ground round one hive, to the hundredth.
    pub one: f64,
    /// Ground round all, what overlaps counted once: to the tenth.
    pub all: f64,
    /// What is paved, when typed.
    pub paved: Option<f64>,
    /// Ground to treat.
    pub treated: f64,
    /// The label's rate, when typed, and what that comes to.
    pub rate: Option<(Decimal, f64)>,
    /// The ground it is for.
    pub per: Decimal,
    /// Water on the same ground, when typed, and what that comes to.
    pub water: Option<(Volume, Volume)>,
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<GroundSum> {
    read_all(draft).ok()
}

fn read_all(draft: &BenchDraft) -> Result<GroundSum, TypedError> {
    let hives = typed::count(draft.ground_hives(), 1, MOST_HIVES)?;
    let in_row = typed::count(draft.ground_in_row(), 1, MOST_HIVES)?;
    let apart = read::way(draft.ground_apart(), draft.ground_apart_unit())?;
    let rows_apart = read::way(draft.ground_rows(), draft.ground_rows_unit())?;
    on(draft, &rows(hives, in_row, apart, rows_apart), None)
}

/// The same for hives that stand where it was written down, with so many square metres paved; where nobody wrote that
/// down, as much as stands in the field.
pub fn reckon_on(draft: &BenchDraft, stands: &[Stand], paved: Option<f64>) -> Option<GroundSum> {
    on(draft, stands, paved).ok()
}

/// The ground of one hive, by the fields.
///
/// # Errors
/// As [`read::way`].
pub fn ring(draft: &BenchDraft) -> Result<Ring, TypedError> {
    Ok(Ring {
        width: read::way(draft.ground_width(), draft.ground_width_unit())?,
        length: read::way(draft.ground_length(), draft.ground_length_unit())?,
        reach: read::way(draft.ground_reach(), draft.ground_reach_unit())?,
    })
}

fn on(draft: &BenchDraft, stands: &[Stand], paved: Option<f64>) -> Result<GroundSum, TypedError> {
    let ring = ring(draft)?;
    let hives = u32::try_from(stands.len()).unwrap_or(u32::MAX);
    let unit = if draft.ground_unit() == "sq_ft" { SQUARE_FOOT } else { 1.0 };
    let one = (ring.area() / unit * 100.0).round() / 100.0;
    // What is shown is what is reckoned with, so that the sum holds by hand.
    let all = (area(stands, &ring) / unit * 10.0).round() / 10.0;
    let paved = match paved {
        Some(paved) => Some((paved / unit * 1000.0).round() / 1000.0),
        None => read::maybe(read::more(draft.ground_paved()))?.map(Decimal::as_f64),
    };
    let treated = (all - paved.unwrap_or_default()).max(0.0);
    let per = read::more(draft.ground_per())?;
    let times = treated / per.as_f64();
    let rate = read::maybe(read::more(draft.ground_rate()))?.map(|rate| (rate, rate.as_f64() * times));
    let water = read::maybe(read::holds(draft.ground_water(), draft.ground_water_unit()))?;
    let water = water.map(TypedVolume::volume).map(|water| (water, water.times(times)));
    Ok(GroundSum { hives, reach: ring.reach, one, all, paved, treated, rate, per, water })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(found: f64, value: f64) -> bool {
        (found - value).abs() < 1e-9
    }

    #[test]
    fn ten_hives_in_a_row_share_their_ground() {
        let sum = reckon(&BenchDraft::default()).unwrap();
        assert!(near(sum.one, 4.41) && near(sum.all, 23.0) && near(sum.treated, 23.0), "{sum:?}");
        assert_eq!((sum.rate, sum.water), (None, None), "no rate is built in");
        let feet = reckon(&BenchDraft::default().with("ground_unit", "sq_ft")).unwrap();
        assert!((feet.all - 247.4).abs() < 0.6, "{feet:?}");
    }

    #[test]
    fn what_the_label_says_is_worked_out_for_what_is_not_paved() {
        let draft = BenchDraft::default()
            .with("ground_paved", "3")
            .with("ground_rate", "5")
            .with("ground_per", "10")
            .with("ground_water", "2");
        let sum = reckon(&draft).unwrap();
        assert!(near(sum.treated, 20.0) && near(sum.rate.unwrap().1, 10.0));
        assert!(near(sum.water.unwrap().1.millilitres(), 4000.0));
        let paved = reckon(&draft.with("ground_paved", "50")).unwrap();
        assert!(near(paved.treated, 0.0) && near(paved.rate.unwrap().1, 0.0));
    }
}
