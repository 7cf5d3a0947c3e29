//! Connections between cylinder and regulator.

use super::{List, Rule, Text};

/// A connection, and whether it may be mated.
#[derive(Clone, Debug, PartialEq)]
pub struct Connection {
    /// Name, place and reason.
    pub rule: Rule,
    /// The gas it belongs to.
    pub gas: Text,
    /// Pin positions, 1 to 7, where it has pins.
    pub pins: List<u8>,
    /// Its thread, where it has one.
    pub thread: Option<Text>,
    /// Its number in its standard.
    pub number: Option<Text>,
    /// Whether it may be mated: only oxygen's.
    pub may_be_mated: bool,
    /// What else to know.
    pub note: Option<Text>,
}
