//! Correcting what was written, at any time, and deciding between two versions of it.

use super::hive::renames;
use super::work::none_fishes;
use super::{Draft, Pen, Refusal};
use crate::almanac::day::Day;
use crate::almanac::text::Letters;
use crate::book::Book;
use crate::book::entry::{Check, Did, Entry, What};
use crate::book::id::EntryId;
use crate::book::standing::{Checked, Double, HiveNow};

impl Book {
    /// `line` as it should have been written: on `day`, saying `what`. The old words stay in the history.
    ///
    /// A line that was corrected or struck out since it was shown is corrected all the same: both versions are kept,
    /// and the history says so.
    ///
    /// # Errors
    /// [`Refusal::Unknown`], [`Refusal::Nothing`] when the words stay what they are, [`Refusal::NotThereYet`] when
    /// something else in the book would miss what it speaks of, [`Refusal::TagTaken`] when a hive would come by a tag
    /// that another one carries; for work and skips as [`Book::check`].
    pub fn correct(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        line: &EntryId,
        what: What,
        letters: &impl Letters,
    ) -> Result<Vec<Entry>, Refusal> {
        let line = self.log().get(line).ok_or(Refusal::Unknown)?;
        if line.day == day && line.what == what {
            return Err(Refusal::Nothing);
        }
        // On the day it is for it stands already, though the colony may have ended later on that day, or `today`, as this
        // phone knows it, has not come as far.
        if day > today && day != line.day {
            return Err(Refusal::Future { today });
        }
        let care = |hive| {
            let hive = self.standing().kept(hive);
            if line.day == day {
                self.standing().hives.get(hive).ok_or(Refusal::Unknown)
            } else {
                self.in_care(hive, day, today)
            }
        };
        match &what {
            What::Check(work) => {
                let hive = care(&work.hive)?;
                if work.traps.as_ref().is_some_and(Vec::is_empty) {
                    return Err(Refusal::Nothing);
                }
                if work.did != Did::AsFound && self.bare_on(&work.hive, hive, day) {
                    return Err(Refusal::NoTraps { wanting: hive.wanting() });
                }
            }
            What::Skip { hive, .. } => {
                care(hive)?;
            }
            What::Record(record) => self.record_holds(record, day, today)?,
            _ => {}
        }
        let topped = match &what {
            What::Check(work) if work.did == Did::ToppedUp => Some((work.hive.clone(), work.traps.clone())),
            _ => None,
        };
        let was = matches!(&line.what, What::Check(work) if work.did == Did::ToppedUp);
        let mut draft = Draft::new(self, pen);
        self.correct_line(&mut draft, line, day, what)?;
        let mut entries = draft.done();
        self.file(&mut entries);
        let then = self.trial(&entries)?;
        // In the book as it would be: `line` itself may be what says that they are missing. Of work on one day nobody
        // knows which came first, so only what was so on an earlier one counts.
        if let Some((hive, traps)) = topped.filter(|_| !was)
            && let Some(then) = then.standing().hives.get(&hive)
            && none_fishes(then, traps.as_deref(), day.plus(-1))
        {
            return Err(Refusal::NoneFishes);
        }
        if renames(&line.what) {
            self.no_new_double(&then, letters)?;
        }
        Ok(entries)
    }

    /// Of the versions of a line that two phones wrote, `kept` is right: one more version says so in its words, and
    /// the others are struck out.
    ///
    /// Where two phones decide differently the two decisions are heads in their turn, and nothing is lost.
    ///
    /// # Errors
    /// [`Refusal::Unknown`], [`Refusal::Nothing`] when no other version stands, [`Refusal::NotThereYet`],
    /// [`Refusal::TagTaken`] as for [`Book::correct`].
    pub fn decide(
        &self,
        pen: &Pen,
        today: Day,
        kept: &EntryId,
        letters: &impl Letters,
    ) -> Result<Vec<Entry>, Refusal> {
        let line = self.log().get(kept).ok_or(Refusal::Unknown)?;
        let chains = self.log().chains();
        let mut heads = 0;
        // Whatever the kept one does not correct: behind a head that is struck out its own forerunner would stand up.
        let mut others: Vec<EntryId> = Vec::new();
        for other in chains.versions(line) {
            heads += usize::from(chains.is_head(other));
            if !chains.struck.contains_key(&other.id) && !chains.corrects(line, &other.id) {
                others.push(other.id.clone());
            }
        }
        others.retain(|other| other != kept);
        if heads < 2 || others.is_empty() {
            return Err(Refusal::Nothing);
        }
        let mut draft = Draft::new(self, pen);
        self.correct_line(&mut draft, line, line.day, line.what.clone())?;
        draft.push(today, line.yard.as_ref(), What::Struck { entries: others })?;
        let entries = draft.done();
        let then = self.trial(&entries)?;
        if renames(&line.what) {
            self.no_new_double(&then, letters)?;
        }
        Ok(entries)
    }

    /// Two lines that looked like one piece of work logged twice are two: both stand, each taken over by this writer.
    ///
    /// # Errors
    /// [`Refusal::Unknown`] when one of them does not count any more, [`Refusal::Nothing`] when nobody doubts them.
    pub fn both_right(&self, pen: &Pen, double: &Double) -> Result<Vec<Entry>, Refusal> {
        let in_effect = self.log().in_effect();
        let mut draft = Draft::new(self, pen);
        for name in &double.lines {
            let (_, line) = in_effect.iter().find(|(root, _)| *root == name).ok_or(Refusal::Unknown)?;
            let now = line.hive().and_then(|hive| self.standing().hives.get(&hive));
            if now.is_none_or(|now| !now.doubles.contains(double)) {
                return Err(Refusal::Nothing);
            }
            draft.correct(line, line.day, line.what.clone())?;
        }
        Ok(draft.done())
    }

    fn correct_line(&self, draft: &mut Draft<'_>, line: &Entry, day: Day, what: What) -> Result<(), Refusal> {
        if let What::Check(work) = &what {
            self.take_over(draft, day, &[work], Some(line))?;
        }
        draft.correct(line, day, what)
    }

    /// Takes over, in the name of who writes now, other work of that day that one of `works` may look like: it is in this
    /// book, so whoever writes now knows of it and was asked whether to write one more. What is doubtful already stays so,
    /// and the line that the work corrects is left out. All works of an act together: the log is gone through once.
    pub(super) fn take_over(
        &self,
        draft: &mut Draft<'_>,
        day: Day,
        works: &[&Check],
        corrects: Option<&Entry>,
    ) -> Result<(), Refusal> {
        let mut known: Option<Vec<(&EntryId, &Entry)>> = None;
        for work in works {
            let Some(now) = self.standing().hives.get(&work.hive) else { continue };
            if now.last.as_ref().is_none_or(|last| last.day < day) {
                continue;
            }
            let lines = known.get_or_insert_with(|| {
                let mut lines = self.log().in_effect();
                lines.retain(|(_, line)| line.day == day && matches!(line.what, What::Check(_)));
                lines
            });
            self.take_over_alike(draft, day, work, corrects, now, lines)?;
        }
        Ok(())
    }

    /// Of `lines`, the work of that day, takes over what may look like `work` on the hive that is `now` so.
    fn take_over_alike(
        &self,
        draft: &mut Draft<'_>,
        day: Day,
        work: &Check,
        corrects: Option<&Entry>,
        now: &HiveNow,
        lines: &[(&EntryId, &Entry)],
    ) -> Result<(), Refusal> {
        let new = Checked::new(day, draft.pen.writer.clone(), work, None);
        let mut same: Vec<(&EntryId, &Entry, &Check)> = Vec::new();
        for (root, line) in lines {
            if let What::Check(known) = &line.what
                && known.hive == work.hive
            {
                same.push((root, line, known));
            }
        }
        // Work in several lines goes by the name and the writer of its first one.
        let first = |line: &Entry| {
            let bulk = line.goes_on()?;
            same.iter().find(|(_, other, _)| other.bulk.as_ref() == Some(bulk)).copied()
        };
        let own = corrects
            .map(|line| first(line).map_or_else(|| self.log().chains().root(line), |(first, ..)| first));
        let mut taken: Vec<&EntryId> = Vec::new();
        for (root, line, known) in same.iter().copied() {
            let (piece, first) = first(line).map_or((root, line), |(root, first, _)| (root, first));
            let alike = Checked::new(day, first.id.writer().clone(), known, None).doubles(&new)
                && !now.doubles.iter().any(|double| double.lines.contains(piece));
            if alike && own != Some(piece) && !taken.contains(&piece) {
                taken.push(piece);
                draft.correct(first, day, first.what.clone())?;
            }
        }
        Ok(())
    }
}
