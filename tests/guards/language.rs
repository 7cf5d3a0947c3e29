//! The language page says what a guard can speak of; the code says it there.

use oxyfolio::compile::guard::vocabulary::{table, words};

const PAGE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/src/compile/language.md");
const MARKS: (&str, &str) = ("<!-- vocabulary -->\n\n", "\n<!-- end of vocabulary -->");

#[test]
fn the_language_page_holds_the_vocabulary_of_the_code() {
    let page = std::fs::read_to_string(PAGE).unwrap();
    let (before, rest) = page.split_once(MARKS.0).expect("the first mark");
    let (there, after) = rest.split_once(MARKS.1).expect("the second mark");
    if std::env::var("INSTA_UPDATE").is_ok_and(|update| update == "always") {
        let page = format!("{before}{}{}{}{after}", MARKS.0, table(), MARKS.1);
        std::fs::write(PAGE, page).unwrap();
        return;
    }
    assert!(
        there == table(),
        "src/compile/language.md should hold between its marks (to accept: INSTA_UPDATE=always cargo test --test guards):\n{}",
        table()
    );
}

#[test]
fn every_word_of_the_vocabulary_says_what_it_means() {
    let words = words();
    assert!(words.len() > 25);
    for word in &words {
        for phrase in [word.gives, word.meaning, word.unknown] {
            assert!(!phrase.is_empty() && !phrase.contains(['|', '\n']), "{word:?}");
            assert!(!phrase.ends_with('.'), "{word:?}");
        }
        assert_eq!(
            words.iter().filter(|other| other.form == word.form).count(),
            1,
            "{word:?}"
        );
    }
}
