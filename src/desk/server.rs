//! Listens on loopback and ends cleanly.

use std::{
    ffi::OsString,
    future::Future,
    io,
    net::{Ipv4Addr, SocketAddr, TcpListener},
    path::PathBuf,
    pin::pin,
    sync::Arc,
    time::Duration,
};

use futures_util::future::{Either, select};
use hyper::server::conn::http1;
use hyper_util::{
    rt::{TokioIo, TokioTimer},
    server::graceful::GracefulShutdown,
    service::TowerToHyperService,
};
use tokio::sync::Semaphore;

use super::{
    routes::{self, Desk},
    watch,
};

/// How long a request's head may take, and a connection may stay without one.
const HEAD_WITHIN: Duration = Duration::from_secs(10);

/// The longest head of a request, in bytes.
const LONGEST_HEAD: usize = 16 * 1024;

/// As many connections are served at once: some tabs of one browser.
const MOST_CONNECTIONS: usize = 64;

/// How long answers that are under way may take when the desk is ended.
const END_WITHIN: Duration = Duration::from_secs(2);

/// How the desk is opened.
#[derive(Clone, Debug)]
pub struct Options {
    /// The folder of the rulebook; none for the one in this program.
    pub rules: Option<PathBuf>,
    /// The port; 0 for any that is free.
    pub port: u16,
    /// The last edition, to compare with: a folder, or `git:` and a revision of the rulebook's repository.
    pub since: Option<String>,
    /// The typesetting program.
    pub typst: OsString,
    /// How long it may take for each document.
    pub time_limit: Duration,
}

impl Default for Options {
    /// The rulebook in this program, on any port.
    fn default() -> Self {
        Self {
            rules: None,
            port: 0,
            since: None,
            typst: "typst".into(),
            time_limit: crate::cards::typst::TIME_LIMIT,
        }
    }
}

/// Why there is no desk.
#[derive(Debug)]
pub enum CannotServe {
    /// The rulebook's folder can't be opened.
    Folder {
        /// The folder.
        path: PathBuf,
        /// What the system said.
        error: io::Error,
    },
    /// The port can't be had.
    Port {
        /// The port.
        port: u16,
        /// What the system said.
        error: io::Error,
    },
    /// Something else the system refused.
    Io(io::Error),
}

impl core::fmt::Display for CannotServe {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Folder { path, error } => write!(
                f,
                "cannot open the folder `{}`: {error}; name the folder that holds the rulebook",
                path.display()
            ),
            Self::Port { port, error } if error.kind() == io::ErrorKind::AddrInUse => write!(
                f,
                "the port {port} is in use, perhaps by another desk; end that one, or leave --port out to take any that is free"
            ),
            Self::Port { port, error } => write!(
                f,
                "cannot listen on the port {port}: {error}; leave --port out to take any that is free"
            ),
            Self::Io(error) => write!(f, "cannot serve the desk: {error}"),
        }
    }
}

impl std::error::Error for CannotServe {}

/// A desk that listens.
#[derive(Debug)]
pub struct Server {
    listener: TcpListener,
    address: SocketAddr,
    desk: Arc<Desk>,
    _watcher: Option<notify::RecommendedWatcher>,
}

impl Server {
    /// Reads the rulebook, begins to watch its folder, and listens on 127.0.0.1.
    ///
    /// A rulebook with errors is opened all the same: the desk shows them.
    ///
    /// # Errors
    ///
    /// [`CannotServe`] when the folder can't be opened or the port can't be had.
    ///
    /// ```
    /// use oxyfolio::desk::{Options, Server};
    ///
    /// let server = Server::open(Options::default())?;
    /// assert!(server.address().ip().is_loopback());
    /// # Ok::<(), oxyfolio::desk::CannotServe>(())
    /// ```
    pub fn open(options: Options) -> Result<Self, CannotServe> {
        if let Some(folder) = &options.rules {
            std::fs::read_dir(folder).map_err(|error| CannotServe::Folder {
                path: folder.clone(),
                error,
            })?;
        }
        let port = options.port;
        let failed = |error| CannotServe::Port { port, error };
        let listener = TcpListener::bind((Ipv4Addr::LOCALHOST, port)).map_err(failed)?;
        listener.set_nonblocking(true).map_err(failed)?;
        let address = listener.local_addr().map_err(failed)?;
        let folder = options.rules.clone();
        let desk = Arc::new(Desk::new(options, address.port()));
        let watcher = match folder {
            Some(folder) => {
                watch::start(folder, &desk).map_err(|error| CannotServe::Io(io::Error::other(error)))?
            }
            None => None,
        };
        Ok(Self {
            listener,
            address,
            desk,
            _watcher: watcher,
        })
    }

    /// Where it listens.
    #[must_use]
    pub const fn address(&self) -> SocketAddr {
        self.address
    }

    /// Serves until the program is interrupted (Ctrl-C).
    ///
    /// # Errors
    ///
    /// What the system says when it can't be served.
    pub fn serve_until_interrupted(self) -> io::Result<()> {
        self.serve(async {
            // Where no signal can be had, the desk is ended by ending the program.
            if tokio::signal::ctrl_c().await.is_err() {
                std::future::pending::<()>().await;
            }
        })
    }

    /// Serves until a future is ready, then lets answers that are under way end.
    ///
    /// # Errors
    ///
    /// What the system says when it can't be served.
    pub fn serve(self, until: impl Future<Output = ()>) -> io::Result<()> {
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_all()
            .build()?;
        runtime.block_on(self.accept(until))?;
        // A typesetting run may be under way; its own time limit ends it.
        runtime.shutdown_timeout(END_WITHIN);
        Ok(())
    }

    async fn accept(self, until: impl Future<Output = ()>) -> io::Result<()> {
        let listener = tokio::net::TcpListener::from_std(self.listener)?;
        let router = routes::router(&self.desk);
        let graceful = GracefulShutdown::new();
        let places = Arc::new(Semaphore::new(MOST_CONNECTIONS));
        let mut until = pin!(until);
        loop {
            let accepted = match select(until.as_mut(), pin!(listener.accept())).await {
                Either::Left(_) => break,
                Either::Right((accepted, _)) => accepted,
            };
            let Ok((stream, _)) = accepted else {
                // Too many open files, or a caller who is gone: others may come.
                tokio::time::sleep(Duration::from_millis(50)).await;
                continue;
            };
            let Ok(place) = Arc::clone(&places).try_acquire_owned() else {
                continue;
            };
            let connection = http1::Builder::new()
                .timer(TokioTimer::new())
                .header_read_timeout(HEAD_WITHIN)
                .max_buf_size(LONGEST_HEAD)
                .serve_connection(TokioIo::new(stream), TowerToHyperService::new(router.clone()));
            let connection = graceful.watch(connection);
            tokio::spawn(async move {
                // A caller who goes away in the middle is no concern of the others.
                let _ = connection.await;
                drop(place);
            });
        }
        self.desk.end();
        // What isn't done by then is cut off.
        let _ = tokio::time::timeout(END_WITHIN, graceful.shutdown()).await;
        Ok(())
    }
}
