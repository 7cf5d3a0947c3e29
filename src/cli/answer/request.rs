//! A line taken apart: the fields of one JSON object, each with its place. What they mean is not known here.

use core::fmt;

use serde::de::{Deserializer as _, MapAccess, Visitor};
use serde_json::value::RawValue;

use super::super::answers::line::Mistake;

/// How a request looks.
const EXAMPLE: &str = r#"{"ask": "duration", "cylinder": "D", "pressure": "1500 psi", "flow": "15 L/min"}"#;

/// The longest text of a field that isn't a plan or a list, and of a name, in bytes.
pub const MOST_TEXT: usize = 200;

impl Mistake {
    /// A mistake that is in no field.
    pub fn at(column: usize, message: String) -> Self {
        Self {
            field: None,
            column,
            message,
        }
    }

    /// A mistake in a field.
    pub fn of(field: &str, column: usize, message: String) -> Self {
        Self {
            field: Some(field.to_owned()),
            column,
            message,
        }
    }
}

/// One field as it stands in the line.
#[derive(Debug)]
pub struct Field<'l> {
    pub name: String,
    /// The value's text.
    pub raw: &'l RawValue,
    /// Where the value is, in characters from 1.
    pub column: usize,
}

/// The fields of a line, in its order.
#[derive(Debug)]
pub struct Request<'l> {
    pub fields: Vec<Field<'l>>,
}

impl<'l> Request<'l> {
    /// Takes a line apart.
    pub fn read(line: &'l str) -> Result<Self, Mistake> {
        let mut reader = serde_json::Deserializer::from_str(line);
        let entries = reader
            .deserialize_any(Entries)
            .and_then(|entries| reader.end().map(|()| entries))
            .map_err(|error| mistake(line, &error))?;
        let mut columns = Columns {
            line,
            byte: 0,
            characters: 0,
        };
        let fields = entries
            .into_iter()
            .map(|(name, raw)| Field {
                name,
                raw,
                column: columns.of(raw),
            })
            .collect();
        Ok(Self { fields })
    }

    /// The first field of a name.
    pub fn field(&self, name: &str) -> Option<&Field<'l>> {
        self.fields.iter().find(|field| field.name == name)
    }

    /// The request's name, where it has a usable one.
    pub fn id(&self) -> Option<&'l RawValue> {
        let raw = self.field("id")?.raw;
        is_name(raw).then_some(raw)
    }
}

/// Whether a value can be a request's name: a text or a number, not too long to be told again.
pub fn is_name(raw: &RawValue) -> bool {
    let text = raw.get();
    // Told again, a number beyond all others could not be read by who asked.
    let is_number = || text.parse::<f64>().is_ok_and(f64::is_finite);
    let is_text = || serde_json::from_str::<String>(text).is_ok();
    text.len() <= MOST_TEXT && (is_number() || is_text())
}

/// Counts characters up to one value after the other.
struct Columns<'l> {
    line: &'l str,
    byte: usize,
    characters: usize,
}

impl Columns<'_> {
    fn of(&mut self, raw: &RawValue) -> usize {
        // The value is a part of the line, so their addresses tell how far in it stands.
        let byte = (raw.get().as_ptr() as usize).saturating_sub(self.line.as_ptr() as usize);
        if let Some(between) = self.line.get(self.byte..byte) {
            self.characters += between.chars().count();
            self.byte = byte;
        }
        self.characters + 1
    }
}

/// Keeps all entries of an object, those that are there twice too.
struct Entries;

impl<'l> Visitor<'l> for Entries {
    type Value = Vec<(String, &'l RawValue)>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON object")
    }

    fn visit_map<A: MapAccess<'l>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut entries = Vec::new();
        while let Some(entry) = map.next_entry()? {
            entries.push(entry);
        }
        Ok(entries)
    }
}

fn mistake(line: &str, error: &serde_json::Error) -> Mistake {
    let said = error.to_string();
    // Its own place counts bytes.
    let said = said.rsplit_once(" at line ").map_or(&*said, |(said, _)| said);
    let before = line.floor_char_boundary(error.column().saturating_sub(1));
    let column = line.get(..before).map_or(0, |before| before.chars().count()) + 1;
    let what = if error.is_data() {
        "expected an object, found another value".to_owned()
    } else {
        format!("the line is no JSON: {said}")
    };
    Mistake::at(column, format!("{what}; write one request, as in {EXAMPLE}"))
}
