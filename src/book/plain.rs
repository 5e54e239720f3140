//! A page read straight from its letters.
//!
//! Nearly every line of a book is a check, a skip or a record of a few words and numbers, written by this program, its
//! fields in one order and without a blank. Reading those letter by letter takes a fifth of the time of the general
//! reader, which makes a tree of every text first; and a start reads every line there is. A line that differs in the
//! least is left to the general reader, and so is the page where something differs around its lines: what is found here
//! is what it finds, and `tests/book/plain.rs` holds the two side by side.

use super::entry::{Check, Did, Entry, SkipReason, What};
use super::id::{EntryId, ThingId};
use super::page::Page;
use super::record::{Answer, Ask, Blank, Record, place};
use crate::almanac::day::{Day, Stamp};
use crate::almanac::json::{self, Json, Value};
use crate::almanac::quantity::{Decimal, Share};
use crate::almanac::tally::CountRange;

/// The page in `text`; none when it is not written as this program writes it.
pub fn page(text: &str) -> Option<Page> {
    let mut line = Line { rest: text, day: None, yard: None };
    line.pass("{\"entries\":[")?;
    let mut entries = Vec::new();
    loop {
        let begun = line.rest;
        if let Some(entry) = line.entry() {
            entries.push(entry);
        } else {
            let (entry, rest) = json::leading(begun)?;
            entries.push(entry);
            line.rest = rest;
        }
        if line.pass(",").is_none() {
            line.pass("]}")?;
            return line.rest.is_empty().then_some(Page { entries });
        }
    }
}

/// The line in `text`; none when it is left to the general reader.
pub fn line(text: &str) -> Option<Entry> {
    let mut line = Line { rest: text, day: None, yard: None };
    line.entry().filter(|_| line.rest.is_empty())
}

/// What is still to be read, and what all lines of a page have in common: it is read once.
struct Line<'a> {
    rest: &'a str,
    day: Option<(&'a str, Day)>,
    yard: Option<(&'a str, ThingId)>,
}

impl<'a> Line<'a> {
    fn pass(&mut self, letters: &str) -> Option<()> {
        self.rest = self.rest.strip_prefix(letters)?;
        Some(())
    }

    /// A text without escapes, its closing mark passed over.
    fn text(&mut self) -> Option<&'a str> {
        let end = self.rest.bytes().position(|letter| matches!(letter, b'"' | b'\\' | 0..0x20))?;
        let text = self.rest.get(..end)?;
        self.rest = self.rest.get(end..)?.strip_prefix('"')?;
        Some(text)
    }

    /// A number of digits alone.
    fn whole(&mut self) -> Option<u32> {
        let digits = self.digits()?;
        // A nought in front is no JSON; what follows the digits of a fraction is refused by whoever reads on.
        if digits.starts_with('0') && digits.len() > 1 { None } else { digits.parse().ok() }
    }

    fn digits(&mut self) -> Option<&'a str> {
        let end = self.rest.bytes().position(|letter| !letter.is_ascii_digit())?;
        let digits = self.rest.get(..end)?;
        self.rest = self.rest.get(end..)?;
        Some(digits)
    }

    /// A number without an exponent, up to six decimals.
    fn number(&mut self) -> Option<Decimal> {
        let negative = self.pass("-").is_some();
        let mut millionths = i64::from(self.whole()?) * 1_000_000;
        if self.pass(".").is_some() {
            let decimals = self.digits().filter(|digits| (1..=6).contains(&digits.len()))?;
            let mut worth = 100_000;
            for digit in decimals.bytes() {
                millionths += i64::from(digit - b'0') * worth;
                worth /= 10;
            }
        }
        Decimal::from_millionths(if negative { -millionths } else { millionths }).ok()
    }

    fn thing(&mut self) -> Option<ThingId> {
        ThingId::parse(self.text()?).ok()
    }

    fn day(&mut self) -> Option<Day> {
        let text = self.text()?;
        match self.day {
            Some((known, day)) if known == text => Some(day),
            _ => {
                let day = Day::parse(text).ok()?;
                self.day = Some((text, day));
                Some(day)
            }
        }
    }

    fn yard(&mut self) -> Option<ThingId> {
        let text = self.text()?;
        match &self.yard {
            Some((known, yard)) if *known == text => Some(yard.clone()),
            _ => {
                let yard = ThingId::parse(text).ok()?;
                self.yard = Some((text, yard.clone()));
                Some(yard)
            }
        }
    }

    fn word<T: Json>(&mut self) -> Option<T> {
        T::read(Value::String(self.text()?.to_owned()))
    }

    /// None inside when the field is left out, none at all when it is no level.
    #[allow(clippy::option_option)]
    fn level(&mut self, name: &str) -> Option<Option<Share>> {
        if self.pass(name).is_none() {
            return Some(None);
        }
        Share::from_percent(Decimal::whole(self.whole()?)).ok().map(Some)
    }

    /// As [`Line::level`].
    #[allow(clippy::option_option)]
    fn note(&mut self) -> Option<Option<String>> {
        if self.pass(",\"note\":\"").is_none() {
            return Some(None);
        }
        self.text().map(|text| Some(text.to_owned()))
    }

    fn entry(&mut self) -> Option<Entry> {
        self.pass("{\"id\":\"")?;
        let id = EntryId::parse(self.text()?).ok()?;
        self.pass(",\"day\":\"")?;
        let day = self.day()?;
        self.pass(",\"at\":\"")?;
        let at = Stamp::parse(self.text()?).ok()?;
        self.pass(",\"what\":{\"")?;
        let what = match self.text()? {
            "check" => self.check()?,
            "skip" => self.skip()?,
            "record" => self.record()?,
            _ => return None,
        };
        self.pass("}}")?;
        let by = match self.pass(",\"by\":\"") {
            Some(()) => Some(self.text()?.to_owned()),
            None => None,
        };
        let yard = match self.pass(",\"yard\":\"") {
            Some(()) => Some(self.yard()?),
            None => None,
        };
        let bulk = match self.pass(",\"bulk\":\"") {
            Some(()) => Some(EntryId::parse(self.text()?).ok()?),
            None => None,
        };
        self.pass("}")?;
        Some(Entry { id, day, at, by, yard, replaces: None, bulk, what })
    }

    fn check(&mut self) -> Option<What> {
        self.pass(":{\"hive\":\"")?;
        let hive = self.thing()?;
        self.pass(",\"did\":\"")?;
        let did: Did = self.word()?;
        let before = self.level(",\"before\":")?;
        let after = self.level(",\"after\":")?;
        let count = match self.pass(",\"count\":") {
            Some(()) => Some(CountRange::exact(self.whole()?)),
            None => None,
        };
        let note = self.note()?;
        Some(What::Check(Check { hive, traps: None, did, before, after, count, note }))
    }

    fn skip(&mut self) -> Option<What> {
        self.pass(":{\"hive\":\"")?;
        let hive = self.thing()?;
        self.pass(",\"why\":\"")?;
        let why: SkipReason = self.word()?;
        let note = self.note()?;
        Some(What::Skip { hive, why, note })
    }

    /// A blank filled in, its answers in the order of its fields.
    fn record(&mut self) -> Option<What> {
        self.pass(":{\"blank\":\"")?;
        let name = self.text()?;
        let blank = Blank::ALL.into_iter().find(|blank| blank.name() == name)?;
        let mut hives = Vec::new();
        if self.pass(",\"hives\":[\"").is_some() {
            hives.push(self.thing()?);
            while self.pass(",\"").is_some() {
                hives.push(self.thing()?);
            }
            self.pass("]")?;
        }
        let mut record = Record::empty(blank, hives);
        self.pass(",\"answers\":{\"")?;
        let mut fields = blank.fields().iter().zip(&mut record.answers);
        loop {
            let name = self.text()?;
            self.pass(":")?;
            let (field, answer) = fields.find(|(field, _)| field.name == name)?;
            *answer = Some(self.answer(&field.ask)?);
            if self.pass(",\"").is_none() {
                break;
            }
        }
        // The end of the answers; record and line end as trap work does.
        self.pass("}")?;
        Some(What::Record(record))
    }

    fn answer(&mut self, ask: &Ask) -> Option<Answer> {
        match ask {
            Ask::Word(words) => {
                self.pass("\"")?;
                place(words, self.text()?).map(Answer::Word)
            }
            Ask::Count => self.whole().map(|count| Answer::Count(CountRange::exact(count))),
            Ask::Number { units: [], .. } => self.number().map(|number| Answer::Number(number, 0)),
            Ask::Number { units, .. } => {
                self.pass("{\"n\":")?;
                let number = self.number()?;
                self.pass(",\"unit\":\"")?;
                let unit = place(units, self.text()?)?;
                self.pass("}")?;
                Some(Answer::Number(number, unit))
            }
            _ => None,
        }
    }
}
