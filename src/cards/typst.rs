//! Runs the typesetting program, typst-cli, shut into a private folder.
//!
//! Protocol text reaches it only as JSON data. It sees no system fonts, no packages and no file outside the folder,
//! and is ended when it takes too long.

use std::{
    ffi::OsString,
    fs::{self, File},
    io,
    path::Path,
    process::{Command, Stdio},
    time::Duration,
};

use wait_timeout::ChildExt as _;

use super::data::Sheet;
use crate::book::Date;

/// The oldest version whose output was looked at.
pub const LEAST_VERSION: (u32, u32, u32) = (0, 15, 1);
/// How to get it.
pub const INSTALL: &str = "cargo install --locked typst-cli@0.15.1";

const TIME_LIMIT: Duration = Duration::from_secs(60);

macro_rules! templates {
    ($($name:literal),+ $(,)?) => {
        /// The templates of `cards/`, by file name.
        const TEMPLATES: &[(&str, &str)] = &[$(($name, include_str!(concat!("../../cards/", $name)))),+];
    };
}

templates! {
    "main.typ", "style.typ", "words.typ", "face.typ", "sheet.typ", "devices.typ", "durations.typ", "steps.typ",
    "cautions.typ",
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
    /// It didn't finish in time.
    TooSlow,
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
            Self::TooSlow => write!(
                f,
                "cannot set the cards: typst did not finish in {} s and was ended",
                TIME_LIMIT.as_secs()
            ),
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
}

impl Program {
    /// Finds a program and checks its version.
    ///
    /// # Errors
    ///
    /// [`TypstError::Missing`] and [`TypstError::TooOld`], each with the command that mends it.
    pub fn find(program: impl Into<OsString>) -> Result<Self, TypstError> {
        let program = program.into();
        let output = match Command::new(&program)
            .arg("--version")
            .stdin(Stdio::null())
            .output()
        {
            Ok(output) => output,
            Err(error) if error.kind() == io::ErrorKind::NotFound => {
                return Err(TypstError::Missing { program });
            }
            Err(error) => return Err(error.into()),
        };
        let said = String::from_utf8_lossy(&output.stdout);
        match version(&said) {
            Some(version) if version >= LEAST_VERSION => Ok(Self { program }),
            _ => Err(TypstError::TooOld {
                version: said.trim().chars().take(80).collect(),
            }),
        }
    }

    /// Sets a sheet of cards and gives the PDF.
    ///
    /// # Errors
    ///
    /// [`TypstError`] when the program refuses the document, takes too long or can't be run.
    pub fn set(&self, sheet: &Sheet, date: Date) -> Result<Vec<u8>, TypstError> {
        self.set_document(TEMPLATES, sheet, date)
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
        let root = folder.path();
        let fonts = root.join("fonts");
        fs::create_dir(&fonts)?;
        for (name, bytes) in FONTS {
            fs::write(fonts.join(name), bytes)?;
        }
        for (name, text) in templates {
            fs::write(root.join(name), text)?;
        }
        let data = serde_json::to_vec(data).map_err(io::Error::from)?;
        fs::write(root.join("data.json"), data)?;
        self.compile(root, date)?;
        Ok(fs::read(root.join("cards.pdf"))?)
    }

    fn compile(&self, root: &Path, date: Date) -> Result<(), TypstError> {
        let said = root.join("said.txt");
        let nothing = root.join("no-packages");
        let mut command = Command::new(&self.program);
        command
            .arg("compile")
            .arg("--root")
            .arg(root)
            .args(["--ignore-system-fonts", "--ignore-embedded-fonts", "--font-path"])
            .arg(root.join("fonts"))
            .arg("--package-path")
            .arg(&nothing)
            .arg("--package-cache-path")
            .arg(&nothing)
            .args(["--pdf-standard", "ua-1", "--diagnostic-format", "human"])
            .arg("--creation-timestamp")
            .arg(date.unix_seconds().to_string())
            .arg(root.join("main.typ"))
            .arg(root.join("cards.pdf"))
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
        let mut child = command.spawn()?;
        let Some(status) = child.wait_timeout(TIME_LIMIT)? else {
            // It may have ended in this moment; either way it is gone afterwards.
            let _ = child.kill();
            child.wait()?;
            return Err(TypstError::TooSlow);
        };
        if status.success() {
            return Ok(());
        }
        let said = fs::read(said).unwrap_or_default();
        Err(TypstError::Failed(reason(&String::from_utf8_lossy(&said))))
    }
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

/// The first error's message, without the trace that names the private folder. Our templates stop with `panicked
/// with: "…"`.
fn reason(said: &str) -> String {
    let line = said
        .lines()
        .find_map(|line| line.strip_prefix("error: "))
        .or_else(|| said.lines().next())
        .unwrap_or("it said nothing");
    match line.strip_prefix("panicked with: ") {
        Some(own) => own.trim_matches('"').replace("\\\"", "\""),
        None => line.to_owned(),
    }
}
