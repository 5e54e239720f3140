//! An answer, the sum it came from, and the reason on tap.

use crate::app::el::{Bit, El, el, live};
use crate::app::graph::{Memo, untrack};
use crate::app::wording::en;

/// `Answer::new("Oil to carry", move || "500 mL".into()).sum(move || vec![…]).why("…").view()`
pub struct Answer(Box<Made>);

/// The answer in large type, and the lines of its sum.
pub type Worked = (String, Vec<String>);

/// An answer in the making, which lies still while it is described.
struct Made {
    label: String,
    big: Box<dyn Fn() -> String>,
    sum: Option<Box<dyn Fn() -> Vec<String>>>,
    why: Option<&'static str>,
    mark: Option<&'static str>,
}

impl Answer {
    /// The answer in large type under its label. It is read out when it changes.
    pub fn new(label: &str, big: impl Fn() -> String + 'static) -> Answer {
        made(label, Box::new(big))
    }

    /// An answer that is worked out together with its sum; a dash while there is none.
    pub fn of(label: &str, worked: impl Fn() -> Option<Worked> + 'static) -> Answer {
        following(label, Memo::new(worked))
    }

    /// The lines of the sum.
    #[must_use]
    pub fn sum(mut self, sum: impl Fn() -> Vec<String> + 'static) -> Answer {
        self.0.sum = Some(Box::new(sum));
        self
    }

    /// Why it is reckoned this way; opens on tap.
    #[must_use]
    pub fn why(mut self, why: &'static str) -> Answer {
        self.0.why = Some(why);
        self
    }

    /// The name journeys find the large type by.
    #[must_use]
    pub fn mark(mut self, mark: &'static str) -> Answer {
        self.0.mark = Some(mark);
        self
    }

    /// The answer.
    pub fn view(self) -> El {
        let Made { label, big, sum, why, mark } = *self.0;
        let mut large = el("p").class("answer-big").attr("role", "status").live_text(big);
        if let Some(mark) = mark {
            large = large.test_id(mark);
        }
        el("div")
            .class("answer")
            .kid(el("p").class("answer-label").text(&label))
            .kid(large)
            .kid(sum.map(lines))
            .kid(why.map(super::notice::why))
    }
}

#[inline(never)]
fn made(label: &str, big: Box<dyn Fn() -> String>) -> Answer {
    Answer(Box::new(Made { label: label.to_owned(), big, sum: None, why: None, mark: None }))
}

#[inline(never)]
fn following(label: &str, worked: Memo<Option<Worked>>) -> Answer {
    let big = move || {
        worked.with(|worked| worked.as_ref().map_or_else(|| en::NO_ANSWER.to_owned(), |(big, _)| big.clone()))
    };
    let sum = move || worked.with(|worked| worked.as_ref().map(|(_, sum)| sum.clone()).unwrap_or_default());
    made(label, Box::new(big)).sum(sum)
}

/// While as many lines are shown, their words change and nothing is drawn anew: this happens at every key.
fn lines(sum: Box<dyn Fn() -> Vec<String>>) -> Bit {
    let sum = Memo::new(sum);
    let many = Memo::new(move || sum.with(Vec::len));
    live(move || {
        let line = |nth: usize| {
            el("li").live_text(move || sum.with(|lines| lines.get(nth).cloned()).unwrap_or_default())
        };
        let many = many.get();
        untrack(|| {
            (many > 0)
                .then(|| el("ul").class("answer-sum").attr("aria-label", en::SUM).kids((0..many).map(line)))
        })
    })
}
