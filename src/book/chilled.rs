//! Comb that waits for the freezer, and the batches in it.

use super::id::ThingId;
use super::record::Blank;
use super::standing::Standing;
use crate::almanac::day::Day;
use crate::almanac::freezer::KILLS_CELSIUS;

/// The mildest cold, °C, for which a time is published after which wax moth is dead in comb: 4.5 hours once it is cold
/// through (Charrière and Imdorf 1999, as Ellis and others 2013 give it).
pub const HARDLY_CELSIUS: f64 = -7.0;

/// Days for which a batch that came out too early is still told: larvae that live on in it have left by then (judgement).
const EARLY_DAYS: i32 = 14;

/// A batch that has not been taken out, or too early and lately.
#[derive(Clone, Debug, PartialEq)]
pub struct Batch {
    /// The day it was written for.
    pub day: Day,
    /// Frames in it.
    pub frames: u32,
    /// Since when it is cold inside, or from when it will be; none as long as nobody wrote it down.
    pub cold_since: Option<Day>,
    /// The first day on which it may come out whatever the hour; none as long as it is not known to be cold.
    pub out_on: Option<Day>,
    /// The day that was written for taking it out, if that is before `out_on`: planned, or done.
    pub early: Option<Day>,
    /// How cold the freezer is, °C.
    pub celsius: Option<f64>,
}

impl Batch {
    /// Warmer than what is known to kill every stage.
    pub fn too_warm(&self) -> bool {
        self.celsius.is_some_and(|celsius| celsius > KILLS_CELSIUS + 1e-9)
    }

    /// So warm that nothing is known to be killed at all.
    pub fn hardly_cold(&self) -> bool {
        self.celsius.is_some_and(|celsius| celsius > HARDLY_CELSIUS + 1e-9)
    }
}

/// What waits and what is in.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Chilled {
    /// Frames taken out of hives for the freezer.
    pub taken: u32,
    /// Frames in batches that did not wait on the day of the batch: comb from elsewhere, which stands for none that is
    /// taken out later.
    pub elsewhere: u32,
    /// Those that wait, from the newest back: hive, day and frames.
    pub from: Vec<(ThingId, Day, u32)>,
    /// Batches that are in, oldest first.
    pub within: Vec<Batch>,
}

impl Chilled {
    /// Frames that wait.
    pub fn waiting(&self) -> u32 {
        self.from.iter().fold(0, |sum: u32, (.., frames)| sum.saturating_add(*frames))
    }
}

/// By the whole book up to `today`, held cold for `hold` hours. The demonstration counts by itself: `demo` asks for it.
pub fn chilled(standing: &Standing, hold: u32, today: Day, demo: bool) -> Chilled {
    let mut all = Chilled::default();
    // The hour at which it was cold is not written down: the hours begin where that day ends.
    let days = i32::try_from(hold.div_ceil(24)).unwrap_or(i32::MAX).saturating_add(1);
    let until = |day: &Day| *day <= today;
    for (_, now) in standing.records_of(Blank::Comb) {
        let [hive] = &*now.record.hives else { continue };
        let own = hive.is_demo() == demo && until(&now.day) && now.record.word("to") == Some("freezer");
        let frames = super::combs::whole(&now.record, "frames", true).filter(|frames| own && *frames > 0);
        if let Some(frames) = frames {
            all.taken = all.taken.saturating_add(frames);
            all.from.push((standing.kept(hive).clone(), now.day, frames));
        }
    }
    for (id, now) in standing.records_of(Blank::Freezer) {
        if id.is_demo() != demo || !until(&now.day) {
            continue;
        }
        let record = &now.record;
        let frames = super::combs::whole(record, "frames", true).unwrap_or_default();
        // What was taken out first went in first; what was taken out after that day is not in it.
        let mut left = frames;
        for (_, _, waits) in all.from.iter_mut().take_while(|(_, day, _)| *day <= now.day) {
            let goes = left.min(*waits);
            *waits -= goes;
            left -= goes;
        }
        all.elsewhere = all.elsewhere.saturating_add(left);
        let cold_since = record.day("cold_since");
        let out_on = cold_since.map(|since| since.plus(days));
        let celsius = record.warmth("freezer").map(crate::almanac::warmth::Warmth::celsius);
        let out = record.day("out");
        let early = out.filter(|out| out_on.is_some_and(|on| *out < on));
        // One that came out too early may hold live larvae: that is said for as long as they would stay in the comb.
        let told = if early.is_some() { EARLY_DAYS } else { 0 };
        if out.is_some_and(|out| out.plus(told) <= today) {
            continue;
        }
        all.within.push(Batch { day: now.day, frames, cold_since, out_on, early, celsius });
    }
    all.from.retain(|(.., waits)| *waits > 0);
    all.from.reverse();
    all
}
