//! Mounting the page.

use super::edge;
use super::el::mount as mount_bit;
use super::frame::frame;
use super::wording::en;

/// Takes the static shell away and puts the page in its place.
pub fn mount() {
    std::panic::set_hook(Box::new(|_| say_stopped()));
    if let Some(shell) = edge::document().and_then(|document| document.get_element_by_id("shell")) {
        shell.remove();
    }
    // The framework lends its reactive graph and an owner for it; what is drawn mounts itself.
    leptos::mount::mount_to_body(|| mount_bit(frame()));
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
