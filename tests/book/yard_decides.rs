//! What a yard decides by: how its hives are closed, how bees cover comb, where hives stand, what waits for the freezer, and
//! what is wanted the same day.

use crate::Yard;
use crate::support::{day, pen};
use beetle_almanac::almanac::cover::Guard;
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::ground::Stand;
use beetle_almanac::almanac::quantity::Decimal;
use beetle_almanac::almanac::stack::BoxDepth;
use beetle_almanac::app::bench::draft::BenchDraft;
use beetle_almanac::app::bench::ground::reckon_on;
use beetle_almanac::book::chilled::chilled;
use beetle_almanac::book::combs::{Combs, Counted, combs};
use beetle_almanac::book::entry::{Ending, NewBox, TrapsWent, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::opened::{Opened, opened};
use beetle_almanac::book::record::{About, Answer, Ask, Blank, Record};
use beetle_almanac::book::shell::{Board, Known, Notch, Shell, clean_every, shells};
use beetle_almanac::book::stands::{paved, placed};
use beetle_almanac::book::urgent::{Because, comb_left, dead, urgent};

/// What a field is answered with.
pub(crate) enum Says<'a> {
    Word(&'a str),
    Words(&'a [&'a str]),
    /// In hundredths, and the unit.
    Hundredths(i64, u8),
    Text(&'a str),
    On(&'a str),
}
pub(crate) use Says::{Hundredths, On, Text, Word, Words};

pub(crate) fn whole(number: i64) -> Says<'static> {
    Hundredths(number * 100, 0)
}

pub(crate) fn filled(blank: Blank, hives: Vec<ThingId>, answers: &[(&str, Says)]) -> Record {
    let mut record = Record::empty(blank, hives);
    for (name, says) in answers {
        let at = blank.fields().iter().position(|field| field.name == *name).unwrap();
        let place = |word: &str| match blank.fields()[at].ask {
            Ask::Word(words) | Ask::Words(words) => words.iter().position(|known| *known == word).unwrap(),
            _ => panic!("{name} has no words"),
        };
        record.answers[at] = Some(match says {
            Word(word) => Answer::Word(place(word).try_into().unwrap()),
            Words(words) => Answer::Words(words.iter().map(|word| 1 << place(word)).sum()),
            Hundredths(number, unit) => {
                Answer::Number(Decimal::from_millionths(number * 10_000).unwrap(), *unit)
            }
            Text(text) => Answer::Text((*text).to_owned()),
            On(text) => Answer::Day(day(text)),
        });
    }
    record
}

impl Yard {
    pub(crate) fn tells(&mut self, on: &str, tag: &str, blank: Blank, answers: &[(&str, Says)]) {
        let hives = if tag.is_empty() { Vec::new() } else { vec![self.hive(tag)] };
        let home = (blank.about() != About::Keeper).then_some(&self.id);
        let written =
            self.book.record(&pen("aa", day(on)), day(on), day(on), home, filled(blank, hives, answers));
        self.book.add(written.unwrap());
    }

    pub(crate) fn writes(&mut self, on: &str, what: What) {
        let written = self.book.about_yard(&pen("aa", day(on)), day(on), day(on), &self.id, what);
        self.book.add(written.unwrap());
    }

    pub(crate) fn shell(&self, tag: &str, on: &str) -> Shell {
        let all = shells(self.book.standing(), &self.id, day(on));
        all.into_iter().find(|shell| shell.hive == self.hive(tag)).unwrap()
    }

    pub(crate) fn combs(&self, tag: &str, on: &str) -> Combs {
        let all = combs(self.book.standing(), &self.id, day(on));
        all.into_iter().find(|combs| combs.hive == self.hive(tag)).unwrap()
    }
}

pub(crate) fn three() -> Yard {
    Yard::new(&["1", "2", "3"], day("2026-05-01"))
}

#[test]
fn nobody_looked_is_neither_fine_nor_unknown() {
    let mut yard = three();
    let shell = yard.shell("1", "2026-06-01");
    assert!(!shell.told() && shell.notch == Known::NoData);
    yard.tells("2026-06-01", "1", Blank::Shell, &[("notch", Word("not_looked")), ("burr_comb", Word("no"))]);
    let shell = yard.shell("1", "2026-06-01");
    assert_eq!((shell.notch, shell.board), (Known::NotLooked(day("2026-06-01")), Known::NoData));
    assert_eq!(shell.burr_comb, Known::Seen(false, day("2026-06-01")));
    // Burr comb alone tells nothing of what is bought and cut, and who did not look saw nothing.
    assert!(shell.told() && shell.looked_at() == [false; 3]);
}

#[test]
fn of_each_part_the_newest_look_that_looked_counts() {
    let mut yard = three();
    yard.tells(
        "2026-06-01",
        "1",
        Blank::Shell,
        &[("crack", whole(4)), ("crack_length", whole(30)), ("notch", Word("open"))],
    );
    yard.tells(
        "2026-06-08",
        "1",
        Blank::Shell,
        &[("notch", Word("not_looked")), ("empty_space", Word("yes"))],
    );
    let shell = yard.shell("1", "2026-06-09");
    assert_eq!(shell.looked_at(), [true, true, false]);
    assert_eq!(shell.notch, Known::Seen(Notch::Open, day("2026-06-01")));
    assert_eq!(shell.empty_space, Known::Seen(true, day("2026-06-08")));
    assert!(shell.gaps() && shell.open_notch());
    assert_eq!(shell.crack_length, Some(300.0));
    // As it stood before the second look.
    assert_eq!(yard.shell("1", "2026-06-07").empty_space, Known::NoData);
    // Sealed and screened: both are put right by one line, and the rest stays.
    yard.tells("2026-06-10", "1", Blank::Shell, &[("crack", whole(0)), ("notch", Word("screened"))]);
    let shell = yard.shell("1", "2026-06-10");
    assert!(
        !shell.gaps() && !shell.open_notch() && shell.empty_space == Known::Seen(true, day("2026-06-08"))
    );
    assert_eq!(yard.shell("2", "2026-06-10").crack, None, "another hive");
}

#[test]
fn a_crack_of_two_millimetres_is_none_and_an_eighth_of_an_inch_is() {
    let mut yard = three();
    yard.tells("2026-06-01", "1", Blank::Shell, &[("crack", whole(2))]);
    yard.tells(
        "2026-06-01",
        "2",
        Blank::Shell,
        &[("crack", Hundredths(13, 1)), ("crack_length", Hundredths(1000, 1))],
    );
    assert!(!yard.shell("1", "2026-06-01").gaps());
    let shell = yard.shell("2", "2026-06-01");
    assert!(shell.gaps() && (shell.crack_length.unwrap() - 254.0).abs() < 1e-9);
}

#[test]
fn how_long_cracks_were_says_nothing_of_those_that_opened_after_they_were_closed() {
    let mut yard = three();
    let long = |yard: &Yard, on: &str| yard.shell("1", on).crack_length;
    yard.tells("2026-06-01", "1", Blank::Shell, &[("crack", whole(4)), ("crack_length", whole(30))]);
    yard.tells("2026-06-05", "1", Blank::Shell, &[("crack", whole(5))]);
    assert_eq!(long(&yard, "2026-06-05"), Some(300.0), "nobody closed them");
    yard.tells("2026-06-10", "1", Blank::Shell, &[("crack", whole(2))]);
    yard.tells("2026-06-20", "1", Blank::Shell, &[("crack", whole(4))]);
    assert!(long(&yard, "2026-06-20").is_none() && yard.shell("1", "2026-06-20").gaps());
    yard.tells("2026-06-21", "1", Blank::Shell, &[("crack_length", whole(8))]);
    assert_eq!(long(&yard, "2026-06-21"), Some(80.0));
}

#[test]
fn a_board_is_due_by_her_own_days_and_never_without_them() {
    let mut yard = three();
    yard.tells("2026-06-01", "1", Blank::Cleaned, &[("what", Words(&["slick_board", "floor"]))]);
    yard.tells("2026-06-01", "2", Blank::Cleaned, &[("what", Words(&["floor"]))]);
    let late = day("2026-09-01");
    assert_eq!(clean_every(yard.book.standing()), None);
    assert!(!yard.shell("1", "2026-09-01").board_due(late));
    yard.tells("2026-06-01", "", Blank::Aims, &[("clean_every", whole(30))]);
    let shell = yard.shell("1", "2026-06-30");
    assert_eq!(shell.clean_by, Some(day("2026-07-01")));
    assert!(!shell.board_due(day("2026-06-30")) && shell.board_due(day("2026-07-01")));
    assert_eq!(yard.shell("2", "2026-09-01").board, Known::NoData, "a floor is no board");
    // Found dirty, cleaned the same day, found dirty again.
    yard.tells("2026-06-20", "1", Blank::Shell, &[("slick_board", Word("dirty"))]);
    assert!(yard.shell("1", "2026-06-20").board_due(day("2026-06-20")));
    yard.tells("2026-06-20", "1", Blank::Cleaned, &[("what", Words(&["slick_board"]))]);
    assert_eq!(yard.shell("1", "2026-06-20").board, Known::Seen(Board::Clean, day("2026-06-20")));
    yard.tells("2026-06-25", "1", Blank::Shell, &[("slick_board", Word("dirty"))]);
    assert_eq!(yard.shell("1", "2026-06-25").board, Known::Seen(Board::Dirty, day("2026-06-25")));
}

#[test]
fn how_a_hive_is_built_counts_until_somebody_looks() {
    let mut yard = three();
    yard.tells(
        "2026-05-05",
        "1",
        Blank::HiveFacts,
        &[("slick_board", Word("no")), ("notch_screen", Word("yes"))],
    );
    let shell = yard.shell("1", "2026-05-06");
    assert_eq!(shell.notch, Known::Seen(Notch::Screened, day("2026-05-05")));
    assert_eq!(shell.board, Known::Seen(Board::Without, day("2026-05-05")));
    yard.tells("2026-05-06", "1", Blank::Shell, &[("slick_board", Word("clean")), ("notch", Word("open"))]);
    let shell = yard.shell("1", "2026-05-06");
    assert_eq!((shell.notch.seen().unwrap().0, shell.board.seen().unwrap().0), (Notch::Open, Board::Clean));
    // Missed and put in on one day: which came first nobody knows, so it is still to be put in.
    let built = [("slick_board", Word("yes"))];
    yard.tells("2026-05-07", "3", Blank::Shell, &[("slick_board", Word("none"))]);
    yard.tells("2026-05-07", "3", Blank::HiveFacts, &built);
    assert_eq!(yard.shell("3", "2026-05-07").board, Known::Seen(Board::Without, day("2026-05-07")));
    yard.tells("2026-05-08", "3", Blank::HiveFacts, &built);
    assert_eq!(yard.shell("3", "2026-05-08").board, Known::Seen(Board::Clean, day("2026-05-08")));
    yard.tells("2026-05-06", "2", Blank::Entrance, &[("width", Hundredths(200, 1))]);
    let (wide, since) = yard.shell("2", "2026-05-06").entrance.unwrap();
    assert!((wide.millimetres() - 50.8).abs() < 1e-9 && since == day("2026-05-06"));
}

#[test]
fn a_patty_past_its_day_is_on_the_list() {
    let mut yard = three();
    yard.tells("2026-06-01", "3", Blank::Patty, &[("did", Word("put_in"))]);
    assert!(yard.shell("3", "2026-06-02").bait.is_empty());
    let shell = yard.shell("3", "2026-06-20");
    assert!(shell.bait.len() == 1 && shell.bait[0].patty);
    // From the very day on which it is to be out.
    let off = shell.bait[0].off.on;
    let listed = |on: Day| yard.shell("3", &on.to_string()).bait.len();
    assert_eq!((listed(off.plus(-1)), listed(off)), (0, 1));
    yard.tells("2026-06-20", "3", Blank::Patty, &[("did", Word("taken_out"))]);
    assert!(yard.shell("3", "2026-06-20").bait.is_empty());
}

#[test]
fn comb_is_counted_by_the_look_or_else_by_boxes_and_said_which() {
    let mut yard = three();
    yard.tells("2026-06-01", "1", Blank::Look, &[("larvae", Word("none")), ("frames_of_bees", whole(11))]);
    let look = yard.combs("1", "2026-06-01").last.unwrap();
    assert_eq!((look.sides, look.frames, look.cover), (22, None, None), "nobody said how many combs");
    yard.tells("2026-06-01", "1", Blank::HiveFacts, &[("frames", whole(8))]);
    let combs = yard.combs("1", "2026-06-01");
    let look = combs.last.as_ref().unwrap();
    let cover = look.cover.unwrap();
    assert_eq!((look.frames, look.counted, combs.a_box), (Some(16), Counted::Boxes(2, 8), Some(8)));
    // A worked example, by hand: 22 of 16 frames, one box off.
    assert_eq!((cover.guard, cover.off), (Guard::Little, Some(1)));
    yard.tells(
        "2026-06-02",
        "1",
        Blank::Look,
        &[("larvae", Word("none")), ("frames_of_bees", Hundredths(750, 0)), ("frames_of_comb", whole(8))],
    );
    let look = yard.combs("1", "2026-06-02").last.unwrap();
    assert_eq!((look.sides, look.frames, look.counted), (15, Some(8), Counted::Look));
    assert_eq!(look.cover.unwrap().guard, Guard::Well);
    assert_eq!(yard.combs("2", "2026-06-02").last, None);
}

#[test]
fn too_weak_at_two_looks_in_a_row_or_without_a_queen_is_one_to_join() {
    let mut yard = three();
    let look = |bees: i64| {
        [("larvae", Word("none")), ("frames_of_bees", whole(bees)), ("frames_of_comb", whole(10))]
    };
    yard.tells("2026-06-01", "1", Blank::Look, &look(5));
    let combs = yard.combs("1", "2026-06-01");
    assert!(combs.weak() && !combs.to_join(None), "once is not twice");
    yard.tells("2026-06-01", "1", Blank::Look, &look(5));
    assert!(!yard.combs("1", "2026-06-01").to_join(None), "nor is one day on two phones");
    yard.tells("2026-06-08", "1", Blank::Look, &look(6));
    assert!(yard.combs("1", "2026-06-08").to_join(None));
    yard.tells("2026-06-15", "1", Blank::Look, &look(9));
    let combs = yard.combs("1", "2026-06-15");
    assert!(!combs.to_join(None) && !combs.weak());
    yard.tells("2026-06-15", "2", Blank::Look, &[("larvae", Word("none")), ("queen", Word("none"))]);
    assert_eq!(yard.combs("2", "2026-06-15").queenless, Some(day("2026-06-15")));
    yard.tells("2026-06-16", "2", Blank::Look, &[("larvae", Word("none")), ("queen", Word("not_looked"))]);
    assert!(yard.combs("2", "2026-06-16").to_join(None), "nobody looked for her again");
    yard.tells(
        "2026-06-16",
        "2",
        Blank::Test,
        &[("for", Text("brood disease")), ("result", Text("awaited"))],
    );
    assert_eq!(yard.combs("2", "2026-06-16").test.unwrap().1, "awaited");
    yard.tells("2026-06-17", "2", Blank::Look, &[("larvae", Word("none")), ("queen", Word("eggs"))]);
    assert!(!yard.combs("2", "2026-06-17").to_join(None));
    // Without bees it is no hive to join with another.
    let listed = |yard: &Yard| {
        beetle_almanac::book::combs::combs(yard.book.standing(), &yard.id, day("2026-06-20")).len()
    };
    assert_eq!(listed(&yard), 3);
    yard.tells("2026-06-19", "2", Blank::DeadOut, &[("causes", Words(&["starved"]))]);
    assert_eq!(listed(&yard), 2);
}

#[test]
fn a_look_that_counted_no_comb_goes_by_the_boxes_of_its_day() {
    let mut yard = three();
    let part = |yard: &Yard, nth: usize| yard.book.standing().hives[&yard.hive("1")].boxes[nth].id.clone();
    let bees = |frames| [("larvae", Word("none")), ("frames_of_bees", whole(frames))];
    yard.tells("2026-05-02", "1", Blank::HiveFacts, &[("frames", whole(10))]);
    yard.tells("2026-06-01", "1", Blank::Look, &bees(19));
    yard.tells("2026-06-20", "1", Blank::Look, &bees(20));
    // Two boxes full of bees are given a third, on the day of the look: nobody looked into that.
    let hive = yard.hive("1");
    let boxes = vec![NewBox { depth: BoxDepth::Medium, wants: 0, traps: Vec::new() }];
    yard.writes("2026-06-20", What::BoxesOn { hive: hive.clone(), above: 2, boxes });
    let combs = yard.combs("1", "2026-06-21");
    let counted = |combs: &Combs| combs.last.as_ref().unwrap().counted;
    assert_eq!((counted(&combs), combs.guard()), (Counted::Boxes(2, 10), Some(Guard::Well)));
    assert!(!combs.little_twice && !combs.weak());
    // In three boxes they are few; taken off again, the box was one of those that were looked into on the look before.
    yard.tells("2026-07-01", "1", Blank::Look, &bees(15));
    assert_eq!(counted(&yard.combs("1", "2026-07-01")), Counted::Boxes(3, 10));
    let off = What::BoxOff { hive, part: part(&yard, 2), traps: TrapsWent::Stock };
    yard.writes("2026-07-01", off);
    assert_eq!(counted(&yard.combs("1", "2026-07-01")), Counted::Boxes(2, 10), "it is off");
    yard.tells("2026-07-08", "1", Blank::Look, &bees(13));
    let combs = yard.combs("1", "2026-07-08");
    assert!(counted(&combs) == Counted::Boxes(2, 10) && combs.little_twice);
}

#[test]
fn a_clean_look_before_the_draw_proves_nothing_and_a_find_is_one_whatever_came_after() {
    let mut yard = three();
    let (all, drawn) = ([yard.hive("1"), yard.hive("2"), yard.hive("3")], day("2026-06-10"));
    let clean = [("larvae", Word("none"))];
    yard.tells("2026-06-09", "1", Blank::Look, &clean);
    let states = |yard: &Yard| opened(yard.book.standing(), &all, drawn, day("2026-06-20"));
    assert_eq!(states(&yard), [Opened::NotYet; 3]);
    yard.tells("2026-06-10", "1", Blank::Look, &clean);
    yard.tells("2026-06-11", "2", Blank::Look, &[("larvae", Word("not_looked")), ("slime", Word("yes"))]);
    yard.tells("2026-06-12", "2", Blank::Look, &clean);
    yard.tells("2026-06-12", "3", Blank::Look, &[("larvae", Word("not_looked"))]);
    assert_eq!(states(&yard), [Opened::Clean, Opened::Found, Opened::NotYet]);
}

#[test]
fn what_was_taken_out_for_the_freezer_waits_until_it_is_in_a_batch() {
    let mut yard = three();
    let out = |frames| [("frames", whole(frames)), ("to", Word("freezer"))];
    yard.tells("2026-06-01", "1", Blank::Comb, &out(4));
    yard.tells("2026-06-03", "2", Blank::Comb, &out(6));
    yard.tells("2026-06-03", "3", Blank::Comb, &[("frames", whole(5)), ("to", Word("melted"))]);
    let at = |yard: &Yard, on: &str| chilled(yard.book.standing(), 48, day(on), false);
    assert_eq!((at(&yard, "2026-06-02").waiting(), at(&yard, "2026-06-03").waiting()), (4, 10));
    yard.tells("2026-06-04", "", Blank::Freezer, &[("frames", whole(7)), ("freezer", Hundredths(-1100, 0))]);
    let found = at(&yard, "2026-06-04");
    assert_eq!((found.taken, found.waiting(), found.elsewhere), (10, 3, 0));
    assert_eq!(found.from, [(yard.hive("2"), day("2026-06-03"), 3)], "what came first went in first");
    let batch = &found.within[0];
    assert!(batch.out_on.is_none() && batch.too_warm() && !batch.hardly_cold());
    yard.tells(
        "2026-06-05",
        "",
        Blank::Freezer,
        &[("frames", whole(9)), ("freezer", Hundredths(2000, 1)), ("cold_since", On("2026-06-06"))],
    );
    let found = at(&yard, "2026-06-06");
    assert_eq!((found.waiting(), found.elsewhere), (0, 6), "six came from elsewhere");
    // 48 hours from the end of the day: the ninth, whatever the hour.
    assert_eq!(found.within[1].out_on, Some(day("2026-06-09")));
    assert!(found.within[1].hardly_cold(), "20 °F is −6.7 °C");
    assert_eq!(
        chilled(yard.book.standing(), 49, day("2026-06-06"), false).within[1].out_on,
        Some(day("2026-06-10"))
    );
    assert_eq!(at(&yard, "2026-06-05").within[1].cold_since, Some(day("2026-06-06")), "cold from tomorrow");
    let early = |yard: &Yard| at(yard, "2026-06-06").within.last().and_then(|batch| batch.early);
    assert_eq!(early(&yard), None, "no day was written");
    let told = |yard: &Yard, on: &str| at(yard, on).within.len();
    for (out, said, last) in
        [("2026-06-09", None, "2026-06-08"), ("2026-06-08", Some(day("2026-06-08")), "2026-06-21")]
    {
        let answers = [("frames", whole(1)), ("cold_since", On("2026-06-06")), ("out", On(out))];
        let before = at(&yard, "2026-07-01").within.len();
        yard.tells("2026-06-06", "", Blank::Freezer, &answers);
        assert_eq!(early(&yard), said, "out on {out}");
        // One that comes out in time is gone on that day, one that comes out before it two weeks later.
        let left = |on: Day| told(&yard, &on.to_string());
        assert_eq!((left(day(last)), left(day(last).plus(1))), (before + 1, before), "out on {out}");
    }
    assert_eq!(
        chilled(yard.book.standing(), 48, day("2026-06-06"), true).taken,
        0,
        "nothing of the demonstration"
    );
}

#[test]
fn a_slimed_hive_is_on_its_card_until_a_look_finds_none() {
    let mut yard = three();
    let now = |yard: &Yard, on: &str| urgent(yard.book.standing(), &yard.hive("1"), day(on));
    yard.tells("2026-06-01", "1", Blank::Look, &[("larvae", Word("few"))]);
    assert_eq!(now(&yard, "2026-06-01"), None);
    let many =
        [("larvae", Word("many")), ("frames_of_bees", Hundredths(550, 0)), ("frames_of_comb", whole(14))];
    yard.tells("2026-06-02", "1", Blank::Look, &many);
    let card = now(&yard, "2026-06-02").unwrap();
    assert_eq!((card.because, card.combs, card.open()), (Because::Slime, Some(9), Some(9)));
    yard.tells("2026-06-01", "1", Blank::Comb, &[("frames", whole(3)), ("to", Word("melted"))]);
    yard.tells("2026-06-02", "1", Blank::Comb, &[("frames", whole(3)), ("to", Word("freezer"))]);
    yard.tells("2026-06-03", "1", Blank::Comb, &[("frames", whole(1)), ("to", Word("another_hive"))]);
    let card = now(&yard, "2026-06-03").unwrap();
    assert_eq!((card.open(), card.fates.frozen, card.fates.melted, card.fates.given), (Some(5), 3, 0, 1));
    assert!(!card.ground);
    yard.tells("2026-06-03", "", Blank::Ground, &[("material", Text("nematodes"))]);
    assert!(now(&yard, "2026-06-03").unwrap().ground);
    yard.tells("2026-06-09", "1", Blank::Look, &[("larvae", Word("none"))]);
    assert_eq!(now(&yard, "2026-06-09"), None);
    yard.tells("2026-06-10", "1", Blank::Look, &[("larvae", Word("not_looked")), ("slime", Word("yes"))]);
    let card = now(&yard, "2026-06-10").unwrap();
    assert_eq!((card.combs, card.open()), (None, None), "nobody counted");
}

#[test]
fn a_look_that_did_not_look_for_larvae_ends_no_card() {
    let mut yard = three();
    yard.tells("2026-06-02", "1", Blank::Look, &[("larvae", Word("many"))]);
    yard.tells("2026-06-03", "1", Blank::Look, &[("larvae", Word("not_looked")), ("slime", Word("no"))]);
    let card = urgent(yard.book.standing(), &yard.hive("1"), day("2026-06-03")).unwrap();
    assert_eq!((card.because, card.since), (Because::Slime, day("2026-06-02")));
}

#[test]
fn suspected_brood_disease_comes_before_slime_and_joins_with_nothing_until_a_look_says_no() {
    let mut yard = three();
    let now = |yard: &Yard, on: &str| {
        urgent(yard.book.standing(), &yard.hive("1"), day(on)).map(|card| card.because)
    };
    let joins = |yard: &Yard| {
        let card = urgent(yard.book.standing(), &yard.hive("1"), day("2026-06-20"));
        yard.combs("1", "2026-06-20").to_join(card.map(|card| card.because))
    };
    let weak = [("larvae", Word("many")), ("queen", Word("none")), ("brood_disease", Word("not_looked"))];
    yard.tells("2026-06-02", "1", Blank::Look, &weak);
    assert_eq!((now(&yard, "2026-06-02"), joins(&yard)), (Some(Because::Slime), false));
    yard.tells(
        "2026-06-03",
        "1",
        Blank::Look,
        &[("larvae", Word("none")), ("brood_disease", Word("suspected"))],
    );
    assert_eq!((now(&yard, "2026-06-03"), joins(&yard)), (Some(Because::Disease), false));
    // A look that did not look for it takes nothing back.
    yard.tells("2026-06-04", "1", Blank::Look, &[("larvae", Word("none"))]);
    assert_eq!((now(&yard, "2026-06-04"), joins(&yard)), (Some(Because::Disease), false));
    yard.tells("2026-06-06", "1", Blank::Test, &[("for", Text("foulbrood")), ("result", Text("none"))]);
    assert_eq!(now(&yard, "2026-06-06"), Some(Because::Disease), "nobody reads what a test says");
    yard.tells("2026-06-07", "1", Blank::Look, &[("larvae", Word("none")), ("brood_disease", Word("no"))]);
    assert_eq!((now(&yard, "2026-06-07"), joins(&yard)), (None, true));
}

#[test]
fn a_dead_out_is_on_its_card_until_every_comb_is_accounted_for() {
    let mut yard = three();
    yard.tells("2026-05-20", "2", Blank::HiveFacts, &[("frames", whole(10))]);
    yard.tells(
        "2026-06-02",
        "2",
        Blank::DeadOut,
        &[("causes", Words(&["beetles"])), ("frames_spoilt", whole(4))],
    );
    let now = |yard: &Yard| urgent(yard.book.standing(), &yard.hive("2"), day("2026-06-10"));
    let card = now(&yard).unwrap();
    assert_eq!((card.because, card.combs), (Because::Dead, Some(20)));
    yard.tells("2026-06-03", "2", Blank::Comb, &[("frames", whole(15)), ("to", Word("burned"))]);
    assert_eq!(now(&yard).unwrap().open(), Some(5));
    yard.tells("2026-06-04", "2", Blank::Comb, &[("frames", whole(5)), ("to", Word("store"))]);
    assert_eq!(now(&yard), None);
    // No bees are in it all the same, until a look says so or its care is ended.
    let empty = |yard: &Yard, on: &str| dead(yard.book.standing(), &yard.id, day(on));
    assert_eq!(empty(&yard, "2026-06-01"), []);
    assert_eq!(empty(&yard, "2026-09-10"), [yard.hive("2")]);
    yard.tells("2026-09-11", "2", Blank::Look, &[("larvae", Word("none"))]);
    assert_eq!(empty(&yard, "2026-09-11"), []);
    // Without the frames of a box nobody knows how many there are: those that are spoilt are not all.
    yard.tells(
        "2026-06-02",
        "3",
        Blank::DeadOut,
        &[("causes", Words(&["beetles"])), ("frames_spoilt", whole(4))],
    );
    let third = |on: &str| urgent(yard.book.standing(), &yard.hive("3"), day(on));
    assert_eq!(third("2026-06-10").unwrap().combs, None);
    assert!(third("2026-08-01").is_some() && third("2026-08-02").is_none());
    assert_eq!(empty(&yard, "2026-08-02"), ["2", "3"].map(|tag| yard.hive(tag)));
    let (on, hive) = (day("2026-08-02"), yard.hive("3"));
    let end = yard.book.end_hive(&pen("aa", on), on, on, &hive, Ending::Dead, None).unwrap();
    yard.book.add(end);
    assert_eq!(empty(&yard, "2026-08-02"), [yard.hive("2")]);
}

#[test]
fn combs_of_a_dead_hive_are_those_of_the_newest_look_that_counted_less_what_was_taken_out_before() {
    let mut yard = three();
    let open = |yard: &Yard, tag: &str| {
        urgent(yard.book.standing(), &yard.hive(tag), day("2026-07-02")).map(|card| (card.combs, card.open()))
    };
    let out = |frames| [("frames", whole(frames)), ("to", Word("burned"))];
    let dead = [("causes", Words(&["starved"]))];
    yard.tells("2026-05-20", "1", Blank::Comb, &out(2));
    yard.tells("2026-06-01", "1", Blank::Look, &[("larvae", Word("none")), ("frames_of_comb", whole(20))]);
    yard.tells("2026-06-01", "1", Blank::Comb, &out(4));
    yard.tells("2026-06-10", "1", Blank::Comb, &out(6));
    yard.tells("2026-07-01", "1", Blank::DeadOut, &dead);
    assert_eq!(open(&yard, "1"), Some((Some(10), Some(10))));
    yard.tells("2026-07-01", "1", Blank::Comb, &out(7));
    assert_eq!(open(&yard, "1"), Some((Some(10), Some(3))), "on the day of the dead-out: after it");
    yard.tells("2026-07-02", "1", Blank::Comb, &out(3));
    assert_eq!(open(&yard, "1"), None);
    // What the form of the comb says before it is saved.
    let left = |yard: &Yard, on: &str| comb_left(yard.book.standing(), &yard.hive("1"), day(on));
    assert_eq!(
        ["2026-05-31", "2026-06-01", "2026-06-09", "2026-07-01"].map(|on| left(&yard, on)),
        [None, Some(16), Some(16), Some(3)]
    );
    // The newer look counted, though nobody looked for larvae; one after the dead-out counts what was left by then.
    let counted = |larvae, frames| [("larvae", Word(larvae)), ("frames_of_comb", whole(frames))];
    yard.tells("2026-05-10", "2", Blank::Look, &counted("none", 8));
    yard.tells("2026-06-20", "2", Blank::Look, &counted("not_looked", 20));
    yard.tells("2026-07-01", "2", Blank::DeadOut, &dead);
    yard.tells("2026-07-02", "2", Blank::Comb, &out(8));
    yard.tells("2026-07-02", "2", Blank::Look, &counted("not_looked", 12));
    assert_eq!(open(&yard, "2"), Some((Some(20), Some(12))));
    // By boxes: one that is taken off empty takes no comb along that was not written down.
    yard.tells("2026-05-02", "3", Blank::HiveFacts, &[("frames", whole(10))]);
    yard.tells("2026-07-01", "3", Blank::DeadOut, &dead);
    yard.tells("2026-07-02", "3", Blank::Comb, &out(10));
    let hive = yard.hive("3");
    let part = yard.book.standing().hives[&hive].boxes[1].id.clone();
    yard.writes("2026-07-02", What::BoxOff { hive, part, traps: TrapsWent::Stock });
    assert_eq!(open(&yard, "3"), Some((Some(20), Some(10))));
}

#[test]
fn combs_counted_before_a_box_came_on_are_not_all_of_a_dead_hive() {
    let mut yard = three();
    let on = day("2026-06-01");
    let boxed = |yard: &mut Yard, tag: &str| {
        let (hive, kind) = (yard.hive(tag), yard.kind());
        let third = [(BoxDepth::Medium, 0)];
        yard.book.add(yard.book.boxes_on(&pen("aa", on), on, on, &hive, 2, &third, &kind, true).unwrap());
    };
    let counted = [("larvae", Word("none")), ("frames_of_comb", whole(8))];
    for tag in ["1", "2", "3"] {
        yard.tells("2026-05-10", tag, Blank::Look, &counted);
    }
    for tag in ["1", "2"] {
        yard.tells("2026-05-11", tag, Blank::HiveFacts, &[("frames", whole(10))]);
    }
    boxed(&mut yard, "1");
    boxed(&mut yard, "3");
    let left = |yard: &Yard, tag: &str, on: &str| comb_left(yard.book.standing(), &yard.hive(tag), day(on));
    assert_eq!(left(&yard, "1", "2026-05-31"), Some(8));
    assert_eq!(left(&yard, "1", "2026-06-01"), Some(30), "what the form of the comb says");
    yard.tells("2026-06-20", "1", Blank::Look, &[("larvae", Word("none")), ("frames_of_bees", whole(20))]);
    assert_eq!(yard.combs("1", "2026-06-20").last.unwrap().frames, left(&yard, "1", "2026-06-20"));
    for tag in ["1", "2", "3"] {
        yard.tells("2026-07-01", tag, Blank::DeadOut, &[("causes", Words(&["starved"]))]);
        yard.tells("2026-07-02", tag, Blank::Comb, &[("frames", whole(7)), ("to", Word("burned"))]);
    }
    let open = |yard: &Yard, tag: &str| {
        urgent(yard.book.standing(), &yard.hive(tag), day("2026-07-05")).and_then(|card| card.open())
    };
    assert_eq!(open(&yard, "1"), Some(23));
    // A box that is taken off since was on it when the bees died.
    let hive = yard.hive("1");
    let part = yard.book.standing().hives[&hive].boxes[2].id.clone();
    yard.writes("2026-07-03", What::BoxOff { hive, part, traps: TrapsWent::Stock });
    assert_eq!(open(&yard, "1"), Some(23));
    // No box came on, or nobody wrote down what one holds: as many as were counted.
    assert_eq!((open(&yard, "2"), open(&yard, "3")), (Some(1), Some(1)));
    // What was taken out since the count is not there, whatever the boxes would hold.
    let mut taken = three();
    taken.tells("2026-05-10", "1", Blank::Look, &counted);
    taken.tells("2026-05-11", "1", Blank::HiveFacts, &[("frames", whole(10))]);
    boxed(&mut taken, "1");
    taken.tells("2026-06-05", "1", Blank::Comb, &[("frames", whole(12)), ("to", Word("burned"))]);
    assert_eq!(left(&taken, "1", "2026-06-06"), Some(18));
    // Nor are there fewer than were counted less that, however few the boxes would hold.
    let mut more = three();
    more.tells("2026-05-10", "1", Blank::Look, &[("larvae", Word("none")), ("frames_of_comb", whole(40))]);
    more.tells("2026-05-11", "1", Blank::HiveFacts, &[("frames", whole(10))]);
    boxed(&mut more, "1");
    assert_eq!(left(&more, "1", "2026-06-06"), Some(40));
    // A newer count is of all boxes.
    let counted = [("larvae", Word("none")), ("frames_of_comb", whole(12))];
    yard.tells("2026-06-21", "3", Blank::Look, &counted);
    assert_eq!(open(&yard, "3"), Some(5));
}

#[test]
fn larvae_of_the_last_sixty_days_choose_the_hives_and_a_new_stand_takes_the_place_of_the_old_one() {
    let mut yard = three();
    yard.tells("2026-05-02", "1", Blank::Stand, &[("across", whole(1)), ("along", whole(2))]);
    yard.tells(
        "2026-05-03",
        "1",
        Blank::Stand,
        &[("across", Hundredths(1000, 1)), ("along", Hundredths(-250, 0))],
    );
    yard.tells("2026-05-03", "2", Blank::Look, &[("larvae", Word("few"))]);
    yard.tells("2026-05-04", "2", Blank::Look, &[("larvae", Word("none"))]);
    let at = |on: &str| placed(yard.book.standing(), &yard.id, day(on));
    let found = at("2026-05-10");
    assert_eq!(found[0].stand, Some(Stand { across: 3048.0, along: -2500.0 }));
    assert_eq!((found[0].larvae, found[1].larvae, found[1].stand), (false, true, None));
    assert!(at("2026-07-02")[1].larvae && !at("2026-07-03")[1].larvae);
    assert_eq!(paved(yard.book.standing(), &yard.id), None);
}

/// Unit, stands, unit of the paved area, what is paved, reach, area, area left.
type Written = (String, Vec<(i64, i64)>, String, i64, u32, f64, f64);

/// `tests/figures/yard_grounds.py`: written down hive by hive, each first in a wrong place.
#[test]
fn the_ground_of_200_yards_is_that_of_their_united_buffers_less_what_is_paved() {
    let all: Vec<Written> = serde_json::from_str(include_str!("../figures/yard_grounds.json")).unwrap();
    assert_eq!(all.len(), 200);
    let mut nothing_left = 0;
    for (unit, stands, square, tenths, reach, united, left) in all {
        let tags: Vec<String> = (1..=stands.len()).map(|tag| tag.to_string()).collect();
        let tags: Vec<&str> = tags.iter().map(String::as_str).collect();
        let start: Day = day("2026-05-01");
        let mut yard = Yard::new(&tags, start);
        let unit = u8::from(unit == "ft");
        for (tag, (across, along)) in tags.iter().zip(&stands) {
            for (on, off) in [("2026-05-02", 700), ("2026-05-03", 0)] {
                let (across, along) = (Hundredths(across + off, unit), Hundredths(along - off, unit));
                yard.tells(on, tag, Blank::Stand, &[("across", across), ("along", along)]);
            }
        }
        if tenths >= 0 {
            let square = u8::from(square == "sq_ft");
            yard.tells("2026-05-02", "", Blank::YardFacts, &[("paved", Hundredths(tenths * 10, square))]);
        }
        let standing = yard.book.standing();
        let stands: Vec<Stand> =
            placed(standing, &yard.id, day("2026-05-04")).iter().map(|hive| hive.stand.unwrap()).collect();
        let paved = paved(standing, &yard.id);
        assert_eq!(paved.is_some(), tenths >= 0);
        let draft = BenchDraft::default()
            .with("ground_reach", &(f64::from(reach) / 1000.0).to_string())
            .with("ground_width", "41.3")
            .with("ground_length", "50.5");
        let sum = reckon_on(&draft, &stands, paved).unwrap();
        // A thousandth for the strips, and half of the tenth to which the area is rounded.
        assert!((sum.all - united).abs() <= 0.001 * united + 0.0501, "{} {united}", sum.all);
        assert!((sum.treated - left).abs() <= 0.001 * united + 0.0511, "{} {left}", sum.treated);
        nothing_left += u32::from(left == 0.0);
        assert_eq!(left == 0.0 && united > 0.2, sum.treated < 0.06 && united > 0.2);
    }
    assert!((10..150).contains(&nothing_left), "{nothing_left}");
}
