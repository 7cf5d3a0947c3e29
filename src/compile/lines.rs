//! What a chapter's lines must be before its Markdown is read: text that can be seen, in lines that everybody counts
//! alike, and not so deeply nested that reading takes longer than the chapter is long.

use super::{
    diagnostic::Diagnostics,
    render::is_hidden,
    source::{FileId, Sources},
};

/// How many quotation marks and list marks may stand at the start of a line.
pub const MAX_MARKS: usize = 32;

/// In which column the last of them may stand.
pub const MAX_MARK_COLUMN: usize = 100;

/// As many hidden characters of one chapter are reported.
const REPORTED: usize = 10;

/// Reports what is wrong with a chapter's lines.
pub fn check(sources: &Sources, file: FileId, found: &mut Diagnostics) {
    let text = sources.text(file);
    hidden_characters(text, sources, file, found);
    lone_returns(text, sources, file, found);
    nesting(text, sources, file, found);
}

fn hidden_characters(text: &str, sources: &Sources, file: FileId, found: &mut Diagnostics) {
    if let Some(nul) = text.find('\0') {
        found
            .error(
                "not-text",
                sources.span(file, nul..nul + 1),
                "expected text, found a NUL character",
            )
            .hint("delete it, or save the chapter as plain text");
        return;
    }
    let hidden = text
        .char_indices()
        .filter(|(_, c)| is_hidden(*c) && !is_harmless(*c));
    for (at, c) in hidden.take(REPORTED) {
        let at = sources.span(file, at..at + c.len_utf8());
        found
            .error(
                "hidden-character",
                at,
                format!(
                    "expected text that shows as it is written, found the character U+{:04X}",
                    u32::from(c)
                ),
            )
            .hint("delete the character: it can't be seen, and may show the text around it in another order");
    }
}

/// Hidden, but moves nothing: a soft hyphen, a space of no width, and the like.
const fn is_harmless(c: char) -> bool {
    matches!(c, '\u{AD}' | '\u{200B}'..='\u{200D}' | '\u{2060}' | '\u{FEFF}')
}

fn lone_returns(text: &str, sources: &Sources, file: FileId, found: &mut Diagnostics) {
    let bytes = text.as_bytes();
    let lone = |at: &usize| bytes.get(*at) == Some(&b'\r') && bytes.get(at + 1) != Some(&b'\n');
    let Some(first) = text.match_indices('\r').map(|(at, _)| at).find(lone) else {
        return;
    };
    let at = sources.span(file, first..first + 1);
    found
        .error(
            "lone-return",
            at,
            "expected lines that end in LF or CR LF, found a CR alone",
        )
        .hint("save the chapter with the line ends of Unix or Windows");
}

fn nesting(text: &str, sources: &Sources, file: FileId, found: &mut Diagnostics) {
    let mut start = 0;
    for line in text.split_inclusive('\n') {
        let marks = Marks::of(line);
        if !marks.is_rule && (marks.count > MAX_MARKS || marks.last_column > MAX_MARK_COLUMN) {
            let at = sources.span(file, start..start + marks.bytes.max(1));
            found
                .error(
                    "nested-too-deep",
                    at,
                    format!(
                        "expected at most {MAX_MARKS} quotation and list marks, within the first {MAX_MARK_COLUMN} columns of a line, found more"
                    ),
                )
                .hint("begin the line further left, with fewer marks");
            return;
        }
        start += line.len();
    }
}

/// The quotation and list marks at the start of a line.
struct Marks {
    count: usize,
    /// The column of the last one, from 1; 0 when there is none.
    last_column: usize,
    /// The bytes up to and with the last one.
    bytes: usize,
    /// Whether the line is a rule drawn with one kind of mark: `* * *`.
    is_rule: bool,
}

impl Marks {
    fn of(line: &str) -> Self {
        let mut marks = Self {
            count: 0,
            last_column: 0,
            bytes: 0,
            is_rule: false,
        };
        let bytes = line.trim_end().as_bytes();
        let byte = |at: usize| bytes.get(at).copied().unwrap_or(b' ');
        let ends_mark = |at: usize| matches!(byte(at), b' ' | b'\t');
        let (mut at, mut column) = (0, 0);
        while at < bytes.len() {
            let width = match byte(at) {
                b' ' => {
                    at += 1;
                    column += 1;
                    continue;
                }
                b'\t' => {
                    at += 1;
                    column += 4 - column % 4;
                    continue;
                }
                b'>' => 1,
                b'-' | b'+' | b'*' if ends_mark(at + 1) => 1,
                b'0'..=b'9' => {
                    let digits = (at..at + 10).take_while(|at| byte(*at).is_ascii_digit()).count();
                    let is_mark = matches!(byte(at + digits), b'.' | b')') && ends_mark(at + digits + 1);
                    if !is_mark {
                        break;
                    }
                    digits + 1
                }
                _ => break,
            };
            at += width;
            column += width;
            marks.count += 1;
            marks.last_column = column;
            marks.bytes = at;
        }
        let mut signs = bytes.iter().filter(|byte| !matches!(**byte, b' ' | b'\t'));
        marks.is_rule = match signs.next() {
            Some(first @ (b'-' | b'*')) if marks.count > MAX_MARKS || marks.last_column > MAX_MARK_COLUMN => {
                signs.all(|sign| sign == first)
            }
            _ => false,
        };
        marks
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_are_counted_as_markdown_nests_them() {
        for (line, count, last_column) in [
            ("plain text\n", 0, 0),
            ("-5 °C\n", 0, 0),
            ("1.5 L\n", 0, 0),
            ("- one\n", 1, 1),
            ("  12) twelve\n", 1, 5),
            ("> > * three\n", 3, 5),
            (">>> three\n", 3, 3),
            ("\t- tab\n", 1, 5),
            ("--\n", 0, 0),
            ("12345678901. no list\n", 0, 0),
        ] {
            let marks = Marks::of(line);
            assert_eq!((marks.count, marks.last_column), (count, last_column), "{line:?}");
        }
        assert!(Marks::of(&"* ".repeat(60)).is_rule);
        assert!(Marks::of(&format!("   {}\r\n", "- ".repeat(60))).is_rule);
        assert!(!Marks::of(&format!("{}x\n", "- ".repeat(60))).is_rule);
    }
}
