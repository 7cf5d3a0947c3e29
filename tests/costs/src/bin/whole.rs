//! The same check by the whole book, as for a book that is read when the program runs.

use oxyfolio::RULEBOOK;

#[path = "../asked.rs"]
mod asked;
#[path = "../told.rs"]
mod told;

fn main() -> std::process::ExitCode {
    let names = told::Names {
        device: |name| RULEBOOK.find_device(name),
        group: |name| RULEBOOK.find_group(name),
        cylinder: |name| RULEBOOK.find_cylinder(name),
        condition: |name| RULEBOOK.find_condition(name),
    };
    told::main(&RULEBOOK, &names)
}
