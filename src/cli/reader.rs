//! Who reads what the program writes may stop reading, as `| head` does. That is no error: the program ends without a word, with
//! the exit code that shells give to tools that end so. What was left unsaid may have been a finding, so the code isn't 0.

use std::{
    fmt::Display,
    io::{self, ErrorKind, Write},
    sync::atomic::{AtomicBool, Ordering},
};

/// 128 and the number of the signal that ends other tools here, SIGPIPE.
pub const GONE: u8 = 141;

/// Set for good once standard output had no reader any more.
static IS_GONE: AtomicBool = AtomicBool::new(false);

/// Whether standard output has lost its reader.
pub fn is_gone() -> bool {
    IS_GONE.load(Ordering::Relaxed)
}

/// Standard output, which notices when its reader goes away.
pub struct Reader<W>(pub W);

impl<W: Write> Write for Reader<W> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        self.0.write(bytes).inspect_err(notice)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.0.flush().inspect_err(notice)
    }
}

fn notice(error: &io::Error) {
    if error.kind() == ErrorKind::BrokenPipe {
        IS_GONE.store(true, Ordering::Relaxed);
    }
}

/// Tells people something on standard error. Where nobody reads that, nobody can be told: the exit code still says it.
pub fn aside(words: impl Display) {
    let _unheard = write!(anstream::stderr(), "{words}");
}
