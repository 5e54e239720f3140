//! The records in the browser's own storage.
