//! `oxyfolio desk`.

use std::{io::Write, time::Duration};

use serde_json::json;

use super::{
    CannotRun, Outcome,
    args::{Common, Desk, Format},
    words,
};
use crate::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS};
use crate::desk::{Options, Server};

/// Serves the desk until it is interrupted.
pub fn run(command: &Desk, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let server = Server::open(Options {
        rules: common.rules.clone(),
        port: command.port,
        since: command.since.clone(),
        typst: command.typst.clone(),
        time_limit: Duration::from_secs(command.time_limit),
    })?;
    let address = format!("http://{}/", server.address());
    match common.format {
        Format::Text => {
            writeln!(out, "The desk is open at {address}")?;
            writeln!(
                out,
                "Open that address in a browser on this machine. Ctrl-C ends the desk."
            )?;
            words::footing(out)?;
        }
        // No edition is told: the book may have errors, and changes while the desk is open.
        Format::Json => words::json(
            out,
            &json!({ "address": address, "disclaimers": ALWAYS_DISCLAIMERS, "cautions": ALWAYS_CAUTIONS }),
        )?,
    }
    out.flush()?;
    server.serve_until_interrupted()?;
    Ok(Outcome::Fine)
}
