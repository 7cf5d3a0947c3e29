//! Runs the typesetting program, typst-cli, shut into a private folder.
//!
//! Protocol text reaches it only as JSON data. It sees no system fonts, no packages and no file outside the folder,
//! and is ended when it takes too long.

use std::{
    ffi::OsString,
    fs::{self, File},
    io,
    path::Path,
    process::{Command, ExitStatus, Stdio},
    time::Duration,
};

use wait_timeout::ChildExt as _;

use super::{data::Document, glyphs, plain};
use crate::book::Date;

/// The oldest version whose output was looked at.
pub const LEAST_VERSION: (u32, u32, u32) = (0, 15, 1);
/// How to get it.
pub const INSTALL: &str = "cargo install --locked typst-cli@0.15.1";

/// How long one document may take, unless something else is asked for.
pub const TIME_LIMIT: Duration = Duration::from_secs(60);

/// Dots to the inch in PNG, unless something else is asked for: what a good printer prints.
pub const DOTS_PER_INCH: u16 = 300;

/// What a document becomes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// One tagged PDF to PDF/UA-1.
    Pdf,
    /// An SVG drawing for each page.
    Svg,
    /// A PNG image for each page.
    Png {
        /// Dots to the inch; [`DOTS_PER_INCH`] for a printer, 96 for a screen at 100 %.
        dots_per_inch: u16,
    },
}

impl Form {
    /// The word used on the command line and as the ending of files.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Pdf => "pdf",
            Self::Svg => "svg",
            Self::Png { .. } => "png",
        }
    }
}

macro_rules! templates {
    ($($name:literal),+ $(,)?) => {
        /// The templates of cards and sheets, by file name.
        pub const TEMPLATES: &[(&str, &str)] = &[$(($name, include_str!(concat!("../../cards/", $name)))),+];
    };
}

templates! {
    "main.typ", "style.typ", "words.typ", "face.typ", "sheet.typ", "devices.typ", "targets.typ", "newborn.typ",
    "durations.typ", "cylinders.typ", "steps.typ", "checklist.typ", "cautions.typ", "pages.typ", "check-off.typ",
    "log.typ", "poster.typ",
}

const FONTS: &[(&str, &[u8])] = &[
    ("NotoSans-Regular.ttf", notosans::REGULAR_TTF),
    ("NotoSans-Bold.ttf", notosans::BOLD_TTF),
    ("NotoSans-Italic.ttf", notosans::ITALIC_TTF),
    ("NotoSans-BoldItalic.ttf", notosans::BOLD_ITALIC_TTF),
];

/// What went wrong with the typesetting program.
#[derive(Debug)]
pub enum TypstError {
    /// There is no such program.
    Missing {
        /// The name it was looked for by.
        program: OsString,
    },
    /// It is older than [`LEAST_VERSION`], or says no version.
    TooOld {
        /// What it said.
        version: String,
    },
    /// It refused the document.
    Failed(String),
    /// It didn't finish in time and was ended.
    TooSlow(Duration),
    /// It ended without an answer: it crashed or was ended by something else.
    Crashed(String),
    /// It could not be run or its folder could not be made.
    Io(io::Error),
    /// The thread that ran it ended early.
    Interrupted,
}

impl core::fmt::Display for TypstError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let (major, minor, patch) = LEAST_VERSION;
        match self {
            Self::Missing { program } => write!(
                f,
                "cannot find the typesetting program `{}`; install it with: {INSTALL}",
                program.display()
            ),
            Self::TooOld { version } => write!(
                f,
                "expected typst {major}.{minor}.{patch} or later, found `{version}`; install it with: {INSTALL}"
            ),
            Self::Failed(message) => write!(f, "cannot set the cards: {message}"),
            Self::TooSlow(limit) => write!(
                f,
                "cannot set the cards: typst did not finish in {} s and was ended; give it longer with --time-limit",
                limit.as_secs()
            ),
            Self::Crashed(how) => write!(f, "cannot set the cards: typst crashed ({how})"),
            Self::Io(error) => write!(f, "cannot run typst: {error}"),
            Self::Interrupted => f.write_str("cannot set the cards: the work was interrupted"),
        }
    }
}

impl std::error::Error for TypstError {}

impl From<io::Error> for TypstError {
    fn from(error: io::Error) -> Self {
        Self::Io(error)
    }
}

/// A typst program whose version has been checked.
#[derive(Clone, Debug)]
pub struct Program {
    program: OsString,
    time_limit: Duration,
}

impl Program {
    /// Finds a program and checks its version.
    ///
    /// # Errors
    ///
    /// [`TypstError::Missing`] and [`TypstError::TooOld`], each with the command that mends it.
    pub fn find(program: impl Into<OsString>) -> Result<Self, TypstError> {
        Self::find_within(program, TIME_LIMIT)
    }

    /// Finds a program that gets another time than [`TIME_LIMIT`] for each document.
    ///
    /// # Errors
    ///
    /// As [`find`](Self::find); [`TypstError::TooSlow`] when it doesn't even tell its version in that time.
    pub fn find_within(program: impl Into<OsString>, time_limit: Duration) -> Result<Self, TypstError> {
        let found = Self {
            program: program.into(),
            time_limit,
        };
        let folder = tempfile::Builder::new().prefix("oxyfolio-").tempdir()?;
        let said = folder.path().join("version.txt");
        let mut command = Command::new(&found.program);
        command
            .arg("--version")
            .stdin(Stdio::null())
            .stdout(File::create(&said)?)
            .stderr(Stdio::null());
        match found.run(&mut command) {
            Err(TypstError::Io(error)) if error.kind() == io::ErrorKind::NotFound => {
                return Err(TypstError::Missing {
                    program: found.program,
                });
            }
            Err(error) => return Err(error),
            Ok(_) => {}
        }
        let said = fs::read(said)?;
        let said = String::from_utf8_lossy(&said);
        match version(&said) {
            Some(version) if version >= LEAST_VERSION => Ok(found),
            _ => Err(TypstError::TooOld {
                version: said.trim().chars().take(80).collect(),
            }),
        }
    }

    /// Sets a document of cards or sheets: one PDF, or an image for each page.
    ///
    /// # Errors
    ///
    /// [`TypstError`] when the program refuses the document, takes too long or can't be run.
    pub fn set(&self, document: &Document, date: Date, form: Form) -> Result<Vec<Vec<u8>>, TypstError> {
        let folder = tempfile::Builder::new().prefix("oxyfolio-").tempdir()?;
        lay_out_cards(folder.path(), document)?;
        self.compile(folder.path(), date, form)
    }

    /// Sets one document and gives the PDF. `main.typ` among the templates reads its data from `data.json`.
    ///
    /// # Errors
    ///
    /// [`TypstError`] when the program refuses the document, takes too long or can't be run.
    pub fn set_document(
        &self,
        templates: &[(&str, &str)],
        data: &impl serde::Serialize,
        date: Date,
    ) -> Result<Vec<u8>, TypstError> {
        let folder = tempfile::Builder::new().prefix("oxyfolio-").tempdir()?;
        lay_out(folder.path(), templates, data)?;
        let mut pages = self.compile(folder.path(), date, Form::Pdf)?;
        pages.pop().ok_or(TypstError::Interrupted)
    }

    fn compile(&self, root: &Path, date: Date, form: Form) -> Result<Vec<Vec<u8>>, TypstError> {
        let said = root.join("said.txt");
        let made = root.join("made");
        fs::create_dir(&made)?;
        let mut command = Command::new(&self.program);
        command
            .args(arguments(root, date, form))
            .current_dir(root)
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            // A file rather than a pipe: a pipe that nobody reads would stop a talkative program.
            .stderr(File::create(&said)?);
        for (name, _) in std::env::vars_os() {
            let typst_own = name.to_string_lossy().starts_with("TYPST_");
            if typst_own || name == "SOURCE_DATE_EPOCH" {
                command.env_remove(name);
            }
        }
        let status = self.run(&mut command)?;
        if status.success() {
            let mut names = fs::read_dir(&made)?
                .map(|entry| entry.map(|entry| entry.path()))
                .collect::<Result<Vec<_>, _>>()?;
            // Pages are numbered with leading zeros.
            names.sort();
            if names.is_empty() {
                return Err(TypstError::Failed("typst wrote no file".to_owned()));
            }
            return Ok(names.iter().map(fs::read).collect::<Result<_, _>>()?);
        }
        if status.code().is_none() {
            return Err(TypstError::Crashed(status.to_string()));
        }
        let said = fs::read(said).unwrap_or_default();
        Err(TypstError::Failed(reason(&String::from_utf8_lossy(&said))))
    }

    /// Runs a command to its end, or ends it when its time is over.
    fn run(&self, command: &mut Command) -> Result<ExitStatus, TypstError> {
        let mut child = command.spawn()?;
        if let Some(status) = child.wait_timeout(self.time_limit)? {
            return Ok(status);
        }
        // It may have ended in this moment; either way it is gone afterwards.
        let _ = child.kill();
        child.wait()?;
        Err(TypstError::TooSlow(self.time_limit))
    }
}

/// Writes a document's templates, fonts and data into a folder, for [`arguments`].
///
/// # Errors
///
/// When a file can't be written.
pub fn lay_out(
    root: &Path,
    templates: &[(&str, &str)],
    data: &impl serde::Serialize,
) -> Result<(), io::Error> {
    let fonts = root.join("fonts");
    fs::create_dir(&fonts)?;
    for (name, bytes) in FONTS {
        fs::write(fonts.join(name), bytes)?;
    }
    for (name, text) in templates {
        fs::write(root.join(name), text)?;
    }
    let data = serde_json::to_vec(data).map_err(io::Error::from)?;
    fs::write(root.join("data.json"), data)
}

/// Writes what a document of cards or sheets needs into a folder, its texts made plain.
///
/// # Errors
///
/// When a file can't be written.
pub fn lay_out_cards(root: &Path, document: &Document) -> Result<(), io::Error> {
    let data = plain::plain(serde_json::to_value(document).map_err(io::Error::from)?);
    lay_out(root, TEMPLATES, &data)
}

/// What typst is started with for a folder that [`lay_out`] made: no fonts but the folder's, no packages, no file outside
/// it, a fixed date. It writes into the folder `made`.
#[must_use]
pub fn arguments(root: &Path, date: Date, form: Form) -> Vec<OsString> {
    let nothing = root.join("no-packages");
    let mut arguments: Vec<OsString> = vec!["compile".into(), "--root".into(), root.into()];
    arguments.extend(["--ignore-system-fonts", "--ignore-embedded-fonts", "--font-path"].map(OsString::from));
    arguments.push(root.join("fonts").into());
    for option in ["--package-path", "--package-cache-path"] {
        arguments.extend([option.into(), nothing.clone().into()]);
    }
    arguments.extend(["--diagnostic-format", "human", "--format", form.word()].map(OsString::from));
    match form {
        Form::Pdf => arguments.extend(["--pdf-standard", "ua-1"].map(OsString::from)),
        Form::Png { dots_per_inch } => {
            arguments.extend(["--ppi".into(), dots_per_inch.to_string().into()]);
        }
        Form::Svg => {}
    }
    arguments.extend([
        "--creation-timestamp".into(),
        date.unix_seconds().to_string().into(),
    ]);
    arguments.push(root.join("main.typ").into());
    let name = if form == Form::Pdf {
        "pages.pdf".to_owned()
    } else {
        format!("page-{{0p}}.{}", form.word())
    };
    arguments.push(root.join("made").join(name).into());
    arguments
}

/// `typst 0.15.1 (…)` as numbers.
fn version(said: &str) -> Option<(u32, u32, u32)> {
    let number = said
        .split_whitespace()
        .nth(1)
        .filter(|_| said.starts_with("typst "))?;
    let mut parts = number.split(['.', '-']).map(|part| part.parse::<u32>().ok());
    Some((parts.next()??, parts.next()??, parts.next()??))
}

/// As many signs of what typst says are repeated.
const MOST_SAID: usize = 600;

/// The first error's message, without the trace that names the private folder. Our templates stop with `panicked
/// with: "…"`.
fn reason(said: &str) -> String {
    let line = said
        .lines()
        .find_map(|line| line.strip_prefix("error: "))
        .or_else(|| said.lines().next())
        .unwrap_or("it said nothing");
    let said = match line.strip_prefix("panicked with: ") {
        Some(own) => own.trim_matches('"').replace("\\\"", "\""),
        None => line.to_owned(),
    };
    // Another program's words go to a terminal: nothing in them may drive it, and no more than fits one.
    let mut shown = glyphs::visible(&said);
    if let Some((end, _)) = shown.char_indices().nth(MOST_SAID) {
        shown.truncate(end);
        shown.push('…');
    }
    shown
}
