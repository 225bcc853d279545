//! The sheets as files that need nothing else.

use std::sync::Arc;

use jiff::civil::Date;
use planner::Wishes;
use planner::round::{Facts, Uses};
use reference::Reference;
use shop::{Problem, Shop};
use store::SectionId;
use units::System;

use super::{Labels, Paper, Sheet, Size};
use crate::assets::Assets;
use crate::settings::{BasePath, Origin};
use crate::trouble::Trouble;
use crate::worked::Worked;

/// Which sheets are wanted, and how.
#[derive(Debug, Clone)]
pub struct Files<'a> {
    /// The sheets.
    pub sheets: &'a [Sheet],
    /// The paper.
    pub size: Size,
    /// The labels.
    pub labels: &'a Labels,
    /// The number of each pot, in the order of the shop; none where the shop is not kept.
    pub pots: &'a [Option<SectionId>],
    /// Below which address the pages are found, for the codes on the labels; as [`address`] reads it.
    pub address: Option<&'a str>,
    /// Today.
    pub today: Date,
    /// The units of the sheets.
    pub units: System,
}

/// A sheet as a file.
#[derive(Debug, Clone)]
pub struct Written {
    /// The file's name.
    pub name: String,
    /// What stands in it.
    pub html: String,
}

/// Why there are no sheets.
#[derive(Debug, thiserror::Error)]
pub enum PaperError {
    /// The shop cannot be worked out.
    #[error("the shop cannot be worked out")]
    Shop(Vec<Problem>),
    /// The program's own fault.
    #[error("the sheets cannot be drawn: {0}")]
    Fault(String),
}

/// Draws the sheets of a shop; with what the log says of it, where one is kept.
///
/// # Errors
/// [`PaperError`].
pub fn files(shop: &Arc<Shop>, log: Option<&(Facts, Uses)>, wanted: &Files<'_>) -> Result<Vec<Written>, PaperError> {
    let reference = Reference::embedded();
    let worked = Worked::new(shop, reference, &Wishes::default(), wanted.units, log).map_err(|trouble| match trouble {
        Trouble::Contradiction(found) => PaperError::Shop(found),
        Trouble::Fault(said) => PaperError::Fault(said),
        other => PaperError::Fault(format!("{other:?}")),
    })?;
    let styles = styles(wanted.size);
    let paper = Paper {
        worked: &worked,
        reference,
        today: wanted.today,
        size: wanted.size,
        pots: wanted.pots,
        address: wanted.address,
        styles: &styles,
        back: None,
    };
    let write = |sheet: &Sheet| {
        let html = paper.draw(*sheet, None, wanted.labels).map_err(|error| PaperError::Fault(error.to_string()))?;
        Ok(Written { name: format!("{}.html", sheet.word()), html })
    };
    wanted.sheets.iter().map(write).collect()
}

/// How a sheet of that size looks, in the file itself.
pub(super) fn styles(size: Size) -> String {
    let assets = Assets::get();
    format!("<style>{}{}</style>", assets.content("paper.css"), assets.content(size.style()))
}

/// The address below which the pages are found, such as `https://garage.example/shop`, without a slash at its end.
///
/// # Errors
/// A sentence that says what would do.
pub fn address(text: &str) -> Result<String, String> {
    let text = text.trim().trim_end_matches('/');
    let path = text.match_indices('/').nth(2).map_or(text.len(), |(at, _)| at);
    let (origin, path) = text.split_at(path);
    let origin = Origin::parse(origin).map_err(|error| error.to_string())?;
    let path = BasePath::parse(path).map_err(|error| error.to_string())?;
    Ok(format!("{}://{}{}", if origin.encrypted { "https" } else { "http" }, origin.authority, path.as_str()))
}

#[cfg(test)]
mod tests {
    use super::address;

    #[test]
    fn an_address_is_a_scheme_a_host_and_perhaps_a_path() {
        for (text, read) in [
            ("https://garage.example", "https://garage.example"),
            ("http://192.168.1.20:8087/", "http://192.168.1.20:8087"),
            ("https://Garage.example/shop/", "https://garage.example/shop"),
        ] {
            assert_eq!(address(text).as_deref(), Ok(read));
        }
        for text in ["garage.example", "javascript:alert(1)", "https://", "https://a.example/?b", "https://a.example//b"] {
            assert!(address(text).is_err(), "{text}");
        }
    }
}
