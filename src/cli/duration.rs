//! `oxyfolio duration`.

use std::io::Write;

use serde_json::json;

use super::{
    CannotRun, Outcome,
    args::{Common, Duration, Format},
    book, words,
};
use crate::check::duration;
use crate::quantity::{Flow, Gauge, Pressure};

/// Says how long a cylinder lasts.
pub fn run(command: &Duration, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let book = match book::open(common, out)? {
        Ok(book) => book,
        Err(outcome) => return Ok(outcome),
    };
    let id = book::cylinder(&book, &command.cylinder)?;
    let cylinder = book
        .cylinder(id)
        .ok_or_else(|| CannotRun("the cylinder is not in this rulebook".to_owned()))?;
    let pressure: Pressure<Gauge> = book::quantity("--pressure", &command.pressure)?;
    let flow: Flow = book::quantity("--flow", &command.flow)?;
    let residual =
        book::maybe("--residual", command.residual.as_ref())?.unwrap_or(book.policies.residual_pressure);
    let lasts = duration::by_factor(cylinder.factor, pressure, residual, flow)?;
    let (hours, minutes) = (lasts.minutes / 60, lasts.minutes % 60);
    match common.format {
        Format::Text => {
            words::heading(out, &book)?;
            write!(out, "{} min", lasts.minutes)?;
            if hours > 0 {
                write!(out, " ({hours} h {minutes} min)")?;
            }
            writeln!(
                out,
                " at {flow} from a {} cylinder at {pressure}, {residual} kept as residual.",
                cylinder.rule.name
            )?;
            writeln!(
                out,
                "({pressure} - {residual}) x {} = {}; divided by the flow, rounded down.",
                cylinder.factor, lasts.usable
            )?;
            writeln!(
                out,
                "Sizes: {}. Read what is stamped on the cylinder.",
                cylinder.series
            )?;
            if pressure <= book.policies.change_over_pressure {
                writeln!(
                    out,
                    "The book changes the cylinder at {}: change it now.",
                    book.policies.change_over_pressure
                )?;
            }
            words::footing(out)?;
        }
        Format::Json => {
            let answer = json!({
                "cylinder": &*cylinder.rule.id,
                "series": &*cylinder.series,
                "pressure_psi": pressure.as_psi(),
                "pressure_bar": pressure.as_bar(),
                "residual_psi": residual.as_psi(),
                "flow_lpm": flow.as_litres_per_minute(),
                "factor": cylinder.factor.to_string(),
                "minutes": lasts.minutes,
                "usable_litres": lasts.usable.as_litres(),
                "by_factor_minutes": lasts.minutes,
                "bound_by": "factor",
                "change_cylinder_now": pressure <= book.policies.change_over_pressure,
            });
            words::json(out, &words::framed(&book, answer))?;
        }
    }
    Ok(Outcome::Fine)
}
