//! All guards of a book asked at once, by look-ups.
//!
//! [`evaluate`](crate::guard::evaluate) walks one guard, operation by operation. Who asks all hazards of a book for millions
//! of states makes a [`Lookup`] of the book once; it says the same and takes some nanoseconds for all of them. The
//! compiled-in book needs none: its [`Guards`](crate::hazard::Guards) are written this way.
//!
//! How it works is told in [`guard::mask`](crate::guard::mask). A page holds up to 64 lines; the demonstration needs one. A
//! guard that has no such form, because it alone has more lines or asks whether a flow *equals* a device's limit, is walked
//! as before.

mod build;
mod lower;
mod page;
mod steps;

// What the emitter writes.
#[doc(hidden)]
pub use lower::{End, Observation};
#[doc(hidden)]
pub use page::{Levels, Limits, Page, Pair, Threes};

use alloc::vec::Vec;

use crate::book::{HazardId, Rulebook};
use crate::guard::{Broken, Evaluator, HazardSet, Observed, Row, Truth};

/// The guards of a book as look-ups.
///
/// ```
/// use oxyfolio::guard::{Evaluator, Row};
/// use oxyfolio::lookup::Lookup;
/// use oxyfolio::quantity::{Flow, Pressure};
/// use oxyfolio::{RULEBOOK, device, group, hazard};
///
/// let guards = Lookup::new(&RULEBOOK);
/// let mut row = Row::UNKNOWN;
/// row.set_device(Some(device::NON_REBREATHER));
/// row.set_group(Some(group::ADULT));
/// row.set_fact(oxyfolio::book::Fact::DeviceOnPatient, Some(true));
/// row.set_flow(Some(Flow::litres_per_minute(6.0)?));
/// let mut reported = guards.broken_row(&row).there;
/// assert!(reported.contains(hazard::RESERVOIR_FLOW_TOO_LOW));
/// // Later only the pressure falls; what is new is reported.
/// row.set_pressure(Some(Pressure::psi(150.0)?));
/// let there = guards.broken_row(&row).there;
/// assert!((there - reported).contains(hazard::NEARLY_EMPTY));
/// reported |= there;
/// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
/// ```
#[derive(Clone, Debug)]
pub struct Lookup<'b> {
    book: &'b Rulebook,
    devices: u32,
    groups: u32,
    pages: Vec<Page>,
    walked: HazardSet,
}

impl<'b> Lookup<'b> {
    /// Makes the look-ups of a book. A hazard past what a [`HazardSet`] holds is left out; no reader makes such a book.
    #[must_use]
    pub fn new(book: &'b Rulebook) -> Self {
        let mut lookup = Self {
            book,
            devices: book.devices.len() as u32,
            groups: book.groups.len() as u32,
            pages: Vec::new(),
            walked: HazardSet::EMPTY,
        };
        let mut waiting = Vec::new();
        let (mut first, mut used) = (0, 0);
        for (id, hazard) in (0..).zip(&book.hazards).take(HazardSet::CAPACITY) {
            let lines = lower::lines(&hazard.never.ops, book).filter(|lines| build::fits(lines));
            if lines.is_none() {
                lookup.walked = lookup.walked.with(HazardId(id));
            }
            let lines = lines.unwrap_or_default();
            let needs = lines.len().max(1);
            if used + needs > 64 {
                let full = core::mem::take(&mut waiting);
                lookup.pages.push(build::page(first, full, book));
                (first, used) = (id, 0);
            }
            used += needs;
            waiting.push(lines);
        }
        if !waiting.is_empty() {
            lookup.pages.push(build::page(first, waiting, book));
        }
        lookup
    }

    /// The pages, for the emitter.
    #[doc(hidden)]
    #[must_use]
    pub fn pages(&self) -> &[Page] {
        &self.pages
    }

    /// The hazards that are walked.
    #[doc(hidden)]
    #[must_use]
    pub const fn walked(&self) -> HazardSet {
        self.walked
    }

    /// Which hazards are there, of all. Never allocates.
    #[must_use]
    pub fn broken(&self, observed: &Observed<'_>) -> Broken {
        let broken = self.looked_up(&Row::from(observed));
        self.walk(broken, observed)
    }

    /// The same of a row, for who keeps one and changes it in place. To ask some hazards only, take
    /// [`Broken::among`]: the whole answer costs less than choosing.
    #[must_use]
    pub fn broken_row(&self, row: &Row) -> Broken {
        let broken = self.looked_up(row);
        if self.walked.is_empty() {
            return broken;
        }
        row.observed(|seen| self.walk(broken, seen))
    }

    fn looked_up(&self, row: &Row) -> Broken {
        self.pages.iter().fold(Broken::default(), |broken, page| {
            let doubt = page.doubt(row, self.devices, self.groups);
            broken.with_page(page.first, page.hazards, doubt)
        })
    }

    fn walk(&self, broken: Broken, seen: &Observed<'_>) -> Broken {
        self.walked.iter().fold(broken, |broken, hazard| {
            broken.with(hazard, self.evaluate(hazard, seen))
        })
    }
}

impl<'b> Evaluator<'b> for &Lookup<'b> {
    type Rules = &'b Rulebook;

    fn book(&self) -> &'b Rulebook {
        self.book
    }

    fn rules(&self) -> &'b Rulebook {
        self.book
    }

    fn evaluate(&self, hazard: HazardId, observed: &Observed<'_>) -> Truth {
        self.book.evaluate(hazard, observed)
    }

    fn broken(&self, observed: &Observed<'_>) -> Broken {
        Lookup::broken(self, observed)
    }

    fn broken_row(&self, row: &Row) -> Broken {
        Lookup::broken_row(self, row)
    }
}
