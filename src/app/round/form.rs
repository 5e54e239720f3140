//! What the forms of hive and yard have in common: the day, writing, and saying why not.

use super::state::Walk;
use super::{draft, said};
use crate::almanac::day::Day;
use crate::almanac::typed;
use crate::app::bench::Sum;
use crate::app::bench::view::says;
use crate::app::el::{Bit, El, Kid, el, live, target};
use crate::app::graph::{Memo, RwSignal, untrack};
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::link;
use crate::app::place::Place;
use crate::app::records::Stop;
use crate::app::state::Ui;
use crate::app::wording::{en, en_hive as w, en_round, en_typed};
use crate::book::Book;
use crate::book::entry::Entry;
use crate::book::write::{Pen, Refusal};
use web_sys::Element;

/// What a form wants written, from the book, the pen, the day of the form and today.
pub type Make<'a> = &'a dyn Fn(&Book, &Pen, Day, Day) -> Result<Vec<Entry>, Refusal>;

/// The forms of one page. All fields are handles.
#[derive(Clone, Copy)]
pub struct Form {
    /// The walk.
    pub walk: Walk,
    day: RwSignal<String>,
    stop: RwSignal<Option<(&'static str, Stop)>>,
}

impl Form {
    /// No day typed, nothing refused.
    pub fn new(walk: Walk) -> Form {
        Form { walk, day: RwSignal::new(String::new()), stop: RwSignal::new(None) }
    }

    /// The field for the day of everything on the page.
    pub fn day_field(self) -> El {
        Field::new("change-day", w::DAY, self.day)
            .day()
            .hint(w::DAY_HINT)
            .says(move || day_says(self.day, self.walk.today.get()))
            .view()
    }

    /// Writes what `make` makes of the book, the pen, the day of the form and today. `form` names who asks, so that a
    /// refusal is said beside it. True when it is written.
    pub fn put(self, form: &'static str, said: String, make: Make<'_>) -> bool {
        let today = self.walk.today.get_untracked();
        let day = self.day.with_untracked(|text| {
            if text.trim().is_empty() { Ok(today) } else { typed::day_done(text, today) }
        });
        // The field says what is wrong with it.
        let Ok(day) = day else {
            self.stop.set(Some((form, Stop::Refused(Refusal::Future { today }))));
            return false;
        };
        let records = self.walk.records;
        let pen = records.pen();
        let written = records.book.with_untracked(|book| make(book, &pen, day, today));
        match records.put(written, said) {
            Ok(_) => {
                self.stop.set(None);
                // A day that stays would date the next change too, and nobody looks at it again.
                self.day.set(String::new());
                true
            }
            Err(stop) => {
                if stop == Stop::NotSaved {
                    let day = self.day.get_untracked();
                    records.once_kept(Box::new(move || {
                        self.stop.set(None);
                        clear(self.day, &day);
                    }));
                }
                self.stop.set(Some((form, stop)));
                false
            }
        }
    }

    /// The same, and `then` once it is written: now, or when what the phone did not keep is kept after all.
    pub fn put_then(self, form: &'static str, said: String, make: Make<'_>, then: Box<dyn FnOnce()>) {
        if self.put(form, said, make) {
            then();
        } else if self.stop.with_untracked(|stop| matches!(stop, Some((_, Stop::NotSaved)))) {
            self.walk.records.once_kept(then);
        }
    }

    /// Why `form` was refused, read out when it appears.
    pub fn refused(self, form: &'static str) -> El {
        let stop = Memo::new(move || {
            let said = |(who, stop): &(&'static str, Stop)| (*who == form).then(|| said::stop(stop));
            self.stop.with(|stop| stop.as_ref().and_then(said))
        });
        refused_line(stop)
    }
}

/// What a field for a day that may stay empty says.
pub fn day_says(text: RwSignal<String>, today: Day) -> Says {
    text.with(|text| {
        if text.trim().is_empty() {
            return Says::Nothing;
        }
        match typed::day_done(text, today) {
            Ok(day) => Says::Echo(en::echo(&w::day_and_how_far(day, today))),
            Err(error) => Says::Wrong(en_typed::day(error)),
        }
    })
}

/// What a field for a level says.
#[inline(never)]
pub fn level_says(text: RwSignal<String>) -> Says {
    text.with(|typed| says::optional(says::share(text), typed))
}

/// What a field for a count says.
pub fn count_says(text: RwSignal<String>) -> Says {
    match text.with(|text| draft::count(text)) {
        Ok(_) => Says::Nothing,
        Err(error) => Says::Wrong(en_typed::count(error)),
    }
}

/// Empties a field that still says what was written; what was typed there since stays.
pub fn clear(text: RwSignal<String>, written: &str) {
    text.update(|now| {
        if now == written {
            now.clear();
        }
    });
}

/// A line that is empty or says what stopped a form; read out when it appears.
pub fn refused_line(stop: Memo<Option<String>>) -> El {
    el("p")
        .attr("role", "alert")
        .live_class(move || if stop.with(Option::is_some) { "field-says field-wrong" } else { "field-says" })
        .live_text(move || stop.get().unwrap_or_default())
}

/// A stretch of page that opens on tap and is built only then.
pub fn fold<B: Into<Bit>>(title: &'static str, mark: &'static str, body: impl Fn() -> B + 'static) -> El {
    folded(title, mark, Box::new(move |_| body().into()))
}

/// A fold whose body can shut it, and then is built anew when it is opened again.
pub fn shutting(
    title: &'static str,
    mark: &'static str,
    body: impl Fn(RwSignal<bool>) -> Bit + 'static,
) -> El {
    folded(title, mark, Box::new(body))
}

#[inline(never)]
fn folded(title: &'static str, mark: &'static str, body: Box<dyn Fn(RwSignal<bool>) -> Bit>) -> El {
    let opened = RwSignal::new(false);
    let body = live(move || opened.get().then(|| untrack(|| body(opened))));
    let fold = el("details").class("more").test_id(mark);
    fold.live_attr("open", move || opened.get().then(String::new))
        .on("toggle", move |event| {
            // The browser tells late: the part of the page may be gone, and then there is nothing to do.
            if target::<Element>(&event).is_some_and(|details| details.has_attribute("open")) {
                opened.renew(true);
            }
        })
        .kid(el("summary").text(title))
        .kid(el("div").class("more-body").kid(body))
}

/// A field key.
pub fn big(label: &str, mark: &'static str, press: impl Fn() + 'static) -> El {
    pressed(label, mark, Box::new(press))
}

// One piece of code for every key, however many there are.
#[inline(never)]
fn pressed(label: &str, mark: &'static str, press: Box<dyn Fn()>) -> El {
    el("button").attr("type", "button").class("key key-big").test_id(mark).text(label).press(press)
}

/// A field key that leads to another place.
pub fn big_link(label: impl Into<String>, place: &Place) -> El {
    link(label, place).class("key key-big")
}

/// The way to a new yard: the form of the Bench, open.
pub fn add_yard() -> El {
    let ui = Ui::get();
    big_link(en_round::ADD_YARD, &Place::Bench(Some(Sum::Yard))).press(move || ui.new_yard.set(true))
}

/// A field key that goes on.
pub fn primary(label: &str, mark: &'static str, press: impl Fn() + 'static) -> El {
    pressed(label, mark, Box::new(press)).class("key key-big key-primary")
}

/// A row of keys.
pub fn keys(keys: impl Kid) -> El {
    el("p").class("keys").kid(keys)
}

/// The key at the end of a form.
pub fn go(label: &str, mark: &'static str, press: impl Fn() + 'static) -> El {
    at_end(label, mark, Box::new(press))
}

#[inline(never)]
fn at_end(label: &str, mark: &'static str, press: Box<dyn Fn()>) -> El {
    keys(pressed(label, mark, press).class("key key-big key-primary"))
}

/// A native chooser: values with their names.
pub fn select(
    id: &'static str,
    label: &'static str,
    chosen: RwSignal<String>,
    all: &[(String, String)],
) -> El {
    let mut chooser = el("select").attr("id", id).attr("autocomplete", "off");
    for (value, name) in all {
        chooser = chooser.kid(el("option").attr("value", value).text(name));
    }
    let chooser = chooser.typed(chosen);
    el("div").class("field field-wide").kid(el("label").attr("for", id).text(label)).kid(chooser)
}

/// A text area for a note, with what is wrong with it.
pub fn note(id: &'static str, text: RwSignal<String>) -> El {
    let says_id = [id, "-says"].concat();
    let length = move || text.with(|text| text.trim().chars().count());
    let over = move || length().saturating_sub(Entry::NOTE_MOST);
    let says = move || match (over(), length()) {
        (0, 0..=400) => String::new(),
        (0, length) => en_round::note_length(length),
        (over, _) => en_round::note_over(over),
    };
    let area = el("textarea")
        .attr("id", id)
        .attr("rows", "2")
        .attr("dir", "auto")
        .attr("aria-describedby", &says_id)
        .live_attr("aria-invalid", move || (over() > 0).then(|| "true".to_owned()))
        .typed(text);
    el("div").class("field field-wide").kid(el("label").attr("for", id).text(en_round::NOTE)).kid(area).kid(
        el("p")
            .attr("id", &says_id)
            .live_class(move || if over() > 0 { "field-says field-wrong" } else { "field-says" })
            .live_text(says),
    )
}

/// "true" or "false", for attributes that say so.
#[allow(clippy::unnecessary_wraps)] // an attribute that is always there
pub fn yes_no(yes: bool) -> Option<String> {
    Some(if yes { "true" } else { "false" }.to_owned())
}
