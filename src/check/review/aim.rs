//! Whether the saturation aimed at was missed or exceeded, with nothing changed within the book's time.
//!
//! A reading out of the target is not the crew's fault; leaving it so is. From the first such reading the time of the target
//! runs (`recheck`). It begins anew with every change of oxygen in the right direction, and ends with a reading in the target.

use super::{
    finding::About,
    record::{Moment, Run},
};
use crate::book::{DeviceId, GroupId, Rulebook, Saturation, Target};
use crate::check::{Missing, Setup, setup::target};
use crate::quantity::{Flow, Percent, Range, Side};

/// The target that holds for a run's patient.
pub fn target_of<'b>(book: &'b Rulebook, run: &Run<'_>) -> Result<&'b Target, Missing> {
    // Which device it is makes no difference to which target holds.
    let mut patient = Setup::new(DeviceId(0), Flow::ZERO);
    if let Some(group) = run.group {
        patient = patient.group(group);
    }
    if let Some(conditions) = run.conditions {
        patient = patient.conditions(conditions);
    }
    target::choose(book, &patient).map(|(_, target)| target)
}

/// A change of oxygen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// More of it.
    More,
    /// Less of it.
    Less,
    /// Another device, or ventilation by hand: more or less, who knows.
    Other,
}

/// What the patient gets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Given {
    /// The device.
    pub device: Option<DeviceId>,
    /// The flow.
    pub flow: Option<Flow>,
    /// Whether it is on the patient.
    pub on_patient: Option<bool>,
}

impl Given {
    /// Whether the patient gets oxygen, as far as is known.
    pub fn is_oxygen(&self) -> bool {
        self.on_patient == Some(true) && self.flow != Some(Flow::ZERO)
    }

    /// What changed since an earlier moment.
    pub fn change_from(&self, before: &Self) -> Option<Change> {
        match (before.is_oxygen(), self.is_oxygen()) {
            (false, true) => return Some(Change::More),
            (true, false) => return Some(Change::Less),
            (false, false) => return None,
            (true, true) => {}
        }
        if self.device != before.device {
            return Some(Change::Other);
        }
        let (now, then) = (self.flow?, before.flow?);
        if now > then {
            Some(Change::More)
        } else if now < then {
            Some(Change::Less)
        } else {
            None
        }
    }
}

/// A reading out of the target to which nothing was done yet.
#[derive(Clone, Copy, Debug)]
struct Off {
    spo2: Percent,
    side: Side,
    event: u32,
    since: Option<Moment>,
    too_long: bool,
}

/// The target of a run, and how long the patient has been off it.
#[derive(Debug)]
pub struct Aim<'b> {
    target: &'b Target,
    range: Range<Percent>,
    off: Option<Off>,
}

/// What was missed: the finding, the event at which it began, and since when.
pub type Missed<'b> = (About<'b>, u32, Option<Moment>);

impl<'b> Aim<'b> {
    /// None where the saturation doesn't guide treatment.
    pub fn new(target: &'b Target) -> Option<Self> {
        match target.saturation {
            Saturation::Range(range) => Some(Self {
                target,
                range,
                off: None,
            }),
            Saturation::NotReliable => None,
        }
    }

    /// The time has come to this moment; nothing was changed so far.
    pub fn pass(&mut self, now: Moment) {
        if let Some(off) = &mut self.off
            && let Some(since) = off.since
            && now.minutes_since(since) > self.target.recheck.as_minutes()
        {
            off.too_long = true;
        }
    }

    /// The oxygen was changed. Gives what had been missed before.
    pub fn changed(&mut self, change: Change, event: u32, now: Option<Moment>) -> Option<Missed<'b>> {
        let off = self.off?;
        let right = match change {
            Change::More => off.side == Side::Below,
            Change::Less => off.side == Side::Above,
            Change::Other => true,
        };
        if !right {
            return None;
        }
        let missed = self.end();
        // The reading still stands: the time begins anew.
        self.off = Some(Off {
            event,
            since: now,
            too_long: false,
            ..off
        });
        missed
    }

    /// A reading. Gives what had been missed before, when this one ends it.
    pub fn read(
        &mut self,
        spo2: Percent,
        oxygen: bool,
        event: u32,
        now: Option<Moment>,
    ) -> Option<Missed<'b>> {
        let side = self.range.side(spo2);
        // Too much without oxygen is nobody's doing.
        let fine = side == Side::Inside || (side == Side::Above && !oxygen);
        if fine {
            return self.end();
        }
        if self.off.is_some_and(|off| off.side == side) {
            return None;
        }
        let missed = self.end();
        self.off = Some(Off {
            spo2,
            side,
            event,
            since: now,
            too_long: false,
        });
        missed
    }

    /// Oxygen was stopped: too much of it is over, too little isn't.
    pub fn end_if_above(&mut self) -> Option<Missed<'b>> {
        self.off.filter(|off| off.side == Side::Above)?;
        self.end()
    }

    /// The record ends, or a reading ends it: what had been missed.
    pub fn end(&mut self) -> Option<Missed<'b>> {
        let off = self.off.take().filter(|off| off.too_long)?;
        let (target, range, spo2) = (self.target, self.range, off.spo2);
        let about = match off.side {
            Side::Above => About::TargetExceeded { spo2, target, range },
            _ => About::TargetMissed { spo2, target, range },
        };
        Some((about, off.event, off.since))
    }

    /// The saturation aimed at.
    pub const fn range(&self) -> Range<Percent> {
        self.range
    }

    /// The target.
    pub const fn target(&self) -> &'b Target {
        self.target
    }
}

/// The range of flow for a device on this patient.
pub fn flow_range(device: &crate::book::Device, group: Option<GroupId>) -> Range<Flow> {
    group.map_or(device.flow, |group| device.flow_for(group))
}
