//! See `entries/quantities.rs`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| entries::quantities::run(bytes));
