//! Hazard and precautionary statements, by code.

use serde::Deserialize;

use crate::SourceKey;

/// One statement of the standard, such as `H225` or `P403+P235`.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Statement {
    /// Its code; the codes of a combined statement stand with `+` between them.
    pub code: String,
    /// The standard's own wording, with the choices it leaves open (`/`, `[]`, `…`).
    pub text: String,
    /// The wording with those choices made; none where the standard leaves nothing open.
    pub filled: Option<String>,
    /// Where the wording comes from.
    pub source: SourceKey,
}

impl Statement {
    /// The wording to print on a label.
    #[must_use]
    pub fn printed(&self) -> &str {
        self.filled.as_deref().unwrap_or(&self.text)
    }
}
