//! Level and volume of the oil in a trap whose walls need not be straight.

use super::trap::TrapKind;

/// The level, as a share of the depth 0–1, at which the trap holds `filled` of its capacity (0–1; outside that it is
/// held at the nearer end). The inverse of [`TrapKind::filled`], over the same points.
pub fn level_of(kind: &TrapKind, filled: f64) -> f64 {
    let filled = filled.clamp(0.0, 1.0);
    let measured = kind.profile.iter().map(|(depth, volume)| (depth.fraction(), volume.fraction()));
    let mut below = (0.0, 0.0);
    for point in measured.chain([(1.0, 1.0)]) {
        if filled <= point.1 {
            let rise = point.1 - below.1;
            let along = if rise > 0.0 { (filled - below.1) / rise } else { 1.0 };
            return below.0 + along * (point.0 - below.0);
        }
        below = point;
    }
    1.0
}

#[cfg(test)]
mod tests {
    use super::level_of;
    use crate::almanac::quantity::{Decimal, Share};
    use crate::almanac::trap::{TrapForm, TrapKind};

    fn percent(value: u32) -> Share {
        Share::from_percent(Decimal::whole(value)).unwrap_or_default()
    }

    #[test]
    fn a_trap_that_narrows_downwards_holds_less_below_than_above() {
        let mut kind = TrapKind {
            name: "narrow foot".into(),
            form: TrapForm::BetweenFrame,
            reusable: false,
            capacity: None,
            inner: crate::almanac::trap::TrapSize::default(),
            outer: crate::almanac::trap::TrapSize::default(),
            fill: Share::HALF,
            max_days: 14,
            profile: vec![(percent(50), percent(30))],
            packs: Vec::new(),
        };
        assert!((level_of(&kind, 0.15) - 0.25).abs() < 1e-12);
        assert!((level_of(&kind, 0.30) - 0.50).abs() < 1e-12);
        assert!((level_of(&kind, 0.65) - 0.75).abs() < 1e-12);
        kind.profile.clear();
        assert!((level_of(&kind, 0.65) - 0.65).abs() < 1e-12);
        for (outside, end) in [(-0.1, 0.0), (1.1, 1.0)] {
            assert!((level_of(&kind, outside) - end).abs() < 1e-12);
        }
    }
}
