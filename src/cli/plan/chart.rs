//! A picture of the plan: what is left in the cylinders against time, as SVG of our own.

use core::fmt::Write as _;

use super::Answered;
use crate::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS};
use crate::quantity::{Gauge, Number, Pressure};
use crate::rounding::down;

const WIDTH: f64 = 960.0;
const HEIGHT: f64 = 620.0;
const LEFT: f64 = 80.0;
const RIGHT: f64 = 920.0;
const TOP: f64 = 150.0;
const BOTTOM: f64 = 490.0;

/// Lines that differ in colour and, for those who don't see colours, in dashes.
const COLOURS: [&str; 6] = ["#0057a8", "#a84300", "#00735c", "#8a1f7a", "#6b5a00", "#404040"];
const DASHES: [&str; 6] = ["none", "9 3", "2 3", "12 3 3 3", "6 6", "16 4"];

/// As many change-overs get a label of their own height before heights repeat.
const ROWS: usize = 3;

/// A mark every so many units, so that there are about `marks`.
fn step(whole: f64, marks: f64) -> f64 {
    let least = whole / marks;
    let mut ten = 1.0;
    while ten * 10.0 <= least {
        ten *= 10.0;
    }
    let fits = [1.0, 2.0, 5.0, 10.0].into_iter().map(|times| times * ten);
    fits.into_iter().find(|step| *step >= least).unwrap_or(ten)
}

/// Text that can stand in XML, not longer than a line has room for.
fn escaped(text: &str, most: usize) -> String {
    let mut escaped = String::new();
    let is_cut = text.chars().count() > most;
    for c in text
        .chars()
        .take(if is_cut { most.saturating_sub(1) } else { most })
    {
        match c {
            '&' => escaped.push_str("&amp;"),
            '<' => escaped.push_str("&lt;"),
            '>' => escaped.push_str("&gt;"),
            '"' => escaped.push_str("&quot;"),
            c if crate::compile::render::is_hidden(c) || c.is_control() => escaped.push('\u{FFFD}'),
            c => escaped.push(c),
        }
    }
    if is_cut {
        escaped.push('…');
    }
    escaped
}

/// Where a time and a reading stand in the picture.
struct Scale {
    minutes: f64,
    most: f64,
    unit: crate::quantity::PressureUnit,
}

impl Scale {
    fn x(&self, minutes: f64) -> f64 {
        LEFT + (RIGHT - LEFT) * (minutes / self.minutes).min(1.0)
    }

    fn y(&self, pressure: Pressure<Gauge>) -> f64 {
        self.level(pressure.as_unit(self.unit))
    }

    fn level(&self, value: f64) -> f64 {
        BOTTOM - (BOTTOM - TOP) * (value / self.most).min(1.0)
    }
}

/// The drawing so far.
struct Drawing(String);

impl Drawing {
    /// Writing to a text doesn't fail.
    fn add(&mut self, element: core::fmt::Arguments<'_>) {
        let _ = self.0.write_fmt(element);
        self.0.push('\n');
    }

    fn text(&mut self, (x, y): (f64, f64), look: &str, text: &str) {
        self.add(format_args!(
            r#"<text x="{x:.1}" y="{y:.1}" {look}>{text}</text>"#
        ));
    }

    fn line(&mut self, (x1, y1): (f64, f64), (x2, y2): (f64, f64), look: &str) {
        self.add(format_args!(
            r#"<line x1="{x1:.1}" y1="{y1:.1}" x2="{x2:.1}" y2="{y2:.1}" {look}/>"#
        ));
    }
}

/// The picture.
pub fn svg(answered: &Answered<'_>) -> String {
    let answer = answered.answer;
    let unit = answered.book.agency.pressure_unit;
    let readings = answered.transport.plan.cylinders.iter().map(|one| one.pressure);
    let change_over = answered.book.policies.change_over_pressure;
    let highest = readings
        .chain([change_over])
        .fold(0.0_f64, |most, one| most.max(one.as_unit(unit)));
    let scale = Scale {
        minutes: answer.expected_minutes,
        most: highest * 1.05,
        unit,
    };
    let mut drawing = Drawing(String::new());
    drawing.add(format_args!(
        r##"<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" width="{WIDTH}" height="{HEIGHT}" font-family="sans-serif" font-size="13" fill="#111">"##
    ));
    drawing.add(format_args!(
        r##"<rect width="{WIDTH}" height="{HEIGHT}" fill="#fff"/>"##
    ));
    head(answered, &mut drawing);
    axes(&scale, &mut drawing);
    legs(answered, &scale, &mut drawing);
    limits(answered, &scale, &mut drawing);
    cylinders(answered, &scale, &mut drawing);
    changes(answered, &scale, &mut drawing);
    foot(&mut drawing);
    drawing.0 + "</svg>\n"
}

fn head(answered: &Answered<'_>, drawing: &mut Drawing) {
    let (answer, agency) = (answered.answer, &answered.book.agency);
    let name = answered.transport.name.as_deref().unwrap_or("Transport plan");
    drawing.add(format_args!("<title>{}</title>", escaped(name, 200)));
    drawing.text(
        (LEFT, 30.0),
        r#"font-size="19" font-weight="bold""#,
        &escaped(name, 75),
    );
    let margin = answered.book.policies.planning_margin;
    let verdict = if answer.enough {
        format!(
            "ENOUGH with the margin of {margin}; beyond it {} min at the last flow",
            answer.spare_minutes
        )
    } else {
        format!(
            "NOT ENOUGH with the margin of {margin}: {} min lack",
            answer.short_minutes
        )
    };
    drawing.text((LEFT, 54.0), r#"font-weight="bold""#, &escaped(&verdict, 110));
    let identity = format!(
        "{}, edition {}, effective {} (book {})",
        agency.rule.name, agency.edition, agency.effective, answered.book.short_digest
    );
    drawing.text((LEFT, 76.0), "", &escaped(&identity, 120));
    drawing.text(
        (LEFT, 94.0),
        "",
        "The time expected, without the margin. Readings are the least to be expected.",
    );
}

fn axes(scale: &Scale, drawing: &mut Drawing) {
    let grid = r##"stroke="#ccc" stroke-width="1""##;
    let by = step(scale.most, 6.0);
    let mut level = 0.0;
    while level <= scale.most {
        let y = scale.level(level);
        drawing.line((LEFT, y), (RIGHT, y), grid);
        let at = (LEFT - 8.0, y + 4.0);
        drawing.text(at, r#"text-anchor="end""#, &Number(level).to_string());
        level += by;
    }
    let by = step(scale.minutes, 10.0);
    let mut minutes = 0.0;
    while minutes <= scale.minutes {
        let x = scale.x(minutes);
        drawing.line((x, BOTTOM), (x, BOTTOM + 5.0), r##"stroke="#111""##);
        let at = (x, BOTTOM + 18.0);
        drawing.text(at, r#"text-anchor="middle""#, &Number(minutes).to_string());
        minutes += by;
    }
    drawing.line((LEFT, BOTTOM), (RIGHT, BOTTOM), r##"stroke="#111""##);
    drawing.text((RIGHT, BOTTOM + 34.0), r#"text-anchor="end""#, "minutes");
    let at = (LEFT - 8.0, TOP - 8.0);
    drawing.text(at, r#"text-anchor="end""#, scale.unit.symbol());
}

/// The legs as bands under the axis.
fn legs(answered: &Answered<'_>, scale: &Scale, drawing: &mut Drawing) {
    let mut from = 0.0;
    for (index, leg) in answered.transport.plan.legs.iter().enumerate() {
        let to = from + leg.minutes();
        let (left, right) = (scale.x(from), scale.x(to));
        let y = BOTTOM + 42.0;
        let fill = if index % 2 == 0 { "#e4ecf4" } else { "#f4ece0" };
        drawing.add(format_args!(
            r#"<rect x="{left:.1}" y="{y:.1}" width="{:.1}" height="20" fill="{fill}"/>"#,
            right - left
        ));
        let room = ((right - left) / 8.0) as usize;
        let name = format!("{} {}", index + 1, leg.name);
        if room >= 2 {
            drawing.text((left + 4.0, y + 15.0), "", &escaped(&name, room));
        }
        from = to;
    }
}

fn limits(answered: &Answered<'_>, scale: &Scale, drawing: &mut Drawing) {
    let policies = &answered.book.policies;
    for (what, class, pressure, look) in [
        (
            "change-over",
            "change-over-line",
            policies.change_over_pressure,
            r##"stroke="#b36b00" stroke-width="1.5" stroke-dasharray="5 4""##,
        ),
        (
            "residual",
            "residual-line",
            policies.residual_pressure,
            r##"stroke="#b00020" stroke-width="2""##,
        ),
    ] {
        let y = scale.y(pressure);
        drawing.line((LEFT, y), (RIGHT, y), &format!(r#"class="{class}" {look}"#));
        let words = format!("{what} {}", answered.reading(pressure));
        drawing.text(
            (RIGHT - 4.0, y - 4.0),
            r#"text-anchor="end" font-size="12""#,
            &words,
        );
    }
}

fn cylinders(answered: &Answered<'_>, scale: &Scale, drawing: &mut Drawing) {
    for index in 0..answered.answer.left.len() {
        let own = || {
            let segments = answered.answer.segments.iter();
            segments.filter(move |segment| segment.cylinder == Some(index))
        };
        let Some(first) = own().next() else { continue };
        let mut points = String::new();
        for segment in own() {
            let _ = write!(
                points,
                "{:.1},{:.1} {:.1},{:.1} ",
                scale.x(segment.from_minutes),
                scale.y(segment.pressure_before),
                scale.x(segment.to_minutes),
                scale.y(segment.pressure_after)
            );
        }
        let colour = COLOURS.get(index % COLOURS.len()).unwrap_or(&"#111");
        let dashes = DASHES.get(index % DASHES.len()).unwrap_or(&"none");
        drawing.add(format_args!(
            r#"<polyline class="cylinder" points="{}" fill="none" stroke="{colour}" stroke-width="3" stroke-dasharray="{dashes}"/>"#,
            points.trim_end()
        ));
        let at = (
            scale.x(first.from_minutes) + 8.0,
            scale.y(first.pressure_before) - 6.0,
        );
        let look = format!(r#"fill="{colour}" font-weight="bold""#);
        drawing.text(at, &look, &escaped(&answered.cylinder(index), 20));
    }
}

fn changes(answered: &Answered<'_>, scale: &Scale, drawing: &mut Drawing) {
    for (index, change) in answered.answer.change_overs.iter().enumerate() {
        let x = scale.x(change.at_minutes);
        let look = r##"class="change" stroke="#111" stroke-dasharray="2 3""##;
        let y = TOP - 6.0 - 14.0 * (index % ROWS) as f64;
        drawing.line((x, y + 2.0), (x, BOTTOM), look);
        let minutes = Number(down(change.at_minutes, 1.0));
        let words = format!("{minutes} min: {} to {}", change.from + 1, change.to + 1);
        let anchor = if x > RIGHT - 60.0 { "end" } else { "middle" };
        drawing.text(
            (x, y),
            &format!(r#"text-anchor="{anchor}" font-size="12""#),
            &words,
        );
    }
    if let Some(broken) = &answered.answer.breaks_without_margin {
        let x = scale.x(broken.at_minutes);
        let look = r##"class="out" stroke="#b00020" stroke-width="3""##;
        drawing.line((x, TOP - 20.0), (x, BOTTOM), look);
        let words = format!("{} min: GAS RUNS OUT", Number(down(broken.at_minutes, 1.0)));
        let anchor = if x > WIDTH / 2.0 { "end" } else { "start" };
        let look = format!(r##"text-anchor="{anchor}" font-weight="bold" fill="#b00020""##);
        let aside = if x > WIDTH / 2.0 { -6.0 } else { 6.0 };
        drawing.text((x + aside, TOP + 14.0), &look, &words);
    }
}

fn foot(drawing: &mut Drawing) {
    let mut y = BOTTOM + 82.0;
    for words in ALWAYS_DISCLAIMERS
        .iter()
        .copied()
        .chain([&*ALWAYS_CAUTIONS.join(" ")])
    {
        drawing.text((LEFT, y), r#"font-size="11""#, &escaped(words, 150));
        y += 15.0;
    }
}
