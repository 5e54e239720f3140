//! The camera as a reader of codes (Media Capture and Streams; Shape Detection API). The picture goes from the camera to
//! the screen and to the browser's own reader, and nowhere else.

use super::{answer, call, class, document, field, listen, options, window};
use js_sys::{Array, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::spawn_local;
use web_sys::Element;

/// The browser's reader of codes.
const READER: &str = "BarcodeDetector";

/// What a place for moving pictures shows.
const SHOWS: &str = "srcObject";

/// Why there is no picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoCamera {
    /// The browser reads no codes.
    NoReader,
    /// The keeper, or the phone's settings, would not have it.
    NotAllowed,
    /// There is none, or another app has it.
    NotThere,
}

/// A camera that is on.
#[derive(Clone)]
pub struct Camera {
    stream: JsValue,
    reader: JsValue,
    video: Element,
}

/// Whether the browser has what it takes. Whether its reader knows these codes is asked when the camera is opened.
pub fn can() -> bool {
    class(READER).is_some() && devices().is_some()
}

/// Calls `then` whenever the page goes out of sight. Timers may be asleep by then.
pub fn when_hidden(then: impl Fn() + 'static) {
    let Some(document) = document() else { return };
    listen(&document.clone(), "visibilitychange", move |_| {
        if document.hidden() {
            then();
        }
    });
}

fn devices() -> Option<JsValue> {
    let devices = field(&window()?.navigator(), "mediaDevices");
    devices.is_object().then_some(devices)
}

/// Opens the camera at the back and hands it to `then`, at once: it is on, and whoever asked for it may want it no longer.
/// What it sees is shown in `video` by [`Camera::show`].
pub fn open(video: Element, then: impl FnOnce(Result<Camera, NoCamera>) + 'static) {
    spawn_local(async move { then(opened(video).await) });
}

async fn opened(video: Element) -> Result<Camera, NoCamera> {
    let class = class(READER).ok_or(NoCamera::NoReader)?;
    let read = answer(&class, "getSupportedFormats", &JsValue::UNDEFINED).await;
    let fits = read.is_ok_and(|read| Array::from(&read).includes(&"qr_code".into(), 0));
    let formats = options(&[("formats", Array::of1(&"qr_code".into()).into())]);
    let reader = Reflect::construct(&class, &Array::of1(&formats)).ok().filter(|_| fits);
    let reader = reader.ok_or(NoCamera::NoReader)?;
    let wanted = options(&[("facingMode", "environment".into())]);
    let wanted = options(&[("video", wanted.into())]);
    let devices = devices().ok_or(NoCamera::NoReader)?;
    let stream = answer(&devices, "getUserMedia", &wanted).await.map_err(|error| {
        match field(&error, "name").as_string().as_deref() {
            Some("NotAllowedError" | "SecurityError") => NoCamera::NotAllowed,
            _ => NoCamera::NotThere,
        }
    })?;
    Ok(Camera { stream, reader, video })
}

impl Camera {
    /// Whether somebody sees what it sees: its place in the page is there, and the page is in sight.
    pub fn in_sight(&self) -> bool {
        self.video.is_connected() && !document().is_some_and(|document| document.hidden())
    }

    /// Shows what it sees. Until there is a picture nothing is found in it.
    pub fn show(&self) {
        let _ = Reflect::set(&self.video, &SHOWS.into(), &self.stream);
        let playing = answer(&self.video, "play", &JsValue::UNDEFINED);
        spawn_local(async move {
            let _ = playing.await;
        });
    }

    /// Hands the texts of the codes in the picture to `then`, with the camera itself.
    pub fn look(self, then: impl FnOnce(Vec<String>, Camera) + 'static) {
        let found = answer(&self.reader, "detect", &self.video);
        spawn_local(async move {
            let found = found.await.unwrap_or_default();
            let mut texts = Vec::new();
            if found.is_object() {
                for code in Array::from(&found).iter() {
                    texts.extend(field(&code, "rawValue").as_string());
                }
            }
            then(texts, self);
        });
    }

    /// Switches it off.
    pub fn stop(&self) {
        if let Some(tracks) = call(&self.stream, "getTracks", &JsValue::UNDEFINED) {
            for track in Array::from(&tracks).iter() {
                call(&track, "stop", &JsValue::UNDEFINED);
            }
        }
        // The place is another one's where the camera was opened again meanwhile.
        if field(&self.video, SHOWS) == self.stream {
            let _ = Reflect::set(&self.video, &SHOWS.into(), &JsValue::NULL);
        }
    }
}
