//! What `with` is measured against: the same arguments, read and printed; no rulebook.

use std::process::ExitCode;

#[path = "../asked.rs"]
mod asked;

fn main() -> ExitCode {
    let asked = asked::Asked::read();
    for text in [&asked.device, &asked.group, &asked.cylinder]
        .into_iter()
        .chain(&asked.conditions)
    {
        println!("{text}");
    }
    for (text, holds) in &asked.facts {
        println!("{text} {holds}");
    }
    let numbers = [
        asked.flow,
        asked.psi,
        asked.celsius,
        asked.spo2,
        asked.minutes,
        asked.minute_of_life,
    ];
    for number in numbers.into_iter().flatten() {
        // Whole: the printing of others would be counted as there already.
        println!("{}", number as i64);
    }
    ExitCode::SUCCESS
}
