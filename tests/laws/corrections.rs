//! Laws of the log under corrections, strikes, strikes of strikes and decisions, on random work by three phones that
//! hand each other their books now and then. `tests/book/laws.rs` has those of plain work.

use crate::support::{Unicode, day, pen};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::{Decimal, Share, TypedVolume, VolumeUnit};
use beetle_almanac::almanac::stack::{BoxDepth, HiveSize};
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::almanac::trap::{TrapForm, TrapKind, TrapSize};
use beetle_almanac::app::ledger::history::{self, Counts};
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Check, Did, Entry, KeeperChange, SkipReason, What};
use beetle_almanac::book::id::EntryId;
use beetle_almanac::book::log::Log;
use beetle_almanac::book::standing::Standing;
use beetle_almanac::book::write::{HivePlan, KindChoice, Pen, Refusal};
use proptest::collection::vec;
use proptest::prelude::*;
use std::collections::{BTreeMap, BTreeSet};

const DIDS: [Did; 6] =
    [Did::AsFound, Did::ToppedUp, Did::Replaced, Did::Spilled, Did::Missing, Did::GluedShut];

/// One thing that is done: on which phone, what, and numbers to pick targets, values and the day with.
type Act = (usize, u8, u32, u32, i32);

fn acts() -> impl Strategy<Value = Vec<Act>> {
    vec((0..3_usize, any::<u8>(), any::<u32>(), 0..10_000_u32, 0..4_i32), 0..20)
}

/// Two phones carry the same label, the third none: labels tell nobody apart.
fn hand(phone: usize, on: Day) -> Pen {
    let name = ["aa", "bb", "cc"][phone];
    Pen { by: (phone < 2).then(|| "Ann".to_owned()), ..pen(name, on) }
}

fn yard() -> Book {
    let kind = TrapKind {
        name: "Slim".to_owned(),
        form: TrapForm::BetweenFrame,
        reusable: false,
        capacity: TypedVolume::new(Decimal::whole(20), VolumeUnit::Millilitre).ok(),
        inner: TrapSize::default(),
        outer: TrapSize::default(),
        fill: Share::HALF,
        max_days: 14,
        profile: Vec::new(),
        packs: Vec::new(),
    };
    let plan = HivePlan {
        tags: vec!["1".to_owned(), "2".to_owned()],
        size: HiveSize::Full,
        boxes: vec![(BoxDepth::Deep, 1)],
        since: start(),
        filled: Some(Share::HALF),
    };
    let mut book = Book::default();
    let made = book.keep_yard(&hand(0, start()), "Ferry Field", "UTC", &KindChoice::New(kind), &plan);
    book.add(made.unwrap());
    book
}

fn start() -> Day {
    day("2026-05-01")
}

fn work(book: &Book, a: u32, b: u32) -> Option<Check> {
    let hives: Vec<_> = book.standing().hives.keys().collect();
    let hive = (*hives.get(a as usize % hives.len().max(1))?).clone();
    let share = Share::from_percent(Decimal::whole(b % 101)).unwrap();
    Some(Check {
        hive,
        traps: None,
        did: DIDS[b as usize % 6],
        before: (!b.is_multiple_of(3)).then_some(share),
        after: (!b.is_multiple_of(4)).then_some(share),
        count: b.is_multiple_of(2).then(|| CountRange::exact(b % 60)),
        note: None,
    })
}

/// Any entry; mostly work and what was written about it, now and then what brought the yard and its hives.
fn nth(book: &Book, n: u32) -> &Entry {
    let (all, brought) = (book.log().len(), 4);
    let skip = if n.is_multiple_of(16) || all == brought { 0 } else { brought };
    book.log().entries().skip(skip).nth(n as usize % (all - skip)).unwrap()
}

/// The same line with something else in it, on another day.
fn edited(entry: &Entry, b: u32) -> What {
    match entry.what.clone() {
        What::Check(work) => What::Check(Check {
            did: DIDS[b as usize % 6],
            after: Some(Share::from_percent(Decimal::whole(b % 101)).unwrap()),
            ..work
        }),
        What::Skip { hive, .. } => What::Skip { hive, why: SkipReason::Weather, note: Some(b.to_string()) },
        What::Yard { zone, .. } => What::Yard { name: b.to_string(), zone },
        What::YardChanged { yard, .. } => What::YardChanged { yard, name: None, zone: Some(b.to_string()) },
        What::Kind(kind) => What::Kind(lasting(kind, b)),
        What::KindChanged { kind, now } => What::KindChanged { kind, now: lasting(now, b) },
        What::HiveChanged { hive, tag, .. } => What::HiveChanged { hive, tag, size: Some(HiveSize::Nuc) },
        What::Order { yard, hives } => What::Order { yard, hives: hives.into_iter().rev().collect() },
        What::Keeper(change) => What::Keeper(KeeperChange {
            reserve: Share::from_percent(Decimal::whole(b % 101)).ok(),
            ..change
        }),
        other => other,
    }
}

/// A kind with another number of days.
fn lasting(kind: TrapKind, b: u32) -> TrapKind {
    TrapKind { max_days: u8::try_from(1 + b % 60).unwrap().into(), ..kind }
}

/// Something about the yard, its kind of trap or its walk, or a setting.
fn named(book: &Book, pen: &Pen, on: Day, a: u32, b: u32) -> Result<Vec<Entry>, Refusal> {
    let standing = book.standing();
    let Some((yard, now)) = standing.yards.iter().next() else { return Ok(Vec::new()) };
    let what = match a % 4 {
        0 => What::YardChanged { yard: yard.clone(), name: Some(b.to_string()), zone: None },
        1 => What::Order { yard: yard.clone(), hives: now.order.iter().rev().cloned().collect() },
        2 => {
            let currency = Some(b.to_string());
            return book.about_keeper(
                pen,
                on,
                What::Keeper(KeeperChange { currency, ..KeeperChange::default() }),
            );
        }
        _ => {
            let Some((kind, known)) = standing.kinds.iter().next() else { return Ok(Vec::new()) };
            What::KindChanged { kind: kind.clone(), now: lasting(known.kind.clone(), b) }
        }
    };
    book.about_yard(pen, on, on, yard, what)
}

fn write(book: &Book, pen: &Pen, on: Day, (_, act, a, b, _): Act) -> Result<Vec<Entry>, Refusal> {
    match act % 11 {
        10 => named(book, pen, on, a, b),
        0..=2 => work(book, a, b).map_or(Ok(Vec::new()), |work| book.check(pen, on, on, work)),
        3 => work(book, a, b)
            .map_or(Ok(Vec::new()), |work| book.skip(pen, on, on, &work.hive, SkipReason::Robbing, None)),
        4 | 5 => {
            let line = nth(book, b);
            book.correct(pen, on, on, &line.id, edited(line, a), &Unicode)
        }
        // A strike of anything, strikes and corrections included.
        6 => book.strike(pen, on, &[nth(book, b).id.clone()], &Unicode),
        7 => book.strike(pen, on, &book.versions_of(&[nth(book, b).id.clone()]), &Unicode),
        8 => {
            let line = history::lines(book, None).into_iter().find(|line| !line.clash.is_empty());
            line.map_or(Ok(Vec::new()), |line| {
                book.decide(
                    pen,
                    on,
                    if b.is_multiple_of(2) { &line.entry.id } else { &line.clash[0].id },
                    &Unicode,
                )
            })
        }
        _ => {
            let doubles = || book.standing().hives.values().flat_map(|hive| &hive.doubles);
            doubles().next().map_or(Ok(Vec::new()), |double| book.both_right(pen, double))
        }
    }
}

/// What can be taken back whatever else was written: a tag may be another hive's by now.
fn again(what: &What) -> bool {
    !matches!(what, What::Struck { .. } | What::Hive { .. } | What::HiveChanged { .. })
}

/// Three phones that began with one book.
fn phones(acts: &[Act]) -> [Book; 3] {
    let first = yard();
    let mut phones = [first.clone(), first.clone(), first];
    for act in acts {
        let (phone, kind, a, _, shift) = *act;
        // Now and then one takes in what another has.
        if kind % 24 == 15 {
            let other: Vec<Entry> = phones[a as usize % 3].log().entries().cloned().collect();
            phones[phone].add(other);
            continue;
        }
        let on = start().plus(shift);
        if let Ok(entries) = write(&phones[phone], &hand(phone, on), on, *act) {
            assert!(entries.iter().all(|entry| entry.check().is_ok()), "{entries:?}");
            phones[phone].add(entries);
        }
    }
    phones
}

fn union(one: &Book, other: &Book) -> Book {
    let mut both = one.clone();
    both.add(other.log().entries().cloned());
    both
}

fn ids(book: &Book) -> BTreeSet<EntryId> {
    book.log().entries().map(|entry| entry.id.clone()).collect()
}

/// Every entry that the history leads to.
fn shown(book: &Book) -> BTreeSet<EntryId> {
    let mut shown = BTreeSet::new();
    for line in history::lines(book, None) {
        shown.insert(line.entry.id.clone());
        shown.extend(line.clash.iter().map(|entry| entry.id.clone()));
        shown.extend(line.trail.iter().map(|step| step.entry().id.clone()));
    }
    shown
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_500))]

    #[test]
    fn union_is_commutative_associative_and_idempotent(acts in acts()) {
        let [a, b, c] = &phones(&acts);
        let all = union(&union(a, b), c);
        prop_assert_eq!(&union(&union(c, b), a), &all);
        prop_assert_eq!(&union(a, &union(b, c)), &all);
        prop_assert_eq!(&union(&all, a), &all);
        prop_assert_eq!(union(&all, &all), all);
    }

    #[test]
    fn what_stands_depends_on_the_set_of_entries_and_not_on_their_order(
        acts in acts(),
        order in vec(any::<u32>(), 80),
    ) {
        let [a, b, c] = &phones(&acts);
        let all = union(&union(a, b), c);
        let mut entries: Vec<Entry> = all.log().entries().cloned().collect();
        for (at, pick) in order.iter().enumerate().take(entries.len()) {
            let other = *pick as usize % entries.len();
            entries.swap(at, other);
        }
        // One by one, so that corrections and strikes arrive before what they speak of.
        let mut slowly = Book::default();
        for entry in &entries {
            slowly.add([entry.clone()]);
        }
        prop_assert_eq!(slowly.standing(), all.standing());
        let log: Log = entries.into_iter().collect();
        prop_assert_eq!(Book::from_log(log), all);
    }

    #[test]
    fn a_correction_taken_back_leaves_what_stood_and_done_again_what_it_made(
        acts in acts(),
        pick in any::<u32>(),
        value in any::<u32>(),
    ) {
        let [mut book, ..] = phones(&acts);
        let on = day("2026-06-01");
        let pen = hand(0, on);
        let lines: Vec<EntryId> =
            history::lines(&book, None).iter().filter(|line| line.counts == Counts::Yes && again(&line.entry.what)).map(|line| line.entry.id.clone()).collect();
        // Everything may have been struck out by now.
        let Some(line) = lines.get(pick as usize % lines.len().max(1)) else { return Ok(()) };
        let line = book.log().get(line).unwrap();
        let before: Standing = book.standing().clone();
        let Ok(edit) = book.correct(&pen, line.day.max(start()), on, &line.id, edited(line, value), &Unicode) else { return Ok(()) };
        let made: Vec<EntryId> = edit.iter().map(|entry| entry.id.clone()).collect();
        book.add(edit);
        let after = book.standing().clone();
        let undo = book.strike(&pen, on, &made, &Unicode).unwrap();
        let strike = undo[0].id.clone();
        book.add(undo);
        prop_assert_eq!(book.standing(), &before);
        let redo = book.strike(&pen, on, &[strike], &Unicode).unwrap();
        book.add(redo);
        prop_assert_eq!(book.standing(), &after);
    }

    #[test]
    fn no_entry_ever_vanishes_from_the_history(acts in acts(), missing in any::<u32>()) {
        let [a, b, c] = &phones(&acts);
        let all = union(&union(a, b), c);
        for book in [a, b, c, &all] {
            prop_assert_eq!(shown(book), ids(book));
        }
        // Nor in a book that holds corrections and strikes of what it does not hold.
        let gone = nth(&all, missing).id.clone();
        let part = all.without(|entry| entry.id == gone);
        prop_assert_eq!(shown(&part), ids(&part));
        // And every line counts once at the most.
        let mut counted = BTreeMap::new();
        for line in history::lines(&all, None) {
            if line.counts == Counts::Yes {
                *counted.entry(line.entry.id.clone()).or_insert(0) += 1;
            }
        }
        let in_effect: BTreeMap<EntryId, i32> =
            all.log().in_effect().into_iter().map(|(_, entry)| (entry.id.clone(), 1)).collect();
        counted.retain(|id, _| !matches!(all.log().get(id).unwrap().what, What::Struck { .. }));
        prop_assert_eq!(counted, in_effect);
    }

    #[test]
    fn a_decision_ends_a_clash_on_every_phone_and_loses_no_version(
        acts in acts(),
        pick in any::<u32>(),
        values in (0..101_u32, 0..101_u32),
        keep in any::<bool>(),
    ) {
        let [a, b, c] = &phones(&acts);
        let all = union(&union(a, b), c);
        let on = day("2026-06-01");
        // Two phones that hold everything correct one line, each without the other.
        let lines = history::lines(&all, None);
        let lines: Vec<_> =
            lines.iter().filter(|line| line.counts == Counts::Yes && matches!(line.entry.what, What::Check(_))).collect();
        let Some(line) = lines.get(pick as usize % lines.len().max(1)) else { return Ok(()) };
        let root = line.root.clone();
        let on_one_phone = |phone: usize, value: u32| {
            let mut book = all.clone();
            let edit = book.correct(&hand(phone, on), line.entry.day, on, &line.entry.id, edited(line.entry, value), &Unicode);
            // Refused where the line says so already, or its hive was struck out.
            let made = edit.is_ok();
            book.add(edit.unwrap_or_default());
            (book, made)
        };
        let ((one, by_one), (other, by_other)) = (on_one_phone(0, values.0), on_one_phone(1, values.1));
        let mut both = union(&one, &other);
        let found = |book: &Book| {
            let lines = history::lines(book, None);
            let line = lines.into_iter().find(|line| line.root == &root).unwrap();
            let kept = if keep { line.entry } else { line.clash.first().copied().unwrap_or(line.entry) };
            (line.clash.len(), kept.clone(), line.entry.clone())
        };
        let (clash, kept, _) = found(&both);
        if clash == 0 {
            prop_assert!(!by_one || !by_other || values.0 == values.1);
            return Ok(());
        }
        let versions = |book: &Book| book.log().chains().versions(book.log().get(&kept.id).unwrap()).len();
        let before = versions(&both);
        let decision = both.decide(&hand(2, on), on, &kept.id, &Unicode);
        if let Err(refusal) = decision {
            // The start of the hive was moved to a later day meanwhile: that version cannot count, only the other can.
            let since = kept.hive().and_then(|hive| both.standing().hives.get(&hive)).map(|hive| hive.since);
            prop_assert!(refusal == Refusal::NotThereYet && since.is_none_or(|since| kept.day < since));
            return Ok(());
        }
        let decision = decision.unwrap();
        both.add(decision);
        let (clash, _, now) = found(&both);
        prop_assert_eq!(clash, 0);
        prop_assert_eq!((&now.what, now.day), (&kept.what, kept.day));
        prop_assert_eq!(versions(&both), before + 1);
        prop_assert_eq!(shown(&both), ids(&both));
        // A phone that has not heard of it yet hears of it with the next file.
        let told = union(&one, &both);
        prop_assert_eq!(told, both);
    }
}
