//! Cards as they will print.

use oxyfolio::cards::{Wanted, data::Document, documents};
use oxyfolio::compile::folder;
use oxyfolio::desk::Options;

use super::{
    common,
    support::{as_written, open, open_with},
};

fn small() -> (String, Document) {
    let book = folder::load(&common::rules()).unwrap().book;
    let mut all = documents(&book, &Wanted::default()).unwrap();
    all.sort_by_key(|(_, document)| document.cards.len());
    all.swap_remove(0)
}

#[test]
fn pages_are_drawn_and_the_pdf_is_that_of_the_same_text() {
    let desk = open(&common::rules());
    let (name, _) = small();
    let page = desk.page(&format!("/cards/{name}"));
    let images: Vec<&str> = page
        .split("<img src=\"")
        .skip(1)
        .map(|rest| rest.split('"').next().unwrap())
        .collect();
    assert!(!images.is_empty());
    for image in images {
        let answer = desk.get(image);
        assert_eq!(answer.status, 200);
        assert_eq!(answer.header("content-type"), Some("image/svg+xml"));
        assert!(answer.text().contains("<svg"));
    }
    let pdf = page.split("href=\"").find_map(|rest| {
        let link = rest.split('"').next().unwrap();
        link.ends_with(".pdf").then_some(link)
    });
    let answer = desk.get(pdf.unwrap());
    assert_eq!(answer.header("content-type"), Some("application/pdf"));
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("cards.pdf");
    std::fs::write(&file, &answer.body).unwrap();
    let text = common::poppler("pdftotext", &["-layout", "-", "-"][..1], &file);
    let book = folder::load(&common::rules()).unwrap().book;
    assert!(text.contains(&*book.short_digest), "{text}");
}

#[test]
fn the_card_of_another_text_is_not_given() {
    let desk = open(&common::rules());
    let (name, _) = small();
    let answer = desk.get(&format!("/print/{name}.AAAA-AAAA.pdf"));
    assert_eq!(answer.status, 404);
    assert!(answer.text().contains("the book may have been changed"));
}

#[test]
fn without_typst_the_page_says_how_to_get_it() {
    let desk = open_with(Options {
        rules: Some(common::rules()),
        typst: "no-such-program".into(),
        ..Options::default()
    });
    let (name, _) = small();
    let page = desk.page(&format!("/cards/{name}"));
    assert!(
        as_written(&page).contains(
            "cannot find the typesetting program `no-such-program`; install it with: cargo install"
        )
    );
}
