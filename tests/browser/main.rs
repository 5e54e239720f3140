//! What only a browser can show.
#![cfg(target_arch = "wasm32")]

mod storage;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
