//! The run as files hold it: a line of JSON, or rows of CSV. Names are the book's; times are RFC 3339 with seconds.

use std::fmt::Write;

use oxyfolio::RULEBOOK;
use oxyfolio::check::review::{Event, Field, Moment};

use super::gas::PSI_PER_BAR;
use super::{Generated, Unit};

/// The columns of the CSV form.
pub const CSV_HEADER: &str = "run,group,conditions,temperature_c,at,do,cylinder,pressure_psi,pressure_bar,flow_lpm,device,\
                              spo2_percent,by";
/// What is written where something can't be understood.
const SCRAWL: &str = "illegible";

/// A moment as people write it, worked out by counting days.
pub fn time(at: Moment, offset_minutes: i64) -> String {
    let seconds = at.unix_millis().div_euclid(1_000) + offset_minutes * 60;
    let (mut day, second) = (seconds.div_euclid(86_400), seconds.rem_euclid(86_400));
    let leap = |year: i64| year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
    let mut year = 1970;
    while day >= if leap(year) { 366 } else { 365 } {
        day -= if leap(year) { 366 } else { 365 };
        year += 1;
    }
    let february = if leap(year) { 29 } else { 28 };
    let mut month = 1;
    for length in [31, february, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] {
        if day < length {
            break;
        }
        day -= length;
        month += 1;
    }
    let (hour, minute, second) = (second / 3_600, second / 60 % 60, second % 60);
    let zone = match offset_minutes {
        0 => "Z".to_owned(),
        other => {
            let sign = if other < 0 { '-' } else { '+' };
            format!("{sign}{:02}:{:02}", other.abs() / 60, other.abs() % 60)
        }
    };
    format!(
        "{year:04}-{month:02}-{:02}T{hour:02}:{minute:02}:{second:02}{zone}",
        day + 1
    )
}

/// The parts of an event as they are written, by the name of the field; numbers without quotes.
struct Parts {
    at: Option<String>,
    action: Option<&'static str>,
    cylinder: Option<&'static str>,
    psi: Option<String>,
    bar: Option<String>,
    flow: Option<String>,
    device: Option<&'static str>,
    spo2: Option<String>,
}

fn parts(unit: Unit, event: &Event) -> Parts {
    let scrawl = |field| event.unreadable.has(field).then_some(SCRAWL);
    let scrawled = |field| scrawl(field).map(str::to_owned);
    let gauge = event.pressure.map(|pressure| match unit {
        Unit::Psi => (pressure.as_psi()).round().to_string(),
        Unit::Bar => (pressure.as_psi() / PSI_PER_BAR).round().to_string(),
    });
    let gauge = gauge.or_else(|| scrawled(Field::Pressure));
    let (psi, bar) = match unit {
        Unit::Psi => (gauge, None),
        Unit::Bar => (None, gauge),
    };
    Parts {
        // The offset is read off the moment's own text, which is the one place that shows it.
        at: event
            .at
            .map(|at| time(at, offset_of(at)))
            .or_else(|| scrawled(Field::At)),
        action: event
            .action
            .map(|action| action.word())
            .or_else(|| scrawl(Field::Do)),
        cylinder: event
            .cylinder
            .map(|id| &*RULEBOOK.cylinder(id).unwrap().rule.id)
            .or_else(|| scrawl(Field::Cylinder)),
        psi,
        bar,
        flow: event
            .flow
            .map(|flow| flow.as_litres_per_minute().to_string())
            .or_else(|| scrawled(Field::Flow)),
        device: event
            .device
            .map(|id| &*RULEBOOK.device(id).unwrap().rule.id)
            .or_else(|| scrawl(Field::Device)),
        spo2: event
            .spo2
            .map(|spo2| spo2.as_percent().to_string())
            .or_else(|| scrawled(Field::Spo2)),
    }
}

pub fn offset_of(at: Moment) -> i64 {
    let text = at.to_string();
    if text.ends_with('Z') {
        return 0;
    }
    let zone = &text[text.len() - 6..];
    let minutes = zone[1..3].parse::<i64>().unwrap() * 60 + zone[4..6].parse::<i64>().unwrap();
    if zone.starts_with('-') { -minutes } else { minutes }
}

impl Generated {
    fn names(&self) -> (Option<&'static str>, Option<Vec<&'static str>>) {
        let group = self.group.map(|id| &*RULEBOOK.group(id).unwrap().rule.id);
        let conditions = self.conditions.as_ref().map(|all| {
            all.iter()
                .map(|id| &*RULEBOOK.condition(*id).unwrap().id)
                .collect()
        });
        (group, conditions)
    }

    /// As one line of JSON, without the line's end. Nothing in it needs escaping.
    pub fn ndjson(&self) -> String {
        let mut line = String::with_capacity(self.events.len() * 96);
        let (group, conditions) = self.names();
        write!(line, "{{\"run\":\"{}\"", self.run).unwrap();
        if let Some(group) = group {
            write!(line, ",\"group\":\"{group}\"").unwrap();
        }
        if let Some(conditions) = conditions {
            let quoted: Vec<String> = conditions.iter().map(|id| format!("\"{id}\"")).collect();
            write!(line, ",\"conditions\":[{}]", quoted.join(",")).unwrap();
        }
        if let Some(degrees) = self.temperature_c {
            write!(line, ",\"temperature_c\":{degrees}").unwrap();
        }
        line.push_str(",\"events\":[");
        for (index, (event, by)) in self.events.iter().zip(&self.by).enumerate() {
            if index > 0 {
                line.push(',');
            }
            let parts = parts(self.unit, event);
            line.push('{');
            let mut text = |name: &str, value: Option<&str>, quoted: bool| {
                if let Some(value) = value {
                    let quote = if quoted || value == SCRAWL { "\"" } else { "" };
                    write!(line, "\"{name}\":{quote}{value}{quote},").unwrap();
                }
            };
            text("at", parts.at.as_deref(), true);
            text("do", parts.action, true);
            text("cylinder", parts.cylinder, true);
            text("pressure_psi", parts.psi.as_deref(), false);
            text("pressure_bar", parts.bar.as_deref(), false);
            text("flow_lpm", parts.flow.as_deref(), false);
            text("device", parts.device, true);
            text("spo2_percent", parts.spo2.as_deref(), false);
            write!(line, "\"by\":\"{by}\"}}").unwrap();
        }
        line.push_str("]}");
        line
    }

    /// As rows of CSV, each with its line's end: one for each event, and the patient on each of them. Several conditions have
    /// `;` between them; `none` says that there are none. Nothing in it needs quoting.
    pub fn csv(&self) -> String {
        let (group, conditions) = self.names();
        let conditions = match conditions {
            None => String::new(),
            Some(none) if none.is_empty() => "none".to_owned(),
            Some(some) => some.join(";"),
        };
        let degrees = self.temperature_c.map(|degrees| degrees.to_string());
        let mut rows = String::new();
        for (event, by) in self.events.iter().zip(&self.by) {
            let parts = parts(self.unit, event);
            let cells = [
                &self.run,
                group.unwrap_or_default(),
                &conditions,
                degrees.as_deref().unwrap_or_default(),
                parts.at.as_deref().unwrap_or_default(),
                parts.action.unwrap_or_default(),
                parts.cylinder.unwrap_or_default(),
                parts.psi.as_deref().unwrap_or_default(),
                parts.bar.as_deref().unwrap_or_default(),
                parts.flow.as_deref().unwrap_or_default(),
                parts.device.unwrap_or_default(),
                parts.spo2.as_deref().unwrap_or_default(),
                by,
            ];
            rows.push_str(&cells.join(","));
            rows.push('\n');
        }
        rows
    }
}
