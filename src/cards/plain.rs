//! Texts as the templates get them: one line each, with typeset signs.

use serde_json::Value;

/// Every text of a document made plain.
pub fn plain(value: Value) -> Value {
    match value {
        Value::String(text) => Value::String(line(&text)),
        Value::Array(items) => Value::Array(items.into_iter().map(plain).collect()),
        Value::Object(fields) => Value::Object(
            fields
                .into_iter()
                .map(|(key, value)| {
                    // A drawing is no text.
                    let value = if key == "svg" { value } else { plain(value) };
                    (key, value)
                })
                .collect(),
        ),
        other => other,
    }
}

/// One line: line breaks and tabs become spaces, hyphens the font lacks become the common one, and the hyphen before a
/// number below nothing becomes a minus as wide as a digit.
fn line(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut signs = text.trim().chars().peekable();
    let mut before = ' ';
    while let Some(sign) = signs.next() {
        let sign = match sign {
            '\u{2010}' | '\u{2011}' => '-',
            // Other spaces keep number and unit together, and stay.
            sign if sign.is_control() || matches!(sign, '\u{2028}' | '\u{2029}') => ' ',
            sign => sign,
        };
        let number_follows = signs.peek().is_some_and(char::is_ascii_digit);
        out.push(
            if sign == '-' && number_follows && matches!(before, ' ' | '(' | '/') {
                '−'
            } else {
                sign
            },
        );
        before = sign;
    }
    out
}

#[cfg(test)]
mod tests {
    use super::line;

    #[test]
    fn a_number_below_nothing_gets_a_minus() {
        for (written, printed) in [
            ("-20 to -5 °C", "−20 to −5 °C"),
            ("2-5", "2-5"),
            ("step-up", "step-up"),
            ("(-3)", "(−3)"),
            (" a\nb\tc ", "a b c"),
            ("non\u{2011}rebreather", "non-rebreather"),
        ] {
            assert_eq!(line(written), printed, "{written:?}");
        }
    }
}
