//! When an open trap spills.

use super::quantity::{Length, Share};

/// Standard gravity in m/s² (CGPM 1901).
const GRAVITY: f64 = 9.806_65;

/// Working floor for oil: so deep that it covers a beetle, whose body is 5.3–6.3 mm long and about 3.5 mm wide.
/// That 6 mm is enough is judgement, not measured.
pub const LEAST_DEPTH_MM: f64 = 6.0;

/// How far a rectangular open trap tilts, or how hard a car brakes, before oil runs over the rim.
///
/// Steady tilt and steady braking: a jolt sloshes sooner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spill {
    /// Angle of tilt along the trap, 0–90 degrees.
    pub degrees: f64,
    /// Braking along the trap that tilts the surface as much, in m/s²; infinite for an empty trap.
    pub braking: f64,
    /// Depth of the oil when the trap hangs level.
    pub oil_depth: Length,
}

/// The spill angle of an open trap with upright walls, `length` inside along the tilt, `depth` inside, oil standing
/// at `fill` of the depth. `None` when a side is 0.
///
/// The oil keeps its volume and its surface stays level. At half full or more the surface meets both end walls when it
/// reaches the rim, so tan θ = 2(1−f)H/L; below half it meets the floor, so tan θ = H/(2fL).
pub fn spill(length: Length, depth: Length, fill: Share) -> Option<Spill> {
    let (long, deep, oil) = (length.millimetres(), depth.millimetres(), fill.fraction());
    if long <= 0.0 || deep <= 0.0 {
        return None;
    }
    let slope = if oil >= 0.5 { 2.0 * (1.0 - oil) * deep / long } else { deep / (2.0 * oil * long) };
    Some(Spill {
        degrees: slope.atan().to_degrees(),
        braking: GRAVITY * slope,
        oil_depth: Length::from_millimetres(oil * deep).unwrap_or_default(),
    })
}

#[cfg(test)]
mod tests {
    use super::spill;
    use crate::almanac::quantity::{Decimal, Length, Share};

    fn at(length: f64, depth: f64, percent: u32) -> Option<(f64, f64)> {
        let fill = Share::from_percent(Decimal::whole(percent)).unwrap_or_default();
        let side = |mm| Length::from_millimetres(mm).unwrap_or_default();
        spill(side(length), side(depth), fill).map(|s| (s.degrees, s.braking))
    }

    #[test]
    #[allow(clippy::float_cmp)] // the ends are exact
    fn an_empty_trap_never_spills_and_a_brimming_one_always_does() {
        assert_eq!(at(65.0, 20.0, 0), Some((90.0, f64::INFINITY)));
        assert_eq!(at(65.0, 20.0, 100), Some((0.0, 0.0)));
        assert_eq!(at(0.0, 20.0, 50), None);
        assert_eq!(at(65.0, 0.0, 50), None);
    }

    #[test]
    fn a_trap_of_65_by_20_mm_spills_at_the_published_angles() {
        // rounded to 0.1 degrees; braking rounded to 0.1 m/s²
        for (percent, degrees) in [(30, 27.1), (50, 17.1), (70, 10.5), (90, 3.5)] {
            assert!(at(65.0, 20.0, percent).is_some_and(|(d, _)| (d - degrees).abs() < 0.05), "{percent} %");
        }
        for (percent, braking) in [(40, 3.8), (50, 3.0), (70, 1.8), (90, 0.6)] {
            assert!(at(65.0, 20.0, percent).is_some_and(|(_, b)| (b - braking).abs() < 0.05), "{percent} %");
        }
    }
}
