//! Elements of the page, built directly.
//!
//! The framework's reactive graph decides *when* something is drawn; this file is *how*. The framework's own `view!`
//! makes a type of every element and compiles the drawing of each anew; measured on this page that more than doubled
//! the download (the figures are in DEVELOPERS.md). Here one small piece of code draws every element, and a screen
//! costs little more than its words.
//!
//! ```ignore
//! el("p").class("lead").text("Oil to carry: ").live_text(move || ui.volume(oil.get()))
//! el("ul").kids(rows.iter().map(|row| el("li").text(&row.tag)))
//! live(move || if open.get() { Bit::from(sheet()) } else { Bit::Nothing })
//! ```

use super::edge;
use crate::almanac::table::Table;
use crate::app::graph::{Owner, RwSignal, on_cleanup, untrack};
use leptos::prelude::{RenderEffect, event_target_value};
use std::cell::RefCell;
use wasm_bindgen::prelude::*;
use web_sys::{Document, Element, Event, HtmlElement, HtmlInputElement, HtmlTextAreaElement, Node};

const SVG: &str = "http://www.w3.org/2000/svg";

/// An element in the making, and afterwards a handle to it.
#[derive(Clone)]
pub struct El(Element);

/// Anything that can stand inside an element.
pub enum Bit {
    /// Nothing.
    Nothing,
    /// Words. Never read as markup.
    Text(String),
    /// An element.
    One(El),
    /// Several, in order.
    Many(Vec<Bit>),
    /// Drawn again whenever a signal it read has changed.
    Live(Box<dyn Fn() -> Bit>),
    /// One element for each key, kept as long as its key is.
    Each(Box<dyn Fn() -> Vec<String>>, Box<dyn Fn(&str) -> El>),
}

/// An HTML element.
///
/// # Panics
/// Outside a page, where nothing is ever drawn.
pub fn el(tag: &str) -> El {
    El(made(document().create_element(tag)))
}

/// An element of a drawing.
///
/// # Panics
/// Outside a page, where nothing is ever drawn.
pub fn svg(tag: &str) -> El {
    El(made(document().create_element_ns(Some(SVG), tag)))
}

/// A part of the page that is drawn again whenever a signal read by `make` has changed.
pub fn live<B: Into<Bit>>(make: impl Fn() -> B + 'static) -> Bit {
    Bit::Live(Box::new(move || make().into()))
}

/// A part of the page that stands below an answer: it is drawn once the answer is, so that the answer does not wait for it.
pub fn below<B: Into<Bit>>(make: impl Fn() -> B + 'static) -> Bit {
    let drawn = edge::once_drawn();
    live(move || if drawn.get() { untrack(|| make().into()) } else { Bit::Nothing })
}

/// A list: one element for each key. Elements whose key stays are kept and moved, not drawn again; what changes
/// inside a row is for the row's own signals to say.
pub fn each(keys: impl Fn() -> Vec<String> + 'static, row: impl Fn(&str) -> El + 'static) -> Bit {
    Bit::Each(Box::new(keys), Box::new(row))
}

/// Puts `bit` at the end of the page.
pub fn mount(bit: impl Into<Bit>) {
    if let Some(body) = document().body() {
        put(bit.into(), &body, None);
    }
}

impl El {
    /// A fixed attribute.
    #[must_use]
    pub fn attr(self, name: &str, value: &str) -> El {
        let _ = self.0.set_attribute(name, value);
        self
    }

    /// Its class.
    #[must_use]
    pub fn class(self, class: &str) -> El {
        self.attr("class", class)
    }

    /// The name the journeys know it by.
    #[must_use]
    pub fn test_id(self, name: &str) -> El {
        self.attr("data-testid", name)
    }

    /// An attribute that follows signals; none takes it away.
    #[must_use]
    pub fn live_attr(self, name: &'static str, value: impl Fn() -> Option<String> + 'static) -> El {
        let element = self.0.clone();
        follow(Box::new(move || {
            let _ = match value() {
                Some(value) => element.set_attribute(name, &value),
                None => element.remove_attribute(name),
            };
        }));
        self
    }

    /// A class that follows signals.
    #[must_use]
    pub fn live_class(self, class: impl Fn() -> &'static str + 'static) -> El {
        self.live_attr("class", move || Some(class().to_owned()))
    }

    /// Something else about it that follows signals, such as whether a radio key is pressed.
    #[must_use]
    pub fn live_prop(self, set: impl Fn() + 'static) -> El {
        follow(Box::new(set));
        self
    }

    /// Words at the end. Never read as markup.
    #[must_use]
    pub fn text(self, text: &str) -> El {
        append(&self.0, &document().create_text_node(text));
        self
    }

    /// Words at the end that follow signals.
    #[must_use]
    pub fn live_text(self, text: impl Fn() -> String + 'static) -> El {
        let node = document().create_text_node("");
        append(&self.0, &node);
        follow(Box::new(move || {
            let now = text();
            // Text that stays is left alone: screen readers read changed text again.
            if node.data() != now {
                node.set_data(&now);
            }
        }));
        self
    }

    /// One more at the end.
    #[must_use]
    pub fn kid(self, kid: impl Kid) -> El {
        kid.stand_in(&self);
        self
    }

    /// Several more at the end.
    #[must_use]
    pub fn kids<B: Into<Bit>>(self, kids: impl IntoIterator<Item = B>) -> El {
        for kid in kids {
            put(kid.into(), &self.0, None);
        }
        self
    }

    /// Calls `react` at every `event`. `react` asks the event for the element ([`target`]): what a handler holds of the
    /// element it hangs on is never freed.
    #[must_use]
    pub fn on(self, event: &str, react: impl FnMut(Event) + 'static) -> El {
        listen(&self.0, event, Box::new(react));
        self
    }

    /// Calls `press` when tapped.
    #[must_use]
    pub fn press(self, press: impl Fn() + 'static) -> El {
        self.on("click", move |_| press())
    }

    /// Ties what stands in an input, select or text area to a text, both ways.
    #[must_use]
    pub fn typed(self, text: RwSignal<String>) -> El {
        let element = self.0.clone();
        follow(Box::new(move || text.with(|text| set_value(&element, text))));
        // A select says `change`; an input says `input` at every key.
        let event = if self.0.tag_name().eq_ignore_ascii_case("select") { "change" } else { "input" };
        self.on(event, move |event| text.set(event_target_value(&event)))
    }

    /// The browser's element, for focus, dialogs and measures.
    pub fn element(&self) -> &Element {
        &self.0
    }

    /// Puts the focus on it.
    pub fn focus(&self) {
        if let Some(element) = self.0.dyn_ref::<HtmlElement>() {
            let _ = element.focus();
        }
    }
}

/// What [`El::kid`] takes: a [`Bit`] or what becomes one. An element, which most are, goes in without that step: it is
/// taken at some four hundred places.
pub trait Kid: Into<Bit> {
    /// Puts it at the end of `parent`.
    fn stand_in(self, parent: &El) {
        put(self.into(), &parent.0, None);
    }
}

impl Kid for Bit {}
impl Kid for &str {}
impl Kid for String {}
impl Kid for () {}
impl<B: Into<Bit>> Kid for Vec<B> {}
impl<B: Into<Bit>, const N: usize> Kid for [B; N] {}

impl Kid for El {
    #[inline(never)]
    fn stand_in(self, parent: &El) {
        append(&parent.0, &self.0);
    }
}

impl<K: Kid> Kid for Option<K> {
    fn stand_in(self, parent: &El) {
        if let Some(kid) = self {
            kid.stand_in(parent);
        }
    }
}

impl From<El> for Bit {
    fn from(el: El) -> Bit {
        Bit::One(el)
    }
}

impl From<&str> for Bit {
    fn from(text: &str) -> Bit {
        Bit::Text(text.to_owned())
    }
}

impl From<String> for Bit {
    fn from(text: String) -> Bit {
        Bit::Text(text)
    }
}

impl From<()> for Bit {
    fn from((): ()) -> Bit {
        Bit::Nothing
    }
}

impl<B: Into<Bit>> From<Option<B>> for Bit {
    fn from(bit: Option<B>) -> Bit {
        bit.map_or(Bit::Nothing, Into::into)
    }
}

impl<B: Into<Bit>> From<Vec<B>> for Bit {
    fn from(bits: Vec<B>) -> Bit {
        Bit::Many(bits.into_iter().map(Into::into).collect())
    }
}

impl<B: Into<Bit>, const N: usize> From<[B; N]> for Bit {
    fn from(bits: [B; N]) -> Bit {
        Bit::Many(bits.into_iter().map(Into::into).collect())
    }
}

fn document() -> Document {
    #[allow(clippy::expect_used)] // views are only ever built in a page
    edge::document().expect("a page")
}

fn made(element: Result<Element, JsValue>) -> Element {
    #[allow(clippy::expect_used)]
    // fails for names with illegal characters only, and all names here are literals
    element.expect("a tag name")
}

fn append(parent: &Node, node: &Node) {
    let _ = parent.append_child(node);
}

/// Runs `draw` now and whenever a signal it read has changed, for as long as the part of the page it was made in.
fn follow(draw: Box<dyn Fn()>) {
    let effect = RenderEffect::new(move |_| draw());
    on_cleanup(move || drop(effect));
}

/// The element whose handler is called with `event`.
pub fn target<T: JsCast>(event: &Event) -> Option<T> {
    event.current_target()?.dyn_into().ok()
}

fn listen(element: &Element, event: &str, react: Box<dyn FnMut(Event)>) {
    // Handed to the browser, which frees it after the element; unless what it holds leads back to the element. What Rust
    // holds of the page stands in a table that the browser cannot see through.
    let react = Closure::wrap(react).into_js_value();
    let _ = element.add_event_listener_with_callback(event, react.unchecked_ref());
}

/// Sets what stands in a field, unless it stands there already: setting it moves the cursor.
fn set_value(element: &Element, text: &str) {
    if let Some(input) = element.dyn_ref::<HtmlInputElement>() {
        if input.value() != text {
            input.set_value(text);
        }
    } else if let Some(area) = element.dyn_ref::<HtmlTextAreaElement>() {
        if area.value() != text {
            area.set_value(text);
        }
    } else if let Some(select) = element.dyn_ref::<web_sys::HtmlSelectElement>() {
        let select = select.clone();
        let text = text.to_owned();
        // Its options may not be there yet.
        edge::before_paint(move || select.set_value(&text));
    }
}

/// Puts `bit` into `parent`, before `before` or at the end.
fn put(bit: Bit, parent: &Node, before: Option<&Node>) {
    match bit {
        Bit::Nothing => {}
        Bit::Text(text) => insert(parent, &document().create_text_node(&text), before),
        Bit::One(el) => insert(parent, &el.0, before),
        Bit::Many(bits) => {
            for bit in bits {
                put(bit, parent, before);
            }
        }
        Bit::Live(make) => {
            let (start, end) = bounds(parent, before);
            follow(Box::new(move || {
                clear(&start, &end);
                if let Some(parent) = end.parent_node() {
                    put(make(), &parent, Some(&end));
                }
            }));
        }
        Bit::Each(keys, row) => {
            let (_, end) = bounds(parent, before);
            let rows: RefCell<Table<String, (El, Owner)>> = RefCell::default();
            let owner = Owner::new();
            follow(Box::new(move || list(&keys(), &row, &end, &mut rows.borrow_mut(), &owner)));
        }
    }
}

fn insert(parent: &Node, node: &Node, before: Option<&Node>) {
    let _ = parent.insert_before(node, before);
}

/// Two invisible marks between which a live part stands.
fn bounds(parent: &Node, before: Option<&Node>) -> (Node, Node) {
    let marks: (Node, Node) = (document().create_comment("").into(), document().create_comment("").into());
    insert(parent, &marks.0, before);
    insert(parent, &marks.1, before);
    marks
}

/// Takes out everything between two marks.
fn clear(start: &Node, end: &Node) {
    while let Some(node) = start.next_sibling().filter(|node| !node.is_same_node(Some(end))) {
        if let Some(parent) = node.parent_node() {
            let _ = parent.remove_child(&node);
        }
    }
}

/// Brings the rows before `end` to `keys`: new keys get a row, keys that are gone lose theirs, the rest is moved.
fn list(
    keys: &[String],
    row: &dyn Fn(&str) -> El,
    end: &Node,
    rows: &mut Table<String, (El, Owner)>,
    owner: &Owner,
) {
    rows.retain(|key, (el, owner)| {
        let stays = keys.contains(key);
        if !stays {
            el.0.remove();
            owner.cleanup();
        }
        stays
    });
    let Some(parent) = end.parent_node() else { return };
    // A row that is moved loses the focus, and whoever works by keys or by ear their place with it.
    let focused = document().active_element();
    let mut next = end.clone();
    for key in keys.iter().rev() {
        if !rows.contains_key(key) {
            let own = owner.with(Owner::new);
            // A row follows its own signals; reading them must not draw the whole list again.
            let el = own.with(|| untrack(|| row(key)));
            rows.insert(key.clone(), (el, own));
        }
        let Some((el, _)) = rows.get(key) else { continue };
        let node: &Node = &el.0;
        if !node.next_sibling().is_some_and(|after| after.is_same_node(Some(&next))) {
            insert(&parent, node, Some(&next));
        }
        next = node.clone();
    }
    if let Some(focused) = focused
        && document().active_element().as_ref() != Some(&focused)
    {
        El(focused).focus();
    }
}
