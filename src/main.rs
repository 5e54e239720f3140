//! Mounts the page, nothing else.

#[cfg(target_arch = "wasm32")]
fn main() {
    beetle_almanac::app::mount();
}

#[cfg(not(target_arch = "wasm32"))]
fn main() {
    println!("This is a page for the browser: run `make serve`.");
}
