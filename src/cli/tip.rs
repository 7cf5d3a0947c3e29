//! What to write where a folder stands and `--rules` before it was left out.

use std::path::Path;

use clap::{
    CommandFactory as _, Error,
    builder::StyledStr,
    error::{ContextKind, ContextValue, ErrorKind},
};

use super::{args::Arguments, words::for_shell};

/// Adds to an error of the command line what was most likely meant.
pub fn with_tip(mut error: Error) -> Error {
    let program = Arguments::command();
    let is_command = |argument: &String| {
        program
            .get_subcommands()
            .any(|known| known.get_name() == argument)
    };
    let command = std::env::args_os()
        .skip(1)
        .filter_map(|argument| argument.into_string().ok())
        .find(is_command);
    let found = match error.get(ContextKind::InvalidArg) {
        Some(ContextValue::String(found)) if error.kind() == ErrorKind::UnknownArgument => found.clone(),
        _ => return error,
    };
    // A misspelled option behind `--` would be taken for a file.
    if found.starts_with('-')
        && let Some(ContextValue::StyledStrs(tips)) = error.get(ContextKind::Suggested)
        && tips.iter().any(|tip| tip.to_string().contains(" as a value"))
    {
        error.remove(ContextKind::Suggested);
    }
    if let Some(tip) = command.and_then(|command| tip(&command, &found)) {
        let tip = ContextValue::StyledStrs(vec![StyledStr::from(tip)]);
        error.insert(ContextKind::Suggested, tip);
    }
    error
}

fn tip(command: &str, found: &str) -> Option<String> {
    if found.starts_with('-') {
        return None;
    }
    let path = Path::new(found);
    // A chapter stands for its folder.
    let folder = match path.parent() {
        Some(parent) if path.is_file() && parent.as_os_str().is_empty() => Path::new("."),
        Some(parent) if path.is_file() => parent,
        _ => path,
    };
    let folder = for_shell(&folder.to_string_lossy());
    Some(format!(
        "to read the rulebook in that folder, write `oxyfolio {command} --rules {folder}`"
    ))
}
