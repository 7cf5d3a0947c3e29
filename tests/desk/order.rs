//! Orders of steps: the diagram, its equivalent in words, and a walk through one that isn't safe.

use oxyfolio::compile::{folder, proof};

use super::{common, support::open};

#[test]
fn the_diagram_has_every_step_and_the_words_say_the_same() {
    let desk = open(&common::rules());
    let book = folder::load(&common::rules()).unwrap().book;
    for procedure in &*book.procedures {
        let page = desk.page(&format!("/order/{}", procedure.rule.id));
        assert_eq!(page.matches("<rect ").count(), procedure.steps.len());
        assert!(page.contains("each is safe"));
        for (index, step) in procedure.steps.iter().enumerate() {
            let words = page.split("id=\"in-words\"").nth(1).unwrap();
            let item = words.split("<li>").nth(index + 1).unwrap();
            for earlier in step.after.iter() {
                let number = (earlier.index() + 1).to_string();
                let after = item
                    .split("after step")
                    .nth(1)
                    .unwrap()
                    .split([';', '<'])
                    .next()
                    .unwrap();
                assert!(
                    after.split([' ', ',', 's']).any(|word| word == number),
                    "{} {after}",
                    step.id
                );
            }
        }
    }
}

#[test]
fn an_order_that_is_not_safe_is_walked_to_the_step_that_does_harm() {
    let rules = common::copy_of_rules();
    common::edit(
        rules.path(),
        "09-stopping-and-shutting-down.md",
        "after: [close, flames]",
        "after: device-off",
    );
    let desk = open(rules.path());
    let rejected = folder::load(rules.path()).unwrap_err();
    let book = rejected.unusable.as_ref().unwrap();
    let all = proof::unsafe_orders(book);
    let shown = all.iter().find(|one| one.begun.is_some()).unwrap();
    let procedure = book.procedure(shown.procedure).unwrap();
    let page = desk.page("/order/shut-down");
    for step in &shown.steps {
        let step = &procedure.steps[step.index()];
        assert!(page.contains(&*step.say), "{}", step.say);
    }
    assert!(
        page.contains("the valve is open: bleeding would empty the cylinder"),
        "{page}"
    );
    assert!(page.contains("The equipment after step"));
    // The steps before it were done, the last one is marked as the wrong one.
    assert_eq!(page.matches("done\"").count(), shown.steps.len() - 1);
    assert_eq!(page.matches("now wrong").count(), 1);
    // A book that is sound has nothing to walk.
    common::edit(
        rules.path(),
        "09-stopping-and-shutting-down.md",
        "after: device-off\n    critical: yes\n    prevents: [left-pressurised, regulator-off-under-pressure]",
        "after: [close, flames]\n    critical: yes\n    prevents: [left-pressurised, regulator-off-under-pressure]",
    );
    desk.wait_for("/order/shut-down", |page| page.contains("each is safe"));
}

#[test]
fn a_walk_can_begin_at_any_step() {
    let rules = common::copy_of_rules();
    common::edit(
        rules.path(),
        "09-stopping-and-shutting-down.md",
        "after: [close, flames]",
        "after: device-off",
    );
    let desk = open(rules.path());
    let page = desk.page("/order/shut-down?walk=1&at=1");
    assert!(page.contains("Step 1 of "));
    assert!(page.contains("id=\"on\"") && !page.contains("id=\"back\""));
    for odd in ["walk=0&at=0", "walk=99&at=99", "walk=x&at=-1"] {
        let page = desk.page(&format!("/order/shut-down?{odd}"));
        assert!(page.contains(" of "), "{odd}");
    }
}
