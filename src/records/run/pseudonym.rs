//! Pseudonyms: the same name gives the same sixteen digits, and only who has the key can find out which.

use hmac::{Hmac, KeyInit as _, Mac as _};
use sha2::Sha256;

/// The least bytes of a key.
pub const LEAST_KEY: usize = 16;
/// The most bytes of a key file: a larger one is another file.
pub const MOST_KEY: usize = 64 << 10;

/// Hashes names with a secret key (HMAC-SHA-256, RFC 2104), so that runs and crews can be told apart and not found out.
#[derive(Clone)]
pub struct Pseudonyms {
    keyed: Hmac<Sha256>,
}

/// A key of too few or too many bytes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct UnfitKey {
    found: usize,
}

impl core::fmt::Display for UnfitKey {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(
            f,
            "expected a key of {LEAST_KEY} to {MOST_KEY} bytes, found {}",
            self.found
        )
    }
}

impl core::error::Error for UnfitKey {}

/// Never shows the key.
impl core::fmt::Debug for Pseudonyms {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str("Pseudonyms")
    }
}

impl Pseudonyms {
    /// With the bytes of a key file, as they are: a line end at its end counts.
    ///
    /// # Errors
    ///
    /// [`UnfitKey`] for fewer than 16 bytes, which could be guessed, or more than 64 KiB.
    pub fn new(key: &[u8]) -> Result<Self, UnfitKey> {
        let unfit = UnfitKey { found: key.len() };
        if !(LEAST_KEY..=MOST_KEY).contains(&key.len()) {
            return Err(unfit);
        }
        let keyed = Hmac::<Sha256>::new_from_slice(key).map_err(|_| unfit)?;
        Ok(Self { keyed })
    }

    /// The pseudonym of a name: the first sixteen hexadecimal digits of its hash.
    ///
    /// ```
    /// use oxyfolio::records::run::Pseudonyms;
    /// // RFC 4231, test case 1: a key of twenty bytes 0x0b.
    /// let pseudonyms = Pseudonyms::new(&[0x0b; 20])?;
    /// assert_eq!(pseudonyms.of("Hi There"), "b0344c61d8db3853");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn of(&self, name: &str) -> String {
        let mut hash = self.keyed.clone();
        hash.update(name.as_bytes());
        let bytes = hash.finalize().into_bytes();
        let digit = |half: u8| char::from_digit(u32::from(half), 16).unwrap_or('0');
        bytes
            .iter()
            .take(8)
            .flat_map(|byte| [digit(byte >> 4), digit(byte & 15)])
            .collect()
    }
}
