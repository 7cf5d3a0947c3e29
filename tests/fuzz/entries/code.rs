//! Any text as a card's code: what was read is read again from its print, and belongs to the one book that has it.

use oxyfolio::{RULEBOOK, cards::code::Code, compile::digest::ALPHABET};

/// Reads the bytes as `oxyfolio cards --matches` reads its argument.
pub fn run(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    match text.parse::<Code>() {
        Ok(code) => {
            let printed = code.to_string();
            assert_eq!(printed.parse().as_ref(), Ok(&code), "{text:?}");
            assert_eq!(printed.len(), 9);
            assert!(
                printed
                    .bytes()
                    .all(|sign| sign == b'-' || ALPHABET.contains(&sign)),
                "{printed}"
            );
            assert_eq!(code.belongs_to(&RULEBOOK), printed == *RULEBOOK.short_digest);
        }
        Err(invalid) => assert!(!invalid.to_string().is_empty()),
    }
}
