//! Any text as the YAML of one rule block: nothing gets out of its fence, nothing of it is passed over without a word.

use oxyfolio::book::Kind;
use oxyfolio::compile::{
    chapter, compile,
    diagnostic::{Diagnostics, Level},
    source::Sources,
};

use super::{chosen, demonstration, places};

/// First bytes from here on let a block stand beside the demonstration: a multiple of the number of kinds.
const BESIDE: u8 = 242;

/// The first byte chooses the kind of rule, and whether the block stands beside the demonstration.
pub fn run(bytes: &[u8]) {
    let Some((first, body)) = chosen(bytes) else {
        return;
    };
    let kind = Kind::ALL[usize::from(first) % Kind::ALL.len()];
    let mut sources = if first >= BESIDE {
        demonstration()
    } else {
        Sources::default()
    };
    let text = format!("# Fuzz\n\nWhy.\n\n```yaml {}\n{body}\n```\n", kind.word());
    let file = sources.add("fuzz.md".to_owned(), "fuzz.md".to_owned(), text);
    // A line of the body may be taken for a fence.
    if !body.contains("```") && !body.contains("~~~") {
        let mut found = Diagnostics::default();
        let blocks = chapter::blocks(&sources, file, &mut found);
        assert_eq!(blocks.len(), 1);
        assert_eq!(blocks[0].kind, kind);
        let read = &sources.text(file)[blocks[0].body.clone()];
        assert_eq!(read.trim_end_matches('\n'), body.trim_end_matches('\n'));
    }
    match compile(sources) {
        // By itself a block is no book: something is always lacking.
        Ok(compiled) => {
            assert!(first >= BESIDE);
            assert!(compiled.notes.iter().all(|note| note.level == Level::Note));
            places::check(&compiled.notes, &compiled.sources);
        }
        Err(rejected) => {
            assert!(
                rejected
                    .diagnostics
                    .iter()
                    .any(|found| found.level == Level::Error)
            );
            places::check(&rejected.diagnostics, &rejected.sources);
        }
    }
}
