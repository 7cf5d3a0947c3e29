//! Any bytes as chapters: reading, drawing what is wrong and writing Rust never panic, and answers keep their limits.

use oxyfolio::compile::{compile, emit, source::Sources};

use super::{END, chosen, demonstration, places};

/// The first byte says whether the chapters stand beside the demonstration's, so that what refers to its rules is read to the end.
pub fn run(bytes: &[u8]) {
    let Some((first, text)) = chosen(bytes) else {
        return;
    };
    let mut sources = if first % 8 == 0 {
        demonstration()
    } else {
        Sources::default()
    };
    for (number, text) in text.split(END).enumerate() {
        let name = format!("fuzz-{number}.md");
        sources.add(name.clone(), name, text.to_owned());
    }
    match compile(sources) {
        Ok(compiled) => {
            assert!(emit::rust(&compiled.book).contains("RULEBOOK"));
            places::check(&compiled.notes, &compiled.sources);
        }
        Err(rejected) => {
            assert!(!rejected.diagnostics.is_empty(), "rejected without a reason");
            places::check(&rejected.diagnostics, &rejected.sources);
        }
    }
}
