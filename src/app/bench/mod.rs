//! The Bench: quick sums that work with nothing saved. One file a sum: it reads the
//! fields and reckons, on plain values; `view` holds what is seen of it.

pub mod bodies;
pub mod closing;
pub mod cost;
pub mod counts;
pub mod cover;
pub mod divide;
pub mod draft;
pub mod fits;
pub mod freezer;
pub mod ground;
pub mod keep;
pub mod mesh;
pub mod oil;
pub mod order;
pub mod packs;
pub mod read;
pub mod refill;
pub mod sample;
pub mod spill;
pub mod trial;
#[cfg(target_arch = "wasm32")]
pub mod view;
pub mod yard;

/// The sums of the Bench, in their order on the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sum {
    /// Traps and oil for a yard.
    Yard,
    /// Packs or singles.
    Packs,
    /// The tilt at which an open trap spills.
    Spill,
    /// Does the trap fit the box?
    Fit,
    /// Oil to buy for a season.
    Oil,
    /// The day of the next refill.
    Refill,
    /// Beetles hide the loss of oil.
    Bodies,
    /// Hives to open, and what none seen proves.
    Sample,
    /// What a mesh or a crack lets through.
    Mesh,
    /// Comb through the freezer.
    Freezer,
    /// The ground round the hives.
    Ground,
    /// How much of their comb the bees cover.
    Cover,
    /// How large a split is to be.
    Split,
    /// What it takes to close up.
    Closing,
    /// Two counts beside each other.
    Counts,
    /// What to order for the next season.
    Order,
    /// Whether a trial in pairs can tell anything.
    Trial,
    /// What a season cost.
    Cost,
}

impl Sum {
    /// Every sum, in order.
    pub const ALL: [Sum; 18] = [
        Sum::Yard,
        Sum::Refill,
        Sum::Spill,
        Sum::Fit,
        Sum::Packs,
        Sum::Order,
        Sum::Cost,
        Sum::Oil,
        Sum::Bodies,
        Sum::Sample,
        Sum::Cover,
        Sum::Split,
        Sum::Mesh,
        Sum::Closing,
        Sum::Freezer,
        Sum::Ground,
        Sum::Counts,
        Sum::Trial,
    ];

    /// The word in the address.
    pub fn slug(self) -> &'static str {
        match self {
            Sum::Yard => "yard",
            Sum::Packs => "packs",
            Sum::Spill => "spill",
            Sum::Fit => "fit",
            Sum::Oil => "oil",
            Sum::Refill => "refill",
            Sum::Bodies => "bodies",
            Sum::Sample => "open",
            Sum::Mesh => "mesh",
            Sum::Freezer => "freezer",
            Sum::Ground => "ground",
            Sum::Cover => "cover",
            Sum::Split => "split",
            Sum::Closing => "closing",
            Sum::Counts => "counts",
            Sum::Order => "order",
            Sum::Trial => "trial",
            Sum::Cost => "cost",
        }
    }

    /// The sum with this word in the address.
    pub fn parse(slug: &str) -> Option<Sum> {
        Sum::ALL.into_iter().find(|sum| sum.slug() == slug)
    }
}
