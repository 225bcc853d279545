//! From the tree to a shop file, and from a place in that file back to section and key.

use std::ops::Range;

use crate::SectionId;
use crate::branch::{Branch, Part, Said, Shape};

/// Where each section and key stands in the text made of them.
#[derive(Debug, Clone, Default)]
pub(crate) struct Places(Vec<Place>);

#[derive(Debug, Clone)]
struct Place {
    range: Range<usize>,
    section: SectionId,
    key: Option<String>,
}

impl Places {
    /// The section and key that a place in the text belongs to: the innermost that holds it.
    pub fn find(&self, at: usize) -> Option<(SectionId, Option<&str>)> {
        // The list is in the order of the text, and what is inside stands behind what it is in.
        let end = self.0.partition_point(|place| place.range.start <= at);
        let before = self.0.get(..end).unwrap_or_default();
        let place = before.iter().rev().find(|place| place.range.contains(&at))?;
        Some((place.section, place.key.as_deref()))
    }
}

/// The shop file, and the places in it.
pub(crate) fn written(whole: &Branch) -> (String, Places) {
    let mut page = Page::default();
    page.section(whole, "");
    page.text.push_str(&whole.around.after);
    (page.text, page.places)
}

#[derive(Default)]
struct Page {
    text: String,
    places: Places,
}

impl Page {
    fn section(&mut self, section: &Branch, path: &str) {
        let headed = |part: &&Part| matches!(part, Part::Section(inner) if matches!(inner.shape, Shape::Table | Shape::List));
        for part in section.parts.iter().filter(|part| !headed(part)) {
            match part {
                Part::Said(said) => {
                    self.text.push_str(&said.around.before);
                    self.said(section.id, said);
                    self.text.push_str(&said.around.after);
                    self.text.push('\n');
                }
                Part::Section(inner) if inner.shape == Shape::Inline => {
                    self.text.push_str(&inner.around.before);
                    self.inline(inner);
                    self.text.push_str(&inner.around.after);
                    self.text.push('\n');
                }
                Part::Section(_) => {}
            }
        }
        for part in section.parts.iter().filter(headed) {
            let Part::Section(inner) = part else { continue };
            let path = if path.is_empty() { inner.kind.clone() } else { format!("{path}.{}", inner.kind) };
            self.text.push_str(&inner.around.before);
            let start = self.text.len();
            self.text.push_str(&if inner.shape == Shape::List { format!("[[{path}]]") } else { format!("[{path}]") });
            self.place(start, inner.id, None);
            self.text.push_str(&inner.around.after);
            self.text.push('\n');
            self.section(inner, &path);
        }
    }

    fn said(&mut self, section: Option<SectionId>, said: &Said) {
        let start = self.text.len();
        self.text.push_str(&said.key);
        self.text.push_str(" = ");
        self.text.push_str(&said.value);
        self.place(start, section, Some(said.key.clone()));
    }

    fn inline(&mut self, section: &Branch) {
        self.text.push_str(&section.kind);
        self.text.push_str(" = ");
        let (start, mine) = (self.text.len(), self.places.0.len());
        self.text.push('{');
        for (count, part) in section.parts.iter().enumerate() {
            self.text.push_str(if count == 0 { " " } else { ", " });
            match part {
                Part::Said(said) => self.said(section.id, said),
                Part::Section(inner) => self.inline(inner),
            }
        }
        self.text.push_str(if section.parts.is_empty() { "}" } else { " }" });
        if let Some(id) = section.id {
            self.places.0.insert(mine, Place { range: start..self.text.len(), section: id, key: None });
        }
    }

    fn place(&mut self, start: usize, section: Option<SectionId>, key: Option<String>) {
        if let Some(section) = section {
            self.places.0.push(Place { range: start..self.text.len(), section, key });
        }
    }
}
