//! A pack as codes on this screen, one at a time.

use crate::app::edge::{self, squeeze};
use crate::app::el::{Bit, El, el, live, svg};
use crate::app::graph::{RwSignal, StoredValue, after, effect, untrack};
use crate::app::load::page::tick;
use crate::app::round::form::{big, keys};
use crate::app::wording::en_hand_over::give as w;
use crate::papers::codes::{self, Packed};
use std::rc::Rc;
use web_sys::Element;

/// A code stands this long, in milliseconds: a camera needs about one second to find it.
const STAND: u64 = 2_500;

/// Where they stand.
const PART: &str = "codes-part";

/// The codes that are shown.
#[derive(Clone, Copy)]
struct Shown {
    texts: RwSignal<Vec<String>>,
    at: RwSignal<usize>,
    /// They turn by themselves.
    turn: RwSignal<bool>,
    /// Counts the starts and stops of that, and what is packed: an earlier one stops when it sees another.
    turns: StoredValue<u32>,
    said: RwSignal<&'static str>,
}

/// The key, and the codes once it was pressed. `make` makes the text; whatever `follow` reads puts the codes away when it
/// changes, for they are no longer of what is chosen.
pub(super) fn view(follow: impl Fn() + 'static, make: impl Fn() -> Option<String> + 'static) -> Bit {
    let shown = Shown {
        texts: RwSignal::new(Vec::new()),
        at: RwSignal::new(0),
        turn: RwSignal::new(false),
        turns: StoredValue::new(0),
        said: RwSignal::new(""),
    };
    effect(move || {
        follow();
        shown.away();
    });
    let make = Rc::new(make);
    let part = live(move || {
        let many = shown.texts.with(Vec::len);
        let make = make.clone();
        untrack(|| {
            if many > 0 {
                return shown.codes(many);
            }
            let show = move || match make() {
                Some(text) => shown.show(text),
                None => shown.said.set(w::NO_HIVE),
            };
            Bit::Many(vec![
                el("p").text(w::CODES_HOW).into(),
                keys(big(w::SHOW, "codes-show", show)).into(),
                el("p").attr("role", "status").live_text(move || shown.said.get().to_owned()).into(),
            ])
        })
    });
    // Its keys come and go; the focus stays on what they are in.
    el("div").class("stack").attr("id", PART).attr("tabindex", "-1").kid(part).into()
}

impl Shown {
    fn away(self) {
        self.stop();
        self.said.set("");
        self.at.set(0);
        self.texts.set(Vec::new());
    }

    fn show(self, text: String) {
        let mine = self.turned();
        squeeze::pack(text.into_bytes(), move |packed| {
            // What is chosen has changed while it was packed, or this part of the page is gone.
            if mine.is_none() || self.turns.try_update_value(|turns| *turns) != mine {
                return;
            }
            let texts = match packed {
                Ok(bytes) => codes::write(&bytes, Packed::Deflated),
                Err(bytes) => codes::write(&bytes, Packed::No),
            };
            let Some(texts) = texts else { return self.said.set(w::TOO_MUCH) };
            let several = texts.len() > 1;
            self.texts.set(texts);
            edge::after_paint(|| edge::focus(PART));
            // Nothing moves by itself where the phone is told so.
            if several && !edge::still() {
                self.start();
            }
        });
    }

    fn start(self) {
        self.turn.set(true);
        if let Some(mine) = self.turned() {
            self.later(mine);
        }
    }

    fn stop(self) {
        self.turn.set(false);
        self.turned();
    }

    /// The count of starts and stops; none when this part of the page is gone.
    fn turned(self) -> Option<u32> {
        self.turns.try_update_value(|turns| {
            *turns = turns.wrapping_add(1);
            *turns
        })
    }

    fn later(self, mine: u32) {
        after(STAND, move || {
            // None when this part of the page is gone.
            if self.turns.try_update_value(|turns| *turns) == Some(mine) {
                self.step(1);
                self.later(mine);
            }
        });
    }

    fn step(self, by: usize) {
        let many = self.texts.with_untracked(Vec::len).max(1);
        self.at.update(|at| *at = (*at + by) % many);
    }

    fn codes(self, many: usize) -> Bit {
        // A key pressed is a wish to look at one of them.
        let to = move |by: usize| {
            move || {
                self.stop();
                self.step(by);
            }
        };
        let place = move || w::code(self.at.get() + 1, many);
        let turn = (many > 1 && !edge::still()).then(|| {
            let set = move |on: bool| if on { self.start() } else { self.stop() };
            tick(w::TURN, move || self.turn.get(), set).test_id("codes-turn")
        });
        let steps = (many > 1).then(|| {
            keys(vec![big(w::BEFORE, "code-before", to(many - 1)), big(w::NEXT, "code-next", to(1))])
        });
        let put_away = move || {
            self.away();
            edge::after_paint(|| edge::focus(PART));
        };
        let frame = el("div").class("code");
        let room = frame.element().clone();
        Bit::Many(vec![
            frame.kid(live(move || self.symbol(&room))).into(),
            el("p").class("lead code-place").test_id("code-place").live_text(place).into(),
            steps.into(),
            turn.into(),
            keys(big(w::HIDE, "codes-away", put_away)).into(),
        ])
    }

    fn symbol(self, room: &Element) -> Option<El> {
        let at = self.at.get();
        let symbol = self.texts.with_untracked(|texts| codes::symbol(texts.get(at)?))?;
        let side = symbol.side.to_string();
        let many = self.texts.with_untracked(Vec::len);
        let picture = svg("svg")
            .attr("viewBox", &["0 0 ", &side, " ", &side].concat())
            .attr("shape-rendering", "crispEdges")
            .attr("role", "img")
            .attr("aria-label", &w::code(at + 1, many))
            .test_id("code")
            .kid(svg("rect").attr("width", &side).attr("height", &side).attr("fill", "#fff"))
            .kid(svg("path").attr("d", &symbol.path).attr("fill", "#000"));
        let (room, drawn, modules) = (room.clone(), picture.element().clone(), f64::from(symbol.side));
        edge::before_paint(move || edge::whole_steps(&drawn, &room, modules));
        Some(picture)
    }
}
