//! Something on top of the page until it is closed.

use crate::app::wording::en;
use leptos::{html, prelude::*};

/// A sheet with a heading and a close key. The browser's own dialog keeps the focus inside, closes on the back or
/// escape key and gives the focus back.
pub fn sheet(
    open: RwSignal<bool>,
    title: impl Into<String>,
    body: impl Fn() -> AnyView + Send + 'static,
) -> AnyView {
    let dialog = NodeRef::<html::Dialog>::new();
    let title = title.into();
    let label = title.clone();
    Effect::new(move || {
        let Some(dialog) = dialog.get() else { return };
        match (open.get(), dialog.open()) {
            (true, false) => {
                let _ = dialog.show_modal();
            }
            (false, true) => dialog.close(),
            _ => {}
        }
    });
    view! {
        <dialog class="sheet" node_ref=dialog aria-label=label on:close=move |_| open.set(false)>
            <div class="sheet-head">
                <h2>{title}</h2>
                <button type="button" class="key" on:click=move |_| open.set(false)>{en::CLOSE}</button>
            </div>
            <div class="sheet-body">{move || open.get().then(&body)}</div>
        </dialog>
    }
    .into_any()
}
