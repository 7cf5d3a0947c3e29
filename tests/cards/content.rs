//! What stands on the faces is what stands in the book.

use std::collections::BTreeSet;

use oxyfolio::RULEBOOK;
use oxyfolio::book::Severity;
use oxyfolio::cards::data::Body;
use oxyfolio::check::duration;
use oxyfolio::quantity::{Flow, Pressure, PressureUnit};

use super::printed::{self, alone, pages, squashed};

#[test]
fn every_text_of_every_card_is_printed_whole() {
    for printed in printed::printed().values() {
        let all = pages(printed).concat();
        let mut looked_at = 0;
        for card in &printed.document.cards {
            let mut texts: Vec<String> = vec![card.title.clone(), card.count.clone()];
            texts.extend(card.notes.iter().cloned());
            match &card.body {
                Body::Devices { rows, .. } => texts.extend(rows.concat()),
                Body::Targets { items } => {
                    for item in items {
                        texts.extend([item.name.clone(), item.aim.clone()]);
                        texts.extend(item.lines.concat());
                    }
                }
                Body::Newborn { lead, rows } => {
                    texts.extend(lead.concat());
                    for row in rows {
                        texts.extend([
                            row.from.clone(),
                            row.aim.clone(),
                            row.up.clone(),
                            row.down.clone(),
                        ]);
                    }
                }
                Body::Durations {
                    facts, basis, rows, ..
                } => {
                    texts.extend([facts.clone(), basis.clone()]);
                    // The words of rows below the minimum.
                    texts.extend(rows.iter().map(|row| row.mark.clone()));
                }
                Body::Cylinders {
                    cylinders,
                    connections,
                } => {
                    texts.extend(cylinders.iter().flat_map(|row| row.cells.clone()));
                    for row in connections {
                        texts.extend([row.gas.clone(), row.known_by.clone(), row.oxygen_set.clone()]);
                    }
                }
                Body::Steps { not_when, steps, .. } | Body::Poster { not_when, steps, .. } => {
                    texts.extend(not_when.clone());
                    for step in steps {
                        texts.extend([step.text.clone(), step.why.clone(), step.prevents.clone()]);
                    }
                }
                Body::Checklist { items } => texts.extend(items.clone()),
                Body::Cautions { items } => {
                    for item in items {
                        texts.extend([item.severity.clone(), item.say.clone(), item.remedy.clone()]);
                    }
                }
                Body::CheckOff {
                    steps, who, purpose, ..
                } => {
                    texts.extend([who.clone(), purpose.clone()]);
                    for step in steps {
                        texts.extend([step.text.clone(), step.place.clone(), step.after.clone()]);
                    }
                }
                Body::Log { columns, sizes } => {
                    texts.extend(columns.clone());
                    texts.extend(sizes.iter().map(|row| row.text.clone()));
                }
            }
            for text in texts {
                looked_at += 1;
                // A number below nothing is printed with a minus.
                let text = if text.contains(" -20 ") || text.contains("-30 to") || text.contains("-20 to") {
                    text.replace("-30 to", "−30 to").replace("-20 to", "−20 to")
                } else {
                    text
                };
                assert!(
                    all.contains(&squashed(&text)),
                    "{}: {} lacks {text:?}",
                    printed.name,
                    card.id
                );
            }
        }
        assert!(looked_at > 10, "{}", printed.name);
    }
}

/// A number as it is printed, with its sign.
fn numbers(text: &str) -> BTreeSet<String> {
    text.split(|sign: char| !(sign.is_ascii_digit() || sign == '.'))
        .map(|number| number.trim_matches('.').to_owned())
        .filter(|number| !number.is_empty())
        .collect()
}

#[test]
fn every_number_on_a_face_stands_in_the_data() {
    for printed in printed::printed().values() {
        let mut known = BTreeSet::new();
        let all = serde_json::to_value(&printed.document).unwrap();
        let mut texts = Vec::new();
        printed::collect(&all, &mut texts);
        for text in &texts {
            known.extend(numbers(&text.replace('₂', " 2 ")));
        }
        // Faces, pages and sheets are counted by the template.
        let text = super::common::poppler("pdftotext", &["-layout"], &printed.file);
        known.extend((0..=60).map(|number| number.to_string()));
        let minutes: BTreeSet<String> = numbers(&text)
            .into_iter()
            .filter(|number| !known.contains(number))
            .collect();
        assert!(minutes.is_empty(), "{}: {minutes:?}", printed.name);
    }
}

#[test]
fn every_minute_of_every_table_is_printed_and_is_the_checkers() {
    for printed in alone() {
        let text = super::common::poppler("pdftotext", &["-raw"], &printed.file);
        let lines: Vec<Vec<&str>> = text
            .lines()
            .map(|line| line.split_whitespace().collect())
            .collect();
        let mut tables = 0;
        for card in &printed.document.cards {
            let Body::Durations {
                cylinder,
                pressure_unit,
                flows,
                rows,
                ..
            } = &card.body
            else {
                continue;
            };
            tables += 1;
            let cylinder = RULEBOOK
                .cylinders
                .iter()
                .find(|known| *known.rule.name == **cylinder)
                .unwrap();
            let unit = if pressure_unit == "psi" {
                PressureUnit::Psi
            } else {
                PressureUnit::Bar
            };
            for row in rows {
                let pressure = Pressure::in_unit(row.pressure.parse().unwrap(), unit).unwrap();
                for (flow, minutes) in flows.iter().zip(&row.minutes) {
                    let flow = Flow::litres_per_minute(flow.parse().unwrap()).unwrap();
                    let lasts = duration::of_cylinder(&RULEBOOK, cylinder, pressure, flow).unwrap();
                    assert_eq!(&lasts.minutes.to_string(), minutes);
                }
                // A wide table is split by flows: the row is then printed in two parts, each after its pressure.
                let whole = |from: usize, to: usize| {
                    let wanted: Vec<&str> = std::iter::once(row.pressure.as_str())
                        .chain(row.minutes[from..to].iter().map(String::as_str))
                        .collect();
                    lines.iter().any(|line| line.ends_with(&wanted))
                };
                let n = row.minutes.len();
                assert!(
                    whole(0, n) || (1..n).any(|at| whole(0, at) && whole(at, n)),
                    "{} lacks {row:?}",
                    printed.name
                );
            }
            // Rows go past the in-service minimum, and those below it say so.
            let minimum = RULEBOOK.policies.in_service_minimum;
            for row in rows {
                let pressure = Pressure::in_unit(row.pressure.parse().unwrap(), unit).unwrap();
                assert_eq!(pressure < minimum, !row.mark.is_empty(), "{row:?}");
            }
            assert!(rows.iter().any(|row| row.mark == "below in-service minimum"));
        }
        assert_eq!(tables, 5, "four cylinders with letters and one metric");
    }
}

#[test]
fn columns_of_minutes_are_the_flows_of_the_devices() {
    let documents = alone().next().unwrap();
    let flows = documents
        .document
        .cards
        .iter()
        .find_map(|card| match &card.body {
            Body::Durations { flows, .. } => Some(flows),
            _ => None,
        })
        .unwrap();
    for device in &RULEBOOK.devices {
        for end in [device.flow.low, device.flow.high] {
            let end = oxyfolio::quantity::Number(end.value().unwrap().as_litres_per_minute()).to_string();
            assert!(flows.contains(&end), "{}: {end}", device.rule.id);
        }
    }
}

#[test]
fn critical_steps_say_why_and_what_they_prevent() {
    for printed in alone() {
        for card in &printed.document.cards {
            let Body::Steps { procedure, steps, .. } = &card.body else {
                continue;
            };
            let of_book = RULEBOOK
                .procedures
                .iter()
                .find(|known| *known.rule.name == **procedure)
                .unwrap();
            for (line, step) in steps.iter().zip(&of_book.steps) {
                assert_eq!(line.critical, step.critical);
                assert_eq!(line.why.is_empty(), !step.critical);
                for hazard in &step.prevents {
                    let hazard = RULEBOOK.hazard(*hazard).unwrap();
                    assert!(line.prevents.contains(&*hazard.rule.name));
                }
            }
        }
    }
}

/// The set is complete: each procedure has its card, the hazards of the card of cautions are worded as in the book.
#[test]
fn every_procedure_has_its_card_and_its_check_off_sheet() {
    for procedure in &RULEBOOK.procedures {
        let named = |printed: &printed::Printed| {
            printed.document.cards.iter().any(|card| match &card.body {
                Body::Steps { procedure: name, .. } => *name == *procedure.rule.name,
                Body::CheckOff { .. } => card.title.ends_with(&*procedure.rule.name),
                _ => false,
            })
        };
        assert!(alone().all(named), "{} has no card", procedure.rule.id);
        assert!(
            named(&printed::printed()["check-off-letter"]),
            "{} has no sheet",
            procedure.rule.id
        );
    }
    let cautions = alone()
        .next()
        .unwrap()
        .document
        .cards
        .iter()
        .find_map(|card| match &card.body {
            Body::Cautions { items } => Some(items),
            _ => None,
        });
    for item in cautions.unwrap() {
        let hazard = RULEBOOK.hazard(RULEBOOK.find_hazard(&item.id).unwrap()).unwrap();
        let word = match hazard.severity {
            Severity::Stop => "STOP",
            Severity::Warn => "WARN",
            Severity::Note => "NOTE",
        };
        assert_eq!((item.severity.as_str(), &*item.say), (word, &*hazard.say));
    }
}
