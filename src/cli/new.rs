//! `oxyfolio new`.

use std::io::{self, BufRead, IsTerminal as _, Write};

use clap::ValueEnum;

use super::{
    CannotRun, Outcome, answers,
    args::{Common, Format, New},
    words,
};
use crate::compile::{folder, skeleton::Start, suggest::counted};

/// Makes a fresh rulebook.
pub fn run(command: &New, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    if common.rules.is_some() {
        return Err(CannotRun(
            "--rules: a new rulebook is made from nothing; name its folder after `new`".to_owned(),
        ));
    }
    let may_ask = io::stdin().is_terminal() && io::stderr().is_terminal();
    let mut input = may_ask.then(|| io::stdin().lock());
    let start = start(command, input.as_mut())?;
    let files = start.write(&command.folder)?;
    let undecided = match folder::load(&command.folder) {
        Err(rejected) => rejected.to_do().undecided,
        Ok(_) => 0,
    };
    match common.format {
        Format::Text => {
            let shown = command.folder.display();
            let chapters = counted(files.len(), "chapter is", "chapters are");
            writeln!(out, "{chapters} in {shown}.")?;
            let values = counted(undecided, "value is", "values are");
            writeln!(
                out,
                "{values} to be decided. This lists each with its place and what to write:\n"
            )?;
            let quoted = words::for_shell(&command.folder.to_string_lossy());
            writeln!(out, "    oxyfolio check --rules {quoted}\n")?;
            writeln!(
                out,
                "It is no protocol until a licensed medical director has decided, read and signed it."
            )?;
            words::footing(out)?;
        }
        Format::Json => {
            let files = files.iter().map(|file| file.display().to_string()).collect();
            words::json(out, &answers::new::New::of(files, undecided))?;
        }
    }
    Ok(Outcome::Fine)
}

/// What was given, and the rest by asking for it, where there is somebody to ask.
fn start(command: &New, input: Option<&mut impl BufRead>) -> Result<Start, CannotRun> {
    let paper = command.paper.into();
    let made = |agency: &str, pressure, temperature| {
        Start::new(agency, pressure, temperature, paper)
            .map_err(|wrong| CannotRun(format!("--agency: {wrong}")))
    };
    if let (Some(agency), Some(pressure), Some(temperature)) =
        (&command.agency, command.pressure, command.temperature)
    {
        return made(agency, pressure.into(), temperature.into());
    }
    let Some(input) = input else {
        let missing = [
            ("--agency NAME", command.agency.is_none()),
            ("--pressure psi, bar or kPa", command.pressure.is_none()),
            (
                "--temperature celsius or fahrenheit",
                command.temperature.is_none(),
            ),
        ];
        let missing: Vec<&str> = missing
            .iter()
            .filter(|(_, lacks)| *lacks)
            .map(|(name, _)| *name)
            .collect();
        return Err(CannotRun(format!(
            "there is no terminal to ask on; add {}",
            missing.join(" and ")
        )));
    };
    let agency = match &command.agency {
        Some(agency) => agency.clone(),
        None => ask(input, "The agency's name", |answer| {
            let unit = crate::quantity::PressureUnit::Psi;
            let degrees = crate::quantity::TemperatureUnit::Celsius;
            Start::new(answer, unit, degrees, paper).map(|_| answer.to_owned())
        })?,
    };
    let pressure = match command.pressure {
        Some(unit) => unit,
        None => ask(input, "Gauges are read in (psi, bar or kPa)", choice)?,
    };
    let temperature = match command.temperature {
        Some(unit) => unit,
        None => ask(input, "Temperatures are read in (celsius or fahrenheit)", choice)?,
    };
    made(&agency, pressure.into(), temperature.into())
}

fn choice<T: ValueEnum>(answer: &str) -> Result<T, String> {
    T::from_str(answer, true).map_err(|_| {
        format!(
            "expected one of the words in brackets, found `{}`",
            answer.escape_debug()
        )
    })
}

/// Asks until the answer can be used, or nobody answers any more.
fn ask<T>(
    input: &mut impl BufRead,
    question: &str,
    read: impl Fn(&str) -> Result<T, String>,
) -> Result<T, CannotRun> {
    loop {
        anstream::eprint!("{question}: ");
        io::stderr().flush()?;
        let mut line = String::new();
        if input.read_line(&mut line)? == 0 {
            return Err(CannotRun(
                "nothing was answered, and no rulebook was made".to_owned(),
            ));
        }
        match read(line.trim()) {
            Ok(answer) => return Ok(answer),
            Err(wrong) => anstream::eprintln!("{wrong}"),
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used, clippy::panic)]
mod tests {
    use super::*;
    use crate::book::OfficePaper;
    use crate::cli::args::{PressureArg, SheetArg};
    use crate::quantity::{PressureUnit, TemperatureUnit};

    fn asked(pressure: Option<PressureArg>, typed: &str) -> Result<Start, CannotRun> {
        let command = New {
            folder: "rules".into(),
            agency: None,
            pressure,
            temperature: None,
            paper: SheetArg::A4,
        };
        start(&command, Some(&mut typed.as_bytes()))
    }

    #[test]
    fn what_was_not_given_is_asked_until_it_can_be_used() {
        let expected = |pressure| {
            Start::new(
                "Upper Vale",
                pressure,
                TemperatureUnit::Fahrenheit,
                OfficePaper::A4,
            )
            .unwrap()
        };
        let typed = "\nUpper Vale \nlitres\nKPA\nF\n";
        assert!(asked(None, typed).is_ok_and(|start| start == expected(PressureUnit::Kpa)));
        let given = asked(Some(PressureArg::Bar), "Upper Vale\nfahrenheit\n");
        assert!(given.is_ok_and(|start| start == expected(PressureUnit::Bar)));
    }

    #[test]
    fn nobody_answers() {
        for typed in ["", "Upper Vale\n", "Upper Vale\npsi\n\n"] {
            let Err(CannotRun(reason)) = asked(None, typed) else {
                panic!("{typed:?}");
            };
            assert_eq!(reason, "nothing was answered, and no rulebook was made");
        }
    }
}
