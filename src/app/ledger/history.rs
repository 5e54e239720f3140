//! Which lines the history shows, in which order, and what became of each.

use crate::almanac::order::sort_by;
use crate::almanac::table::Table;
use crate::book::Book;
use crate::book::chain::Chains;
use crate::book::entry::{Entry, What};
use crate::book::id::{EntryId, ThingId};
use crate::book::standing::Double;

/// Lines shown at a time.
pub const PAGE: usize = 100;

/// Whether a line counts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Counts {
    /// It does.
    Yes,
    /// Struck out; striking out the strike brings back this many lines.
    Struck {
        /// The strike.
        by: EntryId,
        /// Lines it struck.
        lines: usize,
    },
    /// Another version of its line stands in for it.
    Corrected,
}

/// One line of the history.
#[derive(Clone, Debug, PartialEq)]
pub struct Line<'a> {
    /// Its name: that of its first version.
    pub root: &'a EntryId,
    /// What it says: the version that counts, or of a line that is struck out the last one that did.
    pub entry: &'a Entry,
    /// Whether it counts.
    pub counts: Counts,
    /// Lines written together with it, itself included; 1 for a line of its own.
    pub together: usize,
    /// Its other versions and what struck or brought it back, as they were written. A version that says something else
    /// and stands beside the one that counts is in `clash`.
    pub trail: Vec<Step<'a>>,
    /// What another phone says instead, for the keeper to decide.
    pub clash: Vec<&'a Entry>,
    /// It was struck out on one phone and corrected on another: the correction counts.
    pub revived: bool,
    /// It corrects a line that this book does not hold.
    pub orphan: bool,
    /// It may tell of the same work as another line.
    pub double: Option<Double>,
}

/// What else was written about a line.
#[derive(Clone, Debug, PartialEq)]
pub enum Step<'a> {
    /// Another version. With a strike: it was taken back by it, and the line stands without it.
    Version(&'a Entry, Option<EntryId>),
    /// A strike of the line, or one that struck out a strike of it.
    Strike(&'a Entry, Strike),
}

/// What a strike did.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Strike {
    /// Struck the line, or one of its versions, out.
    Out,
    /// Brought it back.
    Back,
}

/// The lines of everything, of a yard or of a hive, newest day first and the newest of a day first.
///
/// Versions of a line and strikes have no line of their own: they are in the trail of the line they are about. Strikes
/// of what this book does not hold are lines, so that every entry of the book is found. So are starts of a hive that
/// another one stands in for: each is found under its day, which is all that a start says anew.
pub fn lines<'a>(book: &'a Book, of: Option<&ThingId>) -> Vec<Line<'a>> {
    gathered(book, of, false)
}

/// Every version of every line as a line of its own, in the same order: for papers, which are read from day to day and
/// hide nothing that was written down.
pub fn versions(book: &Book) -> Vec<Line<'_>> {
    gathered(book, None, true)
}

fn gathered<'a>(book: &'a Book, of: Option<&ThingId>, apart: bool) -> Vec<Line<'a>> {
    let log = book.log();
    let chains = log.chains();
    let strikes = Strikes::of(book, &chains);
    let mut bulks: Table<&EntryId, usize> = Table::new();
    let mut corrections: Table<&EntryId, Vec<&'a Entry>> = Table::new();
    for entry in log.entries() {
        let root = chains.root(entry);
        if *root != entry.id {
            corrections.or_insert(root, Vec::new()).push(entry);
        } else if let Some(bulk) = &entry.bulk {
            *bulks.or_insert(bulk, 0) += 1;
        }
    }
    let seen = Seen { book, chains, strikes, bulks };
    let mut lines: Vec<Line<'a>> = Vec::new();
    let mut line = |root: &'a EntryId, first: Option<&'a Entry>, later: Option<Vec<&'a Entry>>| {
        let all = || first.into_iter().chain(later.iter().flatten().copied());
        if of.is_none_or(|of| all().any(|entry| about(book, root, entry, of))) {
            // A strike is in the trail of what it strikes.
            let versions: Vec<&Entry> =
                all().filter(|entry| !seen.strikes.homes.contains_key(&entry.id)).collect();
            seen.line(root, versions, apart, &mut lines);
        }
    };
    for entry in log.entries().filter(|entry| *seen.chains.root(entry) == entry.id) {
        let later = corrections.remove(&entry.id);
        line(&entry.id, Some(entry), later);
    }
    // Corrections of what this book does not hold.
    for (root, later) in corrections {
        line(root, None, Some(later));
    }
    sort_by(&mut lines, |a, b| (b.entry.day, &b.entry.id).cmp(&(a.entry.day, &a.entry.id)));
    lines
}

/// The book, looked through once for all its lines.
struct Seen<'a> {
    book: &'a Book,
    chains: Chains<'a>,
    strikes: Strikes<'a>,
    /// Lines of each bulk.
    bulks: Table<&'a EntryId, usize>,
}

impl<'a> Seen<'a> {
    /// Adds the line of that name with these versions; nothing without any.
    fn line(&self, root: &'a EntryId, versions: Vec<&'a Entry>, apart: bool, lines: &mut Vec<Line<'a>>) {
        let chains = &self.chains;
        let Some(entry) = present(chains, &versions) else { return };
        let struck = |by: &&EntryId| Counts::Struck {
            by: (*by).clone(),
            lines: self.strikes.homes.get(*by).map_or(1, Vec::len),
        };
        let line = |entry: &'a Entry, counts: Counts| Line {
            root,
            entry,
            counts,
            together: entry.bulk.as_ref().and_then(|bulk| self.bulks.get(bulk)).copied().unwrap_or(1),
            trail: Vec::new(),
            clash: Vec::new(),
            revived: false,
            orphan: false,
            double: None,
        };
        let mut own = line(entry, chains.struck.get(&entry.id).map_or(Counts::Yes, struck));
        for version in versions.into_iter().filter(|version| version.id != entry.id) {
            let by = chains.struck.get(&version.id);
            if apart || (by.is_none() && matches!(version.what, What::Hive { .. })) {
                lines.push(line(version, by.map_or(Counts::Corrected, struck)));
            } else if chains.is_head(version) && Chains::clash(entry, version) {
                own.clash.push(version);
            } else {
                let by = by.filter(|_| chains.is_head(entry));
                own.trail.push(Step::Version(version, by.map(|by| (*by).clone())));
            }
        }
        for strike in self.strikes.about.get(root).into_iter().flatten() {
            own.trail.push(Step::Strike(strike, self.strikes.kind(strike)));
        }
        sort_by(&mut own.trail, |a, b| a.entry().id.cmp(&b.entry().id));
        own.orphan = *root != entry.id && self.book.log().get(root).is_none();
        if own.counts == Counts::Yes {
            own.revived = own.clash.is_empty() && chains.revived(entry);
            own.double = doubt(self.book, entry, root).cloned();
        }
        lines.push(own);
    }
}

/// Of the lines shown, those of one day, each day once.
pub fn days<'a, 'b>(lines: &'b [Line<'a>]) -> impl Iterator<Item = &'b [Line<'a>]> {
    lines.chunk_by(|a, b| a.entry.day == b.entry.day)
}

impl<'a> Step<'a> {
    /// The entry.
    pub fn entry(&self) -> &'a Entry {
        let (Step::Version(entry, _) | Step::Strike(entry, _)) = self;
        entry
    }
}

/// What a line says: the head that counts, else the version that the last strike struck.
fn present<'a>(chains: &Chains<'a>, versions: &[&'a Entry]) -> Option<&'a Entry> {
    let mut present: Option<&'a Entry> = None;
    for version in versions.iter().copied() {
        present = Some(match present {
            Some(before) if chains.is_head(before) && chains.is_head(version) => {
                Chains::counts(before, version)
            }
            Some(before) if chains.is_head(before) => before,
            Some(before)
                if !chains.is_head(version)
                    && chains.struck.get(&before.id) > chains.struck.get(&version.id) =>
            {
                before
            }
            _ => version,
        });
    }
    present
}

/// Strikes, and the lines they are about.
struct Strikes<'a> {
    /// By strike: the roots of the lines it strikes out or brings back. Only strikes of something in this book.
    homes: Table<&'a EntryId, Vec<&'a EntryId>>,
    /// The other way round.
    about: Table<&'a EntryId, Vec<&'a Entry>>,
    /// Strikes that bring back: they strike a strike that struck something out. A strike of these strikes out again.
    back: Table<&'a EntryId, ()>,
}

impl<'a> Strikes<'a> {
    fn of(book: &'a Book, chains: &Chains<'a>) -> Strikes<'a> {
        let mut strikes = Strikes { homes: Table::new(), about: Table::new(), back: Table::new() };
        // Strikes look back: what one strikes is known by then.
        for strike in book.log().entries() {
            let What::Struck { entries } = &strike.what else { continue };
            let mut homes: Vec<&EntryId> = Vec::new();
            let mut home = |root: &'a EntryId| {
                if !homes.contains(&root) {
                    homes.push(root);
                }
            };
            let mut back = false;
            for target in entries {
                if let Some(again) = strikes.homes.get(target) {
                    again.iter().copied().for_each(&mut home);
                    back |= !strikes.back.contains_key(target);
                } else if let Some(target) = book.log().get(target) {
                    home(chains.root(target));
                }
            }
            if back {
                strikes.back.insert(&strike.id, ());
            }
            if homes.is_empty() {
                continue;
            }
            for root in &homes {
                strikes.about.or_insert(root, Vec::new()).push(strike);
            }
            strikes.homes.insert(&strike.id, homes);
        }
        strikes
    }

    fn kind(&self, strike: &Entry) -> Strike {
        if self.back.contains_key(&strike.id) { Strike::Back } else { Strike::Out }
    }
}

fn about(book: &Book, root: &EntryId, entry: &Entry, of: &ThingId) -> bool {
    let is = |hive: &ThingId| book.standing().kept(hive) == of;
    let own = match &entry.what {
        What::HiveMoved { to, .. } if to == of => true,
        // A start that was moved bears the name of the first one.
        What::Hive { .. } => is(&root.thing(0)),
        What::Record(record) => record.hives.iter().chain(record.named_hive()).any(is),
        _ => entry.concerns(of) || entry.hive().is_some_and(|hive| is(&hive)),
    };
    own || entry.yard.as_ref() == Some(of)
}

/// The pair of lines that `entry` may double.
fn doubt<'a>(book: &'a Book, entry: &Entry, root: &EntryId) -> Option<&'a Double> {
    let What::Check(work) = &entry.what else { return None };
    let hive = book.standing().hives.get(&work.hive)?;
    hive.doubles.iter().find(|double| double.lines.contains(root))
}

#[cfg(test)]
#[path = "history_tests.rs"]
mod tests;
