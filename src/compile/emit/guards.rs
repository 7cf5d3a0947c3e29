//! Writes every hazard's guard as a Rust function, and the evaluator that asks them; all of them at once it looks up.
//!
//! The functions say what the guard says, in the same order: `device on patient and flow = 0 L/min` becomes
//! `seen.fact(Fact::DeviceOnPatient) & equal(seen.flow, Flow::tabled(0.0))`. Policies are written as their values; the
//! flow limits of devices stay in the rulebook's table.

use std::collections::{BTreeMap, BTreeSet};

use core::fmt::{Display, Write as _};

use super::{
    super::{
        guard::{Signs, dimension_of, dimension_of_measure, infix, is_range},
        written::Dimension,
    },
    Emit, Out, constant, doc, mask,
};
use crate::book::{Comparison, Fact, GuardOp, Hazard, Measure, Operand, PolicyId, Rulebook, Value};
use crate::quantity::Range;

/// The prefix that the tables' writer puts before the types of quantities.
const QUANTITY: &str = "::oxyfolio::quantity::";

/// Stands where a line may end.
const BREAK: char = '\u{1}';

const RUST: Signs = Signs {
    not: "!",
    and: "\u{1}& ",
    or: "\u{1}| ",
};

/// The guards as Rust.
pub struct Written {
    /// What the items use, a line for each.
    pub uses: String,
    /// The evaluator `Guards` and a function for each hazard.
    pub items: String,
}

/// For the module that holds the hazards' constants. Names of devices, groups and conditions, and `RULEBOOK` and `TABLES`, are
/// those of the module above.
pub fn guards(book: &Rulebook) -> Written {
    let mut writer = Writer {
        book,
        uses: Uses::default(),
    };
    writer.import("::oxyfolio::book", "HazardId");
    writer.import("::oxyfolio::guard", "Observed");
    writer.import("::oxyfolio::guard", "Truth");
    writer.import("super", "RULEBOOK");
    writer.import("super", "TABLES");
    let mut functions = String::new();
    for hazard in &book.hazards {
        writer.function(hazard, &mut functions);
    }
    let mut methods = "";
    let mut looked_up = String::new();
    if !book.hazards.is_empty() {
        let written = mask::write(book, &mut writer.uses);
        (methods, looked_up) = (written.methods, written.items);
    }
    let uses = writer.uses.0.iter().map(|(module, names)| {
        let names: Vec<&str> = names.iter().map(String::as_str).collect();
        match names.as_slice() {
            [name] => format!("use {module}::{name};\n"),
            names => format!("use {module}::{{{}}};\n", names.join(", ")),
        }
    });
    let uses = uses.collect();
    let items = evaluator(book, methods) + &looked_up + &functions;
    Written { uses, items }
}

/// What the items use, by module.
#[derive(Default)]
pub struct Uses(BTreeMap<&'static str, BTreeSet<String>>);

impl Uses {
    /// Adds a name.
    pub fn add(&mut self, module: &'static str, name: &str) {
        self.0.entry(module).or_default().insert(name.to_owned());
    }
}

fn evaluator(book: &Rulebook, methods: &str) -> String {
    let mut out = String::from(
        "
/// The guards of the hazards as functions, and all of them as look-ups; asks the same questions as a reference to the
/// rulebook.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Guards;

impl ::oxyfolio::guard::Evaluator<'static> for Guards {
    type Rules = &'static ::oxyfolio::book::Tables;

    fn book(&self) -> &'static ::oxyfolio::book::Rulebook {
        &RULEBOOK
    }

    fn rules(&self) -> &'static ::oxyfolio::book::Tables {
        &TABLES
    }

    fn evaluate(&self, hazard: HazardId, seen: &Observed<'_>) -> Truth {
",
    );
    if book.hazards.is_empty() {
        out.push_str("        let _ = (hazard, seen);\n        Truth::Unknown\n    }\n}\n");
        return out;
    }
    out.push_str("        match hazard {\n");
    for hazard in &book.hazards {
        let (id, function) = (constant(&hazard.rule.id), function_name(hazard));
        // Writing to a String cannot fail.
        let _ = writeln!(out, "            {id} => {function}(seen),");
    }
    out.push_str("            _ => Truth::Unknown,\n        }\n    }\n");
    out.push_str(methods);
    out.push_str("}\n");
    out
}

/// Named for the key that holds the guard; that the names can't clash with Rust's own words is a gain.
pub fn function_name(hazard: &Hazard) -> String {
    format!("never_{}", hazard.rule.id.replace('-', "_"))
}

/// An expression whose value is unknown whatever was observed: a guard of a table that no reader made.
const UNKNOWN: &str = "Truth::Unknown";

struct Writer<'a> {
    book: &'a Rulebook,
    uses: Uses,
}

impl Writer<'_> {
    fn function(&mut self, hazard: &Hazard, out: &mut String) {
        let expression =
            infix(&hazard.never.ops, &RUST, |op| Some(self.leaf(op))).unwrap_or_else(|| UNKNOWN.to_owned());
        let seen = if expression.contains("seen.") { "seen" } else { "_" };
        let _ = write!(
            out,
            "\n#[doc = {:?}]\n#[doc = {:?}]\nfn {}({seen}: &Observed<'_>) -> Truth {{\n    {}\n}}\n",
            doc(&hazard.rule.name, Some(&hazard.rule.place)),
            format!("`{}`", hazard.never.text.replace('`', "'")),
            function_name(hazard),
            laid_out(&expression)
        );
    }

    fn leaf(&mut self, op: &GuardOp) -> String {
        match op {
            GuardOp::Compare(measure, comparison, operand) => self
                .comparison(*measure, *comparison, operand)
                .unwrap_or_else(|| UNKNOWN.to_owned()),
            GuardOp::Within(measure, range) if belongs(*measure, range) && is_range(range) => {
                self.compares_with("within");
                format!("within({}, {})", field(*measure), self.quantity(range, range))
            }
            GuardOp::Fact(Fact::DeviceHasReservoir) => {
                self.import("::oxyfolio::guard", "Evaluator");
                "seen.device_has_reservoir(Guards.rules())".to_owned()
            }
            GuardOp::Fact(fact) => {
                self.import("::oxyfolio::book", "Fact");
                format!("seen.fact(Fact::{fact:?})")
            }
            GuardOp::DeviceIs(id) => {
                let device = self.book.device(*id).map(|device| &*device.rule.id);
                self.named("seen.device_is", "device", device)
            }
            GuardOp::GroupIs(id) => {
                let group = self.book.group(*id).map(|group| &*group.rule.id);
                self.named("seen.group_is", "group", group)
            }
            GuardOp::HasCondition(id) => {
                let condition = self.book.condition(*id).map(|condition| &*condition.id);
                self.named("seen.has_condition", "condition", condition)
            }
            GuardOp::Within(..) | GuardOp::Not | GuardOp::And | GuardOp::Or => UNKNOWN.to_owned(),
        }
    }

    fn named(&mut self, asks: &str, module: &str, id: Option<&str>) -> String {
        let Some(id) = id else {
            return UNKNOWN.to_owned();
        };
        self.import("super", module);
        format!("{asks}({module}::{})", constant(id))
    }

    fn comparison(&mut self, measure: Measure, comparison: Comparison, operand: &Operand) -> Option<String> {
        let (name, left) = (comparison_name(comparison), field(measure));
        let kind = dimension_of_measure(measure);
        let right = match operand {
            Operand::Value(value) => self.one(measure, value, value)?,
            Operand::Measure(other) if kind == dimension_of_measure(*other) => field(*other).to_owned(),
            Operand::Policy(id) => {
                let policy = self.book.policy(*id)?;
                let text = format!("{}: {}", policy.rule.id, policy.value);
                self.one(measure, &policy.value, &text)?
            }
            Operand::PolicyLow(id) => self.end(measure, *id, true)?,
            Operand::PolicyHigh(id) => self.end(measure, *id, false)?,
            Operand::TargetLow if kind == Dimension::Percent => "seen.target_low()".to_owned(),
            Operand::TargetHigh if kind == Dimension::Percent => "seen.target_high()".to_owned(),
            Operand::DeviceLeastFlow | Operand::DeviceMostFlow if kind == Dimension::Flow => {
                let end = if *operand == Operand::DeviceLeastFlow {
                    "low"
                } else {
                    "high"
                };
                self.compares_with(name);
                self.import("::oxyfolio::guard", "Evaluator");
                return Some(format!(
                    "seen.device_flow(Guards.rules(), |limits| {name}({left}, limits.{end}.value()))"
                ));
            }
            _ => return None,
        };
        self.compares_with(name);
        Some(format!("{name}({left}, {right})"))
    }

    /// One quantity of the measure's kind.
    fn one(&mut self, measure: Measure, value: &Value, comment: &dyn Display) -> Option<String> {
        if !belongs(measure, value) || is_range(value) {
            return None;
        }
        Some(format!("Some({})", self.quantity(value, comment)))
    }

    /// An end of a policy's range.
    fn end(&mut self, measure: Measure, policy: PolicyId, low: bool) -> Option<String> {
        fn of<Q: Copy>(range: &Range<Q>, low: bool, make: fn(Q) -> Value) -> Option<Value> {
            let limit = if low { range.low } else { range.high };
            limit.value().map(make)
        }
        let policy = self.book.policy(policy)?;
        let value = match &policy.value {
            Value::FlowRange(range) => of(range, low, Value::Flow),
            Value::PressureRange(range) => of(range, low, Value::Pressure),
            Value::TemperatureRange(range) => of(range, low, Value::Temperature),
            Value::PercentRange(range) => of(range, low, Value::Percent),
            Value::TimeRange(range) => of(range, low, Value::Time),
            _ => None,
        }?;
        let end = if low { "low" } else { "high" };
        let comment = format!("{}.{end}: {value}", policy.rule.id);
        self.one(measure, &value, &comment)
    }

    /// A quantity or range as Rust, with its words in a comment: pascals say nothing to a reader.
    fn quantity(&mut self, value: &Value, comment: &dyn Display) -> String {
        let mut out = Out::default();
        match value {
            Value::Flow(value) => value.emit(&mut out),
            Value::Pressure(value) => value.emit(&mut out),
            Value::Volume(value) => value.emit(&mut out),
            Value::Factor(value) => value.emit(&mut out),
            Value::Temperature(value) => value.emit(&mut out),
            Value::Percent(value) => value.emit(&mut out),
            Value::Time(value) => value.emit(&mut out),
            Value::Ratio(value) => value.emit(&mut out),
            Value::FlowRange(value) => value.emit(&mut out),
            Value::PressureRange(value) => value.emit(&mut out),
            Value::TemperatureRange(value) => value.emit(&mut out),
            Value::PercentRange(value) => value.emit(&mut out),
            Value::TimeRange(value) => value.emit(&mut out),
        }
        let text = out.text;
        for piece in text.split(QUANTITY).skip(1) {
            let name = piece.split(|c: char| !c.is_ascii_alphanumeric()).next();
            self.import("::oxyfolio::quantity", name.unwrap_or_default());
        }
        format!("{} /* {comment} */", text.replace(QUANTITY, ""))
    }

    fn compares_with(&mut self, function: &str) {
        self.import("::oxyfolio::guard::compare", function);
    }

    fn import(&mut self, module: &'static str, name: &str) {
        self.uses.add(module, name);
    }
}

const fn comparison_name(comparison: Comparison) -> &'static str {
    match comparison {
        Comparison::Equal => "equal",
        Comparison::NotEqual => "not_equal",
        Comparison::Less => "less",
        Comparison::AtMost => "at_most",
        Comparison::Greater => "greater",
        Comparison::AtLeast => "at_least",
    }
}

const fn field(measure: Measure) -> &'static str {
    match measure {
        Measure::Flow => "seen.flow",
        Measure::Pressure => "seen.pressure",
        Measure::Temperature => "seen.temperature",
        Measure::Spo2 => "seen.saturation()",
        Measure::MinutesLeft => "seen.minutes_left",
        Measure::MinutesWanted => "seen.minutes_wanted",
    }
}

/// Whether a value is of the measure's kind.
fn belongs(measure: Measure, value: &Value) -> bool {
    dimension_of(value) == Some(dimension_of_measure(measure))
}

/// Ends a line before every operator that is in no bracket; a guard with one operator stays on its line.
fn laid_out(expression: &str) -> String {
    let mut depth = 0_usize;
    let mut out = String::new();
    for c in expression.chars() {
        match c {
            '(' => depth += 1,
            ')' => depth = depth.saturating_sub(1),
            _ => {}
        }
        match c {
            BREAK if depth == 0 => out.push_str("\n        "),
            BREAK => out.push(' '),
            c => out.push(c),
        }
    }
    out
}
