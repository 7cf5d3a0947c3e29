//! The end of a replay: how the equipment was left, and what could not be checked because it was not recorded.

use super::{
    aim::Aim,
    finding::{About, NotRecorded},
    replay::Replay,
};
use crate::book::{Action, Kind, Measure, Rule};
use crate::check::{Level, Missing};
use crate::equipment::End;
use crate::guard::{Evaluator, Inputs};
use crate::quantity::{Time, TimeUnit};

/// What was not recorded, a bit for each.
#[derive(Clone, Copy, Debug, Default)]
pub struct Blanks(u32);

impl Blanks {
    pub(super) const fn add(&mut self, what: NotRecorded) {
        self.0 |= 1 << what as u32;
    }

    const fn has(self, what: NotRecorded) -> bool {
        self.0 & (1 << what as u32) != 0
    }
}

impl<'b, E: Evaluator<'b>> Replay<'_, 'b, E> {
    pub(super) fn end(mut self) {
        let missed = self.aim.as_mut().and_then(Aim::end);
        self.missed(missed, None);
        self.back_in_range(None);
        let given = self.given();
        if given.on_patient == Some(true) {
            self.ran_out(given.flow);
        }
        self.tell_ran_out();
        // Nothing more is wanted of the gas.
        self.row
            .set_minutes_wanted(Some(Time::tabled(0.0, TimeUnit::Minute)));
        self.asked.renew();
        self.ask(&given, self.kinds.at_end);
        self.watch.end();
        self.unsafe_end();
        self.not_recorded();
    }

    fn unsafe_end(&mut self) {
        if !self.actions {
            return;
        }
        match self.known.end() {
            End::Safe => {}
            End::Unsafe(why) => {
                let (kind, rule) = self.shut_down();
                self.find(Level::Warn, kind, rule, About::UnsafeEnd { why });
            }
            End::Unknown(_) => self.blanks.add(NotRecorded::End),
        }
    }

    /// The procedure that leaves the equipment safe: the first that closes the cylinder and ends safe.
    fn shut_down(&self) -> (Kind, &'b Rule) {
        let procedure = self.book.procedures.iter().find(|procedure| {
            procedure.ends_safe
                && procedure
                    .steps
                    .iter()
                    .any(|step| step.action == Action::CloseCylinder)
        });
        procedure.map_or((Kind::Agency, &self.book.agency.rule), |procedure| {
            (Kind::Procedure, &procedure.rule)
        })
    }

    fn not_recorded(&mut self) {
        let run = self.run;
        if !self.actions {
            self.blanks.add(NotRecorded::Actions);
        }
        if self.gave {
            if run.group.is_none() {
                self.blanks.add(NotRecorded::Group);
            }
            match self.no_target {
                None | Some(Missing::Group) => {}
                Some(Missing::Conditions) => self.blanks.add(NotRecorded::Conditions),
                Some(Missing::MinuteOfLife) => self.blanks.add(NotRecorded::MinuteOfLife),
                Some(_) => self.blanks.add(NotRecorded::Target),
            }
            if self.aim.is_some() && !self.spo2_on_oxygen {
                self.blanks.add(NotRecorded::Spo2);
            }
            if !self.readings {
                self.blanks.add(NotRecorded::Pressure);
            }
        }
        if self.gave || self.readings {
            if self.ledger.cylinder().is_none() {
                self.blanks.add(NotRecorded::Cylinder);
            }
            if run.temperature.is_none() {
                self.blanks.add(NotRecorded::Temperature);
            }
        }
        for what in ALL_BLANKS {
            if self.blanks.has(*what) {
                let (kind, rule) = self.blank_rule(*what);
                self.found(
                    Level::Unknown,
                    kind,
                    rule,
                    About::NotRecorded(*what),
                    None,
                    None,
                    None,
                );
            }
        }
        self.hazards_not_told();
    }

    /// Hazards that could not be told while the device was on the patient. Where the saturation doesn't guide treatment
    /// there is no target to ask for.
    fn hazards_not_told(&mut self) {
        let mut explained = self.kinds.untold | self.kinds.at_end;
        if self.aim.is_none() && self.no_target.is_none() {
            explained |= self
                .evaluator
                .hazards_that_ask(Inputs::TARGET | Inputs::measure(Measure::Spo2));
        }
        for id in self.watch.not_told() - explained {
            if let Some(hazard) = self.book.hazard(id) {
                let about = About::HazardUnknown(hazard);
                self.found(
                    Level::Unknown,
                    Kind::Hazard,
                    &hazard.rule,
                    about,
                    None,
                    None,
                    None,
                );
            }
        }
    }

    fn blank_rule(&self, what: NotRecorded) -> (Kind, &'b Rule) {
        match what {
            NotRecorded::Spo2 => match &self.aim {
                Some(aim) => (Kind::Target, &aim.target().rule),
                None => (Kind::Agency, &self.book.agency.rule),
            },
            NotRecorded::Temperature => self.policy("use-temperature"),
            NotRecorded::Cylinder | NotRecorded::Pressure | NotRecorded::Density => {
                self.policy("residual-pressure")
            }
            NotRecorded::End => self.shut_down(),
            _ => (Kind::Agency, &self.book.agency.rule),
        }
    }
}

const ALL_BLANKS: &[NotRecorded] = &[
    NotRecorded::Events,
    NotRecorded::Actions,
    NotRecorded::Times,
    NotRecorded::Group,
    NotRecorded::Conditions,
    NotRecorded::MinuteOfLife,
    NotRecorded::Target,
    NotRecorded::Device,
    NotRecorded::Flow,
    NotRecorded::Cylinder,
    NotRecorded::Pressure,
    NotRecorded::Spo2,
    NotRecorded::Temperature,
    NotRecorded::Reservoir,
    NotRecorded::End,
    NotRecorded::Density,
];
