//! The weather that a shop file names, from beside it.

use std::fs::File;
use std::io::Read;
use std::path::Path;

use shop::{Problem, Shop};

/// A file longer than this is no year of hourly weather.
const LONGEST: u64 = 64 << 20;

/// Reads the weather file that a shop names into the shop; it stands beside the shop's own file.
///
/// # Errors
/// Where it cannot be read, with its place in the shop file.
pub fn read_weather(shop: &mut Shop, file: &Path) -> Result<(), Problem> {
    let Some(named) = &mut shop.room.weather else { return Ok(()) };
    let mend = "Give the CSV of a typical year from PVGIS or an EnergyPlus weather file, or leave `weather` out.";
    let problem = |what: String| Problem { at: Some(named.at.clone()), what, mend: mend.to_owned() };
    let path = file.with_file_name(&named.path);
    let mut text = String::new();
    let read = File::open(&path).and_then(|file| file.take(LONGEST).read_to_string(&mut text));
    read.map_err(|error| problem(format!("cannot read {}: {error}", path.display())))?;
    weather::read(&text).map_err(|error| problem(format!("{}: {error}", path.display())))?;
    named.text = Some(text.into());
    Ok(())
}
