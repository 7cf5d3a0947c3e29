//! The demo rulebook read in the plainest way: lines of text, no YAML, nothing of the library.

use std::collections::BTreeMap;

/// A rule: the text after each key, with the lines below it.
pub type Entry = BTreeMap<String, String>;

/// Every entry of the blocks of a kind, by its `id`.
pub fn entries(kind: &str) -> BTreeMap<String, Entry> {
    let mut files: Vec<_> = std::fs::read_dir(crate::common::rules())
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    files.sort();
    let mut all = BTreeMap::new();
    for file in files {
        let text = std::fs::read_to_string(file).unwrap();
        let mut within: Option<Vec<String>> = None;
        for line in text.lines() {
            match &mut within {
                None if line == format!("```yaml {kind}") => within = Some(Vec::new()),
                Some(lines) if line == "```" => {
                    for entry in split(lines) {
                        all.insert(entry["id"].clone(), entry);
                    }
                    within = None;
                }
                Some(lines) => lines.push(line.to_owned()),
                None => {}
            }
        }
    }
    assert!(!all.is_empty(), "no {kind} in the chapters");
    all
}

/// One entry, or one for each `- id:` at the left edge.
fn split(lines: &[String]) -> Vec<Entry> {
    let listed = lines[0].starts_with("- ");
    let mut all = Vec::new();
    let (mut entry, mut key) = (Entry::new(), String::new());
    for line in lines {
        let line = if listed {
            if line.starts_with("- ") && !entry.is_empty() {
                all.push(std::mem::take(&mut entry));
            }
            line.get(2..).unwrap_or("")
        } else {
            line
        };
        match line.split_once(':') {
            Some((name, rest)) if !line.starts_with([' ', '-']) => {
                key = name.to_owned();
                entry.insert(key.clone(), rest.trim().to_owned());
            }
            _ => {
                let value = entry.get_mut(&key).unwrap();
                value.push('\n');
                value.push_str(line);
            }
        }
    }
    all.push(entry);
    all
}

/// The numbers of a text, in order: `10 to 15 L/min` is 10 and 15.
pub fn numbers(text: &str) -> Vec<f64> {
    text.split(|sign: char| !(sign.is_ascii_digit() || sign == '.' || sign == '-'))
        .filter_map(|word| word.parse().ok())
        .collect()
}

/// The flows of a device for a group: of `flow-for`, or of `flow`.
pub fn flow_range(device: &Entry, group: &str) -> (f64, f64) {
    let own = device.get("flow-for").and_then(|lines| {
        let line = lines
            .lines()
            .find(|line| line.trim().starts_with(&format!("{group}:")))?;
        Some(numbers(line))
    });
    let range = own.unwrap_or_else(|| numbers(&device["flow"]));
    (range[0], *range.last().unwrap())
}

/// A step as it stands in the text.
pub struct Step {
    pub id: String,
    pub action: String,
    pub critical: bool,
    pub after: Vec<String>,
}

pub fn steps(procedure: &Entry) -> Vec<Step> {
    let mut steps: Vec<Step> = Vec::new();
    for line in procedure["steps"].lines() {
        let line = line.trim();
        if let Some(id) = line.strip_prefix("- id:") {
            steps.push(Step {
                id: id.trim().to_owned(),
                action: String::new(),
                critical: false,
                after: Vec::new(),
            });
        } else if let Some(step) = steps.last_mut() {
            if let Some(action) = line.strip_prefix("do:") {
                step.action = action.trim().to_owned();
            } else if let Some(critical) = line.strip_prefix("critical:") {
                step.critical = critical.trim() == "yes";
            } else if let Some(after) = line.strip_prefix("after:") {
                let names = after.trim().trim_matches(['[', ']']);
                step.after = names.split(',').map(|name| name.trim().to_owned()).collect();
            }
        }
    }
    steps
}

/// For each pair of steps, whether the first must come before the second (Warshall).
pub fn before(steps: &[Step]) -> Vec<Vec<bool>> {
    let count = steps.len();
    let mut reach = vec![vec![false; count]; count];
    for (second, step) in steps.iter().enumerate() {
        for after in &step.after {
            let first = steps.iter().position(|step| step.id == *after).unwrap();
            reach[first][second] = true;
        }
    }
    for through in 0..count {
        for first in 0..count {
            for second in 0..count {
                let path = reach[first][through] && reach[through][second];
                reach[first][second] |= path;
            }
        }
    }
    reach
}
