//! How a kept shop grows with its log: 1501 points, two hundred pots, and more and more entries.

#[path = "../../store/benches/large/mod.rs"]
mod large;

use jiff::ZonedDateTime;
use jiff::tz::TimeZone;
use keep::{Kept, Served};
use large::{moment, shop};
use planner::round::round;
use store::Written;

use crate::clock::shortest;
use crate::fit::Growth;

const ENTRIES: [u32; 4] = [1000, 10_000, 100_000, 1_000_000];
const RUNS: u32 = 9;

/// Today's round, a point served, and the first write of a day, which keeps a copy of the file first.
pub(crate) fn growth() -> Result<Vec<Growth>, Box<dyn std::error::Error>> {
    let [mut opens, mut rounds, mut writes, mut firsts] = [
        "open the kept shop, checking every page of the file, and read it",
        "today's round of 1501 points, from the log",
        "write that a point was served, on the disk",
        "the first write of a day, with the day's backup",
    ]
    .map(|what| Growth::new(what, "entries of the log"));
    for entries in ENTRIES {
        let (_folder, store) = shop(i64::from(entries));
        let path = store.path().to_owned();
        drop(store);
        let after = moment(i64::from(entries) * 100);
        let now = ZonedDateTime::new(after.at(), TimeZone::UTC);
        let (opened, kept) = shortest(RUNS, || Kept::open(&path, after));
        let mut kept = kept?;
        let report = kept.report()?;
        let machine = kept.described.shop.machines.first().ok_or("the shop has machines")?;
        let point = machine.points.first().ok_or("the machine has points")?.name.clone();
        let served = Served { machine: machine.name.clone(), point, ..Served::default() };
        let (first, written) = shortest(1, || kept.serve_point(&report, &served, &now));
        written?;
        let (rounded, answer) =
            shortest(RUNS, || Ok::<_, Box<dyn std::error::Error>>(round(&report, &kept.described.shop, &kept.facts(now.date())?)?));
        answer?;
        let (wrote, written) = shortest(RUNS, || kept.serve_point(&report, &served, &now));
        if matches!(written?, Written::Already(_)) {
            return Err("a point served twice is written once, and that was timed".into());
        }
        for (growth, seconds) in [(&mut opens, opened), (&mut rounds, rounded), (&mut writes, wrote), (&mut firsts, first)] {
            growth.add(f64::from(entries), seconds);
        }
    }
    Ok(vec![opens, rounds, writes, firsts])
}
