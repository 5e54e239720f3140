//! Hives as rows, each a key that opens its panel.

use super::beside::{self, Beside, Said};
use crate::almanac::day::Day;
use crate::almanac::table::Table;
use crate::app::el::{El, each, el, live};
use crate::app::graph::{Memo, RwSignal, StoredValue, on_cleanup, untrack};
use crate::app::round::form::yes_no;
use crate::app::round::walk::due_word;
use crate::app::round::{Walk, bits, walk};
use crate::app::wording::en_round as w;
use crate::book::entry::Did;
use crate::book::id::ThingId;
use crate::book::round::{HiveDue, Row};
use crate::book::standing::Standing;
use std::rc::Rc;

/// A row as it reads.
#[derive(Clone, Default, PartialEq, Eq)]
struct Shown {
    tag: String,
    word: &'static str,
    mark: Mark,
    first: String,
    beside: Rc<Vec<Said>>,
    second: String,
}

/// The shape in front of a row.
#[derive(Clone, Copy, Default, PartialEq, Eq)]
enum Mark {
    #[default]
    None,
    Overdue,
    Done,
    Skipped,
}

impl Mark {
    fn shape(self) -> &'static str {
        match self {
            Mark::None => "",
            Mark::Overdue => "▲",
            Mark::Done => "✓",
            Mark::Skipped => "↷",
        }
    }

    fn class(self) -> &'static str {
        match self {
            Mark::None => "row",
            Mark::Overdue => "row row-overdue",
            Mark::Done => "row row-done",
            Mark::Skipped => "row row-skipped",
        }
    }
}

/// What a row follows, told only what is new. All of it is set by one look over the list: a hundred rows that each ask
/// for themselves take longer than all that they show.
#[derive(Clone, Copy)]
struct Follows {
    shown: RwSignal<Shown>,
    open: RwSignal<bool>,
    begun: RwSignal<bool>,
}

/// The rows that are there.
type Kept = StoredValue<Table<ThingId, Follows>>;

/// The list. One save in a yard of 500 draws one row.
pub(super) fn view(walk: Walk, rows: Memo<Vec<Row>>, beside: Memo<Beside>) -> El {
    let kept: Kept = StoredValue::new(Table::new());
    let ids = Memo::new(move || {
        rows.with(|rows| rows.iter().map(|row| row.hive.to_string()).collect::<Vec<String>>())
    });
    let look = move || {
        let today = walk.today.get();
        walk.records.book.with(|book| {
            rows.with(|rows| {
                for row in rows {
                    let follows = kept.with_value(|kept| kept.get(&row.hive).copied());
                    if let Some(follows) = follows {
                        let shown = beside.with(|beside| read(book.standing(), row, beside, today));
                        follows.shown.renew(shown.unwrap_or_default());
                    }
                }
            });
        });
    };
    let look_open = move || {
        let open = walk.open.get();
        kept.with_value(|kept| {
            for (hive, follows) in kept {
                follows.open.renew(open.as_ref() == Some(hive));
            }
        });
    };
    let look_begun = move || {
        // A list that was empty has nothing else to hear from.
        rows.track();
        kept.with_value(|kept| {
            for (hive, follows) in kept {
                follows.begun.renew(walk.half_made(hive));
            }
        });
    };
    el("ol")
        .class("rows")
        .attr("aria-label", w::HIVES)
        .kid(each(move || ids.get(), move |id| row(walk, rows, beside, kept, id)))
        .live_prop(look)
        .live_prop(look_open)
        .live_prop(look_begun)
}

fn read(standing: &Standing, row: &Row, beside: &Beside, today: Day) -> Option<Shown> {
    let now = standing.hives.get(&row.hive)?;
    let word = due_word(&row.due);
    let due = w::due(&row.due, today);
    let since = row.days_since.map(w::since).filter(|since| !since.is_empty());
    let trouble = now.trouble().map(w::idle_traps);
    let reason = match &row.due {
        HiveDue::Due { because, .. } => Some(trouble.clone().unwrap_or_else(|| w::because(because))),
        _ => None,
    };
    let overdue = if word == "overdue" { Mark::Overdue } else { Mark::None };
    let idle = row.trouble.map(|trouble| w::idle(trouble).to_owned());
    let (mark, first, second) = match (row.today, row.skipped) {
        // Somebody was here, and it is not done: it looks like what is overdue, not like what is finished.
        (Some(Some(did)), _) if row.still_due() => {
            let still = trouble.map_or(due, |trouble| w::still_due(&trouble));
            let looked = row.trouble.is_none() && row.due.now() && did == Did::AsFound;
            let did = (row.trouble.is_none()).then(|| w::did_today(did, walk::part_done(now, did, today)));
            (Mark::Overdue, still, [idle.or(did), looked.then(|| w::LOOK_FILLS_NOTHING.to_owned()), None])
        }
        (Some(Some(Did::AsFound)), _)
            if now.traps().next().is_some() && now.traps().all(|trap| trap.placed == today) =>
        {
            (Mark::Done, w::PLACED_TODAY.to_owned(), [Some(w::next_due(&due)), None, None])
        }
        (Some(Some(did)), _) => {
            let did = w::did_today(did, walk::part_done(now, did, today));
            (Mark::Done, did, [Some(w::next_due(&due)), None, None])
        }
        (Some(None), Some((day, why))) => {
            (Mark::Skipped, w::skipped(day, today, why), [Some(due), since, None])
        }
        (_, Some((day, why))) => {
            let skipped = ["↷ ", &w::skipped(day, today, why)].concat();
            (overdue, due, [Some(skipped), since, reason])
        }
        _ => match row.recheck.filter(|_| word == "later" && row.look_due(today)) {
            Some(by) => (Mark::Overdue, w::look_now(by, today), [Some(due), since, reason]),
            None => (overdue, due, [since, reason, None]),
        },
    };
    let mut second: Vec<String> = second.into_iter().flatten().collect();
    let said = row.today.is_none() && row.skipped.is_none() && word == "later" && row.look_due(today);
    second.extend(row.recheck.filter(|_| !said).map(|by| w::look_again(by, today)));
    let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    let parts = w::parts(count(now.boxes.len()), count(now.traps().count()));
    second.push(parts);
    let beside = beside.get(&row.hive).map(|(_, said)| Rc::clone(said)).unwrap_or_default();
    Some(Shown { tag: now.tag.clone(), word, mark, first, beside, second: second.join(" · ") })
}

fn row(walk: Walk, rows: Memo<Vec<Row>>, beside: Memo<Beside>, kept: Kept, id: &str) -> El {
    let Ok(hive) = ThingId::parse(id) else { return el("li") };
    let first = walk.records.book.with_untracked(|book| {
        let today = walk.today.get_untracked();
        let row = rows.with_untracked(|rows| rows.iter().find(|row| row.hive == hive).cloned());
        let shown =
            row.and_then(|row| beside.with_untracked(|beside| read(book.standing(), &row, beside, today)));
        shown.unwrap_or_default()
    });
    let follows = Follows {
        shown: RwSignal::new(first),
        open: RwSignal::new(walk.open.with_untracked(|open| open.as_ref() == Some(&hive))),
        begun: RwSignal::new(untrack(|| walk.half_made(&hive))),
    };
    kept.try_update_value(|kept| {
        kept.insert(hive.clone(), follows);
    });
    let gone = hive.clone();
    on_cleanup(move || {
        kept.try_update_value(|kept| kept.remove(&gone));
    });
    let Follows { shown, open, begun } = follows;
    let words = live(move || {
        let Shown { tag, mark, first, beside, second, .. } = shown.get();
        let shape = mark.shape();
        let mark =
            (!shape.is_empty()).then(|| el("span").class("row-mark").attr("aria-hidden", "true").text(shape));
        let mut second = el("span").class("row-second").text(&second);
        if begun.get() {
            second = second.kid(el("span").class("row-begun").text(" · ✎ ").text(w::BEGUN));
        }
        let words = el("span")
            .class("row-words")
            .kid(el("span").class("row-first").kid(mark).text(&first))
            .kids(beside.iter().map(beside::line))
            .kid(second);
        bits![el("span").class("row-tag").kid(el("bdi").text(&tag)), words]
    });
    let open = el("button")
        .attr("type", "button")
        .class("row-open")
        .test_id("row-open")
        .live_attr("aria-expanded", move || yes_no(open.get()))
        .kid(words)
        .press(move || walk.open_hive(&hive));
    let item = el("li").attr("id", &["row-", id].concat()).test_id("row").kid(open);
    let own = item.clone();
    item.live_prop(move || {
        shown.with(|shown| {
            let _ = own
                .clone()
                .class(shown.mark.class())
                .attr("data-tag", &shown.tag)
                .attr("data-due", shown.word);
        });
    })
}
