//! JSON and the like, through `serde` (feature `serde`): quantities and dates both ways, findings and durations as answers,
//! and, with `alloc`, a set-up as a question.
//!
//! Apart from the types themselves, because the build script takes those in without the library's features. Nothing here
//! needs the standard library; the keys are those of the program's own answers.
//!
//! # Quantities
//!
//! The unit is the key, so that nobody has to guess it. More than one unit may be read, and a number outside the
//! [bounds](crate::quantity::bounds) is refused as the constructors refuse it.
//!
//! | quantity | is written | is read too |
//! | --- | --- | --- |
//! | [`Flow`](crate::quantity::Flow) | `{"lpm": 8}` | |
//! | [`Pressure<Gauge>`](crate::quantity::Pressure) | `{"psi": 1500}`, or `{"bar": 137}` when it was read in whole bar | `kpa`, `mpa` |
//! | [`Volume`](crate::quantity::Volume) | `{"l": 4.6}` | `ft3` |
//! | [`Factor`](crate::quantity::Factor) | `{"l_per_psi": 0.16}`, as it was made | `l_per_bar`, `l_per_kpa`, `l_per_mpa` |
//! | [`Temperature`](crate::quantity::Temperature) | `{"c": -10}` | `f` |
//! | [`Percent`](crate::quantity::Percent) | `{"percent": 94}` | |
//! | [`Time`](crate::quantity::Time) | `{"min": 30}`, in the unit it was made in | `s`, `h`, `days`, `months`, `years` |
//! | [`Ratio`](crate::quantity::Ratio) | `{"to_one": 25}` | |
//! | [`Date`](crate::book::Date) | `"2026-11-01"` | |
//!
//! ```
//! use oxyfolio::quantity::{Flow, Gauge, Pressure};
//!
//! let flow: Flow = serde_json::from_str(r#"{"lpm": 8}"#)?;
//! assert_eq!(serde_json::to_string(&flow)?, r#"{"lpm":8.0}"#);
//! let reading: Pressure<Gauge> = serde_json::from_str(r#"{"mpa": 13.7}"#)?;
//! assert_eq!(serde_json::to_string(&reading)?, r#"{"bar":137.0}"#);
//!
//! let refused = serde_json::from_str::<Flow>(r#"{"lpm": 400}"#).unwrap_err();
//! assert!(refused.to_string().starts_with("expected a flow from 0 to 120 L/min, found 400 L/min"));
//! let refused = serde_json::from_str::<Flow>(r#"{"psi": 8}"#).unwrap_err();
//! assert!(refused.to_string().starts_with("unknown variant `psi`, expected `lpm`"));
//! # Ok::<(), serde_json::Error>(())
//! ```
//!
//! # Findings
//!
//! Findings are only written: they borrow the rule they are about.
//!
//! | key | holds |
//! | --- | --- |
//! | `code` | what was found, in kebab-case; stable |
//! | `level` | `stop`, `warn`, `unknown` or `note`; all but `note` mean that the set-up is not in order |
//! | `message` | the same for people; may change |
//! | `remedy` | what to do, where the book says it, else `null` |
//! | `rule` | `kind`, `id`, `name`, `chapter`, `heading`, `file`, `line`, `rationale` |
//!
//! A [`Report`](crate::check::Report) (feature `alloc`) is `ok`, `minutes_left` (or `null`), `findings` and
//! `hazards_not_judged`, the names of what a set-up can't show. A [`Duration`](crate::check::duration::Duration) is `minutes`,
//! `bound` (`density` or `factor`), `by_density_min`, `by_factor_min` (or `null`), `free_l`, `usable_l`, `temperature_c` and
//! `gauge` (`fair`, `reads-low` or `reads-high`).
//!
//! # A set-up as a question
//!
//! See [`Question`] (feature `alloc`).

mod answer;
mod quantity;
#[cfg(feature = "alloc")]
mod question;

#[cfg(feature = "alloc")]
pub use question::{Question, Unanswerable};
