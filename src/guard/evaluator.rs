//! Who can say whether a hazard is there.

use super::{Broken, HazardSet, Inputs, Observed, Row, Truth, evaluate};
use crate::book::{HazardId, Rulebook, Rules};

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
    /// What a check asks the book by.
    type Rules: Rules<'b>;

    /// The rulebook whose hazards it knows.
    fn book(&self) -> &'b Rulebook;

    /// The same book as far as a check of a set-up needs it. Who asks for no more than this needs no more of the book in
    /// the program.
    fn rules(&self) -> Self::Rules;

    /// Whether a hazard is there; unknown for an identifier of another book.
    fn evaluate(&self, hazard: HazardId, observed: &Observed<'_>) -> Truth;

    /// Which hazards are there, of all. Never allocates.
    fn broken(&self, observed: &Observed<'_>) -> Broken {
        hazards(self.book()).fold(Broken::default(), |broken, hazard| {
            broken.with(hazard, self.evaluate(hazard, observed))
        })
    }

    /// The same of a row, for who keeps one and changes it in place.
    fn broken_row(&self, row: &Row) -> Broken {
        row.observed(|observed| self.broken(observed))
    }

    /// What a hazard's guard asks: nothing else can change its answer. Nothing for an identifier of another book.
    fn depends_on(&self, hazard: HazardId) -> Inputs {
        self.book()
            .hazard(hazard)
            .map_or(Inputs::NONE, |hazard| Inputs::of(&hazard.never))
    }

    /// The hazards whose guards ask for any of these inputs, so that who changed nothing else need not ask again where
    /// there are none. It looks at every guard: ask once for each kind of change, not for each change.
    fn hazards_that_ask(&self, inputs: Inputs) -> HazardSet {
        hazards(self.book())
            .filter(|hazard| self.depends_on(*hazard).shares(inputs))
            .collect()
    }
}

/// The identifiers of a book's hazards. A set holds them all: the reader sees to it.
fn hazards(book: &Rulebook) -> impl Iterator<Item = HazardId> {
    (0..u16::MAX)
        .map(HazardId)
        .take(book.hazards.len().min(HazardSet::CAPACITY))
}

impl<'b> Evaluator<'b> for &'b Rulebook {
    type Rules = Self;

    fn book(&self) -> &'b Rulebook {
        self
    }

    fn rules(&self) -> Self {
        self
    }

    fn evaluate(&self, hazard: HazardId, observed: &Observed<'_>) -> Truth {
        self.hazard(hazard)
            .map_or(Truth::Unknown, |hazard| evaluate(&hazard.never, self, observed))
    }
}
