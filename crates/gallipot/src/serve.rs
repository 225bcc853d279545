//! `serve`: opens the shop as pages in a browser.

use std::io::{IsTerminal, Write};
use std::path::Path;
use std::process::ExitCode;

use jiff::ZonedDateTime;
use pages::{App, BasePath, Identity, Origin, Passphrase, Settings, SettingsError, ShopSource};
use store::{Moment, Store, StoreError};

use crate::args::Serve;
use crate::input::Failure;

/// Holds the passphrase where neither a file nor a terminal does. It never comes from the command line, which every user of a machine sees.
const VARIABLE: &str = "GALLIPOT_PASSPHRASE";

/// Runs the command.
pub fn run(wanted: &Serve) -> Result<ExitCode, Failure> {
    let (source, read_only) = source(wanted)?;
    let mut settings = Settings {
        read_only,
        base_path: BasePath::parse(&wanted.base_path).map_err(said)?,
        origin: wanted.origin.as_deref().map(Origin::parse).transpose().map_err(said)?,
        ..Settings::local(wanted.address)
    };
    settings.passphrase = passphrase(wanted, settings.check())?;
    settings.identity = identity(wanted, settings.origin.as_ref())?;
    if let Some(identity) = settings.identity.as_ref().filter(|_| wanted.self_signed) {
        note(&format!("nobody vouches for this certificate; before you accept it, compare SHA-256 {}", identity.fingerprint()));
    }
    if wanted.address.ip().is_unspecified() {
        note("on another device, write this machine's own address in place of the one below");
    }
    let app = App::new(source, settings, note).map_err(said)?;
    pages::serve(&app, |address| {
        anstream::println!("{address}");
        // Whoever waits for the line must not wait for a full buffer; that nobody reads it is no reason not to serve.
        let _ = std::io::stdout().flush();
    })
    .map_err(said)?;
    Ok(ExitCode::SUCCESS)
}

/// Ends the name of a shop that Gallipot keeps.
const KEPT: &str = "gallipot";

/// The shop, and whether it can only be read: a shop file always is; one that Gallipot keeps is made where there is none.
fn source(wanted: &Serve) -> Result<(ShopSource, bool), Failure> {
    let path = &wanted.shop;
    if !path.exists() && !wanted.read_only && path.extension().is_some_and(|end| end == KEPT) {
        let store = Store::create(path)?;
        note(&format!("{} is a new shop; its first page asks what is in it", path.display()));
        return Ok((ShopSource::kept(store), false));
    }
    if !path.is_file() {
        let shown = path.display();
        let mend = format!("Give the path of a shop file, such as examples/alder-lock.toml, or a new name that ends in .{KEPT}.");
        return Err(Failure::Said(format!("there is no file {shown}. {mend}")));
    }
    let opened = if wanted.read_only { Err(StoreError::ReadOnly) } else { Store::open(path, Moment::from(&ZonedDateTime::now())) };
    match opened {
        Ok(store) => return Ok((ShopSource::kept(store), false)),
        Err(StoreError::NotOurs { .. }) => return Ok((ShopSource::file(path.clone()), wanted.read_only)),
        Err(StoreError::ReadOnly) => {}
        Err(error) => return Err(Failure::from(error)),
    }
    match Store::open_read_only(path) {
        Ok(store) => Ok((ShopSource::kept(store), true)),
        Err(StoreError::NotOurs { .. }) => Ok((ShopSource::file(path.clone()), true)),
        Err(error) => Err(Failure::from(error)),
    }
}

fn said(error: impl std::fmt::Display) -> Failure {
    Failure::Said(error.to_string())
}

fn note(text: &str) {
    anstream::eprintln!("gallipot: {text}");
}

/// The passphrase, from the file, the variable or, where one is needed, from whoever sits at the terminal.
fn passphrase(wanted: &Serve, without: Result<(), SettingsError>) -> Result<Option<Passphrase>, Failure> {
    let text = if let Some(path) = &wanted.passphrase_file {
        warn_if_open(path);
        Some(String::from_utf8(read(path)?).map_err(|_| Failure::Said(format!("{} is not a file of text", path.display())))?)
    } else if let Ok(text) = std::env::var(VARIABLE) {
        Some(text)
    } else if without.is_err() && std::io::stdin().is_terminal() {
        let asked = rpassword::prompt_password("Passphrase for whoever comes in: ");
        Some(asked.map_err(|error| Failure::Said(format!("the passphrase cannot be read: {error}")))?)
    } else {
        without.map_err(said)?;
        None
    };
    text.map(|text| Passphrase::new(&text).map_err(said)).transpose()
}

/// The certificate: the user's own; one made here and kept in the two files; or one made here for as long as the program runs.
fn identity(wanted: &Serve, origin: Option<&Origin>) -> Result<Option<Identity>, Failure> {
    let made = || {
        let names = [Some(wanted.address.ip().to_string()), origin.map(|origin| origin.host().to_owned())];
        Identity::make(&names.into_iter().flatten().collect::<Vec<_>>()).map_err(said)
    };
    let (certificate, key) = match (&wanted.certificate, &wanted.key) {
        (Some(certificate), Some(key)) => {
            if wanted.self_signed && !certificate.exists() && !key.exists() {
                let (public, secret) = made()?;
                write(key, &secret, true)?;
                write(certificate, &public, false)?;
            }
            warn_if_open(key);
            (read(certificate)?, read(key)?)
        }
        _ if wanted.self_signed => {
            let (public, secret) = made()?;
            (public.into_bytes(), secret.into_bytes())
        }
        _ => return Ok(None),
    };
    Identity::from_pem(&certificate, &key).map(Some).map_err(said)
}

fn read(path: &Path) -> Result<Vec<u8>, Failure> {
    std::fs::read(path).map_err(|error| Failure::Said(format!("cannot read {}: {error}", path.display())))
}

/// Writes a new file; a secret one can be read by its owner alone.
fn write(path: &Path, text: &str, secret: bool) -> Result<(), Failure> {
    let mut options = std::fs::OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, if secret { 0o600 } else { 0o644 });
    #[cfg(not(unix))]
    let _ = secret;
    let written = options.open(path).and_then(|mut file| file.write_all(text.as_bytes()));
    written.map_err(|error| Failure::Said(format!("cannot write {}: {error}", path.display())))
}

/// Says so where others on this machine can read a secret.
fn warn_if_open(path: &Path) {
    #[cfg(unix)]
    if std::fs::metadata(path).is_ok_and(|found| std::os::unix::fs::PermissionsExt::mode(&found.permissions()) & 0o077 != 0) {
        note(&format!("others on this machine can read {}; `chmod 600` keeps it yours", path.display()));
    }
    #[cfg(not(unix))]
    let _ = path;
}
