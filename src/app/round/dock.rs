//! The panel at the thumb: one hive, and a key for each thing that is done to it.
//!
//! It stays as it is from hive to hive, so that the thumb finds every key where it was; only what stands in it
//! changes.

use super::form::{big, primary, yes_no};
use super::state::{Ask, Walk};
use super::walk::{stops, usual};
use super::{dock_more, draft, log, said};
use crate::app::edge;
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::{find, focus};
use crate::app::graph::{Memo, RwSignal, effect, effect_since, untrack};
use crate::app::ledger::{shifts, words::tag_told};
use crate::app::parts::notice::Notice;
use crate::app::place::Place;
use crate::app::records::Stop;
use crate::app::wording::en_book::history::THIS;
use crate::app::wording::{en_notices::WRITE_AGAIN, en_round as w, en_typed};
use crate::app::yard::alarm::{Wants, of_hive};
use crate::book::entry::{Did, SkipReason};
use crate::book::id::ThingId;
use crate::book::round;
use crate::book::shift::Shift;
use crate::book::write::{Doubt, Refusal};

/// Name of the panel in the page.
pub(super) const DOCK: &str = "dock";

/// The panel.
pub(super) fn view(walk: Walk, walking: Memo<bool>) -> El {
    follow_focus(walk, walking);
    let head = Memo::new(move || {
        let mut head = [w::hive(""), String::new(), String::new()];
        let Some(hive) = walk.open.get() else { return head };
        let today = walk.today.get();
        walk.records.book.with(|book| {
            let standing = book.standing();
            if let Some(now) = standing.hives.get(&hive) {
                let due = round::hive_due(standing, now, round::yard_loss(standing, &now.yard), today);
                let idle =
                    now.trouble().map_or_else(String::new, |idle| [", ", &w::idle_traps(idle)].concat());
                let due = [w::due(&due, today), idle].concat();
                head = [w::hive(&tag_told(standing, now)), due, Place::Hive(hive.to_string()).hash()];
            }
        });
        head
    });
    // Asked anew for another hive, and where something other than trap work was written down: not at every tap.
    let turn = walk.records.turn();
    let alarm = Memo::new(move || {
        let (today, _) = (walk.today.get(), turn.get());
        let said = |hive| walk.records.book.with_untracked(|book| of_hive(book.standing(), &hive, today));
        let (wants, lines) = walk.open.get().map(said).unwrap_or_default();
        (wants, lines.join(" · "))
    });
    let part = move |nth: usize| head.with(|head| head.get(nth).cloned()).unwrap_or_default();
    // What the panel asks, and the traps wanted by a hive that has none.
    let ask = Memo::new(move || (walk.ask.get(), bare(walk)));
    let body = live(move || {
        let (ask, bare) = ask.get();
        untrack(|| match ask {
            Ask::Nothing => match bare {
                Some(wanting) => bare_keys(walk, wanting),
                None => keys(walk, alarm),
            },
            Ask::Skip => reasons(walk),
            Ask::Which(did) => which(walk, did),
            Ask::Doubts(doubts, shifts) => question(walk, &doubts, shifts),
            Ask::Stopped(stop) => stopped(walk, &stop),
        })
    });
    let words = el("div")
        .class("dock-words")
        .kid(
            el("h2")
                .class("dock-name")
                .attr("tabindex", "-1")
                .attr("aria-live", "polite")
                .live_text(move || part(0)),
        )
        .kid(
            el("p")
                .class("dock-due row-now")
                .attr("role", "alert")
                .test_id("dock-alarm")
                .live_attr("hidden", move || alarm.with(|(_, said)| said.is_empty()).then(String::new))
                .live_text(move || alarm.with(|(_, said)| said.clone())),
        )
        .kid(el("p").class("dock-due").live_text(move || part(1)));
    let more = el("button")
        .attr("type", "button")
        .class("key key-big key-quiet")
        .test_id("more")
        .live_attr("aria-expanded", move || yes_no(walk.more.get()))
        .live_text(move || if walk.more.get() { w::LESS } else { w::MORE }.to_owned())
        .press(move || walk.more.update(|more| *more = !*more));
    let page = el("a").class("key key-big key-quiet").text(w::HIVE_PAGE).press(move || walk.shut());
    let way = page.clone();
    let page = page.live_prop(move || {
        // The tap that shuts the panel still has to find where the link leads.
        let to = part(2);
        if !to.is_empty() {
            let _ = way.clone().attr("href", &to);
        }
    });
    el("section")
        .class("dock")
        .attr("id", DOCK)
        .attr("aria-label", w::PANEL)
        .test_id("panel")
        .live_attr("data-ready", move || yes_no(walk.ready.get()))
        .live_attr("hidden", move || (!walking.get()).then(String::new))
        .kid(el("div").class("dock-head").kid(words).kid(big(w::SHUT, "shut", move || walk.shut())))
        .kid(days(walk))
        .kid(body)
        .kid(live(move || (walking.get() && walk.more.get()).then(|| untrack(|| dock_more::view(walk)))))
        .kid(el("div").class("dock-ways").kid(more).kid(page))
}

/// The focus goes to the name of the hive when the panel opens and after a question, and to a question when one is
/// asked; from hive to hive it stays on the key. The row of the hive comes into sight.
fn follow_focus(walk: Walk, walking: Memo<bool>) {
    effect_since(move |before: Option<(bool, bool)>| {
        let (opens, asks) = (walking.get(), walk.ask.with(|ask| *ask != Ask::Nothing));
        if opens && (asks || before != Some((true, false))) {
            edge::after_paint(move || {
                focus(if asks { ".dock-ask" } else { ".dock-name" });
            });
        }
        (opens, asks)
    });
    effect(move || {
        let Some(hive) = walk.open.get().filter(|_| walking.get()) else { return };
        edge::after_paint(move || {
            let row = ["row-", &hive.to_string()].concat();
            if let Some(row) = edge::document().and_then(|document| document.get_element_by_id(&row)) {
                row.scroll_into_view();
            }
            show_keys();
        });
    });
}

/// Where letters are large the panel is higher than its room: then it shows its keys with the line above them, which
/// names the hive, and its head on a swipe.
fn show_keys() {
    if let (Some(foot), Some(line), Some(keys)) = (find(".foot"), find(".dock-saves"), find(".dock-work")) {
        let (top, end) = (line.offset_top(), keys.offset_top() + keys.offset_height());
        // The bar that undoes stays above them, or the head where every field is open.
        let above = find(".foot-long .dock-head").or_else(|| find("[data-testid=undo-bar]"));
        let above = above.map_or(0, |above| above.offset_height());
        let mut to = (end + 8 - foot.client_height()).min(top - above - 8).max(0);
        if let Some(head) = find(".foot:not(.foot-long) .dock-head") {
            let (from, until) = (head.offset_top() - above, head.offset_top() + head.offset_height() - above);
            // Letters so large that not even the keys have room: then it begins with the name, where the first of them,
            // as found and topped up, are in sight under it. The style sheet knows: it lays the head out without a box.
            let large = find(".dock-words").is_some_and(|words| words.offset_height() == 0);
            let second = find(".dock-work > :nth-child(2)").filter(|_| large);
            let room = from + foot.client_height();
            // A word to stop is read before any key is hit, however far below it the keys come.
            if find(".dock-words > [role=alert]:not([hidden])").is_some()
                || second.is_some_and(|key| key.offset_top() + key.offset_height() <= room)
            {
                to = to.min(from.max(0));
            } else if to > from && to < until {
                // A name that would be cut is left out whole.
                to = until;
            }
        }
        foot.set_scroll_top(to);
    }
}

/// A day that is not today, and fields that were filled on another one.
fn days(walk: Walk) -> Bit {
    let other = move || {
        let today = walk.today.get();
        let day = walk.day_or_today();
        (day != today).then(|| el("p").class("dock-day").text(&w::writing_for(day, today)))
    };
    let old = move || {
        let today = walk.today.get();
        walk.begun.get().map(|day| {
            el("div").class("dock-day").kid(el("span").text(&w::begun_on(day, today))).kid(big(
                w::EMPTY_FIELDS,
                "empty-fields",
                move || walk.empty_fields(),
            ))
        })
    };
    bits![live(other), live(old)]
}

/// Traps that the open hive wants, when it has none at all.
pub(super) fn bare(walk: Walk) -> Option<u32> {
    let hive = walk.open.get()?;
    walk.records.book.with(|book| {
        let now = book.standing().hives.get(&hive)?;
        now.traps().next().is_none().then(|| now.wanting())
    })
}

/// The keys of a hive without traps: there is nothing to top up.
fn bare_keys(walk: Walk, wanting: u32) -> Bit {
    let kind = walk.records.book.with_untracked(|book| {
        let hive = walk.open.get_untracked()?;
        let now = book.standing().hives.get(&hive)?;
        let kind = round::likely_kind(book.standing(), &now.yard, Some(now))?;
        let name = book.standing().kinds.get(kind)?.kind.name.clone();
        Some((kind.clone(), name))
    });
    let said = match &kind {
        _ if wanting == 0 => w::NONE_WANTED.to_owned(),
        Some((_, name)) => w::to_place(wanting, name),
        None => w::NO_KIND_HERE.to_owned(),
    };
    let place = kind.filter(|_| wanting > 0).map(|(kind, _)| {
        let press = move || log::placed(walk, &kind);
        let words = move || {
            let today = walk.day_or_today() == walk.today.get();
            if today { w::PLACED_NOW } else { w::PLACED_THEN }.to_owned()
        };
        big("", "did-placed", press).class("key key-big key-usual").live_text(words)
    });
    let keys = work_keys(walk, "dock-keys dock-work dock-bare")
        .kid(place)
        .kid(work_key(walk, Did::AsFound, "did-as_found", None))
        .kid(skip_key(walk, "did-skipped"));
    bits![el("p").class("dock-ask").text(&said), saves(walk), keys]
}

/// What a tap does, said before it is done.
pub(super) fn saves(walk: Walk) -> El {
    el("p").class("dock-saves").live_text(move || w::saves(&name(walk)))
}

/// "Hive 7": the open one.
fn name(walk: Walk) -> String {
    let hive = walk.open.get();
    walk.records.book.with(|book| {
        let now = hive.and_then(|hive| book.standing().hives.get(&hive));
        now.map_or_else(String::new, |now| w::hive(&tag_told(book.standing(), now)))
    })
}

/// They take no tap until they have been there for a moment.
pub(super) fn work_keys(walk: Walk, class: &str) -> El {
    el("div").class(class).live_attr("data-wait", move || (!walk.ready.get()).then(String::new))
}

pub(super) fn skip_key(walk: Walk, mark: &'static str) -> El {
    big(w::SKIP, mark, move || {
        if log::meant(walk) {
            walk.ask.set(Ask::Skip);
        }
    })
}

fn keys(walk: Walk, alarm: Memo<(Wants, String)>) -> Bit {
    let usual = Memo::new(move || {
        // A hive that is to be left shut is not to be worked on by habit, nor slime topped up.
        match alarm.with(|(wants, _)| *wants) {
            Wants::Usual => {}
            Wants::Nothing => return None,
            Wants::Fresh => return Some(Did::Replaced),
        }
        let hive = walk.open.get()?;
        let today = walk.day_or_today();
        let mut all = Vec::new();
        walk.records.book.with(|book| {
            let standing = book.standing();
            let Some(now) = standing.hives.get(&hive) else { return };
            for (_, seen) in stops(standing, &now.yard, today) {
                all.extend(seen.flatten());
            }
        });
        Some(usual(&all))
    });
    let keys = work_keys(walk, "dock-keys dock-work")
        .kid(work_key(walk, Did::AsFound, "did-as_found", Some(usual)))
        .kid(work_key(walk, Did::ToppedUp, "did-topped_up", Some(usual)))
        .kid(work_key(walk, Did::Replaced, "did-replaced", Some(usual)))
        .kid(skip_key(walk, "did-skipped"))
        .kid(work_key(walk, Did::Spilled, "did-spilled", None))
        .kid(work_key(walk, Did::Missing, "did-missing", None));
    bits![count(walk), saves(walk), keys]
}

/// A key that saves at once. What is usual today stands out, where anything is.
pub(super) fn work_key(walk: Walk, did: Did, mark: &'static str, usual: Option<Memo<Option<Did>>>) -> El {
    let key = big(w::did_key(did), mark, move || log::work(walk, did));
    let Some(usual) = usual else { return key };
    key.live_class(move || if usual.get() == Some(did) { "key key-big key-usual" } else { "key key-big" })
}

/// The number of beetles and the keys that count them.
fn count(walk: Walk) -> El {
    let said = move || {
        let text = walk.count.get();
        let text = if text.trim().is_empty() { w::NOT_COUNTED.to_owned() } else { w::own(&text) };
        [w::BEETLES, ": ", &text].concat()
    };
    let wrong = move || {
        let wrong = walk.count.with(|text| draft::count(text)).err().map(en_typed::count);
        wrong.map(|wrong| el("p").class("field-says field-wrong").text(&wrong))
    };
    let mut keys = el("div").class("dock-keys dock-four");
    for (by, label, mark) in
        [(-1, "−1", "count-less"), (1, "+1", "count-1"), (5, "+5", "count-5"), (20, "+20", "count-20")]
    {
        let key = big("", mark, move || walk.count.update(|text| *text = draft::counted(text, by)));
        // One less than nothing counted yet is none: the key says so until there is a count.
        let words = move || {
            let none = by < 0 && walk.count.with(|text| text.trim().is_empty());
            if none { "0" } else { label }.to_owned()
        };
        let name = move || [w::BEETLES, " ", &words()].concat();
        keys = keys.kid(key.live_text(words).live_attr("aria-label", move || Some(name())));
    }
    el("div")
        .class("dock-count")
        .attr("role", "group")
        .attr("aria-label", w::COUNT_KEYS)
        .kid(el("p").class("dock-number").attr("role", "status").test_id("count").live_text(said))
        .kid(keys)
        .kid(live(wrong))
}

/// A question, or why nothing was written; takes the focus.
fn asks(mark: &'static str) -> El {
    el("div").class("dock-ask").attr("tabindex", "-1").test_id(mark)
}

fn reasons(walk: Walk) -> Bit {
    let all = [
        (SkipReason::Temper, "skip-temper"),
        (SkipReason::Robbing, "skip-robbing"),
        (SkipReason::Weather, "skip-weather"),
        (SkipReason::NoTime, "skip-no_time"),
        (SkipReason::Other, "skip-other"),
    ];
    let mut keys = el("div").class("dock-keys");
    for (why, mark) in all {
        keys = keys.kid(big(w::skip_key(why), mark, move || log::skip(walk, why)));
    }
    bits![asks("skip-why").text(w::WHY_SKIP), keys.kid(back(walk, w::BACK))]
}

fn back(walk: Walk, label: &str) -> El {
    big(label, "ask-back", move || walk.ask.set(Ask::Nothing))
}

/// One key for all traps that can be so, one for each.
fn which(walk: Walk, did: Did) -> Bit {
    let traps = log::found(walk, did);
    let save = move |traps: Vec<ThingId>| log::work_on(walk, did, traps);
    let all: Vec<ThingId> = traps.iter().map(|(trap, _)| trap.clone()).collect();
    let words = w::all_traps_key(u32::try_from(all.len()).unwrap_or(u32::MAX));
    let mut keys =
        work_keys(walk, "dock-keys dock-two").kid(big(&words, "which-all", move || save(all.clone())));
    for (trap, place) in traps {
        keys = keys.kid(big(&place, "which-trap", move || save(vec![trap.clone()])));
    }
    let tag = walk.records.book.with_untracked(|book| {
        let now = walk.open.get_untracked().and_then(|hive| book.standing().hives.get(&hive));
        now.map(|now| now.tag.clone()).unwrap_or_default()
    });
    bits![asks("which").text(&w::which(&tag, did)), keys.kid(back(walk, w::BACK))]
}

fn question(walk: Walk, doubts: &[Doubt], shifts: Option<Vec<Shift>>) -> Bit {
    let mut words = Vec::new();
    for doubt in doubts {
        words.push(w::doubt(*doubt));
    }
    let (yes, no) = if doubts == [Doubt::Twice] { (w::ONE_MORE, w::NO) } else { (w::SAVE_AS_IS, w::CHANGE) };
    let save = primary(yes, "save-as-is", move || log::as_is(walk));
    let keys = el("div").class("dock-keys").kid(back(walk, no)).kid(save);
    let today = walk.today.get_untracked();
    let shifts =
        shifts.map(|shifts| shifts::view(walk.records.book, today, THIS, RwSignal::new(Some(shifts))));
    bits![asks("doubt").text(&words.join(" ")), shifts, keys]
}

fn stopped(walk: Walk, stop: &Stop) -> Bit {
    let way_out = match stop {
        Stop::Refused(Refusal::Ended { .. }) => Some(primary(w::REVIVE, "revive", move || log::revive(walk))),
        Stop::Refused(Refusal::BeforeHive { .. }) => {
            Some(primary(w::STOOD_THERE, "stood-there", move || log::stood_there(walk)))
        }
        Stop::OnlyShows => Some(primary(WRITE_AGAIN, "panel-write-again", move || {
            walk.records.set_only_shows(false);
            walk.ask.set(Ask::Nothing);
        })),
        _ => None,
    };
    let keys = el("div").class("dock-keys").kid(back(walk, w::CHANGE)).kid(way_out);
    bits![asks("refusal").kid(Notice::alarm(said::stop(stop)).view()), keys]
}
