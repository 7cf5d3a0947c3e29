//! Reads an edition from a folder or from a git revision.
//!
//! Git is asked as a program, and only to read: which folder of its repository the rulebook is, which chapters it held at a
//! revision, and what stood in them. Nothing is checked out.

use std::{
    fmt,
    io::{self, Write as _},
    path::{Path, PathBuf},
    process::{Command, Stdio},
};

use crate::compile::{
    Rejected,
    edition::Edition,
    folder::{MAX_BOOK_BYTES, MAX_CHAPTER_BYTES, MAX_CHAPTERS},
    render::is_hidden,
    source::Sources,
};

/// Where an edition is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Where {
    /// In a folder.
    Folder(PathBuf),
    /// In the repository of the rulebook's folder, at a revision.
    Revision(String),
}

impl Where {
    /// Reads `git:REV` or a folder.
    #[must_use]
    pub fn from_words(words: &str) -> Self {
        match words.strip_prefix("git:") {
            Some(revision) => Self::Revision(revision.to_owned()),
            None => Self::Folder(PathBuf::from(words)),
        }
    }
}

impl fmt::Display for Where {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Folder(folder) => folder.display().fmt(f),
            Self::Revision(revision) => write!(f, "git:{revision}"),
        }
    }
}

/// Why an edition can't be read.
#[derive(Debug)]
pub enum CannotRead {
    /// No rulebook is left of it; the errors say why.
    Rejected(Box<Rejected>),
    /// The program `git` can't be run.
    NoGit(io::Error),
    /// The rulebook's folder is in no repository.
    NotInRepository(PathBuf),
    /// The repository has no such revision.
    NoRevision {
        /// The revision.
        revision: String,
        /// What git said.
        said: String,
    },
    /// The rulebook's folder had no chapters at that revision.
    NoChapters {
        /// The revision.
        revision: String,
        /// The folder inside the repository.
        folder: String,
    },
    /// A chapter can't be read.
    Chapter {
        /// The chapter.
        name: String,
        /// Why.
        why: String,
    },
    /// Git failed.
    Git(String),
}

impl fmt::Display for CannotRead {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Rejected(rejected) => rejected.fmt(f),
            Self::NoGit(error) => write!(
                f,
                "cannot run `git`: {error}; install it, or give a folder that holds the old edition"
            ),
            Self::NotInRepository(folder) => write!(
                f,
                "`{}` is in no git repository; give a folder that holds the old edition in place of git:REV",
                folder.display()
            ),
            Self::NoRevision { revision, said } => write!(
                f,
                "the repository has no revision `{}`{}; `git log` and `git tag` list those it has",
                revision.escape_debug(),
                if said.is_empty() {
                    String::new()
                } else {
                    format!(" ({said})")
                }
            ),
            Self::NoChapters { revision, folder } => write!(
                f,
                "at `{}` there was no file that ends in `.md` in `{folder}`; was the rulebook's folder called otherwise then?",
                revision.escape_debug()
            ),
            Self::Chapter { name, why } => write!(f, "cannot read `{}`: {why}", name.escape_debug()),
            Self::Git(said) => write!(f, "git failed: {said}"),
        }
    }
}

impl std::error::Error for CannotRead {}

impl From<Box<Rejected>> for CannotRead {
    fn from(rejected: Box<Rejected>) -> Self {
        Self::Rejected(rejected)
    }
}

/// Reads an edition. `rules` is the rulebook's folder, whose repository is asked for a revision.
///
/// # Errors
///
/// [`CannotRead`] when it can't be read. An edition with mistakes is read as far as it can be; see
/// [`Edition::problems`].
///
/// ```
/// use oxyfolio::compare::edition::{Where, read};
///
/// let rules = "rules".as_ref();
/// assert!(read(&Where::from_words("rules"), rules).is_ok());
/// let wrong = read(&Where::from_words("git:no-such-revision"), rules).unwrap_err();
/// assert!(wrong.to_string().contains("git"));
/// ```
pub fn read(edition: &Where, rules: &Path) -> Result<Edition, CannotRead> {
    match edition {
        Where::Folder(folder) => Ok(Edition::load(folder)?),
        Where::Revision(revision) => Ok(Edition::of(at_revision(revision, rules)?)?),
    }
}

fn at_revision(revision: &str, rules: &Path) -> Result<Sources, CannotRead> {
    if !rules.is_dir() {
        // The reader says what is wrong with a folder, in its own words.
        Edition::load(rules)?;
    }
    let inside = git(rules, &["rev-parse", "--show-prefix"])?;
    let Said::Well(prefix) = inside else {
        return Err(CannotRead::NotInRepository(rules.to_owned()));
    };
    let prefix = text(prefix)?;
    let prefix = prefix.trim_end_matches('\n');
    let commit = format!("{revision}^{{commit}}");
    let no_revision = |said: String| CannotRead::NoRevision {
        revision: revision.to_owned(),
        said,
    };
    let commit = match git(rules, &["rev-parse", "--verify", "--end-of-options", &commit])? {
        Said::Well(commit) => text(commit)?.trim().to_owned(),
        Said::Badly(said) => {
            let said = said.trim_start_matches("fatal: ").to_owned();
            return Err(no_revision(said));
        }
    };
    let tree = format!("{commit}:{prefix}");
    let listed = match git(rules, &["ls-tree", "-z", "-l", "--full-tree", &tree])? {
        Said::Well(listed) => listed,
        // The folder was not there at that revision.
        Said::Badly(_) => Vec::new(),
    };
    let chapters = chapters(&text(listed)?)?;
    if chapters.is_empty() {
        return Err(CannotRead::NoChapters {
            revision: revision.to_owned(),
            folder: if prefix.is_empty() {
                "./".to_owned()
            } else {
                prefix.to_owned()
            },
        });
    }
    contents(rules, revision, &chapters)
}

/// A chapter in a tree.
struct Chapter {
    name: String,
    object: String,
}

/// The chapters among the lines of a tree, `MODE TYPE OBJECT SIZE\tNAME`, by name.
fn chapters(listed: &str) -> Result<Vec<Chapter>, CannotRead> {
    let mut chapters = Vec::new();
    let mut left = MAX_BOOK_BYTES;
    for line in listed.split_terminator('\0') {
        let Some((head, name)) = line.split_once('\t') else {
            continue;
        };
        if !name.to_lowercase().ends_with(".md") || name.starts_with('.') {
            continue;
        }
        let wrong = |why: &str| {
            Err(CannotRead::Chapter {
                name: name.to_owned(),
                why: why.to_owned(),
            })
        };
        if name.chars().any(|sign| is_hidden(sign) || sign.is_control()) {
            return wrong("expected a file name that can be printed");
        }
        let mut parts = head.split_whitespace();
        let (mode, kind) = (parts.next().unwrap_or(""), parts.next().unwrap_or(""));
        let (object, size) = (parts.next().unwrap_or(""), parts.next().unwrap_or(""));
        if kind != "blob" || mode == "120000" {
            return wrong("it is not a file");
        }
        let size: u64 = size.parse().unwrap_or(u64::MAX);
        if size > MAX_CHAPTER_BYTES {
            return wrong("it is longer than any chapter that is read");
        }
        let Some(rest) = left.checked_sub(size) else {
            return wrong("the chapters together are longer than any book that is read");
        };
        left = rest;
        chapters.push(Chapter {
            name: name.to_owned(),
            object: object.to_owned(),
        });
        if chapters.len() > MAX_CHAPTERS {
            return wrong("there are more chapters than any book has that is read");
        }
    }
    chapters.sort_by(|one, other| one.name.cmp(&other.name));
    Ok(chapters)
}

/// The chapters' texts, all from one run of git.
fn contents(rules: &Path, revision: &str, chapters: &[Chapter]) -> Result<Sources, CannotRead> {
    let asked: String = chapters
        .iter()
        .map(|chapter| format!("{}\n", chapter.object))
        .collect();
    let mut child = command(rules)
        .args(["cat-file", "--batch"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .map_err(CannotRead::NoGit)?;
    let input = child.stdin.take();
    // What is asked is written beside the reading: neither end waits for the other.
    let writer = std::thread::spawn(move || input.map(|mut input| input.write_all(asked.as_bytes())));
    let output = child.wait_with_output().map_err(CannotRead::NoGit)?;
    // A git that ended early shows in what it answered.
    let _ = writer.join();
    let mut rest = output.stdout.as_slice();
    let mut sources = Sources::default();
    for chapter in chapters {
        let answer = object(&mut rest);
        let wrong = |why: &str| CannotRead::Chapter {
            name: chapter.name.clone(),
            why: why.to_owned(),
        };
        let bytes = answer.ok_or_else(|| wrong("git did not give it"))?;
        let text =
            core::str::from_utf8(bytes).map_err(|_| wrong("expected UTF-8 text, found another encoding"))?;
        let text = text.strip_prefix('\u{FEFF}').unwrap_or(text);
        let shown = format!("git:{revision}:{}", chapter.name);
        sources.add(chapter.name.clone(), shown, text.to_owned());
    }
    Ok(sources)
}

/// Takes the next object of an answer: `OBJECT blob SIZE`, a line end, the bytes, a line end.
fn object<'a>(rest: &mut &'a [u8]) -> Option<&'a [u8]> {
    let end = rest.iter().position(|byte| *byte == b'\n')?;
    let head = core::str::from_utf8(rest.get(..end)?).ok()?;
    let size: usize = head.rsplit(' ').next()?.parse().ok()?;
    let from = end + 1;
    let bytes = rest.get(from..from.checked_add(size)?)?;
    *rest = rest.get(from + size + 1..)?;
    Some(bytes)
}

enum Said {
    Well(Vec<u8>),
    /// What git said, its first line.
    Badly(String),
}

fn command(rules: &Path) -> Command {
    let mut command = Command::new("git");
    command
        .arg("-C")
        .arg(rules)
        .env("LC_ALL", "C")
        .env("GIT_OPTIONAL_LOCKS", "0");
    command
}

fn git(rules: &Path, arguments: &[&str]) -> Result<Said, CannotRead> {
    let output = command(rules)
        .args(arguments)
        .stdin(Stdio::null())
        .output()
        .map_err(CannotRead::NoGit)?;
    if output.status.success() {
        return Ok(Said::Well(output.stdout));
    }
    let said = String::from_utf8_lossy(&output.stderr);
    let first = said
        .lines()
        .next()
        .unwrap_or("")
        .chars()
        .filter(|sign| !sign.is_control());
    let said: String = first.take(300).collect();
    if said.contains("dubious ownership") {
        return Err(CannotRead::Git(said));
    }
    Ok(Said::Badly(said))
}

fn text(bytes: Vec<u8>) -> Result<String, CannotRead> {
    String::from_utf8(bytes)
        .map_err(|_| CannotRead::Git("it answered in another encoding than UTF-8".to_owned()))
}
