//! What is typed into a field that nothing keeps stands on the screen and nowhere else.

use super::{document, listen};
use wasm_bindgen::JsCast;
use web_sys::Element;

/// Marks a field that was typed into.
const TYPED: &str = "data-typed";
/// Fields whose text is kept elsewhere, or which say nothing by themselves.
const OTHERS: &str = "dialog *,.dock *,[type=checkbox],[type=radio],[type=file]";

/// Marks every field that is typed into but those of a place where `kept` says that they are kept.
pub fn follow(kept: impl Fn() -> bool + 'static) {
    let Some(document) = document() else { return };
    listen(&document, "input", move |event| {
        let field = event.target().and_then(|field| field.dyn_into::<Element>().ok());
        if let Some(field) = field
            && !field.matches(OTHERS).unwrap_or(true)
            && !kept()
        {
            let _ = field.set_attribute(TYPED, "");
        }
    });
}

/// Whether something typed stands in a field. A form that is done with empties its fields or takes them away.
pub fn any() -> bool {
    let Some(document) = document() else { return false };
    while let Ok(Some(field)) = document.query_selector("[data-typed]") {
        let text = super::field(&field, "value").as_string();
        if text.is_some_and(|text| !text.is_empty()) {
            return true;
        }
        if field.remove_attribute(TYPED).is_err() {
            break;
        }
    }
    false
}
