//! Settings of the program that belong to the shop, such as the secret part of the address of its calendar.

use rusqlite::{OptionalExtension, params};

use crate::write::begin;
use crate::{Moment, Store, StoreError};

impl Store {
    /// What the shop is known by for good: drawn by lot when the file was made.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn id(&self) -> Result<String, StoreError> {
        Ok(self.setting("id")?.unwrap_or_default())
    }

    /// A setting, when it was made.
    ///
    /// # Errors
    /// When the file cannot be read.
    pub fn setting(&self, key: &str) -> Result<Option<String>, StoreError> {
        let mut one = self.connection.prepare_cached("SELECT value FROM setting WHERE key = ?")?;
        Ok(one.query_row([key], |row| row.get(0)).optional()?)
    }

    /// Makes a setting, or takes it away where it is to have no value.
    ///
    /// # Errors
    /// When the file cannot be written.
    pub fn set(&mut self, key: &str, value: Option<&str>, now: Moment) -> Result<(), StoreError> {
        self.backup_daily(now);
        let transaction = begin(&mut self.connection)?;
        match value {
            Some(value) => transaction.execute("INSERT OR REPLACE INTO setting (key, value) VALUES (?, ?)", params![key, value])?,
            None => transaction.execute("DELETE FROM setting WHERE key = ?", [key])?,
        };
        Ok(transaction.commit()?)
    }
}
