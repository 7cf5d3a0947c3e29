//! Reads the published facts.

use std::fmt;

const TABLE: &str = include_str!("facts.tsv");

/// One row of the table.
#[derive(Clone, Debug)]
pub struct Fact {
    pub id: &'static str,
    pub quantity: &'static str,
    pub value: &'static str,
    pub unit: &'static str,
    pub source: &'static str,
    pub clause: &'static str,
    pub known: &'static str,
    pub page: &'static str,
}

/// Every row.
pub fn all() -> Vec<Fact> {
    let mut lines = TABLE.lines().filter(|line| !line.starts_with('#'));
    let head = lines.next().expect("a head line");
    assert_eq!(
        head, "id\tquantity\tvalue\tunit\tsource\tclause\tknown\tpage",
        "the head line of facts.tsv"
    );
    lines.map(row).collect()
}

fn row(line: &'static str) -> Fact {
    let cells: Vec<&str> = line.split('\t').collect();
    let [id, quantity, value, unit, source, clause, known, page] = cells[..] else {
        panic!("expected eight cells in facts.tsv, found {}: {line}", cells.len());
    };
    Fact {
        id,
        quantity,
        value,
        unit,
        source,
        clause,
        known,
        page,
    }
}

/// The row with this id.
pub fn fact(id: &str) -> Fact {
    all()
        .into_iter()
        .find(|fact| fact.id == id)
        .unwrap_or_else(|| panic!("expected a row `{id}` in facts.tsv, found none"))
}

impl Fact {
    /// A single number, in the row's unit.
    pub fn number(&self) -> f64 {
        self.value
            .parse()
            .unwrap_or_else(|_| panic!("expected one number: {self}"))
    }

    /// The ends of a range; a single number is a range of itself.
    pub fn range(&self) -> (f64, f64) {
        let Some((low, high)) = self.value.split_once("..") else {
            return (self.number(), self.number());
        };
        let end = |text: &str| -> f64 {
            text.parse()
                .unwrap_or_else(|_| panic!("expected a range of two numbers: {self}"))
        };
        (end(low), end(high))
    }

    /// Whether a number lies in the range, with a tolerance at either end.
    pub fn holds(&self, value: f64, tolerance: f64) -> bool {
        let (low, high) = self.range();
        value >= low - tolerance && value <= high + tolerance
    }

    /// Pin holes, from low to high.
    pub fn pins(&self) -> Vec<u8> {
        self.value
            .split('-')
            .map(|pin| {
                pin.parse()
                    .unwrap_or_else(|_| panic!("expected pin holes: {self}"))
            })
            .collect()
    }
}

impl fmt::Display for Fact {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self {
            id,
            quantity,
            value,
            unit,
            known,
            ..
        } = self;
        write!(f, "fact {id} ({quantity}: {value} {unit}; {known}")?;
        for part in [self.source, self.clause] {
            if !part.is_empty() {
                write!(f, "; {part}")?;
            }
        }
        f.write_str(")")
    }
}

/// Several rows, for a message.
pub fn list(facts: &[Fact]) -> String {
    let rows: Vec<String> = facts.iter().map(Fact::to_string).collect();
    rows.join(", ")
}

#[test]
fn every_row_says_what_it_is_and_how_it_is_known() {
    let facts = all();
    assert!(facts.len() > 150, "only {} rows in facts.tsv", facts.len());
    for fact in &facts {
        for (name, cell) in [
            ("id", fact.id),
            ("quantity", fact.quantity),
            ("value", fact.value),
        ] {
            assert!(!cell.trim().is_empty(), "no {name}: {fact}");
        }
        let sourced = !fact.source.is_empty();
        match fact.known {
            "seen" => assert!(sourced && !fact.page.is_empty(), "seen where? {fact}"),
            "from memory" => assert!(sourced && fact.page.is_empty(), "{fact}"),
            "common practice, no source" => {
                assert!(
                    !sourced && fact.clause.is_empty() && fact.page.is_empty(),
                    "{fact}"
                );
            }
            other => panic!("`{other}` is not a way of knowing: {fact}"),
        }
        assert!(
            !fact.page.contains("http") || fact.page.starts_with("publisher's own text: "),
            "an address stands only where the page was the publisher's own: {fact}"
        );
    }
}

#[test]
fn no_row_stands_twice() {
    let facts = all();
    for (place, fact) in facts.iter().enumerate() {
        assert!(
            facts[..place].iter().all(|earlier| earlier.id != fact.id),
            "twice in the table: {fact}"
        );
    }
}

#[test]
fn every_row_is_used_by_a_test() {
    let tests = [
        include_str!("connections.rs"),
        include_str!("cylinders.rs"),
        include_str!("devices.rs"),
        include_str!("durations.rs"),
        include_str!("entrainment.rs"),
        include_str!("policies.rs"),
        include_str!("procedures.rs"),
        include_str!("real_gas.rs"),
        include_str!("targets.rs"),
        include_str!("units.rs"),
    ];
    for fact in all() {
        let quoted = format!("\"{}\"", fact.id);
        assert!(
            tests.iter().any(|test| test.contains(&quoted)),
            "no test uses {fact}"
        );
    }
}
