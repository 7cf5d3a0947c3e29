//! The demonstration's guards in the languages of other engines: when a hazard is surely there, and when it surely isn't.
//!
//! None of the engines has a logic of three values. What isn't known is `null`, every comparison asks for that first, and
//! each hazard is written twice: what makes it true, and what makes it false. What is neither is unknown.

use oxyfolio::{
    book::{Comparison, Fact, GuardOp, Hazard, Measure, Operand, PolicyId, Rulebook, Value},
    guard::compare::Comparable,
};

/// A guard without "not": its single conditions carry it.
#[derive(Clone, Debug)]
pub enum Tree {
    /// A condition, as text.
    One(String),
    All(Vec<Tree>),
    Any(Vec<Tree>),
}

/// The signs of a language.
pub struct Language {
    pub and: &'static str,
    pub or: &'static str,
    /// Before the name of a field.
    pub input: &'static str,
}

/// When a hazard is there, and when it isn't.
pub fn sides(hazard: &Hazard, book: &Rulebook, language: &Language) -> [Tree; 2] {
    let mut stack: Vec<[Tree; 2]> = Vec::new();
    for op in &hazard.never.ops {
        let sides = match op {
            GuardOp::Not => {
                let [yes, no] = stack.pop().unwrap();
                [no, yes]
            }
            GuardOp::And => {
                let ([yes, no], [first_yes, first_no]) = (stack.pop().unwrap(), stack.pop().unwrap());
                [Tree::All(vec![first_yes, yes]), Tree::Any(vec![first_no, no])]
            }
            GuardOp::Or => {
                let ([yes, no], [first_yes, first_no]) = (stack.pop().unwrap(), stack.pop().unwrap());
                [Tree::Any(vec![first_yes, yes]), Tree::All(vec![first_no, no])]
            }
            single => condition(single, book, language),
        };
        stack.push(sides);
    }
    stack.pop().unwrap()
}

fn condition(op: &GuardOp, book: &Rulebook, language: &Language) -> [Tree; 2] {
    let input = language.input;
    let is = |field: &str, id: &str| {
        [
            Tree::One(format!("{input}{field} == \"{id}\"")),
            known(&format!("{input}{field}"), format!("{input}{field} != \"{id}\"")),
        ]
    };
    let holds = |field: &str| {
        let field = field.replace([' ', '-'], "_");
        [
            Tree::One(format!("{input}{field} == true")),
            Tree::One(format!("{input}{field} == false")),
        ]
    };
    match op {
        GuardOp::Compare(measure, comparison, operand) => {
            compared(*measure, *comparison, *operand, book, language)
        }
        GuardOp::Fact(fact) => {
            assert!(Fact::ALL.contains(fact));
            holds(fact.words())
        }
        GuardOp::DeviceIs(id) => is("device", &book.device(*id).unwrap().rule.id),
        GuardOp::GroupIs(id) => is("group", &book.group(*id).unwrap().rule.id),
        GuardOp::HasCondition(id) => holds(&book.condition(*id).unwrap().id),
        other => panic!("the demonstration has no {other:?}"),
    }
}

/// A condition on a field that may be null.
fn known(field: &str, condition: String) -> Tree {
    Tree::All(vec![Tree::One(format!("{field} != null")), Tree::One(condition)])
}

fn compared(
    measure: Measure,
    comparison: Comparison,
    operand: Operand,
    book: &Rulebook,
    language: &Language,
) -> [Tree; 2] {
    let field = |name: &str| format!("{}{}", language.input, name.replace(' ', "_"));
    let left = field(measure.words());
    let (sign, contrary) = match comparison {
        Comparison::Equal => ("==", "!="),
        Comparison::NotEqual => ("!=", "=="),
        Comparison::Less => ("<", ">="),
        Comparison::AtMost => ("<=", ">"),
        Comparison::Greater => (">", "<="),
        Comparison::AtLeast => (">=", "<"),
    };
    let with = |right: &str| [sign, contrary].map(|sign| known(&left, format!("{left} {sign} {right}")));
    let of_two = |yes: String, no: String| {
        [(sign, yes), (contrary, no)].map(|(sign, right)| {
            let both = known(&right, format!("{left} {sign} {right}"));
            Tree::All(vec![Tree::One(format!("{left} != null")), both])
        })
    };
    let policy = |id: PolicyId| &book.policy(id).unwrap().value;
    match operand {
        Operand::Value(value) => with(&number(&value)),
        Operand::Policy(id) => with(&number(policy(id))),
        Operand::PolicyLow(id) => with(&end(policy(id), true)),
        Operand::PolicyHigh(id) => with(&end(policy(id), false)),
        Operand::Measure(other) => of_two(field(other.words()), field(other.words())),
        Operand::TargetLow => of_two(field("target_low"), field("target_low")),
        Operand::TargetHigh => of_two(field("target_high"), field("target_high")),
        // Of a patient of unknown group it is true or false when it is for all groups.
        Operand::DeviceLeastFlow => {
            assert_eq!(comparison, Comparison::Less);
            of_two(field("least_low"), field("least_high"))
        }
        Operand::DeviceMostFlow => {
            assert_eq!(comparison, Comparison::Greater);
            of_two(field("most_high"), field("most_low"))
        }
    }
}

fn number(value: &Value) -> String {
    let number = match value {
        Value::Flow(value) => value.number(),
        Value::Pressure(value) => value.number(),
        Value::Temperature(value) => value.number(),
        Value::Percent(value) => value.number(),
        Value::Time(value) => value.number(),
        other => panic!("no number: {other:?}"),
    };
    format!("{number:?}")
}

fn end(value: &Value, low: bool) -> String {
    let Value::TemperatureRange(range) = value else {
        panic!("no range of temperatures: {value:?}");
    };
    let end = if low { range.low } else { range.high };
    number(&Value::Temperature(end.value().unwrap()))
}

impl Tree {
    /// As one expression.
    pub fn text(&self, language: &Language) -> String {
        let joined = |trees: &[Self], sign: &str| {
            let texts: Vec<String> = trees.iter().map(|tree| tree.text(language)).collect();
            format!("({})", texts.join(sign))
        };
        match self {
            Self::One(text) => text.clone(),
            Self::All(trees) => joined(trees, language.and),
            Self::Any(trees) => joined(trees, language.or),
        }
    }

    /// As alternatives, each a list of conditions: for a language without "or".
    pub fn alternatives(&self) -> Vec<Vec<String>> {
        match self {
            Self::One(text) => vec![vec![text.clone()]],
            Self::Any(trees) => trees.iter().flat_map(Self::alternatives).collect(),
            Self::All(trees) => trees.iter().fold(vec![Vec::new()], |before, tree| {
                let more = tree.alternatives();
                before
                    .iter()
                    .flat_map(|one| more.iter().map(move |other| [&one[..], &other[..]].concat()))
                    .collect()
            }),
        }
    }
}

/// Every hazard as a number: 0 when it surely isn't there, 2 when it is, 1 when it can't be told. What is most often so is
/// asked first.
pub fn list(book: &Rulebook, language: &Language) -> String {
    let hazards = book.hazards.iter().map(|hazard| {
        let [yes, no] = sides(hazard, book, language).map(|tree| tree.text(language));
        format!("({no} ? 0 : ({yes} ? 2 : 1))")
    });
    format!("[{}]", hazards.collect::<Vec<_>>().join(", "))
}

/// Two sets of hazards in Rego: those that are there, and those that aren't.
pub fn rego(book: &Rulebook) -> String {
    let language = Language {
        and: "",
        or: "",
        input: "input.",
    };
    let mut out = String::from("package hazards\n\nimport rego.v1\n\n");
    for (index, hazard) in book.hazards.iter().enumerate() {
        for (set, tree) in ["there", "not_there"]
            .into_iter()
            .zip(sides(hazard, book, &language))
        {
            for conditions in tree.alternatives() {
                out += &format!(
                    "{set} contains {index} if {{\n\t{}\n}}\n\n",
                    conditions.join("\n\t")
                );
            }
        }
    }
    out + "answer := {\"there\": there, \"not_there\": not_there}\n"
}
