//! Try a set-up: the same questions as `oxyfolio setup`, answered by the same checker, with the rule quoted. What was
//! asked stands in the page's address.

mod answer;
mod asked;

use maud::{Markup, html};

use super::{
    page::{Room, not_with_errors, worded},
    query::Query,
    reading::Reading,
    routes::Page,
};
use crate::book::{Rule, Rulebook};
use crate::compile::render::visible;
use crate::quantity::{PressureUnit, TemperatureUnit};

use asked::{Asked, Field};

/// The page.
pub fn page(reading: &Reading, query: &Query) -> Page {
    let content = match reading.sound_book() {
        Some(book) => asking(reading, book, query),
        None => html! {
            h1 { "Try a set-up" }
            div #answer data-part { (not_with_errors(reading, "no set-up can be checked")) }
        },
    };
    Page {
        title: "Try a set-up".to_owned(),
        room: Room::Trial,
        content,
    }
}

fn asking(reading: &Reading, book: &Rulebook, query: &Query) -> Markup {
    let asked = Asked::read(book, query);
    html! {
        h1 { "Try a set-up" }
        p { "Ask the book about a device, a flow, a patient and a cylinder. What is left out can't be checked, and the answer says so." }
        div.trial {
            (form(book, query, &asked))
            div.answer #answer data-part {
                @if query.is_empty() {
                    p { "The answer will stand here. The page's address holds the question: keep it or send it to another window of this machine." }
                } @else if asked.mistakes.is_empty() {
                    (answer::shown(reading, book, &asked))
                } @else {
                    h2 #answer-heading { "Not yet asked" }
                    ul.mistakes {
                        @for (field, words) in &asked.mistakes {
                            li { a href={ "#" (field.name()) } { (field.label()) } ": " (worded(words)) }
                        }
                    }
                }
            }
        }
    }
}

fn form(book: &Rulebook, query: &Query, asked: &Asked) -> Markup {
    let agency = &book.agency;
    let pressure = match agency.pressure_unit {
        PressureUnit::Psi => "1500 psi",
        PressureUnit::Bar => "100 bar",
        PressureUnit::Kpa => "10000 kPa",
        PressureUnit::Mpa => "10 MPa",
    };
    let temperature = match agency.temperature_unit {
        TemperatureUnit::Celsius => "20 °C",
        TemperatureUnit::Fahrenheit => "70 °F",
    };
    let rules = |rules: &mut dyn Iterator<Item = &Rule>| -> Vec<(String, String)> {
        rules
            .map(|rule| (rule.id.to_string(), rule.name.to_string()))
            .collect()
    };
    html! {
        form.try action="/try" {
            fieldset {
                legend { "Device" }
                (choice(Field::Device, query, asked, &rules(&mut book.devices.iter().map(|device| &device.rule))))
                (text(Field::Flow, query, asked, "2 L/min"))
            }
            fieldset {
                legend { "Patient" }
                (choice(Field::Group, query, asked, &rules(&mut book.groups.iter().map(|group| &group.rule))))
                (conditions(book, query, asked))
                (text(Field::SinceBirth, query, asked, "3 min"))
                (text(Field::Spo2, query, asked, "91 %"))
            }
            fieldset {
                legend { "Cylinder" }
                (choice(Field::Cylinder, query, asked, &rules(&mut book.cylinders.iter().map(|cylinder| &cylinder.rule))))
                (text(Field::Pressure, query, asked, pressure))
                (text(Field::Temperature, query, asked, temperature))
                (text(Field::Minutes, query, asked, "40 min"))
            }
            p { button type="submit" { "Check this set-up" } " " a href="/try" { "Begin anew" } }
        }
    }
}

fn choice(field: Field, query: &Query, asked: &Asked, options: &[(String, String)]) -> Markup {
    let chosen = query.get(field.name());
    html! {
        p.field {
            label for=(field.name()) { (field.label()) }
            select #(field.name()) name=(field.name()) aria-invalid=[asked.mistake(field).map(|_| "true")]
                aria-describedby=[asked.mistake(field).map(|_| format!("{}-wrong", field.name()))] {
                option value="" { "not given" }
                @for (id, name) in options {
                    option value=(id) selected[chosen.is_some_and(|chosen| chosen.eq_ignore_ascii_case(id) || chosen.eq_ignore_ascii_case(name))] { (visible(name)) }
                }
            }
            (wrong(field, asked))
        }
    }
}

fn text(field: Field, query: &Query, asked: &Asked, example: &str) -> Markup {
    html! {
        p.field {
            label for=(field.name()) { (field.label()) " " span.small { "such as " (example) } }
            input #(field.name()) type="text" name=(field.name()) value=(query.get(field.name()).unwrap_or(""))
                autocomplete="off" aria-invalid=[asked.mistake(field).map(|_| "true")]
                aria-describedby=[asked.mistake(field).map(|_| format!("{}-wrong", field.name()))];
            (wrong(field, asked))
        }
    }
}

fn wrong(field: Field, asked: &Asked) -> Markup {
    html! {
        @if let Some(words) = asked.mistake(field) {
            span.wrong #{ (field.name()) "-wrong" } { (worded(words)) }
        }
    }
}

fn conditions(book: &Rulebook, query: &Query, asked: &Asked) -> Markup {
    let chosen: Vec<&str> = query.all(Field::Condition.name());
    let known = book
        .conditions
        .iter()
        .map(|condition| (&*condition.id, &*condition.name));
    html! {
        fieldset.field #(Field::Condition.name()) tabindex="-1" {
            legend { (Field::Condition.label()) }
            @for (id, name) in [("none", "None of these")].into_iter().chain(known) {
                label.tick {
                    input type="checkbox" name=(Field::Condition.name()) value=(id) checked[chosen.contains(&id)];
                    " " (visible(name))
                }
            }
            (wrong(Field::Condition, asked))
        }
    }
}
