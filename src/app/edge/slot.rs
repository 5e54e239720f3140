//! Small texts that make the page feel as it was left: how it looks, what stands in the fields. Losing one costs a
//! few key presses; records never pass through here.

use super::window;
use web_sys::Storage;

/// How the page is set.
pub const PREFS: &str = "beetle-almanac/prefs";
/// What stands in the fields of the Bench.
pub const BENCH: &str = "beetle-almanac/bench";
/// What was ticked off for a trip. Not of a tab: it outlives the night in which the phone shuts the page.
pub const TRIP: &str = "beetle-almanac/trip";
/// What is typed on the Load. Not of a tab, for the same reason.
pub const LOAD: &str = "beetle-almanac/load";

/// This tab's entry in the making.
pub const DRAFT: &str = "beetle-almanac/draft";
/// What stood in the fields of the hives whose entries this tab could not keep.
pub const HELD: &str = "beetle-almanac/held";
/// What stands in the form of a record, with the address of the form behind it.
pub const WRITE: &str = "beetle-almanac/write";
/// What this tab could not keep.
pub const UNSAVED: &str = "beetle-almanac/unsaved";
/// The same, where it cannot be read.
pub const UNREAD: &str = "beetle-almanac/unread";

/// The text kept under `name`; none when nothing is kept or the browser allows no storage.
pub fn read(name: &str) -> Option<String> {
    window()?.local_storage().ok()??.get_item(name).ok()?
}

/// Keeps `text` under `name`. A full or forbidden storage is passed over: what was typed is still on the screen.
pub fn write(name: &str, text: &str) {
    if let Some(Ok(Some(storage))) = window().map(|window| window.local_storage()) {
        let _ = storage.set_item(name, text);
    }
}

/// Lets go of what is kept under `name`.
pub fn forget(name: &str) {
    if let Some(Ok(Some(storage))) = window().map(|window| window.local_storage()) {
        let _ = storage.remove_item(name);
    }
}

/// What this tab alone keeps: it outlives a reload and goes with the tab, so nothing piles up. It has room of its own
/// where the page's storage is full.
fn own() -> Option<Storage> {
    window()?.session_storage().ok()?
}

/// The text this tab keeps under `name`.
pub fn read_own(name: &str) -> Option<String> {
    own()?.get_item(name).ok()?
}

/// Keeps `text` under `name` for this tab.
pub fn write_own(name: &str, text: &str) {
    if let Some(own) = own() {
        let _ = own.set_item(name, text);
    }
}
