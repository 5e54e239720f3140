//! Writes the papers that `calendar_files.py` and `table_files.py` read: `cargo run --example papers`.
//! `tests/published` fails when the program writes other ones.
#![allow(clippy::unwrap_used, clippy::expect_used)]

#[path = "../support/papers.rs"]
#[allow(dead_code)] // the tests compare what is written here with the book it came from
mod papers;
#[path = "../support/records.rs"]
mod record_of_each;
#[path = "../support/mod.rs"]
mod support;

fn main() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/figures/papers");
    std::fs::create_dir_all(&folder).expect("a folder");
    for (name, text) in papers::files() {
        std::fs::write(folder.join(name), text).expect("a file written");
    }
}
