//! Hives to open, and what it proves when none showed anything.

use super::draft::BenchDraft;
use super::read::{self, MOST_HIVES};
use crate::almanac::draw::draw;
use crate::almanac::quantity::Share;
use crate::almanac::sample::{ToOpen, at_most, to_open};
use crate::almanac::typed::{self, TypedError};

/// The answer.
#[derive(Clone, Debug, PartialEq)]
pub struct SampleSum {
    /// Hives in the yard.
    pub hives: u32,
    /// Share that is affected.
    pub share: Share,
    /// Chance that an affected hive shows it.
    pub notice: Share,
    /// How sure.
    pub sure: Share,
    /// How many to open; none when the share is 0.
    pub open: Option<ToOpen>,
    /// Hives opened, as typed, or else as many as are to be.
    pub opened: u32,
    /// So many may be affected all the same.
    pub at_most: u32,
    /// Those to open, counted along the walk, once they are drawn.
    pub drawn: Vec<u32>,
}

/// The answer to what stands in the fields; none while one of them cannot be read.
pub fn reckon(draft: &BenchDraft) -> Option<SampleSum> {
    read_all(draft).ok()
}

fn read_all(draft: &BenchDraft) -> Result<SampleSum, TypedError> {
    let hives = typed::count(draft.open_hives(), 1, MOST_HIVES)?;
    let share = typed::share(draft.open_share())?;
    let notice = typed::share(draft.open_notice())?;
    let sure = typed::share(draft.open_sure())?;
    let opened = read::maybe(typed::count(draft.open_opened(), 0, MOST_HIVES))?;
    let open = to_open(hives, share, notice, sure);
    let to_open = open.map_or(0, |open| open.opened);
    let opened = opened.unwrap_or(to_open).min(hives);
    let seed = draft.open_seed();
    let drawn = if seed.is_empty() { Vec::new() } else { draw(hives, to_open, seed) };
    let at_most = at_most(hives, opened, notice, sure);
    Ok(SampleSum { hives, share, notice, sure, open, opened, at_most, drawn })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn twenty_five_of_forty_and_as_many_opened_leave_three() {
        let sum = reckon(&BenchDraft::default()).unwrap();
        assert_eq!(sum.open.map(|open| (open.affected, open.opened)), Some((4, 25)));
        assert_eq!((sum.opened, sum.at_most), (25, 3));
        let fourteen = BenchDraft::default().with("open_opened", "14");
        assert_eq!(reckon(&fourteen).unwrap().at_most, 7);
        assert_eq!(reckon(&fourteen.with("open_notice", "100 %")).unwrap().at_most, 6);
    }

    #[test]
    fn nothing_is_drawn_until_it_is_asked_for() {
        assert!(reckon(&BenchDraft::default()).unwrap().drawn.is_empty());
        let drawn = reckon(&BenchDraft::default().with("open_seed", "k7")).unwrap().drawn;
        assert_eq!(drawn.len(), 25);
    }

    #[test]
    fn nothing_to_look_for_and_more_opened_than_there_are() {
        let none = reckon(&BenchDraft::default().with("open_share", "0 %")).unwrap();
        assert_eq!((none.open, none.opened, none.at_most), (None, 0, 40));
        assert_eq!(reckon(&BenchDraft::default().with("open_opened", "50")).unwrap().opened, 40);
        assert_eq!(reckon(&BenchDraft::default().with("open_hives", "0")), None);
    }
}
