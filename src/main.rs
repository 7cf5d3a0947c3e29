//! The `oxyfolio` program.

use std::process::ExitCode;

fn main() -> ExitCode {
    oxyfolio::cli::run()
}
