//! Who may ask. The rules are those of the web's own standards: RFC 9110 (Host, 405 with Allow, 421), the Fetch standard
//! (Origin) and W3C's Fetch Metadata (Sec-Fetch-Site).

use std::{
    io::{Read as _, Write as _},
    net::TcpStream,
};

use super::common;
use super::support::{Desk, open};

const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

fn status(desk: &Desk, request: &str) -> u16 {
    let answer = desk.ask(&request.replace("PORT", &desk.address.port().to_string()));
    assert_eq!(
        answer.header("content-security-policy"),
        Some(POLICY),
        "{request}"
    );
    assert_eq!(answer.header("x-content-type-options"), Some("nosniff"));
    assert_eq!(answer.header("referrer-policy"), Some("no-referrer"));
    assert_eq!(answer.header("cross-origin-resource-policy"), Some("same-origin"));
    assert!(
        !answer.head.to_lowercase().contains("access-control"),
        "no other origin is let in: {}",
        answer.head
    );
    answer.status
}

#[test]
fn only_its_own_address_is_answered() {
    let desk = open(&common::rules());
    for (host, expected) in [
        ("127.0.0.1:PORT", 200),
        ("localhost:PORT", 200),
        ("LOCALHOST:PORT", 200),
        ("[::1]:PORT", 200),
        ("127.0.0.1", 421),
        ("localhost", 421),
        ("127.0.0.1:1", 421),
        ("127.0.0.1:PORT.example", 421),
        ("example.com:PORT", 421),
        ("localhost.example.com:PORT", 421),
        ("localhost:0PORT0", 421),
        ("", 421),
    ] {
        let request = format!("GET / HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n");
        assert_eq!(status(&desk, &request), expected, "{host}");
    }
    let none = "GET / HTTP/1.0\r\nConnection: close\r\n\r\n";
    assert_eq!(status(&desk, none), 421);
    let two = "GET / HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nHost: example.com\r\nConnection: close\r\n\r\n";
    assert_eq!(status(&desk, two), 421);
    let whole = "GET http://example.com/ HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nConnection: close\r\n\r\n";
    assert_eq!(status(&desk, whole), 421);
}

#[test]
fn a_page_from_elsewhere_gets_nothing() {
    let desk = open(&common::rules());
    let own = format!("Origin: http://{}", desk.address);
    for (path, lines, expected) in [
        ("/", vec![own.as_str()], 200),
        ("/", vec!["Origin: http://localhost:1"], 403),
        ("/", vec!["Origin: https://example.com"], 403),
        ("/", vec!["Origin: null"], 403),
        ("/", vec!["Sec-Fetch-Site: same-origin"], 200),
        ("/", vec!["Sec-Fetch-Site: none"], 200),
        ("/", vec!["Sec-Fetch-Site: cross-site"], 403),
        ("/", vec!["Sec-Fetch-Site: same-site"], 403),
        (
            "/events",
            vec!["Sec-Fetch-Site: cross-site", "Sec-Fetch-Mode: cors"],
            403,
        ),
        (
            "/desk.js",
            vec!["Sec-Fetch-Site: same-site", "Sec-Fetch-Dest: script"],
            403,
        ),
        (
            "/",
            vec![
                "Sec-Fetch-Site: cross-site",
                "Sec-Fetch-Mode: navigate",
                "Sec-Fetch-Dest: document",
            ],
            200,
        ),
        (
            "/try?device=nasal-cannula",
            vec![
                "Sec-Fetch-Site: cross-site",
                "Sec-Fetch-Mode: navigate",
                "Sec-Fetch-Dest: document",
            ],
            403,
        ),
        (
            "/",
            vec![
                "Sec-Fetch-Site: cross-site",
                "Sec-Fetch-Mode: navigate",
                "Sec-Fetch-Dest: iframe",
            ],
            403,
        ),
    ] {
        let answer = desk.get_with(path, &lines);
        assert_eq!(answer.status, expected, "{path} {lines:?}");
        assert_eq!(answer.header("content-security-policy"), Some(POLICY));
    }
}

#[test]
fn nothing_but_reading_can_be_asked() {
    let desk = open(&common::rules());
    for method in ["POST", "PUT", "DELETE", "PATCH", "OPTIONS", "TRACE", "PROPFIND"] {
        let request = format!("{method} / HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nConnection: close\r\n\r\n");
        assert_eq!(status(&desk, &request), 405, "{method}");
    }
    let body = "GET / HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nContent-Length: 3\r\nConnection: close\r\n\r\nabc";
    assert_eq!(status(&desk, body), 413);
    let head = desk.ask(&format!(
        "HEAD / HTTP/1.1\r\nHost: {}\r\nConnection: close\r\n\r\n",
        desk.address
    ));
    assert_eq!((head.status, head.body.len()), (200, 0));
}

#[test]
fn a_request_without_end_is_cut_off() {
    let desk = open(&common::rules());
    let mut stream = TcpStream::connect(desk.address).unwrap();
    stream.write_all(b"GET / HTTP/1.1\r\nX: ").unwrap();
    // The desk may close the connection while this is still being written.
    let _ = stream.write_all(&[b'a'; 64 * 1024]);
    let mut answer = Vec::new();
    let _ = stream.read_to_end(&mut answer);
    assert!(!answer.starts_with(b"HTTP/1.1 200"));
    assert_eq!(desk.get("/").status, 200, "others are served");
}

#[test]
fn every_page_forbids_what_comes_from_elsewhere() {
    let desk = open(&common::rules());
    for path in [
        "/",
        "/chapter/05-delivery-devices.md",
        "/chapter/none.md",
        "/problems",
        "/search?q=bag",
        "/orders",
        "/order/make-ready",
        "/try",
        "/print/none",
        "/nothing",
        "/desk.css",
        "/desk.js",
        "/icon.svg",
    ] {
        let request = format!("GET {path} HTTP/1.1\r\nHost: 127.0.0.1:PORT\r\nConnection: close\r\n\r\n");
        status(&desk, &request);
    }
}
