//! Where the density of oxygen is known.

use core::fmt;

use crate::quantity::{Absolute, Bounds, Gauge, OutOfBounds, Pressure, STANDARD_ATMOSPHERE_PA, Temperature};

const PASCALS_PER_BAR: f64 = 100_000.0;

/// Temperatures at which the density is known.
pub const TEMPERATURE: Bounds = Bounds {
    label: "temperature (for the density of oxygen)",
    unit: "°C",
    least: -40.0,
    most: 60.0,
    reason: "the density was checked against the reference from -40 to 60 °C",
};

/// Pressures above vacuum at which the density is known: as far as 300 bar on a gauge.
pub const PRESSURE: Bounds = Bounds {
    label: "absolute pressure (for the density of oxygen)",
    unit: "bar",
    least: 0.0,
    most: 300.0 + STANDARD_ATMOSPHERE_PA / PASCALS_PER_BAR,
    reason: "the density was checked against the reference up to 300 bar on a gauge",
};

/// Readings of a gauge at which the density is known.
pub const GAUGE_PRESSURE: Bounds = Bounds {
    label: "pressure (for the density of oxygen)",
    unit: "bar",
    least: 0.0,
    most: 300.0,
    reason: "the density was checked against the reference up to 300 bar on a gauge",
};

/// The density of oxygen isn't known there, or the gas doesn't fit in the bounds of a volume.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OutsideDomain(OutOfBounds);

impl OutsideDomain {
    /// What was missed, and by which value.
    #[must_use]
    pub const fn out_of_bounds(self) -> OutOfBounds {
        self.0
    }
}

impl From<OutOfBounds> for OutsideDomain {
    fn from(missed: OutOfBounds) -> Self {
        Self(missed)
    }
}

impl fmt::Display for OutsideDomain {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl core::error::Error for OutsideDomain {}

/// The temperature in °C, where the density is known.
pub const fn temperature(temperature: Temperature) -> Result<f64, OutsideDomain> {
    match TEMPERATURE.accept(temperature.as_celsius()) {
        Ok(celsius) => Ok(celsius),
        Err(missed) => Err(OutsideDomain(missed)),
    }
}

/// The pressure in pascals, where the density is known.
pub const fn absolute(pressure: Pressure<Absolute>) -> Result<f64, OutsideDomain> {
    match PRESSURE.accept(pressure.as_bar()) {
        Ok(_) => Ok(pressure.as_pascals()),
        Err(missed) => Err(OutsideDomain(missed)),
    }
}

/// The pressure above vacuum in pascals, where the density is known.
pub const fn gauge(pressure: Pressure<Gauge>) -> Result<f64, OutsideDomain> {
    match GAUGE_PRESSURE.accept(pressure.as_bar()) {
        Ok(_) => Ok(pressure.to_absolute().as_pascals()),
        Err(missed) => Err(OutsideDomain(missed)),
    }
}
