//! Small texts that make the page feel as it was left: how it looks, what stands in the fields. Losing one costs a
//! few key presses; records never pass through here.

use super::window;

/// How the page is set.
pub const PREFS: &str = "beetle-almanac/prefs";
/// What stands in the fields of the Bench.
pub const BENCH: &str = "beetle-almanac/bench";

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
