//! `oxyfolio setup`.

use std::io::Write;

use super::{
    CannotRun, Outcome,
    answers::{self, Frame},
    args::{Common, Format, Setup},
    book, words,
};
use crate::book::Rulebook;
use crate::check::{self, Finding, check_setup};
use crate::quantity::{Flow, Percent, Time, TimeUnit};

/// Checks a set-up.
pub fn run(command: &Setup, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let book = match book::open(common, out)? {
        Ok(book) => book,
        Err(outcome) => return Ok(outcome),
    };
    tell(command, &book, common.format, out)
}

/// Checks a set-up against a book.
pub fn tell(
    command: &Setup,
    book: &Rulebook,
    format: Format,
    out: &mut dyn Write,
) -> Result<Outcome, CannotRun> {
    let device = book::device(book, &command.device)?;
    let flow: Flow = book::quantity("--flow", &command.flow)?;
    let conditions = book::conditions(book, &command.condition)?;
    let mut setup = check::Setup::new(device, flow);
    if let Some(group) = &command.group {
        setup = setup.group(book::group(book, group)?);
    }
    if let Some(conditions) = &conditions {
        setup = setup.conditions(conditions);
    }
    if let Some(time) = book::maybe("--since-birth", command.since_birth.as_ref())? {
        setup = setup.minute_of_life(time);
    }
    if let Some(spo2) = book::maybe::<Percent>("--spo2", command.spo2.as_ref())? {
        if spo2.as_percent() > 100.0 {
            return Err(CannotRun(format!("--spo2: expected at most 100 %, found {spo2}")));
        }
        setup = setup.spo2(spo2);
    }
    if let Some(cylinder) = &command.cylinder {
        setup = setup.cylinder(book::cylinder(book, cylinder)?);
    }
    if let Some(pressure) = book::maybe("--pressure", command.pressure.as_ref())? {
        setup = setup.pressure(pressure);
    }
    if let Some(temperature) = book::maybe("--temperature", command.temperature.as_ref())? {
        setup = setup.temperature(temperature);
    }
    if let Some(minutes) = &command.minutes {
        setup = setup.minutes_wanted(minutes_wanted(minutes)?);
    }

    let mut findings = Vec::new();
    let not_checked = check_setup(book, &setup, |finding| findings.push(finding))?;
    // The gravest first; within a level in the order they were found.
    findings.sort_by_key(|finding| core::cmp::Reverse(finding.level));
    let unseen: Vec<&str> = not_checked.hazards().map(|hazard| hazard.rule.name()).collect();
    let wrong = findings.iter().any(|finding| finding.level.is_wrong());

    let name = book.device(device).map_or("", |device| &*device.rule.name);
    match format {
        Format::Text => {
            words::heading(out, book)?;
            writeln!(out, "{name} at {flow}\n")?;
            for finding in &findings {
                print(finding, out)?;
            }
            if findings
                .iter()
                .any(|finding| finding.level == check::Level::Unknown)
            {
                writeln!(out)?;
            }
            if !wrong {
                writeln!(out, "Nothing against the book was found.\n")?;
            }
            writeln!(
                out,
                "A set-up does not show the state of the equipment. Look yourself for: {}.",
                unseen.join("; ")
            )?;
            words::footing(out)?;
        }
        Format::Json => {
            let answer = answers::setup::Setup {
                ok: !wrong,
                device: command.device.clone(),
                flow_lpm: flow.as_litres_per_minute(),
                findings: findings.iter().map(answers::setup::Finding::of).collect(),
                hazards_not_judged: unseen,
            };
            words::json(out, &Frame::of(book).round(answer))?;
        }
    }
    Ok(if wrong { Outcome::Findings } else { Outcome::Fine })
}

/// `40` or `40 min`.
pub fn minutes_wanted(text: &str) -> Result<Time, CannotRun> {
    match text.trim().parse::<f64>() {
        Ok(number) => Time::of(number, TimeUnit::Minute)
            .map_err(|error| CannotRun(format!("--minutes \"{text}\": {error}"))),
        Err(_) => book::quantity("--minutes", text),
    }
}

fn print(finding: &Finding<'_>, out: &mut dyn Write) -> Result<(), CannotRun> {
    writeln!(out, "{}: {finding} [{}]", finding.level.word(), finding.code())?;
    if finding.level == check::Level::Unknown {
        // What to do about it is to give what is missing; the rule's own remedy is not due yet.
        return Ok(());
    }
    if let Some(remedy) = finding.remedy() {
        writeln!(out, "    {remedy}")?;
    }
    writeln!(
        out,
        "    rule: {} `{}`, {}",
        finding.kind,
        finding.rule.id(),
        finding.rule.place()
    )?;
    if finding.level.is_wrong() && !finding.rule.rationale().is_empty() {
        writeln!(
            out,
            "    why: {}",
            finding.rule.rationale().replace("\n\n", "\n         ")
        )?;
    }
    writeln!(out)?;
    Ok(())
}
