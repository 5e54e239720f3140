//! The form of a record.

use super::draft::{self, Typed};
use super::fields::{self, Signals};
use super::{Of, is_facts, kept, months, of as named, places, save};
use crate::almanac::day::Day;
use crate::almanac::json;
use crate::almanac::typed::count;
use crate::app::bench::draft::Slot;
use crate::app::bench::freezer::MOST_FRAMES;
use crate::app::decide::card;
use crate::app::edge;
use crate::app::edge::hours;
use crate::app::edge::pause::when_rested;
use crate::app::edge::slot;
use crate::app::el::{Bit, el, live};
use crate::app::frame::{focus_heading, heading};
use crate::app::graph::{Memo, RwSignal, StoredValue, effect, on_cleanup, untrack};
use crate::app::kinds::names;
use crate::app::ledger::papers::events::yards;
use crate::app::parts::field::Says;
use crate::app::parts::key::{Key, link};
use crate::app::parts::notice::Notice;
use crate::app::place::{Place, Section};
use crate::app::prefs::WarmthUnit;
use crate::app::records::{Records, Stop};
use crate::app::round::form::keys;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_beetle_honey::GOAL_ABOVE;
use crate::app::wording::en_records as w;
use crate::book::Book;
use crate::book::chilled::chilled;
use crate::book::entry::What;
use crate::book::id::{EntryId, ThingId};
use crate::book::record::{About, Blank, ClockTime, Field, Record};
use crate::book::urgent::comb_left;
use crate::book::write::Refusal;

/// What the parts of the form share. All fields are handles.
#[derive(Clone, Copy)]
pub(super) struct Form {
    pub(super) records: Records,
    pub(super) blank: Blank,
    pub(super) signals: StoredValue<Vec<Signals>>,
    pub(super) day: RwSignal<String>,
    pub(super) yard: RwSignal<String>,
    pub(super) hives: RwSignal<Vec<String>>,
    /// The key was pressed: from now on what lacks is said.
    pub(super) tried: RwSignal<bool>,
    pub(super) stop: RwSignal<Option<Stop>>,
    pub(super) line: StoredValue<Option<EntryId>>,
    /// Frames of comb in the hive on the day of the form: it goes over all records, so not at every key.
    left: Memo<Option<u32>>,
}

/// The form of `blank`, for what the address names.
pub fn view(ui: Ui, records: Records, blank: Blank, of: Option<&str>) -> Bit {
    let Some(named) = records.book.with_untracked(|book| named(book, blank, of)) else {
        return Bit::Many(vec![
            heading(w::blank(blank).title).into(),
            el("p").text(w::NOT_HERE).into(),
            keys(link(en::section(Section::Round), &Place::Round)).into(),
        ]);
    };
    let warmth = ui.prefs.with_untracked(|prefs| prefs.warmth.code());
    let form = Form::new(records, blank, &named, warmth);
    let address = ui.place.with_untracked(Place::hash);
    let left = form.keep(ui, &address);
    let words = w::blank(blank);
    let back = places::back(form, &named);
    Bit::Many(vec![
        el("p").class("back").kid(link(back.1, &back.0)).into(),
        heading(words.title).into(),
        places::about(form, &named).into(),
        left,
        (!words.hint.is_empty()).then(|| el("p").class("small").text(words.hint)).into(),
        el("div")
            .class("card-body write-form")
            .kid(places::view(form, &named))
            .kid(places::day(form))
            .kid(held_back(form))
            .kid(live(move || {
                let hives = form
                    .yard_id()
                    .map(|yard| records.book.with_untracked(|book| fields::hives_of(book, &yard, blank)));
                let hives = hives.unwrap_or_default();
                untrack(|| Bit::from([fields::view(form, blank, &hives), months::view(form)]))
            }))
            .into(),
        save::view(ui, form, address),
    ])
}

/// An alarm where brood disease is suspected in the yard, before bees, comb or honey of it are said to have gone elsewhere.
fn held_back(form: Form) -> Bit {
    if !matches!(form.blank, Blank::Split | Blank::Comb | Blank::Harvest) {
        return Bit::Nothing;
    }
    let said = move || {
        let yard = form.yard_id()?;
        Some(form.records.book.with_untracked(|book| card::suspected(book, &yard, form.today(), true)))
    };
    live(said)
}

impl Form {
    fn new(records: Records, blank: Blank, named: &Of, warmth: &str) -> Form {
        let (record, day, yard) = records.book.with_untracked(|book| begin(book, blank, named));
        let yard = yard.or_else(|| match blank.about() {
            About::Keeper => None,
            _ => records.book.with_untracked(|book| yards(book).first().cloned()),
        });
        let today = today(records, yard.as_ref());
        let mut signals: Vec<Signals> = Vec::new();
        for (field, answer) in record.fields() {
            let (text, mut unit) = draft::shown(field, answer);
            // What nobody has typed yet is asked for in the degrees that the keeper reads.
            if answer.is_none() && unit == WarmthUnit::Celsius.code() {
                warmth.clone_into(&mut unit);
            }
            // The months of a climate share a unit, which its name has not.
            let one = signals.last().filter(|_| blank == Blank::Climate && signals.len() > 1);
            let unit = one.map_or_else(|| RwSignal::new(unit), |one| one.unit);
            signals.push(Signals { text: RwSignal::new(text), unit });
        }
        if let (Blank::Freezer, Of::Open, Some(frames)) = (blank, named, signals.first()) {
            frames.text.set(next_batch(records, today));
        }
        let hives = RwSignal::new(record.hives.iter().map(ToString::to_string).collect::<Vec<_>>());
        let day = RwSignal::new(day.unwrap_or(today).to_string());
        let left = Memo::new(move || {
            let hive = hives.with(|hives| ThingId::parse(hives.first()?).ok())?;
            let day = day.with(|day| Day::parse(day).ok())?;
            records.book.with_untracked(|book| comb_left(book.standing(), &hive, day))
        });
        let line = if let Of::Line(id) = named { Some(id.clone()) } else { None };
        Form {
            records,
            blank,
            signals: StoredValue::new(signals),
            day,
            yard: RwSignal::new(yard.map(|yard| yard.to_string()).unwrap_or_default()),
            hives,
            tried: RwSignal::new(false),
            stop: RwSignal::new(None),
            line: StoredValue::new(line),
            left,
        }
    }

    pub(super) fn yard_id(self) -> Option<ThingId> {
        self.yard.with(|yard| ThingId::parse(yard).ok())
    }

    pub(super) fn today(self) -> Day {
        today(self.records, self.yard_id().as_ref())
    }

    /// What stands in the fields, as one text; read back by [`Form::bring_back`].
    fn text(self) -> String {
        let mut all = vec![self.day.get(), self.yard.get(), self.hives.with(|hives| hives.join(" "))];
        for signals in self.signals.get_value() {
            all.push(signals.text.get());
            all.push(signals.unit.get());
        }
        json::list_to_text(&all)
    }

    fn bring_back(self, text: &str) {
        let Some(all) = json::list_from_text::<String>(text) else { return };
        let signals = self.signals.get_value();
        let [day, yard, hives, rest @ ..] = &*all else { return };
        // Filled in before an update, a form may have had fewer fields.
        let known = |version: u32| {
            let mut known = Vec::new();
            for (field, signals) in self.blank.fields().iter().zip(&signals) {
                if field.since <= version {
                    known.push(*signals);
                }
            }
            Some(known).filter(|known| known.len() * 2 == rest.len())
        };
        let Some(signals) = known(4).or_else(|| known(3)).or_else(|| known(2)) else { return };
        self.day.set(day.clone());
        self.yard.set(yard.clone());
        self.hives.set(hives.split(' ').filter(|hive| !hive.is_empty()).map(str::to_owned).collect());
        for (pair, signals) in rest.chunks(2).zip(signals) {
            if let [text, unit] = pair {
                signals.text.set(text.clone());
                signals.unit.set(unit.clone());
            }
        }
    }

    /// Keeps what is half filled in until it is saved, be the page shut or the phone dead meanwhile. What was left earlier
    /// stands in the fields again, under a line that says so: it may be of another day, and the day stands there as well.
    fn keep(self, ui: Ui, address: &str) -> Bit {
        let name = StoredValue::new([slot::WRITE, address].concat());
        let blank = untrack(|| self.text());
        let first = StoredValue::new(blank.clone());
        let left = RwSignal::new(false);
        if let Some(kept) = name.with_value(|name| slot::read(name)) {
            self.bring_back(&kept);
            left.set(untrack(|| self.text()) != blank);
        }
        // At every key it is only laid ready, and kept once typing rests or the form is left, however soon.
        effect(move || {
            let text = self.text();
            let text = (text != blank).then_some(text);
            ui.write_kept.set_value(Some((name.get_value(), text)));
        });
        when_rested(move || drop(self.text()), move || kept::flush(ui, self.records));
        on_cleanup(move || kept::flush(ui, self.records));
        let clear = move || {
            first.with_value(|first| self.bring_back(first));
            self.tried.set(false);
            self.stop.set(None);
            left.set(false);
            focus_heading();
        };
        live(move || {
            let said = || w::left(Day::parse(&self.day.get_untracked()).ok(), untrack(|| self.today()));
            left.get().then(|| {
                let key = Key::new(w::CLEAR_LEFT, clear).mark("write-clear").view();
                el("div")
                    .class("notice-box")
                    .test_id("write-left")
                    .kid(Notice::caution(said()).view())
                    .kid(keys(key))
            })
        })
    }

    fn typed(self) -> Vec<Typed> {
        let mut typed = Vec::new();
        for signals in self.signals.get_value() {
            typed.push((signals.text.get(), signals.unit.get()));
        }
        typed
    }

    /// What a field says.
    pub(super) fn says(self, at: usize, field: &'static Field, signals: Signals) -> Says {
        match self.lacks(at) {
            Some(said) => Says::Wrong(said),
            None => match fields::echo(field, signals, self.today(), self.tried.get()) {
                Says::Nothing | Says::Echo(_) if let Some(said) = self.remark(at) => {
                    Says::Echo(said.to_owned())
                }
                Says::Nothing if field.name == "frames" => {
                    self.beyond(at).map_or(Says::Nothing, |left| Says::Echo(w::comb_left(left)))
                }
                says => says,
            },
        }
    }

    /// What is to be said of a field that does not keep the record from being kept. Tracked.
    fn remark(self, at: usize) -> Option<&'static str> {
        // No other blank has such fields: its own need not follow each other.
        if !matches!(self.blank, Blank::Trip | Blank::Freezer | Blank::Stock) {
            return None;
        }
        draft::remark(&self.read(), at, &|item| {
            self.records.book.with_untracked(|book| {
                let standing = book.standing();
                standing.kinds.keys().any(|kind| !kind.is_demo() && names(standing, kind, item))
            })
        })
    }

    /// Frames of comb that the hive has, where more are typed as taken out. Of a line that is corrected they are out
    /// already.
    fn beyond(self, at: usize) -> Option<u32> {
        if self.blank != Blank::Comb || self.corrects() {
            return None;
        }
        let left = self.left.get()?;
        let typed = self.read().number(self.blank.fields().get(at)?.name)?.0;
        (typed > f64::from(left)).then_some(left)
    }

    /// What stands in the fields, as far as it can be read. Tracked.
    fn read(self) -> Record {
        draft::record(Record::empty(self.blank, Vec::new()), &self.typed(), self.today()).0
    }

    /// What the book or the form has against the field at `at`.
    pub(super) fn lacks(self, at: usize) -> Option<String> {
        let refused = self.stop.with(|stop| match stop {
            Some(Stop::Refused(Refusal::Backwards { field })) if *field == at => Some(match self.blank {
                Blank::Aims => GOAL_ABOVE,
                Blank::Trip => w::MORE_BACK,
                _ => w::BACKWARDS,
            }),
            Some(Stop::Refused(Refusal::Lacks { field })) if *field == at => Some(w::LACKS),
            _ => None,
        });
        if self.blank == Blank::Climate && months::upside_down(self, at) {
            return Some(w::UPSIDE_DOWN.to_owned());
        }
        refused.map(str::to_owned).or_else(|| {
            if let Some(said) = self.against(at) {
                return Some(said.to_owned());
            }
            let empty = self.blank.fields().get(at).is_some_and(|field| field.must)
                && self
                    .signals
                    .with_value(|all| all.get(at).is_some_and(|own| own.text.with(|t| t.trim().is_empty())));
            (empty && self.tried.get()).then(|| w::LACKS.to_owned())
        })
    }

    /// What the answer at `at` has against it beside the others or by the clock of the yard. Tracked.
    fn against(self, at: usize) -> Option<&'static str> {
        // No other blank has such answers: its fields need not follow each other.
        if !matches!(self.blank, Blank::Look | Blank::Rain | Blank::Harvest) {
            return None;
        }
        draft::against(&self.read(), at, &|| self.now())
    }

    /// What the clock of the yard shows; none where the browser does not know its zone.
    fn now(self) -> Option<ClockTime> {
        let yard = self.yard_id()?;
        let zone = self
            .records
            .book
            .with_untracked(|book| book.standing().yards.get(&yard).map(|yard| yard.zone.clone()))?;
        hours::shown(hours::now(), &zone)
    }

    /// Whether a line is corrected.
    pub(super) fn corrects(self) -> bool {
        self.line.with_value(Option::is_some)
    }

    /// Whether the key was pressed and something is wrong with the field at `at`.
    pub(super) fn wrong(self, at: usize) -> bool {
        let read = || {
            let own = self.signals.with_value(|all| all.get(at).copied())?;
            let field = self.blank.fields().get(at)?;
            draft::read(field, &(own.text.get(), own.unit.get()), self.today()).err()
        };
        self.tried.get() && (self.lacks(at).is_some() || read().is_some())
    }

    pub(super) fn record(self) -> Option<Record> {
        let mut hives = Vec::new();
        // Those in sight: another yard may have been chosen since some were ticked. A line that is corrected keeps its own.
        let offered = self.yard_id().filter(|_| !self.corrects() && self.blank.about() != About::Hive);
        let offered =
            offered.map(|yard| self.records.book.with(|book| fields::hives_of(book, &yard, self.blank)));
        self.hives.with(|all| {
            for hive in all {
                if offered.as_ref().is_none_or(|offered| offered.iter().any(|(id, _)| id == hive)) {
                    hives.extend(ThingId::parse(hive));
                }
            }
        });
        if let Some(line) = self.line.get_value() {
            self.records.book.with(|book| {
                if let Some(What::Record(was)) = book.log().get(&line).map(|line| &line.what) {
                    hives = draft::in_order(&was.hives, &hives);
                }
            });
        }
        let (record, wrong) = draft::record(Record::empty(self.blank, hives), &self.typed(), self.today());
        let against = (0..wrong.len()).any(|at| self.against(at).is_some());
        (!against && wrong.iter().all(Option::is_none)).then_some(record)
    }
}

/// What stands in a form at first: what a line says, what is known already, or nothing; its day and its yard.
fn begin(book: &Book, blank: Blank, named: &Of) -> (Record, Option<Day>, Option<ThingId>) {
    let standing = book.standing();
    match named {
        Of::Line(id) => match book.log().get(id).map(|line| (&line.what, line)) {
            Some((What::Record(record), line)) => (record.clone(), Some(line.day), line.yard.clone()),
            _ => (Record::empty(blank, Vec::new()), None, None),
        },
        Of::Hive(hive) => {
            let yard = standing.hives.get(hive).map(|now| now.yard.clone());
            let known = if is_facts(blank) {
                standing.facts(blank, None, Some(hive))
            } else {
                Record::empty(blank, vec![hive.clone()])
            };
            (known, None, yard)
        }
        Of::Yard(yard) => {
            let known = if is_facts(blank) {
                standing.facts(blank, Some(yard), None)
            } else {
                Record::empty(blank, Vec::new())
            };
            (known, None, Some(yard.clone()))
        }
        Of::Open if is_facts(blank) => (standing.facts(blank, None, None), None, None),
        Of::Open => (Record::empty(blank, Vec::new()), None, None),
    }
}

/// Frames that go into the freezer next: those that wait, up to what fits in where the keeper said so. Nothing where
/// none wait.
fn next_batch(records: Records, today: Day) -> String {
    let waiting = records.book.with_untracked(|book| chilled(book.standing(), 0, today, false).waiting());
    let fit = Ui::get().draft.with_untracked(|draft| {
        let own = !draft.is_example(Slot::freezer_fit);
        own.then(|| count(draft.freezer_fit(), 1, MOST_FRAMES).ok())?
    });
    let next = fit.map_or(waiting, |fit| fit.min(waiting));
    if next > 0 { next.to_string() } else { String::new() }
}

fn today(records: Records, yard: Option<&ThingId>) -> Day {
    yard.map_or_else(|| edge::clock::stamp().day(), |yard| records.today(yard))
}
