#![doc = include_str!("ways.md")]
