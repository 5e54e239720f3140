//! What traps, oil and calendars do: pure functions on plain values, one noun a file.
//!
//! Nothing in here knows a browser, a clock or a random number. Every answer is a value that carries the sum it
//! came from, so that the screen, the print and the calendar file can tell the same story.

pub mod bait;
pub mod base45;
pub mod chance;
pub mod checksum;
pub mod climate;
pub mod closing;
pub mod cost;
pub mod cover;
pub mod day;
#[cfg(test)]
mod dice;
pub mod divide;
pub mod draw;
pub mod figure;
pub mod fit;
pub mod freezer;
pub mod generations;
pub mod ground;
pub mod honey;
pub mod json;
pub mod labels;
pub mod level;
pub mod mesh;
pub mod moment;
pub mod oil;
pub mod order;
pub mod quantity;
pub mod refill;
pub mod rhythm;
pub mod route;
pub mod sample;
pub mod sighting;
pub mod soil;
pub mod spill;
pub mod stack;
pub mod stage;
pub mod supply;
pub mod table;
pub mod tally;
pub mod text;
pub mod trap;
pub mod trend;
pub mod trial;
pub mod typed;
pub mod warmth;
