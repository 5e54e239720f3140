//! What raises an alarm of a hive, what ends it, and in which yard its larvae went into the ground.

use crate::support::{Unicode, day, pen};
use crate::yard_decides::{Says, Text, Word, Words, filled, three, whole};
use crate::{Yard, plan};
use beetle_almanac::almanac::ground::Stand;
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::book::entry::Ending;
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::record::Blank;
use beetle_almanac::book::stands::{Placed, placed};
use beetle_almanac::book::urgent::{Because, Urgent, dead, urgent};
use beetle_almanac::book::write::KindChoice;

const SUSPECTED: [(&str, Says); 2] = [("larvae", Word("none")), ("brood_disease", Word("suspected"))];
const NO_SIGNS: [(&str, Says); 2] = [("larvae", Word("none")), ("brood_disease", Word("no"))];
const MANY: [(&str, Says); 1] = [("larvae", Word("many"))];
const NEMATODES: [(&str, Says); 1] = [("material", Text("nematodes"))];

impl Yard {
    fn card(&self, tag: &str, on: &str) -> Option<Urgent> {
        urgent(self.book.standing(), &self.hive(tag), day(on))
    }

    fn because(&self, tag: &str, on: &str) -> Option<Because> {
        self.card(tag, on).map(|card| card.because)
    }

    fn died(&mut self, on: &str, tag: &str) {
        self.tells(on, tag, Blank::DeadOut, &[("causes", Words(&["beetles"]))]);
    }

    fn ends(&mut self, on: &str, tag: &str, how: Ending) {
        let (on, hive) = (day(on), self.hive(tag));
        let end = self.book.end_hive(&pen("aa", on), on, on, &hive, how, None).unwrap();
        self.book.add(end);
    }

    /// Another yard, of one hive.
    fn other(&mut self) -> ThingId {
        let (on, kind) = (day("2026-05-02"), KindChoice::Known(self.kind()));
        let hill = plan(&["9"], &[(BoxDepth::Deep, 2)], on);
        let kept = self.book.keep_yard(&pen("aa", on), "Hill", "Europe/Berlin", &kind, &hill).unwrap();
        let hill = kept[0].id.thing(0);
        self.book.add(kept);
        hill
    }

    fn moves(&mut self, on: &str, hive: &ThingId, to: &ThingId) {
        let on = day(on);
        let moved = self.book.move_hive(&pen("aa", on), on, on, hive, to, None, &Unicode).unwrap();
        self.book.add(moved);
    }

    /// Work on the ground of `yard`, round `hives` where it names any.
    fn ground(&mut self, on: &str, yard: &ThingId, hives: &[ThingId]) {
        let (on, work) = (day(on), filled(Blank::Ground, hives.to_vec(), &NEMATODES));
        let written = self.book.record(&pen("aa", on), on, on, Some(yard), work).unwrap();
        self.book.add(written);
    }

    fn found(&self, yard: &ThingId, hive: &ThingId, on: &str) -> Option<Placed> {
        placed(self.book.standing(), yard, day(on)).into_iter().find(|placed| placed.hive == *hive)
    }
}

#[test]
fn a_test_ends_no_suspicion_whatever_it_says_and_stands_on_the_card() {
    let mut yard = three();
    let test = |what, result| [("for", Text(what)), ("result", Text(result))];
    yard.tells("2026-06-01", "1", Blank::Test, &test("foulbrood", "none in spring"));
    yard.tells("2026-06-02", "1", Blank::Look, &SUSPECTED);
    assert_eq!(yard.card("1", "2026-06-02").unwrap().tests, [], "it came before");
    for (on, what, result) in [
        ("2026-06-02", "varroa", "3 of 300"),
        ("2026-06-05", "foulbrood", "awaited"),
        ("2026-06-09", "foulbrood", "found"),
    ] {
        yard.tells(on, "1", Blank::Test, &test(what, result));
        assert_eq!(yard.because("1", on), Some(Because::Disease), "{what}: {result}");
    }
    let told = |day_of: &str, what: &str, result: &str| (day(day_of), what.to_owned(), result.to_owned());
    let tests = yard.card("1", "2026-06-09").unwrap().tests;
    let [found, awaited] =
        [("2026-06-09", "found"), ("2026-06-05", "awaited")].map(|(on, said)| told(on, "foulbrood", said));
    assert_eq!(tests, [found, awaited.clone(), told("2026-06-02", "varroa", "3 of 300")]);
    assert_eq!(yard.card("1", "2026-06-08").unwrap().tests[0], awaited, "as it stood the day before");
    yard.tells("2026-06-10", "1", Blank::Look, &NO_SIGNS);
    assert_eq!(yard.card("1", "2026-06-10"), None);
}

#[test]
fn a_test_that_a_file_names_twice_for_one_hive_is_one_test() {
    let mut yard = three();
    yard.tells("2026-06-02", "1", Blank::Look, &SUSPECTED);
    let (on, hives) = (day("2026-06-03"), vec![yard.hive("1"), yard.hive("2"), yard.hive("1")]);
    let test = filled(Blank::Test, hives, &[("for", Text("foulbrood")), ("result", Text("awaited"))]);
    let written = yard.book.record(&pen("aa", on), on, on, Some(&yard.id), test).unwrap();
    yard.book.add(written);
    assert_eq!(yard.card("1", "2026-06-03").unwrap().tests.len(), 1);
}

#[test]
fn brood_disease_suspected_in_a_dead_hive_stands_until_a_record_that_looked_says_no() {
    let mut yard = three();
    let dead_out = |word| [("causes", Words(&["not_known"])), ("brood_disease", Word(word))];
    yard.tells("2026-06-02", "1", Blank::DeadOut, &dead_out("suspected"));
    assert_eq!(yard.because("1", "2026-06-02"), Some(Because::Disease));
    // A look of the same day that saw no signs takes nothing back.
    yard.tells("2026-06-02", "1", Blank::Look, &NO_SIGNS);
    assert_eq!(yard.because("1", "2026-06-02"), Some(Because::Disease));
    yard.tells("2026-06-03", "1", Blank::DeadOut, &dead_out("no"));
    assert_eq!(yard.because("1", "2026-06-03"), Some(Because::Dead));
}

#[test]
fn a_hive_taken_back_into_care_is_dead_no_more_until_it_dies_again() {
    for (last, gone) in [("2026-06-30", true), ("2026-07-01", true), ("2026-07-02", false)] {
        let mut yard = three();
        yard.died("2026-06-02", "1");
        yard.ends("2026-06-02", "1", Ending::Dead);
        yard.died(last, "1");
        assert_eq!(yard.because("1", last), Some(Because::Dead));
        let (hive, on) = (yard.hive("1"), day("2026-07-01"));
        let back = yard.book.hive_back(&pen("aa", on), on, on, &hive, &Unicode).unwrap();
        yard.book.add(back);
        let standing = yard.book.standing();
        assert_eq!(standing.hives[&hive].back, Some(on));
        assert_eq!(dead(standing, &yard.id, day("2026-07-05")).is_empty(), gone, "{last}");
        assert_eq!(yard.card("1", "2026-07-05").is_none(), gone, "{last}");
    }
}

#[test]
fn a_look_on_the_day_of_a_dead_out_does_not_raise_the_dead_and_a_later_one_does() {
    let mut yard = three();
    yard.died("2026-06-02", "1");
    yard.tells("2026-06-02", "1", Blank::Look, &[("larvae", Word("none"))]);
    assert_eq!(yard.because("1", "2026-06-02"), Some(Because::Dead));
    assert_eq!(dead(yard.book.standing(), &yard.id, day("2026-06-02")), [yard.hive("1")]);
    yard.tells("2026-06-03", "1", Blank::Look, &[("larvae", Word("none"))]);
    assert_eq!(yard.because("1", "2026-06-03"), None);
}

#[test]
fn what_a_hive_no_longer_in_care_wants_goes_by_how_it_ended() {
    let into = |yard: &Yard| Ending::Joined { into: Some(yard.hive("3")) };
    for how in [|_: &Yard| Ending::Sold, into] {
        let mut yard = three();
        yard.tells("2026-06-02", "1", Blank::Look, &SUSPECTED);
        yard.died("2026-06-02", "2");
        assert!(yard.card("1", "2026-06-03").is_some() && yard.card("2", "2026-06-03").unwrap().in_care);
        for tag in ["1", "2"] {
            let how = how(&yard);
            yard.ends("2026-06-03", tag, how);
            assert_eq!(yard.card(tag, "2026-06-03"), None, "{tag}");
        }
    }
    let mut yard = three();
    yard.tells("2026-06-02", "1", Blank::Look, &MANY);
    yard.died("2026-06-02", "2");
    assert_eq!(yard.because("1", "2026-06-03"), Some(Because::Slime));
    yard.ends("2026-06-03", "1", Ending::Dead);
    yard.ends("2026-06-03", "2", Ending::Dead);
    assert_eq!(yard.card("1", "2026-06-03"), None, "nobody wrote a dead-out down");
    assert!(!yard.card("2", "2026-06-03").unwrap().in_care);
}

#[test]
fn ground_work_counts_round_the_hive_in_the_yard_of_the_alarm_and_up_to_the_day_that_is_asked() {
    let ground = |on: &str, named: &[&str]| {
        let mut yard = three();
        yard.tells("2026-06-02", "1", Blank::Look, &MANY);
        let (home, hives) = (yard.id.clone(), named.iter().map(|tag| yard.hive(tag)).collect::<Vec<_>>());
        yard.ground(on, &home, &hives);
        yard.card("1", "2026-06-10").unwrap().ground
    };
    assert!(ground("2026-06-02", &[]) && ground("2026-06-10", &["2", "1"]));
    assert!(!ground("2026-06-01", &[]), "before it was seen");
    assert!(!ground("2026-06-11", &[]), "not yet");
    assert!(!ground("2026-06-05", &["2", "3"]), "round others");

    let mut yard = three();
    let (home, hill, hive) = (yard.id.clone(), yard.other(), yard.hive("1"));
    yard.tells("2026-06-02", "1", Blank::Look, &MANY);
    yard.moves("2026-06-05", &hive, &hill);
    let done = |yard: &Yard| urgent(yard.book.standing(), &hive, day("2026-06-10")).unwrap().ground;
    yard.ground("2026-06-06", &hill, &[]);
    assert!(!done(&yard), "the larvae are not in that ground");
    yard.ground("2026-06-06", &home, &[]);
    assert!(done(&yard));
}

#[test]
fn larvae_on_the_way_out_stay_in_the_ground_where_they_were_seen_and_those_in_the_comb_go_along() {
    let outside: [(&str, Says); 2] = [("larvae", Word("none")), ("entrance", Words(&["larvae_leaving"]))];
    let soil: [(&str, Says); 2] = [("larvae", Word("none")), ("soil", Word("larvae"))];
    let slime: [(&str, Says); 2] = [("larvae", Word("none")), ("slime", Word("yes"))];
    let few: [(&str, Says); 2] = [("larvae", Word("few")), ("soil", Word("none"))];
    for (look, along) in [(&outside, false), (&soil, false), (&slime, false), (&few, true)] {
        let mut yard = three();
        let (home, hill, hive) = (yard.id.clone(), yard.other(), yard.hive("1"));
        yard.tells("2026-05-03", "1", Blank::Stand, &[("across", whole(1)), ("along", whole(2))]);
        yard.tells("2026-06-02", "1", Blank::Look, look);
        yard.moves("2026-06-05", &hive, &hill);
        let left = yard.found(&home, &hive, "2026-06-10").unwrap();
        assert_eq!(left.stand, Some(Stand { across: 1000.0, along: 2000.0 }));
        assert_eq!((left.larvae, left.here, left.in_care), (true, false, false));
        let now = yard.found(&hill, &hive, "2026-06-10").unwrap();
        assert_eq!((now.stand, now.larvae, now.here, now.in_care), (None, along, true, true));
        assert_eq!(yard.found(&home, &hive, "2026-08-02"), None, "after sixty days");
        // Back where it stood.
        yard.moves("2026-06-08", &hive, &home);
        let back = yard.found(&home, &hive, "2026-06-10").unwrap();
        assert_eq!((back.stand, back.larvae, back.in_care), (left.stand, true, true));
    }
    let mut yard = three();
    let (home, hill, hive) = (yard.id.clone(), yard.other(), yard.hive("1"));
    yard.tells("2026-06-02", "1", Blank::Look, &[("larvae", Word("none"))]);
    yard.moves("2026-06-05", &hive, &hill);
    assert_eq!(yard.found(&home, &hive, "2026-06-10"), None, "it left nothing");
}

#[test]
fn ground_round_a_hive_that_died_can_be_chosen_for_sixty_days_though_nobody_saw_larvae() {
    let mut yard = three();
    yard.tells("2026-05-03", "1", Blank::Stand, &[("across", whole(1)), ("along", whole(2))]);
    yard.died("2026-06-02", "1");
    yard.ends("2026-06-02", "1", Ending::Gone);
    yard.ends("2026-06-02", "2", Ending::Dead);
    yard.ends("2026-06-02", "3", Ending::Sold);
    let (home, hives) = (yard.id.clone(), ["1", "2", "3"].map(|tag| yard.hive(tag)));
    let found = |on: &str| hives.clone().map(|hive| yard.found(&home, &hive, on));
    let [by_dead_out, by_end, sold] = found("2026-08-01");
    let dead = by_dead_out.unwrap();
    assert_eq!((dead.larvae, dead.here, dead.in_care), (false, true, false));
    assert!(dead.stand.is_some() && by_end.is_some());
    assert_eq!(sold, None);
    assert_eq!(found("2026-08-02"), [None, None, None]);
}
