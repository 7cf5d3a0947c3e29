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
        let head = self.text(span.file).get(..span.start).unwrap_or("");
        let line_start = head.rfind('\n').map_or(0, |newline| newline + 1);
        LineColumn {
            line: head.bytes().filter(|&byte| byte == b'\n').count() + 1,
            column: head.get(line_start..).unwrap_or("").chars().count() + 1,
        }
    }
}
