//! The page `src/equipment/transitions.md`, written from the table and from every state that can come about.

use std::{collections::BTreeSet, fmt::Write as _, fs, path::Path};

use oxyfolio::book::Action;
use oxyfolio::equipment::{Case, Effect, Loss, Need, Regulator, State, Values, row, run_out};

use super::{
    invariants::LAWS,
    model::{CHANGES, STATES},
    states::{Move, WRITABLE, changes, reachable, writable},
};

const PAGE: &str = "src/equipment/transitions.md";
/// `the valve is open`.
fn says(values: Values) -> String {
    let words: Vec<&str> = values.words().collect();
    let said = match words.split_last() {
        Some((last, [])) => (*last).to_owned(),
        Some((last, others)) => format!("{}, or {last}", others.join(", ")),
        None => panic!("a value says something"),
    };
    format!("{} {said}", values.part().words())
}

fn lines(lines: &[String], without: &str) -> String {
    if lines.is_empty() {
        without.to_owned()
    } else {
        lines.join("<br>")
    }
}

/// Needs with the words of their refusal; those with the same words together.
fn needs(needs: &[Need]) -> String {
    let told: Vec<String> = needs
        .chunk_by(|a, b| a.otherwise == b.otherwise)
        .map(|same| {
            let wanted: Vec<String> = same.iter().map(|need| says(need.of)).collect();
            format!("{} (*{}*)", wanted.join("; "), same[0].otherwise)
        })
        .collect();
    lines(&told, "nothing")
}

fn when(case: &Case, place: usize) -> String {
    let when: Vec<String> = case.when.iter().copied().map(says).collect();
    match (when.is_empty(), place) {
        (true, 0) => "always".to_owned(),
        (true, _) => "otherwise".to_owned(),
        (false, _) => when.join("; "),
    }
}

fn does(case: &Case) -> String {
    let does: Vec<String> = case
        .does
        .iter()
        .map(|effect| match effect {
            Effect::Becomes(values) => says(*values),
            Effect::SpareTakesPlace => "the spare takes the cylinder's place".to_owned(),
        })
        .collect();
    lines(&does, "nothing changes")
}

fn table(page: &mut String) {
    page.push_str(
        "# What each action needs and does\n\n\
         The first line of an action that fits counts. Needs are asked in the order written; of the first that isn't met, \
         the words in brackets are the reason given for the refusal. What isn't named stays as it is.\n\n\
         | action | when | needs (*or it is refused*) | then |\n| --- | --- | --- | --- |\n",
    );
    for action in Action::ALL {
        for (place, case) in row(*action).iter().enumerate() {
            let (when, needs, does) = (when(case, place), needs(case.needs), does(case));
            writeln!(page, "| `{action}` | {when} | {needs} | {does} |").unwrap();
        }
    }
    let looks: Vec<String> = Action::ALL
        .iter()
        .filter(|action| !State::concerns(**action))
        .map(|action| format!("`{action}`"))
        .collect();
    write!(
        page,
        "\nThe other actions only look, say or write. They change nothing here and are never refused; which actions rely \
         on them is told by [`relies_on`]. They are: {}.\n\n",
        looks.join(", ")
    )
    .unwrap();
    page.push_str(
        "# What time does\n\n\
         Given enough time, gas goes wherever it can. Time changes nothing else, and is never refused.\n\n\
         | gas goes by | when | then |\n| --- | --- | --- |\n",
    );
    for by in Loss::ALL {
        let name = match by {
            Loss::Flow => "the flow, or an open valve with nothing on it",
            Loss::Leak => "a leak",
        };
        for (place, case) in run_out(*by).iter().enumerate() {
            assert!(case.needs.is_empty(), "time is never refused");
            writeln!(page, "| {name} | {} | {} |", when(case, place), does(case)).unwrap();
        }
    }
}

/// What the diagram shows of a state: regulator, valve, pressure.
type Seen = (Regulator, bool, bool);

fn seen(state: State) -> Seen {
    (state.regulator, state.cylinder.open, state.pressurised)
}

fn id((regulator, open, pressurised): Seen) -> String {
    let regulator = match regulator {
        Regulator::Off => "off",
        Regulator::Seated => "seated",
        Regulator::Tight => "tight",
    };
    let valve = if open { "open" } else { "closed" };
    format!(
        "{regulator}_{valve}{}",
        if pressurised { "_pressure" } else { "" }
    )
}

fn label((regulator, open, pressurised): Seen) -> String {
    let regulator = match regulator {
        Regulator::Off => "regulator off",
        Regulator::Seated => "regulator seated",
        Regulator::Tight => "regulator tight",
    };
    let valve = if open { "valve open" } else { "valve closed" };
    format!(
        "{regulator}, {valve}, {}",
        if pressurised {
            "under pressure"
        } else {
            "no pressure"
        }
    )
}

fn diagram(page: &mut String) {
    let mut arrows: BTreeSet<(Seen, Seen, &str)> = BTreeSet::new();
    for (was, by, is) in changes() {
        if seen(was) != seen(is) {
            let by = match by {
                Move::Does(action) => action.word(),
                Move::RunsOut(_) => "gas runs out",
            };
            arrows.insert((seen(was), seen(is), by));
        }
    }
    let places: BTreeSet<Seen> = reachable().into_iter().map(seen).collect();
    page.push_str(
        "\n# Regulator, valve and pressure\n\n\
         Found by doing everything in every state that can come about. The text between the lines is a diagram in the \
         notation of Mermaid, which many viewers draw. An open cylinder under a tight regulator that is without pressure has \
         run empty.\n\n```mermaid\nstateDiagram-v2\n",
    );
    for place in &places {
        writeln!(page, "    state \"{}\" as {}", label(*place), id(*place)).unwrap();
    }
    writeln!(page, "    [*] --> {}", id(seen(State::PUT_AWAY))).unwrap();
    for (was, is, by) in arrows {
        writeln!(page, "    {} --> {} : {by}", id(was), id(is)).unwrap();
    }
    page.push_str("```\n");
}

fn laws(page: &mut String) {
    let ends: BTreeSet<&str> = (0..WRITABLE)
        .map(writable)
        .filter_map(|state| state.unsafe_end())
        .collect();
    let safe = reachable()
        .iter()
        .filter(|state| state.unsafe_end().is_none())
        .count();
    write!(
        page,
        "\n# What is always so\n\n\
         From a cylinder that is put away, with any actions in any order and gas running out at any time, {STATES} states \
         can come about, with {CHANGES} changes between them; {safe} of them are safe ends. In every one of them:\n\n",
    )
    .unwrap();
    for (says, _) in LAWS {
        writeln!(page, "- {says}").unwrap();
    }
    page.push_str(
        "\nAnd in every change:\n\n\
         - Pressure begins only by opening the cylinder, and ends only by bleeding or by running out.\n\
         - Gas never grows but by changing the cylinder; a cylinder runs empty only while its valve is open.\n\
         - A valve is moved only by opening, closing, and changing the cylinder.\n\
         - From every state a safe end can be reached.\n\n\
         # What is no safe end\n\n",
    );
    for why in ends {
        writeln!(page, "- {why}").unwrap();
    }
}

fn page() -> String {
    let mut page = String::from(
        "This page is written by a test from the table the program runs on, so the two can't differ. It says how the \
         program takes equipment to behave; it is not a procedure. Local protocol, local codes and the maker's \
         instructions come first.\n\n",
    );
    table(&mut page);
    diagram(&mut page);
    laws(&mut page);
    page
}

#[test]
fn the_page_of_transitions_is_what_the_table_says() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(PAGE);
    let page = page();
    assert!(page.contains("| `seat-regulator` | always | the regulator is off the cylinder (*a "));
    assert!(page.contains("tight_open_pressure --> tight_closed_pressure : close-cylinder"));
    if std::env::var("INSTA_UPDATE").is_ok_and(|update| update == "always") {
        fs::write(&path, &page).unwrap();
    }
    let found = fs::read_to_string(&path).unwrap_or_default();
    assert!(
        found == page,
        "{PAGE} is not what the table says; to write it anew: INSTA_UPDATE=always cargo test --test equipment"
    );
}
