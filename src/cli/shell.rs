//! `oxyfolio completions` and `oxyfolio manual`: what a shell and `man` know of the program, made from its arguments.

use std::{ffi::OsString, fs, io::Write};

use clap::CommandFactory as _;
use clap_mangen::Man;

use super::{
    CannotRun, Outcome,
    args::{Arguments, Completions, Manual},
};
use crate::cards::output;

/// Prints the completions of a shell.
pub fn completions(command: &Completions, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let mut written = Vec::new();
    clap_complete::generate(command.shell, &mut Arguments::command(), "oxyfolio", &mut written);
    out.write_all(&written)?;
    Ok(Outcome::Fine)
}

/// Writes the manual's pages: all of them or none.
pub fn manual(command: &Manual, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let mut program = Arguments::command();
    program.build();
    let mut pages: Vec<(OsString, Vec<u8>)> = vec![("oxyfolio.1".into(), page(&program)?)];
    for command in program
        .get_subcommands()
        .filter(|command| command.get_name() != "help")
    {
        // As `man` finds it: `oxyfolio-review`.
        let name = command.get_display_name().unwrap_or_else(|| command.get_name());
        pages.push((format!("{name}.1").into(), page(command)?));
    }
    let told =
        |error: std::io::Error| CannotRun(format!("cannot write `{}`: {error}", command.out.display()));
    fs::create_dir_all(&command.out).map_err(told)?;
    for path in output::replace_all(&command.out, &pages)? {
        writeln!(out, "{}", path.display())?;
    }
    Ok(Outcome::Fine)
}

fn page(command: &clap::Command) -> Result<Vec<u8>, CannotRun> {
    let mut page = Vec::new();
    Man::new(command.clone()).render(&mut page)?;
    Ok(page)
}
