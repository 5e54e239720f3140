//! Mounting the page.

use super::edge;
use super::frame::Frame;
use super::wording::en;
use leptos::prelude::*;

/// Takes the static shell away and puts the page in its place.
pub fn mount() {
    std::panic::set_hook(Box::new(|_| say_stopped()));
    if let Some(shell) = edge::document().and_then(|document| document.get_element_by_id("shell")) {
        shell.remove();
    }
    leptos::mount::mount_to_body(|| view! { <Frame /> });
}

/// Told without the framework: it may be what stopped.
fn say_stopped() {
    let Some(document) = edge::document() else { return };
    let (Ok(sentence), Some(body)) = (document.create_element("p"), document.body()) else { return };
    sentence.set_text_content(Some(en::STOPPED));
    sentence.set_class_name("stopped");
    let _ = sentence.set_attribute("role", "alert");
    let _ = body.prepend_with_node_1(&sentence);
}
