//! See `entries/yaml.rs`.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| entries::yaml::run(bytes));
