//! What to write instead: the words and signs that people bring from other languages, each with ours.

use core::ops::Range as Bytes;

use super::{
    super::{
        names::Table,
        suggest::{instead, listed, nearest},
        written,
    },
    Vocabulary,
    types::{dimension_of, dimension_of_measure},
    vocabulary::{COMPARISONS, DEVICE_IS, GROUP_IS, NAMED_VALUES},
    words::Words,
    written::Mistake,
};
use crate::book::{Fact, Measure};

/// Other spellings of `and`, `or` and `not`.
const JOINING: [(&str, &str); 15] = [
    ("and", "and"),
    ("&", "and"),
    ("∧", "and"),
    (",", "and"),
    (";", "and"),
    ("+", "and"),
    ("but", "and"),
    ("with", "and"),
    ("or", "or"),
    ("|", "or"),
    ("∨", "or"),
    ("without", "and not"),
    ("unless", "and not"),
    ("except", "and not"),
    ("not", "and not"),
];

/// Other spellings of comparisons.
const COMPARING: [(&str, &str); 25] = [
    ("≤", "<="),
    ("⩽", "<="),
    ("≥", ">="),
    ("⩾", ">="),
    ("≠", "!="),
    ("≈", "="),
    (":", "="),
    ("is", "="),
    ("equals", "="),
    ("equal", "="),
    ("of", "="),
    ("below", "<"),
    ("under", "<"),
    ("less", "<"),
    ("lower", "<"),
    ("above", ">"),
    ("over", ">"),
    ("more", ">"),
    ("greater", ">"),
    ("higher", ">"),
    ("exceeds", ">"),
    ("between", "in"),
    ("within", "in"),
    ("from", "in"),
    ("∈", "in"),
];

/// Signs of two characters that mean one of ours.
const DOUBLED: [(&str, &str, &str); 7] = [
    ("=", "=", "="),
    ("=", "<", "<="),
    ("=", ">", ">="),
    ("<", ">", "!="),
    ("<", "=", "<="),
    (">", "=", ">="),
    ("=", "!", "!="),
];

fn in_table(table: &[(&str, &'static str)], word: &str) -> Option<&'static str> {
    let word = word.to_lowercase();
    table
        .iter()
        .find(|(other, _)| *other == word)
        .map(|(_, ours)| *ours)
}

/// A condition is followed by something that can't follow it.
pub fn after_condition(words: &Words<'_>, word: Bytes<usize>, end: &str) -> Mistake {
    let found = words.piece(&word);
    let doubled = ["&&", "||"].iter().any(|pair| {
        words
            .text()
            .get(word.start..)
            .is_some_and(|rest| rest.starts_with(pair))
    });
    let at = word.start..word.end + usize::from(doubled);
    let mistake = Mistake::new(
        "unexpected-word",
        at.clone(),
        format!("expected `and`, `or` or {end}, found `{}`", words.piece(&at)),
    );
    if found == ")" {
        return mistake.hint("take out the bracket, or open one before");
    }
    let second = words.peek_second().map_or("", |at| words.piece(&at));
    if ["=", "is"].contains(&found) && ["=", "yes", "no", "true", "false", "not"].contains(&second) {
        return mistake.hint("an observation stands alone when it is so, and after `not` when it isn't");
    }
    if COMPARISONS.iter().any(|(sign, _)| *sign == found) {
        return mistake.hint(
            "compare twice, joined by `and`, and name what is measured each time; or write `in LOW to HIGH`",
        );
    }
    match in_table(&JOINING, found) {
        Some(ours) => mistake.hint(format!("write `{ours}`")),
        None => mistake.hint("write `and` or `or` before it, or take it out"),
    }
}

/// A measure without a comparison after it.
pub fn no_comparison(words: &Words<'_>, measure: Measure) -> Mistake {
    let Some(at) = words.peek() else {
        return words.unfinished(&format!("a comparison after `{}`", measure.words()));
    };
    let (found, measure) = (words.piece(&at), measure.words());
    let second = words.peek_second().map_or("", |at| words.piece(&at));
    let hint = match (found, second) {
        ("at", "least") => "write `>=`".to_owned(),
        ("at", "most") => "write `<=`".to_owned(),
        ("is" | "not", "not" | "in") => format!("write `{measure} != …` or `not {measure} in …`"),
        ("is", "below" | "under" | "less" | "lower") => "write `<`".to_owned(),
        ("is", "above" | "over" | "more" | "greater" | "higher") => "write `>`".to_owned(),
        _ => match in_table(&COMPARING, found) {
            Some(ours) => format!("write `{ours}`"),
            None => "write `=`, `<`, `<=`, `>`, `>=`, `!=` or `in`".to_owned(),
        },
    };
    Mistake::new(
        "missing-comparison",
        at,
        format!("expected a comparison after `{measure}`, found `{found}`"),
    )
    .hint(hint)
}

/// A second sign where a quantity should be: `==`, `=<`.
pub fn second_sign(mut mistake: Mistake, sign: &str, words: &Words<'_>) -> Mistake {
    let found = words.text().get(mistake.at.clone()).unwrap_or("");
    let doubled = DOUBLED
        .iter()
        .find(|(first, second, _)| *first == sign && found.starts_with(*second));
    let Some((_, second, ours)) = doubled else {
        return mistake;
    };
    // Both signs are underlined, for ours takes the place of both.
    let before = words.text().get(..mistake.at.start).unwrap_or("").trim_end();
    if before.ends_with(sign) {
        mistake.at = before.len() - sign.len()..mistake.at.start + second.len();
    }
    mistake.hint(format!("write `{ours}`"))
}

/// Not the id of a device or group.
pub fn unknown_identity(
    words: &Words<'_>,
    word: Bytes<usize>,
    phrase: &str,
    what: &str,
    table: &Table,
) -> Mistake {
    let name = words.piece(&word);
    let mut mistake = Mistake::new(
        "unknown-name",
        word.clone(),
        format!("expected the id of a {what}, found `{name}`"),
    );
    if name.eq_ignore_ascii_case("not") {
        // All that the hint takes the place of is underlined.
        let before = words.text().get(..word.start).unwrap_or("").trim_end();
        if before.ends_with(phrase) {
            mistake.at.start = before.len() - phrase.len();
        }
        let second = words.peek_second();
        let id = second.clone().map_or("", |at| words.piece(&at));
        let id = table.index(id).map_or("ID", |_| id);
        if let Some(second) = second
            && id != "ID"
        {
            mistake.at.end = second.end;
        }
        return mistake.hint(format!("write `not {phrase} {id}`"));
    }
    mistake.hint(instead(name, table.names(), "the book defines"))
}

/// Not something a measure can be compared with.
pub fn unknown_value(measure: Measure, name: &str, at: Bytes<usize>, vocabulary: &Vocabulary<'_>) -> Mistake {
    let mistake = Mistake::new(
        "unknown-name",
        at,
        format!("expected a quantity or the id of a policy, found `{name}`"),
    );
    if name == "target" {
        return mistake.hint("write `spo2 < target.low` or `spo2 > target.high`");
    }
    if let Some((owner, end @ ("least-flow" | "most-flow"))) = name.rsplit_once('.')
        && vocabulary.names.devices.index(owner).is_some()
    {
        return mistake.hint(format!(
            "a guard speaks of the device in use: write `device is {owner} and flow … device.{end}`"
        ));
    }
    let known = NAMED_VALUES.iter().map(|value| value.words);
    match nearest(name, known.chain(vocabulary.names.policies.names())) {
        Some(near) => mistake.hint(format!("did you mean `{near}`?")),
        None => {
            let fits = |value| dimension_of(value) == Some(dimension_of_measure(measure));
            let fitting: Vec<&str> = vocabulary
                .policies
                .iter()
                .filter(|policy| fits(&policy.value))
                .map(|policy| &*policy.rule.id)
                .collect();
            if fitting.is_empty() {
                return mistake.hint("write a quantity: no policy is one that fits here");
            }
            mistake.hint(format!(
                "write a quantity, or a policy that fits here: {}",
                listed(fitting, "or")
            ))
        }
    }
}

/// Not a condition: a slip of the pen, a comparison the wrong way round, or a word a guard can't speak of.
pub fn unknown(words: &Words<'_>, word: Bytes<usize>, vocabulary: &Vocabulary<'_>) -> Mistake {
    let found = words.piece(&word);
    if let Some(mistake) = turned_round(words, &word, vocabulary) {
        return mistake;
    }
    let unknown = |at: Bytes<usize>| {
        let found = words.piece(&at);
        Mistake::new(
            "unknown-observation",
            at,
            format!("expected something that can be observed, found `{found}`"),
        )
    };
    if found == "!" || found.eq_ignore_ascii_case("not") {
        return unknown(word).hint("write `not`");
    }
    if let Some(joining @ ("and" | "or")) = in_table(&JOINING, found) {
        return unknown(word).hint(format!("write a condition on both sides of `{joining}`"));
    }
    if found == ")" {
        return unknown(word).hint("write a condition before the bracket closes");
    }
    let known: Vec<&str> = Fact::ALL
        .iter()
        .map(|fact| fact.words())
        .chain(Measure::ALL.iter().map(|measure| measure.words()))
        .chain(vocabulary.names.conditions.names())
        .chain([DEVICE_IS, GROUP_IS])
        .collect();
    // A phrase is compared as a phrase: as many words as the known one has.
    let phrase = |count: usize| {
        let mut reader = *words;
        let mut end = word.end;
        for next in core::iter::from_fn(|| {
            let next = reader.peek()?;
            reader.go_to(next.end);
            Some(next)
        })
        .take(count)
        {
            end = next.end;
        }
        word.start..end
    };
    let near = (1..=3).rev().find_map(|count| {
        let at = phrase(count);
        let same_length = known
            .iter()
            .copied()
            .filter(|name| name.split(' ').count() == count);
        nearest(words.piece(&at), same_length).map(|near| (at, near))
    });
    match near {
        Some((at, near)) => unknown(at).hint(format!("did you mean `{near}`?")),
        None => unknown(word).hint(format!(
            "a guard can speak of {}",
            listed(known.iter().copied(), "and")
        )),
    }
}

/// `88 % < spo2`, and `88 % < spo2 < 92 %`: what is measured comes first.
fn turned_round(words: &Words<'_>, word: &Bytes<usize>, vocabulary: &Vocabulary<'_>) -> Option<Mistake> {
    let mut reader = *words;
    let value = value(&mut reader, vocabulary)?;
    let sign = sign(&mut reader)?;
    let measure = *Measure::ALL.iter().find(|measure| reader.take(measure.words()))?;
    let name = measure.words();
    let turned = match sign {
        "<" => ">",
        "<=" => ">=",
        ">" => "<",
        ">=" => "<=",
        same => same,
    };
    let mut instead = format!("{name} {turned} {value}");
    let mut end = reader.at();
    if let Some(second) = self::sign(&mut reader)
        && let Some(other) = self::value(&mut reader, vocabulary)
    {
        instead = format!("{instead} and {name} {second} {other}");
        end = reader.at();
    }
    Some(
        Mistake::new(
            "value-before-measure",
            word.start..end,
            format!("expected what is measured first, found `{value}`"),
        )
        .hint(format!("write `{instead}`")),
    )
}

/// A value as it is written, if one comes next.
fn value<'a>(reader: &mut Words<'a>, vocabulary: &Vocabulary<'_>) -> Option<&'a str> {
    let (start, word) = (reader.start(), reader.peek()?);
    let name = reader.piece(&word);
    let owner = name.rsplit_once('.').map_or(name, |(owner, _)| owner);
    let named = NAMED_VALUES.iter().any(|value| value.words == name)
        || vocabulary.names.policies.index(owner).is_some();
    let end = if named {
        word.end
    } else {
        reader.at() + written::leading(reader.rest()).ok()?.1
    };
    reader.go_to(end);
    reader.text().get(start..end)
}

fn sign(reader: &mut Words<'_>) -> Option<&'static str> {
    COMPARISONS
        .iter()
        .map(|(sign, _)| *sign)
        .find(|sign| reader.take(sign))
}
