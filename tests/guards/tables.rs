//! What a check asks of the compiled-in tables and of the whole book is answered alike.

use oxyfolio::{
    RULEBOOK, TABLES,
    book::{
        CheckedPolicy, ConditionId, CylinderId, DeviceId, GroupId, HazardId, List, Rules, Subject, Tables,
        TargetId, Text, tables::Span,
    },
    check::{Finding, NotJudged, Setup, check_setup},
    compile::emit,
    guard::Evaluator,
    hazard,
    quantity::{Flow, Percent, Pressure, Temperature, Time},
};
use proptest::{option, prelude::*, sample::select};

use crate::{random::config, world::BOOK};

/// Every rule that can be cited, and of each kind one of another book.
fn subjects() -> impl Iterator<Item = Subject> {
    let up_to = |count: usize| 0..=u16::try_from(count).unwrap();
    [Subject::Agency]
        .into_iter()
        .chain(CheckedPolicy::ALL.map(Subject::Policy))
        .chain(up_to(RULEBOOK.devices.len()).map(|at| Subject::Device(DeviceId(at))))
        .chain(up_to(RULEBOOK.cylinders.len()).map(|at| Subject::Cylinder(CylinderId(at))))
        .chain(up_to(RULEBOOK.targets.len()).map(|at| Subject::Target(TargetId(at))))
        .chain(up_to(RULEBOOK.hazards.len()).map(|at| Subject::Hazard(HazardId(at))))
}

#[test]
fn every_rule_is_cited_alike() {
    for subject in subjects() {
        let (whole, tabled) = ((&RULEBOOK).cite(subject), (&TABLES).cite(subject));
        assert_eq!(whole.id(), tabled.id(), "{subject:?}");
        assert_eq!(whole.name(), tabled.name(), "{subject:?}");
        assert_eq!(whole.place(), tabled.place(), "{subject:?}");
        assert_eq!(whole.rationale(), tabled.rationale(), "{subject:?}");
        assert_eq!(whole, tabled, "{subject:?}");
    }
    let beyond = Subject::Device(DeviceId(u16::MAX));
    assert_eq!((&TABLES).cite(beyond).id(), "agency");
    assert_eq!(
        (TABLES.edition(), TABLES.digest()),
        (&*RULEBOOK.agency.edition, &*RULEBOOK.digest)
    );
    assert_eq!(TABLES.short_digest(), &*RULEBOOK.short_digest);
}

#[test]
fn every_name_is_found_alike() {
    let names = |rules: &[&str]| -> Vec<String> {
        let names = rules.iter().map(|&name| name.to_owned());
        names.chain(["agency".to_owned(), String::new()]).collect()
    };
    let all: Vec<&str> = subjects().map(|subject| (&RULEBOOK).cite(subject).id()).collect();
    let groups: Vec<&str> = RULEBOOK.groups.iter().map(|group| &*group.rule.id).collect();
    let conditions: Vec<&str> = RULEBOOK
        .conditions
        .iter()
        .map(|condition| &*condition.id)
        .collect();
    for name in names(&[all, groups, conditions].concat()) {
        assert_eq!(TABLES.find_device(&name), RULEBOOK.find_device(&name), "{name}");
        assert_eq!(
            TABLES.find_cylinder(&name),
            RULEBOOK.find_cylinder(&name),
            "{name}"
        );
        assert_eq!(TABLES.find_group(&name), RULEBOOK.find_group(&name), "{name}");
        assert_eq!(
            TABLES.find_condition(&name),
            RULEBOOK.find_condition(&name),
            "{name}"
        );
    }
}

#[test]
fn what_is_compiled_in_is_what_is_gathered_today() {
    assert_eq!(TABLES, emit::tables(&RULEBOOK));
    assert_ne!(TABLES, emit::tables(&BOOK));
}

/// Only a table written by hand points past its text.
#[test]
fn a_table_that_points_nowhere_is_empty_and_no_panic() {
    let mut broken: Tables = TABLES.clone();
    broken.text = Text::from("ä".to_owned());
    let names = broken.groups.iter().copied();
    let nowhere = [Span(0, 1), Span(1, 1), Span(2, 1), Span(u32::MAX, u32::MAX)];
    let groups = names.zip(nowhere).map(|(mut row, span)| {
        row.name = span;
        row
    });
    broken.groups = List::from(groups.collect::<Vec<_>>());
    for group in (0..6).map(GroupId) {
        assert_eq!((&broken).group_name(group).unwrap_or_default(), "");
    }
    broken.rules = List::from(Vec::new());
    for subject in subjects() {
        assert_eq!((&broken).cite(subject).rationale(), "");
        assert_eq!((&broken).cite(subject).place().to_string(), " (:0)");
    }
}

/// All that a check says, with the words that only a finding's own rule can give.
fn said<'b>(
    evaluator: impl Evaluator<'b>,
    setup: &Setup<'_>,
) -> (Vec<(Finding<'b>, String)>, Vec<NotJudged<'b>>) {
    let mut all = Vec::new();
    let left = check_setup(evaluator, setup, |finding| {
        let remedy = finding.remedy().unwrap_or("none");
        all.push((finding, format!("{} {finding} {remedy}", finding.code())));
    });
    let left = left.unwrap().hazards().collect();
    (all, left)
}

const CONDITIONS: [&[ConditionId]; 6] = [
    &[],
    &[oxyfolio::condition::RETAINS_CO2],
    &[oxyfolio::condition::CARBON_MONOXIDE],
    &[
        oxyfolio::condition::RETAINS_CO2,
        oxyfolio::condition::CARBON_MONOXIDE,
    ],
    &[ConditionId(2), ConditionId(3)],
    &[ConditionId(4), ConditionId(5)],
];

proptest! {
    #![proptest_config(config())]

    #[test]
    fn a_check_finds_the_same_by_both(
        device in 0..RULEBOOK.devices.len(),
        flow in select(&[0.0, 0.25, 1.0, 2.0, 4.0, 5.0, 6.0, 8.0, 10.0, 15.0, 25.0, 100.0][..]),
        group in option::of(0..RULEBOOK.groups.len()),
        conditions in option::of(select(&CONDITIONS[..])),
        life in option::of(select(&[0.5, 1.0, 3.0, 5.0, 10.0, 60.0][..])),
        cylinder in option::of(0..RULEBOOK.cylinders.len()),
        psi in option::of(select(&[0.0, 150.0, 200.0, 450.0, 500.0, 900.0, 1000.0, 2000.0, 2100.0, 2400.0, 3200.0][..])),
        celsius in option::of(select(&[-50.0, -25.0, -20.0, 0.0, 21.0, 45.0, 55.0, 80.0][..])),
        wanted in option::of(select(&[0.0, 1.0, 10.0, 60.0, 600.0][..])),
        spo2 in option::of(select(&[50.0, 80.0, 84.0, 88.0, 90.0, 92.0, 94.0, 96.0, 98.0, 100.0, 200.0][..])),
    ) {
        let id = |index: usize| u16::try_from(index).unwrap();
        let mut setup = Setup::new(DeviceId(id(device)), Flow::litres_per_minute(flow).unwrap());
        if let Some(group) = group {
            setup = setup.group(GroupId(id(group)));
        }
        if let Some(conditions) = conditions {
            setup = setup.conditions(conditions);
        }
        if let Some(life) = life {
            setup = setup.minute_of_life(Time::minutes(life).unwrap());
        }
        if let Some(cylinder) = cylinder {
            setup = setup.cylinder(CylinderId(id(cylinder)));
        }
        if let Some(psi) = psi {
            setup = setup.pressure(Pressure::psi(psi).unwrap());
        }
        if let Some(celsius) = celsius {
            setup = setup.temperature(Temperature::celsius(celsius).unwrap());
        }
        if let Some(wanted) = wanted {
            setup = setup.minutes_wanted(Time::minutes(wanted).unwrap());
        }
        if let Some(spo2) = spo2 {
            setup = setup.spo2(Percent::new(spo2).unwrap());
        }
        prop_assert_eq!(said(&RULEBOOK, &setup), said(hazard::Guards, &setup));
    }
}
