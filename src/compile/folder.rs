//! Reads a rulebook from its folder.

use std::{
    ffi::OsString,
    fs::{self, File},
    io::{self, Read as _},
    path::Path,
};

use crate::book::Rulebook;

use super::{
    Compiled, Rejected, compile_with,
    diagnostic::Diagnostics,
    misnamed::{self, Misnamed},
    render::is_hidden,
    source::Sources,
};

/// The largest chapter that is read: well over a thousand pages.
pub const MAX_CHAPTER_BYTES: u64 = 4 * 1024 * 1024;

/// The largest book that is read.
pub const MAX_BOOK_BYTES: u64 = 32 * 1024 * 1024;

/// The most chapters that are read.
pub const MAX_CHAPTERS: usize = 10_000;

/// Reads and compiles the chapters of a folder: every `*.md` file directly in it, by name.
///
/// The book's rules are found with `book.find_device("…")` and its like; the constants, such as
/// `device::NASAL_CANNULA`, belong to the book compiled in.
///
/// # Errors
///
/// [`Rejected`] with every error of the book. A folder or file that can't be read is one of them.
pub fn load(folder: &Path) -> Result<Compiled, Box<Rejected>> {
    let (sources, found) = chapters(folder);
    compile_with(sources, found)
}

/// Reads the chapters of a folder. What keeps one of them from being read is an error.
pub(super) fn chapters(folder: &Path) -> (Sources, Diagnostics) {
    let mut sources = Sources::default();
    let mut found = Diagnostics::default();
    match listed(folder) {
        Ok(Listed { chapters, others }) if chapters.is_empty() => {
            found
                .book_error(
                    "no-chapters",
                    format!(
                        "expected chapters in `{}`, found no file that ends in `.md`",
                        folder.display()
                    ),
                )
                .hint(match others.first() {
                    Some(other) => other.hint(),
                    None => "name the folder that holds the rulebook".to_owned(),
                });
            return (sources, found);
        }
        Ok(Listed { chapters, .. }) if chapters.len() > MAX_CHAPTERS => {
            found
                .book_error(
                    "too-many-chapters",
                    format!(
                        "expected at most {MAX_CHAPTERS} chapters in `{}`, found more",
                        folder.display()
                    ),
                )
                .hint("name the folder that holds the rulebook");
            return (sources, found);
        }
        Ok(Listed { chapters, others }) => {
            misnamed::report(folder, &others, &mut found);
            let mut reader = Reader {
                folder,
                left: MAX_BOOK_BYTES,
                sources,
                found,
            };
            for name in &chapters {
                if let Err(problem) = reader.chapter(name) {
                    let error = reader.found.book_error(problem.code, problem.message);
                    error.hint(problem.hint);
                    if problem.ends_book {
                        break;
                    }
                }
            }
            Reader { sources, found, .. } = reader;
        }
        Err(error) => {
            found
                .book_error(
                    "unreadable-folder",
                    format!("cannot read the folder `{}`: {}", folder.display(), why(&error)),
                )
                .hint("name the folder that holds the rulebook");
            return (sources, found);
        }
    }
    (sources, found)
}

/// Reading at run time.
impl Rulebook {
    /// Reads the rulebook in a folder: every `*.md` file directly in it, by name. What is worth attention without being
    /// wrong isn't told; [`folder::load`](load) gives it too.
    ///
    /// Its rules are found by name: the constants, such as `device::NASAL_CANNULA`, belong to the book compiled in.
    ///
    /// # Errors
    ///
    /// [`Rejected`] with every error of the book. A folder or file that can't be read is one of them.
    ///
    /// ```
    /// use oxyfolio::book::Rulebook;
    /// use oxyfolio::check::{Report, Setup};
    /// use oxyfolio::quantity::Flow;
    ///
    /// let book = Rulebook::load("rules")?;
    /// let mask = book.find_device("non-rebreather").ok_or("no such device in this book")?;
    /// let report = Report::of(&book, &Setup::new(mask, "8 L/min".parse::<Flow>()?))?;
    /// assert!(report.is_wrong());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn load(folder: impl AsRef<Path>) -> Result<Self, Box<Rejected>> {
        load(folder.as_ref()).map(|compiled| compiled.book)
    }
}

/// What the system said, in words for people.
fn why(error: &std::io::Error) -> String {
    match error.kind() {
        std::io::ErrorKind::NotFound => "there is no such folder".to_owned(),
        std::io::ErrorKind::NotADirectory => "it is a file, not a folder".to_owned(),
        std::io::ErrorKind::PermissionDenied => "it may not be read by this user".to_owned(),
        _ => error.to_string(),
    }
}

/// What a folder holds.
struct Listed {
    /// The names of the chapters, in the order of the book; one more than may be when there are too many.
    chapters: Vec<OsString>,
    /// Files that may be chapters by another name.
    others: Vec<Misnamed>,
}

fn listed(folder: &Path) -> io::Result<Listed> {
    let mut listed = Listed {
        chapters: Vec::new(),
        others: Vec::new(),
    };
    for entry in fs::read_dir(folder)? {
        let name = entry?.file_name();
        let shown = name.to_string_lossy();
        if shown.starts_with('.') {
            continue;
        }
        if shown.to_lowercase().ends_with(".md") {
            listed.chapters.push(name);
        } else {
            listed.others.extend(Misnamed::of(&shown));
        }
        if listed.chapters.len() > MAX_CHAPTERS {
            break;
        }
    }
    listed.chapters.sort_unstable();
    listed.others.sort_unstable();
    listed.others.truncate(misnamed::MOST);
    Ok(listed)
}

/// Why a chapter can't be read.
struct Problem {
    code: &'static str,
    message: String,
    hint: &'static str,
    /// Whether the chapters after this one aren't read.
    ends_book: bool,
}

impl Problem {
    const fn new(code: &'static str, message: String, hint: &'static str) -> Self {
        Self {
            code,
            message,
            hint,
            ends_book: false,
        }
    }

    fn unreadable(shown: &str, why: impl core::fmt::Display) -> Self {
        Self::new(
            "unreadable-chapter",
            format!("cannot read `{shown}`: {why}"),
            "put a text file that may be read in its place, or move it out of the folder",
        )
    }
}

struct Reader<'a> {
    folder: &'a Path,
    /// How many bytes of the book may still come.
    left: u64,
    sources: Sources,
    found: Diagnostics,
}

impl Reader<'_> {
    fn chapter(&mut self, name: &OsString) -> Result<(), Problem> {
        let path = self.folder.join(name);
        let Some(name) = name.to_str() else {
            return Err(Problem::new(
                "unreadable-chapter",
                format!("expected a file name in Unicode, found {name:?}"),
                "rename the file with plain letters and digits",
            ));
        };
        let shown = path.display().to_string();
        if name.chars().any(|c| is_hidden(c) || c.is_control()) {
            return Err(Problem::new(
                "chapter-name",
                format!(
                    "expected a file name that can be printed, found `{}`",
                    name.escape_debug()
                ),
                "rename the file with plain letters and digits",
            ));
        }
        self.refuse_outside_links(&path, &shown)?;
        // A pipe or a device may have no end, or may wait for one who writes: they are not opened at all.
        let metadata = fs::metadata(&path).map_err(|error| Problem::unreadable(&shown, error))?;
        if !metadata.is_file() {
            return Err(Problem::unreadable(&shown, "it is not a file"));
        }
        if metadata.len() > MAX_CHAPTER_BYTES {
            return Err(too_long(&shown, metadata.len()));
        }
        let mut bytes = Vec::new();
        // The size is what it was a moment ago, so the reading itself is limited too.
        File::open(&path)
            .and_then(|file| file.take(MAX_CHAPTER_BYTES + 1).read_to_end(&mut bytes))
            .map_err(|error| Problem::unreadable(&shown, error))?;
        let size = u64::try_from(bytes.len()).unwrap_or(u64::MAX);
        if size > MAX_CHAPTER_BYTES {
            return Err(too_long(&shown, size));
        }
        let Some(left) = self.left.checked_sub(size) else {
            let mut problem = Problem::new(
                "book-too-long",
                format!(
                    "expected chapters of at most {MAX_BOOK_BYTES} bytes together, found more from `{shown}` on"
                ),
                "name the folder that holds the rulebook and nothing else",
            );
            problem.ends_book = true;
            return Err(problem);
        };
        self.left = left;
        let text = String::from_utf8(bytes).map_err(|error| not_utf_8(&shown, &error))?;
        let text = text.strip_prefix('\u{FEFF}').map(str::to_owned).unwrap_or(text);
        self.sources.add(name.to_owned(), shown, text);
        Ok(())
    }

    /// A link to a file outside the folder would make another's text a part of the protocol.
    fn refuse_outside_links(&self, path: &Path, shown: &str) -> Result<(), Problem> {
        let unreadable = |error: io::Error| Problem::unreadable(shown, error);
        if !fs::symlink_metadata(path).map_err(unreadable)?.is_symlink() {
            return Ok(());
        }
        let folder = fs::canonicalize(self.folder).map_err(unreadable)?;
        let target = fs::canonicalize(path)
            .map_err(|error| Problem::unreadable(shown, format_args!("it is a link, and {error}")))?;
        if target.starts_with(folder) {
            return Ok(());
        }
        Err(Problem::new(
            "link-outside",
            format!("expected chapters inside the folder, found the link `{shown}` to a file outside it"),
            "copy the file into the folder in place of the link",
        ))
    }
}

fn too_long(shown: &str, size: u64) -> Problem {
    Problem::new(
        "chapter-too-long",
        format!("expected a chapter of at most {MAX_CHAPTER_BYTES} bytes, found {size} in `{shown}`"),
        "make two chapters of it",
    )
}

fn not_utf_8(shown: &str, error: &std::string::FromUtf8Error) -> Problem {
    let good = error.utf8_error().valid_up_to();
    let newlines = error.as_bytes().iter().take(good).filter(|&&byte| byte == b'\n');
    let line = newlines.count() + 1;
    Problem::new(
        "not-utf-8",
        format!("expected UTF-8 text, found another encoding on line {line} of `{shown}`"),
        "save the chapter as UTF-8",
    )
}
