//! What a mesh or a crack lets through.

use super::draft::BenchDraft;
use super::read;
use crate::almanac::mesh::opening;
use crate::almanac::quantity::{Decimal, Length, TypedLength};
use crate::almanac::typed::TypedError;

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct MeshSum {
    /// Wires to the inch.
    pub count: Decimal,
    /// Thickness of a wire.
    pub wire: Length,
    /// Between two wires; none when they touch.
    pub open: Option<Length>,
    /// A crack, when typed.
    pub crack: Option<Length>,
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<MeshSum> {
    read_all(draft).ok()
}

fn read_all(draft: &BenchDraft) -> Result<MeshSum, TypedError> {
    let count = read::more(draft.mesh_count())?;
    let wire = read::side(draft.mesh_wire(), draft.mesh_wire_unit())?.length();
    let crack = read::maybe(read::side(draft.mesh_crack(), draft.mesh_crack_unit()))?;
    Ok(MeshSum { count, wire, open: opening(count, wire), crack: crack.map(TypedLength::length) })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn eight_wires_to_the_inch_leave_two_and_three_quarter_millimetres() {
        let sum = reckon(&BenchDraft::default()).unwrap();
        assert!((sum.open.unwrap().millimetres() - 2.745).abs() < 1e-9);
        assert_eq!(sum.crack, None);
        let thick = BenchDraft::default().with("mesh_wire", "3.2");
        assert_eq!(reckon(&thick).unwrap().open, None);
        assert_eq!(reckon(&thick.with("mesh_count", "0")), None);
    }
}
