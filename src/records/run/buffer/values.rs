//! Values of fields into a buffer: names found, numbers checked, and what could not be understood.

use super::{RunBuffer, Span, Spot, Value};
use crate::quantity::{Flow, Gauge, OutOfBounds, Percent, Pressure, Temperature, bounds, bounds::Bounds};
use crate::records::run::{
    MAX_NAME, MAX_PROBLEMS, Names, TimeFault,
    key::{Key, Stranger, stranger},
    names::Table,
    problem::About,
    scan::Shape,
    time::moment,
};

impl<'n> RunBuffer<'n> {
    /// A field of an unknown name, in an event or not.
    pub(in crate::records::run) fn strange_key(&mut self, name: &str, in_event: bool, spot: Spot<'_>) {
        let about = match Key::find(name) {
            Some(key) => About::Misplaced(key),
            None => match self.stranger(name) {
                Stranger::NoUnit(key) => About::NoUnit(key),
                Stranger::Near(key) => About::NamedOtherwise(key),
                Stranger::Unknown if self.told_not_read => return,
                Stranger::Unknown => {
                    self.told_not_read = true;
                    About::NotRead
                }
            },
        };
        match about {
            About::NoUnit(key) | About::NamedOtherwise(key) if in_event && !key.is_of_run() => {
                self.refuse(key, about, spot);
            }
            _ if in_event => self.event_problem(about, spot),
            _ => self.problem(about, spot),
        }
    }

    fn stranger(&mut self, name: &str) -> Stranger {
        const MOST: usize = 64;
        if let Some((_, known)) = self.strangers.iter().find(|(known, _)| known == name) {
            return *known;
        }
        let found = stranger(name);
        if self.strangers.len() < MOST && name.len() <= MAX_NAME {
            self.strangers.push((name.to_owned(), found));
        }
        found
    }

    /// A condition of the patient. An unknown one makes all of them unknown: it could change the target.
    pub(in crate::records::run) fn condition(
        &mut self,
        name: &str,
        names: &'n Names<'_>,
        spot: Spot<'_>,
    ) -> bool {
        match names.conditions.find(name) {
            Some(condition) => {
                if !self.conditions.contains(&condition) {
                    self.conditions.push(condition);
                }
                true
            }
            None => {
                let about = About::UnknownName {
                    key: Key::Conditions,
                    near: names.conditions.near(name),
                    known: names.conditions.listed(),
                };
                self.problem(about, spot);
                false
            }
        }
    }

    /// Takes a value of a field, of the run or of the event being read.
    #[inline(always)]
    #[allow(clippy::inline_always)]
    pub(in crate::records::run) fn set(
        &mut self,
        key: Key,
        value: Value<'_>,
        names: &'n Names<'_>,
        spot: Spot<'_>,
    ) {
        match (key, value) {
            (_, Value::Null) => {}
            (Key::At, Value::Text(text)) => match moment(text) {
                Ok(at) => self.event.at = Some(at),
                Err(fault) => self.time_refused(fault, spot),
            },
            (Key::Do, Value::Text(name)) => match names.actions.find(name) {
                Some(action) => self.event.action = Some(action),
                None => self.unknown(key, &names.actions, name, spot),
            },
            (Key::Cylinder, Value::Text(name)) => match names.cylinders.find(name) {
                Some(cylinder) => self.event.cylinder = Some(cylinder),
                None => self.unknown(key, &names.cylinders, name, spot),
            },
            (Key::Device, Value::Text(name)) => match names.devices.find(name) {
                Some(device) => self.event.device = Some(device),
                None => self.unknown(key, &names.devices, name, spot),
            },
            (Key::Group, Value::Text(name)) => match names.groups.find(name) {
                Some(group) => self.group = Some(group),
                None => self.unknown(key, &names.groups, name, spot),
            },
            (Key::PressurePsi, Value::Number(number, _)) => match Pressure::psi(number) {
                Ok(pressure) => self.psi = Some(pressure),
                Err(_) => {
                    let most = Pressure::<Gauge>::bar(bounds::GAUGE_PRESSURE.most);
                    let most = most.map_or(0.0, |most| most.as_psi() as u32 as f64);
                    let about = About::OutOfRange {
                        key,
                        least: 0.0,
                        most,
                    };
                    self.refuse(key, about, spot);
                }
            },
            (Key::PressureBar, Value::Number(number, _)) => match Pressure::<Gauge>::bar(number) {
                Ok(pressure) => self.bar = Some(pressure),
                Err(error) => self.out_of_range(key, error, spot),
            },
            (Key::Flow, Value::Number(number, _)) => match Flow::litres_per_minute(number) {
                Ok(flow) => self.event.flow = Some(flow),
                Err(error) => self.out_of_range(key, error, spot),
            },
            (Key::Temperature, Value::Number(number, _)) => match Temperature::celsius(number) {
                Ok(temperature) => self.temperature = Some(temperature),
                Err(error) => self.out_of_range(key, error, spot),
            },
            (Key::Spo2, Value::Number(number, _)) => self.spo2(number, spot),
            (Key::Run | Key::By, Value::Text(text) | Value::Number(_, text)) => self.named(key, text, spot),
            (_, Value::Number(..)) => self.wrong_type(key, Shape::Number, spot),
            (_, Value::Text(_)) => self.wrong_type(key, Shape::Text, spot),
            (_, Value::Other(found)) => self.wrong_type(key, found, spot),
        }
    }

    fn spo2(&mut self, number: f64, spot: Spot<'_>) {
        let key = Key::Spo2;
        match Percent::new(number) {
            Ok(_) if number > 0.0 && number <= 1.0 => self.refuse(key, About::Fraction, spot),
            Ok(spo2) if spo2.is_saturation() => self.event.spo2 = Some(spo2),
            _ => {
                let Bounds { least, most, .. } = bounds::SATURATION;
                self.refuse(key, About::OutOfRange { key, least, most }, spot);
            }
        }
    }

    fn named(&mut self, key: Key, text: &str, spot: Spot<'_>) {
        // Mostly the crew of the event before.
        if key == Key::By
            && let Some(last) = self.by.last().copied().flatten()
            && self.text(Some(last)) == Some(text)
        {
            self.event_by = Some(last);
            return;
        }
        let text = text.trim();
        if text.is_empty() || text.len() > MAX_NAME || !is_printable(text) {
            return self.refuse(key, About::UnfitName(key), spot);
        }
        let span = self.keep(text);
        if key == Key::Run {
            self.name = span;
        } else {
            self.event_by = span;
        }
    }

    /// Keeps a text.
    fn keep(&mut self, text: &str) -> Option<Span> {
        let from = u32::try_from(self.texts.len()).ok()?;
        self.texts.push_str(text);
        let to = u32::try_from(self.texts.len()).ok()?;
        Some(Span { from, to })
    }

    fn time_refused(&mut self, fault: TimeFault, spot: Spot<'_>) {
        self.refuse(Key::At, About::Time(fault), spot);
    }

    fn wrong_type(&mut self, key: Key, found: Shape, spot: Spot<'_>) {
        self.refuse(key, About::WrongType { key, found }, spot);
    }

    fn out_of_range(&mut self, key: Key, error: OutOfBounds, spot: Spot<'_>) {
        let (least, most) = (error.bounds.least, error.bounds.most);
        self.refuse(key, About::OutOfRange { key, least, most }, spot);
    }

    fn unknown<I: Copy>(&mut self, key: Key, table: &'n Table<'_, I>, name: &str, spot: Spot<'_>) {
        // Looking for one that is near takes time, and is for what is listed only.
        let near = (self.problems.len() < MAX_PROBLEMS)
            .then(|| table.near(name))
            .flatten();
        let known = table.listed();
        self.refuse(key, About::UnknownName { key, near, known }, spot);
    }
}

/// Whether a name can be printed. Most are of ASCII.
fn is_printable(text: &str) -> bool {
    text.bytes().all(|byte| (b' '..0x7f).contains(&byte)) || !text.chars().any(unprintable)
}

/// Control characters, and those that turn the direction of what follows them.
fn unprintable(sign: char) -> bool {
    sign.is_control()
        || matches!(sign, '\u{61c}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}
