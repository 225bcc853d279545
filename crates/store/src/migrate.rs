//! The steps from one format of the file to the next.

use rusqlite::{Connection, TransactionBehavior};

use crate::StoreError;

/// What makes each format out of the one before; the first makes it out of nothing.
pub(crate) const STEPS: &[&str] = &[include_str!("schema/1.sql"), include_str!("schema/2.sql"), include_str!("schema/3.sql")];

/// The newest format that steps lead to.
pub(crate) fn newest(steps: &[&str]) -> i64 {
    i64::try_from(steps.len()).unwrap_or(i64::MAX)
}

/// The format the file has.
pub(crate) fn version(connection: &Connection) -> Result<i64, StoreError> {
    Ok(connection.query_row("PRAGMA user_version", [], |row| row.get(0))?)
}

/// Takes the file to the newest format, wholly or not at all.
pub(crate) fn migrate(connection: &mut Connection, steps: &[&str]) -> Result<(), StoreError> {
    let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
    // Read inside the transaction, because another program may just have done the same.
    let from = usize::try_from(version(&transaction)?).unwrap_or(0);
    for step in steps.iter().skip(from) {
        transaction.execute_batch(step)?;
    }
    let astray: i64 = transaction.query_row("SELECT count(*) FROM pragma_foreign_key_check", [], |row| row.get(0))?;
    if astray > 0 {
        return Err(StoreError::Damaged { detail: format!("{astray} rows would point nowhere in the new format") });
    }
    transaction.pragma_update(None, "user_version", newest(steps).max(i64::try_from(from).unwrap_or(0)))?;
    Ok(transaction.commit()?)
}

#[cfg(test)]
pub(crate) mod tests {
    use std::path::PathBuf;

    use super::*;
    use crate::{Moment, Page, Store};
    use jiff::civil::date;
    use jiff::tz::TimeZone;

    pub(crate) fn moment() -> Moment {
        let at = date(2026, 3, 2).at(8, 0, 0, 0);
        Moment::new(TimeZone::UTC.to_timestamp(at).unwrap(), at.date())
    }

    /// A file as the first format was written; it is never made anew.
    fn first_format(folder: &tempfile::TempDir) -> PathBuf {
        let path = folder.path().join("shop.gallipot");
        Connection::open(&path).unwrap().execute_batch(include_str!("../tests/fixtures/version-1.sql")).unwrap();
        path
    }

    fn as_it_was(store: &Store) {
        let text = store.export().unwrap();
        assert!(text.starts_with("# A shop of the first format.\n[room]\n") && text.contains("left = \"900 mL\""), "{text}");
        assert_eq!(store.log(Page { count: 9, ..Page::default() }).unwrap().len(), 4);
        assert_eq!(store.setting("theme").unwrap().as_deref(), Some("dark"));
        store.check().unwrap();
    }

    #[test]
    fn every_shop_has_a_number_of_its_own_that_stays() {
        let folder = tempfile::tempdir().unwrap();
        let old = Store::open(&first_format(&folder), moment()).unwrap().id().unwrap();
        assert_eq!(Store::open_read_only(&folder.path().join("shop.gallipot")).unwrap().id().unwrap(), old);
        let new = |name: &str| Store::create(&folder.path().join(name)).unwrap().id().unwrap();
        let all = std::collections::BTreeSet::from([old, new("a.gallipot"), new("b.gallipot")]);
        // 128 bits by lot, in hexadecimal: no two are alike.
        assert!(all.len() == 3 && all.iter().all(|id| id.len() == 32), "{all:?}");
    }

    #[test]
    fn the_first_format_is_read() {
        let folder = tempfile::tempdir().unwrap();
        as_it_was(&Store::open(&first_format(&folder), moment()).unwrap());
    }

    #[test]
    fn a_step_is_taken_after_a_backup_of_what_was() {
        let folder = tempfile::tempdir().unwrap();
        let path = first_format(&folder);
        let next = [STEPS, &["ALTER TABLE setting ADD COLUMN since INTEGER;"]].concat();
        let store = Store::open_with(&path, moment(), &next).unwrap();
        as_it_was(&store);
        assert_eq!(version(&store.connection).unwrap(), newest(&next));
        let backups = store.backups().unwrap();
        assert_eq!(backups.len(), 1);
        assert_eq!(version(&Connection::open(&backups[0].path).unwrap()).unwrap(), 1);
    }

    #[test]
    fn a_step_that_fails_leaves_the_file_as_it_was() {
        let folder = tempfile::tempdir().unwrap();
        let path = first_format(&folder);
        let bad = [STEPS[0], "CREATE TABLE extra (a); INSERT INTO extra VALUES (1); INSERT INTO nowhere VALUES (1);"];
        assert!(Store::open_with(&path, moment(), &bad).is_err());
        let astray = [STEPS[0], "PRAGMA defer_foreign_keys = ON; UPDATE said SET section = section + 1000;"];
        assert!(matches!(Store::open_with(&path, moment(), &astray), Err(StoreError::Damaged { .. })));
        assert_eq!(version(&Connection::open(&path).unwrap()).unwrap(), 1);
        as_it_was(&Store::open(&path, moment()).unwrap());
    }
}
