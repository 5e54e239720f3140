//! Text that leaves the phone.

pub mod backup;
