//! The names of the last runs, to tell a run that comes twice.

use std::collections::{HashSet, VecDeque};

/// How many names are kept.
pub const KEPT: usize = 65_536;

/// The last names, as hashes.
#[derive(Debug, Default)]
pub struct Window {
    order: VecDeque<u64>,
    known: HashSet<u64>,
}

impl Window {
    /// Notes a name; whether it was there.
    pub fn saw(&mut self, hash: u64) -> bool {
        if !self.known.insert(hash) {
            return true;
        }
        if self.order.len() == KEPT
            && let Some(oldest) = self.order.pop_front()
        {
            self.known.remove(&oldest);
        }
        self.order.push_back(hash);
        false
    }
}

/// A hash of a name; the same for every part of one pass.
pub fn hash(name: &str) -> u64 {
    use core::hash::Hasher as _;
    let mut hasher = std::hash::DefaultHasher::new();
    hasher.write(name.as_bytes());
    hasher.finish()
}
