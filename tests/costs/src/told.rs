//! Checks a set-up and tells all that is to be told of it: findings with what to do, the rule, its place and its reason, how long
//! the gas lasts, and what was not judged.

use std::{error::Error, process::ExitCode};

use oxyfolio::book::{ConditionId, CylinderId, DeviceId, Fact, GroupId};
use oxyfolio::check::{About, Findings, Setup, check_setup};
use oxyfolio::guard::Evaluator;
use oxyfolio::quantity::{Flow, Percent, Pressure, Temperature, Time};

use crate::asked::Asked;

/// How names are found.
pub struct Names {
    pub device: fn(&str) -> Option<DeviceId>,
    pub group: fn(&str) -> Option<GroupId>,
    pub cylinder: fn(&str) -> Option<CylinderId>,
    pub condition: fn(&str) -> Option<ConditionId>,
}

pub fn main(book: impl Evaluator<'static>, names: &Names) -> ExitCode {
    match check(book, names, &Asked::read()) {
        Ok(code) => code,
        Err(error) => {
            eprintln!("error: {error}");
            ExitCode::from(2)
        }
    }
}

fn check(book: impl Evaluator<'static>, names: &Names, asked: &Asked) -> Result<ExitCode, Box<dyn Error>> {
    let device = (names.device)(&asked.device).ok_or("no such device")?;
    let conditions = asked.conditions.iter().map(|name| (names.condition)(name));
    let conditions: Vec<ConditionId> = conditions.collect::<Option<_>>().ok_or("no such condition")?;
    let flow = asked.flow.ok_or("no flow")?;
    let mut setup = Setup::new(device, Flow::litres_per_minute(flow)?).conditions(&conditions);
    if let Some(group) = (names.group)(&asked.group) {
        setup = setup.group(group);
    }
    if let Some(cylinder) = (names.cylinder)(&asked.cylinder) {
        setup = setup.cylinder(cylinder);
    }
    if let Some(psi) = asked.psi {
        setup = setup.pressure(Pressure::psi(psi)?);
    }
    if let Some(celsius) = asked.celsius {
        setup = setup.temperature(Temperature::celsius(celsius)?);
    }
    if let Some(spo2) = asked.spo2 {
        setup = setup.spo2(Percent::new(spo2)?);
    }
    if let Some(minutes) = asked.minutes {
        setup = setup.minutes_wanted(Time::minutes(minutes)?);
    }
    if let Some(minutes) = asked.minute_of_life {
        setup = setup.minute_of_life(Time::minutes(minutes)?);
    }
    for (words, holds) in &asked.facts {
        let fact = Fact::ALL.iter().find(|fact| fact.words() == words);
        setup = setup.observed(*fact.ok_or("no such observation")?, *holds);
    }

    let mut found = Findings::<32>::new();
    let left = check_setup(book, &setup, |finding| found.push(finding))?;
    for finding in found.iter() {
        if let About::MinutesLeft { minutes_left } = finding.about {
            println!("{minutes_left} min");
            continue;
        }
        println!("{}: {finding} [{}]", finding.level.word(), finding.code());
        if let Some(remedy) = finding.remedy() {
            println!("    {remedy}");
        }
        println!("    {}: {}", finding.rule.name(), finding.rule.place());
        println!("    {}", finding.rule.rationale());
    }
    for hazard in left.hazards() {
        println!("look yourself: {}", hazard.rule.name());
    }
    Ok(ExitCode::from(u8::from(found.is_wrong())))
}
