//! See `entries/compare.rs`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| entries::compare::run(bytes));
