//! Hives as rows, each a key that opens its panel.

use crate::almanac::day::Day;
use crate::almanac::table::Table;
use crate::app::el::{El, each, el, live};
use crate::app::graph::Memo;
use crate::app::round::form::yes_no;
use crate::app::round::walk::due_word;
use crate::app::round::{Walk, bits};
use crate::app::wording::en_round as w;
use crate::book::entry::Did;
use crate::book::id::ThingId;
use crate::book::round::{HiveDue, Row};
use crate::book::standing::Standing;

/// A row as it reads.
#[derive(Clone, Default, PartialEq, Eq)]
struct Shown {
    tag: String,
    word: &'static str,
    mark: Mark,
    first: String,
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

/// The list. A row follows what is said about its own hive: one save in a yard of 500 draws one row.
pub(super) fn view(walk: Walk, rows: Memo<Vec<Row>>) -> El {
    let shown = Memo::new(move || {
        let today = walk.today.get();
        walk.records.book.with(|book| {
            rows.with(|rows| {
                let read = |row: &Row| Some((row.hive.to_string(), read(book.standing(), row, today)?));
                rows.iter().filter_map(read).collect::<Table<String, Shown>>()
            })
        })
    });
    let ids = Memo::new(move || {
        rows.with(|rows| rows.iter().map(|row| row.hive.to_string()).collect::<Vec<String>>())
    });
    el("ol")
        .class("rows")
        .attr("aria-label", w::HIVES)
        .kid(each(move || ids.get(), move |id| row(walk, shown, id)))
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
    let overdue = if word == "overdue" { Mark::Overdue } else { Mark::None };
    let idle = row.trouble.map(|trouble| w::idle(trouble).to_owned());
    let (mark, first, second) = match (row.today, row.skipped) {
        // Somebody was here, and it is not done: it looks like what is overdue, not like what is finished.
        (Some(Some(did)), _) if row.still_due() => {
            let still = row.trouble.map_or(due, w::still_due);
            let did = (row.trouble.is_none()).then(|| w::did_today(did));
            (Mark::Overdue, still, [idle.or(did), None, None])
        }
        (Some(Some(Did::AsFound)), _)
            if now.traps().next().is_some() && now.traps().all(|trap| trap.placed == today) =>
        {
            (Mark::Done, w::PLACED_TODAY.to_owned(), [Some(w::next_due(&due)), None, None])
        }
        (Some(Some(did)), _) => (Mark::Done, w::did_today(did), [Some(w::next_due(&due)), None, None]),
        (Some(None), Some((day, why))) => {
            (Mark::Skipped, w::skipped(day, today, why), [Some(due), since, None])
        }
        (_, Some((day, why))) => {
            let skipped = ["↷ ", &w::skipped(day, today, why)].concat();
            (overdue, due, [Some(skipped), since, reason])
        }
        _ => (overdue, due, [since, reason, None]),
    };
    let mut second: Vec<String> = second.into_iter().flatten().collect();
    second.extend(row.recheck.map(w::recheck_by));
    let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
    let parts = w::parts(count(now.boxes.len()), count(now.traps().count()));
    second.push(parts);
    Some(Shown { tag: now.tag.clone(), word, mark, first, second: second.join(" · ") })
}

fn row(walk: Walk, all: Memo<Table<String, Shown>>, id: &str) -> El {
    let Ok(hive) = ThingId::parse(id) else { return el("li") };
    let key = id.to_owned();
    let shown = Memo::new(move || all.with(|all| all.get(&key).cloned()).unwrap_or_default());
    let (own, half) = (hive.clone(), hive.clone());
    let begun = Memo::new(move || walk.half_made(&half));
    let words = live(move || {
        let Shown { tag, mark, first, second, .. } = shown.get();
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
            .kid(second);
        bits![el("span").class("row-tag").kid(el("bdi").text(&tag)), words]
    });
    let open = el("button")
        .attr("type", "button")
        .class("row-open")
        .test_id("row-open")
        .live_attr("aria-expanded", move || yes_no(walk.open.with(|open| open.as_ref() == Some(&own))))
        .kid(words)
        .press(move || walk.open_hive(&hive));
    el("li")
        .attr("id", &["row-", id].concat())
        .test_id("row")
        .live_class(move || shown.with(|shown| shown.mark.class()))
        .live_attr("data-tag", move || Some(shown.with(|shown| shown.tag.clone())))
        .live_attr("data-due", move || Some(shown.with(|shown| shown.word.to_owned())))
        .kid(open)
}
