//! What else people call things.

use serde::Deserialize;

use crate::Reference;

/// A word and the key or name it stands for.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Synonym {
    /// The word, in any writing.
    pub word: String,
    /// What it stands for.
    pub means: String,
}

/// A word without its dashes, blanks and capitals.
fn folded(word: &str) -> String {
    word.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

impl Reference {
    /// The known word that somebody means: the word itself, or the same in another writing, or what it is a synonym of.
    #[must_use]
    pub fn meant<'k>(&self, word: &str, known: impl IntoIterator<Item = &'k str>) -> Option<&'k str> {
        let known: Vec<&str> = known.into_iter().collect();
        if let Some(exact) = known.iter().find(|key| **key == word) {
            return Some(exact);
        }
        let plain = folded(word);
        let means = self.synonyms.values().find(|synonym| folded(&synonym.word) == plain).map(|synonym| folded(&synonym.means));
        let alike = |key: &&&str| folded(key) == plain;
        known.iter().find(alike).or_else(|| known.iter().find(|key| Some(folded(key)) == means)).copied()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn writing_and_everyday_words_are_forgiven() {
        let reference = Reference::embedded();
        let materials = || reference.materials.keys().map(String::as_str);
        assert_eq!(reference.meant("mild steel", materials()), Some("mild-steel"));
        assert_eq!(reference.meant("Aluminum", materials()), Some("aluminium"));
        assert_eq!(reference.meant("unobtainium", materials()), None);
        assert_eq!(reference.meant("way oil", reference.classes.keys().map(String::as_str)), Some("slideway-oil"));
    }

    #[test]
    fn no_synonym_hides_a_key() {
        let reference = Reference::embedded();
        let keys = reference.fluids.keys().chain(reference.classes.keys()).chain(reference.materials.keys());
        for key in keys {
            assert!(
                reference.synonyms.values().all(|synonym| folded(&synonym.word) != folded(key) || folded(&synonym.means) == folded(key)),
                "{key}"
            );
        }
    }
}
