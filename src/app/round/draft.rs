//! An entry in the making: what stands in its fields, as typed, hive by hive.

use crate::almanac::day::Day;
use crate::almanac::json::json_object;
use crate::almanac::quantity::{Decimal, Share};
use crate::almanac::tally::CountRange;
use crate::almanac::typed::{self, DayTypedError, TypedError};
use crate::book::entry::{Check, Did, Entry};
use crate::book::id::ThingId;

/// Most beetles anyone counts at one hive: what the book holds can be typed, so that every line can be corrected.
pub const MOST_BEETLES: u32 = Entry::COUNT_MOST;

/// What stands in the fields of one hive.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Typed {
    /// Level found.
    pub before: String,
    /// Level left.
    pub after: String,
    /// Beetles.
    pub count: String,
    /// Note.
    pub note: String,
    /// The traps it is about; none means all.
    pub traps: Vec<ThingId>,
    /// The day it was begun.
    pub begun: Option<Day>,
}

/// Everything half made.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Drafts {
    /// The hive whose panel is open.
    pub open: Option<ThingId>,
    /// The day entries are written for, as typed; empty is today.
    pub day: String,
    /// By hive, each once.
    pub hives: Vec<(ThingId, Typed)>,
}

json_object!(Typed { before, after, count, note } maybe { traps, begun });
json_object!(Drafts { day, hives } maybe { open });

/// A field that cannot be read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wrong {
    /// Level found.
    Before(TypedError),
    /// Level left.
    After(TypedError),
    /// Beetles.
    Count(TypedError),
    /// Characters the note is too long by.
    Note(usize),
    /// The day.
    Day(DayTypedError),
}

impl Typed {
    /// Nothing typed or chosen.
    pub fn is_empty(&self) -> bool {
        let texts = [&self.before, &self.after, &self.count, &self.note];
        texts.iter().all(|text| text.trim().is_empty()) && self.traps.is_empty()
    }

    /// The same stands in the fields as in those of `other`, whatever days the two were begun.
    pub fn says(&self, other: &Typed) -> bool {
        Typed { begun: other.begun, ..self.clone() } == *other
    }

    /// Something stands in a field that is folded away at first.
    pub fn beyond_count(&self) -> bool {
        let count = String::new();
        !Typed { count, ..self.clone() }.is_empty()
    }

    /// The work on `hive`. `usual` is the level that `did` leaves when nobody says otherwise.
    ///
    /// # Errors
    /// The first field that cannot be read.
    pub fn check(&self, hive: &ThingId, did: Did, usual: Option<Share>) -> Result<Check, Wrong> {
        let before = level(&self.before).map_err(Wrong::Before)?;
        let after = level(&self.after).map_err(Wrong::After)?;
        let gone = matches!(did, Did::Missing | Did::GluedShut);
        let note = self.note.trim();
        let over = note.chars().count().saturating_sub(Entry::NOTE_MOST);
        if over > 0 {
            return Err(Wrong::Note(over));
        }
        Ok(Check {
            hive: hive.clone(),
            traps: (!self.traps.is_empty()).then(|| self.traps.clone()),
            did,
            before,
            after: after.or(usual).filter(|_| !gone),
            count: count(&self.count).map_err(Wrong::Count)?,
            note: (!note.is_empty()).then(|| note.to_owned()),
        })
    }
}

impl Drafts {
    /// Nothing half made that would be a pity to lose.
    pub fn is_empty(&self) -> bool {
        self.hives.iter().all(|(_, typed)| typed.is_empty())
    }

    /// What is half made at `hive`.
    pub fn get(&self, hive: &ThingId) -> Option<&Typed> {
        self.hives.iter().find(|(known, _)| known == hive).map(|(_, typed)| typed)
    }

    /// Puts what is half made at `hive` in the place of what was; what is empty is left out.
    pub fn put(&mut self, hive: &ThingId, typed: Typed) {
        self.hives.retain(|(known, _)| known != hive);
        if !typed.is_empty() {
            self.hives.push((hive.clone(), typed));
        }
    }
}

impl Drafts {
    /// Brings back what was logged at `hive` and taken back; what was typed there since then stays.
    pub fn bring_back(&mut self, hive: &ThingId, typed: &Typed) {
        if self.get(hive).is_none() {
            self.put(hive, typed.clone());
        }
    }

    /// Leaves out what was brought back and is logged again, unless it was changed in between.
    pub fn take_again(&mut self, hive: &ThingId, typed: &Typed) {
        if self.get(hive).is_some_and(|now| now.says(typed)) {
            self.put(hive, Typed::default());
        }
    }
}

/// The day entries are written for.
///
/// # Errors
/// [`Wrong::Day`].
pub fn day(text: &str, today: Day) -> Result<Day, Wrong> {
    if text.trim().is_empty() { Ok(today) } else { typed::day_done(text, today).map_err(Wrong::Day) }
}

/// A level, if one is given.
///
/// # Errors
/// As [`typed::share`].
pub fn level(text: &str) -> Result<Option<Share>, TypedError> {
    if text.trim().is_empty() { Ok(None) } else { typed::share(text).map(Some) }
}

/// A count, if one is given.
///
/// # Errors
/// As [`typed::count_or_range`].
pub fn count(text: &str) -> Result<Option<CountRange>, TypedError> {
    if text.trim().is_empty() { Ok(None) } else { typed::count_or_range(text, MOST_BEETLES).map(Some) }
}

/// What a counting key makes of the text in the field. From a text that is no exact number it starts at 0: a range
/// cannot be added to.
pub fn counted(text: &str, by: i32) -> String {
    let now = count(text).ok().flatten().filter(|count| count.is_exact()).map_or(0, CountRange::low);
    now.saturating_add_signed(by).min(MOST_BEETLES).to_string()
}

/// A level above which a jolt wets bees: warned about, not refused.
pub fn too_full(text: &str) -> bool {
    let mark = Share::from_percent(Decimal::whole(75)).unwrap_or(Share::FULL);
    level(text).is_ok_and(|level| level.is_some_and(|level| level > mark))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::id::{EntryId, Writer};

    fn hive() -> ThingId {
        EntryId::new(Writer::new("test").unwrap(), 1).unwrap().thing(0)
    }

    #[test]
    fn two_taps_leave_the_usual_level_and_nothing_else() {
        let check = Typed::default().check(&hive(), Did::ToppedUp, Some(Share::HALF)).unwrap();
        assert_eq!((check.before, check.after, check.count), (None, Some(Share::HALF), None));
        assert_eq!((check.traps, check.note), (None, None));
    }

    #[test]
    fn what_was_taken_back_stands_in_the_fields_again_and_loses_nothing_typed_since() {
        let counted = Typed { count: "7".into(), ..Typed::default() };
        let mut drafts = Drafts::default();
        drafts.bring_back(&hive(), &counted);
        assert_eq!(drafts.get(&hive()), Some(&counted));
        drafts.bring_back(&hive(), &Typed { count: "9".into(), ..Typed::default() });
        assert_eq!(drafts.get(&hive()), Some(&counted));
        drafts.take_again(&hive(), &Typed::default());
        assert_eq!(drafts.get(&hive()), Some(&counted));
        drafts.take_again(&hive(), &counted);
        assert_eq!(drafts.get(&hive()), None);
        // Midnight has passed in between.
        let begun = |day| Typed { begun: Day::parse(day).ok(), ..counted.clone() };
        drafts.put(&hive(), begun("2026-07-14"));
        drafts.take_again(&hive(), &begun("2026-07-15"));
        assert_eq!(drafts.get(&hive()), None);
    }

    #[test]
    fn a_count_alone_needs_no_unfolded_field() {
        let counted = Typed { count: "7".into(), ..Typed::default() };
        assert!(!counted.beyond_count());
        assert!(Typed { note: "wet".into(), ..counted }.beyond_count());
    }

    #[test]
    fn keeper_types_half_in_words_signs_or_per_cent_and_a_range_of_beetles() {
        let typed = Typed {
            before: "¼".into(),
            after: "half".into(),
            count: "5–19".into(),
            note: " wet ".into(),
            ..Typed::default()
        };
        let check = typed.check(&hive(), Did::Replaced, None).unwrap();
        assert_eq!((check.before, check.after), (Some(Share::QUARTER), Some(Share::HALF)));
        assert_eq!(check.count, Some(CountRange::new(5, Some(19)).unwrap()));
        assert_eq!(check.note.as_deref(), Some("wet"));
    }

    #[test]
    fn a_missing_trap_has_no_level() {
        let typed = Typed { after: "½".into(), ..Typed::default() };
        assert_eq!(typed.check(&hive(), Did::Missing, Some(Share::HALF)).unwrap().after, None);
    }

    #[test]
    fn keeper_types_a_negative_count_half_a_beetle_or_501_characters_and_keeps_the_text() {
        let wrong = |typed: Typed| typed.check(&hive(), Did::AsFound, None).unwrap_err();
        let count = |count: &str| wrong(Typed { count: count.into(), ..Typed::default() });
        assert_eq!(count("-3"), Wrong::Count(TypedError::Negative));
        assert_eq!(count("1/2"), Wrong::Count(TypedError::Fraction));
        let note = Typed { note: "ä".repeat(501), ..Typed::default() };
        assert_eq!(wrong(note), Wrong::Note(1));
        let over = Typed { before: "120 %".into(), ..Typed::default() };
        assert_eq!(wrong(over), Wrong::Before(TypedError::OverFull));
    }

    #[test]
    fn counting_keys_add_to_a_number_and_start_over_from_a_range() {
        assert_eq!(counted("", 5), "5");
        assert_eq!(counted("5", 20), "25");
        assert_eq!(counted("0", -1), "0");
        assert_eq!(counted("50+", 1), "1");
        assert_eq!(counted("999999", 20), "1000000");
    }

    #[test]
    fn a_draft_survives_its_text() {
        let mut drafts = Drafts { open: Some(hive()), ..Drafts::default() };
        assert!(drafts.is_empty());
        let day = Day::parse("2026-07-14").ok();
        let typed = Typed { count: "12".into(), traps: vec![hive()], begun: day, ..Typed::default() };
        drafts.put(&hive(), typed);
        let text = serde_json::to_string(&drafts).unwrap();
        assert_eq!(serde_json::from_str::<Drafts>(&text).unwrap(), drafts);
        assert!(!drafts.is_empty());
    }
}
