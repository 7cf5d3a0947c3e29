//! The words that stand on every answer: the edition, the disclaimers, the cautions.

use std::io::{self, Write};

use serde_json::{Value, json};

use crate::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS, Kind, Rule, Rulebook};

/// The line that heads a text answer.
pub fn heading(out: &mut dyn Write, book: &Rulebook) -> io::Result<()> {
    let agency = &book.agency;
    writeln!(
        out,
        "{}, edition {}, effective {} (book {})\n",
        agency.rule.name, agency.edition, agency.effective, book.short_digest
    )
}

/// The lines that end a text answer.
pub fn footing(out: &mut dyn Write) -> io::Result<()> {
    writeln!(out)?;
    for line in ALWAYS_DISCLAIMERS {
        writeln!(out, "{line}")?;
    }
    writeln!(out, "{}", ALWAYS_CAUTIONS.join(" "))
}

/// The same for programs, to be put under the keys `book`, `disclaimers` and `cautions`.
pub fn identity(book: &Rulebook) -> Value {
    let agency = &book.agency;
    json!({
        "agency": &*agency.rule.name,
        "edition": &*agency.edition,
        "effective": agency.effective.to_string(),
        "review": agency.review.to_string(),
        "digest": &*book.digest,
        "short_digest": &*book.short_digest,
    })
}

/// Adds the words of every answer to a JSON object.
pub fn framed(book: &Rulebook, mut answer: Value) -> Value {
    if let Some(fields) = answer.as_object_mut() {
        fields.insert("edition".to_owned(), json!(&*book.agency.edition));
        fields.insert("book".to_owned(), identity(book));
        fields.insert("disclaimers".to_owned(), json!(ALWAYS_DISCLAIMERS));
        fields.insert("cautions".to_owned(), json!(ALWAYS_CAUTIONS));
    }
    answer
}

/// Writes a JSON answer.
pub fn json(out: &mut dyn Write, answer: &Value) -> io::Result<()> {
    serde_json::to_writer_pretty(&mut *out, answer)?;
    writeln!(out)
}

/// A rule and its place, as findings quote it.
pub fn rule(kind: Kind, rule: &Rule) -> Value {
    json!({
        "kind": kind.word(),
        "id": &*rule.id,
        "name": &*rule.name,
        "chapter": &*rule.place.chapter,
        "heading": &*rule.place.heading,
        "file": &*rule.place.file,
        "line": rule.place.line,
    })
}
