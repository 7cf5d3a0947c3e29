//! What a person does who follows a hint to the letter, mistake by mistake: where it says what to do and not what to write.

use crate::followed::Deed;

#[path = "by_hand/meaning.rs"]
mod meaning;
#[path = "by_hand/proved.rs"]
mod proved;
#[path = "by_hand/words.rs"]
mod words;

/// All of them.
pub const DEEDS: [&[Deed]; 3] = [words::DEEDS, meaning::DEEDS, proved::DEEDS];
