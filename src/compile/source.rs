//! The chapters' text, and positions in it.

use std::ops::Range;

/// Names a chapter by its place in the book.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct FileId(pub usize);

/// A stretch of a chapter, in bytes. Never empty, unless the chapter is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Span {
    /// The chapter.
    pub file: FileId,
    /// The first byte.
    pub start: usize,
    /// The byte after the last.
    pub end: usize,
}

/// One chapter as it was read.
#[derive(Clone, Debug)]
pub struct Source {
    /// The file's name, without its folder.
    pub name: String,
    /// The path as the reader knows it.
    pub path: String,
    /// The text, without a byte-order mark.
    pub text: String,
}

/// All chapters, in the order of the book.
#[derive(Clone, Debug, Default)]
pub struct Sources {
    files: Vec<Source>,
    indexes: Vec<Index>,
}

/// A line and column as an editor shows them: both from 1, columns in characters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LineColumn {
    /// The line.
    pub line: usize,
    /// The column.
    pub column: usize,
}

impl Sources {
    /// Adds a chapter at the end of the book.
    pub fn add(&mut self, name: String, path: String, text: String) -> FileId {
        self.indexes.push(Index::of(&text));
        self.files.push(Source { name, path, text });
        FileId(self.files.len() - 1)
    }

    /// The chapters with their names.
    pub fn iter(&self) -> impl Iterator<Item = (FileId, &Source)> {
        self.files
            .iter()
            .enumerate()
            .map(|(index, file)| (FileId(index), file))
    }

    /// One chapter.
    #[must_use]
    pub fn get(&self, file: FileId) -> Option<&Source> {
        self.files.get(file.0)
    }

    /// A chapter's text; empty for a file of another book.
    #[must_use]
    pub fn text(&self, file: FileId) -> &str {
        self.get(file).map_or("", |source| &source.text)
    }

    /// A checked span: inside the text, on character boundaries, at least one character wide.
    #[must_use]
    pub fn span(&self, file: FileId, range: Range<usize>) -> Span {
        let text = self.text(file);
        let mut start = text.floor_char_boundary(range.start);
        let mut end = text.ceil_char_boundary(range.end.max(start));
        if start == end {
            // An empty span points at the next character, or at the last one of the line.
            match text.get(start..).and_then(|rest| rest.chars().next()) {
                Some(next) if next != '\n' => end += next.len_utf8(),
                _ => {
                    if let Some(last) = text.get(..start).and_then(|head| head.chars().next_back())
                        && last != '\n'
                    {
                        start -= last.len_utf8();
                    }
                }
            }
        }
        Span { file, start, end }
    }

    /// The line and column where a span starts.
    #[must_use]
    pub fn line_column(&self, span: Span) -> LineColumn {
        let text = self.text(span.file);
        let end = text.floor_char_boundary(span.start);
        let index = self.indexes.get(span.file.0);
        index.map_or(LineColumn { line: 1, column: 1 }, |index| {
            index.before(text, end).line_column()
        })
    }

    /// The byte where a place's line starts.
    #[must_use]
    pub fn line_start(&self, file: FileId, place: usize) -> usize {
        let text = self.text(file);
        let index = self.indexes.get(file.0);
        index.map_or(0, |index| {
            index.before(text, text.floor_char_boundary(place)).line_start
        })
    }
}

/// What stands before a byte of a chapter.
#[derive(Clone, Copy, Debug)]
struct Before {
    /// The bytes.
    bytes: usize,
    /// The characters among them.
    characters: usize,
    /// The line ends among them.
    lines: usize,
    /// Where the last line starts.
    line_start: usize,
    /// The characters before that line.
    line_start_characters: usize,
}

impl Before {
    const NOTHING: Self = Self {
        bytes: 0,
        characters: 0,
        lines: 0,
        line_start: 0,
        line_start_characters: 0,
    };

    /// The same for a later byte, a character boundary.
    fn advanced(mut self, text: &str, to: usize) -> Self {
        let added = text.get(self.bytes..to).unwrap_or("");
        if let Some(newline) = added.rfind('\n') {
            self.lines += added.bytes().filter(|&byte| byte == b'\n').count();
            let (head, tail) = added.split_at(newline + 1);
            self.line_start = self.bytes + head.len();
            self.line_start_characters = self.characters + head.chars().count();
            self.characters = self.line_start_characters + tail.chars().count();
        } else {
            self.characters += added.chars().count();
        }
        self.bytes = to;
        self
    }

    const fn line_column(&self) -> LineColumn {
        LineColumn {
            line: self.lines + 1,
            column: self.characters - self.line_start_characters + 1,
        }
    }
}

/// Milestones in a chapter, so that a place far into it, or far into a long line, is found without reading all that
/// comes before.
#[derive(Clone, Debug)]
struct Index(Vec<Before>);

impl Index {
    const STEP: usize = 4096;

    fn of(text: &str) -> Self {
        let mut at = Before::NOTHING;
        let mut milestones = vec![at];
        while at.bytes + Self::STEP < text.len() {
            at = at.advanced(text, text.floor_char_boundary(at.bytes + Self::STEP));
            milestones.push(at);
        }
        Self(milestones)
    }

    fn before(&self, text: &str, place: usize) -> Before {
        let after = self.0.partition_point(|milestone| milestone.bytes <= place);
        let nearest = self.0.get(after.saturating_sub(1)).copied();
        nearest.unwrap_or(Before::NOTHING).advanced(text, place)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_is_counted_as_from_the_start() {
        let line = "Sauerstoff: °C, ½ h, 氧气\r\n".repeat(97);
        let texts = [
            String::new(),
            "one".to_owned(),
            "\n\n".to_owned(),
            line.clone(),
            format!("{}{}", line.replace('\n', "²"), line),
        ];
        for text in texts {
            let mut sources = Sources::default();
            let file = sources.add("a.md".to_owned(), "a.md".to_owned(), text.clone());
            for start in (0..=text.len()).filter(|place| text.is_char_boundary(*place)) {
                let head = &text[..start];
                let line_start = head.rfind('\n').map_or(0, |newline| newline + 1);
                let expected = LineColumn {
                    line: head.matches('\n').count() + 1,
                    column: head[line_start..].chars().count() + 1,
                };
                let span = Span {
                    file,
                    start,
                    end: start,
                };
                assert_eq!(sources.line_column(span), expected, "{start}");
                assert_eq!(sources.line_start(file, start), line_start, "{start}");
            }
        }
    }
}
