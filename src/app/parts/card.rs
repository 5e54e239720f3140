//! A stretch of page under a heading that opens and shuts.

use leptos::prelude::*;

/// A card. Its body is built when it is first needed and only while it is open.
pub struct Card {
    /// Id of the heading key, for jumps; unique on the page.
    pub id: String,
    /// The heading.
    pub title: String,
    /// One line under the heading: the question it answers.
    pub asks: String,
    /// Whether it is open.
    pub open: Signal<bool>,
    /// Called when the heading is pressed.
    pub toggle: Callback<()>,
}

impl Card {
    /// The card around `body`.
    pub fn view(self, body: impl Fn() -> AnyView + Send + 'static) -> AnyView {
        let Card { id, title, asks, open, toggle } = self;
        let body_id = [&id, "-body"].concat();
        let expanded = move || if open.get() { "true" } else { "false" };
        view! {
            <section class="card">
                <h2 class="card-title">
                    <button
                        type="button"
                        id=id
                        aria-expanded=expanded
                        aria-controls=body_id.clone()
                        on:click=move |_| toggle.run(())
                    >
                        <span>{title}</span>
                        <span class="card-mark" aria-hidden="true">
                            {move || if open.get() { "−" } else { "+" }}
                        </span>
                    </button>
                </h2>
                <p class="card-asks">{asks}</p>
                <div id=body_id class="card-body">{move || open.get().then(&body)}</div>
            </section>
        }
        .into_any()
    }
}

/// Fields that most people leave alone, shut at first: "Change the rest".
pub fn more(summary: impl Into<String>, body: AnyView) -> AnyView {
    view! {
        <details class="more">
            <summary>{summary.into()}</summary>
            <div class="more-body">{body}</div>
        </details>
    }
    .into_any()
}
