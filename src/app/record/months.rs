//! The months of a climate: two figures a row, one unit for all.

use super::draft;
use super::fields::Signals;
use super::form::Form;
use crate::almanac::day::Day;
use crate::app::el::{Bit, El, el};
use crate::app::parts::choice::Choice;
use crate::app::parts::field::says_view;
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
    let head = el("div").class("month").attr("aria-hidden", "true").kid(el("span").class("month-name"));
    let mut rows = el("fieldset")
        .class("choice")
        .kid(el("legend").text(w::MONTHS))
        .kid(head.kids(w::HIGH_LOW.map(|heading| el("span").class("month-head").text(heading))));
    for at in first..first + months {
        let name = u32::try_from(at).map_or("", en::month);
        let mut row = el("div").class("month").kid(el("span").class("month-name").text(name));
        let mut lines = Vec::new();
        for (at, which) in [at, at + months].into_iter().zip(w::HIGH_LOW) {
            let Some((field, own)) = self::field(form, at) else { continue };
            let (input, line) = figure(form, at, field, own, &[name, NEXT, which].concat());
            row = row.kid(input);
            lines.push(line);
        }
        rows = rows.kid(row.kids(lines));
    }
    Bit::from([unit.text(own.unit).view(), rows])
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
        match draft::read(field, &(own.text.get(), String::new()), Day::FIRST) {
            Ok(Some(Answer::Number(figure, _))) => Some(figure),
            _ => None,
        }
    };
    at >= first + months && figure(at).zip(figure(at - months)).is_some_and(|(low, high)| low > high)
}
