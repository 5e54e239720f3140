//! Spoils sound texts and opens them, as long as it is told to: `make fuzz SECONDS=600`, or with `SEED=` what a run did
//! before. It stops at nothing: what it finds it writes to target/fuzz and names, and at the end it fails.
//!
//! What it looks for: a panic; a book changed by what was refused; something taken in that does not come back as it was;
//! and a text of about a megabyte, as large as they get here, that takes longer than [`PATIENCE`].
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod change;
mod doors;
mod giants;
#[path = "../support/phone.rs"]
mod phone;
mod runs;
mod seeds;
#[path = "../support/mod.rs"]
mod support;
mod tables;

use doors::{DOORS, Door, Keeper, Verdict};
use std::collections::BTreeMap;
use std::fs;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::OnceLock;
use std::time::{Duration, Instant};
use support::chance::Chance;

/// Longest time of the processor for a text of a megabyte, optimised: opened, taken in, opened again at the next
/// start, and everything that is then shown of the book. What takes this long is a fault of the order it grows by.
const PATIENCE: Duration = Duration::from_secs(8);
/// Texts that were taken in and are spoiled further, for each door.
const POOL: usize = 300;

fn main() {
    let mut arguments = std::env::args().skip(1);
    let mut number = |fresh: u64| arguments.next().and_then(|text| text.parse().ok()).unwrap_or(fresh);
    let now = std::time::UNIX_EPOCH.elapsed().map_or(1, |since| since.as_secs());
    let (seconds, seed) = (number(60), number(now));
    println!("seed {seed}, {seconds} s");
    let mut run = Run::new();
    run.spoil(Duration::from_secs(seconds), seed);
    run.giants();
    std::process::exit(run.end());
}

/// How long the processor was busy with this thread; where the system does not say, how long it is by the clock.
fn busy() -> Duration {
    static BEGUN: OnceLock<Instant> = OnceLock::new();
    let begun = *BEGUN.get_or_init(Instant::now);
    let told = fs::read_to_string("/proc/thread-self/schedstat").ok();
    let nanoseconds = told.and_then(|text| text.split(' ').next()?.parse().ok());
    nanoseconds.map_or_else(|| begun.elapsed(), Duration::from_nanos)
}

/// What was done at one door.
#[derive(Default)]
struct Count {
    opened: u64,
    taken: u64,
    longest: Duration,
}

struct Run {
    keeper: Keeper,
    folder: PathBuf,
    counts: BTreeMap<&'static str, Count>,
    /// Each complaint with how often it was heard.
    found: BTreeMap<String, u64>,
}

impl Run {
    fn new() -> Run {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/fuzz");
        fs::create_dir_all(&folder).unwrap();
        Run { keeper: Keeper::new(), folder, counts: BTreeMap::new(), found: BTreeMap::new() }
    }

    /// Texts of a megabyte made to be slow or deep, at every door.
    fn giants(&mut self) {
        for (name, text, doors) in giants::all() {
            for door in DOORS.iter().filter(|door| doors.contains(&door.name)) {
                for text in [Some(text.clone()), (door.mend)(&text)].into_iter().flatten() {
                    let begun = busy();
                    self.open(door, &text, name);
                    let took = busy().saturating_sub(begun);
                    if took > PATIENCE / 16 {
                        println!("{name} at {}: {} ms", door.name, took.as_millis());
                    }
                }
            }
        }
    }

    fn spoil(&mut self, time: Duration, seed: u64) {
        let mut chance = Chance::of(seed);
        let mut pools: Vec<Vec<String>> = DOORS.iter().map(|door| (door.seeds)()).collect();
        let (begun, mut said) = (Instant::now(), 0);
        while begun.elapsed() < time {
            let at = chance.below(DOORS.len());
            let (door, pool) = (&DOORS[at], &mut pools[at]);
            let mut text = change::changed(&pool[chance.below(pool.len())], pool, &mut chance);
            if !chance.once_in(4) {
                text = (door.mend)(&text).unwrap_or(text);
            }
            let taken = self.open(door, &text, "spoiled");
            if taken && text.len() < 60_000 {
                let own = (door.seeds)().len();
                if pool.len() < POOL {
                    pool.push(text);
                } else {
                    // What it began with stays.
                    let old = own + chance.below(POOL - own);
                    pool[old] = text;
                }
            }
            let minutes = begun.elapsed().as_secs() / 60;
            if minutes > said {
                said = minutes;
                println!(
                    "{minutes} min, {} opened",
                    self.counts.values().map(|count| count.opened).sum::<u64>()
                );
            }
        }
    }

    /// True when the text was taken in.
    fn open(&mut self, door: &Door, text: &str, name: &str) -> bool {
        // Should the program itself end, this is what it ended at.
        fs::write(self.folder.join("last.txt"), text).unwrap();
        let (mut verdict, took) = self.timed(door, text);
        if took > PATIENCE {
            verdict = Err(format!("takes too long ({name})"));
        }
        let count = self.counts.entry(door.name).or_default();
        count.opened += 1;
        count.longest = count.longest.max(took);
        match verdict {
            Ok(taken) => {
                count.taken += u64::from(taken);
                taken
            }
            Err(complaint) => {
                let complaint = format!("{}: {complaint}", door.name);
                let times = self.found.entry(complaint.clone()).or_default();
                *times += 1;
                if *times == 1 {
                    let file = self.folder.join(format!("found-{}.txt", self.found.len()));
                    fs::write(&file, text).unwrap();
                    println!("FOUND {complaint}\n  {} ms, {}", took.as_millis(), file.display());
                }
                false
            }
        }
    }

    fn timed(&self, door: &Door, text: &str) -> (Verdict, Duration) {
        let begun = busy();
        let verdict = catch_unwind(AssertUnwindSafe(|| (door.open)(&self.keeper, text)));
        let verdict = verdict.unwrap_or_else(|cause| {
            let said = cause.downcast_ref::<String>().cloned();
            let said = said.or_else(|| cause.downcast_ref::<&str>().map(|said| (*said).to_owned()));
            Err(format!("panic: {}", said.unwrap_or_default()))
        });
        (verdict, busy().saturating_sub(begun))
    }

    fn end(&self) -> i32 {
        for (door, count) in &self.counts {
            let Count { opened, taken, longest } = count;
            println!("{door:8} {opened:9} opened, {taken:8} taken in, longest {} ms", longest.as_millis());
        }
        let opened: u64 = self.counts.values().map(|count| count.opened).sum();
        println!("{opened} texts opened, {} faults found", self.found.len());
        for (complaint, times) in &self.found {
            println!("  {times} times {complaint}");
        }
        i32::from(!self.found.is_empty())
    }
}
