//! The walk as the screens share it: which hive is open, what stands in its fields, what is asked.

use super::draft::{self, Drafts, Typed};
use crate::almanac::day::Day;
use crate::almanac::json;
use crate::app::edge::pause::keep_rested;
use crate::app::edge::slot;
use crate::app::graph::{
    RwSignal, StoredValue, after, effect_since, expect_context, provide_context, untrack,
};
use crate::app::records::{Records, Stop};
use crate::app::state::Ui;
use crate::app::wording::en_round as w;
use crate::book::entry::{Did, SkipReason};
use crate::book::id::{EntryId, ThingId};
use crate::book::shift::Shift;
use crate::book::write::Doubt;
use std::ops::Deref;

/// A wet screen taps by itself: keys that come up under the thumb wait this long, in milliseconds.
const GUARD: u64 = 300;

/// What the panel asks before it goes on.
#[derive(Clone, Debug, PartialEq)]
pub enum Ask {
    /// Nothing.
    Nothing,
    /// Why the hive is skipped.
    Skip,
    /// Which traps were found so.
    Which(Did),
    /// Whether to save in spite of doubts, and which due dates a backdated entry would change.
    Doubts(Vec<Doubt>, Option<Vec<Shift>>),
    /// Nothing; it says why nothing was written.
    Stopped(Stop),
}

/// A card shown after a save, until the next one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Card {
    /// A trap that does not fish any more.
    Trouble(Did),
    /// The level went up.
    Rose,
    /// Many bodies hide the loss of oil.
    Flatters,
}

/// The key that was pressed last at the open hive.
#[derive(Clone, Debug, PartialEq)]
pub enum Wish {
    /// Work on these traps; without any, on those the fields name.
    Work(Did, Vec<ThingId>),
    /// Traps of a kind put in.
    Placed(ThingId),
    /// Left.
    Skip(SkipReason),
}

/// What stood in the fields when a hive was logged, for the keeper who takes it back.
#[derive(Clone)]
pub struct Logged {
    /// The last entry of the act.
    pub entry: EntryId,
    /// The hive.
    pub hive: ThingId,
    /// Its fields.
    pub typed: Typed,
    /// The day, as typed.
    pub day: String,
    /// Somebody had to stand there: see [`super::walk::calls`].
    pub called: bool,
}

/// The context of the Round: an address, as [`Ui`] is.
#[derive(Clone, Copy)]
pub struct Walk(&'static Parts);

/// What [`Walk`] leads to.
pub struct Parts {
    /// The book.
    pub records: Records,
    /// Today, by the clock of the yard that is shown.
    pub today: RwSignal<Day>,
    /// The hive whose panel is open.
    pub open: RwSignal<Option<ThingId>>,
    /// Field: level found.
    pub before: RwSignal<String>,
    /// Field: level left.
    pub after: RwSignal<String>,
    /// Field: beetles.
    pub count: RwSignal<String>,
    /// Field: note.
    pub note: RwSignal<String>,
    /// The traps it is about; none means all.
    pub traps: RwSignal<Vec<ThingId>>,
    /// Field: day entries are written for; empty is today. Stays from hive to hive.
    pub day: RwSignal<String>,
    /// Levels, note and day are shown.
    pub more: RwSignal<bool>,
    /// What the panel asks.
    pub ask: RwSignal<Ask>,
    /// Cards after the last save, about the hive in `logged`.
    pub cards: RwSignal<Vec<Card>>,
    /// The keys have been there long enough to be meant.
    pub ready: RwSignal<bool>,
    /// The day the fields of the open hive were begun, when it was not today.
    pub begun: RwSignal<Option<Day>>,
    /// What was asked for before the panel said why not.
    pub wish: StoredValue<Option<Wish>>,
    /// The hive that was logged last.
    pub logged: StoredValue<Option<Logged>>,
    /// Hives whose entry the phone did not keep, and what stood in their fields: it stands there still. It outlives a
    /// reload, as the entry does.
    held: StoredValue<Drafts>,
    /// Half-made entries of the other hives.
    drafts: RwSignal<Drafts>,
    turn: StoredValue<u32>,
}

impl Deref for Walk {
    type Target = Parts;

    fn deref(&self) -> &Parts {
        self.0
    }
}

impl Walk {
    /// Makes the context, provides it, and brings back what was half made.
    pub fn provide(ui: Ui, records: Records) -> Walk {
        let own = slot::read_own(slot::DRAFT).map(|text| json::from_text(&text).unwrap_or_default());
        let drafts = records.draft(own);
        let held = slot::read_own(slot::HELD).filter(|_| records.unsaved.with_untracked(Option::is_some));
        let held = held.and_then(|text| json::from_text(&text)).unwrap_or_default();
        let empty = || RwSignal::new(String::new());
        let walk = Walk(Box::leak(Box::new(Parts {
            records,
            today: ui.today,
            open: RwSignal::new(None),
            before: empty(),
            after: empty(),
            count: empty(),
            note: empty(),
            traps: RwSignal::new(Vec::new()),
            day: RwSignal::new(drafts.day.clone()),
            more: RwSignal::new(false),
            ask: RwSignal::new(Ask::Nothing),
            cards: RwSignal::new(Vec::new()),
            ready: RwSignal::new(true),
            begun: RwSignal::new(None),
            wish: StoredValue::new(None),
            logged: StoredValue::new(None),
            turn: StoredValue::new(0),
            held: StoredValue::new(held),
            drafts: RwSignal::new(drafts.clone()),
        })));
        provide_context(walk);
        let known =
            |hive: &ThingId| records.book.with_untracked(|book| book.standing().hives.contains_key(hive));
        let half_made = |hive: &ThingId| drafts.get(hive).is_some();
        if let Some(hive) = drafts.open.clone().filter(|hive| known(hive) && half_made(hive)) {
            walk.open_hive(&hive);
            walk.more.set(true);
        }
        effect_since(move |before: Option<bool>| {
            let held = records.unsaved.with(Option::is_some);
            if before == Some(true) && !held {
                untrack(|| walk.kept_at_last());
            }
            held
        });
        // Another tab may have another entry in the making: this tab's own is kept for its reload apart from the desk.
        keep_rested(
            untrack(|| walk.text()),
            move || walk.text(),
            move |text| {
                slot::write_own(slot::DRAFT, text);
                walk.records.keep_draft(&json::from_text(text).unwrap_or_default());
            },
        );
        walk
    }

    /// The context, from inside a view under the frame.
    ///
    /// # Panics
    /// Outside the frame, where nothing is ever shown.
    pub fn get() -> Walk {
        expect_context::<Walk>()
    }

    /// Opens the panel of a hive and brings back what was half made there.
    pub fn open_hive(self, hive: &ThingId) {
        self.put_aside();
        self.show_hive(hive);
    }

    fn show_hive(self, hive: &ThingId) {
        let typed = self.drafts.with_untracked(|drafts| drafts.get(hive).cloned()).unwrap_or_default();
        let today = self.today.get_untracked();
        self.begun.set(typed.begun.filter(|day| *day != today && !typed.is_empty()));
        self.fill(typed);
        self.ask.set(Ask::Nothing);
        self.open.set(Some(hive.clone()));
        self.rest_a_moment();
    }

    /// Remembers what stands in the fields of the open hive, which was just logged.
    pub fn remember_logged(self, called: bool) {
        let last = self.records.act.with_untracked(|act| act.as_ref()?.entries.last().cloned());
        let logged = self.open.get_untracked().zip(last).map(|(hive, entry)| Logged {
            entry,
            hive,
            typed: untrack(|| self.typed()),
            day: self.day.get_untracked(),
            called,
        });
        if let Some(Logged { hive, .. }) = &logged
            && self.held.with_value(|held| held.get(hive).is_some())
        {
            self.hold(hive, Typed::default());
        }
        self.logged.set_value(logged);
    }

    /// Puts back what stood in the fields of a hive whose entry was taken back; `open` shows its panel too.
    pub fn bring_back(self, logged: Logged, open: bool) {
        let Logged { hive, typed, day, .. } = logged;
        self.put_aside();
        self.drafts.update(|drafts| drafts.bring_back(&hive, &typed));
        if open {
            self.day.set(day);
            if typed.beyond_count() {
                self.more.set(true);
            }
            // Not by way of `open_hive`: it would put empty fields over what was just brought back.
            self.show_hive(&hive);
        }
    }

    /// Leaves out what was brought back at a hive that is not open and is logged again.
    pub fn take_again(self, logged: &Logged) {
        self.drafts.update(|drafts| drafts.take_again(&logged.hive, &logged.typed));
    }

    /// Remembers what stands in the fields of the open hive, whose entry the phone did not keep.
    pub fn remember_held(self) {
        if let Some(hive) = self.open.get_untracked() {
            self.hold(&hive, untrack(|| self.typed()));
        }
    }

    fn hold(self, hive: &ThingId, typed: Typed) {
        let mut held = self.held.get_value();
        held.put(hive, typed);
        self.set_held(held);
    }

    fn set_held(self, held: Drafts) {
        let text = if held.is_empty() { String::new() } else { json::to_text(&held) };
        slot::write_own(slot::HELD, &text);
        self.held.set_value(held);
    }

    /// What the phone had not kept is kept now: it no longer stands in the fields, or it would be logged once more. What
    /// was changed there since then stays.
    fn kept_at_last(self) {
        if self.ask.with_untracked(|ask| *ask == Ask::Stopped(Stop::NotSaved)) {
            self.ask.set(Ask::Nothing);
        }
        for (hive, typed) in self.held.get_value().hives {
            if self.open.with_untracked(|open| *open == Some(hive.clone())) {
                if untrack(|| self.typed()).says(&typed) {
                    self.empty_fields();
                }
            } else {
                self.drafts.update(|drafts| drafts.take_again(&hive, &typed));
            }
        }
        self.forget_held();
    }

    /// What was held was put away; what stands in the fields is the keeper's to decide.
    pub fn forget_held(self) {
        self.set_held(Drafts::default());
    }

    /// Shuts the panel. What is half made stays; the next walk is for today again.
    pub fn shut(self) {
        self.put_aside();
        self.day.set(String::new());
        self.ask.set(Ask::Nothing);
        self.open.set(None);
    }

    /// Empties the fields of the open hive.
    pub fn empty_fields(self) {
        self.fill(Typed::default());
        self.begun.set(None);
        if let Some(hive) = self.open.get_untracked() {
            self.drafts.update(|drafts| drafts.put(&hive, Typed::default()));
        }
    }

    /// What stands in the fields of the open hive, begun today when nothing else is known. Tracks them.
    pub fn typed(self) -> Typed {
        Typed {
            before: self.before.get(),
            after: self.after.get(),
            count: self.count.get(),
            note: self.note.get(),
            traps: self.traps.get(),
            begun: self.begun.get().or(Some(self.today.get_untracked())),
        }
    }

    /// The day entries are written for; today when the field cannot be read. Tracks both.
    pub fn day_or_today(self) -> Day {
        let today = self.today.get();
        self.day.with(|text| draft::day(text, today)).unwrap_or(today)
    }

    /// Whether a hive other than the open one has a half-made entry. Tracked.
    pub fn half_made(self, hive: &ThingId) -> bool {
        self.drafts.with(|drafts| drafts.get(hive).is_some())
    }

    /// The hives other than the open one that have a half-made entry. Tracked.
    pub fn begun_hives(self) -> Vec<ThingId> {
        self.drafts.with(|drafts| drafts.hives.iter().map(|(hive, _)| hive.clone()).collect())
    }

    /// What is half made at a hive other than the open one, in words. Tracked.
    pub fn begun_words(self, hive: &ThingId) -> Option<String> {
        self.drafts.with(|drafts| drafts.get(hive).map(|typed| w::begun(&typed.count)))
    }

    fn fill(self, typed: Typed) {
        self.before.renew(typed.before);
        self.after.renew(typed.after);
        self.count.renew(typed.count);
        self.note.renew(typed.note);
        self.traps.renew(typed.traps);
    }

    /// Puts what stands in the fields aside for later.
    fn put_aside(self) {
        let Some(hive) = self.open.get_untracked() else { return };
        let typed = untrack(|| self.typed());
        let held = self.drafts.with_untracked(|drafts| drafts.get(&hive).is_some());
        if !typed.is_empty() || held {
            self.drafts.update(|drafts| drafts.put(&hive, typed));
        }
    }

    /// Everything half made as one text; empty when there is nothing. Tracks all of it.
    fn text(self) -> String {
        let mut drafts = self.drafts.get();
        drafts.day = self.day.get();
        drafts.open = self.open.get();
        if let Some(hive) = drafts.open.clone() {
            drafts.put(&hive, self.typed());
        }
        if drafts.is_empty() { String::new() } else { json::to_text(&drafts) }
    }

    /// Keys under the thumb take no tap for a moment.
    pub fn rest_a_moment(self) {
        let mine = self.turn.get_value() + 1;
        self.turn.set_value(mine);
        self.ready.set(false);
        let wake = move || {
            if self.turn.get_value() == mine {
                self.ready.set(true);
            }
        };
        after(GUARD, wake);
    }
}
