//! The density of oxygen, the minutes that follow from it and the conversions of units, against what others computed and
//! against laws that hold everywhere.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

#[path = "oxygen/domain.rs"]
mod domain;
#[path = "oxygen/duration.rs"]
mod duration;
#[path = "oxygen/error.rs"]
mod error;
#[path = "oxygen/laws.rs"]
mod laws;
#[path = "oxygen/reference.rs"]
mod reference;
#[path = "oxygen/setup.rs"]
mod setup;
#[path = "oxygen/tables.rs"]
mod tables;
#[path = "oxygen/targets.rs"]
mod targets;
#[path = "oxygen/units.rs"]
mod units;
#[path = "oxygen/words.rs"]
mod words;

use oxyfolio::quantity::{Absolute, Flow, Gauge, Pressure, Temperature, Volume};

fn absolute(bar: f64) -> Pressure<Absolute> {
    Pressure::absolute_bar(bar).unwrap()
}

fn psi(value: f64) -> Pressure<Gauge> {
    Pressure::psi(value).unwrap()
}

fn bar(value: f64) -> Pressure<Gauge> {
    Pressure::<Gauge>::bar(value).unwrap()
}

fn celsius(value: f64) -> Temperature {
    Temperature::celsius(value).unwrap()
}

fn litres(value: f64) -> Volume {
    Volume::litres(value).unwrap()
}

fn flow(litres_per_minute: f64) -> Flow {
    Flow::litres_per_minute(litres_per_minute).unwrap()
}

/// The library's density in kg/m³.
fn density(bar: f64, temperature: f64) -> f64 {
    oxyfolio::oxygen::density(absolute(bar), celsius(temperature))
        .unwrap()
        .as_kilograms_per_cubic_metre()
}
