//! Hands a request to the command it belongs to.

use std::{borrow::Cow, path::Path};

use serde_json::value::RawValue;

use super::{
    super::{
        CannotRun, Outcome,
        answers::{Frame, book::Names, line::Mistake},
        args::{self, Format},
        book, duration, plan, setup, stock, words,
    },
    request::Request,
    values::{Values, read},
};
use crate::RULEBOOK;
use crate::book::Rulebook;
use crate::compile::{Rejected, compile, folder, source::Sources, uncovered};

/// What a plan or a list is called where its mistakes are told.
const PATH: &str = "request";

/// The rulebook that is asked.
pub struct Session {
    pub book: Cow<'static, Rulebook>,
    /// Its chapters; none for the book compiled in.
    sources: Option<Sources>,
}

impl Session {
    /// That of the book in this program.
    pub const fn compiled_in() -> Self {
        Self {
            book: Cow::Borrowed(&RULEBOOK),
            sources: None,
        }
    }

    /// Reads the rulebook, once.
    pub fn open(rules: Option<&Path>) -> Result<Self, Box<Rejected>> {
        Ok(match rules {
            None => Self::compiled_in(),
            Some(rules) => {
                let compiled = folder::load(rules)?;
                Self {
                    book: Cow::Owned(compiled.book),
                    sources: Some(compiled.sources),
                }
            }
        })
    }
}

/// An answer as its command wrote it, on one line.
pub struct Told {
    pub ask: &'static str,
    pub exit: u8,
    pub answer: Box<RawValue>,
}

/// Answers a request, or tells all its mistakes.
pub fn answer(session: &Session, request: &Request<'_>) -> Result<Told, Vec<Mistake>> {
    let (asking, values) = read(&session.book, request)?;
    let mut out = Vec::new();
    let outcome = tell(&values, session, asking.name, &mut out)
        .map_err(|CannotRun(reason)| vec![blamed(&reason, request)])?;
    let answer = String::from_utf8(one_line(&out))
        .map_err(|error| error.to_string())
        .and_then(|text| RawValue::from_string(text).map_err(|error| error.to_string()))
        .map_err(|error| vec![Mistake::at(1, error)])?;
    Ok(Told {
        ask: asking.name,
        exit: outcome.code(),
        answer,
    })
}

/// Takes the line breaks of a written answer out, and the spaces that go with them.
fn one_line(written: &[u8]) -> Vec<u8> {
    let mut line = Vec::with_capacity(written.len());
    let (mut in_text, mut is_escaped) = (false, false);
    for &byte in written {
        if !in_text && byte.is_ascii_whitespace() {
            continue;
        }
        line.push(byte);
        in_text ^= byte == b'"' && !is_escaped;
        is_escaped = in_text && byte == b'\\' && !is_escaped;
    }
    line
}

/// What a command can't use though each field by itself could be read. It names its options.
fn blamed(reason: &str, request: &Request<'_>) -> Mistake {
    let words: Vec<&str> = reason
        .split(' ')
        .map(|word| word.strip_prefix("--").unwrap_or(word))
        .collect();
    let named = reason.strip_prefix("--").and_then(|rest| {
        let name = rest.split([' ', ':']).next()?;
        request.field(name)
    });
    let message = words.join(" ");
    match named {
        Some(field) => Mistake::of(&field.name, field.column, message),
        None => Mistake::at(1, message),
    }
}

/// Lets the command tell its answer.
fn tell(values: &Values<'_>, session: &Session, ask: &str, out: &mut Vec<u8>) -> Result<Outcome, CannotRun> {
    let (book, json): (&Rulebook, _) = (&session.book, Format::Json);
    match ask {
        "book" => {
            words::json(out, &Frame::of(book).round(Names::of(book)))?;
            Ok(Outcome::Fine)
        }
        "check" => check(values, session, out),
        "duration" => {
            let command = args::Duration {
                cylinder: values.text("cylinder"),
                water_capacity: values.text("water-capacity"),
                factor: values.text("factor"),
                pressure: values.text("pressure"),
                temperature: values.text("temperature"),
                flow: values.text("flow"),
                leak: values.text("leak"),
                minutes: values.text("minutes"),
                now: values.text("now"),
                residual: values.text("residual"),
            };
            duration::tell(&command, book, json, out)
        }
        "plan" => {
            let emptiest = values
                .text("order")
                .is_some_and(|order| order == "emptiest-first");
            let command = args::Plan {
                file: PATH.into(),
                order: if emptiest {
                    args::OrderArg::EmptiestFirst
                } else {
                    args::OrderArg::FewestChanges
                },
                add: values.texts("add"),
                chart: None,
            };
            plan::tell(&command, book, PATH, &values.plan(), json, out)
        }
        "setup" => {
            let command = args::Setup {
                device: values.text("device").unwrap_or_default(),
                flow: values.text("flow").unwrap_or_default(),
                group: values.text("group"),
                condition: values.texts("condition"),
                since_birth: values.text("since-birth"),
                spo2: values.text("spo2"),
                cylinder: values.text("cylinder"),
                pressure: values.text("pressure"),
                temperature: values.text("temperature"),
                minutes: values.text("minutes"),
            };
            setup::tell(&command, book, json, out)
        }
        "stock" => {
            let command = args::Stock {
                file: PATH.into(),
                today: values.day("today"),
                due_within: values
                    .text("due-within")
                    .unwrap_or_else(|| args::DUE_WITHIN.to_owned()),
                temperature: values.text("temperature"),
                sheet: None,
                paper: args::SheetArg::A4,
                typst: "typst".into(),
            };
            let list = values.text("list").unwrap_or_default();
            stock::tell(&command, book, PATH, list.as_bytes(), json, out)
        }
        other => Err(CannotRun(format!("`{other}` can't be asked"))),
    }
}

fn check(values: &Values<'_>, session: &Session, out: &mut Vec<u8>) -> Result<Outcome, CannotRun> {
    let sources = match &session.sources {
        Some(sources) => Ok(sources.clone()),
        None => book::sources(None),
    };
    let read = if values.is_set("uncovered") {
        sources
            .and_then(uncovered)
            .map(|(compiled, left)| (compiled, Some(left)))
    } else {
        sources.and_then(compile).map(|compiled| (compiled, None))
    };
    match read {
        Ok((compiled, left)) => {
            let compiled = book::dated(compiled, values.day("today"));
            super::super::check::tell(&compiled, left.as_deref(), Format::Json, out)
        }
        Err(rejected) => {
            book::print_rejected(&rejected, Path::new(PATH), Format::Json, out)?;
            Ok(Outcome::Findings)
        }
    }
}
