//! What becomes of a hive: moved, renamed, ended, taken back.

use super::{Draft, Pen, Refusal};
use crate::almanac::day::Day;
use crate::almanac::text::{self, Letters};
use crate::book::Book;
use crate::book::entry::{Ending, Entry, TrapsWent, What};
use crate::book::id::ThingId;

impl Book {
    /// A hive carried to another yard.
    ///
    /// # Errors
    /// [`Refusal::SameYard`], [`Refusal::TagTaken`] when the tag is in use there, [`Refusal::Demonstration`] between
    /// the demonstration and the keeper's own yards; as [`Book::check`].
    #[allow(clippy::too_many_arguments)] // each is one answer of the form
    pub fn move_hive(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hive: &ThingId,
        to: &ThingId,
        permit: Option<String>,
        letters: &impl Letters,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(hive, day, today)?;
        if now.yard == *to {
            return Err(Refusal::SameYard);
        }
        if now.yard.is_demo() != to.is_demo() {
            return Err(Refusal::Demonstration);
        }
        self.tag_free(to, Some(hive), &now.tag, letters)?;
        self.one(pen, day, &now.yard, What::HiveMoved { hive: hive.clone(), to: to.clone(), permit })
    }

    /// A new tag for a hive.
    ///
    /// # Errors
    /// [`Refusal::TagTaken`], [`Refusal::Unknown`], [`Refusal::Nothing`] when the tag stays what it is.
    pub fn rename_hive(
        &self,
        pen: &Pen,
        today: Day,
        hive: &ThingId,
        tag: &str,
        letters: &impl Letters,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.standing().hives.get(hive).ok_or(Refusal::Unknown)?;
        if now.tag == tag {
            return Err(Refusal::Nothing);
        }
        self.tag_free(&now.yard, Some(hive), tag, letters)?;
        let what = What::HiveChanged { hive: hive.clone(), tag: Some(tag.to_owned()), size: None };
        self.one(pen, today, &now.yard, what)
    }

    /// `hive` and `other` are one in the yard: each was written down on a phone of its own. Kept is the one that came into
    /// the book earlier, so that nothing is told of a day before it.
    ///
    /// # Errors
    /// [`Refusal::Unknown`]; [`Refusal::Nothing`] for a hive and itself; [`Refusal::OtherYard`] when they stand in two
    /// yards; [`Refusal::Demonstration`].
    pub fn same_hive(
        &self,
        pen: &Pen,
        today: Day,
        hive: &ThingId,
        other: &ThingId,
    ) -> Result<Vec<Entry>, Refusal> {
        let of = |hive: &ThingId| self.standing().hives.get(hive).ok_or(Refusal::Unknown);
        let (one, two) = (of(hive)?, of(other)?);
        if hive == other {
            return Err(Refusal::Nothing);
        }
        if hive.is_demo() != other.is_demo() {
            return Err(Refusal::Demonstration);
        }
        if one.yard != two.yard {
            return Err(Refusal::OtherYard);
        }
        let (is, hive) = if (one.since, hive) <= (two.since, other) { (hive, other) } else { (other, hive) };
        let what = What::HiveSame { hive: hive.clone(), is: is.clone() };
        self.one(pen, today, &one.yard, what)
    }

    /// The care for a hive ends. `went` says where its traps went; none when they stay in it.
    ///
    /// # Errors
    /// As [`Book::check`].
    pub fn end_hive(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hive: &ThingId,
        how: Ending,
        went: Option<TrapsWent>,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(hive, day, today)?;
        let mut draft = Draft::new(self, pen);
        let traps: Vec<ThingId> = now.traps().map(|trap| trap.id.clone()).collect();
        if let Some(went) = went.filter(|_| !traps.is_empty()) {
            draft.bulk();
            draft.push(day, Some(&now.yard), What::TrapsOff { hive: hive.clone(), traps, went })?;
        }
        draft.push(day, Some(&now.yard), What::HiveEnded { hive: hive.clone(), how })?;
        self.holding(draft.done())
    }

    /// A hive taken back into care.
    ///
    /// # Errors
    /// [`Refusal::TagTaken`] when its tag was given to another hive meanwhile, [`Refusal::Future`],
    /// [`Refusal::Unknown`], [`Refusal::Nothing`] when it is in care.
    pub fn hive_back(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hive: &ThingId,
        letters: &impl Letters,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.standing().hives.get(hive).ok_or(Refusal::Unknown)?;
        if now.alive() {
            return Err(Refusal::Nothing);
        }
        self.tag_free(&now.yard, Some(hive), &now.tag, letters)?;
        self.about_yard(pen, day, today, &now.yard, What::HiveBack { hive: hive.clone() })
    }

    /// A hive that stood there earlier than its line says: the line is corrected, and boxes and traps come with it. The
    /// oil stays that of the day that was written first, so no due date moves.
    ///
    /// # Errors
    /// [`Refusal::Future`], [`Refusal::Unknown`], [`Refusal::Nothing`] when it is in the book since that day or longer.
    pub fn hive_since(&self, pen: &Pen, day: Day, today: Day, hive: &ThingId) -> Result<Vec<Entry>, Refusal> {
        let now = self.standing().hives.get(hive).ok_or(Refusal::Unknown)?;
        if day > today {
            return Err(Refusal::Future { today });
        }
        if day >= now.since {
            return Err(Refusal::Nothing);
        }
        let in_effect = self.log().in_effect();
        let (_, line) =
            in_effect.into_iter().find(|(root, _)| *root == hive.entry()).ok_or(Refusal::Unknown)?;
        let mut draft = Draft::new(self, pen);
        draft.correct(line, day, line.what.clone())?;
        self.holding(draft.done())
    }

    /// Whether `tag` may be given in `yard`, apart from the hive `except`.
    ///
    /// # Errors
    /// [`Refusal::TagTaken`] with a free one.
    pub fn tag_free(
        &self,
        yard: &ThingId,
        except: Option<&ThingId>,
        tag: &str,
        letters: &impl Letters,
    ) -> Result<(), Refusal> {
        let taken = |tag: &str| {
            let key = text::key(tag, letters);
            let mut others = self.standing().hives_of(yard, true).filter(|(id, _)| Some(*id) != except);
            others.any(|(_, hive)| text::key(&hive.tag, letters) == key)
        };
        if taken(tag) { Err(Refusal::TagTaken { free: text::suggest(taken, tag) }) } else { Ok(()) }
    }

    /// Whether no hive of `then`, the book as it would be, comes by a tag that another one carries meanwhile. Doubles that
    /// are here already, from another phone's book, stop nothing.
    ///
    /// # Errors
    /// [`Refusal::TagTaken`].
    pub(super) fn no_new_double(&self, then: &Book, letters: &impl Letters) -> Result<(), Refusal> {
        for (id, now) in &then.standing().hives {
            let was = self.standing().hives.get(id);
            let as_it_was = was.is_some_and(|was| was.alive() && was.yard == now.yard && was.tag == now.tag);
            if now.alive() && !as_it_was {
                then.tag_free(&now.yard, Some(id), &now.tag, letters)?;
            }
        }
        Ok(())
    }
}

/// Whether `what` says under which tag and in which yard a hive is, or whether it is in care: on another day, or struck
/// out, it can bring a tag back.
pub(super) fn renames(what: &What) -> bool {
    matches!(
        what,
        What::HiveEnded { .. } | What::HiveBack { .. } | What::HiveChanged { .. } | What::HiveMoved { .. }
    )
}
