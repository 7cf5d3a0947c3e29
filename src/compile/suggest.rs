//! Words of messages: the nearest known name for one that isn't known, names in a row, counts.

/// Nothing longer is compared: a name of this length isn't mistyped, it is another text.
const LONGEST: usize = 64;

/// The known name most like `word`, where one is like enough to be a slip of the pen.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    if word.len() > LONGEST {
        return None;
    }
    let word = word.to_lowercase();
    // In a word of four letters two others make another word: a mask is no case.
    let allowed = |name: &str| match name.len().max(word.len()) {
        0..=4 => 1,
        length => 1 + length / 4,
    };
    known
        .into_iter()
        // Lengths alone rule most names out, at no cost. A character has at most four bytes.
        .filter(|name| name.len() <= LONGEST && name.len().abs_diff(word.len()) <= 4 * allowed(name))
        .map(|name| (strsim::damerau_levenshtein(&word, &name.to_lowercase()), name))
        // Another letter or another digit is another size, not a slip of the pen.
        .filter(|(distance, name)| {
            let shorter = word.chars().count().min(name.chars().count());
            *distance <= allowed(name) && *distance < shorter && digits(&word) == digits(name)
        })
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, name)| name)
}

fn digits(text: &str) -> String {
    text.chars().filter(char::is_ascii_digit).collect()
}

/// As many names are offered where none is like the one that was written.
const OFFERED: usize = 12;

/// What to write for a name that isn't known: the one most like it, or what there is to choose from, after `has`.
///
/// ```
/// use oxyfolio::compile::suggest::instead;
/// assert_eq!(instead("opne", ["open", "close"], "its steps are"), "did you mean `open`?");
/// assert_eq!(instead("hammer", ["open", "close"], "its steps are"), "its steps are `open` and `close`");
/// ```
pub fn instead<'a>(word: &str, known: impl IntoIterator<Item = &'a str>, has: &str) -> String {
    let known: Vec<&str> = known.into_iter().collect();
    match nearest(word, known.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if known.is_empty() => format!("{has} none"),
        None => match known.get(OFFERED..) {
            Some(more) if !more.is_empty() => {
                let named: Vec<String> = known
                    .iter()
                    .take(OFFERED)
                    .map(|name| format!("`{name}`"))
                    .collect();
                format!("{has} {} and {} more", named.join(", "), more.len())
            }
            _ => format!("{has} {}", listed(known, "and")),
        },
    }
}

/// Names joined for a sentence: "`a`, `b` or `c`".
pub fn listed<'a>(names: impl IntoIterator<Item = &'a str>, joined_by: &str) -> String {
    let names: Vec<String> = names.into_iter().map(|name| format!("`{name}`")).collect();
    match names.split_last() {
        None => String::new(),
        Some((last, [])) => last.clone(),
        Some((last, rest)) => format!("{} {joined_by} {last}", rest.join(", ")),
    }
}

/// A count with its word.
///
/// ```
/// use oxyfolio::compile::suggest::counted;
/// assert_eq!(counted(1, "policy", "policies"), "1 policy");
/// assert_eq!(counted(0, "policy", "policies"), "0 policies");
/// ```
pub fn counted<N: core::fmt::Display + PartialEq + From<u8>>(count: N, one: &str, more: &str) -> String {
    let word = if count == N::from(1) { one } else { more };
    format!("{count} {word}")
}
