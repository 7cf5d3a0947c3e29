//! Any bytes as a request to the desk: an address with what is asked in it, or the lines of a head. Every answer is whole, forbids
//! what comes from elsewhere, and is text where it repeats what was asked.

use std::{net::SocketAddr, sync::LazyLock, thread};

use oxyfolio::desk::{Options, Server};

use super::{
    html,
    http::{self, Answer},
};

/// The longest address and head that are sent: the desk cuts off what is longer than any of its own.
const LONGEST: usize = 4000;

/// One desk for all requests, on the rulebook compiled in. It runs until the process ends.
static DESK: LazyLock<SocketAddr> = LazyLock::new(|| {
    let server = Server::open(Options {
        typst: "no-such-program".into(),
        ..Options::default()
    })
    .expect("a desk");
    let address = server.address();
    thread::spawn(|| server.serve(std::future::pending()));
    address
});

/// The first byte says whether the rest is an address, or a whole head.
pub fn run(bytes: &[u8]) {
    let Some((first, bytes)) = bytes.split_first() else {
        return;
    };
    let request = if first % 4 == 0 {
        head(bytes)
    } else {
        address(bytes)
    };
    let Some(request) = request.filter(|request| request.len() <= LONGEST) else {
        return;
    };
    let answer = http::ask(*DESK, &request);
    checked(&request, &answer);
}

/// `GET` of an address. What no address can hold is written as browsers do.
fn address(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut request = b"GET /".to_vec();
    for byte in bytes {
        if byte.is_ascii_graphic()
            && !matches!(
                byte,
                b'"' | b'<' | b'>' | b'\\' | b'^' | b'`' | b'{' | b'|' | b'}'
            )
        {
            request.push(*byte);
        } else {
            request.extend(format!("%{byte:02X}").bytes());
        }
    }
    request.extend(format!(" HTTP/1.1\r\nHost: {}\r\nConnection: close\r\n\r\n", *DESK).bytes());
    Some(request)
}

/// The lines of a head, of which the last ends the connection, so that nobody waits for another request. `PORT` is the desk's.
fn head(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut request = Vec::new();
    for line in bytes.split(|byte| matches!(byte, b'\n' | b'\r')) {
        if line.is_empty() {
            continue;
        }
        match line.windows(4).position(|four| four == b"PORT") {
            Some(at) => {
                request.extend(&line[..at]);
                request.extend(DESK.port().to_string().bytes());
                request.extend(&line[at + 4..]);
            }
            None => request.extend(line),
        }
        request.extend(b"\r\n");
    }
    if request.is_empty() {
        return None;
    }
    request.extend(b"Connection: close\r\n\r\n");
    Some(request)
}

fn checked(request: &[u8], answer: &Answer) {
    let asked = String::from_utf8_lossy(request);
    assert!(
        (200..500).contains(&answer.status),
        "{} to {asked}",
        answer.status
    );
    assert!(
        !answer.head.to_lowercase().contains("access-control"),
        "{}",
        answer.head
    );
    // What isn't HTTP at all never reaches the pages.
    let Some(policy) = answer.header("content-security-policy") else {
        assert!(
            (400..500).contains(&answer.status) && answer.body.is_empty(),
            "{answer:?} to {asked}"
        );
        return;
    };
    assert!(
        policy.starts_with("default-src 'none'; script-src 'self';"),
        "{policy}"
    );
    assert_eq!(answer.header("x-content-type-options"), Some("nosniff"));
    let kind = answer.header("content-type").unwrap_or_default();
    if kind.starts_with("text/html") && !answer.body.is_empty() {
        html::check(std::str::from_utf8(&answer.body).expect("a page in UTF-8"));
    }
}
