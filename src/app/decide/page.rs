//! The ways to the questions of a yard, and whichever of them the address names.

use super::{card, close, comb, freezer, ground, open};
use crate::almanac::day::Day;
use crate::app::edge;
use crate::app::el::{Bit, El, el};
use crate::app::frame::heading;
use crate::app::graph::{Memo, RwSignal};
use crate::app::ledger::words;
use crate::app::parts::key::{Key, link};
use crate::app::place::{Place, Question};
use crate::app::round::form::{big_link, keys};
use crate::app::round::{Walk, bits};
use crate::app::state::Ui;
use crate::app::wording::en_catch::show_all;
use crate::app::wording::en_round::own;
use crate::app::wording::en_yard_decides as w;
use crate::book::Book;
use crate::book::id::ThingId;
use crate::book::standing::Standing;
use crate::book::urgent::{self, Urgent};

/// What every question goes by.
#[derive(Clone)]
pub(super) struct Asked {
    pub(super) ui: Ui,
    pub(super) walk: Walk,
    pub(super) yard: ThingId,
    /// What its hives want on the same day, in one pass over the records for all parts of the page.
    pub(super) urgent: Memo<Vec<(ThingId, Urgent)>>,
}

/// Worked out anew when records, hives or the day change, and not at a tap on the traps.
fn follow<T: PartialEq + 'static>(
    walk: Walk,
    yard: &ThingId,
    work: impl Fn(&Standing, &ThingId, Day) -> T + 'static,
) -> Memo<T> {
    let yard = yard.clone();
    let turn = walk.records.turn();
    Memo::new(move || {
        let (today, _) = (walk.today.get(), turn.get());
        walk.records.book.with_untracked(|book| work(book.standing(), &yard, today))
    })
}

impl Asked {
    /// See [`follow`].
    pub(super) fn follow<T: PartialEq + 'static>(
        &self,
        work: impl Fn(&Standing, &ThingId, Day) -> T + 'static,
    ) -> Memo<T> {
        follow(self.walk, &self.yard, work)
    }

    /// "Hive 7", as a way to its page.
    pub(super) fn way(&self, hive: &ThingId) -> El {
        let name = self.walk.records.book.with_untracked(|book| words::hive_name(book, hive));
        el("a").attr("href", &Place::Hive(hive.to_string()).hash()).text(&name)
    }

    /// The tag of a hive.
    pub(super) fn tag(&self, hive: &ThingId) -> String {
        let tag = |book: &Book| book.standing().hives.get(hive).map(|now| own(&now.tag));
        self.walk.records.book.with_untracked(tag).unwrap_or_default()
    }
}

/// The page.
pub fn view(ui: Ui, walk: Walk, yard: &ThingId, asked: Option<Question>) -> Bit {
    let name = walk.records.book.with_untracked(|book| words::yard_name(book, yard));
    let of = yard.to_string();
    let Some(question) = asked else {
        walk.records.prepare();
        let ways = Question::ALL.map(|asked| {
            let place = Place::Decide(of.clone(), Some(asked));
            el("li").kid(link(w::question(asked), &place).class("key key-big"))
        });
        let wanted = today_list(walk, yard);
        return bits![
            back(name, &Place::Yard(of.clone())),
            heading(w::TITLE),
            wanted,
            el("nav").attr("aria-label", w::INDEX).kid(el("ul").class("ways").test_id("decide").kids(ways)),
        ];
    };
    let of_yard = Asked { ui, walk, yard: yard.clone(), urgent: follow(walk, yard, urgent::of_yard) };
    let body = match question {
        Question::Close => close::view(&of_yard),
        Question::Open => open::view(&of_yard),
        Question::Comb => comb::view(&of_yard),
        Question::Ground => ground::view(&of_yard),
        Question::Freezer => freezer::view(&of_yard),
    };
    bits![
        back([&name, " – ", w::TITLE].concat(), &Place::Decide(of, None)),
        heading(w::question(question)),
        walk.records.book.with_untracked(|book| {
            of_yard.urgent.with_untracked(|urgent| card::under_suspicion(book, urgent, false))
        }),
        el("div").class("ledger decide").kid(body),
    ]
}

/// Hives whose card of the same day stands on their page, dead ones included, which no list of hives shows.
fn today_list(walk: Walk, yard: &ThingId) -> Bit {
    walk.records.book.with_untracked(|book| {
        let mut list = el("ul").class("decide-hives").test_id("decide-today");
        let all = urgent::of_yard(book.standing(), yard, walk.today.get_untracked());
        for (hive, urgent) in &all {
            let way = el("a").attr("href", &Place::Hive(hive.to_string()).hash());
            let way = way.text(&words::hive_name(book, hive));
            list = list.kid(el("li").kid(way).text(": ").text(w::card::wants(urgent.because)));
        }
        (!all.is_empty()).then_some(list).into()
    })
}

fn back(name: String, place: &Place) -> El {
    el("p").class("back").kid(big_link(name, place))
}

/// Hives that are drawn before somebody asks for all.
const FIRST: usize = 12;
/// Hives that a screen shows: the others of the first are drawn once these are.
const SCREEN: usize = 4;

/// Hives to draw now.
pub(super) fn most(all: RwSignal<bool>) -> Memo<usize> {
    let drawn = edge::once_drawn();
    Memo::new(move || match (all.get(), drawn.get()) {
        (true, _) => usize::MAX,
        (false, true) => FIRST,
        (false, false) => SCREEN,
    })
}

/// The key that brings the others of `hives`.
pub(super) fn others(hives: usize, all: RwSignal<bool>) -> Bit {
    let more = hives > FIRST && !all.get();
    let hives = u32::try_from(hives).unwrap_or(u32::MAX);
    more.then(|| keys(Key::new(show_all(hives), move || all.set(true)).mark("decide-all").view())).into()
}

/// A line for each of some texts.
pub(super) fn lines(texts: &[String]) -> El {
    el("ul").class("plain-list").kids(texts.iter().map(|text| el("li").text(text)))
}
