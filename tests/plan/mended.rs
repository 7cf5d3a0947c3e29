//! Plans with a mistake, mended as the hint says.

use oxyfolio::{RULEBOOK, compile::transport};

const HEAD: &str = "cylinders:\n  - {size: E, pressure: 2000 psi}\nlegs:\n";

/// The code, the plan, a part of the hint, and the plan of whoever followed it.
fn mended() -> Vec<(&'static str, String, &'static str, String)> {
    let leg = |keys: &str| format!("{HEAD}  - {{name: road, time: 10 min, {keys}}}\n");
    let stock = |size: &str| {
        format!("cylinders:\n  - {{{size}}}\nlegs:\n  - {{name: road, time: 10 min, flow: 2 L/min}}\n")
    };
    let legs = |count: usize| HEAD.to_owned() + &"  - {name: a, time: 1 min, flow: 1 L/min}\n".repeat(count);
    vec![
        (
            "empty-plan",
            String::new(),
            "write `cylinders:` and `legs:`, each with a list",
            leg("flow: 2 L/min"),
        ),
        (
            "missing-flow",
            leg("device: nasal-cannula"),
            "write `flow: 2 L/min`",
            leg("device: nasal-cannula, flow: 2 L/min"),
        ),
        (
            "no-flow",
            leg("flow: 0 L/min"),
            "write the `flow` or the `drive-gas` of each leg",
            leg("flow: 0 L/min, drive-gas: 8 L/min"),
        ),
        (
            "two-ways",
            leg("device: nasal-cannula, flow: 1 L/min, patients: [{flow: 2 L/min}]"),
            "write each patient's device and flow under `patients`",
            leg("patients: [{device: nasal-cannula, flow: 1 L/min}, {flow: 2 L/min}]"),
        ),
        (
            "not-a-count",
            stock("size: E, pressure: 2000 psi, count: two"),
            "`count: 2`",
            stock("size: E, pressure: 2000 psi, count: 2"),
        ),
        (
            "too-many",
            stock("size: E, pressure: 2000 psi, count: 60}\n  - {size: E, pressure: 2000 psi, count: 60"),
            "split the plan",
            stock("size: E, pressure: 2000 psi, count: 60"),
        ),
        ("too-many", legs(101), "split the plan", legs(51)),
        (
            "out-of-bounds",
            leg("flow: 2 L/min").replace("10 min", "11 days"),
            "split the plan where cylinders are exchanged",
            leg("flow: 2 L/min").replace("10 min", "6 days"),
        ),
        (
            "unknown-name",
            stock("size: jumbo-c, pressure: 2000 psi"),
            "did you mean `jumbo-d`?",
            stock("size: jumbo-d, pressure: 2000 psi"),
        ),
        (
            "unknown-name",
            leg("device: mask, flow: 8 L/min"),
            "the rulebook has `nasal-cannula`, ",
            leg("device: nasal-cannula, flow: 2 L/min"),
        ),
    ]
}

#[test]
fn a_plan_is_mended_as_its_hint_says() {
    for (code, plan, hint, better) in mended() {
        let rejected = transport::read(&RULEBOOK, "plan.yaml", &plan).unwrap_err();
        let [only] = rejected.diagnostics.as_slice() else {
            panic!("{plan}\n{}", rejected.render(false));
        };
        assert_eq!(only.code, code, "{plan}");
        assert!(only.hints.join(" ").contains(hint), "{:?}", only.hints);
        if let Err(still) = transport::read(&RULEBOOK, "plan.yaml", &better) {
            panic!("{better}\n{}", still.render(false));
        }
    }
}
