//! Which numbers, hazards and `after` lines no case would notice changing.
//!
//! Each number of a rule is really changed, by one in its last written place, up and down, and the book is built and
//! its cases are run again; each hazard is made never to fire and always to fire; each `after` is taken out and the
//! orders are proved again. A change that makes anything fail is noticed.
//!
//! Numbers in sentences are not rules (quote them: `{residual-pressure}`), nor are the agency's dates.

use std::num::NonZero;

use super::super::{
    diagnostic::Diagnostics,
    digest::Digest,
    proof,
    resolve::{self, Raw},
    source::{Sources, Span},
    written,
    yaml::{Node, Value},
};
use crate::book::{
    Comparison, Guard, GuardOp, HazardId, Kind, List, Measure, Operand, Procedure, Rulebook, StepId, Text,
};

/// Something that no case would notice changing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Uncovered {
    /// Where it stands.
    pub span: Span,
    /// What it is, in words.
    pub what: String,
}

/// Keys whose values are sentences or names.
const PROSE: [&str; 24] = [
    "id",
    "name",
    "title",
    "also",
    "say",
    "why",
    "do",
    "purpose",
    "who",
    "not-when",
    "chosen-when",
    "unsafe-when",
    "too-low",
    "too-high",
    "step-up",
    "step-down",
    "note",
    "notes",
    "series",
    "gas",
    "condition-name",
    "layout",
    "sizes",
    "allow",
];

/// Everything that no case would notice changing, in the order of the book.
pub fn uncovered(book: &Rulebook, raws: &[Raw], sources: &Sources) -> Vec<Uncovered> {
    let sites = number_sites(raws);
    let threads = std::thread::available_parallelism()
        .map_or(1, NonZero::get)
        .min(8);
    let mut found: Vec<Uncovered> = std::thread::scope(|scope| {
        let sites = &sites;
        let running: Vec<_> = (0..threads)
            .map(|thread| {
                scope.spawn(move || {
                    let mut raws = raws.to_vec();
                    let mine = sites.iter().skip(thread).step_by(threads);
                    mine.filter_map(|site| number_uncovered(site, &mut raws, sources))
                        .collect::<Vec<_>>()
                })
            })
            .collect();
        // A thread that panicked has found nothing that could be trusted, so its panic goes on.
        running
            .into_iter()
            .flat_map(|thread| {
                thread
                    .join()
                    .unwrap_or_else(|panic| std::panic::resume_unwind(panic))
            })
            .collect()
    });
    found.extend(hazards_uncovered(book, raws));
    found.extend(afters_uncovered(book, raws));
    found.sort_by(|a, b| (a.span, &a.what).cmp(&(b.span, &b.what)));
    found
}

/// A number in a rule: which rule, the way to its value, and its place in the text.
struct Site {
    raw: usize,
    path: Vec<Step>,
    start: usize,
    end: usize,
}

/// One step on the way from a rule to a value.
#[derive(Clone, Copy)]
enum Step {
    Item(usize),
    Value(usize),
    Key(usize),
}

fn number_sites(raws: &[Raw]) -> Vec<Site> {
    let mut sites = Vec::new();
    for (index, raw) in raws.iter().enumerate() {
        if !matches!(raw.kind, Kind::Agency | Kind::Case) {
            sites_in(&raw.node, index, &mut Vec::new(), &mut sites);
        }
    }
    sites
}

fn sites_in(node: &Node, raw: usize, path: &mut Vec<Step>, sites: &mut Vec<Site>) {
    match &node.value {
        Value::Text { text, .. } => add_sites(text, raw, path, sites),
        Value::List(items) => {
            for (index, item) in items.iter().enumerate() {
                path.push(Step::Item(index));
                sites_in(item, raw, path, sites);
                path.pop();
            }
        }
        Value::Mapping(entries) => {
            for (index, entry) in entries.iter().enumerate() {
                if PROSE.contains(&entry.key.as_str()) {
                    continue;
                }
                path.push(Step::Key(index));
                add_sites(&entry.key, raw, path, sites);
                path.pop();
                path.push(Step::Value(index));
                sites_in(&entry.value, raw, path, sites);
                path.pop();
            }
        }
    }
}

/// Every number of a text; digits that are part of a word (`air-entrainment-24`, `3AL`) are none.
fn add_sites(text: &str, raw: usize, path: &[Step], sites: &mut Vec<Site>) {
    let bytes = text.as_bytes();
    let digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
    let mut at = 0;
    while at < bytes.len() {
        if !digit(at) {
            at += 1;
            continue;
        }
        let start = at;
        while digit(at) || (bytes.get(at) == Some(&b'.') && digit(at + 1)) {
            at += 1;
        }
        let before = text.get(..start).and_then(|head| head.chars().next_back());
        let sign = matches!(before, Some('-' | '−'))
            && text
                .get(..start - before.map_or(0, char::len_utf8))
                .is_none_or(|head| head.chars().next_back().is_none_or(|c| !c.is_alphanumeric()));
        let alone = before.is_none_or(|c| !(c.is_alphanumeric() || matches!(c, '-' | '.' | '−'))) || sign;
        let rest = text.get(at..).unwrap_or("");
        let glued: String = rest
            .chars()
            .take_while(|c| c.is_alphanumeric() || matches!(c, '/' | '-'))
            .collect();
        if alone && (glued.is_empty() || written::is_unit(&glued)) {
            sites.push(Site {
                raw,
                path: path.to_vec(),
                start,
                end: at,
            });
        }
    }
}

fn number_uncovered(site: &Site, raws: &mut [Raw], sources: &Sources) -> Option<Uncovered> {
    let original = raws.get(site.raw)?.clone();
    let (text, span) = text_at(&original.node, &site.path)?;
    let number = text.get(site.start..site.end)?.to_owned();
    let mut unnoticed = Vec::new();
    for other in [one_less(&number), Some(one_more(&number))].into_iter().flatten() {
        let raw = raws.get_mut(site.raw)?;
        replace(&mut raw.node, &site.path, site.start..site.end, &other);
        if !noticed(raws, sources) {
            unnoticed.push(format!("`{other}`"));
        }
        *raws.get_mut(site.raw)? = original.clone();
    }
    if unnoticed.is_empty() {
        return None;
    }
    Some(Uncovered {
        span,
        what: format!(
            "the number `{number}` in `{text}` of {}: no case would notice {}",
            rule_name(&original),
            unnoticed.join(" or ")
        ),
    })
}

/// Whether anything fails once the rules are as they are now.
fn noticed(raws: &[Raw], sources: &Sources) -> bool {
    let mut found = Diagnostics::default();
    let Some(book) = resolve::build(raws, sources, &Digest::of(&Sources::default()), &mut found) else {
        return true;
    };
    super::run_all(&book, raws, &mut found);
    found.has_errors()
}

fn rule_name(raw: &Raw) -> String {
    let id = match &raw.node.value {
        Value::Mapping(entries) => entries
            .iter()
            .find(|entry| entry.key == "id")
            .map(|entry| &entry.value.value),
        _ => None,
    };
    match id {
        Some(Value::Text { text, .. }) => format!("{} `{text}`", raw.kind),
        _ => raw.kind.to_string(),
    }
}

fn text_at<'a>(node: &'a Node, path: &[Step]) -> Option<(&'a str, Span)> {
    let Some((first, rest)) = path.split_first() else {
        return match &node.value {
            Value::Text { text, .. } => Some((text, node.span)),
            _ => None,
        };
    };
    match (&node.value, first) {
        (Value::List(items), Step::Item(index)) => text_at(items.get(*index)?, rest),
        (Value::Mapping(entries), Step::Value(index)) => text_at(&entries.get(*index)?.value, rest),
        (Value::Mapping(entries), Step::Key(index)) => {
            let entry = entries.get(*index)?;
            Some((&entry.key, entry.key_span))
        }
        _ => None,
    }
}

fn replace(node: &mut Node, path: &[Step], range: core::ops::Range<usize>, with: &str) {
    match (&mut node.value, path.split_first()) {
        (Value::Text { text, verbatim }, None) => {
            text.replace_range(range, with);
            *verbatim = None;
        }
        (Value::List(items), Some((Step::Item(index), rest))) => {
            if let Some(item) = items.get_mut(*index) {
                replace(item, rest, range, with);
            }
        }
        (Value::Mapping(entries), Some((Step::Value(index), rest))) => {
            if let Some(entry) = entries.get_mut(*index) {
                replace(&mut entry.value, rest, range, with);
            }
        }
        (Value::Mapping(entries), Some((Step::Key(index), _))) => {
            if let Some(entry) = entries.get_mut(*index) {
                entry.key.replace_range(range, with);
            }
        }
        _ => {}
    }
}

/// The number with one more in its last written place.
fn one_more(number: &str) -> String {
    let mut digits: Vec<u8> = number.bytes().collect();
    for digit in digits.iter_mut().rev() {
        match *digit {
            b'.' => {}
            b'9' => *digit = b'0',
            other => {
                *digit = other + 1;
                return String::from_utf8_lossy(&digits).into_owned();
            }
        }
    }
    format!("1{}", String::from_utf8_lossy(&digits))
}

/// The number with one less in its last written place; none below zero.
fn one_less(number: &str) -> Option<String> {
    if number.bytes().all(|digit| matches!(digit, b'0' | b'.')) {
        return None;
    }
    let mut digits: Vec<u8> = number.bytes().collect();
    for digit in digits.iter_mut().rev() {
        match *digit {
            b'.' => {}
            b'0' => *digit = b'9',
            other => {
                *digit = other - 1;
                break;
            }
        }
    }
    Some(String::from_utf8_lossy(&digits).into_owned())
}

/// Hazards that no case would miss, or no case would find wrong if they always fired.
fn hazards_uncovered(book: &Rulebook, raws: &[Raw]) -> Vec<Uncovered> {
    let mut found = Vec::new();
    for (index, hazard) in (0_u16..).zip(&book.hazards) {
        for (comparison, what) in [
            (Comparison::Less, "never firing"),
            (Comparison::AtMost, "always firing"),
        ] {
            let never = Guard {
                text: Text::fixed(""),
                ops: List::from(vec![GuardOp::Compare(
                    Measure::Flow,
                    comparison,
                    Operand::Measure(Measure::Flow),
                )]),
            };
            let mut hazards = book.hazards.to_vec();
            if let Some(changed) = hazards.get_mut(HazardId(index).index()) {
                changed.never = never;
            }
            let changed = Rulebook {
                hazards: List::from(hazards),
                ..book.clone()
            };
            let mut failed = Diagnostics::default();
            super::run_all(&changed, raws, &mut failed);
            if !failed.has_errors()
                && let Some(span) = super::expect::place_of(Kind::Hazard, &hazard.rule.id, raws)
            {
                found.push(Uncovered {
                    span,
                    what: format!("the hazard `{}`: no case would notice it {what}", hazard.rule.id),
                });
            }
        }
    }
    found
}

/// `after` lines that neither the proof nor a case would miss.
fn afters_uncovered(book: &Rulebook, raws: &[Raw]) -> Vec<Uncovered> {
    let mut found = Vec::new();
    for (place, procedure) in book.procedures.iter().enumerate() {
        for (index, step) in procedure.steps.iter().enumerate() {
            for named in &step.after {
                let changed = without(book, place, index, *named);
                let mut failed = Diagnostics::default();
                super::run_all(&changed, raws, &mut failed);
                if failed.has_errors() || !proof::unsafe_orders(&changed).is_empty() {
                    continue;
                }
                let earlier = procedure.steps.get(named.index()).map_or("", |step| &step.id);
                if let Some(span) = super::expect::place_of(Kind::Procedure, &procedure.rule.id, raws) {
                    found.push(Uncovered {
                        span,
                        what: format!(
                            "the `after: {earlier}` of the step `{}` of procedure `{}`: neither the proof nor a case would miss it",
                            step.id, procedure.rule.id
                        ),
                    });
                }
            }
        }
    }
    found
}

fn without(book: &Rulebook, procedure: usize, step: usize, named: StepId) -> Rulebook {
    let mut procedures: Vec<Procedure> = book.procedures.to_vec();
    if let Some(procedure) = procedures.get_mut(procedure) {
        let mut steps = procedure.steps.to_vec();
        if let Some(step) = steps.get_mut(step) {
            let left: Vec<StepId> = step
                .after
                .iter()
                .copied()
                .filter(|other| *other != named)
                .collect();
            step.after = List::from(left);
        }
        procedure.steps = List::from(steps);
    }
    Rulebook {
        procedures: List::from(procedures),
        ..book.clone()
    }
}
