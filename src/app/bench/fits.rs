//! Does the trap fit the box?

use super::draft::BenchDraft;
use super::read;
use crate::almanac::fit::{Fit, Place, fit};
use crate::almanac::quantity::{Length, TypedLength};
use crate::almanac::stack::BoxDepth;
use crate::almanac::trap::TrapSize;
use crate::almanac::typed::TypedError;

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct FitSum {
    /// The trap.
    pub outer: TrapSize,
    /// Where it is meant to hang.
    pub place: Place,
    /// Does it?
    pub fit: Fit,
}

/// The depth of box with this code; `own` is none of them.
pub fn depth(code: &str) -> Option<BoxDepth> {
    match code {
        "deep" => Some(BoxDepth::Deep),
        "medium" => Some(BoxDepth::Medium),
        "shallow" => Some(BoxDepth::Shallow),
        _ => None,
    }
}

/// The answer to what stands in the fields; none while one of them cannot be read, or a side is 0.
pub fn reckon(draft: &BenchDraft) -> Option<FitSum> {
    read_all(draft).ok()
}

fn read_all(draft: &BenchDraft) -> Result<FitSum, TypedError> {
    let side = |text: &str, unit: &str| read::maybe(read::side(text, unit));
    let outer = TrapSize {
        length: side(draft.fit_length(), draft.fit_length_unit())?,
        width: side(draft.fit_width(), draft.fit_width_unit())?,
        depth: side(draft.fit_depth(), draft.fit_depth_unit())?,
    };
    let own = |text: &str, unit: &str, usual: Length| {
        side(text, unit).map(|typed| typed.map_or(usual, TypedLength::length))
    };
    let known = depth(draft.fit_box());
    let usual = Place::usual(known.unwrap_or_default());
    let frame_side = match known {
        Some(_) => usual.frame_side,
        None => read::side(draft.fit_side(), draft.fit_side_unit())?.length(),
    };
    let place = Place {
        frame_side,
        gap: own(draft.fit_gap(), draft.fit_gap_unit(), usual.gap)?,
        inside: own(draft.fit_inside(), draft.fit_inside_unit(), usual.inside)?,
        clearance: usual.clearance,
    };
    Ok(FitSum { outer, place, fit: fit(&outer, &place) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::fit::Side;

    #[test]
    fn a_deep_trap_in_a_shallow_box_fails_by_its_depth() {
        let draft = BenchDraft::default().with("fit_box", "shallow").with("fit_depth", "200");
        assert!(matches!(reckon(&draft).unwrap().fit, Fit::TooBig { side: Side::Depth, .. }));
        let own = draft.with("fit_box", "own");
        assert_eq!(reckon(&own), None, "an own box needs its frame side");
        let own = own.with("fit_side", "210");
        assert!(matches!(reckon(&own).unwrap().fit, Fit::Fits { .. }));
    }

    #[test]
    fn a_side_of_nothing_does_not_fit_it_is_not_read() {
        for field in ["fit_depth", "fit_width", "fit_length", "fit_gap", "fit_inside"] {
            let draft = BenchDraft::default().with(field, "0");
            assert_eq!(reckon(&draft), None, "{field}");
            assert!(reckon(&draft.with(field, "")).is_some(), "{field} may stay empty");
        }
        let own = BenchDraft::default().with("fit_box", "own").with("fit_side", "0.0");
        assert_eq!(reckon(&own), None);
    }
}
