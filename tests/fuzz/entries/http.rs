//! A client that asks a desk over TCP, once a connection.

use std::{
    io::{ErrorKind, Read as _, Write as _},
    net::{SocketAddr, TcpStream},
    time::Duration,
};

/// A desk that hasn't answered by then hangs.
const PATIENCE: Duration = Duration::from_secs(30);

/// An answer.
#[derive(Debug)]
pub struct Answer {
    /// Its status.
    pub status: u16,
    /// Its head.
    pub head: String,
    /// Its body; of a stream without end, nothing.
    pub body: Vec<u8>,
}

impl Answer {
    /// The value of a line of the head.
    pub fn header(&self, name: &str) -> Option<&str> {
        self.head.lines().find_map(|line| {
            let (known, value) = line.split_once(':')?;
            known.eq_ignore_ascii_case(name).then_some(value.trim())
        })
    }
}

/// Sends a request as it is, and reads one answer.
pub fn ask(desk: SocketAddr, request: &[u8]) -> Answer {
    let mut stream = TcpStream::connect(desk).expect("the desk listens");
    stream.set_read_timeout(Some(PATIENCE)).expect("a time limit");
    stream.set_nodelay(true).expect("no delay");
    // A desk may turn a request away before it has read all of it.
    let _ = stream.write_all(request);
    let mut bytes = Vec::new();
    let mut buffer = [0; 16 * 1024];
    loop {
        if let Some(answer) = whole(&bytes, request) {
            return answer;
        }
        match stream.read(&mut buffer) {
            Ok(0) => panic!("no whole answer, but {:?}", String::from_utf8_lossy(&bytes)),
            Ok(read) => bytes.extend_from_slice(&buffer[..read]),
            // The engine looks at the clock by signals.
            Err(error) if error.kind() == ErrorKind::Interrupted => {}
            Err(error) => panic!("{error} after {:?}", String::from_utf8_lossy(&bytes)),
        }
    }
}

/// The answer, once it is there as a whole (RFC 9112, 6.3).
fn whole(bytes: &[u8], request: &[u8]) -> Option<Answer> {
    let end = bytes.windows(4).position(|four| four == b"\r\n\r\n")?;
    let head = std::str::from_utf8(&bytes[..end])
        .expect("a head in ASCII")
        .to_owned();
    let status = head
        .strip_prefix("HTTP/1.")
        .expect("HTTP")
        .get(2..5)
        .expect("a status");
    let mut answer = Answer {
        status: status.parse().expect("a status"),
        head,
        body: Vec::new(),
    };
    let body = &bytes[end + 4..];
    let length = answer
        .header("content-length")
        .map(|length| length.parse::<usize>().expect("a length"));
    match length {
        // What HEAD asks for has the length of what it would be.
        Some(length) if !request.starts_with(b"HEAD ") => {
            answer.body = body.get(..length)?.to_vec();
        }
        _ => {}
    }
    Some(answer)
}
