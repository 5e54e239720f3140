//! What is known of hives that were drawn by lot, comb that bees are to cover, and comb in the freezer: the numbers that
//! must not move with what happens later.

use crate::support::{Unicode, day, pen};
use crate::yard_decides::{Hundredths, On, Text, Word, Words, three, whole};
use crate::{Yard, plan, trap};
use beetle_almanac::almanac::cover::Guard;
use beetle_almanac::almanac::quantity::{Decimal, Share};
use beetle_almanac::almanac::sample::at_most;
use beetle_almanac::almanac::stack::{BoxDepth, HiveSize};
use beetle_almanac::app::decide::draws::{self, Drawn, Outcome};
use beetle_almanac::app::wording::en_yard_decides::freezer;
use beetle_almanac::book::chilled::{Batch, Chilled, chilled};
use beetle_almanac::book::entry::Ending;
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::opened::{Opened, opened};
use beetle_almanac::book::record::Blank;
use beetle_almanac::book::urgent::{Because, urgent};
use beetle_almanac::book::write::{HivePlan, KindChoice};

const TEN: [&str; 10] = ["1", "2", "3", "4", "5", "6", "7", "8", "9", "10"];

fn ten() -> Yard {
    Yard::new(&TEN, day("2026-05-01"))
}

/// Hives of the yard that are in care.
fn hives(yard: &Yard) -> Vec<ThingId> {
    yard.book.standing().hives_of(&yard.id, true).map(|(id, _)| id.clone()).collect()
}

fn more(yard: &mut Yard, tags: &[&str], size: HiveSize) {
    let on = day("2026-06-20");
    let plan = HivePlan { size, ..plan(tags, &[(BoxDepth::Deep, 0)], on) };
    let kind = KindChoice::Known(yard.kind());
    let added = yard.book.add_hives(&pen("aa", on), &yard.id, &kind, &plan, &Unicode).unwrap();
    yard.book.add(added);
}

/// All of it drawn on 10 June.
fn all_drawn(yard: &Yard) -> Drawn {
    let hives = hives(yard);
    Drawn { day: day("2026-06-10"), from: hives.clone(), hives, number: None }
}

fn states(yard: &Yard, drawn: &Drawn) -> Vec<Opened> {
    opened(yard.book.standing(), &drawn.hives, drawn.day, day("2026-06-30"))
}

fn outcome(yard: &Yard, drawn: &Drawn) -> Outcome {
    drawn.outcome(&states(yard, drawn), &hives(yard))
}

fn percent(percent: u32) -> Share {
    Share::from_percent(Decimal::whole(percent)).unwrap()
}

#[test]
fn what_was_found_in_a_drawn_hive_stays_found_whatever_becomes_of_the_hive() {
    let mut yard = ten();
    let drawn = all_drawn(&yard);
    for tag in TEN {
        let larvae = if matches!(tag, "3" | "4" | "5") { "few" } else { "none" };
        yard.tells("2026-06-11", tag, Blank::Look, &[("larvae", Word(larvae))]);
    }
    let found = Outcome { drawn: 10, from: 10, clean: 7, found: 3, later: false };
    assert_eq!(outcome(&yard, &drawn), found);
    yard.tells("2026-06-12", "3", Blank::DeadOut, &[("causes", Words(&["beetles"]))]);
    let (on, three, four, five) = (day("2026-06-12"), yard.hive("3"), yard.hive("4"), yard.hive("5"));
    let end = yard.book.end_hive(&pen("aa", on), on, on, &three, Ending::Dead, None).unwrap();
    yard.book.add(end);
    let sold = yard.book.end_hive(&pen("aa", on), on, on, &four, Ending::Sold, None).unwrap();
    yard.book.add(sold);
    let kind = KindChoice::New(trap());
    let away = plan(&["90"], &[(BoxDepth::Deep, 0)], on);
    let kept = yard.book.keep_yard(&pen("bb", on), "Mill", "Europe/Berlin", &kind, &away).unwrap();
    yard.book.add(kept);
    let mill = yard.book.standing().yards.keys().find(|id| **id != yard.id).unwrap().clone();
    let moved = yard.book.move_hive(&pen("aa", on), on, on, &five, &mill, None, &Unicode).unwrap();
    yard.book.add(moved);
    assert_eq!(hives(&yard).len(), 7);
    assert_eq!(outcome(&yard, &drawn), found);
    let list = drawn.list(&states(&yard, &drawn), &hives(&yard));
    assert_eq!(list.len(), 10);
    assert_eq!(list[2], (three, Opened::Found));
}

#[test]
fn slime_in_a_dead_out_is_a_find_and_a_dead_out_without_any_opens_nothing() {
    let mut yard = ten();
    let drawn = all_drawn(&yard);
    yard.tells("2026-06-09", "1", Blank::DeadOut, &[("causes", Words(&["beetles"])), ("slime", Word("yes"))]);
    yard.tells("2026-06-11", "2", Blank::DeadOut, &[("causes", Words(&["beetles"])), ("slime", Word("yes"))]);
    yard.tells("2026-06-11", "3", Blank::DeadOut, &[("causes", Words(&["starved"])), ("slime", Word("no"))]);
    yard.tells("2026-07-01", "4", Blank::Look, &[("larvae", Word("few"))]);
    let states = states(&yard, &drawn);
    let first = [Opened::NotYet, Opened::Found, Opened::NotYet, Opened::NotYet];
    assert_eq!(states[..4], first, "before the draw, since, and after the day");
    // Nobody is sent to a hive without bees; what was found in one stands.
    let may: Vec<ThingId> = drawn.hives[3..].to_vec();
    let list = drawn.list(&states, &may);
    assert_eq!(list.len(), 8);
    assert_eq!(list[0], (yard.hive("2"), Opened::Found));
}

#[test]
fn nothing_seen_proves_something_of_the_hives_that_were_drawn_from_and_of_no_later_ones() {
    let mut yard = ten();
    let drawn = all_drawn(&yard);
    for tag in TEN {
        yard.tells("2026-06-11", tag, Blank::Look, &[("larvae", Word("none"))]);
    }
    more(&mut yard, &["11", "12", "13", "14", "15", "16", "17", "18", "19", "20"], HiveSize::Full);
    let now = outcome(&yard, &drawn);
    assert_eq!(now, Outcome { drawn: 10, from: 10, clean: 10, found: 0, later: true });
    assert_eq!(at_most(now.from, now.clean, percent(100), percent(95)), 0);
    // The hives of today in its place would say more of a yard than was asked.
    assert_eq!(at_most(20, now.clean, percent(100), percent(95)), 3);
    // A text that was kept without those drawn from counts by the hives of today, and never by fewer than were drawn.
    let kept = draws::with("", &yard.id, &Drawn { from: Vec::new(), ..drawn.clone() });
    let old = draws::of(&kept, &yard.id).unwrap();
    assert_eq!((&*old.from, &old.hives), (&[][..], &drawn.hives));
    assert_eq!((outcome(&yard, &old).from, outcome(&yard, &old).later), (20, false));
    assert_eq!(old.outcome(&states(&yard, &old), &hives(&yard)[..9]).from, 10);
    let kept = draws::with("", &yard.id, &drawn);
    assert_eq!(draws::of(&kept, &yard.id), Some(drawn));
}

#[test]
fn a_hive_that_came_later_is_said_though_as_many_went() {
    let mut yard = ten();
    let drawn = all_drawn(&yard);
    assert!(!outcome(&yard, &drawn).later);
    let (on, gone) = (day("2026-06-12"), yard.hive("4"));
    let sold = yard.book.end_hive(&pen("aa", on), on, on, &gone, Ending::Sold, None).unwrap();
    yard.book.add(sold);
    assert!(!outcome(&yard, &drawn).later, "one that went is none that came");
    more(&mut yard, &["11"], HiveSize::Full);
    assert_eq!(hives(&yard).len(), drawn.from.len());
    assert!(outcome(&yard, &drawn).later);
}

#[test]
fn two_drawn_hives_that_prove_to_be_one_are_one_hive_that_was_opened() {
    let mut yard = ten();
    let mut drawn = all_drawn(&yard);
    drawn.hives.truncate(4);
    for tag in ["2", "3"] {
        yard.tells("2026-06-11", tag, Blank::Look, &[("larvae", Word("none"))]);
    }
    // One of the two hives drawn and looked into is the other, and one that was not drawn is one that was.
    for (one, other) in [("2", "3"), ("4", "9")] {
        let same = yard.book.same_hive(
            &pen("aa", day("2026-06-12")),
            day("2026-06-12"),
            &yard.hive(one),
            &yard.hive(other),
        );
        yard.book.add(same.unwrap());
    }
    let once = drawn.clone().each_once(yard.book.standing());
    assert_eq!((once.hives.len(), once.from.len()), (3, 8));
    let found = Outcome { drawn: 3, from: 8, clean: 1, found: 0, later: false };
    assert_eq!(outcome(&yard, &once), found);
    let list = once.list(&states(&yard, &once), &hives(&yard));
    assert_eq!(list.iter().filter(|(_, state)| *state == Opened::Clean).count(), 1);
}

#[test]
fn bees_and_comb_stay_where_disease_slime_or_larvae_are() {
    let mut yard = three();
    let weak = |larvae, disease| {
        [
            ("larvae", Word(larvae)),
            ("queen", Word("none")),
            ("brood_disease", Word(disease)),
            ("frames_of_bees", whole(4)),
            ("frames_of_comb", whole(16)),
        ]
    };
    let stays = |yard: &Yard, on: &str| {
        let card = urgent(yard.book.standing(), &yard.hive("1"), day(on)).map(|card| card.because);
        let combs = yard.combs("1", on);
        (card, combs.larvae, combs.stays(card), combs.to_join(card))
    };
    yard.tells("2026-06-01", "1", Blank::Look, &weak("none", "no"));
    assert_eq!(stays(&yard, "2026-06-01"), (None, None, false, true));
    yard.tells("2026-06-02", "1", Blank::Look, &weak("few", "no"));
    assert_eq!(stays(&yard, "2026-06-02"), (None, Some(day("2026-06-02")), true, false));
    // Nobody looked for them again.
    yard.tells("2026-06-03", "1", Blank::Look, &weak("not_looked", "no"));
    assert_eq!(stays(&yard, "2026-06-03"), (None, Some(day("2026-06-02")), true, false));
    yard.tells("2026-06-04", "1", Blank::Look, &[("larvae", Word("none")), ("soil", Word("larvae"))]);
    assert_eq!(stays(&yard, "2026-06-04").1, None, "in the ground they are in no comb");
    yard.tells("2026-06-05", "1", Blank::Look, &weak("many", "no"));
    let slimed = (Some(Because::Slime), Some(day("2026-06-05")), true, false);
    assert_eq!(stays(&yard, "2026-06-05"), slimed);
    yard.tells("2026-06-06", "1", Blank::Look, &weak("none", "suspected"));
    assert_eq!(stays(&yard, "2026-06-06"), (Some(Because::Disease), None, true, false));
    // A test takes nothing back; a look does, for the card, the lot and the comb alike.
    yard.tells("2026-06-07", "1", Blank::Test, &[("for", Text("foulbrood")), ("result", Text("none"))]);
    assert_eq!(stays(&yard, "2026-06-07"), (Some(Because::Disease), None, true, false));
    yard.tells("2026-06-08", "1", Blank::Look, &weak("none", "no"));
    assert_eq!(stays(&yard, "2026-06-08"), (None, None, false, true));
}

#[test]
fn comb_that_was_taken_out_since_a_look_is_counted_off() {
    let mut yard = three();
    let look = |bees, comb| {
        [("larvae", Word("none")), ("frames_of_bees", whole(bees)), ("frames_of_comb", whole(comb))]
    };
    let out = |frames, to| [("frames", whole(frames)), ("to", Word(to))];
    let last = |yard: &Yard, on: &str| {
        let look = yard.combs("1", on).last.unwrap();
        (look.sides, look.frames, look.taken, look.cover.map(|cover| (cover.share * 1000.0).round()))
    };
    yard.tells("2026-05-31", "1", Blank::Comb, &out(3, "melted"));
    yard.tells("2026-06-01", "1", Blank::Look, &look(5, 16));
    assert_eq!(last(&yard, "2026-06-02"), (10, Some(16), 0, Some(313.0)));
    yard.tells("2026-06-02", "1", Blank::Comb, &out(4, "freezer"));
    yard.tells("2026-06-03", "1", Blank::Comb, &out(2, "another_hive"));
    yard.tells("2026-06-03", "2", Blank::Comb, &out(5, "burned"));
    assert_eq!(last(&yard, "2026-06-02"), (10, Some(12), 4, Some(417.0)));
    assert_eq!(last(&yard, "2026-06-03"), (10, Some(10), 6, Some(500.0)));
    // What was taken out later makes no better look of the one before.
    yard.tells("2026-06-08", "1", Blank::Look, &look(6, 10));
    yard.tells("2026-06-09", "1", Blank::Comb, &out(1, "store"));
    let combs = yard.combs("1", "2026-06-09");
    assert_eq!((combs.guard(), combs.little_twice), (Some(Guard::Little), true));
    yard.tells("2026-06-10", "1", Blank::Comb, &out(3, "store"));
    let combs = yard.combs("1", "2026-06-10");
    assert_eq!((combs.guard(), combs.little_twice), (Some(Guard::Well), false));
    // More than were counted is all of them.
    yard.tells("2026-06-11", "1", Blank::Comb, &out(30, "burned"));
    assert_eq!(last(&yard, "2026-06-11"), (12, Some(0), 10, None));
    // Boxes are those of now: what came off with one is off already.
    yard.tells("2026-06-12", "2", Blank::HiveFacts, &[("frames", whole(8))]);
    yard.tells("2026-06-12", "2", Blank::Look, &[("larvae", Word("none")), ("frames_of_bees", whole(9))]);
    yard.tells("2026-06-13", "2", Blank::Comb, &out(2, "store"));
    let look = yard.combs("2", "2026-06-13").last.unwrap();
    assert_eq!((look.frames, look.taken), (Some(16), 0));
}

#[test]
fn a_nuc_is_weak_however_well_it_is_covered_and_a_box_of_no_frames_tells_nothing() {
    let mut yard = three();
    more(&mut yard, &["4"], HiveSize::Nuc);
    let full = [("larvae", Word("none")), ("frames_of_bees", whole(10)), ("frames_of_comb", whole(10))];
    for tag in ["1", "4"] {
        yard.tells("2026-06-21", tag, Blank::Look, &full);
    }
    let weak = |tag| (yard.combs(tag, "2026-06-21").guard(), yard.combs(tag, "2026-06-21").weak());
    assert_eq!((weak("1"), weak("4")), ((Some(Guard::Well), false), (Some(Guard::Well), true)));
    yard.tells("2026-06-21", "2", Blank::HiveFacts, &[("frames", whole(0))]);
    yard.tells("2026-06-21", "2", Blank::Look, &[("larvae", Word("none")), ("frames_of_bees", whole(7))]);
    let combs = yard.combs("2", "2026-06-21");
    assert_eq!((combs.a_box, combs.last.unwrap().frames), (None, None));
}

fn cold(yard: &Yard, hold: u32, on: &str) -> Chilled {
    chilled(yard.book.standing(), hold, day(on), false)
}

#[test]
fn comb_from_elsewhere_in_a_batch_stands_for_none_that_is_taken_out_later() {
    let mut yard = three();
    let out = |frames| [("frames", whole(frames)), ("to", Word("freezer"))];
    yard.tells("2026-06-01", "1", Blank::Comb, &out(4));
    yard.tells("2026-06-02", "", Blank::Freezer, &[("frames", whole(20))]);
    yard.tells("2026-07-01", "2", Blank::Comb, &out(10));
    let found = cold(&yard, 48, "2026-06-30");
    assert_eq!((found.waiting(), found.elsewhere, found.taken), (0, 16, 4));
    let found = cold(&yard, 48, "2026-07-01");
    assert_eq!((found.waiting(), found.elsewhere, found.taken), (10, 16, 14));
    assert_eq!(found.from, [(yard.hive("2"), day("2026-07-01"), 10)]);
    // A batch of the same day holds what was taken out on it, the older comb first; the newest stands first in the list.
    yard.tells("2026-07-02", "3", Blank::Comb, &out(5));
    yard.tells("2026-07-02", "", Blank::Freezer, &[("frames", whole(8))]);
    let found = cold(&yard, 48, "2026-07-02");
    let from = [(yard.hive("3"), day("2026-07-02"), 5), (yard.hive("2"), day("2026-07-01"), 2)];
    assert_eq!((found.waiting(), found.elsewhere, &*found.from), (7, 16, &from[..]));
    // One that is dated after today holds nothing yet.
    yard.tells("2026-07-05", "", Blank::Freezer, &[("frames", whole(7))]);
    let found = cold(&yard, 48, "2026-07-04");
    assert_eq!((found.waiting(), found.within.len()), (7, 2));
    let found = cold(&yard, 48, "2026-07-05");
    assert_eq!((found.waiting(), found.within.len()), (0, 3));
}

#[test]
fn a_batch_comes_out_on_a_day_that_begins_after_all_of_its_hours() {
    let mut yard = three();
    let put_in = [("frames", whole(3)), ("cold_since", On("2026-06-30")), ("out", On("2026-07-04"))];
    yard.tells("2026-06-29", "", Blank::Freezer, &put_in);
    let out = |hold| cold(&yard, hold, "2026-06-30").within[0].out_on.unwrap();
    // 30 June ends where 1 July begins; 48 hours later 3 July begins.
    assert_eq!(
        [0, 1, 24, 25, 48].map(out),
        ["01", "02", "02", "03", "03"].map(|on| day(&format!("2026-07-{on}")))
    );
    let said = |hold, on: &str| {
        let found = cold(&yard, hold, on);
        let batch = &found.within[0];
        let cold = batch.cold_since.zip(batch.out_on);
        freezer::batch(batch.frames, batch.day, cold, day(on)).replace('\u{a0}', " ")
    };
    let ends = |hold, on: &str, end: &str| {
        let said = said(hold, on);
        assert!(said.ends_with(end), "{said}");
    };
    // Written down as cold on a day to come, it is cold from then on.
    ends(48, "2026-06-29", ": cold from Tue 30 June 2026, out on Fri 3 July 2026, in 4 days");
    ends(48, "2026-06-30", ": cold since Tue 30 June 2026, out on Fri 3 July 2026, in 3 days");
    ends(48, "2026-07-03", ", out on Fri 3 July 2026, today");
    ends(24, "2026-07-03", ", to come out since Thu 2 July 2026, yesterday");
    // It is in until the day on which it was taken out.
    assert_eq!(cold(&yard, 48, "2026-07-03").within.len(), 1);
    assert_eq!(cold(&yard, 48, "2026-07-04").within, []);
}

#[test]
fn twelve_and_seven_degrees_of_frost_are_cold_enough_to_the_letter() {
    let at = |celsius| {
        let batch =
            Batch { day: day("2026-06-01"), frames: 1, cold_since: None, out_on: None, early: None, celsius };
        (batch.too_warm(), batch.hardly_cold())
    };
    assert_eq!((at(Some(-12.0)), at(Some(-11.9))), ((false, false), (true, false)));
    assert_eq!((at(Some(-7.0)), at(Some(-6.9))), ((true, false), (true, true)));
    assert_eq!(at(None), (false, false));
    let mut yard = three();
    for degrees in [-1200, -700] {
        let batch = [("frames", whole(1)), ("freezer", Hundredths(degrees, 0))];
        yard.tells("2026-06-01", "", Blank::Freezer, &batch);
    }
    let found = cold(&yard, 48, "2026-06-01");
    let told = found.within.iter().map(|batch| (batch.too_warm(), batch.hardly_cold()));
    assert_eq!(told.collect::<Vec<_>>(), [(false, false), (true, false)]);
}
