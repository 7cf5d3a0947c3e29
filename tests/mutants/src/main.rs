//! `mutants weave`, `mutants wake`: all mutants of cargo-mutants in one build, and each of them woken for the tests.

mod build;
mod mutant;
mod wake;
mod weave;

use std::collections::BTreeMap;
use std::path::Path;
use std::process::ExitCode;
use std::{env, fs};

use mutant::Mutant;

fn main() -> ExitCode {
    let arguments: Vec<String> = env::args().skip(1).collect();
    let done = match arguments
        .iter()
        .map(String::as_str)
        .collect::<Vec<_>>()
        .as_slice()
    {
        ["weave", tree, ..] => weave_all(Path::new(tree), &arguments[2..]),
        ["wake", tree, tests, only @ ..] => wake::wake(Path::new(tree), Path::new(tests), only),
        _ => Err("usage: weave TREE CHECK… | wake TREE TESTS [PART OF A FILE NAME…]".into()),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("error: {error}");
            ExitCode::FAILURE
        }
    }
}

/// `TREE/mutants.json` into `TREE/src`; what became of each goes to `TREE/woven.tsv`.
fn weave_all(tree: &Path, check: &[String]) -> Result<(), String> {
    let listed =
        fs::read_to_string(tree.join("mutants.json")).map_err(|error| format!("mutants.json: {error}"))?;
    let listed: Vec<Mutant> =
        serde_json::from_str(&listed).map_err(|error| format!("mutants.json: {error}"))?;
    let mutants: BTreeMap<usize, Mutant> = listed
        .into_iter()
        .enumerate()
        .map(|(at, one)| (at + 1, one))
        .collect();
    fs::write(tree.join("src/woven.rs"), include_str!("woven.rs")).map_err(|error| error.to_string())?;
    let fate = build::build(tree, &mutants, check)?;
    let mut lines = String::new();
    for (number, mutant) in &mutants {
        let word = match number {
            n if fate.woven.contains(n) => "woven",
            n if fate.unviable.contains(n) => "unviable",
            _ => "apart",
        };
        lines.push_str(&format!("{number}\t{word}\t{}\t{}\n", mutant.file, mutant.name));
    }
    fs::write(tree.join("woven.tsv"), lines).map_err(|error| error.to_string())?;
    eprintln!(
        "{} woven, {} unviable, {} apart",
        fate.woven.len(),
        fate.unviable.len(),
        fate.apart.len()
    );
    Ok(())
}
