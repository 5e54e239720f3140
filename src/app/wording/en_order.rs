//! English: the order for the next season.

use super::en::{counted, whole};

/// Field.
pub const ALIVE: &str = "Hives alive now";
/// Field.
pub const WINTER: &str = "Hives the winter takes";
/// What can be typed there.
pub const WINTER_HINT: &str =
    "A share, or a span such as 10–25 %. 20 % is an example: your own winters tell better.";
/// Field.
pub const SPLITS: &str = "Splits planned";
/// Field.
pub const BOXES: &str = "Boxes with traps on each hive";
/// Opens the other fields.
pub const REST: &str = "Change the rest: traps a box, lost, spares, in store";
/// Field.
pub const A_BOX: &str = "Traps in each box";
/// Field.
pub const EACH: &str = "Traps in each hive";
/// Field.
pub const LOST: &str = "Traps lost last season";
/// What it is for.
pub const LOST_HINT: &str = "Broken, gone or eaten. Both may stay empty: then none is added.";
/// Field.
pub const OF: &str = "of so many in service";
/// Field.
pub const SPARES: &str = "Spares on top";
/// Field.
pub const STOCK: &str = "Good ones in store";
/// Heading.
pub const PACKS: &str = "How the traps are sold";
/// Opens the other things.
pub const OTHERS: &str = "Add other things from the same shop";
/// Names of the things.
pub const THINGS: [&str; 3] = ["Traps", "Second thing", "Third thing"];
/// Field.
pub const NEED: &str = "Pieces or mL needed";
/// Answer.
pub const TRAPS: &str = "Traps to order";
/// Answer.
pub const COST: &str = "Best order found, with delivery";
/// Reason.
pub const WHY: &str = "Unless it says otherwise here, every mix of packs is compared, with one delivery for all. Where a few packs more cost less than the delivery they are in it. What has no price is left out and named.";
/// No price.
pub const NO_PRICE: &str = "No price known";
/// A thing that makes the delivery free.
pub const FOR_DELIVERY: &str = "Not needed: it costs less than the delivery it saves.";
/// Nobody knows what was lost.
pub const LOST_UNKNOWN: &str = "Nothing added for lost ones: nobody wrote down how many.";

/// Heading of the card on the Load.
pub const TITLE: &str = "Next season’s order";
/// What it answers.
pub const ASKS: &str = "What do I order for next season, and what does it cost?";
/// No kinds.
pub const KIND_NONE: &str = "No hive carries a kind of trap that is described.";
/// How the fields are filled.
pub const FILLED: &str = "Filled in from the book: hives and the traps in them from the ticked yards, losses of the last 365 days and the store from all yards. Type over what you know better.";

/// "53 traps".
pub fn traps(count: u32) -> String {
    counted(count, "trap", "traps")
}

/// "20 %", "10 % to 25 %".
pub fn winter(least: &str, most: &str) -> String {
    if least == most { least.to_owned() } else { [least, " to ", most].concat() }
}

/// "30 hives − 20 % + 4 splits = 28 hives"; `up` where a part of a hive was made a whole one.
pub fn hives(alive: u32, winter: &str, splits: u32, expected: (u32, u32), up: bool) -> String {
    let mut said = [&counted(alive, "hive", "hives"), " − ", winter].concat();
    if splits > 0 {
        said.push_str(&[" + ", &counted(splits, "split", "splits")].concat());
    }
    let most = counted(expected.1, "hive", "hives");
    said.push_str(" =\u{a0}");
    if expected.0 != expected.1 {
        said.push_str(&[&whole(expected.0), " to "].concat());
    }
    said.push_str(&most);
    said.push_str(if up { ", rounded up" } else { "" });
    said
}

/// "Now 44 traps in 14 hives: about 3 in each".
pub fn each(each: u32, hang: u32, hives: u32) -> String {
    let hives = counted(hives, "hive", "hives");
    ["Now ", &traps(hang), " in ", &hives, ": about ", &whole(each), " in each"].concat()
}

/// "28 hives × 4 traps = 112".
pub fn hang(hives: u32, each: u32, sum: u32) -> String {
    [&counted(hives, "hive", "hives"), " × ", &traps(each), " =\u{a0}", &whole(sum)].concat()
}

/// "+ 5 % lost (6 of 120) = 118".
pub fn lost(lost: u32, of: u32, share: &str, limit: bool, sum: u32) -> String {
    let few = if limit { ", at most: too few to tell better" } else { "" };
    ["+ ", share, " lost (", &whole(lost), " of ", &whole(of), few, ") =\u{a0}", &whole(sum)].concat()
}

/// "+ 5 spare = 123".
pub fn spares(spares: u32, sum: u32) -> String {
    ["+ ", &whole(spares), " spare =\u{a0}", &whole(sum)].concat()
}

/// Field.
pub const THERE: &str = "Traps in hives now, used again";

/// "− 85 that hang in hives now and are used again (90 less 5 % lost) = 38".
pub fn there(hang: u32, lost: &str, there: u32, sum: u32) -> String {
    let less =
        if lost.is_empty() { String::new() } else { [" (", &whole(hang), " less ", lost, " lost)"].concat() };
    ["− ", &whole(there), " that hang in hives now and are used again", &less, " =\u{a0}", &whole(sum)]
        .concat()
}

/// "− 12 in store = 111".
pub fn stock(stock: u32, sum: u32) -> String {
    ["− ", &whole(stock), " in store =\u{a0}", &whole(sum)].concat()
}

/// "Traps: 53 needed, 81.50".
pub fn thing(name: &str, need: u32, goods: &str) -> String {
    [name, ": ", &whole(need), " needed, ", goods].concat()
}

/// "Left out, no price: Second thing, 3".
pub fn unpriced(name: &str, need: u32) -> String {
    ["Left out, no price: ", name, ", ", &whole(need), ". Write its packs and prices down."].concat()
}

/// "81.50 without what has no price".
pub fn without(total: &str) -> String {
    [total, " without what has no price"].concat()
}
