//! The diagram as SVG.

use std::fmt::Write as _;

use maud::{Markup, html};

use super::{
    graph::Graph,
    layout::{HIGH, Line, WIDE, layout},
};
use crate::compile::render::visible;

/// The longest name that fits into a step, in characters.
const LONGEST: usize = 18;

/// How steps are marked by a walk: those that are done, in their order, and the one that is looked at.
#[derive(Clone, Debug, Default)]
pub struct Shown {
    /// Done before.
    pub done: Vec<usize>,
    /// The one that is looked at.
    pub now: Option<usize>,
    /// Whether it is the one that does harm.
    pub is_wrong: bool,
}

/// Draws a procedure.
pub fn drawn(graph: &Graph, name: &str, shown: &Shown) -> Markup {
    let layout = layout(graph);
    if graph.steps.is_empty() {
        return html! { p { "There are no steps to draw." } };
    }
    let (width, height) = (layout.width.round(), layout.height.round());
    html! {
        div.diagram tabindex="0" role="region" aria-label={ "Diagram of " (name) ", may scroll sideways" } {
            svg xmlns="http://www.w3.org/2000/svg" viewBox={ "0 0 " (width) " " (height) } width=(width) height=(height)
                role="img" aria-labelledby="diagram-title" aria-describedby="in-words" {
                title #diagram-title { "Which steps of " (name) " must wait for which; the same in words below" }
                @for Line { from, to, points } in &layout.lines {
                    path.line.taken[shown.done.contains(from) && (shown.done.contains(to) || shown.now == Some(*to))]
                        d=(path(points)) {}
                    @if let Some((x, y)) = points.last() {
                        path.head d={ "M" (x - 4.0) " " (y - 7.0) "L" (x) " " (y) "L" (x + 4.0) " " (y - 7.0) "Z" } {}
                    }
                }
                @for (index, (step, (x, y))) in graph.steps.iter().zip(&layout.steps).enumerate() {
                    g.step.critical[step.critical].done[shown.done.contains(&index)].now[shown.now == Some(index)]
                        .wrong[shown.is_wrong && shown.now == Some(index)] {
                        title { (index + 1) ". " (visible(&step.say)) }
                        rect x=(x - WIDE / 2.0) y=(y) width=(WIDE) height=(HIGH) rx="6" {}
                        text.number x=(x - WIDE / 2.0 + 14.0) y=(y + HIGH / 2.0 + 5.0) { (index + 1) }
                        text x=(x - WIDE / 2.0 + 40.0) y=(y + HIGH / 2.0 + 5.0) { (short(&step.id)) }
                    }
                }
            }
        }
    }
}

/// A line through its points: straight through rows, curved between them.
fn path(points: &[(f64, f64)]) -> String {
    let mut d = String::new();
    for (number, (x, y)) in points.iter().enumerate() {
        let before = number.checked_sub(1).and_then(|before| points.get(before));
        // Writing to a String cannot fail.
        let _ = match before {
            None => write!(d, "M{x:.1} {y:.1}"),
            Some((px, _)) if (px - x).abs() < 0.05 => write!(d, "L{x:.1} {y:.1}"),
            Some((px, py)) => {
                let half = f64::midpoint(*py, *y);
                write!(d, "C{px:.1} {half:.1} {x:.1} {half:.1} {x:.1} {y:.1}")
            }
        };
    }
    d
}

fn short(id: &str) -> String {
    let shown = visible(id);
    if shown.chars().count() <= LONGEST {
        return shown.into_owned();
    }
    let head: String = shown.chars().take(LONGEST - 1).collect();
    format!("{head}…")
}
