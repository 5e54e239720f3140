//! Another order of the walk, in words.

use super::{put_isolated, yard_now};
use crate::app::wording::en::put;
use crate::app::wording::en_ledger as w;
use crate::book::Book;
use crate::book::entry::{Entry, What};
use crate::book::id::ThingId;

/// Hives named of an order of the walk.
const ORDER_SHOWN: usize = 5;

/// "walking order changed: 9, 5, 6, 7, 8 instead of 5, 6, 7, 8, 9": both orders from the first to the last hive that
/// stands elsewhere, in full where these are few.
pub(super) fn put_order(said: &mut String, book: &Book, entry: &Entry, yard: &ThingId, hives: &[ThingId]) {
    w::order(said, yard_now(book, yard));
    let before = order_before(book, entry, yard);
    // A line may leave out hives that came later: only what both orders name is compared.
    let mut now: Vec<&ThingId> = hives.iter().filter(|hive| before.contains(hive)).collect();
    let mut before: Vec<&ThingId> = before.iter().filter(|hive| now.contains(hive)).collect();
    while now.last().is_some_and(|last| before.last() == Some(last)) {
        now.pop();
        before.pop();
    }
    let alike = now.iter().zip(&before).take_while(|(now, before)| now == before).count();
    for (order, words) in [(now, w::ORDER_NOW), (before, w::ORDER_BEFORE)] {
        let moved = order.get(alike..).unwrap_or_default();
        for (at, hive) in moved.iter().take(ORDER_SHOWN).enumerate() {
            put(said, if at > 0 { w::NEXT } else { words });
            put_isolated(said, book.standing().hives.get(*hive).map_or("?", |now| &now.tag));
        }
        put(said, if moved.len() > ORDER_SHOWN { w::ORDER_MORE } else { "" });
    }
}

/// The hives of `yard` in the order in which they were walked before `entry`.
fn order_before(book: &Book, entry: &Entry, yard: &ThingId) -> Vec<ThingId> {
    let struck = book.log().struck();
    let mut order: Vec<ThingId> = Vec::new();
    for line in book.log().entries() {
        if line.id >= entry.id || struck.contains_key(&line.id) {
            continue;
        }
        match &line.what {
            What::Hive { yard: of, .. } if of == yard => order.push(line.id.thing(0)),
            What::HiveMoved { hive, to, .. } => {
                order.retain(|known| known != hive);
                if to == yard {
                    order.push(hive.clone());
                }
            }
            What::Order { yard: of, hives } if of == yard => {
                let known = std::mem::replace(&mut order, hives.clone());
                for hive in known {
                    if !order.contains(&hive) {
                        order.push(hive);
                    }
                }
            }
            _ => {}
        }
    }
    order
}
