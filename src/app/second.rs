//! The second copy of the book and the tab that writes: what keeps [`Records`] from losing a line.
//!
//! A save is on the shelf when a tap is answered, and in the second copy a moment later. Only then the page says "saved".

use super::cabinet::{Cabinet, NotSaved};
use super::edge::{self, keeping, locks};
use super::reconcile::Reconciled;
use super::records::{Home, Records};
use super::unsaved::Unsaved;
use crate::app::graph::after;
use crate::store::second::{Ended, Second};
use wasm_bindgen_futures::spawn_local;

/// Times the two copies are compared anew, because another tab wrote or the database was closed, before it is given up
/// until the next save.
const TRIES: usize = 4;
/// In milliseconds: a database that has not answered by then counts as one that does not work.
const PATIENCE: u64 = 5_000;
/// In milliseconds from the first paint on: a tab that has not got the lock by then says that another one has it. A page
/// that is loaded anew gets it sooner, from the page it takes the place of. Counted from the start of the program a slow
/// phone would use up the time in reading its book, before the browser had a chance to answer.
const LOCK_WAIT: u64 = 400;

#[derive(Clone, Copy, Default, PartialEq, Eq)]
enum Work {
    /// Nobody.
    #[default]
    Rests,
    /// Somebody.
    Busy,
    /// Somebody who has waited for too long.
    Hangs,
}

/// What this tab knows of the second copy and of the other tabs.
#[derive(Default)]
pub(super) struct State {
    open: Option<Second>,
    /// The copies have been compared since the database was opened and since this tab writes.
    level: bool,
    /// Whether somebody is at work on it.
    work: Work,
    /// How often somebody has begun.
    turn: u32,
    /// This tab writes.
    ours: bool,
}

impl Records {
    /// Asks for the right to write, and from then on keeps the second copy level with the first. On a shelf that forgets
    /// there is nothing to be level with.
    pub(super) fn begin(self) {
        if matches!(self.home.get_untracked(), Home::Forgotten(_)) {
            return;
        }
        // Nobody has said yet which tab writes. What is saved before that would reach no second copy where it is another.
        self.cabinet.try_update_value(|cabinet| cabinet.set_elsewhere(true));
        edge::after_paint(move || {
            after(LOCK_WAIT, move || {
                if !self.second.with_value(|state| state.ours) {
                    self.theirs();
                }
            });
        });
        spawn_local(async move {
            while locks::hold(false, move || self.ours()).await {
                self.theirs();
            }
            // No locks here: every tab writes, and each looks at what lies there before it does.
            self.ours();
        });
    }

    /// Takes the right to write from the tab that has it.
    pub fn take_over(self) {
        spawn_local(async move {
            if locks::hold(true, move || self.ours()).await {
                self.theirs();
            }
        });
    }

    fn ours(self) {
        self.second.try_update_value(|state| {
            state.ours = true;
            state.level = false;
        });
        self.cabinet.try_update_value(|cabinet| cabinet.set_elsewhere(false));
        let reads = self.home.get_untracked() == Home::Elsewhere;
        if reads {
            self.home.set(Home::Kept);
            // What the other tab wrote before it let go. Mostly there was none, and a second look at ten seasons would
            // take as long as the start.
            self.refresh(Cabinet::catch_up);
        }
        let waits = |unsaved: &Option<Unsaved>| {
            unsaved.as_ref().is_some_and(|unsaved| unsaved.why == NotSaved::Elsewhere)
        };
        if reads || self.unsaved.with_untracked(waits) {
            self.try_again();
        }
        self.mirror();
    }

    fn theirs(self) {
        self.second.try_update_value(|state| state.ours = false);
        self.cabinet.try_update_value(|cabinet| cabinet.set_elsewhere(true));
        if self.home.get_untracked() == Home::Kept {
            self.home.set(Home::Elsewhere);
        }
    }

    /// Brings the second copy level with the first, beginning at once.
    pub(super) fn mirror(self) {
        let begins = self.second.try_update_value(|state| {
            let begins = state.ours && state.work == Work::Rests;
            if begins {
                (state.work, state.turn) = (Work::Busy, state.turn.wrapping_add(1));
            }
            begins.then_some(state.turn)
        });
        let Some(turn) = begins.flatten() else {
            if self.second.with_value(|state| state.work == Work::Hangs) {
                self.settle(false);
            }
            return;
        };
        spawn_local(async move {
            let level = self.bring_level().await.is_some();
            self.second.try_update_value(|state| state.work = Work::Rests);
            self.settle(level);
        });
        after(PATIENCE, move || {
            if self.second.with_value(|state| state.work == Work::Busy && state.turn == turn) {
                self.second.try_update_value(|state| state.work = Work::Hangs);
                self.settle(false);
            }
        });
    }

    async fn bring_level(self) -> Option<()> {
        for _ in 0..TRIES {
            let second = match self.second.with_value(|state| state.open.clone()) {
                Some(second) => second,
                None => Second::open().await?,
            };
            self.second.try_update_value(|state| state.open = Some(second.clone()));
            if !self.second.with_value(|state| state.level) {
                let Some(texts) = second.read().await else {
                    self.second.try_update_value(|state| state.open = None);
                    continue;
                };
                let level = self.lay_beside(texts);
                self.second.try_update_value(|state| state.level = level);
            }
            loop {
                // A newer version keeps its own second copy.
                if self.cabinet.with_value(Cabinet::read_only) {
                    return None;
                }
                let texts = self.cabinet.try_update_value(Cabinet::take_outbox)?;
                if texts.is_empty() {
                    return self.second.with_value(|state| state.level).then_some(());
                }
                let ended = second.write(&texts).await;
                if ended == Ended::Done {
                    continue;
                }
                self.cabinet.try_update_value(|cabinet| cabinet.put_back(texts));
                if ended == Ended::Refused {
                    return None;
                }
                self.second.try_update_value(|state| {
                    state.level = false;
                    if ended == Ended::Closed {
                        state.open = None;
                    }
                });
                break;
            }
        }
        None
    }

    /// Takes in what the second copy has and the first has not; false when the first did not take it, or could not be read.
    fn lay_beside(self, texts: Vec<(String, String)>) -> bool {
        let found = self.book.try_update_untracked(|book| {
            self.cabinet.try_update_value(|cabinet| cabinet.reconcile(book, texts))
        });
        let Some(Some(Ok(Reconciled { restored, asides, refused }))) = found else { return false };
        if restored > 0 {
            self.restored.update(|before| *before += restored);
            self.remember(|meta| meta.written = true);
            self.book.notify();
        }
        if !asides.is_empty() {
            self.asides.update(|known| {
                for aside in asides {
                    if !known.contains(&aside) {
                        known.push(aside);
                    }
                }
            });
        }
        if self.cabinet.with_value(Cabinet::read_only) {
            self.home.set(Home::ReadOnly);
        }
        !refused
    }

    /// Says whether everything lies in both places. With that it is known, too, whether a book is gone.
    fn settle(self, level: bool) {
        if self.twice.get_untracked() != Some(level) {
            self.twice.set(Some(level));
        }
        let nothing = self.book.with_untracked(|book| book.log().is_empty())
            && self.asides.with_untracked(Vec::is_empty);
        if nothing && self.meta.with_untracked(|meta| meta.written) {
            self.gone.set(true);
        }
    }

    /// Asks the browser to keep what is written here, once there is something to keep. Some ask the keeper, some decide by
    /// themselves.
    pub(super) fn ask_to_keep(self) {
        spawn_local(async move { self.promised.set(keeping::ask().await) });
    }
}
