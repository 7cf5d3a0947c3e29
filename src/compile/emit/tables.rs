//! What checks ask of a book, gathered from it: its limits in rows, and its words in one text, each of them once.

use std::collections::BTreeMap;

use core::fmt::Write as _;

use crate::book::{
    CheckedPolicy, Cited, Device, List, Rulebook, Rules as _, Subject, Tables, Target, Text, Words,
    tables::{DeviceRow, NameRow, PlaceRow, RuleRow, Span, TargetRow},
};

/// The [`Tables`] of a book: a check of a set-up finds the same by them as by the book itself.
#[must_use]
pub fn tables(book: &Rulebook) -> Tables {
    gather(book).0
}

/// The tables of a book, and the texts that they share with it.
pub(super) fn gather(book: &Rulebook) -> (Tables, Texts) {
    let mut gathering = Gathering::default();
    let numbers = |count: usize| 0..u16::try_from(count).unwrap_or(u16::MAX);
    gathering.rule(book, Subject::Agency);
    for policy in CheckedPolicy::ALL {
        gathering.rule(book, Subject::Policy(policy));
    }
    for index in numbers(book.devices.len()) {
        gathering.rule(book, Subject::Device(crate::book::DeviceId(index)));
    }
    for index in numbers(book.cylinders.len()) {
        gathering.rule(book, Subject::Cylinder(crate::book::CylinderId(index)));
    }
    for index in numbers(book.targets.len()) {
        gathering.rule(book, Subject::Target(crate::book::TargetId(index)));
    }
    for index in numbers(book.hazards.len()) {
        gathering.rule(book, Subject::Hazard(crate::book::HazardId(index)));
    }
    let groups = rows(&book.groups, |group| {
        gathering.name(&group.rule.id, &group.rule.name)
    });
    let conditions = rows(&book.conditions, |condition| {
        gathering.name(&condition.id, &condition.name)
    });
    let [edition, digest, short_digest] =
        [&book.agency.edition, &book.digest, &book.short_digest].map(|text| gathering.texts.span(text));
    let hazards = book.hazards.iter();
    let tables = Tables {
        text: Text::from(gathering.texts.all.concat()),
        edition,
        digest,
        short_digest,
        pressure_unit: book.pressure_unit(),
        limits: book.limits(),
        groups,
        conditions,
        devices: rows(&book.devices, device),
        cylinders: rows(&book.cylinders, |cylinder| cylinder.into()),
        targets: rows(&book.targets, target),
        hazards: List::from(
            hazards
                .map(|hazard| (hazard.severity, hazard.never.depends_on_equipment()))
                .collect::<Vec<_>>(),
        ),
        places: List::from(gathering.places),
        rules: List::from(gathering.rules),
    };
    (tables, gathering.texts)
}

fn rows<T, R>(items: &List<T>, row: impl FnMut(&T) -> R) -> List<R> {
    List::from(items.iter().map(row).collect::<Vec<_>>())
}

fn device(device: &Device) -> DeviceRow {
    DeviceRow {
        flow: device.flow,
        fits: device.fits.clone(),
        group_flows: device.group_flows.clone(),
        air_for: device.air_for.clone(),
        ventilates: device.ventilates,
        reservoir: device.reservoir,
    }
}

fn target(target: &Target) -> TargetRow {
    TargetRow {
        groups: target.groups.clone(),
        condition: target.condition,
        outranks: target.outranks.clone(),
        minute_of_life: target.minute_of_life,
        saturation: target.saturation,
        urgent: target.urgent,
        ladder: target.ladder.clone(),
    }
}

#[derive(Default)]
struct Gathering {
    texts: Texts,
    places: Vec<PlaceRow>,
    rules: Vec<RuleRow>,
}

impl Gathering {
    fn name(&mut self, id: &str, name: &str) -> NameRow {
        NameRow {
            id: self.texts.span(id),
            name: self.texts.span(name),
        }
    }

    fn rule(&mut self, book: &Rulebook, subject: Subject) {
        let rule: Cited<'_> = book.cite(subject);
        let place = rule.place();
        let row = PlaceRow {
            chapter: self.texts.span(place.chapter),
            heading: self.texts.span(place.heading),
            file: self.texts.span(place.file),
            rationale: self.texts.span(rule.rationale()),
        };
        // Rules that share a reason mostly follow each other.
        let at = self
            .places
            .iter()
            .rposition(|known| *known == row)
            .unwrap_or_else(|| {
                self.places.push(row);
                self.places.len() - 1
            });
        let words = [Words::First, Words::Second, Words::Third];
        self.rules.push(RuleRow {
            id: self.texts.span(rule.id()),
            name: self.texts.span(rule.name()),
            place: u32::try_from(at).unwrap_or(u32::MAX),
            line: place.line,
            words: words.map(|which| self.texts.span(rule.words(which))),
        });
    }
}

/// Texts one after the other, each of them once.
#[derive(Default)]
pub(super) struct Texts {
    all: Vec<String>,
    spans: BTreeMap<String, Span>,
    length: usize,
}

impl Texts {
    /// Where a text stands; it is put at the end where it isn't there yet.
    fn span(&mut self, text: &str) -> Span {
        if text.is_empty() {
            return Span(0, 0);
        }
        if let Some(span) = self.spans.get(text) {
            return *span;
        }
        // Past four gigabytes the compiler refuses the table, for the book shares these places.
        let number = |length| u32::try_from(length).unwrap_or(u32::MAX);
        let span = Span(number(self.length), number(text.len()));
        self.length += text.len();
        self.all.push(text.to_owned());
        self.spans.insert(text.to_owned(), span);
        span
    }

    /// Whether a text is all of them.
    pub fn is(&self, text: &str) -> bool {
        text.len() == self.length && self.all.concat() == text
    }

    /// Where a text stands, if it is there.
    pub fn find(&self, text: &str) -> Option<Span> {
        self.spans.get(text).copied()
    }

    /// The whole text as a constant, a line for each part.
    pub fn emit(&self, out: &mut String) {
        out.push_str("/// The words of the tables, one after the other.\nconst TEXT: &str = concat!(\n");
        for text in &self.all {
            // Writing to a String cannot fail.
            let _ = writeln!(out, "    {text:?},");
        }
        out.push_str(");\n");
    }
}
