//! How many hives to open, and what it proves when nothing was seen.
//!
//! Of the hives of a yard some are affected; those that are opened are drawn without looking. An affected hive that is
//! opened shows it with a chance below 1, each for itself. That makes the number of hives that show it hypergeometric,
//! thinned (Cameron & Baldock 1998, with a specificity of 1).

use super::quantity::Share;

/// A sum of products of thousands of shares is off by less than this.
const NOISE: f64 = 1e-9;

/// How likely it is to see nothing, hive by hive.
struct Opening {
    /// In place `k`: that of the hives opened so far `k` are affected and none was noticed.
    unseen: Vec<f64>,
    hives: u32,
    affected: u32,
    opened: u32,
    notice: f64,
}

impl Opening {
    fn new(hives: u32, affected: u32, notice: f64) -> Opening {
        Opening { unseen: vec![1.0], hives, affected, opened: 0, notice }
    }

    /// Opens one more of those that are still shut; there must be one.
    fn open(&mut self) {
        let shut = f64::from(self.hives - self.opened);
        if self.opened < self.affected {
            self.unseen.push(0.0);
        }
        // The affected that are still shut, and the share of what lay one place lower that moves up.
        let (mut left, mut from_below) = (f64::from(self.affected), 0.0);
        for unseen in &mut self.unseen {
            let is_affected = *unseen * left / shut;
            let stays = *unseen - is_affected;
            *unseen = stays + from_below;
            from_below = is_affected * (1.0 - self.notice);
            left -= 1.0;
        }
        self.opened += 1;
    }

    fn miss(&self) -> f64 {
        self.unseen.iter().sum()
    }
}

/// The chance, 0–1, that `opened` of `hives` hives, drawn by lot, show nothing when `affected` of them have it and each
/// that is opened shows it with the chance `notice`. More than there are count as all.
pub fn miss(hives: u32, affected: u32, opened: u32, notice: Share) -> f64 {
    let mut opening = Opening::new(hives, affected.min(hives), notice.fraction());
    for _ in 0..opened.min(hives) {
        opening.open();
    }
    opening.miss()
}

/// How many hives to open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ToOpen {
    /// Hives that are affected, at the least, when the share is: 1 up to all.
    pub affected: u32,
    /// Hives to open: the smallest number that reaches the certainty; all of them when none does.
    pub opened: u32,
    /// The chance to see at least one affected hive among them, 0–1.
    pub chance: f64,
    /// The chance with one hive fewer, 0–1: below what was wanted.
    pub before: f64,
    /// The chance when the same number is opened twice and every look is one for itself, 0–1. Of use where all are opened.
    pub twice: f64,
    /// The certainty is reached.
    pub reached: bool,
}

/// The smallest number of hives to open, drawn by lot, to be `sure` to see at least one affected hive when `share` of
/// `hives` is, rounded up to whole hives. Who wants to be sure altogether opens all. None when there is no hive or the share
/// is 0: then there is nothing to see.
pub fn to_open(hives: u32, share: Share, notice: Share, sure: Share) -> Option<ToOpen> {
    let affected = share_of(hives, share);
    if affected == 0 {
        return None;
    }
    let wanted = sure.fraction();
    let mut opening = Opening::new(hives, affected, notice.fraction());
    let (mut miss, mut before) = (1.0, 1.0);
    while opening.opened < hives && (1.0 - miss < wanted - NOISE || sure == Share::FULL) {
        before = miss;
        opening.open();
        miss = opening.miss();
    }
    Some(ToOpen {
        affected,
        opened: opening.opened,
        chance: 1.0 - miss,
        before: 1.0 - before,
        twice: 1.0 - miss * miss,
        reached: 1.0 - miss >= wanted - NOISE,
    })
}

/// So much of so many, rounded up; exact, since a share is counted in millionths of a per cent.
fn share_of(hives: u32, share: Share) -> u32 {
    let millionths = i64::from(hives) * share.percent().millionths();
    u32::try_from((millionths + 99_999_999) / 100_000_000).unwrap_or(hives)
}

/// The most hives that may be affected although `opened` of `hives`, drawn by lot, showed nothing: the largest number that
/// would have gone unseen with a chance of at least 1 − `sure`, from 0 to `hives`. All of them when nothing was opened.
pub fn at_most(hives: u32, opened: u32, notice: Share, sure: Share) -> u32 {
    let left = 1.0 - sure.fraction();
    let may = |affected| {
        let miss = miss(hives, affected, opened, notice);
        // Who wants to be sure altogether leaves out only what cannot go unseen.
        if sure == Share::FULL { miss > NOISE } else { miss >= left - NOISE }
    };
    // More affected hives are never missed more often.
    let (mut most, mut beyond) = (0, hives + 1);
    while beyond - most > 1 {
        let middle = most + (beyond - most) / 2;
        if may(middle) { most = middle } else { beyond = middle }
    }
    most
}
