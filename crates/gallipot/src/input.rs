//! Reading the shop file, in TOML or as Gallipot keeps it: its first bytes say which, not its name.

use std::io::Read;
use std::path::Path;

use planner::needs::kinds;
use reference::Reference;
use shop::{Problem, Shop, WeatherFile};
use store::Store;
use units::System;

use crate::args::Common;
use crate::problems;

/// Why a command gives no answer.
pub enum Failure {
    /// In one sentence.
    Said(String),
    /// The shop file's problems.
    File(ShopFile, Vec<Problem>),
}

impl Failure {
    /// Prints it to standard error.
    pub fn print(&self) {
        match self {
            Self::Said(text) => anstream::eprintln!("gallipot: {text}"),
            Self::File(file, found) => anstream::eprintln!("{}", problems::render(file, found)),
        }
    }
}

/// A shop file as it was read.
pub struct ShopFile {
    /// Its path as given.
    pub path: String,
    /// Its bytes; of one that Gallipot keeps, those of the shop file that says the same.
    pub bytes: Vec<u8>,
    /// Whether Gallipot keeps it.
    pub kept: bool,
}

/// The first bytes of a file that SQLite keeps (SQLite file format, section 1.3.1).
const SQLITE: &[u8] = b"SQLite format 3\0";

/// A file longer than this is read no further; the reader then refuses it.
const LONGEST_READ: u64 = 64 << 20;

impl ShopFile {
    /// Reads the bytes of the file, or of standard input for `-`.
    pub fn open(path: &Path) -> Result<Self, Failure> {
        let shown = path.display().to_string();
        let mut bytes = Vec::new();
        let read = if shown == "-" {
            std::io::stdin().take(LONGEST_READ).read_to_end(&mut bytes)
        } else {
            std::fs::File::open(path).and_then(|file| file.take(LONGEST_READ).read_to_end(&mut bytes))
        };
        match read {
            Ok(_) if bytes.starts_with(SQLITE) => {
                let bytes = Store::open_read_only(path)?.export()?.into_bytes();
                Ok(Self { path: shown, bytes, kept: true })
            }
            Ok(_) => Ok(Self { path: shown, bytes, kept: false }),
            Err(error) => {
                Err(Failure::Said(format!("cannot read {shown}: {error}. Give the path of a shop file, such as examples/alder-lock.toml.")))
            }
        }
    }

    /// The shop it describes.
    pub fn shop(&self) -> Result<Shop, Vec<Problem>> {
        let mut shop = shop::read(&self.bytes, kinds(), Reference::embedded())?;
        if let Some(file) = &mut shop.room.weather {
            file.text = Some(self.weather(file).map_err(|problem| vec![problem])?);
        }
        Ok(shop)
    }

    /// The weather that the shop file names, from beside it.
    fn weather(&self, file: &WeatherFile) -> Result<String, Problem> {
        let mend = "Give the CSV of a typical year from PVGIS or an EnergyPlus weather file, or leave `weather` out.";
        let problem = |what: String| Problem { at: Some(file.at.clone()), what, mend: mend.to_owned() };
        let path = Path::new(&self.path).with_file_name(&file.path);
        let mut text = String::new();
        let read = std::fs::File::open(&path).and_then(|file| file.take(LONGEST_READ).read_to_string(&mut text));
        read.map_err(|error| problem(format!("cannot read {}: {error}", path.display())))?;
        weather::read(&text).map_err(|error| problem(format!("{}: {error}", path.display())))?;
        Ok(text)
    }

    /// Its text, as far as it is text.
    pub fn text(&self) -> String {
        String::from_utf8_lossy(&self.bytes).into_owned()
    }
}

/// The file and its shop; the units wanted stand in the shop.
pub fn read(common: &Common) -> Result<(ShopFile, Shop), Failure> {
    let file = ShopFile::open(&common.shop)?;
    match file.shop() {
        Ok(mut shop) => {
            if let Some(units) = common.units {
                shop.units = System::from(units);
            }
            Ok((file, shop))
        }
        Err(found) => Err(Failure::File(file, found)),
    }
}
