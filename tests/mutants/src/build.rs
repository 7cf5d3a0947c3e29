//! Makes the woven library compile: what the compiler refuses is taken out again.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::process::Command;
use std::{fs, str};

use serde_json::Value;

use crate::mutant::Mutant;
use crate::weave::{Woven, weave};

/// What became of the mutants, by number.
pub struct Fate {
    /// Asleep in the library.
    pub woven: BTreeSet<usize>,
    /// No Rust.
    pub unviable: BTreeSet<usize>,
    /// In a constant, in a place that can't be woven, or in one that didn't compile as a whole.
    pub apart: BTreeSet<usize>,
}

/// Weaves all mutants into the copy of the package at `tree`, whose own sources stand in `tree/plain`.
pub fn build(tree: &Path, mutants: &BTreeMap<usize, Mutant>, check: &[String]) -> Result<Fate, String> {
    let mut fate = Fate {
        woven: mutants.keys().copied().collect(),
        unviable: BTreeSet::new(),
        apart: BTreeSet::new(),
    };
    for (number, mutant) in mutants {
        let hidden = mutant.function.as_ref().is_some_and(|function| {
            let returns = function["return_type"].as_str();
            mutant.genre == "FnValue" && returns.is_some_and(|returns| returns.contains("impl "))
        });
        if mutant.function.is_none() || mutant.genre == "StructField" || hidden {
            fate.woven.remove(number);
            fate.apart.insert(*number);
        }
    }
    let files: BTreeSet<&String> = mutants.values().map(|mutant| &mutant.file).collect();
    for round in 1.. {
        let mut texts = BTreeMap::new();
        for file in &files {
            let text = fs::read_to_string(tree.join("plain").join(file))
                .map_err(|error| format!("{file}: {error}"))?;
            let here: BTreeMap<usize, Mutant> = mutants
                .iter()
                .filter(|(number, mutant)| mutant.file == **file && fate.woven.contains(number))
                .map(|(number, mutant)| (*number, mutant.clone()))
                .collect();
            let woven = weave(&text, &here).map_err(|error| format!("{file}: {error}"))?;
            for lost in &woven.lost {
                fate.woven.remove(lost);
                fate.apart.insert(*lost);
            }
            fs::write(tree.join(file), &woven.text).map_err(|error| format!("{file}: {error}"))?;
            texts.insert((*file).clone(), woven);
        }
        let refused = refused(tree, check, &texts)?;
        eprintln!("round {round}: {} lines refused", refused.len());
        if refused.is_empty() {
            return Ok(fate);
        }
        for (file, line) in refused {
            let here = texts.get(&file).and_then(|woven| woven.lines.get(line));
            let Some(numbers) = here.filter(|numbers| !numbers.is_empty()) else {
                return Err(format!("{file}:{line}: an error that is no mutant's"));
            };
            for number in numbers {
                if fate.woven.remove(number) {
                    let own = numbers.len() == 1 && mutants[number].genre != "UnaryOperator";
                    let kept = if own { &mut fate.unviable } else { &mut fate.apart };
                    kept.insert(*number);
                }
            }
        }
    }
    Err("no round ended it".into())
}

/// The lines that errors of the compiler are about.
fn refused(
    tree: &Path,
    check: &[String],
    texts: &BTreeMap<String, Woven>,
) -> Result<BTreeSet<(String, usize)>, String> {
    let output = Command::new("cargo")
        .args(check)
        .arg("--message-format=json")
        .current_dir(tree)
        .output()
        .map_err(|error| error.to_string())?;
    let (mut lines, mut said) = (BTreeSet::new(), String::new());
    for message in str::from_utf8(&output.stdout)
        .map_err(|error| error.to_string())?
        .lines()
    {
        let Ok(message) = serde_json::from_str::<Value>(message) else {
            continue;
        };
        let message = &message["message"];
        if message["level"] != "error" {
            continue;
        }
        said.push_str(message["rendered"].as_str().unwrap_or_default());
        let spans = message["spans"].as_array().into_iter().flatten();
        let noted = |span: &&Value| {
            let (file, line) = place(span);
            let woven = texts.get(&file).and_then(|woven| woven.lines.get(line));
            woven.is_some_and(|numbers| !numbers.is_empty())
        };
        // Its main place, or the nearest that is a mutant's.
        let (main, others): (Vec<_>, Vec<_>) = spans.partition(|span| span["is_primary"] == true);
        if let Some(span) = main.iter().chain(&others).copied().find(|span| noted(span)) {
            lines.insert(place(span));
        }
    }
    if lines.is_empty() && !output.status.success() {
        return Err(format!(
            "errors that are no mutant's:\n{said}\n{}",
            String::from_utf8_lossy(&output.stderr)
        ));
    }
    Ok(lines)
}

fn place(span: &Value) -> (String, usize) {
    let line = span["line_start"]
        .as_u64()
        .and_then(|line| usize::try_from(line).ok());
    (
        span["file_name"].as_str().unwrap_or_default().to_owned(),
        line.unwrap_or(0),
    )
}
