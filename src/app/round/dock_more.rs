//! The rest of the panel: levels, ranges, single traps, note, day.

use super::dock::work_key;
use super::draft;
use super::state::Walk;
use crate::almanac::typed;
use crate::app::edge::locale;
use crate::app::parts::field::{Field, Says};
use crate::app::wording::en;
use crate::app::wording::{en_hive, en_round as w, en_typed};
use crate::book::entry::{Did, Entry};
use crate::book::id::ThingId;
use leptos::prelude::*;

/// Levels on keys.
const LEVELS: [(&str, &str); 6] =
    [("empty", "Empty"), ("¼", "¼"), ("⅓", "⅓"), ("½", "½"), ("¾", "¾"), ("full", "Full")];
/// Ranges on keys.
const RANGES: [&str; 5] = ["0", "1–4", "5–19", "20–49", "50+"];

/// The rest of the panel.
pub(super) fn view(walk: Walk) -> AnyView {
    let none = Memo::new(|_| Did::ToppedUp);
    let after_says = move || match level_says(walk.after) {
        Says::Wrong(wrong) => Says::Wrong(wrong),
        _ if walk.after.with(|text| draft::too_full(text)) => Says::Echo(w::TOO_FULL.to_owned()),
        says => says,
    };
    view! {
        <div class="dock-more">
            <div class="dock-group" role="group" aria-label=w::BEFORE>
                {Field::new("log-before", w::BEFORE, walk.before).says(move || level_says(walk.before)).view()}
                {texts(walk.before, &LEVELS, "before-")}
            </div>
            <div class="dock-group" role="group" aria-label=w::AFTER>
                {Field::new("log-after", w::AFTER, walk.after).hint(w::AFTER_HINT).says(after_says).view()}
                {texts(walk.after, &LEVELS, "after-")}
            </div>
            <div class="dock-group" role="group" aria-label=w::COUNT_KEYS>
                {Field::new("log-count", w::BEETLES, walk.count).whole().says(move || count_says(walk)).view()}
                {texts(walk.count, &RANGES.map(|range| (range, range)), "range-")}
            </div>
            {traps(walk)}
            {note(walk)}
            {Field::new("log-day", w::DAY, walk.day).day().hint(w::DAY_HINT).says(move || day_says(walk)).view()}
            <div class="dock-keys">{work_key(walk, Did::GluedShut, "did-glued_shut", none)}</div>
        </div>
    }
    .into_any()
}

/// Keys that put a text into a field, or take it out again.
fn texts(text: RwSignal<String>, keys: &[(&'static str, &'static str)], mark: &'static str) -> AnyView {
    let keys = keys.iter().map(|(put, words)| {
        let (put, words) = (*put, *words);
        let pressed = move || if text.with(|text| text == put) { "true" } else { "false" };
        view! {
            <button
                type="button"
                class="key key-big toggle"
                data-testid=[mark, put].concat()
                aria-pressed=pressed
                on:click=move |_| {
                    text.update(|text| {
                        *text = if text == put { String::new() } else { put.to_owned() };
                    });
                }
            >
                {words}
            </button>
        }
        .into_any()
    });
    view! { <div class="dock-keys dock-four">{keys.collect_view()}</div> }.into_any()
}

fn level_says(text: RwSignal<String>) -> Says {
    text.with(|text| match draft::level(text) {
        Ok(Some(level)) if !text.trim().ends_with('%') => {
            Says::Echo(en::echo(&locale::percent(level.fraction(), 1)))
        }
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::share(error)),
    })
}

fn count_says(walk: Walk) -> Says {
    match walk.count.with(|text| draft::count(text)) {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::number(error)),
    }
}

fn day_says(walk: Walk) -> Says {
    let today = walk.today.get();
    walk.day.with(|text| {
        if text.trim().is_empty() {
            return Says::Nothing;
        }
        match typed::day_done(text, today) {
            Ok(day) => Says::Echo(en::echo(&en_hive::day_and_how_far(day, today))),
            Err(error) => Says::Wrong(en_typed::day(error)),
        }
    })
}

/// One key a trap of the open hive.
fn traps(walk: Walk) -> AnyView {
    let known = Memo::new(move |_| {
        let hive = walk.open.get();
        walk.records().book.with(|book| {
            let now = hive.and_then(|hive| book.standing().hives.get(&hive));
            let mut traps: Vec<(ThingId, String)> = Vec::new();
            for (number, part) in (1..).zip(now.into_iter().flat_map(|now| &now.boxes)) {
                traps.extend(
                    part.traps.iter().map(|trap| (trap.id.clone(), en_hive::place(number, trap.spot))),
                );
            }
            traps
        })
    });
    let keys = move || {
        let keys = known.get().into_iter().map(|(trap, words)| {
            let own = trap.clone();
            let pressed = move || if walk.traps.with(|traps| traps.contains(&own)) { "true" } else { "false" };
            let press = move |_| {
                walk.traps.update(|traps| match traps.iter().position(|known| *known == trap) {
                    Some(at) => {
                        traps.remove(at);
                    }
                    None => traps.push(trap.clone()),
                });
            };
            view! {
                <button type="button" class="key key-big toggle" data-testid="trap" aria-pressed=pressed on:click=press>
                    {words}
                </button>
            }
            .into_any()
        });
        keys.collect_view()
    };
    view! {
        <div class="dock-group" role="group" aria-label=w::TRAPS>
            <p class="dock-label">{w::TRAPS}</p>
            <p class="field-hint">{w::TRAPS_HINT}</p>
            <div class="dock-keys dock-two">{keys}</div>
        </div>
    }
    .into_any()
}

fn note(walk: Walk) -> AnyView {
    let length = move || walk.note.with(|text| text.trim().chars().count());
    let over = move || length().saturating_sub(Entry::NOTE_MOST);
    let says = move || match (over(), length()) {
        (0, 0..=400) => String::new(),
        (0, length) => w::note_length(length),
        (over, _) => w::note_over(over),
    };
    let class = move || if over() > 0 { "field-says field-wrong" } else { "field-says" };
    view! {
        <div class="field">
            <label for="log-note">{w::NOTE}</label>
            <textarea
                id="log-note"
                rows="2"
                dir="auto"
                aria-describedby="log-note-says"
                aria-invalid=move || (over() > 0).then_some("true")
                prop:value=move || walk.note.get()
                on:input=move |event| walk.note.set(event_target_value(&event))
            ></textarea>
            <p id="log-note-says" class=class>{says}</p>
        </div>
    }
    .into_any()
}
