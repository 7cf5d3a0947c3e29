//! One edit of each kind, and what is told of it.

use oxyfolio::compare::Asked;

use crate::books::{Edit, compared, edition, lines};

const RESERVOIR: &str = "flow: 10 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %";

/// Exactly these lines and no others.
#[track_caller]
fn told(edits: &[Edit<'_>], expected: &[&str]) {
    assert_eq!(lines(edits), expected);
}

#[test]
fn nothing() {
    let comparison = compared(&[]);
    assert!(comparison.is_empty());
    assert_eq!(comparison.grid.setups, 5_000);
}

#[test]
fn prose_that_is_no_reason_changes_nothing() {
    let edits = [("because we spend time on", "x")];
    assert!(
        !oxyfolio::CHAPTERS
            .iter()
            .any(|(_, text)| text.contains(edits[0].0))
    );
    assert!(
        compared(&[(
            "So this book spends time on small things.",
            "So this book looks at small things."
        )])
        .is_empty()
    );
}

#[test]
fn limits_of_a_device() {
    told(
        &[(
            RESERVOIR,
            "flow: 12 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %",
        )],
        // Of the ladders two begin at 10 L/min, and can't be read any more.
        &["device non-rebreather: least flow: 10 L/min → 12 L/min (stricter)"],
    );
    told(
        &[(
            RESERVOIR,
            "flow: 8 to 20 L/min\nusual: 12 L/min\noxygen: 60 to 95 %",
        )],
        &[
            "device non-rebreather: least flow: 10 L/min → 8 L/min (looser)",
            "device non-rebreather: most flow: 15 L/min → 20 L/min (looser)",
            "device non-rebreather: usual flow: 15 L/min → 12 L/min",
        ],
    );
    told(
        &[(
            "flow-for:\n  child: 1 to 4 L/min",
            "flow-for:\n  child: 1 to 3 L/min",
        )],
        &["device nasal-cannula: most flow for child: 4 L/min → 3 L/min (stricter)"],
    );
    told(
        &[(
            "usual: 15 L/min\noxygen: 60 to 95 %\nfits: [adult, child, infant]",
            "usual: 15 L/min\noxygen: 60 to 95 %\nfits: [adult, child]",
        )],
        &["device non-rebreather: group it fits removed: infant (stricter)"],
    );
}

#[test]
fn a_quoted_value_is_told_once() {
    // Steps and remedies quote the flow that is usually set; only the device is told.
    let edits = [(
        RESERVOIR,
        "flow: 10 to 15 L/min\nusual: 12 L/min\noxygen: 60 to 95 %",
    )];
    told(
        &edits,
        &["device non-rebreather: usual flow: 15 L/min → 12 L/min"],
    );
    let (old, new) = (edition(&[]), edition(&edits));
    let step = |edition: &oxyfolio::compile::edition::Edition| {
        let procedure = edition.book.find_procedure("apply-reservoir-mask").unwrap();
        let steps = &edition.book.procedure(procedure).unwrap().steps;
        steps
            .iter()
            .find(|step| &*step.id == "set")
            .unwrap()
            .say
            .to_string()
    };
    assert_ne!(step(&old), step(&new), "the step does quote it");
    // A wording that changed beside it is told, with the value in it.
    let reworded = (
        "say: \"Set the flow: {non-rebreather.usual-flow}, never",
        "say: \"Turn the flow to {non-rebreather.usual-flow}, never",
    );
    told(
        &[edits[0], reworded],
        &[
            "device non-rebreather: usual flow: 15 L/min → 12 L/min",
            "procedure apply-reservoir-mask: step `set`, what it says: Set the flow: 15 L/min, never below 10 L/min. → \
             Turn the flow to 12 L/min, never below 10 L/min.",
        ],
    );
}

#[test]
fn policies() {
    for (old, new, expected) in [
        (
            "value: 200 psi\n",
            "value: 250 psi\n",
            "residual-pressure: value: 200 psi → 250 psi (stricter)",
        ),
        (
            "value: 500 psi\n",
            "value: 400 psi\n",
            "change-over-pressure: value: 500 psi → 400 psi (looser)",
        ),
        (
            "value: 50 %\n",
            "value: 25 %\n",
            "planning-margin: value: 50 % → 25 % (looser)",
        ),
        // Only a hazard asks for it: it warns when so many minutes or fewer are left.
        (
            "id: call-ahead-time\nname: Call for more oxygen\nvalue: 15 min\n",
            "id: call-ahead-time\nname: Call for more oxygen\nvalue: 20 min\n",
            "call-ahead-time: value: 15 min → 20 min (stricter)",
        ),
    ] {
        let edits = [(old, new)];
        assert_eq!(lines(&edits), [format!("policy {expected}")]);
    }
}

#[test]
fn targets() {
    told(
        &[(
            "groups: [adult]\nsaturation: 94 to 98 %\nstart: nasal-cannula at 2 L/min\nurgent-below: 85 %\nurgent-start: non-rebreather at 15 L/min\nladder:\n  - nasal-cannula at 2 L/min\n",
            "groups: [adult]\nsaturation: 92 to 96 %\nstart: nasal-cannula at 4 L/min\nurgent-below: 88 %\nurgent-start: non-rebreather at 15 L/min\nladder:\n",
        )],
        &[
            "target adult-general: least saturation: 94 % → 92 % (looser)",
            "target adult-general: most saturation: 98 % → 96 % (stricter)",
            "target adult-general: start: nasal-cannula at 2 L/min → nasal-cannula at 4 L/min",
            "target adult-general: urgent below: 85 % → 88 % (stricter)",
            "target adult-general: rung removed: nasal-cannula at 2 L/min",
        ],
    );
}

#[test]
fn cylinders() {
    let comparison = compared(&[(
        "water-capacity: 2.2 L\n  contents: 350 L at 2200 psi\n  service-pressure: 2015 psi\n  factor: 0.16 L/psi",
        "water-capacity: 2.15 L\n  contents: 350 L at 2200 psi\n  service-pressure: 2015 psi\n  factor: 0.155 L/psi",
    )]);
    let told: Vec<String> = comparison.changes.iter().map(ToString::to_string).collect();
    assert_eq!(
        told,
        [
            "water capacity: 2.2 L → 2.15 L (stricter)",
            "factor: 0.16 L/psi → 0.155 L/psi (stricter)"
        ]
    );
    let [minutes] = comparison.durations.as_slice() else {
        panic!("{:?}", comparison.durations)
    };
    assert_eq!((&*minutes.cylinder, minutes.longer), ("d", 0));
    assert!(minutes.shorter > 20);
    let most = &minutes.most;
    assert!(most.is_minutes + 1 < most.was_minutes, "{most:?}");
}

#[test]
fn steps() {
    let place = "    after: [fill, explain, gauge]";
    // Freed: the mask may go on before the gauge was read.
    told(
        &[(place, "    after: [fill, explain]")],
        &[
            "procedure apply-reservoir-mask: order of `gauge` and `place`: `gauge` before `place` → any order (looser)",
        ],
    );
    told(
        &[(
            "  - id: connect\n    do: connect-device\n    say: \"Push the tubing firmly onto the outlet.\"\n    why: \"A loose tube gives the oxygen to the room.\"\n  - id: gauge\n    do: read-gauge\n    say: \"Read the gauge.\"\n    why: \"You are about to promise this patient oxygen.\"\n    critical: yes\n    prevents: nearly-empty\n  - id: set\n    do: set-flow\n    say: \"Set the flow: {",
            "  - id: gauge\n    do: read-gauge\n    say: \"Read the gauge.\"\n    why: \"You are about to promise this patient oxygen.\"\n    prevents: nearly-empty\n  - id: connect\n    do: connect-device\n    say: \"Push the tubing firmly onto the outlet.\"\n    why: \"A loose tube gives the oxygen to the room.\"\n    after: gauge\n  - id: set\n    do: set-flow\n    say: \"Set the flow: {",
        )],
        &[
            "procedure apply-reservoir-mask: step `gauge`, critical: yes → no (looser)",
            "procedure apply-reservoir-mask: order of `connect` and `gauge`: any order → `gauge` before `connect` (stricter)",
            "procedure apply-reservoir-mask: place of `gauge`: listed after `connect` → listed after `explain`",
        ],
    );
    let explain = "  - id: explain\n    do: explain-to-patient\n    say: \"Tell the patient what is coming and how it will feel.\"\n    why: \"Cold air in the nose surprises people.\"\n";
    told(
        &[
            (explain, ""),
            ("after: [set, nose, explain, gauge]", "after: [set, nose, gauge]"),
        ],
        &[
            "procedure apply-cannula: step `explain` removed: Tell the patient what is coming and how it will feel.",
        ],
    );
}

#[test]
fn hazards() {
    told(
        &[(
            "never: \"flame near\"\nseverity: stop",
            "never: \"flame near\"\nseverity: warn",
        )],
        &["hazard flame-near: severity: stop → warn (looser)"],
    );
    told(
        &[(
            "never: \"minutes left < minutes wanted\"",
            "never: \"minutes left <= minutes wanted\"",
        )],
        &["hazard minutes-too-few: never: minutes left < minutes wanted → minutes left <= minutes wanted"],
    );
    told(
        &[(
            "do: \"Put it out or move away. If it cannot",
            "do: \"Put it out, or move away. If it cannot",
        )],
        &[
            "hazard flame-near: what to do: Put it out or move away. If it cannot be done, close the cylinder and leave. → \
             Put it out, or move away. If it cannot be done, close the cylinder and leave.",
        ],
    );
}

#[test]
fn a_guard_that_differs_only_in_its_spacing_is_the_same() {
    told(
        &[(
            "never: \"minutes left < minutes wanted\"",
            "never: \"minutes  left<minutes wanted\"",
        )],
        &[],
    );
}

#[test]
fn a_rule_that_is_added_or_removed() {
    let of_grease =
        "do: \"Stop. Change gloves, clean your hands. Tag any greasy part and do not use it.\"\n```\n";
    let spark = "\nA spark is enough.\n\n```yaml hazard\nid: spark-near\nname: A spark\nnever: \"flame near\"\nseverity: warn\nsay: \"A spark.\"\ndo: \"Away.\"\n```\n";
    let with = format!("{of_grease}{spark}");
    let edits = [(of_grease, with.as_str())];
    told(
        &edits,
        &["hazard spark-near: rule added: warn: A spark. (stricter)"],
    );
    let back = oxyfolio::compare::compare_over(&edition(&edits), &edition(&[]), 2_000);
    let told: Vec<String> = back.changes.iter().map(crate::books::line).collect();
    assert_eq!(told, ["hazard spark-near: rule removed: warn: A spark. (looser)"]);
    // The set-ups feel it too.
    let goes = back
        .grid
        .kinds
        .iter()
        .find(|kind| kind.id == "spark-near")
        .unwrap();
    assert_eq!(goes.example.seen.as_deref(), Some("flame near"));
}

#[test]
fn an_edition_that_no_longer_passes_is_compared_as_far_as_it_can_be_read() {
    // A device that can't be read, and a card that names a device nobody knows.
    let old = edition(&[(RESERVOIR, "flow: 10 to 15 L\nusual: 15 L/min\noxygen: 60 to 95 %")]);
    assert!(
        old.problems
            .iter()
            .any(|problem| problem.message.contains("L/min")),
        "{:?}",
        old.problems
    );
    let left_out: Vec<_> = old
        .left_out
        .iter()
        .filter_map(|rule| rule.id.as_deref())
        .collect();
    assert_eq!(left_out[0], "non-rebreather");
    assert!(
        left_out.contains(&"adult-general") && left_out.contains(&"apply-reservoir-mask"),
        "{left_out:?}"
    );
    let new = edition(&[("value: 200 psi\n", "value: 250 psi\n")]);
    let comparison = oxyfolio::compare::compare_over(&old, &new, 500);
    assert!(comparison.old.errors > 0 && comparison.old.left_out.len() == left_out.len());
    // What could not be read is not told as new; what could be is compared.
    let told: Vec<String> = comparison.changes.iter().map(crate::books::line).collect();
    assert_eq!(
        told,
        ["policy residual-pressure: value: 200 psi → 250 psi (stricter)"]
    );
}

#[test]
fn cases_that_come_out_otherwise() {
    let comparison = compared(&[(
        RESERVOIR,
        "flow: 10.5 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %",
    )]);
    let case = comparison
        .cases
        .iter()
        .find(|case| case.id == "non-rebreather-at-10")
        .unwrap();
    assert_eq!(case.goes, Vec::<String>::new());
    assert_eq!(
        case.appears,
        ["stop device non-rebreather", "stop hazard reservoir-flow-too-low"]
    );
    assert!(!case.minutes_only);
    // Steps are asked too: without its `after`, what was too early is not.
    let steps = compared(&[("    after: [fill, explain, gauge]", "    after: [fill, explain]")]);
    assert!(
        steps
            .cases
            .iter()
            .all(|case| case.goes.iter().any(|goes| goes.contains("too early")))
    );
    assert!(!steps.cases.is_empty());
}

/// Both books are asked every case of both editions; told is whose text that was.
#[test]
fn a_case_is_told_with_whose_text_was_asked() {
    const LIMIT: &str = "flow: 10.5 to 15 L/min\nusual: 15 L/min\noxygen: 60 to 95 %";
    let asked = |comparison: &oxyfolio::compare::Comparison| -> Vec<(String, Asked)> {
        let cases = comparison.cases.iter();
        let about = cases.filter(|case| case.id.starts_with("non-rebreather-at-10"));
        about.map(|case| (case.id.clone(), case.asked)).collect()
    };
    let case = |id: &str, asked| (id.to_owned(), asked);
    let id = "non-rebreather-at-10";
    // The limit alone: the case stands in both editions as it is.
    assert_eq!(asked(&compared(&[(RESERVOIR, LIMIT)])), [case(id, Asked::InBoth)]);
    let old = "- id: non-rebreather-at-10\n  setup: {device: non-rebreather, flow: 10 L/min, group: adult}";
    // The case moved with the limit: its old text comes out otherwise; the new text, at 10.5, does not.
    let moved = old.replace("flow: 10 L/min", "flow: 10.5 L/min");
    assert_eq!(
        asked(&compared(&[(RESERVOIR, LIMIT), (old, &moved)])),
        [case(id, Asked::AsItWas)]
    );
    // Moved to another flow below the new limit, both texts do.
    let moved = old.replace("flow: 10 L/min", "flow: 10.2 L/min");
    assert_eq!(
        asked(&compared(&[(RESERVOIR, LIMIT), (old, &moved)])),
        [case(id, Asked::AsItIs), case(id, Asked::AsItWas)]
    );
    // By another name it is two cases, each in one edition.
    let renamed = old.replace("-at-10", "-at-10-again");
    let comparison = compared(&[(RESERVOIR, LIMIT), (old, &renamed)]);
    assert_eq!(
        asked(&comparison),
        [
            case("non-rebreather-at-10-again", Asked::InNewOnly),
            case(id, Asked::InOldOnly)
        ]
    );
    let words = comparison.cases[0].words();
    assert_eq!(
        words,
        "only the new book says stop device non-rebreather, \
         stop hazard reservoir-flow-too-low"
    );
}

#[test]
fn a_reason_that_was_not_changed_with_its_number_is_to_be_read_again() {
    let reasons = |edits: &[crate::books::Edit<'_>]| -> Vec<(String, Vec<String>)> {
        let comparison = compared(edits);
        let reasons = comparison.reasons.into_iter();
        reasons.map(|reason| (reason.id, reason.still_says)).collect()
    };
    let margin = ("value: 50 %\n", "value: 75 %\n");
    assert_eq!(reasons(&[margin]), [("planning-margin".to_owned(), vec![])]);
    let prose = "So we plan for half as much again as the";
    let said = prose.replace("half as much again as", "50 % more than");
    // In both editions the reason says 50 %, and the limit moves away from it.
    let old = edition(&[(prose, &said)]);
    let new = edition(&[(prose, &said), margin]);
    let comparison = oxyfolio::compare::compare_over(&old, &new, 300);
    assert_eq!(comparison.reasons[0].still_says, ["50 %"]);
    assert_eq!(
        comparison.reasons[0].words(),
        "the reason above it was not changed: read it, does it still hold? It still says 50 %."
    );
    // Read and put right: nothing to remind of.
    let read = prose.replace("half as much again as", "three quarters more than");
    assert_eq!(reasons(&[margin, (prose, &read)]), []);
    // A name and a sentence are no numbers.
    assert_eq!(
        reasons(&[("name: Residual pressure\n", "name: Pressure left over\n")]),
        []
    );
}

#[test]
fn what_can_no_longer_be_judged_is_told_in_plain_words() {
    use oxyfolio::compare::Verdict;
    let words = [
        Verdict::InOrder,
        Verdict::NotChecked,
        Verdict::Warning,
        Verdict::Stop,
    ]
    .map(Verdict::words);
    assert_eq!(words, ["in order", "could not be judged", "warning", "stop"]);
}
