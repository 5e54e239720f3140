//! Small marks for the bottom bar, drawn for this page.

use crate::app::place::Section;
use leptos::prelude::*;

/// The mark of a section: a walk past hives, a crate, a rule with a weight on it, an open book.
pub fn section(section: Section) -> AnyView {
    let path = match section {
        Section::Round => "M3 19h18M5 19v-6h4v6M15 19V9h4v10M3 8c4-6 8 2 12-3M13 4l2.5.8-.8 2.5",
        Section::Load => "M3 9h18v10H3zM3 14h18M8 9V5h8v4",
        Section::Bench => "M2 17h20M5 17v4M19 17v4M8 17v-5h8v5M12 12V6M9 6h6",
        Section::Book => "M12 6C9 4 6 4 3 5v14c3-1 6-1 9 1 3-2 6-2 9-1V5c-3-1-6-1-9 1zM12 6v14",
    };
    view! {
        <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
            <path d=path />
        </svg>
    }
    .into_any()
}
