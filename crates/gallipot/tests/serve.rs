//! `serve` through the binary: who may come in is settled before anything is opened, and it ends when it is asked to.
#![expect(clippy::unwrap_used, reason = "a test fails by panicking")]

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::process::{Child, Command, Output, Stdio};

const SHOP: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/first-lathe.toml");

fn serve(arguments: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_gallipot"));
    command.args(["serve", SHOP]).args(arguments).stdin(Stdio::null()).env_remove("GALLIPOT_PASSPHRASE");
    command
}

fn refused(arguments: &[&str]) -> String {
    let Output { status, stdout, stderr } = serve(arguments).output().unwrap();
    assert_eq!(status.code(), Some(2), "{arguments:?}");
    assert!(stdout.is_empty());
    String::from_utf8(stderr).unwrap()
}

/// A server on a free port, and the one line it prints.
fn opened(command: &mut Command) -> (Child, String) {
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    let mut line = String::new();
    BufReader::new(child.stdout.take().unwrap()).read_line(&mut line).unwrap();
    (child, line.trim().to_owned())
}

fn ended(mut child: Child) -> String {
    // POSIX kill(1): the signal a service manager sends.
    assert!(Command::new("kill").arg(child.id().to_string()).status().unwrap().success());
    assert!(child.wait().unwrap().success());
    let mut said = String::new();
    child.stderr.take().unwrap().read_to_string(&mut said).unwrap();
    said
}

#[test]
fn it_is_not_opened_to_others_without_a_passphrase() {
    for arguments in [&["--address", "0.0.0.0:0"][..], &["--address", "[::]:0"], &["--origin", "https://garage.example"]] {
        assert!(refused(arguments).contains("passphrase"), "{arguments:?}");
    }
}

#[test]
fn what_cannot_be_used_is_refused_before_anything_is_opened() {
    let folder = tempfile::tempdir().unwrap();
    let short = folder.path().join("short.txt");
    std::fs::write(&short, "swordfish\n").unwrap();
    let short = short.to_str().unwrap();
    for (arguments, word) in [
        (&["--passphrase-file", short][..], "shorter"),
        (&["--passphrase-file", "/nowhere/pass.txt"], "cannot read"),
        (&["--base-path", "shop/"], "base path"),
        (&["--origin", "garage"], "address of pages"),
        (&["--address", "127.0.0.1"], "invalid"),
        (&["--certificate", short], "--key"),
        (&["--certificate", short, "--key", short], "certificate"),
    ] {
        let said = refused(arguments);
        assert!(said.contains(word), "{arguments:?}: {said}");
    }
    let none = Command::new(env!("CARGO_BIN_EXE_gallipot")).args(["serve", "/nowhere/shop.toml"]).output().unwrap();
    assert_eq!(none.status.code(), Some(2));
}

#[test]
fn it_prints_its_address_and_ends_when_asked() {
    let (child, line) = opened(&mut serve(&["--address", "127.0.0.1:0", "--base-path", "/shop"]));
    let (address, path) = line.strip_prefix("http://").unwrap().split_once('/').unwrap();
    assert_eq!(path, "shop/");
    let mut stream = TcpStream::connect(address).unwrap();
    stream.write_all(format!("GET /shop/ HTTP/1.1\r\nHost: {address}\r\nConnection: close\r\n\r\n").as_bytes()).unwrap();
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    assert!(answer.starts_with("HTTP/1.1 200"), "{answer}");
    assert_eq!(ended(child), "");
}

#[cfg(unix)]
#[test]
fn a_certificate_made_here_is_kept_and_its_key_is_its_owners_alone() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().unwrap();
    let (certificate, key) = (folder.path().join("shop.pem"), folder.path().join("shop.key"));
    let start = || {
        let files = ["--certificate", certificate.to_str().unwrap(), "--key", key.to_str().unwrap(), "--self-signed"];
        let mut command = serve(&["--address", "0.0.0.0:0"]);
        command.args(files).env("GALLIPOT_PASSPHRASE", "kettle harbour nine owls");
        let (child, line) = opened(&mut command);
        assert!(line.starts_with("https://"), "{line}");
        ended(child)
    };
    let first = start();
    assert!(first.contains("SHA-256") && !first.contains("kettle"), "{first}");
    assert_eq!(std::fs::metadata(&key).unwrap().permissions().mode() & 0o777, 0o600);
    let made = std::fs::read(&certificate).unwrap();
    assert_eq!(start(), first);
    assert_eq!(std::fs::read(&certificate).unwrap(), made);
}
