//! English: what to carry and what to buy.

use super::en::{counted, days, whole};

/// Opens the names of the hives.
pub const WHICH: &str = "Which hives this is for";
/// Field: the day of the trip.
pub const DAY: &str = "Day of the trip";
/// Choice of yards.
pub const YARDS: &str = "Yards on the way";
/// Answer.
pub const OIL: &str = "Oil to carry";
/// Answer.
pub const TRAPS: &str = "Traps to bring";
/// Heading.
pub const YARD_BY_YARD: &str = "Yard by yard";
/// Heading.
pub const BUY: &str = "To buy";
/// Heading.
pub const SET: &str = "Reserve and bottle";
/// Field.
pub const RESERVE: &str = "Reserve of oil";
/// Field.
pub const BOTTLE: &str = "One bottle holds";
/// Key.
pub const SET_KEY: &str = "Remember these";
/// What was done, for the undo bar.
pub const SET_ACT: &str = "Reserve and bottle remembered";
/// Caution.
pub const FOOD_GRADE: &str = "Food-grade oil only. No motor oil, no fuel.";
/// Caution.
pub const WASTE: &str = "Used oil and rags: sealed jar to household waste; not on soil, not down the drain.";
/// No yard ticked.
pub const NO_YARD: &str = "Tick a yard.";
/// Heading of the list to tick off.
pub const ALSO: &str = "Also in the car";
/// Things to take, each ticked off.
pub const THINGS: [&str; 6] = [
    "Rags",
    "Sealed jar for used oil",
    "Spare lids and screens",
    "Tub or bags for slimed comb",
    "Water and soap for hands",
    "Charged phone, backup file saved",
];
/// Why the oil is worked out so.
pub const OIL_WHY: &str = "A trap that is used again is topped up from the level it will have sunk to by that day. One that is thrown away, or whose level or loss is not known, counts as a whole fill. Oil in store is taken as counted after the work of its first day: trips that you wrote down of later days are taken off, walks without a record of their trip are not.";
/// Why the spares.
pub const SPARE_WHY: &str = "Spares: 5 in 100 of the traps that are due, at least 2: our judgement.";
/// Behind a hive whose comb has to go somewhere on the day, whatever is due.
pub const BRING: &str = "; bring bags";
/// Behind a dead colony: nobody wrote down that its traps came out.
pub const BRING_DEAD: &str = "; bring bags; its traps count here when they are due, until its care is ended";
/// Behind a hive with slime.
pub const BRING_FRESH: &str =
    "; bring bags; its traps not made fresh on that day or since are counted here, due or not";
/// Behind a hive with suspected disease.
pub const BRING_NOTHING: &str = "; leave it shut until the inspector has said what may be done, then go to it last, and take nothing from it to another hive";
/// Nothing due.
pub const NOTHING: &str = "Nothing is due by that day.";
/// Field.
pub const SPARE: &str = "Spare traps, to bring and to buy";
/// Answer.
pub const NEXT_TRIP: &str = "For this trip only";
/// Answer.
pub const SEASON_TRAPS: &str = "For the rest of the season, at most";
/// In its stead where full traps are emptied.
pub const USED_AGAIN: &str =
    "Emptied and used again: the rest of the season takes no more, unless some break or go missing.";
/// Field.
pub const STORE: &str = "Traps in store";
/// Field.
pub const SEASON_END: &str = "Last day of trap work, about";
/// Before what it costs.
pub const CHEAPEST: &str = "Best found: ";
/// After the number where nobody wrote a price down.
pub const NO_PRICE: &str = ", no price known";
/// No packs.
pub const NO_PACKS: &str = "No packs are written down for this kind.";
/// Key to the page of the kind.
pub const PACKS: &str = "Its size, days and packs";
/// Nothing to buy.
pub const ENOUGH: &str = "Nothing to buy";
/// Field.
pub const SERVICES: &str = "Walks left this season";
/// Heading.
pub const OIL_TO_BUY: &str = "Oil";
/// Field.
pub const SPILLED: &str = "Spilled or left in bottles";
/// Answer.
pub const SEASON_OIL: &str = "Oil for the rest of the season, at most";
/// Reason.
pub const SEASON_WHY: &str = "As if every trap in the ticked yards were emptied and filled anew on every walk: topping up takes less. Vegetable oil turns rancid, so buy it for one season.";
/// Buying needs yards.
pub const KIND_NONE: &str = "Describe your traps under Book, Kinds of trap, to see what to buy.";

/// A yard that is not real.
pub fn invented(name: &str) -> String {
    [name, " (", super::en_round::INVENTED, ")"].concat()
}

/// "Home: hives 1, 2, 7".
pub fn hives_of(yard: &str, tags: &[String]) -> String {
    let hives = if tags.is_empty() { "none".to_owned() } else { tags.join(", ") };
    [yard, ": ", &hives].concat()
}

/// "24 hives".
pub fn hives(count: u32) -> String {
    counted(count, "hive", "hives")
}

/// "46 traps".
pub fn traps(count: u32) -> String {
    counted(count, "trap", "traps")
}

/// "Hives to see, due, skipped or with slime: 24 of 24".
pub fn hives_due(due: u32, of: u32) -> String {
    ["Hives to see, due, skipped or with slime: ", &due.to_string(), "\u{a0}of\u{a0}", &of.to_string()]
        .concat()
}

/// "To look at again after a spill: 2".
pub fn looks(hives: u32) -> String {
    ["To look at again after a spill: ", &hives.to_string()].concat()
}

/// "Their traps to fill: 46, of these missing: 2": those that are due, all of a hive that was skipped.
pub fn traps_due(due: u32, missing: u32) -> String {
    let missing =
        if missing > 0 { [", of these missing: ", &missing.to_string()].concat() } else { String::new() };
    ["Their traps to fill: ", &due.to_string(), &missing].concat()
}

/// "Places without a trap: 3".
pub fn wanting(count: u32) -> String {
    ["Places without a trap: ", &count.to_string()].concat()
}

/// Field.
pub const GOOD_FOR: &str = "Oil is good for, in months";
/// What it is for.
pub const GOOD_FOR_HINT: &str = "As its bottle says. May stay empty: then nothing is capped.";

/// "It is good for 3 months: that is 6 of 10 walks. Buy the rest later."
pub fn good_for(months: u32, walks: u32, of: u32) -> String {
    let months = counted(months, "month", "months");
    [
        "It is good for ",
        &months,
        ": that is ",
        &whole(walks),
        " of ",
        &counted(of, "walk", "walks"),
        ". Buy the rest later.",
    ]
    .concat()
}

/// "Estimate from your trips: 4.6 L to 5.5 L, 2 standard deviations of 90 mL a walk either way, × √10".
pub fn season_span(low: &str, high: &str, spread: &str, walks: u32) -> String {
    let walks = whole(walks);
    [
        "Estimate from your trips: ",
        low,
        " to ",
        high,
        ", 2 standard deviations of ",
        spread,
        " a walk either way × √",
        &walks,
    ]
    .concat()
}

/// "− 500 mL in store = 4.5 L".
pub fn season_store(held: &str, buy: &str) -> String {
    ["− ", held, " in store =\u{a0}", buy].concat()
}

/// Lead of the hives whose bait is due out.
pub const BAIT_OUT: &str = "Take the bait out of";
/// Lead of those with a patty.
pub const PATTY_OUT: &str = "Take the patty out of";

/// "Take the patty out of: hive 3, 7. Bags or a tub with a lid".
pub fn out_by_then(what: &str, hives: &str) -> String {
    [what, ": ", hives, " (bring a tub or bags that shut)"].concat()
}

/// Trap work is paused.
pub fn resting(since: &str) -> String {
    ["Trap work is paused since ", since, ": nothing is due."].concat()
}

/// "46 traps × 10 mL = 460 mL, whole fills: thrown away when full".
pub fn oil_line(count: u32, each: &str, sum: &str, reusable: bool) -> String {
    let why = if reusable { "level or loss not known" } else { "thrown away when full" };
    [&traps(count), " × ", each, " =\u{a0}", sum, ", whole fills: ", why].concat()
}

/// "4 traps to put in × 10 mL = 40 mL".
pub fn first_line(count: u32, each: &str, sum: &str) -> String {
    [&traps(count), " to put in × ", each, " =\u{a0}", sum].concat()
}

/// "46 traps used again, from 35 % up, × 3 mL = 138 mL".
pub fn top_up_line(count: u32, from: &str, each: &str, sum: &str) -> String {
    [&traps(count), " used again, from ", from, " up, × ", each, " =\u{a0}", sum].concat()
}

/// "Ferry Field 460 mL".
pub fn yard_oil(name: &str, oil: &str) -> String {
    [name, ": ", oil].concat()
}

/// "+ 25 % reserve = 575 mL".
pub fn reserve(share: &str, sum: &str) -> String {
    ["+ ", share, " reserve =\u{a0}", sum].concat()
}

/// "= 2 bottles of 500 mL".
pub fn bottles(count: u32, size: &str) -> String {
    ["in ", &counted(count, "bottle", "bottles"), " of ", size].concat()
}

/// Traps nobody has measured.
pub fn unknown(count: u32) -> String {
    ["Left out, not measured: ", &traps(count)].concat()
}

/// "2 missing or not put in yet".
pub fn place(count: u32) -> String {
    if count == 0 {
        return "none missing".to_owned();
    }
    [&count.to_string(), " missing or not put in yet"].concat()
}

/// "+ 3 to spare".
pub fn spare(count: u32) -> String {
    ["+ ", &count.to_string(), " to spare"].concat()
}

/// "+ 4 new for hives with slime"; nothing of none.
pub fn anew(count: u32) -> String {
    if count == 0 { String::new() } else { ["+ ", &whole(count), " new for hives with slime"].concat() }
}

/// The traps that are thrown away.
pub fn disposable(count: u32) -> String {
    [&count.to_string(), " more if you replace the due ones instead of topping them up"].concat()
}

/// "Slim: 4 + 2 to spare = 6; in store 3, short by 3".
pub fn of_kind(name: &str, place: u32, new: u32, to_spare: u32, store: u32) -> String {
    let all = place.saturating_add(new).saturating_add(to_spare);
    let mut said = [name, ": ", &whole(place)].concat();
    if new > 0 {
        said.push_str(&[" ", &anew(new)].concat());
    }
    if to_spare > 0 {
        said.push_str(&[" ", &spare(to_spare)].concat());
    }
    if all > place {
        said.push_str(&[" =\u{a0}", &whole(all)].concat());
    }
    let short = all.saturating_sub(store);
    let short = if short > 0 { ["short by ", &whole(short)].concat() } else { "enough".to_owned() };
    said.push_str(&["; in store ", &whole(store), ", ", &short].concat());
    said
}

/// "In store: 500 mL, short by 100 mL"; `short` is empty where it is enough.
pub fn oil_store(held: &str, short: &str) -> String {
    let lead = ["In store: ", held, ", "].concat();
    if short.is_empty() { [&lead, "enough"].concat() } else { [&lead, "short by ", short].concat() }
}

/// "In store, but past its day and not counted: 500 mL".
pub fn oil_past(held: &str) -> String {
    ["In store, but past its day and not counted: ", held].concat()
}

/// Key to the record of a trip.
pub const CAME_HOME: &str = "What came home";
/// What it is for.
pub const CAME_HOME_WHY: &str =
    "Write down what oil you took and what came home. After three trips the reserve is learned from that.";

/// "Your last 5 trips took 8 % more oil than the sum of what was done (from 2 % less to 15 % more)".
pub fn trips_took(trips: u32, mean: &str, least: &str, most: &str) -> String {
    let trips = counted(trips, "trip", "trips");
    [
        "Your last ",
        &trips,
        " took ",
        mean,
        " oil than the sum of what was done (from ",
        least,
        " to ",
        most,
        "), ",
    ]
    .concat()
}

/// "8 % more", "2 % less".
pub fn more_or_less(share: &str, less: bool) -> String {
    [share, if less { " less" } else { " more" }].concat()
}

/// "11 mL for each trap filled."
pub fn each_filled(each: &str) -> String {
    [each, " for each trap filled."].concat()
}

/// "Estimate: a reserve of 20 % would do on nearly every trip."
pub fn learned_reserve(share: &str) -> String {
    ["Estimate: a reserve of ", share, " would do on nearly every trip."].concat()
}

/// The same, where it is more than can be reckoned with.
pub fn learned_beyond(asked: &str, most: &str) -> String {
    [
        "Estimate: a reserve of ",
        asked,
        " would do on nearly every trip. This page reckons with ",
        most,
        " at most: where trips take more than twice the sum, what a trap holds, its fill or what was logged does not fit. Look there first, and carry more meanwhile.",
    ]
    .concat()
}

/// "Reckon with 20 %".
pub fn reckon_with(share: &str) -> String {
    ["Reckon with ", share].concat()
}

/// How the learned reserve is worked out.
pub const LEARNED_WHY: &str = "For each of your last trips, twelve at most: oil taken less oil that came home, divided by what the book says was filled that day, by kind and level, new traps included. The reserve is the mean of that and two standard deviations, up to the next 5 %: an estimate, too small on about one trip in forty if trips vary as they did. From three trips on; before that, a quarter is our judgement. A day with a trap nobody has measured is left out.";

/// "4 missing or not put in yet + 2 to spare = 6".
pub fn need(need: u32, new: u32, to_spare: u32) -> String {
    let all = need.saturating_add(new).saturating_add(to_spare);
    let new = if new > 0 { [" ", &anew(new)].concat() } else { String::new() };
    [&place(need), &*new, " ", &spare(to_spare), " =\u{a0}", &whole(all)].concat()
}

/// "10 walks × 46 traps = 460, + 2 to spare = 462".
pub fn season_need(walks: u32, every: u32, need: u32, spare: u32) -> String {
    let walks = counted(walks, "walk", "walks");
    let mut said = [&walks, " × ", &traps(every), " =\u{a0}", &whole(need)].concat();
    if spare > 0 {
        let spare_said = [", + ", &whole(spare), " to spare =\u{a0}", &whole(need.saturating_add(spare))];
        said.push_str(&spare_said.concat());
    }
    said
}

/// "− 3 in store = 3"; "20 in store: nothing to buy".
pub fn in_store(store: u32, buy: u32) -> String {
    if buy == 0 {
        return [&whole(store), " in store: nothing to buy"].concat();
    }
    ["− ", &whole(store), " in store =\u{a0}", &whole(buy)].concat()
}

/// "Estimate: Tue 14 July 2026, then every 14 days: 10 walks".
pub fn walks_sum(first: &str, every: u16, count: u32) -> String {
    let every = days(u32::from(every));
    ["Estimate: ", first, ", then every ", &every, ": ", &counted(count, "walk", "walks")].concat()
}

/// "10 walks × 460 mL + 10 % = 5.06 L".
pub fn season(walks: u32, each: &str, spilled: &str, sum: &str) -> String {
    [&counted(walks, "walk", "walks"), " × ", each, " + ", spilled, " =\u{a0}", sum].concat()
}
