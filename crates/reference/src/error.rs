//! What can be wrong with the data.

/// A fault in the data.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[non_exhaustive]
pub enum DataError {
    /// A file is not TOML, or a row lacks a field, has an unknown one or a value that cannot be read.
    #[error("{file}: {message}")]
    Unreadable {
        /// The file.
        file: String,
        /// What the parser said, with the place.
        message: String,
    },
    /// A file was given that nothing reads.
    #[error("{file} is not a data file this program knows")]
    UnknownFile {
        /// The file.
        file: String,
    },
    /// Two rows of one table have the same key.
    #[error("two {table} are called `{key}`")]
    Twice {
        /// The table.
        table: &'static str,
        /// The key.
        key: String,
    },
    /// A row names a row of another table that does not exist.
    #[error("{place} names the {table} `{key}`, which does not exist")]
    Dangling {
        /// The row.
        place: String,
        /// The table.
        table: &'static str,
        /// The key that was named.
        key: String,
    },
    /// A row is not complete or contradicts itself.
    #[error("{place}: {message}")]
    Unsound {
        /// The row.
        place: String,
        /// What is wrong.
        message: String,
    },
}
