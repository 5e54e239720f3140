//! What the Round puts above the bar at the thumb.

use super::state::Walk;
use super::{dock, undo};
use crate::app::edge;
use crate::app::el::{Bit, live};
use crate::app::graph::{Memo, RwSignal, effect, untrack};
use crate::app::place::{Place, Section};
use crate::app::state::Ui;

/// The panel is open and in sight.
fn walking(ui: Ui, walk: Walk) -> Memo<bool> {
    // The form of a record needs the screen: the panel waits, with what is half made in it.
    let at = |place: &Place| place.section() == Section::Round && !matches!(place, Place::Write(..));
    Memo::new(move || ui.place.with(at) && walk.open.with(Option::is_some))
}

/// Class of the foot: while a hive is logged its keys come first, and where it is scrolled its name stays in sight.
pub fn foot_class(ui: Ui, walk: Walk) -> impl Fn() -> &'static str + 'static {
    let walking = walking(ui, walk);
    move || match (walking.get(), walk.more.get()) {
        (true, true) => "foot foot-walk foot-long",
        (true, false) => "foot foot-walk",
        _ => "foot",
    }
}

/// Undo bar and panel. The panel is made once, as soon as the keeper has come to the Round and the list is drawn, and
/// is hidden from then on: to make it anew would be the longest part of opening a hive.
pub fn in_foot(ui: Ui, walk: Walk) -> Bit {
    let walking = walking(ui, walk);
    let made = RwSignal::new(false);
    effect(move || {
        if walking.get() {
            made.renew(true);
        } else if ui.place.with(Place::section) == Section::Round {
            edge::after_paint(move || made.renew(true));
        }
    });
    bits![undo::view(ui, walk), live(move || made.get().then(|| untrack(|| dock::view(walk, walking)))),]
}
