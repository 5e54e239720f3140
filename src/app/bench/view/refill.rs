//! The day of the next refill.

use super::says::Reads;
use super::shown::{self, Shown, Typed, answer};
use crate::almanac::refill::Timing;
use crate::app::bench::draft::{BenchDraft, Slot};
use crate::app::bench::read::MOST_BODIES;
use crate::app::bench::refill::{RefillSum, last_service, reckon};
use crate::app::edge::locale;
use crate::app::el::{El, el};
use crate::app::parts::card::more;
use crate::app::parts::field::{Field, Says};
use crate::app::state::Ui;
use crate::app::wording::en_sums::refill as w;
use crate::app::wording::{en, en_limit, en_typed};

const FIELDS: &[Typed] = &[Typed::new("refill-max", w::MAX, Slot::refill_max, Reads::Steps(1, 120))];

const REST: &[Typed] = &[
    rest("refill-level", w::LEVEL, Slot::refill_level, Reads::Share),
    rest("refill-floor", w::FLOOR, Slot::refill_floor, Reads::Share).hint(w::FLOOR_HINT),
    rest("refill-found", w::FOUND, Slot::refill_found, Reads::Share),
    rest("refill-stretch", w::STRETCH, Slot::refill_stretch, Reads::Count(1, 999)),
    rest("refill-room", w::ROOM, Slot::refill_room, Reads::Count(0, MOST_BODIES)),
    rest("refill-catch", w::CATCH, Slot::refill_catch, Reads::Positive),
];

const fn rest(id: &'static str, label: &'static str, text: Slot, reads: Reads) -> Typed {
    Typed::new(id, label, text, reads).may_be_empty()
}

/// The card's body.
pub(super) fn view(ui: Ui) -> El {
    let shown = shown::follow(ui, show);
    let typed = ui.bench().refill_last();
    let says = move || match typed.with(|text| last_service(text, ui.today.get())) {
        Ok(day) => {
            let ago = en::relative(day.days_since(ui.today.get()));
            Says::Echo(en::echo(&[&en::date(day), ", ", &ago].concat()))
        }
        Err(error) => Says::Wrong(en_typed::day(error)),
    };
    let last = Field::new("refill-last", w::LAST, typed).day().says(says);
    shown::body()
        .kid(shown::then_fields(el("div").class("fields").kid(last.view()), ui, FIELDS))
        .kid(answer(w::DUE, shown, 0).why(w::WHY).view())
        .kid(shown::cautions(shown))
        .kid(more(w::REST, shown::fields(ui, REST)))
}

/// The day; one that has passed is "now", because nobody can go there.
fn due(sum: &RefillSum) -> String {
    match sum.timing {
        Timing::Overdue { .. } => w::NOW.to_owned(),
        Timing::Today | Timing::In { .. } => en::date(sum.refill.due),
    }
}

fn show(ui: Ui, draft: &BenchDraft, shown: &mut Shown) -> Option<()> {
    let today = ui.today.get();
    let sum = reckon(draft, today)?;
    let refill = &sum.refill;
    shown.answer(due(&sum));
    let away = en::relative(refill.due.days_since(today));
    shown.line(match sum.timing {
        Timing::Overdue { .. } => [&en::date(refill.due), ", ", &away].concat(),
        _ => away,
    });
    shown.line(w::decided(&en_limit::sum(refill.decided_by, refill.ahead)));
    for line in en_limit::later(refill) {
        shown.line(line);
    }
    if let (Some(stretch), Some(per_day)) = (sum.stretch, sum.per_day) {
        let (from, to) = (stretch.from.fraction(), stretch.to.fraction());
        shown.line(w::loss(
            &locale::percent(from, 1),
            &locale::percent(to, 1),
            stretch.days,
            &en_limit::rate(per_day),
        ));
    }
    if sum.rose {
        shown.caution(w::ROSE);
    }
    Some(())
}
