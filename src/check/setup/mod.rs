//! Checks a set-up: device, flow, patient, cylinder.

mod check;
#[cfg(feature = "alloc")]
pub(in crate::check) mod report;
pub(in crate::check) mod target;

use core::marker::PhantomData;

use check::Check;

use super::finding::Finding;
use crate::book::{Cited, ConditionId, CylinderId, DeviceId, Fact, GroupId, HazardId, Rules, Subject};
use crate::guard::{Evaluator, Facts, HazardSet, Observed, Truth};
use crate::quantity::{Flow, Gauge, Percent, Pressure, Temperature, Time};

/// A set-up to be checked: a device at a flow, and whatever else is known.
///
/// ```
/// use oxyfolio::check::Setup;
/// use oxyfolio::quantity::{Flow, Pressure};
/// use oxyfolio::{cylinder, device, group};
///
/// let setup = Setup::new(device::NON_REBREATHER, Flow::litres_per_minute(8.0)?)
///     .group(group::ADULT)
///     .cylinder(cylinder::D)
///     .pressure(Pressure::psi(1500.0)?);
/// # let _ = setup;
/// # Ok::<(), oxyfolio::quantity::OutOfBounds>(())
/// ```
#[derive(Clone, Copy, Debug)]
#[must_use]
pub struct Setup<'a> {
    device: DeviceId,
    flow: Flow,
    group: Option<GroupId>,
    conditions: Option<&'a [ConditionId]>,
    minute_of_life: Option<Time>,
    cylinder: Option<CylinderId>,
    pressure: Option<Pressure<Gauge>>,
    temperature: Option<Temperature>,
    minutes_wanted: Option<Time>,
    spo2: Option<Percent>,
    facts: Facts,
}

impl<'a> Setup<'a> {
    /// A device set to a flow; everything else unknown.
    pub const fn new(device: DeviceId, flow: Flow) -> Self {
        Self {
            device,
            flow,
            group: None,
            conditions: None,
            minute_of_life: None,
            cylinder: None,
            pressure: None,
            temperature: None,
            minutes_wanted: None,
            spo2: None,
            facts: Facts::NONE.with(Fact::DeviceOnPatient, true),
        }
    }

    /// The patient's group.
    pub const fn group(mut self, group: GroupId) -> Self {
        self.group = Some(group);
        self
    }

    /// The patient's conditions; an empty list says that there are none.
    pub const fn conditions(mut self, conditions: &'a [ConditionId]) -> Self {
        self.conditions = Some(conditions);
        self
    }

    /// The time since birth, for a newborn.
    pub const fn minute_of_life(mut self, time: Time) -> Self {
        self.minute_of_life = Some(time);
        self
    }

    /// The cylinder's size.
    pub const fn cylinder(mut self, cylinder: CylinderId) -> Self {
        self.cylinder = Some(cylinder);
        self
    }

    /// The gauge reading.
    pub const fn pressure(mut self, pressure: Pressure<Gauge>) -> Self {
        self.pressure = Some(pressure);
        self
    }

    /// The cylinder's temperature.
    pub const fn temperature(mut self, temperature: Temperature) -> Self {
        self.temperature = Some(temperature);
        self
    }

    /// How long the gas must last.
    pub const fn minutes_wanted(mut self, time: Time) -> Self {
        self.minutes_wanted = Some(time);
        self
    }

    /// Something else that was observed of equipment or surroundings. A set-up is taken to be on the patient, unless
    /// it is said here that the device is not.
    pub const fn observed(mut self, fact: Fact, holds: bool) -> Self {
        self.facts = self.facts.with(fact, holds);
        self
    }

    /// The patient's oxygen saturation. More than 100 % is none: the check then says that the reading can't be right, and
    /// judges nothing by it.
    ///
    /// ```
    /// use oxyfolio::check::{Level, Setup, check_setup};
    /// use oxyfolio::quantity::{Flow, Percent};
    /// use oxyfolio::{RULEBOOK, device, group};
    ///
    /// let setup = Setup::new(device::NASAL_CANNULA, Flow::litres_per_minute(2.0)?)
    ///     .group(group::ADULT)
    ///     .conditions(&[])
    ///     .spo2(Percent::new(196.0)?);
    /// let mut said = Vec::new();
    /// check_setup(&RULEBOOK, &setup, |finding| {
    ///     if finding.code() == "saturation-out-of-bounds" {
    ///         said.push((finding.level, finding.to_string()));
    ///     }
    /// })?;
    /// let words = "whether the target is met: expected a saturation from 0 to 100 %, found 196 %";
    /// assert_eq!(said, [(Level::Unknown, words.to_owned())]);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub const fn spo2(mut self, spo2: Percent) -> Self {
        self.spo2 = Some(spo2);
        self
    }

    /// The saturation, where it can be one.
    fn saturation(&self) -> Option<Percent> {
        self.spo2.filter(|spo2| spo2.is_saturation())
    }
}

/// Checks a set-up against a rulebook. Every finding goes to `visit`, in the order device, cylinder, target, hazards.
///
/// `evaluator` is a reference to the rulebook, any rulebook; or, for the compiled-in one,
/// [`hazard::Guards`](crate::hazard::Guards), which asks the same questions in compiled code.
///
/// Gives the hazards that a set-up can't show because they depend on the state of the equipment: they were not checked.
///
/// # Errors
///
/// [`NotThisBook`] when an identifier is beyond this rulebook's tables. **Another book's identifier that happens to fit is
/// not noticed:** the constants `device::…`, `group::…` and `cylinder::…` belong to [`RULEBOOK`](crate::RULEBOOK) alone. For
/// a book read at run time use `book.find_device("…")` and its like.
///
/// ```
/// use oxyfolio::check::{check_setup, Setup};
/// use oxyfolio::quantity::Flow;
/// use oxyfolio::{RULEBOOK, device, group, hazard};
///
/// let setup = Setup::new(device::NON_REBREATHER, Flow::litres_per_minute(6.0)?).group(group::ADULT);
/// let (mut codes, mut same) = (Vec::new(), Vec::new());
/// check_setup(&RULEBOOK, &setup, |finding| codes.push(finding.code()))?;
/// assert!(codes.contains(&"flow-too-low"));
/// check_setup(hazard::Guards, &setup, |finding| same.push(finding.code()))?;
/// assert_eq!(codes, same);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn check_setup<'b, 's, E: Evaluator<'b>>(
    evaluator: E,
    setup: &Setup<'s>,
    visit: impl FnMut(Finding<'b>),
) -> Result<NotChecked<'b, 's, E>, NotThisBook> {
    let rules = evaluator.rules();
    let device = rules.device(setup.device).ok_or(NotThisBook)?;
    if setup.group.is_some_and(|group| group.index() >= rules.groups())
        || setup.cylinder.is_some_and(|id| rules.cylinder(id).is_none())
        || setup
            .conditions
            .is_some_and(|all| all.iter().any(|id| !rules.has_condition(*id)))
    {
        return Err(NotThisBook);
    }
    let mut check = Check {
        rules,
        setup,
        device,
        visit,
        book: PhantomData,
    };
    check.device();
    let minutes_left = check.cylinder();
    let target = check.target();
    let observed = check.observed(minutes_left, target);
    let unknown = check.hazards(&evaluator, &observed);
    Ok(NotChecked {
        evaluator,
        observed,
        unknown,
        book: PhantomData,
    })
}

/// The hazards that no set holds. A reader makes no book with so many; a table written by hand may have them.
fn past_any_set<'b>(rules: impl Rules<'b>) -> impl Iterator<Item = HazardId> {
    // A book has at most as many rules of a kind as an identifier counts.
    (HazardSet::CAPACITY..rules.hazards()).map_while(|index| u16::try_from(index).ok().map(HazardId))
}

/// An identifier belongs to another rulebook.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotThisBook;

impl core::fmt::Display for NotThisBook {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str("expected identifiers of this rulebook, found one of another")
    }
}

impl core::error::Error for NotThisBook {}

/// A hazard that a set-up doesn't show: look yourself.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub struct NotJudged<'b> {
    /// The hazard.
    pub hazard: HazardId,
    /// Its rule.
    pub rule: Cited<'b>,
}

/// The hazards that a set-up doesn't show.
#[derive(Clone, Copy, Debug)]
pub struct NotChecked<'b, 's, E = &'b crate::book::Rulebook> {
    evaluator: E,
    observed: Observed<'s>,
    unknown: HazardSet,
    book: PhantomData<&'b ()>,
}

impl<'b, E: Evaluator<'b>> NotChecked<'b, '_, E> {
    /// Each of them.
    pub fn hazards(&self) -> impl Iterator<Item = NotJudged<'b>> {
        let rules = self.evaluator.rules();
        let past =
            past_any_set(rules).filter(|id| self.evaluator.evaluate(*id, &self.observed) == Truth::Unknown);
        self.unknown
            .iter()
            .chain(past)
            .filter(move |id| rules.depends_on_equipment(*id))
            .map(move |hazard| NotJudged {
                hazard,
                rule: rules.cite(Subject::Hazard(hazard)),
            })
    }
}
