//! A git repository made by the test, with the demo rulebook in one of its folders.
#![allow(dead_code)]

use std::{fs, path::PathBuf, process::Command};

/// A repository whose folder `protocol` holds the demo rulebook, with one commit, tagged `one`.
pub struct Repository {
    pub folder: tempfile::TempDir,
}

impl Repository {
    pub fn new() -> Self {
        let repository = Self {
            folder: tempfile::tempdir().unwrap(),
        };
        fs::create_dir(repository.rules()).unwrap();
        for entry in fs::read_dir(super::common::rules()).unwrap() {
            let path = entry.unwrap().path();
            fs::copy(&path, repository.rules().join(path.file_name().unwrap())).unwrap();
        }
        repository.git(&["init", "--quiet"]);
        repository.commit("one");
        repository
    }

    pub fn rules(&self) -> PathBuf {
        self.folder.path().join("protocol")
    }

    pub fn commit(&self, tag: &str) {
        self.git(&["add", "--all"]);
        self.git(&[
            "-c",
            "user.name=nobody",
            "-c",
            "user.email=nobody@invalid",
            "commit",
            "--quiet",
            "-m",
            tag,
        ]);
        self.git(&["tag", tag]);
    }

    fn git(&self, arguments: &[&str]) {
        let output = Command::new("git")
            .arg("-C")
            .arg(self.folder.path())
            .args(arguments)
            .output();
        let output = output.expect("git is needed");
        assert!(
            output.status.success(),
            "{}",
            String::from_utf8_lossy(&output.stderr)
        );
    }
}
