//! Kinds of places, jobs and sheets: what can be said about each, and what is supposed when nothing is said.
//!
//! The planner and the bench declare their kinds with these types and hand them to whoever reads answers: the shop file's reader, the
//! command line, a form. So a new kind is one file there and nothing here.

mod nearest;
mod size;

use std::collections::BTreeMap;
use std::marker::PhantomData;

use units::{Dimension, Quantity, System};

pub use nearest::did_you_mean;
pub use size::{NUMBERS, no_shop_has};

/// Where in a file an answer was written, in bytes.
pub type Span = std::ops::Range<usize>;

/// A kind of lubrication point, of job or of sheet.
#[derive(Debug, Clone, Copy)]
pub struct Kind {
    /// The word in the file, such as `leadscrew` or `cut`.
    pub name: &'static str,
    /// One sentence for people.
    pub about: &'static str,
    /// What can be said about it.
    pub fields: &'static [Field],
}

/// One thing that can be said about a place or job.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// The key in the file.
    pub name: &'static str,
    /// What kind of answer it takes.
    pub asks: Asks,
    /// The supposed value, written as a user would; empty where there is none.
    pub default: &'static str,
    /// Whether it may stay unsaid though nothing is supposed.
    pub optional: bool,
    /// Bibliography key of the supposed value.
    pub source: &'static str,
    /// What it means, for people.
    pub about: &'static str,
}

/// The kind of answer a field takes.
#[derive(Debug, Clone, Copy)]
pub enum Asks {
    /// A quantity with its unit.
    Quantity(Dimension),
    /// A plain number above zero.
    Number,
    /// Yes or no.
    Flag,
    /// One word of several.
    Choice(&'static [&'static str]),
    /// One or more words of several.
    Choices(&'static [&'static str]),
    /// A name in the trade's own writing, such as the thread `M10x1`; who asks for it reads it.
    Name,
    /// One or more materials by key.
    Materials,
    /// One or more fluids by key.
    Fluids,
    /// A file: whoever asks the user reads it and hands over its text.
    File,
}

impl Field {
    /// Whether there is no answer without the user.
    #[must_use]
    pub const fn is_required(&self) -> bool {
        self.default.is_empty() && !self.optional
    }

    /// The supposed value for a reader of these units: in its own unit where both systems write it alike, so that a month stays a month.
    #[must_use]
    pub fn supposed(&self, units: System) -> String {
        let typed = || self.default.to_owned();
        let Asks::Quantity(dimension) = self.asks else { return typed() };
        let Ok(base) = units::parse_any(dimension, self.default) else { return typed() };
        let [metric, inch] = [System::Metric, System::Inch].map(|system| units::show_base(dimension, base, system));
        if units == System::Metric || metric == inch {
            let own = self.default.split_once(' ').and_then(|(_, unit)| units::show_base_in(dimension, base, unit));
            return own.unwrap_or_else(typed);
        }
        units::show_base(dimension, base, units)
    }
}

/// A field whose answer has the type `T`, so that a kind reads what it declared and nothing else.
#[derive(Debug, Clone, Copy)]
pub struct Given<T> {
    field: Field,
    answer: PhantomData<T>,
}

impl<T> Given<T> {
    const fn declare(name: &'static str, asks: Asks, default: &'static str, source: &'static str, about: &'static str) -> Self {
        Self { field: Field { name, asks, default, optional: false, source, about }, answer: PhantomData }
    }

    /// The field without its type, for the kind's list.
    #[must_use]
    pub const fn field(&self) -> Field {
        self.field
    }
}

impl<Q: Quantity> Given<Q> {
    /// A quantity.
    #[must_use]
    pub const fn quantity(name: &'static str, default: &'static str, source: &'static str, about: &'static str) -> Self {
        Self::declare(name, Asks::Quantity(Q::DIMENSION), default, source, about)
    }
}

impl<Q: Quantity> Given<Option<Q>> {
    /// A quantity that may stay unsaid.
    #[must_use]
    pub const fn maybe(name: &'static str, about: &'static str) -> Self {
        let mut given = Self::declare(name, Asks::Quantity(Q::DIMENSION), "", "", about);
        given.field.optional = true;
        given
    }
}

impl Given<Option<f64>> {
    /// A plain number that may stay unsaid.
    #[must_use]
    pub const fn maybe_number(name: &'static str, about: &'static str) -> Self {
        let mut given = Self::declare(name, Asks::Number, "", "", about);
        given.field.optional = true;
        given
    }
}

impl Given<f64> {
    /// A plain number.
    #[must_use]
    pub const fn number(name: &'static str, default: &'static str, source: &'static str, about: &'static str) -> Self {
        Self::declare(name, Asks::Number, default, source, about)
    }
}

impl Given<bool> {
    /// Yes or no.
    #[must_use]
    pub const fn flag(name: &'static str, default: &'static str, source: &'static str, about: &'static str) -> Self {
        Self::declare(name, Asks::Flag, default, source, about)
    }
}

impl Given<&'static str> {
    /// One word of several.
    #[must_use]
    pub const fn choice(
        name: &'static str,
        of: &'static [&'static str],
        default: &'static str,
        source: &'static str,
        about: &'static str,
    ) -> Self {
        Self::declare(name, Asks::Choice(of), default, source, about)
    }

    /// A name in the trade's own writing.
    #[must_use]
    pub const fn name(name: &'static str, default: &'static str, source: &'static str, about: &'static str) -> Self {
        Self::declare(name, Asks::Name, default, source, about)
    }
}

impl Given<Option<&'static str>> {
    /// A name that may stay unsaid.
    #[must_use]
    pub const fn maybe_name(name: &'static str, about: &'static str) -> Self {
        let mut given = Self::declare(name, Asks::Name, "", "", about);
        given.field.optional = true;
        given
    }

    /// The text of a file, which may stay unsaid.
    #[must_use]
    pub const fn maybe_file(name: &'static str, about: &'static str) -> Self {
        let mut given = Self::declare(name, Asks::File, "", "", about);
        given.field.optional = true;
        given
    }

    /// One word of several that may stay unsaid.
    #[must_use]
    pub const fn maybe_choice(name: &'static str, of: &'static [&'static str], about: &'static str) -> Self {
        let mut given = Self::declare(name, Asks::Choice(of), "", "", about);
        given.field.optional = true;
        given
    }
}

impl Given<Vec<String>> {
    /// Several words; the default separates them by commas.
    #[must_use]
    pub const fn choices(
        name: &'static str,
        of: &'static [&'static str],
        default: &'static str,
        source: &'static str,
        about: &'static str,
    ) -> Self {
        Self::declare(name, Asks::Choices(of), default, source, about)
    }

    /// Fluids by key, which may stay unsaid.
    #[must_use]
    pub const fn fluids(name: &'static str, about: &'static str) -> Self {
        let mut given = Self::declare(name, Asks::Fluids, "", "", about);
        given.field.optional = true;
        given
    }

    /// Materials by key; the default separates them by commas.
    #[must_use]
    pub const fn materials(name: &'static str, default: &'static str, source: &'static str, about: &'static str) -> Self {
        Self::declare(name, Asks::Materials, default, source, about)
    }
}

/// An answer.
#[derive(Debug, Clone, PartialEq)]
pub enum Answer {
    /// In coherent SI units.
    Quantity(f64),
    /// A plain number.
    Number(f64),
    /// Yes or no.
    Flag(bool),
    /// One or more words.
    Words(Vec<String>),
}

/// Who gave an answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Origin {
    /// The user, at this place of the file.
    User(Span),
    /// Gallipot supposed it; the bibliography key says on what ground.
    Supposed(String),
}

/// The answers for one place or job: one for every field of its kind.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Answers(BTreeMap<&'static str, (Answer, Origin)>);

impl Answers {
    /// Puts an answer in.
    pub fn set(&mut self, name: &'static str, answer: Answer, origin: Origin) {
        self.0.insert(name, (answer, origin));
    }

    /// Where the user wrote the answer, if the user did.
    #[must_use]
    pub fn written_at(&self, name: &str) -> Option<Span> {
        match &self.0.get(name)?.1 {
            Origin::User(at) => Some(at.clone()),
            Origin::Supposed(_) => None,
        }
    }

    /// All answers by field name, with who gave them.
    pub fn iter(&self) -> impl Iterator<Item = (&'static str, &Answer, &Origin)> {
        self.0.iter().map(|(name, (answer, origin))| (*name, answer, origin))
    }

    fn answer(&self, name: &str) -> &Answer {
        // The reader fills every field of a kind, and a kind's own file is the only one that asks for them.
        &self.0.get(name).expect("a kind asks only for the fields it lists").0
    }
}

impl Answers {
    /// The answer to a quantity.
    #[must_use]
    pub fn quantity<Q: Quantity>(&self, field: &Given<Q>) -> Q {
        match self.answer(field.field.name) {
            Answer::Quantity(base) => Q::from_base(*base),
            other => unreachable!("`{}` is a quantity, not {other:?}", field.field.name),
        }
    }

    /// The answer to a quantity that may stay unsaid.
    #[must_use]
    pub fn maybe<Q: Quantity>(&self, field: &Given<Option<Q>>) -> Option<Q> {
        match self.0.get(field.field.name)? {
            (Answer::Quantity(base), _) => Some(Q::from_base(*base)),
            (other, _) => unreachable!("`{}` is a quantity, not {other:?}", field.field.name),
        }
    }

    /// The answer to a plain number that may stay unsaid.
    #[must_use]
    pub fn maybe_number(&self, field: &Given<Option<f64>>) -> Option<f64> {
        match self.0.get(field.field.name)? {
            (Answer::Number(number), _) => Some(*number),
            (other, _) => unreachable!("`{}` is a number, not {other:?}", field.field.name),
        }
    }

    /// The answer to a plain number.
    #[must_use]
    pub fn number(&self, field: &Given<f64>) -> f64 {
        match self.answer(field.field.name) {
            Answer::Number(number) => *number,
            other => unreachable!("`{}` is a number, not {other:?}", field.field.name),
        }
    }

    /// The answer to a question of yes or no.
    #[must_use]
    pub fn flag(&self, field: &Given<bool>) -> bool {
        match self.answer(field.field.name) {
            Answer::Flag(flag) => *flag,
            other => unreachable!("`{}` is yes or no, not {other:?}", field.field.name),
        }
    }

    /// The word chosen.
    #[must_use]
    pub fn word(&self, field: &Given<&'static str>) -> &str {
        self.list(field.field.name).first().map_or("", String::as_str)
    }

    /// The word or name, if there is one.
    #[must_use]
    pub fn maybe_word(&self, field: &Given<Option<&'static str>>) -> Option<&str> {
        self.list(field.field.name).first().map(String::as_str)
    }

    /// The words chosen.
    #[must_use]
    pub fn words(&self, field: &Given<Vec<String>>) -> &[String] {
        self.list(field.field.name)
    }

    fn list(&self, name: &str) -> &[String] {
        let Some((answer, _)) = self.0.get(name) else { return &[] };
        match answer {
            Answer::Words(words) => words,
            other => unreachable!("`{name}` is words, not {other:?}"),
        }
    }
}
