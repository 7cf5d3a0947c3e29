//! The fields of a request looked at: its values as commands take them, or every mistake.

use std::collections::BTreeSet;

use serde_json::value::RawValue;

use super::{
    super::{CannotRun, answers::line::Mistake},
    MOST_MISTAKES,
    fields::{ALL, Asking, Kind, Known},
    request::{Field, MOST_TEXT, Request, is_name},
};
use crate::book::{Date, Rulebook};
use crate::compile::suggest::nearest;

/// Looks at every field.
pub fn read<'r>(
    book: &Rulebook,
    request: &Request<'r>,
) -> Result<(&'static Asking, Values<'r>), Vec<Mistake>> {
    let mut mistakes = Vec::new();
    let mut names = BTreeSet::new();
    for field in &request.fields {
        if !names.insert(&*field.name) && mistakes.len() <= MOST_MISTAKES {
            let name = shown(&field.name);
            let message = format!("`{name}` is there twice; write it once");
            mistakes.push(Mistake::of(&name, field.column, message));
        }
    }
    if let Some(id) = request.field("id")
        && id.raw.get() != "null"
        && !is_name(id.raw)
    {
        let message = format!(
            "id: expected a text or a finite number of at most {MOST_TEXT} bytes, found {}",
            found(id.raw)
        );
        mistakes.push(Mistake::of("id", id.column, message));
    }
    let asking = match asking(request) {
        Ok(asking) => asking,
        Err(mistake) => {
            mistakes.push(mistake);
            return Err(mistakes);
        }
    };
    let mut values = Values(Vec::new());
    for field in &request.fields {
        if mistakes.len() > MOST_MISTAKES {
            // So many are not told, and a long line is not to take much memory.
            break;
        }
        if field.name == "ask" || field.name == "id" {
            continue;
        }
        let Some(known) = asking.fields.iter().find(|known| known.name == field.name) else {
            mistakes.push(unknown(field, asking));
            continue;
        };
        if field.raw.get() == "null" {
            continue;
        }
        match value(book, known, field) {
            Ok(value) => values.0.push((known.name, value)),
            Err(message) => mistakes.push(Mistake::of(&field.name, field.column, message)),
        }
    }
    for known in asking.fields.iter().filter(|known| known.must) {
        let is_given = |field: &Field<'_>| field.name == known.name && field.raw.get() != "null";
        if !request.fields.iter().any(is_given) {
            let message = format!(
                "`{}` needs `{}`; write {}",
                asking.name,
                known.name,
                known.wanted()
            );
            mistakes.push(Mistake::of(known.name, 1, message));
        }
    }
    mistakes.extend(asking.name.eq("duration").then(|| together(request)).flatten());
    if mistakes.is_empty() {
        Ok((asking, values))
    } else {
        Err(mistakes)
    }
}

/// A cylinder is given by its size, or by its water capacity and maybe its factor.
fn together(request: &Request<'_>) -> Option<Mistake> {
    let given = |name: &str| request.field(name).filter(|field| field.raw.get() != "null");
    match (given("cylinder"), given("water-capacity"), given("factor")) {
        (Some(_), Some(field), _) | (Some(_), None, Some(field)) => Some(Mistake::of(
            &field.name,
            field.column,
            format!(
                "`{}` and `cylinder` don't go together; write one of them",
                field.name
            ),
        )),
        (None, None, Some(field)) => Some(Mistake::of(
            "factor",
            field.column,
            "`factor` needs `water-capacity`".to_owned(),
        )),
        (None, None, None) => Some(Mistake::at(
            1,
            "`duration` needs `cylinder` or `water-capacity`".to_owned(),
        )),
        _ => None,
    }
}

/// What is asked.
fn asking(request: &Request<'_>) -> Result<&'static Asking, Mistake> {
    let names = || ALL.iter().map(|asking| asking.name);
    let all = || names().collect::<Vec<_>>().join(", ");
    let Some(field) = request.field("ask") else {
        return Err(Mistake::of(
            "ask",
            1,
            format!("the request lacks `ask`; write one of: {}", all()),
        ));
    };
    let told = |message| Mistake::of("ask", field.column, message);
    let name = text(field.raw).map_err(|message| told(format!("ask: {message}; write one of: {}", all())))?;
    let known: &'static [Asking] = &ALL;
    known.iter().find(|asking| asking.name == name).ok_or_else(|| {
        let hint = match nearest(&name, names()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("write one of: {}", all()),
        };
        told(format!("`{}` can't be asked; {hint}", shown(&name)))
    })
}

fn unknown(field: &Field<'_>, asking: &Asking) -> Mistake {
    let names = || asking.fields.iter().map(|known| known.name);
    let hint = match nearest(&field.name, names()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if asking.fields.is_empty() => "it has none but `ask` and `id`".to_owned(),
        None => format!("it has: {}", names().collect::<Vec<_>>().join(", ")),
    };
    let name = shown(&field.name);
    let message = format!("`{}` has no field `{name}`; {hint}", asking.name);
    Mistake::of(&name, field.column, message)
}

/// A value as a command takes it.
enum Value<'r> {
    Texts(Vec<String>),
    Flag(bool),
    Plan { raw: &'r RawValue, column: usize },
}

fn value<'r>(book: &Rulebook, known: &Known, field: &Field<'r>) -> Result<Value<'r>, String> {
    let (name, raw) = (known.name, field.raw);
    let told = |message: String| match known.kind {
        // What these may be is in the message.
        Kind::Flag | Kind::Word(_) => format!("{name}: {message}"),
        _ => format!("{name}: {message}; write {}", known.wanted()),
    };
    // What the command says begins with its option.
    let said = |CannotRun(reason): CannotRun| reason.strip_prefix("--").unwrap_or(&reason).to_owned();
    match known.kind {
        Kind::Text(check) => {
            let text = short(raw).map_err(told)?;
            check(name, book, &text).map_err(said)?;
            Ok(Value::Texts(vec![text]))
        }
        Kind::Minutes(check) => {
            let is_number = raw.get().starts_with(|c: char| c == '-' || c.is_ascii_digit());
            let text = if is_number && raw.get().len() <= MOST_TEXT {
                raw.get().to_owned()
            } else {
                short(raw).map_err(told)?
            };
            check(name, book, &text).map_err(said)?;
            Ok(Value::Texts(vec![text]))
        }
        Kind::Texts(check) => {
            let texts = texts(raw).map_err(told)?;
            check(book, &texts).map_err(said)?;
            Ok(Value::Texts(texts))
        }
        Kind::Word(words) => {
            let text = short(raw).map_err(told)?;
            if words.contains(&&*text) {
                Ok(Value::Texts(vec![text]))
            } else {
                Err(told(format!(
                    "expected {}, found `{}`",
                    words.join(" or "),
                    shown(&text)
                )))
            }
        }
        Kind::Flag => match raw.get() {
            "true" => Ok(Value::Flag(true)),
            "false" => Ok(Value::Flag(false)),
            _ => Err(told(format!("expected true or false, found {}", found(raw)))),
        },
        Kind::Plan if raw.get().starts_with('{') => Ok(Value::Plan {
            raw,
            column: field.column,
        }),
        Kind::Plan => Err(told(format!(
            "expected an object with `cylinders` and `legs`, found {}",
            found(raw)
        ))),
        Kind::List => Ok(Value::Texts(vec![text(raw).map_err(told)?])),
    }
}

/// A text.
fn text(raw: &RawValue) -> Result<String, String> {
    if !raw.get().starts_with('"') {
        return Err(format!("expected a text, found {}", found(raw)));
    }
    serde_json::from_str(raw.get())
        .map_err(|_| "expected a text, found a half of a surrogate pair in one".to_owned())
}

/// A text that is not so long that it must be something else.
fn short(raw: &RawValue) -> Result<String, String> {
    let text = text(raw)?;
    if text.len() > MOST_TEXT {
        return Err(format!(
            "expected at most {MOST_TEXT} bytes, found {}",
            text.len()
        ));
    }
    Ok(text)
}

/// As many texts may be in a list.
const MOST_TEXTS: usize = 64;

/// A text, or a list of texts.
fn texts(raw: &RawValue) -> Result<Vec<String>, String> {
    if !raw.get().starts_with('[') {
        return Ok(vec![short(raw)?]);
    }
    let items: Vec<&RawValue> = serde_json::from_str(raw.get()).map_err(|error| error.to_string())?;
    if items.len() > MOST_TEXTS {
        return Err(format!(
            "expected at most {MOST_TEXTS} texts, found {}",
            items.len()
        ));
    }
    items.into_iter().map(short).collect()
}

/// What a value is.
fn found(raw: &RawValue) -> &'static str {
    match raw.get().as_bytes().first() {
        Some(b'{') => "an object",
        Some(b'[') => "a list",
        Some(b'"') => "a text",
        Some(b't' | b'f') => "true or false",
        Some(b'n') => "null",
        _ => "a number",
    }
}

/// A text as a message repeats it: not without end.
fn shown(text: &str) -> String {
    let mut shown: String = text.chars().take(60).collect();
    if shown.len() < text.len() {
        shown.push('…');
    }
    shown
}

/// The values of a request.
pub struct Values<'r>(Vec<(&'static str, Value<'r>)>);

impl Values<'_> {
    /// The texts of a field; none where it was not given.
    pub fn texts(&self, name: &str) -> Vec<String> {
        self.0
            .iter()
            .find_map(|(known, value)| match value {
                Value::Texts(texts) if *known == name => Some(texts.clone()),
                _ => None,
            })
            .unwrap_or_default()
    }

    /// The text of a field.
    pub fn text(&self, name: &str) -> Option<String> {
        self.texts(name).into_iter().next()
    }

    /// The day of a field.
    pub fn day(&self, name: &str) -> Option<Date> {
        self.text(name).and_then(|day| day.parse().ok())
    }

    /// The plan as its reader takes it: JSON is YAML too. It stands as far in as in the line, so that its places are the line's.
    pub fn plan(&self) -> String {
        self.0
            .iter()
            .find_map(|(_, value)| match value {
                Value::Plan { raw, column } => {
                    let mut text = " ".repeat(column - 1);
                    text.push_str(raw.get());
                    Some(text)
                }
                _ => None,
            })
            .unwrap_or_default()
    }

    /// Whether a field says yes.
    pub fn is_set(&self, name: &str) -> bool {
        self.0
            .iter()
            .any(|(known, value)| *known == name && matches!(value, Value::Flag(true)))
    }
}
