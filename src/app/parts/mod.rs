//! Parts every screen is built from.
//!
//! Each part is a plain builder that ends in `view()` and gives an [`El`](super::el::El).
//!
//! | part | for |
//! |---|---|
//! | [`key::Key`], [`key::link`] | something to press; a way to another place |
//! | [`field::Field`] | a typed text with its unit, echo and error sentence |
//! | [`stepper::Stepper`] | a whole number with big − and + |
//! | [`choice::Choice`] | one of a few |
//! | [`answer::Answer`] | an answer, the sum under it, the reason on tap |
//! | [`card::Card`] | a stretch of page that opens and shuts |
//! | [`notice::Notice`] | a caution or a plain remark |
//! | [`sheet::sheet`] | something on top of the page until it is closed |
//! | [`drawing`] | hive, box and trap as drawings with a text equivalent |

pub mod answer;
pub mod card;
pub mod choice;
pub mod drawing;
pub mod field;
pub mod icon;
pub mod key;
pub mod notice;
pub mod sheet;
pub mod stepper;
