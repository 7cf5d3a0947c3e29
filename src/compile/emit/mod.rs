//! Writes a rulebook as Rust: one `static` of all of it and one of what checks ask, a named constant for every rule, a function for every guard.
//!
//! The output names the crate as `::oxyfolio`, so that another crate can `include!` it. Numbers are written so that
//! they read back to the same bits, and the same rulebook always gives the same text.

mod guards;
mod mask;
mod tables;

pub use tables::tables;

use core::fmt::{self, Write as _};

use crate::book::{
    Action, Agency, Card, CardSize, Comparison, Condition, ConditionId, Connection, ConnectionId, Contents,
    Cylinder, CylinderId, CylinderLimits, CylinderUse, Date, Device, DeviceFlow, DeviceId, Fact, Group,
    GroupFlow, GroupId, Guard, GuardOp, Hazard, HazardId, Language, Layout, Limits, List, Measure,
    OfficePaper, Operand, Place, Policies, Policy, PolicyId, Procedure, ProcedureId, Rule, Rulebook,
    Saturation, Severity, Step, StepId, Tables, Target, TargetId, Text, Urgent, Value,
    tables::{DeviceRow, NameRow, PlaceRow, RuleRow, Span, TargetRow},
};
use crate::quantity::{
    Factor, Flow, Gauge, Limit, Percent, Pressure, PressureUnit, Range, Ratio, Temperature, TemperatureUnit,
    Time, TimeUnit, Volume,
};

/// The rulebook as a Rust source file for `include!`.
#[must_use]
pub fn rust(book: &Rulebook) -> String {
    let mut out = String::from("// Written from the rulebook; an edit here is lost.\n\n");
    // 3.14 L/psi is a cylinder's factor, not the number pi. And who includes the file need not use every constant of it.
    let (tables, texts) = tables::gather(book);
    texts.emit(&mut out);
    let mut out = Out {
        text: out,
        shared: Some(&texts),
    };
    out.push_str(
        "\n/// What checks ask of the rulebook, and nothing more.\n#[allow(clippy::approx_constant, dead_code)]\npub static TABLES: ::oxyfolio::book::Tables = ",
    );
    tables.emit(&mut out);
    out.push_str(
        ";\n\n/// The rulebook.\n#[allow(clippy::approx_constant, dead_code)]\npub static RULEBOOK: ::oxyfolio::book::Rulebook = ",
    );
    book.emit(&mut out);
    out.push_str(";\n");
    let mut out = out.text;
    constants(
        &mut out,
        "group",
        "GroupId",
        book.groups.iter().map(|group| &group.rule),
    );
    constants(
        &mut out,
        "device",
        "DeviceId",
        book.devices.iter().map(|device| &device.rule),
    );
    constants(
        &mut out,
        "cylinder",
        "CylinderId",
        book.cylinders.iter().map(|cylinder| &cylinder.rule),
    );
    constants(
        &mut out,
        "connection",
        "ConnectionId",
        book.connections.iter().map(|connection| &connection.rule),
    );
    constants(
        &mut out,
        "policy",
        "PolicyId",
        book.policies.all.iter().map(|policy| &policy.rule),
    );
    constants(
        &mut out,
        "target",
        "TargetId",
        book.targets.iter().map(|target| &target.rule),
    );
    constants(
        &mut out,
        "procedure",
        "ProcedureId",
        book.procedures.iter().map(|procedure| &procedure.rule),
    );
    out.push_str("\n/// Each hazard of the rulebook by name, and its guard as a function.\n");
    out.push_str("#[allow(clippy::approx_constant, dead_code, unused_imports)]\npub mod hazard {\n");
    for line in hazards(book).lines() {
        let indent = if line.is_empty() { "" } else { "    " };
        let _ = writeln!(out, "{indent}{line}");
    }
    out.push_str("}\n");
    constants(
        &mut out,
        "card",
        "CardId",
        book.cards.iter().map(|card| &card.rule),
    );
    let named = book
        .conditions
        .iter()
        .map(|condition| (&condition.id, &condition.name, None));
    module(&mut out, "condition", "ConditionId", named);
    out
}

/// The inside of the module `hazard`, for `include!`: the hazards' constants, and the evaluator of their guards.
///
/// The module above must have `RULEBOOK`, `TABLES` and the modules `device`, `group` and `condition`, as [`rust`] writes them.
#[must_use]
pub fn hazards(book: &Rulebook) -> String {
    let guards = guards::guards(book);
    let mut out = format!("{}\n", guards.uses);
    for (index, Hazard { rule, .. }) in book.hazards.iter().enumerate() {
        constant_of(
            &mut out,
            "",
            "HazardId",
            index,
            (&rule.id, &rule.name, Some(&rule.place)),
        );
    }
    out.push_str(&guards.items);
    out
}

fn constants<'a>(out: &mut String, name: &str, id_type: &str, rules: impl Iterator<Item = &'a Rule>) {
    let named = rules.map(|rule| (&rule.id, &rule.name, Some(&rule.place)));
    module(out, name, id_type, named);
}

type Named<'a> = (&'a Text, &'a Text, Option<&'a Place>);

fn module<'a>(out: &mut String, name: &str, id_type: &str, rules: impl Iterator<Item = Named<'a>>) {
    // Writing to a String cannot fail.
    let _ = write!(
        out,
        "\n/// Each {name} of the rulebook by name.\n#[allow(dead_code, unused_imports)]\npub mod {name} {{\n"
    );
    let _ = writeln!(out, "    use ::oxyfolio::book::{id_type};\n");
    for (index, named) in rules.enumerate() {
        constant_of(out, "    ", id_type, index, named);
    }
    out.push_str("}\n");
}

fn constant_of(out: &mut String, indent: &str, id_type: &str, index: usize, (id, title, place): Named<'_>) {
    let id = constant(id);
    let _ = writeln!(out, "{indent}#[doc = {:?}]", doc(title, place));
    let _ = writeln!(out, "{indent}pub const {id}: {id_type} = {id_type}({index});");
}

fn doc(title: &str, place: Option<&Place>) -> String {
    match place {
        Some(place) => format!("{title}: {place}."),
        None => format!("{title}."),
    }
}

/// `nasal-cannula` becomes `NASAL_CANNULA`. Ids hold only letters, digits and hyphens, and begin with a letter.
fn constant(id: &str) -> String {
    id.to_uppercase().replace('-', "_")
}

/// What is written, and the texts that stand in one place.
#[derive(Default)]
struct Out<'t> {
    text: String,
    shared: Option<&'t tables::Texts>,
}

impl Out<'_> {
    fn push_str(&mut self, text: &str) {
        self.text.push_str(text);
    }

    fn push(&mut self, character: char) {
        self.text.push(character);
    }
}

impl fmt::Write for Out<'_> {
    fn write_str(&mut self, text: &str) -> fmt::Result {
        self.push_str(text);
        Ok(())
    }
}

trait Emit {
    fn emit(&self, out: &mut Out<'_>);
}

/// Structs field by field.
macro_rules! emit_structs {
    ($room:literal: $($name:ident { $($field:ident),+ $(,)? })+) => {$(
        impl Emit for $name {
            fn emit(&self, out: &mut Out<'_>) {
                // Taking the struct apart makes a new field an error here.
                let Self { $($field),+ } = self;
                out.push_str(concat!($room, stringify!($name), " {\n"));
                $(
                    out.push_str(concat!(stringify!($field), ": "));
                    $field.emit(out);
                    out.push_str(",\n");
                )+
                out.push_str("}");
            }
        }
    )+};
}

emit_structs! { "::oxyfolio::book::tables::":
    Tables {
        text, edition, digest, short_digest, pressure_unit, limits, groups, conditions, devices, cylinders, targets, hazards, places, rules,
    }
    NameRow { id, name }
    RuleRow { id, name, place, line, words }
    PlaceRow { chapter, heading, file, rationale }
    DeviceRow { flow, fits, group_flows, air_for, ventilates, reservoir }
    TargetRow { groups, condition, outranks, minute_of_life, saturation, urgent, ladder }
}

emit_structs! { "::oxyfolio::book::":
    Limits {
        residual_pressure, change_over_pressure, in_service_minimum, planning_margin, fill_limit, use_temperature,
    }
    CylinderLimits { water_capacity, service_pressure, fill_limit, factor }
    Rulebook {
        agency, digest, short_digest, groups, devices, cylinders, connections, policies, conditions, targets,
        procedures, hazards, cards,
    }
    Place { chapter, heading, file, line }
    Rule { id, name, place, rationale }
    Agency {
        rule, location, medical_director, edition, effective, review, signed_off, pressure_unit, temperature_unit,
        language, paper, disclaimers,
    }
    Group { rule, age }
    Device {
        rule, also, flow, usual, oxygen, oxygen_by_flow, fits, group_flows, air_for, ventilates, reservoir, entrains, chosen_when,
        unsafe_when, too_low, too_high,
    }
    GroupFlow { group, flow, usual }
    DeviceFlow { device, flow }
    Cylinder { rule, also, series, used, water_capacity, contents, service_pressure, fill_limit, factor, connection }
    Contents { volume, at }
    Connection { rule, gas, pins, thread, number, may_be_mated, note }
    Policy { rule, value, note }
    Policies {
        all, residual_pressure, change_over_pressure, in_service_minimum, planning_margin, fill_limit,
        requalification_interval, storage_temperature, use_temperature,
    }
    Condition { id, name }
    Target {
        rule, groups, condition, outranks, minute_of_life, saturation, start, urgent, ladder, step_up, step_down, recheck,
    }
    Urgent { below, start }
    Procedure { rule, purpose, who, not_when, devices, follows, begins_with, ends_safe, steps }
    Step { id, action, say, why, after, critical, prevents, line }
    Guard { text, ops }
    Hazard { rule, never, severity, say, remedy }
    Card { rule, layout, sizes, notes }
}

/// Enumerations without data, and identifiers: as they print for debugging.
macro_rules! emit_as_debug {
    ($room:literal: $($name:ident),+ $(,)?) => {$(
        impl Emit for $name {
            fn emit(&self, out: &mut Out<'_>) {
                let _ = write!(out, concat!("::oxyfolio::", $room, "::", stringify!($name), "::{:?}"), self);
            }
        }
    )+};
}

emit_as_debug!("book": Action, CardSize, Comparison, CylinderUse, Fact, Language, Measure, OfficePaper, Severity);
emit_as_debug!("quantity": PressureUnit, TemperatureUnit, TimeUnit);

macro_rules! emit_ids {
    ($($name:ident),+ $(,)?) => {$(
        impl Emit for $name {
            fn emit(&self, out: &mut Out<'_>) {
                let _ = write!(out, concat!("::oxyfolio::book::", stringify!($name), "({})"), self.0);
            }
        }
    )+};
}

emit_ids! {
    ConditionId, ConnectionId, CylinderId, DeviceId, GroupId, HazardId, PolicyId, ProcedureId, StepId, TargetId,
}

macro_rules! emit_scalars {
    ($($name:ty, $path:literal, $get:ident;)+) => {$(
        impl Emit for $name {
            fn emit(&self, out: &mut Out<'_>) {
                let _ = write!(out, concat!("::oxyfolio::quantity::", $path, "::tabled({:?})"), self.$get());
            }
        }
    )+};
}

emit_scalars! {
    Flow, "Flow", as_litres_per_minute;
    Volume, "Volume", as_litres;
    Percent, "Percent", as_percent;
    Temperature, "Temperature", as_celsius;
    Ratio, "Ratio", as_parts_of_air;
    Pressure<Gauge>, "Pressure", as_pascals;
}

impl Emit for Factor {
    fn emit(&self, out: &mut Out<'_>) {
        let (litres, per) = self.written();
        let _ = write!(out, "::oxyfolio::quantity::Factor::tabled({litres:?}, ");
        per.emit(out);
        out.push(')');
    }
}

impl Emit for Time {
    fn emit(&self, out: &mut Out<'_>) {
        let (amount, unit) = self.written();
        let _ = write!(out, "::oxyfolio::quantity::Time::tabled({amount:?}, ");
        unit.emit(out);
        out.push(')');
    }
}

impl Emit for Date {
    fn emit(&self, out: &mut Out<'_>) {
        let (year, month, day) = self.parts();
        let _ = write!(out, "::oxyfolio::book::Date::tabled({year}, {month}, {day})");
    }
}

impl<Q: Emit + Copy> Emit for Range<Q> {
    fn emit(&self, out: &mut Out<'_>) {
        out.push_str("::oxyfolio::quantity::Range { low: ");
        self.low.emit(out);
        out.push_str(", high: ");
        self.high.emit(out);
        out.push_str(" }");
    }
}

impl<Q: Emit + Copy> Emit for Limit<Q> {
    fn emit(&self, out: &mut Out<'_>) {
        out.push_str("::oxyfolio::quantity::Limit::");
        match self {
            Self::None => out.push_str("None"),
            Self::Included(value) => variant(out, "Included", value),
            Self::Excluded(value) => variant(out, "Excluded", value),
        }
    }
}

fn variant(out: &mut Out<'_>, name: &str, value: &impl Emit) {
    out.push_str(name);
    out.push('(');
    value.emit(out);
    out.push(')');
}

impl Emit for Text {
    fn emit(&self, out: &mut Out<'_>) {
        let text = self.as_str();
        if out.shared.is_some_and(|shared| shared.is(text)) {
            out.push_str("::oxyfolio::book::Text::fixed(TEXT)");
            return;
        }
        if let Some(Span(start, length)) = out.shared.and_then(|shared| shared.find(text)) {
            let _ = write!(out, "::oxyfolio::book::Text::part(TEXT, {start}, {length}");
            // A name says something to a reader; a long text stands in its place.
            if text.len() <= 40 && !text.contains(['*', '\n']) {
                let _ = write!(out, " /* {text} */");
            }
            out.push(')');
            return;
        }
        let _ = write!(out, "::oxyfolio::book::Text::fixed({text:?})");
    }
}

impl<T: Emit> Emit for List<T> {
    fn emit(&self, out: &mut Out<'_>) {
        // The inline constant lets a list of values that own memory elsewhere live as long as the program.
        out.push_str("::oxyfolio::book::List::fixed(const { &[");
        for item in self {
            item.emit(out);
            out.push_str(", ");
        }
        out.push_str("] })");
    }
}

impl Emit for Span {
    fn emit(&self, out: &mut Out<'_>) {
        let Self(start, length) = self;
        let _ = write!(out, "::oxyfolio::book::tables::Span({start}, {length})");
    }
}

impl<T: Emit, const N: usize> Emit for [T; N] {
    fn emit(&self, out: &mut Out<'_>) {
        out.push('[');
        for item in self {
            item.emit(out);
            out.push_str(", ");
        }
        out.push(']');
    }
}

impl<T: Emit> Emit for Option<T> {
    fn emit(&self, out: &mut Out<'_>) {
        match self {
            None => out.push_str("None"),
            Some(value) => variant(out, "Some", value),
        }
    }
}

impl<A: Emit, B: Emit> Emit for (A, B) {
    fn emit(&self, out: &mut Out<'_>) {
        out.push('(');
        self.0.emit(out);
        out.push_str(", ");
        self.1.emit(out);
        out.push(')');
    }
}

macro_rules! emit_plain {
    ($($name:ty),+) => {$(
        impl Emit for $name {
            fn emit(&self, out: &mut Out<'_>) {
                let _ = write!(out, "{self}");
            }
        }
    )+};
}

emit_plain!(bool, u8, u32);

/// Enumerations whose variants hold one value.
macro_rules! emit_variants {
    ($($name:ident { $($variant:ident),+ $(,)? })+) => {$(
        impl Emit for $name {
            fn emit(&self, out: &mut Out<'_>) {
                out.push_str(concat!("::oxyfolio::book::", stringify!($name), "::"));
                match self {$(Self::$variant(value) => variant(out, stringify!($variant), value),)+}
            }
        }
    )+};
}

emit_variants! {
    Value {
        Flow, Pressure, Volume, Factor, Temperature, Percent, Time, Ratio, FlowRange, PressureRange,
        TemperatureRange, PercentRange, TimeRange,
    }
}

impl Emit for Saturation {
    fn emit(&self, out: &mut Out<'_>) {
        out.push_str("::oxyfolio::book::Saturation::");
        match self {
            Self::Range(range) => variant(out, "Range", range),
            Self::NotReliable => out.push_str("NotReliable"),
        }
    }
}

impl Emit for Operand {
    fn emit(&self, out: &mut Out<'_>) {
        out.push_str("::oxyfolio::book::Operand::");
        match self {
            Self::Value(value) => variant(out, "Value", value),
            Self::Measure(measure) => variant(out, "Measure", measure),
            Self::Policy(id) => variant(out, "Policy", id),
            Self::PolicyLow(id) => variant(out, "PolicyLow", id),
            Self::PolicyHigh(id) => variant(out, "PolicyHigh", id),
            Self::TargetLow => out.push_str("TargetLow"),
            Self::TargetHigh => out.push_str("TargetHigh"),
            Self::DeviceLeastFlow => out.push_str("DeviceLeastFlow"),
            Self::DeviceMostFlow => out.push_str("DeviceMostFlow"),
        }
    }
}

impl Emit for GuardOp {
    fn emit(&self, out: &mut Out<'_>) {
        out.push_str("::oxyfolio::book::GuardOp::");
        match self {
            Self::Compare(measure, comparison, operand) => {
                out.push_str("Compare(");
                measure.emit(out);
                out.push_str(", ");
                comparison.emit(out);
                out.push_str(", ");
                operand.emit(out);
                out.push(')');
            }
            Self::Within(measure, value) => {
                out.push_str("Within(");
                measure.emit(out);
                out.push_str(", ");
                value.emit(out);
                out.push(')');
            }
            Self::Fact(fact) => variant(out, "Fact", fact),
            Self::DeviceIs(id) => variant(out, "DeviceIs", id),
            Self::GroupIs(id) => variant(out, "GroupIs", id),
            Self::HasCondition(id) => variant(out, "HasCondition", id),
            Self::Not => out.push_str("Not"),
            Self::And => out.push_str("And"),
            Self::Or => out.push_str("Or"),
        }
    }
}

impl Emit for Layout {
    fn emit(&self, out: &mut Out<'_>) {
        out.push_str("::oxyfolio::book::Layout::");
        match self {
            Self::Devices { devices } => fields(out, "Devices", &[("devices", devices)]),
            Self::Durations {
                cylinders,
                pressures,
                flows,
            } => fields(
                out,
                "Durations",
                &[
                    ("cylinders", cylinders),
                    ("pressures", pressures),
                    ("flows", flows),
                ],
            ),
            Self::Targets { targets } => fields(out, "Targets", &[("targets", targets)]),
            Self::Newborn { targets } => fields(out, "Newborn", &[("targets", targets)]),
            Self::Cylinders {
                cylinders,
                connections,
            } => fields(
                out,
                "Cylinders",
                &[("cylinders", cylinders), ("connections", connections)],
            ),
            Self::Steps { procedures } => fields(out, "Steps", &[("procedures", procedures)]),
            Self::Checklist { items } => fields(out, "Checklist", &[("items", items)]),
            Self::Cautions { hazards } => fields(out, "Cautions", &[("hazards", hazards)]),
            Self::CheckOff { procedures } => fields(out, "CheckOff", &[("procedures", procedures)]),
            Self::Log { cylinders, items } => {
                fields(out, "Log", &[("cylinders", cylinders), ("items", items)]);
            }
            Self::Poster { procedures } => fields(out, "Poster", &[("procedures", procedures)]),
        }
    }
}

fn fields(out: &mut Out<'_>, name: &str, fields: &[(&str, &dyn Emit)]) {
    out.push_str(name);
    out.push_str(" { ");
    for (field, value) in fields {
        out.push_str(field);
        out.push_str(": ");
        value.emit(out);
        out.push_str(", ");
    }
    out.push('}');
}
