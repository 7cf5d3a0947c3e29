//! Any text as the file of a transport plan: mistakes have their places, and what was read has an answer in which nothing is lost.

use oxyfolio::{
    RULEBOOK,
    check::plan::{Answer, Order, Plan},
    compile::transport,
};

use super::places;

/// Reads the bytes as a plan, and answers it in both orders.
pub fn run(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    let transport = match transport::read(&RULEBOOK, "plan.yaml", text) {
        Ok(transport) => transport,
        Err(rejected) => {
            assert!(!rejected.diagnostics.is_empty(), "rejected without a reason");
            return places::check(&rejected.diagnostics, &rejected.sources);
        }
    };
    let plan = &transport.plan;
    assert!(!plan.legs.is_empty() && !plan.cylinders.is_empty());
    for order in [Order::FewestChanges, Order::EmptiestFirst] {
        let answer = Answer::to(&RULEBOOK, plan, order);
        assert_eq!(answer, Answer::to(&RULEBOOK, plan, order), "asked twice");
        if let Ok(answer) = answer {
            answered(plan, &answer);
        }
    }
}

fn answered(plan: &Plan, answer: &Answer<'_>) {
    for number in [
        answer.needed_litres,
        answer.expected_litres,
        answer.needed_minutes,
        answer.expected_minutes,
        answer.spare_litres,
        answer.short_litres,
    ] {
        assert!(number.is_finite() && number >= 0.0, "{answer:?}");
    }
    assert!(
        answer.needed_litres >= answer.expected_litres && answer.needed_minutes >= answer.expected_minutes
    );
    assert_eq!(answer.enough, answer.breaks.is_none());
    assert_eq!(
        answer.enough_without_margin,
        answer.breaks_without_margin.is_none()
    );
    assert!(
        answer.enough_without_margin || !answer.enough,
        "a margin makes nothing enough"
    );
    assert!(answer.enough || answer.spare_minutes == 0);
    assert!(!answer.enough || answer.short_minutes == 0);
    // Litre by litre: what the legs take is what the cylinders give.
    let flowed: f64 = answer
        .segments
        .iter()
        .map(|segment| (segment.to_minutes - segment.from_minutes) * segment.litres_per_minute)
        .sum();
    let given: f64 = answer.left.iter().map(|left| left.used_litres).sum();
    assert!(
        (flowed - given).abs() <= 1e-6 * (1.0 + flowed.abs()),
        "{flowed} flowed, {given} given: {answer:?}"
    );
    assert_eq!(answer.left.len(), plan.cylinders.len());
    for segments in answer.segments.windows(2) {
        assert!(
            segments[0].to_minutes <= segments[1].from_minutes + 1e-9,
            "{answer:?}"
        );
    }
    for segment in &answer.segments {
        assert!(segment.leg < plan.legs.len());
        assert!(segment.cylinder.is_none_or(|index| index < plan.cylinders.len()));
        assert!(segment.from_minutes <= segment.to_minutes);
        assert!(
            segment.pressure_after.as_psi() <= segment.pressure_before.as_psi() + 1e-6,
            "{answer:?}"
        );
    }
}
