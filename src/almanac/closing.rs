//! What it takes to close up the hives of a yard: pieces out of sheets, sealant out of tubes, coats out of tins.
//!
//! Things to buy round up, and what a sheet yields rounds down.

use super::quantity::{Length, Share};

/// A side that comes out of its unit a hair short still holds a whole piece.
const NOISE: f64 = 1e-9;

/// Both sides of a piece or of a sheet; of a side of nothing or less none is cut.
pub type Sides = (Length, Length);

/// How pieces are cut out of a sheet: whole rows and columns, all of them the same way round.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    /// Pieces along the first side of the sheet.
    pub along: u32,
    /// Pieces along its second.
    pub across: u32,
    /// The pieces lie with their second side along the first of the sheet.
    pub turned: bool,
}

impl Cut {
    /// Pieces of one sheet.
    pub fn pieces(&self) -> u32 {
        self.along.saturating_mul(self.across)
    }
}

/// The better of the two ways to lay `piece` on `sheet`; as it was typed where both yield as many. None when a side of the
/// piece is nothing, or not one fits.
pub fn cut(sheet: Sides, piece: Sides) -> Option<Cut> {
    let turned = (piece.1, piece.0);
    let lay = |(first, second): Sides, turned| Cut {
        along: fits(sheet.0, first),
        across: fits(sheet.1, second),
        turned,
    };
    let (straight, turned) = (lay(piece, false), lay(turned, true));
    let best = if turned.pieces() > straight.pieces() { turned } else { straight };
    (best.pieces() > 0).then_some(best)
}

/// How often a side goes into another.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a float cast stops at the ends of u32
fn fits(whole: Length, part: Length) -> u32 {
    if part.millimetres() <= 0.0 {
        return 0;
    }
    (whole.millimetres() / part.millimetres() + NOISE) as u32
}

/// Sheets or tins, whole ones, for `need` pieces or coats when each is enough for `each` of them; 0 for none. None when
/// it is enough for nothing.
pub fn packs(need: u32, each: u32) -> Option<u32> {
    (each > 0).then(|| need.div_ceil(each))
}

/// Sealant for cracks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sealant {
    /// Millimetres of cracks with the reserve, 0 or more.
    pub with_reserve: f64,
    /// Whole tubes; none where nobody knows how far one goes, or it goes nowhere.
    pub tubes: Option<u32>,
}

/// Sealant for `cracks` millimetres, below 0 as 0, with a `reserve` on top, in tubes that go `a_tube` far.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // a float cast stops at the ends of u32
pub fn sealant(cracks: f64, reserve: Share, a_tube: Option<Length>) -> Sealant {
    let with_reserve = cracks.max(0.0) * (1.0 + reserve.fraction());
    let tubes = a_tube.map(Length::millimetres).filter(|far| *far > 0.0);
    let tubes = tubes.map(|far| (with_reserve / far - NOISE).max(0.0).ceil() as u32);
    Sealant { with_reserve, tubes }
}
