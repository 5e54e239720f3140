//! A trial of the keeper's own.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::trial::LEAST_PAIRS;
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::trial::{MOST_PAIRS, reckon};
use crate::app::edge::locale;
use crate::app::el::El;
use crate::app::parts::key::link;
use crate::app::place::Place;
use crate::app::state::Ui;
use crate::app::wording::en_catch::under;
use crate::app::wording::en_trial as w;

const FIELDS: &[Typed] = &[
    Typed::new("trial-pairs", w::PAIRS, Slot::trial_pairs, Reads::Steps(1, MOST_PAIRS)).hint(w::PAIRS_HINT),
    Typed::new("trial-mean", w::MEAN, Slot::trial_mean, Reads::Within(1000)),
    Typed::new("trial-clump", w::CLUMP, Slot::trial_clump, Reads::Within(100)).hint(w::CLUMP_HINT),
    Typed::new("trial-left", w::LEFT, Slot::trial_left, Reads::Share).hint(w::LEFT_HINT),
];

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    shown::body()
        .kid(shown::fields(ui, FIELDS))
        .kid(answer(w::POWER, shown, 0).why(w::WHY).mark("trial-power").view())
        .kid(shown::list(shown))
        .kid(link(w::TITLE, &Place::Trial(None)))
}

fn show(_: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let sum = reckon(draft)?;
    // Down: a chance to be told is not promised.
    let percent = |share: f64| {
        let some = share > 0.0 && share < 0.01;
        let said = locale::percent(if some { 0.01 } else { (share * 100.0).floor() / 100.0 }, 0);
        if some { under(&said) } else { said }
    };
    shown.answer(percent(sum.power));
    if sum.pairs < LEAST_PAIRS {
        shown.line(w::never(sum.pairs));
    } else {
        shown.line(w::caught(&locale::number(sum.mean, 1), &locale::number(sum.mean * sum.left, 1)));
        shown.line(w::told(sum.pairs, &percent(sum.power)));
    }
    for (pairs, power) in sum.others {
        shown.list.push(w::other(pairs, &percent(power)));
    }
    shown.list.push(w::STEPS.to_owned());
    Some(())
}
