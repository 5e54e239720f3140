//! How much of their comb the bees cover.

/// From this share on nothing needs doing (judgement, no source). In twentieths, so that 18 of 20 sides is enough to
/// the letter.
pub const ENOUGH_TWENTIETHS: u32 = 18;
/// Below this share comb is given that the bees cannot guard (judgement, no source).
pub const LITTLE_TWENTIETHS: u32 = 14;

/// How well bees cover the comb of a hive.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Guard {
    /// Nine tenths or more.
    Well,
    /// Seven to nine tenths.
    Watch,
    /// Less.
    Little,
}

/// The answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cover {
    /// Sides covered ÷ sides there are, 0 or more; above 1 where more were told of than there are.
    pub share: f64,
    /// What that means.
    pub guard: Guard,
    /// Boxes to take off until nine tenths are covered; none when even the last box is too large for them, or nothing needs
    /// doing.
    pub off: Option<u32>,
    /// The share once they are off, as [`Cover::share`]; that one where none are.
    pub then: f64,
}

/// Cover of `frames` of drawn comb of which bees cover `sides` sides, in boxes of `a_box` frames. The last box stays. None
/// without comb, or when a box holds none.
pub fn cover(sides: u32, frames: u32, a_box: u32) -> Option<Cover> {
    if frames == 0 || a_box == 0 {
        return None;
    }
    let (sides_20, guarded) = (u64::from(sides) * 20, |frames: u32| u64::from(frames) * 2);
    let reaches = |frames: u32, twentieths: u32| sides_20 >= guarded(frames) * u64::from(twentieths);
    let share = |frames: u32| f64::from(sides) / (2.0 * f64::from(frames));
    let guard = if reaches(frames, ENOUGH_TWENTIETHS) {
        Guard::Well
    } else if reaches(frames, LITTLE_TWENTIETHS) {
        Guard::Watch
    } else {
        Guard::Little
    };
    let (mut off, mut left) = (0, frames);
    while !reaches(left, ENOUGH_TWENTIETHS) && left > a_box {
        off += 1;
        left -= a_box;
    }
    let enough = off > 0 && reaches(left, ENOUGH_TWENTIETHS);
    let then = if enough { share(left) } else { share(frames) };
    Some(Cover { share: share(frames), guard, off: enough.then_some(off), then })
}
