//! What was seen and done beside the traps: products, looks, splits, harvest.

use crate::Yard;
use crate::record_of_each::filled;
use crate::support::{Unicode, day, pen};
use beetle_almanac::almanac::day::Day;
use beetle_almanac::almanac::quantity::Decimal;
use beetle_almanac::almanac::tally::CountRange;
use beetle_almanac::app::ledger::words;
use beetle_almanac::book::Book;
use beetle_almanac::book::entry::{Ending, Entry, EntryError, What};
use beetle_almanac::book::record::{
    About, Answer, Ask, Blank, Clear, ClockTime, Record, clear_of_product, keep_until,
};
use beetle_almanac::book::write::Refusal;

pub(crate) fn put(record: &mut Record, name: &str, answer: Answer) {
    let at = record.blank.fields().iter().position(|field| field.name == name).unwrap();
    record.answers[at] = Some(answer);
}

pub(crate) fn text(words: &str) -> Answer {
    Answer::Text(words.to_owned())
}

fn number(value: u32) -> Answer {
    Answer::Number(Decimal::whole(value), 0)
}

/// What the law asks for everywhere, and nothing else.
fn product(yard: &Yard) -> Record {
    let mut record = Record::empty(Blank::Product, vec![yard.hive("1"), yard.hive("2")]);
    put(&mut record, "product", text("Strips"));
    put(&mut record, "amount", text("2 strips each"));
    put(&mut record, "interval_days", number(0));
    put(&mut record, "who", text("the keeper"));
    record
}

pub(crate) fn write(yard: &Yard, on: Day, record: Record) -> Result<Vec<Entry>, Refusal> {
    let home = (record.blank.about() != About::Keeper).then_some(&yard.id);
    yard.book.record(&pen("aa", on), on, on, home, record)
}

pub(crate) fn kept(yard: &mut Yard, on: Day, record: Record) -> Entry {
    let written = write(yard, on, record).unwrap();
    yard.book.add(written.clone());
    written[0].clone()
}

pub(crate) fn three() -> Yard {
    Yard::new(&["1", "2", "3"], day("2026-05-01"))
}

#[test]
fn each_kind_of_record_is_written_read_and_found_again() {
    let mut yard = three();
    let on = day("2026-07-14");
    for blank in Blank::ALL {
        let record = filled(blank, &yard.hive("1"), &yard.hive("2"));
        let entry = kept(&mut yard, on, record.clone());
        let back: Entry = serde_json::from_str(&serde_json::to_string(&entry).unwrap()).unwrap();
        assert_eq!(back, entry);
        assert_eq!(yard.book.standing().records[&entry.id].record, record);
        assert!(words::entry(&yard.book, &entry).len() > 20);
        assert_eq!(entry.concerns(&yard.hive("1")), !record.hives.is_empty());
    }
    assert_eq!(yard.book.standing().orphans, 0);
    assert_eq!(Book::from_log(yard.book.log().clone()), yard.book);
}

/// A word that is not of the blank, a field too many, another unit, a set in another order: nothing is taken in half.
#[test]
fn a_record_with_anything_unknown_in_it_is_not_read() {
    let yard = three();
    let on = day("2026-07-14");
    let sound = |blank| {
        let entry = write(&yard, on, filled(blank, &yard.hive("1"), &yard.hive("2"))).unwrap();
        serde_json::to_string(&entry[0]).unwrap()
    };
    for (blank, here, there) in [
        (Blank::Look, "\"many\"", "\"lots\""),
        (Blank::Look, "\"larvae\"", "\"larva\""),
        (Blank::Look, "\"blank\":\"look\"", "\"blank\":\"gaze\""),
        (Blank::Look, "[\"quiet\",\"dead_bees\"]", "[\"dead_bees\",\"quiet\"]"),
        (Blank::Look, "[\"quiet\",\"dead_bees\"]", "[\"quiet\",\"quiet\"]"),
        (Blank::Look, "[\"quiet\",\"dead_bees\"]", "[]"),
        (Blank::Look, "\"answers\":{", "\"answers\":{\"colour\":1,"),
        (Blank::Look, "{\"low\":5,\"high\":19}", "{\"low\":19,\"high\":5}"),
        (Blank::Patty, "\"oz\"", "\"lb\""),
        (Blank::Product, "\"2026-07-19\"", "\"2026-02-30\""),
        (Blank::Harvest, "T09:06", "T24:06"),
        (Blank::Harvest, "T09:06", "T9:06"),
        (Blank::Harvest, "T09:06", "T09:06Z"),
    ] {
        let text = sound(blank);
        let spoilt = text.replace(here, there);
        assert_ne!(text, spoilt, "{here}");
        assert!(serde_json::from_str::<Entry>(&spoilt).is_err(), "{there}");
    }
}

#[test]
fn a_record_that_lacks_what_it_must_have_or_is_too_long_is_not_taken_from_a_file() {
    let yard = three();
    let on = day("2026-07-14");
    let entry = write(&yard, on, product(&yard)).unwrap().remove(0);
    let spoilt = |change: &dyn Fn(&mut Record)| {
        let mut entry = entry.clone();
        let What::Record(record) = &mut entry.what else { unreachable!() };
        change(record);
        entry.check()
    };
    assert_eq!(spoilt(&|_| ()), Ok(()));
    assert_eq!(spoilt(&|record| record.answers[0] = None), Err(EntryError::NamesNothing));
    assert_eq!(spoilt(&|record| record.hives.clear()), Err(EntryError::NamesNothing));
    let long = text(&"x".repeat(61));
    assert_eq!(spoilt(&|record| put(record, "product", long.clone())), Err(EntryError::TextTooLong));
    assert_eq!(spoilt(&|record| put(record, "interval_days", number(1000))), Err(EntryError::OutOfRange));
    let many = vec![yard.hive("1"); Record::HIVES_MOST + 1];
    assert_eq!(spoilt(&|record| record.hives.clone_from(&many)), Err(EntryError::TooManyParts));
}

/// Nothing is known of the product but what the keeper copied from the label.
#[test]
fn keeper_writes_down_a_substance_without_a_registration_number_and_it_is_kept_as_not_verified() {
    let mut yard = three();
    let plain = product(&yard);
    let entry = kept(&mut yard, day("2026-07-14"), plain);
    let said = words::entry(&yard.book, &entry);
    assert!(
        said.contains("Hives 1, 2: Product with a label applied") && said.contains("not verified"),
        "{said}"
    );
    let mut numbered = product(&yard);
    put(&mut numbered, "registration", text("R-1"));
    let entry = kept(&mut yard, day("2026-07-14"), numbered);
    assert!(!words::entry(&yard.book, &entry).contains("verified"));
}

#[test]
fn keeper_leaves_the_waiting_days_empty_and_is_asked_even_where_the_label_says_none() {
    let yard = three();
    let mut record = product(&yard);
    let at = record.blank.fields().iter().position(|field| field.name == "interval_days").unwrap();
    record.answers[at] = None;
    assert_eq!(write(&yard, day("2026-07-14"), record), Err(Refusal::Lacks { field: at }));
}

#[test]
fn supers_may_be_on_when_the_days_of_the_label_are_over_and_not_while_it_is_in() {
    let yard = three();
    let mut record = product(&yard);
    assert_eq!(clear_of_product(&record), Some(Clear::StillIn));
    put(&mut record, "end", Answer::Day(day("2026-08-25")));
    assert_eq!(clear_of_product(&record), Some(Clear::From(day("2026-08-25"))));
    put(&mut record, "interval_days", number(14));
    assert_eq!(clear_of_product(&record), Some(Clear::From(day("2026-09-08"))));
    // Half a day is a day.
    put(&mut record, "interval_days", Answer::Number(Decimal::from_millionths(13_500_000).unwrap(), 0));
    assert_eq!(clear_of_product(&record), Some(Clear::From(day("2026-09-08"))));
    assert_eq!(clear_of_product(&Record::empty(Blank::Look, vec![yard.hive("1")])), None);
}

#[test]
fn the_record_of_a_product_is_kept_for_years_after_its_last_day_and_a_leap_day_counts_up() {
    let yard = three();
    let mut record = product(&yard);
    assert_eq!(keep_until(&record, day("2026-07-14"), 5), day("2031-07-14"));
    put(&mut record, "end", Answer::Day(day("2026-08-25")));
    assert_eq!(keep_until(&record, day("2026-07-14"), 2), day("2028-08-25"));
    put(&mut record, "end", Answer::Day(day("2028-02-29")));
    assert_eq!(keep_until(&record, day("2028-01-01"), 5), day("2033-03-01"));
    assert_eq!(keep_until(&record, day("2028-01-01"), 4), day("2032-02-29"));
}

#[test]
fn keeper_types_an_end_before_the_start_and_the_field_is_named() {
    let yard = three();
    let mut record = product(&yard);
    put(&mut record, "end", Answer::Day(day("2026-07-13")));
    let field = record.blank.fields().iter().position(|field| field.name == "end").unwrap();
    assert_eq!(write(&yard, day("2026-07-14"), record), Err(Refusal::Backwards { field }));
    let mut lot = filled(Blank::Harvest, &yard.hive("1"), &yard.hive("2"));
    let late = ClockTime::parse("2026-07-14T07:00").unwrap();
    put(&mut lot, "extraction_ended", Answer::Time(late));
    let field = lot.blank.fields().iter().position(|field| field.name == "extraction_ended").unwrap();
    // Written down the morning after, it is the day before that is told.
    let whole = filled(Blank::Harvest, &yard.hive("1"), &yard.hive("2"));
    assert!(write(&yard, day("2026-07-15"), whole).is_ok());
    assert_eq!(write(&yard, day("2026-07-14"), lot), Err(Refusal::Backwards { field }));
}

#[test]
fn keeper_splits_a_hive_into_itself_or_into_the_one_it_came_from_and_is_refused() {
    let mut yard = three();
    let on = day("2026-07-14");
    let split = |yard: &Yard, from: &str, into: &str| {
        let mut record = Record::empty(Blank::Split, vec![yard.hive(from)]);
        put(&mut record, "into", Answer::Hive(yard.hive(into)));
        record
    };
    assert_eq!(write(&yard, on, split(&yard, "1", "1")), Err(Refusal::SplitOfItself));
    let (first, second) = (split(&yard, "1", "2"), split(&yard, "2", "3"));
    kept(&mut yard, on, first);
    kept(&mut yard, on, second);
    assert_eq!(write(&yard, on, split(&yard, "3", "1")), Err(Refusal::SplitOfItself));
    assert!(write(&yard, on, split(&yard, "1", "3")).is_ok());
}

#[test]
fn a_dead_hive_takes_what_it_showed_and_no_look_at_living_bees() {
    let mut yard = three();
    let on = day("2026-07-14");
    let ended = What::HiveEnded { hive: yard.hive("1"), how: Ending::Dead };
    let written = yard.book.about_yard(&pen("aa", on), on, on, &yard.id, ended).unwrap();
    yard.book.add(written);
    let of = |blank| write(&yard, on, filled(blank, &yard.hive("1"), &yard.hive("2"))).map(|_| ());
    assert_eq!(of(Blank::DeadOut), Ok(()));
    assert!(matches!(of(Blank::Look), Err(Refusal::Ended { .. })));
    let early = write(&yard, day("2026-04-30"), filled(Blank::DeadOut, &yard.hive("1"), &yard.hive("2")));
    assert_eq!(early, Err(Refusal::BeforeHive { since: day("2026-05-01") }));
}

/// Empty, zero and "not looked" are three things.
#[test]
fn a_hive_that_nobody_opened_is_not_a_hive_without_larvae() {
    let mut yard = three();
    let mut look = Record::empty(Blank::Look, vec![yard.hive("1")]);
    put(&mut look, "larvae", Answer::Word(0));
    put(&mut look, "adults", Answer::Count(CountRange::exact(0)));
    kept(&mut yard, day("2026-07-14"), look);
    let newest =
        |yard: &Yard| yard.book.standing().newest_record(Blank::Look, &yard.hive("1")).cloned().unwrap();
    let record = newest(&yard).record;
    assert_eq!((record.word("larvae"), record.word("slime")), (Some("not_looked"), None));
    assert_eq!(record.get("adults"), Some(&Answer::Count(CountRange::exact(0))));
    // A later look stands, whatever was written first.
    let mut look = Record::empty(Blank::Look, vec![yard.hive("1")]);
    put(&mut look, "larvae", Answer::Word(3));
    let later = kept(&mut yard, day("2026-07-15"), look.clone());
    put(&mut look, "larvae", Answer::Word(1));
    kept(&mut yard, day("2026-07-13"), look);
    assert_eq!(newest(&yard).record.word("larvae"), Some("many"));
    let strike = yard.book.strike(&pen("aa", later.day), later.day, &[later.id], &Unicode).unwrap();
    yard.book.add(strike);
    assert_eq!(newest(&yard).record.word("larvae"), Some("not_looked"));
}

#[test]
fn a_record_is_corrected_and_the_words_before_stay_in_the_history() {
    let mut yard = three();
    let on = day("2026-07-14");
    let record = product(&yard);
    let first = kept(&mut yard, on, record);
    let mut mended = product(&yard);
    put(&mut mended, "amount", text("1 strip each"));
    let what = What::Record(mended.clone());
    let correction = yard.book.correct(&pen("aa", on), on, on, &first.id, what, &Unicode).unwrap();
    yard.book.add(correction);
    assert_eq!(yard.book.standing().records[&first.id].record, mended);
    assert_eq!(yard.book.standing().records.len(), 1);
    assert!(yard.book.log().get(&first.id).is_some());
    let mut lacking = mended;
    lacking.answers[0] = None;
    let refused = yard.book.correct(&pen("aa", on), on, on, &first.id, What::Record(lacking), &Unicode);
    assert_eq!(refused, Err(Refusal::Lacks { field: 0 }));
}

#[test]
fn what_is_known_of_a_yard_is_what_was_said_last_and_what_was_emptied_is_gone() {
    let mut yard = three();
    let facts = |soil: Option<u8>, shade: Option<u8>| {
        let mut facts = Record::empty(Blank::YardFacts, Vec::new());
        facts.answers[0] = soil.map(Answer::Word);
        facts.answers[1] = shade.map(Answer::Word);
        facts
    };
    kept(&mut yard, day("2026-07-14"), facts(Some(1), Some(0)));
    kept(&mut yard, day("2026-07-13"), facts(Some(2), None));
    kept(&mut yard, day("2026-07-15"), facts(None, Some(2)));
    let known = yard.book.standing().facts(Blank::YardFacts, Some(&yard.id), None);
    assert_eq!((known.word("soil"), known.word("shade"), known.word("surface")), (None, Some("shade"), None));
}

#[test]
fn a_hive_that_stood_there_before_it_was_written_down_is_begun_earlier_with_the_record() {
    let mut yard = three();
    let (early, today) = (day("2026-04-20"), day("2026-07-14"));
    let plain = product(&yard);
    let home = yard.id.clone();
    let refused = yard.book.record(&pen("aa", today), early, today, Some(&home), plain.clone());
    assert_eq!(refused, Err(Refusal::BeforeHive { since: day("2026-05-01") }));
    let written = yard.book.record_from_start(&pen("aa", today), early, today, Some(&home), &plain).unwrap();
    assert_eq!(written.len(), 3);
    let ids: Vec<_> = written.iter().map(|entry| entry.id.clone()).collect();
    yard.book.add(written);
    let since = |yard: &Yard, tag: &str| yard.book.standing().hives[&yard.hive(tag)].since;
    assert_eq!((since(&yard, "1"), since(&yard, "2"), since(&yard, "3")), (early, early, day("2026-05-01")));
    assert_eq!((yard.book.standing().records.len(), yard.book.standing().orphans), (1, 0));
    let undo = yard.book.strike(&pen("aa", today), today, &ids, &Unicode).unwrap();
    yard.book.add(undo);
    assert_eq!(since(&yard, "1"), day("2026-05-01"));
}

#[test]
fn of_two_products_the_one_that_is_still_in_keeps_supers_off() {
    let (one, two) = (Clear::From(day("2026-07-01")), Clear::From(day("2026-08-01")));
    assert_eq!((one.later(two), two.later(one)), (two, two));
    assert_eq!((one.later(Clear::StillIn), Clear::StillIn.later(two)), (Clear::StillIn, Clear::StillIn));
}

#[test]
fn what_is_private_stays_out_where_it_is_not_asked_for() {
    let yard = three();
    let mut facts = filled(Blank::YardFacts, &yard.hive("1"), &yard.hive("2"));
    facts.leave_out_private();
    assert_eq!((facts.text("owner"), facts.text("phone"), facts.text("where")), (None, None, None));
    assert!(facts.text("registration").is_some());
    for blank in Blank::ALL {
        let notes = blank.fields().iter().filter(|field| field.name == "note");
        assert!(notes.into_iter().all(|field| field.private && field.ask == Ask::Text(500)));
    }
}

/// Highs and lows in two units, or a high below the low of its month, are mistakes and not weather.
#[test]
fn keeper_swaps_a_high_and_a_low_and_the_field_of_the_low_is_named() {
    let yard = three();
    let on = day("2026-07-14");
    let at = |name: &str| Blank::Climate.fields().iter().position(|field| field.name == name).unwrap();
    let sound = filled(Blank::Climate, &yard.hive("1"), &yard.hive("2"));
    assert!(write(&yard, on, sound.clone()).is_ok());
    for month in 1..=12 {
        let mut swapped = sound.clone();
        let (high, low) = (at(&format!("high_{month}")), at(&format!("low_{month}")));
        swapped.answers.swap(high, low);
        assert_eq!(write(&yard, on, swapped.clone()), Err(Refusal::Backwards { field: low }));
        // A month whose nights are as warm as its days is no mistake.
        let mut level = sound.clone();
        level.answers[low] = level.answers[high].clone();
        assert!(write(&yard, on, level).is_ok());
        let mut mixed = sound.clone();
        mixed.answers[low] = Some(Answer::Number(Decimal::ZERO, 0));
        assert_eq!(mixed.check(), Err(EntryError::OutOfRange));
        let mut lacking = sound.clone();
        lacking.answers[high] = None;
        assert_eq!(write(&yard, on, lacking), Err(Refusal::Lacks { field: high }));
    }
}

#[test]
fn a_climate_is_told_in_two_rows_of_twelve() {
    let mut yard = three();
    let record = filled(Blank::Climate, &yard.hive("1"), &yard.hive("2"));
    let entry = kept(&mut yard, day("2026-07-14"), record);
    let said = words::entry(&yard.book, &entry).replace('\u{a0}', " ");
    assert!(said.contains("mean highs, January to December: 3.5, 4.5, "), "{said}");
    assert!(said.contains(", 14.5 °F; mean lows: -10.5, ") && said.ends_with(", -21.5 °F"), "{said}");
}
