//! Deflate (RFC 1951) by the browser's own streams: code for it in the page would cost more than all the camera codes.

use super::{answer, call, field};
use js_sys::{Array, Reflect, Uint8Array};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::spawn_local;
use web_sys::Blob;

/// Why bytes were not unpacked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unpacked {
    /// The browser cannot.
    NoWay,
    /// More comes out than was allowed.
    TooLarge,
    /// They are nothing that was packed.
    Damaged,
}

/// Packs `bytes` and hands them to `then`; where the browser cannot, as they are.
pub fn pack(bytes: Vec<u8>, then: impl FnOnce(Result<Vec<u8>, Vec<u8>>) + 'static) {
    let reader = reader("CompressionStream", &bytes);
    // What is packed here is in memory already, so it has no cap.
    through(reader, u32::MAX, Box::new(|packed| then(packed.map_err(|_| bytes))));
}

/// Unpacks `bytes` and hands them to `then`; of what would come out beyond `most` bytes nothing is kept.
pub fn unpack(bytes: &[u8], most: u32, then: impl FnOnce(Result<Vec<u8>, Unpacked>) + 'static) {
    through(reader("DecompressionStream", bytes), most, Box::new(then));
}

fn through(reader: Option<JsValue>, most: u32, then: Box<dyn FnOnce(Result<Vec<u8>, Unpacked>)>) {
    spawn_local(async move {
        then(match reader {
            Some(reader) => read(reader, most).await,
            None => Err(Unpacked::NoWay),
        });
    });
}

async fn read(reader: JsValue, most: u32) -> Result<Vec<u8>, Unpacked> {
    let mut out = Vec::new();
    // Piece by piece: a few bytes can unpack to a thousand times as many.
    loop {
        let piece = answer(&reader, "read", &JsValue::UNDEFINED).await.map_err(|_| Unpacked::Damaged)?;
        if field(&piece, "done").is_truthy() {
            return Ok(out);
        }
        let piece: Uint8Array = field(&piece, "value").dyn_into().map_err(|_| Unpacked::Damaged)?;
        let room = most.saturating_sub(u32::try_from(out.len()).unwrap_or(u32::MAX));
        if piece.length() > room {
            call(&reader, "cancel", &JsValue::UNDEFINED);
            return Err(Unpacked::TooLarge);
        }
        out.extend(piece.to_vec());
    }
}

fn reader(class: &str, bytes: &[u8]) -> Option<JsValue> {
    let class = super::class(class)?;
    // Older browsers have the class and not this format.
    let stream = Reflect::construct(&class, &Array::of1(&"deflate-raw".into())).ok()?;
    let blob = Blob::new_with_u8_array_sequence(&Array::of1(&Uint8Array::from(bytes))).ok()?;
    let readable = call(&blob, "stream", &JsValue::UNDEFINED)?;
    call(&call(&readable, "pipeThrough", &stream)?, "getReader", &JsValue::UNDEFINED)
}
