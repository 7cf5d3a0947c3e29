//! From an address to its page.

use std::{
    path::PathBuf,
    sync::{Arc, PoisonError, RwLock},
};

use axum::{
    Router,
    body::{Body, Bytes},
    extract::{Path, RawQuery, Request, State},
    http::{HeaderValue, StatusCode, header},
    middleware::{self, Next},
    response::{IntoResponse as _, Response},
    routing::get,
};
use futures_util::stream;
use maud::{Markup, html};
use tokio::sync::watch;

use super::{
    cards::{self, press::Press},
    chapter, contents, gate, order, page, problems,
    query::Query,
    reading::Reading,
    search,
    server::Options,
    since, trial,
};

const STYLE: &str = include_str!("assets/desk.css");
const SCRIPT: &str = include_str!("assets/desk.js");
const ICON: &str = include_str!("assets/icon.svg");

/// What the pages are made from.
#[derive(Debug)]
pub struct Desk {
    rules: Option<PathBuf>,
    /// The last edition as it was named on the command line.
    pub since: Option<String>,
    /// The last comparison.
    pub compared: since::Compared,
    /// Sets cards.
    pub press: Press,
    port: u16,
    reading: RwLock<Arc<Reading>>,
    /// The number of the reading; `None` when the desk has ended.
    told: watch::Sender<Option<u64>>,
}

impl Desk {
    /// Reads the rulebook for the first time.
    pub fn new(options: Options, port: u16) -> Self {
        let reading = Reading::of(options.rules.as_deref(), 1);
        Self {
            told: watch::Sender::new(Some(reading.number)),
            reading: RwLock::new(Arc::new(reading)),
            rules: options.rules,
            since: options.since,
            compared: since::Compared::default(),
            press: Press::new(options.typst, options.time_limit),
            port,
        }
    }

    /// The last reading.
    pub fn reading(&self) -> Arc<Reading> {
        Arc::clone(&self.reading.read().unwrap_or_else(PoisonError::into_inner))
    }

    /// The rulebook's folder, as it was named.
    pub fn folder(&self) -> String {
        self.rules
            .as_ref()
            .map_or_else(String::new, |rules| rules.display().to_string())
    }

    /// The same, to be asked for its repository; none for the rulebook in this program.
    pub fn rules(&self) -> Option<&std::path::Path> {
        self.rules.as_deref()
    }

    /// Reads the rulebook, and tells the pages that are open.
    pub fn read_again(&self) {
        let number = self.reading().number + 1;
        let reading = Arc::new(Reading::of(self.rules.as_deref(), number));
        *self.reading.write().unwrap_or_else(PoisonError::into_inner) = reading;
        self.told.send_replace(Some(number));
    }

    /// Ends the streams that pages listen to.
    pub fn end(&self) {
        self.told.send_replace(None);
    }
}

/// A page's title, the part of the site it belongs to, and its content; or none where there is nothing of that name.
pub struct Page {
    /// The title.
    pub title: String,
    /// Where it belongs.
    pub room: page::Room,
    /// The content of `main`.
    pub content: Markup,
}

type Shared = State<Arc<Desk>>;

/// The routes, behind the gate.
pub fn router(desk: &Arc<Desk>) -> Router {
    let fixed = |kind: &'static str, text: &'static str| get(move || async move { file(kind, text.into()) });
    Router::new()
        .route("/", get(|desk: Shared| shown(desk, contents::page)))
        .route(
            "/chapter/{name}",
            get(|desk: Shared, Path(name): Path<String>| {
                perhaps(desk, move |_, reading| chapter::page(reading, &name))
            }),
        )
        .route("/problems", get(|desk: Shared| shown(desk, problems::page)))
        .route(
            "/search",
            get(|desk: Shared, RawQuery(query): RawQuery| {
                shown(desk, move |_, reading| {
                    search::page(reading, &Query::read(query.as_deref()))
                })
            }),
        )
        .route(
            "/orders",
            get(|desk: Shared| shown(desk, |_, reading| order::list(reading))),
        )
        .route(
            "/order/{id}",
            get(
                |desk: Shared, Path(id): Path<String>, RawQuery(query): RawQuery| {
                    perhaps(desk, move |_, reading| {
                        order::page(reading, &id, &Query::read(query.as_deref()))
                    })
                },
            ),
        )
        .route(
            "/try",
            get(|desk: Shared, RawQuery(query): RawQuery| {
                shown(desk, move |_, reading| {
                    trial::page(reading, &Query::read(query.as_deref()))
                })
            }),
        )
        .route(
            "/cards",
            get(|desk: Shared, RawQuery(query): RawQuery| {
                shown(desk, move |desk, reading| {
                    cards::list(desk, reading, &Query::read(query.as_deref()))
                })
            }),
        )
        .route(
            "/since",
            get(|desk: Shared, RawQuery(query): RawQuery| {
                shown(desk, move |desk, reading| {
                    since::page(desk, reading, &Query::read(query.as_deref()))
                })
            }),
        )
        .route(
            "/cards/{name}",
            get(
                |desk: Shared, Path(name): Path<String>, RawQuery(query): RawQuery| {
                    perhaps(desk, move |desk, reading| {
                        cards::page(desk, reading, &name, &Query::read(query.as_deref()))
                    })
                },
            ),
        )
        .route(
            "/print/{file}",
            get(|State(desk): Shared, Path(file): Path<String>| blocking(move || cards::file(&desk, &file))),
        )
        .route("/events", get(events))
        .route("/desk.css", fixed("text/css; charset=utf-8", STYLE))
        .route("/desk.js", fixed("text/javascript; charset=utf-8", SCRIPT))
        .route("/icon.svg", fixed("image/svg+xml", ICON))
        .fallback(|desk: Shared| perhaps(desk, |_, _| None))
        .with_state(Arc::clone(desk))
        .layer(middleware::from_fn_with_state(Arc::clone(desk), guarded))
}

/// Turns away what may not ask, and says with every answer what it forbids.
async fn guarded(State(desk): Shared, request: Request, next: Next) -> Response {
    let checked = gate::check(request.method(), request.uri(), request.headers(), desk.port);
    let mut response = match checked {
        Ok(()) => next.run(request).await,
        Err(refused) => {
            let mut response = (refused.status, refused.words).into_response();
            if refused.status == StatusCode::METHOD_NOT_ALLOWED {
                let allowed = HeaderValue::from_static("GET, HEAD");
                response.headers_mut().insert(header::ALLOW, allowed);
            }
            response
        }
    };
    gate::forbid(response.headers_mut());
    response
}

/// A page that is always there.
async fn shown(desk: Shared, make: impl FnOnce(&Desk, &Reading) -> Page + Send + 'static) -> Response {
    perhaps(desk, move |desk, reading| Some(make(desk, reading))).await
}

/// A page that is there if there is something of that name.
async fn perhaps(
    State(desk): Shared,
    make: impl FnOnce(&Desk, &Reading) -> Option<Page> + Send + 'static,
) -> Response {
    blocking(move || {
        let reading = desk.reading();
        let (status, made) = match make(&desk, &reading) {
            Some(made) => (StatusCode::OK, made),
            None => (StatusCode::NOT_FOUND, nothing_here()),
        };
        let text = page::framed(&desk, &reading, &made).into_string();
        (status, file("text/html; charset=utf-8", text.into())).into_response()
    })
    .await
}

fn nothing_here() -> Page {
    Page {
        title: "Nothing here".to_owned(),
        room: page::Room::None,
        content: html! {
            h1 { "Nothing here" }
            p { "There is no page at this address. A chapter or rule may have been renamed or taken out." }
            p { a href="/" { "To the contents" } }
        },
    }
}

/// Pages are made beside the loop that serves: one may wait for the typesetting program.
async fn blocking(make: impl FnOnce() -> Response + Send + 'static) -> Response {
    match tokio::task::spawn_blocking(make).await {
        Ok(response) => response,
        Err(_) => (StatusCode::INTERNAL_SERVER_ERROR, "This page could not be made.").into_response(),
    }
}

/// An answer of a kind.
pub fn file(kind: &'static str, bytes: Bytes) -> Response {
    ([(header::CONTENT_TYPE, kind)], bytes).into_response()
}

/// Tells a page when the book was read anew: server-sent events.
async fn events(State(desk): Shared) -> Response {
    let mut told = desk.told.subscribe();
    told.mark_changed();
    let events = stream::unfold(told, |mut told| async move {
        told.changed().await.ok()?;
        let number = (*told.borrow_and_update())?;
        let event = format!("event: reading\ndata: {number}\n\n");
        Some((Ok::<_, std::convert::Infallible>(event), told))
    });
    (
        [(header::CONTENT_TYPE, "text/event-stream")],
        Body::from_stream(events),
    )
        .into_response()
}
