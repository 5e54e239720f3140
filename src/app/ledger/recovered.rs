//! A damaged backup: what can still be read in it, as a file of its own or into the book, after a look and a warning.

use super::restore::{list, yards};
use super::save::copyable;
use crate::app::edge::{clock, files};
use crate::app::el::{El, el, live};
use crate::app::graph::RwSignal;
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::records::Records;
use crate::app::wording::en_book::{backup, restore as w};
use crate::app::wording::en_hand_over::take::fuller;
use crate::app::wording::en_notices::why;
use crate::book::log::Union;
use crate::papers::backup::Counts;
use crate::papers::recover::{Recovered, recover};

/// What can be read of a file that did not open.
pub(super) fn of(text: &str) -> Option<Recovered> {
    recover(text, clock::stamp())
}

/// What `rest` holds, and the ways on. `result` says what came of taking it in.
pub(super) fn view(
    records: Records,
    rest: &Recovered,
    spoiled: RwSignal<Option<Recovered>>,
    result: RwSignal<String>,
) -> Option<El> {
    let copy = &rest.copy;
    let union = records.book.with_untracked(|book| copy.preview(book));
    let (alone, struck) = copy.alone();
    let standing = alone.standing();
    let holds = Counts { yards: standing.yards.len(), hives: standing.hives.len(), ..copy.counts };
    let mut days = (copy.entries.first()?.day, copy.entries.first()?.day);
    for entry in &copy.entries {
        days = (days.0.min(entry.day), days.1.max(entry.day));
    }
    let about = [
        w::recovered(holds.entries, rest.unread, rest.held),
        w::holds(holds, struck),
        w::days(days.0, days.1),
        yards(standing),
    ];
    let shown = RwSignal::new(false);
    let as_file = move || {
        let name = [w::RECOVERED_NAME, &clock::stamp().day().to_string(), ".json"].concat();
        let text =
            spoiled.with_untracked(|rest| rest.as_ref().map(|rest| rest.text.clone())).unwrap_or_default();
        if files::save(&name, "application/json", &text) {
            result.set(backup::saved(&name));
        } else {
            shown.set(true);
        }
    };
    let text = live(move || {
        let text = move || {
            spoiled
                .with_untracked(|rest| Some(copyable("recovered-text", backup::TEXT, &rest.as_ref()?.text)))
        };
        if shown.get() { text() } else { None }
    });
    let take = move || {
        let Some(rest) = spoiled.get_untracked() else { return };
        spoiled.set(None);
        result.set(match records.restore(rest.copy) {
            Ok(union) => w::done(&comes_to(&union)),
            Err(partly) => w::partly(partly.kept, partly.of, why(&partly.why)),
        });
    };
    let new = union.new + union.fuller;
    let take = (new > 0).then(|| Key::new(w::confirm(new), take).alarm().mark("recovered-take").view());
    let keys = el("p")
        .class("keys")
        .kid(Key::new(w::RECOVERED_FILE, as_file).primary().mark("recovered-file").view())
        .kid(take)
        .kid(Key::new(w::LEAVE, move || spoiled.set(None)).view());
    let preview = el("div")
        .class("preview")
        .test_id("recovered")
        .kid(el("h3").text(w::RECOVERED))
        .kid(Notice::caution(w::RECOVERED_HOW).view())
        .kid(list(&about))
        .kid(el("p").class("lead").text(&comes_to(&union)));
    Some(preview.kid((!union.clashes.is_empty()).then(|| el("p").text(w::CLASH_HOW))).kid(keys).kid(text))
}

/// Every entry of it is in one of the counts.
fn comes_to(union: &Union) -> String {
    let mut said = w::union(union.new, union.same, union.clashes.len());
    if union.fuller > 0 {
        said.push_str(", ");
        said.push_str(&fuller(union.fuller));
    }
    said
}
