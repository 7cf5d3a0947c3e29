//! Quantities, with the unit as the key.

use core::fmt;

use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

use crate::book::Date;
use crate::quantity::{
    Factor, Flow, Gauge, Percent, Pressure, PressureUnit, Ratio, Temperature, Time, TimeUnit, Volume,
};

/// A quantity as a number with its unit: an enumeration that serde writes as a map with one key.
macro_rules! exchanged {
    ($($name:ty: $written:ident { $($variant:ident $key:literal => $make:expr,)+ } $write:expr;)+) => {$(
        #[derive(Serialize, Deserialize)]
        enum $written {
            $(#[serde(rename = $key)] $variant(f64),)+
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let write: fn(&Self) -> $written = $write;
                write(self).serialize(serializer)
            }
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                match $written::deserialize(deserializer)? {
                    $($written::$variant(number) => ($make)(number),)+
                }
                .map_err(de::Error::custom)
            }
        }
    )+};
}

exchanged! {
    Flow: WrittenFlow {
        Lpm "lpm" => Flow::litres_per_minute,
    } |flow| WrittenFlow::Lpm(flow.as_litres_per_minute());
    Pressure<Gauge>: WrittenPressure {
        Psi "psi" => Pressure::psi,
        Bar "bar" => Pressure::bar,
        Kpa "kpa" => |number| Pressure::in_unit(number, PressureUnit::Kpa),
        Mpa "mpa" => |number| Pressure::in_unit(number, PressureUnit::Mpa),
    } |pressure| match pressure.reading_unit() {
        PressureUnit::Bar => WrittenPressure::Bar(pressure.as_bar()),
        _ => WrittenPressure::Psi(pressure.as_psi()),
    };
    Volume: WrittenVolume {
        Litres "l" => Volume::litres,
        CubicFeet "ft3" => Volume::cubic_feet,
    } |volume| WrittenVolume::Litres(volume.as_litres());
    Factor: WrittenFactor {
        Psi "l_per_psi" => Factor::litres_per_psi,
        Bar "l_per_bar" => Factor::litres_per_bar,
        Kpa "l_per_kpa" => |number| Factor::litres_per(number, PressureUnit::Kpa),
        Mpa "l_per_mpa" => |number| Factor::litres_per(number, PressureUnit::Mpa),
    } |factor| match factor.written() {
        (number, PressureUnit::Psi) => WrittenFactor::Psi(number),
        (number, PressureUnit::Bar) => WrittenFactor::Bar(number),
        (number, PressureUnit::Kpa) => WrittenFactor::Kpa(number),
        (number, PressureUnit::Mpa) => WrittenFactor::Mpa(number),
    };
    Temperature: WrittenTemperature {
        Celsius "c" => Temperature::celsius,
        Fahrenheit "f" => Temperature::fahrenheit,
    } |temperature| WrittenTemperature::Celsius(temperature.as_celsius());
    Percent: WrittenPercent {
        Percent "percent" => Percent::new,
    } |share| WrittenPercent::Percent(share.as_percent());
    Time: WrittenTime {
        Seconds "s" => |number| Time::of(number, TimeUnit::Second),
        Minutes "min" => Time::minutes,
        Hours "h" => |number| Time::of(number, TimeUnit::Hour),
        Days "days" => |number| Time::of(number, TimeUnit::Day),
        Months "months" => |number| Time::of(number, TimeUnit::Month),
        Years "years" => |number| Time::of(number, TimeUnit::Year),
    } |time| match time.written() {
        (number, TimeUnit::Second) => WrittenTime::Seconds(number),
        (number, TimeUnit::Minute) => WrittenTime::Minutes(number),
        (number, TimeUnit::Hour) => WrittenTime::Hours(number),
        (number, TimeUnit::Day) => WrittenTime::Days(number),
        (number, TimeUnit::Month) => WrittenTime::Months(number),
        (number, TimeUnit::Year) => WrittenTime::Years(number),
    };
    Ratio: WrittenRatio {
        ToOne "to_one" => Ratio::to_one,
    } |ratio| WrittenRatio::ToOne(ratio.as_parts_of_air());
}

impl Serialize for Date {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Date {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Written;

        impl de::Visitor<'_> for Written {
            type Value = Date;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a day of the calendar, written \"YYYY-MM-DD\"")
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<Date, E> {
                text.parse().map_err(E::custom)
            }
        }

        deserializer.deserialize_str(Written)
    }
}

#[cfg(test)]
mod tests {
    extern crate std;

    use std::string::ToString as _;

    use super::*;

    /// Written and read again it is the same quantity, but for the last bits of a change of unit.
    fn comes_back<Q>(all: &[Q])
    where
        Q: Serialize + for<'de> Deserialize<'de> + PartialEq + core::fmt::Display,
    {
        for quantity in all {
            let written = serde_json::to_string(quantity).unwrap();
            let read: Q = serde_json::from_str(&written).unwrap();
            assert_eq!(read.to_string(), quantity.to_string(), "{written}");
        }
    }

    #[test]
    fn what_is_written_is_read() {
        comes_back(&[0.0, 0.5, 15.0, 120.0].map(|number| Flow::litres_per_minute(number).unwrap()));
        for unit in [
            PressureUnit::Psi,
            PressureUnit::Bar,
            PressureUnit::Kpa,
            PressureUnit::Mpa,
        ] {
            comes_back(&[0.0, 0.7, 1.0, 20.0, 30.0].map(|number| Pressure::in_unit(number, unit).unwrap()));
            comes_back(&[0.0, 0.16, 1.0].map(|number| Factor::litres_per(number, unit).unwrap()));
        }
        comes_back(&[1.0, 155.0, 2015.0, 4400.0].map(|number| Pressure::psi(number).unwrap()));
        comes_back(&[0.0, 4.6, 100_000.0].map(|number| Volume::litres(number).unwrap()));
        comes_back(&[-60.0, 0.0, 21.5].map(|number| Temperature::celsius(number).unwrap()));
        comes_back(&[0.0, 94.0, 300.0].map(|number| Percent::new(number).unwrap()));
        comes_back(&[0.0, 25.0].map(|number| Ratio::to_one(number).unwrap()));
        for unit in [
            TimeUnit::Second,
            TimeUnit::Minute,
            TimeUnit::Hour,
            TimeUnit::Day,
            TimeUnit::Month,
            TimeUnit::Year,
        ] {
            comes_back(&[0.0, 1.0, 28.5].map(|number| Time::of(number, unit).unwrap()));
        }
        comes_back(&[Date::new(2026, 11, 1).unwrap()]);
    }

    #[test]
    fn what_cannot_be_is_refused() {
        for bad in [
            r#"{"lpm": -1}"#,
            r#"{"lpm": 1e999}"#,
            r#"{"lpm": "8"}"#,
            r#"{"lpm": 8, "l": 8}"#,
            r#"{}"#,
            "8",
            "\"lpm\"",
        ] {
            assert!(serde_json::from_str::<Flow>(bad).is_err(), "{bad}");
        }
        for bad in ["\"2026-02-29\"", "\"01.11.2026\"", "20261101"] {
            assert!(serde_json::from_str::<Date>(bad).is_err(), "{bad}");
        }
        assert!(serde_json::from_str::<Temperature>(r#"{"f": 600}"#).is_err());
        assert!(serde_json::from_str::<Time>(r#"{"years": 121}"#).is_err());
    }
}
