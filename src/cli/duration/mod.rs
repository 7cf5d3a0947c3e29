//! `oxyfolio duration`: how long a cylinder lasts, and the same question turned round.

mod answer;
mod clock;

use std::io::Write;

use answer::{Asked, Greatest, Lasts, Needed};
pub use clock::Clock;

use super::{
    CannotRun, Outcome,
    args::{Common, Duration, Format},
    book,
};
use crate::book::{Cylinder, Rulebook};
use crate::check::duration::{NoDuration, Supply, USUAL_TEMPERATURE};
use crate::quantity::{Factor, Flow, Gauge, Pressure, PressureUnit, Time, Volume};

/// Answers whichever of the three questions was asked.
pub fn run(command: &Duration, common: &Common, out: &mut dyn Write) -> Result<Outcome, CannotRun> {
    let book = match book::open(common, out)? {
        Ok(book) => book,
        Err(outcome) => return Ok(outcome),
    };
    tell(command, &book, common.format, out)
}

/// Answers with a book.
pub fn tell(
    command: &Duration,
    book: &Rulebook,
    format: Format,
    out: &mut dyn Write,
) -> Result<Outcome, CannotRun> {
    let asked = asked(command, book)?;
    let pressure: Option<Pressure<Gauge>> = book::maybe("--pressure", command.pressure.as_ref())?;
    let flow: Option<Flow> = book::maybe("--flow", command.flow.as_ref())?;
    let leak: Option<Flow> = book::maybe("--leak", command.leak.as_ref())?;
    let minutes = command.minutes.as_deref().map(whole_minutes).transpose()?;
    let now = command.now.as_deref().map(Clock::read).transpose()?;
    let flows =
        (flow.is_some() || leak.is_some()).then(|| (flow.unwrap_or(Flow::ZERO), leak.unwrap_or(Flow::ZERO)));
    if now.is_some() && (pressure.is_none() || flows.is_none()) {
        return Err(CannotRun(
            "--now needs --pressure and --flow or --leak".to_owned(),
        ));
    }
    let text = format == Format::Text;
    match (pressure, flows, minutes) {
        (Some(pressure), Some((flow, leak)), wanted) => {
            let lasts = asked.supply.lasts_leaking(pressure, flow, leak)?;
            let change = asked.supply.residual(asked.change_over());
            let lasts = Lasts {
                pressure,
                flow,
                leak,
                lasts,
                change_over: change.lasts_leaking(pressure, flow, leak)?.minutes,
                wanted,
                now,
            };
            if text {
                lasts.text(&asked, out)
            } else {
                lasts.json(&asked, out)
            }
        }
        (None, Some((flow, leak)), Some(minutes)) => {
            let needed = needed(&asked, minutes, flow, leak)?;
            if text {
                needed.text(&asked, out)
            } else {
                needed.json(&asked, out)
            }
        }
        (Some(pressure), None, Some(minutes)) => {
            let greatest = greatest(&asked, pressure, minutes)?;
            if text {
                greatest.text(&asked, out)
            } else {
                greatest.json(&asked, out)
            }
        }
        _ => Err(CannotRun(
            "give --pressure and --flow for the minutes left, --flow and --minutes for the reading needed, \
             or --pressure and --minutes for the greatest flow"
                .to_owned(),
        )),
    }
}

/// The cylinder, the temperature and the residual pressure.
fn asked<'b>(command: &Duration, book: &'b Rulebook) -> Result<Asked<'b>, CannotRun> {
    let residual =
        book::maybe("--residual", command.residual.as_ref())?.unwrap_or(book.policies.residual_pressure);
    let temperature = book::maybe("--temperature", command.temperature.as_ref())?;
    let (supply, cylinder, water_capacity, factor) = match (&command.cylinder, &command.water_capacity) {
        (Some(name), _) => {
            let cylinder = cylinder(book, name)?;
            let factor = Some(cylinder.factor);
            (
                Supply::of(book, cylinder),
                Some(cylinder),
                cylinder.water_capacity,
                factor,
            )
        }
        (None, Some(text)) => {
            let water: Volume = book::quantity("--water-capacity", text)?;
            let factor: Option<Factor> = book::maybe("--factor", command.factor.as_ref())?;
            let supply = Supply::new(water, residual);
            let supply = factor.map_or(supply, |factor| supply.factor(factor));
            (supply, None, water, factor)
        }
        (None, None) => return Err(CannotRun("give --cylinder or --water-capacity".to_owned())),
    };
    Ok(Asked {
        book,
        supply: supply
            .residual(residual)
            .temperature(temperature.unwrap_or(USUAL_TEMPERATURE)),
        cylinder,
        water_capacity,
        factor,
        residual,
        temperature: temperature.unwrap_or(USUAL_TEMPERATURE),
        temperature_given: temperature.is_some(),
    })
}

fn cylinder<'b>(book: &'b Rulebook, name: &str) -> Result<&'b Cylinder, CannotRun> {
    let id = book::cylinder(book, name)?;
    book.cylinder(id)
        .ok_or_else(|| CannotRun("the cylinder is not in this rulebook".to_owned()))
}

/// `45` or `45 min`, rounded up to whole minutes: asking for more is the safe side.
pub fn whole_minutes(text: &str) -> Result<u32, CannotRun> {
    let time = match text.trim().parse::<f64>() {
        Ok(number) => {
            Time::minutes(number).map_err(|error| CannotRun(format!("--minutes \"{text}\": {error}")))?
        }
        Err(_) => book::quantity("--minutes", text)?,
    };
    let minutes = time.as_minutes().ceil();
    if minutes < 1.0 {
        return Err(CannotRun(format!(
            "--minutes \"{text}\": {}",
            NoDuration::NoMinutes
        )));
    }
    Ok(minutes as u32)
}

/// The reading needed, in psi and in bar, each rounded up and asked again.
fn needed(asked: &Asked<'_>, minutes: u32, flow: Flow, leak: Flow) -> Result<Needed, CannotRun> {
    let most = asked.filled_at_most();
    let least = match asked.supply.pressure_for_leaking(minutes, flow, leak) {
        Ok(least) => Some(least),
        Err(NoDuration::NeverEnough) => None,
        Err(other) => return Err(other.into()),
    };
    let rounded = |unit: PressureUnit, steps: f64| {
        let least = least?;
        let up = Pressure::in_unit((least.as_unit(unit) * steps).ceil() / steps, unit).ok()?;
        // Rounded up it can pass the 300 bar up to which there is an answer; then the exact reading stands.
        match asked.supply.lasts_leaking(up, flow, leak) {
            Ok(lasts) if lasts.minutes >= minutes => Some(up),
            Ok(_) | Err(_) => Some(least),
        }
    };
    Ok(Needed {
        minutes,
        flow,
        leak,
        psi: rounded(PressureUnit::Psi, 1.0),
        bar: rounded(PressureUnit::Bar, 10.0),
        possible: least.is_some_and(|least| most.is_none_or(|most| least <= most)),
        most,
    })
}

/// The greatest flow, rounded down to a tenth of a litre, below one litre to a hundredth, and asked again.
fn greatest(asked: &Asked<'_>, pressure: Pressure<Gauge>, minutes: u32) -> Result<Greatest, CannotRun> {
    let most = asked.supply.flow_for(pressure, minutes)?;
    let exact = most.as_litres_per_minute();
    let steps = if exact < 1.0 { 100.0 } else { 10.0 };
    let flow = Flow::litres_per_minute((exact * steps).floor() / steps)?;
    if flow.as_litres_per_minute() <= 0.0 {
        return Err(CannotRun(format!(
            "no flow of 0.01 L/min or more lasts {minutes} min from {pressure}"
        )));
    }
    let lasts = asked.supply.lasts(pressure, flow)?;
    Ok(Greatest {
        pressure,
        minutes,
        flow,
        lasts,
    })
}
