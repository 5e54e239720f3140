//! What was seen and done beside the traps: a blank for each kind of record, and blanks filled in.
//!
//! A blank is a table of fields (`record/blanks`). Reading, writing, checking, the form on the screen, the tables and the
//! sentence in the history all go by it, so one more kind of record is one more table. A field that was left out was left
//! empty: empty, zero and "not looked" are three values.

mod answer;
mod blanks;
mod clear;

pub(in crate::book) use answer::place;
pub use answer::{Answer, ClockTime, NoClockTime};
pub use blanks::{About, Ask, Blank, Field};
pub use clear::{Clear, clear_of_product, keep_until, lot};

use super::entry::{Entry, EntryError};
use super::id::ThingId;
use crate::almanac::day::Day;
use crate::almanac::honey::LIMIT_HOURS;
use crate::almanac::json::{Fields, Json, MaybeJson, Object, Value, serde_by_json};
use crate::almanac::quantity::{Volume, VolumeUnit};
use crate::almanac::warmth::Warmth;

/// A blank filled in.
#[derive(Clone, Debug, PartialEq)]
pub struct Record {
    /// Which blank.
    pub blank: Blank,
    /// The hives it is about; none where it is about a yard or the keeper.
    pub hives: Vec<ThingId>,
    /// One for each field of the blank, in its order.
    pub answers: Vec<Option<Answer>>,
}

impl Record {
    /// Most hives of one record.
    pub const HIVES_MOST: usize = 500;

    /// The blank with nothing filled in.
    pub fn empty(blank: Blank, hives: Vec<ThingId>) -> Record {
        Record { blank, hives, answers: vec![None; blank.fields().len()] }
    }

    /// Each field with what stands in it.
    pub fn fields(&self) -> impl Iterator<Item = (&'static Field, Option<&Answer>)> {
        self.blank.fields().iter().zip(self.answers.iter().map(Option::as_ref))
    }

    /// Each field with its answer, where there is one.
    pub fn filled(&self) -> impl Iterator<Item = (&'static Field, &Answer)> {
        self.fields().filter_map(|(field, answer)| Some((field, answer?)))
    }

    /// The answer to a field.
    pub fn get(&self, name: &str) -> Option<&Answer> {
        self.filled().find(|(field, _)| field.name == name).map(|(_, answer)| answer)
    }

    /// The word chosen in a field.
    pub fn word(&self, name: &str) -> Option<&'static str> {
        self.filled().find(|(field, _)| field.name == name).and_then(|(field, answer)| {
            match (&field.ask, answer) {
                (Ask::Word(words), Answer::Word(at)) => words.get(usize::from(*at)).copied(),
                _ => None,
            }
        })
    }

    /// Whether `word` is among those chosen in a field of several.
    pub fn chosen(&self, name: &str, word: &str) -> bool {
        self.filled().find(|(field, _)| field.name == name).is_some_and(|(field, answer)| {
            let (Ask::Words(words), Answer::Words(bits)) = (&field.ask, answer) else { return false };
            words.iter().position(|known| *known == word).is_some_and(|at| bits >> at & 1 == 1)
        })
    }

    /// The number in a field, and the place of its unit among the field's.
    pub fn number(&self, name: &str) -> Option<(f64, u8)> {
        match self.get(name) {
            Some(Answer::Number(number, unit)) => Some((number.as_f64(), *unit)),
            _ => None,
        }
    }

    /// The temperature in a field, in whichever unit it was typed; none beyond what a thermometer shows.
    pub fn warmth(&self, name: &str) -> Option<Warmth> {
        let (field, answer) = self.filled().find(|(field, _)| field.name == name)?;
        let (Ask::Number { units, .. }, Answer::Number(number, unit)) = (&field.ask, answer) else {
            return None;
        };
        let fahrenheit = units.get(usize::from(*unit)) == Some(&"F");
        let read = if fahrenheit { Warmth::from_fahrenheit } else { Warmth::from_celsius };
        read(number.as_f64()).ok()
    }

    /// The volume in a field, in whichever unit it was typed.
    pub fn volume(&self, name: &str) -> Option<Volume> {
        let (number, unit) = self.number(name)?;
        let unit = VolumeUnit::ALL.get(usize::from(unit))?;
        Volume::from_millilitres(number * unit.millilitres()).ok()
    }

    /// A look in which somebody looked for larvae, whatever was found.
    pub fn looked_for_larvae(&self) -> bool {
        self.blank == Blank::Look && self.word("larvae").is_some_and(|larvae| larvae != "not_looked")
    }

    /// The text in a field.
    pub fn text(&self, name: &str) -> Option<&str> {
        match self.get(name) {
            Some(Answer::Text(text)) => Some(text),
            _ => None,
        }
    }

    /// The day in a field.
    pub fn day(&self, name: &str) -> Option<Day> {
        match self.get(name) {
            Some(Answer::Day(day)) => Some(*day),
            _ => None,
        }
    }

    /// The day and hour in a field.
    pub fn time(&self, name: &str) -> Option<ClockTime> {
        match self.get(name) {
            Some(Answer::Time(time)) => Some(*time),
            _ => None,
        }
    }

    /// The hive that a field names.
    pub fn named_hive(&self) -> Option<&ThingId> {
        self.answers.iter().flatten().find_map(|answer| match answer {
            Answer::Hive(hive) => Some(hive),
            _ => None,
        })
    }

    /// The first field that must be there and is not.
    pub fn lacks(&self) -> Option<usize> {
        let fields = self.blank.fields().iter().zip(&self.answers);
        fields.into_iter().position(|(field, answer)| field.must && answer.is_none())
    }

    /// The version of the format that knows every word of it.
    pub fn version(&self) -> u32 {
        self.filled().map(|(field, _)| field.since).fold(self.blank.since(), u32::max)
    }

    /// The field of the first mean low that lies above the mean high of its month, of a goal behind the limit, and of
    /// more that came home than was taken along; none of a record of anything else.
    pub fn upside_down(&self) -> Option<usize> {
        if self.blank == Blank::Aims {
            // A limit that is not written down is the usual one.
            let (goal, limit) = (self.number("goal_hours"), self.number("limit_hours"));
            let limit = limit.map_or(f64::from(LIMIT_HOURS), |(hours, _)| hours);
            let at = self.blank.fields().iter().position(|field| field.name == "goal_hours");
            return at.filter(|_| goal.is_some_and(|(hours, _)| hours > limit));
        }
        if self.blank == Blank::Trip {
            let oil = self
                .volume("oil_back")
                .zip(self.volume("oil_taken"))
                .is_some_and(|(back, taken)| back > taken);
            let traps = self.number("traps_back").zip(self.number("traps_taken"));
            let name = if oil { "oil_back" } else { "traps_back" };
            let at = self.blank.fields().iter().position(|field| field.name == name);
            return at.filter(|_| oil || traps.is_some_and(|(back, taken)| back.0 > taken.0));
        }
        let (first, months) = Blank::months();
        let figure = |at: usize| match self.answers.get(at) {
            Some(Some(Answer::Number(figure, _))) => Some(*figure),
            _ => None,
        };
        let above =
            |low: &usize| figure(*low).zip(figure(low - months)).is_some_and(|(low, high)| low > high);
        let mut lows = first + months..first + 2 * months;
        if self.blank == Blank::Climate { lows.find(above) } else { None }
    }

    /// The first field whose day or hour lies before one that comes earlier: the end before the start, `on` being the day
    /// of the record itself. Until when a thing is good may lie before the day on which somebody finds it in the shed.
    pub fn backwards(&self, on: Day) -> Option<usize> {
        if self.blank == Blank::Stock {
            return None;
        }
        let mut latest = None;
        for (at, answer) in self.answers.iter().enumerate() {
            // An hour may lie on an earlier day than the record: a harvest is often written down the morning after.
            let (time, early) = match answer {
                Some(Answer::Day(day)) => {
                    (ClockTime { day: *day, minute: ClockTime::LAST_MINUTE }, *day < on)
                }
                Some(Answer::Time(time)) => (*time, false),
                _ => continue,
            };
            if early || latest.is_some_and(|latest| time < latest) {
                return Some(at);
            }
            latest = Some(time);
        }
        None
    }

    /// Empties what is left out of papers that leave the phone unless it is asked for: notes, and what says where a yard
    /// is or how to reach somebody.
    pub fn leave_out_private(&mut self) {
        for (field, answer) in self.blank.fields().iter().zip(&mut self.answers) {
            if field.private {
                *answer = None;
            }
        }
    }

    /// Checks what reading does not: lengths and how many hives.
    ///
    /// # Errors
    /// As [`Entry::check`].
    pub fn check(&self) -> Result<(), EntryError> {
        if self.hives.len() > Record::HIVES_MOST {
            return Err(EntryError::TooManyParts);
        }
        let hives = self.hives.len();
        let right = match self.blank.about() {
            About::Hive => hives == 1,
            About::Hives => hives > 0,
            About::Place => true,
            About::Yard | About::Keeper => hives == 0,
        };
        if !right || self.lacks().is_some() {
            return Err(EntryError::NamesNothing);
        }
        // A climate has one unit: highs and lows of two could not be told from mistakes.
        let mut units = self.answers.iter().flatten().filter_map(|answer| match answer {
            Answer::Number(_, unit) if self.blank == Blank::Climate => Some(unit),
            _ => None,
        });
        let unit = units.next();
        if units.any(|other| Some(other) != unit) {
            return Err(EntryError::OutOfRange);
        }
        for (field, answer) in self.filled() {
            match (&field.ask, answer) {
                (Ask::Text(most), Answer::Text(text)) if text.chars().count() > usize::from(*most) => {
                    return Err(EntryError::TextTooLong);
                }
                (Ask::Count, Answer::Count(count))
                    if count.high().unwrap_or(count.low()) > Entry::COUNT_MOST =>
                {
                    return Err(EntryError::OutOfRange);
                }
                (Ask::Number { .. }, Answer::Number(number, _)) if !field.ask.holds(*number) => {
                    return Err(EntryError::OutOfRange);
                }
                _ => {}
            }
        }
        Ok(())
    }
}

/// `{"blank": name, "hives": […], "answers": {field: answer, …}}`, hives left out where there are none.
impl Json for Record {
    fn write(&self, out: &mut String) {
        let mut object = Object::open(out);
        object.field("blank", &Name(self.blank.name()));
        self.hives.write_if(&mut object, "hives");
        object.field("answers", &Answers(self));
        object.close();
    }

    fn read(value: Value) -> Option<Record> {
        let mut fields = Fields::of(value)?;
        let name: String = fields.take("blank")?;
        let blank = Blank::ALL.into_iter().find(|blank| blank.name() == name)?;
        let hives = fields.maybe("hives")?;
        let Value::Object(given) = fields.value("answers")? else { return None };
        fields.end()?;
        let mut record = Record::empty(blank, hives);
        for (name, value) in given {
            let at = blank.fields().iter().position(|field| field.name == name)?;
            let (field, place) = (blank.fields().get(at)?, record.answers.get_mut(at)?);
            *place = Some(field.ask.read(value)?);
        }
        Some(record)
    }
}

serde_by_json!(Record);

/// A word of this program: it needs no escape.
struct Name(&'static str);

impl Json for Name {
    fn write(&self, out: &mut String) {
        crate::almanac::json::write_text(self.0, out);
    }

    fn read(_: Value) -> Option<Name> {
        None
    }
}

struct Answers<'a>(&'a Record);

impl Json for Answers<'_> {
    fn write(&self, out: &mut String) {
        let mut object = Object::open(out);
        for (field, answer) in self.0.filled() {
            object.raw(field.name, &|out| field.ask.write(answer, out));
        }
        object.close();
    }

    fn read(_: Value) -> Option<Answers<'static>> {
        None
    }
}
