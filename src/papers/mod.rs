//! Text that leaves the phone.

pub mod backup;
pub mod calendar;
pub mod codes;
pub mod content_line;
pub mod pack;
pub mod records;
pub mod recover;
pub mod table;
pub mod table_in;
