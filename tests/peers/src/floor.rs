//! What a programmer would write by hand for the demonstration's 29 hazards: typed fields, and `if`s.

use crate::record::{Device, Group, Record};

const PSI: f64 = 6894.757293168361;

/// Which hazards are there, and which can't be told; a bit for each.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Mask {
    pub there: u64,
    pub unknown: u64,
}

/// The flow limits of each device for each group, and which device has a reservoir.
pub struct Tables {
    pub limits: [[(f64, f64); Group::ALL.len()]; Device::ALL.len()],
    pub reservoir: [bool; Device::ALL.len()],
}

type Answer = Option<bool>;

/// All of them, stopping at the first that is not so.
macro_rules! stopping {
    ($($answer:expr),+) => {
        'all: {
            let mut sure = true;
            $(match $answer {
                Some(false) => break 'all Some(false),
                Some(true) => {}
                None => sure = false,
            })+
            sure.then_some(true)
        }
    };
}

/// All of them, every one looked at.
macro_rules! eager {
    ($($answer:expr),+) => {{
        let (mut yes, mut no) = (true, false);
        $(let answer: Answer = $answer;
        yes &= answer == Some(true);
        no |= answer == Some(false);)+
        if no { Some(false) } else { yes.then_some(true) }
    }};
}

fn not(answer: Answer) -> Answer {
    answer.map(|answer| !answer)
}

/// An answer about the device's flow limits, of a patient whose group may be unknown.
fn limits(record: &Record, tables: &Tables, wrong: impl Fn(f64, (f64, f64)) -> bool) -> Answer {
    let (device, flow) = (record.device?, record.flow?);
    let limits = &tables.limits[device as usize];
    if let Some(group) = record.group {
        return Some(wrong(flow, limits[group as usize]));
    }
    let first = wrong(flow, limits[0]);
    limits[1..]
        .iter()
        .all(|limits| wrong(flow, *limits) == first)
        .then_some(first)
}

macro_rules! rules {
    ($name:ident, $all:ident) => {
        #[inline]
        pub fn $name(r: &Record, tables: &Tables, mut answer: impl FnMut(u32, Answer)) {
            let is = |device: Device| r.device.map(|used| used == device);
            let on = r.device_on_patient;
            let newborn = r.group.map(|group| group == Group::Newborn);
            let adult = r.group.map(|group| group == Group::Adult);
            let bag = is(Device::BagValveMask);
            let cannula = is(Device::NasalCannula);
            let newborn_bag = $all!(bag, newborn);
            let reservoir = r.device.map(|device| tables.reservoir[device as usize]);
            let too_little = limits(r, tables, |flow, (least, _)| flow < least);
            let too_much = limits(r, tables, |flow, (_, most)| flow > most);
            let below_target = r.spo2.zip(r.target_low).map(|(spo2, low)| spo2 < low);
            let above_target = r.spo2.zip(r.target_high).map(|(spo2, high)| spo2 > high);
            answer(0, r.cylinder_standing_free);
            answer(1, r.flame_near);
            answer(2, r.grease_near);
            answer(3, r.temperature.map(|t| t > 50.0));
            answer(4, r.temperature.map(|t| t < -20.0));
            let closed = $all!(not(r.cylinder_open), not(r.regulator_pressurised));
            answer(
                5,
                $all!(
                    not(on),
                    r.minutes_wanted.map(|wanted| wanted == 0.0),
                    not(closed)
                ),
            );
            answer(6, $all!(r.cylinder_open, not(r.regulator_seated)));
            answer(7, $all!(r.regulator_pressurised, not(r.regulator_seated)));
            answer(
                8,
                $all!(r.cylinder_open, r.regulator_seated, not(r.washer_fitted)),
            );
            answer(9, $all!(r.regulator_seated, not(r.outlet_clear)));
            answer(
                10,
                $all!(on, r.flow.map(|flow| flow == 0.0), not(newborn_bag)),
            );
            answer(11, $all!(on, not(r.cylinder_open), not(newborn_bag)));
            answer(12, $all!(on, reservoir, not(r.reservoir_filled), not(bag)));
            answer(13, $all!(bag, on, not(r.reservoir_filled), not(newborn)));
            answer(14, $all!(on, reservoir, too_little, not(newborn_bag)));
            answer(15, $all!(on, not(reservoir), too_little));
            answer(16, $all!(on, cannula, too_much));
            answer(17, $all!(on, not(cannula), too_much));
            answer(18, $all!(on, cannula, r.flow.map(|flow| flow > 4.0)));
            let used_to_it = $all!(adult, r.retains_co2);
            answer(
                19,
                $all!(
                    r.spo2.map(|spo2| spo2 < 85.0),
                    not(newborn),
                    not(used_to_it)
                ),
            );
            answer(20, below_target);
            answer(21, $all!(on, r.retains_co2, above_target));
            answer(22, $all!(on, above_target));
            answer(
                23,
                $all!(r.carbon_monoxide, not(is(Device::NonRebreather)), not(bag)),
            );
            answer(
                24,
                $all!(on, r.pressure.map(|pressure| pressure <= 500.0 * PSI)),
            );
            answer(
                25,
                $all!(on, r.pressure.map(|pressure| pressure <= 200.0 * PSI)),
            );
            answer(
                26,
                r.minutes_left
                    .zip(r.minutes_wanted)
                    .map(|(left, wanted)| left < wanted),
            );
            answer(27, $all!(on, r.minutes_left.map(|left| left <= 15.0)));
            answer(
                28,
                $all!(
                    r.cylinder_open,
                    not(on),
                    r.pressure.map(|pressure| pressure < 1000.0 * PSI)
                ),
            );
        }
    };
}

rules!(each_stopping, stopping);
rules!(each_eager, eager);

macro_rules! masks {
    ($name:ident, $each:ident) => {
        #[inline(never)]
        pub fn $name(record: &Record, tables: &Tables) -> Mask {
            let mut mask = Mask::default();
            $each(record, tables, |hazard, answer| match answer {
                Some(true) => mask.there |= 1 << hazard,
                None => mask.unknown |= 1 << hazard,
                Some(false) => {}
            });
            mask
        }
    };
}

masks!(mask_stopping, each_stopping);
masks!(mask_eager, each_eager);

/// How serious a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Level {
    Note,
    Unknown,
    Warn,
    Stop,
}

/// A finding with the parts of its message.
#[derive(Clone, Copy, Debug)]
pub struct Found {
    pub level: Level,
    pub code: &'static str,
    pub name: &'static str,
    pub say: &'static str,
    pub remedy: &'static str,
}

macro_rules! findings {
    ($name:ident, $each:ident) => {
        /// Findings in the order of the book, with a text of the hazard when it is there, and as unknown when it can't be told.
        #[inline(never)]
        pub fn $name(record: &Record, tables: &Tables, known: &[Found; 29], out: &mut Vec<Found>) {
            $each(record, tables, |hazard, answer| match answer {
                Some(true) => out.push(known[hazard as usize]),
                None => out.push(Found {
                    level: Level::Unknown,
                    ..known[hazard as usize]
                }),
                Some(false) => {}
            });
        }
    };
}

findings!(findings_stopping, each_stopping);
findings!(findings_eager, each_eager);
