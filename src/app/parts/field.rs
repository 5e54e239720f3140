//! A field for typed text. It never changes what was typed, and says beside it what it understood or what is wrong.

use crate::almanac::quantity::{LengthUnit, VolumeUnit};
use crate::app::prefs;
use crate::app::wording::en;
use leptos::prelude::*;

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
pub struct Field {
    id: String,
    label: String,
    text: RwSignal<String>,
    keyboard: Keyboard,
    unit: Unit,
    hint: Option<String>,
    says: Option<Signal<Says>>,
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
        Field {
            id: id.into(),
            label: label.into(),
            text,
            keyboard: Keyboard::Words,
            unit: Unit::None,
            hint: None,
            says: None,
            wide: false,
        }
    }

    /// Brings up digits.
    #[must_use]
    pub fn whole(mut self) -> Field {
        self.keyboard = Keyboard::Whole;
        self
    }

    /// Brings up digits and a separator.
    #[must_use]
    pub fn decimal(mut self) -> Field {
        self.keyboard = Keyboard::Decimal;
        self
    }

    /// Brings up the phone's own calendar; the text is `YYYY-MM-DD`, so no order of day and month can be mistaken.
    #[must_use]
    pub fn day(mut self) -> Field {
        self.keyboard = Keyboard::Day;
        self
    }

    /// A unit that cannot be changed.
    #[must_use]
    pub fn unit(mut self, unit: impl Into<String>) -> Field {
        self.unit = Unit::Fixed(unit.into());
        self
    }

    /// A chooser of volume units; `unit` holds the code (`prefs::volume_unit` reads it).
    #[must_use]
    pub fn volume(mut self, unit: RwSignal<String>) -> Field {
        let units = VolumeUnit::ALL.map(|unit| (prefs::volume_code(unit), en::volume_name(unit)));
        self.unit = Unit::Chosen(unit, units.to_vec());
        self
    }

    /// A chooser of length units; `unit` holds the code (`prefs::length_unit` reads it).
    #[must_use]
    pub fn length(mut self, unit: RwSignal<String>) -> Field {
        let units = LengthUnit::ALL.map(|unit| (prefs::length_code(unit), en::length_name(unit)));
        self.unit = Unit::Chosen(unit, units.to_vec());
        self
    }

    /// A line between label and input.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Field {
        self.hint = Some(hint.into());
        self
    }

    /// What the field says about its text, under it.
    #[must_use]
    pub fn says(mut self, says: impl Fn() -> Says + Send + Sync + 'static) -> Field {
        self.says = Some(Signal::derive(says));
        self
    }

    /// As wide as the card, for names and notes.
    #[must_use]
    pub fn wide(mut self) -> Field {
        self.wide = true;
        self
    }

    /// The field.
    pub fn view(self) -> AnyView {
        let Field { id, label, text, keyboard, unit, hint, says, wide } = self;
        let (kind, mode) = match keyboard {
            Keyboard::Words => ("text", "text"),
            Keyboard::Whole => ("text", "numeric"),
            Keyboard::Decimal => ("text", "decimal"),
            Keyboard::Day => ("date", "none"),
        };
        let mode = (kind == "text").then_some(mode);
        let says_id = [&id, "-says"].concat();
        let hint_id = hint.is_some().then(|| [&id, "-hint"].concat());
        let described = match &hint_id {
            Some(hint_id) => [hint_id, " ", &says_id].concat(),
            None => says_id.clone(),
        };
        let hint = hint.map(|hint| view! { <p class="field-hint" id=hint_id.unwrap_or_default()>{hint}</p> });
        let unit = unit_view(unit, &id, &label);
        view! {
            <div class=if wide { "field field-wide" } else { "field" }>
                <label for=id.clone()>{label}</label>
                {hint}
                <div class="field-row">
                    <input
                        id=id
                        type=kind
                        inputmode=mode
                        autocomplete="off"
                        spellcheck="false"
                        dir="auto"
                        aria-describedby=described
                        aria-invalid=move || wrong(says).then_some("true")
                        prop:value=move || text.get()
                        on:input=move |event| text.set(event_target_value(&event))
                    />
                    {unit}
                </div>
                {says_view(says, says_id)}
            </div>
        }
        .into_any()
    }
}

/// Whether a field has something to mend.
pub(super) fn wrong(says: Option<Signal<Says>>) -> bool {
    says.is_some_and(|says| says.with(|says| matches!(says, Says::Wrong(_))))
}

/// The line under a field.
pub(super) fn says_view(says: Option<Signal<Says>>, id: String) -> AnyView {
    let class = move || if wrong(says) { "field-says field-wrong" } else { "field-says" };
    let text = move || match says.map(|says| says.get()).unwrap_or_default() {
        Says::Nothing => String::new(),
        Says::Echo(text) | Says::Wrong(text) => text,
    };
    view! { <p id=id class=class>{text}</p> }.into_any()
}

fn unit_view(unit: Unit, id: &str, label: &str) -> AnyView {
    match unit {
        Unit::None => ().into_any(),
        Unit::Fixed(unit) => view! { <span class="field-unit">{unit}</span> }.into_any(),
        Unit::Chosen(chosen, units) => {
            let options = units.into_iter().map(|(code, name)| {
                view! {
                    <option value=code selected=move || chosen.with(|chosen| chosen == code)>
                        {name}
                    </option>
                }
            });
            view! {
                <select
                    id=[id, "-unit"].concat()
                    class="field-unit"
                    autocomplete="off"
                    aria-label=en::unit_of(label)
                    on:change=move |event| chosen.set(event_target_value(&event))
                >
                    {options.collect_view()}
                </select>
            }
            .into_any()
        }
    }
}
