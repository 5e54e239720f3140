//! Half-made entries in several tabs of one phone.

use crate::phone::{Faults, Memory};
use beetle_almanac::app::half_made::HalfMade;
use beetle_almanac::app::round::draft::{Drafts, Typed};
use beetle_almanac::book::id::{EntryId, ThingId};
use proptest::prelude::*;
use std::rc::Rc;

fn hive(n: u32) -> ThingId {
    EntryId::parse(&format!("aa-{n}")).unwrap().thing(0)
}

/// What a tab has on its screen.
fn counted(at: &[(u32, &str)]) -> Drafts {
    let mut drafts = Drafts::default();
    for (n, count) in at {
        drafts.put(&hive(*n), Typed { count: (*count).to_owned(), ..Typed::default() });
        drafts.open = Some(hive(*n));
    }
    drafts
}

fn counts(drafts: &Drafts) -> Vec<(u32, String)> {
    let mut counts: Vec<_> = (1..9).filter_map(|n| Some((n, drafts.get(&hive(n))?.count.clone()))).collect();
    counts.sort();
    counts
}

fn tab(shelf: &Rc<Memory>) -> HalfMade {
    HalfMade::on(shelf.clone())
}

/// What a new tab finds.
fn left(shelf: &Rc<Memory>) -> Vec<(u32, String)> {
    counts(&tab(shelf).begin(None))
}

fn is(wanted: &[(u32, &str)]) -> Vec<(u32, String)> {
    wanted.iter().map(|(n, count)| (*n, (*count).to_owned())).collect()
}

#[test]
fn two_tabs_with_a_half_made_entry_each_leave_both_on_the_desk() {
    let shelf = Rc::new(Memory::new());
    let (mut one, mut two) = (tab(&shelf), tab(&shelf));
    one.begin(None);
    two.begin(None);
    one.keep(&counted(&[(1, "5")])).unwrap();
    two.keep(&counted(&[(2, "7")])).unwrap();
    one.keep(&counted(&[(1, "6")])).unwrap();
    assert_eq!(left(&shelf), is(&[(1, "6"), (2, "7")]));
    // Both have died: the next tab takes both over, and empties the desk when it has logged them.
    let mut three = tab(&shelf);
    let taken = three.begin(None);
    assert_eq!(taken.open, Some(hive(1)), "the panel that was typed in last");
    three.keep(&counted(&[(2, "7")])).unwrap();
    assert_eq!(left(&shelf), is(&[(2, "7")]));
    three.keep(&Drafts::default()).unwrap();
    assert_eq!(left(&shelf), is(&[]));
    assert_eq!(shelf.texts().len(), 2, "one slot, however many tabs there were");
}

#[test]
fn a_tab_that_is_loaded_anew_has_its_own_and_what_dead_tabs_have_left() {
    let shelf = Rc::new(Memory::new());
    let (mut one, mut two) = (tab(&shelf), tab(&shelf));
    one.begin(None);
    two.begin(None);
    one.keep(&counted(&[(1, "5"), (3, "1")])).unwrap();
    two.keep(&counted(&[(3, "9")])).unwrap();
    let own = tab(&shelf).begin(Some(counted(&[(3, "1")])));
    assert_eq!(counts(&own), is(&[(1, "5"), (3, "1")]), "its own at hive 3, whatever lies there");
    let own = tab(&shelf).begin(Some(Drafts::default()));
    assert_eq!((counts(&own), own.open), (is(&[(1, "5"), (3, "9")]), None), "its panel was shut");
}

#[test]
fn what_another_tab_has_logged_is_not_put_back_by_a_tab_that_took_it_over() {
    let shelf = Rc::new(Memory::new());
    let mut one = tab(&shelf);
    one.begin(None);
    one.keep(&counted(&[(1, "5")])).unwrap();
    let mut two = tab(&shelf);
    two.begin(None);
    one.keep(&Drafts::default()).unwrap();
    two.keep(&counted(&[(1, "5"), (2, "7")])).unwrap();
    assert_eq!(left(&shelf), is(&[(2, "7")]));
    // Changed there since, it is that tab's own.
    two.keep(&counted(&[(1, "8"), (2, "7")])).unwrap();
    assert_eq!(left(&shelf), is(&[(1, "8"), (2, "7")]));
}

#[test]
fn a_tab_with_nothing_begun_leaves_the_entry_that_another_tab_has_begun() {
    let shelf = Rc::new(Memory::new());
    let (mut one, mut two) = (tab(&shelf), tab(&shelf));
    one.begin(None);
    two.begin(None);
    one.keep(&counted(&[(1, "5")])).unwrap();
    two.keep(&Drafts::default()).unwrap();
    assert_eq!(left(&shelf), is(&[(1, "5")]));
    // Taken over, changed in the first tab, and logged in the second: the change stays.
    let mut three = tab(&shelf);
    three.begin(None);
    one.keep(&counted(&[(1, "6")])).unwrap();
    three.keep(&Drafts::default()).unwrap();
    assert_eq!(left(&shelf), is(&[(1, "6")]));
}

#[test]
fn the_phone_is_full_and_what_lay_there_lies_there_still() {
    let shelf = Rc::new(Memory::new());
    let mut one = tab(&shelf);
    one.begin(None);
    one.keep(&counted(&[(1, "5")])).unwrap();
    shelf.set_faults(Faults { quota: Some(0), ..Faults::default() });
    assert!(one.keep(&counted(&[(1, "6")])).is_err());
    shelf.set_faults(Faults::default());
    assert_eq!(left(&shelf), is(&[(1, "5")]));
    one.keep(&counted(&[(1, "6")])).unwrap();
    assert_eq!(left(&shelf), is(&[(1, "6")]));
}

proptest! {
    /// Each tab at hives of its own: whatever they type and log in turn, the desk holds what stands in all of them.
    #[test]
    fn tabs_at_different_hives_never_touch_each_other(
        steps in prop::collection::vec((0_usize..3, 0_u32..2, "[0-9]{0,2}"), 0..30)
    ) {
        let shelf = Rc::new(Memory::new());
        let mut tabs: Vec<(HalfMade, Drafts)> = (0..3).map(|_| (tab(&shelf), Drafts::default())).collect();
        for (which, nth, count) in steps {
            let (desk, own) = &mut tabs[which];
            let at = hive(u32::try_from(which).unwrap() * 2 + nth + 1);
            own.put(&at, Typed { count, ..Typed::default() });
            desk.keep(own).unwrap();
        }
        let mut all: Vec<_> = tabs.iter().flat_map(|(_, own)| counts(own)).collect();
        all.sort();
        prop_assert_eq!(left(&shelf), all);
    }
}
