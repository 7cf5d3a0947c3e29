//! Nanoseconds of a check of a set-up: the median of many rounds, for set-ups that differ from one to the next.

use std::{hint::black_box, time::Instant};

use oxyfolio::check::{Findings, Setup, check_setup};
use oxyfolio::quantity::{Flow, Percent, Pressure};
use oxyfolio::{RULEBOOK, cylinder, device, group, hazard};

const ROUNDS: usize = 101;
const EACH: u32 = 2_000;

fn main() {
    let set_ups: Vec<Setup<'_>> = (0..64_u32)
        .map(|number| {
            let devices = [device::NON_REBREATHER, device::NASAL_CANNULA, device::SIMPLE_MASK];
            Setup::new(
                devices[number as usize % 3],
                Flow::litres_per_minute(f64::from(number % 16)).expect("a flow"),
            )
            .group([group::ADULT, group::CHILD][number as usize % 2])
            .conditions(&[])
            .cylinder([cylinder::D, cylinder::E][number as usize / 2 % 2])
            .pressure(Pressure::psi(f64::from(150 + 30 * number)).expect("a pressure"))
            .spo2(Percent::new(f64::from(80 + number % 20)).expect("a share"))
        })
        .collect();
    let round = |check: &dyn Fn(&Setup<'static>)| {
        let started = Instant::now();
        for number in 0..EACH as usize {
            check(black_box(&set_ups[number % set_ups.len()]));
        }
        started.elapsed().as_secs_f64() * 1e9 / f64::from(EACH)
    };
    let median = |check: &dyn Fn(&Setup<'static>)| {
        let mut times: Vec<f64> = (0..ROUNDS).map(|_| round(check)).collect();
        times.sort_by(f64::total_cmp);
        times[ROUNDS / 2]
    };
    let compiled = median(&|setup| {
        let mut found = Findings::<32>::new();
        let left = check_setup(hazard::Guards, setup, |finding| found.push(finding));
        black_box((left.is_ok(), found.worst()));
    });
    let walked = median(&|setup| {
        let mut found = Findings::<32>::new();
        let left = check_setup(&RULEBOOK, setup, |finding| found.push(finding));
        black_box((left.is_ok(), found.worst()));
    });
    println!("{compiled:.0} {walked:.0}");
}
