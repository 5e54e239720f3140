//! Camera codes, each on a line of its own, as they are pasted.

use crate::doors::{Keeper, Verdict, hand_over, holds};
use crate::seeds;
use beetle_almanac::almanac::checksum;
use beetle_almanac::papers::codes::{Added, Code, MOST, Packed, Run, read, symbol, write};

/// Letters of a checksum at the end of a code.
const SUM: usize = 8;

/// Runs of one code and of several. A packed one is not unpacked here, which only a browser does: its bytes are as good
/// as any.
pub(crate) fn seeds() -> Vec<String> {
    let mut runs = Vec::new();
    for (at, pack) in seeds::packs().iter().enumerate() {
        let short = pack.len().min(3000);
        let (bytes, packed) = if at.is_multiple_of(2) {
            (pack.as_bytes(), Packed::No)
        } else {
            (&pack.as_bytes()[..short], Packed::Deflated)
        };
        runs.extend(write(bytes, packed).map(|codes| codes.join("\n")));
    }
    runs.extend(write(b"one", Packed::No).map(|codes| codes.join("\n")));
    runs
}

/// The same codes, each with the sum that belongs to it.
#[allow(clippy::unnecessary_wraps)] // as every way to mend
pub(crate) fn mended(text: &str) -> Option<String> {
    let mut lines = Vec::new();
    for line in text.lines() {
        let inside = line.len().checked_sub(SUM).and_then(|at| line.get(..at));
        lines.push(inside.map_or_else(
            || line.to_owned(),
            |inside| [inside, &checksum::of_bytes(&[inside.as_bytes()]).to_ascii_uppercase()].concat(),
        ));
    }
    Some(lines.join("\n"))
}

/// Reads what it can, and takes in what is whole.
pub(crate) fn open(keeper: &Keeper, text: &str) -> Verdict {
    let (mut run, mut codes): (Run, Vec<Code>) = (Run::default(), Vec::new());
    for line in text.lines() {
        // Whatever stands there, a symbol is drawn of it or not.
        let _ = symbol(line.get(..line.len().min(200)).unwrap_or_default());
        let Ok(code) = read(line) else { continue };
        holds((1..=code.run.2).contains(&code.number) && code.run.2 <= MOST, "a code lies outside its run")?;
        let before = run.count();
        match run.add(code.clone()) {
            Added::New => holds(run.count().0 == before.0 + 1, "a new code is not counted")?,
            Added::Known | Added::OtherRun => holds(run.count() == before, "a code is counted that is none")?,
        }
        codes.push(code);
    }
    let missing = run.missing();
    holds(run.count().0 + missing.len() == run.count().1, "what is there and what lacks is not all of it")?;
    let Some((packed, bytes)) = run.whole() else { return Ok(false) };
    holds(missing.is_empty(), "a run is whole that lacks a code")?;
    // Turned round and read twice it is the same run.
    let mut again = Run::default();
    for code in codes.iter().rev().chain(&codes).filter(|code| code.run == codes[0].run) {
        again.add(code.clone());
    }
    let same = again.whole().is_some_and(|whole| whole == (packed, bytes.clone()));
    holds(
        same || codes.iter().any(|one| codes.iter().any(|two| one.number == two.number && one != two)),
        "in another order it is another text",
    )?;
    if let Some(shown) = write(&bytes, packed) {
        let mut read_again = Run::default();
        for text in &shown {
            read_again.add(read(text).map_err(|why| format!("our own code is refused: {why:?}"))?);
        }
        holds(read_again.whole() == Some((packed, bytes.clone())), "our own codes hold another text")?;
    }
    match (packed, std::str::from_utf8(&bytes)) {
        (Packed::No, Ok(text)) => hand_over(keeper, text).map(|_| true),
        _ => Ok(true),
    }
}
