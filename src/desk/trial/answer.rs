//! The checker's answer, with the rules it quotes.

use maud::{Markup, html};

use super::super::{chapter, reading::Reading};
use super::asked::Asked;
use crate::book::Rulebook;
use crate::check::{
    About, Finding, Level, check_setup,
    duration::{self, Duration},
};
use crate::compile::render::visible;

/// What the checker says.
pub fn shown(reading: &Reading, book: &Rulebook, asked: &Asked) -> Markup {
    let Some(setup) = asked.setup() else {
        return html! {};
    };
    let mut findings = Vec::new();
    let not_checked = match check_setup(book, &setup, |finding| findings.push(finding)) {
        Ok(not_checked) => not_checked,
        Err(error) => return html! { p.wrong { (error) } },
    };
    // The gravest first; within a level in the order they were found.
    findings.sort_by_key(|finding| core::cmp::Reverse(finding.level));
    let is_wrong = findings.iter().any(|finding| finding.level.is_wrong());
    let minutes = findings.iter().find_map(|finding| match finding.about {
        About::MinutesLeft { minutes_left } => Some(minutes_left),
        _ => None,
    });
    let name = asked
        .device
        .and_then(|device| book.device(device))
        .map_or("", |device| &*device.rule.name);
    let unseen: Vec<&str> = not_checked.hazards().map(|hazard| hazard.rule.name()).collect();
    html! {
        h2 #answer-heading {
            (visible(name))
            @if let Some(flow) = asked.flow { " at " (flow) }
        }
        @if let Some(minutes) = minutes {
            p.minutes { "The gas lasts " strong { (minutes) " min" } }
            @if let Some(lasts) = lasts(book, asked) { (methods(&lasts)) }
        }
        @if !is_wrong { p.fine { "Nothing against the book was found." } }
        ul.findings {
            @for finding in &findings { (one(reading, finding)) }
        }
        @if !unseen.is_empty() {
            p {
                "A set-up does not show the state of the equipment. Look yourself for: "
                (visible(&unseen.join("; "))) "."
            }
        }
    }
}

fn lasts(book: &Rulebook, asked: &Asked) -> Option<Duration> {
    let cylinder = book.cylinder(asked.cylinder?)?;
    let (pressure, flow) = (asked.pressure?, asked.flow?);
    match asked.temperature {
        Some(temperature) => duration::of_cylinder_at(book, cylinder, pressure, temperature, flow),
        None => duration::of_cylinder(book, cylinder, pressure, flow),
    }
    .ok()
}

/// How the minutes came about.
fn methods(lasts: &Duration) -> Markup {
    html! {
        p.small {
            "By the density of real oxygen " (lasts.by_density.minutes) " min"
            @if let Some(by_factor) = lasts.by_factor { ", by the factor of the size " (by_factor.minutes) " min" }
            "; the lower counts. At " (lasts.temperature) ", down to the residual pressure, rounded down."
        }
    }
}

/// A finding, in the words of `oxyfolio setup`.
fn one(reading: &Reading, finding: &Finding<'_>) -> Markup {
    let rule = finding.rule;
    html! {
        li class={ "finding " (finding.level.code()) } {
            p.what {
                strong { (finding.level.word()) } ": " (visible(&finding.to_string())) " " code { "[" (finding.code()) "]" }
            }
            @if finding.level != Level::Unknown {
                @if let Some(remedy) = finding.remedy() { p.remedy { (visible(remedy)) } }
                p.where {
                    "Rule: "
                    @match chapter::rule_address(reading, finding.kind, rule.id()) {
                        Some(address) => { a href=(address) { (finding.kind.word()) " " (visible(rule.name())) } }
                        None => { (finding.kind.word()) " " (visible(rule.name())) }
                    }
                    ", " (visible(&rule.place().to_string()))
                }
                @if finding.level.is_wrong() && !rule.rationale().is_empty() {
                    blockquote {
                        @for paragraph in rule.rationale().split("\n\n") { p { (visible(paragraph)) } }
                    }
                }
            }
        }
    }
}
