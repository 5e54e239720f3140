//! "The rest as usual": one entry for every hive that has none, after the keeper has seen the list.

use crate::app::parts::choice::Choice;
use crate::app::parts::sheet::sheet;
use crate::app::records::Stop;
use crate::app::round::state::GUARD;
use crate::app::round::{Walk, said, walk};
use crate::app::wording::en_round as w;
use crate::book::entry::Did;
use crate::book::id::ThingId;
use crate::book::round::Row;
use leptos::prelude::*;

/// The key, while hives are left, and its sheet.
pub(super) fn view(walk: Walk, yard: ThingId, rows: Memo<Vec<Row>>) -> AnyView {
    let open = RwSignal::new(false);
    let left = Memo::new(move |_| rows.with(|rows| walk::rest(rows)));
    let body_rows = rows;
    view! {
        {move || {
            (!left.with(Vec::is_empty))
                .then(|| {
                    view! {
                        <p class="keys">
                            <button
                                type="button"
                                class="key key-big"
                                data-testid="rest-as-usual"
                                on:click=move |_| {
                                    walk.shut();
                                    open.set(true);
                                }
                            >
                                {w::REST}
                            </button>
                        </p>
                    }
                })
        }}
        {sheet(open, w::REST_TITLE, move || body(walk, &yard, body_rows, left, open))}
    }
    .into_any()
}

fn body(
    walk: Walk,
    yard: &ThingId,
    rows: Memo<Vec<Row>>,
    left: Memo<Vec<ThingId>>,
    open: RwSignal<bool>,
) -> AnyView {
    let usual = match rows.with_untracked(|rows| walk::usual(rows)) {
        Did::AsFound => "as_found",
        _ => "topped_up",
    };
    let did = RwSignal::new(usual.to_owned());
    let stop: RwSignal<Option<Stop>> = RwSignal::new(None);
    let ready = RwSignal::new(false);
    set_timeout(move || ready.set(true), GUARD);
    let tags = move || {
        let hives = left.get();
        walk.records().book.with(|book| {
            let tag = |hive: &ThingId| book.standing().hives.get(hive).map(|now| now.tag.clone());
            let tags = hives.iter().filter_map(tag);
            tags.map(|tag| view! { <li><bdi>{tag}</bdi></li> }).collect_view()
        })
    };
    let yard = yard.clone();
    let log = move |_| {
        if !ready.get_untracked() {
            return;
        }
        let did = if did.with_untracked(|code| code == "as_found") { Did::AsFound } else { Did::ToppedUp };
        let hives = left.get_untracked();
        let today = walk.records().today(&yard);
        let pen = walk.records().pen();
        let written =
            walk.records().book.with_untracked(|book| book.same_for_all(&pen, today, today, &hives, did));
        match walk.records().put(written, w::logged_rest(hives.len(), did)) {
            Ok(_) => {
                walk.cards.set((None, Vec::new()));
                open.set(false);
            }
            Err(why) => stop.set(Some(why)),
        }
    };
    view! {
        {Choice::new("rest-did", w::REST_DID)
            .option("topped_up", w::did_key(Did::ToppedUp))
            .option("as_found", w::did_key(Did::AsFound))
            .text(did)
            .view()}
        <p>{w::REST_LIST}</p>
        <ul class="rest-list" data-testid="rest-list">
            {tags}
        </ul>
        {said::stopped(stop)}
        <p class="keys">
            <button type="button" class="key key-big key-primary" data-testid="rest-confirm" on:click=log>
                {move || w::rest_confirm(left.with(Vec::len))}
            </button>
        </p>
    }
    .into_any()
}
