//! Explains a record whose steps are not in order: the chain of procedures that needs the fewest excuses.
//!
//! Every event is read as a step of the procedure that goes on, as something done again, as a look of no consequence, as a
//! step of a procedure that follows, or as out of place; what each reading would blame the crew for is its price. The
//! cheapest readings are kept from event to event (a beam), and the cheapest at the end is told.

use alloc::vec::Vec;

use super::chart::{Bag, Chart, Plan, Steps, members, one};
use crate::book::{Action, DeviceId};

/// How many readings are kept from event to event.
const BEAM: usize = 24;
/// Readings so much dearer than the cheapest are given up.
const SPREAD: u32 = 12;
/// The price of a step out of order: less than of one that is missing, so that what was done late isn't read as both
/// left out and done for nothing.
const LATE: u32 = 2;
/// The price of a critical step that is missing.
const MISSING: u32 = 3;
/// The price of something out of place.
const OUT_OF_PLACE: u32 = 6;
/// The price of a step with a device the procedure isn't for. It is no finding by itself, and so is dearer than one that is:
/// what has no place in the device's own procedure is told as that.
const OTHER_DEVICE: u32 = 7;
/// The price of beginning in the middle: with a procedure that follows others.
const MIDDLE: u32 = 1;
/// The price of a procedure that doesn't follow.
const DOES_NOT_FOLLOW: u32 = 7;

/// What is wrong with the steps.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Excuse {
    /// `step` was done before `first`.
    TooEarly {
        procedure: u16,
        step: usize,
        first: usize,
    },
    /// A critical step is missing.
    Skipped { procedure: u16, step: usize },
    /// What was done has no place.
    OutOfPlace { procedure: u16, action: Action },
    /// `procedure` doesn't follow `before`.
    DoesNotFollow { procedure: u16, before: u16 },
}

/// Something done, at an event.
#[derive(Clone, Copy, Debug)]
pub struct Done {
    pub event: u32,
    pub action: Action,
    pub device: Option<DeviceId>,
    /// Of the device last named.
    pub bag: Bag,
}

#[derive(Clone, Copy, Debug)]
enum How {
    Step(usize),
    Nothing,
    OutOfPlace,
    /// A procedure is begun with this step.
    Begin(usize),
}

#[derive(Clone, Copy, Debug)]
struct Node {
    before: Option<u32>,
    /// Which of the things done it reads.
    read: u32,
    procedure: u16,
    done: Steps,
    /// Those of them already told to have been too early.
    told: Steps,
    price: u32,
    /// How much was done that is no step; of readings of one price the one with the least is told.
    idle: u32,
    how: How,
}

/// The cheapest reading in which a procedure could end now.
#[derive(Clone, Copy, Debug)]
struct Leaving {
    price: u32,
    idle: u32,
    index: u32,
    procedure: u16,
}

/// The readings, kept from record to record for their room.
#[derive(Debug, Default)]
pub struct Explainer {
    nodes: Vec<Node>,
    beam: Vec<u32>,
    next: Vec<Node>,
    leaving: Vec<Leaving>,
    path: Vec<u32>,
    done_at: Vec<u32>,
    /// For each thing done, the procedure it belongs to.
    pub belongs: Vec<u16>,
}

impl Explainer {
    /// Explains what was done; `tell` gets each excuse with the event at which it shows. Gives the procedure with which the
    /// record began.
    pub fn explain(
        &mut self,
        chart: &Chart<'_>,
        done: &[Done],
        mut tell: impl FnMut(u32, Excuse),
    ) -> Option<u16> {
        self.nodes.clear();
        self.beam.clear();
        self.belongs.clear();
        for (read, one_done) in (0_u32..).zip(done) {
            self.step(chart, read, *one_done);
        }
        let bag = done.last().map_or(Bag::May, |done| done.bag);
        let best = self.beam.iter().copied().min_by_key(|index| {
            let node = self.nodes.get(*index as usize);
            node.map_or((u32::MAX, u32::MAX), |node| {
                (node.price + missing(chart, node, bag), node.idle)
            })
        })?;
        self.path.clear();
        let mut at = Some(best);
        while let Some(index) = at {
            self.path.push(index);
            at = self.nodes.get(index as usize).and_then(|node| node.before);
        }
        self.path.reverse();
        self.tell(chart, done, &mut tell)
    }

    fn step(&mut self, chart: &Chart<'_>, read: u32, done: Done) {
        self.next.clear();
        self.leaving.clear();
        if read == 0 {
            for (procedure, plan) in chart.all() {
                begin(&mut self.next, plan, None, read, procedure, beginning(plan), done);
            }
            if self.next.is_empty() {
                // It is in no procedure of the book, and so harmless; any may follow it.
                for (procedure, plan) in chart.all() {
                    let node = Node {
                        before: None,
                        read,
                        procedure,
                        done: 0,
                        told: 0,
                        price: beginning(plan),
                        idle: 0,
                        how: How::Nothing,
                    };
                    keep(&mut self.next, node);
                }
            }
        }
        for index in &self.beam {
            let Some(node) = self.nodes.get(*index as usize).copied() else {
                continue;
            };
            let Some(plan) = chart.plan(node.procedure) else {
                continue;
            };
            let on = |done, price, how| Node {
                before: Some(*index),
                read,
                procedure: node.procedure,
                done,
                told: node.told,
                price: node.price + price,
                idle: node.idle + u32::from(matches!(how, How::Nothing)),
                how,
            };
            let other_device = if plan.is_for(done.device) { 0 } else { OTHER_DEVICE };
            let doing = plan.doing(done.action);
            let mut has_place = false;
            for step in members(doing & !node.done) {
                let early = plan.later(step) & node.done;
                has_place |= early == 0;
                // A step that was done before many is too early once.
                let late = if early & !node.told == 0 { 0 } else { LATE };
                let next = Node {
                    told: node.told | early,
                    ..on(node.done | one(step), late + other_device, How::Step(step))
                };
                keep(&mut self.next, next);
            }
            // A step that has its place is never passed over, or every subset of the steps would be a reading.
            if !has_place {
                let harmless = doing & node.done != 0 || (doing == 0 && chart.is_harmless(done.action));
                let (price, how) = if harmless {
                    (0, How::Nothing)
                } else {
                    (OUT_OF_PLACE, How::OutOfPlace)
                };
                keep(&mut self.next, on(node.done, price, how));
            }
            let leaving = Leaving {
                price: node.price + missing(chart, &node, done.bag),
                idle: node.idle,
                index: *index,
                procedure: node.procedure,
            };
            match self
                .leaving
                .iter_mut()
                .find(|other| other.procedure == node.procedure)
            {
                Some(other) if (other.price, other.idle) <= (leaving.price, leaving.idle) => {}
                Some(other) => *other = leaving,
                None => self.leaving.push(leaving),
            }
        }
        for (procedure, next) in chart.all() {
            if next.doing(done.action) == 0 {
                continue;
            }
            // Of all readings that could end now, the cheapest to go on from.
            let from = self.leaving.iter().map(|leaving| {
                let follows = chart
                    .plan(leaving.procedure)
                    .is_some_and(|plan| plan.followers.contains(&procedure));
                let price = leaving.price + if follows { 0 } else { DOES_NOT_FOLLOW };
                (price, leaving.idle, leaving.index)
            });
            if let Some((price, idle, index)) = from.min() {
                begin(
                    &mut self.next,
                    next,
                    Some((index, idle)),
                    read,
                    procedure,
                    price,
                    done,
                );
            }
        }
        self.next
            .sort_by_key(|node| (node.price, missing(chart, node, done.bag), node.idle));
        let most = self.next.first().map_or(0, |node| node.price) + SPREAD;
        self.next.truncate(BEAM);
        self.next.retain(|node| node.price <= most);
        self.beam.clear();
        for node in &self.next {
            if let Ok(index) = u32::try_from(self.nodes.len()) {
                self.beam.push(index);
                self.nodes.push(*node);
            }
        }
    }

    fn tell(&mut self, chart: &Chart<'_>, done: &[Done], tell: &mut impl FnMut(u32, Excuse)) -> Option<u16> {
        let mut going: Option<Node> = None;
        let mut first_of_all = None;
        for index in &self.path {
            let Some(node) = self.nodes.get(*index as usize).copied() else {
                continue;
            };
            let (event, bag) = done
                .get(node.read as usize)
                .map_or((0, Bag::May), |done| (done.event, done.bag));
            let plan = chart.plan(node.procedure)?;
            first_of_all = first_of_all.or(Some(node.procedure));
            match node.how {
                How::Begin(step) => {
                    if let Some(before) = going {
                        tell_missing(chart, &before, bag, event, tell);
                        let follows = chart
                            .plan(before.procedure)
                            .is_some_and(|plan| plan.followers.contains(&node.procedure));
                        if !follows {
                            let (procedure, before) = (node.procedure, before.procedure);
                            tell(event, Excuse::DoesNotFollow { procedure, before });
                        }
                    }
                    self.done_at.clear();
                    self.done_at.resize(plan.procedure.steps.len(), u32::MAX);
                    set(&mut self.done_at, step, event);
                }
                How::Step(first) => {
                    let already = going.map_or(0, |going| going.done & !going.told);
                    let at = |step: &usize| self.done_at.get(*step).copied().unwrap_or(u32::MAX);
                    if let Some(step) = members(plan.later(first) & already).min_by_key(at) {
                        let procedure = node.procedure;
                        tell(
                            at(&step),
                            Excuse::TooEarly {
                                procedure,
                                step,
                                first,
                            },
                        );
                    }
                    if self.done_at.len() < plan.procedure.steps.len() {
                        self.done_at.resize(plan.procedure.steps.len(), u32::MAX);
                    }
                    set(&mut self.done_at, first, event);
                }
                How::Nothing => {}
                How::OutOfPlace => {
                    let action = done.get(node.read as usize)?.action;
                    let procedure = node.procedure;
                    tell(event, Excuse::OutOfPlace { procedure, action });
                }
            }
            self.belongs.push(node.procedure);
            going = Some(node);
        }
        if let Some(last) = going {
            let (event, bag) = done.last().map_or((0, Bag::May), |done| (done.event, done.bag));
            tell_missing(chart, &last, bag, event, tell);
        }
        first_of_all
    }
}

fn set(done_at: &mut [u32], step: usize, event: u32) {
    if let Some(place) = done_at.get_mut(step) {
        *place = event;
    }
}

/// The cheapest of those that come to the same.
fn keep(nodes: &mut Vec<Node>, node: Node) {
    let same = |other: &&mut Node| other.procedure == node.procedure && other.done == node.done;
    match nodes.iter_mut().find(same) {
        Some(other) if (other.price, other.idle) <= (node.price, node.idle) => {}
        Some(other) => *other = node,
        None => nodes.push(node),
    }
}

/// The price of a record that begins with a procedure.
fn beginning(plan: &Plan<'_>) -> u32 {
    if plan.procedure.follows.is_empty() {
        0
    } else {
        MIDDLE
    }
}

/// Begins a procedure, after the reading of an index and so much idleness.
fn begin(
    nodes: &mut Vec<Node>,
    plan: &Plan<'_>,
    before: Option<(u32, u32)>,
    read: u32,
    procedure: u16,
    price: u32,
    done: Done,
) {
    let other_device = if plan.is_for(done.device) { 0 } else { OTHER_DEVICE };
    for step in members(plan.doing(done.action)) {
        let node = Node {
            before: before.map(|(index, _)| index),
            read,
            procedure,
            done: one(step),
            told: 0,
            price: price + other_device,
            idle: before.map_or(0, |(_, idle)| idle),
            how: How::Begin(step),
        };
        keep(nodes, node);
    }
}

/// The price of the critical steps that are missing.
fn missing(chart: &Chart<'_>, node: &Node, bag: Bag) -> u32 {
    chart
        .plan(node.procedure)
        .map_or(0, |plan| (plan.critical(bag) & !node.done).count_ones() * MISSING)
}

fn tell_missing(chart: &Chart<'_>, node: &Node, bag: Bag, event: u32, tell: &mut impl FnMut(u32, Excuse)) {
    let procedure = node.procedure;
    let missing = chart
        .plan(procedure)
        .map_or(0, |plan| plan.critical(bag) & !node.done);
    for step in members(missing) {
        tell(event, Excuse::Skipped { procedure, step });
    }
}
