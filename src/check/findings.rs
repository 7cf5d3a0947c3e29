//! Findings kept, for who doesn't want to look at them one by one.

use super::{Finding, Level};

/// Findings in room for `N` of them, without an allocator.
///
/// What finds no room is counted, and its level is told by [`worst`](Self::worst): a full buffer never makes a set-up look
/// better than it is. The demonstration's set-ups have at most some twenty findings.
///
/// ```
/// use oxyfolio::check::{Findings, Level, Setup, check_setup};
/// use oxyfolio::quantity::Flow;
/// use oxyfolio::{RULEBOOK, device, group};
///
/// let setup = Setup::new(device::NON_REBREATHER, Flow::litres_per_minute(6.0)?).group(group::ADULT);
/// let mut found = Findings::<32>::new();
/// check_setup(&RULEBOOK, &setup, |finding| found.push(finding))?;
/// assert_eq!((found.worst(), found.omitted()), (Some(Level::Stop), 0));
/// assert!(found.iter().any(|finding| finding.code() == "flow-too-low"));
///
/// // Room for one only: the stop is told all the same.
/// let mut first = Findings::<1>::new();
/// check_setup(&RULEBOOK, &setup, |finding| first.push(finding))?;
/// assert_eq!((first.worst(), first.iter().count()), (Some(Level::Stop), 1));
/// assert_eq!(first.omitted(), found.iter().count() - 1);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Clone, Debug)]
#[must_use]
pub struct Findings<'b, const N: usize> {
    kept: [Option<Finding<'b>>; N],
    count: usize,
    worst: Option<Level>,
}

impl<'b, const N: usize> Findings<'b, N> {
    /// No findings yet.
    pub const fn new() -> Self {
        Self {
            kept: [None; N],
            count: 0,
            worst: None,
        }
    }

    /// Keeps a finding, or counts it where there is no room.
    pub fn push(&mut self, finding: Finding<'b>) {
        self.worst = self.worst.max(Some(finding.level));
        if let Some(place) = self.kept.get_mut(self.count) {
            *place = Some(finding);
        }
        self.count = self.count.saturating_add(1);
    }

    /// The findings kept, in the order they were found.
    pub fn iter(&self) -> impl Iterator<Item = &Finding<'b>> {
        self.kept.iter().flatten()
    }

    /// How many more were found than there was room for.
    #[must_use]
    pub const fn omitted(&self) -> usize {
        self.count.saturating_sub(N)
    }

    /// The gravest level of all that was found, kept or not; `None` where nothing was.
    #[must_use]
    pub const fn worst(&self) -> Option<Level> {
        self.worst
    }

    /// Whether the set-up may not be called in order: something is wrong, or could not be checked.
    #[must_use]
    pub fn is_wrong(&self) -> bool {
        self.worst.is_some_and(Level::is_wrong)
    }
}

impl<const N: usize> Default for Findings<'_, N> {
    fn default() -> Self {
        Self::new()
    }
}
