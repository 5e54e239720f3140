//! The list of kinds.

use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::heading;
use crate::app::ledger::words::isolated;
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::why;
use crate::app::place::{Place, Section};
use crate::app::records::Records;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_kinds as w;
use crate::book::entry::What;
use crate::book::id::ThingId;
use crate::book::standing::KindNow;

/// Every kind, the ones in use first.
pub fn view(ui: Ui, records: Records) -> Bit {
    let list = live(move || {
        records.book.with(|book| {
            let kinds = &book.standing().kinds;
            let mut items: Vec<Bit> = Vec::new();
            for rank in 0..3 {
                for (id, now) in kinds {
                    if rank_of(id, now) == rank {
                        items.push(item(ui, records, id, now).into());
                    }
                }
            }
            if items.is_empty() { Bit::One(el("p").text(w::NONE)) } else { Bit::Many(items) }
        })
    });
    let add = el("a")
        .class("key key-primary")
        .test_id("kind-new")
        .attr("href", &Place::Kind("new".to_owned()).hash());
    Bit::Many(vec![
        el("p").class("back").kid(link(en::section(Section::Book), &Place::Book)).into(),
        heading(w::TITLE).into(),
        el("p").class("small").text(w::WHAT).into(),
        el("p").class("keys").kid(add.text(w::ADD)).into(),
        list,
    ])
}

/// The keeper's own kinds first, then those of the demonstration, then those no longer offered.
fn rank_of(id: &ThingId, now: &KindNow) -> u8 {
    if now.retired { 2 } else { u8::from(id.is_demo()) }
}

fn item(ui: Ui, records: Records, id: &ThingId, now: &KindNow) -> El {
    let kind = &now.kind;
    let mut said = vec![w::built(kind.form).to_owned()];
    if kind.form.takes_oil() {
        let holds =
            kind.capacity.map_or_else(|| w::NOT_MEASURED.to_owned(), |holds| ui.volume(holds.volume()));
        said.push(w::holds(&holds, &locale::percent(kind.fill.fraction(), 1)));
    }
    said.push(w::at_most(&en::days(u32::from(kind.max_days))));
    if !kind.packs.is_empty() {
        let sizes: Vec<String> = kind.packs.iter().map(|pack| pack.pieces.to_string()).collect();
        said.push(w::packs(&sizes.join(", ")));
    }
    let keys = if id.is_demo() {
        Bit::One(el("p").class("small").text(w::DEMO))
    } else {
        let retired = now.retired;
        let of = id.clone();
        let name = isolated(&kind.name);
        let retire = move || {
            let written = records.book.with_untracked(|book| {
                let today = ui.today.get_untracked().max(super::first_day(book, &of));
                book.about_keeper(&records.pen(), today, What::KindRetired { kind: of.clone() })
            });
            // What stopped it is shown by the frame.
            let _ = records.put(written, w::retired_act(&name));
        };
        let retire = (!retired).then(|| Key::new(w::RETIRE, retire).quiet().mark("kind-retire").view());
        Bit::Many(vec![
            el("p").class("keys").kid(link(w::CHANGE, &Place::Kind(id.to_string()))).kid(retire).into(),
            (!retired).then(|| why(w::RETIRE_HOW)).into(),
        ])
    };
    el("section")
        .class("card")
        .kid(el("h2").text(&isolated(&kind.name)))
        .kid(now.retired.then(|| el("p").class("mark").text(w::RETIRED)))
        .kid(el("p").text(&said.join(", ")))
        .kid(keys)
}
