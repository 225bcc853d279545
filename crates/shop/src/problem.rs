//! What is wrong with a shop file, where, and how to mend it.

pub use fields::Span;

/// Something the reader could not take as it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// Where in the file; `None` when it concerns the file as a whole.
    pub at: Option<Span>,
    /// What is wrong, with the offending value.
    pub what: String,
    /// The way out: what is allowed, or what was probably meant.
    pub mend: String,
}

/// Everything found wrong so far; reading goes on so that all of it can be shown at once.
#[derive(Debug, Default)]
pub struct Problems(Vec<Problem>);

impl Problems {
    /// Notes one problem.
    pub fn add(&mut self, at: impl Into<Option<Span>>, what: impl Into<String>, mend: impl Into<String>) {
        self.0.push(Problem { at: at.into(), what: what.into(), mend: mend.into() });
    }

    /// Whether nothing was found wrong.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The problems, in the order of the file.
    #[must_use]
    pub fn into_sorted(mut self) -> Vec<Problem> {
        self.0.sort_by_key(|problem| problem.at.as_ref().map_or(0, |at| at.start));
        self.0
    }
}
