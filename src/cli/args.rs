//! What the program can be asked.

use std::{ffi::OsString, path::PathBuf};

use clap::{Args, Parser, Subcommand, ValueEnum};

use crate::book::{CardSize, Date, InvalidDate, OfficePaper};
use crate::cards::{Backs, Form, Paper, Part, Shift, code::Code};
use crate::check::plan::Order;
use crate::records::run::Grouping;

/// Checks an oxygen-therapy rulebook, prints its pocket cards, checks a set-up, says how long the gas lasts, plans a transport,
/// looks at the cylinders in stock and reviews run records.
#[derive(Debug, Parser)]
#[command(
    name = "oxyfolio",
    version,
    arg_required_else_help = true,
    after_help = "\
Start here:
  oxyfolio check --rules rules          is the rulebook in order?
  oxyfolio cards --out my-cards         print the pocket cards
  oxyfolio duration --cylinder D --pressure \"1500 psi\" --flow \"15 L/min\"

Without --rules the demo rulebook of an invented agency is used.
Exit code: 0 nothing wrong, 1 findings or errors in the rulebook, 2 could not run, 3 lines of
records that could not be read.

Local protocol and medical direction come first. Training and reference aid: not a
medical device, not a substitute for licensed judgement."
)]
pub struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub command: Command,
    /// Options of every command.
    #[command(flatten)]
    pub asked: Asked,
}

/// Options of every command, as asked for.
#[derive(Debug, Args)]
pub struct Asked {
    /// The folder that holds the rulebook's chapters [default: the demo rulebook in this program]
    #[arg(long, value_name = "DIR", global = true, display_order = 90)]
    pub rules: Option<PathBuf>,
    /// How to answer: text for people, json for programs; ndjson and csv, only of review; sarif for editors and CI, only of check
    #[arg(
        long,
        value_enum,
        default_value_t = AskedFormat::Text,
        global = true,
        display_order = 91,
        hide_possible_values = true
    )]
    pub format: AskedFormat,
}

/// How to answer, as asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum AskedFormat {
    /// For people.
    Text,
    /// For programs.
    Json,
    /// For programs that take a line at a time.
    Ndjson,
    /// For spreadsheets.
    Csv,
    /// For editors and CI.
    Sarif,
}

/// Options of every command.
#[derive(Debug)]
pub struct Common {
    /// The folder that holds the rulebook's chapters; none for the rulebook in this program.
    pub rules: Option<PathBuf>,
    /// How to answer.
    pub format: Format,
}

impl Asked {
    /// The options as every command knows them, and the format as it was asked for: some only one command answers in.
    pub fn split(self) -> (Common, AskedFormat) {
        let format = match self.format {
            AskedFormat::Json => Format::Json,
            _ => Format::Text,
        };
        let common = Common {
            rules: self.rules,
            format,
        };
        (common, self.format)
    }
}

/// How to answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Format {
    /// For people.
    Text,
    /// For programs.
    Json,
}

/// The commands.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Check a rulebook: every error at once, with its line and what to write instead
    #[command(after_help = "\
Examples:
  oxyfolio check --rules rules
  oxyfolio check --rules rules --format json
  oxyfolio check --rules rules --format sarif     (SARIF 2.1.0, for editors and CI)

Edit a chapter, save it, check again. A rulebook without errors is not yet a signed
protocol: that takes the medical director.")]
    Check(Check),
    /// Print the pocket cards, check-off sheets, inspection log and poster, or ask which edition a card is of
    #[command(after_help = "\
Examples:
  oxyfolio cards --out my-cards
  oxyfolio cards --rules rules --out my-cards --paper letter --size id-1
  oxyfolio cards --size a6 --paper alone --as png
  oxyfolio cards --only check-off --paper a4
  oxyfolio cards --backs short-edge --back-shift 0.5,-1
  oxyfolio cards --matches KM7P-3QWD --rules rules --older last-years-rules

Print at 100 % (\"actual size\") and measure the bar on the sheet: it is 50 mm long. The backs
are for a printer that turns the paper on its long edge, unless --backs says otherwise. Hold
a printed sheet against the light: where front and back marks lie apart, give the distance
to --back-shift. Every face has the book's short code; the QR code, which says the same and
which card it is, stands on every face, on ID-1 on each card's first face only.
Either all files are new, or after an error all are as they were.

With --matches nothing is printed: the answer is whether the card belongs to the rulebook.
Exit code 1: it doesn't.")]
    Cards(Cards),
    /// Say how many minutes a cylinder lasts, or what reading or flow the minutes need
    #[command(after_help = "\
Examples:
  oxyfolio duration --cylinder D --pressure \"1500 psi\" --flow \"15 L/min\"
  oxyfolio duration --cylinder metric-2-l --pressure \"120 bar\" --flow \"6 L/min\" \\
      --temperature \"-10 °C\" --now 14:05
  oxyfolio duration --water-capacity \"4.6 L\" --pressure \"1500 psi\" --leak \"0.5 L/min\"
  oxyfolio duration --cylinder D --flow \"15 L/min\" --minutes 15       which reading?
  oxyfolio duration --cylinder D --pressure \"1500 psi\" --minutes 40   which flow?

The gas above the residual pressure is worked out twice: by the density of real oxygen at
the temperature, and by the cylinder's factor. The lower counts, divided by the flow and
rounded down to whole minutes. The residual pressure is the rulebook's, unless --residual
is given. Exit code 1 says that it is not enough for --minutes.
Letters are US sizes: read what is stamped on the cylinder.")]
    Duration(Duration),
    /// Check a set-up: device, flow, patient, cylinder
    #[command(after_help = "\
Examples:
  oxyfolio setup --device non-rebreather --flow \"15 L/min\" --group adult
  oxyfolio setup --device nasal-cannula --flow \"2 L/min\" --group adult \\
      --condition none --spo2 \"91 %\" --cylinder D --pressure \"1500 psi\" \\
      --temperature \"20 °C\" --minutes 40

What is not given can't be checked, and the answer says so; the exit code is then 1.
Findings quote the rule, its place in the book and its reason.")]
    Setup(Setup),
    /// Plan a transport: is the gas on board enough, and when is which cylinder changed?
    #[command(after_help = "\
Examples:
  oxyfolio plan transfer.yaml
  oxyfolio plan transfer.yaml --add E --add vehicle --chart transfer.svg
  oxyfolio plan transfer.yaml --order emptiest-first --format json

A plan file, in YAML or JSON:
  name: Lakeside ward to Hilltop hospital
  temperature: 20 °C
  cylinders:
    - {size: E, pressure: 2000 psi, count: 2}
  legs:
    - {name: to the vehicle, time: 8 min, device: non-rebreather, flow: 15 L/min}
    - name: on the road
      time: 20 min
      delay: 4 min
      temperature: -5 °C
      patients:
        - {device: nasal-cannula, flow: 2 L/min}
        - {drive-gas: 6 L/min}

All patients of a leg are on one supply. drive-gas is what a gas-driven ventilator or CPAP
device uses beside the flow. Cylinders are changed at the rulebook's change-over pressure
while another is left; the last may be used to the residual pressure. The planning margin
is added to every leg. Exit code: 0 enough with the margin, 1 not or not to be relied on, 2 could not run.")]
    Plan(Plan),
    /// Look at the cylinders in stock: what to take out or swap, which tests are due, minutes on hand
    #[command(after_help = "\
Examples:
  oxyfolio stock cylinders.csv
  oxyfolio stock cylinders.csv --temperature \"4 °C\" --due-within \"6 months\"
  oxyfolio stock cylinders.csv --sheet inspection.pdf --paper letter
  some-other-program | oxyfolio stock - --format json

A list, in CSV: the first line names the columns, in any order.
  serial,size,pressure_psi,tested,marks,location
  LV-1041,D,2000,2024-03,plus,Station 1
  LV-1042,E,1900,2021-10,,\"Station 1, shelf 2\"
pressure_bar in place of pressure_psi, or both with one filled in each row. tested is the
month of the last test. marks: plus, star, steel, aluminium, or none.

How long a test holds, the fill limits and the least readings are the rulebook's. A test
is past when its month is over; in its month it is a warning. Minutes on hand are those
of the cylinders fit for service, each device at its usual flow, down to the residual
pressure, each cylinder rounded down. What isn't counted is named with its reason.
Exit code: 0 nothing wrong, 1 findings, 2 could not run, 3 some rows could not be read
(the others were looked at; there may be findings too).")]
    Stock(Stock),
    /// Review run records: what went against the book?
    #[command(after_help = "\
Examples:
  oxyfolio review march.ndjson april.csv.gz
  oxyfolio review --by month --report year.pdf 2026-*.ndjson.zst
  oxyfolio review --format ndjson - < runs.ndjson > findings.ndjson
  oxyfolio review --schema > run.schema.json

A record is NDJSON, one run a line, or CSV, one event a row with a head; packed with gzip
or zstd or not; - is standard input:
  {\"run\": \"A-17\", \"group\": \"adult\", \"conditions\": [], \"temperature_c\": 12, \"events\": [
    {\"at\": \"2026-03-01T14:05:00+01:00\", \"do\": \"set-flow\", \"flow_lpm\": 15, \"by\": \"crew-4\"}]}
  run,group,conditions,temperature_c,at,do,cylinder,pressure_psi,pressure_bar,flow_lpm,device,spo2_percent,by

Write no patient's name: there is no field for it. Of a record's own words only the names
of runs and crews are repeated, and --pseudonymise hides those. What was not recorded or
can't be understood is reported as such, never as a pass. Findings come in the order of
the input; those of standard input name the run and no line, so that parts of a file may
be reviewed apart.
Exit code: 0 nothing wrong, 1 findings, 2 could not run or could not read a file to its
end, 3 lines that could not be read, with or without findings.")]
    Review(Review),
}

/// Options of `review`.
#[derive(Debug, Args)]
pub struct Review {
    /// The records; - for standard input
    #[arg(value_name = "FILE", required_unless_present = "schema")]
    pub files: Vec<PathBuf>,
    /// By what the table is: rule, month or crew
    #[arg(long, value_enum, default_value_t = ByArg::Rule, hide_possible_values = true)]
    pub by: ByArg,
    /// Write a one-page summary with charts
    #[arg(long, value_name = "FILE.pdf")]
    pub report: Option<PathBuf>,
    /// The paper of the summary, a4 or letter
    #[arg(long, value_enum, default_value_t = SheetArg::A4, hide_possible_values = true)]
    pub paper: SheetArg,
    /// Hide the names of runs and crews behind a hash with the secret key in this file, 16 bytes or more
    #[arg(long, value_name = "KEYFILE")]
    pub pseudonymise: Option<PathBuf>,
    /// How many threads review [default: as many as the machine has]
    #[arg(long, value_name = "NUMBER", value_parser = clap::value_parser!(u16).range(1..=1024))]
    pub threads: Option<u16>,
    /// Exit with 0 for findings and lines that could not be read too, for what takes any other code for a failure
    #[arg(long)]
    pub exit_0: bool,
    /// Print the JSON Schema of a run
    #[arg(long)]
    pub schema: bool,
    /// The typesetting program
    #[arg(long, value_name = "PROGRAM", default_value = "typst")]
    pub typst: OsString,
}

/// A grouping on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum ByArg {
    /// By the rule
    Rule,
    /// By the month of the run's first time
    Month,
    /// By crew
    Crew,
}

impl From<ByArg> for Grouping {
    fn from(by: ByArg) -> Self {
        match by {
            ByArg::Rule => Self::Rule,
            ByArg::Month => Self::Month,
            ByArg::Crew => Self::Crew,
        }
    }
}

/// Options of `check`.
#[derive(Debug, Args)]
pub struct Check {
    /// Also list every number, hazard and `after` that no worked case would notice changing
    #[arg(long)]
    pub uncovered: bool,
    /// The day on which the edition's dates are judged, YYYY-MM-DD [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
}

fn day(text: &str) -> Result<Date, InvalidDate> {
    text.parse()
}

/// Options of `cards`.
#[derive(Debug, Args)]
pub struct Cards {
    /// The folder for the files; made if it isn't there
    #[arg(long, value_name = "DIR", default_value = "oxyfolio-cards")]
    pub out: PathBuf,
    /// The paper to print on: a4, letter, or alone for pages of the cards' own size; may be given more than once [default: the agency's paper]
    #[arg(long, value_enum, hide_possible_values = true)]
    pub paper: Vec<PaperArg>,
    /// The size of the cards: id-1, 3x5, a7 or a6; may be given more than once [default: those the rulebook names]
    #[arg(long, value_enum, hide_possible_values = true)]
    pub size: Vec<SizeArg>,
    /// Only this part of the set: cards, check-off, log or poster; may be given more than once [default: all; with --size: cards]
    #[arg(long, value_name = "PART", value_enum, hide_possible_values = true)]
    pub only: Vec<PartArg>,
    /// The kind of files: pdf, svg or png (a file for each page); --format is how the program answers
    #[arg(long = "as", value_name = "KIND", value_enum, default_value_t = FormArg::Pdf, hide_possible_values = true)]
    pub form: FormArg,
    /// How backs come behind their fronts: long-edge, short-edge (which edge the printer turns the paper on), or fold
    #[arg(long, value_enum, default_value_t = BacksArg::LongEdge, hide_possible_values = true)]
    pub backs: BacksArg,
    /// Move the backs, in millimetres to the right and down as you look at the back: 0.5,-1
    #[arg(long, value_name = "X,Y", value_parser = shift, allow_hyphen_values = true, default_value = "0,0", hide_default_value = true)]
    pub back_shift: Shift,
    /// Print nothing; say whether a card with this code belongs to the rulebook
    #[arg(long, value_name = "CODE")]
    pub matches: Option<Code>,
    /// An older rulebook, to say which edition a card is of that doesn't belong; may be given more than once
    #[arg(long, value_name = "DIR", requires = "matches")]
    pub older: Vec<PathBuf>,
    /// The typesetting program
    #[arg(long, value_name = "PROGRAM", default_value = "typst")]
    pub typst: OsString,
    /// How many seconds it may take for each document
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

/// A sheet of office paper on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum SheetArg {
    /// 210 x 297 mm
    A4,
    /// 8.5 x 11 in
    Letter,
}

impl From<SheetArg> for OfficePaper {
    fn from(paper: SheetArg) -> Self {
        match paper {
            SheetArg::A4 => Self::A4,
            SheetArg::Letter => Self::Letter,
        }
    }
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
    /// An image for each page, 300 dots to the inch
    Png,
}

impl From<FormArg> for Form {
    fn from(form: FormArg) -> Self {
        match form {
            FormArg::Pdf => Self::Pdf,
            FormArg::Svg => Self::Svg,
            FormArg::Png => Self::Png,
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

/// Options of `duration`.
#[derive(Debug, Args)]
pub struct Duration {
    /// The cylinder's size, as the rulebook names it: D, E, metric-2-l
    #[arg(long, value_name = "SIZE", required_unless_present = "water_capacity")]
    pub cylinder: Option<String>,
    /// The water that fills the cylinder, as stamped on it: "4.6 L"
    #[arg(long, value_name = "VOLUME", conflicts_with = "cylinder")]
    pub water_capacity: Option<String>,
    /// The factor of a cylinder that the rulebook lacks: "0.28 L/psi"
    #[arg(long, requires = "water_capacity", conflicts_with = "cylinder")]
    pub factor: Option<String>,
    /// The gauge reading: "1500 psi", "120 bar"
    #[arg(long)]
    pub pressure: Option<String>,
    /// The cylinder's temperature, -40 to 60 °C: "20 °C", "70 °F" [default: 21 °C]
    #[arg(long, allow_hyphen_values = true)]
    pub temperature: Option<String>,
    /// The flow: "15 L/min"
    #[arg(long)]
    pub flow: Option<String>,
    /// What leaks beside the flow, or alone: "0.5 L/min"
    #[arg(long, value_name = "FLOW")]
    pub leak: Option<String>,
    /// How long the gas must last, in minutes
    #[arg(long, value_name = "MINUTES")]
    pub minutes: Option<String>,
    /// The time of day, for the clock time of the change: 14:05
    #[arg(long, value_name = "HH:MM")]
    pub now: Option<String>,
    /// Gas below this reading isn't counted [default: the rulebook's residual pressure]
    #[arg(long, value_name = "PRESSURE")]
    pub residual: Option<String>,
}

/// Options of `setup`.
#[derive(Debug, Args)]
pub struct Setup {
    /// The device, as the rulebook names it: nasal-cannula, non-rebreather
    #[arg(long)]
    pub device: String,
    /// The flow: "2 L/min"
    #[arg(long)]
    pub flow: String,
    /// The patient's group: adult, child, infant, newborn
    #[arg(long)]
    pub group: Option<String>,
    /// A condition of the patient, or none; may be given more than once: retains-co2
    #[arg(long, value_name = "CONDITION")]
    pub condition: Vec<String>,
    /// The time since birth, for a newborn: "3 min", "2 days"
    #[arg(long, value_name = "TIME")]
    pub since_birth: Option<String>,
    /// The oxygen saturation: "91 %"
    #[arg(long, value_name = "SHARE")]
    pub spo2: Option<String>,
    /// The cylinder's size, as the rulebook names it
    #[arg(long, value_name = "SIZE")]
    pub cylinder: Option<String>,
    /// The gauge reading: "1500 psi"
    #[arg(long)]
    pub pressure: Option<String>,
    /// The cylinder's temperature: "20 °C", "70 °F"
    #[arg(long, allow_hyphen_values = true)]
    pub temperature: Option<String>,
    /// How long the gas must last, in minutes
    #[arg(long, value_name = "MINUTES")]
    pub minutes: Option<String>,
}

/// Options of `plan`.
#[derive(Debug, Args)]
pub struct Plan {
    /// The plan, YAML or JSON: legs and cylinders
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// Which cylinder comes first: fewest-changes or emptiest-first
    #[arg(long, value_enum, default_value_t = OrderArg::FewestChanges, hide_possible_values = true)]
    pub order: OrderArg,
    /// Say how many full cylinders of a size would make it enough; or portable, vehicle; may be repeated
    #[arg(long, value_name = "SIZE")]
    pub add: Vec<String>,
    /// Draw what is left against time, as SVG
    #[arg(long, value_name = "FILE")]
    pub chart: Option<PathBuf>,
}

/// Options of `stock`.
#[derive(Debug, Args)]
pub struct Stock {
    /// The list of cylinders, CSV; - for standard input
    #[arg(value_name = "FILE")]
    pub file: PathBuf,
    /// The day on which tests are judged, YYYY-MM-DD [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub today: Option<Date>,
    /// Say which tests are due within this time: "3 months", "30 days"
    #[arg(long, value_name = "TIME", default_value = "3 months")]
    pub due_within: String,
    /// The temperature at which the gauges were read, -40 to 60 °C: "20 °C", "70 °F" [default: 21 °C]
    #[arg(long, allow_hyphen_values = true)]
    pub temperature: Option<String>,
    /// Print an inspection sheet to take along, as PDF
    #[arg(long, value_name = "FILE")]
    pub sheet: Option<PathBuf>,
    /// The sheet's paper: a4 or letter
    #[arg(long, value_enum, default_value_t = SheetArg::A4, hide_possible_values = true)]
    pub paper: SheetArg,
    /// The typesetting program
    #[arg(long, value_name = "PROGRAM", default_value = "typst")]
    pub typst: OsString,
}

/// An order on the command line.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub enum OrderArg {
    /// The one with the most usable gas first
    FewestChanges,
    /// The one with the least usable gas first
    EmptiestFirst,
}

impl From<OrderArg> for Order {
    fn from(order: OrderArg) -> Self {
        match order {
            OrderArg::FewestChanges => Self::FewestChanges,
            OrderArg::EmptiestFirst => Self::EmptiestFirst,
        }
    }
}
