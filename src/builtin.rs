//! The rulebook compiled into this library: the demo of an invented agency, from `rules/`.

include!(concat!(env!("OUT_DIR"), "/rulebook.rs"));

/// The chapters the rulebook was compiled from, by file name, for reading it anew.
#[cfg(feature = "compile")]
pub static CHAPTERS: &[(&str, &str)] = include!(concat!(env!("OUT_DIR"), "/chapters.rs"));
