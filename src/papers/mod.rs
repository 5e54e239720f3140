//! Text that leaves the phone.

pub mod backup;
pub mod calendar;
pub mod content_line;
pub mod records;
pub mod table;
pub mod table_in;
