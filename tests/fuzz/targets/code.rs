//! See `entries/code.rs`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| entries::code::run(bytes));
