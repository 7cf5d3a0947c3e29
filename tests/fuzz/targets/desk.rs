//! See `entries/desk.rs`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| entries::desk::run(bytes));
