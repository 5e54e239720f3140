//! What happens to the keeper's records.
