//! Supers that were pulled, as the hours go by; bait and patties that were put in.

use super::Yard;
use super::support::{SUMMER, Unicode, day, pen};
use beetle_almanac::almanac::day::Stamp;
use beetle_almanac::almanac::honey::{Hatch, Race, Stand};
use beetle_almanac::almanac::moment::Moment;
use beetle_almanac::almanac::quantity::Decimal;
use beetle_almanac::app::beetle::bait_said::baited_said;
use beetle_almanac::app::beetle::honey::{Stack, Step, YardClock, stacks};
use beetle_almanac::app::beetle::lots_said::lots_said;
use beetle_almanac::app::ledger::papers::events::events;
use beetle_almanac::book::Book;
use beetle_almanac::book::aims::Aims;
use beetle_almanac::book::baited::past_due;
use beetle_almanac::book::entry::{Entry, What};
use beetle_almanac::book::id::ThingId;
use beetle_almanac::book::record::{Answer, Blank, ClockTime, Record};
use beetle_almanac::book::write::Refusal;
use beetle_almanac::papers::calendar::{Event, Task, give_out, yard_days};

/// The clock of Berlin: two hours before UTC until 25 October 2026 01:00Z, then one.
const BERLIN: YardClock = YardClock {
    moment: |time, _| {
        Moment::when(Moment::new(time.day, time.minute), &|at| {
            (BERLIN.shown)(at, "").map(|time| Moment::new(time.day, time.minute))
        })
    },
    shown: |at, _| {
        let change = Moment::new(day("2026-10-25"), 60);
        let (day, minute) = at.plus(if at < change { 120 } else { 60 }).utc();
        Some(ClockTime { day, minute })
    },
};

fn put(record: &mut Record, name: &str, answer: Answer) {
    let at = record.blank.fields().iter().position(|field| field.name == name).unwrap();
    record.answers[at] = Some(answer);
}

fn time(text: &str) -> Answer {
    Answer::Time(ClockTime::parse(text).unwrap())
}

/// Six supers off at `off`, in a room of 28 °C.
fn supers(off: &str) -> Record {
    let mut lot = Record::empty(Blank::Harvest, Vec::new());
    put(&mut lot, "supers", Answer::Number(Decimal::whole(6), 0));
    put(&mut lot, "bees_off", time(off));
    put(&mut lot, "room", Answer::Number(Decimal::whole(28), 0));
    lot
}

fn write(yard: &mut Yard, on: &str, record: Record) -> Entry {
    let on = day(on);
    let written = yard.book.record(&pen("aa", on), on, on, Some(&yard.id), record).unwrap();
    let entry = written[0].clone();
    yard.book.add(written);
    entry
}

fn yard() -> Yard {
    Yard::new(&["1", "2", "3"], day("2026-05-01"))
}

fn only(book: &Book, clock: &YardClock) -> Stack {
    let [stack] = stacks(book, clock).try_into().unwrap();
    stack
}

fn race(stack: &Stack) -> Race {
    let Step::Spin(race, _) = stack.step else { panic!("{stack:?}") };
    race
}

fn lots(book: &Book, today: &str) -> Vec<Event> {
    events(book, day(today), &SUMMER).into_iter().filter(|event| event.hours.is_some()).collect()
}

/// Nothing runs while the phone sleeps. Whenever it is woken, and from a book opened anew, the hours are those that went by.
#[test]
fn the_phone_slept_through_the_night_and_the_honey_clock_says_the_hours_that_went_by() {
    let mut yard = yard();
    let entry = write(&mut yard, "2026-07-14", supers("2026-07-14T16:00"));
    let off = Moment::new(day("2026-07-14"), 14 * 60);
    let before = only(&yard.book, &SUMMER);
    assert_eq!((before.line.clone(), before.supers, race(&before).off), (entry.id, Some(6), off));
    let opened_anew = Book::from_log(yard.book.log().entries().cloned().collect());
    assert_eq!(only(&opened_anew, &SUMMER), before);
    for (hours, stand) in
        [(0, Stand::InTime), (9, Stand::InTime), (30, Stand::PastGoal), (72, Stand::PastLimit)]
    {
        let woken = off.plus_hours(hours);
        assert_eq!(race(&before).stand(woken), stand, "{hours}");
        assert_eq!(woken.since(race(&before).off), i32::try_from(hours).unwrap() * 60);
    }
    assert!(!before.is_old(off.plus_hours(14 * 24)) && before.is_old(off.plus_hours(14 * 24 + 1)));
}

#[test]
fn the_clocks_went_back_in_the_night_and_an_hour_more_went_by() {
    let mut yard = yard();
    write(&mut yard, "2026-10-24", supers("2026-10-24T16:00"));
    let race = race(&only(&yard.book, &BERLIN));
    let shown = |at| (BERLIN.shown)(at, "").map(Answer::Time);
    assert_eq!(shown(race.goal), Some(time("2026-10-25T15:00")));
    assert_eq!(shown(race.limit), Some(time("2026-10-26T15:00")));
    // At four in the afternoon of the next day 25 hours have gone by, and the goal is over.
    let next = (BERLIN.moment)(ClockTime::parse("2026-10-25T16:00").unwrap(), "").unwrap();
    assert_eq!((next.since(race.off), race.stand(next)), (25 * 60, Stand::PastGoal));
}

#[test]
fn her_own_goal_and_limit_count() {
    let mut yard = yard();
    let mut aims = Record::empty(Blank::Aims, Vec::new());
    put(&mut aims, "goal_hours", Answer::Number(Decimal::whole(12), 0));
    put(&mut aims, "limit_hours", Answer::Number(Decimal::whole(36), 0));
    put(&mut aims, "notice", Answer::Number(Decimal::whole(70), 0));
    let on = day("2026-07-01");
    let written = yard.book.record(&pen("aa", on), on, on, None, aims).unwrap();
    yard.book.add(written);
    write(&mut yard, "2026-07-14", supers("2026-07-14T16:00"));
    let race = race(&only(&yard.book, &SUMMER));
    assert_eq!((race.goal, race.limit), (race.off.plus_hours(12), race.off.plus_hours(36)));
    let notice = Aims::of(yard.book.standing()).notice;
    assert!((notice - 0.7).abs() < 1e-12, "{notice}");
}

/// What a page of another version let through: the two ends of a room are what they are, in whichever field each stands.
#[test]
fn a_room_whose_ends_stand_the_wrong_way_round_is_the_same_room() {
    let room = |high: u32, low: u32| {
        let mut yard = yard();
        let mut lot = supers("2026-07-14T16:00");
        put(&mut lot, "room", Answer::Number(Decimal::whole(high), 0));
        put(&mut lot, "room_low", Answer::Number(Decimal::whole(low), 0));
        write(&mut yard, "2026-07-14", lot);
        only(&yard.book, &SUMMER).room
    };
    assert_eq!(room(20, 30), room(30, 20));
}

/// An event has to end behind its beginning, or a calendar refuses the file.
#[test]
fn a_goal_that_is_the_limit_leaves_an_hour_in_the_calendar() {
    let mut yard = yard();
    let mut aims = Record::empty(Blank::Aims, Vec::new());
    put(&mut aims, "goal_hours", Answer::Number(Decimal::whole(24), 0));
    put(&mut aims, "limit_hours", Answer::Number(Decimal::whole(24), 0));
    let on = day("2026-07-01");
    let written = yard.book.record(&pen("aa", on), on, on, None, aims).unwrap();
    yard.book.add(written);
    let mut lot = supers("2026-07-14T16:00");
    // Too cold for a hatch: the goal decides.
    put(&mut lot, "room", Answer::Number(Decimal::whole(10), 0));
    write(&mut yard, "2026-07-14", lot);
    let [event] = lots(&yard.book, "2026-07-14").try_into().unwrap();
    let (from, to) = event.hours.unwrap();
    assert_eq!(to.since(from), 60);
}

#[test]
fn a_room_that_cools_down_at_night_hatches_later_than_one_that_does_not() {
    let mut yard = yard();
    let warm = write(&mut yard, "2026-07-14", supers("2026-07-14T16:00"));
    let mut lot = supers("2026-07-14T16:00");
    put(&mut lot, "room_low", Answer::Number(Decimal::whole(68), 1));
    write(&mut yard, "2026-07-14", lot);
    let after = |stack: &Stack| match stack.step {
        Step::Spin(race, Some(Hatch::After { .. })) => race.hatch.unwrap(),
        step => panic!("{step:?}"),
    };
    let both = stacks(&yard.book, &SUMMER);
    let [one, other] = &both[..] else { panic!("{both:?}") };
    assert_eq!(one.line, warm.id);
    assert!(after(one) < after(other));
    let room = other.room.unwrap();
    assert!((room.low.celsius() - 20.0).abs() < 1e-9 && (room.high.celsius() - 28.0).abs() < 1e-9);
}

#[test]
fn supers_that_are_spun_or_struck_are_taken_out_of_the_calendar_and_a_corrected_hour_keeps_its_name() {
    let mut yard = yard();
    let on = day("2026-07-14");
    let entry = write(&mut yard, "2026-07-14", supers("2026-07-14T16:00"));
    let [first] = lots(&yard.book, "2026-07-14").try_into().unwrap();
    assert_eq!((first.day, first.summary.as_str()), (day("2026-07-16"), "Ferry Field: spin 6 supers"));
    let off = Moment::new(on, 14 * 60);
    assert_eq!(first.hours, Some((off.plus_hours(24), off.plus_hours(48))));

    let earlier = What::Record(supers("2026-07-14T13:00"));
    let earlier = yard.book.correct(&pen("aa", on), on, on, &entry.id, earlier, &Unicode).unwrap();
    yard.book.add(earlier);
    let [moved] = lots(&yard.book, "2026-07-14").try_into().unwrap();
    assert_eq!(moved.uid, first.uid);
    assert_eq!(moved.hours.unwrap().1.since(first.hours.unwrap().1), -180);
    // With its hours until the day of its limit is over.
    assert_eq!((lots(&yard.book, "2026-07-16").len(), lots(&yard.book, "2026-07-17").len()), (1, 0));

    let mut spun = supers("2026-07-14T13:00");
    put(&mut spun, "extraction_ended", time("2026-07-14T20:00"));
    let line = yard.book.standing().records_of(Blank::Harvest)[0].0.clone();
    let spun = yard.book.correct(&pen("aa", on), on, on, &line, What::Record(spun), &Unicode).unwrap();
    let mut other = yard.book.clone();
    yard.book.add(spun);
    assert!(lots(&yard.book, "2026-07-14").is_empty());
    let versions = other.versions_of(&[line]);
    let strike = other.strike(&pen("aa", on), on, &versions, &Unicode).unwrap();
    other.add(strike);
    assert!(lots(&other, "2026-07-14").is_empty() && stacks(&other, &SUMMER).is_empty());
}

#[test]
fn supers_past_their_limit_stay_in_the_calendar_until_they_are_spun_or_nobody_will_have_waited_so_long() {
    let mut yard = yard();
    let entry = write(&mut yard, "2026-07-14", supers("2026-07-14T16:00"));
    let all = |book: &Book, today: &str| {
        let lots = events(book, day(today), &SUMMER).into_iter();
        lots.filter(|event| event.summary.contains("supers")).collect::<Vec<Event>>()
    };
    let [due] = all(&yard.book, "2026-07-16").try_into().unwrap();
    let made = |today: &str| Stamp::midnight(day(today));
    let first = give_out(std::slice::from_ref(&due), &[], day("2026-07-16"), made("2026-07-16"), "").unwrap();
    let over = all(&yard.book, "2026-07-18");
    assert_eq!((over[0].day, over[0].hours, &over[0].uid), (day("2026-07-18"), None, &due.uid));
    assert_eq!(over[0].summary, "Ferry Field: 6 supers over the limit: spin now");
    let next = give_out(&over, &first.given, day("2026-07-18"), made("2026-07-18"), "").unwrap();
    assert!(!next.text.contains("CANCELLED") && next.given[0].sequence == 1, "{}", next.text);
    let many = |today: &str| all(&yard.book, today).len();
    assert_eq!((many("2026-07-28"), many("2026-07-29")), (1, 0));

    let mut begun = supers("2026-07-14T16:00");
    put(&mut begun, "extraction_began", time("2026-07-18T10:30"));
    let on = day("2026-07-18");
    let begun = What::Record(begun);
    let begun = yard.book.correct(&pen("aa", on), day("2026-07-14"), on, &entry.id, begun, &Unicode).unwrap();
    yard.book.add(begun);
    let now = Moment::new(on, 12 * 60);
    assert!(!only(&yard.book, &SUMMER).is_over(now));
    let said =
        "Ferry Field, 6 supers: Being spun since Sat 18 July 2026, 10:30; write down the end".to_owned();
    let said = said.replace("6 supers", "6\u{a0}supers");
    assert_eq!(lots_said(&yard.book, &SUMMER, now), [(said, false)]);
    assert_eq!(
        all(&yard.book, "2026-07-18")[0].summary,
        "Ferry Field: 6 supers being spun: write down the end"
    );
    assert!(lots_said(&yard.book, &SUMMER, now.plus_hours(14 * 24)).is_empty());
}

#[test]
fn a_goal_behind_the_limit_is_no_aim() {
    let yard = yard();
    let on = day("2026-07-01");
    let said = |goal: u32, limit: Option<u32>| {
        let mut aims = Record::empty(Blank::Aims, Vec::new());
        put(&mut aims, "goal_hours", Answer::Number(Decimal::whole(goal), 0));
        if let Some(limit) = limit {
            put(&mut aims, "limit_hours", Answer::Number(Decimal::whole(limit), 0));
        }
        yard.book.record(&pen("aa", on), on, on, None, aims).map(|_| ())
    };
    assert_eq!(said(60, None), Err(Refusal::Backwards { field: 0 }));
    assert_eq!(said(25, Some(24)), Err(Refusal::Backwards { field: 0 }));
    assert_eq!((said(24, Some(24)), said(48, None)), (Ok(()), Ok(())));
}

#[test]
fn the_next_look_of_her_own_rhythm_is_in_the_calendar_and_comes_after_all_other_work() {
    let mut yard = yard();
    let hive = yard.hive("1");
    let look = |larvae| {
        let mut look = Record::empty(Blank::Look, vec![hive.clone()]);
        put(&mut look, "larvae", Answer::Word(larvae));
        look
    };
    let named = |yard: &Yard, today: &str| {
        let mut found = Vec::new();
        for of in yard_days(yard.book.standing(), std::slice::from_ref(&yard.id), day(today)) {
            for item in of.items.iter().filter(|item| item.task == Task::NextLook) {
                found.push((of.day.to_string(), item.cycle.to_string()));
            }
        }
        found
    };
    write(&mut yard, "2026-07-01", look(1));
    assert!(named(&yard, "2026-07-02").is_empty());
    let on = day("2026-07-02");
    let mut aims = Record::empty(Blank::Aims, Vec::new());
    put(&mut aims, "look_every", Answer::Number(Decimal::whole(10), 0));
    let written = yard.book.record(&pen("aa", on), on, on, None, aims).unwrap();
    yard.book.add(written);
    let due = |on: &str, since: &str| vec![(on.to_owned(), since.to_owned())];
    assert_eq!(named(&yard, "2026-07-02"), due("2026-07-11", "2026-07-01"));
    assert_eq!(named(&yard, "2026-07-20"), due("2026-07-20", "2026-07-01"));
    // Nobody looked for larvae: the next look stays where it was.
    write(&mut yard, "2026-07-03", look(0));
    assert_eq!(named(&yard, "2026-07-03"), due("2026-07-11", "2026-07-01"));
    write(&mut yard, "2026-07-04", look(1));
    assert_eq!(named(&yard, "2026-07-04"), due("2026-07-14", "2026-07-04"));
    assert!([Task::Larvae, Task::Young, Task::Traps].iter().all(|other| Task::NextLook < *other));
}

#[test]
fn wet_supers_are_waited_for_until_somebody_has_put_them_back() {
    let mut yard = yard();
    let mut lot = supers("2026-07-14T08:00");
    put(&mut lot, "extraction_ended", time("2026-07-14T20:00"));
    write(&mut yard, "2026-07-14", lot.clone());
    let ended = Moment::new(day("2026-07-14"), 18 * 60);
    assert_eq!(only(&yard.book, &SUMMER).step, Step::Back { ended, by: ended.plus_hours(24) });
    let line = yard.book.standing().records_of(Blank::Harvest)[0].0.clone();
    put(&mut lot, "supers_back", time("2026-07-15T07:00"));
    let on = day("2026-07-15");
    let back =
        yard.book.correct(&pen("aa", on), day("2026-07-14"), on, &line, What::Record(lot), &Unicode).unwrap();
    yard.book.add(back);
    assert!(stacks(&yard.book, &SUMMER).is_empty());
}

fn patty(hive: &ThingId, did: u8) -> Record {
    let mut patty = Record::empty(Blank::Patty, vec![hive.clone()]);
    put(&mut patty, "did", Answer::Word(did));
    patty
}

/// Every day on which something other than traps is to be done, by hive.
fn out(yard: &Yard, today: &str) -> Vec<(Task, String, ThingId)> {
    let days = yard_days(yard.book.standing(), std::slice::from_ref(&yard.id), day(today));
    let mut found = Vec::new();
    for of in days {
        for item in of.items.iter().filter(|item| matches!(item.task, Task::Bait | Task::Patty)) {
            assert_eq!(of.day, item.due.max(day(today)));
            found.push((item.task, item.due.to_string(), item.hive.clone()));
        }
    }
    found
}

#[test]
fn a_patty_is_due_five_days_after_it_was_put_in_and_not_once_it_is_out() {
    let mut yard = yard();
    let (one, two) = (yard.hive("1"), yard.hive("2"));
    write(&mut yard, "2026-07-01", patty(&one, 0));
    write(&mut yard, "2026-07-02", patty(&two, 0));
    let due = |day: &str, hive: &ThingId| (Task::Patty, day.to_owned(), hive.clone());
    assert_eq!(out(&yard, "2026-07-02"), [due("2026-07-06", &one), due("2026-07-07", &two)]);
    let named =
        |day_: &str| past_due(yard.book.standing(), &yard.id, day(day_)).into_iter().map(|(hive, _)| hive);
    assert_eq!(
        (named("2026-07-05").count(), named("2026-07-06").collect::<Vec<_>>()),
        (0, vec![one.clone()])
    );
    let said = |on: &str| baited_said(yard.book.standing(), &one, &Aims::of(yard.book.standing()), day(on));
    assert_eq!(said("2026-07-05"), ["Patty in since Wed 1 July: out by Mon 6 July"]);
    assert_eq!(said("2026-07-06"), ["Patty in since Wed 1 July: out by Mon 6 July, today"]);
    assert_eq!(said("2026-07-09"), ["Patty in since Wed 1 July: out by Mon 6 July, 3\u{a0}days late"]);
    // Past due it waits for today; out it is gone.
    assert_eq!(out(&yard, "2026-07-20").len(), 2);
    write(&mut yard, "2026-07-05", patty(&one, 1));
    assert_eq!(out(&yard, "2026-07-05"), [due("2026-07-07", &two)]);
}

#[test]
fn bait_that_is_renewed_begins_anew_and_her_own_days_count() {
    let mut yard = yard();
    let hive = yard.hive("3");
    let bait = |did| {
        let mut bait = Record::empty(Blank::Bait, vec![hive.clone()]);
        put(&mut bait, "did", Answer::Word(did));
        bait
    };
    write(&mut yard, "2026-07-01", bait(0));
    write(&mut yard, "2026-07-06", bait(1));
    assert_eq!(out(&yard, "2026-07-06"), [(Task::Bait, "2026-07-11".to_owned(), hive.clone())]);
    let mut aims = Record::empty(Blank::Aims, Vec::new());
    put(&mut aims, "bait_days", Answer::Number(Decimal::whole(4), 0));
    let on = day("2026-07-06");
    let written = yard.book.record(&pen("aa", on), on, on, None, aims).unwrap();
    yard.book.add(written);
    assert_eq!(out(&yard, "2026-07-06"), [(Task::Bait, "2026-07-10".to_owned(), hive.clone())]);
    write(&mut yard, "2026-07-08", bait(2));
    assert!(out(&yard, "2026-07-08").is_empty());
}
