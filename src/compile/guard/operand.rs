//! Comparisons: a measure, a sign, and what it is compared with.

use core::ops::Range as Bytes;

use super::{
    Reader, hints,
    types::{check_bounds, check_dimension, dimension_of, dimension_of_measure, ends, is_range},
    vocabulary::{COMPARISONS, NAMED_VALUES},
    written::{self, Mistake},
};
use crate::book::{GuardOp, Measure, Operand, PolicyId, Value};

impl Reader<'_> {
    /// What follows a measure.
    pub fn comparison(&mut self, measure: Measure) -> Result<(), Mistake> {
        if self.words.take("in") {
            let (value, at) = self.range_value(measure)?;
            check_dimension(measure, dimension_of(&value), at.clone())?;
            check_bounds(measure, &value, at)?;
            self.ops.push(GuardOp::Within(measure, value));
            return Ok(());
        }
        let sign = COMPARISONS.iter().find(|(sign, _)| self.words.take(sign));
        let Some((sign, comparison)) = sign else {
            return Err(hints::no_comparison(&self.words, measure));
        };
        let operand = self.operand(measure, sign)?;
        self.ops.push(GuardOp::Compare(measure, *comparison, operand));
        Ok(())
    }

    fn operand(&mut self, measure: Measure, sign: &str) -> Result<Operand, Mistake> {
        let Some(word) = self.words.peek() else {
            return Err(self.words.unfinished("a quantity or a name"));
        };
        let name = self.words.piece(&word);
        if let Some(value) = NAMED_VALUES.iter().find(|value| value.words == name) {
            check_dimension(measure, Some(value.dimension), word.clone())?;
            self.words.go_to(word.end);
            return Ok(value.operand);
        }
        if let Some(operand) = self.policy_operand(measure, name, &word)? {
            self.words.go_to(word.end);
            return Ok(operand);
        }
        if let Some(&other) = Measure::ALL.iter().find(|other| self.words.take(other.words())) {
            let at = word.start..self.words.at();
            check_dimension(measure, Some(dimension_of_measure(other)), at.clone())?;
            if other == measure {
                return Err(Mistake::new(
                    "compares-itself",
                    at,
                    format!("expected something else than `{}` here too", measure.words()),
                )
                .hint("compare with a quantity, a policy or another measure"));
            }
            return Ok(Operand::Measure(other));
        }
        let begins_a_range = ["at", "under", "over"].contains(&name);
        if name.starts_with(|c: char| c.is_ascii_alphabetic()) && !begins_a_range {
            return Err(hints::unknown_value(measure, name, word, self.vocabulary));
        }
        let (value, at) = self
            .quantity(measure, false)
            .map_err(|mistake| hints::second_sign(mistake, sign, &self.words))?;
        if is_range(&value) {
            return Err(
                Mistake::new("not-one-quantity", at, "expected one quantity, found a range")
                    .hint(format!("write `{} in LOW to HIGH`", measure.words())),
            );
        }
        check_dimension(measure, dimension_of(&value), at.clone())?;
        check_bounds(measure, &value, at)?;
        Ok(Operand::Value(value))
    }

    /// A policy by its id, or one end of a policy's range: `use-temperature.high`.
    fn policy_operand(
        &self,
        measure: Measure,
        name: &str,
        at: &Bytes<usize>,
    ) -> Result<Option<Operand>, Mistake> {
        if let Some((id, value)) = self.policy(name) {
            if is_range(&value) {
                let hint = format!(
                    "write `{} in {name}`, or `{name}.low` or `{name}.high`",
                    measure.words()
                );
                return Err(Mistake::new(
                    "not-one-quantity",
                    at.clone(),
                    format!("expected one quantity, found the range `{name}`"),
                )
                .hint(hint));
            }
            check_dimension(measure, dimension_of(&value), at.clone())?;
            return Ok(Some(Operand::Policy(id)));
        }
        let Some((owner, end)) = name.rsplit_once('.') else {
            return Ok(None);
        };
        let (Some((id, value)), "low" | "high") = (self.policy(owner), end) else {
            return Ok(None);
        };
        let Some((low, high)) = ends(&value) else {
            return Err(Mistake::new(
                "not-a-range",
                at.clone(),
                format!("expected a range before `.{end}`, found the one quantity `{owner}`"),
            )
            .hint(format!("write `{owner}`")));
        };
        check_dimension(measure, dimension_of(&value), at.clone())?;
        let (there, operand) = match end {
            "low" => (low, Operand::PolicyLow(id)),
            _ => (high, Operand::PolicyHigh(id)),
        };
        if there {
            return Ok(Some(operand));
        }
        Err(Mistake::new(
            "no-such-end",
            at.clone(),
            format!("expected a range with a {end} end, found `{owner}`, which is {value}"),
        )
        .hint(format!(
            "write `{owner}.{}`, the end it has, or give `{owner}` its {end} end",
            if end == "low" { "high" } else { "low" }
        )))
    }

    /// What follows `in`.
    fn range_value(&mut self, measure: Measure) -> Result<(Value, Bytes<usize>), Mistake> {
        let Some(word) = self.words.peek() else {
            return Err(self.words.unfinished("a range"));
        };
        let name = self.words.piece(&word);
        let (value, at) = if let Some((_, value)) = self.policy(name) {
            self.words.go_to(word.end);
            (value, word)
        } else if name.starts_with(|c: char| c.is_ascii_alphabetic())
            && !["at", "under", "over"].contains(&name)
        {
            return Err(hints::unknown_value(measure, name, word, self.vocabulary));
        } else {
            self.quantity(measure, true)?
        };
        if is_range(&value) {
            return Ok((value, at));
        }
        let (what, hint) = match value {
            // `94 to 1`, where the unit was forgotten.
            Value::Ratio(_) => ("a ratio", "write the unit after the second number".to_owned()),
            _ => (
                "one quantity",
                format!("write `{} in LOW to HIGH UNIT`", measure.words()),
            ),
        };
        Err(Mistake::new(
            "not-a-range",
            at,
            format!("expected a range after `in`, found {what}"),
        )
        .hint(hint))
    }

    fn quantity(&mut self, measure: Measure, is_range: bool) -> Result<(Value, Bytes<usize>), Mistake> {
        let (start, at) = (self.words.start(), self.words.at());
        let rest = self.words.rest();
        let wanted = written::Wanted {
            dimension: dimension_of_measure(measure),
            is_range,
        };
        match written::leading(rest).map_err(|mistake| mistake.wanting(rest, wanted)) {
            Ok((value, end)) => {
                self.words.go_to(at + end);
                Ok((value, start..at + end))
            }
            Err(mistake) => Err(mistake.shifted(at)),
        }
    }

    fn policy(&self, name: &str) -> Option<(PolicyId, Value)> {
        let index = self.vocabulary.names.policies.index(name)?;
        let policies = self.vocabulary.policies;
        let policy = policies.iter().find(|policy| &*policy.rule.id == name)?;
        Some((PolicyId(index), policy.value))
    }
}
