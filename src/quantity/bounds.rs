//! What range each quantity may take, declared once: the constructors, the error messages, the documentation and
//! the tests all read it from here.

use core::fmt;

use super::Number;

/// The range a quantity may take, and why.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// What is measured, as it stands in a message.
    pub label: &'static str,
    /// The unit of `least` and `most`.
    pub unit: &'static str,
    /// The smallest value accepted.
    pub least: f64,
    /// The largest value accepted.
    pub most: f64,
    /// Why the bounds are where they are.
    pub reason: &'static str,
}

/// Oxygen flow.
pub const FLOW: Bounds = Bounds {
    label: "flow",
    unit: "L/min",
    least: 0.0,
    most: 120.0,
    reason: "ambulance regulators deliver at most about 100 L/min (KKK-A-1822E, 3.12.1.1)",
};

/// Pressure read on a gauge.
pub const GAUGE_PRESSURE: Bounds = Bounds {
    label: "pressure",
    unit: "bar",
    least: 0.0,
    most: 310.0,
    reason: "medical oxygen cylinders are filled to 300 bar at the most; 310 leaves room for a warm one",
};

/// Pressure above vacuum.
pub const ABSOLUTE_PRESSURE: Bounds = Bounds {
    label: "absolute pressure",
    unit: "bar",
    least: 0.0,
    most: 311.1,
    reason: "the gauge bound and one atmosphere",
};

/// Volume of gas or of a cylinder.
pub const VOLUME: Bounds = Bounds {
    label: "volume",
    unit: "L",
    least: 0.0,
    most: 100_000.0,
    reason: "the largest transport cylinder, 50 L at 300 bar, holds some 15,000 L",
};

/// Litres of gas per unit of gauge pressure.
pub const FACTOR: Bounds = Bounds {
    label: "cylinder factor",
    unit: "L/psi",
    least: 0.0,
    most: 100.0,
    reason: "H/K is 3.14 L/psi; a pack of many large cylinders stays below 100",
};

/// Density of oxygen.
pub const DENSITY: Bounds = Bounds {
    label: "density",
    unit: "kg/m³",
    least: 0.0,
    most: 1_400.0,
    reason: "liquid oxygen at its coldest has about 1306 kg/m³",
};

/// Temperature.
pub const TEMPERATURE: Bounds = Bounds {
    label: "temperature",
    unit: "°C",
    least: -60.0,
    most: 120.0,
    reason: "beyond the coldest ambulance bay and the hottest closed vehicle",
};

/// A share of a whole, or of a reference value.
pub const PERCENT: Bounds = Bounds {
    label: "share",
    unit: "%",
    least: 0.0,
    most: 300.0,
    reason: "margins and fill limits may pass 100 %",
};

/// Oxygen saturation (SpO₂): a share that no patient can have more of than all.
pub const SATURATION: Bounds = Bounds {
    label: "saturation",
    unit: "%",
    least: 0.0,
    most: 100.0,
    reason: "haemoglobin can't be more than fully saturated; a meter that shows more is broken or misread",
};

/// A span of time.
pub const TIME: Bounds = Bounds {
    label: "time",
    unit: "min",
    least: 0.0,
    most: 120.0 * 365.25 * 24.0 * 60.0,
    reason: "ages reach 120 years",
};

/// Parts of air to one part of oxygen.
pub const RATIO: Bounds = Bounds {
    label: "air-to-oxygen ratio",
    unit: "to 1",
    least: 0.0,
    most: 100.0,
    reason: "a 24 % mask entrains 25 to 1",
};

impl Bounds {
    /// Accepts a finite value between `least` and `most`, ends included.
    ///
    /// # Errors
    ///
    /// [`OutOfBounds`] for a value outside, a NaN or an infinity.
    pub const fn accept(&'static self, value: f64) -> Result<f64, OutOfBounds> {
        // Written so that a NaN, for which every comparison is false, is refused.
        if value >= self.least && value <= self.most {
            Ok(value)
        } else {
            Err(OutOfBounds { bounds: self, value })
        }
    }
}

/// A number that a quantity can't take.
#[derive(Clone, Copy, PartialEq)]
pub struct OutOfBounds {
    /// The bounds that were missed.
    pub bounds: &'static Bounds,
    /// The number, in the unit of the bounds.
    pub value: f64,
}

impl fmt::Display for OutOfBounds {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Bounds {
            label,
            unit,
            least,
            most,
            ..
        } = self.bounds;
        write!(
            f,
            "expected a {label} from {} to {} {unit}, found ",
            Number(*least),
            Number(*most)
        )?;
        if self.value.is_finite() {
            write!(f, "{} {unit}", Number(self.value))
        } else {
            f.write_str("no finite number")
        }
    }
}

/// As it is told: an error that is only passed on need not bring the printing of floating-point numbers into a program.
impl fmt::Debug for OutOfBounds {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "OutOfBounds({self})")
    }
}

impl core::error::Error for OutOfBounds {}
