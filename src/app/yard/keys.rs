//! The keys that change a yard: hives, order, name, season, the end.

use super::{hives, order};
use crate::almanac::text::{LABEL_MOST, label};
use crate::app::bench::keep::free_name;
use crate::app::edge::clock;
use crate::app::edge::letters::BrowserLetters;
use crate::app::el::{Bit, el, live};
use crate::app::graph::{Memo, RwSignal, StoredValue, untrack};
use crate::app::kinds::{kind_name, same_name};
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::Key;
use crate::app::place::Place;
use crate::app::record::list::ways;
use crate::app::round::form::{Form, Make, big_link, fold, go, keys};
use crate::app::round::{Walk, bits};
use crate::app::state::Ui;
use crate::app::wording::en_bench::keep::twice;
use crate::app::wording::en_records as wr;
use crate::app::wording::en_yard_decides::TITLE as DECIDE;
use crate::app::wording::{en_hive as w, en_round, en_typed};
use crate::book::Book;
use crate::book::entry::What;
use crate::book::id::ThingId;
use crate::book::record::About;
use crate::book::round::likely_kind;
use crate::book::standing::{HiveNow, YardNow};

/// What the forms of a yard share.
#[derive(Clone, Copy)]
pub(super) struct Desk {
    pub(super) form: Form,
    pub(super) yard: StoredValue<ThingId>,
}

impl Desk {
    fn now(self) -> Option<YardNow> {
        let book = self.form.walk.records.book;
        book.with(|book| self.yard.with_value(|yard| book.standing().yards.get(yard).cloned()))
    }

    /// Writes one thing about the yard, today.
    fn about(self, form: &'static str, said: &'static str, what: &What) -> bool {
        let yard = self.yard.get_value();
        self.form.put(form, said.to_owned(), &|book, pen, _, today| {
            book.about_yard(pen, today, today, &yard, what.clone())
        })
    }
}

/// The keys.
pub(super) fn view(walk: Walk, yard: &ThingId) -> Bit {
    let desk = Desk { form: Form::new(walk), yard: StoredValue::new(yard.clone()) };
    bits![
        el("h2").class("part-title").text(w::YARD),
        keys(big_link(DECIDE, &Place::Decide(yard.to_string(), None)).test_id("to-decide")),
        fold(wr::MORE, "write-more", {
            let of = yard.to_string();
            move || ways(&[About::Hives, About::Place, About::Yard], Some(&of))
        }),
        fold(w::ADD_HIVES, "add-hives", move || hives::view(desk)),
        fold(w::ORDER, "order", move || order::view(desk)),
        fold(w::RENAME, "rename-yard", move || rename(desk)),
        fold(w::SEASON, "season", move || season(desk)),
        fold(w::CLOSE, "close-yard", move || close(desk)),
        kinds(desk),
    ]
}

/// The ways to the kinds of trap in this yard, where their days, sizes and packs stand. Those of the demonstration
/// cannot be changed.
fn kinds(desk: Desk) -> Bit {
    let book = desk.form.walk.records.book;
    let used = Memo::new(move || {
        let mut used: Vec<(String, String)> = Vec::new();
        book.with(|book| {
            desk.yard.with_value(|yard| {
                let standing = book.standing();
                let wanted = likely_kind(standing, yard, None);
                for id in standing.kinds.keys().filter(|id| !id.is_demo()) {
                    let mut hives = standing.hives_of(yard, true);
                    let hangs = |hive: &HiveNow| hive.traps().any(|trap| trap.kind == *id);
                    if wanted == Some(id) || hives.any(|(_, hive)| hangs(hive)) {
                        used.push((id.to_string(), w::kind_key(&kind_name(standing, id))));
                    }
                }
            });
        });
        used
    });
    live(move || {
        let mut ways = Vec::new();
        for (id, name) in used.get() {
            ways.push(Bit::One(keys(big_link(name, &Place::Kind(id)).test_id("yard-kind"))));
        }
        ways
    })
}

/// What is said of a name typed for `yard`. Two yards of one name could not be told apart, neither here nor in what is
/// shown to others.
pub fn name_says(book: &Book, yard: &ThingId, text: &str) -> Says {
    let another_has = |name: &str| {
        let mut yards = book.standing().open_yards();
        yards.any(|(id, now)| id != yard && !id.is_demo() && same_name(&now.name, name))
    };
    match label(text, LABEL_MOST, &BrowserLetters) {
        Ok(name) => free_name(&name, &another_has).map_or(Says::Nothing, |free| Says::Wrong(twice(&free))),
        Err(error) => Says::Wrong(en_typed::label(error)),
    }
}

fn rename(desk: Desk) -> Bit {
    let Some(now) = desk.now() else { return Bit::Nothing };
    let text = RwSignal::new(now.name.clone());
    let book = desk.form.walk.records.book;
    let read = move || text.with(|text| label(text, LABEL_MOST, &BrowserLetters));
    let says =
        move || book.with(|book| desk.yard.with_value(|yard| text.with(|text| name_says(book, yard, text))));
    let put = move || {
        let Ok(name) = untrack(read) else { return };
        if untrack(|| matches!(says(), Says::Wrong(_))) {
            return;
        }
        let yard = desk.yard.get_value();
        desk.about("rename", w::RENAMED, &What::YardChanged { yard, name: Some(name), zone: None });
    };
    bits![
        Field::new("yard-name", w::NAME, text).wide().says(says).view(),
        // Whose days count is worth a line only where the phone's own do not.
        (now.zone != clock::own_zone()).then(|| el("p").class("small").text(&en_round::zone(&now.zone))),
        desk.form.refused("rename"),
        go(w::RENAME_KEY, "rename-yard-go", put),
    ]
}

fn season(desk: Desk) -> Bit {
    let resting = Memo::new(move || desk.now().is_some_and(|now| now.paused.is_some()));
    let set = move |running: bool| {
        let yard = desk.yard.get_value();
        let said = if running { w::RESUMED } else { w::PAUSED };
        desk.about("season", said, &What::Season { yard, running });
    };
    let shown = live(move || {
        let resting = resting.get();
        let (how, key) = if resting { (w::RESUME_HOW, w::RESUME) } else { (w::PAUSE_HOW, w::PAUSE) };
        bits![el("p").text(how), go(key, "season-go", move || set(resting))]
    });
    bits![shown, desk.form.refused("season")]
}

fn close(desk: Desk) -> Bit {
    let ui = Ui::get();
    let put = move || {
        let yard = desk.yard.get_value();
        let what = What::YardClosed { yard: yard.clone() };
        let make: Make<'_> = &|book, pen, _, today| book.about_yard(pen, today, today, &yard, what.clone());
        desk.form.put_then("close", w::CLOSED.to_owned(), make, Box::new(move || ui.go(&Place::Round)));
    };
    bits![
        el("p").text(w::CLOSE_HOW),
        desk.form.refused("close"),
        keys(Key::new(w::CLOSE_KEY, put).alarm().mark("close-yard-go").view()),
    ]
}
