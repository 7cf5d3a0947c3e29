//! From the bytes of a file to text whose places can be told.

use core::ops::Range;

use crate::compile::{
    Rejected,
    diagnostic::Diagnostics,
    source::{FileId, Sources},
};

/// A record file as text.
pub struct Decoded {
    pub sources: Sources,
    pub file: FileId,
    /// Where bytes stood that are no UTF-8; a replacement character stands there now.
    pub broken: Vec<Range<usize>>,
}

/// Decodes a file. What is not UTF-8 is kept as a replacement character, so that the rest can be read and told by line and
/// column.
///
/// # Errors
///
/// [`Rejected`] for a file that is not text in lines at all, or longer than `most` bytes.
pub fn decode(path: &str, bytes: &[u8], most: usize) -> Result<Decoded, Box<Rejected>> {
    let refuse = |text: &str, at: Range<usize>, code, message: String, hint: &str| {
        let mut sources = Sources::default();
        let file = sources.add(path.to_owned(), path.to_owned(), text.to_owned());
        let mut found = Diagnostics::default();
        let span = sources.span(file, at);
        found.error(code, span, message).hint(hint);
        Err(Box::new(Rejected {
            sources,
            omitted: 0,
            diagnostics: found.into_sorted(),
            unusable: None,
        }))
    };
    if bytes.len() > most {
        let message = format!(
            "expected at most {} MB, found {} MB or more",
            most / MEGABYTE,
            bytes.len() / MEGABYTE
        );
        return refuse(
            "",
            0..0,
            "too-long",
            message,
            "split the file, a part for each place",
        );
    }
    if matches!(bytes, [0xFF, 0xFE, ..] | [0xFE, 0xFF, ..]) {
        let message = "expected text in UTF-8, found UTF-16".to_owned();
        return refuse("", 0..0, "not-utf-8", message, "save the file as \"CSV UTF-8\"");
    }
    if bytes.starts_with(b"PK\x03\x04") {
        let message = "expected lines of text, found a workbook or an archive".to_owned();
        return refuse("", 0..0, "not-text", message, "save the sheet as \"CSV UTF-8\"");
    }
    let bytes = bytes.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(bytes);
    let mut text = String::with_capacity(bytes.len());
    let mut broken = Vec::new();
    for chunk in bytes.utf8_chunks() {
        text.push_str(chunk.valid());
        if !chunk.invalid().is_empty() {
            let start = text.len();
            text.push(char::REPLACEMENT_CHARACTER);
            broken.push(start..text.len());
        }
    }
    let is_lone = |at: &usize| text.as_bytes().get(at + 1) != Some(&b'\n');
    if let Some(at) = text.match_indices('\r').map(|(at, _)| at).find(is_lone) {
        let message = "expected lines that end in LF or CR LF, found a CR alone".to_owned();
        let hint = "save the file with the line ends of Unix or Windows";
        return refuse(&text, at..at + 1, "lone-return", message, hint);
    }
    let mut sources = Sources::default();
    let file = sources.add(path.to_owned(), path.to_owned(), text);
    Ok(Decoded {
        sources,
        file,
        broken,
    })
}

/// A million bytes.
pub const MEGABYTE: usize = 1_000_000;
