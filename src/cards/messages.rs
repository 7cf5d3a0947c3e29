//! The words that cards and sheets add to the book's own, in each language: data, in `cards/messages/`.

use std::collections::BTreeMap;

use serde::Deserialize;

use crate::book::Language;

/// The words of one language.
#[derive(Clone, Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Messages {
    /// The two sentences that every card carries: [`ALWAYS_DISCLAIMERS`](crate::book::ALWAYS_DISCLAIMERS).
    pub disclaimers: [String; 2],
    /// What every card about oxygen under pressure carries: [`ALWAYS_CAUTIONS`](crate::book::ALWAYS_CAUTIONS).
    pub cautions: [String; 3],
    /// Everything else, by key; values go where a name stands in braces.
    pub words: BTreeMap<String, String>,
}

/// A language's file as it is compiled in.
#[must_use]
pub const fn file(language: Language) -> &'static str {
    match language {
        Language::English => include_str!("../../cards/messages/en.json"),
        Language::German => include_str!("../../cards/messages/de.json"),
    }
}

impl Messages {
    /// The words of a language.
    ///
    /// # Errors
    ///
    /// What is wrong with the file; the files that are compiled in are held right by tests.
    pub fn of(language: Language) -> Result<Self, String> {
        serde_json::from_str(file(language))
            .map_err(|error| format!("cards/messages/{}.json: {error}", language.word()))
    }

    /// A word or sentence; its key where the file lacks it, so that the lack is seen.
    #[must_use]
    pub fn get(&self, key: &str) -> String {
        self.words.get(key).cloned().unwrap_or_else(|| key.to_owned())
    }

    /// A sentence with values in it.
    #[must_use]
    pub fn with(&self, key: &str, values: &[(&str, &str)]) -> String {
        // One pass, so that a value that looks like a name in braces stays as it is.
        let sentence = self.get(key);
        let mut out = String::with_capacity(sentence.len());
        let mut rest = sentence.as_str();
        while let Some((before, after)) = rest.split_once('{') {
            out.push_str(before);
            let Some((name, tail)) = after.split_once('}') else {
                out.push('{');
                rest = after;
                continue;
            };
            match values.iter().find(|(known, _)| *known == name) {
                Some((_, value)) => out.push_str(value),
                None => {
                    out.push('{');
                    out.push_str(name);
                    out.push('}');
                }
            }
            rest = tail;
        }
        out.push_str(rest);
        out
    }
}
