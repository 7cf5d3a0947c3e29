//! A check of a set-up by the compiled guards: the book as far as checks need it.

use oxyfolio::{TABLES, hazard};

#[path = "../asked.rs"]
mod asked;
#[path = "../told.rs"]
mod told;

fn main() -> std::process::ExitCode {
    let names = told::Names {
        device: |name| TABLES.find_device(name),
        group: |name| TABLES.find_group(name),
        cylinder: |name| TABLES.find_cylinder(name),
        condition: |name| TABLES.find_condition(name),
    };
    told::main(hazard::Guards, &names)
}
