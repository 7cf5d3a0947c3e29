//! A set-up as it comes from outside, so that nothing of it is known when the program is compiled: `KEY=VALUE …`.

use std::env;

#[derive(Default)]
pub struct Asked {
    pub device: String,
    pub group: String,
    pub cylinder: String,
    pub conditions: Vec<String>,
    pub facts: Vec<(String, bool)>,
    pub flow: Option<f64>,
    pub psi: Option<f64>,
    pub celsius: Option<f64>,
    pub spo2: Option<f64>,
    pub minutes: Option<f64>,
    pub minute_of_life: Option<f64>,
}

impl Asked {
    pub fn read() -> Self {
        let mut asked = Self::default();
        for argument in env::args().skip(1) {
            let Some((key, value)) = argument.split_once('=') else {
                continue;
            };
            let text = value.to_owned();
            match key {
                "device" => asked.device = text,
                "group" => asked.group = text,
                "cylinder" => asked.cylinder = text,
                "condition" => asked.conditions.push(text),
                "seen" => asked.facts.push((text, true)),
                "not-seen" => asked.facts.push((text, false)),
                "flow" => asked.flow = value.parse().ok(),
                "psi" => asked.psi = value.parse().ok(),
                "celsius" => asked.celsius = value.parse().ok(),
                "spo2" => asked.spo2 = value.parse().ok(),
                "minutes" => asked.minutes = value.parse().ok(),
                "minute-of-life" => asked.minute_of_life = value.parse().ok(),
                _ => {}
            }
        }
        asked
    }
}
