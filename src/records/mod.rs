//! Reads records that crews and stores keep: CSV and NDJSON into typed values; every mistake told with line and column.

pub mod run;
