//! `oxyfolio answer`: keeps running, and answers one request a line with one line.
//!
//! `lines.rs` reads lines of bounded length, `request.rs` takes a line apart, `fields.rs` says what can be asked with which
//! fields, `values.rs` looks at them, `ask.rs` hands them to the command they belong to. The answer is what that command writes, byte for byte but for its line
//! breaks.

mod ask;
mod fields;
mod lines;
mod request;
mod schema;
mod values;

use std::io::{self, BufRead, BufWriter, Write};

use serde::Serialize;

use super::{
    CannotRun, Outcome,
    answers::{
        Frame,
        line::{About, Mistake, Refused, Written},
    },
    args::{Answer, Common},
    book,
    reader::Reader,
};
use ask::Session;
use lines::{Lines, MOST_BYTES, Read};
use request::Request;

pub use schema::requests;

/// As many mistakes of a line are told.
const MOST_MISTAKES: usize = 20;

/// Answers until the input ends.
pub fn run(command: &Answer, common: &Common) -> Result<Outcome, CannotRun> {
    // Lines for programs go past what takes colours out.
    let mut out = BufWriter::new(Reader(io::stdout().lock()));
    if command.schema {
        return schema::print(&mut out)
            .map(|()| Outcome::Fine)
            .map_err(cannot_write);
    }
    let session = match Session::open(common.rules.as_deref()) {
        Ok(session) => session,
        Err(rejected) => {
            // Nothing was asked, so there is nothing to answer.
            let rules = common.rules.as_deref().unwrap_or_else(|| "".as_ref());
            book::print_rejected(
                &rejected,
                rules,
                super::args::Format::Text,
                &mut anstream::stderr(),
            )?;
            return Ok(Outcome::Findings);
        }
    };
    match serve(&session, io::stdin().lock(), &mut out) {
        Ok(()) => Ok(Outcome::Fine),
        Err(Ended::Input(error)) => Err(CannotRun(format!("cannot read standard input: {error}"))),
        Err(Ended::Output(error)) => Err(cannot_write(error)),
    }
}

/// Answers the lines of an input about the rulebook in this program, as `oxyfolio answer` does with standard input and output:
/// each line that isn't empty gets one line.
///
/// # Errors
///
/// What the system says when the input can't be read or the output can't be written. A line that can't be used is no error: it is
/// answered with its mistakes.
///
/// ```
/// let asked = r#"{"id": 1, "ask": "duration", "cylinder": "D", "pressure": "1500 psi", "flow": "15 L/min"}"#;
/// let mut answered = Vec::new();
/// oxyfolio::cli::answer_lines(asked.as_bytes(), &mut answered)?;
/// let answer: serde_json::Value = serde_json::from_slice(&answered)?;
/// assert_eq!(answer["id"], 1);
/// assert_eq!(answer["answer"]["minutes"], 13);
/// # Ok::<(), std::io::Error>(())
/// ```
pub fn answer_lines(input: impl BufRead, mut output: impl Write) -> io::Result<()> {
    serve(&Session::compiled_in(), input, &mut output)
        .map_err(|(Ended::Input(error) | Ended::Output(error))| error)
}

/// Why answering ended before the input did.
enum Ended {
    Input(io::Error),
    Output(io::Error),
}

/// Answers until the input ends.
fn serve(session: &Session, input: impl BufRead, out: &mut impl Write) -> Result<(), Ended> {
    let mut lines = Lines::of(input);
    while let Some((number, read)) = lines.next().map_err(Ended::Input)? {
        answer(session, number, &read)
            .and_then(|line| {
                out.write_all(&line)?;
                out.flush()
            })
            .map_err(Ended::Output)?;
    }
    Ok(())
}

fn cannot_write(error: io::Error) -> CannotRun {
    CannotRun(format!("cannot write the answer: {error}"))
}

/// The line that answers a line.
fn answer(session: &Session, number: u64, read: &Read<'_>) -> io::Result<Vec<u8>> {
    let nameless = About {
        line: number,
        id: None,
    };
    let text = match read {
        Read::Line(text) => text,
        Read::TooLong => {
            let message =
                format!("expected at most {MOST_BYTES} bytes in a line, found more; ask in several lines");
            return refuse(session, nameless, vec![Mistake::at(MOST_BYTES + 1, message)]);
        }
        Read::NoText { column } => {
            let message = "expected text in UTF-8, found other bytes; write JSON in UTF-8".to_owned();
            return refuse(session, nameless, vec![Mistake::at(*column, message)]);
        }
    };
    let request = match Request::read(text) {
        Ok(request) => request,
        Err(mistake) => return refuse(session, nameless, vec![mistake]),
    };
    let about = About {
        id: request.id(),
        ..nameless
    };
    match ask::answer(session, &request) {
        Ok(told) => line(&Written {
            about,
            ask: told.ask,
            exit: told.exit,
            answer: &told.answer,
        }),
        Err(mistakes) => refuse(session, about, mistakes),
    }
}

fn refuse(session: &Session, about: About<'_>, mut errors: Vec<Mistake>) -> io::Result<Vec<u8>> {
    errors.sort_by_key(|mistake| mistake.column);
    let complete = errors.len() <= MOST_MISTAKES;
    errors.truncate(MOST_MISTAKES);
    line(&Refused {
        about,
        exit: 2,
        errors,
        complete,
        frame: Frame::of(&session.book),
    })
}

fn line<T: Serialize>(answer: &T) -> io::Result<Vec<u8>> {
    let mut line = serde_json::to_vec(answer)?;
    line.push(b'\n');
    Ok(line)
}
