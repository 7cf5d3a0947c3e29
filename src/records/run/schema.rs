//! JSON Schemas (draft 2020-12) of a run, as it is to be written, and of a finding, as it comes out.
//!
//! The types here are made for their schemas and mirror the reader and the writer, which the tests hold to them.

use schemars::{JsonSchema, generate::SchemaSettings};
use serde::Serialize;

/// The schema of a run: a line of NDJSON.
pub const RUN: &str = include_str!("run.schema.json");
/// The schema of a finding: a line of `--format ndjson`.
pub const FINDING: &str = include_str!("finding.schema.json");

/// A run: one patient, one crew, from fetching the cylinder to putting it away, or whatever part of it was recorded. Write
/// nothing that could tell who the patient is.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Run record")]
pub struct Run {
    /// What the run is called; each run has a name of its own.
    run: Name,
    /// The patient's group: its id or name in the rulebook.
    group: Option<String>,
    /// The patient's conditions, by their ids in the rulebook; an empty list says that there are none.
    conditions: Option<Vec<String>>,
    /// The cylinder's temperature in °C.
    #[schemars(range(min = -60, max = 120))]
    temperature_c: Option<f64>,
    /// What was done, read and set, in the order it was written down.
    events: Option<Vec<Event>>,
}

/// What was done, read or set at a moment. What is left out or null was not recorded.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Event {
    /// When it was, with seconds and offset (RFC 3339).
    #[schemars(regex(pattern = r"^\d{4}-\d{2}-\d{2}[Tt ]\d{2}:\d{2}:\d{2}(\.\d+)?([Zz]|[+-]\d{2}:\d{2})$"))]
    at: Option<String>,
    /// What was done: an action as the rulebook's procedures write it.
    r#do: Option<String>,
    /// The cylinder's size: its id, name or another of its names in the rulebook.
    cylinder: Option<String>,
    /// The gauge reading in psi.
    #[schemars(range(min = 0, max = 4496))]
    pressure_psi: Option<f64>,
    /// The gauge reading in bar.
    #[schemars(range(min = 0, max = 310))]
    pressure_bar: Option<f64>,
    /// The flow in L/min.
    #[schemars(range(min = 0, max = 120))]
    flow_lpm: Option<f64>,
    /// The device: its id, name or another of its names in the rulebook.
    device: Option<String>,
    /// The oxygen saturation in percent.
    #[schemars(range(min = 0, max = 100))]
    spo2_percent: Option<f64>,
    /// The crew; no person's name.
    by: Option<Name>,
}

/// A name of a run or a crew: at most 100 bytes, or a number.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(untagged)]
pub enum Name {
    /// A text.
    Text(#[schemars(length(min = 1, max = 100))] String),
    /// A number.
    Number(f64),
}

/// A finding about a run, or a part of a record that could not be understood.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
#[schemars(title = "Finding about a run")]
pub struct Finding {
    /// The run's name or pseudonym; null for a line that could not be read or a run without a name.
    run: Required<String>,
    /// Who did the event, or a pseudonym.
    by: Required<String>,
    /// The file; null for standard input.
    file: Required<String>,
    /// A stable name in kebab-case for what was found.
    #[schemars(regex(pattern = "^[a-z0-9]+(-[a-z0-9]+)*$"))]
    code: String,
    /// How serious it is.
    level: Level,
    /// What was found, in words.
    message: String,
    /// What to do or to write, where the book or the reader says it.
    remedy: Required<String>,
    /// The line of the file, from 1; null for standard input.
    line: Required<u64>,
    /// The character of the line, from 1, of what could not be understood.
    column: Required<u64>,
    /// The event, from 1; null for what concerns the whole run.
    event: Required<u64>,
    /// When it began (RFC 3339).
    from: Required<String>,
    /// When it ended; null where it lasted to the end of the record or is of no length.
    until: Required<String>,
    /// How long it lasted, in minutes.
    minutes: Required<f64>,
    /// The rule it is about.
    rule: Rule,
    /// The rulebook's edition.
    edition: String,
    /// The rulebook's short digest.
    book: String,
}

/// There in every finding; null where there is nothing to say.
type Required<T> = Nullable<T>;

/// A value or null.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(untagged)]
#[schemars(inline)]
pub enum Nullable<T> {
    /// A value.
    Some(T),
    /// Nothing to say.
    None(()),
}

/// How serious a finding is.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Level {
    /// Do not go on.
    Stop,
    /// To be put right.
    Warn,
    /// It could not be checked.
    Unknown,
    /// Worth knowing; nothing is wrong.
    Note,
}

/// A rule and its place in the book.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub struct Rule {
    /// Its kind: device, hazard, procedure …
    kind: String,
    /// The name other rules use.
    id: String,
    /// The name people use.
    name: String,
    /// The chapter.
    chapter: String,
    /// The heading above it.
    heading: String,
    /// The chapter's file.
    file: String,
    /// Its line, from 1.
    line: u64,
}

/// A schema made anew, as the file beside this one holds it.
#[must_use]
pub fn made<T: JsonSchema>() -> String {
    let schema = SchemaSettings::draft2020_12()
        .into_generator()
        .into_root_schema_for::<T>();
    let mut text = serde_json::to_string_pretty(&schema).unwrap_or_default();
    text.push('\n');
    text
}
