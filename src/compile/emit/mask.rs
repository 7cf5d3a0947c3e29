//! Writes all guards of a book as look-ups: for each page of [`Lookup`] a function without branches.
//!
//! The tables stand in the function as the answers they are made of, where that can be read: a line for each
//! observation, with its name, and the bits of the guards that need a yes or a no.

use core::fmt::Write as _;

use super::{constant, guards::Uses};
use crate::book::{Comparison, Fact, Measure, Rulebook};
use crate::guard::mask::{Doubt, Sign};
use crate::lookup::{End, Levels, Limits, Lookup, Observation, Page, Pair, Threes};

/// The look-ups of a book as Rust.
pub(super) struct Written {
    /// Methods of the evaluator.
    pub(super) methods: &'static str,
    /// Functions beside it.
    pub(super) items: String,
}

const BROKEN: &str = "
    fn broken(&self, seen: &Observed<'_>) -> Broken {
        looked_up(&Row::from(seen))
    }

    fn broken_row(&self, row: &Row) -> Broken {
        looked_up(row)
    }
";

const AND_WALKED: &str = "
    fn broken(&self, seen: &Observed<'_>) -> Broken {
        walked(looked_up(&Row::from(seen)), seen)
    }

    fn broken_row(&self, row: &Row) -> Broken {
        row.observed(|seen| walked(looked_up(row), seen))
    }
";

/// Writes the look-ups, for the module of the hazards.
pub(super) fn write(book: &Rulebook, uses: &mut Uses) -> Written {
    let lookup = Lookup::new(book);
    let mut out = String::new();
    for name in ["Broken", "Row"] {
        uses.add("::oxyfolio::guard", name);
    }
    let pages = lookup.pages();
    // Writing to a String cannot fail.
    let _ = write!(
        out,
        "\n/// All guards at once. The lowest bits of a page are its hazards in their order, those above are parts of their guards.\n#[inline]\nfn looked_up(row: &Row) -> Broken {{\n    Broken::default()\n"
    );
    for (number, page) in pages.iter().enumerate() {
        let _ = writeln!(
            out,
            "        .with_page({}, {}, page_{number}(row))",
            page.first, page.hazards
        );
    }
    out.push_str("}\n");
    for (number, page) in pages.iter().enumerate() {
        let mut writer = Writer {
            book,
            uses,
            tables: String::new(),
            terms: String::new(),
        };
        writer.page(page);
        let (tables, terms) = (writer.tables, writer.terms);
        let row = if terms.contains("row.") { "row" } else { "_" };
        let _ = write!(
            out,
            "\n#[inline]\nfn page_{number}({row}: &Row) -> Doubt {{\n{tables}    {}\n{terms}}}\n",
            words(page.always)
        );
    }
    uses.add("::oxyfolio::guard::mask", "Doubt");
    if lookup.walked().is_empty() {
        return Written {
            methods: BROKEN,
            items: out,
        };
    }
    out.push_str("\n/// The guards that have no look-ups.\nfn walked(broken: Broken, seen: &Observed<'_>) -> Broken {\n    broken\n");
    for hazard in lookup.walked().iter().filter_map(|id| book.hazard(id)) {
        let _ = writeln!(
            out,
            "        .with({}, {}(seen))",
            constant(&hazard.rule.id),
            super::guards::function_name(hazard)
        );
    }
    out.push_str("}\n");
    Written {
        methods: AND_WALKED,
        items: out,
    }
}

struct Writer<'a> {
    book: &'a Rulebook,
    uses: &'a mut Uses,
    /// Statics of the page's function.
    tables: String,
    /// What is added to its doubt.
    terms: String,
}

impl Writer<'_> {
    fn page(&mut self, page: &Page) {
        for levels in &page.levels {
            self.levels(levels);
        }
        let facts = |place: usize| Fact::ALL.get(place).map(|fact| fact.words());
        for threes in &page.facts {
            let answers = "u64::from(row.facts().yes()), u64::from(row.facts().no())";
            self.threes("FACTS", threes, answers, &|place| facts(place).map(str::to_owned));
        }
        let book = self.book;
        for threes in &page.conditions {
            self.threes("CONDITIONS", threes, "row.has(), row.has_not()", &|place| {
                book.conditions
                    .get(place)
                    .map(|condition| condition.id.to_string())
            });
        }
        let (devices, groups) = (book.devices.len(), book.groups.len());
        self.identified("DEVICES", &page.devices, &format!("row.device_place({devices})"));
        self.identified("GROUPS", &page.groups, &format!("row.group_place({groups})"));
        for (number, pair) in page.pairs.iter().enumerate() {
            self.pair(number, pair);
        }
        for (number, limits) in page.limits.iter().enumerate() {
            self.limits(number, limits);
        }
        for (from, to) in &page.links {
            let _ = writeln!(self.terms, "        .link({from}, {to})");
        }
    }

    fn uses(&mut self, name: &str) {
        self.uses.add("::oxyfolio::guard::mask", name);
    }

    /// A table of doubts.
    fn table(&mut self, name: &str, doubts: &[Doubt]) {
        let length = doubts.len().next_power_of_two();
        let items: String = doubts
            .iter()
            .map(|doubt| format!("        {},\n", words(*doubt)))
            .collect();
        let items = if length == doubts.len() {
            format!("[\n{items}    ]")
        } else {
            self.uses("padded");
            format!("padded(Doubt::NONE, &[\n{items}    ])")
        };
        let _ = writeln!(self.tables, "    static {name}: [Doubt; {length}] = {items};");
    }

    fn term(&mut self, name: &str, place: &str) {
        self.uses("pick");
        let _ = writeln!(self.terms, "        .and(pick(&{name}, {place}))");
    }

    fn levels(&mut self, levels: &Levels) {
        let name = constant(&levels.measure.words().replace(' ', "-"));
        let steps: Vec<String> = levels.steps.iter().map(|step| written(*step)).collect();
        let _ = writeln!(
            self.tables,
            "    // {}: not known, then from each of these numbers of {} on.",
            levels.measure.words(),
            unit(levels.measure)
        );
        let _ = writeln!(
            self.tables,
            "    const {name}_STEPS: [f64; {}] = [{}];",
            steps.len(),
            steps.join(", ")
        );
        self.table(&name, &levels.doubts);
        self.uses("steps");
        let measured = self.measured(levels.measure);
        self.term(&name, &format!("steps({measured}, &{name}_STEPS)"));
    }

    fn threes(
        &mut self,
        name: &str,
        threes: &Threes,
        answers: &str,
        called: &dyn Fn(usize) -> Option<String>,
    ) {
        let name = format!("{name}_{}", threes.shift);
        let first = threes.shift as usize;
        let mut items = String::new();
        for (place, sign) in (first..).zip(&threes.signs) {
            let called = called(place).filter(|_| *sign != Sign::NONE);
            let comment = called.map_or(String::new(), |called| format!(" // {called}"));
            let _ = writeln!(
                items,
                "        Sign::new({:#x}, {:#x}),{comment}",
                sign.yes, sign.no
            );
        }
        let _ = writeln!(
            self.tables,
            "    static {name}: ByThree = by_three([\n{items}    ]);"
        );
        for used in ["ByThree", "Sign", "by_three"] {
            self.uses(used);
        }
        let _ = writeln!(self.terms, "        .and({name}.doubt({answers}, {first}))");
    }

    fn identified(&mut self, name: &str, doubts: &[Doubt], place: &str) {
        if doubts.is_empty() {
            return;
        }
        let _ = writeln!(
            self.tables,
            "    // Not known, each of the book, and one of another book."
        );
        self.table(name, doubts);
        self.term(name, place);
    }

    fn pair(&mut self, number: usize, pair: &Pair) {
        let (left, right) = (self.observation(pair.left), self.observation(pair.right));
        let name = format!("PAIR_{number}");
        let _ = writeln!(self.tables, "    // Not known, yes, no.");
        self.table(&name, &pair.doubts);
        self.uses("answer");
        self.uses.add("::oxyfolio::book", "Comparison");
        self.term(
            &name,
            &format!("answer({left}, Comparison::{:?}, {right})", pair.comparison),
        );
    }

    fn limits(&mut self, number: usize, limits: &Limits) {
        let end = match limits.end {
            End::Least => "least",
            End::Most => "greatest",
        };
        let than = match limits.comparison {
            Comparison::Less => "less",
            _ => "greater",
        };
        let name = format!("LIMIT_{number}");
        let mut different: Vec<[f64; 2]> = Vec::new();
        let places = self.book.groups.len() + 2;
        let mut rows = String::new();
        for (device, steps) in limits.steps.chunks(places).enumerate() {
            rows.push_str("        ");
            for steps in steps {
                let place = different.iter().position(|known| known == steps);
                let _ = write!(rows, "{}, ", place.unwrap_or(different.len()));
                if place.is_none() {
                    different.push(*steps);
                }
            }
            let device = device
                .checked_sub(1)
                .and_then(|device| self.book.devices.get(device));
            let _ = writeln!(
                rows,
                "// {}",
                device.map_or("no device of the book", |device| &device.rule.id)
            );
        }
        let _ = write!(
            self.tables,
            "    // {} {than} than the device's {end} flow: where the answer becomes unknown, and where it is known again.\n    static {name}_STEPS: [[f64; 2]; {}] = padded([0.0; 2], &[\n",
            limits.measure.words(),
            different.len().next_power_of_two(),
        );
        for [low, high] in &different {
            let _ = writeln!(self.tables, "        [{}, {}],", written(*low), written(*high));
        }
        let length = limits.steps.len().next_power_of_two();
        let _ = writeln!(
            self.tables,
            "    ]);\n    // Which of them: a row for each device; in it the group not known, each group, and one of another book.\n    static {name}_OF: [u16; {length}] = padded(0, &[\n{rows}    ]);"
        );
        self.table(&name, &limits.doubts);
        for used in ["padded", "pick", "steps_between"] {
            self.uses(used);
        }
        let (devices, groups) = (self.book.devices.len(), self.book.groups.len());
        let measured = self.measured(limits.measure);
        let place = format!("row.device_place({devices}) * {places} + row.group_place({groups})");
        let steps = format!("pick(&{name}_STEPS, pick(&{name}_OF, {place}).into())");
        self.term(&name, &format!("steps_between({measured}, {steps})"));
    }

    fn measured(&mut self, measure: Measure) -> String {
        self.uses.add("::oxyfolio::book", "Measure");
        format!("row.number(Measure::{measure:?})")
    }

    fn observation(&mut self, observation: Observation) -> String {
        match observation {
            Observation::Measured(measure) => self.measured(measure),
            Observation::TargetLow => "row.target_low()".to_owned(),
            Observation::TargetHigh => "row.target_high()".to_owned(),
        }
    }
}

fn words(doubt: Doubt) -> String {
    format!("Doubt::new({:#x}, {:#x})", doubt.not_sure, doubt.ruled_out)
}

/// A number that reads back to the same bits.
fn written(number: f64) -> String {
    if number == f64::MIN {
        "f64::MIN".to_owned()
    } else if number.is_infinite() {
        format!("{}f64::INFINITY", if number < 0.0 { "-" } else { "" })
    } else {
        format!("{number:?}")
    }
}

const fn unit(measure: Measure) -> &'static str {
    match measure {
        Measure::Flow => "L/min",
        Measure::Pressure => "pascals",
        Measure::Temperature => "°C",
        Measure::Spo2 => "percent",
        Measure::MinutesLeft | Measure::MinutesWanted => "minutes",
    }
}
