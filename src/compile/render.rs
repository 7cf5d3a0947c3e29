//! Draws diagnostics in the manner of the Rust compiler, with the library it draws with.

use annotate_snippets::{AnnotationKind, Group, Level as Drawn, Renderer, Snippet};

use super::{
    diagnostic::{Diagnostic, Level},
    source::{FileId, Sources},
};

/// Draws one diagnostic, with colours for a terminal or without.
#[must_use]
pub fn render(diagnostic: &Diagnostic, sources: &Sources, colour: bool) -> String {
    let level = match diagnostic.level {
        Level::Error => Drawn::ERROR,
        Level::Note => Drawn::NOTE,
    };
    let title = level
        .primary_title(visible(&diagnostic.message))
        .id(diagnostic.code);
    let mut group = Group::with_title(title);
    if let Some(span) = diagnostic.span {
        group = group.element(snippet(diagnostic, sources, span.file, true));
        let mut others: Vec<FileId> = diagnostic
            .labels
            .iter()
            .map(|(label, _)| label.file)
            .filter(|file| *file != span.file)
            .collect();
        others.sort_unstable();
        others.dedup();
        for file in others {
            group = group.element(snippet(diagnostic, sources, file, false));
        }
    }
    for hint in &diagnostic.hints {
        group = group.element(Drawn::HELP.message(visible(hint)));
    }
    let renderer = if colour {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    renderer.render(&[group])
}

fn snippet<'a>(
    diagnostic: &'a Diagnostic,
    sources: &'a Sources,
    file: FileId,
    primary: bool,
) -> Snippet<'a, annotate_snippets::Annotation<'a>> {
    let path = sources.get(file).map_or("", |source| source.path.as_str());
    let mut snippet = Snippet::source(sources.text(file)).path(path).fold(true);
    if primary && let Some(span) = diagnostic.span {
        snippet = snippet.annotation(AnnotationKind::Primary.span(span.start..span.end));
    }
    snippet.annotations(
        diagnostic
            .labels
            .iter()
            .filter(|(label, _)| label.file == file)
            .map(|(label, words)| {
                AnnotationKind::Context
                    .span(label.start..label.end)
                    .label(visible(words))
            }),
    )
}

/// Control characters in a rulebook's text must not reach a terminal.
fn visible(text: &str) -> String {
    text.chars()
        .map(|c| {
            if c.is_control() && c != '\n' {
                '\u{FFFD}'
            } else {
                c
            }
        })
        .collect()
}
