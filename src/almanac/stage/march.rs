//! A stage from its beginning to its end, day by day.

use super::hive::Strength;
use super::rate::rate;
use super::weather::Weather;
use super::{Edge, Stage};
use crate::almanac::climate::place_of;
use crate::almanac::day::Day;
use crate::almanac::warmth::Span;

/// Days after which a march gives up: two years.
pub const LIMIT: u16 = 731;

/// Dry soil, from a day until the day it rained.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Dry {
    /// The first dry day.
    pub from: Day,
    /// The day of the rain, itself no longer dry. `None`: dry still.
    pub until: Option<Day>,
}

/// Days on which nothing developed, and why.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Held {
    /// Too cold for it.
    pub cold: u16,
    /// Too hot for it.
    pub hot: u16,
    /// In dry soil: of 3,000 larvae none came out (Ellis et al. 2004, Environ. Entomol.).
    pub dry: u16,
}

impl Held {
    /// Those of `steps`.
    pub fn of(steps: &[Step]) -> Held {
        let mut held = Held::default();
        for step in steps {
            if step.rate <= 0.0 {
                held.count(step.stage, step.span, step.dry);
            }
        }
        held
    }

    /// One more, and why.
    fn count(&mut self, stage: Stage, span: Option<Span>, dry: bool) -> Why {
        if dry {
            self.dry += 1;
            Why::DrySoil
        } else if span.is_none_or(|span| span.likely.mean().celsius() < stage.heat().0) {
            self.cold += 1;
            Why::TooCold
        } else {
            self.hot += 1;
            Why::TooHot
        }
    }
}

/// Why there is no date.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// It never gets warm enough.
    TooCold,
    /// It never gets cool enough.
    TooHot,
    /// Held in dry soil until it rains.
    DrySoil,
    /// It goes on for more than two years.
    NotInTwoYears,
    /// The hive came to its end before anything left it.
    HiveEnded,
}

/// When a stage ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct When {
    /// The day, rounded as its edge wants.
    pub day: Day,
    /// The same in days after 2000-01-01, unrounded: what the next stage starts from.
    pub time: f64,
    /// Days of the march on which nothing developed.
    pub held: Held,
}

impl When {
    /// `time`, as `edge` rounds it.
    pub fn at(time: f64, edge: Edge, held: Held) -> When {
        When { day: Day::FIRST.plus(edge.whole_days(time)), time, held }
    }
}

/// A date, or why there is none.
pub type Outcome = Result<When, Why>;

/// One day of a march, as it stands in the sum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// Which day.
    pub day: Day,
    /// What goes on.
    pub stage: Stage,
    /// The temperatures it was worked out from. `None` where they take no part.
    pub span: Option<Span>,
    /// Share of the stage that a whole such day does; 0 when held.
    pub rate: f64,
    /// Share of this day that counts: the stage may begin or end in the middle of it.
    pub part: f64,
    /// Share of the stage that is done by its end.
    pub sum: f64,
    /// The soil was dry.
    pub dry: bool,
}

/// Where stages run off: the yard's year, the hive and the dry days.
#[derive(Clone, Copy, Debug)]
pub struct Walk<'a> {
    /// The yard's year.
    pub weather: &'a Weather,
    /// Of the hive that eggs and larvae are in.
    pub strength: Strength,
    /// When the soil was dry.
    pub dry: &'a [Dry],
}

impl Walk<'_> {
    /// The end of `stage` that begins at `time` (days after 2000-01-01), at one edge. `held` goes on counting; each day is
    /// put down in `steps` where there are any.
    ///
    /// # Errors
    /// [`Why`] it does not end within two years.
    pub fn end_of(
        &self,
        stage: Stage,
        edge: Edge,
        time: f64,
        held: Held,
        steps: Option<&mut Vec<Step>>,
    ) -> Outcome {
        self.rest_of(stage, edge, time, 0.0, held, steps)
    }

    /// The same where `behind` (0–1) of the stage is done at `time`.
    ///
    /// # Errors
    /// As [`Walk::end_of`].
    pub fn rest_of(
        &self,
        stage: Stage,
        edge: Edge,
        time: f64,
        behind: f64,
        held: Held,
        mut steps: Option<&mut Vec<Step>>,
    ) -> Outcome {
        let mut held = held;
        let mut sum = behind;
        let mut at = time;
        let mut idle = 0;
        let mut last = Why::NotInTwoYears;
        let instant = stage.fixed_days().is_some_and(|days| edge.of(days) <= 0.0);
        if instant || behind >= 1.0 {
            return Ok(When::at(time, edge, held));
        }
        // Where no day changes it, it is worked out once.
        let strong = self.strength == Strength::Strong && stage != Stage::Soil;
        let flat = (strong || stage.fixed_days().is_some())
            .then(|| rate(stage, &self.strength.span(Span::default()), edge));
        for _ in 0..=LIMIT {
            // The sum of parts may stand a hair before midnight: that is no day of its own.
            let number = (at + 1e-9).floor();
            let day = Edge::Earliest.whole_days(number);
            let place = place_of(day);
            let dry = stage == Stage::Soil && self.is_dry(day);
            let rate = if dry { 0.0 } else { flat.unwrap_or_else(|| self.rate(stage, place, edge)) };
            let left = number + 1.0 - at;
            let done = sum + rate * left >= 1.0 - 1e-12;
            let part = if done { (1.0 - sum) / rate } else { left };
            sum += rate * part;
            if let Some(steps) = steps.as_deref_mut() {
                let day = Day::FIRST.plus(day);
                steps.push(Step { day, stage, span: self.span(stage, place), rate, part, sum, dry });
            }
            if done {
                return Ok(When::at(at + part, edge, held));
            }
            if rate > 0.0 {
                idle = 0;
                last = Why::NotInTwoYears;
            } else {
                idle += 1;
                last = held.count(stage, self.span(stage, place), dry);
            }
            at = number + 1.0;
        }
        Err(if idle >= 365 || last == Why::DrySoil { last } else { Why::NotInTwoYears })
    }

    fn rate(&self, stage: Stage, place: usize, edge: Edge) -> f64 {
        if stage == Stage::Soil {
            edge.of(self.weather.soil_rates(place))
        } else {
            self.strength.rate(stage, self.weather.air(place), edge)
        }
    }

    /// The temperatures that `stage` has at `place` of the year. `None` where they take no part.
    pub fn span(&self, stage: Stage, place: usize) -> Option<Span> {
        match stage {
            Stage::Egg | Stage::Larva => Some(self.strength.span(self.weather.air(place))),
            Stage::Soil => Some(self.weather.soil(place)),
            Stage::Wandering | Stage::BeforeLaying => None,
        }
    }

    fn is_dry(&self, day: i32) -> bool {
        self.dry
            .iter()
            .any(|dry| dry.from.number() <= day && dry.until.is_none_or(|until| day < until.number()))
    }
}
