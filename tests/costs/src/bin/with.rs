//! Checks a set-up and says how long the gas lasts: the least that a program wants of the library.

use std::{env, error::Error, process::ExitCode};

use oxyfolio::check::{About, Findings, Setup, check_setup};
use oxyfolio::quantity::{Flow, Pressure};
use oxyfolio::{cylinder, device, group, hazard};

fn main() -> ExitCode {
    let numbers: Vec<f64> = env::args().skip(1).filter_map(|text| text.parse().ok()).collect();
    let [flow, pressure] = numbers[..] else {
        eprintln!("usage: with L/MIN PSI");
        return ExitCode::from(2);
    };
    match check(flow, pressure) {
        Ok(code) => code,
        Err(error) => {
            eprintln!("error: {error}");
            ExitCode::from(2)
        }
    }
}

fn check(flow: f64, pressure: f64) -> Result<ExitCode, Box<dyn Error>> {
    let setup = Setup::new(device::NON_REBREATHER, Flow::litres_per_minute(flow)?)
        .group(group::ADULT)
        .conditions(&[])
        .cylinder(cylinder::D)
        .pressure(Pressure::psi(pressure)?);
    let mut found = Findings::<32>::new();
    check_setup(hazard::Guards, &setup, |finding| found.push(finding))?;
    for finding in found.iter() {
        if let About::MinutesLeft { minutes_left } = finding.about {
            println!("{minutes_left} min");
        } else {
            println!("{}: {finding}", finding.level.word());
        }
    }
    Ok(ExitCode::from(u8::from(found.is_wrong())))
}
