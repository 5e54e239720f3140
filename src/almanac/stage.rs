//! What warmth makes of the beetle's stages: how much of each is done in a day.
//!
//! Each stage has an earliest, a likely and a latest course, from what the temperature may have been and from sets of
//! constants that disagree. All three are sums of day rates, so each can be worked out again by hand.

mod hive;
mod march;
mod rate;
mod set;
mod sine;
mod weather;

pub use hive::{COMB, NEST, Strength};
pub use march::{Dry, Held, LIMIT, Outcome, Step, Walk, When, Why};
pub use rate::{NARROW, Rates, WIDE, days, rates};
pub use set::{Curve, Line};
pub use sine::{NODES, day_mean};
pub use weather::{AIR, Weather};

/// A stretch of the beetle's life.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// From laying to hatching, in the hive.
    Egg,
    /// From hatching until it is full grown, in the hive.
    Larva,
    /// Full grown, until it is in the soil.
    Wandering,
    /// From digging in until the young adult comes out.
    Soil,
    /// From there until the young adult lays.
    BeforeLaying,
}

impl Stage {
    /// All stages in their order.
    pub const ALL: [Stage; 5] =
        [Stage::Egg, Stage::Larva, Stage::Wandering, Stage::Soil, Stage::BeforeLaying];

    /// The days it takes whatever the temperature, at each edge. `None` where warmth decides.
    ///
    /// Wandering: 0–2 days, judgement; nothing measured could be read, and without soil larvae wait for weeks. Before
    /// laying: about a week (common practice, and a national agency's page), two weeks on another page; neither gives a
    /// temperature.
    pub fn fixed_days(self) -> Option<[f64; 3]> {
        match self {
            Stage::Wandering => Some([0.0, 1.0, 2.0]),
            Stage::BeforeLaying => Some([7.0, 7.0, 14.0]),
            Stage::Egg | Stage::Larva | Stage::Soil => None,
        }
    }
}

/// Which end of a span.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Edge {
    /// No sooner than this: planning by it is the cautious choice.
    Earliest,
    /// The middle of the sets at the likely temperature.
    Likely,
    /// No later than this.
    Latest,
}

impl Edge {
    /// All three in their order.
    pub const ALL: [Edge; 3] = [Edge::Earliest, Edge::Likely, Edge::Latest];

    /// Its place among three.
    pub fn place(self) -> usize {
        match self {
            Edge::Earliest => 0,
            Edge::Likely => 1,
            Edge::Latest => 2,
        }
    }

    /// Its own of three.
    pub fn of<T: Copy>(self, three: [T; 3]) -> T {
        let [earliest, likely, latest] = three;
        match self {
            Edge::Earliest => earliest,
            Edge::Likely => likely,
            Edge::Latest => latest,
        }
    }

    /// `days` in whole days, outward: the latest up, the others down. Noise of the sum below 10⁻⁹ is no day.
    pub fn whole_days(self, days: f64) -> i32 {
        let whole = match self {
            Edge::Latest => (days - 1e-9).ceil(),
            Edge::Earliest | Edge::Likely => (days + 1e-9).floor(),
        };
        // Marches end after two years, and days are counted from the year 2000 to 2199.
        #[allow(clippy::cast_possible_truncation)]
        let whole = whole as i32;
        whole
    }
}
