//! What is asked after the question mark of an address.

use std::fmt::Write as _;

/// As many pairs are read; no form of ours has more.
const MOST: usize = 64;

/// The pairs of an address, in the order written. Whatever stands there is read without an error: what means nothing
/// is told by the page that asked for it.
#[derive(Clone, Debug, Default)]
pub struct Query(Vec<(String, String)>);

impl Query {
    /// Reads what stands after the question mark.
    pub fn read(raw: Option<&str>) -> Self {
        let pairs = form_urlencoded::parse(raw.unwrap_or("").as_bytes());
        Self(pairs.into_owned().take(MOST).collect())
    }

    /// The first value of a name, without the space around it; none where it is empty.
    pub fn get(&self, name: &str) -> Option<&str> {
        self.all(name).into_iter().next()
    }

    /// Every value of a name that isn't empty.
    pub fn all(&self, name: &str) -> Vec<&str> {
        let named = self.0.iter().filter(|(known, _)| known == name);
        named
            .map(|(_, value)| value.trim())
            .filter(|value| !value.is_empty())
            .collect()
    }

    /// Whether nothing was asked.
    pub fn is_empty(&self) -> bool {
        self.0.iter().all(|(_, value)| value.trim().is_empty())
    }
}

/// A text as a part of an address: everything but letters, digits and `-._` escaped.
pub fn escaped(text: &str) -> String {
    let mut out = String::new();
    for byte in text.bytes() {
        if byte.is_ascii_alphanumeric() || matches!(byte, b'-' | b'.' | b'_') {
            out.push(char::from(byte));
        } else {
            // Writing to a String cannot fail.
            let _ = write!(out, "%{byte:02X}");
        }
    }
    out
}
