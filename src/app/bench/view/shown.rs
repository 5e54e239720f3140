//! What a card shows of its sum, in one shape for all sums, so that the code that follows it exists once.

use crate::app::el::{Bit, El, el, live};
use crate::app::graph::Memo;
use crate::app::parts::answer::Answer;
use crate::app::parts::notice::Notice;
use crate::app::wording::en;

/// Everything of a card that changes while someone types.
#[derive(Clone, PartialEq, Eq, Default)]
pub(super) struct Shown {
    /// Answers, each with the lines of its sum.
    pub(super) answers: Vec<(String, Vec<String>)>,
    /// Cautions under them.
    pub(super) cautions: Vec<String>,
    /// Other cases, to compare.
    pub(super) list: Vec<String>,
}

/// Follows a sum; none while a field cannot be read.
pub(super) fn follow(sum: impl Fn() -> Option<Shown> + Send + Sync + 'static) -> Memo<Shown> {
    remember(Box::new(sum))
}

fn remember(sum: Box<dyn Fn() -> Option<Shown> + Send + Sync>) -> Memo<Shown> {
    Memo::new(move || sum().unwrap_or_default())
}

/// The answer with this index.
pub(super) fn answer(label: &str, shown: Memo<Shown>, index: usize) -> Answer {
    Answer::new(label, move || big(shown, index)).sum(move || {
        shown.with(|shown| shown.answers.get(index).map(|(_, sum)| sum.clone()).unwrap_or_default())
    })
}

fn big(shown: Memo<Shown>, index: usize) -> String {
    shown.with(|shown| {
        shown.answers.get(index).map_or_else(|| en::NO_ANSWER.to_owned(), |(big, _)| big.clone())
    })
}

/// The cautions.
pub(super) fn cautions(shown: Memo<Shown>) -> Bit {
    live(move || {
        let cautions = shown.with(|shown| shown.cautions.clone());
        cautions.into_iter().map(|caution| Notice::caution(caution).view()).collect::<Vec<El>>()
    })
}

/// The cases to compare.
pub(super) fn list(shown: Memo<Shown>) -> El {
    el("ul").class("tabular").kid(live(move || {
        let lines = shown.with(|shown| shown.list.clone());
        lines.iter().map(|line| el("li").text(line)).collect::<Vec<El>>()
    }))
}

/// A heading within a card.
pub(super) fn h3(text: &str) -> El {
    el("h3").text(text)
}

/// A remark.
pub(super) fn small(text: &str) -> El {
    el("p").class("small").text(text)
}

/// Fields under each other.
pub(super) fn fields<const N: usize>(fields: [El; N]) -> El {
    el("div").class("fields").kids(fields)
}

/// The body of a card.
pub(super) fn body() -> El {
    el("div").class("stack")
}
