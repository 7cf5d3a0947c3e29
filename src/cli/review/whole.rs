//! Lines that are written whole, also when the program is interrupted.
//!
//! Whoever takes findings in a line at a time must not get half of one. What is given here in one piece reaches the output in
//! one piece, and an interrupt (Ctrl-C) waits until that is done. What was not written yet is lost, and the exit code says so.

use std::{
    io::{self, Write},
    process,
    sync::{Mutex, PoisonError, TryLockError},
    thread,
    time::{Duration, Instant},
};

/// Held while a piece is on its way out.
static WRITING: Mutex<()> = Mutex::new(());

/// What shells expect of a program that was interrupted: 128 and the signal's number.
const INTERRUPTED: i32 = 130;

/// A reader that takes nothing for so long can't be waited for.
const PATIENCE: Duration = Duration::from_secs(2);

/// As many bytes are kept before they are written.
const KEPT: usize = 1 << 16;

/// From now on an interrupt ends the program between two pieces.
pub fn end_between_lines() -> Result<(), ctrlc::Error> {
    ctrlc::set_handler(|| {
        let asked = Instant::now();
        while asked.elapsed() < PATIENCE {
            match WRITING.try_lock() {
                Err(TryLockError::WouldBlock) => thread::sleep(Duration::from_millis(1)),
                // Held to the end: nothing is written after it.
                _held => process::exit(INTERRUPTED),
            }
        }
        process::exit(INTERRUPTED)
    })
}

/// Keeps pieces and writes them together.
pub struct Whole<W> {
    out: W,
    kept: Vec<u8>,
}

impl<W: Write> Whole<W> {
    pub fn new(out: W) -> Self {
        Self {
            out,
            kept: Vec::with_capacity(KEPT),
        }
    }
}

impl<W: Write> Write for Whole<W> {
    /// Takes a piece whole.
    fn write(&mut self, piece: &[u8]) -> io::Result<usize> {
        if !self.kept.is_empty() && self.kept.len() + piece.len() > KEPT {
            self.flush()?;
        }
        self.kept.extend_from_slice(piece);
        Ok(piece.len())
    }

    fn flush(&mut self) -> io::Result<()> {
        let _writing = WRITING.lock().unwrap_or_else(PoisonError::into_inner);
        let written = self.out.write_all(&self.kept).and_then(|()| self.out.flush());
        // A large piece doesn't keep its room, and what failed once isn't tried again.
        self.kept.clear();
        self.kept.shrink_to(KEPT);
        written
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Remembers what it was given at once.
    #[derive(Default)]
    struct Given(Vec<Vec<u8>>);

    impl Write for Given {
        fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
            self.0.push(bytes.to_vec());
            Ok(bytes.len())
        }

        fn flush(&mut self) -> io::Result<()> {
            Ok(())
        }
    }

    #[test]
    fn every_piece_leaves_whole() {
        let mut whole = Whole::new(Given::default());
        let lines: Vec<String> = (0..5_000)
            .map(|line| format!("{line} {}\n", "x".repeat(line % 90)))
            .collect();
        for line in &lines {
            whole.write_all(line.as_bytes()).unwrap();
        }
        let long = format!("{}\n", "y".repeat(3 * KEPT));
        whole.write_all(long.as_bytes()).unwrap();
        whole.flush().unwrap();
        assert!(whole.out.0.len() > 3);
        for given in &whole.out.0 {
            assert!(given.is_empty() || given.ends_with(b"\n"));
        }
        assert_eq!(whole.out.0.concat(), (lines.concat() + &long).as_bytes());
    }
}
