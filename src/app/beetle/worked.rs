//! How dates were worked out: the day-by-day table of one of the three, the constants and the sources.

use super::reckon::Find;
use super::season::probed;
use crate::almanac::day::Day;
use crate::almanac::stage::{Edge, Step};
use crate::app::edge::locale;
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::parts::choice::Choice;
use crate::app::parts::key::Key;
use crate::app::round::bits;
use crate::app::state::Ui;
use crate::app::wording::en_beetle::{self as w, worked as ww};
use crate::app::wording::{en, en_round};

/// A key that opens it: nobody waits for a table that nobody asked for.
pub(super) fn view(ui: Ui, find: Memo<Option<Find>>) -> Bit {
    let open = RwSignal::new(false);
    let edge = RwSignal::new(w::edge(Edge::Likely).to_owned());
    let key = Key::new(w::WORKED, move || open.update(|open| *open = !*open)).mark("worked");
    let shown = live(move || {
        open.get().then(|| {
            untrack(|| {
                let which = Edge::ALL.map(|edge| (w::edge(edge), w::edge(edge)));
                let choice = Choice::new("worked-edge", ww::WHICH).options(&which).text(edge).view();
                bits![choice, live(move || body(ui, find, edge))]
            })
        })
    });
    bits![el("p").class("keys").kid(key.view()), shown]
}

fn body(ui: Ui, find: Memo<Option<Find>>, edge: RwSignal<String>) -> Bit {
    let edge = edge.with(|edge| Edge::ALL.into_iter().find(|known| w::edge(*known) == edge));
    let edge = edge.unwrap_or(Edge::Likely);
    let (unit, today) = (ui.prefs.get().warmth, ui.today.get());
    let steps = find.with(|find| find.as_ref().map(|find| find.sighting.steps(&find.walk(), edge)));
    let steps = steps.unwrap_or_default();
    let table: Bit = if steps.is_empty() {
        el("p").text(ww::NONE).into()
    } else {
        let [day, stage, _, that_day, so_far] = ww::HEADINGS;
        let head = [day, stage, en::warmth_name(unit), that_day, so_far];
        let mut rows = el("ul")
            .class("worked")
            .test_id("worked-table")
            .kid(el("li").kids(head.map(|name| el("strong").text(name))));
        for step in &steps {
            rows = rows.kid(row(step, edge, unit, today));
        }
        rows.into()
    };
    let small = |text: &str| el("p").class("small").text(text);
    let soil = find.with(|find| find.as_ref().and_then(|find| probed(ui, find.soil.as_ref()?)));
    let mut bits: Vec<Bit> = vec![small(ww::TABLE).into(), table, soil.into()];
    for text in ww::SHARES {
        bits.push(small(text).into());
    }
    bits.push(small(ww::FIXED).into());
    bits.push(small(w::RULE).into());
    bits.push(small(ww::SOURCES).into());
    Bit::Many(bits)
}

/// One day: its temperature at this edge, the share of the stage it does, and the sum.
fn row(step: &Step, edge: Edge, unit: crate::app::prefs::WarmthUnit, today: Day) -> El {
    let warmth = step.span.map(|span| {
        let day = edge.of([span.warm, span.likely, span.cool]);
        let (low, high) = (day.low.celsius(), day.high.celsius());
        if high - low < 0.05 {
            return locale::warmth_bare(low, unit);
        }
        [&locale::warmth_bare(low, unit), "–", &locale::warmth_bare(high, unit)].concat()
    });
    let part = if step.dry { w::DRY.to_owned() } else { locale::number(step.rate * step.part, 4) };
    let cells = [
        en_round::near(step.day, today),
        w::stage(step.stage).to_owned(),
        warmth.unwrap_or_else(|| en::NO_ANSWER.to_owned()),
        part,
        locale::number(step.sum, 4),
    ];
    el("li").kids(cells.map(|cell| el("span").text(&cell)))
}
