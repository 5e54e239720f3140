//! "Keep this yard": the short form that turns the first sum into records.

use super::says;
use crate::app::bench::keep::{depth_codes, filled, name, plan, tags};
use crate::app::bench::read::MOST_BOXES;
use crate::app::bench::yard::reckon;
use crate::app::edge::letters::BrowserLetters;
use crate::app::parts::choice::Choice;
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::parts::notice::Notice;
use crate::app::parts::stepper::Stepper;
use crate::app::state::Ui;
use crate::app::wording::en_bench::{self, keep as w};
use crate::app::wording::{en, en_typed};
use leptos::prelude::*;

/// The key, and the form once it was pressed. Nothing while nobody takes the plan.
pub(super) fn view(ui: Ui) -> AnyView {
    let open = RwSignal::new(false);
    view! {
        {move || {
            ui.on_keep
                .get()
                .map(|on_keep| {
                    if open.get() {
                        form(ui, on_keep)
                    } else {
                        view! {
                            <p class="keys">{Key::new(w::KEEP, move || open.set(true)).primary().view()}</p>
                            <p class="small">{w::WHAT}</p>
                        }
                            .into_any()
                    }
                })
        }}
    }
    .into_any()
}

fn form(ui: Ui, on_keep: Callback<crate::app::bench::keep::KeepPlan>) -> AnyView {
    let t = ui.bench;
    follow_hives(ui);
    let plan = Memo::new(move |_| ui.draft.with(|draft| plan(draft, ui.today.get(), &BrowserLetters)));
    let keep_text = move || {
        plan.with(|plan| plan.as_ref().map_or_else(|| w::KEEP.to_owned(), |plan| w::keep(plan.tags.len())))
    };
    view! {
        <section class="keep-form" aria-label=w::TITLE>
            <h3>{w::TITLE}</h3>
            {Field::new("keep-name", w::NAME, t.keep_name)
                .wide()
                .says(move || named(t.keep_name))
                .view()}
            {Field::new("keep-tags", w::TAGS, t.keep_tags)
                .wide()
                .hint(w::TAGS_HINT)
                .says(move || match t.keep_tags.with(|text| tags(text, &BrowserLetters)) {
                    Ok(tags) => Says::Echo(w::named(tags.len())),
                    Err(error) => Says::Wrong(en_typed::tags(&error)),
                })
                .view()}
            {depths(ui)}
            {Field::new("keep-trap", w::TRAP, t.keep_trap)
                .wide()
                .says(move || named(t.keep_trap))
                .view()}
            {Choice::new("keep-form", w::FORM)
                .option("between", w::FORM_BETWEEN)
                .option("one_well", w::FORM_ONE)
                .option("two_wells", w::FORM_TWO)
                .option("floor", w::FORM_FLOOR)
                .text(t.keep_form)
                .view()}
            {Choice::new("keep-filled", w::FILLED)
                .option("today", w::TODAY)
                .option("earlier", w::EARLIER)
                .option("not_yet", w::NOT_YET)
                .text(t.keep_filled)
                .view()}
            {move || t.keep_filled.with(|code| code == "earlier").then(|| filled_on(ui))}
            {Stepper::new("keep-days", w::DAYS, t.keep_days, 1, 120)
                .says(move || says::count(t.keep_days, 1, 120))
                .view()}
            {Notice::caution(w::ONLY_HERE).view()}
            <p class="keys">
                <button
                    type="button"
                    class="key key-primary key-big"
                    disabled=move || plan.with(Option::is_none)
                    on:click=move |_| {
                        if let Some(plan) = plan.get_untracked() {
                            on_keep.run(plan);
                        }
                    }
                >
                    {keep_text}
                </button>
            </p>
            {move || plan.with(Option::is_none).then(|| view! { <p role="status">{w::MEND}</p> })}
        </section>
    }
    .into_any()
}

fn named(text: RwSignal<String>) -> Says {
    match text.with(|text| name(text, &BrowserLetters)) {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::label(error)),
    }
}

fn filled_on(ui: Ui) -> AnyView {
    let says = move || match ui.draft.with(|draft| filled(draft, ui.today.get())) {
        Ok(Some(day)) => Says::Echo(en::echo(&en::date(day))),
        Ok(None) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::day(error)),
    };
    Field::new("keep-filled-on", w::FILLED_ON, ui.bench.keep_filled_on).day().says(says).view()
}

/// One choice a box, from the floor up.
fn depths(ui: Ui) -> AnyView {
    let t = ui.bench;
    let boxes = Memo::new(move |_| ui.draft.with(|draft| reckon(draft).map_or(0, |sum| sum.total.boxes)));
    let choices = move || {
        (0..boxes.get().min(MOST_BOXES) as usize)
            .map(|index| {
                let code = move || {
                    t.keep_depths.with(|text| match depth_codes(text, index + 1).pop() {
                        Some("medium") => "medium",
                        Some("shallow") => "shallow",
                        _ => "deep",
                    })
                };
                Choice::new(["keep-box-", &index.to_string()].concat(), w::depth_of(index + 1))
                    .option("deep", en_bench::DEEP)
                    .option("medium", en_bench::MEDIUM)
                    .option("shallow", en_bench::SHALLOW)
                    .chosen(code)
                    .choose(move |code| {
                        t.keep_depths.update(|text| *text = with_depth(text, index, &code));
                    })
                    .view()
            })
            .collect_view()
    };
    view! { {choices} }.into_any()
}

fn with_depth(text: &str, index: usize, code: &str) -> String {
    let known = text.split(' ').filter(|code| !code.is_empty()).count();
    let mut codes = depth_codes(text, known.max(index + 1));
    if let Some(own) = codes.get_mut(index) {
        *own = code;
    }
    codes.join(" ")
}

/// Tags that still are a plain count go along with the number of hives; tags of the keeper's own stay.
fn follow_hives(ui: Ui) {
    let hives = Memo::new(move |_| ui.draft.with(|draft| reckon(draft).map(|sum| sum.total.hives)));
    Effect::new(move || {
        let Some(hives) = hives.get() else { return };
        let plain = ui.bench.keep_tags.with_untracked(|text| {
            text.is_empty()
                || text == "1"
                || text.strip_prefix("1–").is_some_and(|last| last.bytes().all(|b| b.is_ascii_digit()))
        });
        if plain {
            ui.bench.keep_tags.set(w::tags_for(hives));
        }
    });
}
