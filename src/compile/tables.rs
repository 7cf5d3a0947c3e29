#![doc = include_str!("tables.md")]
