//! What a hive wants beside its traps: larvae that were seen, young beetles, bait and patties that are to be out, a look.

use super::alarm;
use crate::almanac::day::Day;
use crate::almanac::table::Table;
use crate::app::beetle::told;
use crate::app::el::{El, el};
use crate::app::graph::Memo;
use crate::app::round::Walk;
use crate::app::state::Ui;
use crate::app::wording::en_season::STILL_HERE;
use crate::app::wording::{en_beetle_honey, en_beetle_rhythm, en_round};
use crate::book::aims::Aims;
use crate::book::baited::past_due;
use crate::book::finds::under_way;
use crate::book::ground::Ground;
use crate::book::id::ThingId;
use crate::book::next_look::next_look;
use crate::book::standing::Standing;
use crate::book::urgent::{self, Because};
use std::rc::Rc;

/// A line in the row of a hive, and whether it wants somebody today.
pub(super) type Said = (String, bool);

/// The hives that want something, and whether brood disease is suspected there. A hundred rows look here at every save,
/// so that each only counts itself in.
pub(super) type Beside = Table<ThingId, (Option<Because>, Rc<Vec<Said>>)>;

/// Worked out anew when something other than trap work came into the book, and not at every tap; at a start once the list
/// has been drawn.
pub(super) fn of_yard(walk: Walk, yard: &ThingId) -> Memo<Beside> {
    let book = walk.records.book;
    let drawn = Ui::get().drawn;
    let turn = walk.records.turn();
    let of = yard.clone();
    let ground = Memo::new(move || {
        let (today, _) = (walk.today.get(), turn.get());
        let drawn = drawn.get();
        drawn.then(|| book.with_untracked(|book| Ground::of(book.standing(), &of, today)))?
    });
    // A year of soil takes its time.
    let weather = Memo::new(move || {
        let today = walk.today.get();
        ground.with(|ground| ground.as_ref().map(|ground| ground.weather(today)))
    });
    let of = yard.clone();
    Memo::new(move || {
        let (today, _) = (walk.today.get(), turn.get());
        if !drawn.get() {
            return Beside::new();
        }
        book.with_untracked(|book| {
            let standing = book.standing();
            let young = ground.with(|ground| {
                weather.with(|weather| match (ground, weather) {
                    (Some(ground), Some(weather)) => {
                        let all = under_way(standing, &of, today, ground, weather, None);
                        told::young(&all, today)
                    }
                    _ => Vec::new(),
                })
            });
            hives(standing, &of, &young, today)
        })
    })
}

fn hives(standing: &Standing, yard: &ThingId, young: &[(ThingId, Said)], today: Day) -> Beside {
    let aims = Aims::of(standing);
    let due = past_due(standing, yard, today);
    let urgent = urgent::of_yard(standing, yard, today);
    let dead = urgent::dead(standing, yard, today);
    let mut all = Beside::new();
    for (id, hive) in standing.hives_of(yard, true) {
        let mut said: Vec<Said> = Vec::new();
        let urgent = urgent.iter().find(|(of, _)| of == id).map(|(_, urgent)| urgent);
        let because = urgent.map(|urgent| urgent.because);
        said.extend(alarm::lines(standing, hive, urgent, today).into_iter().map(|line| (line, true)));
        // Once its comb is accounted for, or nobody knows of any, its end can be written down at leisure.
        said.extend(dead.contains(id).then(|| (STILL_HERE.to_owned(), urgent.is_some())));
        said.extend(young.iter().find(|(of, _)| of == id).map(|(_, line)| line.clone()));
        for (_, of) in due.iter().filter(|(of, _)| of == id) {
            said.push((en_beetle_honey::bait_in(of, today), true));
        }
        let look = aims.look_every.and_then(|_| next_look(standing, id, &aims));
        // Nobody is sent to open a hive under suspicion.
        if let Some(on) = look.filter(|on| because != Some(Because::Disease) && *on <= today) {
            said.push((en_beetle_rhythm::next_look(on, today), true));
        }
        if !said.is_empty() {
            all.insert(id.clone(), (because, Rc::new(said)));
        }
    }
    // One whose care has ended has no row any more, and its comb breeds on.
    for (id, _) in urgent.iter().filter(|(_, urgent)| urgent.because == Because::Dead && !urgent.in_care) {
        all.insert(id.clone(), (Some(Because::Dead), Rc::new(vec![(String::new(), true)])));
    }
    all
}

/// One line of a row.
pub(super) fn line((said, now): &Said) -> El {
    el("span").class(if *now { "row-beside row-now" } else { "row-beside" }).text(said)
}

/// The line of the yard: the hives under suspicion, those with slime, dead-outs with comb left, and the others that want
/// somebody today beside their traps.
pub(super) fn of_all(standing: &Standing, beside: &Beside) -> String {
    let (mut stop, mut slime, mut dead, mut look) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for (hive, (because, said)) in beside {
        let Some(now) = standing.hives.get(hive).filter(|_| said.iter().any(|(_, now)| *now)) else {
            continue;
        };
        let tags = match because {
            Some(Because::Disease) => &mut stop,
            Some(Because::Slime) => &mut slime,
            Some(Because::Dead) => &mut dead,
            None => &mut look,
        };
        tags.push(now.tag.clone());
    }
    en_round::beside(&stop, &slime, &dead, &look)
}
