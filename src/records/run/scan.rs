//! Reads one line of JSON (RFC 8259) by places: every value is taken with the byte it begins at.
//!
//! Strict about the form and silent about the meaning: what a value should have been is for who asked for it. Nothing is
//! allocated but the text of a string with escapes, in a buffer that is kept. The tests hold its verdicts and values to
//! those of `serde_json`.

use super::bad::{BadLine, Fault};

/// Values inside each other beyond which a line is refused.
pub const MAX_DEPTH: usize = 64;

/// What a value is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    /// `null`.
    Null,
    /// `true` or `false`.
    Bool,
    /// A number.
    Number,
    /// A string.
    Text,
    /// A list.
    List,
    /// An object.
    Object,
}

impl Shape {
    /// With its article, for a sentence.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Null => "null",
            Self::Bool => "true or false",
            Self::Number => "a number",
            Self::Text => "a text",
            Self::List => "a list",
            Self::Object => "an object",
        }
    }
}

/// That the line can't be read any further; why, the scanner knows. So a result is as small as its value, and what every
/// byte goes through stays fast.
#[derive(Clone, Copy, Debug)]
pub struct Stop;

type Scanned<T> = Result<T, Stop>;

/// The high bit of each byte that is a quote, a backslash or a control character; bytes after the first such one may be
/// marked wrongly.
const fn stops(eight: u64) -> u64 {
    const ONES: u64 = 0x0101_0101_0101_0101;
    const HIGH: u64 = 0x8080_8080_8080_8080;
    // A byte is zero where taking one away borrows and its high bit wasn't set before.
    const fn zeros(eight: u64) -> u64 {
        eight.wrapping_sub(ONES) & !eight
    }
    let quotes = zeros(eight ^ (ONES * b'"' as u64));
    let backslashes = zeros(eight ^ (ONES * b'\\' as u64));
    let controls = eight.wrapping_sub(ONES * 0x20) & !eight;
    (quotes | backslashes | controls) & HIGH
}

/// A place in a line of JSON.
#[derive(Debug)]
pub struct Scanner<'l> {
    line: &'l str,
    at: usize,
    bad: BadLine,
}

impl<'l> Scanner<'l> {
    /// At the beginning of a line.
    pub const fn new(line: &'l str) -> Self {
        Self {
            line,
            at: 0,
            bad: BadLine::new(0, Fault::NotObject),
        }
    }

    /// The byte it stands at, past any space.
    #[inline]
    pub fn place(&mut self) -> usize {
        self.space();
        self.at
    }

    #[inline]
    fn byte(&self) -> Option<u8> {
        self.line.as_bytes().get(self.at).copied()
    }

    #[inline]
    fn space(&mut self) {
        while let Some(b' ' | b'\t' | b'\r' | b'\n') = self.byte() {
            self.at += 1;
        }
    }

    /// Why it stopped.
    pub const fn bad(&self) -> BadLine {
        self.bad
    }

    /// Stops.
    #[cold]
    pub const fn stop(&mut self, bad: BadLine) -> Stop {
        self.bad = bad;
        Stop
    }

    #[cold]
    fn stop_at(&mut self, byte: usize, fault: Fault) -> Stop {
        self.stop(BadLine::new(byte, fault))
    }

    #[cold]
    fn expected(&mut self, what: &'static str) -> Stop {
        self.stop_at(self.at, Fault::Syntax(what))
    }

    /// What the next value is, judged by its first byte.
    #[inline]
    pub fn shape(&mut self) -> Scanned<Shape> {
        self.space();
        Ok(match self.byte() {
            Some(b'"') => Shape::Text,
            Some(b'-' | b'0'..=b'9') => Shape::Number,
            Some(b'{') => Shape::Object,
            Some(b'[') => Shape::List,
            Some(b'n') => Shape::Null,
            Some(b't' | b'f') => Shape::Bool,
            _ => return Err(self.expected("a value")),
        })
    }

    /// Takes a byte that must come next, past any space.
    #[inline]
    fn take(&mut self, byte: u8, what: &'static str) -> Scanned<()> {
        self.space();
        if self.byte() == Some(byte) {
            self.at += 1;
            Ok(())
        } else {
            Err(self.expected(what))
        }
    }

    #[inline]
    fn takes(&mut self, byte: u8) -> bool {
        self.space();
        let there = self.byte() == Some(byte);
        self.at += usize::from(there);
        there
    }

    /// Goes into an object.
    #[inline]
    pub fn open_object(&mut self) -> Scanned<()> {
        self.take(b'{', "an object")
    }

    /// Goes into a list.
    #[inline]
    pub fn open_list(&mut self) -> Scanned<()> {
        self.take(b'[', "a list")
    }

    /// Takes a name and its colon, where they come next as they are mostly written: no space, no escape.
    #[inline]
    pub fn takes_name<const N: usize>(&mut self, name: &[u8; N]) -> bool {
        let rest = self.line.as_bytes().get(self.at..).unwrap_or_default();
        let there = rest.first_chunk::<N>() == Some(name);
        if there {
            self.at += N;
        }
        there
    }

    /// Whether another key comes; its place. Stands before its opening quote then, behind the object otherwise.
    #[inline]
    pub fn has_key(&mut self, first: bool) -> Scanned<Option<usize>> {
        if self.takes(b'}') {
            return Ok(None);
        }
        if !first {
            self.take(b',', "`,` or `}`")?;
        }
        self.space();
        if self.byte() != Some(b'"') {
            return Err(self.expected(if first {
                "a name in quotes or `}`"
            } else {
                "a name in quotes"
            }));
        }
        Ok(Some(self.at))
    }

    /// The two bytes after the quote it stands at.
    #[inline]
    pub fn beginning(&self) -> [u8; 2] {
        let rest = self.line.as_bytes().get(self.at + 1..).unwrap_or_default();
        rest.first_chunk().copied().unwrap_or_default()
    }

    /// Takes the text of a key that it stands at, and the colon.
    pub fn name<'t>(&mut self, scratch: &'t mut String) -> Scanned<&'t str>
    where
        'l: 't,
    {
        let name = self.text(scratch)?;
        self.take(b':', "`:`")?;
        Ok(name)
    }

    /// Whether another value of a list comes.
    #[inline]
    pub fn item(&mut self, first: bool) -> Scanned<bool> {
        if self.takes(b']') {
            return Ok(false);
        }
        if !first {
            self.take(b',', "`,` or `]`")?;
        }
        Ok(true)
    }

    /// Takes a string. Its text is that of the line, or of the scratch where it has escapes.
    #[inline]
    pub fn text<'t>(&mut self, scratch: &'t mut String) -> Scanned<&'t str>
    where
        'l: 't,
    {
        self.take(b'"', "a text in quotes")?;
        let start = self.at;
        if let Some(b'"') = self.plain()? {
            let text = self.line.get(start..self.at).unwrap_or_default();
            self.at += 1;
            return Ok(text);
        }
        scratch.clear();
        let mut from = start;
        loop {
            // Stands at a quote or a backslash.
            scratch.push_str(self.line.get(from..self.at).unwrap_or_default());
            if self.byte() == Some(b'"') {
                self.at += 1;
                return Ok(scratch);
            }
            scratch.push(self.escape()?);
            from = self.at;
            self.plain()?;
        }
    }

    /// Goes to the next quote or backslash: eight bytes at a time while there is neither, nor a control character.
    #[inline]
    fn plain(&mut self) -> Scanned<Option<u8>> {
        let rest = self.line.as_bytes().get(self.at..).unwrap_or_default();
        let (eights, _) = rest.as_chunks::<8>();
        for eight in eights {
            let stops = stops(u64::from_le_bytes(*eight));
            if stops != 0 {
                self.at += (stops.trailing_zeros() / 8) as usize;
                break;
            }
            self.at += 8;
        }
        loop {
            match self.byte() {
                Some(byte @ (b'"' | b'\\')) => return Ok(Some(byte)),
                Some(0..0x20) => {
                    return Err(self.expected("no control character in a text (write it as an escape)"));
                }
                Some(_) => self.at += 1,
                None => return Err(self.expected("a closing quote")),
            }
        }
    }

    #[cold]
    fn escape(&mut self) -> Scanned<char> {
        let begin = self.at;
        self.at += 1;
        let byte = self
            .byte()
            .ok_or(Fault::Syntax("an escape such as `\\n`"))
            .map_err(|fault| self.stop_at(begin, fault))?;
        self.at += 1;
        Ok(match byte {
            b'"' | b'\\' | b'/' => char::from(byte),
            b'b' => '\u{8}',
            b'f' => '\u{c}',
            b'n' => '\n',
            b'r' => '\r',
            b't' => '\t',
            b'u' => {
                let whole = "both halves of a surrogate pair";
                let digits = "four hexadecimal digits";
                let high = self
                    .hex()
                    .ok_or(Fault::Syntax(digits))
                    .map_err(|fault| self.stop_at(begin, fault))?;
                let code = if (0xd800..0xdc00).contains(&high) {
                    if !(self.line.as_bytes().get(self.at..)).is_some_and(|rest| rest.starts_with(b"\\u")) {
                        return Err(self.stop_at(begin, Fault::Syntax(whole)));
                    }
                    self.at += 2;
                    let low = self
                        .hex()
                        .ok_or(Fault::Syntax(digits))
                        .map_err(|fault| self.stop_at(begin, fault))?;
                    if !(0xdc00..0xe000).contains(&low) {
                        return Err(self.stop_at(begin, Fault::Syntax(whole)));
                    }
                    0x1_0000 + ((high - 0xd800) << 10) + (low - 0xdc00)
                } else {
                    high
                };
                char::from_u32(code)
                    .ok_or(Fault::Syntax(whole))
                    .map_err(|fault| self.stop_at(begin, fault))?
            }
            _ => return Err(self.stop_at(begin, Fault::Syntax("an escape such as `\\n`"))),
        })
    }

    fn hex(&mut self) -> Option<u32> {
        let digits = self.line.as_bytes().get(self.at..self.at + 4)?;
        self.at += 4;
        digits.iter().try_fold(0, |code, digit| {
            char::from(*digit).to_digit(16).map(|digit| code * 16 + digit)
        })
    }

    /// Takes a number. One too large for a float is infinite.
    #[inline]
    pub fn number(&mut self) -> Scanned<f64> {
        self.space();
        let start = self.at;
        if self.byte() == Some(b'-') {
            self.at += 1;
        }
        let begin = self.at;
        let whole = self.digits();
        if self.at == begin || (self.at > begin + 1 && self.line.as_bytes().get(begin) == Some(&b'0')) {
            self.at = start;
            return Err(self.expected("a number without leading zeros"));
        }
        let mut simple = whole.filter(|_| begin == start);
        if self.byte() == Some(b'.') {
            simple = None;
            self.at += 1;
            self.some_digits()?;
        }
        if let Some(b'e' | b'E') = self.byte() {
            simple = None;
            self.at += 1;
            if let Some(b'+' | b'-') = self.byte() {
                self.at += 1;
            }
            self.some_digits()?;
        }
        if let Some(simple) = simple {
            return Ok(f64::from(simple));
        }
        let written = self.line.get(start..self.at).unwrap_or_default();
        written
            .parse()
            .map_err(|_| self.stop_at(start, Fault::Syntax("a number")))
    }

    /// Takes digits; their number, where it is small.
    #[inline]
    fn digits(&mut self) -> Option<u32> {
        let begin = self.at;
        let mut number = 0_u32;
        while let Some(digit @ b'0'..=b'9') = self.byte() {
            number = number.wrapping_mul(10).wrapping_add(u32::from(digit - b'0'));
            self.at += 1;
        }
        (self.at - begin <= 9).then_some(number)
    }

    fn some_digits(&mut self) -> Scanned<()> {
        let begin = self.at;
        self.digits();
        if self.at == begin {
            return Err(self.expected("a digit"));
        }
        Ok(())
    }

    fn word(&mut self, word: &'static str) -> Scanned<()> {
        let rest = self.line.as_bytes().get(self.at..).unwrap_or_default();
        if rest.starts_with(word.as_bytes()) {
            self.at += word.len();
            Ok(())
        } else {
            Err(self.expected("a value"))
        }
    }

    /// Takes a value of any shape without looking into it.
    pub fn skip(&mut self, scratch: &mut String) -> Scanned<Shape> {
        self.skip_within(scratch, 0)
    }

    fn skip_within(&mut self, scratch: &mut String, depth: usize) -> Scanned<Shape> {
        let shape = self.shape()?;
        if depth > MAX_DEPTH {
            return Err(self.stop_at(self.at, Fault::TooDeep));
        }
        match shape {
            Shape::Null => self.word("null")?,
            Shape::Bool if self.byte() == Some(b't') => self.word("true")?,
            Shape::Bool => self.word("false")?,
            Shape::Number => {
                self.number()?;
            }
            Shape::Text => {
                self.text(scratch)?;
            }
            Shape::List => {
                self.open_list()?;
                let mut first = true;
                while self.item(first)? {
                    first = false;
                    self.skip_within(scratch, depth + 1)?;
                }
            }
            Shape::Object => {
                self.open_object()?;
                let mut first = true;
                while self.has_key(first)?.is_some() {
                    first = false;
                    self.name(scratch)?;
                    self.skip_within(scratch, depth + 1)?;
                }
            }
        }
        Ok(shape)
    }

    /// That nothing but space follows.
    pub fn end(&mut self) -> Scanned<()> {
        self.space();
        match self.byte() {
            None => Ok(()),
            Some(_) => Err(self.expected("the end of the line")),
        }
    }
}
