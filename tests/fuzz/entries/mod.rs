//! What each fuzz target does with its bytes, and what must hold of the answer.
//!
//! The targets (`tests/fuzz/targets/`) and `tests/corpus.rs` share these functions: what an engine once found is tried again by
//! every `cargo test`, without an engine. An entry panics where something doesn't hold, and must take any bytes at all.

pub mod answer;
pub mod code;
pub mod compare;
pub mod desk;
pub mod guards;
mod html;
mod http;
mod places;
pub mod plan;
pub mod quantities;
pub mod reader;
pub mod review;
pub mod shown;
pub mod stock;
pub mod yaml;

use oxyfolio::{CHAPTERS, compile::source::Sources};

/// What is done with the bytes of a target.
pub type Entry = fn(&[u8]);

/// Every target by its name, which is that of its file and of its corpus.
pub const ALL: [(&str, Entry); 12] = [
    ("answer", answer::run),
    ("code", code::run),
    ("compare", compare::run),
    ("desk", desk::run),
    ("guards", guards::run),
    ("plan", plan::run),
    ("quantities", quantities::run),
    ("reader", reader::run),
    ("review", review::run),
    ("shown", shown::run),
    ("stock", stock::run),
    ("yaml", yaml::run),
];

/// Ends a chapter where bytes hold several. Stands in no chapter that is accepted.
const END: char = '\u{c}';

/// The demonstration's chapters.
fn demonstration() -> Sources {
    let mut sources = Sources::default();
    for (name, text) in CHAPTERS {
        sources.add((*name).to_owned(), (*name).to_owned(), (*text).to_owned());
    }
    sources
}

/// A first byte that chooses, and the text behind it; none where it isn't UTF-8.
fn chosen(bytes: &[u8]) -> Option<(u8, &str)> {
    let (first, rest) = bytes.split_first()?;
    Some((*first, std::str::from_utf8(rest).ok()?))
}

/// A number that follows from the bytes, to do what costs much only now and then, and for the same bytes always.
fn now_and_then(bytes: &[u8], each: u64) -> bool {
    // FNV-1a, 64 bits (RFC 9923).
    let hash = bytes.iter().fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(0x100_0000_01b3)
    });
    hash % each == 0
}
