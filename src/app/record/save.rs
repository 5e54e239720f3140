//! The end of a form: what is to be mended, and the key that saves.

use super::form::Form;
use super::home;
use crate::almanac::typed::day_done;
use crate::app::edge::letters::BrowserLetters;
use crate::app::edge::{self, slot};
use crate::app::el::{Bit, el, live};
use crate::app::frame::focus;
use crate::app::graph::{Memo, StoredValue, untrack};
use crate::app::place::{Place, Section};
use crate::app::records::Stop;
use crate::app::round::form::{go, refused_line};
use crate::app::round::said;
use crate::app::state::Ui;
use crate::app::wording::en_records as w;
use crate::book::entry::What;
use crate::book::record::About;
use crate::book::write::Refusal;

/// Puts the focus on the first field that has something to mend; of radio keys and boxes to tick on their first.
fn to_mend() {
    edge::after_paint(|| {
        focus(
            ".write-form :is(input, select, textarea)[aria-invalid=true], .write-form [aria-invalid=true] input",
        );
    });
}

/// The end of a form.
pub(super) fn view(ui: Ui, form: Form, address: String) -> Bit {
    let stop = Memo::new(move || {
        form.stop.with(|stop| match stop {
            Some(Stop::Refused(Refusal::Backwards { .. } | Refusal::Lacks { .. })) => {
                Some(w::MEND.to_owned())
            }
            stop => stop.as_ref().map(said::stop),
        })
    });
    let address = StoredValue::new(address);
    let save = move |earlier: bool| {
        // What the bar said was saved is not this.
        form.records.act.set(None);
        form.tried.set(true);
        form.stop.set(None);
        let today = untrack(|| form.today());
        let day = form.day.with_untracked(|text| day_done(text, today));
        let (Ok(day), Some(record)) = (day, untrack(|| form.record())) else {
            return to_mend();
        };
        if form.blank.about() == About::Hives && record.hives.is_empty() {
            form.hives.set(Vec::new());
            return to_mend();
        }
        let yard = untrack(|| form.yard_id()).filter(|_| form.blank.about() != About::Keeper);
        let line = form.line.get_value();
        // A new line of the Book leads to what it is about; everything else back to where the keeper was.
        let back = ui.write_back.get_value();
        let back = back.filter(|from| line.is_some() || from.section() != Section::Book);
        let to = back.unwrap_or_else(|| match &line {
            Some(_) => Place::History(None),
            None => home(&record, yard.as_ref()),
        });
        let name = w::saved(w::blank(form.blank).title);
        let written = form.records.book.with_untracked(|book| {
            let pen = form.records.pen();
            match &line {
                Some(id) => book.correct(&pen, day, today, id, What::Record(record), &BrowserLetters),
                None if earlier => book.record_from_start(&pen, day, today, yard.as_ref(), &record),
                None => book.record(&pen, day, today, yard.as_ref(), record),
            }
        });
        let slot = address.with_value(|address| [slot::WRITE, address].concat());
        let here = ui.place.get_untracked();
        let done = move || {
            // Kept later, the keeper may be elsewhere by then.
            if ui.place.get_untracked() == here {
                ui.write_kept.set_value(None);
                ui.write_back.set_value(None);
                ui.go(&to);
            }
            slot::forget(&slot);
        };
        match form.records.put(written, name) {
            Ok(_) => done(),
            Err(stop) => {
                if stop == Stop::NotSaved {
                    form.records.once_kept(Box::new(done));
                }
                form.stop.set(Some(stop));
                to_mend();
            }
        }
    };
    let earlier = live(move || {
        let before = form.stop.with(|stop| matches!(stop, Some(Stop::Refused(Refusal::BeforeHive { .. }))));
        (before && !form.corrects()).then(|| go(w::EARLIER, "write-earlier", move || save(true)))
    });
    let mend = live(move || {
        let wrong = form.tried.get() && (0..form.blank.fields().len()).any(|at| form.wrong(at));
        wrong.then(|| el("p").text(w::MEND))
    });
    Bit::Many(vec![
        refused_line(stop).into(),
        el("div").attr("role", "status").kid(mend).into(),
        earlier,
        go(w::SAVE, "write-save", move || save(false)).into(),
    ])
}
