//! Working a sheet from words, as the command line does.

use bench::{Page, read, sheet};
use reference::Reference;
use units::System;

/// The page of a sheet for options given as `--name value`.
pub fn page(name: &str, given: &[(&str, &str)]) -> Page {
    let sheet = sheet(name).unwrap();
    let reference = Reference::embedded();
    let reply = read(sheet, given, reference).unwrap_or_else(|refusals| panic!("{name} {given:?}: {refusals:?}"));
    sheet.work(&reply, reference, System::Metric).unwrap_or_else(|error| panic!("{name} {given:?}: {error}"))
}
