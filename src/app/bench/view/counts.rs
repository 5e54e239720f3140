//! Two counts.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::app::bench::counts::{MOST_DAYS, reckon};
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::read::MOST_BODIES;
use crate::app::catch::told;
use crate::app::edge::locale;
use crate::app::el::El;
use crate::app::parts::key::link;
use crate::app::place::Place;
use crate::app::state::Ui;
use crate::app::wording::en_catch::{self as wc, bench as w};

const FIELDS: &[Typed] = &[
    Typed::new("counts-first", w::FIRST, Slot::counts_first, Reads::Counted(MOST_BODIES)).hint(w::COUNT_HINT),
    Typed::new("counts-first-days", w::FIRST_DAYS, Slot::counts_first_days, Reads::Count(0, MOST_DAYS))
        .hint(w::DAYS_HINT),
    Typed::new("counts-second", w::SECOND, Slot::counts_second, Reads::Counted(MOST_BODIES)),
    Typed::new("counts-second-days", w::SECOND_DAYS, Slot::counts_second_days, Reads::Count(0, MOST_DAYS)),
    Typed::new("counts-spread", w::SPREAD, Slot::counts_spread, Reads::More)
        .may_be_empty()
        .hint(w::SPREAD_HINT),
];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    shown::body()
        .kid(shown::fields(ui, FIELDS))
        .kid(answer(wc::ANSWER, shown, 0).why(w::WHY).mark("counts-word").view())
        .kid(shown::cautions(shown))
        .kid(link(wc::TITLE, &Place::Catch(None)))
}

fn show(_: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let (big, lines) = told::trend(&reckon(draft)?, false, locale::number, locale::percent);
    shown.answer(big);
    for line in lines {
        shown.line(line);
    }
    shown.caution(wc::NOT_ALL);
    Some(())
}
