//! Who may ask, and what every answer forbids.
//!
//! The desk listens on loopback, and every program on the machine can reach loopback: so can a page from elsewhere that
//! is open in a browser, by naming the address, or by a name of its own that it lets point here. Hence the address in
//! `Host` must be ours, a page of another origin gets nothing, and nothing but reading can be asked.

use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, Uri, header};

/// What the pages may load: their own style, script and pictures, and nothing else.
pub const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; \
     form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

/// Why a request is turned away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Refused {
    /// The status of the answer.
    pub status: StatusCode,
    /// Why, in a sentence.
    pub words: &'static str,
}

const fn refused(status: StatusCode, words: &'static str) -> Refused {
    Refused { status, words }
}

/// Whether a request may be answered by a desk on this port.
///
/// # Errors
///
/// [`Refused`] says why not.
pub fn check(method: &Method, uri: &Uri, headers: &HeaderMap, port: u16) -> Result<(), Refused> {
    if method != Method::GET && method != Method::HEAD {
        return Err(refused(
            StatusCode::METHOD_NOT_ALLOWED,
            "The desk only shows: ask with GET.",
        ));
    }
    let sends_nothing = headers
        .get_all(header::CONTENT_LENGTH)
        .iter()
        .all(|length| length.as_bytes() == b"0");
    if headers.contains_key(header::TRANSFER_ENCODING) || !sends_nothing {
        return Err(refused(
            StatusCode::PAYLOAD_TOO_LARGE,
            "The desk takes nothing in: ask without a body.",
        ));
    }
    let elsewhere = refused(
        StatusCode::MISDIRECTED_REQUEST,
        "This is not the desk's address: use the one it printed when it was started.",
    );
    let mut hosts = headers.get_all(header::HOST).iter();
    let host = hosts.next().and_then(|host| host.to_str().ok());
    if hosts.next().is_some() || !host.is_some_and(|host| is_ours(host, port)) {
        return Err(elsewhere);
    }
    if uri
        .authority()
        .is_some_and(|authority| !is_ours(authority.as_str(), port))
    {
        return Err(elsewhere);
    }
    let foreign = refused(
        StatusCode::FORBIDDEN,
        "A page from elsewhere asked for this, and the desk shows itself only to its own pages: open its address itself.",
    );
    for origin in headers.get_all(header::ORIGIN) {
        let own = origin
            .to_str()
            .ok()
            .and_then(|origin| origin.strip_prefix("http://"))
            .is_some_and(|host| is_ours(host, port));
        if !own {
            return Err(foreign);
        }
    }
    let site = headers.get("sec-fetch-site").map(HeaderValue::as_bytes);
    let from_here = matches!(site, None | Some(b"same-origin" | b"none"));
    if !from_here && !is_visit(uri, headers) {
        return Err(foreign);
    }
    Ok(())
}

/// A link from elsewhere may lead to the front page, which can't be read from there, and to no other.
fn is_visit(uri: &Uri, headers: &HeaderMap) -> bool {
    let is = |name: &str, value: &str| headers.get(name).is_some_and(|found| found == value);
    is("sec-fetch-mode", "navigate")
        && is("sec-fetch-dest", "document")
        && uri.path() == "/"
        && uri.query().is_none()
}

fn is_ours(host: &str, port: u16) -> bool {
    let Some((name, given)) = host.rsplit_once(':') else {
        return false;
    };
    given.parse() == Ok(port)
        && given.bytes().all(|byte| byte.is_ascii_digit())
        && ["127.0.0.1", "localhost", "[::1]"]
            .iter()
            .any(|own| name.eq_ignore_ascii_case(own))
}

/// Adds to every answer what it forbids.
pub fn forbid(headers: &mut HeaderMap) {
    let fixed = [
        (header::CONTENT_SECURITY_POLICY, POLICY),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "no-referrer"),
        (header::X_FRAME_OPTIONS, "DENY"),
        (header::CACHE_CONTROL, "no-store"),
        (
            HeaderName::from_static("cross-origin-resource-policy"),
            "same-origin",
        ),
        (
            HeaderName::from_static("cross-origin-opener-policy"),
            "same-origin",
        ),
    ];
    for (name, value) in fixed {
        headers.insert(name, HeaderValue::from_static(value));
    }
}
