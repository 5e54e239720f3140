//! Honey supers against the clock: what is on its way, and the sums from typed figures.

use super::honey::{Stack, Step, stacks};
use super::honey_sum::{self, MOST_FRAMES, MOST_HOURS, MOST_MINUTES, MOST_SECONDS, MOST_WORK};
use super::honey_told::{self, Told};
use crate::almanac::honey::{GOAL_HOURS, LIMIT_HOURS};
use crate::almanac::moment::Moment;
use crate::app::bench::draft::Slot;
use crate::app::bench::view::says::{self, Reads};
use crate::app::bench::view::shown::{self, Typed};
use crate::app::edge::hours::{self, CLOCK};
use crate::app::el::{Bit, El, el, live};
use crate::app::frame::heading;
use crate::app::graph::{Memo, untrack};
use crate::app::ledger::words;
use crate::app::parts::answer::Answer;
use crate::app::parts::drawing::{Hours, race_bar};
use crate::app::parts::field::{Field, Says};
use crate::app::parts::key::link;
use crate::app::parts::notice::Notice;
use crate::app::place::{Clock, Place};
use crate::app::records::Records;
use crate::app::round::bits;
use crate::app::round::form::keys;
use crate::app::state::Ui;
use crate::app::wording::{en, en_beetle as wb, en_beetle_honey as w};
use crate::book::aims::Aims;
use crate::book::record::Blank;

const ROOM: Typed =
    Typed::new("honey-room", w::ROOM, Slot::honey_room, Reads::Warmth).unit(Slot::honey_room_unit);
const LOW: Typed =
    Typed::new("honey-low", w::LOW, Slot::honey_low, Reads::Warmth).unit(Slot::honey_low_unit).may_be_empty();
const HOURS: [Typed; 2] = [
    Typed::new("honey-goal", w::HOURS[0], Slot::honey_goal, Reads::Count(1, MOST_HOURS)),
    Typed::new("honey-limit", w::HOURS[1], Slot::honey_limit, Reads::Count(1, MOST_HOURS)),
];
const WORK: [Typed; 6] = [
    Typed::new("honey-work", w::WORK[0], Slot::honey_work, Reads::Steps(1, MOST_WORK)),
    Typed::new("honey-beside", w::WORK[1], Slot::honey_beside, Reads::Steps(0, MOST_WORK)),
    Typed::new("honey-frames", w::WORK[2], Slot::honey_frames, Reads::Count(1, MOST_FRAMES)),
    Typed::new("honey-load", w::WORK[3], Slot::honey_load, Reads::Count(1, MOST_FRAMES)),
    Typed::new("honey-spin", w::WORK[4], Slot::honey_spin, Reads::Count(1, MOST_MINUTES)),
    Typed::new("honey-uncap", w::WORK[5], Slot::honey_uncap, Reads::Count(0, MOST_SECONDS)),
];

/// The clock.
pub(super) fn view(ui: Ui, records: Records) -> Bit {
    // The clock of the page moves twice a minute; when this place is opened it is this minute.
    ui.now.renew(hours::now());
    let aims = Memo::new(move || {
        let aims = records.book.with(|book| Aims::of(book.standing()));
        (aims.goal_hours, aims.limit_hours)
    });
    let caution = live(move || {
        let said = match aims.get() {
            (GOAL_HOURS, LIMIT_HOURS) => w::SPIN.to_owned(),
            (goal, limit) => w::own_aims(goal, limit),
        };
        Notice::caution(said).why(w::HOW).view()
    });
    let all = Memo::new(move || records.book.with(|book| stacks(book, &CLOCK)));
    let open = Memo::new(move || {
        let now = ui.now.get();
        all.with(|all| all.iter().any(|stack| !stack.is_old(now)))
    });
    let of_typed = move || if open.get() { w::TYPED_OTHER } else { w::TYPED }.to_owned();
    bits![
        heading(wb::clock(Clock::Honey)),
        caution,
        Notice::caution(w::NOT_SLIMED).view(),
        el("h2").class("part-title").text(w::ON_THE_WAY),
        on_the_way(ui, records, all),
        el("h2").class("part-title").test_id("honey-typed").live_text(of_typed),
        typed(ui, aims),
        el("h2").class("part-title").text(w::PULL),
        pull(ui),
        Notice::plain(w::ESTIMATE).view(),
    ]
}

fn on_the_way(ui: Ui, records: Records, all: Memo<Vec<Stack>>) -> Bit {
    // Which of them are old changes once in two weeks: the cards are not drawn anew each minute.
    let shown = Memo::new(move || {
        let now = ui.now.get();
        all.with(|all| all.iter().map(|stack| !stack.is_old(now)).collect::<Vec<bool>>())
    });
    live(move || {
        let shown = shown.get();
        untrack(|| {
            let mut bits: Vec<Bit> = Vec::new();
            let mut old = Vec::new();
            for (stack, recent) in all.get().into_iter().zip(shown) {
                if recent {
                    bits.push(card(ui, records, stack));
                } else {
                    old.push(to_old(records, &stack));
                }
            }
            if bits.is_empty() {
                bits.push(el("p").test_id("no-stack").text(w::NONE).into());
                bits.push(keys(link(w::TO_LOT, &Place::Write(Blank::Harvest, None))).into());
            } else {
                bits.push(el("p").class("small").text(w::NO_BELL).into());
                bits.push(keys(link(w::TO_BOOK, &Place::Book)).into());
            }
            if !old.is_empty() {
                let count = u32::try_from(old.len()).unwrap_or(u32::MAX);
                bits.push(el("p").class("small").text(&w::old(count)).into());
                bits.extend(old);
            }
            Bit::Many(bits)
        })
    })
}

/// "Mill, 6 supers".
fn title(records: Records, stack: &Stack) -> String {
    let name = records.book.with_untracked(|book| match &stack.yard {
        Some(yard) => words::yard_name(book, yard),
        None => String::new(),
    });
    w::stack(&name, stack.supers)
}

/// The way to the hours of a lot that nobody wrote down.
fn to_old(records: Records, stack: &Stack) -> Bit {
    let to = Place::Write(Blank::Harvest, Some(stack.line.to_string()));
    keys(link(w::to_old(&title(records, stack), stack.day(stack.since(), &CLOCK)), &to)).into()
}

fn card(ui: Ui, records: Records, stack: Stack) -> Bit {
    let title = title(records, &stack);
    let to = Place::Write(Blank::Harvest, Some(stack.line.to_string()));
    let race = match stack.step {
        Step::Spin(race, _) => Some(race),
        Step::Back { .. } => None,
    };
    let told = Memo::new(move || honey_told::stack(&stack, ui.now.get(), &CLOCK));
    let bar = race.map(|race| {
        live(move || {
            let since = |at: Moment| at.since(race.off);
            race_bar(Hours {
                gone: since(ui.now.get()),
                goal: since(race.goal),
                limit: since(race.limit),
                hatch: race.hatch.map(since),
            })
        })
    });
    el("section")
        .class("card")
        .test_id("stack")
        .kid(el("h3").text(&title))
        .kid(race.map(|_| by(told)))
        .kid(
            el("p")
                .class(if race.is_some() { "lead" } else { "answer-big" })
                .test_id("stack-big")
                .live_text(move || told.with(|told| told.big.clone())),
        )
        .kid(bar.unwrap_or(Bit::Nothing))
        .kid(race.map(|_| el("p").class("small").text(w::AXIS)))
        .kid(said(told))
        .kid(keys(link(w::TO_STEP, &to)))
        .into()
}

/// The hour to spin by in large type, and what decides it.
fn by(told: Memo<Told>) -> Bit {
    live(move || {
        let (at, decides) = told.with(|told| told.by)?;
        Some(bits![
            el("p").class("answer-big").test_id("stack-by").text(&w::spin_by(at)),
            el("p").class("small").text(w::decides(decides)),
        ])
    })
}

/// The hours and what is to be known beside them.
fn said(told: Memo<Told>) -> Bit {
    live(move || {
        told.with(|told| {
            let lines = told.lines.iter().map(|line| el("li").text(line));
            let mut bits: Vec<Bit> = Vec::new();
            bits.extend(told.alarm.map(|alarm| Notice::alarm(alarm).view().into()));
            bits.push(el("ul").class("tabular").kids(lines).into());
            for note in &told.notes {
                bits.push(Notice::plain(note).view().into());
            }
            Bit::Many(bits)
        })
    })
}

fn typed(ui: Ui, aims: Memo<(u32, u32)>) -> El {
    let off = ui.bench().honey_off();
    let off_says = move || {
        off.with(|text| match text.trim() {
            "" => Says::Nothing,
            text => match crate::book::record::ClockTime::parse(text) {
                Ok(time) => Says::Echo(en::echo(&w::hour(time))),
                Err(_) => Says::Wrong(w::NO_HOUR.to_owned()),
            },
        })
    };
    let low_at = (ui.bench().honey_low(), ui.bench().honey_low_unit());
    let low = LOW.field(ui).says(move || {
        if low_at.0.with(|text| text.trim().is_empty()) {
            return Says::Nothing;
        }
        match says::said(ui, low_at, Reads::Warmth) {
            Says::Nothing if ui.draft.with(honey_sum::upside_down) => Says::Wrong(w::UPSIDE_DOWN.to_owned()),
            says => says,
        }
    });
    let [goal, limit] = HOURS;
    let goal = goal.field(ui).says(move || match says::count(ui.bench().honey_goal(), 1, MOST_HOURS) {
        Says::Nothing if ui.draft.with(honey_sum::hours).is_some_and(|(goal, limit)| goal > limit) => {
            Says::Wrong(w::GOAL_ABOVE.to_owned())
        }
        says => says,
    });
    let worked = Memo::new(move || {
        let (now, zone) = (ui.now.get(), ui.zone.get());
        ui.draft.with(|draft| {
            let off = match honey_sum::off(draft).ok()? {
                Some(time) => (CLOCK.moment)(time, &zone)?,
                None => now,
            };
            let (race, hatch) = honey_sum::race(draft, off)?;
            let mut told = honey_told::race(&race, Some(hatch), now, &CLOCK, &zone);
            honey_told::of_room(&mut told, honey_sum::room(draft), None);
            let (by, decides) = told.by?;
            Some((w::hour(by), w::decides(decides), told))
        })
    });
    let told = Memo::new(move || {
        worked.with(|worked| worked.as_ref().map(|(.., told)| told.clone()).unwrap_or_default())
    });
    let big = move || {
        worked
            .with(|worked| worked.as_ref().map(|(by, decides, _)| (by.clone(), vec![(*decides).to_owned()])))
    };
    el("div")
        .class("card-body")
        .kid(Field::new("honey-off", w::OFF_FIELD, off).time().wide().hint(w::OFF_HINT).says(off_says).view())
        .kid(el("div").class("fields").kid(ROOM.field(ui).view()).kid(low.view()))
        .kid(el("div").class("fields").kid(goal.view()).kid(limit.field(ui).view()))
        .kid(live(move || {
            let typed = ui.draft.with(honey_sum::hours)?;
            let (goal, limit) = aims.get();
            (typed != (goal, limit)).then(|| el("p").class("small").text(&w::aims_say(goal, limit)))
        }))
        .kid(Answer::of(w::SPIN_BY, big).mark("spin-by").view())
        .kid(said(told))
}

fn pull(ui: Ui) -> El {
    let worked = move || {
        ui.draft.with(|draft| {
            let (work, pull) = honey_sum::pull(draft)?;
            if work.minutes <= work.beside {
                return Some((w::NO_TIME.to_owned(), Vec::new()));
            }
            let lines =
                vec![w::spins(pull.supers, &work), w::uncaps(pull.supers, &work), w::takes(&pull, &work)];
            Some((w::supers(pull.supers), lines))
        })
    };
    el("div")
        .class("card-body")
        .kid(shown::fields(ui, &WORK))
        .kid(Answer::of(w::MOST, worked).why(w::MOST_WHY).mark("supers").view())
}
