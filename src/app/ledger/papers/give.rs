//! The ways of a paper out of the phone: shared, saved as a file, shown as text. Each falls back to the next.

use crate::app::edge::files;
use crate::app::edge::share::{self, Shared};
use crate::app::el::{Bit, el, live};
use crate::app::graph::RwSignal;
use crate::app::ledger::save::copyable;
use crate::app::parts::key::Key;
use crate::app::wording::en_book::backup;
use crate::app::wording::en_papers as w;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;

/// A paper on its way out.
pub(in crate::app::ledger) struct Paper {
    /// Name of the file.
    pub(in crate::app::ledger) name: String,
    /// What stands in the file.
    pub(in crate::app::ledger) text: String,
    /// What is shown to be copied, where that is not the file itself.
    pub(in crate::app::ledger) plain: Option<String>,
    /// Called once it is out.
    pub(in crate::app::ledger) out: Box<dyn FnOnce()>,
}

/// One kind of paper.
#[derive(Clone, Copy)]
pub(in crate::app::ledger) struct Kind {
    /// Ending of its files.
    pub(in crate::app::ledger) ending: &'static str,
    /// Media type of its files.
    pub(in crate::app::ledger) media: &'static str,
    /// Marks of its keys, by which journeys find them: share, save, show.
    pub(in crate::app::ledger) marks: [&'static str; 3],
}

/// A calendar.
pub(in crate::app::ledger) const CALENDAR: Kind = Kind {
    ending: ".ics",
    media: "text/calendar",
    marks: ["calendar-share", "calendar-save", "calendar-show"],
};
/// A table.
pub(in crate::app::ledger) const TABLE: Kind =
    Kind { ending: ".csv", media: "text/csv", marks: ["table-share", "table-save", "table-show"] };
/// A sheet.
pub(in crate::app::ledger) const SHEET: Kind =
    Kind { ending: ".html", media: "text/html", marks: ["sheet-share", "sheet-save", "sheet-show"] };

/// The keys, what they say, and the text when it is asked for. `make` makes the paper, or says why there is none.
pub(in crate::app::ledger) fn keys(
    kind: Kind,
    make: impl Fn() -> Result<Paper, &'static str> + 'static,
) -> Bit {
    keys_for(kind, Rc::new(make))
}

fn keys_for(kind: Kind, make: Rc<dyn Fn() -> Result<Paper, &'static str>>) -> Bit {
    let said = RwSignal::new(String::new());
    let shown = RwSignal::new(None::<String>);
    let give = Give { kind, said, shown };
    let run = move |way: fn(Give, Paper)| {
        let make = make.clone();
        move || match make() {
            Ok(paper) => way(give, paper),
            Err(why) => said.set(why.to_owned()),
        }
    };
    let [share_mark, save_mark, show_mark] = kind.marks;
    let can = share::can(&["x", kind.ending].concat(), kind.media);
    let share = can.then(|| Key::new(w::SHARE, run(Give::share)).mark(share_mark).view());
    let keys = el("p")
        .class("keys")
        .kid(share)
        .kid(Key::new(w::SAVE, run(Give::save)).mark(save_mark).view())
        .kid(Key::new(w::SHOW, run(Give::show)).quiet().mark(show_mark).view());
    Bit::Many(vec![
        keys.into(),
        el("p").attr("role", "status").live_text(move || said.get()).into(),
        live(move || shown.get().map(|text| copyable(show_mark, w::TEXT, &text))),
    ])
}

#[derive(Clone, Copy)]
struct Give {
    kind: Kind,
    said: RwSignal<String>,
    shown: RwSignal<Option<String>>,
}

impl Give {
    fn share(self, paper: Paper) {
        let Some(shared) = share::share(&paper.name, self.kind.media, &paper.text) else {
            self.save(paper);
            return;
        };
        spawn_local(async move {
            match share::outcome(shared).await {
                Shared::Done => {
                    self.said.set(w::SHARED.to_owned());
                    (paper.out)();
                }
                Shared::Left => self.said.set(w::NOT_SHARED.to_owned()),
                Shared::Refused => self.save(paper),
            }
        });
    }

    fn save(self, paper: Paper) {
        if files::save(&paper.name, self.kind.media, &paper.text) {
            self.said.set(backup::saved(&paper.name));
            (paper.out)();
        } else {
            self.show(paper);
        }
    }

    fn show(self, paper: Paper) {
        self.shown.set(Some(paper.plain.unwrap_or(paper.text)));
        (paper.out)();
    }
}
