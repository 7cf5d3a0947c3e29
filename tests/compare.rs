//! What an edit means: each kind of change made by a small edit of the demo rulebook, and told in words.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]

mod common;
#[path = "common/repository.rs"]
mod repository;

#[path = "compare/books.rs"]
mod books;
#[path = "compare/changes.rs"]
mod changes;
#[path = "compare/git.rs"]
mod git;
#[path = "compare/grid.rs"]
mod grid;
#[path = "compare/mirror.rs"]
mod mirror;
#[path = "compare/program.rs"]
mod program;
#[path = "compare/report.rs"]
mod report;
