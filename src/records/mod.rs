//! Reads records that crews and stores keep, from CSV and NDJSON into typed values.
//!
//! Every mistake is told with its line and column, all at once, and a row that can't be read doesn't keep the others from
//! being read: a list of a hundred cylinders with one slip of the pen is still a list of ninety-nine.

mod bytes;
pub mod run;
pub mod stock;
pub mod table;
