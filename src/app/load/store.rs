//! What the store holds of what is brought and bought.

use super::sum::{KindNeed, Load, missing, spares_of};
use crate::almanac::day::Day;
use crate::app::kinds::{kind_name, names};
use crate::book::id::ThingId;
use crate::book::put_in::PutIn;
use crate::book::round::likely_kind;
use crate::book::standing::{Standing, Trouble};
use crate::book::store_room::{Held, StoreRoom};
use crate::book::urgent::dead;

/// Traps of one kind to bring.
#[derive(Clone, Debug, PartialEq)]
pub struct KindLoad {
    /// Which.
    pub kind: ThingId,
    /// Its name, as people read it.
    pub name: String,
    /// Missing from hives, and places without one.
    pub place: u32,
    /// In the place of traps of hives with slime.
    pub anew: u32,
    /// To spare.
    pub spare: u32,
    /// In store, as far as the book knows.
    pub store: InStore,
}

/// The kinds to bring and buy: the demonstration's where one of its yards is on the way, the keeper's own where one of those
/// is.
pub fn needs(standing: &Standing, yards: &[ThingId]) -> Vec<KindNeed> {
    let mut needs = missing(standing, yards);
    needs.retain(|need| yards.is_empty() || yards.iter().any(|yard| yard.is_demo() == need.kind.is_demo()));
    needs
}

/// The store on `day` that these yards are served from, less what went into hives.
pub fn room(standing: &Standing, yards: &[ThingId], day: Day, put_in: &[PutIn]) -> StoreRoom {
    StoreRoom::of(standing, day, !yards.is_empty() && only_demo(yards), put_in)
}

fn only_demo(yards: &[ThingId]) -> bool {
    yards.iter().all(ThingId::is_demo)
}

/// Good traps of a kind in store, as far as the book knows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InStore {
    /// Bought, less used up and put into hives since.
    pub held: Held,
    /// Used again, and taken out of hives.
    pub out: u32,
}

impl InStore {
    /// All of them.
    pub fn traps(&self) -> u32 {
        self.held.pieces().saturating_add(self.out)
    }
}

/// Those of `kind`. A used trap that is thrown away when it is full is no stock, wherever it lies.
pub fn in_store(standing: &Standing, room: &StoreRoom, kind: &ThingId) -> InStore {
    let held = room.traps(kind, &|item| names(standing, kind, item));
    let out = standing.kinds.get(kind).filter(|now| now.kind.reusable).map_or(0, |now| now.stock);
    InStore { held, out }
}

/// What is brought for `load` of each kind that is wanted or lies in store, `spare` traps among them as [`spares_of`] shares
/// them out. Traps for places that no kind is known for are in none.
pub fn by_kind(
    standing: &Standing,
    yards: &[ThingId],
    load: &Load,
    spare: u32,
    room: &StoreRoom,
) -> Vec<KindLoad> {
    let needs = needs(standing, yards);
    let spares = spares_of(standing, yards, &needs, spare);
    let mut kinds = Vec::new();
    for (need, spare) in needs.into_iter().zip(spares) {
        let anew = load.anew_of(&need.kind);
        let store = in_store(standing, room, &need.kind);
        if need.traps + anew + spare + store.traps() > 0 || store.held.gone > 0.0 {
            let name = kind_name(standing, &need.kind);
            kinds.push(KindLoad { kind: need.kind, name, place: need.traps, anew, spare, store });
        }
    }
    kinds
}

/// What the next season begins from, kind by kind.
#[derive(Clone, Debug, PartialEq)]
pub struct KindNext {
    /// Which.
    pub kind: ThingId,
    /// Its name, as people read it.
    pub name: String,
    /// Hives alive that carry it, or will.
    pub hives: u32,
    /// Traps in them, and places for one.
    pub traps: u32,
    /// Traps in each of them, to the nearest whole one.
    pub each: u32,
    /// Hives of them that carry traps or are meant to: bare ones, as over a winter, tell nothing of how many each wants.
    pub fitted: u32,
    /// Traps of it that hang and are used again; none where it is thrown away.
    pub there: Option<u32>,
    /// In store, as far as the book knows.
    pub store: InStore,
}

/// The kinds that hives of `yards` carry or are meant to on `today`. A hive with several counts with the one it has most of;
/// one with a dead-out is not alive, though nobody wrote its end down.
pub fn next(standing: &Standing, yards: &[ThingId], room: &StoreRoom, today: Day) -> Vec<KindNext> {
    let mut kinds: Vec<KindNext> = Vec::new();
    for yard in yards {
        let dead = dead(standing, yard, today);
        for (id, hive) in standing.hives_of(yard, true) {
            if dead.contains(id) {
                continue;
            }
            let Some(kind) = likely_kind(standing, yard, Some(hive)) else { continue };
            let traps =
                u32::try_from(hive.traps().count()).unwrap_or(u32::MAX).saturating_add(hive.wanting());
            match kinds.iter_mut().find(|known| known.kind == *kind) {
                Some(known) => {
                    known.hives += 1;
                    known.traps += traps;
                    known.fitted += u32::from(traps > 0);
                }
                None => kinds.push(KindNext {
                    kind: kind.clone(),
                    name: kind_name(standing, kind),
                    hives: 1,
                    traps,
                    fitted: u32::from(traps > 0),
                    each: 0,
                    there: standing
                        .kinds
                        .get(kind)
                        .is_some_and(|now| now.kind.reusable)
                        .then(|| hang(standing, yards, kind)),
                    store: in_store(standing, room, kind),
                }),
            }
        }
    }
    for kind in &mut kinds {
        // Up to a whole one it would be far more than hang in all of them.
        kind.each = (kind.traps + kind.fitted / 2).checked_div(kind.fitted).unwrap_or(0);
    }
    kinds
}

/// Traps of `kind` that are there, in hives in care, dead-outs too: what hangs in one is used again.
fn hang(standing: &Standing, yards: &[ThingId], kind: &ThingId) -> u32 {
    let hives = yards.iter().flat_map(|yard| standing.hives_of(yard, true));
    let traps = hives.flat_map(|(_, hive)| hive.traps());
    let there = traps.filter(|trap| trap.kind == *kind && trap.trouble != Some(Trouble::Missing));
    u32::try_from(there.count()).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::quantity::Decimal;
    use crate::app::ledger::words::tests::{book, today};
    use crate::book::entry::{Entry, What};
    use crate::book::record::{Answer, Blank, Record};
    use crate::book::standing::HiveNow;

    fn yards(standing: &Standing) -> Vec<ThingId> {
        standing.yards.keys().cloned().collect()
    }

    fn stocked(standing: &Standing, yards: &[ThingId]) -> StoreRoom {
        room(standing, yards, today(), &[])
    }

    #[test]
    fn each_kind_is_a_line_and_all_lines_are_what_is_brought() {
        let book = book();
        let mut standing = book.standing().clone();
        for hive in standing.hives.values_mut().filter(|hive| hive.alive()) {
            hive.boxes[0].wants += 1;
        }
        let all = yards(&standing);
        let brought = super::super::sum::load(
            &standing,
            &all,
            today(),
            crate::almanac::quantity::Share::NONE,
            None,
            crate::almanac::quantity::VolumeUnit::Millilitre,
        );
        let kinds = by_kind(&standing, &all, &brought, brought.spare, &stocked(&standing, &all));
        assert_eq!(kinds.len(), 2);
        assert_eq!(kinds.iter().map(|kind| kind.place).sum::<u32>(), brought.place);
        assert_eq!(kinds.iter().map(|kind| kind.spare).sum::<u32>(), brought.spare);
        assert!(kinds.iter().all(|kind| kind.place > 0 && kind.spare > 0));
    }

    #[test]
    fn the_next_season_begins_from_the_hives_that_carry_each_kind() {
        let book = book();
        let standing = book.standing();
        let all = yards(standing);
        let found = next(standing, &all, &stocked(standing, &all), today());
        let alive = standing.hives.values().filter(|hive| hive.alive()).count();
        assert_eq!(found.iter().map(|kind| kind.hives as usize).sum::<usize>(), alive);
        let traps: usize =
            standing.hives.values().filter(|hive| hive.alive()).map(|hive| hive.traps().count()).sum();
        // To the nearest whole trap, kind by kind.
        assert_eq!((found.len(), found.iter().map(|kind| kind.traps as usize).sum::<usize>()), (2, traps));
        assert!(found.iter().all(|kind| 2 * (kind.hives * kind.each).abs_diff(kind.traps) <= kind.hives));
        assert_eq!(next(standing, &[], &stocked(standing, &[]), today()), []);
        // Those that are thrown away are no stock, wherever they hang.
        assert!(found.iter().all(|kind| kind.there.is_some() == standing.kinds[&kind.kind].kind.reusable));
        let kind = &found[0].kind;
        // Hives whose traps are off for the winter say nothing of how many each wants; with none left nothing does.
        let mut bare = standing.clone();
        let carries = |hive: &HiveNow| hive.alive() && hive.traps().any(|trap| trap.kind == *kind);
        let ids: Vec<ThingId> =
            bare.hives.iter().filter(|(_, hive)| carries(hive)).map(|(id, _)| id.clone()).collect();
        for (off, id) in ids.iter().enumerate() {
            let now = next(&bare, &all, &stocked(&bare, &all), today());
            let now = now.iter().find(|now| now.kind == *kind).unwrap();
            let left = ids.len() - off;
            assert_eq!((now.fitted as usize, now.each), (left, (now.traps + now.fitted / 2) / now.fitted));
            for part in &mut bare.hives.get_mut(id).unwrap().boxes {
                part.traps.clear();
                part.wants = 0;
            }
        }
        let none = next(&bare, &all, &stocked(&bare, &all), today());
        assert!(none.iter().filter(|now| now.kind == *kind).all(|now| (now.fitted, now.each) == (0, 0)));
        let mut again = standing.clone();
        again.kinds.get_mut(kind).unwrap().kind.reusable = true;
        let there =
            |standing: &Standing| next(standing, &all, &stocked(standing, &all), today())[0].there.unwrap();
        let before = there(&again);
        let own = |hive: &HiveNow| hive.alive() && hive.boxes[0].traps.iter().any(|trap| trap.kind == *kind);
        let hive = again.hives.values_mut().find(|hive| own(hive)).unwrap();
        hive.boxes[0].traps[0].trouble = Some(Trouble::Missing);
        assert_eq!((before > 0, there(&again)), (true, before - 1));
    }

    #[test]
    fn what_was_bought_under_the_name_of_a_kind_is_in_its_store() {
        let mut book = book();
        let kind = book.standing().kinds.keys().next().unwrap().clone();
        let name = kind_name(book.standing(), &kind);
        let mut record = Record::empty(Blank::Stock, Vec::new());
        record.answers[0] = Some(Answer::Text([" ", &name.to_uppercase()].concat()));
        record.answers[1] = Some(Answer::Number(Decimal::whole(12), 0));
        record.answers[2] = Some(Answer::Word(0));
        // A line of the demonstration, as the yards are.
        let first = book.log().entries().find(|entry| entry.is_demo()).unwrap().id.writer().clone();
        let entry = Entry {
            id: crate::book::id::EntryId::new(first, book.log().next_n()).unwrap(),
            day: today(),
            at: crate::almanac::day::Stamp::midnight(today()),
            by: None,
            yard: None,
            replaces: None,
            bulk: None,
            what: What::Record(record),
        };
        let all = yards(book.standing());
        let before = in_store(book.standing(), &stocked(book.standing(), &all), &kind).traps();
        book.add(vec![entry]);
        let standing = book.standing();
        assert_eq!(in_store(standing, &stocked(standing, &all), &kind).traps(), before + 12);
        assert_eq!(
            in_store(standing, &stocked(standing, &[]), &kind).traps(),
            before,
            "not of the keeper's own"
        );
    }

    /// Yards of the demonstration, then with one of the keeper's own beside them.
    #[test]
    fn kinds_are_those_of_the_yards_on_the_way_whoever_they_belong_to() {
        let book = book();
        let standing = book.standing();
        let invented = yards(standing);
        let own = ThingId::parse("aa-1").unwrap();
        let kinds = |yards: &[ThingId]| needs(standing, yards).len();
        assert!(!own.is_demo() && invented.iter().all(ThingId::is_demo));
        assert_eq!((kinds(&invented), kinds(std::slice::from_ref(&own)), kinds(&[])), (2, 0, 2));
        assert_eq!(kinds(&[&invented[..], &[own]].concat()), 2);
    }
}
