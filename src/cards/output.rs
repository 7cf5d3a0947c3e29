//! Puts finished files in place: all of them or none.

use std::{
    fs,
    io::Write as _,
    path::{Path, PathBuf},
};

use super::CardsError;

/// Writes files into a folder, which is made if it isn't there. New files are first written whole beside the old
/// ones, and take their names only when all of them are.
///
/// # Errors
///
/// [`CardsError::Output`] when a file can't be written.
pub fn replace_all(folder: &Path, files: &[(impl AsRef<Path>, Vec<u8>)]) -> Result<Vec<PathBuf>, CardsError> {
    let failed = |path: &Path| {
        let path = path.to_owned();
        |error| CardsError::Output { path, error }
    };
    fs::create_dir_all(folder).map_err(failed(folder))?;
    let mut written = Vec::new();
    for (name, bytes) in files {
        let path = folder.join(name);
        if path.is_dir() {
            let error = std::io::Error::from(std::io::ErrorKind::IsADirectory);
            return Err(failed(&path)(error));
        }
        let mut file = tempfile::Builder::new()
            .prefix(".cards-")
            .tempfile_in(folder)
            .map_err(failed(&path))?;
        file.write_all(bytes)
            .and_then(|()| file.as_file().sync_all())
            .map_err(failed(&path))?;
        written.push((file, path));
    }
    let mut paths = Vec::new();
    for (file, path) in written {
        make_readable(file.path());
        file.persist(&path).map_err(|error| failed(&path)(error.error))?;
        paths.push(path);
    }
    Ok(paths)
}

/// Temporary files are private; cards are for everybody who may read the folder.
fn make_readable(path: &Path) {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        // Where this fails the cards are still there, readable by who printed them.
        let _ = fs::set_permissions(path, fs::Permissions::from_mode(0o644));
    }
    #[cfg(not(unix))]
    let _ = path;
}
