//! The rest of the panel: levels, ranges, single traps, note, day.

use super::dock::{bare, saves, skip_key, work_key, work_keys};
use super::draft;
use super::form::{big, count_says, day_says, keys, level_says, note, yes_no};
use super::log;
use super::state::{Ask, Walk};
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::parts::field::{Field, Says};
use crate::app::place::Place;
use crate::app::state::Ui;
use crate::app::wording::en_round as w;
use crate::app::wording::{en, en_records};
use crate::book::entry::Did;
use crate::book::id::ThingId;
use crate::book::record::Blank;

/// Levels on keys: the text they put into the field, their words, their names for the journeys.
const LEVELS: [(&str, &str); 6] =
    [("empty", "Empty"), ("¼", "¼"), ("⅓", "⅓"), ("½", "½"), ("¾", "¾"), ("full", "Full")];
/// Ranges on keys.
const RANGES: [&str; 5] = ["0", "1–4", "5–19", "20–49", "50+"];

/// The rest of the panel.
pub(super) fn view(walk: Walk) -> El {
    let after_says = move || match level_says(walk.after) {
        Says::Wrong(wrong) => Says::Wrong(wrong),
        _ if walk.after.with(|text| draft::too_full(text)) => Says::Echo(w::TOO_FULL.to_owned()),
        says => says,
    };
    let before = Field::new("log-before", en::in_percent(w::BEFORE), walk.before)
        .says(move || level_says(walk.before));
    let after =
        Field::new("log-after", en::in_percent(w::AFTER), walk.after).hint(w::AFTER_HINT).says(after_says);
    let count = Field::new("log-count", w::BEETLES, walk.count).whole().hint(w::COUNT_HINT);
    let count = count.says(move || count_says(walk.count));
    let day = Field::new("log-day", w::DAY, walk.day)
        .day()
        .hint(w::DAY_HINT)
        .says(move || day_says(walk.day, walk.today.get()));
    el("div")
        .class("dock-more")
        .kid(group(w::BEFORE).kid(before.view()).kid(texts(walk.before, &LEVELS, "before-")))
        .kid(group(w::AFTER).kid(after.view()).kid(texts(walk.after, &LEVELS, "after-")))
        .kid(group(w::COUNT_KEYS).kid(count.view()).kid(texts(
            walk.count,
            &RANGES.map(|range| (range, range)),
            "range-",
        )))
        .kid(traps(walk))
        .kid(live(move || walk.open.get().map(|hive| seen(&hive))))
        .kid(note("log-note", walk.note))
        .kid(day.view())
        .kid(live(move || again(walk)))
}

/// The keys once more below the fields, so that nobody has to scroll back to them; not under a question.
fn again(walk: Walk) -> Bit {
    if walk.ask.with(|ask| *ask != Ask::Nothing) {
        return Bit::Nothing;
    }
    let bare = bare(walk).is_some();
    untrack(|| {
        let mut keys = work_keys(walk, "dock-keys");
        for (did, mark) in [
            (Did::AsFound, "end-as_found"),
            (Did::ToppedUp, "end-topped_up"),
            (Did::Replaced, "end-replaced"),
            (Did::Spilled, "end-spilled"),
            (Did::Missing, "end-missing"),
            (Did::GluedShut, "did-glued_shut"),
        ] {
            if did == Did::AsFound || !bare {
                keys = keys.kid(work_key(walk, did, mark, None));
            }
        }
        el("div").class("dock-group").kid(saves(walk)).kid(keys.kid(skip_key(walk, "end-skipped"))).into()
    })
}

/// The way to the form for what the hive showed, and back to the panel. What is half made here waits.
fn seen(hive: &ThingId) -> El {
    let ui = Ui::get();
    let place = Place::Write(Blank::Look, Some(hive.to_string()));
    keys(big(en_records::blank(Blank::Look).title, "dock-look", move || {
        ui.go(&place);
    }))
}

fn group(label: &str) -> El {
    el("div").class("dock-group").attr("role", "group").attr("aria-label", label)
}

/// A key that stays pressed.
fn toggle(label: &str, pressed: impl Fn() -> bool + 'static, press: impl Fn() + 'static) -> El {
    toggled(big(label, "toggle", press), Box::new(pressed))
}

#[inline(never)]
fn toggled(key: El, pressed: Box<dyn Fn() -> bool>) -> El {
    key.class("key key-big toggle").live_attr("aria-pressed", move || yes_no(pressed()))
}

/// Keys that put a text into a field, or take it out again.
fn texts(text: RwSignal<String>, keys: &[(&'static str, &'static str)], mark: &str) -> El {
    let mut row = el("div").class("dock-keys dock-levels");
    for (put, words) in keys.iter().copied() {
        let press = move || {
            text.update(|text| *text = if text == put { String::new() } else { put.to_owned() });
        };
        let key = toggle(words, move || text.with(|text| text == put), press);
        row = row.kid(key.attr("data-testid", &[mark, put].concat()));
    }
    row
}

/// One key a trap of the open hive.
fn traps(walk: Walk) -> El {
    let known = Memo::new(move || {
        let hive = walk.open.get();
        walk.records.book.with(|book| {
            let now = hive.and_then(|hive| book.standing().hives.get(&hive));
            now.map(log::places).unwrap_or_default()
        })
    });
    let key = move |(trap, words): (ThingId, String)| {
        let own = trap.clone();
        let press = move || {
            walk.traps.update(|traps| match traps.iter().position(|known| *known == trap) {
                Some(at) => {
                    traps.remove(at);
                }
                None => traps.push(trap.clone()),
            });
        };
        toggle(&words, move || walk.traps.with(|traps| traps.contains(&own)), press).test_id("trap")
    };
    let keys = live(move || {
        let mut keys = Vec::new();
        for trap in known.get() {
            keys.push(Bit::One(key(trap)));
        }
        keys
    });
    group(w::TRAPS)
        .kid(el("p").class("dock-label").text(w::TRAPS))
        .kid(el("p").class("field-hint").text(w::TRAPS_HINT))
        .kid(el("div").class("dock-keys dock-two").kid(keys))
}
