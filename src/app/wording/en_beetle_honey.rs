//! English: honey supers against the clock.

use super::en::{counted, date, days, put, whole};
use super::en_lot::hours;
use super::en_round::near;
use crate::almanac::day::Day;
use crate::almanac::honey::{Decides, Pull, Stand, Work};
use crate::book::baited::Baited;
use crate::book::record::ClockTime;

/// Before an hour: the bees were off.
pub const OFF: &str = "Bees off: ";
/// Before an hour: until when the keeper wants to spin.
pub const GOAL: &str = "Goal: ";
/// Before an hour: the last one.
pub const LIMIT: &str = "Limit: ";
/// Before an hour: somebody began to spin.
pub const BEGAN: &str = "Being spun since: ";
/// Before an hour: when eggs may hatch.
pub const FIRST_HATCH: &str = "Eggs laid last may hatch: ";
/// Caution.
pub const NOT_SLIMED: &str = "Slimed honey is not for people or bees.";
/// Caution.
pub const SPIN: &str = "Spin within 24 h; 48 h at the most.";

/// "Bees off: Tue 14 July 2026, 16:00", on a line of its own.
pub fn put_hour(said: &mut String, what: &str, at: ClockTime) {
    put_line(said, what);
    put(said, &hour(at));
}

/// Begins another line.
pub fn put_line(said: &mut String, line: &str) {
    put(said, if said.is_empty() { "" } else { "\n" });
    put(said, line);
}

/// "Tue 14 July 2026, 16:00".
pub fn hour(at: ClockTime) -> String {
    let mut said = date(at.day);
    put(&mut said, ", ");
    at.put_clock(&mut said);
    said
}

/// "Mill: spin 6 supers". For a calendar, which does not know the space that holds a number and its noun together.
pub fn summary(yard: &str, supers: Option<u32>, over: bool, begun: bool) -> String {
    let supers = supers.map_or_else(|| "supers".to_owned(), |supers| counted(supers, "super", "supers"));
    let [before, behind] = match (over, begun) {
        (false, _) => [": spin ", ""],
        (true, false) => [": ", " over the limit: spin now"],
        (true, true) => [": ", " being spun: write down the end"],
    };
    [yard, before, &supers.replace('\u{a0}', " "), behind].concat()
}

/// Said once.
pub const ESTIMATE: &str =
    "Estimate. Eggs that were in the comb before, and warmth that nobody measured, move these hours.";
/// What is on its way.
pub const ON_THE_WAY: &str = "On the way";
/// Nothing is.
pub const NONE: &str = "No harvest lot on its way is written down. The sums below work without one.";
/// The way to the form of a lot.
pub const TO_LOT: &str = "Write a harvest lot down";
/// The way to the form of a lot that stands there.
pub const TO_STEP: &str = "Write down what was done";
/// The clock is not kept running.
pub const NO_BELL: &str = "Worked out from the hours you wrote down, each time you look. This page rings no bell: put the calendar file of the Book into your calendar for that.";
/// The way there.
pub const TO_BOOK: &str = "Calendar file, under Papers";
/// Before an hour: the extraction was over.
pub const ENDED: &str = "Spun: ";
/// Before an hour: wet supers.
pub const BACK_BY: &str = "Wet supers and cappings back on hives or in the freezer: ";
/// Alarm.
pub const PAST_HATCH: &str = "By the quickest of the figures eggs may have hatched. Spin now.";
/// Alarm.
pub const PAST_GOAL: &str = "The goal is over. Spin now.";
/// Alarm.
pub const PAST_LIMIT: &str =
    "The limit is over. Spin now, and look for larvae and slime in each frame first.";
/// Alarm.
pub const BACK_LATE: &str = "Wet supers and cappings have stood for more than 24 h.";
/// What the bar shows.
pub const AXIS: &str = "Filled: hours that are gone. The two strokes: goal and limit. The point: a first hatch, where it lies before the limit.";
/// Note.
pub const OUTER: &str = "Eggs that were laid before the bees went hatch sooner: this is the last hour for a first hatch, not a safe one.";
/// Note.
pub const TOO_COLD: &str = "No hatch at this temperature. The beetles are still alive.";
/// Note.
pub const TOO_HOT: &str =
    "No egg hatches at this temperature; above 46.5 °C none develops. Comb gives way too.";
/// Note.
pub const FEW_LIVE: &str = "Above 37 °C few eggs live. Do not count on it.";
/// Note.
pub const DRY: &str = "Below 50 % humidity with air moved through the stacks eggs did not hatch in one study; another found 34 %. A help, and no reason to wait.";
/// Note.
pub const NO_ROOM: &str = "No temperature of the room is written down, so no hatch is worked out.";
/// Why.
pub const HOW: &str = "Goal and limit are common practice, without a source. Hours of an egg: 19.4 degree-days above 13.5 °C (Meikle & Patt 2011), summed over the day where the room warms up and cools down. The other figures: the quickest and the slowest of the laboratories at the warmest and the coolest the room is.";
/// The part with typed figures.
pub const TYPED: &str = "From typed figures";
/// The same below a lot that is on its way, which it is not about.
pub const TYPED_OTHER: &str = "For another stack, from typed figures";
/// Beside the goal.
pub const GOAL_ABOVE: &str = "The goal lies behind the limit. Make it as many hours or fewer.";
/// Nothing can be pulled.
pub const NO_TIME: &str = "None: no time left";
/// Field.
pub const OFF_FIELD: &str = "Bees off";
/// Its hint.
pub const OFF_HINT: &str = "Empty is now. Not known: the earliest it can have been.";
/// Field.
pub const ROOM: &str = "The room at its warmest";
/// Field.
pub const LOW: &str = "At its coolest; may be empty";
/// Warmer at its coolest.
pub const UPSIDE_DOWN: &str = "Warmer than at its warmest.";
/// No hour.
pub const NO_HOUR: &str = "Not a day and an hour.";
/// Fields.
pub const HOURS: [&str; 2] = ["Goal, in hours", "Limit, in hours"];
/// Answer.
pub const SPIN_BY: &str = "Spin by";
/// The part about supers.
pub const PULL: &str = "How many supers to pull";
/// Fields.
pub const WORK: [&str; 6] = [
    "Hours you can work before the limit",
    "Of these for setting up, settling, cleaning",
    "Frames in a super",
    "Frames the extractor takes",
    "Minutes for a load",
    "Seconds to uncap a frame",
];
/// Answer.
pub const MOST: &str = "Pull at the most";
/// Why.
pub const MOST_WHY: &str = "Uncapping and spinning go on side by side, so the slower of the two counts. What is pulled and not spun breeds beetles; what stays on a strong hive does not.";

/// "9 h 20 min gone, 14 h 40 min to the goal". An hour off that is still to come is told as such.
pub fn gone(gone: i32, left: i32, stand: Stand) -> String {
    if gone < 0 {
        return [&span(gone), " until the bees are off"].concat();
    }
    let to = match stand {
        Stand::InTime => " to the goal",
        Stand::PastGoal => " to the limit",
        Stand::PastLimit => " past the limit",
    };
    [&span(gone), " gone, ", &span(left), to].concat()
}

/// "Being spun since Wed 15 July 2026, 10:30; write down the end".
pub fn being_spun(since: ClockTime) -> String {
    ["Being spun since ", &hour(since), "; write down the end"].concat()
}

/// Why it is to be spun by then.
pub fn decides(by: Decides) -> &'static str {
    match by {
        Decides::Goal => "The goal decides.",
        Decides::Limit => "The limit decides.",
        Decides::Hatch => "The earliest hatch decides: the quickest of the figures for this room.",
    }
}

/// "Spin by Wed 15 July 2026, 16:00".
pub fn spin_by(at: ClockTime) -> String {
    [SPIN_BY, " ", &hour(at)].concat()
}

/// "Back within 3 h 00 min", "Back since 2 h 00 min".
pub fn back(left: i32) -> String {
    [if left < 0 { "Late by " } else { "Back within " }, &span(left)].concat()
}

/// Hours and minutes, whichever way they lie.
fn span(minutes: i32) -> String {
    hours(minutes.unsigned_abs())
}

/// "Goal: Wed 15 July 2026, 16:00, in 14 h 40 min".
pub fn hour_off(what: &str, at: ClockTime, off: i32) -> String {
    if off == 0 {
        return [what, &hour(at), ", now"].concat();
    }
    let away = span(off);
    let [before, behind] = if off < 0 { [", ", " ago"] } else { [", in ", ""] };
    [what, &hour(at), before, &away, behind].concat()
}

/// "An egg takes about 32 h in this room; 25 to 64 h by other figures".
pub fn hatch_after(minutes: i32, earliest: i32, latest: Option<i32>) -> String {
    // A hatch is rather told too early, the latest too late; the middle one is the nearest hour.
    let whole = |minutes: i32, up: i32| whole((minutes.saturating_add(up) / 60).unsigned_abs());
    let mut said = ["An egg takes about ", &whole(minutes, 30), "\u{a0}h in this room; "].concat();
    put(&mut said, &whole(earliest, 0));
    match latest {
        Some(latest) => put(&mut said, &[" to ", &whole(latest, 59)].concat()),
        None => put(&mut said, " and more"),
    }
    put(&mut said, "\u{a0}h by other figures");
    said
}

/// A stack: "Mill, 6 supers".
pub fn stack(yard: &str, supers: Option<u32>) -> String {
    match supers {
        Some(supers) => [yard, ", ", &counted(supers, "super", "supers")].concat(),
        None => yard.to_owned(),
    }
}

/// "Your goal: 12 h, your limit: 24 h."
pub fn own_aims(goal: u32, limit: u32) -> String {
    ["Your goal: ", &whole(goal), "\u{a0}h, your limit: ", &whole(limit), "\u{a0}h."].concat()
}

/// What is typed is not what stands under aims.
pub fn aims_say(goal: u32, limit: u32) -> String {
    [
        "The hours typed here count for this sum. Lots that are written down go by ",
        &whole(goal),
        "\u{a0}h and ",
        &whole(limit),
        "\u{a0}h.",
    ]
    .concat()
}

/// "Mill, 6 supers, since Tue 14 July 2026: write down its hours".
pub fn to_old(stack: &str, since: Option<Day>) -> String {
    let since = since.map(|day| [", since ", &date(day)].concat()).unwrap_or_default();
    [stack, &since, ": write down its hours"].concat()
}

/// Lots whose next hour nobody wrote down.
pub fn old(count: u32) -> String {
    [
        &counted(count, "older lot has", "older lots have"),
        " no hour of spinning, or of supers put back, written down.",
    ]
    .concat()
}

/// "8 supers".
pub fn supers(count: u32) -> String {
    counted(count, "super", "supers")
}

/// "8 supers × 10 frames = 80 frames: 20 loads × 15 min = 5 h 00 min".
pub fn spins(supers: u32, work: &Work) -> String {
    let frames = supers * work.frames;
    let loads = frames.div_ceil(work.load);
    let counted = [
        counted(supers, "super", "supers"),
        counted(work.frames, "frame", "frames"),
        counted(frames, "frame", "frames"),
    ];
    let [supers, each, frames] = &counted;
    let time = hours(loads * work.spin);
    let loads = crate::app::wording::en::counted(loads, "load", "loads");
    [supers, " × ", each, " = ", frames, ": ", &loads, " × ", &whole(work.spin), "\u{a0}min = ", &time]
        .concat()
}

/// "Uncapping: 80 frames × 60 s = 1 h 20 min".
pub fn uncaps(supers: u32, work: &Work) -> String {
    let frames = supers * work.frames;
    let time = hours((frames * work.uncap).div_ceil(60));
    ["Uncapping: ", &counted(frames, "frame", "frames"), " × ", &whole(work.uncap), "\u{a0}s = ", &time]
        .concat()
}

/// "With 1 h 00 min beside it 6 h 00 min of 6 h 00 min".
pub fn takes(pull: &Pull, work: &Work) -> String {
    let slower =
        if pull.by_uncapping { "Uncapping is the slower. " } else { "The extractor is the slower. " };
    [slower, "With ", &hours(work.beside), " beside it: ", &hours(pull.takes), " of ", &hours(work.minutes)]
        .concat()
}

/// "Hive 3: take the bait out. In since Wed 1 July 2026, due on Wed 8 July 2026."
pub fn bait(hive: &str, of: &Baited) -> String {
    let out = if of.patty { ": take the patty out. In since " } else { ": take the bait out. In since " };
    [hive, out, &date(of.since), ", due on ", &date(of.off.on), "."].concat()
}

/// "Patty in since 14 July: out by 19 July, 3 days late".
pub fn bait_in(of: &Baited, today: Day) -> String {
    let what = if of.patty { "Patty in since " } else { "Bait in since " };
    let late = today.days_since(of.off.on);
    let mut said = [what, &near(of.since, today), ": out by ", &near(of.off.on, today)].concat();
    match u32::try_from(late) {
        Ok(0) => put(&mut said, ", today"),
        Ok(late) => put(&mut said, &[", ", &days(late), " late"].concat()),
        Err(_) => {}
    }
    said
}

/// "Mill, 6 supers: 9 h 20 min gone, 14 h 40 min to the goal".
pub fn lot(stack: &str, big: &str) -> String {
    [stack, ": ", big].concat()
}

/// Why bait comes out.
pub const BAIT_WHY: &str = "After 7 days, or as many as your aims say, and no later than two days before the earliest larvae of eggs laid on the first day could leave a brood nest of 34–35 °C: that is 5 days. Seven days are common practice, without a source: the quickest larvae need little more. Bait that is left longer can breed what it is to catch.";
