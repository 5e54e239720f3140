//! What only a browser can show.
#![cfg(target_arch = "wasm32")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod clock;
mod graph;
mod hours;
mod records;
mod second;
mod storage;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
