//! Reading the shop file, in TOML or as Gallipot keeps it: its first bytes say which, not its name.

use std::io::Read;
use std::path::Path;

use planner::needs::kinds;
use reference::Reference;
use shop::{Problem, Shop};
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
    /// How many bytes a shop file may have here.
    pub largest: usize,
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
                Ok(Self { path: shown, bytes, kept: true, largest: store::LARGEST_BYTES })
            }
            Ok(_) => Ok(Self { path: shown, bytes, kept: false, largest: shop::LARGEST_BYTES }),
            Err(error) => {
                Err(Failure::Said(format!("cannot read {shown}: {error}. Give the path of a shop file, such as examples/alder-lock.toml.")))
            }
        }
    }

    /// The shop it describes.
    pub fn shop(&self) -> Result<Shop, Vec<Problem>> {
        let mut shop = shop::read_up_to(self.largest, &self.bytes, kinds(), Reference::embedded())?;
        keep::read_weather(&mut shop, Path::new(&self.path)).map_err(|problem| vec![problem])?;
        Ok(shop)
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
