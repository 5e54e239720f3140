//! One number and one button.

use leptos::prelude::*;

fn main() {
    mount_to_body(|| {
        let (count, set_count) = signal(0);
        view! { <button on:click=move |_| set_count.update(|count| *count += 1)>{count}</button> }
    });
}
