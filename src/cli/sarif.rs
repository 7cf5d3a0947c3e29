//! `oxyfolio check --format sarif`: the Static Analysis Results Interchange Format, version 2.1.0, an OASIS standard
//! that editors and CI read.

use std::{
    collections::BTreeMap,
    io::Write,
    path::{Component, Path},
};

use serde_json::{Value, json};

use super::{
    CannotRun, Outcome,
    args::{Check, Common},
    book, words,
};
use crate::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS};
use crate::compile::{
    diagnostic::{Diagnostic, Level},
    source::{Sources, Span},
};

const SCHEMA: &str =
    "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json";

/// The most hints that a rule's help quotes.
const MAX_HELP: usize = 5;

/// Checks the rulebook and writes the answer as SARIF.
pub fn run(command: &Check, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let (log, outcome) = match book::read(common.rules.as_deref(), command.today) {
        Ok(compiled) => {
            let mut log = log(&compiled.notes, compiled.omitted, &compiled.sources);
            if let Some(properties) = log.pointer_mut("/runs/0/properties") {
                *properties = words::framed(&compiled.book, properties.take());
            }
            (log, Outcome::Fine)
        }
        Err(rejected) => (
            log(&rejected.diagnostics, rejected.omitted, &rejected.sources),
            Outcome::Findings,
        ),
    };
    words::json(out, &log)?;
    Ok(outcome)
}

fn log(found: &[Diagnostic], omitted: usize, sources: &Sources) -> Value {
    let mut rules: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for diagnostic in found {
        let hints = rules.entry(diagnostic.code).or_default();
        for hint in &diagnostic.hints {
            if hints.len() < MAX_HELP && !hints.contains(&hint.as_str()) {
                hints.push(hint);
            }
        }
    }
    let index = |code: &str| rules.keys().position(|rule| *rule == code);
    let results: Vec<Value> = found
        .iter()
        .map(|diagnostic| result(diagnostic, index(diagnostic.code), sources))
        .collect();
    let notifications: Vec<Value> = if omitted > 0 {
        vec![json!({
            "level": "warning",
            "message": { "text": "there is more than is listed here: put this right and check again" },
        })]
    } else {
        Vec::new()
    };
    json!({
        "$schema": SCHEMA,
        "version": "2.1.0",
        "runs": [{
            "tool": { "driver": {
                "name": "oxyfolio",
                "version": env!("CARGO_PKG_VERSION"),
                "semanticVersion": env!("CARGO_PKG_VERSION"),
                "shortDescription": { "text": env!("CARGO_PKG_DESCRIPTION") },
                "language": "en",
                "rules": rules.iter().map(|(code, hints)| rule(code, hints)).collect::<Vec<_>>(),
            } },
            "columnKind": "unicodeCodePoints",
            "invocations": [{
                "executionSuccessful": true,
                "toolExecutionNotifications": notifications,
            }],
            "results": results,
            "properties": { "disclaimers": ALWAYS_DISCLAIMERS, "cautions": ALWAYS_CAUTIONS },
        }],
    })
}

/// What a code stands for, with the advice given for it in this run.
fn rule(code: &str, hints: &[&str]) -> Value {
    let help = if hints.is_empty() {
        "Each result says what to write instead.".to_owned()
    } else {
        hints.join("\n")
    };
    json!({
        "id": code,
        "shortDescription": { "text": code.replace('-', " ") },
        "help": { "text": help },
    })
}

fn result(diagnostic: &Diagnostic, rule: Option<usize>, sources: &Sources) -> Value {
    let mut text = diagnostic.message.clone();
    for hint in &diagnostic.hints {
        text.push_str("\nhelp: ");
        text.push_str(hint);
    }
    let mut result = json!({
        "ruleId": diagnostic.code,
        "level": match diagnostic.level {
            Level::Error => "error",
            Level::Note => "note",
        },
        "message": { "text": text },
    });
    if let Some(fields) = result.as_object_mut() {
        if let Some(rule) = rule {
            fields.insert("ruleIndex".to_owned(), json!(rule));
        }
        if let Some(span) = diagnostic.span {
            fields.insert("locations".to_owned(), json!([location(span, sources)]));
        }
        if !diagnostic.labels.is_empty() {
            let labels = diagnostic.labels.iter().enumerate();
            let related: Vec<Value> = labels
                .map(|(number, (span, words))| {
                    let mut location = location(*span, sources);
                    if let Some(fields) = location.as_object_mut() {
                        fields.insert("id".to_owned(), json!(number + 1));
                        fields.insert("message".to_owned(), json!({ "text": words }));
                    }
                    location
                })
                .collect();
            fields.insert("relatedLocations".to_owned(), json!(related));
        }
    }
    result
}

fn location(span: Span, sources: &Sources) -> Value {
    let start = sources.line_column(span);
    let end = sources.line_column(Span {
        start: span.end,
        ..span
    });
    json!({ "physicalLocation": {
        "artifactLocation": {
            "uri": sources.get(span.file).map_or_else(String::new, |source| uri(&source.path)),
        },
        "region": {
            "startLine": start.line,
            "startColumn": start.column,
            "endLine": end.line,
            "endColumn": end.column,
        },
    } })
}

/// A path as a URI reference: relative when the path is.
fn uri(path: &str) -> String {
    let path = Path::new(path);
    let mut uri = String::new();
    for component in path.components() {
        match component {
            Component::RootDir => uri = format!("file://{uri}/"),
            Component::CurDir => {}
            Component::Prefix(prefix) => {
                uri.push('/');
                push_encoded(&prefix.as_os_str().to_string_lossy(), &mut uri);
            }
            Component::ParentDir | Component::Normal(_) => {
                if !uri.is_empty() && !uri.ends_with('/') {
                    uri.push('/');
                }
                push_encoded(&component.as_os_str().to_string_lossy(), &mut uri);
            }
        }
    }
    uri
}

fn push_encoded(part: &str, uri: &mut String) {
    for byte in part.bytes() {
        if byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'.' | b'_' | b'~') {
            uri.push(char::from(byte));
        } else {
            uri.push_str(&format!("%{byte:02X}"));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::uri;

    #[test]
    #[cfg(unix)]
    fn paths_become_uri_references() {
        for (path, expected) in [
            ("rules/05-delivery-devices.md", "rules/05-delivery-devices.md"),
            ("./rules/a b.md", "rules/a%20b.md"),
            ("../é/100 %.md", "../%C3%A9/100%20%25.md"),
            ("a:b/c.md", "a%3Ab/c.md"),
            ("/protocols/x.md", "file:///protocols/x.md"),
            ("(built in) x.md", "%28built%20in%29%20x.md"),
        ] {
            assert_eq!(uri(path), expected);
        }
    }
}
