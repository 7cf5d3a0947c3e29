//! A checked set-up in one value.

use core::fmt;

use alloc::vec::Vec;

use super::{NotJudged, NotThisBook, Setup, check_setup};
use crate::check::{About, Finding, Level};
use crate::guard::Evaluator;

/// All that a check of a set-up says: what [`check_setup`] gives to a visitor, kept.
#[derive(Clone, Debug)]
#[must_use]
#[non_exhaustive]
pub struct Report<'b> {
    /// The findings, the gravest first; within a level in the order they were found.
    pub findings: Vec<Finding<'b>>,
    /// The hazards that a set-up can't show because they depend on the state of the equipment: look yourself.
    pub not_checked: Vec<NotJudged<'b>>,
}

impl<'b> Report<'b> {
    /// Checks a set-up, as [`check_setup`] does.
    ///
    /// # Errors
    ///
    /// [`NotThisBook`] when an identifier is beyond this rulebook's tables.
    ///
    /// ```
    /// use oxyfolio::check::{Report, Setup};
    /// use oxyfolio::quantity::{Flow, Pressure};
    /// use oxyfolio::{RULEBOOK, cylinder, device, group};
    ///
    /// let setup = Setup::new(device::NON_REBREATHER, Flow::litres_per_minute(8.0)?)
    ///     .group(group::ADULT)
    ///     .cylinder(cylinder::D)
    ///     .pressure(Pressure::psi(1500.0)?);
    /// let report = Report::of(&RULEBOOK, &setup)?;
    /// assert!(report.is_wrong());
    /// assert_eq!(report.minutes_left(), Some(25));
    /// assert!(report.to_string().starts_with("stop: 8 L/min is too low for the non-rebreather mask"));
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn of<E: Evaluator<'b>>(evaluator: E, setup: &Setup<'_>) -> Result<Self, NotThisBook> {
        let mut findings = Vec::new();
        let left = check_setup(evaluator, setup, |finding| findings.push(finding))?;
        let not_checked = left.hazards().collect();
        findings.sort_by_key(|finding| core::cmp::Reverse(finding.level));
        Ok(Self {
            findings,
            not_checked,
        })
    }

    /// The gravest level found; `None` where nothing was.
    #[must_use]
    pub fn worst(&self) -> Option<Level> {
        self.findings.first().map(|finding| finding.level)
    }

    /// Whether the set-up may not be called in order: something is wrong, or could not be checked.
    #[must_use]
    pub fn is_wrong(&self) -> bool {
        self.worst().is_some_and(Level::is_wrong)
    }

    /// How long the gas lasts, in whole minutes, rounded down; `None` where that could not be worked out.
    #[must_use]
    pub fn minutes_left(&self) -> Option<u32> {
        self.findings.iter().find_map(|finding| match finding.about {
            About::MinutesLeft { minutes_left } => Some(minutes_left),
            _ => None,
        })
    }
}

/// A line for each finding: its level, the finding, its code.
impl fmt::Display for Report<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for finding in &self.findings {
            writeln!(f, "{}: {finding} [{}]", finding.level.word(), finding.code())?;
        }
        Ok(())
    }
}
