//! The card of the same day on the page of a hive: slime, many larvae, or a dead-out whose comb is still there.

use crate::almanac::day::Day;
use crate::app::el::{Bit, El, el};
use crate::app::ledger::words::hive_name;
use crate::app::parts::key::link;
use crate::app::parts::notice::{self, Notice};
use crate::app::place::{Place, Question};
use crate::app::round::bits;
use crate::app::round::form::keys;
use crate::app::wording::en_yard_decides::SUSPECTED;
use crate::app::wording::en_yard_decides::{card as w, comb};
use crate::book::Book;
use crate::book::id::ThingId;
use crate::book::record::Blank;
use crate::book::standing::Standing;
use crate::book::urgent::{Because, Urgent, of_yard, urgent};

/// What a hive wants today, and the yard it stands in.
pub type Wants = Option<(Urgent, String)>;

/// Whether `hive` wants it.
pub fn wants(standing: &Standing, hive: &ThingId, today: Day) -> Wants {
    let yard = standing.hives.get(hive)?.yard.to_string();
    urgent(standing, hive, today).map(|urgent| (urgent, yard))
}

/// The hives of `yard` in which brood disease is suspected, as an alarm; nothing where there are none. `all` adds what
/// that means for every hive of the yard: it stands where one is about to leave its place.
pub fn suspected(book: &Book, yard: &ThingId, today: Day, all: bool) -> Bit {
    under_suspicion(book, &of_yard(book.standing(), yard, today), all)
}

/// The same, of what the hives of a yard are known to want.
pub(super) fn under_suspicion(book: &Book, urgent: &[(ThingId, Urgent)], all: bool) -> Bit {
    let mut names = Vec::new();
    for (hive, _) in urgent.iter().filter(|(_, urgent)| urgent.because == Because::Disease) {
        names.push(hive_name(book, hive));
    }
    if names.is_empty() {
        return Bit::Nothing;
    }
    let more = if all { w::NO_SALE_EITHER } else { "." };
    Notice::alarm([SUSPECTED, &names.join(", "), more].concat()).view().test_id("suspected").into()
}

/// The card.
pub fn view(hive: &str, urgent: &Urgent, yard: &str) -> El {
    let to = |asked| Place::Decide(yard.to_owned(), Some(asked));
    let comb = link(w::TO_COMB, &Place::Write(Blank::Comb, Some(hive.to_owned()))).test_id("card-comb");
    let freezer = link(w::TO_FREEZER, &to(Question::Freezer)).test_id("card-freezer");
    let ground = link(w::TO_GROUND, &to(Question::Ground)).test_id("card-ground");
    let open = link(w::TO_OPEN, &to(Question::Open)).test_id("card-open");
    let dead = urgent.because == Because::Dead;
    let mut steps = el("ol").class("card-steps");
    let stop = bits![Notice::alarm(w::STOP).view(), notice::why(w::STOP_WHY)];
    steps = steps.kid(el("li").kid(stop));
    if urgent.because == Because::Disease {
        // What left it all the same is the first thing an inspector asks.
        let moved = if urgent.fates.all() > 0 { fates(urgent) } else { Bit::Nothing };
        let test = link(w::TO_TEST, &Place::Write(Blank::Test, Some(yard.to_owned()))).test_id("card-test");
        steps = steps
            .kid(el("li").text(w::NARROW))
            .kid(el("li").kid(bits![Notice::caution(w::NO_MOVE).view(), moved]))
            .kid(el("li").text(w::HANDS))
            .kid(el("li").text(w::NO_SALE))
            .kid(el("li").kid(bits![tests(urgent), el("p").text(w::UNTIL), keys(test)]));
        return card(urgent, steps);
    }
    if dead {
        steps = steps.kid(el("li").text(w::SHUT));
        if urgent.in_care {
            steps = steps.kid(el("li").kid(Notice::caution(w::STILL_IN_CARE).view()));
        }
    }
    let fate = if dead { w::FATE } else { w::BAG };
    steps = steps.kid(el("li").kid(bits![el("p").text(fate), comb_told(urgent), keys(bits![comb, freezer])]));
    if dead {
        steps = steps.kid(el("li").text(w::TRAPS_BACK));
    } else {
        let shrink = link(w::TO_SHRINK, &to(Question::Comb)).test_id("card-shrink");
        steps = steps.kid(el("li").kid(bits![el("p").text(w::SHRINK), keys(shrink)]));
        steps = steps.kid(el("li").text(w::TRAPS));
    }
    steps = steps.kid(el("li").kid(Notice::caution(w::NO_MOVE).view()));
    let worked = if urgent.ground { w::GROUND_DONE } else { w::GROUND };
    steps = steps
        .kid(el("li").text(w::DATES))
        .kid(el("li").kid(bits![el("p").text(worked), keys(ground)]))
        .kid(el("li").kid(bits![el("p").text(w::NEIGHBOURS), keys(open)]));
    if !dead {
        steps = steps.kid(el("li").text(w::UNTIL_NONE));
    }
    card(urgent, steps)
}

/// Tests that were written down since it was suspected.
fn tests(urgent: &Urgent) -> Bit {
    let line = |(day, what, result): &(Day, String, String)| {
        el("p").test_id("card-tested").text(&[w::TESTED, &comb::test(what, result, *day)].concat()).into()
    };
    Bit::Many(urgent.tests.iter().map(line).collect())
}

fn card(urgent: &Urgent, steps: El) -> El {
    el("section")
        .class("same-day")
        .test_id("same-day")
        .kid(el("h2").class("part-title").text(w::title(urgent.because)))
        .kid(el("p").test_id("card-since").text(&w::since(urgent.since)))
        .kid(steps)
}

/// Where combs went, and what is still open.
fn comb_told(urgent: &Urgent) -> Bit {
    let open = match (urgent.open(), urgent.combs) {
        (Some(0), Some(_)) => w::ALL_DONE.to_owned(),
        (Some(open), Some(combs)) => [&*w::open(open, combs), ". ", w::meant(urgent.because)].concat(),
        _ => w::NO_COUNT.to_owned(),
    };
    bits![fates(urgent), el("p").test_id("card-open-combs").text(&open)]
}

/// Where combs went, with a caution where another hive got some.
fn fates(urgent: &Urgent) -> Bit {
    let given = (urgent.fates.given > 0).then(|| Notice::caution(w::GIVEN).view());
    bits![el("p").test_id("card-fates").text(&w::fates(&urgent.fates)), given]
}
