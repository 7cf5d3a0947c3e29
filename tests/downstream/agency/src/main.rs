//! Prints how a set-up stands against the agency's own rulebook.

#![deny(warnings)]

use std::process::ExitCode;

use oxyfolio::check::{Findings, Setup, check_setup};
use oxyfolio::quantity::{Flow, Pressure};

mod rulebook {
    include!(concat!(env!("OUT_DIR"), "/rulebook.rs"));
}

use rulebook::{RULEBOOK, cylinder, device, group, hazard};

fn main() -> ExitCode {
    match check(6.0) {
        Ok(found) => {
            println!("{}, edition {}", RULEBOOK.agency.rule.name, RULEBOOK.agency.edition);
            for finding in found.iter() {
                println!("{}: {finding}", finding.level.word());
            }
            ExitCode::from(u8::from(found.is_wrong()))
        }
        Err(error) => {
            eprintln!("error: {error}");
            ExitCode::from(2)
        }
    }
}

fn check(litres: f64) -> Result<Findings<'static, 32>, Box<dyn std::error::Error>> {
    let setup = Setup::new(device::MARSH_MASK, Flow::litres_per_minute(litres)?)
        .group(group::GROWN_UP)
        .conditions(&[])
        .cylinder(cylinder::TENT)
        .pressure(Pressure::bar(100.0)?);
    let mut found = Findings::new();
    check_setup(hazard::Guards, &setup, |finding| found.push(finding))?;
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 2 L of water, 100 bar, 15 bar left: some 170 L by the factor and a little more by the density, at 6 L/min.
    #[test]
    fn the_agencys_own_limits_and_cylinder_count() {
        let found = check(6.0).unwrap();
        let said: Vec<String> = found.iter().map(ToString::to_string).collect();
        assert!(said.contains(&"the gas lasts 28 min".to_owned()), "{said:?}");
        assert!(!said.iter().any(|line| line.contains("too low")), "{said:?}");

        let found = check(4.0).unwrap();
        let said: Vec<String> = found.iter().map(ToString::to_string).collect();
        let low = "4 L/min is too low for the marsh mask: the book says 5 to 9 L/min";
        assert!(said.contains(&low.to_owned()), "{said:?}");
        let hazard = found.iter().find(|finding| finding.code() == "hazard").unwrap();
        assert_eq!(hazard.rule.id(), "marsh-mask-stale");
        assert_eq!(hazard.rule.place().file, "01-all.md");
    }

    #[test]
    fn read_at_run_time_it_is_the_same_book() {
        let read = oxyfolio::book::Rulebook::load("rules").unwrap();
        assert!(read == RULEBOOK);
        assert_eq!(read.find_device("marsh-mask"), Some(device::MARSH_MASK));
    }

    #[test]
    fn it_is_not_the_demonstration() {
        assert_ne!(RULEBOOK.digest, oxyfolio::RULEBOOK.digest);
    }
}
