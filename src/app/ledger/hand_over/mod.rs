//! Two phones without a signal: hives handed over, and taken in.

mod codes;
pub(super) mod give;
pub(super) mod take;
