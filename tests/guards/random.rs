//! Random guards, read from text: interpreted, emitted as Rust and worked out by hand, the answer is the same.

use oxyfolio::{
    book::HazardId,
    compile::emit,
    guard::{Evaluator, evaluate},
};
use proptest::prelude::*;

use crate::{
    oracle::expected,
    state::{State, state},
    tree::{Brackets, tree},
    world::{BOOK, CONDITIONS, DEVICES, EMITTED, GROUPS, TREES, print, read},
};

/// The guards of [`TREES`] as the project's own emitter wrote them.
pub mod emitted {
    use std::sync::LazyLock;

    use crate::world::BOOK as RULEBOOK;

    static TABLES: LazyLock<oxyfolio::book::Tables> =
        LazyLock::new(|| oxyfolio::compile::emit::tables(&RULEBOOK));

    /// The names that the emitter expects beside the module of the hazards.
    macro_rules! names {
        ($module:ident $id:ident { $($name:ident $index:literal)+ }) => {
            pub mod $module {
                use oxyfolio::book::$id;
                $(pub const $name: $id = $id($index);)+
            }
        };
    }
    names!(device DeviceId { CANNULA 0 MASK 1 BAG 2 BLOW_BY 3 });
    names!(group GroupId { NEWBORN 0 CHILD 1 ADULT 2 });
    names!(condition ConditionId { RETAINS_GAS 0 WHEEZES 1 });

    #[allow(clippy::approx_constant)]
    pub mod hazard {
        include!("emitted.rs");
    }
}

const FILE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/tests/guards/emitted.rs");

const HEAD: &str = "// Random guards as the emitter writes them; `INSTA_UPDATE=always cargo test --test guards` writes this file.\n\n";

pub fn any_state() -> impl Strategy<Value = State> {
    state(DEVICES.len(), GROUPS.len(), CONDITIONS.len())
}

/// Nothing is written beside the tests when a case fails; the case is in the message.
pub fn config() -> ProptestConfig {
    ProptestConfig {
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

#[test]
fn emitted_guards_are_what_the_emitter_writes_today() {
    let written = format!("{HEAD}{}", emit::hazards(&BOOK));
    if std::env::var("INSTA_UPDATE").is_ok_and(|update| update == "always") {
        std::fs::write(FILE, &written).unwrap();
    }
    let file = std::fs::read_to_string(FILE).unwrap();
    let differs = file
        .lines()
        .zip(written.lines())
        .position(|(old, new)| old != new);
    assert!(
        file == written,
        "tests/guards/emitted.rs differs from line {}; to accept: INSTA_UPDATE=always cargo test --test guards",
        differs.map_or(file.lines().count().min(written.lines().count()), |line| line) + 1
    );
}

#[test]
fn random_guards_reach_every_kind_of_condition_and_answer() {
    let text = emit::hazards(&BOOK);
    for (what, least) in [
        ("fn never_", EMITTED),
        ("less(", 20),
        ("at_least(", 20),
        ("not_equal(", 20),
        ("within(", 10),
        ("Limit::Excluded", 5),
        ("seen.device_flow(", 10),
        ("seen.target_low()", 5),
        ("seen.target_high()", 5),
        ("seen.device_has_reservoir(", 3),
        ("seen.device_is(", 20),
        ("seen.group_is(", 10),
        ("seen.has_condition(", 10),
        ("!(", 10),
        ("fill.low:", 2),
        ("frost.high:", 2),
    ] {
        let found = text.matches(what).count();
        assert!(found >= least, "{what} stands {found} times in the random guards");
    }
    assert!(
        !text.contains("    Truth::Unknown\n}\n\n#[doc"),
        "a guard could not be written"
    );
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 1024, ..config() })]

    #[test]
    fn a_guard_read_from_text_answers_as_the_tables_say(tree in tree(), state in any_state()) {
        let guard = read(&tree.text()).unwrap();
        prop_assert_eq!(evaluate(&guard, &BOOK, &state.observed()), expected(&tree, &state), "{}", tree.text());
    }

    #[test]
    fn an_emitted_guard_answers_as_the_tables_say(index in 0..EMITTED, state in any_state()) {
        let id = HazardId(u16::try_from(index).unwrap());
        let observed = state.observed();
        let expected = expected(&TREES[index], &state);
        prop_assert_eq!(emitted::hazard::Guards.evaluate(id, &observed), expected, "emitted: {}", TREES[index].text());
        prop_assert_eq!((&*BOOK).evaluate(id, &observed), expected, "interpreted: {}", TREES[index].text());
    }

    #[test]
    fn what_is_printed_reads_back(tree in tree()) {
        let guard = read(&tree.text()).unwrap();
        let printed = print(&guard.ops).unwrap();
        prop_assert_eq!(&read(&printed).unwrap().ops, &guard.ops, "{}", printed);
    }

    #[test]
    fn brackets_that_are_not_needed_change_nothing(tree in tree()) {
        let few = read(&tree.text()).unwrap();
        let many = read(&tree.written(Brackets::Many)).unwrap();
        prop_assert_eq!(few.ops, many.ops);
    }
}

#[test]
fn the_hazard_of_another_book_is_unknown() {
    let nothing = State::default();
    let observed = nothing.observed();
    for id in [HazardId(u16::try_from(EMITTED).unwrap()), HazardId(u16::MAX)] {
        assert_eq!(
            emitted::hazard::Guards.evaluate(id, &observed),
            oxyfolio::guard::Truth::Unknown
        );
        assert_eq!((&*BOOK).evaluate(id, &observed), oxyfolio::guard::Truth::Unknown);
    }
}
