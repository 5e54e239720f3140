//! Where in the page the keeper is, as it stands in the address after `#`.

use super::bench::Sum;

/// The keys of the bottom bar, in its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Section {
    /// What each hive needs now.
    Round,
    /// What to carry and buy.
    Load,
    /// Quick sums.
    Bench,
    /// What happened.
    Book,
}

impl Section {
    /// Every section, in the order of the bar.
    pub const ALL: [Section; 4] = [Section::Round, Section::Load, Section::Bench, Section::Book];

    /// The place its key leads to.
    pub fn place(self) -> Place {
        match self {
            Section::Round => Place::Round,
            Section::Load => Place::Load,
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
    /// What to carry and buy.
    Load,
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
    /// A table that was kept elsewhere comes in.
    TableIn,
    /// A sheet for printing; of one yard when the address names it.
    Paper(Paper, Option<String>),
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
}

impl Paper {
    /// Every sheet.
    pub const ALL: [Paper; 4] = [Paper::Truck, Paper::Cards, Paper::Record, Paper::Season];

    /// Its name in the address.
    fn slug(self) -> &'static str {
        match self {
            Paper::Truck => "truck-sheet",
            Paper::Cards => "hive-cards",
            Paper::Record => "inspector",
            Paper::Season => "season",
        }
    }
}

impl Place {
    /// Reads `#/round`, `#/round/<yard>`, `#/hive/<id>`, `#/load`, `#/bench`, `#/bench/<sum>`, `#/book`,
    /// `#/book/history`, `#/book/history/<id>`, `#/book/kinds`, `#/book/kinds/<id>`, `#/book/table`,
    /// `#/book/<sheet>`, `#/book/<sheet>/<yard>`; anything else names no place.
    pub fn parse(hash: &str) -> Option<Place> {
        let mut parts = hash.strip_prefix('#').unwrap_or(hash).strip_prefix('/')?.split('/');
        let (head, rest, last, end) = (parts.next()?, parts.next(), parts.next(), parts.next());
        if end.is_some() || (last.is_some() && head != "book") {
            return None;
        }
        match (head, rest) {
            ("round", None) => Some(Place::Round),
            ("round", Some(yard)) => id(yard).map(Place::Yard),
            ("hive", Some(hive)) => id(hive).map(Place::Hive),
            ("load", None) => Some(Place::Load),
            ("bench", None) => Some(Place::Bench(None)),
            ("bench", Some(sum)) => Sum::parse(sum).map(|sum| Place::Bench(Some(sum))),
            ("book", None) => Some(Place::Book),
            ("book", Some("history")) => match last {
                Some(of) => id(of).map(|of| Place::History(Some(of))),
                None => Some(Place::History(None)),
            },
            ("book", Some("kinds")) => match last {
                Some(kind) => id(kind).map(Place::Kind),
                None => Some(Place::Kinds),
            },
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
            Place::Load => "#/load".to_owned(),
            Place::Bench(None) => "#/bench".to_owned(),
            Place::Bench(Some(sum)) => ["#/bench/", sum.slug()].concat(),
            Place::Book => "#/book".to_owned(),
            Place::History(None) => "#/book/history".to_owned(),
            Place::History(Some(of)) => ["#/book/history/", of].concat(),
            Place::TableIn => "#/book/table".to_owned(),
            Place::Kinds => "#/book/kinds".to_owned(),
            Place::Kind(kind) => ["#/book/kinds/", kind].concat(),
            Place::Paper(paper, None) => ["#/book/", paper.slug()].concat(),
            Place::Paper(paper, Some(of)) => ["#/book/", paper.slug(), "/", of].concat(),
        }
    }

    /// The key of the bottom bar this place belongs to.
    pub fn section(&self) -> Section {
        match self {
            Place::Round | Place::Yard(_) | Place::Hive(_) => Section::Round,
            Place::Load => Section::Load,
            Place::Bench(_) => Section::Bench,
            Place::Book
            | Place::History(_)
            | Place::Kinds
            | Place::Kind(_)
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
            Place::Bench(None),
            Place::Book,
            Place::History(None),
            Place::History(Some("k7f3qa-12".to_owned())),
            Place::Kinds,
            Place::Kind("new".to_owned()),
            Place::TableIn,
        ];
        places.extend(Paper::ALL.map(|paper| Place::Paper(paper, None)));
        places.push(Place::Paper(Paper::Truck, Some("k7f3qa-12".to_owned())));
        places.extend(Sum::ALL.map(|sum| Place::Bench(Some(sum))));
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
            "#/load/1",
            "#/book/x",
            "#/book/history/",
            "#/book/history/a/b",
            "#/book/kinds/a b",
            "#/book/table/a",
            "#/book/inspector/a",
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
