//! The form of a record.

use super::draft::{self, Typed};
use super::fields::{self, Signals};
use super::{Of, home, is_facts, kept, of as named};
use crate::almanac::day::Day;
use crate::almanac::json;
use crate::almanac::typed::day_done;
use crate::app::edge;
use crate::app::edge::letters::BrowserLetters;
use crate::app::edge::pause::when_rested;
use crate::app::edge::slot;
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::{focus, heading};
use crate::app::graph::{Memo, RwSignal, StoredValue, effect, on_cleanup, untrack};
use crate::app::ledger::papers::events::yards;
use crate::app::ledger::words;
use crate::app::load::page::tick;
use crate::app::parts::field::{Field as Typing, Says, says_view};
use crate::app::parts::key::{Key, link};
use crate::app::place::{Place, Section};
use crate::app::records::{Records, Stop};
use crate::app::round::form::{day_says, go, keys, refused_line, select};
use crate::app::round::said;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_records as w;
use crate::book::Book;
use crate::book::entry::What;
use crate::book::id::{EntryId, ThingId};
use crate::book::record::{About, Blank, Field, Record};
use crate::book::write::Refusal;

/// What the parts of the form share. All fields are handles.
#[derive(Clone, Copy)]
pub(super) struct Form {
    records: Records,
    blank: Blank,
    pub(super) signals: StoredValue<Vec<Signals>>,
    day: RwSignal<String>,
    yard: RwSignal<String>,
    hives: RwSignal<Vec<String>>,
    /// The key was pressed: from now on what lacks is said.
    tried: RwSignal<bool>,
    stop: RwSignal<Option<Stop>>,
    line: StoredValue<Option<EntryId>>,
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
    let form = Form::new(records, blank, &named);
    let address = ui.place.with_untracked(Place::hash);
    form.keep(ui, &address);
    let words = w::blank(blank);
    let back = back(form, &named);
    Bit::Many(vec![
        el("p").class("back").kid(link(back.1, &back.0)).into(),
        heading(words.title).into(),
        about(form, &named).into(),
        (!words.hint.is_empty()).then(|| el("p").class("small").text(words.hint)).into(),
        el("div")
            .class("card-body write-form")
            .kid(places(form, &named))
            .kid(day(form))
            .kid(live(move || {
                let hives = form
                    .yard_id()
                    .map(|yard| records.book.with_untracked(|book| fields::hives_of(book, &yard, blank)));
                let hives = hives.unwrap_or_default();
                untrack(|| fields::view(form, blank, &hives))
            }))
            .into(),
        end(ui, form, address),
    ])
}

impl Form {
    fn new(records: Records, blank: Blank, named: &Of) -> Form {
        let (record, day, yard) = records.book.with_untracked(|book| begin(book, blank, named));
        let yard = yard.or_else(|| match blank.about() {
            About::Keeper => None,
            _ => records.book.with_untracked(|book| yards(book).first().cloned()),
        });
        let today = today(records, yard.as_ref());
        let mut signals = Vec::new();
        for (field, answer) in record.fields() {
            let (text, unit) = draft::shown(field, answer);
            signals.push(Signals { text: RwSignal::new(text), unit: RwSignal::new(unit) });
        }
        let hives = record.hives.iter().map(ToString::to_string).collect();
        let line = if let Of::Line(id) = named { Some(id.clone()) } else { None };
        Form {
            records,
            blank,
            signals: StoredValue::new(signals),
            day: RwSignal::new(day.unwrap_or(today).to_string()),
            yard: RwSignal::new(yard.map(|yard| yard.to_string()).unwrap_or_default()),
            hives: RwSignal::new(hives),
            tried: RwSignal::new(false),
            stop: RwSignal::new(None),
            line: StoredValue::new(line),
        }
    }

    fn yard_id(self) -> Option<ThingId> {
        self.yard.with(|yard| ThingId::parse(yard).ok())
    }

    fn today(self) -> Day {
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
        if rest.len() != signals.len() * 2 {
            return;
        }
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

    /// Keeps what is half filled in until it is saved, be the page shut or the phone dead meanwhile.
    fn keep(self, ui: Ui, address: &str) {
        let name = StoredValue::new([slot::WRITE, address].concat());
        let blank = untrack(|| self.text());
        if let Some(left) = name.with_value(|name| slot::read(name)) {
            self.bring_back(&left);
        }
        // At every key it is only laid ready, and kept once typing rests or the form is left, however soon.
        effect(move || {
            let text = self.text();
            let text = (text != blank).then_some(text);
            ui.write_kept.set_value(Some((name.get_value(), text)));
        });
        when_rested(move || drop(self.text()), move || kept::flush(ui, self.records));
        on_cleanup(move || kept::flush(ui, self.records));
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
            None => fields::echo(field, signals, self.today(), self.tried.get()),
        }
    }

    /// What the book or the form has against the field at `at`.
    pub(super) fn lacks(self, at: usize) -> Option<String> {
        let refused = self.stop.with(|stop| match stop {
            Some(Stop::Refused(Refusal::Backwards { field })) if *field == at => Some(w::BACKWARDS),
            Some(Stop::Refused(Refusal::Lacks { field })) if *field == at => Some(w::LACKS),
            _ => None,
        });
        refused.map(str::to_owned).or_else(|| {
            let empty = self.blank.fields().get(at).is_some_and(|field| field.must)
                && self
                    .signals
                    .with_value(|all| all.get(at).is_some_and(|own| own.text.with(|t| t.trim().is_empty())));
            (empty && self.tried.get()).then(|| w::LACKS.to_owned())
        })
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

    fn record(self) -> Option<Record> {
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
        let (record, wrong) = draft::record(Record::empty(self.blank, hives), &self.typed(), self.today());
        wrong.iter().all(Option::is_none).then_some(record)
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

fn today(records: Records, yard: Option<&ThingId>) -> Day {
    yard.map_or_else(|| edge::clock::stamp().day(), |yard| records.today(yard))
}

/// The place to go back to, and its name.
fn back(form: Form, named: &Of) -> (Place, String) {
    form.records.book.with_untracked(|book| match named {
        Of::Hive(hive) => (Place::Hive(hive.to_string()), words::hive_name(book, hive)),
        Of::Yard(yard) => (Place::Yard(yard.to_string()), words::yard_name(book, yard)),
        Of::Line(_) => (Place::History(None), crate::app::wording::en_book::history::TITLE.to_owned()),
        Of::Open => (Place::Records, w::TITLE.to_owned()),
    })
}

fn about(form: Form, named: &Of) -> El {
    let said = form.records.book.with_untracked(|book| match named {
        Of::Hive(hive) => words::hive_name(book, hive),
        Of::Yard(yard) => words::yard_name(book, yard),
        Of::Line(id) => book.log().get(id).map(|line| words::entry(book, line)).unwrap_or_default(),
        Of::Open => String::new(),
    });
    el("p").class("lead").text(&said)
}

/// Which yard and which hives, where that is still open.
fn places(form: Form, named: &Of) -> Bit {
    let about = form.blank.about();
    let mut bits = Vec::new();
    if *named == Of::Open && about != About::Keeper {
        let all: Vec<(String, String)> = form.records.book.with_untracked(|book| {
            yards(book).iter().map(|id| (id.to_string(), words::yard_name(book, id))).collect()
        });
        bits.push(select("write-yard", w::YARD, form.yard, &all).into());
    }
    if matches!(about, About::Hives | About::Place) {
        bits.push(live(move || {
            let yard = form.yard_id()?;
            let all = form.records.book.with(|book| fields::hives_of(book, &yard, form.blank));
            Some(untrack(|| hives(form, all)))
        }));
    }
    Bit::Many(bits)
}

fn hives(form: Form, all: Vec<(String, String)>) -> El {
    let ids: Vec<String> = all.iter().map(|(id, _)| id.clone()).collect();
    let every = move || form.hives.set(ids.clone());
    let mut ticks = el("div").class("tick-rows");
    for (id, name) in all {
        let own = id.clone();
        let on = move || form.hives.with(|hives| hives.contains(&own));
        let set = move |on: bool| {
            form.hives.update(|hives| {
                hives.retain(|known| *known != id);
                if on {
                    hives.push(id.clone());
                }
            });
        };
        ticks = ticks.kid(tick(&name, on, set));
    }
    let must = form.blank.about() == About::Hives;
    let says = move || {
        let none = must && form.tried.get() && form.hives.with(Vec::is_empty);
        if none { Says::Wrong(w::CHOOSE_HIVE.to_owned()) } else { Says::Nothing }
    };
    let ticks = fields::ticked(w::WHICH_HIVES, ticks);
    let first = fields::input(&ticks);
    let _ = first.set_attribute("aria-describedby", "write-hives-says");
    let line = says_view(Some(Box::new(says)), "write-hives-says", &first);
    let keys = el("p")
        .class("keys")
        .kid(Key::new(w::ALL_HIVES, every).mark("write-all").view())
        .kid(Key::new(w::NO_HIVES, move || form.hives.set(Vec::new())).view());
    ticks.kid(line).kid(keys)
}

fn day(form: Form) -> El {
    let label = if form.blank == Blank::Product { w::FIRST_DAY } else { w::DAY };
    let says = move || match day_says(form.day, form.today()) {
        Says::Nothing => Says::Wrong(w::LACKS.to_owned()),
        says => says,
    };
    Typing::new("write-day", label, form.day).day().says(says).view()
}

/// Puts the focus on the first field that has something to mend; of radio keys and boxes to tick on their first.
fn to_mend() {
    edge::after_paint(|| {
        focus(
            ".write-form :is(input, select, textarea)[aria-invalid=true], .write-form [aria-invalid=true] input",
        );
    });
}

fn end(ui: Ui, form: Form, address: String) -> Bit {
    let stop = Memo::new(move || {
        form.stop.with(|stop| match stop {
            Some(Stop::Refused(Refusal::Backwards { .. } | Refusal::Lacks { .. })) => {
                Some(w::MEND.to_owned())
            }
            stop => stop.as_ref().map(said::stop),
        })
    });
    let address = StoredValue::new(address);
    let save = move |earlier: bool| {
        // What the bar said was saved is not this.
        form.records.act.set(None);
        form.tried.set(true);
        form.stop.set(None);
        let today = untrack(|| form.today());
        let day = form.day.with_untracked(|text| day_done(text, today));
        let (Ok(day), Some(record)) = (day, untrack(|| form.record())) else {
            return to_mend();
        };
        if form.blank.about() == About::Hives && record.hives.is_empty() {
            form.hives.set(Vec::new());
            return to_mend();
        }
        let yard = untrack(|| form.yard_id()).filter(|_| form.blank.about() != About::Keeper);
        let line = form.line.get_value();
        let to = line.as_ref().map_or_else(|| home(&record, yard.as_ref()), |_| Place::History(None));
        let to = ui.write_back.get_value().unwrap_or(to);
        let name = w::saved(w::blank(form.blank).title);
        let written = form.records.book.with_untracked(|book| {
            let pen = form.records.pen();
            match &line {
                Some(id) => book.correct(&pen, day, today, id, What::Record(record), &BrowserLetters),
                None if earlier => book.record_from_start(&pen, day, today, yard.as_ref(), &record),
                None => book.record(&pen, day, today, yard.as_ref(), record),
            }
        });
        let slot = address.with_value(|address| [slot::WRITE, address].concat());
        let here = ui.place.get_untracked();
        let done = move || {
            // Kept later, the keeper may be elsewhere by then.
            if ui.place.get_untracked() == here {
                ui.write_kept.set_value(None);
                ui.write_back.set_value(None);
                ui.go(&to);
            }
            slot::forget(&slot);
        };
        match form.records.put(written, name) {
            Ok(_) => done(),
            Err(stop) => {
                if stop == Stop::NotSaved {
                    form.records.once_kept(Box::new(done));
                }
                form.stop.set(Some(stop));
                to_mend();
            }
        }
    };
    let earlier = live(move || {
        let before = form.stop.with(|stop| matches!(stop, Some(Stop::Refused(Refusal::BeforeHive { .. }))));
        (before && !form.corrects()).then(|| go(w::EARLIER, "write-earlier", move || save(true)))
    });
    let mend = live(move || {
        let wrong = form.tried.get() && (0..form.blank.fields().len()).any(|at| form.wrong(at));
        wrong.then(|| el("p").text(w::MEND))
    });
    Bit::Many(vec![
        refused_line(stop).into(),
        el("div").attr("role", "status").kid(mend).into(),
        earlier,
        go(w::SAVE, "write-save", move || save(false)).into(),
    ])
}
