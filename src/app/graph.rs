//! Values the page follows.
//!
//! The framework's reactive graph knows who reads what and what must be drawn again; this file puts values of any type
//! on it. The framework's own `RwSignal<T>`, `Memo<T>` and `StoredValue<T>` compile the graph anew for every type, and
//! unfold into some hundred bytes at each place that reads one; on this page that came to a quarter of the download
//! (the figures are in DEVELOPERS.md). Here the graph is compiled once: it sees a trigger for a signal and a counter
//! for a memo, and the value lies beside it. Names and meaning are the framework's.

use leptos::prelude::{
    ArcMemo, ArcTrigger, Effect as Watch, Get, GetUntracked, GetValue, LocalStorage, Notify,
    StoredValue as Arena, Track,
};
use std::any::Any;
use std::cell::RefCell;
use std::marker::PhantomData;
use std::rc::Rc;

pub use leptos::prelude::{Owner, expect_context, on_cleanup, provide_context};

/// A value whose type only its handle knows. Boxed once more, so that it is handed about in one word: the page does it
/// some six hundred times.
type Held = Rc<Box<dyn Any>>;

/// Where a value lies, and who follows it.
struct Slot {
    value: Rc<RefCell<Held>>,
    node: Node,
}

enum Node {
    /// Nobody follows it.
    Stored,
    /// Whoever changes it tells its followers.
    Signal(ArcTrigger),
    /// Worked out from others. The counter moves on when the outcome has changed.
    Memo(ArcMemo<u32>),
}

/// The name of a slot. It lives as long as the part of the page it was made in.
type Key = Arena<Rc<Slot>, LocalStorage>;

#[inline(never)]
fn keep(node: Node, value: Rc<RefCell<Held>>) -> Key {
    Arena::new_local(Rc::new(Slot { value, node }))
}

#[inline(never)]
fn stored(value: Held) -> Key {
    keep(Node::Stored, Rc::new(RefCell::new(value)))
}

#[inline(never)]
fn signal(value: Held) -> Key {
    keep(Node::Signal(ArcTrigger::new()), Rc::new(RefCell::new(value)))
}

#[inline(never)]
fn memo(make: Box<dyn Fn() -> Held>, same: fn(&Held, &Held) -> bool) -> Key {
    let value = Rc::new(RefCell::new(held(())));
    // Through the arena, because the graph wants what it calls to be fit for threads, and a name of a slot is.
    let work = Arena::new_local(Rc::new((make, Rc::clone(&value))));
    let count = move |before: Option<u32>| {
        let Some(work) = work.try_get_value() else { return (0, false) };
        let (make, value) = &*work;
        let now = make();
        match before {
            Some(count) if same(&value.borrow(), &now) => (count, false),
            _ => {
                value.replace(now);
                (before.unwrap_or(0).wrapping_add(1), true)
            }
        }
    };
    keep(Node::Memo(ArcMemo::new_owning(count)), value)
}

#[inline(never)]
fn slot(key: Key) -> Rc<Slot> {
    #[allow(clippy::expect_used)] // a handle stays in the part of the page that its slot belongs to
    key.try_get_value().expect("a value of this part of the page")
}

/// The value now; whoever asks hears of changes.
#[inline(never)]
fn followed(key: Key) -> Held {
    let slot = slot(key);
    match &slot.node {
        Node::Stored => {}
        Node::Signal(trigger) => trigger.track(),
        Node::Memo(memo) => {
            memo.get();
        }
    }
    slot.value.borrow().clone()
}

/// The value now.
#[inline(never)]
fn seen(key: Key) -> Held {
    let slot = slot(key);
    if let Node::Memo(memo) = &slot.node {
        memo.get_untracked();
    }
    slot.value.borrow().clone()
}

/// What comes late, such as a timer, may find that its part of the page is gone: then there is nothing to do.
#[inline(never)]
fn put(key: Key, value: Held) {
    if let Some(slot) = key.try_get_value() {
        slot.value.replace(value);
    }
}

#[inline(never)]
fn tell(key: Key) {
    if let Some(slot) = key.try_get_value()
        && let Node::Signal(trigger) = &slot.node
    {
        trigger.notify();
    }
}

/// Changes the value where it lies. Not while somebody is reading it: then it stays as it is, and a debug build stops.
#[inline(never)]
fn change(key: Key, change: &mut dyn FnMut(&mut dyn Any)) {
    let Some(slot) = key.try_get_value() else { return };
    let mut value = slot.value.replace(held(()));
    let free = Rc::get_mut(&mut value).map(|value| change(value.as_mut())).is_some();
    slot.value.replace(value);
    debug_assert!(free, "a value was changed while it was being read");
}

#[inline(never)]
fn held<T: 'static>(value: T) -> Held {
    Rc::new(Box::new(value))
}

/// The value as what it is.
#[inline(never)]
fn cast<T: 'static>(held: &Held) -> &T {
    #[allow(clippy::expect_used)] // a handle is made together with its value
    held.downcast_ref().expect("the type of its handle")
}

#[inline(never)]
#[allow(clippy::needless_pass_by_value)] // let go of here once, not at every call
fn copy<T: Clone + 'static>(held: Held) -> T {
    cast::<T>(&held).clone()
}

macro_rules! handle {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        pub struct $name<T>(Key, PhantomData<fn() -> T>);

        impl<T> Clone for $name<T> {
            fn clone(&self) -> Self {
                *self
            }
        }

        impl<T> Copy for $name<T> {}
    };
}

handle! {
    /// A value that is set, and followed by what reads it.
    RwSignal
}
handle! {
    /// A value that is worked out from others, and followed when the outcome changes.
    Memo
}
handle! {
    /// A value that nobody follows.
    StoredValue
}

macro_rules! followed {
    ($name:ident) => {
        impl<T: 'static> $name<T> {
            /// A copy of the value; whoever asks hears of changes.
            pub fn get(self) -> T
            where
                T: Clone,
            {
                copy(followed(self.0))
            }

            /// A copy of the value as it is now.
            pub fn get_untracked(self) -> T
            where
                T: Clone,
            {
                copy(seen(self.0))
            }

            /// Looks at the value and hears of changes.
            pub fn with<R>(self, look: impl FnOnce(&T) -> R) -> R {
                look(cast(&followed(self.0)))
            }

            /// Looks at the value as it is now.
            pub fn with_untracked<R>(self, look: impl FnOnce(&T) -> R) -> R {
                look(cast(&seen(self.0)))
            }

            /// Hears of changes.
            pub fn track(self) {
                followed(self.0);
            }
        }
    };
}

followed!(RwSignal);
followed!(Memo);

impl<T: 'static> RwSignal<T> {
    /// A signal that starts with `value`.
    pub fn new(value: T) -> RwSignal<T> {
        RwSignal(signal(held(value)), PhantomData)
    }

    /// Puts `value` in its place and tells who follows it.
    pub fn set(self, value: T) {
        put(self.0, held(value));
        tell(self.0);
    }

    /// The same, unless `value` stands there already.
    pub fn renew(self, value: T)
    where
        T: PartialEq,
    {
        let known = self.0.try_get_value().is_none_or(|slot| *cast::<T>(&slot.value.borrow()) == value);
        if !known {
            self.set(value);
        }
    }

    /// Changes the value and tells who follows it. Not from inside a `with` of the same signal: the value that is being
    /// read stays as it is, and a debug build stops with a word about it.
    pub fn update(self, change: impl FnOnce(&mut T)) {
        self.try_update_untracked(change);
        tell(self.0);
    }

    /// Changes the value and tells nobody; [`RwSignal::notify`] does. None while it is being read, where a
    /// debug build stops.
    pub fn try_update_untracked<R>(self, change: impl FnOnce(&mut T) -> R) -> Option<R> {
        changed(self.0, change)
    }

    /// Tells who follows it.
    pub fn notify(self) {
        tell(self.0);
    }
}

impl<T: PartialEq + 'static> Memo<T> {
    /// What `make` says, worked out again when something that it read has changed and somebody asks.
    pub fn new(make: impl Fn() -> T + 'static) -> Memo<T> {
        Memo(memo(Box::new(move || held(make())), same::<T>), PhantomData)
    }
}

impl<T: 'static> StoredValue<T> {
    /// A value that lives as long as the part of the page it is made in.
    pub fn new(value: T) -> StoredValue<T> {
        StoredValue(stored(held(value)), PhantomData)
    }

    /// A copy of the value.
    pub fn get_value(self) -> T
    where
        T: Clone,
    {
        copy(seen(self.0))
    }

    /// Looks at the value.
    pub fn with_value<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look(cast(&seen(self.0)))
    }

    /// Puts `value` in its place.
    pub fn set_value(self, value: T) {
        put(self.0, held(value));
    }

    /// Changes the value. None while it is being read, where a debug build stops.
    pub fn try_update_value<R>(self, change: impl FnOnce(&mut T) -> R) -> Option<R> {
        changed(self.0, change)
    }
}

fn same<T: PartialEq + 'static>(one: &Held, other: &Held) -> bool {
    cast::<T>(one) == cast::<T>(other)
}

fn changed<T: 'static, R>(key: Key, by: impl FnOnce(&mut T) -> R) -> Option<R> {
    let (mut by, mut done) = (Some(by), None);
    change(key, &mut |value| {
        if let (Some(by), Some(value)) = (by.take(), value.downcast_mut()) {
            done = Some(by(value));
        }
    });
    done
}

/// Runs `work` after this, and again whenever something that it read has changed, for as long as the part of the page
/// it was made in.
pub fn effect(work: impl FnMut() + 'static) {
    watch(Box::new(work));
}

/// The same for work that knows what it said the last time.
pub fn effect_since<T: 'static>(mut work: impl FnMut(Option<T>) -> T + 'static) {
    let mut before = None;
    effect(move || before = Some(work(before.take())));
}

#[inline(never)]
fn watch(work: Box<dyn FnMut()>) {
    Watch::new(work);
}

/// Runs `work` without following what it reads.
pub fn untrack<R>(work: impl FnOnce() -> R) -> R {
    leptos::prelude::untrack(work)
}

/// Calls `then` after `milliseconds`.
pub fn after(milliseconds: u64, then: impl FnOnce() + 'static) {
    later(milliseconds, Box::new(then));
}

#[inline(never)]
fn later(milliseconds: u64, then: Box<dyn FnOnce()>) {
    leptos::prelude::set_timeout(then, std::time::Duration::from_millis(milliseconds));
}
