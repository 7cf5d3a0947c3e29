//! Who can say whether a hazard is there.

use super::{Observed, Truth, evaluate};
use crate::book::{HazardId, Rulebook};

/// Says which hazards of a rulebook are there.
///
/// A reference to any [`Rulebook`] is one: it walks its guards' operations. The rulebook compiled into a program brings
/// another, [`hazard::Guards`](crate::hazard::Guards), in which every guard is a function. An evaluator knows its book,
/// so that the guards of one book can't be asked for the hazards of another.
///
/// ```
/// use oxyfolio::book::Fact;
/// use oxyfolio::guard::{Evaluator, Facts, Observed, Truth};
/// use oxyfolio::quantity::Flow;
/// use oxyfolio::{RULEBOOK, device, group, hazard};
///
/// let mut seen = Observed {
///     device: Some(device::NASAL_CANNULA),
///     group: Some(group::ADULT),
///     flow: Some(Flow::ZERO),
///     ..Observed::default()
/// };
/// // Nobody said whether the cannula is on the patient.
/// assert_eq!(hazard::Guards.evaluate(hazard::NO_FLOW_ON_PATIENT, &seen), Truth::Unknown);
/// seen.facts = Facts::default().with(Fact::DeviceOnPatient, true);
/// assert_eq!(hazard::Guards.evaluate(hazard::NO_FLOW_ON_PATIENT, &seen), Truth::True);
/// assert_eq!((&RULEBOOK).evaluate(hazard::NO_FLOW_ON_PATIENT, &seen), Truth::True);
/// ```
pub trait Evaluator<'b> {
    /// The rulebook whose hazards it knows.
    fn book(&self) -> &'b Rulebook;

    /// Whether a hazard is there; unknown for an identifier of another book.
    fn evaluate(&self, hazard: HazardId, observed: &Observed<'_>) -> Truth;
}

impl<'b> Evaluator<'b> for &'b Rulebook {
    fn book(&self) -> &'b Rulebook {
        self
    }

    fn evaluate(&self, hazard: HazardId, observed: &Observed<'_>) -> Truth {
        self.hazard(hazard)
            .map_or(Truth::Unknown, |hazard| evaluate(&hazard.never, self, observed))
    }
}
