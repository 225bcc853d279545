//! A large shop with a long log, for whoever measures what is asked of it.

use planner::needs::kinds;
use reference::Reference;
use rusqlite::{Connection, params};
use store::{Moment, SectionId, Store};
use tempfile::TempDir;

/// Seventy-nine bench lathes have 1501 points.
const MACHINES: usize = 79;
const POTS: usize = 200;

/// So many seconds after the first entry.
pub fn moment(seconds: i64) -> Moment {
    let at = jiff::Timestamp::from_second(1_700_000_000 + seconds).unwrap_or_default();
    Moment::new(at, jiff::tz::TimeZone::UTC.to_datetime(at).date())
}

/// A shop of 1501 points, two hundred pots, and so many entries.
pub fn shop(entries: i64) -> (TempDir, Store) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("shop.gallipot");
    let mut store = Store::create(&path).expect("a new file");
    let lathe = Reference::embedded().template("bench lathe").expect("the data knows it");
    // A point that something is said of has a number from the start; making 1501 numbers one by one takes minutes on a slow disk.
    let said: String =
        lathe.points.iter().map(|point| format!("[[machine.point]]\nname = \"{}\"\npriority = \"normal\"\n", point.name)).collect();
    let mut text: String =
        (0..MACHINES).map(|number| format!("[[machine]]\ntemplate = \"bench lathe\"\nname = \"lathe {number}\"\n{said}")).collect();
    text.extend((0..POTS).map(|number| format!("[[pot]]\nfluid = \"slideway-68\"\nname = \"{number}\"\nleft = \"200 L\"\n")));
    store.import(text.as_bytes(), Reference::embedded(), kinds(), moment(0)).expect("a sound shop");
    let inside = store.section(SectionId::WHOLE).expect("the whole").inside;
    let of_kind = |kind: &str| -> Vec<SectionId> {
        inside.iter().copied().filter(|id| store.section(*id).is_ok_and(|section| section.kind == kind)).collect()
    };
    let (machines, pots) = (of_kind("machine"), of_kind("pot"));
    let points: Vec<SectionId> = machines
        .iter()
        .flat_map(|machine| lathe.points.iter().map(move |point| (*machine, &point.name)))
        .map(|(machine, point)| store.point(machine, point).expect("a point"))
        .collect();
    // Row by row as the store writes them, but in one transaction, or filling the table would take longer than asking it.
    let mut connection = Connection::open(&path).expect("the file");
    let transaction = connection.transaction().expect("a transaction");
    {
        let mut insert = transaction
            .prepare(
                "INSERT INTO log (at, day, kind, machine, point, pot, fluid, measure, amount)
                 SELECT ?1, ?2, 'applied', parent, id, ?3, 'slideway-68', 'volume', 300000 FROM section WHERE id = ?4",
            )
            .expect("a statement");
        for (number, (point, pot)) in (0..entries).zip(points.iter().cycle().zip(pots.iter().cycle())) {
            let when = moment(number * 100);
            insert.execute(params![when.at().as_millisecond(), when.day().to_string(), pot.0, point.0]).expect("an entry");
        }
    }
    transaction.execute("INSERT INTO tally SELECT pot, NULL, NULL, 'volume', -sum(amount) FROM log GROUP BY pot", []).expect("tallies");
    transaction.commit().expect("written");
    store.check().expect("a sound file");
    (folder, store)
}
