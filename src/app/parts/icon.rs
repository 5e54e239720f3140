//! Small marks for the bottom bar, drawn for this page.

use crate::app::el::{El, svg};
use crate::app::place::Section;

/// The mark of a section: a hive, a crate, a beetle, a rule, an open book.
pub fn section(section: Section) -> El {
    let path = match section {
        Section::Round => "M4 5h16v3H4zM6 8v10h12V8M6 13h12M8 18v3M16 18v3M10 16h4",
        Section::Load => "M3 9h18v10H3zM3 14h18M8 9V5h8v4",
        Section::Beetle => {
            "M12 5c5 0 6 5 6 8s-2 8-6 8-6-5-6-8 1-8 6-8zM12 9v12M9 5l-2-2M15 5l2-2M6 11H2M6 16l-3 2M18 11h4M18 16l3 2"
        }
        Section::Bench => "M2 8h20v8H2zM6 8v3M10 8v4M14 8v3M18 8v4",
        Section::Book => "M12 6C9 4 6 4 3 5v14c3-1 6-1 9 1 3-2 6-2 9-1V5c-3-1-6-1-9 1zM12 6v14",
    };
    svg("svg")
        .class("icon")
        .attr("viewBox", "0 0 24 24")
        .attr("aria-hidden", "true")
        .kid(svg("path").attr("d", path))
}
