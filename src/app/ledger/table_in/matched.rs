//! How the keeper reads the table that is open.

use crate::almanac::day::Day;
use crate::almanac::quantity::Share;
use crate::almanac::trap::{TrapForm, TrapKind, TrapSize};
use crate::almanac::typed;
use crate::app::edge::clock;
use crate::app::edge::letters::BrowserLetters;
use crate::app::edge::pause::when_rested;
use crate::app::graph::RwSignal;
use crate::app::records::Records;
use crate::app::wording::en_table_in as w;
use crate::book::Book;
use crate::book::entry::Did;
use crate::book::id::ThingId;
use crate::book::write::{KindChoice, Refusal, TableLine, TableTaken, TableTerms};
use crate::papers::table_in::Sheet;
use crate::papers::table_in::cells::Order;
use crate::papers::table_in::columns::{self, Column};
use crate::papers::table_in::lines::{self, Matching, RowError};
use std::rc::Rc;

/// Most boxes and traps that the steppers go to.
pub(super) const MOST: u32 = 9;

/// A table and the keeper's answers about it.
pub(super) struct Matched {
    pub(super) sheet: Rc<Sheet>,
    pub(super) header: RwSignal<bool>,
    pub(super) columns: RwSignal<Vec<Column>>,
    /// Asked for; what the table says itself goes before it.
    pub(super) order: RwSignal<String>,
    pub(super) yard: RwSignal<String>,
    /// The yard once its typing has rested: a whole table read at every key would hold the keys up.
    named: RwSignal<String>,
    pub(super) words: RwSignal<Vec<(String, Option<Did>)>>,
    pub(super) boxes: RwSignal<String>,
    pub(super) a_box: RwSignal<String>,
    /// By its id; empty for one described later.
    pub(super) kind: RwSignal<String>,
    pub(super) earlier: RwSignal<bool>,
}

/// What the table comes to as it is matched now.
pub(super) struct Read {
    pub(super) lines: Vec<TableLine>,
    /// Rows that cannot be read.
    pub(super) wrong: Vec<(usize, RowError)>,
    pub(super) taken: Result<TableTaken, Refusal>,
}

impl Read {
    /// Rows the book refuses.
    pub(super) fn refused(&self) -> &[(usize, Refusal)] {
        self.taken.as_ref().map(|taken| taken.refused.as_slice()).unwrap_or_default()
    }

    /// Whether that row is one of them.
    pub(super) fn refuses(&self, row: usize) -> bool {
        self.refused().iter().any(|(number, _)| *number == row)
    }
}

impl Matched {
    pub(super) fn new(records: Records, sheet: Rc<Sheet>) -> Rc<Matched> {
        let (yard, kind) = records.book.with_untracked(|book| {
            let mut own = book.standing().open_yards().filter(|(id, _)| !id.is_demo());
            let yard = own.next().map(|(_, yard)| yard.name.clone());
            let kind = kinds(book).first().map(|(id, _)| id.to_string());
            (yard.unwrap_or_default(), kind.unwrap_or_default())
        });
        let (yard, named) = (RwSignal::new(yard.clone()), RwSignal::new(yard));
        when_rested(move || yard.track(), move || rested(yard, named));
        Rc::new(Matched {
            header: RwSignal::new(columns::has_header(&sheet)),
            columns: RwSignal::new(columns::guess(&sheet)),
            order: RwSignal::new(String::new()),
            yard,
            named,
            words: RwSignal::new(Vec::new()),
            boxes: RwSignal::new("2".to_owned()),
            a_box: RwSignal::new("2".to_owned()),
            kind: RwSignal::new(kind),
            earlier: RwSignal::new(false),
            sheet,
        })
    }

    /// Nothing is waited for any longer: the table is taken in as the answers stand.
    pub(super) fn rest(&self) {
        rested(self.yard, self.named);
    }

    /// The answers. Tracks all that is asked.
    pub(super) fn matching(&self) -> Matching {
        Matching {
            header: self.header.get(),
            columns: self.columns.get(),
            order: self.order.with(|order| match order.as_str() {
                "day" => Some(Order::DayFirst),
                "month" => Some(Order::MonthFirst),
                _ => None,
            }),
            per_cent: columns::in_per_cent(&self.sheet),
            yard: self.named.get(),
            words: self.words.get(),
        }
    }

    /// What it comes to in `book`. Tracks all that is asked.
    pub(super) fn read(&self, records: Records, book: &Book, today: Day) -> Read {
        let (all, wrong) = lines::lines(&self.sheet, &self.matching(), &BrowserLetters);
        let number = |text: RwSignal<String>| text.with(|text| typed::count(text, 0, MOST).unwrap_or(2));
        let a_box = u8::try_from(number(self.a_box)).unwrap_or_default();
        let known = self.kind.with(|kind| ThingId::parse(kind).ok());
        let terms = TableTerms {
            kind: known.map_or_else(|| KindChoice::New(new_kind()), KindChoice::Known),
            boxes: vec![a_box; usize::try_from(number(self.boxes)).unwrap_or_default()],
            earlier: self.earlier.get(),
            zone: clock::own_zone(),
            today,
        };
        let taken = book.take_in_table(&records.pen(), &all, &terms, &BrowserLetters);
        Read { lines: all, wrong, taken }
    }
}

fn rested(yard: RwSignal<String>, named: RwSignal<String>) {
    let now = yard.get_untracked();
    if named.with_untracked(|named| *named != now) {
        named.set(now);
    }
}

/// The keeper's own kinds of trap that are on offer.
pub(super) fn kinds(book: &Book) -> Vec<(ThingId, String)> {
    let mut kinds = Vec::new();
    for (id, now) in &book.standing().kinds {
        if !id.is_demo() && !now.retired {
            kinds.push((id.clone(), now.kind.name.clone()));
        }
    }
    kinds
}

/// A kind of which nothing is known yet.
fn new_kind() -> TrapKind {
    TrapKind {
        name: w::KIND_NAME.to_owned(),
        form: TrapForm::BetweenFrame,
        reusable: false,
        capacity: None,
        inner: TrapSize::default(),
        outer: TrapSize::default(),
        fill: Share::HALF,
        max_days: 14,
        profile: Vec::new(),
        packs: Vec::new(),
    }
}
