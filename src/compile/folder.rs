//! Reads a rulebook from its folder.

use std::{fs, path::Path};

use super::{Compiled, Rejected, compile_with, diagnostic::Diagnostics, source::Sources};

/// The largest chapter that is read; the longest real protocol is a hundredth of it.
pub const MAX_CHAPTER_BYTES: u64 = 16 * 1024 * 1024;

/// Reads and compiles the chapters of a folder: every `*.md` file directly in it, by name.
///
/// # Errors
///
/// [`Rejected`] with every error of the book. A folder or file that can't be read is one of them.
pub fn load(folder: &Path) -> Result<Compiled, Box<Rejected>> {
    let mut sources = Sources::default();
    let mut found = Diagnostics::default();
    match chapter_names(folder) {
        Ok(names) if names.is_empty() => {
            found
                .book_error(
                    "no-chapters",
                    format!(
                        "expected chapters in `{}`, found no file that ends in `.md`",
                        folder.display()
                    ),
                )
                .hint("name the folder that holds the rulebook");
            return rejected(sources, found);
        }
        Ok(names) => {
            for name in names {
                read_chapter(folder, &name, &mut sources, &mut found);
            }
        }
        Err(error) => {
            found
                .book_error(
                    "unreadable-folder",
                    format!("cannot read the folder `{}`: {error}", folder.display()),
                )
                .hint("name the folder that holds the rulebook");
            return rejected(sources, found);
        }
    }
    compile_with(sources, found)
}

fn rejected(sources: Sources, found: Diagnostics) -> Result<Compiled, Box<Rejected>> {
    Err(Box::new(Rejected {
        sources,
        diagnostics: found.into_sorted(),
    }))
}

fn chapter_names(folder: &Path) -> std::io::Result<Vec<String>> {
    let mut names = Vec::new();
    for entry in fs::read_dir(folder)? {
        // A name that isn't Unicode is shown with replacement marks and then can't be read, which is reported.
        let name = entry?.file_name().to_string_lossy().into_owned();
        if name.to_lowercase().ends_with(".md") && !name.starts_with('.') {
            names.push(name);
        }
    }
    names.sort_unstable();
    Ok(names)
}

fn read_chapter(folder: &Path, name: &str, sources: &mut Sources, found: &mut Diagnostics) {
    let path = folder.join(name);
    let shown = path.display().to_string();
    let size = match fs::metadata(&path) {
        Ok(metadata) if metadata.is_file() => metadata.len(),
        Ok(_) => {
            found.book_error(
                "unreadable-chapter",
                format!("cannot read `{shown}`: it is not a file"),
            );
            return;
        }
        Err(error) => {
            found.book_error("unreadable-chapter", format!("cannot read `{shown}`: {error}"));
            return;
        }
    };
    if size > MAX_CHAPTER_BYTES {
        found.book_error(
            "chapter-too-long",
            format!("expected a chapter of at most {MAX_CHAPTER_BYTES} bytes, found {size} in `{shown}`"),
        );
        return;
    }
    let bytes = match fs::read(&path) {
        Ok(bytes) => bytes,
        Err(error) => {
            found.book_error("unreadable-chapter", format!("cannot read `{shown}`: {error}"));
            return;
        }
    };
    match String::from_utf8(bytes) {
        Ok(text) => {
            let text = text.strip_prefix('\u{FEFF}').map(str::to_owned).unwrap_or(text);
            sources.add(name.to_owned(), shown, text);
        }
        Err(error) => {
            let good = error.utf8_error().valid_up_to();
            let bytes = error.into_bytes();
            let line = bytes.iter().take(good).filter(|&&byte| byte == b'\n').count() + 1;
            found
                .book_error(
                    "not-utf-8",
                    format!("expected UTF-8 text, found another encoding on line {line} of `{shown}`"),
                )
                .hint("save the chapter as UTF-8");
        }
    }
}
