//! Rows of two fields: packs, and measured points.

use crate::app::el::{Bit, each, el, live};
use crate::app::graph::{Memo, RwSignal};
use crate::app::parts::field::Field;
use crate::app::parts::key::Key;

/// Rows of two typed texts, one more on a key.
#[derive(Clone, Copy)]
pub(super) struct Rows {
    rows: RwSignal<Vec<(RwSignal<String>, RwSignal<String>)>>,
    most: usize,
}

impl Rows {
    /// The rows, and an empty one when there is none.
    pub(super) fn new(typed: Vec<(String, String)>, most: usize) -> Rows {
        let mut rows: Vec<_> = typed.into_iter().map(|(a, b)| (RwSignal::new(a), RwSignal::new(b))).collect();
        if rows.is_empty() {
            rows.push(empty());
        }
        Rows { rows: RwSignal::new(rows), most }
    }

    /// What stands in them.
    pub(super) fn typed(self) -> Vec<(String, String)> {
        self.rows.with(|rows| rows.iter().map(|(a, b)| (a.get(), b.get())).collect())
    }

    /// The rows as `row` shows them, and the key for one more.
    pub(super) fn view(
        self,
        more: &'static str,
        row: impl Fn(usize, RwSignal<String>, RwSignal<String>) -> (Field, Field) + 'static,
    ) -> Bit {
        let count = Memo::new(move || self.rows.with(Vec::len));
        // One element a row, kept while it stays, so that a new row does not take the focus from the old ones.
        let keys = move || (0..count.get()).map(|place| place.to_string()).collect();
        let list = each(keys, move |place| {
            let place: usize = place.parse().unwrap_or_default();
            let pair = el("div").class("pair");
            match self.rows.with_untracked(|rows| rows.get(place).copied()) {
                Some((a, b)) => {
                    let (first, second) = row(place, a, b);
                    pair.kid(first.view()).kid(second.view())
                }
                None => pair,
            }
        });
        let add = live(move || {
            let add = move || self.rows.update(|rows| rows.push(empty()));
            (count.get() < self.most).then(|| el("p").class("keys").kid(Key::new(more, add).view()))
        });
        Bit::Many(vec![el("div").class("pairs").kid(list).into(), add])
    }
}

fn empty() -> (RwSignal<String>, RwSignal<String>) {
    (RwSignal::new(String::new()), RwSignal::new(String::new()))
}
