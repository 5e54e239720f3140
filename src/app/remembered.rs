//! What lies on the desk beside the book: what the app remembers of itself, and the entry in the making.

use super::cabinet::Cabinet;
use super::meta::Meta;
use super::records::Records;
use super::round::draft::Drafts;
use crate::store::headroom::Used;

impl Records {
    /// Changes what the app remembers of itself, as it lies there now: another tab may have changed another part of it. A
    /// phone that does not keep it loses a reminder, not a record.
    pub fn remember(self, change: impl FnOnce(&mut Meta)) {
        let mut meta = self.remembered();
        change(&mut meta);
        self.put_meta(meta);
    }

    fn remembered(self) -> Meta {
        self.cabinet.with_value(Cabinet::meta).unwrap_or_else(|| self.meta.get_untracked())
    }

    fn put_meta(self, meta: Meta) {
        self.cabinet.with_value(|cabinet| {
            if cabinet.meta().as_ref() != Some(&meta) {
                let _ = cabinet.keep_meta(&meta);
            }
        });
        self.meta.renew(meta);
    }

    /// What is half made. `own` is what this tab had before it was loaded anew.
    pub fn draft(self, own: Option<Drafts>) -> Drafts {
        self.half_made.try_update_value(|desk| desk.begin(own)).unwrap_or_default()
    }

    /// Keeps what is half made. A phone that does not keep it, or only shows the book, still has it on the screen.
    pub fn keep_draft(self, own: &Drafts) {
        if self.only_shows.get_untracked() {
            return;
        }
        self.half_made.try_update_value(|desk| {
            let _ = desk.keep(own);
        });
    }

    /// How full the phone's storage is, in per cent of what this page plans with.
    pub fn used(self) -> Option<u64> {
        self.cabinet.with_value(|cabinet| cabinet.used().ok().map(Used::per_cent))
    }

    /// Has this phone only show the book, or write again; false when it did not take that.
    pub fn set_only_shows(self, on: bool) -> bool {
        let _ = self.cabinet.with_value(|cabinet| cabinet.set_only_shows(on));
        self.wanted.renew(false);
        self.look_whether_it_shows();
        self.only_shows.get_untracked() == on
    }

    /// Another tab may have changed it.
    pub(super) fn look_whether_it_shows(self) {
        self.only_shows.renew(self.cabinet.with_value(Cabinet::only_shows));
    }

    /// Whether something may be written that is in no book, such as the label of the phone. Where it may not, the frame
    /// says so.
    pub fn may_write(self) -> bool {
        self.look_whether_it_shows();
        let may = !self.only_shows.get_untracked();
        self.wanted.renew(!may);
        may
    }
}
