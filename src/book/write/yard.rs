//! A yard and its hives, put into the book together.

use super::{Draft, Pen, Refusal};
use crate::almanac::day::Day;
use crate::almanac::quantity::Share;
use crate::almanac::stack::{self, BoxDepth, HiveSize, Spot};
use crate::almanac::text::Letters;
use crate::almanac::trap::TrapKind;
use crate::book::Book;
use crate::book::entry::{Entry, NewBox, NewTrap, What};
use crate::book::id::{EntryId, ThingId};

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

/// Most hives in one yard: the number this book is tested with.
pub const MOST_HIVES: usize = 500;

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
        // A hive without traps does not say of which kind they will be, and format 1 has no word for it: the kind is
        // written down once more beside the hives.
        let kept = self.standing().yards.get(yard).and_then(|yard| yard.kind.as_ref());
        if let KindChoice::Known(of) = kind
            && plan.filled.is_none()
            && kept != Some(of)
            && let Some(known) = self.standing().kinds.get(of)
        {
            let what = What::KindChanged { kind: of.clone(), now: known.kind.clone() };
            draft.push(plan.since, Some(yard), what)?;
        }
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
}
