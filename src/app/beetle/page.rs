//! The first page of the Beetle, and the ways to its clocks.

use crate::app::el::{Bit, El, el, live};
use crate::app::frame::heading;
use crate::app::graph::{Memo, untrack};
use crate::app::parts::key::link;
use crate::app::place::{Clock, Place, Section};
use crate::app::state::Ui;
use crate::app::wording::{en, en_beetle as w};

/// The section of the Beetle: whichever of its clocks the address names.
pub fn page(ui: Ui) -> El {
    let place = Memo::new(move || ui.place.get());
    let shown = live(move || {
        let place = place.get();
        untrack(|| match place {
            Place::Beetle(Some(clock)) => of(clock),
            _ => first(),
        })
    });
    el("div").class("ledger").kid(shown)
}

fn first() -> Bit {
    let ways = Clock::ALL.map(|clock| el("li").kid(link(w::clock(clock), &Place::Beetle(Some(clock)))));
    Bit::Many(vec![
        heading(en::section(Section::Beetle)).into(),
        el("nav").attr("aria-label", w::INDEX).kid(el("ul").class("ways").kids(ways)).into(),
    ])
}

fn of(clock: Clock) -> Bit {
    Bit::Many(vec![
        el("p").class("back").kid(link(en::section(Section::Beetle), &Place::Beetle(None))).into(),
        heading(w::clock(clock)).into(),
    ])
}
