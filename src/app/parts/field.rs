//! A field for typed text. It never changes what was typed, and says beside it what it understood or what is wrong.

use crate::almanac::quantity::{LengthUnit, VolumeUnit};
use crate::app::el::{Bit, El, el};
use crate::app::graph::RwSignal;
use crate::app::prefs;
use crate::app::wording::en;
use crate::app::wording::en_records;
use web_sys::Element;

/// Which keys the phone brings up.
#[derive(Clone, Copy)]
enum Keyboard {
    Words,
    Whole,
    Decimal,
    Day,
    Time,
    Hour,
}

/// What stands to the right of the input.
enum Unit {
    None,
    Fixed(String),
    /// With the quarts and gallons of bottles, or without.
    Volume(RwSignal<String>, bool),
    Length(RwSignal<String>),
    /// Any of these codes.
    Of(&'static [&'static str], RwSignal<String>),
}

/// A labelled input.
///
/// ```ignore
/// Field::new("holds", "One trap holds", typed.holds)
///     .decimal()
///     .volume(typed.holds_unit)
///     .says(move || match volume.get() { Ok(v) => Says::Echo(…), Err(e) => Says::Wrong(…) })
///     .view()
/// ```
pub struct Field(Box<Made>);

/// A field in the making. It lies still while it is described: a builder that moves from call to call costs a copy of
/// itself at each of them.
struct Made {
    id: String,
    label: String,
    text: RwSignal<String>,
    keyboard: Keyboard,
    unit: Unit,
    hint: Option<&'static str>,
    says: Option<SaysFn>,
    wide: bool,
}

/// What a field says about its text.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub enum Says {
    /// Nothing.
    #[default]
    Nothing,
    /// What was understood, such as "= 1.5 L".
    Echo(String),
    /// What is wrong and what to type instead.
    Wrong(String),
}

impl Field {
    /// A field for words. `id` is unique on the page.
    pub fn new(id: impl AsRef<str>, label: impl AsRef<str>, text: RwSignal<String>) -> Field {
        made(id.as_ref(), label.as_ref(), text)
    }

    /// Brings up digits.
    #[must_use]
    pub fn whole(mut self) -> Field {
        self.0.keyboard = Keyboard::Whole;
        self
    }

    /// Brings up digits and a separator.
    #[must_use]
    pub fn decimal(mut self) -> Field {
        self.0.keyboard = Keyboard::Decimal;
        self
    }

    /// Brings up the phone's own calendar; the text is `YYYY-MM-DD`, so no order of day and month can be mistaken.
    #[must_use]
    pub fn day(mut self) -> Field {
        self.0.keyboard = Keyboard::Day;
        self
    }

    /// Brings up the phone's own calendar and clock; the text is `YYYY-MM-DDTHH:MM`.
    #[must_use]
    pub fn time(mut self) -> Field {
        self.0.keyboard = Keyboard::Time;
        self
    }

    /// Brings up the phone's own clock; the text is `HH:MM`.
    #[must_use]
    pub fn hour(mut self) -> Field {
        self.0.keyboard = Keyboard::Hour;
        self
    }

    /// A chooser of the units with these codes; one alone cannot be changed.
    #[must_use]
    pub fn units(mut self, codes: &'static [&'static str], unit: RwSignal<String>) -> Field {
        self.0.unit = Unit::Of(codes, unit);
        self
    }

    /// A unit that cannot be changed.
    #[must_use]
    pub fn unit(mut self, unit: impl Into<String>) -> Field {
        self.0.unit = Unit::Fixed(unit.into());
        self
    }

    /// A chooser of volume units; `unit` holds the code (`prefs::volume_unit` reads it).
    #[must_use]
    pub fn volume(mut self, unit: RwSignal<String>) -> Field {
        self.0.unit = Unit::Volume(unit, false);
        self
    }

    /// The same for a bottle, which may hold a quart or a gallon (`prefs::measure` reads the code).
    #[must_use]
    pub fn bottle(mut self, unit: RwSignal<String>) -> Field {
        self.0.unit = Unit::Volume(unit, true);
        self
    }

    /// A chooser of length units; `unit` holds the code (`prefs::length_unit` reads it).
    #[must_use]
    pub fn length(mut self, unit: RwSignal<String>) -> Field {
        self.0.unit = Unit::Length(unit);
        self
    }

    /// A line between label and input.
    #[must_use]
    pub fn hint(mut self, hint: &'static str) -> Field {
        self.0.hint = Some(hint);
        self
    }

    /// What the field says about its text, under it.
    #[must_use]
    pub fn says(mut self, says: impl Fn() -> Says + 'static) -> Field {
        self.0.says = Some(Box::new(says));
        self
    }

    /// As wide as the card, for names and notes.
    #[must_use]
    pub fn wide(mut self) -> Field {
        self.0.wide = true;
        self
    }

    /// The field.
    pub fn view(self) -> El {
        let Made { id, label, text, keyboard, unit, hint, says, wide } = *self.0;
        let (kind, mode) = match keyboard {
            Keyboard::Words => ("text", "text"),
            Keyboard::Whole => ("text", "numeric"),
            Keyboard::Decimal => ("text", "decimal"),
            Keyboard::Day => ("date", "none"),
            Keyboard::Time => ("datetime-local", "none"),
            Keyboard::Hour => ("time", "none"),
        };
        let (says_id, hint_id) = ([&id, "-says"].concat(), [&id, "-hint"].concat());
        let described = if hint.is_some() { [&hint_id, " ", &says_id].concat() } else { says_id.clone() };
        let mut input = el("input")
            .attr("id", &id)
            .test_id(&id)
            .attr("type", kind)
            .attr("autocomplete", "off")
            .attr("spellcheck", "false")
            .attr("dir", "auto")
            .attr("aria-describedby", &described)
            .typed(text);
        let line = says_view(says, &says_id, input.element());
        if kind == "text" {
            input = input.attr("inputmode", mode);
        }
        let unit = unit_view(unit, &id, &label);
        el("div")
            .class(if wide { "field field-wide" } else { "field" })
            .kid(el("label").attr("for", &id).text(&label))
            .kid(hint.map(|hint| el("p").class("field-hint").attr("id", &hint_id).text(hint)))
            .kid(el("div").class("field-row").kid(input).kid(unit))
            .kid(line)
    }
}

#[inline(never)]
fn made(id: &str, label: &str, text: RwSignal<String>) -> Field {
    let (id, label) = (id.to_owned(), label.to_owned());
    let (keyboard, unit) = (Keyboard::Words, Unit::None);
    Field(Box::new(Made { id, label, text, keyboard, unit, hint: None, says: None, wide: false }))
}

/// Says what there is to say about a field.
pub(in crate::app) type SaysFn = Box<dyn Fn() -> Says>;

/// The line under a field, which also marks an input that has something to mend.
pub(in crate::app) fn says_view(says: Option<SaysFn>, id: &str, input: &Element) -> El {
    let line = el("p").attr("id", id).class("field-says");
    let Some(says) = says else { return line };
    let (input, shown) = (input.clone(), line.clone());
    line.live_prop(move || {
        let (wrong, text) = match says() {
            Says::Nothing => (false, String::new()),
            Says::Echo(text) => (false, text),
            Says::Wrong(text) => (true, text),
        };
        let _ = if wrong {
            input.set_attribute("aria-invalid", "true")
        } else {
            input.remove_attribute("aria-invalid")
        };
        shown.element().set_class_name(if wrong { "field-says field-wrong" } else { "field-says" });
        shown.element().set_text_content(Some(&text));
    })
}

fn unit_view(unit: Unit, id: &str, label: &str) -> Bit {
    let select = |chosen: RwSignal<String>, options: Vec<El>| {
        el("select")
            .attr("id", &[id, "-unit"].concat())
            .class("field-unit")
            .attr("autocomplete", "off")
            .attr("aria-label", &en::unit_of(label))
            .kids(options)
            .typed(chosen)
            .into()
    };
    match unit {
        Unit::None => Bit::Nothing,
        Unit::Fixed(unit) => el("span").class("field-unit").text(&unit).into(),
        Unit::Of([code], _) => el("span").class("field-unit").text(en_records::unit(code)).into(),
        Unit::Of(codes, chosen) => {
            let option = |code: &&'static str| option(code, en_records::unit(code));
            select(chosen, codes.iter().map(option).collect())
        }
        Unit::Volume(chosen, bottle) => {
            let mut options = Vec::new();
            for unit in VolumeUnit::ALL {
                options.push(option(prefs::volume_code(unit), en::volume_name(unit)));
            }
            if bottle {
                for ((code, ..), name) in prefs::BOTTLES.iter().zip(en::BOTTLES) {
                    options.push(option(code, name));
                }
            }
            select(chosen, options)
        }
        Unit::Length(chosen) => {
            let option = |unit| option(prefs::length_code(unit), en::length_name(unit));
            select(chosen, LengthUnit::ALL.into_iter().map(option).collect())
        }
    }
}

fn option(code: &str, name: &str) -> El {
    el("option").attr("value", code).text(name)
}
