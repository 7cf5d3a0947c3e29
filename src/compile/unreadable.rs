//! Why a block can't be read as YAML, in plain words and at the sign that has to be mended. The YAML library tells where
//! its reading stopped, which may be lines below a lost quotation mark and above a tab.

use core::ops::Range as Bytes;

/// What is wrong in a block, and where.
#[derive(Debug, PartialEq, Eq)]
pub struct Slip {
    /// A stable name in kebab-case.
    pub code: &'static str,
    /// The bytes of the block that are wrong.
    pub at: Bytes<usize>,
    /// What is wrong.
    pub message: String,
    /// What to write instead.
    pub hint: &'static str,
}

/// A blank that looks like a space and is none, as word processors write them. The blanks that can't be seen at all are
/// [hidden](super::render::is_hidden).
pub fn is_odd_blank(c: char) -> bool {
    c.is_whitespace() && !c.is_ascii() && !matches!(c, '\u{85}' | '\u{2028}' | '\u{2029}')
}

const RETYPE: &str = "delete this blank and type it again with the space bar";

/// An odd blank at a place of the block.
pub fn odd_blank(text: &str, at: usize) -> Slip {
    let sign = text.get(at..).and_then(|rest| rest.chars().next()).unwrap_or(' ');
    let name = if sign == '\u{A0}' {
        "a no-break space"
    } else {
        "another blank"
    };
    Slip {
        code: "odd-blank",
        at: at..at + sign.len_utf8(),
        message: format!("expected a plain space, found {name} (U+{:04X})", u32::from(sign)),
        hint: RETYPE,
    }
}

/// Odd blanks where a plain one would tell keys from values and lines from lines: read as they are they would change what
/// is meant. Inside a value they are read as spaces.
pub fn odd_blanks(block: &str) -> Vec<Slip> {
    let mut found = Vec::new();
    if !block.contains(is_odd_blank) {
        return found;
    }
    for (start, line) in lines(block) {
        if let Some(at) = misplaced(line) {
            found.push(odd_blank(block, start + at));
        }
    }
    found
}

/// The first odd blank of a line in its indent, after the dash of an item, or after the colon of a key.
fn misplaced(line: &str) -> Option<usize> {
    let mut at = 0;
    loop {
        let rest = line.get(at..)?;
        let blanks = rest.len() - rest.trim_start().len();
        let head = rest.get(..blanks)?;
        if let Some(odd) = head.find(is_odd_blank).filter(|_| !rest.trim().is_empty()) {
            return Some(at + odd);
        }
        at += blanks;
        let after_dash = line.get(at..)?.strip_prefix('-');
        if !after_dash.is_some_and(|rest| rest.starts_with(char::is_whitespace)) {
            break;
        }
        at += 1;
    }
    let rest = line.get(at..)?;
    let key = rest.find(|c: char| !is_of_key(c))?;
    let (end, value) = (at + key, rest.get(key..)?);
    // `flow :` with an odd blank before the colon is as unreadable as one after it.
    let before = value.len() - value.trim_start_matches(is_odd_blank).len();
    if before > 0 && key > 0 && value.get(before..)?.starts_with(':') {
        return Some(end);
    }
    let after = value.strip_prefix(':').filter(|_| key > 0)?;
    let blanks = after.len() - after.trim_start().len();
    after
        .get(..blanks)?
        .find(is_odd_blank)
        .filter(|_| !after.trim().is_empty())
        .map(|odd| end + 1 + odd)
}

const fn is_of_key(c: char) -> bool {
    c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-'
}

/// The lines of a block, each with its place.
fn lines(block: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut start = 0;
    block.split_inclusive('\n').map(move |line| {
        start += line.len();
        (start - line.len(), line.trim_end_matches(['\n', '\r']))
    })
}

/// What keeps a block from being read; the YAML library stopped at `stop` and said `info`.
pub fn why(block: &str, stop: usize, info: &str) -> Slip {
    // At the end of the block there is nothing to underline: point at its last line instead.
    let stop = stop.min(block.trim_end().len().saturating_sub(1));
    let start = block
        .get(..stop)
        .and_then(|head| head.rfind('\n'))
        .map_or(0, |n| n + 1);
    let line = block
        .get(start..)
        .and_then(|rest| rest.lines().next())
        .unwrap_or("");
    let rest = block.get(stop..).unwrap_or("");
    if rest.starts_with(is_odd_blank) {
        return odd_blank(block, stop);
    }
    if let Some(at) = tab(block, start) {
        return Slip {
            code: "unreadable-yaml",
            at: at..at + 1,
            message: "cannot read this line: found a tab".to_owned(),
            hint: "use spaces, not tabs",
        };
    }
    if let Some(at) = open_quotation(block, stop) {
        return Slip {
            code: "unreadable-yaml",
            at: at..at + 1,
            message: "this quotation mark is never closed".to_owned(),
            hint: "close the quotation mark at the end of its text",
        };
    }
    Slip {
        code: "unreadable-yaml",
        at: stop..stop,
        message: plain_words(info),
        hint: hint(line, info),
    }
}

/// A tab in the indent of the line where the reading stopped, or of the one below it: the line above a tab is then taken
/// to go on.
fn tab(block: &str, start: usize) -> Option<usize> {
    let from = block.get(start..)?;
    let mut near = lines(from).filter(|(_, line)| !line.trim().is_empty()).take(2);
    near.find_map(|(at, line)| {
        let indent = line.len() - line.trim_start().len();
        let tab = line.get(..indent)?.find('\t')?;
        Some(start + at + tab)
    })
}

/// The quotation mark that was opened last before a place and not closed on its line, unless it is closed at the end of a
/// later one.
fn open_quotation(block: &str, stop: usize) -> Option<usize> {
    let mut open = None;
    for (start, line) in lines(block).take_while(|(start, _)| *start <= stop) {
        let Some((at, mark)) = opened(line) else {
            continue;
        };
        let text = start + at + 1;
        if closed(line.get(at + 1..)?, mark).is_some() {
            continue;
        }
        let end = closed(block.get(text..)?, mark).map(|end| text + end + 1);
        let rest = end.and_then(|end| block.get(end..)?.lines().next());
        // A text may go on over lines; then nothing but a blank or a bracket follows its end.
        let is_sound = rest.is_some_and(|rest| {
            let rest = rest.trim();
            rest.is_empty() || rest.starts_with([',', ']', '}', '#'])
        });
        if !is_sound {
            open = Some(start + at);
            break;
        }
    }
    open
}

/// A quotation mark at the start of a line's value.
fn opened(line: &str) -> Option<(usize, char)> {
    let mut at = line.len() - line.trim_start().len();
    while line.get(at..)?.starts_with("- ") {
        let rest = line.get(at + 2..)?;
        at += 2 + rest.len() - rest.trim_start().len();
    }
    let rest = line.get(at..)?;
    let key = rest.find(|c: char| !is_of_key(c)).unwrap_or(rest.len());
    if key > 0
        && let Some(value) = rest.get(key..)?.strip_prefix(": ")
    {
        at += key + 2 + value.len() - value.trim_start().len();
    }
    let mark = line
        .get(at..)?
        .chars()
        .next()
        .filter(|mark| matches!(mark, '"' | '\''))?;
    Some((at, mark))
}

/// Where a quotation mark closes a text.
fn closed(text: &str, mark: char) -> Option<usize> {
    let mut signs = text.char_indices().peekable();
    while let Some((at, sign)) = signs.next() {
        if sign == '\\' && mark == '"' {
            signs.next();
        } else if sign == mark {
            // `''` is an apostrophe inside single quotation marks.
            if mark == '\'' && signs.peek().is_some_and(|(_, next)| *next == mark) {
                signs.next();
                continue;
            }
            return Some(at);
        }
    }
    None
}

/// Whether a text in quotation marks that goes on over lines has taken in other keys: its own mark was lost, and the next
/// text's closed it.
pub fn takes_in_keys(raw: &str) -> bool {
    lines(raw).skip(1).any(|(_, line)| {
        let line = line.trim_start();
        let line = line.strip_prefix("- ").unwrap_or(line);
        let key = line.find(|c: char| !is_of_key(c)).unwrap_or(0);
        key > 1
            && line
                .get(key..)
                .is_some_and(|rest| rest.starts_with(": ") || rest == ":")
    })
}

/// A quotation mark at the end of a bare text that was opened nowhere. After a digit it may mean inches.
pub fn stray_quotation(text: &str) -> bool {
    text.strip_suffix('"').is_some_and(|rest| {
        !rest.contains('"') && !rest.ends_with(|c: char| c.is_ascii_digit() || c.is_whitespace())
    })
}

/// What to write, from the line where the reading stopped.
fn hint(line: &str, info: &str) -> &'static str {
    let value = line.split_once(": ").map_or("", |(_, value)| value);
    if value.starts_with(['“', '”', '„', '«', '‘', '’']) {
        "these are curly quotation marks: write straight ones (\")"
    } else if info.contains("illegal placement of ':'") {
        "close the list with `]` in a line above"
    } else if line.matches(": ").count() > 1 {
        "put text that holds a colon in quotes"
    } else if value.starts_with(['%', '@', '`', '*', '&', '!', '-', '?', '|', '>', '{'])
        || value.contains('\\')
    {
        "put the whole text in quotation marks"
    } else if value.starts_with('"') && value.matches('"').count() > 2 {
        "inside quotation marks write `'`, not `\"`"
    } else if !line.contains(": ") && !line.trim_end().ends_with(':') && !line.trim_start().starts_with("- ")
    {
        "write a colon and a space after the key, or `- ` before an item of a list"
    } else if line.matches('"').count() % 2 == 1 || line.matches('\'').count() % 2 == 1 {
        "close the quotation mark"
    } else if line.matches('[').count() != line.matches(']').count() {
        "close the list with `]`"
    } else {
        "write `key: value`, one a line, all keys of a rule at the same indent"
    }
}

/// What the YAML library means, in words that need no knowledge of YAML.
fn plain_words(info: &str) -> String {
    const WORDS: &[(&str, &str)] = &[
        ("tab", "cannot read this line: found a tab"),
        (
            "mapping values are not allowed",
            "cannot read this line: found a colon where none can be",
        ),
        (
            "illegal placement of ':'",
            "cannot read this line: found a colon inside a list that is not closed above",
        ),
        (
            "simple key expected ':'",
            "expected a colon and a space after a key",
        ),
        (
            "expected '-' indicator",
            "expected this line at the same indent as the lines above",
        ),
        ("unclosed quote", "this quotation mark is never closed"),
        (
            "trailing content",
            "expected the end of the line after a closing quotation mark",
        ),
        (
            "unexpected character",
            "cannot read this line: found a sign that cannot begin a text",
        ),
        (
            "unknown anchor",
            "cannot read this line: found a sign that cannot begin a text",
        ),
        ("escape", "cannot read this text: found `\\` in it"),
    ];
    WORDS
        .iter()
        .find(|(theirs, _)| info.contains(theirs))
        .map_or_else(
            || format!("cannot read this as YAML: {info}"),
            |(_, ours)| (*ours).to_owned(),
        )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn odd_blanks_are_told_where_they_would_change_what_is_meant() {
        for (line, at) in [
            ("flow: 6\u{a0}to 10\u{202f}L/min", None),
            ("say: \"Look: wait\u{a0}: and go.\u{a0}\"", None),
            ("flow: 10 L/min\u{a0}", None),
            ("\u{a0}", None),
            ("\u{a0}flow: 1", Some(0)),
            ("  \u{2003}flow: 1", Some(2)),
            ("flow:\u{a0}1", Some(5)),
            ("flow: \u{a0}1", Some(6)),
            ("flow\u{a0}: 1", Some(4)),
            ("-\u{a0}one", Some(1)),
            ("- id:\u{3000}one", Some(5)),
            ("- - \u{a0}one", Some(4)),
            ("-5\u{a0}°C", None),
        ] {
            assert_eq!(misplaced(line), at, "{line:?}");
        }
    }

    #[test]
    fn the_mark_that_was_not_closed_is_found() {
        let open = |block: &str| open_quotation(block, block.len());
        assert_eq!(open("a: \"one\"\nb: 'it''s two'\n"), None);
        assert_eq!(open("a: \"one\n  and on\"\nb: two\n"), None);
        assert_eq!(open("a: \"one\nb: \"two\"\n"), Some(3));
        assert_eq!(open("- \"say \\\"no\\\"\"\n- 'one\n"), Some(17));
    }
}
