//! What is typed into a field that nothing keeps stands on the screen and nowhere else.

use super::{document, listen};
use js_sys::Reflect;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsCast;
use web_sys::Element;

/// Fields whose text is kept elsewhere, or which say nothing by themselves.
const OTHERS: &str = "dialog *,.dock *,[type=checkbox],[type=radio],[type=file]";

/// Fields that were typed into.
#[derive(Clone, Default)]
pub struct Typing(Rc<RefCell<Vec<Element>>>);

impl Typing {
    /// Follows every field of the page but those of a place where `kept` says that they are kept.
    pub fn follow(kept: impl Fn() -> bool + 'static) -> Typing {
        let typing = Typing::default();
        let fields = typing.0.clone();
        if let Some(document) = document() {
            listen(&document, "input", move |event| {
                let field = event.target().and_then(|field| field.dyn_into::<Element>().ok());
                if let Some(field) = field
                    && !field.matches(OTHERS).unwrap_or(true)
                    && !kept()
                {
                    fields.borrow_mut().push(field);
                }
            });
        }
        typing
    }

    /// Whether something typed stands in one of them. A form that is done with empties its fields or takes them away.
    pub fn any(&self) -> bool {
        let filled = |field: &Element| {
            Reflect::get(field, &"value".into())
                .is_ok_and(|text| text.as_string().is_some_and(|text| !text.is_empty()))
        };
        let mut fields = self.0.borrow_mut();
        fields.retain(|field| field.is_connected() && filled(field));
        !fields.is_empty()
    }
}
