//! Whether a guard can come to an answer at all.
//!
//! What a guard speaks of is given values one after the other, and a branch is left as soon as the three-valued answer
//! is known. Of a measure only the numbers it is compared with matter, the ends of what can be measured, and what lies
//! between: two points of each gap are tried, so that two measures can be told apart there.

use std::{
    cell::Cell,
    collections::{BTreeMap, BTreeSet},
};

use crate::book::{
    ConditionId, DeviceId, Fact, GroupId, Guard, GuardOp, Measure, Operand, Rulebook, Saturation, Value,
};
use crate::guard::{Observed, Truth, compare::Comparable, evaluate};
use crate::quantity::{Bounds, Flow, Percent, Pressure, Range, Temperature, Time, bounds};

/// What a search came to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// There is a state in which the guard gives this answer.
    Can,
    /// There is none.
    Never,
    /// The guard has too many cases.
    NotDecided,
}

/// Up to so many conditions, every set of them is tried.
const MOST_CONDITIONS: usize = 5;
/// As many evaluations are spent on one guard.
const MOST_EVALUATIONS: u64 = 50_000;

/// Which conditions have a target of their own in which group, and whether it is one whose reading can't be trusted.
pub struct OwnTargets(BTreeMap<(ConditionId, GroupId), bool>);

impl OwnTargets {
    /// Those of a book.
    pub fn of(book: &Rulebook) -> Self {
        let mut own = BTreeMap::new();
        for target in &book.targets {
            for group in &target.groups {
                if let Some(condition) = target.condition {
                    let untrusted = own.entry((condition, *group)).or_insert(false);
                    *untrusted |= target.saturation == Saturation::NotReliable;
                }
            }
        }
        Self(own)
    }

    /// Whether a target gives way to one of these conditions: a general target to any that has one, and every target
    /// to one whose reading can't be trusted.
    fn take_the_place(&self, conditions: &[ConditionId], group: GroupId, general: bool) -> bool {
        conditions
            .iter()
            .filter_map(|condition| self.0.get(&(*condition, group)))
            .any(|untrusted| general || *untrusted)
    }
}

/// Whether a guard can give an answer; takes what it spends from `left`.
pub fn can_be(guard: &Guard, book: &Rulebook, own: &OwnTargets, wanted: Truth, left: &mut u64) -> Outcome {
    let subject = Subject::of(guard);
    let given = MOST_EVALUATIONS.min(*left);
    let search = Search {
        book,
        guard,
        own,
        wanted,
        left: Cell::new(given),
        variables: subject.variables(),
        devices: subject.devices(book),
        groups: subject.groups(book),
        sets: subject.sets(),
        by_target: subject.target,
    };
    let every_case = subject.conditions.len() <= MOST_CONDITIONS;
    let outcome = match search.from(0, &Observed::default()) {
        Outcome::Never if !every_case => Outcome::NotDecided,
        outcome => outcome,
    };
    *left = left.saturating_sub(given - search.left.get());
    outcome
}

/// What a guard speaks of.
#[derive(Default)]
struct Subject {
    facts: Vec<Fact>,
    measures: Vec<Measure>,
    devices: BTreeSet<DeviceId>,
    groups: BTreeSet<GroupId>,
    conditions: BTreeSet<ConditionId>,
    reservoir: bool,
    device_flow: bool,
    target: bool,
}

#[derive(Clone, Copy)]
enum Variable {
    Group,
    Device,
    Patient,
    Fact(Fact),
    Measure(Measure),
}

impl Subject {
    fn of(guard: &Guard) -> Self {
        let mut subject = Self::default();
        for op in &guard.ops {
            match op {
                GuardOp::Compare(measure, _, operand) => {
                    subject.measure(*measure);
                    match operand {
                        Operand::Measure(other) => subject.measure(*other),
                        Operand::TargetLow | Operand::TargetHigh => subject.target = true,
                        Operand::DeviceLeastFlow | Operand::DeviceMostFlow => subject.device_flow = true,
                        _ => {}
                    }
                }
                GuardOp::Within(measure, _) => subject.measure(*measure),
                GuardOp::Fact(Fact::DeviceHasReservoir) => subject.reservoir = true,
                GuardOp::Fact(fact) if !subject.facts.contains(fact) => subject.facts.push(*fact),
                GuardOp::DeviceIs(id) => {
                    subject.devices.insert(*id);
                }
                GuardOp::GroupIs(id) => {
                    subject.groups.insert(*id);
                }
                GuardOp::HasCondition(id) => {
                    subject.conditions.insert(*id);
                }
                _ => {}
            }
        }
        subject
    }

    fn measure(&mut self, measure: Measure) {
        if !self.measures.contains(&measure) {
            self.measures.push(measure);
        }
    }

    fn variables(&self) -> Vec<Variable> {
        let mut variables = Vec::new();
        if self.device_flow || self.target || !self.groups.is_empty() {
            variables.push(Variable::Group);
        }
        if self.device_flow || self.reservoir || !self.devices.is_empty() {
            variables.push(Variable::Device);
        }
        if self.target || !self.conditions.is_empty() {
            variables.push(Variable::Patient);
        }
        variables.extend(self.facts.iter().copied().map(Variable::Fact));
        variables.extend(self.measures.iter().copied().map(Variable::Measure));
        variables
    }

    /// Every device where its numbers matter; else those that are named, and one that isn't.
    fn devices(&self, book: &Rulebook) -> Vec<DeviceId> {
        let all = (0_u16..).zip(&book.devices).map(|(index, _)| DeviceId(index));
        let every = self.device_flow || self.reservoir;
        named(all, |id| self.devices.contains(id), every)
    }

    fn groups(&self, book: &Rulebook) -> Vec<GroupId> {
        let all = (0_u16..).zip(&book.groups).map(|(index, _)| GroupId(index));
        let every = self.device_flow || self.target;
        named(all, |id| self.groups.contains(id), every)
    }

    /// Every set of the conditions that are named; of many conditions none, each alone and all.
    fn sets(&self) -> Vec<Vec<ConditionId>> {
        let named: Vec<ConditionId> = self.conditions.iter().copied().collect();
        if named.len() > MOST_CONDITIONS {
            let alone: Vec<Vec<ConditionId>> = named.iter().map(|id| vec![*id]).collect();
            return [Vec::new(), named].into_iter().chain(alone).collect();
        }
        let in_set = |set: u32, place: u32| set & (1 << place) != 0;
        (0..1_u32 << named.len())
            .map(|set| {
                let members = (0..).zip(&named).filter(|(place, _)| in_set(set, *place));
                members.map(|(_, id)| *id).collect()
            })
            .collect()
    }
}

fn named<Id: Copy>(all: impl Iterator<Item = Id>, is_named: impl Fn(&Id) -> bool, every: bool) -> Vec<Id> {
    let mut other = false;
    all.filter(|id| every || is_named(id) || !core::mem::replace(&mut other, true))
        .collect()
}

struct Search<'a> {
    book: &'a Rulebook,
    guard: &'a Guard,
    own: &'a OwnTargets,
    wanted: Truth,
    left: Cell<u64>,
    variables: Vec<Variable>,
    devices: Vec<DeviceId>,
    groups: Vec<GroupId>,
    /// The sets of conditions that are tried.
    sets: Vec<Vec<ConditionId>>,
    /// Whether the guard speaks of the target.
    by_target: bool,
}

impl Search<'_> {
    fn spend(&self) -> bool {
        let left = self.left.get();
        self.left.set(left.saturating_sub(1));
        left > 0
    }

    /// Tries every value of the variables from `depth` on.
    fn from(&self, depth: usize, observed: &Observed<'_>) -> Outcome {
        if !self.spend() {
            return Outcome::NotDecided;
        }
        let truth = evaluate(self.guard, self.book, observed);
        if truth == self.wanted {
            return Outcome::Can;
        }
        if truth != Truth::Unknown {
            return Outcome::Never;
        }
        let Some(variable) = self.variables.get(depth) else {
            return Outcome::Never;
        };
        let mut outcome = Outcome::Never;
        let mut with = |change: &dyn Fn(&mut Observed<'_>)| {
            let mut next = *observed;
            change(&mut next);
            match self.from(depth + 1, &next) {
                Outcome::Can => outcome = Outcome::Can,
                Outcome::NotDecided if outcome == Outcome::Never => outcome = Outcome::NotDecided,
                _ => {}
            }
            outcome != Outcome::Can && self.left.get() > 0
        };
        match variable {
            Variable::Group => {
                let _ = self.groups.iter().all(|id| with(&|next| next.group = Some(*id)));
            }
            Variable::Device => {
                let _ = self
                    .devices
                    .iter()
                    .all(|id| with(&|next| next.device = Some(*id)));
            }
            Variable::Fact(fact) => {
                let _ = [true, false]
                    .iter()
                    .all(|holds| with(&|next| next.facts = next.facts.with(*fact, *holds)));
            }
            Variable::Measure(measure) => {
                let values = self.values(*measure, observed);
                let _ = values
                    .iter()
                    .all(|value| with(&|next| measure_is(next, *measure, *value)));
            }
            // The closure above can't lend a patient's conditions.
            Variable::Patient => outcome = self.patient(depth, observed),
        }
        outcome
    }

    /// Tries the conditions a patient may have, with every target that may then be theirs.
    fn patient(&self, depth: usize, observed: &Observed<'_>) -> Outcome {
        let mut outcome = Outcome::Never;
        for set in &self.sets {
            let tried = if self.by_target {
                self.targets(depth, observed, set)
            } else {
                let conditions = Some(set.as_slice());
                self.from(
                    depth + 1,
                    &Observed {
                        conditions,
                        ..*observed
                    },
                )
            };
            match tried {
                Outcome::Can => return Outcome::Can,
                Outcome::NotDecided => outcome = Outcome::NotDecided,
                Outcome::Never => {}
            }
        }
        outcome
    }

    fn targets(&self, depth: usize, observed: &Observed<'_>, set: &[ConditionId]) -> Outcome {
        let mut outcome = Outcome::Never;
        for target in &self.book.targets {
            let (Saturation::Range(range), Some(group)) = (target.saturation, observed.group) else {
                continue;
            };
            let mut conditions = set.to_vec();
            conditions.extend(target.condition.filter(|own| !set.contains(own)));
            let general = target.condition.is_none();
            if !target.groups.contains(&group) || self.own.take_the_place(&conditions, group, general) {
                continue;
            }
            let next = Observed {
                conditions: Some(&conditions),
                target: Some(range),
                ..*observed
            };
            match self.from(depth + 1, &next) {
                Outcome::Can => return Outcome::Can,
                Outcome::NotDecided => return Outcome::NotDecided,
                Outcome::Never => {}
            }
        }
        if self.left.get() == 0 {
            outcome = Outcome::NotDecided;
        }
        outcome
    }

    /// The values of a measure that can make a difference.
    fn values(&self, measure: Measure, observed: &Observed<'_>) -> Vec<f64> {
        let (least, most) = ends(measure);
        let mut points = vec![least, most];
        for op in &self.guard.ops {
            match op {
                GuardOp::Compare(own, _, operand) if alike(*own, measure) => {
                    points.extend(self.operand(*operand, observed));
                }
                GuardOp::Within(own, range) if alike(*own, measure) => points.extend(numbers(range)),
                _ => {}
            }
        }
        points.retain(|point| (least..=most).contains(point));
        points.sort_by(f64::total_cmp);
        points.dedup();
        let mut values = points.clone();
        for pair in points.windows(2) {
            if let &[low, high] = pair {
                values.extend([low + (high - low) / 3.0, low + (high - low) * 2.0 / 3.0]);
            }
        }
        values
    }

    fn operand(&self, operand: Operand, observed: &Observed<'_>) -> Vec<f64> {
        let policy = |id| {
            self.book
                .policy(id)
                .map_or_else(Vec::new, |policy| numbers(&policy.value))
        };
        let limits = || {
            let device = self.book.device(observed.device?)?;
            Some(device.flow_for(observed.group?))
        };
        match operand {
            Operand::Value(value) => numbers(&value),
            Operand::Policy(id) | Operand::PolicyLow(id) | Operand::PolicyHigh(id) => policy(id),
            Operand::TargetLow | Operand::TargetHigh => {
                observed.target.map_or_else(Vec::new, |range| both(&range))
            }
            Operand::DeviceLeastFlow | Operand::DeviceMostFlow => {
                limits().map_or_else(Vec::new, |range| both(&range))
            }
            Operand::Measure(_) => Vec::new(),
        }
    }
}

/// Whether two measures can be compared with each other.
fn alike(one: Measure, other: Measure) -> bool {
    let time = |measure| matches!(measure, Measure::MinutesLeft | Measure::MinutesWanted);
    one == other || (time(one) && time(other))
}

/// The least and most that can be measured, in the unit guards compare in.
fn ends(measure: Measure) -> (f64, f64) {
    let of = |bounds: &Bounds, unit: f64| (bounds.least * unit, bounds.most * unit);
    match measure {
        Measure::Flow => of(&bounds::FLOW, 1.0),
        Measure::Pressure => of(&bounds::GAUGE_PRESSURE, 100_000.0),
        Measure::Temperature => of(&bounds::TEMPERATURE, 1.0),
        Measure::Spo2 => of(&bounds::SATURATION, 1.0),
        Measure::MinutesLeft | Measure::MinutesWanted => of(&bounds::TIME, 1.0),
    }
}

fn measure_is(observed: &mut Observed<'_>, measure: Measure, value: f64) {
    match measure {
        Measure::Flow => observed.flow = Some(Flow::tabled(value)),
        Measure::Pressure => observed.pressure = Some(Pressure::tabled(value)),
        Measure::Temperature => observed.temperature = Some(Temperature::tabled(value)),
        Measure::Spo2 => observed.spo2 = Some(Percent::tabled(value)),
        Measure::MinutesLeft => observed.minutes_left = Time::minutes(value).ok(),
        Measure::MinutesWanted => observed.minutes_wanted = Time::minutes(value).ok(),
    }
}

fn both<Q: Comparable>(range: &Range<Q>) -> Vec<f64> {
    [range.low.value(), range.high.value()]
        .into_iter()
        .flatten()
        .map(Q::number)
        .collect()
}

/// The numbers of a quantity or range, in the unit guards compare in.
fn numbers(value: &Value) -> Vec<f64> {
    match value {
        Value::Flow(flow) => vec![flow.number()],
        Value::Pressure(pressure) => vec![pressure.number()],
        Value::Temperature(temperature) => vec![temperature.number()],
        Value::Percent(share) => vec![share.number()],
        Value::Time(time) => vec![time.number()],
        Value::FlowRange(range) => both(range),
        Value::PressureRange(range) => both(range),
        Value::TemperatureRange(range) => both(range),
        Value::PercentRange(range) => both(range),
        Value::TimeRange(range) => both(range),
        Value::Volume(_) | Value::Factor(_) | Value::Ratio(_) => Vec::new(),
    }
}
