//! Editions out of a git repository.

use std::{fs, path::Path};

use oxyfolio::compare::edition::{CannotRead, Where, read};

use crate::{common, repository::Repository};

fn refused(edition: &str, rules: &Path) -> String {
    read(&Where::from_words(edition), rules).unwrap_err().to_string()
}

#[test]
fn an_edition_is_read_as_it_was() {
    let repository = Repository::new();
    let committed = read(&Where::from_words("git:HEAD"), &repository.rules()).unwrap();
    let (here, edit) = (repository.rules(), "10-how-long-it-lasts.md");
    let folder = read(&Where::Folder(here.clone()), &here).unwrap();
    assert_eq!(committed.book.digest, folder.book.digest);
    common::edit(&here, edit, "value: 200 psi\n", "value: 250 psi\n");
    let again = read(&Where::from_words("git:one"), &here).unwrap();
    assert_eq!(
        again.book.digest, folder.book.digest,
        "the folder is not looked at"
    );
    let source = again.sources.iter().next().unwrap().1;
    assert_eq!(source.path, "git:one:01-about-this-book.md");
}

#[test]
fn a_revision_that_is_not_there() {
    let repository = Repository::new();
    for revision in ["nowhere", "HEAD~5", "--all", "-n1", "one:protocol", "\u{7}"] {
        let said = refused(&format!("git:{revision}"), &repository.rules());
        assert!(said.starts_with("the repository has no revision `"), "{said}");
        assert!(said.contains("`git log` and `git tag`"), "{said}");
    }
}

#[test]
fn a_folder_in_no_repository() {
    let copy = common::copy_of_rules();
    let said = refused("git:HEAD", copy.path());
    assert!(said.contains("is in no git repository; give a folder"), "{said}");
}

#[test]
fn a_folder_that_was_not_there_then() {
    let repository = Repository::new();
    let moved = repository.folder.path().join("moved");
    fs::rename(repository.rules(), &moved).unwrap();
    let said = refused("git:one", &moved);
    assert_eq!(
        said,
        "at `one` there was no file that ends in `.md` in `moved/`; was the rulebook's folder called otherwise then?"
    );
}

#[test]
fn a_link_is_no_chapter() {
    let repository = Repository::new();
    std::os::unix::fs::symlink("/etc/hostname", repository.rules().join("15-link.md")).unwrap();
    repository.commit("two");
    let error = read(&Where::from_words("git:two"), &repository.rules()).unwrap_err();
    assert!(matches!(error, CannotRead::Chapter { .. }), "{error}");
    assert_eq!(error.to_string(), "cannot read `15-link.md`: it is not a file");
}

#[test]
fn an_edition_of_which_nothing_is_left() {
    let repository = Repository::new();
    for entry in fs::read_dir(repository.rules()).unwrap() {
        fs::write(entry.unwrap().path(), "# Nothing\n\n```yaml devise\nid: x\n```\n").unwrap();
    }
    repository.commit("two");
    let said = refused("git:two", &repository.rules());
    assert!(
        said.contains("did you mean `device`?") && said.contains("git:two:01-about-this-book.md"),
        "{said}"
    );
}
