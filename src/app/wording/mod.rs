//! What the screens say. One file a language; every sentence is a constant or a function of plain values, so the
//! compiler proves that a second language leaves nothing out.

pub mod en;
pub mod en_beetle;
pub mod en_beetle_honey;
pub mod en_beetle_rhythm;
pub mod en_bench;
pub mod en_book;
pub mod en_catch;
pub mod en_cost;
pub mod en_decide;
pub mod en_due;
pub mod en_hand_over;
pub mod en_hive;
pub mod en_kinds;
pub mod en_ledger;
pub mod en_limit;
pub mod en_load;
pub mod en_log;
pub mod en_lot;
pub mod en_minutes;
pub mod en_notices;
pub mod en_order;
pub mod en_packet;
pub mod en_papers;
pub mod en_records;
pub mod en_round;
pub mod en_season;
pub mod en_store;
pub mod en_sums;
pub mod en_table_in;
pub mod en_trial;
pub mod en_typed;
pub mod en_walk;
pub mod en_yard_decides;
