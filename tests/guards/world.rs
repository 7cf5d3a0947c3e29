//! A small book to ask random guards about: its numbers are chosen for their borders, not for a patient. Nothing in it
//! follows the demonstration, so that an edit of the demonstration changes nothing here.

use std::sync::LazyLock;

use oxyfolio::{
    book::{
        Condition, Device, DeviceId, Group, GroupFlow, GroupId, Guard, GuardOp, Hazard, HazardId, List,
        Place, Policy, Rule, Rulebook, Text,
    },
    compile::{
        diagnostic::Diagnostics,
        guard::{self, Vocabulary},
        names::{Names, Table},
        source::{FileId, Span},
        written::{self, Mistake},
    },
    quantity::{Flow, Range},
};
use proptest::{
    strategy::{Strategy, ValueTree},
    test_runner::{Config, RngAlgorithm, TestRng, TestRunner},
};

use crate::{
    amount::{Amount, Kind},
    tree::{Tree, tree},
};

pub const GROUPS: [&str; 3] = ["newborn", "child", "adult"];
pub const DEVICES: [&str; 4] = ["cannula", "mask", "bag", "blow-by"];
pub const CONDITIONS: [&str; 2] = ["retains-gas", "wheezes"];

/// Flow limits: for everyone, and where a group's differ. The last device has no greatest flow, except for a group.
const FLOWS: [(&str, &[(u16, &str)]); 4] = [
    ("1 to 6 L/min", &[(0, "0.5 to 1 L/min"), (1, "1 to 4 L/min")]),
    ("6 to 10 L/min", &[]),
    ("10 to 15 L/min", &[(0, "4 to 8 L/min")]),
    ("at least 2 L/min", &[(2, "2 to 12 L/min")]),
];

const fn of(tenths: i64, unit: &'static str) -> Option<Amount> {
    Some(Amount { tenths, unit })
}

/// A policy: its id, its kind, how it is written, and its ends; one quantity has two equal ends.
pub struct OwnPolicy {
    pub id: &'static str,
    pub kind: Kind,
    pub written: &'static str,
    pub low: Option<Amount>,
    pub high: Option<Amount>,
    pub is_range: bool,
    /// Whether the one end of a range is left out of it.
    pub excluded: bool,
}

const fn one(id: &'static str, kind: Kind, written: &'static str, amount: Option<Amount>) -> OwnPolicy {
    OwnPolicy {
        id,
        kind,
        written,
        low: amount,
        high: amount,
        is_range: false,
        excluded: false,
    }
}

const fn range(
    id: &'static str,
    kind: Kind,
    written: &'static str,
    low: Option<Amount>,
    high: Option<Amount>,
) -> OwnPolicy {
    OwnPolicy {
        id,
        kind,
        written,
        low,
        high,
        is_range: true,
        excluded: false,
    }
}

pub const POLICIES: [OwnPolicy; 10] = [
    one("comfort", Kind::Flow, "2.5 L/min", of(25, "L/min")),
    range("strong", Kind::Flow, "at least 4 L/min", of(40, "L/min"), None),
    one("reserve", Kind::Pressure, "500 psi", of(5_000, "psi")),
    range(
        "fill",
        Kind::Pressure,
        "5 to 13.7 MPa",
        of(50, "MPa"),
        of(137, "MPa"),
    ),
    OwnPolicy {
        excluded: true,
        ..range("frost", Kind::Temperature, "under 14 °F", None, of(140, "°F"))
    },
    range(
        "room",
        Kind::Temperature,
        "10 to 40 °C",
        of(100, "°C"),
        of(400, "°C"),
    ),
    one("urgent", Kind::Share, "85 %", of(850, "%")),
    OwnPolicy {
        excluded: true,
        ..range("safe", Kind::Share, "over 88 %", of(880, "%"), None)
    },
    one("wait", Kind::Time, "90 s", of(900, "s")),
    range("ride", Kind::Time, "10 min to 2 h", of(100, "min"), of(20, "h")),
];

/// How many random guards are emitted.
pub const EMITTED: usize = 240;

/// The random guards that are emitted, always the same.
pub static TREES: LazyLock<Vec<Tree>> = LazyLock::new(|| {
    let rng = TestRng::from_seed(RngAlgorithm::ChaCha, &[88; 32]);
    let mut runner = TestRunner::new_with_rng(Config::default(), rng);
    let strategy = tree();
    (0..EMITTED)
        .map(|_| strategy.new_tree(&mut runner).unwrap().current())
        .collect()
});

/// The book, with a hazard for each of [`TREES`].
pub static BOOK: LazyLock<Rulebook> = LazyLock::new(|| book_of(&TREES));

/// The book, with a hazard for each of these guards.
pub fn book_of(trees: &[Tree]) -> Rulebook {
    let mut book = without_hazards();
    let hazards = trees.iter().enumerate().map(|(index, tree)| Hazard {
        rule: rule(&format!("random-{index}"), index),
        never: read(&tree.text()).unwrap_or_else(|mistake| panic!("{}: {mistake}", tree.text())),
        ..oxyfolio::RULEBOOK.hazard(HazardId(0)).unwrap().clone()
    });
    book.hazards = List::from(hazards.collect::<Vec<_>>());
    book
}

static NAMED: LazyLock<(Names, Rulebook)> = LazyLock::new(|| {
    let book = without_hazards();
    (names(&book), book)
});

/// Reads a guard about this book.
pub fn read(text: &str) -> Result<Guard, Mistake> {
    let (names, book) = &*NAMED;
    let policies = &book.policies.all;
    guard::read(text, &Vocabulary { names, policies })
}

/// A guard's operations, printed.
pub fn print(ops: &[GuardOp]) -> Option<String> {
    guard::print(ops, &NAMED.1)
}

/// The names of a book, as the compiler collects them.
pub fn names(book: &Rulebook) -> Names {
    let mut names = Names::default();
    let mut found = Diagnostics::default();
    let span = Span {
        file: FileId(0),
        start: 0,
        end: 1,
    };
    let mut fill = |table: &mut Table, ids: Vec<&Text>| {
        for id in ids {
            assert!(table.add(id, span, &mut found), "{id}");
        }
    };
    fill(
        &mut names.groups,
        book.groups.iter().map(|rule| &rule.rule.id).collect(),
    );
    fill(
        &mut names.devices,
        book.devices.iter().map(|rule| &rule.rule.id).collect(),
    );
    fill(
        &mut names.policies,
        book.policies.all.iter().map(|rule| &rule.rule.id).collect(),
    );
    fill(
        &mut names.conditions,
        book.conditions.iter().map(|condition| &condition.id).collect(),
    );
    names
}

fn text(text: &str) -> Text {
    Text::from(text.to_owned())
}

fn rule(id: &str, line: usize) -> Rule {
    Rule {
        id: text(id),
        name: text(id),
        place: Place {
            chapter: text("Random guards"),
            heading: text("Random guards"),
            file: text("random.md"),
            line: u32::try_from(line + 1).unwrap(),
        },
        rationale: text(""),
    }
}

fn without_hazards() -> Rulebook {
    let mut book = oxyfolio::RULEBOOK.clone();
    book.hazards = List::from(Vec::new());
    let group = book.groups[0].clone();
    let groups = GROUPS.iter().map(|id| Group {
        rule: rule(id, 0),
        ..group.clone()
    });
    book.groups = List::from(groups.collect::<Vec<_>>());
    let device = oxyfolio::RULEBOOK.device(DeviceId(0)).unwrap();
    let devices = DEVICES.iter().zip(FLOWS).map(|(id, (flow, groups))| Device {
        rule: rule(id, 0),
        flow: flows(flow),
        group_flows: List::from(
            groups
                .iter()
                .map(|(group, flow)| GroupFlow {
                    group: GroupId(*group),
                    flow: flows(flow),
                    usual: device.usual,
                })
                .collect::<Vec<_>>(),
        ),
        reservoir: *id == "bag",
        ..device.clone()
    });
    book.devices = List::from(devices.collect::<Vec<_>>());
    let conditions = CONDITIONS.iter().map(|id| Condition {
        id: text(id),
        name: text(id),
    });
    book.conditions = List::from(conditions.collect::<Vec<_>>());
    let policies = POLICIES.iter().map(|policy| Policy {
        rule: rule(policy.id, 0),
        value: written::any(policy.written).unwrap(),
        note: None,
    });
    book.policies.all = List::from(policies.collect::<Vec<_>>());
    book
}

fn flows(written: &str) -> Range<Flow> {
    written::range(written).unwrap()
}
