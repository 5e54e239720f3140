//! Hives as rows, each a key that opens its panel.

use crate::almanac::day::Day;
use crate::app::round::Walk;
use crate::app::round::walk::due_word;
use crate::app::wording::en_round as w;
use crate::book::id::ThingId;
use crate::book::round::{HiveDue, Row};
use crate::book::standing::Standing;
use leptos::prelude::*;

/// A row as it reads. It is its own key in the list: a row that reads the same is left alone, so that one save in a
/// yard of 500 hives draws one row.
#[derive(Clone, PartialEq, Eq, Hash)]
struct Shown {
    hive: ThingId,
    tag: String,
    word: &'static str,
    mark: Mark,
    first: String,
    second: String,
    parts: String,
}

/// The shape in front of a row.
#[derive(Clone, Copy, PartialEq, Eq, Hash)]
enum Mark {
    None,
    Overdue,
    Done,
    Skipped,
}

/// The list.
pub(super) fn view(walk: Walk, rows: Memo<Vec<Row>>) -> AnyView {
    let shown = Memo::new(move |_| {
        let today = walk.today.get();
        walk.records().book.with(|book| {
            rows.with(|rows| {
                rows.iter().filter_map(|row| read(book.standing(), row, today)).collect::<Vec<_>>()
            })
        })
    });
    view! {
        <ol class="rows" aria-label=w::HIVES>
            <For each=move || shown.get() key=Clone::clone children=move |shown| row(walk, shown) />
        </ol>
    }
    .into_any()
}

fn read(standing: &Standing, row: &Row, today: Day) -> Option<Shown> {
    let now = standing.hives.get(&row.hive)?;
    let word = due_word(&row.due);
    let due = w::due(&row.due, today);
    let since = row.days_since.map(w::since).filter(|since| !since.is_empty());
    let reason = match &row.due {
        HiveDue::Due { because, .. } => Some(w::because(because)),
        _ => None,
    };
    let (mark, first, second) = match (row.today, row.skipped) {
        (Some(Some(did)), _) => (Mark::Done, w::did_today(did), vec![w::next_due(&due)]),
        (_, Some((day, why))) => {
            let lines = [Some(due), since].into_iter().flatten().collect();
            (Mark::Skipped, w::skipped(day, today, why), lines)
        }
        _ => {
            let mark = if word == "overdue" { Mark::Overdue } else { Mark::None };
            (mark, due, [since, reason].into_iter().flatten().collect())
        }
    };
    // Work that leaves a trap idle is done and yet due: the mark says due.
    let (mark, second) = match (mark, &row.due) {
        (Mark::Done, HiveDue::Resting { .. }) => (mark, Vec::new()),
        _ => (mark, second),
    };
    let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    Some(Shown {
        hive: row.hive.clone(),
        tag: now.tag.clone(),
        word,
        mark,
        first,
        second: second.join(" · "),
        parts: w::parts(count(now.boxes.len()), count(now.traps().count())),
    })
}

fn row(walk: Walk, shown: Shown) -> AnyView {
    let Shown { hive, tag, word, mark, first, second, parts } = shown;
    let (id, marked) = (["row-", &hive.to_string()].concat(), tag.clone());
    let (own, half) = (hive.clone(), hive.clone());
    let expanded = move || {
        if walk.open.with(|open| open.as_ref() == Some(&own)) { "true" } else { "false" }
    };
    let begun = Memo::new(move |_| walk.half_made(&half));
    let class = match mark {
        Mark::Overdue => "row row-overdue",
        Mark::Done => "row row-done",
        Mark::Skipped => "row row-skipped",
        Mark::None => "row",
    };
    let shape = match mark {
        Mark::Overdue => "▲",
        Mark::Done => "✓",
        Mark::Skipped => "↷",
        Mark::None => "",
    };
    view! {
        <li class=class id=id data-testid="row" data-tag=marked data-due=word>
            <button
                type="button"
                class="row-open"
                data-testid="row-open"
                aria-expanded=expanded
                on:click=move |_| walk.open_hive(&hive)
            >
                <span class="row-tag">
                    <bdi>{tag}</bdi>
                </span>
                <span class="row-words">
                    <span class="row-first">
                        {(!shape.is_empty())
                            .then(|| view! { <span class="row-mark" aria-hidden="true">{shape}</span> })}
                        {first}
                    </span>
                    <span class="row-second">{second}</span>
                    <span class="row-parts">
                        {parts}
                        {move || begun.get().then(|| view! { <span class="row-begun">" · ✎ " {w::BEGUN}</span> })}
                    </span>
                </span>
            </button>
        </li>
    }
    .into_any()
}
