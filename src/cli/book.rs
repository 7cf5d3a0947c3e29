//! Gets the rulebook a command works with, and finds in it what was named on the command line.

use std::{borrow::Cow, path::Path};

use super::{
    CannotRun, Outcome,
    args::{Common, Format},
};
use crate::RULEBOOK;
use crate::book::{ConditionId, CylinderId, Date, DeviceId, GroupId, Rule, Rulebook};
use crate::compile::{
    Compiled, Rejected, compile, folder, lint,
    source::Sources,
    suggest::nearest,
    written::{self, Measure},
};

/// The rulebook of `--rules`, or the one compiled in. `Err` holds the outcome after its errors were printed.
pub fn open(
    common: &Common,
    out: &mut dyn std::io::Write,
) -> Result<Result<Cow<'static, Rulebook>, Outcome>, CannotRun> {
    match &common.rules {
        None => Ok(Ok(Cow::Borrowed(&RULEBOOK))),
        Some(rules) => match folder::load(rules) {
            Ok(compiled) => Ok(Ok(Cow::Owned(compiled.book))),
            Err(rejected) => {
                print_rejected(&rejected, rules, common.format, out)?;
                Ok(Err(Outcome::Findings))
            }
        },
    }
}

/// Reads the rulebook anew, the one compiled in too: `check` is asked to check.
pub fn read(rules: Option<&Path>, today: Option<Date>) -> Result<Compiled, Box<Rejected>> {
    let read = match rules {
        Some(rules) => folder::load(rules),
        None => sources(None).and_then(compile),
    };
    read.map(|compiled| dated(compiled, today))
}

/// Adds what is to be said of the edition's dates today, or on the day that was asked for.
pub fn dated(compiled: Compiled, today: Option<Date>) -> Compiled {
    match today.or_else(lint::today) {
        Some(today) => compiled.on(today),
        None => compiled,
    }
}

/// The chapters of the rulebook.
pub fn sources(rules: Option<&Path>) -> Result<Sources, Box<Rejected>> {
    match rules {
        // Compiled once to have every message about the folder, and its chapters read.
        Some(rules) => folder::load(rules).map(|compiled| compiled.sources),
        None => {
            let mut sources = Sources::default();
            for (name, text) in crate::CHAPTERS {
                sources.add(
                    (*name).to_owned(),
                    format!("(built in) {name}"),
                    (*text).to_owned(),
                );
            }
            Ok(sources)
        }
    }
}

/// Prints a rejected rulebook's errors.
pub fn print_rejected(
    rejected: &Rejected,
    rules: &Path,
    format: Format,
    out: &mut dyn std::io::Write,
) -> Result<(), CannotRun> {
    match format {
        Format::Text => {
            let to_do = rejected.to_do();
            if to_do.undecided > 0 {
                let rest = if to_do.errors == 0 {
                    "; nothing else is wrong"
                } else {
                    ""
                };
                writeln!(out, "{to_do}{rest}\n")?;
            }
            write!(out, "{}", rejected.render(true))?;
            writeln!(
                out,
                "{to_do} in {}: the rulebook can't be used {}",
                rules.display(),
                to_do.until()
            )?;
        }
        Format::Json => super::words::json(out, &super::answers::diagnostic::Rejected::of(rejected))?,
    }
    Ok(())
}

/// Reads a quantity given on the command line.
pub fn quantity<Q: Measure>(option: &str, text: &str) -> Result<Q, CannotRun> {
    written::one(text).map_err(|mistake| CannotRun(format!("{option} \"{text}\": {mistake}")))
}

/// Reads an optional quantity.
pub fn maybe<Q: Measure>(option: &str, text: Option<&String>) -> Result<Option<Q>, CannotRun> {
    text.map(|text| quantity(option, text)).transpose()
}

/// Finds a device by its id, its name or another of its names.
pub fn device(book: &Rulebook, name: &str) -> Result<DeviceId, CannotRun> {
    let also = |index: usize| book.devices.get(index).map(|device| &device.also);
    find(
        "--device",
        name,
        book.devices.iter().map(|device| &device.rule),
        |index, name| also(index).is_some_and(|also| also.iter().any(|other| same(other, name))),
    )
    .map(DeviceId)
}

/// Finds a cylinder by its id, its name or another of its names.
pub fn cylinder(book: &Rulebook, name: &str) -> Result<CylinderId, CannotRun> {
    cylinder_for("--cylinder", book, name)
}

/// Finds a cylinder named in another option.
pub fn cylinder_for(option: &str, book: &Rulebook, name: &str) -> Result<CylinderId, CannotRun> {
    let also = |index: usize| book.cylinders.get(index).map(|cylinder| &cylinder.also);
    find(
        option,
        name,
        book.cylinders.iter().map(|cylinder| &cylinder.rule),
        |index, name| also(index).is_some_and(|also| also.iter().any(|other| same(other, name))),
    )
    .map(CylinderId)
}

/// Finds a group by its id or name.
pub fn group(book: &Rulebook, name: &str) -> Result<GroupId, CannotRun> {
    find(
        "--group",
        name,
        book.groups.iter().map(|group| &group.rule),
        |_, _| false,
    )
    .map(GroupId)
}

/// Finds conditions by id; `none` alone says that there are none.
pub fn conditions(book: &Rulebook, names: &[String]) -> Result<Option<Vec<ConditionId>>, CannotRun> {
    if names.is_empty() {
        return Ok(None);
    }
    if let [only] = names
        && only == "none"
    {
        return Ok(Some(Vec::new()));
    }
    let known = || book.conditions.iter().map(|condition| &*condition.id);
    let find = |name: &String| {
        book.find_condition(name)
            .ok_or_else(|| unknown("--condition", name, known().chain(["none"])))
    };
    names.iter().map(find).collect::<Result<_, _>>().map(Some)
}

fn find<'a>(
    option: &str,
    name: &str,
    rules: impl Iterator<Item = &'a Rule> + Clone,
    also: impl Fn(usize, &str) -> bool,
) -> Result<u16, CannotRun> {
    let index = rules
        .clone()
        .position(|rule| *rule.id == *name)
        .or_else(|| {
            rules
                .clone()
                .position(|rule| same(&rule.name, name) || same(&rule.id, name))
        })
        .or_else(|| (0..rules.clone().count()).find(|index| also(*index, name)));
    index
        .and_then(|index| u16::try_from(index).ok())
        .ok_or_else(|| unknown(option, name, rules.map(|rule| &*rule.id)))
}

fn same(known: &str, name: &str) -> bool {
    known.eq_ignore_ascii_case(name)
}

fn unknown<'a>(option: &str, name: &str, known: impl Iterator<Item = &'a str> + Clone) -> CannotRun {
    let hint = match nearest(name, known.clone()) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("the rulebook has: {}", known.collect::<Vec<_>>().join(", ")),
    };
    CannotRun(format!("{option}: the rulebook has no `{name}`; {hint}"))
}
