//! What `cards` can be asked.

use std::{ffi::OsString, path::PathBuf};

use clap::{Args, ValueEnum};

use crate::book::CardSize;
use crate::cards::{Backs, Form, Paper, Part, Shift, code::Code, typst::DOTS_PER_INCH};

/// What its help ends with.
pub(super) const HELP: &str = "\
Examples:
  oxyfolio cards --out my-cards
  oxyfolio cards --rules rules --out my-cards --paper letter --size id-1
  oxyfolio cards --size a6 --paper alone --as png --dpi 96
  oxyfolio cards --matches KM7P-3QWD --rules rules --older last-years-rules

Print at 100 % (\"actual size\"): the bar on the sheet is then 50 mm long. Hold a printed sheet \
against the light: where front and back marks lie apart, give the distance to --back-shift. Either \
all files are new, or after an error all are as they were.

Exit code: 0 printed, or the card belongs to the rulebook; 1 it doesn't, or the rulebook has errors; \
2 could not run.";

/// Options of `cards`.
#[derive(Debug, Args)]
pub struct Cards {
    /// The folder for the files; made if it isn't there
    #[arg(long, value_name = "DIR", default_value = "oxyfolio-cards")]
    pub out: PathBuf,
    /// The paper: a4, letter, or alone for pages of the cards' own size; may be repeated [default: the agency's]
    #[arg(long, value_enum, hide_possible_values = true)]
    pub paper: Vec<PaperArg>,
    /// The size of the cards: id-1, 3x5, a7 or a6; may be repeated [default: those of the rulebook]
    #[arg(long, value_enum, hide_possible_values = true)]
    pub size: Vec<SizeArg>,
    /// Only this part: cards, check-off, log or poster; may be repeated [default: all; with --size: cards]
    #[arg(long, value_name = "PART", value_enum, hide_possible_values = true)]
    pub only: Vec<PartArg>,
    /// The kind of files: pdf, svg or png (a file for each page)
    #[arg(long = "as", value_name = "KIND", value_enum, default_value_t = FormArg::Pdf, hide_possible_values = true)]
    pub form: FormArg,
    /// Dots to the inch of PNG images, 36 to 1200: 96 is true size on most screens [default: 300]
    #[arg(long, value_name = "DOTS", value_parser = clap::value_parser!(u16).range(36..=1200))]
    pub dpi: Option<u16>,
    /// How backs come behind fronts: on which edge the printer turns the paper, long-edge or short-edge, or fold
    #[arg(long, value_enum, default_value_t = BacksArg::LongEdge, hide_possible_values = true)]
    pub backs: BacksArg,
    /// Move the backs, in mm to the right and down as you look at the back: 0.5,-1
    #[arg(long, value_name = "X,Y", value_parser = shift, allow_hyphen_values = true, default_value = "0,0", hide_default_value = true)]
    pub back_shift: Shift,
    /// Print nothing; say whether a card with this code belongs to the rulebook
    #[arg(long, value_name = "CODE")]
    pub matches: Option<Code>,
    /// An older rulebook the card may be of; may be repeated
    #[arg(long, value_name = "DIR", requires = "matches")]
    pub older: Vec<PathBuf>,
    /// The typesetting program
    #[arg(long, value_name = "PROGRAM", default_value = "typst")]
    pub typst: OsString,
    /// The most it may take for each document
    #[arg(long, value_name = "SECONDS", default_value_t = 60, value_parser = clap::value_parser!(u64).range(1..=3600))]
    pub time_limit: u64,
}

fn shift(text: &str) -> Result<Shift, String> {
    let expected = || format!("expected two numbers from -{0} to {0}, as in 0.5,-1", Shift::MOST);
    let (x, y) = text.split_once(',').ok_or_else(expected)?;
    let number = |text: &str| {
        let number: f64 = text.trim().parse().map_err(|_| expected())?;
        if number.abs() <= Shift::MOST {
            Ok(number)
        } else {
            Err(expected())
        }
    };
    Ok(Shift {
        x: number(x)?,
        y: number(y)?,
    })
}

/// A paper on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum PaperArg {
    /// 210 x 297 mm; posters on A3
    A4,
    /// 8.5 x 11 in; posters on Tabloid
    Letter,
    /// Pages of the cards' own size
    Alone,
}

impl From<PaperArg> for Paper {
    fn from(paper: PaperArg) -> Self {
        match paper {
            PaperArg::A4 => Self::A4,
            PaperArg::Letter => Self::Letter,
            PaperArg::Alone => Self::Alone,
        }
    }
}

/// A card size on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum SizeArg {
    /// 85.60 x 53.98 mm (ISO/IEC 7810)
    #[value(name = "id-1")]
    Id1,
    /// 3 x 5 in
    #[value(name = "3x5")]
    ThreeByFive,
    /// 105 x 74 mm
    A7,
    /// 148 x 105 mm
    A6,
}

impl From<SizeArg> for CardSize {
    fn from(size: SizeArg) -> Self {
        match size {
            SizeArg::Id1 => Self::Id1,
            SizeArg::ThreeByFive => Self::ThreeByFive,
            SizeArg::A7 => Self::A7,
            SizeArg::A6 => Self::A6,
        }
    }
}

/// A part of the set on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum PartArg {
    /// The pocket cards
    Cards,
    /// The sheets for examining procedures
    CheckOff,
    /// The sheets for inspections of cylinders
    Log,
    /// The posters
    Poster,
}

impl From<PartArg> for Part {
    fn from(part: PartArg) -> Self {
        match part {
            PartArg::Cards => Self::Cards,
            PartArg::CheckOff => Self::CheckOff,
            PartArg::Log => Self::Log,
            PartArg::Poster => Self::Poster,
        }
    }
}

/// A kind of files on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum FormArg {
    /// Tagged PDF to PDF/UA-1
    Pdf,
    /// A drawing for each page
    Svg,
    /// An image for each page
    Png,
}

impl Cards {
    /// The form of the files, or what is wrong with how it was asked for.
    pub fn form(&self) -> Result<Form, &'static str> {
        match (self.form, self.dpi) {
            (FormArg::Png, dots) => Ok(Form::Png {
                dots_per_inch: dots.unwrap_or(DOTS_PER_INCH),
            }),
            (_, Some(_)) => Err("--dpi is for images only; write `--as png` too, or leave it out"),
            (FormArg::Pdf, None) => Ok(Form::Pdf),
            (FormArg::Svg, None) => Ok(Form::Svg),
        }
    }
}

/// A way of backs on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum BacksArg {
    /// A printer that turns the paper on its long edge
    LongEdge,
    /// A printer that turns the paper on its short edge
    ShortEdge,
    /// Below their fronts, to be folded behind them
    Fold,
}

impl From<BacksArg> for Backs {
    fn from(backs: BacksArg) -> Self {
        match backs {
            BacksArg::LongEdge => Self::LongEdge,
            BacksArg::ShortEdge => Self::ShortEdge,
            BacksArg::Fold => Self::Fold,
        }
    }
}
