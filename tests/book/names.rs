//! What was named, described or set wrong and is corrected: yards, hives, kinds of trap, the walk, the settings.

use crate::support::{Unicode, day, pen};
use crate::{Yard, trap};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::app::ledger::edit;
use beetle_almanac::app::ledger::edit_facts::{self, Texts};
use beetle_almanac::app::ledger::history::{self, Counts, Step};
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Did, Ending, Entry, KeeperChange, What};
use beetle_almanac::book::id::EntryId;
use beetle_almanac::book::round::{HiveDue, likely_kind};
use beetle_almanac::book::write::Refusal;
use beetle_almanac::papers::pack::{Choice, pick};

const TODAY: &str = "2026-06-01";

fn first(book: &Book, is: impl Fn(&What) -> bool) -> Entry {
    book.log().entries().find(|entry| is(&entry.what)).unwrap().clone()
}

fn of_yard(book: &Book) -> Entry {
    first(book, |what| matches!(what, What::Yard { .. }))
}

/// The line as its fields would write it with these texts in the first two.
fn typed(line: &Entry, one: &str, two: &str) -> What {
    let texts = Texts { first: one.to_owned(), second: two.to_owned(), ..edit_facts::texts(&line.what) };
    edit_facts::what(&line.what, &texts, &Unicode).unwrap()
}

fn correct(book: &Book, writer: &str, line: &Entry, what: What) -> Result<Vec<Entry>, Refusal> {
    let today = day(TODAY);
    book.correct(&pen(writer, today), line.day, today, &line.id, what, &Unicode)
}

fn corrected(book: &mut Book, line: &Entry, what: What) -> EntryId {
    let entries = correct(book, "bb", line, what).unwrap();
    let id = entries[0].id.clone();
    book.add(entries);
    id
}

fn three() -> Yard {
    let mut yard = Yard::new(&["1", "2", "3"], day("2026-05-01"));
    yard.log("2", day("2026-05-08"), Did::ToppedUp, (Some(45), Some(50)));
    yard
}

/// Writes `what` about the yard and returns its line.
fn written(yard: &mut Yard, on: &str, what: What) -> Entry {
    let on = day(on);
    let made = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, what).unwrap();
    yard.book.add(made.clone());
    made[0].clone()
}

#[test]
fn keeper_corrects_the_name_and_zone_of_a_yard_a_month_later_and_no_hive_is_lost() {
    let mut yard = three();
    let before = yard.book.standing().clone();
    let line = of_yard(&yard.book);
    let what = typed(&line, "Fairy Field", "America/New_York");
    assert!(
        yard.book.shifts(&correct(&yard.book, "bb", &line, what.clone()).unwrap(), day(TODAY)).is_empty()
    );
    let id = corrected(&mut yard.book, &line, what);
    let now = yard.book.standing();
    let place = &now.yards[&yard.id];
    assert_eq!((place.name.as_str(), place.zone.as_str()), ("Fairy Field", "America/New_York"));
    assert_eq!((&now.hives, now.orphans, now.yards.len()), (&before.hives, 0, 1));
    assert_eq!((&place.order, place.since), (&before.yards[&yard.id].order, before.yards[&yard.id].since));
    assert_eq!(likely_kind(now, &yard.id, None), likely_kind(&before, &yard.id, None));
    // The old words stay in the history, and can be had back.
    let lines = history::lines(&yard.book, None);
    let told = lines.iter().find(|told| *told.root == line.id).unwrap();
    assert_eq!((&told.entry.id, &told.counts), (&id, &Counts::Yes));
    assert!(matches!(&told.trail[..], [Step::Version(was, None)] if was.id == line.id));
    let today = day(TODAY);
    let back = yard.book.strike(&pen("bb", today), today, &yard.book.decision(&id), &Unicode).unwrap();
    yard.book.add(back);
    assert_eq!(*yard.book.standing(), before);
}

#[test]
fn a_yard_that_was_corrected_is_renamed_struck_and_brought_back_whole() {
    let mut yard = three();
    let line = of_yard(&yard.book);
    let what = typed(&line, "Fairy Field", "UTC");
    corrected(&mut yard.book, &line, what);
    let named = yard.book.standing().clone();
    let today = day(TODAY);
    let all = yard.book.versions_of(std::slice::from_ref(&line.id));
    let strike = yard.book.strike(&pen("bb", today), today, &all, &Unicode).unwrap();
    let by = strike[0].id.clone();
    yard.book.add(strike);
    assert!(yard.book.standing().yards.is_empty());
    let back = yard.book.strike(&pen("bb", today), today, &[by], &Unicode).unwrap();
    yard.book.add(back);
    assert_eq!(*yard.book.standing(), named);
    // A name given later is corrected by itself, and counts over the first.
    let changed = What::YardChanged { yard: yard.id.clone(), name: Some("Mil".into()), zone: None };
    let later = written(&mut yard, TODAY, changed);
    let what = typed(&later, "Mill", "");
    corrected(&mut yard.book, &later, what);
    let place = &yard.book.standing().yards[&yard.id];
    assert_eq!((place.name.as_str(), place.zone.as_str()), ("Mill", "UTC"));
}

#[test]
fn two_phones_correct_the_name_of_a_yard_and_the_keeper_decides() {
    let yard = three();
    let line = of_yard(&yard.book);
    let on = |writer: &str, name: &str| {
        let mut book = yard.book.clone();
        book.add(correct(&book, writer, &line, typed(&line, name, "UTC")).unwrap());
        book
    };
    let (one, other) = (on("bb", "Fairy Field"), on("cc", "Fern Field"));
    let mut both = one.clone();
    both.add(other.log().entries().cloned());
    let mut turned = other.clone();
    turned.add(one.log().entries().cloned());
    assert_eq!(both, turned);
    let kept = {
        let lines = history::lines(&both, None);
        let told = lines.iter().find(|told| *told.root == line.id).unwrap();
        assert_eq!(told.clash.len(), 1);
        told.clash[0].id.clone()
    };
    let today = day(TODAY);
    let decision = both.decide(&pen("dd", today), today, &kept, &Unicode).unwrap();
    both.add(decision);
    assert_eq!(both.standing().yards[&yard.id].name, "Fairy Field");
    assert_eq!(both.standing().hives.len(), 3);
    assert!(history::lines(&both, None).iter().all(|told| told.clash.is_empty()));
}

/// 14 days were typed where 7 are meant: every date hangs on it.
#[test]
fn keeper_corrects_the_longest_days_of_a_kind_and_sees_which_due_dates_move() {
    let mut yard = three();
    let line = first(&yard.book, |what| matches!(what, What::Kind(_)));
    assert_eq!(edit::kind(&line), Some(&trap()));
    let mut kind = trap();
    kind.max_days = 7;
    let made = correct(&yard.book, "bb", &line, What::Kind(kind.clone())).unwrap();
    let shifts = yard.book.shifts(&made, day(TODAY));
    let on = |due: &Option<HiveDue>| match due {
        Some(HiveDue::Due { on, .. }) => *on,
        other => panic!("{other:?}"),
    };
    assert_eq!(shifts.len(), 3);
    let days: Vec<(Day, Day)> = shifts.iter().map(|shift| (on(&shift.before), on(&shift.after))).collect();
    assert!(days.contains(&(day("2026-05-15"), day("2026-05-08"))));
    assert!(days.contains(&(day("2026-05-22"), day("2026-05-15"))));
    yard.book.add(made);
    let now = yard.book.standing();
    assert_eq!((&now.kinds[&yard.kind()].kind, now.kinds.len(), now.orphans), (&kind, 1, 0));
    assert_eq!(now.yards[&yard.id].kind.as_ref(), Some(&yard.kind()), "it is the kind of the yard still");
    // Described anew later and described wrong, that line is corrected and the first one left alone.
    let mut changed = kind.clone();
    changed.max_days = 70;
    let of = yard.kind();
    let later = written(&mut yard, TODAY, What::KindChanged { kind: of.clone(), now: changed.clone() });
    changed.max_days = 10;
    corrected(&mut yard.book, &later, What::KindChanged { kind: of.clone(), now: changed });
    assert_eq!(yard.book.standing().kinds[&of].kind.max_days, 10);
    assert_eq!(
        edit::fields(&written(&mut yard, TODAY, What::KindRetired { kind: of })),
        Some(edit::Fields::Day)
    );
}

#[test]
fn a_tag_is_corrected_and_not_into_one_that_another_hive_carries() {
    let mut yard = three();
    let hive = yard.hive("2");
    let on = day("2026-05-20");
    let made = yard.book.rename_hive(&pen("aa", on), on, &hive, "71", &Unicode).unwrap();
    yard.book.add(made.clone());
    let taken = correct(&yard.book, "bb", &made[0], typed(&made[0], "3", ""));
    assert!(matches!(taken, Err(Refusal::TagTaken { .. })), "{taken:?}");
    corrected(&mut yard.book, &made[0], typed(&made[0], "17", "nuc"));
    let now = &yard.book.standing().hives[&hive];
    assert_eq!((now.tag.as_str(), now.was.as_slice()), ("17", &["2".to_owned()][..]));
    assert_eq!(now.size, beetle_almanac::almanac::stack::HiveSize::Nuc);
}

#[test]
fn how_a_hive_ended_and_the_permit_it_moved_with_are_corrected() {
    let mut yard = three();
    let (gone, into) = (yard.hive("1"), yard.hive("3"));
    let ended = written(&mut yard, "2026-05-20", What::HiveEnded { hive: gone.clone(), how: Ending::Dead });
    let what = typed(&ended, "2", &into.to_string());
    corrected(&mut yard.book, &ended, what);
    let joined = Ending::Joined { into: Some(into) };
    assert_eq!(yard.book.standing().hives[&gone].ended, Some((joined, day("2026-05-20"))));

    let on = day("2026-05-21");
    let plan = crate::plan(&[], &[], on);
    let kind = beetle_almanac::book::write::KindChoice::Known(yard.kind());
    let mill = yard.book.keep_yard(&pen("aa", on), "Mill", "UTC", &kind, &plan).unwrap();
    let to = mill[0].id.thing(0);
    yard.book.add(mill);
    let hive = yard.hive("2");
    let moved = yard.book.move_hive(&pen("aa", on), on, on, &hive, &to, None, &Unicode).unwrap();
    yard.book.add(moved.clone());
    let what = typed(&moved[0], "P 7", "");
    let id = corrected(&mut yard.book, &moved[0], what);
    assert!(
        matches!(&yard.book.log().get(&id).unwrap().what, What::HiveMoved { permit: Some(permit), .. } if permit == "P 7")
    );
    assert_eq!((&yard.book.standing().hives[&hive].yard, yard.book.standing().orphans), (&to, 0));
}

#[test]
fn the_order_of_the_walk_and_the_settings_are_corrected() {
    let mut yard = three();
    let (one, two, three) = (yard.hive("1"), yard.hive("2"), yard.hive("3"));
    let order = What::Order { yard: yard.id.clone(), hives: vec![three.clone(), two.clone(), one.clone()] };
    let line = written(&mut yard, "2026-05-20", order);
    let mut texts = edit_facts::texts(&line.what);
    texts.hives = vec![two.clone(), three.clone(), one.clone()];
    let what = edit_facts::what(&line.what, &texts, &Unicode).unwrap();
    corrected(&mut yard.book, &line, what);
    assert_eq!(yard.book.standing().yards[&yard.id].order, [two, three, one]);

    let share = |percent: u32| Share::from_percent(Decimal::whole(percent)).ok();
    let change = KeeperChange { reserve: share(52), currency: Some("EUR".into()), ..KeeperChange::default() };
    let on = day("2026-05-20");
    let set = yard.book.about_keeper(&pen("aa", on), on, What::Keeper(change)).unwrap();
    yard.book.add(set.clone());
    let what = typed(&set[0], "25 %", "");
    corrected(&mut yard.book, &set[0], what);
    let keeper = &yard.book.standing().keeper;
    assert_eq!((keeper.reserve, keeper.currency.as_deref()), (share(25), Some("EUR")));
}

/// The other phone learns the new name with the hives that stand there.
#[test]
fn hives_handed_over_come_with_the_corrected_name_of_their_yard_and_kind() {
    let mut yard = three();
    let (line, kind) = (of_yard(&yard.book), first(&yard.book, |what| matches!(what, What::Kind(_))));
    let what = typed(&line, "Fairy Field", "UTC");
    corrected(&mut yard.book, &line, what);
    let slim = beetle_almanac::almanac::trap::TrapKind { name: "Thin".to_owned(), ..trap() };
    corrected(&mut yard.book, &kind, What::Kind(slim));
    let choice = Choice { hives: vec![yard.hive("2")], yard: None, since: None, notes: false };
    let mut there = Book::default();
    there.add(pick(yard.book.log(), &choice));
    assert_eq!(there.standing().yards[&yard.id].name, "Fairy Field");
    assert_eq!(there.standing().kinds[&yard.kind()].kind.name, "Thin");
    assert_eq!(there.standing().orphans, 0);
}
