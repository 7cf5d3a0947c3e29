//! What an edit does to the pages that are open.

use std::{
    fs,
    io::{BufRead as _, BufReader, Write as _},
    net::TcpStream,
    time::Duration,
};

use oxyfolio::compile::{folder, render::visible};

use super::{
    common,
    support::{PATIENCE, as_written, open},
};

const CHAPTER: &str = "05-delivery-devices.md";

#[test]
fn a_problem_appears_where_it_stands_in_the_words_of_check_and_goes_again() {
    let rules = common::copy_of_rules();
    let desk = open(rules.path());
    let address = format!("/chapter/{CHAPTER}");
    assert!(!desk.page(&address).contains("role=\"note\""));
    common::edit(rules.path(), CHAPTER, "flow: 1 to 6 L/min", "flow: 6 to 1 L/min");
    let page = desk.wait_for(&address, |page| page.contains("role=\"note\""));
    let rejected = folder::load(rules.path()).unwrap_err();
    let said = as_written(&page);
    for found in &rejected.diagnostics {
        let escaped = |words: &str| visible(words).replace('<', "&lt;").replace('>', "&gt;");
        assert!(said.contains(&escaped(&found.message)), "{}", found.message);
        for hint in &found.hints {
            assert!(said.contains(&escaped(hint)), "{hint}");
        }
    }
    // Beside the rule it is about, and its source is open and marked.
    let part = page
        .split("<section")
        .find(|part| part.contains("role=\"note\""))
        .unwrap();
    assert!(part.contains("rule-device-nasal-cannula"), "{part}");
    assert!(part.contains("<mark>6 to 1 L/min</mark>"), "{part}");
    assert!(part.contains("<details class=\"source\" open"), "{part}");
    common::edit(rules.path(), CHAPTER, "flow: 6 to 1 L/min", "flow: 1 to 6 L/min");
    desk.wait_for(&address, |page| !page.contains("role=\"note\""));
    assert!(desk.page("/").contains("No errors."));
}

#[test]
fn pages_that_are_open_are_told_of_every_reading() {
    let rules = common::copy_of_rules();
    let desk = open(rules.path());
    let mut stream = TcpStream::connect(desk.address).unwrap();
    stream.set_read_timeout(Some(PATIENCE)).unwrap();
    write!(stream, "GET /events HTTP/1.1\r\nHost: {}\r\n\r\n", desk.address).unwrap();
    let mut lines = BufReader::new(stream).lines();
    let mut next = || loop {
        let line = lines.next().unwrap().unwrap();
        if let Some(number) = line.strip_prefix("data: ") {
            return number.parse::<u64>().unwrap();
        }
    };
    let first = next();
    common::edit(rules.path(), CHAPTER, "value: 4 L/min", "value: 5 L/min");
    let second = next();
    assert!(second > first);
    // Saved as many editors do: a new file takes the old one's name.
    let path = rules.path().join(CHAPTER);
    let text = fs::read_to_string(&path).unwrap();
    fs::write(
        rules.path().join("new"),
        text.replace("value: 5 L/min", "value: 4 L/min"),
    )
    .unwrap();
    fs::rename(rules.path().join("new"), &path).unwrap();
    assert!(next() > second);
}

#[test]
fn reading_alone_is_no_reason_to_read_again() {
    let rules = common::copy_of_rules();
    let desk = open(rules.path());
    for (path, _) in super::support::bytes_of(rules.path()) {
        fs::read(path).unwrap();
    }
    std::thread::sleep(Duration::from_millis(400));
    assert!(desk.page("/").contains("data-reading=\"1\""));
}

#[test]
fn a_folder_that_is_emptied_is_a_problem_and_no_end() {
    let rules = common::copy_of_rules();
    let desk = open(rules.path());
    for (path, _) in super::support::bytes_of(rules.path()) {
        fs::remove_file(path).unwrap();
    }
    let page = desk.wait_for("/", |page| page.contains("no-chapters"));
    assert!(page.contains("expected chapters in"), "{page}");
    assert_eq!(desk.get("/try").status, 200);
}
