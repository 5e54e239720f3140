//! A page of plain trap work, read straight from its letters.
//!
//! Nearly every line of a book is a check or a skip, written by this program, its fields in one order and without a
//! blank. Reading those letter by letter takes a fifth of the time of the general reader, which makes a tree of every
//! text first; and a start reads every line there is. Whatever differs in the least is left to the general reader:
//! what is found here is what it finds, and `tests/book/plain.rs` holds the two side by side.

use super::entry::{Check, Did, Entry, SkipReason, What};
use super::id::{EntryId, ThingId};
use super::page::Page;
use crate::almanac::day::{Day, Stamp};
use crate::almanac::json::{Json, Value};
use crate::almanac::quantity::{Decimal, Share};
use crate::almanac::tally::CountRange;

/// The page in `text`; none when there is anything on it but plain trap work.
pub fn page(text: &str) -> Option<Page> {
    let mut line = Line(text);
    line.pass("{\"entries\":[")?;
    let mut entries = Vec::new();
    loop {
        entries.push(line.entry()?);
        if line.pass(",").is_none() {
            line.pass("]}")?;
            return line.0.is_empty().then_some(Page { entries });
        }
    }
}

/// What is still to be read.
struct Line<'a>(&'a str);

impl<'a> Line<'a> {
    fn pass(&mut self, letters: &str) -> Option<()> {
        self.0 = self.0.strip_prefix(letters)?;
        Some(())
    }

    /// A text without escapes, its closing mark passed over.
    fn text(&mut self) -> Option<&'a str> {
        let end = self.0.bytes().position(|letter| matches!(letter, b'"' | b'\\' | 0..0x20))?;
        let text = self.0.get(..end)?;
        self.0 = self.0.get(end..)?.strip_prefix('"')?;
        Some(text)
    }

    /// A number of digits alone.
    fn whole(&mut self) -> Option<u32> {
        let end = self.0.bytes().position(|letter| !letter.is_ascii_digit())?;
        let digits = self.0.get(..end)?;
        self.0 = self.0.get(end..)?;
        // A nought in front is no JSON; what follows the digits of a fraction is refused by whoever reads on.
        if digits.starts_with('0') && end > 1 { None } else { digits.parse().ok() }
    }

    fn thing(&mut self) -> Option<ThingId> {
        ThingId::parse(self.text()?).ok()
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
        let day = Day::parse(self.text()?).ok()?;
        self.pass(",\"at\":\"")?;
        let at = Stamp::parse(self.text()?).ok()?;
        self.pass(",\"what\":{\"")?;
        let what = match self.text()? {
            "check" => self.check()?,
            "skip" => self.skip()?,
            _ => return None,
        };
        self.pass("}}")?;
        let by = match self.pass(",\"by\":\"") {
            Some(()) => Some(self.text()?.to_owned()),
            None => None,
        };
        let yard = match self.pass(",\"yard\":\"") {
            Some(()) => Some(self.thing()?),
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
}
