//! See `entries/reader.rs`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| entries::reader::run(bytes));
