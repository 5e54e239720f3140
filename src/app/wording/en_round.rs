//! English: the Round and the panel that logs a hive.

use super::en::{counted, date, days, relative, short_date, weekday};
pub use super::en_due::*;
pub use super::en_log::*;
pub use super::en_walk::*;
use crate::almanac::day::Day;
use crate::book::entry::{Did, SkipReason};

/// Behind what was done: whether it lies in both copies. Nothing while it is on its way there.
pub fn twice(twice: Option<bool>) -> &'static str {
    match twice {
        None => "",
        Some(true) => ". Saved",
        Some(false) => ". In one place only",
    }
}

/// Round without hives: the lead.
pub const EMPTY: &str = "No hives are kept yet.";
/// What the round will do.
pub const EMPTY_HOW: &str = "Start with three numbers on the Bench: hives, boxes with traps, what one trap holds. Then “Keep this yard” lists every hive here with its next service.";
/// Key to the Bench.
pub const TO_BENCH: &str = "Start on the Bench";
/// What the demonstration is.
pub const DEMO_HOW: &str =
    "Or look round first: two invented yards in mid-season. They come out again with one key.";
/// Key that fills it in.
pub const DEMO: &str = "Show invented yards";
/// Key to a new yard.
pub const ADD_YARD: &str = "Add a yard";
/// Yard without hives.
pub const NO_HIVES: &str = "No hives in this yard yet. Add them below, such as 1–24.";
/// Yard that is not there.
pub const NO_YARD: &str = "This yard is not in the book on this phone.";
/// Key to all yards.
pub const ALL_YARDS: &str = "All yards";
/// Heads the list of hives for screen readers.
pub const HIVES: &str = "Hives in walking order";
/// Heads the sum of a yard.
pub const SUM: &str = "How this was worked out";
/// Name of the panel for screen readers.
pub const PANEL: &str = "Log this hive";
/// Key that shuts the panel.
pub const SHUT: &str = "Close";
/// Key that opens levels, note and day.
pub const MORE: &str = "Level, note…";
/// Key that shuts them.
pub const LESS: &str = "Fewer keys";
/// Key to the page of the hive.
pub const HIVE_PAGE: &str = "Hive page";
/// Right above the keys: whom they are for, and that there is no second key that saves. Where letters are large the head
/// of the panel may be out of sight.
pub fn saves(hive: &str) -> String {
    [hive, ". These save at once:"].concat()
}
/// Key: the traps that were wanted are in since today.
pub const PLACED_NOW: &str = "Traps placed today";
/// The same for the day in the field.
pub const PLACED_THEN: &str = "Traps placed that day";
/// Row: they went in today.
pub const PLACED_TODAY: &str = "traps placed today";
/// A hive without traps that wants none.
pub const NONE_WANTED: &str = "No traps are meant for this hive.";
/// Nobody knows which kind goes in.
pub const NO_KIND_HERE: &str = "Which kind of trap goes in? Put the first ones in on the hive page.";
/// On the card of a yard that is not real.
pub const INVENTED: &str = "invented";
/// Beetles, before the number: those since the last count, as the rate is reckoned over the days since then.
pub const BEETLES: &str = "New beetles";
/// Under the field.
pub const COUNT_HINT: &str = "Since the last count. Those left in the oil then are counted already.";
/// Nothing counted.
pub const NOT_COUNTED: &str = "not counted";
/// Key that empties the count.
pub const NO_COUNT: &str = "Not counted";
/// Group of the counting keys.
pub const COUNT_KEYS: &str = "Count beetles";
/// Field: level found.
pub const BEFORE: &str = "Oil found at";
/// Field: level left.
pub const AFTER: &str = "Oil left at";
/// Under the level left.
pub const AFTER_HINT: &str = "Left blank: the usual fill of the trap.";
/// Field: note.
pub const NOTE: &str = "Note";
/// Field: day.
pub const DAY: &str = "Day of the work";
/// Under the day.
pub const DAY_HINT: &str = "Left blank: today. Stays set for the next hive.";
/// Heading of the traps.
pub const TRAPS: &str = "Which traps";
/// Under it.
pub const TRAPS_HINT: &str = "None marked means every trap of the hive.";
/// Full of oil.
pub const TOO_FULL: &str = "Fuller than ¾ spills on bees.";
/// Asked after Skip.
pub const WHY_SKIP: &str = "Skipped why?";
/// Key back from a question.
pub const BACK: &str = "Back";
/// Key that saves in spite of a doubt.
pub const SAVE_AS_IS: &str = "Save as it is";
/// Key that goes back to the fields.
pub const CHANGE: &str = "Change the entry";
/// Key that logs a hive a second time on one day.
pub const ONE_MORE: &str = "Yes, one more";
/// Key that does not.
pub const NO: &str = "No";
/// Key: every trap of the hive.
pub fn all_traps_key(traps: u32) -> String {
    ["All ", &traps.to_string()].concat()
}
/// Asked after Spilled, Missing and Glued shut.
pub fn which(tag: &str, work: Did) -> String {
    let what = match work {
        Did::Spilled => ": which traps spilled?",
        Did::Missing => ": which traps are missing?",
        _ => ": which traps are glued shut?",
    };
    [&hive(tag), what].concat()
}
/// Key of a dead hive.
pub const REVIVE: &str = "Take it back into care";
/// Key of a hive that is in the book since a later day.
pub const STOOD_THERE: &str = "It stood there then, traps and all";
/// That was done.
pub fn stood_there(tag: &str, day: Day) -> String {
    [&hive(tag), ", start moved to ", &date(day)].concat()
}
/// Key that undoes.
pub const UNDO: &str = "Undo";
/// Key that redoes.
pub const REDO: &str = "Do it again";
/// The phone did not keep it.
pub const NOT_KEPT: &str = "The phone did not keep this. What you typed is still here.";
/// Before the reason why nothing was taken back.
pub const UNCHANGED: &str = "Nothing was changed. ";
/// The phone did not keep what takes it back.
pub const NOT_UNDONE: &str = "The phone did not keep it.";
/// Key for all that is left.
pub const REST: &str = "The rest as usual";
/// Heading of its sheet.
pub const REST_TITLE: &str = "The rest as usual";
/// Over its list.
pub const REST_LIST: &str = "These hives get an entry each:";
/// In its place, where there are none.
pub const REST_NONE: &str = "No hive is left that the usual entry fits.";
/// Over those that get none: no trap in them can be filled, or an entry of their own is begun.
pub const REST_OUT: &str = "Left out, for you to log:";
/// Before the day of a hive that is not due.
pub const NOT_YET: &str = "not due yet, ";
/// Topping up leaves such a trap as it is.
pub const STAYS: &str = ", stays so";
/// What was done to them.
pub const REST_DID: &str = "What was done?";
/// Everything has an entry.
pub const ALL_DONE: &str = "Every hive has an entry.";
/// After a spill.
pub const SPILLED: &str = "Wipe, never rinse onto brood. Half fill.";
/// After a missing trap.
pub const MISSING: &str = "Look on the floor and in the grass.";
/// After one glued shut.
pub const GLUED: &str = "Caught nothing since. Scrape it free or replace it.";
/// Key behind these. By then the panel may be at another hive.
pub fn filled_again(tag: &str) -> String {
    [&hive(tag), ": replaced and filled"].concat()
}
/// Many bodies in the oil.
pub const FLATTERS: &str = "The level looks better than it is: 100 beetles hide 1.3–2.6 mL of lost oil. Only new ones are counted here; older ones left in the oil hide more.";
/// The level rose.
pub const ROSE: &str =
    "More oil than was left: water or debris in it, or a visit nobody wrote down? Kept as read.";
/// Key that puts a card away.
pub const GOT_IT: &str = "Got it";
/// Key that empties old fields.
pub const EMPTY_FIELDS: &str = "Clear the numbers";
/// Invisible name of the mark of a begun entry.
pub const BEGUN: &str = "begun, not saved";

/// "begun, not saved: 40 beetles".
pub fn begun(count: &str) -> String {
    match count.trim() {
        "" => BEGUN.to_owned(),
        "1" => [BEGUN, ": 1 beetle"].concat(),
        count => [BEGUN, ": ", &own(count), " beetles"].concat(),
    }
}

/// A name that keeps its own direction inside a sentence.
pub fn own(name: &str) -> String {
    ["\u{2068}", name, "\u{2069}"].concat()
}

/// "Hive 7".
pub fn hive(tag: &str) -> String {
    ["Hive ", &own(tag)].concat()
}

/// "Tue 14 July", and "Tue 14 July 2025" in another year than today's: the year is left out where nobody doubts it.
pub fn near(day: Day, today: Day) -> String {
    if day.year() != today.year() {
        return date(day);
    }
    #[cfg(target_arch = "wasm32")]
    if let Some(near) = crate::app::edge::locale::near(day) {
        return near;
    }
    [weekday(day.weekday()), " ", &short_date(day)].concat()
}

/// "Tue 14 July, in 3 days".
pub fn near_and_how_far(day: Day, today: Day) -> String {
    [&near(day, today), ", ", &relative(day.days_since(today))].concat()
}

/// "▲ Hive 2: STOP, brood disease suspected. Hive 3: slime or many larvae. Hive 6: dead-out, comb still there. Beside
/// the traps: hives 4, 5 want a look"; nothing without any. A hive under suspicion is not among those that want a look:
/// nobody is to open it.
pub fn beside(stop: &[String], slime: &[String], dead: &[String], look: &[String]) -> String {
    let hives = |one: &str, many: &str, tags: &[String]| {
        [if tags.len() == 1 { one } else { many }, &tags.join(", ")].concat()
    };
    let mut said = Vec::new();
    for (tags, what) in [
        (stop, ": STOP, brood disease suspected"),
        (slime, ": slime or many larvae"),
        (dead, ": dead-out, comb still there"),
    ] {
        if !tags.is_empty() {
            said.push([&hives("Hive ", "Hives ", tags), what].concat());
        }
    }
    if !look.is_empty() {
        let want = if look.len() == 1 { " wants a look" } else { " want a look" };
        said.push(["Beside the traps: ", &hives("hive ", "hives ", look), want].concat());
    }
    if said.is_empty() { String::new() } else { ["▲ ", &said.join(". ")].concat() }
}

/// "4 traps to place: Slim trap".
pub fn to_place(wanting: u32, kind: &str) -> String {
    [&counted(wanting, "trap", "traps"), " to place: ", &own(kind), ". Another kind: on the hive page."]
        .concat()
}

/// Days since the service.
pub fn since(count: i32) -> String {
    match u32::try_from(count) {
        Ok(0) => "filled today".to_owned(),
        Ok(count) => [&days(count), " since service"].concat(),
        Err(_) => String::new(),
    }
}

/// "2 boxes, 4 traps".
pub fn parts(boxes: u32, traps: u32) -> String {
    [&counted(boxes, "box", "boxes"), ", ", &counted(traps, "trap", "traps")].concat()
}

/// Key of a piece of work.
pub fn did_key(did: Did) -> &'static str {
    match did {
        Did::AsFound => "As found",
        Did::ToppedUp => "Topped up",
        Did::Replaced => "Replaced",
        Did::Spilled => "Spilled…",
        Did::Missing => "Missing…",
        Did::GluedShut => "Glued shut…",
    }
}

/// A piece of work inside a sentence.
pub fn did(did: Did) -> &'static str {
    match did {
        Did::AsFound => "as found",
        Did::ToppedUp => "topped up",
        Did::Replaced => "replaced",
        Did::Spilled => "spilled",
        Did::Missing => "trap missing",
        Did::GluedShut => "glued shut",
    }
}

/// Key that skips.
pub const SKIP: &str = "Skip…";

/// Key of a reason.
pub fn skip_key(why: SkipReason) -> &'static str {
    match why {
        SkipReason::Temper => "Hot bees",
        SkipReason::Robbing => "Robbing",
        SkipReason::Weather => "Weather",
        SkipReason::NoTime => "No time",
        SkipReason::Other => "Other",
    }
}

/// A reason inside a sentence.
pub fn skip(why: SkipReason) -> &'static str {
    match why {
        SkipReason::Temper => "hot bees",
        SkipReason::Robbing => "robbing",
        SkipReason::Weather => "weather",
        SkipReason::NoTime => "no time",
        SkipReason::Other => "other reason",
    }
}

/// "skipped Sun 12 July: temper".
pub fn skipped(day: Day, today: Day, why: SkipReason) -> String {
    let when = if day == today { "today".to_owned() } else { near(day, today) };
    ["skipped ", &when, ": ", skip(why)].concat()
}

/// Behind "as found today" where the hive stays due.
pub const LOOK_FILLS_NOTHING: &str = "a look fills nothing, so it stays due";

/// "topped up today"; where it was done to some of the traps only, "1 of 4 topped up today".
pub fn did_today(work: Did, part: Option<(u32, u32)>) -> String {
    let Some((some, of)) = part else { return [did(work), " today"].concat() };
    let work = if work == Did::Missing { "missing" } else { did(work) };
    [&some.to_string(), " of ", &of.to_string(), " ", work, " today"].concat()
}

/// "next: due Tue 28 July, in 14 days".
pub fn next_due(due: &str) -> String {
    ["next ", due].concat()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Day {
        Day::parse(text).unwrap()
    }

    #[test]
    fn a_day_of_another_year_has_its_year() {
        let today = day("2026-01-02");
        assert_eq!(near(day("2026-12-31"), today), "Thu 31 December");
        assert_eq!(near(day("2025-12-31"), today), "Wed 31 December 2025");
        assert_eq!(near_and_how_far(day("2027-01-01"), today), "Fri 1 January 2027, in 364\u{a0}days");
        assert_eq!(
            skipped(day("2024-07-02"), today, SkipReason::Weather),
            "skipped Tue 2 July 2024: weather"
        );
    }

    #[test]
    fn work_on_some_of_the_traps_is_not_told_as_work_on_all() {
        assert_eq!(did_today(Did::ToppedUp, None), "topped up today");
        assert_eq!(did_today(Did::ToppedUp, Some((1, 4))), "1 of 4 topped up today");
        assert_eq!(did_today(Did::Missing, Some((2, 4))), "2 of 4 missing today");
    }

    #[test]
    fn a_hive_under_suspicion_does_not_want_a_look() {
        let tags = |tags: &[&str]| tags.iter().map(|tag| (*tag).to_owned()).collect::<Vec<_>>();
        let told = |stop: &[&str], look: &[&str]| beside(&tags(stop), &[], &[], &tags(look));
        assert_eq!(told(&[], &["4", "5"]), "▲ Beside the traps: hives 4, 5 want a look");
        assert_eq!(told(&["2"], &[]), "▲ Hive 2: STOP, brood disease suspected");
        assert_eq!(
            told(&["2", "3"], &["4"]),
            "▲ Hives 2, 3: STOP, brood disease suspected. Beside the traps: hive 4 wants a look"
        );
        assert_eq!(told(&[], &[]), "");
        assert_eq!(
            beside(&tags(&["2"]), &tags(&["3"]), &tags(&["4", "5"]), &[]),
            "▲ Hive 2: STOP, brood disease suspected. Hive 3: slime or many larvae. Hives 4, 5: dead-out, comb still there"
        );
    }

    #[test]
    fn right_to_left_tags_keep_to_themselves() {
        let on = day("2026-07-14");
        assert_eq!(
            logged("כוורת", Did::ToppedUp, &whole(4, Did::ToppedUp), on, on),
            "Hive \u{2068}כוורת\u{2069}: topped up"
        );
        assert_eq!(
            logged("7", Did::Replaced, &some(1), day("2026-07-12"), on),
            "Hive \u{2068}7\u{2069}: 1\u{a0}trap replaced on Sun 12 July"
        );
    }

    #[test]
    fn a_number_of_traps_is_not_read_as_the_name_of_the_hive() {
        let on = day("2026-07-14");
        let told = |traps, did| logged("9", did, &whole(traps, did), on, on);
        assert_eq!(told(4, Did::Missing), "Hive \u{2068}9\u{2069}: all 4\u{a0}traps missing");
        assert_eq!(told(4, Did::Spilled), "Hive \u{2068}9\u{2069}: all 4\u{a0}traps spilled");
        assert_eq!(told(1, Did::Missing), "Hive \u{2068}9\u{2069}: trap missing");
        assert_eq!(
            logged("9", Did::Missing, &some(2), on, on),
            "Hive \u{2068}9\u{2069}: 2\u{a0}traps missing"
        );
    }
}
