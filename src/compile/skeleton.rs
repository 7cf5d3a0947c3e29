//! A fresh rulebook for an agency: chapters that say what is to be decided, with every such value marked as
//! `undecided` (the module beside this one).
//!
//! The skeleton holds what follows from the equipment itself, steps and hazards, and no clinical figure. It is no rulebook until
//! a medical director has filled it.

use std::{
    fmt, fs, io,
    path::{Path, PathBuf},
};

use super::{render::is_hidden, undecided};
use crate::book::OfficePaper;
use crate::quantity::{PressureUnit, TemperatureUnit};

/// The chapters, with names in `@` where something is put in.
const CHAPTERS: &[(&str, &str)] = &[
    (
        "01-about-this-book.md",
        include_str!("skeleton/01-about-this-book.md"),
    ),
    ("02-devices.md", include_str!("skeleton/02-devices.md")),
    ("03-targets.md", include_str!("skeleton/03-targets.md")),
    ("04-cylinders.md", include_str!("skeleton/04-cylinders.md")),
    ("05-hazards.md", include_str!("skeleton/05-hazards.md")),
    ("06-procedures.md", include_str!("skeleton/06-procedures.md")),
    ("07-cards.md", include_str!("skeleton/07-cards.md")),
    ("08-worked-cases.md", include_str!("skeleton/08-worked-cases.md")),
];

/// The longest name of an agency, in characters.
pub const MAX_NAME: usize = 100;

/// What is known of the agency at the start.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Start {
    agency: String,
    pressure: PressureUnit,
    temperature: TemperatureUnit,
    paper: OfficePaper,
}

impl Start {
    /// With the agency's name, the units of its gauges and thermometers, and its paper.
    ///
    /// # Errors
    ///
    /// A sentence that says what is wrong with the name: it is empty, longer than [`MAX_NAME`], the mark of what is undecided, or
    /// holds signs that can't be seen.
    ///
    /// ```
    /// use oxyfolio::book::OfficePaper;
    /// use oxyfolio::compile::{compile, skeleton::Start, source::Sources};
    /// use oxyfolio::quantity::{PressureUnit, TemperatureUnit};
    ///
    /// let start = Start::new("Upper Vale \"Oxygen\" Service", PressureUnit::Bar, TemperatureUnit::Celsius, OfficePaper::A4)?;
    /// let mut sources = Sources::default();
    /// for (name, text) in start.chapters() {
    ///     sources.add(name.into(), name.into(), text);
    /// }
    /// // Nothing is wrong with it but what is not decided.
    /// let rejected = compile(sources).unwrap_err();
    /// assert!(rejected.diagnostics.iter().all(|found| found.code == "undecided"));
    /// assert!(Start::new(" ", PressureUnit::Bar, TemperatureUnit::Celsius, OfficePaper::A4).is_err());
    /// # Ok::<(), String>(())
    /// ```
    pub fn new(
        agency: &str,
        pressure: PressureUnit,
        temperature: TemperatureUnit,
        paper: OfficePaper,
    ) -> Result<Self, String> {
        let agency = agency.trim();
        if agency.is_empty() {
            return Err("expected the agency's name, found nothing".to_owned());
        }
        if agency.chars().count() > MAX_NAME {
            return Err(format!(
                "expected a name of at most {MAX_NAME} characters, found a longer one"
            ));
        }
        if agency.chars().any(|sign| sign.is_control() || is_hidden(sign)) {
            return Err(format!(
                "expected a name that can be printed in a line, found `{}`",
                agency.escape_debug()
            ));
        }
        if undecided::what_to_write(agency).is_some() {
            return Err(format!(
                "expected the agency's name, found `{agency}`, which marks what is not decided"
            ));
        }
        Ok(Self {
            agency: agency.to_owned(),
            pressure,
            temperature,
            paper,
        })
    }

    /// The chapters: file names and texts.
    #[must_use]
    pub fn chapters(&self) -> Vec<(&'static str, String)> {
        let temperature = match self.temperature {
            TemperatureUnit::Celsius => "°C",
            TemperatureUnit::Fahrenheit => "°F",
        };
        let factor = match self.pressure {
            PressureUnit::Psi => "L/psi",
            _ => "L/bar",
        };
        let fill = |text: &str| {
            // The name last: what it holds is not looked at again.
            text.replace("@PRESSURE@", self.pressure.symbol())
                .replace("@TEMPERATURE@", temperature)
                .replace("@FACTOR@", factor)
                .replace("@PAPER@", self.paper.word())
                .replace("@NAME@", &quoted(&self.agency))
        };
        CHAPTERS.iter().map(|(name, text)| (*name, fill(text))).collect()
    }

    /// Writes the chapters into a folder that is empty or not there: all of them or none.
    ///
    /// # Errors
    ///
    /// [`CannotMake`] when something is there already or can't be written; nothing is changed then.
    pub fn write(&self, folder: &Path) -> Result<Vec<PathBuf>, CannotMake> {
        let failed = |path: &Path| {
            let path = path.to_owned();
            move |error| CannotMake::Io { path, error }
        };
        let made_before = match fs::read_dir(folder) {
            Ok(mut entries) => match entries.next() {
                None => true,
                Some(_) => return Err(CannotMake::NotEmpty(folder.to_owned())),
            },
            Err(error) if error.kind() == io::ErrorKind::NotFound => false,
            Err(error) => return Err(failed(folder)(error)),
        };
        let Some(name) = folder.file_name() else {
            return Err(CannotMake::NoName(folder.to_owned()));
        };
        let parent = match folder.parent() {
            Some(parent) if !parent.as_os_str().is_empty() => parent,
            _ => Path::new("."),
        };
        fs::create_dir_all(parent).map_err(failed(parent))?;
        let mut beside = std::ffi::OsString::from(".");
        beside.push(name);
        beside.push(format!(".new-{}", std::process::id()));
        let beside = parent.join(beside);
        fs::create_dir(&beside).map_err(failed(&beside))?;
        let done = self.fill(&beside).and_then(|()| {
            if made_before {
                // Only an empty one can be taken away, so nothing is lost that came in meanwhile.
                fs::remove_dir(folder).map_err(failed(folder))?;
            }
            fs::rename(&beside, folder).map_err(failed(folder))
        });
        if let Err(error) = done {
            // What was begun is taken away as far as the system lets us; the error says what went wrong.
            let _ = fs::remove_dir_all(&beside);
            return Err(error);
        }
        Ok(CHAPTERS.iter().map(|(name, _)| folder.join(name)).collect())
    }

    fn fill(&self, folder: &Path) -> Result<(), CannotMake> {
        for (name, text) in self.chapters() {
            let path = folder.join(name);
            fs::write(&path, text).map_err(|error| CannotMake::Io { path, error })?;
        }
        Ok(())
    }
}

/// A text in YAML's double quotes.
fn quoted(text: &str) -> String {
    let escaped = text.replace('\\', "\\\\").replace('"', "\\\"");
    format!("\"{escaped}\"")
}

/// Why no rulebook was made. Nothing was changed.
#[derive(Debug)]
pub enum CannotMake {
    /// The folder holds something.
    NotEmpty(PathBuf),
    /// The path has no last name of its own.
    NoName(PathBuf),
    /// A file or folder can't be written.
    Io {
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        error: io::Error,
    },
}

impl fmt::Display for CannotMake {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotEmpty(folder) => write!(
                f,
                "`{}` holds something already, and nothing is overwritten; name a folder that isn't there",
                folder.display()
            ),
            Self::NoName(folder) => write!(
                f,
                "expected a folder with a name of its own, found `{}`; name a folder that isn't there",
                folder.display()
            ),
            Self::Io { path, error } => write!(f, "cannot write `{}`: {error}", path.display()),
        }
    }
}

impl std::error::Error for CannotMake {}
