//! See `entries/stock.rs`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| entries::stock::run(bytes));
