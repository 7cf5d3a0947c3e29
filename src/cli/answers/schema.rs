//! JSON Schemas (draft 2020-12) of the answers, made from their types.

use schemars::{JsonSchema, Schema, generate::SchemaSettings, transform::RecursiveTransform};

use super::{Answer, cards, check, compare, drill, duration, line, new, plan, review, setup, stock};

/// The schemas of the answers, each with the name of its command, as the files of `tests/schemas` hold them.
///
/// ```
/// let schemas = oxyfolio::cli::schemas();
/// assert!(schemas.iter().any(|(command, _)| *command == "duration"));
/// ```
#[must_use]
pub fn all() -> Vec<(&'static str, String)> {
    vec![
        ("answer", lines()),
        ("answer-request", super::super::answer::requests()),
        ("cards", command::<Answer<'_, cards::Cards<'_>>>("cards")),
        ("check", command::<Answer<'_, check::Check>>("check")),
        ("compare", command::<Answer<'_, compare::Compare>>("compare")),
        (
            "duration",
            command::<Answer<'_, duration::Duration<'_>>>("duration"),
        ),
        ("new", command::<new::New>("new")),
        ("drill", command::<Answer<'_, drill::Drill<'_>>>("drill")),
        ("plan", command::<Answer<'_, plan::Plan<'_>>>("plan")),
        ("review", command::<Answer<'_, review::Review<'_>>>("review")),
        ("setup", command::<Answer<'_, setup::Setup<'_>>>("setup")),
        ("stock", command::<Answer<'_, stock::Stock<'_>>>("stock")),
    ]
}

/// The schema of a line of `oxyfolio answer`.
pub fn lines() -> String {
    made::<line::Line<'_>>("A line of answer of `oxyfolio answer`")
}

fn command<T: JsonSchema>(name: &str) -> String {
    made::<T>(&format!("The answer of `oxyfolio {name} --format json`"))
}

/// The schema of what is written, under a title.
fn made<T: JsonSchema>(title: &str) -> String {
    let mut schema = SchemaSettings::draft2020_12()
        .for_serialize()
        .with_transform(RecursiveTransform(without_widths))
        .into_generator()
        .into_root_schema_for::<T>();
    schema.insert("title".to_owned(), title.into());
    let mut text = serde_json::to_string_pretty(&schema).unwrap_or_default();
    text.push('\n');
    text
}

/// Takes out the widths of our numbers (`uint32`): no format that JSON Schema knows, and strict validators refuse it.
fn without_widths(schema: &mut Schema) {
    let is_width =
        |format: &str| format == "double" || format.starts_with("uint") || format.starts_with("int");
    if schema
        .get("format")
        .and_then(serde_json::Value::as_str)
        .is_some_and(is_width)
    {
        schema.remove("format");
    }
}
