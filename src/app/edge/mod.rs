//! The only code, besides the views, that touches the browser. One leaf a thing the browser lends.

pub mod camera;
pub mod clock;
pub mod device;
pub mod files;
pub mod hours;
pub mod install;
pub mod keeping;
pub mod letters;
pub mod locale;
pub mod locks;
pub mod pause;
pub mod share;
pub mod slot;
pub mod squeeze;
pub mod typing;
pub mod worker;

use crate::app::graph::{RwSignal, after};
use js_sys::{Array, Function, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Document, Element, Event, EventTarget, Window};

/// The window; none only outside a page.
pub fn window() -> Option<Window> {
    web_sys::window()
}

/// The document.
pub fn document() -> Option<Document> {
    window()?.document()
}

/// Calls `react` at every `event` of `target` for as long as the page lives.
pub fn listen(target: &EventTarget, event: &str, react: impl FnMut(Event) + 'static) {
    let closure = Closure::<dyn FnMut(Event)>::new(react);
    if target.add_event_listener_with_callback(event, closure.as_ref().unchecked_ref()).is_ok() {
        closure.forget();
    }
}

/// Calls `then` once the page has been drawn again. A frame's own callbacks run before it is drawn, so what they ask the
/// browser to lay out or scroll would hold up the very answer the keeper waits for: `then` comes after them.
pub fn after_paint(then: impl FnOnce() + 'static) {
    drawn(Box::new(then));
}

/// Set once the page has been drawn: what a place shows beside its answer is worked out from then on, so that the answer
/// does not wait for it.
pub fn once_drawn() -> RwSignal<bool> {
    let drawn = RwSignal::new(false);
    after_paint(move || drawn.set(true));
    drawn
}

fn drawn(then: Box<dyn FnOnce()>) {
    // A tab out of sight is not drawn, and would wait until it is seen.
    if document().is_some_and(|document| document.hidden()) {
        after(0, then);
    } else {
        before_paint(move || after(0, then));
    }
}

/// Calls `then` when the page is complete and about to be drawn.
pub fn before_paint(then: impl FnOnce() + 'static) {
    if let Some(window) = window() {
        let closure = Closure::once_into_js(then);
        let _ = window.request_animation_frame(closure.unchecked_ref());
    }
}

/// Makes a square drawing of `steps` steps as wide as `room`, but each step a whole number of the screen's points: what is
/// to be read by a machine must not have steps of two widths.
pub fn whole_steps(drawing: &Element, room: &Element, steps: f64) {
    let points = window().map_or(1.0, |window| window.device_pixel_ratio());
    let each = (f64::from(room.client_width()) * points / steps).floor().max(1.0);
    if let Ok(width) = js_sys::Number::from(each * steps / points).to_fixed(3) {
        let _ = drawing.set_attribute("width", &String::from(width));
    }
}

/// Whether the keeper has told the phone that nothing should move by itself.
pub fn still() -> bool {
    media("(prefers-reduced-motion: reduce)")
}

/// Whether the screen is as this query of a style sheet says.
pub fn media(query: &str) -> bool {
    let asked = window().and_then(|window| window.match_media(query).ok().flatten());
    asked.is_some_and(|asked| asked.matches())
}

/// Puts the focus on the element with this id and brings it into view.
pub fn focus(id: &str) {
    let element = document().and_then(|document| document.get_element_by_id(id));
    if let Some(element) = element.and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok()) {
        let _ = element.focus();
        element.scroll_into_view();
    }
}

/// `new Intl.<class>(arguments…)`; none where the browser lacks it or refuses the arguments.
fn intl(class: &str, arguments: &Array) -> Option<JsValue> {
    let class = function(&field(&js_sys::global(), "Intl"), class)?;
    Reflect::construct(&class, arguments).ok()
}

/// An object with these properties.
fn options(properties: &[(&str, JsValue)]) -> js_sys::Object {
    let object = js_sys::Object::new();
    for (name, value) in properties {
        let _ = Reflect::set(&object, &(*name).into(), value);
    }
    object
}

/// `object.name`, which is undefined where there is no such thing.
fn field(object: &JsValue, name: &str) -> JsValue {
    Reflect::get(object, &name.into()).unwrap_or_default()
}

/// The same, where it is a function.
fn function(object: &JsValue, name: &str) -> Option<Function> {
    field(object, name).dyn_into().ok()
}

/// A class that not every browser has.
fn class(name: &str) -> Option<Function> {
    function(&js_sys::global(), name)
}

/// `object.name(arguments…)` by name; none when there is no such method or it throws.
fn call(object: &JsValue, name: &str, argument: &JsValue) -> Option<JsValue> {
    function(object, name)?.call1(object, argument).ok()
}

/// What the promise of that method comes to; an error where there is no such method or it throws.
fn answer(object: &JsValue, name: &str, argument: &JsValue) -> JsFuture {
    JsFuture::from(match call(object, name, argument) {
        Some(promise) => Promise::resolve(&promise),
        None => Promise::reject(&JsValue::UNDEFINED),
    })
}
