//! Wordings that changed.
//!
//! A text may quote values (`{residual-pressure}`). Where only a quoted value moved, it is told with the rule that holds
//! it, and not again as a changed wording: texts are compared as they were written.

use super::change::Changes;

impl Changes<'_> {
    /// A text of the rule looked at: at `path` in its block, and as it reads in the old and the new edition.
    pub(super) fn text(&mut self, what: &str, path: &[&str], old: &str, new: &str) {
        if old == new {
            return;
        }
        let (was, is) = self.written(path);
        if let ([was], [is]) = (was.as_slice(), is.as_slice())
            && was == is
        {
            return;
        }
        let some = |text: &str| (!text.is_empty()).then(|| text.to_owned());
        self.reworded(what, some(old), some(new));
    }

    /// A list of texts.
    pub(super) fn texts(
        &mut self,
        what: &str,
        path: &[&str],
        old: &[crate::book::Text],
        new: &[crate::book::Text],
    ) {
        if old == new {
            return;
        }
        let (was, is) = self.written(path);
        let (was, is) = (keyed(old, &was), keyed(new, &is));
        let missing = |from: &[(&str, &str)], other: &[(&str, &str)]| -> Vec<String> {
            from.iter()
                .filter(|(key, _)| !other.iter().any(|(known, _)| known == key))
                .map(|(_, text)| (*text).to_owned())
                .collect()
        };
        let (gone, added) = (missing(&was, &is), missing(&is, &was));
        if gone.len() == added.len() {
            // As many as before: reworded, one for one.
            for (gone, added) in gone.iter().zip(&added) {
                self.reworded(what, Some(gone.clone()), Some(added.clone()));
            }
        } else {
            gone.into_iter()
                .for_each(|text| self.reworded(what, Some(text), None));
            added
                .into_iter()
                .for_each(|text| self.reworded(what, None, Some(text)));
        }
        let kept = |from: &[(&str, &str)], other: &[(&str, &str)]| -> Vec<String> {
            from.iter()
                .filter(|(key, _)| other.iter().any(|(known, _)| known == key))
                .map(|(key, _)| (*key).to_owned())
                .collect()
        };
        let (one, other) = (kept(&was, &is), kept(&is, &was));
        if one != other {
            self.reworded(
                format!("order of {what}"),
                Some(one.join(" ")),
                Some(other.join(" ")),
            );
        }
    }

    fn written(&self, path: &[&str]) -> (Vec<String>, Vec<String>) {
        let Some((kind, rule)) = self.rule() else {
            return (Vec::new(), Vec::new());
        };
        let of = |edition: &crate::compile::edition::Edition| {
            let texts = edition.texts(kind, &rule.id, path);
            texts.into_iter().map(str::to_owned).collect()
        };
        (of(self.old), of(self.new))
    }
}

/// Every text with what it is known by: as it was written, where that is known.
fn keyed<'t>(texts: &'t [crate::book::Text], written: &'t [String]) -> Vec<(&'t str, &'t str)> {
    let same = texts.len() == written.len();
    texts
        .iter()
        .enumerate()
        .map(|(index, text)| {
            let key = written.get(index).filter(|_| same);
            (key.map_or(text.as_str(), String::as_str), text.as_str())
        })
        .collect()
}
