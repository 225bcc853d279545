//! The exact optimum beside each rung of a ladder, and the ladder of the school room with its draws.

#[path = "../../planner/tests/ladder_shop/mod.rs"]
mod ladder_shop;

use planner::ladder::{Effort, Instance, Ladder, Options, climb};
use planner::{Wishes, plan};
use reference::Reference;
use serde_json::{Value, json};

use crate::clock::shortest;
use crate::needs::shop;

const SCHOOL_ROOM: &str = include_str!("../../../examples/school-room.toml");
const RUNS: u32 = 9;
/// No search is cut short, so that optima are compared and nothing else.
const EFFORT: Effort = Effort { nodes: u64::MAX, time: None };

/// A ladder with its optima, as it is answered here.
pub(crate) struct Answered {
    /// What it is the ladder of.
    pub what: &'static str,
    /// What is asked, as plain data.
    pub asked: Value,
    /// All optima of the ladder together, with the ladder itself, in seconds.
    pub seconds: f64,
    /// The optima, from one purchase on.
    pub optima: Vec<f64>,
}

/// The ladders that are compared: of the school room, and of a made-up shop with more fluids and tasks than any real one is likely to have.
pub(crate) fn ladders() -> Result<Vec<Answered>, Box<dyn std::error::Error>> {
    let room = shop(SCHOOL_ROOM)?;
    let school_room = plan(&room, Reference::embedded(), &Wishes::default())?.instance();
    Ok(vec![
        answered("the school room's ladder, all optima", &school_room)?,
        answered("a made-up ladder of 60 fluids and 150 tasks, all optima", &ladder_shop::shop(1, 60, 150, 8))?,
    ])
}

fn answered(what: &'static str, instance: &Instance) -> Result<Answered, Box<dyn std::error::Error>> {
    let options = Options { draws: 0, effort: EFFORT, ..Options::default() };
    let (seconds, ladder) = shortest(RUNS, || climb(instance, &options));
    let ladder = ladder?;
    if let Some(rung) = ladder.rungs.iter().position(|rung| rung.gap > 0.0) {
        return Err(format!("{what}: the optimum beside rung {} is not proven", rung + 1).into());
    }
    let asked = plain(instance, &ladder, options.will_do);
    Ok(Answered { what, asked, seconds, optima: ladder.rungs.iter().map(|rung| rung.best_possible).collect() })
}

fn plain(instance: &Instance, ladder: &Ladder, will_do: f64) -> Value {
    let fluids = instance.fluids.iter().map(|fluid| json!({ "owned": fluid.owned, "allowed": fluid.allowed }));
    let tasks = instance.jobs.iter().map(|task| {
        let steps = task.steps.iter().map(|step| json!({ "share": step.share, "right": step.right, "will_do": step.will_do }));
        json!({ "weight": task.weight, "steps": steps.collect::<Vec<_>>() })
    });
    json!({
        "will_do": will_do,
        "rungs": ladder.rungs.len(),
        "fluids": fluids.collect::<Vec<_>>(),
        "tasks": tasks.collect::<Vec<_>>(),
    })
}

/// The school room's ladder with its optima and its 500 draws, and its whole plan from the text of the file to the report, in seconds.
pub(crate) fn school_room() -> Result<[f64; 2], Box<dyn std::error::Error>> {
    let room = shop(SCHOOL_ROOM)?;
    let instance = plan(&room, Reference::embedded(), &Wishes::default())?.instance();
    let (ladder, answer) = shortest(RUNS, || climb(&instance, &Options::default()));
    answer?;
    let (whole, answer) = shortest(RUNS, || {
        let room = shop(SCHOOL_ROOM)?;
        let report = plan(&room, Reference::embedded(), &Wishes::default())?.report(room.units);
        Ok::<_, Box<dyn std::error::Error>>(report.ladder.len())
    });
    answer?;
    Ok([ladder, whole])
}
