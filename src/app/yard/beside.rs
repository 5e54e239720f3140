//! What a hive wants beside its traps: larvae that were seen, young beetles, bait and patties that are to be out, a look.

use crate::almanac::day::Day;
use crate::almanac::table::Table;
use crate::app::beetle::told;
use crate::app::el::{El, el};
use crate::app::graph::Memo;
use crate::app::round::Walk;
use crate::app::state::Ui;
use crate::app::wording::en_season::STILL_HERE;
use crate::app::wording::{en_beetle_honey, en_beetle_rhythm, en_records as wr};
use crate::book::Book;
use crate::book::aims::Aims;
use crate::book::baited::past_due;
use crate::book::finds::{told as seen_in, under_way};
use crate::book::ground::Ground;
use crate::book::id::ThingId;
use crate::book::next_look::next_look;
use crate::book::standing::{HiveNow, Standing};
use crate::book::urgent::{self, Because, Urgent};
use std::rc::Rc;

/// A line in the row of a hive, and whether it wants somebody today.
pub(super) type Said = (String, bool);

/// The hives that want something. A hundred rows look here at every save, so that each only counts itself in.
pub(super) type Beside = Table<ThingId, Rc<Vec<Said>>>;

/// Worked out anew when something other than trap work came into the book, and not at every tap; at a start once the list
/// has been drawn.
pub(super) fn of_yard(walk: Walk, yard: &ThingId) -> Memo<Beside> {
    let book = walk.records.book;
    let drawn = Ui::get().drawn;
    let turn = Memo::new(move || book.with(Book::turn));
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
        let suspected = |(of, urgent): &&(ThingId, Urgent)| of == id && urgent.because == Because::Disease;
        if let Some((_, urgent)) = urgent.iter().find(suspected) {
            said.push((wr::seen(wr::DISEASE, urgent.since, today), true));
        }
        said.extend(dead.contains(id).then(|| (STILL_HERE.to_owned(), true)));
        said.extend(larvae(standing, hive, today).map(|line| (line, true)));
        said.extend(young.iter().find(|(of, _)| of == id).map(|(_, line)| line.clone()));
        for (_, of) in due.iter().filter(|(of, _)| of == id) {
            said.push((en_beetle_honey::bait_in(of, today), true));
        }
        let look = aims.look_every.and_then(|_| next_look(standing, id, &aims));
        if let Some(on) = look.filter(|on| *on <= today) {
            said.push((en_beetle_rhythm::next_look(on, today), true));
        }
        if !said.is_empty() {
            all.insert(id.clone(), Rc::new(said));
        }
    }
    all
}

/// Larvae or slime in the last look into the hive: until somebody looks again and finds none.
fn larvae(standing: &Standing, hive: &HiveNow, today: Day) -> Option<String> {
    let look = standing.records.get(hive.look.as_ref()?)?;
    let what = match look.record.word("larvae") {
        Some("few") => wr::LARVAE_FEW,
        Some("many") => wr::LARVAE_MANY,
        _ if look.record.word("slime") == Some("yes") => wr::SLIME,
        _ if seen_in(&look.record).iter().any(|seen| seen.outside()) => wr::LEAVING,
        _ => return None,
    };
    Some(wr::seen(what, look.day, today))
}

/// One line of a row.
pub(super) fn line((said, now): &Said) -> El {
    el("span").class(if *now { "row-beside row-now" } else { "row-beside" }).text(said)
}

/// The tags of the hives that want somebody today, beside their traps.
pub(super) fn tags(standing: &Standing, beside: &Beside) -> Vec<String> {
    let mut tags = Vec::new();
    for (hive, said) in beside {
        if said.iter().any(|(_, now)| *now) {
            tags.extend(standing.hives.get(hive).map(|hive| hive.tag.clone()));
        }
    }
    tags
}
