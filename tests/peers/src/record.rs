//! Invented set-ups: as text, as a typed record, and as the row the library asks about.

use std::fmt::Write as _;

use oxyfolio::{
    RULEBOOK,
    book::{ConditionId, DeviceId, Fact, GroupId, Rulebook},
    guard::Row,
    quantity::{Flow, Limit, Percent, Pressure, Range, Temperature, Time, TimeUnit},
};
use serde::Deserialize;

macro_rules! named {
    ($(#[$doc:meta])* $name:ident { $($(#[$at:meta])* $item:ident)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Deserialize)]
        #[serde(rename_all = "kebab-case")]
        pub enum $name { $($(#[$at])* $item),+ }

        impl $name {
            pub const ALL: &'static [Self] = &[$(Self::$item),+];
        }
    };
}

named! {
    /// The devices of the demonstration, in its order.
    Device {
        NasalCannula SimpleMask PartialRebreather NonRebreather
        #[serde(rename = "air-entrainment-24")] AirEntrainment24
        #[serde(rename = "air-entrainment-28")] AirEntrainment28
        #[serde(rename = "air-entrainment-31")] AirEntrainment31
        #[serde(rename = "air-entrainment-35")] AirEntrainment35
        #[serde(rename = "air-entrainment-40")] AirEntrainment40
        #[serde(rename = "air-entrainment-50")] AirEntrainment50
        #[serde(rename = "air-entrainment-60")] AirEntrainment60
        BagValveMask PocketMask TracheostomyMask BlowBy
    }
}

named! {
    /// The groups of the demonstration, in its order.
    Group { Newborn Infant Child Adult }
}

/// A set-up as a programmer would type it. Whatever is `None` was not recorded. Pressures are in pascals, times in minutes.
#[derive(Clone, Copy, Debug, Deserialize)]
pub struct Record {
    pub device: Option<Device>,
    pub group: Option<Group>,
    pub flow: Option<f64>,
    pub pressure: Option<f64>,
    pub temperature: Option<f64>,
    pub spo2: Option<f64>,
    pub minutes_left: Option<f64>,
    pub minutes_wanted: Option<f64>,
    pub target_low: Option<f64>,
    pub target_high: Option<f64>,
    pub retains_co2: Option<bool>,
    pub carbon_monoxide: Option<bool>,
    pub device_on_patient: Option<bool>,
    pub reservoir_filled: Option<bool>,
    pub cylinder_open: Option<bool>,
    pub cylinder_standing_free: Option<bool>,
    pub outlet_clear: Option<bool>,
    pub washer_fitted: Option<bool>,
    pub regulator_seated: Option<bool>,
    pub regulator_pressurised: Option<bool>,
    pub flame_near: Option<bool>,
    pub grease_near: Option<bool>,
}

impl Record {
    /// The row of the library.
    pub fn row(&self) -> Row {
        let minutes = |time: Option<f64>| time.map(|time| Time::tabled(time, TimeUnit::Minute));
        let limit = |end: Option<f64>| end.map_or(Limit::None, |end| Limit::Included(Percent::tabled(end)));
        let mut row = Row::UNKNOWN;
        row.set_device(self.device.map(|device| DeviceId(device as u16)));
        row.set_group(self.group.map(|group| GroupId(group as u16)));
        row.set_flow(self.flow.map(Flow::tabled));
        row.set_pressure(self.pressure.map(Pressure::tabled));
        row.set_temperature(self.temperature.map(Temperature::tabled));
        row.set_spo2(self.spo2.map(Percent::tabled));
        row.set_minutes_left(minutes(self.minutes_left));
        row.set_minutes_wanted(minutes(self.minutes_wanted));
        row.set_target(Some(Range {
            low: limit(self.target_low),
            high: limit(self.target_high),
        }));
        // Conditions are asked for together or not at all.
        if let (Some(retains), Some(monoxide)) = (self.retains_co2, self.carbon_monoxide) {
            let both = [
                oxyfolio::condition::RETAINS_CO2,
                oxyfolio::condition::CARBON_MONOXIDE,
            ];
            let has: &[ConditionId] = match (retains, monoxide) {
                (false, false) => &[],
                (true, false) => &both[..1],
                (false, true) => &both[1..],
                (true, true) => &both,
            };
            row.set_conditions(Some(has));
        }
        for (fact, holds) in [
            (Fact::DeviceOnPatient, self.device_on_patient),
            (Fact::ReservoirFilled, self.reservoir_filled),
            (Fact::CylinderOpen, self.cylinder_open),
            (Fact::CylinderStandingFree, self.cylinder_standing_free),
            (Fact::OutletClear, self.outlet_clear),
            (Fact::WasherFitted, self.washer_fitted),
            (Fact::RegulatorSeated, self.regulator_seated),
            (Fact::RegulatorPressurised, self.regulator_pressurised),
            (Fact::FlameNear, self.flame_near),
            (Fact::GreaseNear, self.grease_near),
        ] {
            row.set_fact(fact, holds);
        }
        row
    }
}

/// Random numbers that are the same at every run.
struct Random(u64);

impl Random {
    fn next(&mut self, below: u64) -> u64 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 11) % below
    }

    /// In so many of a hundred cases.
    fn percent(&mut self, percent: u64) -> bool {
        self.next(100) < percent
    }
}

/// The flow limits of a device for the patient's group, or the least and the greatest of them where the group is unknown:
/// other engines get them with the record, so that none of their time goes into looking them up.
pub fn limits(book: &Rulebook, record: &Record) -> [(Option<f64>, Option<f64>); 2] {
    let Some(device) = record
        .device
        .and_then(|device| book.device(DeviceId(device as u16)))
    else {
        return [(None, None); 2];
    };
    let groups = 0..book.groups.len() as u16;
    let flows: Vec<_> = match record.group {
        Some(group) => vec![device.flow_for(GroupId(group as u16))],
        None => groups.map(|group| device.flow_for(GroupId(group))).collect(),
    };
    let ends = |end: &dyn Fn(&Range<Flow>) -> Limit<Flow>| {
        let all: Option<Vec<f64>> = flows
            .iter()
            .map(|flow| end(flow).value().map(|flow| flow.as_litres_per_minute()))
            .collect();
        let all = all.unwrap_or_default();
        (
            all.iter().copied().reduce(f64::min),
            all.iter().copied().reduce(f64::max),
        )
    };
    [ends(&|flow| flow.low), ends(&|flow| flow.high)]
}

/// So many set-ups as JSON texts. One observation in ten is missing; most of the others are in order.
pub fn texts(count: usize) -> Vec<String> {
    let mut random = Random(0x9E37_79B9_7F4A_7C15);
    (0..count).map(|_| text(&mut random)).collect()
}

fn text(random: &mut Random) -> String {
    let mut out = String::from("{");
    let known = |random: &mut Random| random.percent(90);
    let mut put = |name: &str, value: Option<String>| {
        let _ = write!(out, "\"{name}\":{},", value.unwrap_or_else(|| "null".to_owned()));
    };
    let named = |id: &str| format!("\"{id}\"");
    let device = random.next(Device::ALL.len() as u64) as u16;
    let device = known(random).then(|| named(&RULEBOOK.device(DeviceId(device)).unwrap().rule.id));
    let group = random.next(Group::ALL.len() as u64) as u16;
    let group = known(random).then(|| named(&RULEBOOK.group(GroupId(group)).unwrap().rule.id));
    put("device", device);
    put("group", group);
    let number = |random: &mut Random, value: f64| known(random).then(|| format!("{value:?}"));
    let value = random.next(33) as f64 / 2.0;
    put("flow", number(random, value));
    let psi = random.next(45) as f64 * 50.0;
    put(
        "pressure",
        number(random, Pressure::psi(psi).unwrap().as_pascals()),
    );
    let value = random.next(100) as f64 - 35.0;
    put("temperature", number(random, value));
    let value = 78.0 + random.next(23) as f64;
    put("spo2", number(random, value));
    let value = random.next(90) as f64;
    put("minutes_left", number(random, value));
    let value = random.next(7) as f64 * 10.0;
    put("minutes_wanted", number(random, value));
    let target = [(94.0, 98.0), (88.0, 92.0), (90.0, 94.0)][random.next(3) as usize];
    let aimed = known(random);
    put("target_low", aimed.then(|| format!("{:?}", target.0)));
    put("target_high", aimed.then(|| format!("{:?}", target.1)));
    let asked = known(random);
    for condition in ["retains_co2", "carbon_monoxide"] {
        let has = random.percent(10);
        put(condition, asked.then(|| has.to_string()));
    }
    for (fact, usually) in [
        ("device_on_patient", 70),
        ("reservoir_filled", 80),
        ("cylinder_open", 85),
        ("cylinder_standing_free", 8),
        ("outlet_clear", 92),
        ("washer_fitted", 95),
        ("regulator_seated", 90),
        ("regulator_pressurised", 80),
        ("flame_near", 3),
        ("grease_near", 3),
    ] {
        let holds = random.percent(usually);
        put(fact, known(random).then(|| holds.to_string()));
    }
    // What other engines are given beside it.
    out.pop();
    out.push('}');
    let record: Record = serde_json::from_str(&out).unwrap();
    out.pop();
    let written = |end: Option<f64>| end.map_or("null".to_owned(), |end| format!("{end:?}"));
    let [(least_low, least_high), (most_low, most_high)] = limits(&RULEBOOK, &record);
    let reservoir = record
        .device
        .map(|device| RULEBOOK.device(DeviceId(device as u16)).unwrap().reservoir);
    let _ = write!(
        out,
        ",\"least_low\":{},\"least_high\":{},\"most_low\":{},\"most_high\":{},\"device_has_reservoir\":{}}}",
        written(least_low),
        written(least_high),
        written(most_low),
        written(most_high),
        reservoir.map_or("null".to_owned(), |reservoir| reservoir.to_string())
    );
    out
}
