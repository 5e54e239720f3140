//! Where in the page the keeper is, as it stands in the address after `#`.

use super::bench::Sum;
use crate::book::record::Blank;

/// The keys of the bottom bar, in its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section {
    /// What each hive needs now.
    Round,
    /// What to carry and buy.
    Load,
    /// What the beetles do between visits.
    Beetle,
    /// Quick sums.
    Bench,
    /// What happened.
    Book,
}

impl Section {
    /// Every section, in the order of the bar.
    pub const ALL: [Section; 5] =
        [Section::Round, Section::Load, Section::Beetle, Section::Bench, Section::Book];

    /// The place its key leads to.
    pub fn place(self) -> Place {
        match self {
            Section::Round => Place::Round,
            Section::Load => Place::Load,
            Section::Beetle => Place::Beetle(None),
            Section::Bench => Place::Bench(None),
            Section::Book => Place::Book,
        }
    }
}

/// A place in the page. Prints as and parses from the part of the address after `#`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Place {
    /// All yards.
    Round,
    /// One yard, by its id.
    Yard(String),
    /// One hive, by its id.
    Hive(String),
    /// The decisions of a yard, by its id; one question when the address names it.
    Decide(String, Option<Question>),
    /// What to carry and buy.
    Load,
    /// What the beetles do now; one of the clocks when the address names it.
    Beetle(Option<Clock>),
    /// Quick sums; one of them when the address names it.
    Bench(Option<Sum>),
    /// Backup, restore, this phone; the way to the others of its section.
    Book,
    /// Every line of the book; of one yard or hive when the address names it.
    History(Option<String>),
    /// The kinds of trap.
    Kinds,
    /// One kind of trap, by its id; `new` describes one more.
    Kind(String),
    /// Records of what was seen and done beside the traps.
    Records,
    /// The form of a record: of a hive, a yard or a line to correct when the address names one.
    Write(Blank, Option<String>),
    /// Hives for another phone; those of one yard when the address names it.
    HandOver(Option<String>),
    /// Is the catch getting better? Of one yard when the address names it.
    Catch(Option<String>),
    /// Trials of the keeper's own; of one yard when the address names it.
    Trial(Option<String>),
    /// What another phone hands over.
    TakeIn,
    /// A table that was kept elsewhere comes in.
    TableIn,
    /// A sheet for printing; of one yard, or one lot, when the address names it.
    Paper(Paper, Option<String>),
}

/// What is decided in a yard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Question {
    /// What closes its hives up.
    Close,
    /// How many of them to open.
    Open,
    /// Whether bees cover the comb: boxes off, joining, splitting.
    Comb,
    /// The ground round them.
    Ground,
    /// Comb for the freezer.
    Freezer,
}

impl Question {
    /// Every one, in the order in which they are offered.
    pub const ALL: [Question; 5] =
        [Question::Close, Question::Open, Question::Comb, Question::Ground, Question::Freezer];

    /// Its name in the address.
    fn slug(self) -> &'static str {
        match self {
            Question::Close => "close",
            Question::Open => "open",
            Question::Comb => "comb",
            Question::Ground => "ground",
            Question::Freezer => "freezer",
        }
    }
}

/// What the Beetle reckons.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Clock {
    /// From what was seen to the days on which beetles leave the hive and come back.
    Dates,
    /// A year of a yard: when the soil lets beetles through, and how many generations.
    Season,
    /// How many broods the looks would have seen.
    Rhythm,
    /// Supers off the hives, and the hours they have.
    Honey,
}

impl Clock {
    /// Every one, in the order in which they are offered.
    pub const ALL: [Clock; 4] = [Clock::Dates, Clock::Season, Clock::Rhythm, Clock::Honey];

    /// Its name in the address.
    fn slug(self) -> &'static str {
        match self {
            Clock::Dates => "dates",
            Clock::Season => "season",
            Clock::Rhythm => "rhythm",
            Clock::Honey => "honey",
        }
    }
}

/// Sheets for printing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// What to load, and the hives of a yard with room for the pen.
    Truck,
    /// A card for under the lid of each hive.
    Cards,
    /// What an inspector wants to see.
    Record,
    /// What a season came to in a yard.
    Season,
    /// A harvest lot, for whoever buys the honey; the lot of a line when the address names one.
    Lot,
}

impl Paper {
    /// Every sheet.
    pub const ALL: [Paper; 5] = [Paper::Truck, Paper::Cards, Paper::Record, Paper::Season, Paper::Lot];

    /// Its name in the address.
    fn slug(self) -> &'static str {
        match self {
            Paper::Truck => "truck-sheet",
            Paper::Cards => "hive-cards",
            Paper::Record => "inspector",
            Paper::Season => "season",
            Paper::Lot => "lot",
        }
    }
}

impl Place {
    /// Reads `#/round`, `#/round/<yard>`, `#/hive/<id>`, `#/decide/<yard>`, `#/decide/<yard>/<question>`, `#/load`, `#/beetle`, `#/beetle/<clock>`, `#/bench`, `#/bench/<sum>`, `#/book`,
    /// `#/book/history`, `#/book/history/<id>`, `#/book/kinds`, `#/book/kinds/<id>`, `#/book/records`, `#/book/table`,
    /// `#/book/hand-over`, `#/book/hand-over/<yard>`, `#/book/take-in`, `#/book/catch`, `#/book/catch/<yard>`,
    /// `#/book/trial`, `#/book/trial/<yard>`, `#/book/<sheet>`, `#/book/<sheet>/<yard>`,
    /// `#/write/<blank>`, `#/write/<blank>/<id>`; anything else names no place.
    pub fn parse(hash: &str) -> Option<Place> {
        let mut parts = hash.strip_prefix('#').unwrap_or(hash).strip_prefix('/')?.split('/');
        let (head, rest, last, end) = (parts.next()?, parts.next(), parts.next(), parts.next());
        if end.is_some() || (last.is_some() && !matches!(head, "book" | "write" | "decide")) {
            return None;
        }
        match (head, rest) {
            ("round", None) => Some(Place::Round),
            ("round", Some(yard)) => id(yard).map(Place::Yard),
            ("hive", Some(hive)) => id(hive).map(Place::Hive),
            ("decide", Some(yard)) => {
                let asked = match last {
                    Some(name) => Some(Question::ALL.into_iter().find(|asked| asked.slug() == name)?),
                    None => None,
                };
                id(yard).map(|yard| Place::Decide(yard, asked))
            }
            ("load", None) => Some(Place::Load),
            ("beetle", None) => Some(Place::Beetle(None)),
            ("beetle", Some(name)) => {
                let clock = Clock::ALL.into_iter().find(|clock| clock.slug() == name)?;
                Some(Place::Beetle(Some(clock)))
            }
            ("bench", None) => Some(Place::Bench(None)),
            ("bench", Some(sum)) => Sum::parse(sum).map(|sum| Place::Bench(Some(sum))),
            ("book", None) => Some(Place::Book),
            ("book", Some("history")) => match last {
                Some(of) => id(of).map(|of| Place::History(Some(of))),
                None => Some(Place::History(None)),
            },
            ("book", Some("records")) if last.is_none() => Some(Place::Records),
            ("write", Some(name)) => {
                let blank = Blank::ALL.into_iter().find(|blank| blank.name() == name)?;
                match last {
                    None => Some(Place::Write(blank, None)),
                    Some(of) => id(of).map(|of| Place::Write(blank, Some(of))),
                }
            }
            ("book", Some("kinds")) => match last {
                Some(kind) => id(kind).map(Place::Kind),
                None => Some(Place::Kinds),
            },
            ("book", Some("hand-over")) => match last {
                Some(yard) => id(yard).map(|yard| Place::HandOver(Some(yard))),
                None => Some(Place::HandOver(None)),
            },
            ("book", Some("catch")) => match last {
                Some(yard) => id(yard).map(|yard| Place::Catch(Some(yard))),
                None => Some(Place::Catch(None)),
            },
            ("book", Some("trial")) => match last {
                Some(yard) => id(yard).map(|yard| Place::Trial(Some(yard))),
                None => Some(Place::Trial(None)),
            },
            ("book", Some("take-in")) => last.is_none().then_some(Place::TakeIn),
            ("book", Some("table")) if last.is_none() => Some(Place::TableIn),
            ("book", Some(sheet)) => {
                let paper = Paper::ALL.into_iter().find(|paper| paper.slug() == sheet)?;
                match last {
                    None => Some(Place::Paper(paper, None)),
                    // The packet is of every yard.
                    Some(_) if paper == Paper::Record => None,
                    Some(of) => id(of).map(|of| Place::Paper(paper, Some(of))),
                }
            }
            _ => None,
        }
    }

    /// The address of the place, from `#`.
    pub fn hash(&self) -> String {
        match self {
            Place::Round => "#/round".to_owned(),
            Place::Yard(yard) => ["#/round/", yard].concat(),
            Place::Hive(hive) => ["#/hive/", hive].concat(),
            Place::Decide(yard, None) => ["#/decide/", yard].concat(),
            Place::Decide(yard, Some(asked)) => ["#/decide/", yard, "/", asked.slug()].concat(),
            Place::Load => "#/load".to_owned(),
            Place::Beetle(None) => "#/beetle".to_owned(),
            Place::Beetle(Some(clock)) => ["#/beetle/", clock.slug()].concat(),
            Place::Bench(None) => "#/bench".to_owned(),
            Place::Bench(Some(sum)) => ["#/bench/", sum.slug()].concat(),
            Place::Book => "#/book".to_owned(),
            Place::History(None) => "#/book/history".to_owned(),
            Place::History(Some(of)) => ["#/book/history/", of].concat(),
            Place::HandOver(None) => "#/book/hand-over".to_owned(),
            Place::HandOver(Some(yard)) => ["#/book/hand-over/", yard].concat(),
            Place::Catch(None) => "#/book/catch".to_owned(),
            Place::Catch(Some(of)) => ["#/book/catch/", of].concat(),
            Place::Trial(None) => "#/book/trial".to_owned(),
            Place::Trial(Some(of)) => ["#/book/trial/", of].concat(),
            Place::TakeIn => "#/book/take-in".to_owned(),
            Place::TableIn => "#/book/table".to_owned(),
            Place::Kinds => "#/book/kinds".to_owned(),
            Place::Kind(kind) => ["#/book/kinds/", kind].concat(),
            Place::Records => "#/book/records".to_owned(),
            Place::Write(blank, None) => ["#/write/", blank.name()].concat(),
            Place::Write(blank, Some(of)) => ["#/write/", blank.name(), "/", of].concat(),
            Place::Paper(paper, None) => ["#/book/", paper.slug()].concat(),
            Place::Paper(paper, Some(of)) => ["#/book/", paper.slug(), "/", of].concat(),
        }
    }

    /// The key of the bottom bar this place belongs to.
    pub fn section(&self) -> Section {
        match self {
            Place::Round | Place::Yard(_) | Place::Hive(_) | Place::Decide(..) | Place::Write(_, Some(_)) => {
                Section::Round
            }
            Place::Load => Section::Load,
            Place::Beetle(_) => Section::Beetle,
            Place::Bench(_) => Section::Bench,
            Place::Book
            | Place::History(_)
            | Place::Kinds
            | Place::Kind(_)
            | Place::Records
            | Place::Write(_, None)
            | Place::HandOver(_)
            | Place::Catch(_)
            | Place::Trial(_)
            | Place::TakeIn
            | Place::TableIn
            | Place::Paper(..) => Section::Book,
        }
    }
}

/// Ids are made by this app from letters, digits, `-` and `_`; nothing else gets from an address into the page.
fn id(text: &str) -> Option<String> {
    let plain = |b: u8| b.is_ascii_alphanumeric() || b == b'-' || b == b'_';
    ((1..=64).contains(&text.len()) && text.bytes().all(plain)).then(|| text.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_survives_its_address() {
        let mut places = vec![
            Place::Round,
            Place::Yard("y-1_a".to_owned()),
            Place::Hive("0Z".to_owned()),
            Place::Load,
            Place::Beetle(None),
            Place::Bench(None),
            Place::Book,
            Place::History(None),
            Place::History(Some("k7f3qa-12".to_owned())),
            Place::Kinds,
            Place::Kind("new".to_owned()),
            Place::HandOver(None),
            Place::HandOver(Some("k7f3qa-12".to_owned())),
            Place::Trial(None),
            Place::Trial(Some("k7f3qa-12".to_owned())),
            Place::Catch(None),
            Place::Catch(Some("k7f3qa-12".to_owned())),
            Place::TakeIn,
            Place::TableIn,
        ];
        places.extend(Paper::ALL.map(|paper| Place::Paper(paper, None)));
        places.push(Place::Paper(Paper::Truck, Some("k7f3qa-12".to_owned())));
        places.push(Place::Paper(Paper::Lot, Some("k7f3qa-12".to_owned())));
        places.extend(Clock::ALL.map(|clock| Place::Beetle(Some(clock))));
        places.extend(Sum::ALL.map(|sum| Place::Bench(Some(sum))));
        places.push(Place::Decide("y-1".to_owned(), None));
        places.extend(Question::ALL.map(|asked| Place::Decide("y-1".to_owned(), Some(asked))));
        places.push(Place::Records);
        places.extend(Blank::ALL.map(|blank| Place::Write(blank, None)));
        places.extend(Blank::ALL.map(|blank| Place::Write(blank, Some("k7f3qa-12".to_owned()))));
        for place in places {
            assert_eq!(Place::parse(&place.hash()), Some(place));
        }
    }

    #[test]
    fn an_address_that_names_nothing_is_no_place() {
        for hash in [
            "",
            "#",
            "#/",
            "#/rounds",
            "#/round/",
            "#/round/a/b",
            "#/hive",
            "#/hive/a b",
            "#/bench/x",
            "#/beetle/x",
            "#/beetle/honey/a",
            "#/load/1",
            "#/decide",
            "#/decide/",
            "#/decide/y-1/x",
            "#/decide/y-1/open/a",
            "#/book/x",
            "#/book/history/",
            "#/book/history/a/b",
            "#/book/kinds/a b",
            "#/book/hand-over/a b",
            "#/book/catch/a b",
            "#/book/trial/a b",
            "#/book/take-in/a",
            "#/book/table/a",
            "#/book/inspector/a",
            "#/book/records/a",
            "#/write",
            "#/write/x",
            "#/write/look/",
            "#/write/look/a/b",
            "#/book/truck-sheet/",
            "#/book/truck-sheet/a/b",
        ] {
            assert_eq!(Place::parse(hash), None, "{hash}");
        }
        assert_eq!(Place::parse(&format!("#/hive/{}", "a".repeat(65))), None);
    }

    #[test]
    fn every_key_of_the_bar_leads_to_its_own_section() {
        for section in Section::ALL {
            assert_eq!(section.place().section(), section);
        }
    }
}
