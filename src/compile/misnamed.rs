//! Files of a rulebook's folder that are meant as chapters and have another name: saved as text by an editor that adds an
//! ending of its own, or by a word processor. A rule in such a file would be a rule that nobody reads: an error where the name is a
//! chapter's with another ending after its own, and otherwise a note, for a folder may hold other texts.

use std::{
    fs::{self, File},
    io::Read as _,
    path::Path,
};

use super::{chapter::announces_rule, diagnostic::Diagnostics, folder::MAX_CHAPTER_BYTES, render::visible};

/// As many are looked at.
pub const MOST: usize = 100;

/// Endings of texts; a chapter's name with one of them is likely meant to end in `.md`.
const TEXTS: [&str; 5] = [".txt", ".text", ".markdown", ".mdown", ".mkd"];

/// Endings of a word processor's own files, which hold more than text.
const PROCESSED: [&str; 4] = [".docx", ".doc", ".odt", ".rtf"];

/// A file that may be a chapter by another name.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Misnamed {
    name: String,
    /// What it would be called as a chapter.
    better: String,
    is_processed: bool,
}

impl Misnamed {
    /// None for a file that is called like no text.
    pub fn of(name: &str) -> Option<Self> {
        let lowered = name.to_lowercase();
        let find = |endings: &[&str]| {
            endings
                .iter()
                .find(|ending| lowered.ends_with(**ending))
                .map(|ending| ending.len())
        };
        let (length, is_processed) = match (find(&TEXTS), find(&PROCESSED)) {
            (Some(length), _) => (length, false),
            (None, Some(length)) => (length, true),
            (None, None) => return None,
        };
        let stem = name.get(..name.len().checked_sub(length)?)?;
        let stem = if stem.to_lowercase().ends_with(".md") {
            stem.get(..stem.len() - 3)?
        } else {
            stem
        };
        Some(Self {
            name: name.to_owned(),
            better: format!("{stem}.md"),
            is_processed,
        })
    }

    /// Whether it has a chapter's ending before its own: `devices.md.txt`.
    fn has_two_endings(&self) -> bool {
        self.name.to_lowercase().contains(".md.")
    }

    /// What to do with it.
    pub fn hint(&self) -> String {
        let (name, better) = (visible(&self.name), visible(&self.better));
        if self.is_processed {
            format!(
                "save `{name}` as plain text under the name `{better}`: the names of chapters end in `.md`"
            )
        } else {
            format!("rename `{name}` to `{better}`: the names of chapters end in `.md`")
        }
    }
}

/// Reports those that hold rules, and those that are called like a chapter but for a second ending.
pub fn report(folder: &Path, others: &[Misnamed], found: &mut Diagnostics) {
    for other in others {
        let name = visible(&other.name);
        let hint = format!("{}; or move it out of the folder", other.hint());
        if !other.is_processed && holds_rules(&folder.join(&other.name)) {
            let message = format!("`{name}` holds rules and is not read as a chapter");
            if other.has_two_endings() {
                found.book_error("chapter-not-read", message).hint(hint);
            } else {
                found.book_note("chapter-not-read", message).hint(hint);
            }
        } else if other.has_two_endings() {
            let message = format!("`{name}` is not read as a chapter");
            found.book_note("chapter-not-read", message).hint(hint);
        }
    }
}

/// Whether a file holds a line that opens a rule. One that can't be read holds none.
fn holds_rules(path: &Path) -> bool {
    let is_file = fs::metadata(path).is_ok_and(|metadata| metadata.is_file());
    let mut bytes = Vec::new();
    let read = is_file
        && File::open(path).is_ok_and(|file| file.take(MAX_CHAPTER_BYTES).read_to_end(&mut bytes).is_ok());
    read && String::from_utf8_lossy(&bytes).lines().any(announces_rule)
}

#[cfg(test)]
mod tests {
    use super::Misnamed;

    #[test]
    fn a_chapter_by_another_name() {
        let better = |name: &str| Misnamed::of(name).map(|other| other.better);
        for (name, chapter) in [
            ("05-devices.txt", Some("05-devices.md")),
            ("05-devices.md.txt", Some("05-devices.md")),
            ("05-DEVICES.MD.TXT", Some("05-DEVICES.md")),
            ("05-devices.markdown", Some("05-devices.md")),
            ("05-devices.md.docx", Some("05-devices.md")),
            ("cards.pdf", None),
            ("txt", None),
            ("05-devices.md~", None),
        ] {
            assert_eq!(better(name).as_deref(), chapter, "{name}");
        }
    }
}
