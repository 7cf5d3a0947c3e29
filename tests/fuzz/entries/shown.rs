//! Any text as the chapters of a folder that is open on a desk: every page shows it as text, whatever is in it.

use std::{
    fs,
    future::poll_fn,
    sync::{Arc, Mutex, PoisonError},
    task::{Poll, Waker},
    thread,
};

use oxyfolio::desk::{Options, Server};

use super::{END, html, http};

/// As many chapters are written.
const MOST: usize = 4;

/// Opens a desk on the chapters, and looks at the pages that show them.
pub fn run(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    let folder = tempfile::tempdir().expect("a temporary folder");
    let mut paths = vec!["/", "/problems", "/search?q=a", "/orders", "/try", "/cards"];
    const CHAPTERS: [&str; MOST] = ["/chapter/0.md", "/chapter/1.md", "/chapter/2.md", "/chapter/3.md"];
    for (number, text) in text.split(END).take(MOST).enumerate() {
        fs::write(folder.path().join(format!("{number}.md")), text).expect("a chapter is written");
        paths.push(CHAPTERS[number]);
    }
    let server = Server::open(Options {
        rules: Some(folder.path().to_owned()),
        typst: "no-such-program".into(),
        ..Options::default()
    })
    .expect("a desk");
    let address = server.address();
    let end = End::default();
    let until = end.clone();
    let serving = thread::spawn(move || server.serve(poll_fn(move |context| until.poll(context.waker()))));
    for path in paths {
        let request = format!("GET {path} HTTP/1.1\r\nHost: {address}\r\nConnection: close\r\n\r\n");
        let answer = http::ask(address, request.as_bytes());
        assert_eq!(answer.status, 200, "{path}");
        html::check(std::str::from_utf8(&answer.body).expect("a page in UTF-8"));
    }
    end.now();
    serving
        .join()
        .expect("the desk ends")
        .expect("the desk ends well");
}

/// Whether to end, and whom to tell.
#[derive(Clone, Default)]
struct End(Arc<Mutex<(bool, Option<Waker>)>>);

impl End {
    fn poll(&self, waker: &Waker) -> Poll<()> {
        let mut end = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if end.0 {
            return Poll::Ready(());
        }
        end.1 = Some(waker.clone());
        Poll::Pending
    }

    fn now(&self) {
        let mut end = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        end.0 = true;
        if let Some(waker) = end.1.take() {
            waker.wake();
        }
    }
}
