//! The printed cards and sheets, taken apart again: every number, true size, the least type, fonts, tags, codes, nothing
//! outside or on top of something else. Needs typst and Debian's poppler-utils and qpdf; a machine without
//! them fails.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

mod common;
#[path = "cards/content.rs"]
mod content;
#[path = "cards/data.rs"]
mod data;
#[path = "cards/edition.rs"]
mod edition;
#[path = "cards/files.rs"]
mod files;
#[path = "cards/hostile.rs"]
mod hostile;
#[path = "cards/impose.rs"]
mod impose;
#[path = "cards/language.rs"]
mod language;
#[path = "cards/looks.rs"]
mod looks;
#[path = "cards/page.rs"]
mod page;
#[path = "cards/pdf.rs"]
mod pdf;
#[path = "cards/prevents.rs"]
mod prevents;
#[path = "cards/printed.rs"]
mod printed;
#[path = "cards/qr.rs"]
mod qr;
#[path = "cards/same.rs"]
mod same;
#[path = "cards/sheets.rs"]
mod sheets;
#[path = "cards/size.rs"]
mod size;
#[path = "cards/words.rs"]
mod words;
