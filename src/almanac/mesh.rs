//! What a mesh or a crack lets through.

use super::quantity::{Decimal, Length};

/// Millimetres; a mesh up to 2 mm stops adult beetles (EFSA 2015, bees in transport). They are about 3.5 mm wide, and flat.
const STOPS_MM: f64 = 2.0;

/// A slip of the tenth decimal is none of the wire's.
const NOISE: f64 = 1e-9;

/// The opening of a mesh of so many wires to the inch: `25.4 mm ÷ count − wire`. None where the wires touch, or none is
/// there.
pub fn opening(count: Decimal, wire: Length) -> Option<Length> {
    let open = 25.4 / count.as_f64() - wire.millimetres();
    Length::from_millimetres(open).ok().filter(|open| open.millimetres() > NOISE)
}

/// An opening, or a crack in the woodwork, is too narrow for an adult beetle.
pub fn stops(open: Length) -> bool {
    open.millimetres() <= STOPS_MM + NOISE
}

/// The widest opening that stops.
pub fn widest() -> Length {
    Length::from_millimetres(STOPS_MM).unwrap_or_default()
}
