//! Puts finished files in place: all of them or none.

use std::{
    fs,
    io::{self, Write as _},
    path::{Path, PathBuf},
};

use tempfile::NamedTempFile;

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
        written.push((beside(&path, bytes).map_err(failed(&path))?, path));
    }
    let mut paths = Vec::new();
    for (file, path) in written {
        take_its_name(file, &path).map_err(failed(&path))?;
        paths.push(path);
    }
    Ok(paths)
}

/// Writes one file: whole, beside the old one, before it takes its name.
///
/// # Errors
///
/// What the system says when it can't be written; the old file is then as it was.
pub fn replace(path: &Path, bytes: &[u8]) -> io::Result<()> {
    take_its_name(beside(path, bytes)?, path)
}

/// The new file in the folder of the old.
fn beside(path: &Path, bytes: &[u8]) -> io::Result<NamedTempFile> {
    if path.is_dir() {
        return Err(io::ErrorKind::IsADirectory.into());
    }
    let folder = match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    let mut file = tempfile::Builder::new()
        .prefix(".oxyfolio-")
        .tempfile_in(folder)?;
    file.write_all(bytes)?;
    file.as_file().sync_all()?;
    Ok(file)
}

fn take_its_name(file: NamedTempFile, path: &Path) -> io::Result<()> {
    make_readable(file.path());
    file.persist(path).map_err(|error| error.error)?;
    Ok(())
}

/// Temporary files are private; what is printed is for everybody who may read the folder.
fn make_readable(path: &Path) {
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        // Where this fails the file is still there, readable by who printed it.
        let _ = fs::set_permissions(path, fs::Permissions::from_mode(0o644));
    }
    #[cfg(not(unix))]
    let _ = path;
}
