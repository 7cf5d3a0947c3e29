//! Findings as lines: NDJSON, the items of a JSON list, or CSV.

use core::fmt::{Display, Write as _};
use std::collections::HashMap;

use crate::book::{Kind, Rule, Rulebook};
use crate::check::{Level, review::Moment};
use crate::quantity::Number;

/// How findings are written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Written {
    /// Not at all: they are only counted.
    Not,
    /// A JSON object a line.
    Lines,
    /// A JSON list.
    List,
    /// CSV with a head.
    Csv,
}

/// The columns of CSV.
const COLUMNS: &str = "run,by,file,line,column,event,code,level,message,remedy,from,until,minutes,\
                       rule_kind,rule_id,rule_name,rule_file,rule_line,rule_chapter,rule_heading,edition,book";

/// A finding, of the reader or of the reviewer, as it is written and counted.
#[derive(Clone, Copy)]
pub(super) struct Said<'a, 'b> {
    pub run: Option<&'a str>,
    pub by: Option<&'a str>,
    pub file: Option<&'a str>,
    pub line: Option<u64>,
    pub column: Option<usize>,
    /// Counted from 0.
    pub event: Option<u32>,
    pub code: &'static str,
    pub level: Level,
    pub message: &'a dyn Display,
    pub remedy: Option<&'a str>,
    pub from: Option<Moment>,
    pub until: Option<Moment>,
    pub minutes: Option<f64>,
    pub kind: Kind,
    pub rule: &'b Rule,
    pub rule_line: u32,
}

impl<'a, 'b> Said<'a, 'b> {
    /// Something about a record itself; the agency's rule stands for whose records they are.
    pub fn of_record(
        book: &'b Rulebook,
        code: &'static str,
        level: Level,
        message: &'a dyn Display,
        remedy: Option<&'a str>,
    ) -> Self {
        let rule = &book.agency.rule;
        Self {
            run: None,
            by: None,
            file: None,
            line: None,
            column: None,
            event: None,
            code,
            level,
            message,
            remedy,
            from: None,
            until: None,
            minutes: None,
            kind: Kind::Agency,
            rule,
            rule_line: rule.place.line,
        }
    }
}

/// Writes findings; what is the same in each is made once.
#[derive(Debug)]
pub(super) struct Writer {
    written: Written,
    /// By the address of a rule: what is written of it before its line.
    rules: HashMap<usize, String>,
    tail: String,
}

fn address(rule: &Rule) -> usize {
    core::ptr::from_ref(rule) as usize
}

impl Writer {
    pub fn new(book: &Rulebook, written: Written) -> Self {
        let mut rules = HashMap::new();
        let mut add = |kind: Kind, rule: &Rule| {
            let mut text = Vec::new();
            match written {
                Written::Not => {}
                Written::Csv => csv_rule(&mut text, kind, rule),
                Written::Lines | Written::List => json_rule(&mut text, kind, rule),
            }
            rules.insert(address(rule), String::from_utf8(text).unwrap_or_default());
        };
        add(Kind::Agency, &book.agency.rule);
        book.groups.iter().for_each(|item| add(Kind::Group, &item.rule));
        book.devices.iter().for_each(|item| add(Kind::Device, &item.rule));
        book.cylinders
            .iter()
            .for_each(|item| add(Kind::Cylinder, &item.rule));
        book.policies
            .all
            .iter()
            .for_each(|item| add(Kind::Policy, &item.rule));
        book.targets.iter().for_each(|item| add(Kind::Target, &item.rule));
        book.procedures
            .iter()
            .for_each(|item| add(Kind::Procedure, &item.rule));
        book.hazards.iter().for_each(|item| add(Kind::Hazard, &item.rule));
        let mut tail = Vec::new();
        match written {
            Written::Not => {}
            Written::Csv => {
                tail.push(b',');
                cell(&mut tail, &book.agency.edition);
                tail.push(b',');
                cell(&mut tail, &book.short_digest);
                tail.push(b'\n');
            }
            Written::Lines | Written::List => {
                tail.extend(b",\"edition\":");
                string(&mut tail, &book.agency.edition);
                tail.extend(b",\"book\":");
                string(&mut tail, &book.short_digest);
                tail.push(b'}');
                if written == Written::Lines {
                    tail.push(b'\n');
                }
            }
        }
        Self {
            written,
            rules,
            tail: String::from_utf8(tail).unwrap_or_default(),
        }
    }

    pub const fn writes(&self) -> bool {
        !matches!(self.written, Written::Not)
    }

    /// What stands before the first finding.
    pub fn head(&self) -> String {
        match self.written {
            Written::Csv => format!("{COLUMNS}\n"),
            _ => String::new(),
        }
    }

    /// Writes a finding. An item of a list begins with a comma, which the first is to lose.
    pub fn write(&self, out: &mut Vec<u8>, scratch: &mut String, said: &Said<'_, '_>) {
        scratch.clear();
        // Writing to a String cannot fail.
        let _ = write!(scratch, "{}", said.message);
        match self.written {
            Written::Not => {}
            Written::Csv => self.csv(out, scratch, said),
            Written::Lines => self.json(out, scratch, said),
            Written::List => {
                out.extend(b",\n");
                self.json(out, scratch, said);
            }
        }
    }

    fn json(&self, out: &mut Vec<u8>, message: &mut String, said: &Said<'_, '_>) {
        fn maybe(out: &mut Vec<u8>, key: &[u8], text: Option<&str>) {
            out.extend(key);
            match text {
                Some(text) => string(out, text),
                None => out.extend(b"null"),
            }
        }
        fn shown(
            out: &mut Vec<u8>,
            key: &[u8],
            scratch: &mut String,
            value: Option<impl Display>,
            quoted: bool,
        ) {
            out.extend(key);
            let Some(value) = value else {
                out.extend(b"null");
                return;
            };
            scratch.clear();
            let _ = write!(scratch, "{value}");
            let quote: &[u8] = if quoted { b"\"" } else { b"" };
            out.extend(quote);
            out.extend(scratch.as_bytes());
            out.extend(quote);
        }
        maybe(out, b"{\"run\":", said.run);
        maybe(out, b",\"by\":", said.by);
        maybe(out, b",\"file\":", said.file);
        out.extend(b",\"code\":\"");
        out.extend(said.code.as_bytes());
        out.extend(b"\",\"level\":\"");
        out.extend(said.level.code().as_bytes());
        out.extend(b"\",\"message\":");
        string(out, message);
        maybe(out, b",\"remedy\":", said.remedy);
        // The message is written: its room is free.
        let scratch = message;
        shown(out, b",\"line\":", scratch, said.line, false);
        shown(out, b",\"column\":", scratch, said.column, false);
        shown(out, b",\"event\":", scratch, said.event.map(from_one), false);
        shown(out, b",\"from\":", scratch, said.from, true);
        shown(out, b",\"until\":", scratch, said.until, true);
        shown(
            out,
            b",\"minutes\":",
            scratch,
            said.minutes.map(hundredths),
            false,
        );
        out.extend(b",\"rule\":{");
        match self.rules.get(&address(said.rule)) {
            Some(text) => out.extend(text.as_bytes()),
            None => json_rule(out, said.kind, said.rule),
        }
        shown(out, b",\"line\":", scratch, Some(said.rule_line), false);
        out.push(b'}');
        out.extend(self.tail.as_bytes());
    }

    fn csv(&self, out: &mut Vec<u8>, message: &mut String, said: &Said<'_, '_>) {
        fn shown(out: &mut Vec<u8>, scratch: &mut String, value: Option<impl Display>) {
            if let Some(value) = value {
                scratch.clear();
                let _ = write!(scratch, "{value}");
                out.extend(scratch.as_bytes());
            }
            out.push(b',');
        }
        fn text(out: &mut Vec<u8>, text: Option<&str>) {
            cell(out, text.unwrap_or_default());
            out.push(b',');
        }
        let mut scratch = String::new();
        text(out, said.run);
        text(out, said.by);
        text(out, said.file);
        shown(out, &mut scratch, said.line);
        shown(out, &mut scratch, said.column);
        shown(out, &mut scratch, said.event.map(from_one));
        text(out, Some(said.code));
        text(out, Some(said.level.code()));
        text(out, Some(message));
        text(out, said.remedy);
        shown(out, message, said.from);
        shown(out, message, said.until);
        shown(out, message, said.minutes.map(hundredths));
        let before = |out: &mut Vec<u8>, text: &str| {
            // The line stands in the middle of what is kept of the rule.
            let (head, rest) = text.split_once('\0').unwrap_or((text, ""));
            out.extend(head.as_bytes());
            out.extend(said.rule_line.to_string().as_bytes());
            out.extend(rest.as_bytes());
        };
        match self.rules.get(&address(said.rule)) {
            Some(text) => before(out, text),
            None => {
                let mut text = Vec::new();
                csv_rule(&mut text, said.kind, said.rule);
                before(out, &String::from_utf8(text).unwrap_or_default());
            }
        }
        out.extend(self.tail.as_bytes());
    }
}

const fn from_one(event: u32) -> u64 {
    event as u64 + 1
}

/// Minutes to a hundredth.
fn hundredths(minutes: f64) -> Number {
    Number((minutes * 100.0).round() / 100.0)
}

fn json_rule(out: &mut Vec<u8>, kind: Kind, rule: &Rule) {
    let place = &rule.place;
    let fields: [(&str, &str); 6] = [
        ("kind", kind.word()),
        ("id", &rule.id),
        ("name", &rule.name),
        ("chapter", &place.chapter),
        ("heading", &place.heading),
        ("file", &place.file),
    ];
    for (index, (key, text)) in fields.into_iter().enumerate() {
        if index > 0 {
            out.push(b',');
        }
        string(out, key);
        out.push(b':');
        string(out, text);
    }
}

fn csv_rule(out: &mut Vec<u8>, kind: Kind, rule: &Rule) {
    for text in [kind.word(), &rule.id, &rule.name, &rule.place.file] {
        cell(out, text);
        out.push(b',');
    }
    out.push(b'\0');
    for text in [&rule.place.chapter, &rule.place.heading] {
        out.push(b',');
        cell(out, text);
    }
}

/// A JSON string.
fn string(out: &mut Vec<u8>, text: &str) {
    // Writing to a Vec cannot fail, nor can a string.
    let _ = serde_json::to_writer(out, text);
}

/// A cell of CSV, in quotes where it needs them.
fn cell(out: &mut Vec<u8>, text: &str) {
    if !text
        .bytes()
        .any(|byte| matches!(byte, b',' | b'"' | b'\n' | b'\r' | b';'))
    {
        return out.extend(text.as_bytes());
    }
    out.push(b'"');
    for byte in text.bytes() {
        if byte == b'"' {
            out.push(b'"');
        }
        out.push(byte);
    }
    out.push(b'"');
}
