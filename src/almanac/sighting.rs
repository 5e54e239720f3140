//! From what the keeper saw to dates: when larvae may leave the hive, young adults come and lay.

use super::day::Day;
use super::stage::{Edge, Held, Outcome, Stage, Step, Walk, When, Why};

/// What was seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seen {
    /// Beetles and no larvae. Eggs may be laid from that day on.
    AdultsOnly,
    /// Larvae of a few millimetres: 1 to 4 days old.
    TinyLarvae,
    /// Larvae of about 10 mm: they leave within 2 days.
    FullGrown,
    /// Slime, or larvae at the entrance: some may have left up to 3 days ago, others leave within 2 days.
    Leaving,
    /// Larvae in the soil: there since any day up to one soil stage ago.
    InSoil,
}

impl Seen {
    /// Larvae were seen outside the comb.
    pub fn outside(self) -> bool {
        matches!(self, Seen::Leaving | Seen::InSoil)
    }
}

/// A sighting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Sighting {
    /// What.
    pub seen: Seen,
    /// When.
    pub day: Day,
    /// The hive came to its end on this day (split up or dead): what had not left it by then stays.
    pub ended: Option<Day>,
}

/// What may come of a sighting, each in the order of [`Edge::ALL`].
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dates {
    /// Larvae leave the hive. `None` where they had left when they were seen.
    pub leaving: Option<[Outcome; 3]>,
    /// Young adults come out of the soil.
    pub adults: [Outcome; 3],
    /// And lay their first eggs.
    pub eggs: [Outcome; 3],
}

/// Days after which eggs are laid where adults alone were seen: that day; three days; a week, the time in which a young
/// adult comes to lay. Judgement: bees can keep them from laying for longer, so all these dates hold if they lay.
const LAID: [f64; 3] = [0.0, 3.0, 7.0];
/// Age of tiny larvae in days, judgement.
const AGE: [f64; 3] = [4.0, 2.5, 1.0];
/// Days from the sight of larvae outside to the one that counts: 3 days ago at the earliest, 2 days on at the latest.
const LEFT: [f64; 3] = [-3.0, 0.0, 2.0];
/// Share of the soil stage that is behind larvae seen in the soil: all, half, nothing.
const BEHIND: [f64; 3] = [1.0, 0.5, 0.0];

impl Sighting {
    /// What comes of it.
    pub fn dates(&self, walk: &Walk) -> Dates {
        let mut dates = Dates {
            leaving: (self.seen != Seen::InSoil).then_some([Err(Why::HiveEnded); 3]),
            adults: [Err(Why::HiveEnded); 3],
            eggs: [Err(Why::HiveEnded); 3],
        };
        for edge in Edge::ALL {
            let place = edge.place();
            let left = self.left(walk, edge, None);
            if let Some(slot) = dates.leaving.as_mut().and_then(|leaving| leaving.get_mut(place)) {
                *slot = left;
            }
            let adults = left.and_then(|left| self.out_of_soil(walk, edge, left, None));
            if let Some(slot) = dates.adults.get_mut(place) {
                *slot = adults;
            }
            if let Some(slot) = dates.eggs.get_mut(place) {
                *slot =
                    adults.and_then(|out| walk.end_of(Stage::BeforeLaying, edge, out.time, out.held, None));
            }
        }
        dates
    }

    /// Each day of the march to the first eggs at one edge: the sum behind [`Sighting::dates`].
    pub fn steps(&self, walk: &Walk, edge: Edge) -> Vec<Step> {
        let mut steps = Vec::new();
        if let Ok(left) = self.left(walk, edge, Some(&mut steps))
            && let Ok(out) = self.out_of_soil(walk, edge, left, Some(&mut steps))
        {
            // Where it ends is in the last step.
            let _ = walk.end_of(Stage::BeforeLaying, edge, out.time, out.held, Some(&mut steps));
        }
        steps
    }

    /// When larvae leave the hive, at its end at the latest; for those in the soil, when they were seen.
    fn left(&self, walk: &Walk, edge: Edge, mut steps: Option<&mut Vec<Step>>) -> Outcome {
        let left = self.march(walk, edge, steps.as_deref_mut());
        let Some(ended) = self.ended.filter(|_| self.seen != Seen::InSoil) else { return left };
        let last = f64::from(ended.number());
        if left.is_ok_and(|left| left.time <= last) {
            return left;
        }
        // Whatever the march would have come to, it breaks off there.
        let mut own = Vec::new();
        let steps = if let Some(steps) = steps {
            steps
        } else {
            let _ = self.march(walk, edge, Some(&mut own));
            &mut own
        };
        while steps.last().is_some_and(|step| step.day >= ended) {
            steps.pop();
        }
        if edge != Edge::Earliest && self.left(walk, Edge::Earliest, None).is_ok() {
            Ok(When::at(last, edge, Held::of(steps)))
        } else {
            Err(Why::HiveEnded)
        }
    }

    /// The same in a hive that goes on.
    fn march(&self, walk: &Walk, edge: Edge, mut steps: Option<&mut Vec<Step>>) -> Outcome {
        let day = f64::from(self.day.number());
        let fresh = Held::default();
        match self.seen {
            Seen::AdultsOnly => {
                let hatched =
                    walk.end_of(Stage::Egg, edge, day + edge.of(LAID), fresh, steps.as_deref_mut())?;
                let grown =
                    walk.end_of(Stage::Larva, edge, hatched.time, hatched.held, steps.as_deref_mut())?;
                walk.end_of(Stage::Wandering, edge, grown.time, grown.held, steps)
            }
            Seen::TinyLarvae => {
                // No larva grows up in four days, so this ends after the day on which they were tiny.
                let grown =
                    walk.end_of(Stage::Larva, edge, day - edge.of(AGE), fresh, steps.as_deref_mut())?;
                walk.end_of(Stage::Wandering, edge, grown.time, grown.held, steps)
            }
            Seen::FullGrown => walk.end_of(Stage::Wandering, edge, day, fresh, steps),
            Seen::Leaving => Ok(When::at(day + edge.of(LEFT), edge, fresh)),
            Seen::InSoil => Ok(When::at(day, edge, fresh)),
        }
    }

    fn out_of_soil(&self, walk: &Walk, edge: Edge, left: When, steps: Option<&mut Vec<Step>>) -> Outcome {
        let behind = if self.seen == Seen::InSoil { edge.of(BEHIND) } else { 0.0 };
        walk.rest_of(Stage::Soil, edge, left.time, behind, left.held, steps)
    }
}

impl Dates {
    /// What both may come to: from the first of the earlier to the last of the later.
    #[must_use]
    pub fn or(&self, other: &Dates) -> Dates {
        Dates {
            leaving: match (self.leaving, other.leaving) {
                (Some(one), Some(two)) => Some(both(one, two)),
                (one, two) => one.or(two),
            },
            adults: both(self.adults, other.adults),
            eggs: both(self.eggs, other.eggs),
        }
    }
}

/// The earlier of both first and likely outcomes, the later of both last ones. A date comes before a reason why not;
/// the last of a date and a reason is the reason: how late it may get is not known then. But a hive that came to its
/// end adds nothing.
fn both(one: [Outcome; 3], two: [Outcome; 3]) -> [Outcome; 3] {
    let ended = |three: [Outcome; 3]| matches!(three, [Err(Why::HiveEnded), ..]);
    if ended(one) {
        return two;
    }
    if ended(two) {
        return one;
    }
    let ([first, likely, last], [others, other, others_last]) = (one, two);
    [pick(first, others, false), pick(likely, other, false), pick(last, others_last, true)]
}

fn pick(one: Outcome, two: Outcome, later: bool) -> Outcome {
    let second = match (one, two) {
        (Ok(one), Ok(two)) => (two.time > one.time) == later,
        (one, two) => (one.is_ok() && two.is_err()) == later,
    };
    if second { two } else { one }
}
