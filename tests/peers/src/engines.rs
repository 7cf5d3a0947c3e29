//! Other engines with the same rules, each as its documentation says it is fastest: rules compiled once.

use std::{rc::Rc, sync::Arc};

use oxyfolio::book::Rulebook;

use crate::{
    floor::Mask,
    translate::{self, Language},
};

/// An engine with the rules compiled.
pub struct Peer {
    pub name: &'static str,
    /// Answers for one of the records, which were converted to its own values beforehand.
    pub ask: Box<dyn FnMut(usize) -> Mask>,
    /// Answers for a record as JSON text.
    pub whole: Box<dyn FnMut(&str) -> Mask>,
}

pub fn all(book: &Rulebook, texts: &[String]) -> Vec<Peer> {
    vec![
        cel(book, texts),
        regorus(book, texts),
        regorus_vm(book, texts),
        zen(book, texts),
    ]
}

/// From a list of 0, 1 and 2.
fn mask(answers: impl Iterator<Item = i64>) -> Mask {
    let mut mask = Mask::default();
    for (hazard, answer) in answers.enumerate() {
        match answer {
            0 => {}
            1 => mask.unknown |= 1 << hazard,
            2 => mask.there |= 1 << hazard,
            other => panic!("expected 0, 1 or 2, found {other}"),
        }
    }
    mask
}

/// The Common Expression Language: one expression for all hazards.
fn cel(book: &Rulebook, texts: &[String]) -> Peer {
    let language = Language {
        and: " && ",
        or: " || ",
        input: "",
    };
    let env = Arc::new(cel::Env::stdlib());
    let program = Rc::new(env.compile(&translate::list(book, &language)).unwrap());
    let convert = move |text: &str| {
        let value: serde_json::Value = serde_json::from_str(text).unwrap();
        let mut context = cel::Context::with_env(Arc::clone(&env));
        for (name, value) in value.as_object().unwrap() {
            context.add_variable_from_value(name.as_str(), cel::to_value(value).unwrap());
        }
        context
    };
    let ask = |program: &cel::Program, context: &cel::Context| {
        let cel::Value::List(answers) = program.execute(context).unwrap() else {
            panic!("expected a list");
        };
        mask(answers.iter().map(|answer| match answer {
            cel::Value::Int(answer) => *answer,
            other => panic!("expected a number, found {other:?}"),
        }))
    };
    let contexts: Vec<_> = texts.iter().map(|text| convert(text)).collect();
    let again = Rc::clone(&program);
    Peer {
        name: "cel",
        ask: Box::new(move |record| ask(&program, &contexts[record])),
        whole: Box::new(move |text| ask(&again, &convert(text))),
    }
}

const ENTRY: &str = "data.hazards.answer";

fn policy(book: &Rulebook) -> regorus::CompiledPolicy {
    let mut engine = regorus::Engine::new();
    engine
        .add_policy("hazards.rego".to_owned(), translate::rego(book))
        .unwrap();
    engine.compile_with_entrypoint(&ENTRY.into()).unwrap()
}

/// What the two sets leave over is unknown.
fn of_sets(answer: &regorus::Value, hazards: usize) -> Mask {
    let bits = |set: &str| {
        let set = answer[set].as_set().unwrap();
        set.iter()
            .fold(0, |bits, hazard| bits | 1 << hazard.as_u64().unwrap())
    };
    let (there, not_there): (u64, u64) = (bits("there"), bits("not_there"));
    Mask {
        there,
        unknown: !(there | not_there) & ((1 << hazards) - 1),
    }
}

/// Rego, interpreted.
fn regorus(book: &Rulebook, texts: &[String]) -> Peer {
    let policy = Rc::new(policy(book));
    let hazards = book.hazards.len();
    let convert = |text: &str| regorus::Value::from_json_str(text).unwrap();
    let inputs: Vec<_> = texts.iter().map(|text| convert(text)).collect();
    let ask = move |policy: &regorus::CompiledPolicy, input: regorus::Value| {
        of_sets(&policy.eval_with_input(input).unwrap(), hazards)
    };
    let again = Rc::clone(&policy);
    Peer {
        name: "regorus",
        ask: Box::new(move |record| ask(&policy, inputs[record].clone())),
        whole: Box::new(move |text| ask(&again, convert(text))),
    }
}

/// Rego, compiled to the byte code of the same engine.
fn regorus_vm(book: &Rulebook, texts: &[String]) -> Peer {
    let policy = policy(book);
    let program =
        regorus::languages::rego::compiler::Compiler::compile_from_policy(&policy, &[ENTRY]).unwrap();
    let hazards = book.hazards.len();
    let machine = move || {
        let mut machine = regorus::rvm::vm::RegoVM::new_with_policy(policy.clone());
        machine.load_program(Arc::clone(&program));
        machine.set_data(regorus::Value::new_object()).unwrap();
        machine
    };
    let ask = move |machine: &mut regorus::rvm::vm::RegoVM, input: regorus::Value| {
        machine.set_input(input);
        of_sets(&machine.execute_entry_point_by_index(0).unwrap(), hazards)
    };
    let convert = |text: &str| regorus::Value::from_json_str(text).unwrap();
    let inputs: Vec<_> = texts.iter().map(|text| convert(text)).collect();
    let (mut one, mut other) = (machine(), machine());
    Peer {
        name: "regorus, byte code",
        ask: Box::new(move |record| ask(&mut one, inputs[record].clone())),
        whole: Box::new(move |text| ask(&mut other, convert(text))),
    }
}

/// The expressions of the zen engine, compiled to its byte code, without the graph of decisions round them.
fn zen(book: &Rulebook, texts: &[String]) -> Peer {
    use zen_expression::{Scope, compile_expression, variable::Variable, vm::VM};
    let language = Language {
        and: " and ",
        or: " or ",
        input: "",
    };
    let expression = compile_expression(&translate::list(book, &language)).unwrap();
    let convert = |text: &str| {
        let value: serde_json::Value = serde_json::from_str(text).unwrap();
        Scope::new(Variable::from(value))
    };
    let scopes: Vec<_> = texts.iter().map(|text| convert(text)).collect();
    let answer = |answer: &Variable| match answer {
        Variable::Number(number) => i64::try_from(*number).unwrap(),
        other => panic!("expected a number, found {other:?}"),
    };
    let ask = move |machine: &mut VM, scope: &Scope| {
        let found = machine.run(expression.bytecode(), scope).unwrap();
        let Variable::Array(answers) = found else {
            panic!("expected a list, found {found:?}");
        };
        mask(answers.borrow().iter().map(answer))
    };
    let again = ask.clone();
    let (mut one, mut other) = (VM::new(), VM::new());
    Peer {
        name: "zen, expressions alone",
        ask: Box::new(move |record| ask(&mut one, &scopes[record])),
        whole: Box::new(move |text| again(&mut other, &convert(text))),
    }
}
