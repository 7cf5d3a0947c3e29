//! What the library says: findings, reports, durations.

use core::fmt::Display;

use serde::ser::{Serialize, SerializeStruct as _, Serializer};

use crate::book::{Cited, Kind};
use crate::check::Finding;
#[cfg(feature = "alloc")]
use crate::check::Report;
use crate::check::duration::Duration;

/// Something in the words it prints.
struct Words<T>(T);

impl<T: Display> Serialize for Words<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(&self.0)
    }
}

struct Quoted<'b>(Kind, Cited<'b>);

impl Serialize for Quoted<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let Self(kind, rule) = self;
        let place = rule.place();
        let mut fields = serializer.serialize_struct("Rule", 8)?;
        fields.serialize_field("kind", kind.word())?;
        fields.serialize_field("id", rule.id())?;
        fields.serialize_field("name", rule.name())?;
        fields.serialize_field("chapter", place.chapter)?;
        fields.serialize_field("heading", place.heading)?;
        fields.serialize_field("file", place.file)?;
        fields.serialize_field("line", &place.line)?;
        fields.serialize_field("rationale", rule.rationale())?;
        fields.end()
    }
}

/// As on [the page](crate::exchange#findings).
impl Serialize for Finding<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut fields = serializer.serialize_struct("Finding", 5)?;
        fields.serialize_field("code", self.code())?;
        fields.serialize_field("level", self.level.code())?;
        fields.serialize_field("message", &Words(self))?;
        fields.serialize_field("remedy", &self.remedy())?;
        fields.serialize_field("rule", &Quoted(self.kind, self.rule))?;
        fields.end()
    }
}

/// As on [the page](crate::exchange#findings).
impl Serialize for Duration {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut fields = serializer.serialize_struct("Duration", 8)?;
        fields.serialize_field("minutes", &self.minutes)?;
        fields.serialize_field("bound", self.bound.word())?;
        fields.serialize_field("by_density_min", &self.by_density.minutes)?;
        fields.serialize_field("by_factor_min", &self.by_factor.map(|factor| factor.minutes))?;
        fields.serialize_field("free_l", &self.free.as_litres())?;
        fields.serialize_field("usable_l", &self.usable.as_litres())?;
        fields.serialize_field("temperature_c", &self.temperature.as_celsius())?;
        fields.serialize_field("gauge", self.gauge.word())?;
        fields.end()
    }
}

/// As on [the page](crate::exchange#findings).
#[cfg(feature = "alloc")]
impl Serialize for Report<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let names: alloc::vec::Vec<&str> = self.not_checked.iter().map(|hazard| hazard.rule.name()).collect();
        let mut fields = serializer.serialize_struct("Report", 4)?;
        fields.serialize_field("ok", &!self.is_wrong())?;
        fields.serialize_field("minutes_left", &self.minutes_left())?;
        fields.serialize_field("findings", &self.findings)?;
        fields.serialize_field("hazards_not_judged", &names)?;
        fields.end()
    }
}
