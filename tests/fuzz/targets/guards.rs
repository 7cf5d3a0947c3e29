//! See `entries/guards.rs`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| entries::guards::run(bytes));
