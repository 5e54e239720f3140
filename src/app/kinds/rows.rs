//! Rows of two fields: packs, and measured points.

use crate::app::parts::field::Field;
use crate::app::parts::key::Key;
use leptos::prelude::*;

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
        row: impl Fn(usize, RwSignal<String>, RwSignal<String>) -> (Field, Field) + Send + Sync + 'static,
    ) -> AnyView {
        let list = move || {
            self.rows
                .get()
                .into_iter()
                .enumerate()
                .map(|(place, (a, b))| {
                    let (first, second) = row(place, a, b);
                    view! { <div class="pair">{first.view()} {second.view()}</div> }.into_any()
                })
                .collect::<Vec<AnyView>>()
        };
        let add = move || {
            let fits = self.rows.with(|rows| rows.len() < self.most);
            fits.then(|| {
                view! { <p class="keys">{Key::new(more, move || self.rows.update(|rows| rows.push(empty()))).view()}</p> }
            })
        };
        view! { <div class="pairs">{list}</div> {add} }.into_any()
    }
}

fn empty() -> (RwSignal<String>, RwSignal<String>) {
    (RwSignal::new(String::new()), RwSignal::new(String::new()))
}
