//! Review of a run's record against the book: what was done, read and set, replayed in time.

mod finding;
mod record;
mod reviewer;

pub use finding::{About, Fault, Finding, Mismatch, NotRecorded, Scene};
pub use record::{Event, Field, Moment, Run, Unreadable};
pub use reviewer::{Notes, Reviewer};
