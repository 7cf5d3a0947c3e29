//! The tours of README, walked: every command of its console blocks is run, and what it says must be what README shows.
//!
//! Each chapter of README is walked in a copy of its own, so that each tour can be taken alone, and all of them in one, on a fixed
//! day. `...` stands for lines left out, `[..]` for a part of one (snapbox's rules). `OXYFOLIO_TOURS=accept cargo test --test
//! tours` writes into README what the commands say now; read the difference before you commit it.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    missing_docs
)]
#![cfg(feature = "cli")]

use std::{
    env,
    fmt::Write as _,
    fs,
    io::{BufRead as _, BufReader, Read as _, Write as _},
    net::TcpStream,
    os::unix::fs::symlink,
    path::{Path, PathBuf},
    process::{Command, Stdio},
    thread,
};

use snapbox::{Assert, Data, assert::Action};

/// What a tour may touch of the repository.
const LENT: [&str; 6] = [
    "rules",
    "tests/runs",
    "tests/plans",
    "tests/stock",
    "tests/examples",
    "tests/schemas",
];

/// The day of the tours: editions and tests of cylinders are judged by it.
const DAY: &str = "2026-11-25 12:00:00";

/// Between two commands; stands in no answer.
const MARK: char = '\u{1e}';

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

fn readme() -> String {
    fs::read_to_string(root().join("README.md")).unwrap()
}

/// A chapter of README: what stands between two headings.
fn chapters(readme: &str) -> Vec<&str> {
    let mut starts: Vec<usize> = readme.match_indices("\n## ").map(|(at, _)| at + 1).collect();
    starts.insert(0, 0);
    starts.push(readme.len());
    starts.windows(2).map(|pair| &readme[pair[0]..pair[1]]).collect()
}

/// The blocks of one language.
fn blocks<'t>(text: &'t str, language: &str) -> Vec<&'t str> {
    let fence = format!("```{language}\n");
    let blocks = text.split(&fence).skip(1);
    blocks.map(|rest| rest.split("```").next().unwrap()).collect()
}

/// The commands of a console block, without their answers.
fn commands(block: &str) -> Vec<&str> {
    block.lines().filter_map(|line| line.strip_prefix("$ ")).collect()
}

/// A folder as a stranger has it after README's first command: the repository's, with the program on the path.
struct Stranger {
    home: tempfile::TempDir,
}

impl Stranger {
    fn arrive() -> Self {
        let home = tempfile::tempdir().unwrap();
        for lent in LENT {
            copy(&root().join(lent), &home.path().join("oxyfolio").join(lent));
        }
        let bin = home.path().join("bin");
        fs::create_dir(&bin).unwrap();
        symlink(env!("CARGO_BIN_EXE_oxyfolio"), bin.join("oxyfolio")).unwrap();
        Self { home }
    }

    fn folder(&self) -> PathBuf {
        self.home.path().join("oxyfolio")
    }

    fn command(&self, program: &str) -> Command {
        let mut paths = vec![self.home.path().join("bin")];
        paths.extend(env::split_paths(&env::var_os("PATH").unwrap()));
        let mut command = Command::new(program);
        command
            .current_dir(self.folder())
            .env("PATH", env::join_paths(paths).unwrap())
            .env("HOME", self.home.path())
            .env("LC_ALL", "C.UTF-8")
            .env("TZ", "UTC")
            .env_remove("COLUMNS");
        command
    }

    /// Runs commands one after the other in one shell; gives what each says, standard error among it.
    fn types(&self, commands: &[&str]) -> Vec<String> {
        let mut script = "exec 2>&1\n".to_owned();
        for command in commands {
            writeln!(script, "{command}\nprintf '{MARK}'").unwrap();
        }
        let output = self
            .command("faketime")
            .args([DAY, "bash", "--norc", "-c", &script])
            .output()
            .expect("faketime is needed (Debian package faketime)");
        let said = String::from_utf8(output.stdout).unwrap();
        let mut said: Vec<String> = said.split(MARK).map(str::to_owned).collect();
        assert_eq!(said.pop().as_deref(), Some(""), "the shell came to the end");
        assert_eq!(said.len(), commands.len());
        said
    }
}

fn copy(from: &Path, to: &Path) {
    fs::create_dir_all(to).unwrap();
    for entry in fs::read_dir(from).unwrap() {
        let path = entry.unwrap().path();
        let to = to.join(path.file_name().unwrap());
        if path.is_dir() {
            copy(&path, &to);
        } else {
            fs::copy(&path, &to).unwrap();
        }
    }
}

/// A chapter with other answers. What it leaves out of an answer stays left out where the answer is otherwise the same.
fn answered(chapter: &str, answers: &[String]) -> String {
    let mut answers = answers.iter();
    let mut answered = String::new();
    let mut lines = chapter.split_inclusive('\n').peekable();
    let mut in_block = false;
    while let Some(line) = lines.next() {
        answered += line;
        in_block = if in_block {
            line != "```\n"
        } else {
            line == "```console\n"
        };
        if in_block && line.starts_with("$ ") {
            let mut shown = String::new();
            while let Some(line) = lines.next_if(|line| *line != "```\n" && !line.starts_with("$ ")) {
                shown += line;
            }
            let now = Data::text(answers.next().unwrap());
            let (now, _) = exact().normalize(now, Data::text(shown));
            answered += &now.render().unwrap();
        }
    }
    answered
}

/// Backslashes are no paths.
fn exact() -> Assert {
    Assert::new().normalize_paths(false)
}

#[test]
fn every_command_says_what_readme_shows() {
    let readme = readme();
    let chapters = chapters(&readme);
    let walks: Vec<Vec<&str>> = chapters
        .iter()
        .map(|chapter| {
            blocks(chapter, "console")
                .into_iter()
                .flat_map(commands)
                .collect()
        })
        .collect();
    let all = walks.concat();
    assert!(all.len() > 20, "{all:?}");
    // Each tour in a folder of its own, and all of them in one, as somebody does who takes them one after the other.
    let (apart, together) = thread::scope(|scope| {
        let apart: Vec<_> = walks
            .iter()
            .map(|commands| scope.spawn(|| Stranger::arrive().types(commands)))
            .collect();
        let together = Stranger::arrive().types(&all);
        let apart: Vec<_> = apart.into_iter().map(|walk| walk.join().unwrap()).collect();
        (apart, together)
    });
    for ((command, apart), together) in all.iter().zip(apart.concat()).zip(together) {
        assert_eq!(apart, together, "{command}");
    }
    let answered: String = chapters
        .iter()
        .zip(&apart)
        .map(|(chapter, answers)| answered(chapter, answers))
        .collect();
    let accepts = env::var_os("OXYFOLIO_TOURS").is_some_and(|asked| asked == "accept");
    let action = if accepts {
        Action::Overwrite
    } else {
        Action::Verify
    };
    let kept = Data::read_from(&root().join("README.md"), None).raw();
    exact().action(action).eq(answered, kept);
}

/// What is shown in no console block is run elsewhere: set-up and tests by whoever reads README, the linked program by
/// `tests/downstream/run`, the desk here.
#[test]
fn every_other_command_is_run_elsewhere() {
    let readme = readme();
    let mut desks = 0;
    for block in blocks(&readme, "sh") {
        for line in block.lines() {
            match line.split(' ').collect::<Vec<_>>().as_slice() {
                [script @ (".ci/demo" | ".ci/test")] => assert!(root().join(script).exists()),
                ["cargo", "new" | "add" | "run", ..] => {}
                ["oxyfolio", "desk", options @ ..] => {
                    desks += 1;
                    opens(options);
                }
                _ => panic!("nobody runs: {line}"),
            }
        }
    }
    assert_eq!(desks, 1);
}

/// The desk opens and shows the book.
fn opens(options: &[&str]) {
    let stranger = Stranger::arrive();
    stranger.types(&["cp -r rules our-rules"]);
    let mut desk = stranger
        .command(env!("CARGO_BIN_EXE_oxyfolio"))
        .arg("desk")
        .args(options)
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    // Kept until the end: the desk goes when nobody reads what it says.
    let mut said = BufReader::new(desk.stdout.take().unwrap());
    let mut line = String::new();
    said.read_line(&mut line).unwrap();
    let address = line.split("http://").nth(1).expect("an address").trim_end();
    let host = address.trim_end_matches('/');
    let mut asked = TcpStream::connect(host).unwrap();
    write!(
        asked,
        "GET / HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n"
    )
    .unwrap();
    let mut page = String::new();
    asked.read_to_string(&mut page).unwrap();
    desk.kill().unwrap();
    desk.wait().unwrap();
    assert!(page.starts_with("HTTP/1.1 200"), "{page}");
    assert!(page.contains("Larkmere"), "{page}");
}
