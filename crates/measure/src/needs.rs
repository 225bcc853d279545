//! How a plan grows with its needs: one bay of machines and jobs, repeated.

use std::fmt::Write;

use jiff::civil::{Date, date};
use planner::needs::kinds;
use planner::report::Report;
use planner::round::{Done, Facts, round};
use planner::{Wishes, plan};
use reference::Reference;
use shop::Shop;

use crate::clock::{count, shortest};
use crate::fit::Growth;

/// A bay has about fifty needs.
const BAYS: [u32; 7] = [2, 4, 10, 20, 40, 100, 200];
const YESTERDAY: Date = date(2026, 1, 1);
const TODAY: Date = date(2026, 1, 2);
const RUNS: u32 = 15;

/// A shop file of so many bays. Each is worked for other hours on a lathe of another size, so that weights, speeds and doses differ.
pub(crate) fn shop_file(bays: u32) -> String {
    let mut text = String::from("[room]\nvolume = \"200 m3\"\n");
    for bay in 0..bays {
        let (hours, swing) = (2 + bay % 19, 150 + bay % 83);
        for template in ["bench lathe", "bench mill", "drill press", "bench grinder", "horizontal bandsaw"] {
            let _ = writeln!(text, "[[machine]]\ntemplate = \"{template}\"\nname = \"{template} {bay}\"\nhours = \"{hours} h/week\"");
            if template == "bench lathe" {
                let _ = writeln!(text, "swing = \"{swing} mm\"");
            }
        }
        for job in ["mark", "lock thread", "solder"] {
            let _ = writeln!(text, "[[work]]\njob = \"{job}\"\nname = \"{job} {bay}\"\noften = \"{hours} /year\"");
        }
    }
    text
}

/// The shop of a file made here.
pub(crate) fn shop(text: &str) -> Result<Shop, Box<dyn std::error::Error>> {
    shop::read(text.as_bytes(), kinds(), Reference::embedded()).map_err(|problems| format!("{problems:?}").into())
}

/// Each point served on the day before.
fn all_done(report: &Report) -> Facts {
    let done = || Done { day: YESTERDAY, hours: None, who: None };
    let done = report.chart.iter().map(|row| ((row.machine.clone(), row.point.clone()), done())).collect();
    Facts { today: TODAY, done, ..Facts::default() }
}

/// Each stage from the file to the round, for more and more needs.
pub(crate) fn growth() -> Result<Vec<Growth>, Box<dyn std::error::Error>> {
    let [mut reads, mut plans, mut reports, mut rounds] =
        ["read the shop file", "plan", "report the plan", "today's round"].map(|what| Growth::new(what, "needs"));
    let reference = Reference::embedded();
    for bays in BAYS {
        let text = shop_file(bays);
        let (read, shop) = shortest(RUNS, || shop(&text));
        let shop = shop?;
        let (planned, plan) = shortest(RUNS, || plan(&shop, reference, &Wishes::default()));
        let plan = plan?;
        let (reported, report) = shortest(RUNS, || plan.report(shop.units));
        let facts = all_done(&report);
        let (rounded, answer) = shortest(RUNS, || round(&report, &shop, &facts));
        answer?;
        let needs = count(plan.needs.len());
        for (growth, seconds) in [(&mut reads, read), (&mut plans, planned), (&mut reports, reported), (&mut rounds, rounded)] {
            growth.add(needs, seconds);
        }
    }
    Ok(vec![reads, plans, reports, rounds])
}
