//! The description as a tree: what stands between a shop file and the rows of the database.

use toml_edit::{Array, Decor, DocumentMut, InlineTable, Item, Key, RawString, Table, TomlError, Value};

use crate::SectionId;

/// A section, what is said in it, and the sections inside it.
#[derive(Debug, Clone, Default)]
pub(crate) struct Branch {
    /// Its number; `None` until it is stored.
    pub id: Option<SectionId>,
    /// The key it stands under: `room`, `machine`, `point` …, as written.
    pub kind: String,
    pub shape: Shape,
    pub around: Around,
    /// In the order of the file.
    pub parts: Vec<Part>,
}

/// How a section is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Shape {
    /// The file as a whole.
    #[default]
    Whole,
    /// `[room]`
    Table,
    /// `[[machine]]`
    List,
    /// `maker = { … }`
    Inline,
    /// Not at all: a template's point nothing is said about, which the log speaks of.
    Unwritten,
}

pub(crate) const SHAPES: &[(&str, Shape)] =
    &[("whole", Shape::Whole), ("table", Shape::Table), ("list", Shape::List), ("inline", Shape::Inline), ("unwritten", Shape::Unwritten)];

impl Shape {
    pub fn word(self) -> &'static str {
        SHAPES.iter().find(|(_, shape)| *shape == self).map_or("whole", |(word, _)| word)
    }

    pub fn from_word(word: &str) -> Self {
        SHAPES.iter().find(|(known, _)| *known == word).map_or(Self::Whole, |(_, shape)| *shape)
    }
}

/// The blanks and comments around a key or a header, so that the file comes back as its writer left it.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct Around {
    pub before: String,
    pub after: String,
}

#[derive(Debug, Clone)]
pub(crate) enum Part {
    Said(Said),
    Section(Branch),
}

/// One key and its value, as written.
#[derive(Debug, Clone, Default)]
pub(crate) struct Said {
    pub key: String,
    pub value: String,
    pub around: Around,
}

impl Branch {
    /// Reads a shop file.
    pub fn from_toml(text: &str) -> Result<Self, TomlError> {
        let document: DocumentMut = text.parse()?;
        let after = text_of(Some(document.trailing()));
        let around = Around { before: String::new(), after };
        Ok(Self { around, parts: parts_of(document.as_table()), ..Self::default() })
    }

    /// A template's point nothing is said about but its name.
    pub fn unwritten_point(name: &str) -> Self {
        let said = Said { key: "name".to_owned(), value: crate::Value::Text(name.to_owned()).to_toml(), around: Around::default() };
        Self { kind: "point".to_owned(), shape: Shape::Unwritten, parts: vec![Part::Said(said)], ..Self::default() }
    }

    pub fn said(&self) -> impl Iterator<Item = &Said> {
        self.parts.iter().filter_map(|part| if let Part::Said(said) = part { Some(said) } else { None })
    }

    pub fn sections(&self) -> impl Iterator<Item = &Self> {
        self.parts.iter().filter_map(|part| if let Part::Section(section) = part { Some(section) } else { None })
    }

    /// The value of a key, as written.
    pub fn get(&self, key: &str) -> Option<&str> {
        self.said().find(|said| said.key == key).map(|said| said.value.as_str())
    }

    /// The text said for a key, without its quotation marks.
    pub fn text(&self, key: &str) -> Option<String> {
        self.get(key).map(|written| crate::Value::from_toml(written).plain())
    }
}

fn parts_of(table: &Table) -> Vec<Part> {
    let mut parts = Vec::new();
    let mut headed: Vec<(isize, Branch)> = Vec::new();
    for (name, item) in table {
        let Some(key) = table.key(name) else { continue };
        let kind = key.display_repr().into_owned();
        match item {
            Item::None => {}
            Item::Value(Value::Array(list)) if is_list_of_tables(list) => {
                let tables = list.iter().filter_map(Value::as_inline_table);
                headed.extend(
                    tables.map(|one| (0, inline(&kind, one, Shape::List, Around { before: "\n".to_owned(), after: String::new() }))),
                );
            }
            Item::Value(value) => parts.push(part(key, kind, value)),
            Item::Table(inner) if inner.is_dotted() => {
                let parts_inside = parts_of(inner);
                parts.push(Part::Section(Branch { kind, shape: Shape::Inline, parts: parts_inside, ..Branch::default() }));
            }
            Item::Table(inner) => headed.push((inner.position().unwrap_or(0), below_header(kind, inner, Shape::Table))),
            Item::ArrayOfTables(list) => {
                headed.extend(list.iter().map(|one| (one.position().unwrap_or(0), below_header(kind.clone(), one, Shape::List))));
            }
        }
    }
    headed.sort_by_key(|(position, _)| *position);
    parts.extend(headed.into_iter().map(|(_, branch)| Part::Section(branch)));
    parts
}

fn is_list_of_tables(list: &Array) -> bool {
    !list.is_empty() && list.iter().all(Value::is_inline_table)
}

fn below_header(kind: String, table: &Table, shape: Shape) -> Branch {
    Branch { id: None, kind, shape, around: around(table.decor(), table.decor()), parts: parts_of(table) }
}

fn part(key: &Key, kind: String, value: &Value) -> Part {
    let around = around(key.leaf_decor(), value.decor());
    if let Value::InlineTable(table) = value {
        return Part::Section(inline(&kind, table, Shape::Inline, around));
    }
    let mut bare = value.clone();
    bare.decor_mut().clear();
    Part::Said(Said { key: kind, value: bare.to_string(), around })
}

fn inline(kind: &str, table: &InlineTable, shape: Shape, around: Around) -> Branch {
    let mut parts = Vec::new();
    for (name, value) in table {
        let Some(key) = table.key(name) else { continue };
        match part(key, key.display_repr().into_owned(), value) {
            // Blanks between braces are ours to set.
            Part::Said(said) => parts.push(Part::Said(Said { around: Around::default(), ..said })),
            Part::Section(section) => parts.push(Part::Section(Branch { around: Around::default(), ..section })),
        }
    }
    Branch { id: None, kind: kind.to_owned(), shape, around, parts }
}

fn around(before: &Decor, after: &Decor) -> Around {
    Around { before: text_of(before.prefix()), after: text_of(after.suffix()) }
}

fn text_of(raw: Option<&RawString>) -> String {
    raw.and_then(RawString::as_str).unwrap_or_default().to_owned()
}
