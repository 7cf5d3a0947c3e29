//! A desk on a folder, and a client that writes its own requests: a library would put right what is to be wrong.

use std::{
    io::{Read as _, Write as _},
    net::{SocketAddr, TcpStream},
    path::Path,
    thread::{self, JoinHandle},
    time::{Duration, Instant},
};

use oxyfolio::desk::{Options, Server};

/// A wait ends as soon as what it waits for is there.
pub const PATIENCE: Duration = Duration::from_secs(30);

/// A desk that is ended when it goes out of scope.
pub struct Desk {
    pub address: SocketAddr,
    end: Option<tokio::sync::oneshot::Sender<()>>,
    thread: Option<JoinHandle<()>>,
}

/// An answer.
#[derive(Debug)]
pub struct Answer {
    pub status: u16,
    pub head: String,
    pub body: Vec<u8>,
}

impl Answer {
    pub fn text(&self) -> String {
        String::from_utf8(self.body.clone()).unwrap()
    }

    pub fn header(&self, name: &str) -> Option<&str> {
        self.head.lines().find_map(|line| {
            let (known, value) = line.split_once(':')?;
            known.eq_ignore_ascii_case(name).then_some(value.trim())
        })
    }
}

pub fn open(rules: &Path) -> Desk {
    open_with(Options {
        rules: Some(rules.to_owned()),
        ..Options::default()
    })
}

pub fn open_with(options: Options) -> Desk {
    let server = Server::open(options).unwrap();
    let address = server.address();
    let (end, ended) = tokio::sync::oneshot::channel();
    let thread = thread::spawn(move || {
        server
            .serve(async {
                let _ = ended.await;
            })
            .unwrap();
    });
    Desk {
        address,
        end: Some(end),
        thread: Some(thread),
    }
}

impl Drop for Desk {
    fn drop(&mut self) {
        drop(self.end.take());
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

impl Desk {
    /// Gets a page, as a browser would.
    pub fn get(&self, path: &str) -> Answer {
        self.ask(&format!(
            "GET {path} HTTP/1.1\r\nHost: {}\r\nConnection: close\r\n\r\n",
            self.address
        ))
    }

    /// A page that must be there, as text.
    pub fn page(&self, path: &str) -> String {
        let answer = self.get(path);
        assert_eq!(answer.status, 200, "{path}: {}", answer.text());
        answer.text()
    }

    /// Gets a page with further header lines.
    pub fn get_with(&self, path: &str, lines: &[&str]) -> Answer {
        let more: String = lines.iter().map(|line| format!("{line}\r\n")).collect();
        self.ask(&format!(
            "GET {path} HTTP/1.1\r\nHost: {}\r\n{more}Connection: close\r\n\r\n",
            self.address
        ))
    }

    /// Sends a request as it is.
    pub fn ask(&self, request: &str) -> Answer {
        let mut stream = TcpStream::connect(self.address).unwrap();
        stream.set_read_timeout(Some(PATIENCE)).unwrap();
        stream.write_all(request.as_bytes()).unwrap();
        let mut bytes = Vec::new();
        stream.read_to_end(&mut bytes).unwrap();
        parse(&bytes)
    }

    /// Gets a page until it is as wanted.
    pub fn wait_for(&self, path: &str, wanted: impl Fn(&str) -> bool) -> String {
        let since = Instant::now();
        loop {
            let text = self.get(path).text();
            if wanted(&text) {
                return text;
            }
            assert!(
                since.elapsed() < PATIENCE,
                "{path} did not become as wanted: {text}"
            );
            thread::sleep(Duration::from_millis(10));
        }
    }
}

fn parse(bytes: &[u8]) -> Answer {
    let end = bytes
        .windows(4)
        .position(|four| four == b"\r\n\r\n")
        .unwrap_or_else(|| panic!("no head in {:?}", String::from_utf8_lossy(bytes)));
    let head = String::from_utf8(bytes[..end].to_vec()).unwrap();
    let status = head.split(' ').nth(1).unwrap().parse().unwrap();
    Answer {
        status,
        head,
        body: bytes[end + 4..].to_vec(),
    }
}

/// A page with the checker's words as the checker writes them: what it quotes stands between backticks.
pub fn as_written(page: &str) -> String {
    page.replace("<code>", "`").replace("</code>", "`")
}

/// Every file of a folder with its bytes.
pub fn bytes_of(folder: &Path) -> Vec<(std::path::PathBuf, Vec<u8>)> {
    let mut files: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .map(|path| (path.clone(), std::fs::read(&path).unwrap()))
        .collect();
    files.sort();
    files
}
