//! The panel at the thumb: one hive, and a key for each thing that is done to it.
//!
//! It stays as it is from hive to hive, so that the thumb finds every key where it was; only what stands in it
//! changes.

use super::state::{Ask, Walk};
use super::walk::usual;
use super::{dock_more, draft, log, said};
use crate::app::edge;
use crate::app::parts::notice::Notice;
use crate::app::place::Place;
use crate::app::records::Stop;
use crate::app::wording::{en_round as w, en_typed};
use crate::book::entry::{Did, SkipReason};
use crate::book::round;
use crate::book::write::{Doubt, Refusal};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// Name of the panel in the page.
pub(super) const DOCK: &str = "dock";

/// The panel.
pub(super) fn view(walk: Walk) -> AnyView {
    follow_focus(walk);
    let head = Memo::new(move |_| {
        let hive = walk.open.get()?;
        let today = walk.today.get();
        walk.records().book.with(|book| {
            let standing = book.standing();
            let now = standing.hives.get(&hive)?;
            let loss = round::yard_loss(standing, &now.yard);
            let due = round::hive_due(standing, now, loss, today);
            Some((now.tag.clone(), w::due(&due, today), Place::Hive(hive.to_string()).hash()))
        })
    });
    let part = move |pick: fn(&(String, String, String)) -> &String| {
        head.with(|head| head.as_ref().map(pick).cloned()).unwrap_or_default()
    };
    let ask = Memo::new(move |_| walk.ask.get());
    let ready = move || if walk.ready.get() { "true" } else { "false" };
    view! {
        <section class="dock" id=DOCK aria-label=w::PANEL data-testid="panel" data-ready=ready>
            <div class="dock-head">
                <h2 class="dock-name" tabindex="-1" aria-live="polite">{move || w::hive(&part(|head| &head.0))}</h2>
                <p class="dock-due">{move || part(|head| &head.1)}</p>
                <button type="button" class="key" data-testid="shut" on:click=move |_| walk.shut()>
                    {w::SHUT}
                </button>
            </div>
            {days(walk)}
            {move || match ask.get() {
                Ask::Nothing => keys(walk),
                Ask::Skip => reasons(walk),
                Ask::Doubts(did, doubts) => question(walk, did, &doubts),
                Ask::Stopped(stop) => stopped(walk, &stop),
            }}
            {move || walk.more.get().then(|| dock_more::view(walk))}
            <div class="dock-ways">
                <button
                    type="button"
                    class="key key-big key-quiet"
                    data-testid="more"
                    aria-expanded=move || if walk.more.get() { "true" } else { "false" }
                    on:click=move |_| walk.more.update(|more| *more = !*more)
                >
                    {move || if walk.more.get() { w::LESS } else { w::MORE }}
                </button>
                <a class="key key-big key-quiet" href=move || part(|head| &head.2)>{w::HIVE_PAGE}</a>
            </div>
        </section>
    }
    .into_any()
}

/// The focus goes to the name of the hive when the panel opens and after a question, and to a question when one is
/// asked; from hive to hive it stays on the key. The row of the hive comes into sight.
fn follow_focus(walk: Walk) {
    let focus = |css: &'static str| {
        edge::after_paint(move || {
            let found = edge::document().and_then(|document| document.query_selector(css).ok().flatten());
            if let Some(found) = found.and_then(|found| found.dyn_into::<web_sys::HtmlElement>().ok()) {
                let _ = found.focus();
            }
        });
    };
    Effect::new(move |before: Option<bool>| {
        let asks = walk.ask.with(|ask| *ask != Ask::Nothing);
        if asks {
            focus(".dock-ask");
        } else if before != Some(false) {
            focus(".dock-name");
        }
        asks
    });
    Effect::new(move || {
        let Some(hive) = walk.open.get() else { return };
        edge::after_paint(move || {
            let row = ["row-", &hive.to_string()].concat();
            if let Some(row) = edge::document().and_then(|document| document.get_element_by_id(&row)) {
                row.scroll_into_view();
            }
        });
    });
}

/// A day that is not today, and fields that were filled on another one.
fn days(walk: Walk) -> AnyView {
    let other = move || {
        let today = walk.today.get();
        let day = walk.day_or_today();
        (day != today).then(|| view! { <p class="dock-day">{w::writing_for(day, today)}</p> })
    };
    let old = move || {
        let today = walk.today.get();
        walk.begun.get().map(|day| {
            view! {
                <div class="dock-day">
                    <span>{w::begun_on(day, today)}</span>
                    <button type="button" class="key" on:click=move |_| walk.empty_fields()>
                        {w::EMPTY_FIELDS}
                    </button>
                </div>
            }
        })
    };
    view! { {other} {old} }.into_any()
}

fn class(walk: Walk) -> impl Fn() -> &'static str {
    move || if walk.ready.get() { "dock-keys" } else { "dock-keys dock-wait" }
}

/// What is pressed before the keys have been there for a moment was not meant.
fn meant(walk: Walk) -> bool {
    walk.ready.get_untracked()
}

fn keys(walk: Walk) -> AnyView {
    let usual = Memo::new(move |_| {
        let Some(hive) = walk.open.get() else { return Did::ToppedUp };
        let today = walk.day_or_today();
        walk.records().book.with(|book| {
            let yard = book.standing().hives.get(&hive).map(|now| now.yard.clone());
            yard.map_or(Did::ToppedUp, |yard| usual(&round::rows(book.standing(), &yard, today)))
        })
    });
    view! {
        {count(walk)}
        <div class=class(walk)>
            {work_key(walk, Did::AsFound, "did-as_found", usual)}
            {work_key(walk, Did::ToppedUp, "did-topped_up", usual)}
            {work_key(walk, Did::Replaced, "did-replaced", usual)}
            <button
                type="button"
                class="key key-big"
                data-testid="did-skipped"
                on:click=move |_| if meant(walk) { walk.ask.set(Ask::Skip) }
            >
                {w::SKIP}
            </button>
            {work_key(walk, Did::Spilled, "did-spilled", usual)}
            {work_key(walk, Did::Missing, "did-missing", usual)}
        </div>
    }
    .into_any()
}

/// A key that saves at once.
pub(super) fn work_key(walk: Walk, did: Did, mark: &'static str, usual: Memo<Did>) -> AnyView {
    let class = move || if usual.get() == did { "key key-big key-primary" } else { "key key-big" };
    view! {
        <button
            type="button"
            class=class
            data-testid=mark
            on:click=move |_| if meant(walk) { log::work(walk, did, false) }
        >
            {w::did_key(did)}
        </button>
    }
    .into_any()
}

/// The number of beetles and the keys that count them.
fn count(walk: Walk) -> AnyView {
    let wrong = move || walk.count.with(|text| draft::count(text)).err().map(en_typed::number);
    let said = move || {
        let text = walk.count.get();
        let text = if text.trim().is_empty() { w::NOT_COUNTED.to_owned() } else { w::own(&text) };
        [w::BEETLES, ": ", &text].concat()
    };
    let key = move |by: i32, label: &'static str, mark: &'static str| {
        let name = [w::BEETLES, " ", label].concat();
        view! {
            <button
                type="button"
                class="key key-big"
                data-testid=mark
                aria-label=name
                on:click=move |_| {
                    walk.count.update(|text| *text = draft::counted(text, by));
                }
            >
                {label}
            </button>
        }
        .into_any()
    };
    view! {
        <div class="dock-count" role="group" aria-label=w::COUNT_KEYS>
            <p class="dock-number" role="status" data-testid="count">{said}</p>
            <div class="dock-keys dock-four">
                {key(-1, "−1", "count-less")} {key(1, "+1", "count-1")} {key(5, "+5", "count-5")}
                {key(20, "+20", "count-20")}
            </div>
            {move || wrong().map(|wrong| view! { <p class="field-says field-wrong">{wrong}</p> })}
        </div>
    }
    .into_any()
}

fn reasons(walk: Walk) -> AnyView {
    let all = [
        (SkipReason::Temper, "skip-temper"),
        (SkipReason::Robbing, "skip-robbing"),
        (SkipReason::Weather, "skip-weather"),
        (SkipReason::NoTime, "skip-no_time"),
        (SkipReason::Other, "skip-other"),
    ];
    let keys = all.map(|(why, mark)| {
        view! {
            <button
                type="button"
                class="key key-big"
                data-testid=mark
                on:click=move |_| log::skip(walk, why)
            >
                {w::skip_key(why)}
            </button>
        }
        .into_any()
    });
    view! {
        <p class="dock-ask" tabindex="-1">{w::WHY_SKIP}</p>
        <div class="dock-keys">{keys.into_iter().collect_view()} {back(walk, w::BACK)}</div>
    }
    .into_any()
}

fn back(walk: Walk, label: &'static str) -> AnyView {
    view! {
        <button
            type="button"
            class="key key-big"
            data-testid="ask-back"
            on:click=move |_| walk.ask.set(Ask::Nothing)
        >
            {label}
        </button>
    }
    .into_any()
}

fn question(walk: Walk, did: Did, doubts: &[Doubt]) -> AnyView {
    let lines = doubts.iter().map(|doubt| view! { <span>{w::doubt(*doubt)} " "</span> }).collect_view();
    view! {
        <p class="dock-ask" tabindex="-1" data-testid="doubt">{lines}</p>
        <div class="dock-keys">
            {back(walk, w::CHANGE)}
            <button
                type="button"
                class="key key-big key-primary"
                data-testid="save-as-is"
                on:click=move |_| log::work(walk, did, true)
            >
                {w::SAVE_AS_IS}
            </button>
        </div>
    }
    .into_any()
}

fn stopped(walk: Walk, stop: &Stop) -> AnyView {
    let ended = matches!(stop, Stop::Refused(Refusal::Ended { .. }));
    let revive = move || {
        view! {
            <button
                type="button"
                class="key key-big key-primary"
                data-testid="revive"
                on:click=move |_| log::revive(walk)
            >
                {w::REVIVE}
            </button>
        }
    };
    view! {
        <div class="dock-ask" tabindex="-1" data-testid="refusal">
            {Notice::alarm(said::stop(stop)).view()}
        </div>
        <div class="dock-keys">{back(walk, w::CHANGE)} {ended.then(revive)}</div>
    }
    .into_any()
}
