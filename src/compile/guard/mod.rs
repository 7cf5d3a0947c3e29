//! Reads guards: `device on patient and flow = 0 L/min`.
//!
//! A small recursive descent over words; `not` binds closest, then `and`, then `or`. Names, units and kinds of
//! quantity are checked while reading, so a guard that was read can be evaluated.

use core::ops::Range as Bytes;

mod types;

use super::{
    diagnostic::Diagnostics,
    names::Names,
    source::Span,
    suggest::{listed, nearest},
    written::{self, Dimension, Mistake},
};
use crate::book::{
    Comparison, ConditionId, DeviceId, Fact, GroupId, Guard, GuardOp, List, MAX_GUARD_DEPTH, Measure,
    Operand, Policy, PolicyId, Text, Value,
};
use types::{check_dimension, depth, dimension_of, dimension_of_measure, is_range};

/// What a guard's names mean.
pub struct Vocabulary<'a> {
    /// The names of the book.
    pub names: &'a Names,
    /// The policies, for the kinds of their quantities.
    pub policies: &'a [Policy],
}

/// Reads a guard.
///
/// # Errors
///
/// [`Mistake`] at the word that can't be understood.
pub fn read(text: &str, vocabulary: &Vocabulary<'_>) -> Result<Guard, Mistake> {
    let mut reader = Reader {
        text,
        at: 0,
        vocabulary,
        ops: Vec::new(),
        nesting: 0,
    };
    reader.any_of()?;
    if let Some(word) = reader.peek() {
        let found = reader.piece(&word);
        let mut mistake = Mistake::new(
            "unexpected-word",
            word.clone(),
            format!("expected `and`, `or` or the end of the guard, found `{found}`"),
        );
        if found == ")" {
            mistake.hint = Some("take out the bracket, or open one before".to_owned());
        }
        return Err(mistake);
    }
    if depth(&reader.ops) > MAX_GUARD_DEPTH {
        return Err(too_deep(text));
    }
    Ok(Guard {
        text: Text::from(text.trim().to_owned()),
        ops: List::from(reader.ops),
    })
}

/// Words with which something in a guard begins; a condition or policy called so could not be told from them.
const RESERVED: [&str; 16] = [
    "and",
    "or",
    "not",
    "in",
    "is",
    "flow",
    "pressure",
    "temperature",
    "spo2",
    "minutes",
    "device",
    "group",
    "cylinder",
    "regulator",
    "reservoir",
    "target",
];

/// Refuses an id that a guard would take for something else.
pub fn refuse_reserved(id: &str, at: Span, found: &mut Diagnostics) {
    if RESERVED.contains(&id) {
        found
            .error(
                "reserved-word",
                at,
                format!("expected a name of its own, found `{id}`, a word of guards"),
            )
            .hint(format!("say more, for example `least-{id}`"));
    }
}

struct Reader<'a> {
    text: &'a str,
    at: usize,
    vocabulary: &'a Vocabulary<'a>,
    ops: Vec<GuardOp>,
    nesting: usize,
}

const COMPARISONS: [(&str, Comparison); 6] = [
    ("<=", Comparison::AtMost),
    (">=", Comparison::AtLeast),
    ("!=", Comparison::NotEqual),
    ("<", Comparison::Less),
    (">", Comparison::Greater),
    ("=", Comparison::Equal),
];

const NAMED_VALUES: [(&str, Operand); 4] = [
    ("target.low", Operand::TargetLow),
    ("target.high", Operand::TargetHigh),
    ("device.least-flow", Operand::DeviceLeastFlow),
    ("device.most-flow", Operand::DeviceMostFlow),
];

impl Reader<'_> {
    fn any_of(&mut self) -> Result<(), Mistake> {
        self.all_of()?;
        while self.take("or") {
            self.all_of()?;
            self.ops.push(GuardOp::Or);
        }
        Ok(())
    }

    fn all_of(&mut self) -> Result<(), Mistake> {
        self.negation()?;
        while self.take("and") {
            self.negation()?;
            self.ops.push(GuardOp::And);
        }
        Ok(())
    }

    fn negation(&mut self) -> Result<(), Mistake> {
        self.nesting += 1;
        if self.nesting > MAX_GUARD_DEPTH {
            return Err(too_deep(self.text));
        }
        if self.take("not") {
            self.negation()?;
            self.ops.push(GuardOp::Not);
        } else {
            self.single()?;
        }
        self.nesting -= 1;
        Ok(())
    }

    fn single(&mut self) -> Result<(), Mistake> {
        let Some(word) = self.peek() else {
            let end = self.text.len();
            return Err(Mistake::new(
                "unfinished-guard",
                end.saturating_sub(1)..end,
                "expected a condition, found the end of the guard",
            ));
        };
        if self.take("(") {
            self.any_of()?;
            if !self.take(")") {
                let mut open = Mistake::new("unclosed-bracket", word, "this bracket is never closed");
                open.hint = Some("close it with `)`".to_owned());
                return Err(open);
            }
            return Ok(());
        }
        if let Some(op) = self.identity()? {
            self.ops.push(op);
            return Ok(());
        }
        // The longest phrase wins: `minutes left` before a condition called `minutes`.
        if let Some(&fact) = Fact::ALL.iter().find(|fact| self.take(fact.words())) {
            self.ops.push(GuardOp::Fact(fact));
            return Ok(());
        }
        if let Some(&measure) = Measure::ALL.iter().find(|measure| self.take(measure.words())) {
            return self.comparison(measure);
        }
        let name = self.piece(&word);
        if let Some(index) = self.vocabulary.names.conditions.index(name) {
            self.at = word.end;
            self.ops.push(GuardOp::HasCondition(ConditionId(index)));
            return Ok(());
        }
        Err(self.unknown(word))
    }

    /// `device is ID` and `group is ID`.
    fn identity(&mut self) -> Result<Option<GuardOp>, Mistake> {
        let names = self.vocabulary.names;
        let (table, device) = if self.take("device is") {
            (&names.devices, true)
        } else if self.take("group is") {
            (&names.groups, false)
        } else {
            return Ok(None);
        };
        let Some(word) = self.peek() else {
            let end = self.text.len();
            return Err(Mistake::new(
                "unfinished-guard",
                end.saturating_sub(1)..end,
                "expected an id, found the end of the guard",
            ));
        };
        let name = self.piece(&word);
        let Some(index) = table.index(name) else {
            let what = if device { "device" } else { "group" };
            let mut unknown = Mistake::new(
                "unknown-name",
                word.clone(),
                format!("expected the id of a {what}, found `{name}`"),
            );
            unknown.hint = nearest(name, table.names()).map(|near| format!("did you mean `{near}`?"));
            return Err(unknown);
        };
        self.at = word.end;
        Ok(Some(if device {
            GuardOp::DeviceIs(DeviceId(index))
        } else {
            GuardOp::GroupIs(GroupId(index))
        }))
    }

    fn comparison(&mut self, measure: Measure) -> Result<(), Mistake> {
        if self.take("in") {
            let (value, at) = self.range_value(measure)?;
            check_dimension(measure, dimension_of(&value), at)?;
            self.ops.push(GuardOp::Within(measure, value));
            return Ok(());
        }
        let Some((_, comparison)) = COMPARISONS.iter().find(|(sign, _)| self.take(sign)) else {
            let at = self
                .peek()
                .unwrap_or(self.text.len().saturating_sub(1)..self.text.len());
            let found = self.piece(&at).to_owned();
            let mut missing = Mistake::new(
                "missing-comparison",
                at,
                format!(
                    "expected a comparison after `{}`, found `{found}`",
                    measure.words()
                ),
            );
            missing.hint = Some("write `=`, `<`, `<=`, `>`, `>=`, `!=` or `in`".to_owned());
            return Err(missing);
        };
        let operand = self.operand(measure)?;
        self.ops.push(GuardOp::Compare(measure, *comparison, operand));
        Ok(())
    }

    fn operand(&mut self, measure: Measure) -> Result<Operand, Mistake> {
        let word = self.peek().unwrap_or(self.text.len()..self.text.len());
        let name = self.piece(&word).to_owned();
        if let Some((_, operand)) = NAMED_VALUES.iter().find(|(known, _)| *known == name) {
            let dimension = match operand {
                Operand::TargetLow | Operand::TargetHigh => Dimension::Percent,
                _ => Dimension::Flow,
            };
            check_dimension(measure, Some(dimension), word.clone())?;
            self.at = word.end;
            return Ok(*operand);
        }
        if let Some((operand, value)) = self.policy_value(&name) {
            if is_range(&value) && matches!(operand, Operand::Policy(_)) {
                let mut wrong = Mistake::new(
                    "not-one-quantity",
                    word.clone(),
                    format!("expected one quantity, found the range `{name}`"),
                );
                wrong.hint = Some(format!(
                    "write `{} in {name}`, or `{name}.low` or `{name}.high`",
                    measure.words()
                ));
                return Err(wrong);
            }
            check_dimension(measure, dimension_of(&value), word.clone())?;
            self.at = word.end;
            return Ok(operand);
        }
        if let Some(&other) = Measure::ALL.iter().find(|other| self.take(other.words())) {
            check_dimension(measure, Some(dimension_of_measure(other)), word.start..self.at)?;
            return Ok(Operand::Measure(other));
        }
        if name.starts_with(|c: char| c.is_ascii_alphabetic()) {
            let known: Vec<&str> = NAMED_VALUES
                .iter()
                .map(|(name, _)| *name)
                .chain(self.vocabulary.names.policies.names())
                .collect();
            let mut unknown = Mistake::new(
                "unknown-name",
                word,
                format!("expected a quantity or the id of a policy, found `{name}`"),
            );
            unknown.hint =
                nearest(&name, known.iter().copied()).map(|near| format!("did you mean `{near}`?"));
            return Err(unknown);
        }
        let (value, at) = self.quantity()?;
        if is_range(&value) {
            let mut wrong = Mistake::new("not-one-quantity", at, "expected one quantity, found a range");
            wrong.hint = Some(format!("write `{} in LOW to HIGH`", measure.words()));
            return Err(wrong);
        }
        check_dimension(measure, dimension_of(&value), at)?;
        Ok(Operand::Value(value))
    }

    fn range_value(&mut self, measure: Measure) -> Result<(Value, Bytes<usize>), Mistake> {
        let word = self.peek().unwrap_or(self.text.len()..self.text.len());
        let name = self.piece(&word).to_owned();
        let (value, at) = if let Some((_, value)) = self.policy(&name) {
            self.at = word.end;
            (value, word)
        } else {
            self.quantity()?
        };
        if is_range(&value) {
            return Ok((value, at));
        }
        let mut wrong = Mistake::new(
            "not-a-range",
            at,
            "expected a range after `in`, found one quantity",
        );
        wrong.hint = Some(format!("write `{} in LOW to HIGH UNIT`", measure.words()));
        Err(wrong)
    }

    fn quantity(&mut self) -> Result<(Value, Bytes<usize>), Mistake> {
        let rest = self.text.get(self.at..).unwrap_or("");
        let start = self.at + rest.len() - rest.trim_start().len();
        match written::leading(rest) {
            Ok((value, end)) => {
                self.at += end;
                Ok((value, start..self.at))
            }
            Err(mistake) => Err(mistake.shifted(self.at)),
        }
    }

    /// A policy by its id, or one end of a policy's range: `use-temperature.high`.
    fn policy_value(&self, name: &str) -> Option<(Operand, Value)> {
        if let Some((id, value)) = self.policy(name) {
            return Some((Operand::Policy(id), value));
        }
        let (id, end) = name.rsplit_once('.')?;
        let (id, value) = self.policy(id).filter(|(_, value)| is_range(value))?;
        match end {
            "low" => Some((Operand::PolicyLow(id), value)),
            "high" => Some((Operand::PolicyHigh(id), value)),
            _ => None,
        }
    }

    fn policy(&self, name: &str) -> Option<(PolicyId, Value)> {
        let index = self.vocabulary.names.policies.index(name)?;
        let policy = self
            .vocabulary
            .policies
            .iter()
            .find(|policy| &*policy.rule.id == name)?;
        Some((PolicyId(index), policy.value))
    }

    fn unknown(&self, word: Bytes<usize>) -> Mistake {
        let conditions = self.vocabulary.names.conditions.names();
        let known: Vec<&str> = Fact::ALL
            .iter()
            .map(|fact| fact.words())
            .chain(Measure::ALL.iter().map(|measure| measure.words()))
            .chain(conditions)
            .chain(["device is", "group is"])
            .collect();
        // A phrase is compared as a phrase: as many words as the known one has.
        let phrase = |count: usize| {
            let mut reader = Reader {
                text: self.text,
                at: word.start,
                vocabulary: self.vocabulary,
                ops: Vec::new(),
                nesting: 0,
            };
            let mut end = word.end;
            for _ in 0..count {
                match reader.peek() {
                    Some(next) => {
                        end = next.end;
                        reader.at = next.end;
                    }
                    None => break,
                }
            }
            word.start..end
        };
        let near = (1..=3).rev().find_map(|count| {
            let at = phrase(count);
            let words = self.piece(&at);
            let same_length = known
                .iter()
                .copied()
                .filter(|name| name.split(' ').count() == count);
            nearest(words, same_length).map(|near| (at, near))
        });
        match near {
            Some((at, near)) => {
                let found = self.piece(&at).to_owned();
                let mut unknown = Mistake::new(
                    "unknown-observation",
                    at,
                    format!("expected something that can be observed, found `{found}`"),
                );
                unknown.hint = Some(format!("did you mean `{near}`?"));
                unknown
            }
            None => {
                let found = self.piece(&word).to_owned();
                let mut unknown = Mistake::new(
                    "unknown-observation",
                    word,
                    format!("expected something that can be observed, found `{found}`"),
                );
                unknown.hint = Some(format!(
                    "a guard can speak of {}",
                    listed(known.iter().copied(), "and")
                ));
                unknown
            }
        }
    }

    // ---- words ----

    /// The next word or sign.
    fn peek(&self) -> Option<Bytes<usize>> {
        let rest = self.text.get(self.at..)?;
        let start = self.at + rest.len() - rest.trim_start().len();
        let rest = rest.trim_start();
        let first = rest.chars().next()?;
        let is_word = |c: char| c.is_alphanumeric() || matches!(c, '-' | '.' | '%' | '°' | '/');
        let length = if is_word(first) {
            rest.find(|c: char| !is_word(c)).unwrap_or(rest.len())
        } else if COMPARISONS
            .iter()
            .any(|(sign, _)| sign.len() == 2 && rest.starts_with(sign))
        {
            2
        } else {
            first.len_utf8()
        };
        Some(start..start + length)
    }

    fn piece(&self, at: &Bytes<usize>) -> &str {
        self.text.get(at.clone()).unwrap_or("")
    }

    /// Takes a phrase if it comes next, word by word.
    fn take(&mut self, phrase: &str) -> bool {
        let before = self.at;
        for expected in phrase.split(' ') {
            match self.peek() {
                Some(word) if self.piece(&word) == expected => self.at = word.end,
                _ => {
                    self.at = before;
                    return false;
                }
            }
        }
        true
    }
}

fn too_deep(text: &str) -> Mistake {
    Mistake::new(
        "nested-too-deep",
        0..text.len(),
        format!("expected at most {MAX_GUARD_DEPTH} levels in a guard, found more"),
    )
}
