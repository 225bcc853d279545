//! Draws the pictures of the README anew.

use std::io;
use std::process::ExitCode;

use crate::{browser, cargo, root, run};

/// `cargo xtask pictures`: a browser draws them, and they go to `docs/pictures`.
pub(crate) fn pictures() -> ExitCode {
    let mut steps = browser();
    steps.push(("draw the pictures", cargo(&["test", "--package", "pages", "--test", "browser", "pictures", "--", "--ignored"])));
    let drawn = run(steps);
    if drawn != ExitCode::SUCCESS {
        return drawn;
    }
    match copied() {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("── pictures: {error}");
            ExitCode::FAILURE
        }
    }
}

fn copied() -> io::Result<()> {
    let into = root().join("docs/pictures");
    std::fs::create_dir_all(&into)?;
    for picture in std::fs::read_dir(root().join("target/pictures"))? {
        let picture = picture?;
        std::fs::copy(picture.path(), into.join(picture.file_name()))?;
    }
    Ok(())
}
