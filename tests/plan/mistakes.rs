//! What a wrong plan file is told: the place, what is wrong, what to write instead, all at once.

use oxyfolio::{RULEBOOK, compile::transport};

/// What is said, drawn.
fn said(text: &str) -> String {
    transport::read(&RULEBOOK, "plan.yaml", text)
        .unwrap_err()
        .render(false)
}

const GOOD: &str = "\
cylinders:
  - {size: E, pressure: 2000 psi}
legs:
  - name: road
    time: 10 min
    flow: 15 L/min
";

#[test]
fn a_good_plan_is_read() {
    let read = transport::read(&RULEBOOK, "plan.yaml", GOOD).unwrap();
    assert_eq!((read.plan.legs.len(), read.plan.cylinders.len()), (1, 1));
    let marked = format!("\u{FEFF}# remark\r\n{}", GOOD.replace('\n', "\r\n"));
    assert_eq!(transport::read(&RULEBOOK, "plan.yaml", &marked).unwrap(), read);
}

#[test]
fn json_is_the_same_grammar() {
    let json = "{\n\t\"cylinders\": [{\"size\": \"E\", \"pressure\": \"2000 psi\", \"count\": 1}],\n\
                \t\"legs\": [{\"name\": \"road\", \"time\": \"10 min\", \"flow\": \"15 L/min\"}]\n}\n";
    assert_eq!(
        transport::read(&RULEBOOK, "plan.json", json).unwrap(),
        transport::read(&RULEBOOK, "plan.yaml", GOOD).unwrap()
    );
}

#[test]
fn each_mistake_has_its_place_and_what_to_write() {
    for (old, new, place, words, hint) in [
        (
            "size: E",
            "size: jumbo-c",
            "2:12",
            "expected a cylinder of the rulebook, found `jumbo-c`",
            "did you mean `jumbo-d`?",
        ),
        ("2000 psi", "2000", "2:25", "expected a unit after 2000", ""),
        (
            "2000 psi",
            "2000 L",
            "2:30",
            "expected a pressure in psi or bar, found",
            "",
        ),
        (
            "2000 psi",
            "305 bar",
            "2:25",
            "from 0 to 300 bar, found 305 bar",
            "up to 300 bar",
        ),
        (
            "2000 psi",
            "2000 psi, count: 0",
            "2:42",
            "expected a whole number from 1 to 100, found `0`",
            "`count: 2`",
        ),
        ("2000 psi", "2000 psi, count: 101", "2:42", "found `101`", ""),
        (
            "time: 10 min",
            "tiem: 10 min",
            "5:5",
            "expected a key of a leg, found `tiem`",
            "did you mean `time`?",
        ),
        ("    time: 10 min\n", "", "4:5", "this leg lacks `time`", ""),
        (
            "time: 10 min",
            "time: 11 days",
            "5:11",
            "expected a leg of at most 10 days",
            "split the plan",
        ),
        (
            "time: 10 min",
            "time: soon",
            "5:11",
            "expected a number with its unit",
            "",
        ),
        (
            "flow: 15 L/min",
            "flow: 200 L/min",
            "6:11",
            "expected a flow from 0 to 120 L/min",
            "",
        ),
        (
            "flow: 15 L/min",
            "device: mask",
            "6:13",
            "expected a device of the rulebook, found `mask`",
            "the rulebook has",
        ),
        (
            "flow: 15 L/min",
            "device: non-rebreather",
            "6:13",
            "found a device without either",
            "`flow: 2 L/min`",
        ),
        (
            "    flow: 15 L/min\n",
            "",
            "4:5",
            "found nothing that uses gas",
            "`flow: 2 L/min`",
        ),
        (
            "flow: 15 L/min",
            "flow: 0 L/min",
            "4:3",
            "expected a leg on which gas flows",
            "`drive-gas`",
        ),
        (
            "flow: 15 L/min",
            "flow: 1 L/min\n    patients: {flow: 2 L/min}",
            "6:11",
            "found both on one leg",
            "under `patients`",
        ),
        (
            "flow: 15 L/min",
            "temperature: 61 °C\n    flow: 1 L/min",
            "6:18",
            "from -40 to 60 °C, found 61 °C",
            "",
        ),
        (
            "  - {size: E, pressure: 2000 psi}",
            "  []",
            "2:3",
            "found an empty list",
            "",
        ),
        (
            "name: road",
            "name: road # dark",
            "4:16",
            "found `#` after a value",
            "",
        ),
        ("name: road", "name: ro\u{202E}ad", "4:13", "U+202E", ""),
        (
            "legs:",
            "legs: x\nlegs:",
            "4:1",
            "found `legs` a second time",
            "keep one",
        ),
    ] {
        assert_eq!(GOOD.matches(old).count(), 1, "{old}");
        let said = said(&GOOD.replace(old, new));
        assert!(
            said.contains(&format!("plan.yaml:{place}\n")),
            "{new}: {place}\n{said}"
        );
        assert!(said.contains(words), "{new}\n{said}");
        assert!(said.contains(hint), "{new}\n{said}");
    }
}

#[test]
fn all_mistakes_come_at_once_and_in_order() {
    let bad = GOOD
        .replace("size: E", "size: EE")
        .replace("2000 psi", "2000 min")
        .replace("10 min", "10 L")
        .replace("15 L/min", "lots");
    let rejected = transport::read(&RULEBOOK, "plan.yaml", &bad).unwrap_err();
    assert_eq!(rejected.diagnostics.len(), 4, "{}", rejected.render(false));
    let starts: Vec<usize> = rejected
        .diagnostics
        .iter()
        .map(|found| found.span.unwrap().start)
        .collect();
    assert!(starts.is_sorted());
}

#[test]
fn empty_broken_and_endless_plans_are_told() {
    assert!(said("").contains("expected a plan, found nothing"));
    assert!(said("# only a remark\n").contains("expected a plan, found nothing"));
    assert!(said("cylinders: [").contains("plan.yaml:1:"));
    assert!(said("- a\n- b\n").contains("expected the keys of a plan, found a list"));
    assert!(said("legs: &a\n  - *a\n").contains("anchor"));
    let many = "  - {name: a, time: 1 min, flow: 1 L/min}\n".repeat(101);
    let text = format!("cylinders: {{size: E, pressure: 2000 psi}}\nlegs:\n{many}");
    assert!(said(&text).contains("expected at most 100 legs, found 101"));
    let text = GOOD.replace(
        "psi}",
        "psi, count: 60}\n  - {size: E, pressure: 1 psi, count: 60}",
    );
    assert!(said(&text).contains("expected at most 100 cylinders, found 120"));
    assert!(said(&"[".repeat(10_000)).contains("plan.yaml:1:"));
}

/// Found by fuzzing: such a plan was rejected with no error at all.
#[test]
fn what_is_undecided_in_a_plan_is_told() {
    for (text, place, hint) in [
        (
            "undecided".to_owned(),
            "1:1",
            "write the value in place of `undecided`",
        ),
        (
            GOOD.replace("10 min", "undecided (how long the road takes)"),
            "5:11",
            "write in its place: how long the road takes",
        ),
        (
            GOOD.replace("15 L/min", "undecided"),
            "6:11",
            "write the value in place of `undecided`",
        ),
        (
            GOOD.replace("2000 psi", "undecided"),
            "2:25",
            "write the value in place of `undecided`",
        ),
    ] {
        let said = said(&text);
        assert!(
            said.contains("to decide[undecided]: this value is not decided yet"),
            "{said}"
        );
        assert!(said.contains(&format!("plan.yaml:{place}\n")), "{place}: {said}");
        assert!(said.contains(hint), "{said}");
        assert_eq!(said.matches("[undecided]").count(), 1, "{said}");
        assert!(!said.contains("error["), "{said}");
    }
}
