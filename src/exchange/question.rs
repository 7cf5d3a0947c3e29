//! A set-up as somebody else's program asks about it: by names, with the unit in the key.

use alloc::{collections::BTreeMap, string::String, vec::Vec};
use core::fmt;

use serde::{Deserialize, Serialize};

use crate::book::{ConditionId, Fact, Rulebook};
use crate::check::{Report, Setup};
use crate::quantity::{Flow, OutOfBounds, Percent, Pressure, Temperature, Time, bounds};

/// A set-up to be checked, by the names of a rulebook.
///
/// | key | holds |
/// | --- | --- |
/// | `device`, `flow_lpm` | must be there |
/// | `group`, `cylinder` | ids of the book |
/// | `conditions` | a list of ids; an empty list says that there are none |
/// | `minutes_of_life` | of a newborn |
/// | `spo2_percent` | 0 to 100 |
/// | `pressure_psi` or `pressure_bar` | the gauge reading |
/// | `temperature_c` | of the cylinder |
/// | `minutes_wanted` | how long the gas must last |
/// | `observed` | what else was seen, by the words of guards: `{"flame near": false}` |
///
/// What is left out is not known, and is reported so. Another key is an error.
///
/// ```
/// use oxyfolio::RULEBOOK;
/// use oxyfolio::exchange::Question;
///
/// let question: Question = serde_json::from_str(
///     r#"{"device": "non-rebreather", "flow_lpm": 8, "group": "adult", "conditions": [],
///         "cylinder": "d", "pressure_psi": 1500, "observed": {"flame near": true}}"#,
/// )?;
/// let answer = serde_json::to_value(question.answer(&RULEBOOK)?)?;
/// assert_eq!(answer["ok"], false);
/// assert_eq!(answer["minutes_left"], 25);
/// assert_eq!(answer["findings"][0]["code"], "flow-too-low");
/// assert_eq!(answer["findings"][0]["rule"]["id"], "non-rebreather");
///
/// // Everything that is wrong is told at once.
/// let question: Question = serde_json::from_str(
///     r#"{"device": "rebreather", "flow_lpm": 800, "pressure_psi": 1500, "pressure_bar": 103}"#,
/// )?;
/// let told = question.answer(&RULEBOOK).unwrap_err().to_string();
/// assert_eq!(
///     told,
///     "device: expected a device of this rulebook, found `rebreather`; \
///      flow_lpm: expected a flow from 0 to 120 L/min, found 800 L/min; \
///      pressure_bar: expected one of `pressure_psi` and `pressure_bar`, found both"
/// );
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
#[non_exhaustive]
pub struct Question {
    /// The device's id.
    pub device: String,
    /// Litres a minute.
    pub flow_lpm: f64,
    /// The patient's group.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub group: Option<String>,
    /// The patient's conditions; an empty list says that there are none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub conditions: Option<Vec<String>>,
    /// Minutes since birth.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes_of_life: Option<f64>,
    /// The oxygen saturation in per cent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub spo2_percent: Option<f64>,
    /// The cylinder's size.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cylinder: Option<String>,
    /// The gauge reading in psi.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pressure_psi: Option<f64>,
    /// The gauge reading in bar.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pressure_bar: Option<f64>,
    /// The cylinder's temperature in degrees Celsius.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature_c: Option<f64>,
    /// How many minutes the gas must last.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub minutes_wanted: Option<f64>,
    /// What else was seen, by the words of guards.
    #[serde(default, skip_serializing_if = "BTreeMap::is_empty")]
    pub observed: BTreeMap<String, bool>,
}

impl Question {
    /// A question about a device at a flow, of which nothing else is known.
    #[must_use]
    pub fn new(device: impl Into<String>, flow_lpm: f64) -> Self {
        Self {
            device: device.into(),
            flow_lpm,
            ..Self::default()
        }
    }

    /// Checks the set-up against a rulebook.
    ///
    /// # Errors
    ///
    /// [`Unanswerable`] with every name that the book doesn't have and every number that can't be.
    pub fn answer<'b>(&self, book: &'b Rulebook) -> Result<Report<'b>, Unanswerable> {
        let mut asked = Asked { wrong: Vec::new() };
        let device = asked.named("device", "device", &self.device, book.find_device(&self.device));
        let flow = asked.number("flow_lpm", Flow::litres_per_minute(self.flow_lpm));
        let group = asked.maybe("group", "group", self.group.as_deref(), |id| book.find_group(id));
        let cylinder = asked.maybe("cylinder", "cylinder", self.cylinder.as_deref(), |id| {
            book.find_cylinder(id)
        });
        let conditions: Option<Vec<ConditionId>> = self.conditions.as_ref().map(|ids| {
            let found = ids
                .iter()
                .filter_map(|id| asked.named("conditions", "condition", id, book.find_condition(id)));
            found.collect()
        });
        let age = self
            .minutes_of_life
            .and_then(|number| asked.number("minutes_of_life", Time::minutes(number)));
        let spo2 = self.spo2_percent.and_then(|number| {
            let share = bounds::SATURATION.accept(number).and_then(Percent::new);
            asked.number("spo2_percent", share)
        });
        let psi = self
            .pressure_psi
            .and_then(|number| asked.number("pressure_psi", Pressure::psi(number)));
        let bar = self
            .pressure_bar
            .and_then(|number| asked.number("pressure_bar", Pressure::bar(number)));
        if self.pressure_psi.is_some() && self.pressure_bar.is_some() {
            asked.wrong.push(Wrong {
                key: "pressure_bar",
                why: Why::BothUnits,
            });
        }
        let temperature = self
            .temperature_c
            .and_then(|number| asked.number("temperature_c", Temperature::celsius(number)));
        let wanted = self
            .minutes_wanted
            .and_then(|number| asked.number("minutes_wanted", Time::minutes(number)));
        let facts: Vec<(Fact, bool)> = self
            .observed
            .iter()
            .filter_map(|(words, holds)| {
                let fact = Fact::ALL.iter().find(|fact| fact.words() == words).copied();
                asked
                    .named("observed", "observation", words, fact)
                    .map(|fact| (fact, *holds))
            })
            .collect();

        let (Some(device), Some(flow), true) = (device, flow, asked.wrong.is_empty()) else {
            return Err(Unanswerable(asked.wrong));
        };
        let mut setup = Setup::new(device, flow);
        for (fact, holds) in facts {
            setup = setup.observed(fact, holds);
        }
        macro_rules! known {
            ($($name:ident: $value:expr),+ $(,)?) => {$(
                if let Some(value) = $value {
                    setup = setup.$name(value);
                }
            )+};
        }
        known! {
            group: group,
            cylinder: cylinder,
            conditions: conditions.as_deref(),
            minute_of_life: age,
            spo2: spo2,
            pressure: psi.or(bar),
            temperature: temperature,
            minutes_wanted: wanted,
        }
        // Every identifier was found in this book.
        Report::of(book, &setup).map_err(|_| Unanswerable(Vec::new()))
    }
}

/// Gathers what is wrong.
struct Asked {
    wrong: Vec<Wrong>,
}

impl Asked {
    fn named<T>(&mut self, key: &'static str, what: &'static str, name: &str, found: Option<T>) -> Option<T> {
        if found.is_none() {
            self.wrong.push(Wrong {
                key,
                why: Why::NoSuch(what, name.into()),
            });
        }
        found
    }

    fn maybe<T>(
        &mut self,
        key: &'static str,
        what: &'static str,
        name: Option<&str>,
        find: impl FnOnce(&str) -> Option<T>,
    ) -> Option<T> {
        let name = name?;
        self.named(key, what, name, find(name))
    }

    fn number<T>(&mut self, key: &'static str, made: Result<T, OutOfBounds>) -> Option<T> {
        made.map_err(|error| {
            self.wrong.push(Wrong {
                key,
                why: Why::OutOfBounds(error),
            });
        })
        .ok()
    }
}

/// Why a question can't be answered: everything that is wrong with it.
#[derive(Clone, Debug, PartialEq)]
pub struct Unanswerable(Vec<Wrong>);

impl Unanswerable {
    /// The keys that hold what is wrong, in the order they were looked at.
    pub fn keys(&self) -> impl Iterator<Item = &'static str> {
        self.0.iter().map(|wrong| wrong.key)
    }
}

#[derive(Clone, Debug, PartialEq)]
struct Wrong {
    key: &'static str,
    why: Why,
}

#[derive(Clone, Debug, PartialEq)]
enum Why {
    NoSuch(&'static str, String),
    OutOfBounds(OutOfBounds),
    BothUnits,
}

impl fmt::Display for Unanswerable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (place, Wrong { key, why }) in self.0.iter().enumerate() {
            let between = if place > 0 { "; " } else { "" };
            write!(f, "{between}{key}: ")?;
            match why {
                Why::NoSuch(what, name) => {
                    write!(
                        f,
                        "expected a {what} of this rulebook, found `{}`",
                        name.escape_debug()
                    )?;
                }
                Why::OutOfBounds(error) => write!(f, "{error}")?,
                Why::BothUnits => {
                    f.write_str("expected one of `pressure_psi` and `pressure_bar`, found both")?;
                }
            }
        }
        Ok(())
    }
}

impl core::error::Error for Unanswerable {}
