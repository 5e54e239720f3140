//! English: the sums of the Bench for the yard's decisions.

/// Hives to open.
pub mod sample {
    /// Field: hives.
    pub const HIVES: &str = "Hives in the yard";
    /// Field: share.
    pub const SHARE: &str = "Share that has it, if any has";
    /// Field: certainty.
    pub const SURE: &str = "How sure to see one";
    /// Field: chance to notice.
    pub const NOTICE: &str = "A hive that has it shows it when opened";
    /// Its hint.
    pub const NOTICE_HINT: &str =
        "85\u{a0}% is an example, not measured. 100\u{a0}%: nothing is ever overlooked.";
    /// Field: opened.
    pub const OPENED: &str = "Opened, none seen";
    /// Its hint.
    pub const OPENED_HINT: &str = "May stay empty: then as many as above.";
    /// Answer.
    pub const OPEN: &str = "Hives to open";
    /// Answer: what none seen proves.
    pub const PROVES: &str = "None seen: still possible";
    /// A share of nothing.
    pub const NOTHING: &str =
        "A share of 0\u{a0}% is nothing to find. Type the smallest share that would matter to you.";
    /// How to choose.
    pub const BY_LOT: &str =
        "Choose them by lot, not the handy ones. Open every weak hive too, drawn or not.";
    /// Reason.
    pub const WHY: &str = "Hives drawn by lot from a yard of this size: counted exactly, not by a rule of thumb. Each hive that has it is taken to show it or not by itself.";

    /// Key.
    pub const DRAW: &str = "Draw them by lot";

    /// "Counted along your walk: 2, 5, 9".
    pub fn drawn(places: &[u32]) -> String {
        let mut said = "Counted along your walk: ".to_owned();
        for (at, place) in places.iter().enumerate() {
            if at > 0 {
                said.push_str(", ");
            }
            said.push_str(&place.to_string());
        }
        said
    }

    /// "10 % of 40 hives = 4 that have it".
    pub fn affected(share: &str, hives: &str, affected: &str) -> String {
        [share, " of ", hives, " hives, rounded up =\u{a0}", affected, " that have it"].concat()
    }

    /// "25 opened: 95.9 % sure to see one".
    pub fn chance(opened: &str, chance: &str) -> String {
        [opened, " opened: ", chance, " sure to see at least one"].concat()
    }

    /// Even all do not do.
    pub fn all(sure: &str, twice: &str) -> String {
        ["Not to be had in one round. Open all, and again in 7 days: ", twice, " sure, ", sure, " wanted."]
            .concat()
    }

    /// "at most 3 of 40".
    pub fn at_most(most: &str, hives: &str) -> String {
        ["at most ", most, " of ", hives].concat()
    }

    /// What is meant by it.
    pub fn proves(more: &str, opened: &str, sure: &str) -> String {
        [
            "With ",
            more,
            " that have it, ",
            opened,
            " opened would have shown one with ",
            sure,
            " certainty or more",
        ]
        .concat()
    }

    /// Caution.
    pub fn none_seen(opened: &str, hives: &str) -> String {
        ["None seen in ", opened, " of ", hives, " is not none present."].concat()
    }
}

/// Mesh and cracks.
pub mod mesh {
    /// Field: wires.
    pub const COUNT: &str = "Wires to the inch";
    /// Its hint.
    pub const COUNT_HINT: &str = "Two numbers, as in 18 × 16? The smaller one.";
    /// Field: wire.
    pub const WIRE: &str = "Thickness of the wire";
    /// Field: crack.
    pub const CRACK: &str = "Widest crack in the woodwork";
    /// Answer.
    pub const OPENING: &str = "Opening of the mesh";
    /// Answer.
    pub const CRACKS: &str = "The crack";
    /// No opening.
    pub const SHUT: &str = "Wires that thick touch: is every digit right?";
    /// Verdict on a mesh.
    pub const STOPS: &str = "Stops beetles.";
    /// Verdict on a mesh.
    pub const LETS_IN: &str = "Lets beetles in. Not for the notch or a vent.";
    /// Verdict on a crack.
    pub const REPAIR: &str = "Close it";
    /// Verdict on a crack.
    pub const LEAVE: &str = "Too narrow for a beetle";
    /// Nothing typed.
    pub const NO_CRACK: &str = "Type how wide it is.";
    /// Reason.
    pub const WHY: &str = "Up to 2\u{a0}mm (0.08\u{a0}in) stops adult beetles; that is the mesh asked for when bees are shipped (EFSA). They are about 3.5\u{a0}mm (0.14\u{a0}in) wide, but flat.";
    /// Window screen.
    pub const SCREEN: &str =
        "Ordinary window screen opens about 1.1 to 1.4\u{a0}mm and stops them. 8-mesh lets beetles in.";

    /// "25.4 mm ÷ 8 − 0.43 mm = 2.7 mm".
    pub fn sum(inch: &str, count: &str, wire: &str, open: &str) -> String {
        [inch, " ÷ ", count, " − ", wire, " =\u{a0}", open].concat()
    }

    /// "2.7 mm > 2 mm".
    pub fn against(open: &str, passes: bool, widest: &str) -> String {
        [open, if passes { " > " } else { " ≤ " }, widest].concat()
    }
}

/// Comb through the freezer.
pub mod freezer {
    use crate::app::wording::en::{counted, days};

    /// Field: frames.
    pub const FRAMES: &str = "Frames to freeze";
    /// Field: how many at a time.
    pub const FIT: &str = "Frames that fit in at a time";
    /// Field: temperature.
    pub const COLD: &str = "The freezer is at";
    /// Field: hours until cold.
    pub const CHILL: &str = "Hours until the comb is cold inside";
    /// Field: hours from there.
    pub const HOLD: &str = "Hours cold from then on";
    /// Answer.
    pub const TAKES: &str = "The freezer is busy for";
    /// Caution.
    pub const HONEY: &str = "Honey frames chill slowly: count from cold, not from the lid.";
    /// Its reason.
    pub const HONEY_WHY: &str = "Wrapped supers full of honey took 71 to 83 hours at −20\u{a0}°C (−4\u{a0}°F) until they were cold inside.";
    /// Caution.
    pub const TOO_WARM: &str =
        "Warmer than −12\u{a0}°C (10\u{a0}°F): nothing shows that this kills every stage.";
    /// Caution.
    pub const TOO_SHORT: &str = "Less than 24 hours cold: nothing shows that this kills every stage.";
    /// How to.
    pub const FIRST: &str =
        "Comb with brood or pollen first. Bag it, and let it thaw in the bag, or water settles on it.";
    /// Reason.
    pub const WHY: &str = "−12\u{a0}°C (10\u{a0}°F) or colder for 24 hours, all through the comb, is what authorities ask for. The 48 hours are that twice over: common practice.";

    /// "4 batches × (24 h + 48 h) = 288 h = 12 days".
    pub fn sum(batches: u32, chill: &str, hold: &str, hours: &str, count: u32) -> String {
        let batches = counted(batches, "batch", "batches");
        [
            &batches,
            " × (",
            chill,
            "\u{a0}h + ",
            hold,
            "\u{a0}h) =\u{a0}",
            hours,
            "\u{a0}h =\u{a0}",
            &days(count),
        ]
        .concat()
    }

    /// "160 frames ÷ 48 = 4 batches, 16 frames in the last".
    pub fn batches(frames: &str, fit: &str, batches: u32, last: u32) -> String {
        let last = counted(last, "frame", "frames");
        [
            frames,
            " ÷ ",
            fit,
            ", rounded up =\u{a0}",
            &counted(batches, "batch", "batches"),
            ", ",
            &last,
            " in the last",
        ]
        .concat()
    }
}

/// Ground round the hives.
pub mod ground {
    /// Field: hives.
    pub const HIVES: &str = "Hives";
    /// Field: hives in a row.
    pub const IN_ROW: &str = "In each row";
    /// Field: spacing.
    pub const APART: &str = "From the middle of one to the middle of the next";
    /// Field: rate.
    pub const RATE: &str = "The label says: so much";
    /// Field: area of the rate.
    pub const PER: &str = "on so much ground";
    /// Field: water.
    pub const WATER: &str = "with so much water";
    /// Field: paved.
    pub const PAVED: &str = "Paved or under a roof, within that";
    /// Opens the other fields.
    pub const REST: &str = "Change the rest: rows, how far out, hive, paving";
    /// Field: rows.
    pub const ROWS: &str = "From row to row";
    /// Field: reach.
    pub const REACH: &str = "How far out from a hive";
    /// Its hint.
    pub const REACH_HINT: &str = "The label may count the ground in its own way: then use that.";
    /// Field: width.
    pub const WIDTH: &str = "Hive, side to side";
    /// Field: length.
    pub const LENGTH: &str = "Hive, front to back";
    /// Answer.
    pub const GROUND: &str = "Ground to treat";
    /// Answer.
    pub const PRODUCT: &str = "Product for it, in the label’s measure";
    /// Answer.
    pub const WATER_FOR: &str = "Water for it";
    /// Nothing typed.
    pub const NO_RATE: &str = "Type the label’s rate.";
    /// No water typed.
    pub const NO_WATER: &str = "None typed.";
    /// More paving than ground.
    pub const ALL_PAVED: &str = "As much or more is paved than lies within reach: nothing is left to treat.";
    /// Caution.
    pub const LAW: &str = "The label is the law. Use only where and how it says.";
    /// Its reason.
    pub const LAW_WHY: &str = "No product and no rate is built in here. Only what is registered for this ground and this use; keep its registration number with the record. Powders: dust mask, and none loose in the hive.";
    /// Lime.
    pub const LIME: &str = "A layer of lime on top is no barrier: in trials larvae dug through it.";
    /// Living nematodes.
    pub const LIVING: &str = "Nematodes are alive: at dusk, on moist soil as warm as the supplier says, by their use-by day. Keep them in the fridge, not the freezer.";
    /// Reason.
    pub const WHY: &str = "Most larvae dig in within about 0.9\u{a0}m (3\u{a0}ft) of the hive and 10\u{a0}cm (4\u{a0}in) deep; some walk much further. Where rings overlap the ground is counted once.";

    /// "1 hive with 0.9 m round it = 4.41 m²".
    pub fn one(reach: &str, area: &str) -> String {
        ["One hive with ", reach, " round it =\u{a0}", area].concat()
    }

    /// "10 hives, what overlaps counted once = 23 m², not 10 × one = 44.1 m²".
    pub fn all(hives: &str, area: &str, number: &str, apart: &str) -> String {
        [hives, ", what overlaps counted once =\u{a0}", area, ", not ", number, " × one =\u{a0}", apart]
            .concat()
    }

    /// "− 3 m² paved = 20 m²".
    pub fn paved(paved: &str, left: &str) -> String {
        ["− ", paved, " paved =\u{a0}", left].concat()
    }

    /// "23 m² ÷ 10 m² × 5 = 11.5".
    pub fn by_rate(area: &str, per: &str, rate: &str, sum: &str) -> String {
        [area, " ÷ ", per, " × ", rate, " =\u{a0}", sum].concat()
    }
}

/// How much of their comb the bees cover.
pub mod cover {
    use crate::almanac::cover::{Cover, Guard};
    use crate::app::wording::en::counted;

    /// Field: sides.
    pub const SIDES: &str = "Sides of comb covered with bees";
    /// Its hint.
    pub const SIDES_HINT: &str = "Each comb has two. Half covered is half a side: add them up.";
    /// Field: frames.
    pub const FRAMES: &str = "Frames of drawn comb in the hive";
    /// Field: frames of a box.
    pub const A_BOX: &str = "Frames in one box";
    /// Answer.
    pub const COVERED: &str = "Comb the bees cover";
    /// Heavy flow.
    pub const FLOW: &str =
        "In a strong flow supers are covered thinly for some days. Look again before you take one off.";
    /// Reason.
    pub const WHY: &str = "Beetles breed on comb that no bee guards. That nine tenths is enough and less than seven tenths too little is our judgement: no trial has settled it.";

    /// What it means. More than all of the comb is a slip of one of the two counts, or bees on frames that hold none yet.
    pub fn guard(cover: &Cover) -> &'static str {
        match cover.guard {
            _ if cover.share > 1.0 => {
                "More bees than drawn comb: count both again, or they sit on frames not drawn yet."
            }
            Guard::Well => "They guard what they have.",
            Guard::Watch => "Watch it: give them no more comb now.",
            Guard::Little => "More comb than they can guard: take some off, or join the hive with another.",
        }
    }

    /// "22 ÷ (2 × 16) = 69 %".
    pub fn sum(sides: &str, frames: &str, share: &str) -> String {
        [sides, " ÷ (2 × ", frames, ") =\u{a0}", share].concat()
    }

    /// "1 box of 8 off: 22 ÷ (2 × 8) = 138 %".
    pub fn off(boxes: u32, a_box: &str, sum: &str) -> String {
        [&counted(boxes, "box", "boxes"), " of ", a_box, " off: ", sum].concat()
    }

    /// One box and still too much comb.
    pub const JOIN: &str =
        "Whole boxes alone do not put it right: take out frames, or join the hive with another.";
}
