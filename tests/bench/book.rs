//! Rulebooks of any size, made from the demonstration: its rules again and again under other ids, with their prose.

use oxyfolio::{CHAPTERS, RULEBOOK, compile::source::Sources, guard::HazardSet};

/// Kinds whose rules stand beside copies of themselves without contradicting them.
const KINDS: [&str; 5] = ["device", "cylinder", "procedure", "hazard", "card"];

/// A chapter of the demonstration, or one made of it: its name and its text.
pub type Chapter = (String, String);

/// The demonstration, then chapters of some `size` bytes until there are `chapters` in all.
pub fn of(chapters: usize, size: usize) -> Vec<Chapter> {
    let demo = CHAPTERS
        .iter()
        // Its worked cases would object to the copies of its hazards.
        .map(|(name, text)| ((*name).to_owned(), text.replace("```yaml case", "```text")));
    let mut book: Vec<Chapter> = demo.collect();
    let pieces = pieces();
    let (mut copies, mut hazards) = (0, RULEBOOK.hazards.len());
    while book.len() < chapters {
        let number = book.len();
        let mut text = format!("# Annex {number}\n\n");
        while text.len() < size {
            let piece = &pieces[copies % pieces.len()];
            copies += 1;
            if piece.kind == "hazard" {
                let more = piece.body.matches("never:").count();
                if hazards + more > HazardSet::CAPACITY {
                    continue;
                }
                hazards += more;
            }
            text.push_str(&piece.again(copies));
        }
        book.push((format!("annex-{number:05}.md"), text));
    }
    book
}

/// The chapters as the reader takes them.
pub fn sources(book: &[Chapter]) -> Sources {
    let mut sources = Sources::default();
    for (name, text) in book {
        sources.add(name.clone(), name.clone(), text.clone());
    }
    sources
}

/// Writes the chapters into a folder.
#[allow(dead_code)]
pub fn write(book: &[Chapter], folder: &std::path::Path) {
    for (name, text) in book {
        std::fs::write(folder.join(name), text).unwrap();
    }
}

/// A rule block with the prose above it.
struct Piece {
    prose: String,
    kind: &'static str,
    body: &'static str,
}

impl Piece {
    /// The same with other ids.
    fn again(&self, number: usize) -> String {
        let mut text = format!("{}```yaml {}\n", self.prose, self.kind);
        for line in self.body.lines() {
            text.push_str(line);
            // Steps keep their ids, which are indented.
            if line.starts_with("id: ") || line.starts_with("- id: ") {
                text.push_str(&format!("-copy-{number}"));
            }
            text.push('\n');
        }
        text + "```\n\n"
    }
}

fn pieces() -> Vec<Piece> {
    let mut pieces = Vec::new();
    for (_, chapter) in CHAPTERS {
        let mut rest = *chapter;
        while let Some((prose, block)) = rest.split_once("```yaml ") {
            let (kind, body) = block.split_once('\n').unwrap();
            let (body, after) = body.split_once("\n```").unwrap();
            rest = after;
            if let Some(kind) = KINDS.into_iter().find(|known| *known == kind) {
                pieces.push(Piece {
                    // One title for each chapter.
                    prose: prose.trim_start().replace("\n# ", "\n## ").replacen(
                        "# ",
                        "## ",
                        usize::from(prose.starts_with("# ")),
                    ),
                    kind,
                    body,
                });
            }
        }
    }
    pieces
}
