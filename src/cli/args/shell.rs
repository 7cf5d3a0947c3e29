//! What `completions` and `manual` can be asked.

use std::path::PathBuf;

use clap::Args;
use clap_complete::Shell;

/// What the help of `completions` ends with.
pub(super) const COMPLETIONS: &str = "\
Examples:
  folder=~/.local/share/bash-completion/completions
  mkdir -p $folder && oxyfolio completions bash > $folder/oxyfolio
  oxyfolio completions fish > ~/.config/fish/completions/oxyfolio.fish
  oxyfolio completions zsh > ~/.zfunc/_oxyfolio    (a folder of your fpath)

Open a new shell; the Tab key then completes commands and options.";

/// What the help of `manual` ends with.
pub(super) const MANUAL: &str = "\
Examples:
  oxyfolio manual --out ~/.local/share/man/man1
  man oxyfolio-review

A page for the program and one for each command.";

/// Options of `completions`.
#[derive(Debug, Args)]
pub struct Completions {
    /// The shell: bash, elvish, fish, powershell or zsh
    #[arg(value_enum, hide_possible_values = true)]
    pub shell: Shell,
}

/// Options of `manual`.
#[derive(Debug, Args)]
pub struct Manual {
    /// The folder for the pages; it is made where it is missing
    #[arg(long, value_name = "DIR")]
    pub out: PathBuf,
}
