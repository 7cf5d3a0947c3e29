//! What was reviewed before makes no difference: notes kept from record to record only save work.

use oxyfolio::book::{Action, DeviceId, Procedure};
use oxyfolio::check::review::{Event, Moment, Notes, Reviewer, Run};
use oxyfolio::{RULEBOOK, hazard};

/// A plain generator (Knuth's constants for 64 bits).
struct Any(u64);

impl Any {
    fn below(&mut self, most: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        (self.0 >> 33) as usize % most
    }
}

/// Steps of the book's procedures in the order of the page, now and then one left out, done twice, or something else instead;
/// with any device named, or none.
fn record(any: &mut Any) -> Vec<Event> {
    let mut actions = Vec::new();
    let mut procedure = any.below(RULEBOOK.procedures.len());
    for _ in 0..1 + any.below(5) {
        for step in &RULEBOOK.procedures[procedure].steps {
            match any.below(40) {
                0 => {}
                1 => actions.extend([step.action, step.action]),
                2 => actions.push(Action::ALL[any.below(Action::ALL.len())]),
                _ => actions.push(step.action),
            }
        }
        // Mostly one that follows.
        let of = |next: &Procedure| next.follows.iter().any(|id| usize::from(id.0) == procedure);
        let followers: Vec<usize> = (0..RULEBOOK.procedures.len())
            .filter(|next| of(&RULEBOOK.procedures[*next]))
            .collect();
        procedure = match followers.len() {
            0 => any.below(RULEBOOK.procedures.len()),
            most => followers[any.below(most)],
        };
    }
    let devices = RULEBOOK.devices.len();
    (0_i64..)
        .zip(actions)
        .map(|(place, action)| Event {
            at: Some(Moment::new(place * 20_000, 0)),
            action: Some(action),
            device: match any.below(4) {
                0 => Some(DeviceId(u16::try_from(any.below(devices)).unwrap())),
                _ => None,
            },
            ..Event::default()
        })
        .collect()
}

#[test]
fn what_was_reviewed_before_makes_no_difference() {
    let reviewer = Reviewer::new(hazard::Guards);
    let review = |events: &[Event], notes: &mut Notes<'static>| {
        let run = Run {
            group: RULEBOOK.find_group("adult"),
            conditions: Some(&[]),
            temperature: None,
            events,
        };
        let mut told = Vec::new();
        reviewer.review(&run, notes, |finding| {
            told.push((finding.code(), finding.line(), finding.to_string()))
        });
        told
    };
    let (mut any, mut kept) = (Any(11), Notes::default());
    let (mut in_order, mut not) = (0, 0);
    for number in 0..1_500 {
        let events = record(&mut any);
        let told = review(&events, &mut kept);
        assert_eq!(
            told,
            review(&events, &mut Notes::default()),
            "record {number}: {events:#?}"
        );
        match told
            .iter()
            .any(|(code, ..)| code.starts_with("step-") || code.starts_with("procedure-"))
        {
            true => not += 1,
            false => in_order += 1,
        }
    }
    assert!(in_order > 100 && not > 100, "{in_order} in order, {not} not");
}
