//! Nothing is lost: by a crash, a full disk, a newer or an older program, a wrong path, or a restore.

mod support;

use std::hash::{BuildHasher, RandomState};
use std::io::{BufRead, BufReader, Write};
use std::process::{Command, Stdio};
use std::time::{Duration, SystemTime};

use jiff::ToSpan;
use planner::needs::kinds;
use reference::Reference;
use store::{Change, Entry, Moment, Page, SectionId, Store, StoreError, What, Written};
use support::{Home, SHOP, moment, text};

fn tomorrow(days: i64) -> Moment {
    let at = moment(0).at() + (24 * days).hours();
    Moment::new(at, jiff::tz::TimeZone::UTC.to_datetime(at).date())
}

#[test]
fn only_create_creates_and_only_ours_is_opened() {
    let home = Home::of(SHOP);
    let missing = home.folder().join("none.gallipot");
    assert!(matches!(Store::open(&missing, moment(0)), Err(StoreError::Missing { .. })));
    assert!(matches!(Store::open_read_only(&missing), Err(StoreError::Missing { .. })));
    assert!(!missing.exists());
    assert!(matches!(Store::create(&home.path()), Err(StoreError::Exists { .. })));
    let other = home.folder().join("other.sqlite");
    rusqlite::Connection::open(&other).unwrap().execute_batch("CREATE TABLE section (id INTEGER)").unwrap();
    let text = home.folder().join("shop.toml");
    std::fs::write(&text, SHOP).unwrap();
    let empty = home.folder().join("empty");
    std::fs::write(&empty, "").unwrap();
    for path in [&other, &text, &empty, &home.folder().to_owned()] {
        let error = Store::open(path, moment(0)).unwrap_err();
        assert!(matches!(error, StoreError::NotOurs { .. }), "{}: {error}", path.display());
    }
    assert_eq!(std::fs::read_to_string(&text).unwrap(), SHOP);
}

#[test]
fn a_newer_file_is_refused_with_a_clear_word() {
    let home = Home::of(SHOP);
    rusqlite::Connection::open(home.path()).unwrap().pragma_update(None, "user_version", 99).unwrap();
    for error in [Store::open(&home.path(), moment(0)).unwrap_err(), Store::open_read_only(&home.path()).unwrap_err()] {
        assert!(error.to_string().contains("newer Gallipot"), "{error}");
    }
    assert_eq!(home.store.backups().unwrap(), []);
}

#[test]
fn a_damaged_file_is_not_opened() {
    let home = Home::of(SHOP);
    let mut bytes = std::fs::read(home.path()).unwrap();
    for byte in &mut bytes[8192..20000] {
        *byte = 0x5A;
    }
    std::fs::write(home.path(), bytes).unwrap();
    assert!(matches!(Store::open(&home.path(), moment(0)), Err(StoreError::Damaged { .. })));
}

#[test]
fn a_shop_opened_for_reading_is_not_written() {
    let home = Home::of(SHOP);
    let mut wall = Store::open_read_only(&home.path()).unwrap();
    assert_eq!(wall.export().unwrap(), SHOP);
    let pot = home.pot("slideway-68");
    let errors = [
        wall.write(&Entry::new(moment(1), What::Opened { pot })).unwrap_err(),
        wall.set("theme", Some("dark"), moment(1)).unwrap_err(),
        wall.edit(&[Change::Remove { section: pot }], Reference::embedded(), kinds(), moment(1)).unwrap_err(),
    ];
    for error in errors {
        assert!(matches!(error, StoreError::ReadOnly), "{error:?}");
    }
    assert_eq!(home.store.log(Page { count: 9, ..Page::default() }).unwrap(), []);
}

/// Not a test of its own: the program that the next one kills.
#[test]
#[ignore = "run by the test that kills it"]
fn writes_until_killed() {
    let Ok(path) = std::env::var("GALLIPOT_WRITES_TO") else { return };
    let mut store = Store::open(path.as_ref(), moment(0)).unwrap();
    let pot = store.section(SectionId::WHOLE).unwrap().inside.into_iter().find(|id| store.section(*id).unwrap().kind == "pot").unwrap();
    let mut out = std::io::stderr();
    for number in 0..1000 {
        let what = What::Discarded { pot, amount: Some(support::amount("0.1 mL")) };
        let key = store.log(Page { count: 1, ..Page::default() }).unwrap().first().map_or(0, |last| last.id.0);
        let entry = Entry { key: Some(format!("{key} {number}")), ..Entry::new(moment(1), what) };
        let Written::New(logged) = store.write(&entry).unwrap() else { panic!("written before") };
        writeln!(out, "written {}", logged.id.0).unwrap();
    }
}

#[test]
fn killed_at_any_moment_it_keeps_every_entry_it_acknowledged() {
    let home = Home::of(SHOP);
    let mut acknowledged = 0;
    for _ in 0..12 {
        let mut child = Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "writes_until_killed", "--ignored", "--nocapture"])
            .env("GALLIPOT_WRITES_TO", home.path())
            .stdout(Stdio::null())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let lines = BufReader::new(child.stderr.take().unwrap()).lines();
        let reader = std::thread::spawn(move || {
            lines.map_while(Result::ok).filter_map(|line| line.strip_prefix("written ")?.parse::<i64>().ok()).max()
        });
        // The hasher's seed is different each time, and so is the wait.
        let wait = 20_000 + RandomState::new().hash_one(acknowledged) % 180_000;
        std::thread::sleep(Duration::from_micros(wait));
        child.kill().unwrap();
        child.wait().unwrap();
        acknowledged = reader.join().unwrap().unwrap_or(acknowledged);
        let store = Store::open(&home.path(), moment(2)).unwrap();
        store.check().unwrap();
        let count = i64::try_from(store.log(Page { count: u32::MAX, ..Page::default() }).unwrap().len()).unwrap();
        // One more may have been written whose word did not get through; numbers are given out without gaps.
        assert!((acknowledged..=acknowledged + 1).contains(&count), "{count} of {acknowledged}");
        acknowledged = count;
    }
    assert!(acknowledged > 0);
}

#[test]
fn a_write_cut_off_by_the_power_is_taken_back_by_the_next_who_may_write() {
    let home = Home::of(SHOP);
    // The file and its journal as a power cut in the middle of a large write would leave them.
    let mut other = rusqlite::Connection::open(home.path()).unwrap();
    other.pragma_update(None, "cache_size", 1).unwrap();
    let transaction = other.transaction().unwrap();
    transaction.execute("UPDATE said SET value = '\"spoilt\"'", []).unwrap();
    for number in 0..500 {
        transaction.execute("INSERT INTO setting VALUES (?, ?)", rusqlite::params![number.to_string(), "x".repeat(500)]).unwrap();
    }
    let cut = home.folder().join("cut.gallipot");
    std::fs::copy(home.path(), &cut).unwrap();
    std::fs::copy(home.folder().join("shop.gallipot-journal"), home.folder().join("cut.gallipot-journal")).unwrap();
    drop(transaction);
    assert!(std::fs::metadata(&cut).unwrap().len() > std::fs::metadata(home.path()).unwrap().len());
    assert!(matches!(Store::open_read_only(&cut), Err(StoreError::CutOff)));
    let store = Store::open(&cut, moment(0)).unwrap();
    assert_eq!((store.export().unwrap().as_str(), store.setting("1").unwrap()), (SHOP, None));
    store.check().unwrap();
}

#[test]
fn the_first_write_of_a_day_backs_up_and_the_rotation_lets_go() {
    let mut home = Home::of(SHOP);
    for number in 0..60 {
        for _ in 0..2 {
            home.store.set("day", Some(&number.to_string()), tomorrow(number)).unwrap();
        }
    }
    assert!(home.store.backup_trouble().is_none());
    let backups = home.store.backups().unwrap();
    // Seven days and the newest of four weeks (ISO 8601, from Monday), of which the last stand among the seven days.
    assert!((9..=10).contains(&backups.len()), "{backups:?}");
    let newest = Store::open_read_only(&backups[0].path).unwrap();
    assert_eq!(newest.setting("day").unwrap().as_deref(), Some("58"));
    let name = backups[0].path.file_name().unwrap().to_str().unwrap();
    assert_eq!(name, "shop.backup-20260430-080000.gallipot");
}

#[test]
fn a_backup_that_fails_does_not_keep_an_entry_from_the_log() {
    let home = Home::empty();
    // Common file systems take names of 255 bytes (POSIX NAME_MAX on Linux), so that this has room for a journal and none for a backup.
    let mut store = Store::create(&home.folder().join(format!("{}.gallipot", "n".repeat(230)))).unwrap();
    store.set("theme", Some("dark"), moment(0)).unwrap();
    assert!(store.backup_trouble().is_some());
    assert_eq!(store.setting("theme").unwrap().as_deref(), Some("dark"));
}

#[test]
fn what_a_crash_left_of_a_copy_goes_with_the_next_backup() {
    let home = Home::of(SHOP);
    let made = |name: &str, minutes: i64| {
        let file = std::fs::File::create_new(home.folder().join(name)).unwrap();
        let since_1970 = Duration::from_secs(moment(minutes).at().as_second().unsigned_abs());
        file.set_modified(SystemTime::UNIX_EPOCH + since_1970).unwrap();
    };
    let ours = ["shop.gallipot.77-0", "shop.backup-20260101-080000.gallipot.77-1", "shop.backup-20260101-080000.gallipot.77-1-journal"];
    let others = ["shop.gallipot.bak", "shop.gallipot.7-b", "other.gallipot.77-0", "shop.gallipot-77-0", "shop.2026.77-0", "77-0"];
    ours.iter().chain(&others).for_each(|name| made(name, -61));
    made("shop.gallipot.78-0", -59);
    home.store.backup(moment(0)).unwrap();
    let there = |name: &str| home.folder().join(name).exists();
    assert!(!ours.iter().any(|name| there(name)));
    assert!(others.iter().all(|name| there(name)) && there("shop.gallipot.78-0"));
}

#[test]
fn two_programs_back_up_at_once_and_both_copies_are_whole() {
    let home = Home::of(SHOP);
    let path = home.path();
    for round in 0..20 {
        let arrived = std::sync::Barrier::new(2);
        std::thread::scope(|scope| {
            for _ in 0..2 {
                scope.spawn(|| {
                    let store = Store::open(&path, moment(round)).unwrap();
                    arrived.wait();
                    store.backup(moment(round)).unwrap();
                });
            }
        });
        for backup in home.store.backups().unwrap() {
            assert_eq!(Store::open_read_only(&backup.path).unwrap().export().unwrap(), SHOP);
        }
    }
}

#[test]
fn an_import_over_a_shop_and_a_restore_can_both_be_taken_back() {
    let mut home = Home::of(SHOP);
    let pot = home.pot("slideway-68");
    home.store.write(&Entry::new(moment(0), What::Opened { pot })).unwrap();
    let opened = home.store.export().unwrap();
    home.store.import(b"[[machine]]\ntemplate = \"bench mill\"\n", Reference::embedded(), kinds(), moment(5)).unwrap();
    let mill = home.store.export().unwrap();
    let before = home.store.backups().unwrap().remove(0).path;
    // Somebody else has the file open and sees the one, then the other.
    let other = Store::open(&home.path(), moment(6)).unwrap();
    home.store.restore(&before, moment(6)).unwrap();
    assert_eq!((home.store.export().unwrap(), other.export().unwrap()), (opened.clone(), opened));
    let back = home.store.backups().unwrap().remove(0).path;
    home.store.restore(&back, moment(7)).unwrap();
    assert_eq!(home.store.export().unwrap(), mill);
    home.store.check().unwrap();
}

#[test]
fn what_is_no_sound_backup_is_not_restored() {
    let mut home = Home::of(SHOP);
    let backup = home.store.backup(moment(0)).unwrap();
    let mut bytes = std::fs::read(&backup).unwrap();
    bytes[8192..20000].fill(0x5A);
    std::fs::write(&backup, &bytes).unwrap();
    assert!(matches!(home.store.restore(&backup, moment(1)), Err(StoreError::Damaged { .. })));
    std::fs::write(&backup, "not a database at all, but long enough to look at").unwrap();
    assert!(matches!(home.store.restore(&backup, moment(1)), Err(StoreError::NotOurs { .. })));
    assert_eq!(home.store.export().unwrap(), SHOP);
}

#[test]
fn what_cannot_be_imported_changes_nothing_and_is_told_at_its_place() {
    let mut home = Home::of(SHOP);
    let file = SHOP.replace("bench mill", "bench mil");
    let Err(StoreError::File(problems)) = home.store.import(file.as_bytes(), Reference::embedded(), kinds(), moment(1)) else {
        panic!("taken in")
    };
    assert_eq!(&file[problems[0].at.clone().unwrap()], "\"bench mil\"");
    assert_eq!(home.store.export().unwrap(), SHOP);
}

#[test]
fn between_writes_the_shop_is_one_file() {
    let mut home = Home::of(SHOP);
    home.store.edit(&[], Reference::embedded(), kinds(), moment(0)).unwrap();
    home.store.set("name", Some("x"), moment(0)).unwrap();
    let mut names: Vec<String> =
        std::fs::read_dir(home.folder()).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
    names.sort();
    assert_eq!(names, ["shop.backup-20260302-080000.gallipot", "shop.gallipot"]);
    let says = vec![("fluid".to_owned(), text("slideway-68"))];
    let add = Change::Add { parent: SectionId::WHOLE, kind: "pot".to_owned(), says };
    home.store.edit(&[add], Reference::embedded(), kinds(), moment(1)).unwrap();
}
