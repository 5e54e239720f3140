//! The only code of the page that knows there is a service worker.

use super::{call, document, listen, options, window};
use crate::app::graph::{RwSignal, StoredValue};
use std::cell::Cell;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{
    RegistrationOptions, ServiceWorkerContainer, ServiceWorkerRegistration, ServiceWorkerState,
    ServiceWorkerUpdateViaCache,
};

/// What the service worker has to say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Offline {
    /// Nothing to tell.
    Quiet,
    /// Everything needed without a signal has just been stored for the first time.
    Ready,
    /// A newer version waits to be used.
    NewVersion,
}

/// The page's side of the service worker.
#[derive(Clone, Copy)]
pub struct Bridge {
    state: RwSignal<Offline>,
    taken_over: RwSignal<bool>,
    registration: StoredValue<Option<ServiceWorkerRegistration>>,
}

impl Bridge {
    /// Registers `./sw.js` and watches for versions. Does nothing where the browser has no service workers.
    pub fn start() -> Bridge {
        let bridge = Bridge {
            state: RwSignal::new(Offline::Quiet),
            taken_over: RwSignal::new(false),
            registration: StoredValue::new(None),
        };
        let container = window()
            .map(|window| window.navigator())
            // The property is missing in private windows and on plain http; reading it there would throw later.
            .filter(|navigator| js_sys::Reflect::has(navigator, &"serviceWorker".into()).unwrap_or(false))
            .map(|navigator| navigator.service_worker());
        if let Some(container) = container {
            spawn_local(async move { bridge.register(container).await });
        }
        bridge
    }

    /// What to show now.
    pub fn state(self) -> Offline {
        self.state.get()
    }

    /// The keeper has read it.
    pub fn hush(self) {
        self.state.set(Offline::Quiet);
    }

    /// The keeper went on to another place: that it works without signal was told long enough.
    pub fn went_on(self) {
        if self.state.get_untracked() == Offline::Ready {
            self.hush();
        }
    }

    /// A newer version has taken over: the page is to be loaded anew, which is for whoever knows what would be lost by it.
    pub fn taken_over(self) -> bool {
        self.taken_over.get()
    }

    /// Lets the waiting version take over.
    pub fn use_new_version(self) {
        let waiting =
            self.registration.with_value(|known| known.as_ref().and_then(ServiceWorkerRegistration::waiting));
        if let Some(waiting) = waiting {
            let _ = waiting.post_message(&options(&[("type", "SKIP_WAITING".into())]));
        }
    }

    async fn register(self, container: ServiceWorkerContainer) {
        let settings = RegistrationOptions::new();
        settings.set_scope("./");
        settings.set_update_via_cache(ServiceWorkerUpdateViaCache::None);
        let promise = container.register_with_options("./sw.js", &settings);
        let Ok(registration) = JsFuture::from(promise).await else { return };
        let Ok(registration) = registration.dyn_into::<ServiceWorkerRegistration>() else { return };
        let first = container.controller().is_none();
        if !first && registration.waiting().is_some() {
            self.state.set(Offline::NewVersion);
        }
        self.registration.set_value(Some(registration.clone()));
        self.watch_installing(&registration, &container);
        let found = (registration.clone(), container.clone());
        listen(&registration, "updatefound", move |_| self.watch_installing(&found.0, &found.1));
        self.watch_takeover(&container, first);
        look_for_updates(registration);
    }

    fn watch_installing(self, registration: &ServiceWorkerRegistration, container: &ServiceWorkerContainer) {
        let Some(installing) = registration.installing() else { return };
        let (worker, container) = (installing.clone(), container.clone());
        listen(&installing, "statechange", move |_| match worker.state() {
            ServiceWorkerState::Installed if container.controller().is_some() => {
                self.state.set(Offline::NewVersion);
            }
            // First visit: nobody controlled the page, so what became active is the first copy.
            ServiceWorkerState::Activated if self.state.get_untracked() == Offline::Quiet => {
                self.state.set(Offline::Ready);
            }
            _ => {}
        });
    }

    /// A new version takes over a page that an older one served, on the word given here or in another tab. The first
    /// worker of a first visit also takes over, and there is nothing to load anew for.
    fn watch_takeover(self, container: &ServiceWorkerContainer, first: bool) {
        let first = Cell::new(first);
        listen(container, "controllerchange", move |_| {
            if !first.replace(false) {
                self.taken_over.renew(true);
            }
        });
    }
}

/// Asks for a newer version when the page is shown again, at most once an hour.
fn look_for_updates(registration: ServiceWorkerRegistration) {
    const HOUR: f64 = 3_600_000.0;
    let last = Cell::new(js_sys::Date::now());
    let Some(document) = document() else { return };
    listen(&document.clone(), "visibilitychange", move |_| {
        let now = js_sys::Date::now();
        if !document.hidden() && now - last.get() > HOUR {
            last.set(now);
            let _ = call(&registration, "update", &wasm_bindgen::JsValue::UNDEFINED);
        }
    });
}
