//! The schema of a request, made from the table that the reader uses.

use std::io::{self, Write};

use serde_json::{Map, Value, json};

use super::{
    super::answers,
    fields::{ALL, Asking, Kind},
    request::MOST_TEXT,
};

/// Prints the schemas of requests and of answers, as one object.
pub fn print(out: &mut impl Write) -> io::Result<()> {
    let answer: Value = serde_json::from_str(&answers::lines())?;
    serde_json::to_writer_pretty(&mut *out, &json!({ "request": request(), "answer": answer }))?;
    writeln!(out)?;
    out.flush()
}

/// The schema of a request, as the file of `tests/schemas` holds it.
#[must_use]
pub fn requests() -> String {
    let mut text = serde_json::to_string_pretty(&request()).unwrap_or_default();
    text.push('\n');
    text
}

fn request() -> Value {
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "A request to `oxyfolio answer`",
        "description": "One line. Fields are named as the command's options; null is the same as left out.",
        "oneOf": ALL.iter().map(asking).collect::<Vec<_>>(),
    })
}

fn asking(asking: &Asking) -> Value {
    let mut fields = Map::new();
    fields.insert("ask".to_owned(), json!({ "const": asking.name }));
    fields.insert(
        "id".to_owned(),
        json!({
            "description": "The request's name, told again in its answer.",
            "type": ["string", "number", "null"],
            "maxLength": MOST_TEXT,
        }),
    );
    for known in asking.fields {
        let mut schema = kind(known.kind);
        if let Some(schema) = schema.as_object_mut() {
            schema.insert("description".to_owned(), known.about.into());
        }
        let schema = if known.must {
            schema
        } else {
            json!({ "anyOf": [schema, { "type": "null" }] })
        };
        fields.insert(known.name.to_owned(), schema);
    }
    let must = asking.fields.iter().filter(|known| known.must);
    let must: Vec<&str> = core::iter::once("ask")
        .chain(must.map(|known| known.name))
        .collect();
    let mut schema = json!({
        "description": asking.about,
        "type": "object",
        "additionalProperties": false,
        "required": must,
        "properties": fields,
    });
    // What the command line refuses too.
    if let (Some(schema), "duration") = (schema.as_object_mut(), asking.name) {
        let given = |name: &str| json!({ "required": [name], "properties": { name: { "type": "string" } } });
        schema.insert(
            "oneOf".to_owned(),
            json!([given("cylinder"), given("water-capacity")]),
        );
        schema.insert("if".to_owned(), given("factor"));
        schema.insert("then".to_owned(), given("water-capacity"));
    }
    schema
}

fn kind(kind: Kind) -> Value {
    let text = json!({ "type": "string", "maxLength": MOST_TEXT });
    match kind {
        Kind::Text(_) => text,
        Kind::Minutes(_) => json!({ "type": ["string", "number"], "maxLength": MOST_TEXT }),
        Kind::Texts(_) => json!({ "anyOf": [text, { "type": "array", "items": text, "maxItems": 64 }] }),
        Kind::Word(words) => json!({ "enum": words }),
        Kind::Flag => json!({ "type": "boolean" }),
        Kind::Plan => plan(),
        Kind::List => json!({ "type": "string" }),
    }
}

/// A plan's file; `compile::transport` tells more.
fn plan() -> Value {
    let text = json!({ "type": "string" });
    let some = |item: Value| json!({ "anyOf": [item, { "type": "array", "items": item, "minItems": 1, "maxItems": 100 }] });
    let patient = json!({
        "type": "object",
        "additionalProperties": false,
        "properties": { "device": text, "flow": text, "drive-gas": text },
    });
    let cylinder = json!({
        "type": "object",
        "additionalProperties": false,
        "required": ["size", "pressure"],
        "properties": {
            "size": text,
            "pressure": text,
            "count": { "type": ["integer", "string"] },
        },
    });
    let leg = json!({
        "type": "object",
        "additionalProperties": false,
        "required": ["name", "time"],
        "properties": {
            "name": text, "time": text, "delay": text, "temperature": text,
            "device": text, "flow": text, "drive-gas": text,
            "patients": some(patient),
        },
    });
    json!({
        "type": "object",
        "additionalProperties": false,
        "required": ["cylinders", "legs"],
        "properties": {
            "name": text,
            "temperature": text,
            "cylinders": some(cylinder),
            "legs": some(leg),
        },
    })
}
