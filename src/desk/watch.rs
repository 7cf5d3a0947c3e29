//! Reads the rulebook again when one of its files is saved.
//!
//! Editors save in many ways: in place, or as a new file that takes the old one's name, with others beside it. So the
//! folder is watched and not its files, and it is read when it has been quiet for a moment.

use std::{
    fs,
    path::{Path, PathBuf},
    sync::{Arc, mpsc},
    thread,
    time::{Duration, Instant, SystemTime},
};

use notify::{EventKind, RecursiveMode, Watcher as _, event::AccessKind};

use super::routes::Desk;
use crate::compile::misnamed::Misnamed;

/// A save is over when nothing has happened for this long.
const QUIET: Duration = Duration::from_millis(30);

/// However busy the folder is, it is read after this long.
const AT_MOST: Duration = Duration::from_millis(120);

/// How often the folder is looked at besides: some file systems, network ones above all, tell nothing.
const LOOK: Duration = Duration::from_secs(2);

/// What a folder's files look like from outside.
type Seen = Vec<(PathBuf, u64, Option<SystemTime>)>;

/// Starts watching; ends with the desk. The watcher must be kept.
pub fn start(folder: PathBuf, desk: &Arc<Desk>) -> notify::Result<Option<notify::RecommendedWatcher>> {
    let (tell, told) = mpsc::channel::<()>();
    let watcher = notify::recommended_watcher(move |event: notify::Result<notify::Event>| {
        let matters = match event {
            // Our own reading opens files too.
            Ok(event) => !matches!(
                event.kind,
                EventKind::Access(kind) if !matches!(kind, AccessKind::Close(notify::event::AccessMode::Write))
            ),
            Err(_) => true,
        };
        if matters {
            // Nobody listens any more when the desk has ended.
            let _ = tell.send(());
        }
    });
    // A folder that can't be watched is still looked at from time to time.
    let watcher = watcher.and_then(|mut watcher| {
        watcher.watch(&folder, RecursiveMode::NonRecursive)?;
        Ok(watcher)
    });
    let desk = Arc::downgrade(desk);
    let mut seen = look(&folder);
    thread::Builder::new()
        .name("watch".to_owned())
        .spawn(move || {
            loop {
                let was_told = match told.recv_timeout(LOOK) {
                    Ok(()) => {
                        wait_for_quiet(&told);
                        true
                    }
                    Err(mpsc::RecvTimeoutError::Timeout) => false,
                    Err(mpsc::RecvTimeoutError::Disconnected) => {
                        thread::sleep(LOOK);
                        false
                    }
                };
                let Some(desk) = desk.upgrade() else {
                    return;
                };
                let now = look(&folder);
                if was_told || now != seen {
                    seen = now;
                    desk.read_again();
                }
            }
        })
        .map_err(notify::Error::io)?;
    Ok(watcher.ok())
}

fn wait_for_quiet(told: &mpsc::Receiver<()>) {
    let since = Instant::now();
    while since.elapsed() < AT_MOST && told.recv_timeout(QUIET).is_ok() {}
}

fn look(folder: &Path) -> Seen {
    let Ok(entries) = fs::read_dir(folder) else {
        return Seen::new();
    };
    let mut seen: Seen = entries
        .flatten()
        .filter(|entry| {
            let name = entry.file_name();
            let name = name.to_string_lossy();
            // A chapter saved under another ending is told too.
            name.to_lowercase().ends_with(".md") || Misnamed::of(&name).is_some()
        })
        .map(|entry| {
            let known = fs::metadata(entry.path()).ok();
            let size = known.as_ref().map_or(0, fs::Metadata::len);
            (entry.path(), size, known.and_then(|known| known.modified().ok()))
        })
        .collect();
    seen.sort();
    seen
}
