//! Which hives the ground is treated round.

use crate::almanac::ground::Stand;
use crate::almanac::typed;
use crate::app::bench::read::MOST_HIVES;
use crate::app::kinds::same_name;
use crate::book::stands::Placed;

/// Stands with their tags, and the tags of hives that nobody placed.
pub type Chosen = (Vec<(Stand, String)>, Vec<String>);

/// Of `hives` with their tags those that `which` asks for: `larvae`, `tags` for those named in `tags`, or all.
pub fn choose(hives: &[(Placed, String)], which: &str, tags: &str) -> Chosen {
    let named =
        if which == "tags" { typed::tags(tags, MOST_HIVES as usize).unwrap_or_default() } else { Vec::new() };
    let (mut placed, mut left_out) = (Vec::new(), Vec::new());
    for (hive, tag) in hives {
        let wanted = match which {
            "larvae" => hive.larvae,
            "tags" => named.iter().any(|named| same_name(named, tag)),
            // One that died and showed no larvae is chosen by its tag alone.
            _ => hive.in_care || hive.larvae,
        };
        match (wanted, hive.stand) {
            (true, Some(stand)) => placed.push((stand, tag.clone())),
            (true, None) => left_out.push(tag.clone()),
            _ => {}
        }
    }
    (placed, left_out)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::book::id::{EntryId, Writer};

    #[test]
    fn a_dead_hive_without_larvae_is_chosen_by_its_tag_alone() {
        let hive = |nth: u32, larvae, here, in_care| {
            let hive = EntryId::new(Writer::new("aa").unwrap(), nth).unwrap().thing(0);
            let stand = Some(Stand { across: 0.0, along: 0.0 });
            (Placed { hive, stand, larvae, here, in_care }, nth.to_string())
        };
        let hives = [
            hive(4, false, true, true),
            hive(5, false, true, false),
            hive(6, true, true, false),
            hive(7, true, false, false),
        ];
        let chosen = |which, tags| {
            let (placed, left_out) = choose(&hives, which, tags);
            assert!(left_out.is_empty());
            placed.into_iter().map(|(_, tag)| tag).collect::<Vec<_>>().join(" ")
        };
        assert_eq!(chosen("all", ""), "4 6 7");
        assert_eq!(chosen("larvae", ""), "6 7");
        assert_eq!(chosen("tags", "5"), "5");
        assert_eq!(chosen("tags", "4–8"), "4 5 6 7");
    }
}
