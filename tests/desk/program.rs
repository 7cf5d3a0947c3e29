//! The program: its address, its mistakes, its end.

use std::{
    io::{BufRead as _, BufReader},
    net::{Ipv4Addr, TcpListener, TcpStream},
    process::{Command, Stdio},
};

use super::common;

#[test]
fn prints_its_address_and_ends_with_the_interrupt_signal() {
    let rules = common::rules();
    let mut child = Command::new(env!("CARGO_BIN_EXE_oxyfolio"))
        .args(["desk", "--rules", rules.to_str().unwrap()])
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut lines = BufReader::new(child.stdout.take().unwrap()).lines();
    let first = lines.next().unwrap().unwrap();
    let address = first
        .split("http://")
        .nth(1)
        .unwrap()
        .trim_end_matches('/')
        .to_owned();
    assert!(address.starts_with("127.0.0.1:"), "{first}");
    // A page that listens must not keep the desk from ending.
    let mut listening = TcpStream::connect(&address).unwrap();
    std::io::Write::write_all(
        &mut listening,
        format!("GET /events HTTP/1.1\r\nHost: {address}\r\n\r\n").as_bytes(),
    )
    .unwrap();
    let status = BufReader::new(&listening).lines().next().unwrap().unwrap();
    assert_eq!(status, "HTTP/1.1 200 OK");
    let interrupted = Command::new("kill")
        .args(["-INT", &child.id().to_string()])
        .status()
        .unwrap();
    assert!(interrupted.success());
    assert!(child.wait().unwrap().success());
    assert!(TcpStream::connect(&address).is_err());
}

#[test]
fn a_folder_that_is_not_there_or_a_port_in_use_is_told() {
    let none = common::oxyfolio(&["desk", "--rules", "no-such-folder"]);
    assert_eq!(none.status.code(), Some(2));
    let said = String::from_utf8(none.stderr).unwrap();
    assert!(said.contains("cannot open the folder `no-such-folder`"), "{said}");
    let taken = TcpListener::bind((Ipv4Addr::LOCALHOST, 0)).unwrap();
    let port = taken.local_addr().unwrap().port().to_string();
    let busy = common::oxyfolio(&["desk", "--port", &port]);
    assert_eq!(busy.status.code(), Some(2));
    let said = String::from_utf8(busy.stderr).unwrap();
    assert!(said.contains("leave --port out"), "{said}");
}
