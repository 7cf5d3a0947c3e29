//! Links to headings and chapters, and chapters named by their number.

use super::{
    super::{source::Span, suggest::nearest, yaml::Value},
    Lint, Room,
    places::{self, RuleRef},
};

/// A chapter named by a number the book hasn't.
pub const CHAPTER_NOT_THERE: Lint = Lint::note("chapter-not-there");
/// A link to a heading or a chapter that isn't there.
pub const BROKEN_LINK: Lint = Lint::error("broken-link");

pub fn look(room: &mut Room<'_>) {
    links(room);
    chapters(room);
}

fn links(room: &mut Room<'_>) {
    let prose = room.prose;
    for link in &prose.links {
        // Only links within the book are followed.
        let (path, anchor) = match link.to.split_once('#') {
            Some((path, anchor)) => (path, Some(anchor)),
            None => (link.to.as_str(), None),
        };
        let path = path.strip_prefix("./").unwrap_or(path);
        if path.contains(['/', ':', '?']) || !(path.is_empty() || path.ends_with(".md")) {
            continue;
        }
        let owners = link.at.owners(room.places);
        let chapter = if path.is_empty() {
            Some(link.at.file.0)
        } else {
            room.sources
                .iter()
                .find(|(_, source)| source.name == path)
                .map(|(file, _)| file.0)
        };
        let Some(chapter) = chapter else {
            let near =
                nearest(path, room.sources.iter().map(|(_, source)| source.name.as_str())).map(str::to_owned);
            let found = room.find(
                BROKEN_LINK,
                &owners,
                link.span,
                format!("expected a link to a chapter of the book, found `{path}`"),
            );
            found.hint(match near {
                Some(near) => format!("did you mean `{near}`?"),
                None => "write the chapter's file name as it stands in the folder".to_owned(),
            });
            continue;
        };
        let anchors = prose.anchors.get(chapter);
        if let (Some(anchor), Some(anchors)) = (anchor, anchors)
            && !anchor.is_empty()
            && !anchors.contains(anchor)
        {
            let near = nearest(anchor, anchors.iter().map(String::as_str));
            room.find(
                BROKEN_LINK,
                &owners,
                link.span,
                format!("expected a link to a heading of the chapter, found `#{anchor}`"),
            )
            .hint(match near {
                Some(near) => format!("did you mean `#{near}`?"),
                None => "write the heading in lower case, with a hyphen for each space".to_owned(),
            });
        }
    }
}

fn chapters(room: &mut Room<'_>) {
    let last = room.sources.iter().count();
    let (prose, places, sources) = (room.prose, room.places, room.sources);
    let mut wrong: Vec<(Vec<RuleRef>, Span, usize)> = Vec::new();
    for stretch in &prose.stretches {
        for (number, at) in numbers(&stretch.text) {
            if number == 0 || number > last {
                wrong.push((stretch.at.owners(places), stretch.span(sources, at), number));
            }
        }
    }
    for (rule, written) in places.all() {
        places::texts(written, &mut |_, node| {
            let Value::Text { text, verbatim } = &node.value else {
                return;
            };
            for (number, at) in numbers(text) {
                if number == 0 || number > last {
                    let span = verbatim.map_or(node.span, |start| {
                        sources.span(node.span.file, start + at.start..start + at.end)
                    });
                    wrong.push((vec![rule], span, number));
                }
            }
        });
    }
    for (owners, at, number) in wrong {
        room.find(
            CHAPTER_NOT_THERE,
            &owners,
            at,
            format!("found chapter {number}, and the book has {last}"),
        )
        .hint("was a chapter taken out? Chapters are counted by their file names");
    }
}

/// The numbers of chapters named in a text: `chapter 5`, `chapters 4 to 6`, `chapters 4, 5 and 6`.
fn numbers(text: &str) -> Vec<(usize, core::ops::Range<usize>)> {
    let mut found = Vec::new();
    for (start, _) in text.match_indices("hapter") {
        let before = text.get(..start).unwrap_or("");
        if !before.ends_with(['c', 'C']) {
            continue;
        }
        let after = start + "hapter".len();
        let rest = text.get(after..).unwrap_or("");
        let mut at = after + usize::from(rest.starts_with('s'));
        let mut first = true;
        loop {
            let rest = text.get(at..).unwrap_or("");
            let lead = if first {
                rest.len() - rest.trim_start().len()
            } else {
                let joined = [" and ", ", and ", ", ", " to ", " or ", "–", "-"];
                match joined.into_iter().find(|joined| rest.starts_with(joined)) {
                    Some(joined) => joined.len(),
                    None => break,
                }
            };
            let digits = rest.get(lead..).unwrap_or("");
            let length = digits.bytes().take_while(u8::is_ascii_digit).count();
            // `chapter5` and `chapters 4.2` are something else; so is the 10 in `chapter 4, 10 minutes`.
            if (first && lead == 0) || length == 0 || length > 6 {
                break;
            }
            let plural = rest.starts_with('s') || text.get(after..).is_some_and(|rest| rest.starts_with('s'));
            if !first && !plural {
                break;
            }
            let Ok(number) = digits.get(..length).unwrap_or("").parse() else {
                break;
            };
            let from = if first { start - 1 } else { at + lead };
            found.push((number, from..at + lead + length));
            at += lead + length;
            first = false;
        }
    }
    found
}
