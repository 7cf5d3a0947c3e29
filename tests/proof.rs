//! The proof of step orders: every `after` of the demo rulebook that matters is missed when it is gone.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "compile")]

mod common;

use oxyfolio::RULEBOOK;
use oxyfolio::book::{List, Procedure, Rulebook, StepId};
use oxyfolio::compile::folder;
use oxyfolio::compile::proof::{redundant, unsafe_orders};

/// The rulebook with one `after` taken out.
fn without(book: &Rulebook, procedure: usize, step: usize, named: StepId) -> Rulebook {
    let mut procedures: Vec<Procedure> = book.procedures.to_vec();
    let mut steps = procedures[procedure].steps.to_vec();
    let after: Vec<StepId> = steps[step]
        .after
        .iter()
        .copied()
        .filter(|other| *other != named)
        .collect();
    steps[step].after = List::from(after);
    procedures[procedure].steps = List::from(steps);
    Rulebook {
        procedures: List::from(procedures),
        ..book.clone()
    }
}

/// Every `after` of the book: procedure, step, the step it names.
fn all_afters(book: &Rulebook) -> Vec<(usize, usize, StepId)> {
    let mut all = Vec::new();
    for (procedure, rule) in book.procedures.iter().enumerate() {
        for (step, rule) in rule.steps.iter().enumerate() {
            all.extend(rule.after.iter().map(|named| (procedure, step, *named)));
        }
    }
    all
}

#[test]
fn demo_rulebook_has_no_unsafe_order_and_no_needless_after() {
    assert_eq!(unsafe_orders(&RULEBOOK), []);
    for procedure in &RULEBOOK.procedures {
        assert_eq!(redundant(procedure), [], "{}", procedure.rule.id);
    }
}

/// The `after` lines that the proof doesn't miss, and why each is in the book all the same. A worked case misses each.
const ORDER_ALONE: [(&str, &str); 4] = [
    (
        "make-ready: explain after assess",
        "either is safe first; the book looks first, because what is seen may change what is said",
    ),
    (
        "change-device: explain after assess",
        "either is safe first; the book looks first, because what is seen may change what is said",
    ),
    (
        "change-over-cylinder: place after gauge",
        "gas flows and the bag is full either way; the book wants the reading before the mask is trusted again",
    ),
    (
        "stow: write after tag",
        "paper after the tag, so that the two agree; neither touches the equipment",
    ),
];

#[test]
fn every_after_that_matters_is_missed() {
    let mut not_missed = Vec::new();
    let all = all_afters(&RULEBOOK);
    assert!(all.len() > 100, "the book orders its steps");
    for (procedure, step, named) in all {
        let rule = &RULEBOOK.procedures[procedure];
        let line = format!(
            "{}: {} after {}",
            rule.rule.id,
            rule.steps[step].id,
            rule.steps[named.index()].id
        );
        let found = unsafe_orders(&without(&RULEBOOK, procedure, step, named));
        if found.is_empty() {
            not_missed.push(line);
        } else {
            let here = found.iter().find(|one| one.procedure.index() == procedure);
            assert!(
                here.is_some_and(|one| !one.steps.is_empty()),
                "{line}: an order shows it"
            );
        }
    }
    assert_eq!(not_missed, ORDER_ALONE.map(|(line, _)| line));
}

/// What `check` says once a text of a chapter is replaced.
fn said(chapter: &str, old: &str, new: &str) -> String {
    let copy = common::copy_of_rules();
    common::edit(copy.path(), chapter, old, new);
    let rejected = folder::load(copy.path()).expect_err("the edit is unsafe");
    rejected
        .render(false)
        .replace(&format!("{}/", copy.path().display()), "rules/")
}

#[test]
fn flow_off_before_the_mask_is_off_is_shown_step_by_step() {
    let said = said(
        "09-stopping-and-shutting-down.md",
        "    after: take-off\n    critical: yes\n  - id: disconnect",
        "    critical: yes\n  - id: disconnect",
    );
    for words in [
        "error[unsafe-order]: `remove-device` allows an order in which `zero` does harm: ",
        "The device is on the patient and the flow is zero",
        "1. zero: Then turn the flow to zero.",
        "add `take-off` to the `after` of the step `zero`",
    ] {
        assert!(said.contains(words), "{words:?} is missing in\n{said}");
    }
}

#[test]
fn regulator_off_before_it_is_bled_is_shown_step_by_step() {
    let said = said(
        "09-stopping-and-shutting-down.md",
        "    after: zero\n    critical: yes\n  - id: cap",
        "    critical: yes\n  - id: cap",
    );
    for words in [
        "`shut-down` allows an order in which `regulator-off` comes too early: the regulator is under pressure",
        "1. regulator-off: Gauge at zero? Then take the regulator off.",
        "add `bleed` to the `after` of the step `regulator-off`",
    ] {
        assert!(said.contains(words), "{words:?} is missing in\n{said}");
    }
}

#[test]
fn a_step_that_can_never_be_done_is_called_so() {
    let said = said(
        "09-stopping-and-shutting-down.md",
        "do: close-cylinder\n    say: \"Close the cylinder valve.",
        "do: open-cylinder\n    say: \"Close the cylinder valve.",
    );
    assert!(said.contains("error[step-never-possible]"), "{said}");
}

#[test]
fn steps_that_wait_for_each_other_are_a_ring() {
    let said = said(
        "09-stopping-and-shutting-down.md",
        "  - id: close\n    do: close-cylinder\n    say: \"Feel",
        "  - id: close\n    after: bleed\n    do: close-cylinder\n    say: \"Feel",
    );
    assert!(
        said.contains("error[steps-in-a-ring]") || said.contains("error[duplicate-key]"),
        "{said}"
    );
}

/// What `check` says of the demo with one more procedure, and with an edit of a chapter where one is given.
fn said_with(procedure: &str, edit: Option<(&str, &str, &str)>) -> String {
    let copy = common::copy_of_rules();
    let annex = format!("# Annex\n\nTried out.\n\n```yaml procedure\n{procedure}```\n");
    std::fs::write(copy.path().join("90-annex.md"), annex).unwrap();
    if let Some((chapter, old, new)) = edit {
        common::edit(copy.path(), chapter, old, new);
    }
    match folder::load(copy.path()) {
        Ok(_) => String::from("accepted"),
        Err(rejected) => rejected.render(false),
    }
}

const QUICK_STOP: &str = "id: quick-stop
name: Quick stop
purpose: Tried out.
who: Nobody.
DEVICES
begins-with: [cylinder open, regulator seated, regulator pressurised, device on patient, reservoir filled]
ends-safe: no
steps:
  - {id: zero, do: zero-flow, say: Flow off., why: Tried out.}
  - {id: off, do: remove-device, say: Mask off., why: Tried out.}
";

/// A ring of `follows` left every procedure after it unproved.
#[test]
fn procedures_that_follow_only_each_other_are_not_taken_for_proved() {
    let said = said(
        "04-fitting-the-regulator.md",
        "id: make-ready\n",
        "id: make-ready\nfollows: [make-ready]\n",
    );
    assert!(
        said.contains("error[procedure-never-begins]: `make-ready` begins only after"),
        "{said}"
    );
}

/// A procedure that begins with a device on the patient was walked with no device, so no hazard could see it.
#[test]
fn a_beginning_with_a_device_on_the_patient_has_a_device() {
    let said = said_with(&QUICK_STOP.replace("DEVICES", "devices: [non-rebreather]"), None);
    assert!(
        said.contains("`quick-stop` allows an order in which `zero` does harm"),
        "{said}"
    );
}

/// A hazard for one group alone was never seen, because the walk took another group.
#[test]
fn a_hazard_for_one_group_is_a_hazard() {
    let edit = (
        "05-delivery-devices.md",
        "never: \"device on patient and flow = 0 L/min and not (device is bag-valve-mask and group is newborn)\"",
        "never: \"device on patient and flow = 0 L/min and group is child\"",
    );
    let said = said_with(
        &QUICK_STOP.replace("DEVICES", "devices: [nasal-cannula]"),
        Some(edit),
    );
    assert!(
        said.contains("`quick-stop` allows an order in which `zero` does harm"),
        "{said}"
    );
}

/// A regulator moved to another cylinder with nobody looking at the washer was proved safe.
#[test]
fn a_washer_nobody_looked_at_is_refused() {
    let said = said_with(
        "id: swap
name: Swap
purpose: Tried out.
who: Nobody.
begins-with: [cylinder secured, regulator seated]
ends-safe: no
steps:
  - {id: zero, do: zero-flow, say: Flow off., why: Tried out.}
  - {id: fetch, do: fetch-cylinder, say: Fetch., why: Tried out.}
  - {id: clear, do: clear-outlet, say: Clear., why: Tried out., after: fetch}
  - {id: take, do: remove-regulator, say: Off., why: Tried out., after: [clear, zero]}
  - {id: seat, do: seat-regulator, say: Seat., why: Tried out., after: take}
",
        None,
    );
    assert!(
        said.contains("nobody has looked at the washer since the regulator was off"),
        "{said}"
    );
}

/// Devices were taken for alike although a hazard could tell them apart by their flow.
#[test]
fn a_hazard_at_one_devices_flow_is_a_hazard() {
    let edit = (
        "05-delivery-devices.md",
        "never: \"device on patient and flow = 0 L/min and not (device is bag-valve-mask and group is newborn)\"",
        "never: \"device on patient and flow in 4 to 5 L/min and not cylinder open\"",
    );
    let steps = "begins-with: [cylinder open, regulator seated, regulator pressurised]
ends-safe: no
steps:
  - {id: connect, do: connect-device, say: Connect., why: Tried out.}
  - {id: set, do: set-flow, say: Set., why: Tried out., after: connect}
  - {id: place, do: place-device, say: Place., why: Tried out., after: set}
  - {id: close, do: close-cylinder, say: Close., why: Tried out., after: place}
";
    let procedure = format!("id: swap\nname: Swap\npurpose: Tried out.\nwho: Nobody.\n{steps}");
    let said = said_with(&procedure, Some(edit));
    assert!(
        said.contains("`swap` allows an order in which `close` does harm"),
        "{said}"
    );
}
