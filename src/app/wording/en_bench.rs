//! English: the Bench.

use crate::app::bench::Sum;

/// Name of the index of keys.
pub const INDEX: &str = "Sums on this page";

/// Heading of a sum.
pub fn title(sum: Sum) -> &'static str {
    match sum {
        Sum::Yard => "Traps and oil for my yard",
        Sum::Refill => "Next refill",
        Sum::Spill => "When does it spill?",
        Sum::Fit => "Does the trap fit?",
        Sum::Packs => "Packs or singles",
        Sum::Oil => "Oil to buy",
        Sum::Bodies => "Oil or beetles?",
        Sum::Sample => "How many hives to open?",
        Sum::Cover => "Enough bees for the comb?",
        Sum::Split => "How large a split?",
        Sum::Closing => "Closing up",
        Sum::Order => super::en_order::TITLE,
        Sum::Cost => super::en_cost::TITLE,
        Sum::Mesh => "Mesh and cracks",
        Sum::Freezer => "Comb through the freezer",
        Sum::Ground => "Ground round the hives",
        Sum::Counts => "Two counts: is it getting better?",
        Sum::Trial => "A trial of your own",
    }
}

/// Key of the index.
pub fn short(sum: Sum) -> &'static str {
    match sum {
        Sum::Yard => "Traps, oil",
        Sum::Refill => "Refill day",
        Sum::Spill => "Spill",
        Sum::Fit => "Fit",
        Sum::Packs => "Packs",
        Sum::Oil => "Buy oil",
        Sum::Bodies => "Dead beetles",
        Sum::Sample => "Hives to open",
        Sum::Cover => "Bees on comb",
        Sum::Split => "Split",
        Sum::Closing => "Closing up",
        Sum::Order => "Next season",
        Sum::Cost => "Cost",
        Sum::Mesh => "Mesh",
        Sum::Freezer => "Freezer",
        Sum::Ground => "Ground",
        Sum::Counts => "Two counts",
        Sum::Trial => "Own trial",
    }
}

/// The question a sum answers.
pub fn asks(sum: Sum) -> &'static str {
    match sum {
        Sum::Yard => "How many traps, and how much oil do I carry?",
        Sum::Refill => "By which day must someone be back, and what decides it?",
        Sum::Spill => "How far may an open trap tilt?",
        Sum::Fit => "Will this trap go into this box?",
        Sum::Packs => "Which packs cover what I need for least money?",
        Sum::Oil => "How much oil for a season, in which containers?",
        Sum::Bodies => "The level looks fine. How much of it is beetles?",
        Sum::Sample => "How many to open to see it, and what does a look prove that saw none?",
        Sum::Cover => "Is there more comb than they can guard?",
        Sum::Split => "How many bees must go along so that both hives guard their comb?",
        Sum::Closing => "How many sheets of mesh, tubes of sealant and coats for the boards?",
        Sum::Order => super::en_order::ASKS,
        Sum::Cost => super::en_cost::ASKS,
        Sum::Mesh => "Does this mesh or crack let beetles through?",
        Sum::Freezer => "How many batches, and for how many days?",
        Sum::Ground => "How much ground, and how much product by its label?",
        Sum::Counts => "Has the catch fallen, or is it chance?",
        Sum::Trial => "With so many hives, could it ever tell?",
    }
}

/// Traps and oil for a yard.
pub mod yard {
    use crate::app::wording::en::counted;

    /// Field: hives.
    pub const HIVES: &str = "Hives";
    /// Field: boxes.
    pub const BOXES: &str = "Boxes with traps on each hive";
    /// Field: capacity.
    pub const HOLDS: &str = "One trap holds, brim\u{2011}full";
    /// Opens the other fields.
    pub const REST: &str = "Change the rest: traps a box, how full, reserve, bottle";
    /// Field: traps a box.
    pub const A_BOX: &str = "Traps in each box";
    /// Field: how full.
    pub const FILL: &str = "Filled to";
    /// Field: reserve.
    pub const RESERVE: &str = "Reserve on top";
    /// Field: bottle.
    pub const BOTTLE: &str = "One bottle holds";
    /// A field that may stay empty.
    pub const MAY_BE_EMPTY: &str = "May stay empty.";
    /// Answer: traps.
    pub const TRAPS: &str = "Traps";
    /// Answer: oil.
    pub const OIL: &str = "Oil to carry";
    /// Caution at the fill.
    pub const HALF_FULL: &str = "Half full. Fuller spills on bees.";
    /// Its reason.
    pub const HALF_FULL_WHY: &str = "A fuller trap spills at a smaller tilt: when a box is lifted, set down hard, or carried over a kerb. “When does it spill?” below draws it for your trap.";
    /// Caution at the oil.
    pub const FOOD_GRADE: &str = "Food-grade oil only. No motor oil, no fuel.";
    /// Why 25 %.
    pub const RESERVE_WHY: &str = "The reserve covers traps that spilled and drops that miss. What you carry goes up to the next full step; nothing you carry is ever rounded down.";
    /// Why corners.
    pub const TRAPS_WHY: &str = "Two in each box, in opposite corners, on the other diagonal in the next box up: beetles run along walls and corners. That is common practice, not a proven optimum.";
    /// Under the drawing of the hive.
    pub const SIDE: &str = "One hive from its left side, entrance at the arrow. Dashed: far side.";
    /// Capacity out of the common.
    pub const SIZE_ODD: &str = "Is that right? Traps for oil mostly hold 1 to 500 mL.";

    /// "40 traps".
    pub fn traps(traps: u32, number: &str) -> String {
        [number, "\u{a0}", if traps == 1 { "trap" } else { "traps" }].concat()
    }

    /// "10 hives × 2 boxes × 2 traps = 40 traps".
    pub fn traps_sum(hives: u32, boxes: u32, a_box: u32, traps: &str) -> String {
        [
            &counted(hives, "hive", "hives"),
            " × ",
            &counted(boxes, "box", "boxes"),
            " × ",
            &counted(a_box, "trap", "traps"),
            " =\u{a0}",
            traps,
        ]
        .concat()
    }

    /// "40 × 20 mL × ½ = 400 mL".
    pub fn oil_sum(traps: &str, holds: &str, fill: &str, sum: &str) -> String {
        [traps, " × ", holds, " × ", fill, " =\u{a0}", sum].concat()
    }

    /// A sum, and the same in the unit the keeper reads.
    pub fn same(sum: &str, shown: &str) -> String {
        [sum, " =\u{a0}", shown].concat()
    }

    /// "+ 25 % reserve = 500 mL".
    pub fn reserve_sum(reserve: &str, with: &str) -> String {
        ["+ ", reserve, " reserve =\u{a0}", with].concat()
    }

    /// "rounded up in steps of 50 mL = 500 mL".
    pub fn step_sum(step: &str, carry: &str) -> String {
        ["rounded up in steps of ", step, " =\u{a0}", carry].concat()
    }

    /// Key: reads every volume in that unit.
    pub fn show_in(unit: &str) -> String {
        ["Show all oil in ", unit].concat()
    }

    /// "2 bottles of 1 L".
    pub fn bottles_sum(bottles: u32, bottle: &str) -> String {
        ["= ", &counted(bottles, "bottle", "bottles"), " of ", bottle].concat()
    }

    /// "Oil: 400 mL half-fills them; carry" is said by label and number; this is the line between.
    pub fn fills(sum: &str, half: bool, fill: &str) -> String {
        if half { [sum, " half-fills them."].concat() } else { [sum, " fills them to ", fill, "."].concat() }
    }

    /// "Box 1, 3, 5".
    pub fn boxes(numbers: &[usize]) -> String {
        let list: Vec<String> = numbers.iter().map(ToString::to_string).collect();
        [if numbers.len() == 1 { "Box " } else { "Boxes " }, &list.join(", ")].concat()
    }

    /// Beyond 60 %.
    pub fn too_full(fill: &str) -> String {
        [fill, " is a lot. Half full is safer: fuller spills on bees."].concat()
    }
}

/// "Keep this yard".
pub mod keep {
    use crate::app::wording::en::counted;
    use crate::app::wording::en_round::own;

    /// The key.
    pub const KEEP: &str = "Keep this yard";
    /// What it does.
    pub const WHAT: &str = "Turns these numbers into a yard you can walk, log and print.";
    /// Heading of the form.
    pub const TITLE: &str = "Keep this yard";
    /// Heading of the form of one more yard.
    pub const NEW: &str = "A new yard";
    /// Under it.
    pub const NEW_HOW: &str = "Its hives, boxes and what one trap holds are the numbers above.";
    /// Field: name.
    pub const NAME: &str = "Name of the yard";
    /// Field: tags.
    pub const TAGS: &str = "Tags on the hives";
    /// How tags may be typed.
    pub const TAGS_HINT: &str = "In walking order: 1–\u{2060}24, or A1, A2, B7.";
    /// Field: kind of trap.
    pub const TRAP: &str = "Your word for the trap";
    /// Choice: how it is built.
    pub const FORM: &str = "The trap is";
    /// Between frames.
    pub const FORM_BETWEEN: &str = "open, between frames";
    /// One well.
    pub const FORM_ONE: &str = "lidded, one well";
    /// Two wells.
    pub const FORM_TWO: &str = "lidded, two wells";
    /// No oil.
    pub const FORM_FLOOR: &str = "on the floor, no oil";
    /// Under the choice what becomes of a full trap.
    pub const AGAIN: &str = "Open traps are usually thrown away, the others used again. For those thrown away Load counts a whole fill at every visit.";
    /// Choice: filled.
    pub const FILLED: &str = "The traps were filled";
    /// Today.
    pub const TODAY: &str = "today";
    /// Earlier.
    pub const EARLIER: &str = "earlier";
    /// Not yet.
    pub const NOT_YET: &str = "not yet";
    /// Field: the day.
    pub const FILLED_ON: &str = "Filled on";
    /// Field: longest days.
    pub const DAYS: &str = "Days between visits, at most";
    /// Where it is kept.
    pub const ONLY_HERE: &str = "Records live only on this phone until you save a file. No page can always tell a private window: in one, they vanish when it closes.";
    /// While fields hold it back; nothing when none does.
    pub fn mend(fields: &[&str]) -> String {
        if fields.is_empty() {
            return String::new();
        }
        ["Mend first: ", &fields.join(", "), "."].concat()
    }

    /// Choice: depth of a box.
    pub fn depth_of(number: usize) -> String {
        let place = if number == 1 { " (lowest)" } else { "" };
        ["Box ", &number.to_string(), place].concat()
    }

    /// "Keep 10 hives".
    pub fn keep(hives: usize) -> String {
        let hives = u32::try_from(hives).unwrap_or(u32::MAX);
        ["Keep ", &counted(hives, "hive", "hives")].concat()
    }

    /// Another yard has the name.
    pub fn twice(free: &str) -> String {
        ["Another yard has this name. Free: ", &own(free)].concat()
    }

    /// The line of tags that goes with a number of hives.
    pub fn tags_for(hives: u32) -> String {
        match hives {
            0 => String::new(),
            1 => "1".to_owned(),
            n => ["1–", &n.to_string()].concat(),
        }
    }
}

/// Depth of a box.
pub const DEEP: &str = "Deep";
/// Depth of a box.
pub const MEDIUM: &str = "Medium";
/// Depth of a box.
pub const SHALLOW: &str = "Shallow";
/// Another depth.
pub const OTHER: &str = "Other";
