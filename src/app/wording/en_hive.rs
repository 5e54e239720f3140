//! English: the page of a hive, and the keys of a yard.

use super::en::{counted, date, days, drawing, put, relative};
use super::en_round::{ending, hive, near, near_and_how_far, own};
use crate::almanac::day::Day;
use crate::almanac::fit::Side;
use crate::almanac::stack::{BoxDepth, Spot};
use crate::book::entry::{Ending, TrapsWent};

/// Key that opens the panel.
pub const LOG: &str = "Log trap work";
/// Heading over the drawing.
pub const BOXES: &str = "Boxes and traps";
/// Heading over the forms.
pub const CHANGE: &str = "Change this hive";
/// Heading over the lines.
pub const HISTORY: &str = "What happened";
/// Field: day of a change.
pub const DAY: &str = "Day it happened";
/// Under it.
pub const DAY_HINT: &str = "Left blank: today. Goes for the next change below.";
/// No box.
pub const NO_BOXES: &str =
    "No box is on this hive. Put one on below, or write the hive down as dead, sold, joined or gone.";
/// The drawing from the side.
pub const SIDE: &str = "Left side, entrance at the arrow. Dashed: far side.";
/// Fold: a box.
pub const ADD_BOX: &str = "Put a box on";
/// Choice: depth.
pub const DEPTH: &str = "Depth";
/// Another depth.
pub const OWN_DEPTH: &str = "Other";
/// Field: that depth.
pub const OWN_DEPTH_IS: &str = "Depth of the box";
/// Stepper: traps.
pub const TRAPS_IN_IT: &str = "Traps in it";
/// Choice: filled at once.
pub const FILLED: &str = "Are they in?";
/// Yes.
pub const FILLED_NOW: &str = "In and filled";
/// No.
pub const FILLED_LATER: &str = "Not yet";
/// Stepper: height.
pub const ABOVE: &str = "Boxes below it";
/// Choice: kind.
pub const KIND: &str = "Kind of trap";
/// No kind is offered.
pub const NO_KIND: &str = "No kind of trap is offered. Describe one in the Book first.";
/// Key: put the box on.
pub const ADD_BOX_KEY: &str = "Put it on";
/// Fold: a box off.
pub const BOX_OFF: &str = "Take this box off";
/// Choice: what became of its traps.
pub const TRAPS_WENT: &str = "Its traps";
/// Its traps are left where they are.
pub const TRAPS_STAY: &str = "Still in it";
/// The last box.
pub const LAST_BOX: &str =
    "This is the last box. Is the hive closed? Then write it down as dead, sold, joined or gone instead.";
/// Stepper: traps meant for a box.
pub const WANTS: &str = "Traps this box should have";
/// Key: keep that number.
pub const WANTS_KEY: &str = "Keep this number";
/// Caution while placing.
pub const SLOWLY: &str = "Lower slowly: queen may be on these frames.";
/// More than four traps.
pub const MANY_TRAPS: &str = "More than 4 traps in a box. Right?";
/// Fold: tag.
pub const TAG: &str = "Change the tag";
/// Field: tag.
pub const TAG_IS: &str = "Tag";
/// Key: keep it.
pub const TAG_KEY: &str = "Keep this tag";
/// Fold: note.
pub const NOTE: &str = "Write a note";
/// Key: keep it.
pub const NOTE_KEY: &str = "Keep this note";
/// A note was written.
pub const NOTED: &str = "Note kept";
/// Fold: move.
pub const MOVE: &str = "Move to another yard";
/// Select: where to.
pub const MOVE_TO: &str = "To";
/// Nothing chosen.
pub const CHOOSE: &str = "Choose";
/// No other yard.
pub const NO_OTHER_YARD: &str = "There is no other yard in the book to move it to. Add one first.";
/// Field: permit.
pub const PERMIT: &str = "Permit or certificate number";
/// It may stay empty.
pub const MAY_BE_EMPTY: &str = "May stay empty.";
/// Caution.
pub const MOVE_CAUTION: &str = "Traps out or half full, level. Permit?";
/// Key: move.
pub const MOVE_KEY: &str = "Write the move down";
/// Fold: written down twice.
pub const SAME: &str = "Written down twice? It is the same hive as…";
/// What saying so does.
pub const SAME_HOW: &str = "Two phones may each have written down one hive before they met. Work, looks and notes of both then stand under one; boxes and traps are those of the hive that came into the book earlier. Undo makes them two again.";
/// Select: the other one.
pub const SAME_AS: &str = "The other hive";
/// Nothing chosen.
pub const SAME_CHOOSE: &str = "Choose";
/// No other hive in the yard.
pub const SAME_NONE: &str = "No other hive stands in this yard. If the other one is in a second yard of the same name, give one of the two another tag and move it here first.";
/// Key.
pub const SAME_KEY: &str = "They are one hive";
/// What was written, for the undo bar.
pub const SAME_SAID: &str = "Two hives are one";
/// Another hive of the yard bears the same tag.
pub const TWIN: &str = "Another hive of this yard bears the same tag. If it is one hive, say so below under “Written down twice?”; if they are two, give one of them another tag.";

/// A hive in a chooser, with its first day: tags may be the same.
pub fn since(tag: &str, since: Day) -> String {
    [&hive(tag), ", in the book since ", &date(since)].concat()
}

/// Fold: the end.
pub const END: &str = "Dead, sold, joined or gone";
/// Choice: how.
pub const END_HOW: &str = "What became of it?";
/// Select: joined into.
pub const JOINED_INTO: &str = "Joined into";
/// Nobody wrote it down.
pub const JOINED_NOWHERE: &str = "Not written down";
/// Caution over a dead-out.
pub const DEAD_CAUTION: &str =
    "Close it now: robbing carries everything. Brood scale or ropy cells? Stop. Call the inspector.";
/// Key: write the end down.
pub const END_KEY: &str = "Write it down";
/// Fold: walking order.
pub const ORDER: &str = "Walking order";
/// Key: earlier.
pub const EARLIER: &str = "Earlier";
/// Key: later.
pub const LATER: &str = "Later";
/// Key: by tag.
pub const BY_TAG: &str = "Put in order by tag";
/// The order was changed.
pub const ORDERED: &str = "Walking order changed";
/// Select: the hive to be moved in the order.
pub const PUT: &str = "Put this hive";
/// Select: the hive it is put behind.
pub const AFTER: &str = "after";
/// Fold around it on the page of a hive.
pub const PUT_AFTER: &str = "Put it after another hive";
/// First in the order.
pub const AT_THE_GATE: &str = "Nothing: it comes first";
/// Key: there.
pub const PUT_KEY: &str = "Put it there";
/// Key to the sheet.
pub const PRINT: &str = "Print: truck sheet";
/// Heading over the keys of a yard.
pub const YARD: &str = "This yard";
/// Fold: more hives.
pub const ADD_HIVES: &str = "Add hives";
/// Field: tags.
pub const TAGS: &str = "Tags";
/// Under it.
pub const TAGS_HINT: &str = "Such as 25–\u{2060}30, or A1, A2, B7.";
/// Choice: size.
pub const SIZE: &str = "Size";
/// Full hive.
pub const FULL: &str = "Full hive";
/// Nuc.
pub const NUC: &str = "Nuc";
/// Stepper: boxes.
pub const BOX_COUNT: &str = "Boxes with traps";
/// Stepper: traps a box.
pub const A_BOX: &str = "Traps a box";
/// Key: add them.
pub const ADD_HIVES_KEY: &str = "Add these hives";
/// Fold: name.
pub const RENAME: &str = "Change the name";
/// Field: name.
pub const NAME: &str = "Name of the yard";
/// Key: keep it.
pub const RENAME_KEY: &str = "Keep this name";
/// The name was changed.
pub const RENAMED: &str = "Yard renamed";
/// Fold: season.
pub const SEASON: &str = "Pause or start trap work";
/// What a pause does.
pub const PAUSE_HOW: &str = "While trap work is paused, nothing is due here. Levels and days are kept.";
/// Key: pause.
pub const PAUSE: &str = "Pause trap work";
/// What starting does.
pub const RESUME_HOW: &str = "Due days count from the last visit to each trap: most will be due at once.";
/// Key: start.
pub const RESUME: &str = "Start trap work again";
/// It is paused.
pub const PAUSED: &str = "Trap work is paused";
/// It runs.
pub const RESUMED: &str = "Trap work has started again";
/// Fold: close.
pub const CLOSE: &str = "Give this yard up";
/// What closing does.
pub const CLOSE_HOW: &str =
    "It leaves the list and stays in the Book. Hives still in care here leave the list with it.";
/// Key: close.
pub const CLOSE_KEY: &str = "Give it up";
/// It was closed.
pub const CLOSED: &str = "Yard given up";

/// "Tue 14 July 2026, 3 days ago".
pub fn day_and_how_far(day: Day, today: Day) -> String {
    [&date(day), ", ", &relative(day.days_since(today))].concat()
}

/// "Box 1, front left".
pub fn place(number: u32, spot: Spot) -> String {
    ["Box ", &number.to_string(), ", ", &drawing::spot(spot)].concat()
}

/// "Box 2, medium".
pub fn box_title(number: usize, depth: BoxDepth) -> String {
    ["Box ", &number.to_string(), ", ", depth_word(depth)].concat()
}

/// Name of a depth.
pub fn depth_word(depth: BoxDepth) -> &'static str {
    match depth {
        BoxDepth::Deep => "deep",
        BoxDepth::Medium => "medium",
        BoxDepth::Shallow => "shallow",
        BoxDepth::Own(_) => "own depth",
    }
}

/// A hive taken back into care.
pub fn revived(tag: &str) -> String {
    [&hive(tag), " is back in care"].concat()
}

/// "Dead since Sun 12 July 2026."
pub fn ended(how: &Ending, on: Day) -> String {
    ["Written down as ", ending(how), " since ", &date(on), "."].concat()
}

/// What was written on it before.
pub fn was(tags: &[String]) -> String {
    let mut said = "Was: ".to_owned();
    for (nth, tag) in tags.iter().enumerate() {
        put(&mut said, if nth > 0 { ", " } else { "" });
        put(&mut said, &own(tag));
    }
    said
}

/// "Front left: Slim trap".
pub fn trap(spot: Spot, kind: &str) -> String {
    let mut place = drawing::spot(spot);
    if let Some(first) = place.get_mut(..1) {
        first.make_ascii_uppercase();
    }
    [&place, ": ", &own(kind)].concat()
}

/// "in since Sun 12 July, 20 days ago".
pub fn placed(day: Day, today: Day) -> String {
    ["in since ", &near_and_how_far(day, today)].concat()
}

/// "serviced Sun 12 July, 3 days ago".
pub fn serviced(day: Day, today: Day) -> String {
    ["serviced ", &near_and_how_far(day, today)].concat()
}

/// "level 50 % on Sun 12 July".
pub fn level(level: &str, day: Day, today: Day) -> String {
    ["level ", level, " on ", &near(day, today)].concat()
}

/// "Put 2 missing traps in".
pub fn place_missing(traps: u32) -> String {
    ["Put ", &counted(traps, "missing trap", "missing traps"), " in"].concat()
}

/// "Take 1 trap too many out".
pub fn take_extra(traps: u32) -> String {
    ["Take ", &counted(traps, "trap", "traps"), " too many out, to stock"].concat()
}

/// More boxes below than there are.
pub fn only_boxes(boxes: u32) -> String {
    ["Only ", &counted(boxes, "box is", "boxes are"), " on this hive."].concat()
}

/// What was done to a hive: "Hive 7: box put on".
pub fn said(tag: &str, what: &str) -> String {
    [&hive(tag), ": ", what].concat()
}

/// A box on.
pub const SAID_BOX_ON: &str = "box put on";
/// A box off.
pub const SAID_BOX_OFF: &str = "box taken off";
/// A number changed.
pub const SAID_WANTS: &str = "number of traps changed";
/// Traps in.
pub const SAID_TRAPS_ON: &str = "traps put in";
/// Traps out.
pub const SAID_TRAPS_OFF: &str = "traps taken out";
/// A new tag.
pub const SAID_TAG: &str = "new tag";
/// Moved.
pub const SAID_MOVED: &str = "moved";

/// Key of a trap's way.
pub fn went(went: TrapsWent) -> &'static str {
    match went {
        TrapsWent::Stock => "To stock",
        TrapsWent::Bin => "Into the bin",
        TrapsWent::Lost => "Lost",
    }
}

/// Key of an ending.
pub fn end_key(how: &Ending) -> &'static str {
    match how {
        Ending::Dead => "Dead",
        Ending::Sold => "Sold",
        Ending::Joined { .. } => "Joined",
        Ending::Gone => "Bees gone",
    }
}

/// The key that uses a free tag.
pub fn use_tag(tag: &str) -> String {
    ["Use ", &own(tag)].concat()
}

/// A tag that can be taken for another.
pub fn look_alike(other: &str) -> String {
    ["Looks like ", &own(other), " on another hive. Easy to mix up in the yard."].concat()
}

/// A trap too big for a box.
pub fn too_big(side: Side, trap: &str, room: &str) -> String {
    let side = match side {
        Side::Depth => "deep",
        Side::Width => "wide",
        Side::Length => "long",
    };
    ["Does not fit: this trap is ", trap, " ", side, ", the box has room for ", room, "."].concat()
}

/// "6 hives added".
pub fn hives_added(count: usize) -> String {
    [&counted(u32::try_from(count).unwrap_or(u32::MAX), "hive", "hives"), " added"].concat()
}

/// Key: earlier, for one hive of a list.
pub fn earlier(tag: &str) -> String {
    [EARLIER, ": ", &hive(tag)].concat()
}

/// Key: later, for one hive of a list.
pub fn later(tag: &str) -> String {
    [LATER, ": ", &hive(tag)].concat()
}

/// Key to the page of a kind: "Kind of trap: Slim trap".
pub fn kind_key(kind: &str) -> String {
    ["Kind of trap: ", &own(kind)].concat()
}

/// The longest time of a kind: "at most 14 days".
pub fn at_most(count: u16) -> String {
    ["at most ", &days(u32::from(count))].concat()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::stack::Corner;

    #[test]
    fn a_trap_is_named_by_its_corner() {
        let spot = Spot::Corner(Corner::FrontLeft);
        assert_eq!(trap(spot, "Slim"), "Front left: \u{2068}Slim\u{2069}");
        assert_eq!(place(2, spot), "Box 2, front left");
        assert_eq!(box_title(2, BoxDepth::Medium), "Box 2, medium");
    }
}
