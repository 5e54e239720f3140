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
    /// History, trends, papers, backup.
    Book,
}

impl Place {
    /// Reads `#/round`, `#/round/<yard>`, `#/hive/<id>`, `#/load`, `#/bench`, `#/bench/<sum>`, `#/book`; anything
    /// else names no place.
    pub fn parse(hash: &str) -> Option<Place> {
        let mut parts = hash.strip_prefix('#').unwrap_or(hash).strip_prefix('/')?.split('/');
        let (head, rest, end) = (parts.next()?, parts.next(), parts.next());
        if end.is_some() {
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
        }
    }

    /// The key of the bottom bar this place belongs to.
    pub fn section(&self) -> Section {
        match self {
            Place::Round | Place::Yard(_) | Place::Hive(_) => Section::Round,
            Place::Load => Section::Load,
            Place::Bench(_) => Section::Bench,
            Place::Book => Section::Book,
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
        ];
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
