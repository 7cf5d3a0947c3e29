//! The same book gives the same bytes, wherever and by whomever it is printed: as much of that as one machine can show.

use std::{collections::BTreeMap, fs, path::Path, process::Command};

/// Prints cards in two sizes and sheets, in every form, and reads all files.
fn print(folder: &Path, strange: impl Fn(&mut Command)) -> BTreeMap<String, Vec<u8>> {
    let out = folder.join("printed");
    for options in [
        &[
            "--paper", "alone", "--paper", "a4", "--size", "id-1", "--size", "a6",
        ][..],
        &["--only", "check-off", "--only", "log", "--only", "poster"],
        &["--only", "log", "--as", "svg"],
        &["--only", "poster", "--as", "png"],
    ] {
        let mut command = Command::new(env!("CARGO_BIN_EXE_oxyfolio"));
        command.arg("cards").args(options).arg("--out").arg(&out);
        strange(&mut command);
        let output = command.output().unwrap();
        assert!(
            output.status.success(),
            "{}",
            String::from_utf8_lossy(&output.stderr)
        );
    }
    let file = |path: std::path::PathBuf| {
        let name = path.file_name().unwrap().to_str().unwrap().to_owned();
        (name, fs::read(&path).unwrap())
    };
    let entries = fs::read_dir(out).unwrap();
    entries.map(|entry| file(entry.unwrap().path())).collect()
}

/// Another home, language, time zone, temporary folder, working folder, umask and number of processors; fonts, packages and
/// settings where a program might look for them; every variable that typst takes notice of.
#[test]
#[cfg(unix)]
fn the_same_rulebook_prints_the_same_bytes_in_any_surroundings() {
    use std::os::unix::fs::PermissionsExt as _;

    let folder = tempfile::tempdir().unwrap();
    let home = folder.path().join("a home, with ü");
    let temporary = home.join("tmp");
    let fonts = home.join(".local/share/fonts");
    let packages = home.join(".local/share/typst/packages");
    for needed in [&temporary, &fonts, &packages] {
        fs::create_dir_all(needed).unwrap();
    }
    // The wrong letters under the right name.
    fs::write(fonts.join("NotoSans-Regular.ttf"), notosans::BOLD_TTF).unwrap();
    fs::write(home.join("main.typ"), "#panic(\"not this one\")").unwrap();
    let wrapper = home.join("typst");
    fs::write(
        &wrapper,
        "#!/bin/sh\numask 077\nif taskset -c 0 true 2>/dev/null; then exec taskset -c 0 typst \"$@\"; fi\nexec typst \"$@\"\n",
    )
    .unwrap();
    fs::set_permissions(&wrapper, fs::Permissions::from_mode(0o755)).unwrap();

    let (here, there) = (folder.path().join("here"), folder.path().join("there"));
    let usual = print(&here, |_| {});
    let strange = print(&there, |command| {
        command
            .current_dir(&home)
            .arg("--typst")
            .arg(&wrapper)
            .envs([
                ("LANG", "tr_TR.UTF-8"),
                ("LC_ALL", "de_DE.UTF-8"),
                ("LANGUAGE", "ar"),
                ("TZ", "Pacific/Kiritimati"),
                ("SOURCE_DATE_EPOCH", "86400"),
                ("TYPST_FEATURES", "html"),
                ("TYPST_ROOT", "/"),
                ("RAYON_NUM_THREADS", "1"),
                ("USER", "somebody-else"),
                ("NO_COLOR", "1"),
                ("COLUMNS", "40"),
            ])
            .env("HOME", &home)
            .env("TMPDIR", &temporary)
            .env("XDG_DATA_HOME", home.join(".local/share"))
            .env("XDG_CONFIG_HOME", &home)
            .env("TYPST_FONT_PATHS", &fonts)
            .env("TYPST_PACKAGE_PATH", &packages);
    });
    let names = |files: &BTreeMap<String, Vec<u8>>| files.keys().cloned().collect::<Vec<_>>();
    assert_eq!(names(&usual), names(&strange));
    assert_eq!(usual.len(), 9, "{:?}", names(&usual));
    for (name, bytes) in &usual {
        assert!(bytes.len() > 2000, "{name}");
        assert!(*bytes == strange[name], "{name} differs");
    }
    let left = fs::read_dir(&temporary).unwrap().count();
    assert_eq!(left, 0, "nothing is left in the temporary folder");
}
