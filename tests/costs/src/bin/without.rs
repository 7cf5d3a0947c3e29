//! What `with` is measured against: the same arguments, the same words, no rulebook.

use std::{env, process::ExitCode};

fn main() -> ExitCode {
    let numbers: Vec<f64> = env::args().skip(1).filter_map(|text| text.parse().ok()).collect();
    let [flow, pressure] = numbers[..] else {
        eprintln!("usage: without L/MIN PSI");
        return ExitCode::from(2);
    };
    println!("{flow} L/min, {pressure} psi");
    ExitCode::SUCCESS
}
