//! English: the sums of the Bench after the first.

use crate::app::wording::en::days;

/// Next refill.
pub mod refill {
    use super::days;

    /// Field: day of the last service.
    pub const LAST: &str = "Last service";
    /// Field: longest days.
    pub const MAX: &str = "Days between visits, at most";
    /// Opens the other fields.
    pub const REST: &str = "Add how fast the oil goes, and the catch";
    /// Field: level left.
    pub const LEVEL: &str = "Level left after service";
    /// Field: floor.
    pub const FLOOR: &str = "Lowest level that still works";
    /// Its hint.
    pub const FLOOR_HINT: &str = "Oil deep enough to cover a beetle: 6\u{a0}mm.";
    /// Field: level found.
    pub const FOUND: &str = "Level found later";
    /// Field: days of that stretch.
    pub const STRETCH: &str = "That many days later";
    /// Field: beetles until the upper mark.
    pub const ROOM: &str = "Beetles until the oil reaches the upper mark";
    /// Field: catch.
    pub const CATCH: &str = "Beetles caught in a day";
    /// Answer.
    pub const DUE: &str = "Service again by";
    /// Answer when the day has passed.
    pub const NOW: &str = "Due now";
    /// Reason.
    pub const WHY: &str = "The limit that runs out first decides. Days are rounded down: a look a day early costs little, a dry trap catches nothing.";
    /// The level rose.
    pub const ROSE: &str =
        "The level rose without service. Water or debris in the oil? Its loss is not used.";

    /// Which limit decided.
    pub fn decided(limit: &str) -> String {
        ["Decided by ", limit].concat()
    }

    /// How the loss was read.
    pub fn loss(from: &str, to: &str, count: u16, per_day: &str) -> String {
        ["Loss: ", from, " to ", to, " in ", &days(u32::from(count)), " =\u{a0}", per_day, " a day"].concat()
    }
}

/// When does it spill.
pub mod spill {
    /// Field: length.
    pub const LENGTH: &str = "Inside length, the way it tilts";
    /// Field: depth.
    pub const DEPTH: &str = "Inside depth";
    /// Field: how full.
    pub const FILL: &str = "Filled to";
    /// Answer.
    pub const GOES_OVER: &str = "Open trap spills at a tilt of";
    /// Heading of the comparison.
    pub const OTHERS: &str = "The same trap at other fills";
    /// A lid changes it.
    pub const LIDDED: &str = "Lidded trap? Then the lid decides, not the tilt. Lid on before you move it.";
    /// Very little tilt.
    pub const ANY_BUMP: &str = "Any bump spills it.";
    /// Reason.
    pub const WHY: &str = "Tilting and steady braking do the same to the oil. A jolt makes waves and spills sooner, so keep well under the number.";
    /// A side that nothing in a hive has.
    pub const SIDE_ODD: &str = "Is that right? Few traps are longer than 470 mm (18½ in).";
    /// A trap that cannot spill.
    pub const EMPTY: &str = "Empty: nothing to spill";

    /// "17.1°".
    pub fn degrees(number: &str) -> String {
        [number, "°"].concat()
    }

    /// How hard a car brakes that tilts the oil as far, in m/s². Up to 3.4 is braking that most drivers find
    /// comfortable, and before an unexpected hindrance most brake harder than 4.5 (the American design policy for roads
    /// of AASHTO, stopping sight distance); below 1.5 is gentle by our judgement.
    pub fn braking(metres: f64) -> &'static str {
        match metres {
            m if m < 1.5 => "A gentle stop of the car spills it too.",
            m if m < 3.4 => "A firm stop of the car spills it too.",
            m if m < 4.5 => "A hard stop of the car spills it too.",
            _ => "Only an emergency stop of the car spills it.",
        }
    }

    /// At half or more: "2 × 50 % empty × 20 mm ÷ 65 mm = 0.31, the slope of 17.1°".
    pub fn upper_sum(empty: &str, depth: &str, length: &str, slope: &str, degrees: &str) -> String {
        ["2 × ", empty, " empty × ", depth, " ÷ ", length, " =\u{a0}", slope, ", the slope of ", degrees]
            .concat()
    }

    /// Under half: "20 mm ÷ (2 × 40 % × 65 mm) = 0.38, the slope of 21°".
    pub fn lower_sum(depth: &str, fill: &str, length: &str, slope: &str, degrees: &str) -> String {
        [depth, " ÷ (2 × ", fill, " × ", length, ") =\u{a0}", slope, ", the slope of ", degrees].concat()
    }

    /// "70 % full: 10.5°".
    pub fn other(fill: &str, degrees: &str) -> String {
        [fill, " full: ", degrees].concat()
    }

    /// The oil is too shallow.
    pub fn shallow(depth: &str) -> String {
        ["Oil only ", depth, " deep. Under 6\u{a0}mm it no longer covers a beetle."].concat()
    }
}

/// Does the trap fit.
pub mod fit {
    use crate::almanac::fit::Side;

    /// Choice: the box.
    pub const BOX: &str = "Depth of the box";
    /// Field: own frame side.
    pub const SIDE: &str = "Depth of the frame sides";
    /// Field: depth.
    pub const DEPTH: &str = "Trap, top to bottom";
    /// Field: width.
    pub const WIDTH: &str = "Trap, width between top bars";
    /// Field: length.
    pub const LENGTH: &str = "Trap, along the frame";
    /// Opens the other fields.
    pub const REST: &str = "My frames or boxes are different";
    /// Field: gap.
    pub const GAP: &str = "Gap between two top bars";
    /// Field: the box, along the frames.
    pub const INSIDE: &str = "Box inside, along the frames";
    /// Answer.
    pub const LABEL: &str = "This trap in this box";
    /// It does.
    pub const FITS: &str = "Fits";
    /// It does, with nothing to spare.
    pub const JUST: &str = "Just fits";
    /// It does not.
    pub const DOES_NOT: &str = "Does not fit";
    /// Something is missing.
    pub const CANT_TELL: &str = "Can’t tell yet";
    /// Caution.
    pub const SLOWLY: &str = "Lower slowly: queen may be on these frames.";
    /// Reason.
    pub const WHY: &str = "A trap must clear the frames of the box below by 5 mm (0.2 in), pass between two top bars, and hang between the end walls: a top bar is longer than that by its lugs. Where you type nothing, a ten-frame box is taken, 466.7 mm (18 3/8 in) long inside, frames spaced 34.9 mm (1 3/8 in), top bars 27 mm (1 1/16 in) wide: common practice.";

    /// Name of a side.
    pub fn side(side: Side) -> &'static str {
        match side {
            Side::Depth => "top to bottom",
            Side::Width => "width",
            Side::Length => "length",
        }
    }

    /// "0 mm to spare: top to bottom".
    pub fn to_spare(which: Side, spare: &str) -> String {
        [spare, " to spare: ", side(which)].concat()
    }

    /// A trap that is too big.
    pub fn over(which: Side, over: &str) -> String {
        ["Too big by ", over, ": ", side(which)].concat()
    }

    /// A measure that was not typed.
    pub fn missing(which: Side) -> String {
        ["Type its ", side(which), " to be sure."].concat()
    }

    /// "Trap top to bottom 75 mm, room 226.8 mm".
    pub fn line(which: Side, trap: &str, room: &str) -> String {
        ["Trap ", side(which), " ", trap, ", room ", room].concat()
    }
}

/// Packs or singles.
pub mod packs {
    use crate::almanac::supply::BasketError;
    use crate::app::wording::en::counted;

    /// Field: need.
    pub const NEED: &str = "Pieces needed";
    /// Heading of the rows.
    pub const ROWS: &str = "How they are sold";
    /// Field: pieces.
    pub const PIECES: &str = "Pieces";
    /// Field: price.
    pub const PRICE: &str = "Price";
    /// Key: one more row.
    pub const MORE: &str = "One more pack size";
    /// Opens the other fields.
    pub const REST: &str = "Add delivery";
    /// Field: fee.
    pub const FEE: &str = "Delivery costs";
    /// Field: free from.
    pub const FREE: &str = "Delivery is free from";
    /// Answer.
    pub const BUY: &str = "Best found";
    /// Heading of the comparison.
    pub const ALONE: &str = "One size alone, before delivery";
    /// No price at all.
    pub const NO_PRICES: &str = "No prices yet, so nothing to compare. A price of 0 counts as missing.";
    /// A price of nothing.
    pub const FREE_PACK: &str =
        "Free of charge? A price of 0 counts as missing: this pack is left out of the sum.";
    /// Nothing needed.
    pub const NOTHING: &str = "Nothing to buy";
    /// Too many.
    pub const TOO_MANY: &str = "Too many pieces for one sum. Split the order.";
    /// Why there is no basket.
    pub fn refused(error: &BasketError) -> &'static str {
        match error {
            BasketError::NothingPriced | BasketError::PackOfNothing { .. } => NO_PRICES,
            BasketError::TooMany { .. } => TOO_MANY,
        }
    }

    /// Prices in one currency.
    pub const CURRENCY: &str = "Example prices until you type your own, all in one currency.";
    /// Reason.
    pub const WHY: &str = "Unless it says otherwise here, every mix of packs is compared, larger ones that cost less included; at the same price the one with less left over wins.";

    /// Label of a row.
    pub fn row(label: &str, number: usize) -> String {
        [label, " ", &number.to_string()].concat()
    }

    /// "36.00 for 24 pieces".
    pub fn total(total: &str, pieces: u32) -> String {
        [total, " for ", &counted(pieces, "piece", "pieces")].concat()
    }

    /// "2 × pack of 12 at 18.00 = 36.00".
    pub fn line(packs: &str, pieces: u32, price: &str, sum: &str) -> String {
        [packs, " × ", &pack(pieces), " at ", price, " =\u{a0}", sum].concat()
    }

    /// "pack of 12", "single".
    pub fn pack(pieces: u32) -> String {
        if pieces == 1 { "single".to_owned() } else { ["pack of ", &pieces.to_string()].concat() }
    }

    /// Delivery in the sum.
    pub fn delivery(fee: &str) -> String {
        ["+ delivery ", fee].concat()
    }

    /// Not every mix was compared: "A cheaper order may exist, by at most 1.20: ...".
    pub fn cheaper_by(most: &str) -> String {
        [
            "A cheaper order may exist, by at most ",
            most,
            ": so many packs cost nearly the same a piece that not every mix was compared.",
        ]
        .concat()
    }

    /// Delivery is free.
    pub const DELIVERY_FREE: &str = "Delivery is free at this value.";

    /// "1 left over".
    pub fn left_over(number: &str) -> String {
        [number, " left over"].concat()
    }

    /// A pack without a price.
    pub fn left_out(pieces: u32) -> String {
        ["Left out, no price: ", &pack(pieces)].concat()
    }

    /// Key that takes over the number of traps.
    pub fn take(traps: &str) -> String {
        ["Use the ", traps, " traps worked out above"].concat()
    }
}

/// Oil to buy.
pub mod oil {
    /// Field: services.
    pub const SERVICES: &str = "Visits in the season";
    /// Field: oil each.
    pub const EACH: &str = "Oil each time";
    /// Field: lost.
    pub const SPILL: &str = "Spilled or left in bottles";
    /// Opens the other fields.
    pub const REST: &str = "Allow for uneven visits";
    /// Field: spread.
    pub const SPREAD: &str = "One visit differs from the next by about";
    /// Heading of the rows.
    pub const ROWS: &str = "Containers, at example prices until you type yours";
    /// Field: size.
    pub const SIZE: &str = "Holds";
    /// Field: price.
    pub const PRICE: &str = "Price";
    /// Answer.
    pub const BUY: &str = "Oil for the season";
    /// Shelf life.
    pub const RANCID: &str = "Vegetable oil turns rancid and gums. Buy it for one season.";
    /// Waste.
    pub const WASTE: &str = "Used oil: sealed jar to household waste; not on soil, not down the drain.";
    /// Reason.
    pub const WHY: &str = "The upper estimate adds twice the usual difference times the square root of the number of visits: uneven visits partly cancel out.";

    /// "10 × 400 mL + 10 % = 4.4 L".
    pub fn mean(services: &str, each: &str, spill: &str, sum: &str) -> String {
        [services, " × ", each, " + ", spill, " =\u{a0}", sum].concat()
    }

    /// "+ 2 × 100 mL × √10 = 5 L, upper estimate".
    pub fn high(spread: &str, services: &str, sum: &str) -> String {
        ["+ 2 × ", spread, " × √", services, " =\u{a0}", sum, ", upper estimate"].concat()
    }

    /// "2 × 1 L at 4.00 = 8.00".
    pub fn line(count: &str, size: &str, price: &str, sum: &str) -> String {
        [count, " × ", size, " at ", price, " =\u{a0}", sum].concat()
    }

    /// "together 17.90, 600 mL left over".
    pub fn together(total: &str, left: &str) -> String {
        ["together ", total, ", ", left, " left over"].concat()
    }

    /// A container without a price.
    pub fn left_out(size: &str) -> String {
        ["Left out, no price: ", size].concat()
    }
}

/// Oil or beetles.
pub mod bodies {
    /// Field: beetles.
    pub const COUNT: &str = "Beetles in the trap";
    /// How they may be typed.
    pub const COUNT_HINT: &str = "All that lie in it, those of earlier counts too: a number, 20–49, or 50+.";
    /// A number nobody expects.
    pub const MANY: &str = "So many in one trap? Is every digit right?";
    /// Field: level.
    pub const LEVEL: &str = "Level you read";
    /// Field: capacity.
    pub const HOLDS: &str = "One trap holds, brim\u{2011}full";
    /// Answer.
    pub const WITHOUT: &str = "Level of the oil alone";
    /// Nothing typed for the capacity.
    pub const NO_HOLDS: &str = "Type what the trap holds.";
    /// Caution.
    pub const FLATTERS: &str =
        "That many beetles lift the level. Refill by the number here, not by the mark.";
    /// Traps and beetles.
    pub const TRAPPED: &str = "Traps count trapped beetles, not all beetles.";
    /// Reason.
    pub const WHY: &str = "A beetle takes the room of 0.013 to 0.026 mL, from its weight and its outline. What it takes, oil has left.";

    /// "100 × 0.013 to 0.026 mL = 1.3 to 2.6 mL of beetles".
    pub fn sum(count: &str, volume: &str) -> String {
        [count, " × 0.013 to 0.026\u{a0}mL =\u{a0}", volume, " of beetles"].concat()
    }

    /// From low to high.
    pub fn span(low: &str, high: &str) -> String {
        [low, " to ", high].concat()
    }

    /// Open upwards.
    pub fn or_more(low: &str) -> String {
        [low, " or more"].concat()
    }

    /// Open downwards.
    pub fn or_less(high: &str) -> String {
        [high, " or less"].concat()
    }
}

#[cfg(test)]
mod tests {
    use super::spill::braking;

    /// A trap of 65 by 20 mm inside: at 90 % 0.6 m/s², at 70 % 1.8, at 50 % 3.0, at 40 % 3.8 and at 30 % 5.0.
    #[test]
    fn the_fuller_the_trap_the_gentler_the_stop_that_spills_it() {
        let said = [0.6, 1.8, 3.0, 3.8, 5.0].map(braking);
        for (said, word) in said.iter().zip(["gentle", "firm", "firm", "hard", "emergency"]) {
            assert!(said.contains(word), "{said}");
        }
    }
}
