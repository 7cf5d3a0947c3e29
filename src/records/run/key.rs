//! The fields of a record: their names, and other names that people give them.

use super::scan::Scanner;
use crate::check::review::Field;
use crate::compile::suggest::nearest;

/// A field of a run or of an event.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Key {
    /// What the run is called.
    Run,
    /// The patient's group.
    Group,
    /// The patient's conditions.
    Conditions,
    /// The cylinder's temperature in °C.
    Temperature,
    /// The events.
    Events,
    /// When it was.
    At,
    /// What was done.
    Do,
    /// The cylinder's size.
    Cylinder,
    /// The gauge reading in psi.
    PressurePsi,
    /// The gauge reading in bar.
    PressureBar,
    /// The flow in L/min.
    Flow,
    /// The device.
    Device,
    /// The oxygen saturation in percent.
    Spo2,
    /// Who did it: a crew, not a person.
    By,
}

impl Key {
    /// The columns of CSV, in the order of the documentation.
    pub const COLUMNS: [Self; 13] = [
        Self::Run,
        Self::Group,
        Self::Conditions,
        Self::Temperature,
        Self::At,
        Self::Do,
        Self::Cylinder,
        Self::PressurePsi,
        Self::PressureBar,
        Self::Flow,
        Self::Device,
        Self::Spo2,
        Self::By,
    ];

    /// The name in a record.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Run => "run",
            Self::Group => "group",
            Self::Conditions => "conditions",
            Self::Temperature => "temperature_c",
            Self::Events => "events",
            Self::At => "at",
            Self::Do => "do",
            Self::Cylinder => "cylinder",
            Self::PressurePsi => "pressure_psi",
            Self::PressureBar => "pressure_bar",
            Self::Flow => "flow_lpm",
            Self::Device => "device",
            Self::Spo2 => "spo2_percent",
            Self::By => "by",
        }
    }

    /// The field of this name.
    #[inline]
    pub(super) fn find(name: &str) -> Option<Self> {
        Some(match name {
            "at" => Self::At,
            "do" => Self::Do,
            "by" => Self::By,
            "run" => Self::Run,
            "group" => Self::Group,
            "device" => Self::Device,
            "events" => Self::Events,
            "cylinder" => Self::Cylinder,
            "flow_lpm" => Self::Flow,
            "conditions" => Self::Conditions,
            "pressure_psi" => Self::PressurePsi,
            "pressure_bar" => Self::PressureBar,
            "spo2_percent" => Self::Spo2,
            "temperature_c" => Self::Temperature,
            _ => return None,
        })
    }

    /// Takes the name of a field from a line, where it is written as it mostly is.
    #[inline]
    pub(super) fn take(scanner: &mut Scanner<'_>) -> Option<Self> {
        // Names of fixed length are compared as numbers.
        let (there, key) = match &scanner.beginning() {
            b"at" => (scanner.takes_name(b"\"at\":"), Self::At),
            b"do" => (scanner.takes_name(b"\"do\":"), Self::Do),
            b"by" => (scanner.takes_name(b"\"by\":"), Self::By),
            b"cy" => (scanner.takes_name(b"\"cylinder\":"), Self::Cylinder),
            b"de" => (scanner.takes_name(b"\"device\":"), Self::Device),
            b"fl" => (scanner.takes_name(b"\"flow_lpm\":"), Self::Flow),
            b"sp" => (scanner.takes_name(b"\"spo2_percent\":"), Self::Spo2),
            b"pr" if scanner.takes_name(b"\"pressure_psi\":") => (true, Self::PressurePsi),
            b"pr" => (scanner.takes_name(b"\"pressure_bar\":"), Self::PressureBar),
            _ => return None,
        };
        there.then_some(key)
    }

    /// Whether it belongs to the run; to an event otherwise.
    #[inline]
    pub(super) const fn is_of_run(self) -> bool {
        matches!(
            self,
            Self::Run | Self::Group | Self::Conditions | Self::Temperature | Self::Events
        )
    }

    pub(super) const fn bit(self) -> u16 {
        1 << self as u16
    }

    /// The part of an event that it tells.
    pub(super) const fn field(self) -> Option<Field> {
        Some(match self {
            Self::At => Field::At,
            Self::Do => Field::Do,
            Self::Cylinder => Field::Cylinder,
            Self::PressurePsi | Self::PressureBar => Field::Pressure,
            Self::Flow => Field::Flow,
            Self::Device => Field::Device,
            Self::Spo2 => Field::Spo2,
            _ => return None,
        })
    }
}

/// What is known of a field that has no such name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Stranger {
    /// A measure without its unit, or in a unit that isn't read.
    NoUnit(Key),
    /// Another word for a field, or one mistyped.
    Near(Key),
    /// Unlike any field.
    Unknown,
}

/// What a field of an unknown name may be meant to be.
pub(super) fn stranger(name: &str) -> Stranger {
    const UNITS: &[(Key, &[&str])] = &[
        (
            Key::PressurePsi,
            &[
                "pressure",
                "gauge",
                "reading",
                "gauge_pressure",
                "pressure_kpa",
                "pressure_mpa",
            ],
        ),
        (Key::Flow, &["flow", "flow_rate", "flowrate", "rate"]),
        (
            Key::Spo2,
            &["spo2", "sao2", "sats", "saturation", "oxygen_saturation"],
        ),
        (
            Key::Temperature,
            &["temperature", "temp", "temp_f", "temperature_f"],
        ),
    ];
    const OTHERS: &[(&str, Key)] = &[
        ("time", Key::At),
        ("when", Key::At),
        ("timestamp", Key::At),
        ("action", Key::Do),
        ("step", Key::Do),
        ("crew", Key::By),
        ("tank", Key::Cylinder),
        ("bottle", Key::Cylinder),
        ("size", Key::Cylinder),
        ("mask", Key::Device),
        ("psi", Key::PressurePsi),
        ("bar", Key::PressureBar),
        ("lpm", Key::Flow),
        ("flow_l_min", Key::Flow),
        ("temp_c", Key::Temperature),
        ("condition", Key::Conditions),
        ("event", Key::Events),
        ("run_id", Key::Run),
    ];
    if name.len() > 32 {
        return Stranger::Unknown;
    }
    let name = name.trim().to_lowercase().replace([' ', '-'], "_");
    if let Some((key, _)) = UNITS.iter().find(|(_, words)| words.contains(&&*name)) {
        return Stranger::NoUnit(*key);
    }
    if let Some((_, key)) = OTHERS.iter().find(|(word, _)| *word == name) {
        return Stranger::Near(*key);
    }
    let known = Key::COLUMNS.iter().chain([&Key::Events]).map(|key| key.word());
    nearest(&name, known)
        .and_then(Key::find)
        .map_or(Stranger::Unknown, Stranger::Near)
}
