//! The Book: what happened, and the files that keep it safe.

pub mod words;
