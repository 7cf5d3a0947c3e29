//! The demonstration's hazards: the compiled-in functions answer as the interpreter does, here and in another crate.

use oxyfolio::{
    RULEBOOK,
    book::{Fact, Hazard, HazardId, Kind as RuleKind, List},
    check::{Finding, Setup, check_setup},
    compile::guard::{Vocabulary, print, read},
    guard::{Evaluator, Facts, Observed, Row, Truth},
    hazard,
    lookup::Lookup,
    quantity::{Flow, Percent, Range},
};
use proptest::{prelude::*, sample::select};

use crate::{
    amount::{Kind, amount},
    random::config,
    state::state,
    world::names,
};

/// The whole generated file, taken in by this crate as any other could.
#[allow(dead_code, missing_docs)]
mod another_crate {
    include!(concat!(env!("OUT_DIR"), "/rulebook.rs"));
}

fn ids() -> impl Iterator<Item = HazardId> {
    (0..u16::try_from(RULEBOOK.hazards.len()).unwrap()).map(HazardId)
}

proptest! {
    #![proptest_config(config())]

    #[test]
    fn emitted_and_interpreted_hazards_agree(
        state in state(RULEBOOK.devices.len(), RULEBOOK.groups.len(), RULEBOOK.conditions.len())
    ) {
        let observed: Observed = state.observed();
        for id in ids() {
            let interpreted = (&RULEBOOK).evaluate(id, &observed);
            let text = &RULEBOOK.hazard(id).unwrap().never.text;
            prop_assert_eq!(hazard::Guards.evaluate(id, &observed), interpreted, "{}", text);
            prop_assert_eq!(another_crate::hazard::Guards.evaluate(id, &observed), interpreted, "{}", text);
        }
    }

    #[test]
    fn a_set_up_is_checked_alike_by_both(
        device in 0..RULEBOOK.devices.len(),
        group in proptest::option::of(0..RULEBOOK.groups.len()),
        flow in amount(Kind::Flow),
        pressure in proptest::option::of(amount(Kind::Pressure)),
        spo2 in proptest::option::of(amount(Kind::Share)),
        asked in any::<bool>(),
        cylinder in select(&[oxyfolio::cylinder::D, oxyfolio::cylinder::E][..]),
    ) {
        let id = |index: usize| u16::try_from(index).unwrap();
        let mut setup = Setup::new(oxyfolio::book::DeviceId(id(device)), flow.read()).cylinder(cylinder);
        if let Some(group) = group {
            setup = setup.group(oxyfolio::book::GroupId(id(group)));
        }
        if let Some(pressure) = pressure {
            setup = setup.pressure(pressure.read());
        }
        if let Some(spo2) = spo2 {
            setup = setup.spo2(spo2.read());
        }
        if asked {
            setup = setup.conditions(&[]);
        }
        let (mut interpreted, mut emitted) = (Vec::new(), Vec::new());
        let unseen = check_setup(&RULEBOOK, &setup, |finding| interpreted.push(finding.to_string())).unwrap();
        let same = check_setup(hazard::Guards, &setup, |finding| emitted.push(finding.to_string())).unwrap();
        prop_assert_eq!(&interpreted, &emitted);
        let lookup = Lookup::new(&RULEBOOK);
        let mut looked_up = Vec::new();
        check_setup(&lookup, &setup, |finding| looked_up.push(finding.to_string())).unwrap();
        prop_assert_eq!(&interpreted, &looked_up);
        prop_assert!(unseen.hazards().eq(same.hazards()));
    }
}

/// A share may be 300 %, a saturation may not: by what can't be one nothing is judged, by no evaluator.
#[test]
fn a_saturation_above_100_percent_was_let_pass() {
    let target = Some(Range::between(Percent::tabled(94.0), Percent::tabled(98.0)));
    let seen = |spo2: Option<f64>| Observed {
        spo2: spo2.map(|percent| Percent::new(percent).unwrap()),
        target,
        facts: Facts::NONE.with(Fact::DeviceOnPatient, true),
        ..Observed::default()
    };
    let lookup = Lookup::new(&RULEBOOK);
    let unknown = seen(None);
    assert_eq!(
        (&RULEBOOK).evaluate(hazard::ABOVE_TARGET, &seen(Some(99.0))),
        Truth::True
    );
    for above in [100.5, 150.0, 300.0] {
        let observed = seen(Some(above));
        for evaluated in [
            (&RULEBOOK).broken(&observed),
            hazard::Guards.broken(&observed),
            hazard::Guards.broken_row(&Row::from(&observed)),
            lookup.broken(&observed),
        ] {
            assert_eq!(evaluated, (&RULEBOOK).broken(&unknown), "{above} %");
        }
        for id in ids() {
            let answer = hazard::Guards.evaluate(id, &unknown);
            assert_eq!(hazard::Guards.evaluate(id, &observed), answer, "{above} %");
        }
    }
}

/// Only a table written by hand has so many; none of its hazards is passed over all the same.
#[test]
fn more_hazards_than_a_set_holds_are_all_checked() {
    let mut many = RULEBOOK.clone();
    let again: Vec<Hazard> = RULEBOOK.hazards.iter().cycle().take(300).cloned().collect();
    many.hazards = List::from(again.clone());
    let setup = Setup::new(oxyfolio::device::NON_REBREATHER, Flow::ZERO);
    let (mut of_one, mut of_many) = (Vec::new(), Vec::new());
    let hazard =
        |finding: Finding<'_>| (finding.kind == RuleKind::Hazard).then(|| finding.rule.id().to_owned());
    let rest = check_setup(&RULEBOOK, &setup, |finding| of_one.extend(hazard(finding))).unwrap();
    let rest_of_many = check_setup(&many, &setup, |finding| of_many.extend(hazard(finding))).unwrap();
    let names = |among: &[String]| -> Vec<String> {
        let all = again.iter().map(|hazard| hazard.rule.id.to_string());
        all.filter(|id| among.contains(id)).collect()
    };
    let rest: Vec<String> = rest.hazards().map(|hazard| hazard.rule.id().to_owned()).collect();
    assert!(!of_one.is_empty() && !rest.is_empty());
    assert_eq!(of_many, names(&of_one));
    assert!(
        rest_of_many
            .hazards()
            .map(|hazard| hazard.rule.id().to_owned())
            .eq(names(&rest))
    );
}

#[test]
fn every_guard_of_the_demonstration_is_printed_as_it_was_written() {
    let names = names(&RULEBOOK);
    let vocabulary = Vocabulary {
        names: &names,
        policies: &RULEBOOK.policies.all,
    };
    assert!(ids().count() > 20);
    for hazard in &RULEBOOK.hazards {
        let printed = print(&hazard.never.ops, &RULEBOOK).unwrap();
        assert_eq!(read(&printed, &vocabulary).unwrap().ops, hazard.never.ops);
        assert_eq!(printed, *hazard.never.text);
    }
}

#[test]
fn the_same_identifier_names_the_same_hazard_in_both_crates() {
    assert_eq!(
        another_crate::hazard::NO_FLOW_ON_PATIENT,
        hazard::NO_FLOW_ON_PATIENT
    );
    assert_eq!(another_crate::RULEBOOK, RULEBOOK);
}
