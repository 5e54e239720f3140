//! A blank as it stands in the fields, and what can be read from them.

use crate::almanac::day::Day;
use crate::almanac::freezer::KILLS_CELSIUS;
use crate::almanac::quantity::Decimal;
use crate::almanac::typed::{self, DayTypedError, TypedError};
use crate::app::bench::read::warmth;
use crate::app::ledger::edit;
use crate::app::wording::en_decide::freezer::TOO_WARM;
use crate::app::wording::en_records as w;
use crate::app::wording::en_yard_decides::freezer::HARDLY;
use crate::book::chilled::HARDLY_CELSIUS;
use crate::book::entry::Entry;
use crate::book::id::ThingId;
use crate::book::record::{Answer, Ask, ClockTime, Field, Record};

/// What stands in a field: the text, and the code of the unit beside it. Chosen words are their codes, with a blank
/// between them.
pub type Typed = (String, String);

/// What is wrong with a field.
#[derive(Clone, Debug, PartialEq)]
pub enum Wrong {
    /// Must be filled in.
    Lacks,
    /// Not a number.
    Number(TypedError),
    /// Not a count.
    Count(TypedError),
    /// A number outside its ends, and the code of its unit.
    Ends(i64, i64, &'static str),
    /// So many characters too many, and how many there can be.
    TooLong(usize, u16),
    /// Not a day.
    Day(DayTypedError),
    /// Not a day and an hour.
    Time,
}

/// The hives of a line that is corrected, in its own order, and those that came to it after them: lists of a trial are
/// pairs in their order, which no tick taken away and set again changes.
pub fn in_order(was: &[ThingId], chosen: &[ThingId]) -> Vec<ThingId> {
    let mut hives = Vec::new();
    for hive in was.iter().chain(chosen) {
        if chosen.contains(hive) && !hives.contains(hive) {
            hives.push(hive.clone());
        }
    }
    hives
}

/// What a field says, or nothing where it was left empty. `today` bounds days: two years ahead at most.
///
/// # Errors
/// [`Wrong`].
pub fn read(field: &Field, typed: &Typed, today: Day) -> Result<Option<Answer>, Wrong> {
    let text = typed.0.trim();
    if text.is_empty() {
        return if field.must { Err(Wrong::Lacks) } else { Ok(None) };
    }
    let at = |words: &[&str], word: &str| words.iter().position(|known| *known == word);
    let place = |words: &[&str], word: &str| at(words, word).and_then(|at| u8::try_from(at).ok());
    let answer = match &field.ask {
        Ask::Word(words) => Answer::Word(place(words, text).ok_or(Wrong::Lacks)?),
        Ask::Words(words) => {
            let mut bits = 0u16;
            for word in text.split(' ') {
                bits |= at(words, word).map_or(0, |at| 1 << at);
            }
            Answer::Words(bits)
        }
        Ask::Count => Answer::Count(typed::count_or_range(text, Entry::COUNT_MOST).map_err(Wrong::Count)?),
        Ask::Number { units, least, most } => {
            // The number fields of the page take no sign; here what went out of the stock has one.
            let (minus, plain) = match text.strip_prefix(['-', '−']) {
                Some(plain) if *least < 0 => (true, plain),
                _ => (false, text),
            };
            let mut number = typed::decimal(plain).map_err(Wrong::Number)?;
            if minus {
                number = number.negative();
            }
            let unit = place(units, &typed.1).unwrap_or(0);
            let code = units.get(usize::from(unit)).copied().unwrap_or_default();
            if !field.ask.holds(number) {
                return Err(Wrong::Ends(*least, *most, code));
            }
            if ["C", "F"].contains(&code) && field.name != "freezer" {
                warmth(&number.to_string(), code).map_err(Wrong::Number)?;
                if number.millionths() < COLDEST * 1_000_000 {
                    return Err(Wrong::Ends(COLDEST, if code == "F" { 140 } else { 60 }, code));
                }
            }
            Answer::Number(number, unit)
        }
        Ask::Text(most) => {
            let over = text.chars().count().saturating_sub(usize::from(*most));
            if over > 0 {
                return Err(Wrong::TooLong(over, *most));
            }
            Answer::Text(text.to_owned())
        }
        Ask::Day => Answer::Day(day(text, today).map_err(Wrong::Day)?),
        Ask::Time => {
            let time = ClockTime::parse(text).map_err(|_| Wrong::Time)?;
            // An hour is of something done; a day may be planned.
            typed::day_done(&time.day.to_string(), today).map_err(Wrong::Day)?;
            Answer::Time(time)
        }
        Ask::Hive => Answer::Hive(ThingId::parse(text).map_err(|_| Wrong::Lacks)?),
    };
    Ok(Some(answer))
}

/// No mean low, soil or room is colder (our judgement). It is as many degrees Fahrenheit as Celsius.
const COLDEST: i64 = -40;

/// What the answer at `at` has against it beside the others, or by the clock of the yard, which shows `now`.
pub fn against(record: &Record, at: usize, now: &dyn Fn() -> Option<ClockTime>) -> Option<&'static str> {
    let field = record.blank.fields().get(at)?;
    match (field.name, record.answers.get(at)?.as_ref()?) {
        (_, Answer::Time(time)) => now().is_some_and(|now| *time > now).then_some(w::NOT_YET),
        ("room_low", _) => {
            let (low, high) = (record.warmth("room_low")?, record.warmth("room")?);
            // One warmth in two units differs in the last bits.
            (low.celsius() - high.celsius() > 1e-6).then_some(w::COOLEST_ABOVE)
        }
        ("larvae_size", _) => match record.word("larvae") {
            Some("none") => Some(w::NO_LARVAE),
            Some("not_looked") => Some(w::NOT_LOOKED),
            _ => None,
        },
        ("rain", Answer::Number(Decimal::ZERO, _)) => Some(w::NO_RAIN),
        _ => None,
    }
}

/// What is to be said of the field at `at` beside the others, though the record can be kept as it is. `kind` tells whether a
/// kind of trap in the book has a name.
pub fn remark(record: &Record, at: usize, kind: &dyn Fn(&str) -> bool) -> Option<&'static str> {
    let name = record.blank.fields().get(at)?.name;
    let back = match name {
        "oil_taken" => "oil_back",
        "traps_taken" => "traps_back",
        "freezer" => {
            let celsius = record.warmth(name)?.celsius() - 1e-9;
            return [(HARDLY_CELSIUS, HARDLY), (KILLS_CELSIUS, TOO_WARM)]
                .into_iter()
                .find_map(|(bound, said)| (celsius > bound).then_some(said));
        }
        "item" => {
            let trap = record.word("sort") == Some("trap");
            let said = if trap { w::NO_SUCH_KIND } else { w::IS_A_KIND };
            // Named like a kind and not told to be traps, or the other way round.
            return (kind(record.text(name)?) != trap).then_some(said);
        }
        _ => return None,
    };
    (record.get(name).is_none() && record.get(back).is_some()).then_some(w::NO_TAKEN)
}

/// A day that was or is planned.
fn day(text: &str, today: Day) -> Result<Day, DayTypedError> {
    match typed::day_done(text, today) {
        Err(DayTypedError::Future) => typed::day_planned(text, today),
        day => day,
    }
}

/// What stands in a field that says `answer`: read again it says the same.
pub fn shown(field: &Field, answer: Option<&Answer>) -> Typed {
    let first = if let Ask::Number { units, .. } = &field.ask { units.first().copied() } else { None };
    let mut unit = first.unwrap_or_default().to_owned();
    let text = match (&field.ask, answer) {
        (Ask::Word(words), Some(Answer::Word(at))) => {
            words.get(usize::from(*at)).copied().unwrap_or_default().to_owned()
        }
        (Ask::Words(words), Some(Answer::Words(bits))) => {
            let mut text = String::new();
            for (at, word) in words.iter().enumerate() {
                if bits >> at & 1 == 1 {
                    text.push_str(if text.is_empty() { "" } else { " " });
                    text.push_str(word);
                }
            }
            text
        }
        (Ask::Number { units, .. }, Some(Answer::Number(number, at))) => {
            if let Some(known) = units.get(usize::from(*at)) {
                (*known).clone_into(&mut unit);
            }
            number.to_string()
        }
        (_, Some(Answer::Count(count))) => edit::count(*count),
        (_, Some(Answer::Text(text))) => text.clone(),
        (_, Some(Answer::Day(day))) => day.to_string(),
        (_, Some(Answer::Time(time))) => time.to_string(),
        (_, Some(Answer::Hive(hive))) => hive.to_string(),
        _ => String::new(),
    };
    (text, unit)
}

/// The record that the fields of `blank` say, with what is wrong field by field.
pub fn record(empty: Record, typed: &[Typed], today: Day) -> (Record, Vec<Option<Wrong>>) {
    let mut record = empty;
    let mut wrong = Vec::new();
    for ((field, place), typed) in record.blank.fields().iter().zip(&mut record.answers).zip(typed) {
        let read = read(field, typed, today);
        wrong.push(read.as_ref().err().cloned());
        *place = read.unwrap_or(None);
    }
    (record, wrong)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::almanac::quantity::Decimal;
    use crate::almanac::tally::CountRange;
    use crate::book::id::{EntryId, Writer};
    use crate::book::record::Blank;

    fn today() -> Day {
        Day::parse("2026-07-14").unwrap()
    }

    fn field(blank: Blank, name: &str) -> &'static Field {
        blank.fields().iter().find(|field| field.name == name).unwrap()
    }

    fn blank_at(blank: Blank, name: &str) -> usize {
        blank.fields().iter().position(|field| field.name == name).unwrap()
    }

    fn says(blank: Blank, name: &str, text: &str) -> Result<Option<Answer>, Wrong> {
        let known = field(blank, name);
        let unit = shown(known, None).1;
        read(known, &(text.to_owned(), unit), today())
    }

    #[test]
    fn a_price_of_0_is_kept_and_no_price_is_none() {
        assert_eq!(says(Blank::Stock, "price", "0"), Ok(Some(Answer::Number(Decimal::ZERO, 0))));
        assert_eq!(says(Blank::Stock, "price", ""), Ok(None));
    }

    #[test]
    fn what_came_home_asks_for_what_was_taken_and_nothing_else_does() {
        for (taken, back) in [("oil_taken", "oil_back"), ("traps_taken", "traps_back")] {
            for (out, home) in [(false, false), (false, true), (true, false), (true, true)] {
                let mut record = Record::empty(Blank::Trip, Vec::new());
                for (field, place) in record.blank.fields().iter().zip(&mut record.answers) {
                    let filled = field.name == taken && out || field.name == back && home;
                    *place = filled.then_some(Answer::Number(Decimal::ZERO, 0));
                }
                for (at, field) in record.blank.fields().iter().enumerate() {
                    let wanted = field.name == taken && home && !out;
                    assert_eq!(
                        remark(&record, at, &|_| true).is_some(),
                        wanted,
                        "{}: {out} {home}",
                        field.name
                    );
                }
            }
        }
    }

    #[test]
    fn traps_in_stock_are_called_like_a_kind_and_a_freezer_is_cold_or_the_form_says_so() {
        let said = |blank, filled: &[(&str, &str)], asked| {
            let at = |name| blank_at(blank, name);
            let mut record = Record::empty(blank, Vec::new());
            for (name, text) in filled {
                record.answers[at(name)] = says(blank, name, text).unwrap();
            }
            remark(&record, at(asked), &|item| item == "Oil trap")
        };
        let stock = |item, sort| said(Blank::Stock, &[("item", item), ("sort", sort)], "item");
        assert_eq!(stock("oil traps", "trap"), Some(w::NO_SUCH_KIND));
        assert_eq!((stock("Oil trap", "trap"), stock("oil traps", "oil")), (None, None));
        assert_eq!(stock("Oil trap", ""), Some(w::IS_A_KIND));
        assert_eq!(said(Blank::Stock, &[("sort", "trap")], "item"), None, "nothing typed");
        let freezer = |shows| said(Blank::Freezer, &[("freezer", shows)], "freezer");
        assert_eq!((freezer("18"), freezer("-6.9")), (Some(HARDLY), Some(HARDLY)));
        assert_eq!((freezer("-7"), freezer("-11.9")), (Some(TOO_WARM), Some(TOO_WARM)));
        assert_eq!((freezer("-12"), freezer("-18"), freezer("")), (None, None, None));
    }

    #[test]
    fn what_is_shown_and_left_alone_is_read_as_it_was() {
        let hive = EntryId::new(Writer::new("test").unwrap(), 1).unwrap().thing(0);
        for blank in Blank::ALL {
            for known in blank.fields() {
                let answers: Vec<Answer> = match known.ask {
                    Ask::Word(words) => {
                        (0..words.len()).map(|at| Answer::Word(u8::try_from(at).unwrap())).collect()
                    }
                    Ask::Words(words) => (1..1u16 << words.len()).map(Answer::Words).collect(),
                    Ask::Count => [CountRange::exact(0), CountRange::exact(12)]
                        .into_iter()
                        .chain(CountRange::new(5, Some(19)))
                        .chain(CountRange::new(50, None))
                        .map(Answer::Count)
                        .collect(),
                    Ask::Number { units, least, .. } => (0..units.len().max(1))
                        .map(|at| {
                            let sign = if least < 0 { -1 } else { 1 };
                            let number = Decimal::from_millionths(sign * 3_250_000).unwrap();
                            Answer::Number(number, u8::try_from(at).unwrap())
                        })
                        .collect(),
                    Ask::Text(_) => vec![Answer::Text("a “b”, =c".to_owned())],
                    Ask::Day => vec![Answer::Day(today()), Answer::Day(today().plus(30))],
                    Ask::Time => vec![Answer::Time(ClockTime { day: today(), minute: 61 })],
                    Ask::Hive => vec![Answer::Hive(hive.clone())],
                };
                for answer in answers {
                    let typed = shown(known, Some(&answer));
                    assert_eq!(read(known, &typed, today()), Ok(Some(answer)), "{} {typed:?}", known.name);
                }
            }
        }
    }

    #[test]
    fn an_empty_field_is_left_empty_or_asked_for() {
        assert_eq!(says(Blank::Look, "adults", " "), Ok(None));
        assert_eq!(says(Blank::Look, "larvae", ""), Err(Wrong::Lacks));
        assert_eq!(says(Blank::Product, "interval_days", ""), Err(Wrong::Lacks));
        let zero = Ok(Some(Answer::Number(Decimal::ZERO, 0)));
        assert_eq!(says(Blank::Product, "interval_days", "0"), zero);
    }

    #[test]
    fn what_cannot_be_is_named_and_what_was_typed_stays() {
        assert!(matches!(says(Blank::Look, "adults", "-3"), Err(Wrong::Count(_))));
        assert_eq!(says(Blank::Look, "frames_of_bees", "-3"), Err(Wrong::Ends(0, 1000, "")));
        assert_eq!(says(Blank::Harvest, "humidity", "101"), Err(Wrong::Ends(0, 100, "%")));
        assert_eq!(says(Blank::Product, "product", &"x".repeat(63)), Err(Wrong::TooLong(3, 60)));
        assert_eq!(says(Blank::Harvest, "bees_off", "2026-07-14"), Err(Wrong::Time));
        assert!(matches!(says(Blank::Product, "end", "2206-07-14"), Err(Wrong::Day(_))));
        assert!(matches!(says(Blank::Product, "end", "0026-07-14"), Err(Wrong::Day(_))));
    }

    #[test]
    fn a_warmth_that_no_yard_has_is_asked_about() {
        let too_warm = |name: &str, blank| matches!(says(blank, name, "95"), Err(Wrong::Number(_)));
        assert!(too_warm("room", Blank::Harvest) && too_warm("room_low", Blank::Harvest));
        assert!(too_warm("temperature", Blank::Soil) && too_warm("high_7", Blank::Climate));
        assert!(!too_warm("freezer", Blank::Freezer));
        assert_eq!(says(Blank::Climate, "low_1", "-41"), Err(Wrong::Ends(-40, 60, "C")));
        assert!(says(Blank::Climate, "low_1", "-40").is_ok());
        let room = field(Blank::Harvest, "room");
        let fahrenheit = |text: &str| read(room, &(text.to_owned(), "F".to_owned()), today());
        assert!(fahrenheit("95").is_ok() && fahrenheit("-40").is_ok());
        assert!(matches!(fahrenheit("150"), Err(Wrong::Number(_))));
        assert_eq!(fahrenheit("-41"), Err(Wrong::Ends(-40, 140, "F")));
        assert_eq!(says(Blank::Freezer, "freezer", "-61"), Err(Wrong::Ends(-60, 212, "C")));
    }

    #[test]
    fn answers_that_contradict_each_other_or_the_clock_are_named() {
        let noon = ClockTime { day: today(), minute: 720 };
        let said = |blank, typed: &[(&str, &str, &str)], name: &str| {
            let mut record = Record::empty(blank, Vec::new());
            let at = |name: &str| blank.fields().iter().position(|field| field.name == name).unwrap();
            for (name, text, unit) in typed {
                let typed = ((*text).to_owned(), (*unit).to_owned());
                record.answers[at(name)] = read(field(blank, name), &typed, today()).unwrap();
            }
            against(&record, at(name), &|| Some(noon))
        };
        let room =
            |low, unit| said(Blank::Harvest, &[("room", "28", "C"), ("room_low", low, unit)], "room_low");
        assert_eq!(room("29", "C"), Some(w::COOLEST_ABOVE));
        assert_eq!((room("28", "C"), room("82.4", "F"), room("27", "C")), (None, None, None));
        assert_eq!(room("83", "F"), Some(w::COOLEST_ABOVE));
        assert_eq!(said(Blank::Harvest, &[("room_low", "29", "C")], "room_low"), None);
        let off = |time| said(Blank::Harvest, &[("bees_off", time, "")], "bees_off");
        assert_eq!(off("2026-07-14T12:01"), Some(w::NOT_YET));
        assert_eq!((off("2026-07-14T12:00"), off("2026-07-13T23:00")), (None, None));
        let size =
            |larvae| said(Blank::Look, &[("larvae", larvae, ""), ("larvae_size", "tiny", "")], "larvae_size");
        assert_eq!((size("none"), size("not_looked")), (Some(w::NO_LARVAE), Some(w::NOT_LOOKED)));
        assert_eq!((size("few"), size("many")), (None, None));
        let rain = |fell| said(Blank::Rain, &[("rain", fell, "mm")], "rain");
        assert_eq!((rain("0"), rain("0.5")), (Some(w::NO_RAIN), None));
        assert_eq!(said(Blank::Rain, &[], "rain"), None);
    }

    #[test]
    fn hives_of_a_list_keep_their_places_whatever_is_ticked_first() {
        let [a, b, c, d] =
            [1, 2, 3, 4].map(|n| ThingId::parse(&["k7f3qa-", &n.to_string()].concat()).unwrap());
        let was = [c.clone(), a.clone(), b.clone()];
        let chosen = |hives: &[&ThingId]| in_order(&was, &hives.iter().copied().cloned().collect::<Vec<_>>());
        assert_eq!(chosen(&[&a, &b, &c]), was);
        assert_eq!(chosen(&[&d, &b, &c]), [c, b, d]);
    }

    #[test]
    fn a_freezer_is_below_zero_and_what_left_the_stock_has_a_minus() {
        let minus = |whole: i64| Decimal::from_millionths(-whole * 1_000_000).unwrap();
        assert_eq!(says(Blank::Freezer, "freezer", "-18"), Ok(Some(Answer::Number(minus(18), 0))));
        assert_eq!(says(Blank::Stock, "change", "−6"), Ok(Some(Answer::Number(minus(6), 0))));
    }
}
