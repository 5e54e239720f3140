//! English: what is in store, as an estimate with its sum.

use super::en::{counted, date, whole};
use crate::app::load::store::InStore;
use crate::book::store_room::Held;

/// Why that number.
pub const STORE_WHY: &str = "In store, an estimate: what you wrote down under Stock as bought, by the name of the kind, less what was put into hives on a later day; and traps used again that you took out of hives “to stock”. What you wrote down as used up, or as taken on a trip, is what went into hives: nothing is taken off twice. Type what is really there. “At most” is as if every trap were thrown away on every walk.";
/// "Estimate of the store: 40 written down since Tue 3 Nov 2026 − 12 put into hives since + 2 taken out of hives = 30";
/// nothing where the records alone tell what is there.
pub fn traps_since(store: &InStore) -> Option<String> {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    // a float cast stops at the ends of u32
    let pieces = |number: f64| whole(number as u32);
    let out = if store.out > 0 {
        [" + ", &whole(store.out), " taken out of hives"].concat()
    } else {
        String::new()
    };
    since(&store.held, &pieces, " put into hives since", &out, &whole(store.traps()))
}

/// "Estimate of the store: 5 L written down since Tue 3 Nov 2026 − 230 mL used on trips since = 4.77 L".
pub fn oil_since(held: &Held, volume: &dyn Fn(f64) -> String) -> Option<String> {
    let mut said = since(held, volume, " used on trips since", "", &volume(held.good));
    if held.unknown > 0 {
        let trips = counted(held.unknown, "trip", "trips");
        let left_out = [
            "Not taken off the oil in store: ",
            &trips,
            ", of which only the oil taken or the oil brought home is written down",
        ];
        let mut lines = said.map(|said| [&said, ". "].concat()).unwrap_or_default();
        lines.push_str(&left_out.concat());
        said = Some(lines);
    }
    said
}

fn since(held: &Held, amount: &dyn Fn(f64) -> String, went: &str, out: &str, left: &str) -> Option<String> {
    let since = held.since.filter(|_| held.gone + held.beyond > 0.0)?;
    let mut said =
        ["Estimate of the store: ", &amount(held.written), " written down since ", &date(since)].concat();
    said.push_str(&[" − ", &amount(held.gone), went].concat());
    if held.past > 0.0 {
        said.push_str(&[" − ", &amount(held.past), " past their day"].concat());
    }
    said.push_str(&[out, " =\u{a0}", left].concat());
    if held.beyond > 0.0 {
        let more = [
            ". The book shows ",
            &amount(held.beyond),
            " more",
            went,
            " than was there: count what is in store",
        ];
        said.push_str(&more.concat());
    }
    Some(said)
}
