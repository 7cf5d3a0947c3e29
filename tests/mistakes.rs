//! What a medical director sees after a mistake in the rulebook.
//!
//! Each test makes one slip of the pen in a copy of the demonstration rulebook and compares what the compiler says:
//! the code and the underlined text of every error, and the whole drawing as a snapshot, to be read by a person.
//! The place of an error is marked in the new text with `‹` and `›`, so nobody counts lines or columns.

#[cfg(test)]
#[path = "mistakes/book.rs"]
mod book;
#[cfg(test)]
#[path = "mistakes/by_hand.rs"]
mod by_hand;
#[cfg(test)]
#[path = "mistakes/cases.rs"]
mod cases;
#[cfg(test)]
#[path = "mistakes/chapters.rs"]
mod chapters;
#[cfg(test)]
#[path = "mistakes/codes.rs"]
mod codes;
#[cfg(test)]
#[path = "common/decided.rs"]
mod decided;
#[cfg(test)]
#[path = "mistakes/fences.rs"]
mod fences;
#[cfg(test)]
#[path = "mistakes/folder.rs"]
mod folder;
#[cfg(test)]
#[path = "mistakes/folder_mended.rs"]
mod folder_mended;
#[cfg(test)]
#[path = "common/followed.rs"]
mod followed;
#[cfg(test)]
#[path = "mistakes/generated.rs"]
mod generated;
#[cfg(test)]
#[path = "mistakes/guards.rs"]
mod guards;
#[cfg(test)]
#[path = "mistakes/hidden.rs"]
mod hidden;
#[cfg(test)]
#[path = "mistakes/keys.rs"]
mod keys;
#[cfg(test)]
#[path = "mistakes/misread.rs"]
mod misread;
#[cfg(test)]
#[path = "mistakes/names.rs"]
mod names;
#[cfg(test)]
#[path = "mistakes/orders.rs"]
mod orders;
#[cfg(test)]
#[path = "mistakes/quantities.rs"]
mod quantities;
#[cfg(test)]
#[path = "mistakes/rules.rs"]
mod rules;
#[cfg(test)]
#[path = "mistakes/scribbles.rs"]
mod scribbles;
#[cfg(test)]
#[path = "mistakes/yaml.rs"]
mod yaml;
