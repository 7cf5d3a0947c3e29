//! A comparison in words.

use std::io::{self, Write};

use crate::cards::reprint::{Reprint, Why};
use crate::compare::{Change, Comparison, Direction, Side};
use crate::compile::suggest::counted;

/// The longest text that is told whole; of a longer one, what differs.
const WHOLE: usize = 100;

/// Prints the comparison.
pub fn print(
    comparison: &Comparison,
    cards: &[Reprint],
    unchanged: bool,
    out: &mut dyn Write,
) -> io::Result<()> {
    sides(comparison, out)?;
    if unchanged {
        return writeln!(out, "Nothing changed.");
    }
    changes(comparison, out)?;
    durations(comparison, out)?;
    cases(comparison, out)?;
    grid(comparison, out)?;
    reprints(comparison, cards, out)
}

fn sides(comparison: &Comparison, out: &mut dyn Write) -> io::Result<()> {
    for (word, side) in [("Old", &comparison.old), ("New", &comparison.new)] {
        writeln!(
            out,
            "{word}: edition {}, effective {} (book {})",
            side.edition, side.effective, side.code
        )?;
        troubles(side, out)?;
    }
    if let Some(said) = comparison.one_name_for_two() {
        writeln!(out, "\n{said}")?;
    }
    writeln!(out)
}

fn troubles(side: &Side, out: &mut dyn Write) -> io::Result<()> {
    if side.errors > 0 {
        writeln!(
            out,
            "     `check` finds {} in it: it was compared as far as it can be read.",
            counted(side.errors, "error", "errors")
        )?;
    }
    for rule in &side.left_out {
        writeln!(
            out,
            "     not compared: {} `{}` ({}:{})",
            rule.kind,
            rule.id.as_deref().unwrap_or("?"),
            rule.file,
            rule.line
        )?;
    }
    Ok(())
}

fn changes(comparison: &Comparison, out: &mut dyn Write) -> io::Result<()> {
    let (words, rules): (Vec<&Change>, Vec<&Change>) =
        comparison.changes.iter().partition(|change| change.wording);
    let count = |direction| {
        rules
            .iter()
            .filter(|change| change.direction == direction)
            .count()
    };
    writeln!(
        out,
        "RULES: {} stricter, {} looser, {} other; {}",
        count(Direction::Stricter),
        count(Direction::Looser),
        count(Direction::Other),
        counted(words.len(), "wording", "wordings")
    )?;
    // A rule's wordings after what changed in it.
    for rule in comparison
        .changes
        .chunk_by(|one, next| (one.kind, &one.id) == (next.kind, &next.id))
    {
        let Some(change) = rule.first() else {
            continue;
        };
        writeln!(
            out,
            "\n  {} {} ({}:{})",
            change.kind, change.name, change.place.file, change.place.line
        )?;
        for change in rule {
            writeln!(out, "    {}", change.in_short(WHOLE))?;
        }
        for reason in comparison.reasons.iter().filter(|reason| reason.is_of(change)) {
            writeln!(out, "    {}", reason.words())?;
        }
    }
    writeln!(out)
}

fn durations(comparison: &Comparison, out: &mut dyn Write) -> io::Result<()> {
    if comparison.durations.is_empty() {
        return writeln!(out, "MINUTES: none moves by more than one\n");
    }
    writeln!(out, "MINUTES that move by more than one")?;
    for one in &comparison.durations {
        writeln!(
            out,
            "  {}: {} shorter, {} longer, of {}; most at {} and {}: {} → {} min",
            one.name,
            one.shorter,
            one.longer,
            one.asked,
            one.most.pressure,
            one.most.flow,
            one.most.was_minutes,
            one.most.is_minutes
        )?;
    }
    writeln!(out)
}

fn cases(comparison: &Comparison, out: &mut dyn Write) -> io::Result<()> {
    let (minutes, verdicts): (Vec<_>, Vec<_>) = comparison.cases.iter().partition(|case| case.minutes_only);
    if verdicts.is_empty() {
        writeln!(out, "WORKED CASES: none comes out otherwise")?;
    } else {
        writeln!(
            out,
            "WORKED CASES that come out otherwise, the same in both editions where nothing else is said: {}",
            verdicts.len()
        )?;
    }
    for case in verdicts {
        let remark = case
            .remark()
            .map_or_else(String::new, |remark| format!(": {remark}"));
        writeln!(
            out,
            "  {} ({}:{}){remark}",
            case.id, case.place.file, case.place.line
        )?;
        writeln!(out, "    {}", case.words())?;
    }
    if !minutes.is_empty() {
        writeln!(out, "  with other minutes and nothing else: {}", minutes.len())?;
    }
    writeln!(out)
}

fn grid(comparison: &Comparison, out: &mut dyn Write) -> io::Result<()> {
    let grid = &comparison.grid;
    if grid.changed == 0 {
        return writeln!(
            out,
            "SET-UPS: none of {} generated ones is judged otherwise\n",
            grid.setups
        );
    }
    let verdict: u32 = grid.verdicts.iter().map(|change| change.setups).sum();
    writeln!(
        out,
        "SET-UPS: of {} generated ones {} now {} other findings and {verdict} another verdict",
        grid.setups,
        grid.changed,
        if grid.changed == 1 { "has" } else { "have" }
    )?;
    for change in &grid.verdicts {
        writeln!(
            out,
            "  {} → {}: {}",
            change.was.words(),
            change.is.words(),
            change.setups
        )?;
    }
    for kind in &grid.kinds {
        let comes = kind.comes.word();
        writeln!(
            out,
            "  {} {} `{}` {comes} in {}: {}",
            kind.level_words(),
            kind.kind,
            kind.id,
            kind.setups,
            kind.example.message
        )?;
        writeln!(out, "    smallest example: {}", kind.example.setup)?;
    }
    writeln!(out)
}

fn reprints(comparison: &Comparison, cards: &[Reprint], out: &mut dyn Write) -> io::Result<()> {
    let of = |why: Why| cards.iter().filter(move |card| card.why == why);
    let other: Vec<&Reprint> = cards
        .iter()
        .filter(|card| !matches!(card.why, Why::Same))
        .collect();
    if other.is_empty() {
        writeln!(out, "CARDS: what they say is the same")?;
    } else {
        writeln!(out, "CARDS to be printed anew")?;
        for card in other {
            writeln!(out, "  {}: {}", card.title, card.why.words())?;
        }
    }
    let same = of(Why::Same).count();
    if same > 0 && comparison.old.code != comparison.new.code {
        writeln!(
            out,
            "  {} the same and another code ({}): print the whole set, and collect the old one",
            if same == 1 {
                "1 other says".to_owned()
            } else {
                format!("{same} others say")
            },
            comparison.new.code
        )?;
    }
    Ok(())
}
