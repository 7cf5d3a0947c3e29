//! Checks a set-up and tells all that is to be told of it: findings with what to do, the rule, its place and its reason, how long
//! the gas lasts, and what was not judged.

use std::{env, error::Error, process::ExitCode};

use oxyfolio::check::{About, Findings, Setup, check_setup};
use oxyfolio::guard::Evaluator;
use oxyfolio::quantity::{Flow, Pressure};
use oxyfolio::{cylinder, device, group};

pub fn main(book: impl Evaluator<'static>) -> ExitCode {
    let numbers: Vec<f64> = env::args().skip(1).filter_map(|text| text.parse().ok()).collect();
    let [flow, pressure] = numbers[..] else {
        eprintln!("usage: with L/MIN PSI");
        return ExitCode::from(2);
    };
    match check(book, flow, pressure) {
        Ok(code) => code,
        Err(error) => {
            eprintln!("error: {error}");
            ExitCode::from(2)
        }
    }
}

fn check(book: impl Evaluator<'static>, flow: f64, pressure: f64) -> Result<ExitCode, Box<dyn Error>> {
    let setup = Setup::new(device::NON_REBREATHER, Flow::litres_per_minute(flow)?)
        .group(group::ADULT)
        .conditions(&[])
        .cylinder(cylinder::D)
        .pressure(Pressure::psi(pressure)?);
    let mut found = Findings::<32>::new();
    let left = check_setup(book, &setup, |finding| found.push(finding))?;
    for finding in found.iter() {
        if let About::MinutesLeft { minutes_left } = finding.about {
            println!("{minutes_left} min");
            continue;
        }
        println!("{}: {finding}", finding.level.word());
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
