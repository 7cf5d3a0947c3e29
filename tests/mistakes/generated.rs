//! Procedures longer than anybody writes by hand.

use std::fmt::Write as _;

use crate::book::{compiled, demo};

/// The demonstration with procedures of so many steps each, one after the other or free; what is said of them.
fn procedures(steps: &[usize], in_order: bool) -> Vec<(&'static str, Vec<String>)> {
    let mut text = "# Annex\n\nOurs.\n".to_owned();
    for (number, count) in steps.iter().enumerate() {
        write!(
            text,
            "\n```yaml procedure\nid: notes-{number}\nname: Notes\npurpose: \"To see.\"\nwho: \"Anybody.\"\nnot-when: [\"Never.\"]\nends-safe: no\nsteps:\n"
        )
        .unwrap();
        for step in 0..*count {
            let after = match step.checked_sub(1).filter(|_| in_order) {
                Some(before) => format!("    after: s{before}\n"),
                None => String::new(),
            };
            write!(
                text,
                "  - id: s{step}\n    do: secure-cylinder\n    say: \"Secure it.\"\n    why: \"To see.\"\n{after}"
            )
            .unwrap();
        }
        text.push_str("```\n");
    }
    let mut chapters = demo();
    chapters.push(("90-annex.md".to_owned(), text));
    match compiled(&chapters) {
        Ok(_) => Vec::new(),
        Err(rejected) => rejected
            .diagnostics
            .iter()
            .map(|found| (found.code, found.hints.clone()))
            .collect(),
    }
}

#[test]
fn a_procedure_that_is_too_long_to_prove_is_ordered_or_cut() {
    let hint = "order more of the steps with `after`, or make two procedures of it".to_owned();
    let told = [("order-not-proved", vec![hint])];
    assert_eq!(procedures(&[65], true), told);
    assert_eq!(procedures(&[33, 32], true), []);
    // In any order: more sets of steps done than are looked at.
    assert_eq!(procedures(&[22], false), told);
    assert_eq!(procedures(&[22], true), []);
}
