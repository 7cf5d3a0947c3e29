//! What a build script does: a folder of chapters becomes a file for `include!`.

use std::{env, fmt::Write as _, fs, path::Path, process::ExitCode};

use super::{emit, folder, source::Sources};

/// The whole of a build script: compiles the rulebook in a folder into `rulebook.rs` in `OUT_DIR`, for `include!`.
///
/// ```no_run
/// // build.rs
/// fn main() -> std::process::ExitCode {
///     oxyfolio::compile::build_script("rules")
/// }
/// ```
///
/// The folder is looked for in the package's own, where Cargo runs a build script. The build runs again when the folder
/// changes. A mistake in the rulebook stops the build with the words that `oxyfolio check` prints: every mistake, its
/// place, and what to write instead. Notes don't stop it and are not told: `oxyfolio check` shows them.
///
/// How a package is set up for it is told in [`ways`](super::ways).
///
/// Beside it stands `chapters.rs`, the chapters as a list of file names and texts, for who reads the book anew as
/// [`CHAPTERS`](crate::CHAPTERS) lets one do.
#[must_use]
pub fn build_script(rules: impl AsRef<Path>) -> ExitCode {
    match into_out_dir(rules.as_ref()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(words) => {
            // Cargo shows what a build script that fails wrote to standard error.
            eprintln!("{words}");
            ExitCode::FAILURE
        }
    }
}

/// Compiles a folder into `OUT_DIR`, or says to the builder why not.
fn into_out_dir(rules: &Path) -> Result<(), String> {
    println!("cargo::rerun-if-changed={}", rules.display());
    let Some(out) = env::var_os("OUT_DIR") else {
        return Err("error: expected the variable OUT_DIR from Cargo, found none".to_owned());
    };
    let compiled = folder::load(rules).map_err(|rejected| {
        format!(
            "{}the rulebook in `{}` has errors, so nothing was built",
            rejected.render(false),
            rules.display()
        )
    })?;
    for (name, text) in [
        ("rulebook.rs", emit::rust(&compiled.book)),
        ("chapters.rs", chapters(&compiled.sources)),
    ] {
        let path = Path::new(&out).join(name);
        fs::write(&path, text).map_err(|error| format!("error: cannot write {}: {error}", path.display()))?;
    }
    Ok(())
}

fn chapters(sources: &Sources) -> String {
    let mut chapters = String::from("&[\n");
    for (_, source) in sources.iter() {
        // Writing to a String cannot fail.
        let _ = writeln!(chapters, "    ({:?}, {:?}),", source.name, source.text);
    }
    chapters.push_str("]\n");
    chapters
}
