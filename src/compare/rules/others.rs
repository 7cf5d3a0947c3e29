//! Groups, conditions, connections, cards and the agency.

use super::{
    super::change::{Changes, Direction, Sense},
    each,
    ends::{Inside, range},
    head, ids,
};
use crate::book::{Agency, Card, Connection, Group, Kind, Layout, Rulebook};
use crate::quantity::{PressureUnit, TemperatureUnit};

pub fn changes(changes: &mut Changes<'_>) {
    each(
        changes,
        Kind::Group,
        |book| &book.groups,
        |group| &group.rule,
        |_, group| (format!("{}, {}", group.rule.name, group.age), Direction::Other),
        |changes, old: &Group, new| {
            range(changes, ["age from", "age to"], old.age, new.age, Inside::Neither);
        },
    );
    each(
        changes,
        Kind::Connection,
        |book| &book.connections,
        |connection| &connection.rule,
        |_, connection| (connection.rule.name.to_string(), Direction::Other),
        connection,
    );
    each(
        changes,
        Kind::Card,
        |book| &book.cards,
        |card| &card.rule,
        |_, card| (card.rule.name.to_string(), Direction::Other),
        card,
    );
    agency(changes);
}

fn connection(changes: &mut Changes<'_>, old: &Connection, new: &Connection) {
    changes.yes_or_no(
        "may be mated",
        old.may_be_mated,
        new.may_be_mated,
        Sense::LessIsStricter,
    );
    changes.plain("gas", &old.gas, &new.gas);
    let pins = |one: &Connection| {
        let pins: Vec<String> = one.pins.iter().map(ToString::to_string).collect();
        pins.join(", ")
    };
    changes.plain("pins", &pins(old), &pins(new));
    let text = |text: &Option<crate::book::Text>| text.as_ref().map_or_else(String::new, ToString::to_string);
    changes.plain("thread", &text(&old.thread), &text(&new.thread));
    changes.plain("number", &text(&old.number), &text(&new.number));
    changes.text("note", &["note"], &text(&old.note), &text(&new.note));
}

fn card(changes: &mut Changes<'_>, old: &Card, new: &Card) {
    let (was, is) = (contents(&changes.old.book, old), contents(&changes.new.book, new));
    changes.plain("layout", was.layout, is.layout);
    if was.layout == is.layout {
        for (was, is) in was.lists.iter().zip(&is.lists) {
            changes.list(was.0, &was.1, &is.1, Sense::Neither);
        }
        let [was, is] = [&old.layout, &new.layout].map(|layout| match layout {
            Layout::Checklist { items } | Layout::Log { items, .. } => Some(items),
            _ => None,
        });
        if let (Some(was), Some(is)) = (was, is) {
            changes.texts("item", &["items"], was, is);
        }
    }
    let sizes =
        |card: &Card| -> Vec<String> { card.sizes.iter().map(|size| size.label().to_owned()).collect() };
    changes.set("size", &sizes(old), &sizes(new), Sense::Neither);
    changes.texts("note", &["notes"], &old.notes, &new.notes);
}

/// What is on a card, by name.
struct Contents {
    layout: &'static str,
    lists: Vec<(&'static str, Vec<String>)>,
}

fn contents(book: &Rulebook, card: &Card) -> Contents {
    let devices = |list: &[_]| ids(list, |id| Some(book.device(id)?.rule.id.to_string()));
    let targets = |list: &[_]| ids(list, |id| Some(book.target(id)?.rule.id.to_string()));
    let cylinders = |list: &[_]| ids(list, |id| Some(book.cylinder(id)?.rule.id.to_string()));
    let procedures = |list: &[_]| ids(list, |id| Some(book.procedure(id)?.rule.id.to_string()));
    let (layout, lists) = match &card.layout {
        Layout::Devices { devices: list } => ("devices", vec![("device", devices(list))]),
        Layout::Targets { targets: list } => ("targets", vec![("target", targets(list))]),
        Layout::Newborn { targets: list } => ("newborn", vec![("target", targets(list))]),
        Layout::Durations {
            cylinders: list,
            pressures,
            flows,
        } => (
            "durations",
            vec![
                ("cylinder", cylinders(list)),
                ("reading", pressures.iter().map(ToString::to_string).collect()),
                ("flow", flows.iter().map(ToString::to_string).collect()),
            ],
        ),
        Layout::Cylinders {
            cylinders: list,
            connections,
        } => (
            "cylinders",
            vec![
                ("cylinder", cylinders(list)),
                (
                    "connection",
                    ids(connections, |id| Some(book.connection(id)?.rule.id.to_string())),
                ),
            ],
        ),
        Layout::Steps { procedures: list } => ("steps", vec![("procedure", procedures(list))]),
        Layout::Checklist { .. } => ("checklist", Vec::new()),
        Layout::Cautions { hazards } => (
            "cautions",
            vec![(
                "hazard",
                ids(hazards, |id| Some(book.hazard(id)?.rule.id.to_string())),
            )],
        ),
        Layout::CheckOff { procedures: list } => ("check-off", vec![("procedure", procedures(list))]),
        Layout::Log { cylinders: list, .. } => ("log", vec![("cylinder", cylinders(list))]),
        Layout::Poster { procedures: list } => ("poster", vec![("procedure", procedures(list))]),
    };
    Contents { layout, lists }
}

fn agency(changes: &mut Changes<'_>) {
    let (old, new): (&Agency, &Agency) = (&changes.old.book.agency, &changes.new.book.agency);
    changes.about(Kind::Agency, &new.rule);
    head(changes, &old.rule, &new.rule);
    changes.plain("place", &old.location, &new.location);
    changes.plain("medical director", &old.medical_director, &new.medical_director);
    changes.plain("edition", &old.edition, &new.edition);
    for (what, old, new) in [
        ("effective", old.effective, new.effective),
        ("review", old.review, new.review),
        ("signed off", old.signed_off, new.signed_off),
    ] {
        changes.plain(what, &old.to_string(), &new.to_string());
    }
    let pressure = |unit: PressureUnit| unit.symbol();
    changes.plain(
        "pressure unit",
        pressure(old.pressure_unit),
        pressure(new.pressure_unit),
    );
    let temperature = |unit: TemperatureUnit| match unit {
        TemperatureUnit::Celsius => "°C",
        TemperatureUnit::Fahrenheit => "°F",
    };
    changes.plain(
        "temperature unit",
        temperature(old.temperature_unit),
        temperature(new.temperature_unit),
    );
    changes.plain("language", old.language.word(), new.language.word());
    changes.plain("paper", old.paper.word(), new.paper.word());
    changes.texts("disclaimer", &["disclaimers"], &old.disclaimers, &new.disclaimers);
    let conditions = |book: &Rulebook| -> Vec<String> {
        let all = book.conditions.iter();
        all.map(|condition| format!("{} ({})", condition.id, condition.name))
            .collect()
    };
    let (was, is) = (conditions(&changes.old.book), conditions(&changes.new.book));
    // A condition is named by its targets: where one can't be read, nothing is known of its condition.
    let unread = [changes.old, changes.new]
        .iter()
        .any(|edition| edition.left_out.iter().any(|rule| rule.kind == Kind::Target));
    if !unread {
        changes.set("condition", &was, &is, Sense::Neither);
    }
}
