//! The medical director's desk: a page, served on this machine only, that shows a rulebook as a book and what an edit
//! of it means.
//!
//! `reading` is one reading of the folder, kept until the next; `watch` reads again when a file is saved; `server`
//! listens on loopback, `gate` turns away what comes from elsewhere, `routes` finds the page. The pages: `contents`,
//! `chapter` and `problems`, `search`, `order`, `trial`, `cards`, `since`. `page` is what all of them have about
//! their content.
//!
//! Nothing here writes into the rulebook: it is edited in any editor, and looked at here. Nothing clinical is worked out
//! here either: findings and minutes come from the checker, problems from the compiler.
//!
//! # Why are pages made whole on the server?
//!
//! So that every page works without script, has an address, and can be tested as text. The script fetches the page
//! that is shown again after a save and puts in what has changed.

mod cards;
mod chapter;
mod contents;
mod gate;
mod order;
mod page;
mod problems;
mod query;
mod reading;
mod routes;
mod search;
mod server;
mod since;
mod trial;
mod watch;

pub use server::{CannotServe, Options, Server};
