//! What was asked: every field read, and every mistake told at once.

use super::super::query::Query;
use crate::book::{ConditionId, CylinderId, DeviceId, GroupId, Rule, Rulebook};
use crate::check::Setup;
use crate::compile::{
    suggest::nearest,
    written::{self, Measure},
};
use crate::quantity::{Flow, Gauge, Percent, Pressure, Temperature, Time};

/// The longest text that is read as a quantity.
const LONGEST: usize = 100;

macro_rules! fields {
    ($($field:ident $name:literal $label:literal,)+) => {
        /// A field of the form.
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum Field {$($field,)+}

        impl Field {
            /// Its name in the address.
            pub const fn name(self) -> &'static str {
                match self {$(Self::$field => $name,)+}
            }

            /// What it is called on the page.
            pub const fn label(self) -> &'static str {
                match self {$(Self::$field => $label,)+}
            }
        }
    };
}

fields! {
    Device "device" "Device",
    Flow "flow" "Flow",
    Group "group" "Group",
    Condition "condition" "Conditions",
    SinceBirth "since-birth" "Time since birth, for a newborn",
    Spo2 "spo2" "SpO₂",
    Cylinder "cylinder" "Cylinder",
    Pressure "pressure" "Gauge reading",
    Temperature "temperature" "Temperature of the cylinder",
    Minutes "minutes" "Minutes the gas must last",
}

/// The fields as they were read.
#[derive(Debug, Default)]
pub struct Asked {
    /// What can't be used, in the order of the form.
    pub mistakes: Vec<(Field, String)>,
    pub device: Option<DeviceId>,
    pub flow: Option<Flow>,
    pub group: Option<GroupId>,
    pub conditions: Option<Vec<ConditionId>>,
    pub since_birth: Option<Time>,
    pub spo2: Option<Percent>,
    pub cylinder: Option<CylinderId>,
    pub pressure: Option<Pressure<Gauge>>,
    pub temperature: Option<Temperature>,
    pub minutes: Option<Time>,
}

impl Asked {
    /// Reads the form's fields. A number alone gets the unit of the form.
    pub fn read(book: &Rulebook, query: &Query) -> Self {
        let mut asked = Self::default();
        if query.is_empty() {
            return asked;
        }
        let agency = &book.agency;
        asked.device = asked
            .named(
                query,
                Field::Device,
                &rules(&mut book.devices.iter().map(|one| &one.rule)),
            )
            .map(DeviceId);
        asked.flow = asked.quantity(query, Field::Flow, "L/min");
        asked.group = asked
            .named(
                query,
                Field::Group,
                &rules(&mut book.groups.iter().map(|one| &one.rule)),
            )
            .map(GroupId);
        asked.conditions = asked.conditions(book, query);
        asked.since_birth = asked.quantity(query, Field::SinceBirth, "min");
        asked.spo2 = asked.quantity(query, Field::Spo2, "%");
        if let Some(spo2) = asked.spo2.filter(|spo2| spo2.as_percent() > 100.0) {
            asked.mistake_at(Field::Spo2, format!("expected at most 100 %, found {spo2}"));
        }
        asked.cylinder = asked
            .named(
                query,
                Field::Cylinder,
                &rules(&mut book.cylinders.iter().map(|one| &one.rule)),
            )
            .map(CylinderId);
        asked.pressure = asked.quantity(query, Field::Pressure, agency.pressure_unit.symbol());
        asked.temperature = asked.quantity(query, Field::Temperature, agency.temperature_unit.symbol());
        asked.minutes = asked.quantity(query, Field::Minutes, "min");
        let must = [
            (Field::Device, asked.device.is_none()),
            (Field::Flow, asked.flow.is_none()),
        ];
        for (field, is_missing) in must {
            if is_missing && asked.mistake(field).is_none() {
                asked.mistake_at(field, "a set-up has a device and a flow: give both".to_owned());
            }
        }
        asked
    }

    /// The set-up as the checker takes it; none without a device and a flow.
    pub fn setup(&self) -> Option<Setup<'_>> {
        let mut setup = Setup::new(self.device?, self.flow?);
        if let Some(group) = self.group {
            setup = setup.group(group);
        }
        if let Some(conditions) = &self.conditions {
            setup = setup.conditions(conditions);
        }
        if let Some(time) = self.since_birth {
            setup = setup.minute_of_life(time);
        }
        if let Some(spo2) = self.spo2 {
            setup = setup.spo2(spo2);
        }
        if let Some(cylinder) = self.cylinder {
            setup = setup.cylinder(cylinder);
        }
        if let Some(pressure) = self.pressure {
            setup = setup.pressure(pressure);
        }
        if let Some(temperature) = self.temperature {
            setup = setup.temperature(temperature);
        }
        if let Some(minutes) = self.minutes {
            setup = setup.minutes_wanted(minutes);
        }
        Some(setup)
    }

    /// What is wrong in a field.
    pub fn mistake(&self, field: Field) -> Option<&str> {
        let mut mistakes = self.mistakes.iter();
        mistakes
            .find(|(known, _)| *known == field)
            .map(|(_, words)| words.as_str())
    }

    fn mistake_at(&mut self, field: Field, words: String) {
        self.mistakes.push((field, words));
    }

    /// A rule by its id, or by its id or name in other letters.
    fn named(&mut self, query: &Query, field: Field, rules: &[&Rule]) -> Option<u16> {
        let name = query.get(field.name())?;
        let exact = rules.iter().position(|rule| *rule.id == *name);
        let found = exact.or_else(|| {
            let is_same = |known: &str| known.eq_ignore_ascii_case(name);
            rules
                .iter()
                .position(|rule| is_same(&rule.id) || is_same(&rule.name))
        });
        if found.is_none() {
            let known: Vec<&str> = rules.iter().map(|rule| &*rule.id).collect();
            self.mistake_at(field, unknown(name, &known));
        }
        found.and_then(|index| u16::try_from(index).ok())
    }

    fn quantity<Q: Measure>(&mut self, query: &Query, field: Field, unit: &str) -> Option<Q> {
        let text = query.get(field.name())?;
        if text.len() > LONGEST {
            self.mistake_at(
                field,
                format!("expected at most {LONGEST} bytes, found {}", text.len()),
            );
            return None;
        }
        let is_number = text.parse::<f64>().is_ok_and(f64::is_finite);
        let read = if is_number {
            written::one(&format!("{text} {unit}"))
        } else {
            written::one(text)
        };
        match read {
            Ok(quantity) => Some(quantity),
            Err(mistake) => {
                self.mistake_at(field, mistake.to_string());
                None
            }
        }
    }

    /// `none` alone says that there are none; nothing at all says nothing.
    fn conditions(&mut self, book: &Rulebook, query: &Query) -> Option<Vec<ConditionId>> {
        let names: Vec<&str> = query.all(Field::Condition.name());
        match names.as_slice() {
            [] => return None,
            ["none"] => return Some(Vec::new()),
            _ => {}
        }
        if names.contains(&"none") {
            self.mistake_at(
                Field::Condition,
                "\"None of these\" and a condition can't both be".to_owned(),
            );
            return None;
        }
        let known: Vec<&str> = book.conditions.iter().map(|one| &*one.id).collect();
        let mut found = Vec::new();
        for name in names {
            match book.find_condition(name) {
                Some(condition) if found.contains(&condition) => {}
                Some(condition) => found.push(condition),
                None => self.mistake_at(Field::Condition, unknown(name, &known)),
            }
        }
        Some(found)
    }
}

fn rules<'a>(rules: &mut dyn Iterator<Item = &'a Rule>) -> Vec<&'a Rule> {
    rules.collect()
}

fn unknown(name: &str, known: &[&str]) -> String {
    let name: String = name.chars().take(LONGEST).collect();
    match nearest(&name, known.iter().copied()) {
        Some(near) => format!("the rulebook has no `{name}`; did you mean `{near}`?"),
        None => format!("the rulebook has no `{name}`; it has {}", known.join(", ")),
    }
}
