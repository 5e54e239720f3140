//! What a card shows of its fields and of its sum, in one shape for all sums, so that the code behind it exists once.

use super::says::{self, Reads};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::el::{Bit, El, el, live};
use crate::app::graph::Memo;
use crate::app::parts::answer::{Answer, Worked};
use crate::app::parts::field::Field;
use crate::app::parts::notice::Notice;
use crate::app::state::Ui;
use crate::app::wording::en;
use crate::app::wording::en_sums::packs;

/// A field of a card.
#[derive(Clone, Copy)]
pub(in crate::app) struct Typed {
    id: &'static str,
    label: &'static str,
    text: Slot,
    unit: Slot,
    reads: Reads,
    may_be_empty: bool,
    hint: Option<&'static str>,
}

impl Typed {
    /// A field that is read as `reads`.
    pub(in crate::app) const fn new(
        id: &'static str,
        label: &'static str,
        text: Slot,
        reads: Reads,
    ) -> Typed {
        Typed { id, label, text, unit: text, reads, may_be_empty: false, hint: None }
    }

    /// The unit beside it.
    pub(in crate::app) const fn unit(self, unit: Slot) -> Typed {
        Typed { unit, ..self }
    }

    /// It may stay empty.
    pub(in crate::app) const fn may_be_empty(self) -> Typed {
        Typed { may_be_empty: true, ..self }
    }

    /// A line between label and input.
    pub(in crate::app) const fn hint(self, hint: &'static str) -> Typed {
        Typed { hint: Some(hint), ..self }
    }

    /// The field, for one that says something of its own.
    pub(in crate::app) fn field(&self, ui: Ui) -> Field {
        let (text, unit) = (ui.bench().text(self.text), ui.bench().text(self.unit));
        let field = says::field(ui, self.id, self.label, (text, unit), self.reads, self.may_be_empty);
        match self.hint {
            Some(hint) => field.hint(hint),
            None => field,
        }
    }

    fn view(&self, ui: Ui) -> El {
        match self.reads {
            Reads::Steps(least, most) => {
                says::stepper(self.id, self.label, ui.bench().text(self.text), least, most)
            }
            _ => self.field(ui).view(),
        }
    }
}

/// The field in one of several rows, with the number of its row behind id and label.
#[inline(never)]
pub(super) fn of_row(ui: Ui, field: &Typed, (text, unit): (Slot, Slot), row: usize) -> El {
    let id = [field.id, &row.to_string()].concat();
    let at = (ui.bench().text(text), ui.bench().text(unit));
    says::field(ui, &id, &packs::row(field.label, row), at, field.reads, field.may_be_empty).view()
}

/// Fields under each other.
pub(in crate::app) fn fields(ui: Ui, rows: &[Typed]) -> El {
    then_fields(el("div").class("fields"), ui, rows)
}

/// More fields under those that stand in `fields`.
#[inline(never)]
pub(super) fn then_fields(fields: El, ui: Ui, rows: &[Typed]) -> El {
    fields.kids(rows.iter().map(|row| row.view(ui)))
}

/// Everything of a card that changes while someone types.
#[derive(PartialEq, Eq, Default)]
pub(in crate::app) struct Shown {
    /// Answers, each with the lines of its sum.
    answers: Vec<Worked>,
    /// Cautions under them.
    pub(in crate::app) cautions: Vec<String>,
    /// Other cases, to compare.
    pub(in crate::app) list: Vec<String>,
}

impl Shown {
    /// One more answer.
    #[inline(never)]
    pub(in crate::app) fn answer(&mut self, big: String) {
        self.answers.push((big, Vec::new()));
    }

    /// A dash, and what it waits for.
    #[inline(never)]
    pub(in crate::app) fn waits(&mut self, what_for: &str) {
        self.answers.push((en::NO_ANSWER.to_owned(), vec![what_for.to_owned()]));
    }

    /// One more line in the sum of the answer before.
    #[inline(never)]
    pub(in crate::app) fn line(&mut self, line: String) {
        if let Some((_, sum)) = self.answers.last_mut() {
            sum.push(line);
        }
    }

    /// A caution.
    #[inline(never)]
    pub(in crate::app) fn caution(&mut self, caution: &str) {
        self.cautions.push(caution.to_owned());
    }
}

/// Fills in what is shown of the fields; nothing counts while one of them cannot be read.
pub(super) type Show = fn(Ui, &BenchDraft, &mut Shown) -> Option<()>;

/// The same with what it goes by beside the fields.
pub(in crate::app) type Shows = Box<dyn Fn(Ui, &BenchDraft, &mut Shown) -> Option<()>>;

/// Follows a sum.
pub(super) fn follow(ui: Ui, show: Show) -> Memo<Shown> {
    following(ui, Box::new(show))
}

/// Follows a sum that goes by more than the fields.
pub(in crate::app) fn following(ui: Ui, show: Shows) -> Memo<Shown> {
    Memo::new(move || {
        let mut shown = Shown::default();
        match ui.draft.with(|draft| show(ui, draft, &mut shown)) {
            Some(()) => shown,
            None => Shown::default(),
        }
    })
}

/// The answer with this index.
pub(in crate::app) fn answer(label: &str, shown: Memo<Shown>, index: usize) -> Answer {
    Answer::of(label, move || shown.with(|shown| shown.answers.get(index).cloned()))
}

/// The cautions.
pub(in crate::app) fn cautions(shown: Memo<Shown>) -> Bit {
    each(shown, |shown| &shown.cautions, |caution| Notice::caution(caution).view())
}

fn each(shown: Memo<Shown>, of: fn(&Shown) -> &Vec<String>, draw: fn(&str) -> El) -> Bit {
    live(move || {
        shown.with(|shown| {
            let mut bits = Vec::new();
            for line in of(shown) {
                bits.push(Bit::One(draw(line)));
            }
            Bit::Many(bits)
        })
    })
}

/// The cases to compare.
pub(in crate::app) fn list(shown: Memo<Shown>) -> El {
    el("ul").class("tabular").kid(each(shown, |shown| &shown.list, |line| el("li").text(line)))
}

/// A heading within a card.
pub(in crate::app) fn h3(text: &str) -> El {
    el("h3").text(text)
}

/// A remark.
pub(in crate::app) fn small(text: &str) -> El {
    el("p").class("small").text(text)
}

/// The body of a card.
pub(in crate::app) fn body() -> El {
    el("div").class("stack")
}
