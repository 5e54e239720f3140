//! The months of a climate: two figures a row, one unit for all.

use super::draft;
use super::fields::Signals;
use super::form::Form;
use crate::almanac::climate::{KNOWN, KnownClimate};
use crate::almanac::day::Day;
use crate::almanac::quantity::Decimal;
use crate::app::el::{Bit, El, el};
use crate::app::graph::{RwSignal, effect};
use crate::app::parts::choice::Choice;
use crate::app::parts::field::says_view;
use crate::app::round::form::select;
use crate::app::wording::en;
use crate::app::wording::en_ledger::NEXT;
use crate::app::wording::en_records as w;
use crate::book::record::{Answer, Ask, Blank, Field};

/// Twelve rows under the unit they share; nothing in the form of another blank.
pub(super) fn view(form: Form) -> Bit {
    let (first, months) = Blank::months();
    let (Blank::Climate, Some((field, own))) = (form.blank, field(form, first)) else { return Bit::Nothing };
    let Ask::Number { units, .. } = field.ask else { return Bit::Nothing };
    let mut unit = Choice::new("write-unit", w::MONTHS_UNIT);
    for code in units {
        unit = unit.option(code, w::unit(code));
    }
    let known = RwSignal::new(String::new());
    let mut all = vec![(String::new(), w::OWN_FIGURES.to_owned())];
    for (at, place) in KNOWN.iter().enumerate() {
        all.push((at.to_string(), place.name.to_owned()));
    }
    effect(move || {
        let place = known.with(|at| at.parse().ok().and_then(|at: usize| KNOWN.get(at)));
        let fahrenheit = own.unit.with(|unit| unit == "F");
        if let Some(place) = place {
            fill(form, place, fahrenheit);
        }
    });
    // From now on they are not those of the place any more: another unit leaves them alone.
    let typed = move |_| {
        // Nor does the source speak for them.
        let place = known.with_untracked(|at| at.parse().ok().and_then(|at: usize| KNOWN.get(at)));
        if let (Some(place), Some((_, named))) = (place, self::field(form, 0)) {
            named.text.set([place.name, w::FIGURES_CHANGED].concat());
        }
        known.set(String::new());
    };
    let mut rows = el("fieldset").class("choice").on("input", typed).kid(el("legend").text(w::MONTHS));
    for at in first..first + months {
        let name = u32::try_from(at).map_or("", en::month);
        let mut row = el("div").class("month").kid(el("span").class("month-name").text(name));
        let mut lines = Vec::new();
        for (at, which) in [at, at + months].into_iter().zip(w::HIGH_LOW) {
            let Some((field, own)) = self::field(form, at) else { continue };
            let (input, line) = figure(form, at, field, own, &[name, NEXT, which].concat());
            // With large letters the two stand one above the other: each says in sight which it is.
            let which = el("span").class("month-which").attr("aria-hidden", "true").text(which);
            row = row.kid(el("label").class("month-figure").kids([which, input]));
            lines.push(line);
        }
        rows = rows.kid(row.kids(lines));
    }
    Bit::from([select("write-known", w::KNOWN, known, &all), unit.text(own.unit).view(), rows])
}

/// Fills every field with the figures of a known place, its name and source among them.
fn fill(form: Form, place: &KnownClimate, fahrenheit: bool) {
    let (first, months) = Blank::months();
    let set = |at: usize, text: String| {
        if let Some((_, own)) = field(form, at) {
            own.text.set(text);
        }
    };
    set(0, [place.name, "; ", place.source].concat());
    for (half, figures) in [&place.highs, &place.lows].into_iter().enumerate() {
        for (month, celsius) in figures.iter().enumerate() {
            // To a tenth of a degree Fahrenheit, 0.06 °C: far finer than a climate is known.
            let figure = if fahrenheit { ((celsius * 1.8 + 32.0) * 10.0).round() / 10.0 } else { *celsius };
            let text = Decimal::from_f64(figure).unwrap_or_default().to_string();
            set(first + half * months + month, text);
        }
    }
}

fn figure(form: Form, at: usize, field: &'static Field, own: Signals, label: &str) -> (El, El) {
    let id = ["write-", field.name].concat();
    let says_id = [&id, "-says"].concat();
    let input = el("input")
        .attr("id", &id)
        .test_id(&id)
        .attr("type", "text")
        .attr("autocomplete", "off")
        .attr("aria-label", label)
        .attr("aria-describedby", &says_id)
        .typed(own.text);
    let line = says_view(Some(Box::new(move || form.says(at, field, own))), &says_id, input.element());
    (input, line)
}

fn field(form: Form, at: usize) -> Option<(&'static Field, Signals)> {
    let own = form.signals.with_value(|all| all.get(at).copied())?;
    Some((form.blank.fields().get(at)?, own))
}

/// Whether the mean low in the field at `at` lies above the mean high of its month.
pub(super) fn upside_down(form: Form, at: usize) -> bool {
    let (first, months) = Blank::months();
    let figure = |at: usize| {
        let (field, own) = field(form, at)?;
        match draft::read(field, &(own.text.get(), own.unit.get()), Day::FIRST) {
            Ok(Some(Answer::Number(figure, _))) => Some(figure),
            _ => None,
        }
    };
    at >= first + months && figure(at).zip(figure(at - months)).is_some_and(|(low, high)| low > high)
}
