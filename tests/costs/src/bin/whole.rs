//! The same check by the whole book, as for a book that is read when the program runs.

#[path = "../told.rs"]
mod told;

fn main() -> std::process::ExitCode {
    told::main(&oxyfolio::RULEBOOK)
}
