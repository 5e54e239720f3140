//! "The rest as usual": one entry for every hive that has none, after the keeper has seen the list.

use crate::almanac::day::Day;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, RwSignal, StoredValue, untrack};
use crate::app::parts::choice::Choice;
use crate::app::parts::sheet::sheet;
use crate::app::records::Stop;
use crate::app::round::form::{big, keys, refused_line};
use crate::app::round::{Walk, bits, said, walk};
use crate::app::wording::en_round as w;
use crate::app::wording::en_season::STILL_HERE;
use crate::app::wording::en_yard_decides::card::wants;
use crate::book::entry::Did;
use crate::book::id::ThingId;
use crate::book::round::{HiveDue, Row};
use crate::book::standing::{HiveNow, Trouble};
use crate::book::urgent::{self, Because};

/// The key, while hives are left, and its sheet.
pub(super) fn view(walk: Walk, yard: ThingId, rows: Memo<Vec<Row>>) -> Bit {
    let open = RwSignal::new(false);
    // A memo of its own: a tap at a hive changes what is half made there, and seldom at which hives anything is.
    let begun = Memo::new(move || walk.begun_hives());
    let left = Memo::new(move || {
        begun.with(|begun| rows.with(|rows| walk::rest(rows, &|hive| begun.contains(hive))))
    });
    let any = Memo::new(move || left.with(|left| !left.is_empty()));
    let ask = move || {
        walk.shut();
        walk.rest_a_moment();
        open.set(true);
    };
    let key = move || any.get().then(|| keys(big(w::REST, "rest-as-usual", ask)));
    bits![live(key), sheet(open, w::REST_TITLE, move || untrack(|| body(walk, &yard, rows, left, open))),]
}

fn body(
    walk: Walk,
    yard: &ThingId,
    rows: Memo<Vec<Row>>,
    left: Memo<Vec<ThingId>>,
    open: RwSignal<bool>,
) -> Bit {
    // What the card of a hive says is never the usual. Asked for once the list is open, and not at every tap.
    let cards = StoredValue::new(walk.records.book.with_untracked(|book| {
        let (standing, today) = (book.standing(), walk.today.get_untracked());
        let mut all = Vec::new();
        for (hive, urgent) in urgent::of_yard(standing, yard, today) {
            if urgent.because != Because::Dead {
                all.push((hive, wants(urgent.because)));
            }
        }
        // Nor is a hive without bees, whether or not its combs are accounted for.
        for hive in urgent::dead(standing, yard, today) {
            all.push((hive, STILL_HERE));
        }
        all
    }));
    let card = move |hive: &ThingId| {
        cards.with_value(|cards| cards.iter().find(|(of, _)| of == hive).map(|(_, wants)| *wants))
    };
    let left = Memo::new(move || {
        left.with(|left| left.iter().filter(|hive| card(hive).is_none()).cloned().collect::<Vec<_>>())
    });
    let none = Memo::new(move || left.with(Vec::is_empty));
    let mut all = Vec::new();
    rows.with_untracked(|rows| {
        for row in rows {
            all.extend(row.today.flatten());
        }
    });
    let usual = match walk::usual(&all) {
        Did::AsFound => "as_found",
        _ => "topped_up",
    };
    let did = RwSignal::new(usual.to_owned());
    let stop: RwSignal<Option<Stop>> = RwSignal::new(None);
    let list = move |out: bool| {
        let mut lines = Vec::new();
        let today = walk.today.get();
        walk.records.book.with(|book| {
            rows.with(|rows| {
                for row in rows.iter().filter(|row| row.today.is_none()) {
                    let card = card(&row.hive);
                    if (card.is_some() || walk::left_out(row, &|hive| walk.half_made(hive))) == out
                        && let Some(now) = book.standing().hives.get(&row.hive)
                    {
                        let begun = walk.begun_words(&row.hive);
                        let line = el("li").kid(el("bdi").text(&now.tag)).text(": ");
                        let wants = card.map(|wants| bits![el("strong").text(wants), " · "]);
                        lines.push(Bit::One(why(line.kid(wants), row, now, begun, today)));
                    }
                }
            });
        });
        lines
    };
    let out = live(move || {
        let lines = list(true);
        let some = !lines.is_empty();
        some.then(|| {
            bits![el("p").text(w::REST_OUT), el("ul").class("rest-list").test_id("rest-out").kid(lines)]
        })
    });
    let yard = yard.clone();
    let log = move || {
        if !walk.ready.get_untracked() {
            return;
        }
        let did = if did.with_untracked(|code| code == "as_found") { Did::AsFound } else { Did::ToppedUp };
        let hives = left.get_untracked();
        let today = walk.records.today(&yard);
        let pen = walk.records.pen();
        let written =
            walk.records.book.with_untracked(|book| book.same_for_all(&pen, today, today, &hives, did));
        match walk.records.put(written, w::logged_rest(hives.len(), did)) {
            Ok(_) => open.set(false),
            Err(why) => {
                if why == Stop::NotSaved {
                    walk.records.once_kept(Box::new(move || open.set(false)));
                }
                stop.set(Some(why));
            }
        }
    };
    let choice = Choice::new("rest-did", w::REST_DID)
        .option("topped_up", w::did_key(Did::ToppedUp))
        .option("as_found", w::did_key(Did::AsFound))
        .text(did)
        .view();
    let confirm = el("button")
        .attr("type", "button")
        .class("key key-big key-primary")
        .test_id("rest-confirm")
        .live_text(move || w::rest_confirm(left.with(Vec::len)))
        .live_attr("hidden", move || none.get().then(String::new))
        .press(log);
    bits![
        el("div").class("rest").kid(choice),
        el("p").live_text(move || if none.get() { w::REST_NONE } else { w::REST_LIST }.to_owned()),
        el("ul").class("rest-list").test_id("rest-list").kid(live(move || list(false))),
        out,
        refused_line(Memo::new(move || stop.with(|stop| stop.as_ref().map(said::stop)))),
        keys(confirm),
    ]
}

/// How a hive of the list lies to today: when it is due, whether it was skipped, which of its traps stay as they are, and
/// what is begun there. What speaks against the usual entry stands out.
fn why(line: El, row: &Row, now: &HiveNow, begun: Option<String>, today: Day) -> El {
    let early = matches!(row.due, HiveDue::Due { .. }) && !row.due.now() && row.skipped.is_none();
    let line = line.kid(early.then(|| el("strong").text(w::NOT_YET)));
    let mut said = w::due(&row.due, today);
    if let Some((day, why)) = row.skipped {
        said = [&said, " · ", &w::skipped(day, today, why)].concat();
    }
    if let Some(idle) = now.trouble() {
        let stays = if idle.0 == Trouble::Spilled { "" } else { w::STAYS };
        said = [&said, " · ", &w::idle_traps(idle), stays].concat();
    }
    line.text(&said).kid(begun.map(|begun| bits![" · ", el("strong").text(&begun)]))
}
