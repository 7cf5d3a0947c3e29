//! The words that stand on every answer: the edition, the disclaimers, the cautions.

use std::io::{self, Write};

use serde::Serialize;
use serde_json::Value;

use super::answers::Frame;
use crate::book::{ALWAYS_CAUTIONS, ALWAYS_DISCLAIMERS, Rulebook};

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

/// A path as it is typed into a shell: in quotation marks where it holds a space, say.
pub fn for_shell(path: &str) -> String {
    if path.contains(|sign: char| !(sign.is_alphanumeric() || "-_./".contains(sign))) {
        format!("\"{path}\"")
    } else {
        path.to_owned()
    }
}

/// Adds the words of every answer to a JSON object.
pub fn framed(book: &Rulebook, mut answer: Value) -> Value {
    if let (Some(fields), Ok(Value::Object(frame))) =
        (answer.as_object_mut(), serde_json::to_value(Frame::of(book)))
    {
        fields.extend(frame);
    }
    answer
}

/// Writes a JSON answer, its keys in the order of the alphabet.
pub fn json<T: Serialize>(out: &mut dyn Write, answer: &T) -> io::Result<()> {
    serde_json::to_writer_pretty(&mut *out, &serde_json::to_value(answer)?)?;
    writeln!(out)
}
