//! Sources, numbered as a sheet names them: on paper nothing can be followed.

use reference::Reference;

use crate::frame::MAKER;
use crate::words::sentence;

/// Sources, numbered as a sheet names them.
#[derive(Debug, Default)]
pub(super) struct Sources<'a>(Vec<&'a str>);

impl<'a> Sources<'a> {
    /// The number of a source.
    pub(super) fn number(&mut self, key: &'a str) -> usize {
        let place = self.0.iter().position(|known| *known == key).unwrap_or_else(|| {
            self.0.push(key);
            self.0.len() - 1
        });
        place + 1
    }

    /// What each number stands for, and how far it may be believed.
    pub(super) fn list(&self, reference: &Reference) -> Vec<String> {
        let said = |key: &&str| match reference.sources.get(*key) {
            Some(source) if *key == "common-practice" => sentence(&source.standing.to_string()),
            Some(source) => format!("{} ({})", source.title, source.standing),
            None if *key == MAKER.0 => sentence(MAKER.1),
            None => (*key).to_owned(),
        };
        self.0.iter().map(said).collect()
    }
}
