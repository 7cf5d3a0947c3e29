//! What is printed on the cards: every string ready to print, every number from the checker.

use serde::Serialize;

use super::format::{self, Format, Paper};
use crate::book::{
    ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS, Card, CardSize, Cylinder, Device, DeviceId, GroupId, HazardId,
    Layout, ProcedureId, Rulebook, Severity,
};
use crate::check::duration;
use crate::quantity::{Flow, Gauge, Limit, Number, Pressure, PressureUnit, Range};

/// All cards of one size, on one paper: the data of one document.
#[derive(Clone, Debug, Serialize)]
pub struct Sheet {
    /// Which book the cards belong to.
    pub identity: Identity,
    /// The disclaimers of every card, then the agency's own.
    pub disclaimers: Vec<String>,
    /// The cautions of cards about oxygen under pressure.
    pub cautions: Vec<String>,
    /// The cards' size.
    pub size: Format,
    /// The paper.
    pub paper: Format,
    /// The cards in the order of the book.
    pub cards: Vec<Face>,
}

/// Which book the cards belong to.
#[derive(Clone, Debug, Serialize)]
pub struct Identity {
    /// The agency's name.
    pub agency: String,
    /// Where it works.
    pub place: String,
    /// Who signed.
    pub medical_director: String,
    /// The edition.
    pub edition: String,
    /// From when it holds, `YYYY-MM-DD`.
    pub effective: String,
    /// When it is reviewed, `YYYY-MM-DD`.
    pub review: String,
    /// When it was signed, `YYYY-MM-DD`.
    pub signed_off: String,
    /// The rulebook's short digest.
    pub digest: String,
}

/// One card.
#[derive(Clone, Debug, Serialize)]
pub struct Face {
    /// The card's identifier in the book.
    pub id: String,
    /// Its title.
    pub title: String,
    /// Whether it is about oxygen under pressure, and carries the cautions.
    pub pressurised: bool,
    /// Sentences at its foot.
    pub notes: Vec<String>,
    /// What it shows.
    pub body: Body,
}

/// What a card shows.
#[derive(Clone, Debug, Serialize)]
#[serde(tag = "layout", rename_all = "kebab-case")]
pub enum Body {
    /// Devices with their flows.
    Devices {
        /// The columns' heads.
        columns: Vec<String>,
        /// Their units; empty for words.
        units: Vec<String>,
        /// A row for each device.
        rows: Vec<Vec<String>>,
    },
    /// Minutes left by pressure and flow.
    Durations {
        /// The cylinder's name.
        cylinder: String,
        /// Its contents, water capacity and factor.
        facts: String,
        /// The unit of the rows.
        pressure_unit: String,
        /// The unit of the columns.
        flow_unit: String,
        /// The columns.
        flows: Vec<String>,
        /// The rows.
        rows: Vec<DurationRow>,
        /// How the minutes were worked out.
        basis: String,
    },
    /// The steps of a procedure.
    Steps {
        /// Its name.
        procedure: String,
        /// What it is for.
        purpose: String,
        /// The steps.
        steps: Vec<StepLine>,
    },
    /// Hazards.
    Cautions {
        /// A line for each.
        items: Vec<CautionLine>,
    },
}

/// One pressure with its minutes.
#[derive(Clone, Debug, Serialize)]
pub struct DurationRow {
    /// The gauge pressure.
    pub pressure: String,
    /// Whole minutes for each flow.
    pub minutes: Vec<String>,
    /// A warning about this pressure; empty where there is none.
    pub mark: String,
}

/// One step.
#[derive(Clone, Debug, Serialize)]
pub struct StepLine {
    /// Its number.
    pub number: String,
    /// The instruction.
    pub text: String,
    /// The reason.
    pub why: String,
    /// Whether it is critical.
    pub critical: bool,
}

/// One hazard.
#[derive(Clone, Debug, Serialize)]
pub struct CautionLine {
    /// `STOP`, `WARN` or `NOTE`.
    pub severity: &'static str,
    /// What is wrong.
    pub say: String,
    /// What to do.
    #[serde(rename = "do")]
    pub remedy: String,
}

impl Identity {
    /// That of a rulebook.
    #[must_use]
    pub fn of(book: &Rulebook) -> Self {
        let agency = &book.agency;
        Self {
            agency: agency.rule.name.to_string(),
            place: agency.location.to_string(),
            medical_director: agency.medical_director.to_string(),
            edition: agency.edition.to_string(),
            effective: agency.effective.to_string(),
            review: agency.review.to_string(),
            signed_off: agency.signed_off.to_string(),
            digest: book.short_digest.to_string(),
        }
    }
}

/// The disclaimers of everything printed, then the agency's own.
pub(super) fn disclaimers(book: &Rulebook) -> Vec<String> {
    let own = book.agency.disclaimers.iter().map(ToString::to_string);
    ALWAYS_DISCLAIMERS
        .map(str::to_owned)
        .into_iter()
        .chain(own)
        .collect()
}

impl Sheet {
    /// The cards of a rulebook in one size, for one paper.
    #[must_use]
    pub fn new(book: &Rulebook, size: CardSize, paper: Paper) -> Self {
        let of_size = book.cards.iter().filter(|card| card.sizes.contains(&size));
        Self {
            identity: Identity::of(book),
            disclaimers: disclaimers(book),
            cautions: ALWAYS_CAUTIONS.map(str::to_owned).to_vec(),
            size: format::of_card(size),
            paper: format::of_paper(paper),
            cards: of_size.flat_map(|card| faces(book, card)).collect(),
        }
    }
}

fn faces(book: &Rulebook, card: &Card) -> Vec<Face> {
    let face = |title: String, pressurised: bool, body: Body| Face {
        id: card.rule.id.to_string(),
        title,
        pressurised,
        notes: card.notes.iter().map(ToString::to_string).collect(),
        body,
    };
    let title = || card.rule.name.to_string();
    match &card.layout {
        Layout::Devices { devices } => vec![face(title(), false, device_table(book, devices))],
        Layout::Durations {
            cylinders,
            pressures,
            flows,
        } => cylinders
            .iter()
            .filter_map(|id| book.cylinder(*id))
            .map(|cylinder| {
                let title = format!("{}: {}", card.rule.name, cylinder.rule.name);
                face(title, true, duration_table(book, cylinder, pressures, flows))
            })
            .collect(),
        Layout::Steps { procedures } => procedures
            .iter()
            .filter_map(|id| steps(book, *id))
            .map(|body| face(title(), true, body))
            .collect(),
        Layout::Cautions { hazards } => vec![face(title(), true, cautions(book, hazards))],
    }
}

/// A row for the groups that share the general limits, then one for each group with limits of its own.
fn device_table(book: &Rulebook, devices: &[DeviceId]) -> Body {
    let row = |device: &Device, flow: Range<Flow>, usual: Flow, groups: &[GroupId]| {
        vec![
            device.rule.name.to_string(),
            flow_range(flow),
            Number(usual.as_litres_per_minute()).to_string(),
            numbers(device.oxygen, |share| share.as_percent()),
            group_names(book, groups),
        ]
    };
    let rows_of = |device: &Device| {
        let own = |group: &GroupId| device.group_flows.iter().any(|limits| limits.group == *group);
        let general: Vec<GroupId> = device.fits.iter().copied().filter(|group| !own(group)).collect();
        let first = (!general.is_empty()).then(|| row(device, device.flow, device.usual, &general));
        let others = device
            .group_flows
            .iter()
            .map(|limits| row(device, limits.flow, limits.usual, &[limits.group]));
        first.into_iter().chain(others).collect::<Vec<_>>()
    };
    Body::Devices {
        columns: ["Device", "Flow", "Usual", "Oxygen, about", "For"]
            .map(str::to_owned)
            .to_vec(),
        units: ["", "L/min", "L/min", "%", ""].map(str::to_owned).to_vec(),
        rows: devices
            .iter()
            .filter_map(|id| book.device(*id))
            .flat_map(rows_of)
            .collect(),
    }
}

fn group_names(book: &Rulebook, groups: &[GroupId]) -> String {
    let names: Vec<String> = groups
        .iter()
        .filter_map(|id| book.group(*id))
        .map(|group| group.rule.name.to_lowercase())
        .collect();
    names.join(", ")
}

fn flow_range(range: Range<Flow>) -> String {
    numbers(range, |flow| flow.as_litres_per_minute())
}

/// `10–15`; one number where both ends are the same.
fn numbers<Q: Copy>(range: Range<Q>, number: impl Fn(Q) -> f64) -> String {
    let end = |limit: Limit<Q>| limit.value().map(|value| Number(number(value)).to_string());
    match (end(range.low), end(range.high)) {
        (Some(low), Some(high)) if low == high => low,
        (Some(low), Some(high)) => format!("{low}–{high}"),
        (Some(low), None) => format!("≥ {low}"),
        (None, Some(high)) => format!("≤ {high}"),
        (None, None) => String::new(),
    }
}

fn duration_table(
    book: &Rulebook,
    cylinder: &Cylinder,
    pressures: &[Pressure<Gauge>],
    flows: &[Flow],
) -> Body {
    let policies = &book.policies;
    let unit = gauge_unit(book, cylinder, pressures);
    let row = |pressure: Pressure<Gauge>| DurationRow {
        pressure: Number(pressure.as_unit(unit)).to_string(),
        minutes: flows
            .iter()
            .map(
                |flow| match duration::of_cylinder(book, cylinder, pressure, *flow) {
                    Ok(duration) => duration.minutes.to_string(),
                    Err(_) => "?".to_owned(),
                },
            )
            .collect(),
        mark: if pressure <= policies.change_over_pressure {
            "change the cylinder now".to_owned()
        } else if pressure < policies.in_service_minimum {
            "below in-service minimum".to_owned()
        } else {
            String::new()
        },
    };
    Body::Durations {
        cylinder: cylinder.rule.name.to_string(),
        facts: format!(
            "{} at {} · factor {}",
            cylinder.contents.volume,
            unit.show(cylinder.contents.at),
            cylinder.factor
        ),
        pressure_unit: unit.symbol().to_owned(),
        flow_unit: "L/min".to_owned(),
        flows: flows
            .iter()
            .map(|flow| Number(flow.as_litres_per_minute()).to_string())
            .collect(),
        rows: pressures.iter().copied().map(row).collect(),
        basis: format!(
            "Whole minutes at {}, rounded down; {} kept as residual.",
            duration::USUAL_TEMPERATURE,
            unit.show(rounded_up(policies.residual_pressure, unit))
        ),
    }
}

/// A pressure rounded up to a tenth of a unit, for a sentence: more kept back is the safe side.
fn rounded_up(pressure: Pressure<Gauge>, unit: PressureUnit) -> Pressure<Gauge> {
    // A billionth, so that 200 psi don't become 200.1.
    let tenths = (pressure.as_unit(unit) * 10.0 * (1.0 - 1e-9)).ceil();
    Pressure::in_unit(tenths / 10.0, unit).unwrap_or(pressure)
}

/// The agency's unit where the rows are whole numbers in it; otherwise the unit of the cylinder's own factor, which is
/// the unit of its gauge.
fn gauge_unit(book: &Rulebook, cylinder: &Cylinder, pressures: &[Pressure<Gauge>]) -> PressureUnit {
    let agency = book.agency.pressure_unit;
    let whole = |unit: PressureUnit| {
        pressures.iter().all(|pressure| {
            let value = pressure.as_unit(unit);
            (value - value.round()).abs() < 1e-6
        })
    };
    let own = cylinder.factor.written().1;
    if !whole(agency) && whole(own) { own } else { agency }
}

fn steps(book: &Rulebook, id: ProcedureId) -> Option<Body> {
    let procedure = book.procedure(id)?;
    let line = |(index, step): (usize, &crate::book::Step)| StepLine {
        number: (index + 1).to_string(),
        text: step.say.to_string(),
        why: step.why.to_string(),
        critical: step.critical,
    };
    Some(Body::Steps {
        procedure: procedure.rule.name.to_string(),
        purpose: procedure.purpose.to_string(),
        steps: procedure.steps.iter().enumerate().map(line).collect(),
    })
}

fn cautions(book: &Rulebook, hazards: &[HazardId]) -> Body {
    Body::Cautions {
        items: hazards
            .iter()
            .filter_map(|id| book.hazard(*id))
            .map(|hazard| CautionLine {
                severity: match hazard.severity {
                    Severity::Stop => "STOP",
                    Severity::Warn => "WARN",
                    Severity::Note => "NOTE",
                },
                say: hazard.say.to_string(),
                remedy: hazard.remedy.to_string(),
            })
            .collect(),
    }
}
