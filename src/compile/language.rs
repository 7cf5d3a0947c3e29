#![doc = include_str!("language.md")]
