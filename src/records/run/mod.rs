//! Run records: what crews wrote down while they gave oxygen, read fast and reviewed against the book.
//!
//! A record is NDJSON, one run a line, or CSV, one event a row; either may be packed with gzip or zstd. What can't be
//! understood is told with its place, marks that part of the event as unknown, and the rest of the run is used. A line that
//! can't be read at all is told and counted, and never stops the file.
//!
//! ```text
//! {"run": "A-17", "group": "adult", "conditions": [], "temperature_c": 12, "events": [
//!   {"at": "2026-03-01T14:05:00+01:00", "do": "open-cylinder", "cylinder": "D", "pressure_psi": 1500, "by": "crew-4"},
//!   {"at": "2026-03-01T14:06:00+01:00", "do": "set-flow", "flow_lpm": 15},
//!   {"at": "2026-03-01T14:07:00+01:00", "do": "place-device", "device": "non-rebreather", "spo2_percent": 89}]}
//! ```
//!
//! (on one line in a file), or
//!
//! ```text
//! run,group,conditions,temperature_c,at,do,cylinder,pressure_psi,pressure_bar,flow_lpm,device,spo2_percent,by
//! A-17,adult,none,12,2026-03-01T14:05:00+01:00,open-cylinder,D,1500,,,,,crew-4
//! A-17,adult,none,12,2026-03-01T14:06:00+01:00,set-flow,,,,15,,,
//! ```
//!
//! # What may be written
//!
//! | field | of | what |
//! | --- | --- | --- |
//! | `run` | run | its name, at most 100 bytes; a number is taken as a name |
//! | `group` | run | a group of the book: its id or name |
//! | `conditions` | run | a list of the book's conditions, `[]` for none; in CSV separated by `;`, or `none` |
//! | `temperature_c` | run | the cylinder's temperature in °C |
//! | `events` | run | a list; CSV has a row for each instead |
//! | `at` | event | a time with its offset, as RFC 3339 writes it |
//! | `do` | event | an action of the [rulebook's language](crate::book::Action) |
//! | `cylinder` | event | a size of the book: its id, name or another of its names |
//! | `pressure_psi`, `pressure_bar` | event | the gauge reading; of both, which may differ by 1 bar, the lower is used |
//! | `flow_lpm` | event | the flow in L/min |
//! | `device` | event | a device of the book: its id, name or another of its names |
//! | `spo2_percent` | event | the oxygen saturation, 0 to 100 |
//! | `by` | event | a crew, at most 100 bytes |
//!
//! `null`, an empty cell and a field left out all say that it was not recorded. There is no place for a patient's name,
//! and no text of a record is repeated but the names of runs and crews, which [`Pseudonyms`] can hide.
//!
//! # Limits
//!
//! A line has at most 16 MiB, a run at most 100,000 events, and 100 mistakes of a run are listed. A run is told to be there
//! twice when its name is among the last 65,536 names, by a 64-bit hash of it. Memory does not grow with the input: a review of
//! 10 million events took 13 MiB on two cores. Each thread adds four batches of some 64 KiB with their findings, and a line of
//! 16 MiB its own size.
//!
//! # A year of a nation's runs
//!
//! Sixty million runs of 73 events are 4.4 thousand million events. One thread of a busy machine took 0.40 µs for an event of
//! runs in order, and 0.99 µs where every second run had a fault (`cargo bench --bench review`, 2026-11-25): 29 and 72
//! core-minutes for the year. That is measured rate times count; nobody has such a file here.
//!
//! On an engine made for many machines it runs as it is. `oxyfolio review --format ndjson --exit-0 -` reads NDJSON on standard input
//! and writes a finding a line in the order of the input, which is what Apache Spark's `RDD.pipe` and other streaming
//! engines drive. `tests/spark/run` does it with a real Spark in local mode: the findings of eight parts are, byte for
//! byte, those of a single run.
//!
//! # Why is the JSON read by hand?
//!
//! Because every value's place is wanted, a value of a wrong shape must not end the run, and names are to be found while
//! they are read, without a copy. The tests hold the reader to `serde_json`: what one refuses the other refuses, and what
//! both read is the same.

mod bad;
mod buffer;
mod csv;
mod input;
mod key;
mod line;
mod names;
mod pass;
mod problem;
mod pseudonym;
mod scan;
pub mod schema;
mod tally;
mod time;
mod unpack;
mod window;
mod write;

pub use bad::{BadLine, Fault};
pub use buffer::RunBuffer;
pub use input::Input;
pub use key::Key;
pub use names::Names;
pub use pass::{Options, PassError, review};
pub use problem::{About, Problem};
pub use pseudonym::{Pseudonyms, UnfitKey};
pub use scan::Shape;
pub use tally::{BadNote, Example, GroupSum, Grouping, Groups, Levels, MOST_BAD, MOST_GROUPS, Row, Tally};
pub use time::TimeFault;
pub use write::Written;

/// The most bytes of a line.
pub const MAX_LINE: usize = 16 << 20;
/// The most events of a run.
pub const MAX_EVENTS: usize = 100_000;
/// The most mistakes of a run that are listed.
pub const MAX_PROBLEMS: usize = 100;
/// The most bytes of the name of a run or a crew.
pub const MAX_NAME: usize = 100;
