//! Writing into the book: what the keeper wants done becomes entries, or a reason why not.

use super::Book;
use super::entry::{Check, Did, Ending, Entry, NewBox, NewTrap, PlacedTrap, SkipReason, TrapsWent, What};
use super::fold;
use super::id::{EntryId, ThingId, Writer};
use super::standing::{BoxNow, HiveNow};
use crate::almanac::day::{Day, Stamp};
use crate::almanac::quantity::Share;
use crate::almanac::stack::{self, BoxDepth, HiveSize, Spot};
use crate::almanac::text::{self, Letters};
use crate::almanac::trap::TrapKind;

/// Who writes, and when by the clock of the phone.
#[derive(Clone, Debug, PartialEq)]
pub struct Pen {
    /// This start of the page on this phone.
    pub writer: Writer,
    /// The phone's label, shown beside the entries.
    pub by: Option<String>,
    /// Now.
    pub at: Stamp,
}

/// Why something cannot be written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Refusal {
    /// The day lies after today.
    Future {
        /// Today in the yard.
        today: Day,
    },
    /// The day lies before the hive came into the book.
    BeforeHive {
        /// The hive's first day.
        since: Day,
    },
    /// Another living hive of the yard carries this tag.
    TagTaken {
        /// A tag that is free.
        free: String,
    },
    /// The hive is dead, sold, joined or gone: revive it, or it is the wrong hive.
    Ended {
        /// How.
        how: Ending,
        /// When.
        on: Day,
    },
    /// The hive stands in that yard already.
    SameYard,
    /// The box, trap, hive or yard was not there on that day.
    NotThereYet,
    /// Demonstration and own records do not mix.
    Demonstration,
    /// More hives than a yard holds in this book.
    TooManyHives {
        /// The cap.
        most: usize,
    },
    /// No trap was in the hive on that day: there is nothing the work could have been done to.
    NoTraps {
        /// Traps its boxes are meant to carry.
        wanting: u32,
    },
    /// To be moved, but not where to.
    NoYard,
    /// Nothing to do: no hive, no trap, no change.
    Nothing,
    /// Not in the book.
    Unknown,
}

/// What the keeper should be asked before a check is saved. None of it stops the save.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// "Topped up", but less oil after than before: swapped?
    Swapped,
    /// More oil found than was left: water or debris in it, or a service nobody logged.
    Rose {
        /// Level known before.
        from: Share,
    },
    /// A great many beetles.
    Many,
    /// This hive was logged on this day already.
    Twice,
    /// Other work on this hive carries a later day.
    Backdated,
}

/// Hives with one set of boxes, as they are put into the book together.
#[derive(Clone, Debug, PartialEq)]
pub struct HivePlan {
    /// One hive for each.
    pub tags: Vec<String>,
    /// Full hives or nucs.
    pub size: HiveSize,
    /// From the floor up: depth and traps wanted.
    pub boxes: Vec<(BoxDepth, u8)>,
    /// First day in the book.
    pub since: Day,
    /// Level the traps were filled to on that day; none when the traps are not in yet.
    pub filled: Option<Share>,
}

/// A kind of trap for a plan.
#[derive(Clone, Debug, PartialEq)]
pub enum KindChoice {
    /// Described now.
    New(TrapKind),
    /// In the book already.
    Known(ThingId),
}

/// Entries in the making: ids are given in order.
#[derive(Debug)]
pub struct Draft<'a> {
    pen: &'a Pen,
    next: u32,
    bulk: Option<EntryId>,
    entries: Vec<Entry>,
}

impl<'a> Draft<'a> {
    /// Starts after everything in `book`.
    pub fn new(book: &Book, pen: &'a Pen) -> Draft<'a> {
        Draft { pen, next: book.log().next_n(), bulk: None, entries: Vec::new() }
    }

    /// From here on every entry belongs to one bulk, undone together.
    pub fn bulk(&mut self) {
        self.bulk = EntryId::new(self.pen.writer.clone(), self.next).ok();
    }

    /// Writes one entry and returns its name.
    ///
    /// # Errors
    /// [`Refusal::Unknown`] when the counter has run out, which takes a thousand million entries.
    pub fn push(&mut self, day: Day, yard: Option<&ThingId>, what: What) -> Result<EntryId, Refusal> {
        let id = EntryId::new(self.pen.writer.clone(), self.next).map_err(|_| Refusal::Unknown)?;
        self.next += 1;
        self.entries.push(Entry {
            id: id.clone(),
            day,
            at: self.pen.at,
            by: self.pen.by.clone(),
            yard: yard.cloned(),
            replaces: None,
            bulk: self.bulk.clone(),
            what,
        });
        Ok(id)
    }

    /// The entries.
    pub fn done(self) -> Vec<Entry> {
        self.entries
    }
}

/// Most hives in one yard: the number this book is tested with.
pub const MOST_HIVES: usize = 500;

/// A count above which a keeper is asked once whether it is right.
const MANY: u32 = 999;

impl Book {
    /// A new yard with hives.
    ///
    /// # Errors
    /// [`Refusal::TooManyHives`], [`Refusal::Unknown`] for a kind that is not in the book.
    pub fn keep_yard(
        &self,
        pen: &Pen,
        name: &str,
        zone: &str,
        kind: &KindChoice,
        plan: &HivePlan,
    ) -> Result<Vec<Entry>, Refusal> {
        let mut draft = Draft::new(self, pen);
        draft.bulk();
        // The yard comes first: even the kind of trap is written on the page of the yard it came with.
        let what = What::Yard { name: name.to_owned(), zone: zone.to_owned() };
        let yard = EntryId::new(pen.writer.clone(), draft.next).map_err(|_| Refusal::Unknown)?.thing(0);
        draft.push(plan.since, Some(&yard), what)?;
        self.plan_hives(&mut draft, &yard, kind, plan)?;
        Ok(draft.done())
    }

    /// More hives in a yard.
    ///
    /// # Errors
    /// [`Refusal::TagTaken`] for the first tag that is in use, [`Refusal::TooManyHives`], [`Refusal::Unknown`].
    pub fn add_hives(
        &self,
        pen: &Pen,
        yard: &ThingId,
        kind: &KindChoice,
        plan: &HivePlan,
        letters: &impl Letters,
    ) -> Result<Vec<Entry>, Refusal> {
        if !self.standing().yards.contains_key(yard) {
            return Err(Refusal::Unknown);
        }
        if plan.tags.is_empty() {
            return Err(Refusal::Nothing);
        }
        for tag in &plan.tags {
            self.tag_free(yard, None, tag, letters)?;
        }
        let mut draft = Draft::new(self, pen);
        draft.bulk();
        self.plan_hives(&mut draft, yard, kind, plan)?;
        self.holding(draft.done())
    }

    fn plan_hives(
        &self,
        draft: &mut Draft<'_>,
        yard: &ThingId,
        kind: &KindChoice,
        plan: &HivePlan,
    ) -> Result<(), Refusal> {
        if self.standing().hives_of(yard, true).count() + plan.tags.len() > MOST_HIVES {
            return Err(Refusal::TooManyHives { most: MOST_HIVES });
        }
        let (id, takes_oil) = match kind {
            KindChoice::New(kind) => {
                let id = draft.push(plan.since, Some(yard), What::Kind(kind.clone()))?.thing(0);
                (id, kind.form.takes_oil())
            }
            KindChoice::Known(id) => {
                self.fill_of(id, yard)?;
                let known = self.standing().kinds.get(id).ok_or(Refusal::Unknown)?;
                (id.clone(), known.kind.form.takes_oil())
            }
        };
        let counts: Vec<u8> = plan.boxes.iter().map(|(_, wants)| *wants).collect();
        let spots = stack::stack_spots(&counts, plan.size);
        let boxes: Vec<NewBox> = plan
            .boxes
            .iter()
            .zip(&spots)
            .map(|((depth, wants), spots)| {
                let trap = |spot: &Spot| NewTrap {
                    spot: *spot,
                    kind: id.clone(),
                    level: plan.filled.filter(|_| takes_oil),
                };
                let traps = if plan.filled.is_some() { spots.iter().map(trap).collect() } else { Vec::new() };
                NewBox { depth: *depth, wants: *wants, traps }
            })
            .collect();
        for tag in &plan.tags {
            let what =
                What::Hive { yard: yard.clone(), tag: tag.clone(), size: plan.size, boxes: boxes.clone() };
            draft.push(plan.since, Some(yard), what)?;
        }
        Ok(())
    }

    /// Trap work on one hive.
    ///
    /// # Errors
    /// [`Refusal::Future`], [`Refusal::BeforeHive`], [`Refusal::Ended`], [`Refusal::Unknown`],
    /// [`Refusal::Nothing`] for a list of traps without a trap, [`Refusal::NoTraps`] for work on a hive without traps:
    /// only a look is possible there.
    pub fn check(&self, pen: &Pen, day: Day, today: Day, work: Check) -> Result<Vec<Entry>, Refusal> {
        let hive = self.in_care(&work.hive, day, today)?;
        if work.traps.as_ref().is_some_and(Vec::is_empty) {
            return Err(Refusal::Nothing);
        }
        if work.did != Did::AsFound && self.bare_on(&work.hive, hive, day) {
            return Err(Refusal::NoTraps { wanting: hive.wanting() });
        }
        let mut draft = Draft::new(self, pen);
        self.draft_check(&mut draft, day, hive, work)?;
        self.holding(draft.done())
    }

    /// Whether no trap hung in `hive` on `day`. What was taken out since then was there to be worked on.
    fn bare_on(&self, id: &ThingId, hive: &HiveNow, day: Day) -> bool {
        let bare = |hive: &HiveNow| hive.traps().next().is_none();
        let later = || self.log().entries().any(|entry| entry.day > day);
        bare(hive) && (!later() || fold::fold_until(self.log(), Some(day)).hives.get(id).is_none_or(bare))
    }

    /// The kind of trap that is put into a hive of `yard` when nobody says which: the one most of the yard's traps are
    /// of, else the one that was described last in this yard, else the only one there is.
    pub fn usual_kind(&self, yard: &ThingId) -> Option<ThingId> {
        let offered = |id: &ThingId| {
            let now = self.standing().kinds.get(id);
            id.is_demo() == yard.is_demo() && now.is_some_and(|now| !now.retired)
        };
        let traps = self.standing().hives_of(yard, true).flat_map(|(_, hive)| hive.traps());
        let mut known: Vec<(&ThingId, u32)> = Vec::new();
        for trap in traps.filter(|trap| offered(&trap.kind)) {
            match known.iter_mut().find(|(kind, _)| **kind == trap.kind) {
                Some((_, traps)) => *traps += 1,
                None => known.push((&trap.kind, 1)),
            }
        }
        if let Some((kind, _)) = known.into_iter().max_by_key(|(_, traps)| *traps) {
            return Some(kind.clone());
        }
        let mut kinds = self.standing().kinds.keys().filter(|id| offered(id));
        let here =
            |id: &&ThingId| self.log().get(id.entry()).is_some_and(|entry| entry.yard.as_ref() == Some(yard));
        let described = kinds.clone().rfind(here);
        match described {
            Some(kind) => Some(kind.clone()),
            None => kinds.next().filter(|_| kinds.next().is_none()).cloned(),
        }
    }

    /// One entry, or, where a top-up leaves kinds of trap at different levels, one for each level, undone together.
    fn draft_check(
        &self,
        draft: &mut Draft<'_>,
        day: Day,
        hive: &HiveNow,
        work: Check,
    ) -> Result<(), Refusal> {
        let fills = self.fills(hive);
        let one_level = !matches!(work.did, Did::ToppedUp | Did::Replaced);
        if work.traps.is_some() || work.after.is_some() || one_level || fills.len() < 2 {
            draft.push(day, Some(&hive.yard), What::Check(work))?;
            return Ok(());
        }
        if draft.bulk.is_none() {
            draft.bulk();
        }
        // The count is of the whole hive and is written down once.
        let mut count = work.count;
        for (level, traps) in fills {
            let part = Check { traps: Some(traps), after: level, count: count.take(), ..work.clone() };
            draft.push(day, Some(&hive.yard), What::Check(part))?;
        }
        Ok(())
    }

    /// The levels that a fill leaves in `hive`, each with the traps it is for; none for traps without oil.
    fn fills(&self, hive: &HiveNow) -> Vec<(Option<Share>, Vec<ThingId>)> {
        let mut fills: Vec<(Option<Share>, Vec<ThingId>)> = Vec::new();
        for trap in hive.traps() {
            let kind = self.standing().kinds.get(&trap.kind).map(|now| &now.kind);
            let level = kind.filter(|kind| kind.form.takes_oil()).map(|kind| kind.fill);
            match fills.iter_mut().find(|(known, _)| *known == level) {
                Some((_, traps)) => traps.push(trap.id.clone()),
                None => fills.push((level, vec![trap.id.clone()])),
            }
        }
        fills
    }

    /// A hive left for now.
    ///
    /// # Errors
    /// As [`Book::check`].
    pub fn skip(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hive: &ThingId,
        why: SkipReason,
        note: Option<String>,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(hive, day, today)?;
        self.one(pen, day, &now.yard, What::Skip { hive: hive.clone(), why, note })
    }

    /// The same trap work on several hives, each with an entry of its own, undone together.
    ///
    /// The level after is each trap kind's own fill, as for a single hive. Hives without traps are passed over.
    ///
    /// # Errors
    /// As [`Book::check`] for the first hive that cannot be logged; [`Refusal::Nothing`] when no hive is left.
    pub fn same_for_all(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hives: &[ThingId],
        did: Did,
    ) -> Result<Vec<Entry>, Refusal> {
        let mut draft = Draft::new(self, pen);
        draft.bulk();
        for id in hives {
            let hive = self.in_care(id, day, today)?;
            if self.bare_on(id, hive, day) {
                continue;
            }
            let work = Check {
                hive: id.clone(),
                traps: None,
                did,
                before: None,
                after: self.usual_level(hive, did),
                count: None,
                note: None,
            };
            self.draft_check(&mut draft, day, hive, work)?;
        }
        let entries = draft.done();
        if entries.is_empty() { Err(Refusal::Nothing) } else { self.holding(entries) }
    }

    /// The level that work leaves when the keeper does not say: the fill of the hive's kind of trap after a top-up or
    /// a replacement, unknown otherwise or when kinds with different fills hang in one hive.
    pub fn usual_level(&self, hive: &HiveNow, did: Did) -> Option<Share> {
        if !matches!(did, Did::ToppedUp | Did::Replaced) {
            return None;
        }
        let mut fills = hive
            .traps()
            .filter_map(|trap| self.standing().kinds.get(&trap.kind))
            .filter(|now| now.kind.form.takes_oil())
            .map(|now| now.kind.fill);
        let first = fills.next()?;
        fills.all(|fill| fill == first).then_some(first)
    }

    /// What to ask before `work` is saved.
    pub fn doubts(&self, day: Day, work: &Check) -> Vec<Doubt> {
        let mut doubts = Vec::new();
        let Some(hive) = self.standing().hives.get(&work.hive) else { return doubts };
        if work.did == Did::ToppedUp
            && let (Some(before), Some(after)) = (work.before, work.after)
            && after < before
        {
            doubts.push(Doubt::Swapped);
        }
        let named = |id: &ThingId| work.traps.as_ref().is_none_or(|traps| traps.contains(id));
        let known =
            hive.traps().filter(|trap| named(&trap.id)).filter_map(|trap| trap.level).map(|(_, level)| level);
        if let (Some(found), Some(from)) = (work.before, known.min())
            && found > from
        {
            doubts.push(Doubt::Rose { from });
        }
        if work.count.is_some_and(|count| count.low() > MANY) {
            doubts.push(Doubt::Many);
        }
        if let Some(last) = &hive.last {
            if last.day == day && last.did.is_some() && work.traps.is_none() {
                doubts.push(Doubt::Twice);
            }
            if last.day > day {
                doubts.push(Doubt::Backdated);
            }
        }
        doubts
    }

    /// Strikes entries out. Undoing is striking out; redoing is striking out the strike.
    ///
    /// # Errors
    /// [`Refusal::Unknown`] for an entry that is not here, [`Refusal::Nothing`] for none.
    pub fn strike(&self, pen: &Pen, today: Day, entries: &[EntryId]) -> Result<Vec<Entry>, Refusal> {
        let first = entries.first().ok_or(Refusal::Nothing)?;
        let yard = self.log().get(first).ok_or(Refusal::Unknown)?.yard.clone();
        if entries.iter().any(|id| self.log().get(id).is_none()) {
            return Err(Refusal::Unknown);
        }
        let mut draft = Draft::new(self, pen);
        draft.push(today, yard.as_ref(), What::Struck { entries: entries.to_vec() })?;
        let strike = draft.done();
        let renames = |id: &EntryId| {
            let what = self.log().get(id).map(|entry| &entry.what);
            matches!(
                what,
                Some(
                    What::HiveEnded { .. }
                        | What::HiveChanged { .. }
                        | What::HiveMoved { .. }
                        | What::Struck { .. }
                )
            )
        };
        // What comes back may carry a tag that was given to another hive meanwhile.
        if entries.iter().any(renames)
            && let Some(tag) = self.with(&strike).doubled_tag()
            && self.doubled_tag().is_none()
        {
            return Err(Refusal::TagTaken { free: text::suggest(|free| free == tag, &tag) });
        }
        Ok(strike)
    }

    /// The entries that are undone together with `id`: its bulk, or itself.
    pub fn together(&self, id: &EntryId) -> Vec<EntryId> {
        match self.log().get(id).and_then(|entry| entry.bulk.as_ref()) {
            Some(bulk) => {
                let same = |entry: &&Entry| entry.bulk.as_ref() == Some(bulk);
                self.log().entries().filter(same).map(|entry| entry.id.clone()).collect()
            }
            None => vec![id.clone()],
        }
    }

    /// Boxes put on a hive, with as many traps as each is to carry, filled today.
    ///
    /// The new boxes stand above `above` boxes; their traps take corners as that height asks for, and keep their own
    /// dates from here on.
    ///
    /// # Errors
    /// As [`Book::check`].
    #[allow(clippy::too_many_arguments)] // each is one answer of the form
    pub fn boxes_on(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hive: &ThingId,
        above: usize,
        boxes: &[(BoxDepth, u8)],
        kind: &ThingId,
        filled: bool,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(hive, day, today)?;
        let level = self.fill_of(kind, &now.yard)?;
        let above = above.min(now.boxes.len());
        let mut below: Vec<Spot> = spots_in(above.checked_sub(1).and_then(|at| now.boxes.get(at)));
        let mut new = Vec::with_capacity(boxes.len());
        for (index, (depth, wants)) in boxes.iter().enumerate() {
            let spots = stack::spots(above + index + 1, *wants, now.size, &below);
            let trap = |spot: &Spot| NewTrap { spot: *spot, kind: kind.clone(), level };
            let traps = if filled { spots.iter().map(trap).collect() } else { Vec::new() };
            new.push(NewBox { depth: *depth, wants: *wants, traps });
            below = spots;
        }
        let above = u8::try_from(above).unwrap_or(u8::MAX);
        self.one(pen, day, &now.yard, What::BoxesOn { hive: hive.clone(), above, boxes: new })
    }

    /// A box taken off, with a word on where its traps went.
    ///
    /// # Errors
    /// As [`Book::check`].
    pub fn box_off(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hive: &ThingId,
        part: &ThingId,
        traps: TrapsWent,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(hive, day, today)?;
        if !now.boxes.iter().any(|known| known.id == *part) {
            return Err(Refusal::Unknown);
        }
        self.one(pen, day, &now.yard, What::BoxOff { hive: hive.clone(), part: part.clone(), traps })
    }

    /// Traps put in wherever a box carries fewer than it is meant to, on the places that are free.
    ///
    /// # Errors
    /// As [`Book::check`]; [`Refusal::Nothing`] when no box wants a trap.
    pub fn traps_on(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        hive: &ThingId,
        kind: &ThingId,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(hive, day, today)?;
        let traps = self.missing_traps(now, kind)?;
        self.one(pen, day, &now.yard, What::TrapsOn { hive: hive.clone(), traps })
    }

    /// Traps put in as by [`Book::traps_on`] on a walk: `work` is the look that goes with it, undone together.
    ///
    /// # Errors
    /// As [`Book::traps_on`].
    pub fn traps_placed(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        kind: &ThingId,
        work: Check,
    ) -> Result<Vec<Entry>, Refusal> {
        let now = self.in_care(&work.hive, day, today)?;
        let traps = self.missing_traps(now, kind)?;
        let mut draft = Draft::new(self, pen);
        draft.bulk();
        draft.push(day, Some(&now.yard), What::TrapsOn { hive: work.hive.clone(), traps })?;
        draft.push(day, Some(&now.yard), What::Check(work))?;
        self.holding(draft.done())
    }

    /// Traps of `kind` for every place that wants one.
    fn missing_traps(&self, now: &HiveNow, kind: &ThingId) -> Result<Vec<PlacedTrap>, Refusal> {
        let level = self.fill_of(kind, &now.yard)?;
        let mut traps = Vec::new();
        let mut below: Vec<Spot> = Vec::new();
        for (index, part) in now.boxes.iter().enumerate() {
            let mut taken = spots_in(Some(part));
            let missing = usize::from(part.wants).saturating_sub(taken.len());
            // The first choice for the wanted number, then every other place of the box.
            let wanted = stack::spots(index + 1, part.wants, now.size, &below);
            let others = stack::spots(index + 1, now.size.places(), now.size, &below);
            let free: Vec<Spot> = wanted.into_iter().chain(others).collect();
            for spot in free {
                if taken.len() < usize::from(part.wants) && !taken.contains(&spot) {
                    taken.push(spot);
                }
            }
            let new = taken.iter().skip(taken.len() - missing.min(taken.len()));
            traps.extend(new.map(|spot| PlacedTrap {
                part: part.id.clone(),
                trap: NewTrap { spot: *spot, kind: kind.clone(), level },
            }));
            below = taken;
        }
        if traps.is_empty() { Err(Refusal::Nothing) } else { Ok(traps) }
    }

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

    /// One entry about a yard.
    ///
    /// # Errors
    /// [`Refusal::Future`], [`Refusal::Unknown`].
    pub fn about_yard(
        &self,
        pen: &Pen,
        day: Day,
        today: Day,
        yard: &ThingId,
        what: What,
    ) -> Result<Vec<Entry>, Refusal> {
        if day > today {
            return Err(Refusal::Future { today });
        }
        if !self.standing().yards.contains_key(yard) {
            return Err(Refusal::Unknown);
        }
        self.one(pen, day, yard, what)
    }

    /// One entry that belongs to no yard.
    ///
    /// # Errors
    /// [`Refusal::Unknown`] when the counter has run out.
    pub fn about_keeper(&self, pen: &Pen, today: Day, what: What) -> Result<Vec<Entry>, Refusal> {
        let mut draft = Draft::new(self, pen);
        draft.push(today, None, what)?;
        Ok(draft.done())
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
            let found = self.standing().hive_by_tag(yard, tag, |text| text::key(text, letters));
            found.is_some_and(|hive| Some(hive) != except)
        };
        if taken(tag) { Err(Refusal::TagTaken { free: text::suggest(taken, tag) }) } else { Ok(()) }
    }

    fn one(&self, pen: &Pen, day: Day, yard: &ThingId, what: What) -> Result<Vec<Entry>, Refusal> {
        let mut draft = Draft::new(self, pen);
        draft.push(day, Some(yard), what)?;
        self.holding(draft.done())
    }

    /// Lets entries pass that find everything they speak of on their day.
    ///
    /// Only what is dated before something else can miss: then the whole book is folded on trial, which takes as long
    /// as opening it and is seldom asked for.
    fn holding(&self, entries: Vec<Entry>) -> Result<Vec<Entry>, Refusal> {
        let on_top = entries.iter().all(|entry| self.log().would_be_last(entry));
        if !on_top && self.with(&entries).standing().orphans > self.standing().orphans {
            return Err(Refusal::NotThereYet);
        }
        Ok(entries)
    }

    /// The book as it would be with `entries`.
    fn with(&self, entries: &[Entry]) -> Book {
        let mut log = self.log().clone();
        for entry in entries {
            log.add(entry.clone());
        }
        Book::from_log(log)
    }

    /// A tag that two living hives of one yard carry, letter for letter.
    fn doubled_tag(&self) -> Option<String> {
        let hives = || self.standing().hives.values().filter(|hive| hive.alive());
        let twice = |hive: &&HiveNow| {
            hives().filter(|other| other.yard == hive.yard && other.tag == hive.tag).count() > 1
        };
        hives().find(twice).map(|hive| hive.tag.clone())
    }

    fn in_care(&self, hive: &ThingId, day: Day, today: Day) -> Result<&HiveNow, Refusal> {
        let now = self.standing().hives.get(hive).ok_or(Refusal::Unknown)?;
        if day > today {
            return Err(Refusal::Future { today });
        }
        if day < now.since {
            return Err(Refusal::BeforeHive { since: now.since });
        }
        match &now.ended {
            Some((how, on)) if *on <= day => Err(Refusal::Ended { how: how.clone(), on: *on }),
            _ => Ok(now),
        }
    }

    /// The level `kind` is filled to in `yard`; none without oil. The demonstration's kinds stay in its own yards: they
    /// go when it goes, and traps of a kind nobody knows are never due.
    fn fill_of(&self, kind: &ThingId, yard: &ThingId) -> Result<Option<Share>, Refusal> {
        if kind.is_demo() != yard.is_demo() {
            return Err(Refusal::Demonstration);
        }
        let known = &self.standing().kinds.get(kind).ok_or(Refusal::Unknown)?.kind;
        Ok(known.form.takes_oil().then_some(known.fill))
    }
}

fn spots_in(part: Option<&BoxNow>) -> Vec<Spot> {
    part.map_or_else(Vec::new, |part| part.traps.iter().map(|trap| trap.spot).collect())
}
