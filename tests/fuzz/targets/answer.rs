//! See `entries/answer.rs`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| entries::answer::run(bytes));
