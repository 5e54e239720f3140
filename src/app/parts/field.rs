//! A field for typed text. It never changes what was typed, and says beside it what it understood or what is wrong.

use crate::almanac::quantity::{LengthUnit, VolumeUnit};
use crate::app::el::{Bit, El, el};
use crate::app::graph::RwSignal;
use crate::app::prefs;
use crate::app::wording::en;
use std::rc::Rc;

/// Which keys the phone brings up.
#[derive(Clone, Copy)]
enum Keyboard {
    Words,
    Whole,
    Decimal,
    Day,
}

/// What stands to the right of the input.
enum Unit {
    None,
    Fixed(String),
    Chosen(RwSignal<String>, Vec<(&'static str, &'static str)>),
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
    hint: Option<String>,
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
    pub fn new(id: impl Into<String>, label: impl Into<String>, text: RwSignal<String>) -> Field {
        made(id.into(), label.into(), text)
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

    /// A unit that cannot be changed.
    #[must_use]
    pub fn unit(mut self, unit: impl Into<String>) -> Field {
        self.0.unit = Unit::Fixed(unit.into());
        self
    }

    /// A chooser of volume units; `unit` holds the code (`prefs::volume_unit` reads it).
    #[must_use]
    pub fn volume(mut self, unit: RwSignal<String>) -> Field {
        let units = VolumeUnit::ALL.map(|unit| (prefs::volume_code(unit), en::volume_name(unit)));
        self.0.unit = Unit::Chosen(unit, units.to_vec());
        self
    }

    /// A chooser of length units; `unit` holds the code (`prefs::length_unit` reads it).
    #[must_use]
    pub fn length(mut self, unit: RwSignal<String>) -> Field {
        let units = LengthUnit::ALL.map(|unit| (prefs::length_code(unit), en::length_name(unit)));
        self.0.unit = Unit::Chosen(unit, units.to_vec());
        self
    }

    /// A line between label and input.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Field {
        self.0.hint = Some(hint.into());
        self
    }

    /// What the field says about its text, under it.
    #[must_use]
    pub fn says(mut self, says: impl Fn() -> Says + 'static) -> Field {
        self.0.says = Some(Rc::new(says));
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
        if kind == "text" {
            input = input.attr("inputmode", mode);
        }
        let unit = unit_view(unit, &id, &label);
        el("div")
            .class(if wide { "field field-wide" } else { "field" })
            .kid(el("label").attr("for", &id).text(&label))
            .kid(hint.map(|hint| el("p").class("field-hint").attr("id", &hint_id).text(&hint)))
            .kid(el("div").class("field-row").kid(invalid(input, says.clone())).kid(unit))
            .kid(says_view(says, &says_id))
    }
}

#[inline(never)]
fn made(id: String, label: String, text: RwSignal<String>) -> Field {
    let (keyboard, unit) = (Keyboard::Words, Unit::None);
    Field(Box::new(Made { id, label, text, keyboard, unit, hint: None, says: None, wide: false }))
}

/// Says what there is to say about a field.
pub(super) type SaysFn = Rc<dyn Fn() -> Says>;

/// Marks an input that has something to mend.
pub(super) fn invalid(input: El, says: Option<SaysFn>) -> El {
    match says {
        Some(says) => input
            .live_attr("aria-invalid", move || matches!(says(), Says::Wrong(_)).then(|| "true".to_owned())),
        None => input,
    }
}

/// The line under a field.
pub(super) fn says_view(says: Option<SaysFn>, id: &str) -> El {
    let line = el("p").attr("id", id);
    let Some(says) = says else { return line.class("field-says") };
    let again = says.clone();
    line.live_class(move || match says() {
        Says::Wrong(_) => "field-says field-wrong",
        _ => "field-says",
    })
    .live_text(move || match again() {
        Says::Nothing => String::new(),
        Says::Echo(text) | Says::Wrong(text) => text,
    })
}

fn unit_view(unit: Unit, id: &str, label: &str) -> Bit {
    match unit {
        Unit::None => Bit::Nothing,
        Unit::Fixed(unit) => el("span").class("field-unit").text(&unit).into(),
        Unit::Chosen(chosen, units) => el("select")
            .attr("id", &[id, "-unit"].concat())
            .class("field-unit")
            .attr("autocomplete", "off")
            .attr("aria-label", &en::unit_of(label))
            .kids(units.iter().map(|(code, name)| el("option").attr("value", code).text(name)))
            .typed(chosen)
            .into(),
    }
}
