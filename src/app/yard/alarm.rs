//! What stops whoever comes to a hive before anything is done there: a suspicion of brood disease, slime.

use crate::almanac::day::Day;
use crate::app::wording::{en_records as wr, en_round};
use crate::book::finds::told as seen_in;
use crate::book::id::ThingId;
use crate::book::standing::{HiveNow, Standing};
use crate::book::urgent::{self, Because, Urgent};

/// What is done at a hive first.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Wants {
    /// What is usual today.
    #[default]
    Usual,
    /// Nothing: it is left shut.
    Nothing,
    /// Its traps are made fresh, and nobody has done it yet.
    Fresh,
}

/// The lines of a hive under suspicion of brood disease, or with slime or many larvae; none of any other. Its panel says
/// the same as its row: from hive to hive the row may be out of sight. Beside them what is done there.
pub fn of_hive(standing: &Standing, hive: &ThingId, today: Day) -> (Wants, Vec<String>) {
    let urgent = urgent::urgent(standing, hive, today).filter(|urgent| urgent.because != Because::Dead);
    let Some((urgent, now)) = urgent.zip(standing.hives.get(hive)) else { return Default::default() };
    let stale = || now.traps().any(|trap| trap.fresh < urgent.since);
    let wants = match urgent.because {
        Because::Disease => Wants::Nothing,
        _ if stale() => Wants::Fresh,
        _ => Wants::Usual,
    };
    (wants, lines(standing, now, Some(&urgent), today))
}

/// What a yard says in the list of yards, of what its hives want; nothing where no hive in care is so, and no dead-out
/// has comb left. A yard with nothing due is one that nobody would go to.
pub fn of_yard(standing: &Standing, urgent: &[(ThingId, Urgent)]) -> String {
    let (mut stop, mut slime, mut dead) = (Vec::new(), Vec::new(), Vec::new());
    for (hive, urgent) in urgent {
        let tags = match urgent.because {
            Because::Disease => &mut stop,
            Because::Slime => &mut slime,
            Because::Dead => &mut dead,
        };
        // Its comb breeds on after its care has ended.
        let wants = urgent.in_care || urgent.because == Because::Dead;
        let now = standing.hives.get(hive).filter(|_| wants);
        tags.extend(now.map(|now| now.tag.clone()));
    }
    en_round::beside(&stop, &slime, &dead, &[])
}

/// What `hive` says before anything else: the suspicion, then larvae or slime in the last look into it, until somebody
/// looks again and finds none.
pub fn lines(standing: &Standing, hive: &HiveNow, urgent: Option<&Urgent>, today: Day) -> Vec<String> {
    let suspected = urgent.filter(|urgent| urgent.because == Because::Disease);
    let mut lines = Vec::new();
    lines.extend(suspected.map(|urgent| wr::seen(wr::DISEASE, urgent.since, today)));
    lines.extend(larvae(standing, hive, today));
    lines
}

fn larvae(standing: &Standing, hive: &HiveNow, today: Day) -> Option<String> {
    let look = standing.records.get(hive.look.as_ref()?)?;
    let slime = look.record.word("slime") == Some("yes");
    let what = match look.record.word("larvae") {
        Some("few") => wr::LARVAE_FEW,
        Some("many") => wr::LARVAE_MANY,
        _ if slime => return Some(wr::seen(wr::SLIME, look.day, today)),
        _ if seen_in(&look.record).iter().any(|seen| seen.outside()) => wr::LEAVING,
        _ => return None,
    };
    let slime = if slime { wr::AND_SLIME } else { "" };
    Some(wr::seen(&[what, slime].concat(), look.day, today))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::ledger::words::tests::{book, pen, today};
    use crate::book::Book;
    use crate::book::entry::Ending;
    use crate::book::record::{Answer, Ask, Blank, Record};

    fn look(book: &mut Book, hive: &ThingId, day: Day, said: &[(&str, &str)]) {
        let mut look = Record::empty(Blank::Look, vec![hive.clone()]);
        for (name, word) in said {
            let at = Blank::Look.fields().iter().position(|field| field.name == *name).unwrap();
            let Ask::Word(words) = Blank::Look.fields()[at].ask else { panic!("a word") };
            let word = words.iter().position(|known| known == word).unwrap();
            look.answers[at] = Some(Answer::Word(word.try_into().unwrap()));
        }
        let written = book.record(&pen(), day, today(), None, look).unwrap();
        book.add(written);
    }

    fn told(book: &Book, yard: &ThingId, day: Day) -> String {
        of_yard(book.standing(), &urgent::of_yard(book.standing(), yard, day))
    }

    #[test]
    fn a_hive_under_suspicion_stops_whoever_opens_it_and_one_with_few_larvae_does_not() {
        let mut book = book();
        let yard = book.standing().yards.keys().next().unwrap().clone();
        let [sick, slimy, few, ..] = &book.standing().yards[&yard].order.clone()[..] else { panic!("hives") };
        let said = |book: &Book, hive| of_hive(book.standing(), hive, today()).1;
        let wants = |book: &Book, hive| of_hive(book.standing(), hive, today()).0;
        look(&mut book, sick, today().plus(-1), &[("larvae", "none"), ("brood_disease", "suspected")]);
        look(&mut book, slimy, today(), &[("larvae", "none"), ("slime", "yes")]);
        look(&mut book, few, today(), &[("larvae", "few"), ("brood_disease", "no")]);
        assert_eq!(said(&book, sick), ["! STOP, brood disease suspected, Mon 13 July, yesterday"]);
        assert_eq!(said(&book, slimy), ["! slime, Tue 14 July, today"]);
        assert!(said(&book, few).is_empty());
        let all = [sick, slimy, few].map(|hive| wants(&book, hive));
        assert_eq!(all, [Wants::Nothing, Wants::Fresh, Wants::Usual]);
        // Hive 17 of the demonstration has slime of its own.
        let of = |yard| told(&book, yard, today());
        let other = book.standing().yards.keys().find(|other| **other != yard).unwrap();
        assert_eq!(of(&yard), "▲ Hive 1: STOP, brood disease suspected. Hives 2, 17: slime or many larvae");
        assert_eq!(of(other), "");
        // A later look at something else leaves it standing.
        look(&mut book, slimy, today(), &[("larvae", "not_looked")]);
        assert_eq!(said(&book, slimy), ["! slime, Tue 14 July, today"]);
        let row = |book: &Book| lines(book.standing(), &book.standing().hives[few], None, today());
        assert_eq!(row(&book), ["! larvae few, Tue 14 July, today"]);
        look(&mut book, few, today(), &[("larvae", "not_looked")]);
        assert_eq!(row(&book), ["! larvae few, Tue 14 July, today"]);
        look(&mut book, few, today(), &[("larvae", "none")]);
        assert!(row(&book).is_empty());
        // Slime is named beside the larvae, of which there may be any number.
        look(&mut book, slimy, today(), &[("larvae", "many"), ("slime", "yes")]);
        assert_eq!(said(&book, slimy), ["! larvae many, slime, Tue 14 July, today"]);
        // Both at once: the suspicion leads.
        look(&mut book, slimy, today(), &[("larvae", "many"), ("brood_disease", "suspected")]);
        let both = said(&book, slimy);
        assert!(both.len() == 2 && both[0].starts_with(wr::DISEASE) && both[1].starts_with(wr::LARVAE_MANY));
        look(&mut book, sick, today(), &[("larvae", "none"), ("brood_disease", "no")]);
        assert!(said(&book, sick).is_empty());
    }

    #[test]
    fn the_list_of_yards_names_a_dead_out_as_long_as_its_card_is_there_though_its_care_has_ended() {
        let mut book = book();
        let yard = book.standing().yards.keys().nth(1).unwrap().clone();
        let hive = book.standing().yards[&yard].order[0].clone();
        let tag = book.standing().hives[&hive].tag.clone();
        let said = |book: &Book| told(book, &yard, today());
        let before = said(&book);
        let mut dead = Record::empty(Blank::DeadOut, vec![hive.clone()]);
        dead.answers[0] = Some(Answer::Words(1));
        let dead = book.record(&pen(), today(), today(), None, dead).unwrap();
        book.add(dead);
        let stands = [&before, "▲ Hive ", &tag, ": dead-out, comb still there"].concat();
        assert_eq!(said(&book), stands);
        let end = book.end_hive(&pen(), today(), today(), &hive, Ending::Dead, None).unwrap();
        book.add(end);
        assert_eq!(said(&book), stands);
        // Nobody counted its combs: it is named as long as its card is there.
        assert_eq!(told(&book, &yard, today().plus(60)), stands);
        assert_eq!(told(&book, &yard, today().plus(61)), before);
    }
}
