//! The summary for people.

use std::io::{self, Write};

use super::super::words;
use crate::book::{Kind, Rulebook};
use crate::check::Level;
use crate::records::run::{GroupSum, Grouping, Groups, Row, Tally};

/// Prints the summary.
pub fn print(
    book: &Rulebook,
    tally: &Tally<'_>,
    by: Grouping,
    files: usize,
    out: &mut dyn Write,
) -> io::Result<()> {
    words::heading(out, book)?;
    let mut counted = vec![
        count(files as u64, "file", "files"),
        count(tally.runs, "run", "runs"),
        count(tally.events, "event", "events"),
        count(tally.levels.all(), "finding", "findings"),
    ];
    if tally.bad_lines > 0 {
        counted.push(format!(
            "{} that could not be read",
            count(tally.bad_lines, "line", "lines")
        ));
    }
    writeln!(out, "{}", counted.join(", "))?;
    if let (Some(first), Some(last)) = (tally.first, tally.last) {
        writeln!(out, "from {first} to {last}")?;
    }
    writeln!(
        out,
        "{} of {} with something wrong or not checked\n",
        tally.runs_wrong,
        count(tally.runs, "run", "runs")
    )?;
    match by {
        Grouping::Rule => rules(tally, out)?,
        Grouping::Month => groups(
            "month",
            &tally.months,
            |(year, month)| format!("{year:04}-{month:02}"),
            out,
        )?,
        Grouping::Crew => groups("crew", &tally.crews, String::clone, out)?,
    }
    for bad in &tally.bad {
        writeln!(out, "{}:{}:{}: {}", bad.file, bad.line, bad.column, bad.message)?;
    }
    let more = tally.bad_lines - tally.bad.len() as u64;
    if more > 0 {
        writeln!(
            out,
            "and {} that could not be read",
            count(more, "more line", "more lines")
        )?;
    }
    if tally.bad_lines > 0 {
        writeln!(out)?;
    }
    for (file, why) in &tally.failed {
        writeln!(out, "{file} {why}; what stands before it is in this summary\n")?;
    }
    let whole = tally.bad_lines == 0 && tally.failed.is_empty();
    if tally.levels.wrong() == 0 && whole {
        writeln!(out, "Nothing against the book was found.")?;
    } else if tally.levels.all() > 0 {
        writeln!(
            out,
            "Every finding, one a line: --format ndjson, or --format csv."
        )?;
    }
    words::footing(out)
}

fn count(number: u64, one: &str, more: &str) -> String {
    format!("{number} {}", if number == 1 { one } else { more })
}

/// What was found, the gravest first, then what could not be checked.
fn rules(tally: &Tally<'_>, out: &mut dyn Write) -> io::Result<()> {
    let rows = tally.by_rule();
    let (unknown, found): (Vec<_>, Vec<_>) = rows.into_iter().partition(|row| row.level == Level::Unknown);
    for (title, rows) in [("Found", found), ("Could not be checked", unknown)] {
        if rows.is_empty() {
            continue;
        }
        writeln!(out, "{title}\n")?;
        let widest = |text: fn(&Row<'_>) -> String, least: usize| {
            let widths = rows.iter().map(|row| text(row).chars().count());
            widths.max().unwrap_or(0).max(least)
        };
        let names = widest(name, 4);
        writeln!(
            out,
            "{:<8} {:<names$} {:>9} {:>7}",
            "level", "rule", "findings", "runs"
        )?;
        for row in &rows {
            writeln!(
                out,
                "{:<8} {:<names$} {:>9} {:>7}",
                match row.level {
                    Level::Unknown => "unknown",
                    level => level.word(),
                },
                name(row),
                row.findings,
                row.runs
            )?;
            writeln!(out, "         {}{}", example(row), row.first.message)?;
            if let Some(remedy) = &row.first.remedy {
                writeln!(out, "         {remedy}")?;
            }
            // What could not be understood is about no rule; the agency's stands for it.
            if row.kind != Kind::Agency {
                writeln!(out, "         {}", row.rule.place)?;
            }
        }
        writeln!(out)?;
    }
    Ok(())
}

/// A rule and what was found about it: `non-rebreather flow-too-low`.
fn name(row: &Row<'_>) -> String {
    if row.code == "hazard" {
        row.rule.id.to_string()
    } else {
        format!("{} {}", row.rule.id, row.code)
    }
}

/// Where the first is: `first in A-17, 2026-03-01T14:05:00+01:00: `.
fn example(row: &Row<'_>) -> String {
    let first = &row.first;
    let mut places = Vec::new();
    if let Some(run) = &first.run {
        places.push(run.clone());
    }
    if let (Some(file), Some(line)) = (&first.file, first.line) {
        places.push(format!("{file}:{line}"));
    }
    if let Some(from) = first.from {
        places.push(from.to_string());
    }
    if places.is_empty() {
        return String::new();
    }
    format!("first in {}: ", places.join(", "))
}

fn groups<K>(
    title: &str,
    groups: &Groups<K>,
    shown: impl Fn(&K) -> String,
    out: &mut dyn Write,
) -> io::Result<()> {
    let mut rows: Vec<(String, GroupSum)> = groups
        .known
        .iter()
        .map(|(key, sum)| {
            (
                key.as_ref().map_or_else(|| "not recorded".to_owned(), &shown),
                *sum,
            )
        })
        .collect();
    if groups.others != GroupSum::default() {
        rows.push(("others".to_owned(), groups.others));
    }
    if rows.is_empty() {
        return Ok(());
    }
    let widths = rows.iter().map(|(name, _)| name.chars().count());
    let names = widths.max().unwrap_or(0).max(title.len());
    writeln!(
        out,
        "{title:<names$} {:>7} {:>7} {:>8} {:>8} {:>7}",
        "runs", "stop", "warning", "unknown", "note"
    )?;
    for (name, sum) in rows {
        let levels = sum.levels;
        writeln!(
            out,
            "{name:<names$} {:>7} {:>7} {:>8} {:>8} {:>7}",
            sum.runs, levels.stop, levels.warn, levels.unknown, levels.note
        )?;
    }
    writeln!(out)
}
