//! Any bytes as the standard input of `oxyfolio answer`: each line that isn't empty has one line of JSON, with its number, its name,
//! and either an answer or the places of its mistakes.

use oxyfolio::cli::answer_lines;
use serde_json::Value;

/// Asks all lines, and looks at all answers.
pub fn run(bytes: &[u8]) {
    // What no worked case would notice takes seconds to find out.
    if bytes.windows(9).any(|window| window == b"uncovered") {
        return;
    }
    let mut out = Vec::new();
    answer_lines(bytes, &mut out).expect("memory can be read and written");
    let out = String::from_utf8(out).expect("answers are UTF-8");
    assert!(out.is_empty() || out.ends_with('\n'));
    let mut answers = out.lines();
    let without_mark = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    for (number, line) in (1..).zip(without_mark.split(|byte| *byte == b'\n')) {
        let line = line.strip_suffix(b"\r").unwrap_or(line);
        if line.trim_ascii().is_empty() {
            continue;
        }
        let answer = answers.next().expect("a line for each line");
        let answer: Value = serde_json::from_str(answer).unwrap_or_else(|error| panic!("{error}: {answer}"));
        assert_eq!(answer["line"], number);
        answered(line, &answer);
    }
    assert_eq!(answers.next(), None, "more lines than were asked");
}

fn answered(line: &[u8], answer: &Value) {
    let exit = answer["exit"].as_u64().expect("an exit code");
    assert!(exit <= 3);
    if let Some(id) = asked_id(line)
        && !answer["id"].is_null()
    {
        assert_eq!(answer["id"], id);
    }
    if let Some(errors) = answer.get("errors") {
        let errors = errors.as_array().expect("a list");
        assert!((1..=20).contains(&errors.len()) && exit == 2);
        let length = String::from_utf8_lossy(line).chars().count() as u64;
        for error in errors {
            let column = error["column"].as_u64().expect("a column");
            assert!(
                (1..=length + 1).contains(&column),
                "{error} in {length} characters"
            );
            assert!(!error["message"].as_str().expect("words").is_empty());
        }
    } else {
        assert!(
            answer["ask"].is_string() && answer["answer"].is_object(),
            "{answer}"
        );
    }
}

/// The request's name, where a general reader finds one only.
fn asked_id(line: &[u8]) -> Option<Value> {
    let text = std::str::from_utf8(line).ok()?;
    if text.matches("id").count() != 1 {
        return None;
    }
    let id = serde_json::from_str::<Value>(text).ok()?.get("id").cloned()?;
    // A number may be told with more digits than a float keeps.
    id.is_string().then_some(id)
}
