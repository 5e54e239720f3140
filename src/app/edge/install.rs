//! Putting the page on the home screen.

use super::{call, listen, media, window};
use crate::app::graph::{RwSignal, StoredValue};
use wasm_bindgen::JsValue;

/// What can be offered for the home screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Install {
    /// The page already runs from there.
    Done,
    /// The browser shows its own question when asked.
    Ask,
    /// The keeper has to use the browser's menu.
    ByHand,
}

/// The state of the offer, and the way to accept it.
#[derive(Clone, Copy)]
pub struct Installer {
    state: RwSignal<Install>,
    event: StoredValue<Option<JsValue>>,
}

impl Installer {
    /// Listens for the browser's offer.
    pub fn start() -> Installer {
        let standalone = media("(display-mode: standalone)");
        let state = RwSignal::new(if standalone { Install::Done } else { Install::ByHand });
        let event = StoredValue::new(None);
        if let Some(window) = window() {
            listen(&window, "beforeinstallprompt", move |offer| {
                offer.prevent_default();
                event.set_value(Some(offer.into()));
                state.set(Install::Ask);
            });
            listen(&window, "appinstalled", move |_| state.set(Install::Done));
        }
        Installer { state, event }
    }

    /// What can be offered now.
    pub fn state(self) -> Install {
        self.state.get()
    }

    /// Shows the browser's question. It can be shown once; after that the browser's menu is left.
    pub fn ask(self) {
        if let Some(offer) = self.event.try_update_value(Option::take).flatten() {
            let _ = call(&offer, "prompt", &JsValue::UNDEFINED);
            self.state.set(Install::ByHand);
        }
    }
}
