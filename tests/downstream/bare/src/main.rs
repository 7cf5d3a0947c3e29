//! Checks a set-up with nothing beneath it but `core`: no standard library, no allocator, no start-up code of Rust's.
//!
//! The exit code says what was wrong, so that it can be run where a test is: 0 is as it should be.

#![no_std]
#![no_main]

use core::fmt::{self, Write};
use core::panic::PanicInfo;

use oxyfolio::check::{About, Findings, Level, Setup, check_setup};
use oxyfolio::quantity::{Flow, Pressure};
use oxyfolio::{RULEBOOK, cylinder, device, group, hazard};

// What starts a program on this machine, and nothing else, comes from the C library.
#[link(name = "c")]
unsafe extern "C" {}

#[panic_handler]
fn panic(_: &PanicInfo<'_>) -> ! {
    loop {}
}

#[unsafe(no_mangle)]
pub extern "C" fn main() -> i32 {
    match check() {
        Ok(()) => 0,
        Err(wrong) => wrong as i32,
    }
}

/// What was not as it should be.
enum Wrong {
    Quantity = 1,
    OtherBook,
    Level,
    Omitted,
    Minutes,
    Words,
    Hazards,
}

const EXPECTED: &str = "8 L/min is too low for the non-rebreather mask: the book says 10 to 15 L/min";

fn check() -> Result<(), Wrong> {
    let flow = Flow::litres_per_minute(8.0).map_err(|_| Wrong::Quantity)?;
    let reading = Pressure::psi(1500.0).map_err(|_| Wrong::Quantity)?;
    let setup = Setup::new(device::NON_REBREATHER, flow)
        .group(group::ADULT)
        .conditions(&[])
        .cylinder(cylinder::D)
        .pressure(reading);

    let mut walked = Findings::<32>::new();
    check_setup(&RULEBOOK, &setup, |finding| walked.push(finding)).map_err(|_| Wrong::OtherBook)?;
    let mut compiled = Findings::<32>::new();
    let left = check_setup(hazard::Guards, &setup, |finding| compiled.push(finding));
    let left = left.map_err(|_| Wrong::OtherBook)?;

    if walked.worst() != Some(Level::Stop) || compiled.worst() != walked.worst() {
        return Err(Wrong::Level);
    }
    if walked.omitted() > 0 || !walked.iter().eq(compiled.iter()) {
        return Err(Wrong::Omitted);
    }
    let minutes = |about: &About<'_>| matches!(about, About::MinutesLeft { minutes_left: 25 });
    if !walked.iter().any(|finding| minutes(&finding.about)) {
        return Err(Wrong::Minutes);
    }
    if !walked.iter().any(|finding| prints(finding, EXPECTED)) {
        return Err(Wrong::Words);
    }
    // The state of the equipment isn't told by a set-up, and is said to be left.
    if left.hazards().next().is_none() {
        return Err(Wrong::Hazards);
    }
    Ok(())
}

/// Whether a value prints as some words: compared as it is written, with no memory of its own.
fn prints(value: &impl fmt::Display, words: &str) -> bool {
    struct Rest<'a>(&'a str);

    impl Write for Rest<'_> {
        fn write_str(&mut self, piece: &str) -> fmt::Result {
            self.0 = self.0.strip_prefix(piece).ok_or(fmt::Error)?;
            Ok(())
        }
    }

    let mut rest = Rest(words);
    write!(rest, "{value}").is_ok() && rest.0.is_empty()
}
