//! The screens.

/// Mounts the page.
pub fn mount() {
    leptos::mount::mount_to_body(|| leptos::prelude::view! { <p>"Beetle Almanac"</p> });
}
