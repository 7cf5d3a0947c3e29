//! A bar that shows how much of the files was read: on a terminal, and only where there is much to read.

use std::{io::IsTerminal as _, sync::OnceLock};

use indicatif::{ProgressBar, ProgressStyle};

use crate::records::run::Input;

/// Less is read before a bar could be looked at.
const LEAST: u64 = 8 << 20;

static BAR: OnceLock<ProgressBar> = OnceLock::new();

/// Shows a bar where it is of use; what is to be told of bytes read.
pub fn start(inputs: &[Input]) -> Option<fn(u64)> {
    if !std::io::stderr().is_terminal() {
        return None;
    }
    let size = |input: &Input| match input {
        Input::Standard => None,
        Input::File(path) => path.metadata().ok().map(|file| file.len()),
    };
    let total: u64 = inputs.iter().map(size).sum::<Option<u64>>()?;
    if total < LEAST {
        return None;
    }
    let bar = BAR.get_or_init(|| ProgressBar::new(total));
    if let Ok(style) = ProgressStyle::with_template("{wide_bar} {percent} % {bytes_per_sec}") {
        bar.set_style(style);
    }
    Some(|read| {
        if let Some(bar) = BAR.get() {
            bar.inc(read);
        }
    })
}

/// Takes the bar away.
pub fn stop() {
    if let Some(bar) = BAR.get() {
        bar.finish_and_clear();
    }
}
