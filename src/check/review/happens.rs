//! What an event does in a replay: to the equipment, the gas and the patient.

use super::{
    aim::{Change, Given, Missed, flow_range},
    finding::About,
    ledger::Compared,
    record::{Event, Field, Moment, Unreadable},
    replay::Replay,
};
use crate::book::{Action, Device, DeviceId, Fact, Kind, Rule};
use crate::check::{Level, review::NotRecorded};
use crate::equipment::{Known, Part, State};
use crate::guard::{Evaluator, HazardSet};
use crate::quantity::{Flow, Pressure, Side};

/// A flow outside the device's range, since when.
#[derive(Clone, Copy, Debug)]
pub struct OutOfRange<'b> {
    about: About<'b>,
    rule: &'b Rule,
    event: u32,
    from: Option<Moment>,
}

impl<'b, E: Evaluator<'b>> Replay<'_, 'b, E> {
    pub(super) fn happens(&mut self, event: &Event, before: Given) {
        if self.stretch.is_some() && touches(event) {
            // What the time alone brought, before what is done now hides it.
            self.ask(&before, self.kinds.gas - self.kinds.patient);
            self.stretch = None;
        }
        self.cylinder(event);
        let was_closed = self.known.fact(Fact::CylinderOpen) == Some(false);
        let read_before = !was_closed && event.action != Some(Action::FetchCylinder);
        if read_before {
            self.gauge(event);
        }
        if let Some(action) = event.action {
            self.act(action);
        }
        self.flow_and_device(event);
        if !read_before && self.known.fact(Fact::CylinderOpen) != Some(false) {
            self.gauge(event);
        }
        let given = self.given();
        if let Some(change) = given.change_from(&before).or_else(|| by_hand(event)) {
            self.oxygen_changed(change);
        }
        let saturation = event.spo2.filter(|spo2| spo2.is_saturation());
        if let Some(spo2) = saturation {
            self.row.set_spo2(Some(spo2));
            self.asked.renew();
            self.spo2_on_oxygen |= given.is_oxygen();
            let (oxygen, number, now) = (given.is_oxygen(), self.event, self.now);
            let missed = self
                .aim
                .as_mut()
                .and_then(|aim| aim.read(spo2, oxygen, number, now));
            self.missed(missed, now);
        } else if event.spo2.is_some() || event.unreadable.has(Field::Spo2) {
            self.row.set_spo2(None);
            self.asked.renew();
        }
        self.device_on_patient(event, &given);
        if before.on_patient == Some(true) && given.on_patient == Some(false) {
            self.ran_out(before.flow);
        }
        self.ask(&given, HazardSet::first(self.book.hazards.len()));
    }

    /// Which cylinder is spoken of.
    fn cylinder(&mut self, event: &Event) {
        let named = event.cylinder.and_then(|id| self.book.cylinder(id));
        let unreadable = event.unreadable.has(Field::Cylinder);
        if event.action == Some(Action::FetchCylinder) {
            if self.known.fact(Fact::RegulatorSeated) == Some(true) {
                self.spare = Some(named);
            } else {
                self.ledger.change(named);
                self.spare = None;
            }
        } else if let Some(cylinder) = named {
            match &mut self.spare {
                Some(spare) => *spare = Some(cylinder),
                None => self.ledger.named(cylinder),
            }
        } else if unreadable {
            match &mut self.spare {
                Some(spare) => *spare = None,
                None => self.ledger.change(None),
            }
        }
    }

    fn gauge(&mut self, event: &Event) {
        let Some(pressure) = event.pressure else {
            if event.unreadable.has(Field::Pressure) {
                self.ledger.lose();
            }
            return;
        };
        self.readings = true;
        // A reading knows better than the sum.
        self.ran_out = None;
        self.known = self.known.gauge(pressure > Pressure::ZERO);
        let compared = self.ledger.read(pressure, self.now);
        let rule = self.ledger.cylinder().map(|cylinder| &cylinder.rule);
        match (compared, rule) {
            (Compared::TooFast(mismatch), Some(rule)) => {
                self.find(Level::Warn, Kind::Cylinder, rule, About::FellTooFast(mismatch));
            }
            (Compared::TooSlow(mismatch), Some(rule)) => {
                self.find(Level::Warn, Kind::Cylinder, rule, About::FellTooSlow(mismatch));
            }
            (Compared::NoDensity, _) => self.blanks.add(NotRecorded::Density),
            _ => {}
        }
        let residual = self.book.policies.residual_pressure;
        if pressure < residual && self.given().on_patient == Some(true) {
            let (kind, rule) = self.policy("residual-pressure");
            self.find(
                Level::Stop,
                kind,
                rule,
                About::BelowResidual { pressure, residual },
            );
        }
    }

    fn act(&mut self, action: Action) {
        match self.known.after(action) {
            Ok(known) => self.known = known,
            Err(refusal) => {
                self.refused.push((self.event, action, refusal));
                self.known = in_spite(self.known, action);
            }
        }
        match action {
            Action::ZeroFlow => self.flow = Some(Flow::ZERO),
            // How far it was opened nobody says.
            Action::SetFlow | Action::BleedRegulator => self.flow = None,
            Action::DisconnectDevice => {
                self.device = None;
                self.device_id = None;
            }
            Action::RemoveRegulator => {
                if let Some(spare) = self.spare.take() {
                    self.ran_out(self.flow);
                    self.tell_ran_out();
                    self.ledger.change(spare);
                }
            }
            _ => {}
        }
    }

    fn flow_and_device(&mut self, event: &Event) {
        if let Some(flow) = event.flow {
            self.flow = Some(flow);
            let on = flow > Flow::ZERO;
            if self.known.flow_on() != Some(on) {
                self.known = self.known.flow(on);
            }
        } else if event.unreadable.has(Field::Flow) {
            self.flow = None;
            self.known = self.known.forget(Part::Flow);
        }
        if let Some(id) = event.device {
            let device = self.book.device(id).map(|device| (id, device));
            if event.action == Some(Action::ChooseDevice) && self.given().on_patient == Some(true) {
                // It is chosen, and the other one still worn.
                self.chosen = device;
            } else {
                self.wear(device);
            }
        } else if event.action == Some(Action::ConnectDevice) && self.chosen.is_some() {
            let chosen = self.chosen;
            self.wear(chosen);
        } else if event.unreadable.has(Field::Device) {
            self.device_id = None;
            self.device = None;
        }
        if event.unreadable.has(Field::Do) {
            // Something was done, and nobody can say what; only what the line itself says holds from then on.
            self.known = Known::NOTHING;
            self.ledger.lose();
            self.flow = event.flow;
            if event.device.is_none() {
                self.wear(None);
            }
        }
    }

    fn wear(&mut self, device: Option<(DeviceId, &'b Device)>) {
        self.device_id = device.map(|(id, _)| id);
        self.device = device.map(|(_, device)| device);
        self.chosen = None;
    }

    fn oxygen_changed(&mut self, change: Change) {
        let (event, now) = (self.event, self.now);
        self.watch.changed(now);
        let stopped = change == Change::Less && !self.given().is_oxygen();
        let missed = match (&mut self.aim, change) {
            (Some(aim), _) if stopped => aim.end_if_above(),
            (Some(aim), change) => aim.changed(change, event, now),
            (None, _) => None,
        };
        self.missed(missed, now);
    }

    pub(super) fn missed(&mut self, missed: Option<Missed<'b>>, until: Option<Moment>) {
        let Some((about, event, from)) = missed else {
            return;
        };
        if let About::TargetMissed { target, .. } | About::TargetExceeded { target, .. } = about {
            self.found(
                Level::Warn,
                Kind::Target,
                &target.rule,
                about,
                Some(event),
                from,
                until,
            );
        }
    }

    /// The device against the patient.
    fn device_on_patient(&mut self, event: &Event, given: &Given) {
        let placed = event.action == Some(Action::PlaceDevice);
        let on = given.on_patient == Some(true);
        self.gave |= on;
        if on {
            if self.device.is_none() {
                self.blanks.add(NotRecorded::Device);
            }
            if given.flow.is_none() {
                self.blanks.add(NotRecorded::Flow);
            }
        }
        if let (Some(device), true) = (self.device, on) {
            let new = placed || event.device.is_some();
            if let Some(group) = self.run.group.filter(|group| new && !device.fits(*group))
                && let Some(group) = self.book.group(group)
            {
                let about = About::DeviceDoesNotFit { device, group };
                self.find(Level::Stop, Kind::Device, &device.rule, about);
            }
            if placed && device.reservoir && !self.on_air(device, given.flow) {
                match self.known.fact(Fact::ReservoirFilled) {
                    Some(true) => {}
                    Some(false) => {
                        let about = About::ReservoirNotFilled { device };
                        self.find(Level::Stop, Kind::Device, &device.rule, about);
                    }
                    None => self.blanks.add(NotRecorded::Reservoir),
                }
            }
        }
        self.flow_range(given);
    }

    fn on_air(&self, device: &Device, flow: Option<Flow>) -> bool {
        flow == Some(Flow::ZERO)
            && self
                .run
                .group
                .is_some_and(|group| device.air_for.contains(&group))
    }

    /// The flow against the device's range, while it is on the patient.
    fn flow_range(&mut self, given: &Given) {
        let about = match (self.device, given.flow, given.on_patient) {
            (Some(device), Some(flow), Some(true)) if !self.on_air(device, given.flow) => {
                let range = flow_range(device, self.run.group);
                match range.side(flow) {
                    Side::Below => Some((About::FlowTooLow { device, flow, range }, &device.rule)),
                    Side::Above => Some((About::FlowTooHigh { device, flow, range }, &device.rule)),
                    Side::Inside => None,
                }
            }
            _ => None,
        };
        if self.out_of_range.map(|out| out.about) == about.map(|(about, _)| about) {
            return;
        }
        self.back_in_range(self.now);
        self.out_of_range = about.map(|(about, rule)| OutOfRange {
            about,
            rule,
            event: self.event,
            from: self.now,
        });
    }

    pub(super) fn back_in_range(&mut self, until: Option<Moment>) {
        if let Some(out) = self.out_of_range.take() {
            self.found(
                Level::Stop,
                Kind::Device,
                out.rule,
                out.about,
                Some(out.event),
                out.from,
                until,
            );
        }
    }

    /// Whether the gas would have ended before it was changed or stopped.
    pub(super) fn ran_out(&mut self, flow: Option<Flow>) {
        let flow = flow.map_or(0.0, Flow::as_litres_per_minute);
        if let Some((pressure, short)) = self.ledger.short(flow)
            && self.ran_out.is_none()
        {
            self.ran_out = Some((About::WouldRunOut { pressure, short }, self.event, self.now));
        }
    }

    /// The cylinder is changed or the record ends, and no reading said otherwise.
    pub(super) fn tell_ran_out(&mut self) {
        if let Some((about, event, from)) = self.ran_out.take() {
            let (kind, rule) = self.policy("residual-pressure");
            self.found(Level::Stop, kind, rule, about, Some(event), from, None);
        }
    }
}

/// Whether an event does anything to the equipment or the gas, or only looks and tells of the patient.
fn touches(event: &Event) -> bool {
    event.action.is_some_and(State::concerns)
        || event.pressure.is_some()
        || event.flow.is_some()
        || event.device.is_some()
        || event.cylinder.is_some()
        || event.unreadable != Unreadable::default()
}

/// Ventilating by hand changes what the patient gets.
fn by_hand(event: &Event) -> Option<Change> {
    (event.action == Some(Action::HandVentilate)).then_some(Change::Other)
}

/// What was recorded was done, though it can't or mustn't be.
fn in_spite(known: Known, action: Action) -> Known {
    let seen = |fact, holds| known.with(fact, holds).unwrap_or(known);
    match action {
        Action::OpenCylinder if known.fact(Fact::RegulatorSeated) == Some(true) => {
            // Gas came, so the regulator held, tightened or not.
            let open = seen(Fact::CylinderOpen, true).forget(Part::Regulator);
            open.with(Fact::RegulatorPressurised, true).unwrap_or(open)
        }
        Action::OpenCylinder => seen(Fact::CylinderOpen, true),
        Action::SeatRegulator | Action::TightenRegulator => seen(Fact::RegulatorSeated, true),
        Action::RemoveRegulator => seen(Fact::RegulatorSeated, false),
        Action::BleedRegulator => seen(Fact::RegulatorPressurised, false),
        Action::PlaceDevice => seen(Fact::DeviceOnPatient, true),
        Action::SetFlow => known.flow(true),
        Action::ConnectDevice => known.device(true),
        Action::DisconnectDevice => known.device(false),
        Action::ClearOutlet => seen(Fact::OutletClear, true),
        _ => known,
    }
}
