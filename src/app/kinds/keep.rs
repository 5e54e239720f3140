//! The end of the form of a kind: the due dates that a correction moves, and the key that keeps it.

use super::draft::KindDraft;
use crate::almanac::trap::TrapKind;
use crate::app::edge::letters::BrowserLetters;
use crate::app::edge::pause::when_rested;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, RwSignal, StoredValue};
use crate::app::ledger::shifts;
use crate::app::ledger::words::isolated;
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::place::Place;
use crate::app::records::{Records, Stop};
use crate::app::state::Ui;
use crate::app::wording::en_book::history;
use crate::app::wording::en_kinds as w;
use crate::book::entry::{Entry, What};
use crate::book::id::ThingId;
use crate::book::shift::Shift;
use crate::book::write::Refusal;

/// What the form is about.
#[derive(Clone)]
pub(super) struct Which {
    /// The kind; none of a new one.
    pub(super) of: Option<ThingId>,
    /// The line that is corrected.
    pub(super) line: Option<Entry>,
}

/// The due dates that the correction of `line` would move.
fn moves(records: Records, line: Entry, draft: Memo<KindDraft>) -> El {
    let shifts: RwSignal<Option<Vec<Shift>>> = RwSignal::new(None);
    let today = records.today_of(&line);
    let line = StoredValue::new(line);
    let look = move || {
        let kind = draft.with_untracked(|draft| draft.read(&BrowserLetters));
        let found = kind.and_then(|kind| {
            let made = line.with_value(|line| mended(records, line, kind)).ok()?;
            Some(records.book.with_untracked(|book| book.shifts(&made, today)))
        });
        shifts.renew(found);
    };
    when_rested(
        move || {
            draft.with(|_| ());
            records.book.track();
        },
        look,
    );
    shifts::view(records.book, today, history::THIS, shifts)
}

/// The correction.
fn mended(records: Records, line: &Entry, kind: TrapKind) -> Result<Vec<Entry>, Refusal> {
    let what = match &line.what {
        What::KindChanged { kind: of, .. } => What::KindChanged { kind: of.clone(), now: kind },
        _ => What::Kind(kind),
    };
    let (pen, today) = (records.pen(), records.today_of(line));
    records.book.with_untracked(|book| book.correct(&pen, line.day, today, &line.id, what, &BrowserLetters))
}

/// The end of the form.
pub(super) fn view(
    ui: Ui,
    records: Records,
    which: Which,
    draft: Memo<KindDraft>,
    tried: RwSignal<bool>,
) -> El {
    let Which { of, line } = which;
    let moves = line.clone().map(|line| moves(records, line, draft));
    let done = StoredValue::new(if line.is_some() { Place::History(None) } else { Place::Kinds });
    let ready = Memo::new(move || draft.with(|draft| draft.read(&BrowserLetters).is_some()));
    let failed = RwSignal::new(false);
    let press = move || {
        tried.set(true);
        let Some(kind) = draft.with_untracked(|draft| draft.read(&BrowserLetters)) else { return };
        let act = w::act(&isolated(&kind.name));
        let changed = |kind| {
            records.book.with_untracked(|book| {
                let today = ui.today.get_untracked();
                let (day, what) = match &of {
                    Some(of) => {
                        let day = today.max(super::first_day(book, of));
                        (day, What::KindChanged { kind: of.clone(), now: kind })
                    }
                    None => (today, What::Kind(kind)),
                };
                book.about_keeper(&records.pen(), day, what)
            })
        };
        let written = match &line {
            Some(line) => mended(records, line, kind),
            None => changed(kind),
        };
        let as_it_was = line.is_some() && written == Err(Refusal::Nothing);
        match records.put(written, act) {
            Err(_) if as_it_was => ui.go(&done.get_value()),
            Ok(_) => {
                ui.kind_draft.set_value(None);
                ui.go(&done.get_value());
            }
            Err(stop) => {
                failed.set(true);
                if stop == Stop::NotSaved {
                    let (typed, place) = (ui.kind_draft.get_value(), ui.place.get_untracked());
                    records.once_kept(Box::new(move || {
                        failed.set(false);
                        // What was typed since then stays.
                        if ui.kind_draft.get_value() == typed {
                            ui.kind_draft.set_value(None);
                            if ui.place.get_untracked() == place {
                                ui.go(&done.get_value());
                            }
                        }
                    }));
                }
            }
        }
    };
    let state = live(move || {
        if failed.get() {
            Bit::One(Notice::alarm(w::NOT_KEPT).view())
        } else {
            (tried.get() && !ready.get()).then(|| el("p").text(w::MEND)).into()
        }
    });
    el("div")
        .kid(moves)
        .kid(el("p").class("keys").kid(Key::new(w::SAVE, press).big_primary().mark("kind-save").view()))
        .kid(el("div").attr("role", "status").kid(state))
}
