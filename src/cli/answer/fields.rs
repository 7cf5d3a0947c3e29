//! What can be asked, and with which fields: one table for the reader, the messages and the schema.
//!
//! A field is named as the command's option. Here it is only looked at by itself, so that all mistakes of a request can be told at
//! once; what goes together is the command's affair.

use super::super::{CannotRun, book, duration, plan, setup};
use crate::book::{Date, InvalidDate, Rulebook};
use crate::compile::written::Measure;
use crate::quantity::{Factor, Flow, Gauge, Percent, Pressure, Temperature, Time, Volume};

/// What a text must be; the name is for the message.
pub type Check = fn(&str, &Rulebook, &str) -> Result<(), CannotRun>;

/// What kind of value a field has.
#[derive(Clone, Copy)]
pub enum Kind {
    /// A text.
    Text(Check),
    /// A text, or a number of minutes.
    Minutes(Check),
    /// A text or a list of texts, looked at together.
    Texts(fn(&Rulebook, &[String]) -> Result<(), CannotRun>),
    /// One of these words.
    Word(&'static [&'static str]),
    /// Yes or no.
    Flag,
    /// A transport plan.
    Plan,
    /// The text of a list of cylinders.
    List,
}

/// A field of a request.
pub struct Known {
    pub name: &'static str,
    /// Whether it must be there.
    pub must: bool,
    pub kind: Kind,
    /// What it is, for the schema.
    pub about: &'static str,
}

impl Known {
    /// What it is, for the end of a message.
    pub fn wanted(&self) -> String {
        let about = self.about.trim_end_matches('.');
        let mut letters = about.chars();
        letters
            .next()
            .map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
    }
}

/// A thing that can be asked.
pub struct Asking {
    pub name: &'static str,
    pub fields: &'static [Known],
    /// What is asked, for the schema.
    pub about: &'static str,
}

const fn must(name: &'static str, kind: Kind, about: &'static str) -> Known {
    Known {
        name,
        must: true,
        kind,
        about,
    }
}

const fn may(name: &'static str, kind: Kind, about: &'static str) -> Known {
    Known {
        must: false,
        ..must(name, kind, about)
    }
}

fn measured<Q: Measure>(name: &str, _: &Rulebook, text: &str) -> Result<(), CannotRun> {
    book::quantity::<Q>(name, text).map(|_| ())
}

const FLOW: Kind = Kind::Text(measured::<Flow>);
const PRESSURE: Kind = Kind::Text(measured::<Pressure<Gauge>>);
const TEMPERATURE: Kind = Kind::Text(measured::<Temperature>);
const DEVICE: Kind = Kind::Text(|_, book, text| book::device(book, text).map(|_| ()));
const CYLINDER: Kind = Kind::Text(|_, book, text| book::cylinder(book, text).map(|_| ()));
const DAY: Kind = Kind::Text(|name, _, text| {
    let day: Result<Date, InvalidDate> = text.parse();
    day.map(|_| ())
        .map_err(|error| CannotRun(format!("{name} \"{text}\": {error}")))
});

const TODAY: Known = may(
    "today",
    DAY,
    "The day that is judged by, YYYY-MM-DD; without it the clock's.",
);
const CYLINDER_TEMPERATURE: Known = may(
    "temperature",
    TEMPERATURE,
    "The cylinder's, as in \"20 °C\" or \"70 °F\".",
);

/// All that can be asked.
pub const ALL: [Asking; 6] = [
    Asking {
        name: "book",
        fields: &[],
        about: "Which rulebook is it, and what does it name?",
    },
    Asking {
        name: "check",
        fields: &[
            may(
                "uncovered",
                Kind::Flag,
                "Also list what no worked case would notice changing.",
            ),
            TODAY,
        ],
        about: "Is the rulebook in order? As it was read when the program began.",
    },
    Asking {
        name: "duration",
        fields: &[
            may(
                "cylinder",
                CYLINDER,
                "The cylinder's size, as the rulebook names it.",
            ),
            may(
                "water-capacity",
                Kind::Text(measured::<Volume>),
                "The water that fills the cylinder, as in \"4.6 L\".",
            ),
            may(
                "factor",
                Kind::Text(measured::<Factor>),
                "The factor of a cylinder given by its water capacity, as in \"0.28 L/psi\".",
            ),
            may(
                "pressure",
                PRESSURE,
                "The gauge reading, as in \"1500 psi\" or \"120 bar\".",
            ),
            CYLINDER_TEMPERATURE,
            may("flow", FLOW, "The flow, as in \"15 L/min\"."),
            may(
                "leak",
                FLOW,
                "What leaks beside the flow, or alone, as in \"0.5 L/min\".",
            ),
            may(
                "minutes",
                Kind::Minutes(|_, _, text| duration::whole_minutes(text).map(|_| ())),
                "How long the gas must last.",
            ),
            may(
                "now",
                Kind::Text(|_, _, text| duration::Clock::read(text).map(|_| ())),
                "The time of day, as in \"14:05\".",
            ),
            may(
                "residual",
                PRESSURE,
                "The reading below which gas isn't counted; without it the rulebook's residual pressure.",
            ),
        ],
        about: "How many minutes does a cylinder last, or what reading or flow do the minutes need?",
    },
    Asking {
        name: "plan",
        fields: &[
            must("plan", Kind::Plan, "Legs and cylinders, as in a plan's file."),
            may(
                "order",
                Kind::Word(&["fewest-changes", "emptiest-first"]),
                "Which cylinder comes first.",
            ),
            may(
                "add",
                Kind::Texts(|book, sizes| plan::sizes(book, sizes).map(|_| ())),
                "Sizes of which to say how many full ones would make it enough; or portable, vehicle.",
            ),
        ],
        about: "Is the gas on board enough for a transport?",
    },
    Asking {
        name: "setup",
        fields: &[
            must("device", DEVICE, "The device, as the rulebook names it."),
            must("flow", FLOW, "The flow, as in \"2 L/min\"."),
            may(
                "group",
                Kind::Text(|_, book, text| book::group(book, text).map(|_| ())),
                "The patient's group.",
            ),
            may(
                "condition",
                Kind::Texts(|book, names| book::conditions(book, names).map(|_| ())),
                "The patient's conditions, or none.",
            ),
            may(
                "since-birth",
                Kind::Text(measured::<Time>),
                "The time since birth, for a newborn, as in \"3 min\".",
            ),
            may(
                "spo2",
                Kind::Text(measured::<Percent>),
                "The oxygen saturation, as in \"91 %\".",
            ),
            may(
                "cylinder",
                CYLINDER,
                "The cylinder's size, as the rulebook names it.",
            ),
            may(
                "pressure",
                PRESSURE,
                "The gauge reading, as in \"1500 psi\" or \"120 bar\".",
            ),
            CYLINDER_TEMPERATURE,
            may(
                "minutes",
                Kind::Minutes(|_, _, text| setup::minutes_wanted(text).map(|_| ())),
                "How long the gas must last.",
            ),
        ],
        about: "Is a set-up in order? What is not given can't be checked, and the answer says so.",
    },
    Asking {
        name: "stock",
        fields: &[
            must(
                "list",
                Kind::List,
                "The list of cylinders: the text of its CSV file.",
            ),
            TODAY,
            may(
                "due-within",
                Kind::Text(measured::<Time>),
                "The time within which tests are told to be due; without it 3 months.",
            ),
            CYLINDER_TEMPERATURE,
        ],
        about: "Which cylinders in stock are to be taken out or swapped, and how many minutes are on hand?",
    },
];
