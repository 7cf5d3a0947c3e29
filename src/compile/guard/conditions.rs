//! Conditions and how `not`, `and`, `or` and brackets join them.

use core::ops::Range as Bytes;

use super::{Reader, hints, too_deep, vocabulary, written::Mistake};
use crate::book::{ConditionId, DeviceId, Fact, GroupId, GuardOp, MAX_GUARD_DEPTH, Measure};

/// The longest part of a guard that a hint repeats.
const SHORT: usize = 60;

impl Reader<'_> {
    pub fn any_of(&mut self) -> Result<(), Mistake> {
        let mut parts = vec![self.all_of()?];
        while self.words.take("or") {
            parts.push(self.all_of()?);
            self.ops.push(GuardOp::Or);
        }
        self.refuse_mixture(&parts)
    }

    /// Gives where each of its conditions stands.
    fn all_of(&mut self) -> Result<Vec<Bytes<usize>>, Mistake> {
        let mut parts = vec![self.negation()?];
        while self.words.take("and") {
            parts.push(self.negation()?);
            self.ops.push(GuardOp::And);
        }
        Ok(parts)
    }

    /// `a or b and c` is read one way by a program and another by a tired reader, so it isn't read at all.
    fn refuse_mixture(&self, parts: &[Vec<Bytes<usize>>]) -> Result<(), Mistake> {
        // A bracket that was never opened says more about what was meant, and is reported next.
        if self.nesting == 0 && self.words.next_piece() == ")" {
            return Ok(());
        }
        let joined_by_and = parts.iter().position(|part| part.len() > 1);
        let Some(place) = joined_by_and.filter(|_| parts.len() > 1) else {
            return Ok(());
        };
        let condition = |part: usize, last: bool| {
            let part = parts.get(part)?;
            if last { part.last() } else { part.first() }
        };
        let stretch = |from: Option<&Bytes<usize>>, to: Option<&Bytes<usize>>| {
            from.zip(to).map_or(0..0, |(from, to)| from.start..to.end)
        };
        let and = stretch(condition(place, false), condition(place, true));
        // The conditions on both sides of the nearest `or`.
        let or = match place.checked_sub(1) {
            Some(before) => stretch(condition(before, true), condition(place, false)),
            None => stretch(condition(place, true), condition(place + 1, false)),
        };
        let hint = if and.len().max(or.len()) <= SHORT {
            format!(
                "put brackets round `{}` or round `{}`, whichever is meant",
                self.words.piece(&and),
                self.words.piece(&or)
            )
        } else {
            "write `(a and b) or c` or `a and (b or c)`, whichever is meant".to_owned()
        };
        Err(Mistake::new(
            "mixed-and-or",
            and,
            "expected brackets where `and` meets `or`, found none",
        )
        .hint(hint))
    }

    fn negation(&mut self) -> Result<Bytes<usize>, Mistake> {
        self.nesting += 1;
        if self.nesting > MAX_GUARD_DEPTH {
            return Err(too_deep(self.words.text()));
        }
        let start = self.words.start();
        if self.words.take("not") {
            self.negation()?;
            self.ops.push(GuardOp::Not);
        } else {
            self.single()?;
        }
        self.nesting -= 1;
        Ok(start..self.words.at())
    }

    fn single(&mut self) -> Result<(), Mistake> {
        let Some(word) = self.words.peek() else {
            return Err(self.words.unfinished("a condition"));
        };
        if self.words.take("(") {
            return self.bracket(word);
        }
        if let Some(op) = self.identity()? {
            self.ops.push(op);
            return Ok(());
        }
        // The longest phrase wins: `minutes left` before a condition called `minutes`.
        if let Some(&fact) = Fact::ALL.iter().find(|fact| self.words.take(fact.words())) {
            self.ops.push(GuardOp::Fact(fact));
            return Ok(());
        }
        if let Some(&measure) = Measure::ALL
            .iter()
            .find(|measure| self.words.take(measure.words()))
        {
            return self.comparison(measure);
        }
        let name = self.words.piece(&word);
        if let Some(index) = self.vocabulary.names.conditions.index(name) {
            self.words.go_to(word.end);
            self.ops.push(GuardOp::HasCondition(ConditionId(index)));
            return Ok(());
        }
        Err(hints::unknown(&self.words, word, self.vocabulary))
    }

    /// The inside of a bracket, and its end.
    fn bracket(&mut self, open: Bytes<usize>) -> Result<(), Mistake> {
        self.any_of()?;
        if self.words.take(")") {
            return Ok(());
        }
        Err(match self.words.peek() {
            Some(word) => hints::after_condition(&self.words, word, "`)`"),
            None => Mistake::new("unclosed-bracket", open, "this bracket is never closed")
                .hint("close it with `)`"),
        })
    }

    /// `device is ID` and `group is ID`.
    fn identity(&mut self) -> Result<Option<GuardOp>, Mistake> {
        let names = self.vocabulary.names;
        let (table, phrase, what) = if self.words.take(vocabulary::DEVICE_IS) {
            (&names.devices, vocabulary::DEVICE_IS, "device")
        } else if self.words.take(vocabulary::GROUP_IS) {
            (&names.groups, vocabulary::GROUP_IS, "group")
        } else {
            return Ok(None);
        };
        let Some(word) = self.words.peek() else {
            return Err(self.words.unfinished(&format!("the id of a {what}")));
        };
        let Some(index) = table.index(self.words.piece(&word)) else {
            return Err(hints::unknown_identity(&self.words, word, phrase, what, table));
        };
        self.words.go_to(word.end);
        Ok(Some(if phrase == vocabulary::DEVICE_IS {
            GuardOp::DeviceIs(DeviceId(index))
        } else {
            GuardOp::GroupIs(GroupId(index))
        }))
    }
}
