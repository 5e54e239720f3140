//! How warm it is where eggs and larvae are: by how many bees keep it warm.

use super::rate::rate;
use super::{Edge, Stage};
use crate::almanac::warmth::{Span, Swing, Warmth};

/// The brood nest of a strong colony, °C: 34 in the studies, 34–35 in common practice; the middle, and how far it may
/// be off.
pub const NEST: (f64, f64) = (34.5, 0.5);
/// The share of comb that bees cover in a weak colony, for one whose strength nobody noted. Chosen here, no source.
pub const COMB: f64 = 0.5;

/// How many bees stand for the comb there is.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Strength {
    /// A colony of which nobody said more: likely a strong one, perhaps a weak one.
    #[default]
    Unknown,
    /// Bees on all combs.
    Strong,
    /// Bees on this share (0–1) of the combs: frames of bees over frames of comb.
    Cover(f64),
    /// No bees: an empty box, or supers that were pulled.
    Empty,
    /// As warm as somebody measured it, or takes it to be, day and night.
    Known(Span),
}

impl Strength {
    /// Frames of bees over frames of comb; [`Strength::Unknown`] without comb.
    pub fn of_frames(bees: f64, comb: f64) -> Strength {
        if comb > 0.0 && bees >= 0.0 { Strength::Cover((bees / comb).min(1.0)) } else { Strength::Unknown }
    }

    /// How warm it is among the combs on a day with this air.
    ///
    /// The warmth of the brood nest by the share of comb that is covered, the air outside by the rest: a straight line
    /// between two ends that are known, no source for what lies between; so it may be off by half a degree in the nest
    /// and by as much as the air where there are no bees.
    pub fn span(self, air: Span) -> Span {
        match self {
            Strength::Strong => at(air, 1.0),
            Strength::Empty => at(air, 0.0),
            Strength::Known(span) => span,
            Strength::Cover(share) => at(air, share),
            Strength::Unknown => {
                let (strong, weak) = (at(air, 1.0), at(air, COMB));
                let ends = [strong.cool, strong.warm, weak.cool, weak.warm];
                let mut span = strong;
                for end in ends {
                    if end.mean() < span.cool.mean() {
                        span.cool = end;
                    }
                    if end.mean() > span.warm.mean() {
                        span.warm = end;
                    }
                }
                span
            }
        }
    }

    /// What a day with this air does of `stage` among the combs. An unknown strength is as quick as a strong colony or a
    /// weak one and as slow as either, whichever is more.
    pub(super) fn rate(self, stage: Stage, air: Span, edge: Edge) -> f64 {
        let here = |share: f64| rate(stage, &at(air, share), edge);
        match (self, edge) {
            (Strength::Unknown, Edge::Earliest) => here(1.0).max(here(COMB)),
            (Strength::Unknown, Edge::Likely) => here(1.0),
            (Strength::Unknown, Edge::Latest) => here(1.0).min(here(COMB)),
            _ => rate(stage, &self.span(air), edge),
        }
    }
}

fn at(air: Span, share: f64) -> Span {
    let (nest, give) = NEST;
    let nest = |kelvin: f64| Swing::flat(Warmth::held(nest + kelvin));
    Span {
        cool: air.cool.towards(nest(-give), share),
        likely: air.likely.towards(nest(0.0), share),
        warm: air.warm.towards(nest(give), share),
    }
}
