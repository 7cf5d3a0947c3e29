//! See `entries/shown.rs`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| entries::shown::run(bytes));
