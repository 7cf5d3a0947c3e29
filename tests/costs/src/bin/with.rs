//! A check of a set-up by the compiled guards: the book as far as checks need it.

#[path = "../told.rs"]
mod told;

fn main() -> std::process::ExitCode {
    told::main(oxyfolio::hazard::Guards)
}
