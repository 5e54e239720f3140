//! Deflate (RFC 1951) by the browser's own streams: code for it in the page would cost more than all the camera codes.

use super::call;
use js_sys::{Array, Function, Promise, Reflect, Uint8Array};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
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

/// The bytes packed; none where the browser cannot.
pub async fn pack(bytes: &[u8]) -> Option<Vec<u8>> {
    // What is packed here is in memory already, so it has no cap.
    through("CompressionStream", bytes, u32::MAX).await.ok()
}

/// What was packed.
///
/// # Errors
/// [`Unpacked`]; of what would come out beyond `most` bytes nothing is kept.
pub async fn unpack(bytes: &[u8], most: u32) -> Result<Vec<u8>, Unpacked> {
    through("DecompressionStream", bytes, most).await
}

async fn through(class: &str, bytes: &[u8], most: u32) -> Result<Vec<u8>, Unpacked> {
    let reader = reader(class, bytes).ok_or(Unpacked::NoWay)?;
    let mut out = Vec::new();
    // Piece by piece: a few bytes can unpack to a thousand times as many.
    loop {
        let piece: Promise = call(&reader, "read", &JsValue::UNDEFINED)
            .and_then(|piece| piece.dyn_into().ok())
            .ok_or(Unpacked::NoWay)?;
        let piece = JsFuture::from(piece).await.map_err(|_| Unpacked::Damaged)?;
        let field = |name: &str| Reflect::get(&piece, &name.into()).ok();
        if field("done").is_none_or(|done| done.is_truthy()) {
            return Ok(out);
        }
        let piece: Uint8Array =
            field("value").and_then(|value| value.dyn_into().ok()).ok_or(Unpacked::Damaged)?;
        let room = most.saturating_sub(u32::try_from(out.len()).unwrap_or(u32::MAX));
        if piece.length() > room {
            call(&reader, "cancel", &JsValue::UNDEFINED);
            return Err(Unpacked::TooLarge);
        }
        out.extend(piece.to_vec());
    }
}

fn reader(class: &str, bytes: &[u8]) -> Option<JsValue> {
    let class: Function = Reflect::get(&js_sys::global(), &class.into()).ok()?.dyn_into().ok()?;
    // Older browsers have the class and not this format.
    let stream = Reflect::construct(&class, &Array::of1(&"deflate-raw".into())).ok()?;
    let blob = Blob::new_with_u8_array_sequence(&Array::of1(&Uint8Array::from(bytes))).ok()?;
    let readable = call(&blob, "stream", &JsValue::UNDEFINED)?;
    call(&call(&readable, "pipeThrough", &stream)?, "getReader", &JsValue::UNDEFINED)
}
