//! The order of a procedure's steps: a diagram, the same as a list, and a walk through an order that isn't safe.
//!
//! The diagram is drawn from the rule as it is written, so that it is there while something else in the book is wrong.

mod drawing;
mod graph;
mod layout;
mod walk;

use maud::{Markup, html};

use super::{
    chapter,
    page::Room,
    problems,
    query::{Query, escaped},
    reading::{Reading, text_of},
    routes::Page,
};
use crate::book::Kind;
use crate::compile::{render::visible, source::Span, yaml::Node};

use graph::Graph;
use walk::Walk;

/// The list of procedures.
pub fn list(reading: &Reading) -> Page {
    let content = html! {
        h1 { "Order of steps" }
        p {
            "A procedure says of each step which others must come before it. Every order that this allows is tried on a "
            "model of the equipment when the book is checked; where one does harm, it is shown here step by step."
        }
        ul.procedures #procedures data-part {
            @for (rule, id) in procedures(reading) {
                @if let Some(id) = id {
                    li {
                        a href={ "/order/" (escaped(id)) } { (visible(text_of(rule, "name").unwrap_or(id))) }
                        @if let Some(purpose) = text_of(rule, "purpose") { p.small { (visible(purpose)) } }
                        @let wrong = problems_in(reading, rule);
                        @if wrong > 0 { p { span.count.error { (super::page::numbered(wrong, "problem")) } } }
                    }
                }
            }
        }
    };
    Page {
        title: "Order of steps".to_owned(),
        room: Room::Orders,
        content,
    }
}

fn procedures(reading: &Reading) -> impl Iterator<Item = (&Node, Option<&str>)> {
    reading
        .all_blocks()
        .filter(|written| written.block.kind == Kind::Procedure)
        .flat_map(|written| written.rules())
}

fn is_in(rule: &Node, span: Span) -> bool {
    span.file == rule.span.file && span.start >= rule.span.start && span.start < rule.span.end
}

fn problems_in(reading: &Reading, rule: &Node) -> usize {
    let all = reading.diagnostics.iter();
    all.filter(|found| found.span.is_some_and(|span| is_in(rule, span)))
        .count()
}

/// The page of a procedure; none where the book has no such procedure.
pub fn page(reading: &Reading, id: &str, query: &Query) -> Option<Page> {
    let (rule, _) = procedures(reading).find(|(_, known)| *known == Some(id))?;
    let name = visible(text_of(rule, "name").unwrap_or(id)).into_owned();
    let graph = Graph::of(reading, rule);
    let walk = Walk::asked(reading, id, query);
    let shown = walk.as_ref().map(Walk::shown).unwrap_or_default();
    let content = html! {
        h1 { (name) }
        div #order data-part {
            @if let Some(purpose) = text_of(rule, "purpose") { p.lead { (visible(purpose)) } }
            p {
                (proved(reading, walk.as_ref(), &graph))
                " "
                @if let Some(address) = chapter::rule_address(reading, Kind::Procedure, id) {
                    a href=(address) { "The procedure in its chapter" } "."
                }
            }
            @for found in reading.diagnostics.iter().filter(|found| found.span.is_some_and(|span| is_in(rule, span))) {
                (problems::one(found, reading, true))
            }
            @if let Some(walk) = &walk { (walk.page(id)) }
            h2 { "As a diagram" }
            p.small {
                "A line leads down from a step to those that must wait for it. Steps that no line joins, on the way up or "
                "down, may be done in any order, or by two people at once."
            }
            (drawing::drawn(&graph, &name, &shown))
            h2 #in-words { "In words" }
            (in_words(&graph))
        }
    };
    Some(Page {
        title: format!("Order of steps: {name}"),
        room: Room::Orders,
        content,
    })
}

/// What is known of all orders.
fn proved(reading: &Reading, walk: Option<&Walk<'_>>, graph: &Graph) -> Markup {
    html! {
        @if walk.is_some() {
            strong { "Not every order is safe." }
        } @else if reading.is_sound {
            (orders(graph)) " was tried, and each is safe."
        } @else if reading.book.is_some() {
            (orders(graph)) " was tried, and none was found to do harm; but the book has other errors."
        } @else {
            strong { "Not proved:" } " the orders are tried when all rules of the book can be read."
        }
    }
}

fn orders(graph: &Graph) -> String {
    match graph.steps.len() {
        1 => "The one order that a single step allows".to_owned(),
        steps => format!("Every order that these {steps} steps allow"),
    }
}

/// The same as the diagram, in words.
fn in_words(graph: &Graph) -> Markup {
    html! {
        ol.steps {
            @for (index, step) in graph.steps.iter().enumerate() {
                li {
                    p.say {
                        (visible(&step.say))
                        @if step.critical { " " span.critical { "critical" } }
                    }
                    p.small {
                        code { (visible(&step.id)) } " · "
                        @if step.after.is_empty() { "may come first" }
                        @else { "after " (numbers(&step.after)) }
                        @let free = graph.free_of(index);
                        @if !free.is_empty() { "; in any order with " (numbers(&free)) }
                    }
                }
            }
        }
    }
}

fn numbers(steps: &[usize]) -> String {
    let numbers: Vec<String> = steps.iter().map(|step| (step + 1).to_string()).collect();
    let word = if steps.len() == 1 { "step" } else { "steps" };
    format!("{word} {}", numbers.join(", "))
}

/// A key of a step in words.
pub fn key_words(key: &str) -> &str {
    match key {
        "do" => "action",
        other => other,
    }
}
